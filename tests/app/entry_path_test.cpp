#include "app/entry_path.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/model/inputs.h"
#include "core/model/lists.h"
#include "tests/app/ran.h"

namespace strokewright::app {
namespace {

namespace in = model::in;
using describe::Entry;
using testing::DoubleNear;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

constexpr int kTarget = 1;

class EntryPath : public testing::Test {
 protected:
  EntryPath() : project_(projectOf(sample("burdock-719"))) {}

  void set(const std::string& key, const std::string& text) {
    enter(project_, kTarget, {key, text});
  }
  model::Engine& target() { return project_.engines[kTarget]; }
  std::string refused(const std::string& key, const std::string& text) {
    try {
      set(key, text);
    } catch (const Unusable& unusable) {
      return unusable.what();
    }
    return {};
  }

  model::Project project_;
};

TEST_F(EntryPath, LeadsToAnItemOfAListOfTheProject) {
  const model::Project before = project_;
  set("shelf[1].thickness_m", "40 thou ± 1");
  std::vector<describe::Entries>& shelf = project_.lists[&model::list::shelf];
  EXPECT_THAT(shelf[1][&model::list::partThickness].values,
              ElementsAre(DoubleNear(1.016e-3, 1e-12)));
  set("shelf[1].role", "head gasket");
  EXPECT_EQ(shelf[1][&model::list::partRole].values.front(),
            model::answer(model::PartRole::HeadGasket));
  set("shelf[1].role", "");
  EXPECT_FALSE(shelf[1].contains(&model::list::partRole)) << "an empty text clears";
  EXPECT_EQ(shelf[0], before.lists.at(&model::list::shelf)[0]);
}

TEST_F(EntryPath, LeadsToAHoleOfTheEngine) {
  set("plate_holes[0].along_m", "-40");
  EXPECT_EQ(target().lists[&model::list::plateHoles][0][&model::list::holeAlong].values.front(),
            -40e-3);
}

TEST_F(EntryPath, LeadsToTheNumberOfOneCylinder) {
  const Entry before = target()[in::seatHeight];
  set("seat_height_m.value[1]", "98.25");
  const Entry& after = target()[in::seatHeight];
  EXPECT_THAT(after.values, ElementsAre(before.values[0], 98.25e-3, before.values[2]));
  EXPECT_EQ(after.plusMinus, before.plusMinus);
  EXPECT_EQ(after.origin, before.origin);
  EXPECT_EQ(after.text, "") << "it says another number";
}

TEST_F(EntryPath, LeadsToOneReading) {
  set("seat_height_m", "98.12; 98.20 | 98.22; 98.29");
  set("seat_height_m.readings[1][0]", "98.24");
  EXPECT_THAT(target()[in::seatHeight].readings[1], ElementsAre(98.24e-3, 98.22e-3));
  EXPECT_NEAR(target()[in::seatHeight].values[1], 98.23e-3, 1e-12);
  set("seat_height_m.value[0]", "98.10 | 98.12");
  EXPECT_EQ(target()[in::seatHeight].readings[0].size(), 2U);
  EXPECT_NEAR(target()[in::seatHeight].values[0], 98.11e-3, 1e-12);
}

TEST_F(EntryPath, ToANumberDropsTheReadingsItWasTheMeanOf) {
  set("seat_height_m", "98.12 | 98.14; 98.20; 98.28 | 98.30");
  set("seat_height_m.value[0]", "98.10");
  EXPECT_THAT(target()[in::seatHeight].readings,
              ElementsAre(ElementsAre(98.10e-3), ElementsAre(98.20e-3), SizeIs(2)));
  set("seat_height_m.value[2]", "98.29");
  EXPECT_THAT(target()[in::seatHeight].readings, IsEmpty()) << "each was read once";
  set("seat_height_m.value[1]", "98.20 | 98.22");
  EXPECT_THAT(target()[in::seatHeight].readings,
              ElementsAre(ElementsAre(98.10e-3), SizeIs(2), ElementsAre(98.29e-3)));
}

TEST(Numbers, OfEntriesWithReadingsAreSetByACall) {
  for (const std::string key : {"whole_volume_m3", "crown_fill_m3"}) {
    const Ran set = ran({"results", sample("tansy-270"), "--set", key + ".value[0]=36"});
    EXPECT_EQ(set.status, 0) << key << set.err;
  }
  const Ran beyond = ran({"results", sample("tansy-270"), "--set", "whole_volume_m3.value[1]=36"});
  EXPECT_EQ(beyond.status, 2);
  for (const std::string key :
       {"seat_height_m", "barrel_height_m", "chamber_volume_m3", "measured_squish_m"}) {
    const Ran set = ran({"results", sample("burdock-719"), "--set", key + "=98 | 98.1; 97; 98",
                         "--set", key + ".value[0]=98.05"});
    EXPECT_NE(set.status, 2) << key << set.err;
    EXPECT_NE(set.out, "") << key;
  }
}

TEST_F(EntryPath, ChangesNothingElseInTheFile) {
  model::Project before = project_;
  set("seat_height_m.value[1]", "98.20");
  before.engines[kTarget].set(in::seatHeight, target()[in::seatHeight]);
  EXPECT_EQ(project_, before);
  EXPECT_EQ(storage::read(storage::write(project_)).project, project_);
}

TEST_F(EntryPath, ThatLeadsNowhereIsSaidPlainly) {
  EXPECT_THAT(
      refused("shelf[11].thickness_m", "1"),
      HasSubstr("shelf[11].thickness_m leads nowhere: of parts there are 11, counted from"));
  EXPECT_THAT(
      refused("shelf[0].thick_m", "1"),
      HasSubstr("A part of shelf has no “thick_m”; it has role, thickness_m, bore_m, quantity, "
                "serves."));
  EXPECT_THAT(refused("seat_height_m.value[3]", "98"), HasSubstr("of numbers there are 3"));
  EXPECT_THAT(refused("seat_height_m.readings[0][0]", "98"), HasSubstr("readings there are none."));
  EXPECT_THAT(refused("shelf[0", "1"), HasSubstr("“shelf[0” leads nowhere: a key is KEY, LIST"));
  for (const char* key : {"shelf", "shelf[0]", "shelf[x].role", "shelf[-1].role", "bore_m[0]",
                          "bore_m.", "seat_height_m.value", "seat_height_m.plus_minus[0]",
                          "shelf[0][1].role", "shelf[0]x.role", "shelf[0].role[0]"}) {
    EXPECT_NE(refused(key, "1"), "") << key;
  }
}

TEST_F(EntryPath, TakesOneNumberWhereOneBelongs) {
  EXPECT_THAT(refused("seat_height_m.value[1]", "98; 99"), HasSubstr("is no single number"));
  EXPECT_THAT(refused("seat_height_m.value[1]", "98 ± 0.1"), HasSubstr("± and a list belong to"));
  EXPECT_THAT(refused("seat_height_m.value[1]", ""), HasSubstr("is no single number"));
  EXPECT_THAT(refused("shelf[0].thickness_m", "thin"),
              HasSubstr("“thin” cannot be read for shelf[0].thickness_m"));
}

TEST(Shelf, OfACallChangesWhatCanBeLaid) {
  const std::vector<std::string> call = {"table", sample("culvert-1040"), "stack_choices"};
  std::vector<std::string> other = call;
  other.insert(other.end(), {"--set", "shelf[0].thickness_m=1.25"});
  EXPECT_EQ(ran(other).status, 0);
  EXPECT_THAT(ran(call).out, testing::Not(HasSubstr("0.00125")));
  EXPECT_THAT(ran(other).out, HasSubstr("0.00125"));
}

TEST(Help, SaysWhereAKeyLeads) {
  EXPECT_THAT(ran({"--help"}).out, HasSubstr("shelf[2].thickness_m"));
  EXPECT_THAT(textOf(STROKEWRIGHT_SOURCE_DIR "/resources/strokewright.1"),
              HasSubstr("seat_height_m.readings[1][0]"));
}

}  // namespace
}  // namespace strokewright::app
