#include "core/model/engine.h"

#include <gtest/gtest.h>

#include "core/model/inputs.h"

namespace strokewright::model {
namespace {

describe::Entry entryOf(double value) {
  describe::Entry entry;
  entry.values = {value};
  return entry;
}

TEST(AnEngine, IsEmptyUntilSomethingIsEntered) {
  const Engine engine;
  EXPECT_TRUE(engine[in::bore].empty());
}

TEST(AnEngine, GivesBackWhatWasEntered) {
  Engine engine;
  engine.set(in::bore, entryOf(0.076));
  engine.set(in::bore, entryOf(0.068));
  EXPECT_EQ(engine[in::bore].values, std::vector{0.068});
  EXPECT_EQ(engine.entries.size(), 1U);
}

TEST(AnEngine, ForgetsAnEntryThatIsCleared) {
  Engine engine;
  engine.set(in::bore, entryOf(0.076));
  engine.set(in::bore, {});
  EXPECT_EQ(engine, Engine{});
}

TEST(AnEngine, KeepsItsEntriesInPageOrder) {
  Engine engine;
  engine.set(in::rodEndsDifference, entryOf(0.0005));
  engine.set(in::spacer, entryOf(0.0));
  engine.set(in::bore, entryOf(0.076));
  std::vector<const describe::Input*> order;
  for (const auto& [input, entry] : engine.entries) order.push_back(input);
  EXPECT_EQ(order, (std::vector{&in::bore, &in::spacer, &in::rodEndsDifference}));
}

TEST(AProject, FindsItsFirstTarget) {
  Project project;
  EXPECT_EQ(project.target(), -1);
  project.engines = {{.name = "old", .part = Part::Donor, .note = {}, .entries = {}},
                     {.name = "new", .part = Part::Target, .note = {}, .entries = {}},
                     {.name = "other", .part = Part::Target, .note = {}, .entries = {}}};
  EXPECT_EQ(project.target(), 1);
}

TEST(APart, ComesBackFromItsKey) {
  for (const Part part : {Part::Donor, Part::Target, Part::Variant}) {
    EXPECT_EQ(partOf(partKey(part)), part);
  }
  EXPECT_EQ(partKey(Part::Donor), "donor");
  EXPECT_EQ(partOf("spare"), std::nullopt);
}

}  // namespace
}  // namespace strokewright::model
