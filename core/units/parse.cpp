#include "core/units/parse.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <numeric>
#include <utility>

#include "core/units/spelling.h"

namespace strokewright::units {

namespace {

constexpr std::ptrdiff_t kMostDigits = 40;

constexpr std::array<std::string_view, 3> kPlusMinusSigns{"±", "+/-", "+-"};

constexpr std::array<std::string_view, 16> kPlaceholders{
    "?", "??",  "tbc", "tba", "tbd",  "-",    "–",    "—",
    "−", "n/a", "nan", "inf", "-nan", "+nan", "-inf", "+inf"};

constexpr std::array<Heed, 6> kHeeds{Heed::Comma,     Heed::ThreeDigits, Heed::Fraction,
                                     Heed::OtherUnit, Heed::Step,        Heed::Mean};

bool isDigit(char letter) { return letter >= '0' && letter <= '9'; }

bool isMark(char letter) { return letter == '.' || letter == ','; }

/// Whether an unknown text behind a number would be a unit rather than a further number.
bool looksLikeUnit(std::string_view text) {
  const std::string spelling = folded(text);
  return !spelling.empty() && spelling.front() >= 'a' && spelling.front() <= 'z';
}

bool take(std::string_view& rest, std::string_view token) {
  if (!rest.starts_with(token)) return false;
  rest.remove_prefix(token.size());
  return true;
}

template <typename Predicate>
std::string_view takeWhile(std::string_view& rest, Predicate wanted) {
  const auto end = std::ranges::find_if_not(rest, wanted);
  const std::string_view taken = rest.substr(0, static_cast<std::size_t>(end - rest.begin()));
  rest.remove_prefix(taken.size());
  return taken;
}

bool takeBlanks(std::string_view& rest) {
  const std::size_t before = rest.size();
  while (const std::size_t length = blankLength(rest)) rest.remove_prefix(length);
  return rest.size() < before;
}

/// @returns true when the sign is a minus.
bool takeSign(std::string_view& rest) {
  if (take(rest, "-") || take(rest, "−")) return true;
  take(rest, "+");
  return false;
}

std::string_view trimmed(std::string_view text) {
  takeBlanks(text);
  std::size_t end = 0;  // behind the last thing that is not a blank
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t blank = blankLength(text.substr(at));
    at += blank > 0 ? blank : 1;
    if (blank == 0) end = at;
  }
  return text.substr(0, end);
}

bool isPlaceholder(std::string_view text) {
  return std::ranges::find(kPlaceholders, folded(text)) != kPlaceholders.end();
}

bool isKnownToAnyKind(std::string_view unitName) {
  for (std::size_t i = 0; i < kKindCount; ++i) {
    if (findUnit(static_cast<Kind>(i), unitName) != nullptr) return true;
  }
  return false;
}

/// 2 5/8, 2-5/8 or 13/16 as written.
struct Fraction {
  std::string_view whole;
  std::string_view over;
  std::string_view under;
};

std::optional<Fraction> takeFraction(std::string_view& rest) {
  std::string_view ahead = rest;
  Fraction fraction;
  fraction.over = takeWhile(ahead, isDigit);
  if (!fraction.over.empty() && (take(ahead, "-") || takeBlanks(ahead))) {
    fraction.whole = fraction.over;
    fraction.over = takeWhile(ahead, isDigit);
  }
  if (fraction.over.empty() || !take(ahead, "/")) return std::nullopt;
  fraction.under = takeWhile(ahead, isDigit);
  if (fraction.under.empty()) return std::nullopt;
  rest = ahead;
  return fraction;
}

std::string_view takeExponent(std::string_view& rest) {
  std::string_view ahead = rest;
  if (!take(ahead, "e") && !take(ahead, "E")) return {};
  if (!take(ahead, "-")) take(ahead, "+");
  if (takeWhile(ahead, isDigit).empty()) return {};
  const std::string_view exponent = rest.substr(0, rest.size() - ahead.size());
  rest = ahead;
  return exponent;
}

/// Digits with at most one point and an exponent; empty when beyond what a double holds.
std::optional<double> fromDigits(std::string_view digits) {
  double number = 0.0;
  const auto result = std::from_chars(digits.data(), digits.data() + digits.size(), number);
  if (result.ec == std::errc::result_out_of_range) return std::nullopt;
  return number;
}

/// "41 794", "10'000 rpm".
bool startsInGroups(std::string_view text) {
  takeSign(text);
  const std::size_t before = takeWhile(text, isDigit).size();
  if (before == 0 || before > 3) return false;
  if (!takeBlanks(text) && !take(text, "'") && !take(text, "’")) return false;
  return takeWhile(text, isDigit).size() == 3;
}

/// Where the first ± stands and its length, which is 0 where there is none.
std::pair<std::size_t, std::size_t> findPlusMinus(std::string_view text) {
  std::pair<std::size_t, std::size_t> first{text.size(), 0};
  for (const std::string_view sign : kPlusMinusSigns) {
    if (const std::size_t at = text.find(sign); at < first.first) first = {at, sign.size()};
  }
  return first;
}

bool mightBeThousands(std::string_view digits) {
  const std::size_t comma = digits.find(',');
  return comma >= 1 && comma <= 3 && digits.size() == comma + 4 && digits.front() != '0';
}

class Reader {
 public:
  Reader(Kind kind, const Unit& bare) : kind_(kind), bare_(bare) {}

