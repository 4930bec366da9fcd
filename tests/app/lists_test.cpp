#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "core/assess/assess.h"
#include "core/describe/table.h"
#include "tests/app/ran.h"

namespace strokewright::app {
namespace {

using nlohmann::json;
using testing::HasSubstr;

TEST(Inputs, AreAllListedWithWhatIsKnownOfThem) {
  const json list = json::parse(ran({"inputs", "--json"}).out)["inputs"];
  const std::string text = ran({"inputs"}).out;
  const auto all = assess::catalogue().inputs();
  ASSERT_EQ(list.size(), all.size());
  for (std::size_t i = 0; i < all.size(); ++i) {
    const describe::Input& input = *all[i];
    SCOPED_TRACE(input.key);
    EXPECT_EQ(list[i]["key"], input.key);
    EXPECT_EQ(list[i]["name"], input.label);
    EXPECT_EQ(list[i]["kind"], units::kindName(input.kind));
    EXPECT_EQ(list[i]["unit"], units::siName(input.kind));
    EXPECT_EQ(list[i]["per"], input.list ? "cylinder" : "engine");
    EXPECT_EQ(list[i].value("measure", ""), input.measure);
    EXPECT_EQ(list[i].contains("default"), input.standing.exists());
    EXPECT_EQ(list[i].value("choices", json::array()).size(), input.choices.size());
    EXPECT_THAT(text, HasSubstr(std::string(input.key) + "  " + std::string(input.label)));
  }
}

TEST(Inputs, SayTheirLimitsInSi) {
  const json list = json::parse(ran({"inputs", "--json"}).out)["inputs"];
  for (std::size_t i = 0; i < list.size(); ++i) {
    const describe::Input& input = *assess::catalogue().inputs()[i];
    if (!std::isfinite(input.possible.least)) continue;
    SCOPED_TRACE(input.key);
    EXPECT_EQ(list[i]["possible"][input.possible.leastExcluded ? "over" : "least"],
              input.possible.least);
  }
}

TEST(Quantities, AreAllListedWithFormulaAndSource) {
  const json list = json::parse(ran({"quantities", "--json"}).out)["quantities"];
  const std::string text = ran({"quantities"}).out;
  const auto all = assess::catalogue().results();
  ASSERT_EQ(list.size(), all.size());
  for (std::size_t i = 0; i < all.size(); ++i) {
    const describe::Result& result = *all[i];
    SCOPED_TRACE(result.key);
    EXPECT_EQ(list[i]["key"], result.key);
    EXPECT_EQ(list[i]["unit"], units::siName(result.kind));
    EXPECT_EQ(list[i].value("formula", ""), result.formula);
    EXPECT_EQ(list[i].value("source", ""), result.source);
    EXPECT_EQ(list[i].value("valid", ""), result.valid);
    EXPECT_THAT(text, HasSubstr(std::string(result.key) + "  " + std::string(result.name)));
    EXPECT_THAT(text, HasSubstr(std::string(result.formula)));
  }
}

TEST(Quantities, ListTheTablesWithTheirColumns) {
  const json list = json::parse(ran({"quantities", "--json"}).out)["tables"];
  const std::string text = ran({"quantities"}).out;
  const auto all = assess::catalogue().tables();
  ASSERT_FALSE(all.empty());
  ASSERT_EQ(list.size(), all.size());
  for (std::size_t i = 0; i < all.size(); ++i) {
    const describe::Table& table = *all[i];
    SCOPED_TRACE(table.key);
    EXPECT_EQ(list[i]["key"], table.key);
    EXPECT_EQ(list[i]["name"], table.name);
    EXPECT_EQ(list[i].value("formula", ""), table.formula);
    EXPECT_EQ(list[i].value("source", ""), table.source);
    EXPECT_THAT(text, HasSubstr(std::string(table.key) + "  " + std::string(table.name)));
    ASSERT_EQ(list[i]["columns"].size(), table.columns.size());
    for (std::size_t column = 0; column < table.columns.size(); ++column) {
      const describe::Column& described = table.columns[column];
      EXPECT_EQ(list[i]["columns"][column]["key"], described.key);
      EXPECT_EQ(list[i]["columns"][column].contains("unit"), !described.words);
      EXPECT_THAT(text, HasSubstr(std::string(described.key) + "  " + std::string(described.name)));
    }
  }
}

}  // namespace
}  // namespace strokewright::app
