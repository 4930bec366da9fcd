#include "core/assess/entry_rules.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

#include "core/describe/common_practice.h"
#include "core/describe/wording.h"
#include "core/model/entry_text.h"
#include "core/model/inputs.h"
#include "core/model/lists.h"
#include "core/units/parse.h"

namespace strokewright::assess {
namespace {

using describe::Entry;
using describe::Finding;
using describe::Input;
using describe::kPractice;
using describe::List;
using describe::Mend;
using describe::Origin;
using describe::Quantity;
using describe::Reader;
using describe::Rule;
using describe::Speaker;
using describe::takeAs;
using describe::Weight;
using units::Kind;
namespace in = model::in;

constexpr std::string_view kBench = "what can stand on a bench";

/// An entry of the engine, or of one item of a list.
struct Asked {
  const Input& input;
  const Entry& entry;
  const List* list = nullptr;
  int item = -1;

  /// How a sentence names it.
  describe::Argument name() const {
    if (list == nullptr) return &input;
    std::string ofList(list->name);
    ofList.front() = static_cast<char>(std::tolower(static_cast<unsigned char>(ofList.front())));
    return std::string(input.label)
        .append(", line ")
        .append(std::to_string(item + 1))
        .append(" of the ")
        .append(ofList);
  }

  /// What becomes of an item while this is no number that can be.
  std::string_view passedOver() const {
    if (list == &model::list::shelf) return "The part is left out of the choice.";
    return &input == &model::list::holeFor ? "It counts as “other”."
                                           : "The hole is left out of the plate.";
  }
};

/// Asks a question of every entry of the engine, and of those in its lists.
template <typename Question>
void eachEntry(Reader& read, const Question& question) {
  for (const Input* input : model::inputs()) {
    const Entry& entry = *read.entry(*input);
    if (!entry.empty()) question(Asked{*input, entry});
  }
  const auto eachItem = [&](std::span<const List* const> lists) {
    for (const List* list : lists) {
      int place = 0;
      for (const describe::Entries& item : read.items(*list)) {
        for (const auto& [column, entry] : item) {
          if (!entry.empty()) question(Asked{*column, entry, list, place});
        }
        ++place;
      }
    }
  };
  eachItem(model::engineLists());
  if (!read.isDonor()) eachItem(model::projectLists());  // said once, of what is built
}

/// @param says its first argument is the name of what is asked
Finding& say(Speaker& speak, Weight weight, describe::Sentence says, const Asked& asked) {
  Finding& finding = speak.say(weight, std::move(says), {&asked.input});
  finding.list = asked.list;
  finding.item = asked.item;
  return finding;
}

/// A mend is typed into entries of the engine; in a list it is typed by hand.
void offer(Finding& finding, Mend mend) {
  if (finding.list == nullptr) finding.mends.push_back(std::move(mend));
}

/// The entry's text read once more, for why and how it was read.
units::Parsed reread(const Input& input, const Entry& entry) {
  const units::Unit* bare = units::findUnit(input.kind, entry.unit);
  return units::parse(input.kind, model::withSemicolons(input, entry.text),
                      bare != nullptr ? *bare : units::unitsOf(input.kind)[0]);
}

bool heeds(const units::Parsed& parsed, units::Heed heed) {
  return std::find(parsed.heeds.begin(), parsed.heeds.end(), heed) != parsed.heeds.end();
}

constexpr double kAsTyped = 1e-6;  // relative
constexpr double kRoughly = 1e-3;  // relative
constexpr int kMostDecimals = 4;

/// The fewest decimals, from so many on, by which a number is recognised.
int decimalsFor(double number, int from, double loss) {
  for (int decimals = from; decimals < kMostDecimals; ++decimals) {
    const double scale = std::pow(10.0, decimals);
    if (std::abs(std::round(number * scale) / scale - number) <= loss * std::abs(number)) {
      return decimals;
    }
  }
  return kMostDecimals;
}

/// A number with as many decimals as it takes to recognise it: 0.035 mm, not 0.04 mm.
/// @param loss what may be lost, relative to the number.
Quantity recognisable(Kind kind, double value, double loss = kAsTyped) {
  const units::Unit& unit = units::unitsOf(kind)[0];
  const double number = units::fromSi(unit, value);
  const int decimals = decimalsFor(number, unit.decimals, loss);
  return {kind, value, decimals == unit.decimals ? -1 : decimals};
}

/// A slip of the pen: the number meant another unit, or slipped by a power of ten.
struct Slip {
  std::string_view meant;      ///< "inches"
  double factor;               ///< true value over what was read
  std::string_view unit = {};  ///< the unit meant, where it is one
};

/// @param typedIn name of the unit the number was typed in: millimetres were not meant by who typed
/// them.
std::span<const Slip> slipsOf(Kind kind, std::string_view typedIn) {
  static constexpr std::array kLengths = {Slip{"inches", 25.4, "in"},
                                          Slip{"centimetres", 10.0, "cm"},
                                          Slip{"metres", 1000.0, "m"}, Slip{"a tenth of it", 0.1}};
  static constexpr std::array kLengthsInInches = {Slip{"millimetres", 1 / 25.4, "mm"},
                                                  Slip{"centimetres", 10.0 / 25.4, "cm"},
                                                  Slip{"a tenth of it", 0.1}};
  static constexpr std::array kFine = {Slip{"thousandths of an inch", 0.0254, "thou"},
                                       Slip{"inches", 25.4, "in"}, Slip{"micrometres", 0.001, "µm"},
                                       Slip{"a tenth of it", 0.1}};
  static constexpr std::array kFineInInches = {Slip{"millimetres", 1 / 25.4, "mm"},
                                               Slip{"thousandths of an inch", 0.001, "thou"},
                                               Slip{"a tenth of it", 0.1}};
  static constexpr std::array kFineInThou = {Slip{"inches", 1000.0, "in"},
                                             Slip{"millimetres", 1000.0 / 25.4, "mm"},
                                             Slip{"a tenth of it", 0.1}};
  static constexpr std::array kVolumes = {
      Slip{"litres", 1000.0, "l"}, Slip{"cubic inches", 16.387064, "cu in"},
      Slip{"ten times as much", 10.0}, Slip{"a tenth of it", 0.1}};
  static constexpr std::array kMasses = {Slip{"kilograms", 1000.0, "kg"}, Slip{"grams", 0.001, "g"},
                                         Slip{"ounces", 28.349523125, "oz"}};
  static constexpr std::array kAreas = {Slip{"square centimetres", 100.0, "cm²"},
                                        Slip{"square inches", 645.16, "sq in"}};
  static constexpr std::array kSpeeds = {Slip{"a nought missing", 10.0},
                                         Slip{"a nought too many", 0.1}};
  static constexpr std::array kShares = {Slip{"a fraction", 100.0}};
  switch (kind) {
    case Kind::Length:
      if (typedIn == "in") return kLengthsInInches;
      return kLengths;
    case Kind::FineLength:
      if (typedIn == "in") return kFineInInches;
      if (typedIn == "thou") return kFineInThou;
      return kFine;
    case Kind::Volume:
      return kVolumes;
    case Kind::Mass:
      return kMasses;
    case Kind::Area:
      return kAreas;
    case Kind::Speed:
      return kSpeeds;
    case Kind::Share:
      return kShares;
    default:
      return {};
  }
}

/// [SI] the donor's number; nothing where there is none that tells a size, as in a list.
std::optional<double> donors(Reader& read, const Input& input) {
  if (model::inputs()[static_cast<std::size_t>(input.number)] != &input) return std::nullopt;
  if (read.isDonor() || !read.donorGiven(input)) return std::nullopt;
  const double value = read.donor(input);
  return value > 0.0 && input.usual.holds(value) ? std::optional(value) : std::nullopt;
}

/// Name of the unit the numbers of an entry were typed in.
std::string_view typedUnit(const Input& input, const Entry& entry) {
  const std::string_view numbers = std::string_view(entry.text).substr(0, entry.text.find("±"));
  const std::size_t last = numbers.find_last_of("0123456789.,");
  const units::Unit* written = last == std::string_view::npos
                                   ? nullptr
                                   : units::findUnit(input.kind, numbers.substr(last + 1));
  return written != nullptr ? written->name : std::string_view(entry.unit);
}

/// The slip that brings a value nearest to what the donor has, or to the typical one, inside the
/// usual range.
std::optional<Slip> likeliestSlip(Reader& read, const Input& input, const Entry& entry,
                                  double value) {
  const double expected = donors(read, input).value_or(input.typical);
  std::optional<Slip> best;  // Further off than twofold of the donor's, or threefold of what is
                             // typical, explains nothing.
  double bestDistance = std::log(donors(read, input) ? 2.0 : 3.0);
  for (const Slip& slip : slipsOf(input.kind, typedUnit(input, entry))) {
    const double meant = value * slip.factor;
    if (!input.usual.holds(meant) || meant * expected <= 0.0) continue;
    const double distance = std::abs(std::log(meant / expected));
    if (distance < bestDistance) {
      bestDistance = distance;
      best = slip;
    }
  }
  return best;
}

/// The number as it would be typed in the unit meant: "2.992 in".
std::string typedIn(const Input& input, const Slip& slip, double meant) {
  if (slip.unit.empty()) return describe::typedText(input, meant);
  units::Style style;
  style.group.choose(input.kind, slip.unit);
  return describe::typedText(input, meant, style);
}

/// Adds to a finding what the number may have meant.
void offerSlip(Reader& read, Finding& finding, const Input& input, const Entry& entry,
               double value) {
  const std::optional<Slip> slip = likeliestSlip(read, input, entry, value);
  if (!slip) return;
  const double meant = value * slip->factor;
  const std::optional<double> donor = donors(read, input);
  finding.hint = {donor ? "{1}? That makes {2}; the donor's is {3}." : "{1}? That makes {2}.",
                  {std::string(slip->meant), recognisable(input.kind, meant, kRoughly)}};
  if (donor) finding.hint.arguments.emplace_back(recognisable(input.kind, *donor, kRoughly));
  Mend mend = takeAs(input, meant);
  std::string& text = mend.entries.front().second;
  text.clear();
  for (const double each : entry.values) {  // what is usual in a list did not slip
    if (!text.empty()) text += "; ";
    text += input.usual.holds(each) ? describe::typedText(input, each)
                                    : typedIn(input, *slip, each * slip->factor);
  }
  if (entry.plusMinus && !slip->unit.empty()) {  // typed beside the number, it slipped with it
    text += " ± " + typedIn(input, *slip, *entry.plusMinus * slip->factor);
  }
  offer(finding, std::move(mend));
}

/// An offset typed with a sign: its side says that. Several cylinders may want several sides.
void offerSide(Finding& finding, const Input& input, const Entry& entry, double value) {
  for (const auto& [offset, side] : {std::pair{&in::cylinderOffset, &in::cylinderOffsetSide},
                                     std::pair{&in::pinOffset, &in::pinOffsetSide}}) {
    if (offset != &input || value >= 0.0) continue;
    finding.hint = {"The side says the sign: {1} towards the thrust side?",
                    {Quantity{input.kind, -value}}};
    if (entry.values.size() > 1) return;
    Mend mend = takeAs(*offset, -value);
    mend.says = {"Take {1} towards the thrust side", {Quantity{input.kind, -value}}};
    mend.entries.emplace_back(
        side, describe::typedText(*side, model::answer(model::Side::TowardsThrust)));
    offer(finding, std::move(mend));
  }
}

std::string answersOf(const Input& input) {
  std::string all;
  for (const describe::Choice& choice : input.choices) {
    if (!all.empty()) all += ", ";
    all.append("“").append(choice.label).append("”");
  }
  return all;
}

/// "mm, in, cm"; empty where the kind has no unit to be typed.
std::string unitNamesOf(Kind kind) {
  std::string all;
  for (const units::Unit& unit : units::unitsOf(kind)) {
    if (!all.empty()) all += ", ";
    all += unit.name;
  }
  return all;
}

/// {1} the input, {2} the text, {3} the piece that cannot be read, {4} the units of the kind.
std::string_view whyUnread(units::Problem problem, bool hasUnits) {
  using units::Problem;
  switch (problem) {
    case Problem::None:
      return "{1}: “{2}” has several numbers. It takes one number, not a list.";
    case Problem::Placeholder:
      return "{1}: “{2}” is not a number yet.";
    case Problem::TwoDecimalMarks:
      return "{1}: “{3}” has two decimal marks; point and comma both mean one, and there are no "
             "group marks. Leave one.";
    case Problem::Grouped:
      return "{1}: “{3}” has its digits in groups, which might be two numbers. Type it without "
             "gaps.";
    case Problem::Gap:
      return "{1}: in “{2}” a number is missing beside a semicolon, a | or a ±. Put it in, or take "
             "the mark out.";
    case Problem::Range:
      return "{1}: “{3}” is a range, and a range is not one number. Type the one that is meant, "
             "with a ± behind it where it is not certain.";
    case Problem::PlusMinusInside:
      return "{1}: in “{2}” something follows the ± that is not its number. One ± stands behind "
             "all numbers and holds for all.";
    case Problem::UnknownUnit:
      return hasUnits ? "{1}: “{2}” has the unit “{3}”, which is not known. It takes {4}."
                      : "{1}: “{2}” has “{3}” behind its number. It takes no unit.";
    case Problem::OpenUnit:
      return "{1}: “{2}” leaves open which unit {3} is in. Give {3} its unit too.";
    case Problem::WrongKind:
      return hasUnits ? "{1}: “{2}” has “{3}”, a unit of something else. It takes {4}."
                      : "{1}: “{2}” has “{3}” behind its number. It takes no unit.";
    case Problem::ZeroDivisor:
      return "{1}: “{3}” divides by nought. Mend the fraction.";
    case Problem::ImproperFraction:
      return "{1}: “{3}” has a fraction of one or more behind a whole number. Is there a digit too "
             "many?";
    case Problem::TooLarge:
      return "{1}: “{3}” is beyond what can be reckoned with: too large, too near to nought, or "
             "more than 40 digits. Mend the number.";
    case Problem::Empty:
    case Problem::NotANumber:
      break;
  }
  return "{1}: “{3}” cannot be read as a number. Type digits with one decimal mark at most, and a "
         "unit behind them where need be.";
}

const Rule notANumber{
    .key = "not_a_number_yet", .source = kBench, .judge = [](Reader& read, Speaker& speak) {
      eachEntry(read, [&](const Asked& asked) {
        const Input& input = asked.input;
        const Entry& entry = asked.entry;
        if (entry.known() || entry.text.empty()) return;
        const bool later = input.kind != Kind::Choice &&
                           reread(input, entry).problem == units::Problem::Placeholder;
        describe::Sentence why = whyUnknown(input, entry);
        why.arguments.front() = asked.name();
        Finding& finding =
            say(speak, later ? Weight::Remarks : Weight::Objects, std::move(why), asked);
        finding.hint = {asked.list != nullptr ? asked.passedOver()
                        : input.list && !later && input.kind == Kind::Count
                            ? "It is taken as unknown. Whole numbers, one for each cylinder, are "
                              "parted by dashes, as in 1-3-2."
                        : input.list && !later
                            ? "It is taken as unknown. Semicolons part the numbers of several "
                              "cylinders."
                            : "It is taken as unknown.",
                        {}};
      });
    }};

const Rule impossible{
    .key = "impossible", .source = kBench, .judge = [](Reader& read, Speaker& speak) {
      eachEntry(read, [&](const Asked& asked) {
        const Input& input = asked.input;
        const Entry& entry = asked.entry;
        if (input.kind == Kind::Choice) return;
        for (const double value : entry.values) {
          const auto& possible = input.possible;
          if (possible.holds(value) && (input.kind != Kind::Count || value == std::floor(value))) {
            continue;
          }
          if (input.kind == Kind::Count) {
            Finding& finding =
                say(speak, Weight::Forbids,
                    {"{1}: {2} cannot be, it is a whole number from {3} to {4}.",
                     {asked.name(), Quantity{Kind::Ratio, value, decimalsFor(value, 0, kAsTyped)},
                      Quantity{Kind::Count, possible.least}, Quantity{Kind::Count, possible.most}}},
                    asked);
            if (asked.list != nullptr) finding.hint = {asked.passedOver(), {}};
            return;
          }
          const bool over = value > possible.most;
          const std::string_view pattern = over ? "{1}: {2} cannot be, it is at most {3}."
                                           : possible.leastExcluded
                                               ? "{1}: {2} cannot be, it must be more than {3}."
                                               : "{1}: {2} cannot be, it is at least {3}.";
          const double limit = over ? possible.most : possible.least;
          Finding& finding =
              say(speak, Weight::Forbids,
                  {pattern,
                   {asked.name(), recognisable(input.kind, value), Quantity{input.kind, limit}}},
                  asked);
          if (asked.list != nullptr) finding.hint = {asked.passedOver(), {}};
          offerSlip(read, finding, input, entry, value);
          offerSide(finding, input, entry, value);
          return;
        }
      });
    }};

const Rule unusual{
    .key = "unusual", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      eachEntry(read, [&](const Asked& asked) {
        const Input& input = asked.input;
        const Entry& entry = asked.entry;
        if (input.kind == Kind::Choice) return;
        for (const double value : entry.values) {
          const auto& usual = input.usual;
          if (usual.holds(value) || !input.possible.holds(value)) continue;
          const bool over = value > usual.most;
          const bool far = over && usual.most > 0.0 && value > 5.0 * usual.most;
          Finding& finding = say(speak, far ? Weight::Forbids : Weight::Objects,
                                 {far    ? "{1}: {2} cannot be meant, seldom is it more than "
                                           "{3}. Type it anew, or in the unit that is meant."
                                  : over ? "{1}: {2} is unusual, seldom more than {3}."
                                         : "{1}: {2} is unusual, seldom less than {3}.",
                                  {asked.name(), recognisable(input.kind, value),
                                   Quantity{input.kind, over ? usual.most : usual.least}}},
                                 asked);
          offerSlip(read, finding, input, entry, value);
          return;
        }
      });
    }};

const Rule thousandOrDecimal{
    .key = "thousand_or_decimal", .source = kBench, .judge = [](Reader& read, Speaker& speak) {
      eachEntry(read, [&](const Asked& asked) {
        const Input& input = asked.input;
        const Entry& entry = asked.entry;
        if (!entry.known() || input.kind == Kind::Choice) return;
        const units::Parsed parsed = reread(input, entry);
        if (!heeds(parsed, units::Heed::ThreeDigits)) return;
        std::vector<Quantity> taken;
        std::vector<Quantity> meant;
        bool clear = true;
        for (const double value : entry.values) {
          taken.push_back(recognisable(input.kind, value));
          meant.push_back({input.kind, 1000.0 * value});
          clear = clear && input.usual.holds(value) && !input.usual.holds(1000.0 * value);
        }
        Finding& finding = say(speak, clear ? Weight::Remarks : Weight::Objects,
                               {clear ? "{1}: “{2}” is read as {3}; {4} cannot be meant."
                                      : "{1}: “{2}” is read as {3}; was {4} meant?",
                                {asked.name(), entry.text, std::move(taken), std::move(meant)}},
                               asked);
        // Of a list some numbers may be meant as they are read.
        if (clear || entry.values.size() > 1) return;
        offer(finding, takeAs(input, 1000.0 * entry.values.front()));
      });
    }};

/// All there is to say of a number with a decimal comma.
constexpr std::string_view kCommaAlone = "{1}: “{2}” is read as {3}; a comma is a decimal mark.";

/// How the numbers came out of the text; empty where they stand in it, and where it can be read in
/// one way alone: bars between numbers make readings of them, and the field shows their mean.
std::string_view howRead(const units::Parsed& parsed) {
  const bool step = heeds(parsed, units::Heed::Step);
  const bool mean = heeds(parsed, units::Heed::Mean);
  if (step && mean) {
    return "{1}: “{2}” is read as {3}, the mean of its readings, each the step between two marks.";
  }
  if (step) return "{1}: “{2}” is read as {3}, the step between two marks.";
  const bool otherwise =
      heeds(parsed, units::Heed::Fraction) || heeds(parsed, units::Heed::OtherUnit);
  if (!otherwise) return "";
  return mean ? "{1}: “{2}” is read as {3}, the mean of its readings."
              : "{1}: “{2}” is read as {3}.";
}

const Rule readAs{
    .key = "read_as", .source = kBench, .judge = [](Reader& read, Speaker& speak) {
      bool commaSaid = false;
      eachEntry(read, [&](const Asked& asked) {
        const Input& input = asked.input;
        const Entry& entry = asked.entry;
        // In a list the field says so, and there may be many.
        if (asked.list != nullptr || !entry.known() || input.kind == Kind::Choice) return;
        const units::Parsed parsed = reread(input, entry);
        if (heeds(parsed, units::Heed::ThreeDigits)) return;  // said by its own rule
        std::string_view says = howRead(parsed);
        const bool step = heeds(parsed, units::Heed::Step);
        if (heeds(parsed, units::Heed::Comma) && !commaSaid && !step) {
          commaSaid = true;
          says = says.empty() ? kCommaAlone
                              : "{1}: “{2}” is read as {3}, its comma as the decimal mark.";
        }
        if (says.empty()) return;
        const double loss = heeds(parsed, units::Heed::Mean) ? kRoughly : kAsTyped;
        std::vector<Quantity> taken;
        for (const double value : entry.values) {
          taken.push_back(recognisable(input.kind, value, loss));
        }
        say(speak, Weight::Remarks, {says, {asked.name(), entry.text, std::move(taken)}}, asked);
      });
    }};

const Rule toleranceOfNought{
    .key = "tolerance_of_nought", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      eachEntry(read, [&](const Asked& asked) {
        const Input& input = asked.input;
        const Entry& entry = asked.entry;
        if (!entry.known() || entry.origin != Origin::Measured || entry.plusMinus != 0.0) return;
        if (input.plusMinus == 0.0) return;
        Finding& finding =
            say(speak, Weight::Objects,
                {"{1}: ± 0 is entered, but no instrument is perfect. ± {2} is usual for a {3}.",
                 {asked.name(), Quantity{input.kind, input.plusMinus, 3},
                  std::string(input.instrument)}},
                asked);
        if (entry.values.size() == 1) {
          describe::Mend mend = takeAs(input, entry.values.front());
          mend.says = {"Give it ± {1}", {Quantity{input.kind, input.plusMinus, 3}}};
          mend.entries.front().second += " ± " + describe::typedText(input, input.plusMinus);
          offer(finding, std::move(mend));
        }
      });
    }};

