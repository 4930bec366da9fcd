#include "core/describe/wording.h"

#include <gtest/gtest.h>

#include "tests/describe/toys.h"

namespace strokewright::describe {
namespace {

const units::Style kBench;

Quantity mm(double value) { return {units::Kind::Length, value * 1e-3}; }

TEST(ASentence, PutsItsArgumentsInAnyOrder) {
  EXPECT_EQ(
      word(Sentence{"{2} before {1}, {2} again", {std::string("a"), std::string("b")}}, kBench),
      "B before a, b again");
}

TEST(ASentence, NamesEntriesInLowerCaseButAtItsStart) {
  EXPECT_EQ(word(Sentence{"{1} and {1}", {&toys::place}}, kBench), "Place and place");
  EXPECT_EQ(word(Sentence{"{1} and {1}", {&toys::sum}}, kBench), "Sum and sum");
}

TEST(ASentence, ListsNumbersWithOneUnitAtTheEnd) {
  EXPECT_EQ(word(Sentence{"{1}", {std::vector<Quantity>{mm(1.0), mm(2.5)}}}, kBench),
            "1.00 · 2.50\u00A0mm");
}

TEST(ASentence, SaysANumberWithTheDigitsItWasTypedWith) {
  EXPECT_EQ(word(Sentence{"{1} of {2}, {3}", {mm(0.385), mm(0.5), mm(0.4157)}}, kBench),
            "0.385\u00A0mm of 0.50\u00A0mm, 0.42\u00A0mm");
  EXPECT_EQ(word(Sentence{"{1} and {2}", {std::vector{mm(0.796), mm(0.9)}, mm(0.3)}}, kBench),
            "0.796 · 0.900\u00A0mm and 0.30\u00A0mm");
}

TEST(ASentence, TellsApartWhatIsNotAlike) {
  for (const double gap : {0.796, 0.7961}) {
    EXPECT_EQ(word(Sentence{"{1} under {2}", {mm(gap), mm(0.8)}}, kBench),
              "0.796\u00A0mm under 0.800\u00A0mm");
  }
}

TEST(ASentence, SpeaksTheUnitsAndMarksOfItsReader) {
  units::Style style;
  style.group = units::UnitGroup::inchPound();
  style.decimalMark = ",";
  EXPECT_EQ(word(Sentence{"A bore of {1}.", {mm(76.2)}}, style), "A bore of 3,0000\u00A0in.");
}

TEST(ASentence, KeepsBracesThatAreNoArgument) {
  EXPECT_EQ(word(Sentence{"{3} {x} {", {std::string("a")}}, kBench), "{3} {x} {");
}

TEST(ARefusal, NamesAnEntryOrSpeaksForItsLeaf) {
  EXPECT_EQ(word(RefusedBecause{.input = &toys::part}, kBench),
            "The entry for part cannot be as it is.");
  EXPECT_EQ(word(RefusedBecause{.input = &toys::part, .donors = true}, kBench),
            "The donor's entry for part cannot be as it is.");
  EXPECT_EQ(word(RefusedBecause{.sentence = "A rod of {1} needs {2}.",
                                .kind = units::Kind::Length,
                                .value = 0.038,
                                .limit = 0.040},
                 kBench),
            "A rod of 38.00\u00A0mm needs 40.00\u00A0mm.");
}

TEST(AChoice, IsWordedByItsLabel) { EXPECT_EQ(wordValue(toys::sort, 1.0, kBench), "odd"); }

TEST(TypedText, ReadsBackWithoutWhatArithmeticLeft) {
  EXPECT_EQ(typedText(toys::x1, 0.1 + 0.2), "0.30");
  EXPECT_EQ(typedText(toys::sort, 1.0), "odd");
}

}  // namespace
}  // namespace strokewright::describe