  Parsed read(std::string_view text);

 private:
  /// A number as typed; unit is nullptr where none was written.
  struct Item {
    std::string_view text;
    double number = 0.0;
    const Unit* unit = nullptr;
    std::size_t place = 0;  ///< of the value it belongs to
    bool start = false;     ///< of a step on a scale; the next item is its end
  };

  // Each of these returns false, or nothing, after noting the problem.
  bool readText(std::string_view text);
  bool readList(std::string_view text);
  bool readReadings(std::string_view text, std::size_t place);
  bool readReading(std::string_view text, std::size_t place);
  bool readPlusMinus(std::string_view text);
  bool settleUnits();
  bool convert();
  std::optional<Item> item(std::string_view text);
  std::optional<double> number(std::string_view& rest, std::string_view text);
  std::optional<double> value(const Fraction& fraction, std::string_view text);
  std::optional<double> decimal(std::string_view& rest, std::string_view text);
  bool readUnit(std::string_view rest, Item& into);
  std::optional<double> si(const Item& item);

  bool refuse(Problem problem, std::string_view culprit) {
    problem_ = problem;
    culprit_ = culprit;
    return false;
  }
  void heed(Heed what) { heeded_[static_cast<std::size_t>(what)] = true; }

  Kind kind_;
  const Unit& bare_;
  std::vector<Item> list_;
  std::optional<Item> plusMinus_;
  Parsed parsed_;
  Problem problem_ = Problem::None;
  std::string_view culprit_;
  std::array<bool, kHeeds.size()> heeded_{};
};

Parsed Reader::read(std::string_view text) {
  text = trimmed(text);
  if (!readText(text) || !settleUnits() || !convert()) {
    Parsed refused;
    refused.problem = problem_;
    refused.culprit = culprit_.empty() ? text : culprit_;  // empty: a gap
    return refused;
  }
  for (const Heed what : kHeeds) {
    if (heeded_[static_cast<std::size_t>(what)]) parsed_.heeds.push_back(what);
  }
  return parsed_;
}

bool Reader::readText(std::string_view text) {
  if (text.empty()) return refuse(Problem::Empty, text);
  const auto [at, length] = findPlusMinus(text);
  return readList(text.substr(0, at)) && (length == 0 || readPlusMinus(text.substr(at + length)));
}

/// Hands over each piece between the marks; false as soon as one is not read.
template <typename Read>
bool eachBetween(std::string_view text, char mark, const Read& read) {
  while (true) {
    const std::size_t end = text.find(mark);
    if (!read(text.substr(0, end))) return false;
    if (end == std::string_view::npos) return true;
    text.remove_prefix(end + 1);
  }
}

bool Reader::readList(std::string_view text) {
  std::size_t place = 0;
  return eachBetween(text, ';',
                     [&](std::string_view value) { return readReadings(value, place++); });
}

bool Reader::readReadings(std::string_view text, std::size_t place) {
  return eachBetween(text, '|',
                     [&](std::string_view reading) { return readReading(reading, place); });
}

bool Reader::readReading(std::string_view text, std::size_t place) {
  constexpr std::string_view kTo = " to ";
  const std::size_t to = text.find(kTo);
  const bool step = to != std::string_view::npos;
  if (step) {
    const auto start = item(trimmed(text.substr(0, to)));
    if (!start) return false;
    list_.push_back(*start);
    list_.back().place = place;
    list_.back().start = true;
  }
  const auto next = item(trimmed(step ? text.substr(to + kTo.size()) : text));
  if (!next) return false;
  list_.push_back(*next);
  list_.back().place = place;
  if (step && kind_ != Kind::Volume) return refuse(Problem::Range, trimmed(text));
  if (step) heed(Heed::Step);
  return true;
}

bool Reader::readPlusMinus(std::string_view text) {
  text = trimmed(text);
  if (findPlusMinus(text).second > 0 || text.find_first_of(";|") != std::string_view::npos) {
    return refuse(Problem::PlusMinusInside, text);
  }
  plusMinus_ = item(text);
  return plusMinus_.has_value();
}

/// Gives a unit to each number that was written without one.
bool Reader::settleUnits() {
  const Unit* common = nullptr;
  bool several = false;
  for (const Item& each : list_) {
    if (each.unit == nullptr) continue;
    several = several || (common != nullptr && common != each.unit);
    common = each.unit;
  }
  const bool ofPlusMinus = common == nullptr && plusMinus_ && plusMinus_->unit != nullptr &&
                           plusMinus_->unit->name != bare_.name;
  if (common == nullptr) common = &bare_;
  for (Item& each : list_) {
    if (each.unit != nullptr) continue;
    if (several || ofPlusMinus) return refuse(Problem::OpenUnit, each.text);
    each.unit = common;
  }
  if (plusMinus_ && plusMinus_->unit == nullptr) plusMinus_->unit = list_.back().unit;
  return true;
}

bool Reader::convert() {
  std::vector<std::vector<double>> readings(list_.back().place + 1);
  double start = 0.0;
  for (const Item& each : list_) {
    const auto converted = si(each);
    if (!converted) return false;
    if (each.start) {
      start = *converted;
      continue;
    }
    readings[each.place].push_back(*converted - start);
    start = 0.0;
  }
  for (const std::vector<double>& ofOne : readings) parsed_.values.push_back(meanOf(ofOne));
  if (readings.size() < list_.size() &&
      std::ranges::any_of(readings, [](const auto& ofOne) { return ofOne.size() > 1; })) {
    parsed_.readings = std::move(readings);
    heed(Heed::Mean);
  }
  if (plusMinus_) parsed_.plusMinus = si(*plusMinus_);
  return parsed_.plusMinus.has_value() == plusMinus_.has_value();
}

std::optional<double> Reader::si(const Item& item) {
  if (item.unit->name != bare_.name) heed(Heed::OtherUnit);
  const double converted = toSi(*item.unit, item.number) + 0.0;  // -0 becomes 0
  if (!std::isfinite(converted)) {
    refuse(Problem::TooLarge, item.text);
    return std::nullopt;
  }
  return converted;
}

std::optional<Reader::Item> Reader::item(std::string_view text) {
  if (text.empty()) {
    refuse(Problem::Gap, text);
    return std::nullopt;
  }
  if (isPlaceholder(text)) {
    refuse(Problem::Placeholder, text);
    return std::nullopt;
  }
  if (std::ranges::count_if(text, isDigit) > kMostDigits) {
    refuse(Problem::TooLarge, text);
    return std::nullopt;
  }
  std::string_view rest = text;
  const bool negative = takeSign(rest);
  const auto magnitude = number(rest, text);
  if (!magnitude) return std::nullopt;
  Item result{.text = text, .number = negative ? -*magnitude : *magnitude};
  if (!readUnit(trimmed(rest), result)) return std::nullopt;
  return result;
}

std::optional<double> Reader::number(std::string_view& rest, std::string_view text) {
  if (const auto fraction = takeFraction(rest)) return value(*fraction, text);
  return decimal(rest, text);
}

std::optional<double> Reader::value(const Fraction& fraction, std::string_view text) {
  // Whole numbers of at most kMostDigits digits: always within a double.
  const double over = fromDigits(fraction.over).value_or(0.0);
  const double under = fromDigits(fraction.under).value_or(0.0);
  if (under == 0.0) {
    refuse(Problem::ZeroDivisor, text);
    return std::nullopt;
  }
  heed(Heed::Fraction);
  if (fraction.whole.empty()) return over / under;
  if (over >= under) {
    refuse(Problem::ImproperFraction, text);
    return std::nullopt;
  }
  return (fromDigits(fraction.whole).value_or(0.0) * under + over) / under;
}

std::optional<double> Reader::decimal(std::string_view& rest, std::string_view text) {
  const std::string_view written =
      takeWhile(rest, [](char letter) { return isDigit(letter) || isMark(letter); });
  const std::string_view exponent = takeExponent(rest);
  if (std::ranges::none_of(written, isDigit)) {
    refuse(Problem::NotANumber, text);
    return std::nullopt;
  }
  if (std::ranges::count_if(written, isMark) > 1) {
    refuse(Problem::TwoDecimalMarks, written);
    return std::nullopt;
  }
  std::string digits(written);
  if (const std::size_t comma = digits.find(','); comma != std::string::npos) {
    heed(Heed::Comma);
    if (exponent.empty() && mightBeThousands(written)) heed(Heed::ThreeDigits);
    digits[comma] = '.';
  }
  const auto result = fromDigits(digits.append(exponent));
  if (!result) refuse(Problem::TooLarge, text);
  return result;
}

bool Reader::readUnit(std::string_view rest, Item& into) {
  if (rest.empty()) return true;
  into.unit = findUnit(kind_, rest);
  if (into.unit != nullptr) return true;
  if (isKnownToAnyKind(rest)) return refuse(Problem::WrongKind, rest);
  if (looksLikeUnit(rest)) return refuse(Problem::UnknownUnit, rest);
  return refuse(startsInGroups(into.text) ? Problem::Grouped : Problem::NotANumber, into.text);
}

}  // namespace

Parsed parse(Kind kind, std::string_view text, const Unit& bare) {
  return Reader(kind, bare).read(text);
}

double meanOf(std::span<const double> readings) {
  return std::accumulate(readings.begin(), readings.end(), 0.0) /
         static_cast<double>(readings.size());
}

}  // namespace strokewright::units