const Rule toleranceOverValue{
    .key = "tolerance_over_value", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      eachEntry(read, [&](const Asked& asked) {
        const Input& input = asked.input;
        const Entry& entry = asked.entry;
        const double limit = entry.instrumentLimit();
        for (const double value : entry.values) {
          if (value == 0.0 || limit <= std::abs(value)) continue;
          Finding& finding = say(
              speak, Weight::Objects,
              {"{1}: ± {2} is larger than the {3} itself.",
               {asked.name(), recognisable(input.kind, limit), recognisable(input.kind, value)}},
              asked);
          const double micrometres = *entry.plusMinus / 1000.0;
          if (input.kind != Kind::FineLength && input.kind != Kind::Length) return;
          if (micrometres < input.plusMinus / 10.0 || entry.values.size() != 1) return;
          const Quantity meant = recognisable(input.kind, micrometres, kRoughly);
          finding.hint = {"Micrometres? That makes ± {1}.", {meant}};
          describe::Mend mend = takeAs(input, value);
          mend.says = {"Give it ± {1}", {meant}};
          mend.entries.front().second += " ± " + describe::typedText(input, micrometres);
          offer(finding, std::move(mend));
          return;
        }
      });
    }};

const Rule negativeTolerance{
    .key = "negative_tolerance", .source = kBench, .judge = [](Reader& read, Speaker& speak) {
      eachEntry(read, [&](const Asked& asked) {
        const Input& input = asked.input;
        const Entry& entry = asked.entry;
        if (!entry.plusMinus) return;
        // The sign of a typed one stands in the text alone.
        const double typed = reread(input, entry).plusMinus.value_or(0.0);
        const double limit = std::min(typed, *entry.plusMinus);
        if (limit >= 0.0) return;
        say(speak, Weight::Forbids,
            {"{1}: ± {2} cannot be, a ± has no sign of its own. Take its minus out.",
             {asked.name(), Quantity{input.kind, limit, 3}}},
            asked);
      });
    }};

