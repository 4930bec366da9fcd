#include "core/sheet/numbers.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <utility>

#include "core/describe/wording.h"
#include "core/sheet/words.h"

namespace strokewright::sheet {
namespace {

using describe::Cell;
using describe::Evaluation;
using describe::Input;
using describe::Result;
using describe::State;
using units::Kind;

/// A number and how it is written.
struct Written {
  double value;
  std::string text;
};

/// Said once where every cylinder says the same, listed otherwise.
Text listed(const std::vector<Written>& all) {
  std::vector<std::string> texts;
  std::ranges::transform(all, std::back_inserter(texts), &Written::text);
  if (std::ranges::all_of(texts, [&](const auto& it) { return it == texts[0]; })) {
    return {texts[0], {}};
  }
  const auto [least, most] = std::ranges::minmax_element(all, {}, &Written::value);
  return {join(texts, " · "), least->text + " … " + most->text, true};
}

/// Said only where every cylinder says the same.
std::string sameInAll(const std::vector<std::string>& texts) {
  const bool same = std::ranges::all_of(texts, [&](const auto& it) { return it == texts[0]; });
  return same ? texts[0] : std::string();
}

int decimalsOf(const units::Style& style, Kind kind) { return style.group[kind].decimals; }

/// How many more decimals the reader's unit shows than the bench unit.
int finer(const units::Style& style, Kind kind) {
  return decimalsOf(style, kind) - units::unitsOf(kind).front().decimals;
}

bool isDigit(char letter) { return letter >= '0' && letter <= '9'; }

/// Most decimals of the numbers in a text before its ±, where they are in the reader's unit.
int typedDecimals(const units::Style& style, Kind kind, const describe::Entry& entry) {
  std::string text = entry.text.substr(0, entry.text.find("±"));
  const std::string_view unit = style.unit(kind);
  const auto isLetter = [](char it) { return (it >= 'a' && it <= 'z') || it == '"'; };
  const bool saysUnit = std::ranges::any_of(text, isLetter);
  const bool same =
      saysUnit ? !unit.empty() && text.find(unit) != std::string::npos : entry.unit == unit;
  if (!same) return 0;
  int most = 0;
  for (std::size_t i = 1; i < text.size(); ++i) {
    if ((text[i] != '.' && text[i] != ',') || !isDigit(text[i - 1])) continue;
    int decimals = 0;
    while (i + 1 < text.size() && isDigit(text[i + 1])) ++i, ++decimals;
    most = std::max(most, decimals);
  }
  return most;
}

}  // namespace

int decimalsFor(const units::Style& style, Kind kind, double si) {
  const double usual =
      units::fromSi(style.group[kind], si) * std::pow(10.0, decimalsOf(style, kind));
  constexpr double kBehind = 1e-6;  // of a digit: what arithmetic leaves
  const double tenths = usual * 10.0;
  const bool whole = std::abs(usual - std::round(usual)) < kBehind;
  const bool oneMore = std::abs(tenths - std::round(tenths)) < kBehind;
  return !whole && oneMore ? units::unitsOf(kind).front().decimals + 1 : -1;
}

std::string asEntered(const units::Style& style, Kind kind, const describe::Entry& entry,
                      double si) {
  constexpr int kMostMore = 2;
  const int usual = decimalsOf(style, kind);
  const int typed = std::min(typedDecimals(style, kind, entry), usual + kMostMore);
  if (typed <= usual) return style.number(kind, si, decimalsFor(style, kind, si));
  return style.number(kind, si, typed - finer(style, kind));
}

int Numbers::cylinders(int engine, const Result& result) const {
  return result.per == describe::Per::Engine ? 1 : assessment_.evaluation().cylinders(engine);
}

bool Numbers::isValue(int engine, const Result& result) const {
  for (int i = 0; i < cylinders(engine, result); ++i) {
    if (assessment_(engine, result, i).state != State::Value) return false;
  }
  return true;
}

bool Numbers::isEverywhere(int engine, const Result& result, double value) const {
  if (!isValue(engine, result)) return false;
  for (int i = 0; i < cylinders(engine, result); ++i) {
    if (assessment_(engine, result, i).value != value) return false;
  }
  return true;
}

std::string Numbers::one(int engine, const Result& result, int cylinder) const {
  const Cell& cell = assessment_(engine, result, cylinder);
  if (cell.state != State::Value) return std::string(kNothing);
  if (result.kind == Kind::Choice) return wordValue(result, cell.value, style_);
  return style_.number(result.kind, cell.value, result.decimals);
}

std::string Numbers::one(int engine, const Input& input, int cylinder) const {
  const Evaluation& evaluation = assessment_.evaluation();
  if (!evaluation.inputStands(engine, input, cylinder)) return std::string(kNothing);
  return style_.number(input.kind, evaluation.inputValue(engine, input, cylinder));
}

std::vector<const Result*> Numbers::asked() const {
  std::vector<const Result*> results(asked_.begin(), asked_.end());
  std::ranges::sort(results, {}, &Result::number);
  return results;
}

Text Numbers::text(int engine, const Result& result) const {
  asked_.insert(&result);
  std::vector<Written> all;
  for (int i = 0; i < cylinders(engine, result); ++i) {
    const Cell& cell = assessment_(engine, result, i);
    if (cell.state == State::Waits) return waiting(engine, result, i);
    all.push_back({cell.value, one(engine, result, i)});
  }
  return listed(all);
}

Text Numbers::waiting(int engine, const Result& result, int cylinder) const {
  const auto waits = assessment_.waitsFor(engine, result, cylinder);
  if (waits.empty()) return {"waits", {}};
  std::string name = waits.front().donors ? "the donor's " : "";
  name += describe::inSentence(waits.front().input->label);
  if (waits.size() > 1) name += " and " + std::to_string(waits.size() - 1) + " more";
  return {"waits for " + name, "waits"};
}

Text Numbers::text(int engine, const Input& input, Zeros zeros) const {
  const Evaluation& evaluation = assessment_.evaluation();
  std::vector<Written> all;
  for (int i = 0; i < evaluation.cylinders(engine); ++i) {
    std::string number = one(engine, input, i);
    if (zeros == Zeros::Dropped) number = withoutZeros(std::move(number));
    all.push_back({evaluation.inputValue(engine, input, i), std::move(number)});
  }
  return listed(all);
}

double Numbers::limit(int engine, const Input& input) const {
  const describe::Entry& entry =
      assessment_.project().engines[static_cast<std::size_t>(engine)][input];
  double most = 0.0;
  for (std::size_t place = 0; place < entry.values.size(); ++place) {
    most = std::max(most, describe::limitOf(input, entry, place));
  }
  return most;
}

Text Numbers::limitOf(int engine, const Input& input) const {
  const double most = limit(engine, input);
  if (most <= 0.0) return {std::string(kNothing), {}};
  return {style_.number(input.kind, most, decimalsFor(style_, input.kind, most)), {}};
}

Text Numbers::entered(int engine, const Input& input) const {
  const Evaluation& evaluation = assessment_.evaluation();
  if (!evaluation.inputGiven(engine, input)) return text(engine, input);
  const describe::Entry& entry =
      assessment_.project().engines[static_cast<std::size_t>(engine)][input];
  std::vector<Written> all;
  for (int i = 0; i < evaluation.cylinders(engine); ++i) {
    if (!evaluation.inputStands(engine, input, i)) return text(engine, input);
    const double value = evaluation.inputValue(engine, input, i);
    all.push_back({value, asEntered(style_, input.kind, entry, value)});
  }
  Text text = listed(all);
  if (limit(engine, input) > 0.0) text.exact = text.full + " ± " + limitOf(engine, input).full;
  return text;
}

Text Numbers::twice(int engine, const Result& result, Zeros zeros) const {
  asked_.insert(&result);
  if (!isValue(engine, result)) return text(engine, result);
  std::vector<Written> all;
  for (int i = 0; i < cylinders(engine, result); ++i) {
    const double value = 2.0 * assessment_(engine, result, i).value;
    std::string number = style_.number(result.kind, value);
    if (zeros == Zeros::Dropped) number = withoutZeros(std::move(number));
    all.push_back({value, std::move(number)});
  }
  return listed(all);
}

Text Numbers::tolerance(int engine, const Result& result) const {
  double likely = 0.0;
  double worst = 0.0;
  for (int i = 0; i < cylinders(engine, result); ++i) {
    likely = std::max(likely, assessment_(engine, result, i).likely);
    worst = std::max(worst, assessment_(engine, result, i).worst);
  }
  if (!isValue(engine, result) || worst <= 0.0) return {std::string(kNothing), {}};
  return {style_.number(result.kind, likely, result.decimals) + " / " +
              style_.number(result.kind, worst, result.decimals),
          {}};
}

namespace {

/// The number with its last digit towards nought or away from it, so that a range never reads
/// narrower than it is.
std::string outwards(const units::Style& style, const Result& result, double si, bool up) {
  const units::Unit& unit = style.group[result.kind];
  const units::Unit& bench = units::unitsOf(result.kind).front();
  const int decimals =
      result.decimals < 0 ? unit.decimals : result.decimals + unit.decimals - bench.decimals;
  const double digits = std::pow(10.0, std::max(decimals, 0));
  constexpr double kBehind = 1e-6;  // of a digit: what arithmetic leaves
  const double scaled = units::fromSi(unit, si) * digits;
  const double whole = up ? std::ceil(scaled - kBehind) : std::floor(scaled + kBehind);
  return style.number(result.kind, units::toSi(unit, whole / digits), result.decimals);
}

}  // namespace

Text Numbers::worstRange(int engine, const Result& result) const {
  if (!isValue(engine, result)) return {std::string(kNothing), {}};
  double least = assessment_(engine, result).value;
  double most = least;
  for (int i = 0; i < cylinders(engine, result); ++i) {
    const Cell& cell = assessment_(engine, result, i);
    least = std::min(least, cell.value - cell.worst);
    most = std::max(most, cell.value + cell.worst);
  }
  return {outwards(style_, result, least, false) + " … " + outwards(style_, result, most, true),
          {}};
}

std::string Numbers::difference(int engine, int donor, const Result& result) const {
  if (result.kind == Kind::Choice || !isValue(engine, result) || !isValue(donor, result)) return {};
  if (cylinders(engine, result) != cylinders(donor, result)) return {};
  std::vector<std::string> texts;
  for (int i = 0; i < cylinders(engine, result); ++i) {
    const double by =
        result.step(assessment_(donor, result, i).value, assessment_(engine, result, i).value);
    texts.push_back(style_.difference(result.kind, by, result.decimals));
  }
  return sameInAll(texts);
}

std::string Numbers::difference(int engine, int donor, const Input& input) const {
  const Evaluation& evaluation = assessment_.evaluation();
  if (evaluation.cylinders(engine) != evaluation.cylinders(donor)) return {};
  std::vector<std::string> texts;
  for (int i = 0; i < evaluation.cylinders(engine); ++i) {
    if (!evaluation.inputStands(engine, input, i)) return {};
    if (!evaluation.inputStands(donor, input, i)) return {};
    texts.push_back(style_.difference(input.kind, evaluation.inputValue(engine, input, i) -
                                                      evaluation.inputValue(donor, input, i)));
  }
  return sameInAll(texts);
}

Text Numbers::together(const std::vector<Text>& parts, std::string_view between) {
  std::vector<std::string> texts;
  std::vector<std::string> exact;
  for (const Text& part : parts) {
    if (!part.brief.empty()) return part;  // it waits
    texts.push_back(part.full);
    exact.push_back(part.exact.empty() ? part.full : part.exact);
  }
  const bool nothing = std::ranges::all_of(texts, [](const auto& it) { return it == kNothing; });
  if (nothing) return {std::string(kNothing), {}};
  return {join(texts, between), {}, false, exact == texts ? "" : join(exact, between)};
}

std::string Numbers::withoutZeros(std::string number) const {
  if (number.find(style_.decimalMark) == std::string::npos) return number;
  number.erase(number.find_last_not_of('0') + 1);
  if (number.ends_with(style_.decimalMark)) {
    number.erase(number.size() - style_.decimalMark.size());
  }
  return number;
}

}  // namespace strokewright::sheet
