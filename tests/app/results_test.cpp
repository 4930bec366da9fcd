#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <clocale>
#include <nlohmann/json.hpp>

#include "core/assess/assess.h"
#include "core/deck/results.h"
#include "core/describe/wording.h"
#include "core/model/entry_text.h"
#include "core/model/inputs.h"
#include "tests/app/ran.h"

namespace strokewright::app {
namespace {

using assess::Assessment;
using describe::Cell;
using describe::Result;
using describe::State;
using nlohmann::json;
using testing::HasSubstr;

namespace in = model::in;

std::string named(const testing::TestParamInfo<std::string>& row) {
  std::string name = row.param;
  std::erase(name, '-');
  return name;
}

class Sample : public testing::TestWithParam<std::string> {};
INSTANTIATE_TEST_SUITE_P(All, Sample,
                         testing::Values("burdock-719", "culvert-1040", "tansy-270", "teasel-125"),
                         named);

/// One member as the assessment has it: an array where there are several cylinders.
template <typename Value>
json expected(const Assessment& assessment, int engine, const Result& result, const Value& value) {
  const int cylinders = assessment.evaluation().cylinders(engine);
  if (result.per == describe::Per::Engine || cylinders == 1) {
    return value(assessment(engine, result));
  }
  json list = json::array();
  for (int i = 0; i < cylinders; ++i) list.push_back(value(assessment(engine, result, i)));
  return list;
}

TEST_P(Sample, IsInTheJsonAsItIsAssessedKeyByKey) {
  const model::Project project = projectOf(sample(GetParam()));
  const Assessment assessment(project);
  const Ran it = ran({"results", sample(GetParam()), "--json"});
  const json written = json::parse(it.out);
  ASSERT_EQ(written["engines"].size(), project.engines.size());
  for (int engine = 0; engine < assessment.evaluation().engines(); ++engine) {
    const auto at = static_cast<std::size_t>(engine);
    const json& shown = written["engines"][at];
    EXPECT_EQ(shown["name"], project.engines[at].name);
    EXPECT_EQ(shown["part"], model::partKey(project.engines[at].part));
    ASSERT_EQ(shown["results"].size(), assess::catalogue().results().size());
    for (const Result* result : assess::catalogue().results()) {
      SCOPED_TRACE(result->key);
      const json& member = shown["results"].at(std::string(result->key));
      EXPECT_EQ(member["unit"], units::siName(result->kind));
      EXPECT_EQ(member["value"],
                expected(assessment, engine, *result, [&](const Cell& cell) -> json {
                  if (cell.state != State::Value) return nullptr;
                  if (result->kind != units::Kind::Choice) return cell.value;
                  return result->choices[static_cast<std::size_t>(cell.value)].key;
                }));
      if (member.contains("worst")) {
        EXPECT_EQ(member["worst"], expected(assessment, engine, *result, [](const Cell& cell) {
                    return cell.state == State::Value ? json(cell.worst) : json();
                  }));
        EXPECT_EQ(member["likely"], expected(assessment, engine, *result, [](const Cell& cell) {
                    return cell.state == State::Value ? json(cell.likely) : json();
                  }));
      }
      json waits = json::array();
      for (const auto& wait : assessment.waitsFor(engine, *result)) {
        waits.push_back((wait.donors ? "donor:" : "") + std::string(wait.input->key));
      }
      if (assessment(engine, *result).state == State::Waits) {
        EXPECT_EQ(member["waits_for"], waits);
      }
    }
    EXPECT_EQ(shown["findings"].size(), assessment.findings(engine).size());
  }
}

TEST_P(Sample, SaysInTheTableWhatTheWindowSays) {
  const model::Project project = projectOf(sample(GetParam()));
  const Assessment assessment(project);
  const Ran it = ran({"results", sample(GetParam())});
  EXPECT_EQ(it.err, "");
  for (int engine = 0; engine < assessment.evaluation().engines(); ++engine) {
    EXPECT_THAT(it.out, HasSubstr(project.engines[static_cast<std::size_t>(engine)].name + " · "));
    for (const Result* result : assess::catalogue().results()) {
      EXPECT_THAT(it.out, HasSubstr(std::string(result->name)));
      const Cell& cell = assessment(engine, *result);
      if (cell.state != State::Value || !assessment.sameInAll(engine, *result)) continue;
      EXPECT_THAT(it.out, HasSubstr(wordValue(*result, cell.value, units::Style{})));
    }
    for (const describe::Finding& finding : assessment.findings(engine)) {
      EXPECT_THAT(it.out, HasSubstr(word(finding.says, units::Style{})));
    }
  }
}

TEST_P(Sample, LeavesNothingForbidden) {
  EXPECT_EQ(ran({"results", sample(GetParam())}).status, 0);
  EXPECT_EQ(ran({"check", sample(GetParam())}).status, 0);
}

TEST_P(Sample, IsToldInTheSameBytesUnderAGermanLocale) {
  const std::vector<std::vector<std::string>> calls = {
      {"results", sample(GetParam())},
      {"results", sample(GetParam()), "--json"},
      {"check", sample(GetParam())},
      {"solve", sample(GetParam()), "--want", "compression_ratio=10.5", "--by",
       "chamber_volume_m3"},
      {"inputs", "--json"},
      {"inputs"},
      {"quantities", "--json"},
      {"quantities"}};
  for (const auto& call : calls) {
    const Ran plain = ran(call);
    if (std::setlocale(LC_ALL, "de_DE.UTF-8") == nullptr) GTEST_SKIP() << "no German locale here";
    const Ran german = ran(call);
    std::setlocale(LC_ALL, "C");
    EXPECT_EQ(german.out, plain.out);
    EXPECT_EQ(german.status, plain.status);
  }
}

TEST(Results, OfTheNamedEngineAreToldAlone) {
  const json written =
      json::parse(ran({"results", sample("burdock-719"), "--engine", "Burdock 636", "--json"}).out);
  ASSERT_EQ(written["engines"].size(), 1U);
  EXPECT_EQ(written["engines"][0]["name"], "Burdock 636");
}

TEST(Results, ThatWaitNameWhatTheyWaitFor) {
  const json written =
      json::parse(ran({"results", sample("burdock-719"), "--json", "--set", "head_gasket_m="}).out);
  const json& squish = written["engines"][1]["results"]["squish_gap_m"];
  EXPECT_EQ(squish["value"], json::parse("[null, null, null]"));
  EXPECT_EQ(squish["waits_for"], json::parse(R"(["head_gasket_m"])"));
  EXPECT_THAT(ran({"results", sample("burdock-719"), "--set", "head_gasket_m="}).out,
              HasSubstr("waits for: head_gasket_m\n"));
}

TEST(Results, ThatWaitForTheDonorSaySo) {
  const json written = json::parse(ran({"results", sample("burdock-719"), "--json", "--engine",
                                        "Burdock 636", "--set", "proven_speed_rad_s="})
                                       .out);
  EXPECT_EQ(written["engines"][0]["results"]["proven_acceleration_m_s2"]["waits_for"][0],
            "proven_speed_rad_s");
  model::Project project = projectOf(sample("burdock-719"));
  project.engines[0].set(in::provenSpeed, {});
  const std::string path = testing::TempDir() + "unproven.strokewright";
  std::ofstream(path) << storage::write(project);
  const json both = json::parse(ran({"results", path, "--json"}).out);
  EXPECT_EQ(both["engines"][1]["results"]["ceiling_donor_rad_s"]["waits_for"],
            json::parse(R"(["donor:proven_speed_rad_s"])"));
}

TEST(Results, ThatAreRefusedSayWhyAndLeaveTheOthersAlone) {
  const Ran it = ran({"results", sample("teasel-125"), "--json", "--set", "rod_length_m=3"});
  EXPECT_EQ(it.status, 1);
  const json results = json::parse(it.out)["engines"][1]["results"];
  EXPECT_EQ(results["squish_gap_m"]["value"], nullptr);
  EXPECT_THAT(results["squish_gap_m"]["refused"].get<std::string>(),
              HasSubstr("A rod of 3.00\u00a0mm cannot turn"));
  EXPECT_TRUE(results["gasket_volume_m3"]["value"].is_number());
}

TEST(Results, ThatDoNotApplySayWhy) {
  const std::vector<std::string> call = {"results", sample("burdock-719"), "--json", "--engine",
                                         "Burdock 636"};
  const json donor = json::parse(ran(call).out)["engines"][0]["results"];
  const json& measured = donor["ceiling_donor_rad_s"];
  EXPECT_EQ(measured["value"], json::parse("[null, null, null]"));
  EXPECT_EQ(measured["does_not_apply"],
            json::array_t(3, "a donor proves, it is not measured by itself"));
  for (const auto& [key, result] : donor.items()) {
    const bool has =
        result["value"].is_array() ? !result["value"][0].is_null() : !result["value"].is_null();
    const int reasons = static_cast<int>(result.contains("waits_for")) +
                        static_cast<int>(result.contains("refused")) +
                        static_cast<int>(result.contains("does_not_apply"));
    EXPECT_EQ(reasons, has ? 0 : 1) << key;
  }
}

TEST(Results, CarryFindingsWithWhatWouldPutThemRight) {
  const json written = json::parse(ran({"results", sample("burdock-719"), "--json", "--set",
                                        "rod_length_m=4.6", "--set", "bore_m=0.1"})
                                       .out);
  const json& findings = written["engines"][1]["findings"];
  ASSERT_FALSE(findings.empty());
  EXPECT_EQ(findings[0]["weight"], "forbids");
  bool mended = false;
  for (const json& finding : findings) {
    for (const json& mend : finding["mends"]) {
      mended = mended || mend["set"].contains("rod_length_m");
    }
  }
  EXPECT_TRUE(mended);
}

/// A text that any input understands, and that is not what the sample holds.
std::string typed(const describe::Input& input) {
  if (input.kind == units::Kind::Choice) return std::string(input.choices.back().key);
  return describe::typedText(input, input.typical);
}

TEST(Set, ReachesEveryEntryByThePathOfTheFile) {
  for (const describe::Input* input : model::inputs()) {
    SCOPED_TRACE(input->key);
    const std::string text = typed(*input);
    model::Project project = projectOf(sample("teasel-125"));
    model::Engine& target = project.engines[static_cast<std::size_t>(project.target())];
    target.set(*input, model::entryFrom(*input, text, units::UnitGroup::metric()));
    const std::string path = testing::TempDir() + "edited.strokewright";
    std::ofstream(path) << storage::write(project);
    const Ran edited = ran({"results", path, "--json"});
    const Ran set = ran(
        {"results", sample("teasel-125"), "--json", "--set", std::string(input->key) + "=" + text});
    EXPECT_EQ(set.out, edited.out);
    EXPECT_EQ(set.status, edited.status);
  }
}

TEST(Set, ActsOnTheTargetOrOnTheNamedEngineAlone) {
  const auto ratiosOf = [](const std::vector<std::string>& extra) {
    std::vector<std::string> call = {"results", sample("teasel-125"), "--json"};
    call.insert(call.end(), extra.begin(), extra.end());
    std::vector<json> ratios;
    const json written = json::parse(ran(call).out);
    for (const json& engine : written["engines"]) {
      ratios.push_back(engine["results"]["bore_stroke_ratio"]["value"]);
    }
    return ratios;
  };
  const auto before = ratiosOf({});
  const auto target = ratiosOf({"--set", "bore_m=56"});
  EXPECT_EQ(target[0], before[0]);
  EXPECT_NE(target[1], before[1]);
  const auto donor = ratiosOf({"--set", "bore_m=56", "--engine", "Teasel 116"});
  ASSERT_EQ(donor.size(), 1U);
  EXPECT_NE(donor[0], before[0]);
}

TEST(Set, ReadsTextAsAFieldDoes) {
  const auto squish = [](const std::string& gasket) {
    return json::parse(
        ran({"results", sample("teasel-125"), "--json", "--set", "head_gasket_m=" + gasket}).out);
  };
  EXPECT_EQ(squish("0,5 mm")["engines"][1]["results"], squish("0.5")["engines"][1]["results"]);
  EXPECT_EQ(squish("40 thou")["engines"][1]["results"],
            squish("1.016 mm")["engines"][1]["results"]);
}

TEST(Set, TakesTheLastOfSeveralForOneEntry) {
  const std::string path = sample("teasel-125");
  EXPECT_EQ(ran({"results", path, "--json", "--set", "bore_m=40", "--set", "bore_m=56"}).out,
            ran({"results", path, "--json", "--set=bore_m=56"}).out);
}

TEST(Set, LeavesTheFileAsItIs) {
  const std::string before = textOf(sample("teasel-125"));
  ran({"results", sample("teasel-125"), "--set", "bore_m=56"});
  EXPECT_EQ(textOf(sample("teasel-125")), before);
}

TEST(Check, SaysWhatForbidsWhatIsRefusedAndWhatWaits) {
  const Ran it = ran({"check", sample("teasel-125"), "--set", "bore_m=0.1", "--set",
                      "rod_length_m=3", "--set", "head_gasket_bore_m="});
  EXPECT_EQ(it.status, 1);
  EXPECT_THAT(it.out, HasSubstr("forbids"));
  EXPECT_THAT(it.out, HasSubstr("refused"));
  EXPECT_THAT(it.out, HasSubstr("for head_gasket_bore_m: "));
  EXPECT_THAT(it.out, HasSubstr("--set rod_length_m=\""));
}

}  // namespace
}  // namespace strokewright::app