/// A table of readings that was entered with a row for each reading: its columns are as many as the
/// cylinders.
bool fitsSwapped(const Entry& entry, std::size_t cylinders) {
  return entry.readings.size() == entry.values.size() &&
         std::ranges::all_of(entry.readings, [&](const std::vector<double>& row) {
           return row.size() == cylinders;
         });
}

/// "98.12 | 98.13; 98.20 | 98.21 mm", its readings the cylinders and the other way round.
std::string swappedText(const Input& input, const Entry& entry) {
  std::string text;
  std::string unit;
  for (std::size_t cylinder = 0; cylinder < entry.readings.front().size(); ++cylinder) {
    std::string_view mark = text.empty() ? "" : "; ";
    for (const std::vector<double>& row : entry.readings) {
      const std::string reading = describe::typedText(input, row[cylinder]);
      const std::size_t end = std::min(reading.find(' '), reading.size());
      text.append(mark).append(reading, 0, end);
      unit = reading.substr(end);
      mark = " | ";
    }
  }
  return text + unit;
}

const Rule listLength{
    .key = "list_length", .source = kBench, .judge = [](Reader& read, Speaker& speak) {
      eachEntry(read, [&](const Asked& asked) {
        const Input& input = asked.input;
        const Entry& entry = asked.entry;
        const auto n = static_cast<std::size_t>(read.cylinders());
        if (!input.list || entry.values.size() <= 1 || entry.values.size() == n) return;
        const bool byItsRule = &input == &in::firingOrder && entry.values.size() > n;
        if (byItsRule) return;  // an order that names too many is no order
        const bool tooFew = entry.values.size() < n;
        const bool swapped = fitsSwapped(entry, n);
        const Quantity cylinders{Kind::Count, static_cast<double>(n)};
        Finding& finding = say(
            speak, tooFew || swapped ? Weight::Forbids : Weight::Objects,
            {n == 1 ? "{1}: {2} numbers for one cylinder." : "{1}: {2} numbers for {3} cylinders.",
             {asked.name(), Quantity{Kind::Count, static_cast<double>(entry.values.size())},
              cylinders}},
            asked);
        if (swapped) {
          finding.hint = {
              "Are rows and columns swapped? A row is a cylinder, a column one of its readings.",
              {}};
          offer(finding, {.says = {"Swap rows and columns", {}},
                          .entries = {{&input, swappedText(input, entry)}}});
        } else if (!tooFew) {
          finding.hint = {"The first {1} are used and the others are not: leave one for each.",
                          {cylinders}};
        }
      });
    }};

