// Projects made up by chance, the same ones in every run: whatever is entered, the assessment
// answers, and what it answers is a number.
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <random>
#include <string>

#include "core/assess/assess.h"
#include "core/describe/wording.h"
#include "core/model/entry_text.h"
#include "core/model/inputs.h"
#include "core/storage/project_text.h"
#include "core/units/style.h"

namespace strokewright::assess {
namespace {

using describe::Cell;
using describe::Input;
using describe::Result;
using describe::State;
using model::Engine;
using model::Project;

constexpr int kProjects = 200;

class ProjectMaker {
 public:
  Project next() {
    mischief_ = below(3);
    Project project;
    for (std::size_t left = 1 + below(4); left > 0; --left) project.engines.push_back(engine());
    project.referenceDonor = donorIn(project);
    return project;
  }

 private:
  std::size_t below(std::size_t limit) { return random_() % limit; }
  double share() { return std::uniform_real_distribution(0.0, 1.0)(random_); }

  /// Any donor; of several perhaps none.
  int donorIn(const Project& project) {
    std::vector<int> donors;
    for (std::size_t i = 0; i < project.engines.size(); ++i) {
      if (project.engines[i].part == model::Part::Donor) donors.push_back(static_cast<int>(i));
    }
    if (donors.size() > 1) donors.push_back(-1);
    return donors.empty() ? -1 : donors[below(donors.size())];
  }

  Engine engine() {
    Engine engine;
    engine.part = static_cast<model::Part>(below(3));
    const std::size_t filled = 50 + below(51);
    for (const Input* input : model::inputs()) {
      if (below(100) < filled) {
        engine.set(*input, model::entryFrom(*input, text(*input), group_));
      }
    }
    return engine;
  }

  std::string text(const Input& input) {
    if (mischief_ > 0 && below(25) == 0) return std::string(nonsense());
    if (!input.choices.empty()) return std::string(input.choices[below(input.choices.size())].key);
    std::string text = number(input);
    while (input.list && below(4) == 0) text += "; " + number(input);
    if (below(2) == 0) {
      text += " ± " + typed(input, input.plusMinus * 2.0 * share());
    }
    return text;
  }

  std::string_view nonsense() {
    constexpr std::array<std::string_view, 10> kNonsense = {
        "tbc", "?", "66 furlongs", "0 ± 0", "-0", "1e300", "-1e300", "1e-300", "1 ± 1e300", "7; 8"};
    return kNonsense[below(kNonsense.size())];
  }

  /// With four decimals at most, as people type sizes.
  std::string typed(const Input& input, double si) {
    return units::exact(std::round(units::fromSi(group_[input.kind], si) * 1e4) / 1e4);
  }

  std::string number(const Input& input) {
    constexpr std::array kSlips = {25.4, 1 / 25.4, 10.0, 0.1, 2.0, 0.5, -1.0, 0.0, 1e3, 1e-3};
    const bool counted = input.kind == units::Kind::Count;
    double value = counted ? 1.0 + static_cast<double>(below(4)) : input.typical;
    if (!counted) value *= 0.9 + 0.2 * share();
    if (mischief_ > 1 && below(10) == 0) value *= kSlips[below(kSlips.size())];
    return typed(input, value);
  }

  std::mt19937 random_{19690721};
  units::UnitGroup group_ = units::UnitGroup::metric();
  std::size_t mischief_ = 0;  ///< 0: plausible; 1: some entries make no sense; 2: slips as well
};

class RandomProjects : public testing::Test {
 protected:
  ProjectMaker maker_;
};

void expectFinite(const Cell& cell, std::string_view key) {
  if (cell.state != State::Value) return;
  EXPECT_TRUE(std::isfinite(cell.value)) << key;
  EXPECT_TRUE(std::isfinite(cell.likely)) << key << ": its likely ±";
  EXPECT_TRUE(std::isfinite(cell.worst)) << key << ": its worst ±";
}

TEST_F(RandomProjects, AreAssessedToFiniteNumbers) {
  int values = 0;
  for (int n = 0; n < kProjects && !HasFailure(); ++n) {
    const Project project = maker_.next();
    SCOPED_TRACE(storage::write(project));
    const Assessment assessment(project);
    for (int engine = 0; engine < assessment.evaluation().engines(); ++engine) {
      for (const Result* result : catalogue().results()) {
        for (int i = 0; i < assessment.evaluation().cylinders(engine); ++i) {
          const Cell& cell = assessment(engine, *result, i);
          expectFinite(cell, result->key);
          values += cell.state == State::Value ? 1 : 0;
        }
      }
    }
  }
  EXPECT_GT(values, kProjects * 20) << "the projects hardly ever come to anything";
}

void expectWhole(const std::string& said) {
  EXPECT_FALSE(said.empty());
  for (const char* fault : {"nan", "inf", "{", "}"}) {
    EXPECT_EQ(said.find(fault), std::string::npos) << said;
  }
}

TEST_F(RandomProjects, AreSpokenOfInWholeSentences) {
  const units::Style style;
  for (int n = 0; n < kProjects && !HasFailure(); ++n) {
    const Project project = maker_.next();
    SCOPED_TRACE(storage::write(project));
    const Assessment assessment(project);
    for (int engine = 0; engine < assessment.evaluation().engines(); ++engine) {
      for (const describe::Finding& finding : assessment.findings(engine)) {
        expectWhole(describe::word(finding.says, style));
      }
      for (const Result* result : catalogue().results()) {
        const Cell& cell = assessment(engine, *result);
        if (cell.state != State::Refused) continue;
        expectWhole(describe::word(assessment.evaluation().refusal(cell), style));
      }
    }
  }
}

TEST_F(RandomProjects, ComeBackFromTheirFiles) {
  for (int n = 0; n < kProjects && !HasFailure(); ++n) {
    const Project project = maker_.next();
    const storage::Read back = storage::read(storage::write(project));
    EXPECT_EQ(back.project, project) << storage::write(project);
    EXPECT_TRUE(back.remarks.empty());
  }
}

}  // namespace
}  // namespace strokewright::assess