const Rule rareCount{
    .key = "rare_cylinder_count", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::cylinderCount)) return;
      const double count = read(in::cylinderCount);
      if (count != 7.0 && count != 9.0 && count != 11.0) return;
      speak.say(Weight::Remarks,
                {"{1} cylinders are unusual: is that so?", {Quantity{Kind::Count, count}}},
                {&in::cylinderCount});
    }};

}  // namespace

std::span<const Rule* const> entryRules() {
  static constexpr std::array kRules = {
      &impossible, &unusual,           &notANumber,         &thousandOrDecimal,
      &readAs,     &toleranceOfNought, &toleranceOverValue, &negativeTolerance,
      &listLength, &rareCount};
  return kRules;
}

describe::Sentence whyUnknown(const Input& input, const Entry& entry) {
  if (input.kind == Kind::Choice) {
    const bool several = !input.list && entry.text.find(';') != std::string::npos;
    return {several ? "{1}: “{2}” has several answers. It takes one answer, not a list: {3}."
                    : "{1}: “{2}” is no answer. It takes one of {3}.",
            {&input, entry.text, answersOf(input)}};
  }
  const units::Parsed parsed = reread(input, entry);
  const std::string unitNames = unitNamesOf(input.kind);
  return {whyUnread(parsed.problem, !unitNames.empty()),
          {&input, entry.text, parsed.culprit, unitNames}};
}

bool goesWithoutSaying(const describe::Finding& finding, const units::Style& style) {
  return style.decimalMark == "," &&
         (finding.key == thousandOrDecimal.key || finding.says.pattern == kCommaAlone);
}

bool tellsTheMark(const Finding& finding) {
  return finding.key == thousandOrDecimal.key && finding.weight == Weight::Remarks &&
         finding.list == nullptr;
}

Finding marksTold(std::span<const Finding* const> findings) {
  Finding together = *findings.front();
  std::string names;
  for (const Finding* finding : findings) {
    if (!names.empty()) names += "; ";
    names += describe::inSentence(finding->about.front()->label);
  }
  together.says = {"{1}: each comma is read as the decimal mark; thousands cannot be meant.",
                   {std::move(names)}};
  return together;
}

bool isGeneral(const describe::Finding& finding) { return finding.key == unusual.key; }

}  // namespace strokewright::assess
