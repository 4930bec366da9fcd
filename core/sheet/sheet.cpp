#include "core/sheet/sheet.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <numbers>
#include <utility>

#include "core/chamber/results.h"
#include "core/clearance/results.h"
#include "core/compression/results.h"
#include "core/cranking/results.h"
#include "core/deck/results.h"
#include "core/describe/wording.h"
#include "core/firing/layouts.h"
#include "core/firing/results.h"
#include "core/limits/results.h"
#include "core/limits/rev_lines.h"
#include "core/masses/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "core/ports/results.h"
#include "core/running/results.h"
#include "core/sheet/engine_terms.h"
#include "core/sheet/grounds.h"
#include "core/sheet/numbers.h"
#include "core/sheet/objections.h"
#include "core/sheet/words.h"

namespace strokewright::sheet {
namespace {

using assess::Assessment;
using describe::Input;
using describe::Result;
using units::Kind;
using units::Style;

namespace in = model::in;

using Rows = std::vector<Row>;

constexpr std::size_t kMostLetters = 17;  // of several numbers in one cell
constexpr std::size_t kMostLettersOfDifference = 12;

Row strong(Row row) {
  row.emphasis = Emphasis::Strong;
  return row;
}

Row subordinate(Row row) {
  row.emphasis = Emphasis::Subordinate;
  return row;
}

/// Some engine has something to say in this row.
bool says(const Row& row) {
  return std::ranges::any_of(row.texts, [](const Text& it) { return it.full != kNothing; });
}

class Writer {
 public:
  Writer(const Assessment& assessment, const Style& style, const SheetOptions& options)
      : assessment_(assessment),
        evaluation_(assessment.evaluation()),
        project_(assessment.project()),
        style_(style),
        options_(options),
        numbers_(assessment, style),
        donor_(evaluation_.referenceDonor()) {
    sheet_.engine = options.engine >= 0 ? options.engine : project_.target();
    if (sheet_.engine < 0 && !project_.engines.empty()) sheet_.engine = 0;
  }

  Sheet write() {
    writeTitleBlock();
    sheet_.checkBar =
        "Check bar " + style_.text(Kind::Length, kCheckBar) + ": measure it before use";
    if (sheet_.engine < 0) return std::move(sheet_);
    chooseColumns();
    writeTitle();
    writeGroups();
    writeStars();
    sheet_.objections = objectionsOf(assessment_, style_, ownFirst());
    writeAsides();
    const auto shown = numbers_.asked();
    sheet_.restsOn = restsOn(assessment_, style_, sheet_.engine);
    sheet_.restsFurtherOn = restsFurtherOn(assessment_, style_, sheet_.engine, shown);
    sheet_.waitsFor = waitsFor(assessment_, sheet_.engine, shown);
    writeBoxes();
    writeCautions();
    sayInTerms();
    return std::move(sheet_);
  }

 private:
  const model::Engine& engine(int number) const {
    return project_.engines[static_cast<std::size_t>(number)];
  }
  bool stands(const Input& input) const { return evaluation_.inputStands(sheet_.engine, input); }
  double value(const Input& input) const { return evaluation_.inputValue(sheet_.engine, input); }
  bool compressionIgnition() const {
    return stands(in::ignition) &&
           static_cast<int>(value(in::ignition)) == static_cast<int>(model::Ignition::Compression);
  }
  bool twoStroke() const {
    return stands(in::cycle) && value(in::cycle) == model::answer(model::Cycle::TwoStroke);
  }
  std::string unitOf(Kind kind) const { return std::string(style_.unit(kind)); }

  // ---- Head

  void chooseColumns() {
    sheet_.differences = donor_ >= 0 && donor_ != sheet_.engine && isKnown(donor_);
    if (sheet_.differences) addColumn(donor_, "donor");
    addColumn(sheet_.engine, std::string(partKey(engine(sheet_.engine).part)));

    std::vector<int> others;
    for (int i = 0; i < static_cast<int>(project_.engines.size()); ++i) {
      if (i != sheet_.engine && i != donor_) others.push_back(i);
    }
    const bool singleVariant =
        others.size() == 1 && engine(others[0]).part == model::Part::Variant && isKnown(others[0]);
    if (singleVariant && options_.variantColumn) return addColumn(others[0], "variant");
    besides_ = std::move(others);
    std::vector<std::string> names;
    std::ranges::transform(besides_, std::back_inserter(names),
                           [&](int other) { return shortened(engine(other).name); });
    sheet_.besides = join(names, ", ");
  }

  /// Something was measured on it or read about it: a column would not wait from top to bottom.
  bool isKnown(int number) const {
    return std::ranges::any_of(engine(number).entries, [](const auto& it) {
      const Kind kind = it.first->kind;
      return it.second.known() && kind != Kind::Choice && kind != Kind::Count;
    });
  }

  void addColumn(int number, std::string heading) {
    sheet_.columns.push_back({std::move(heading), engine(number).name, number});
  }

  std::vector<int> ownFirst() const {
    std::vector<int> numbers{sheet_.engine};
    for (const Column& column : sheet_.columns) {
      if (column.engine != sheet_.engine) numbers.push_back(column.engine);
    }
    return numbers;
  }

  void writeAsides() {
    for (const int other : besides_) {
      std::string count = countOf(objectionsOnlyOf(other, assessment_, style_, ownFirst()));
      if (!count.empty()) {
        sheet_.asides.push_back({shortened(engine(other).name), std::move(count)});
      }
    }
  }

  void writeTitle() {
    sheet_.title = engine(sheet_.engine).name;
    std::vector<std::string> parts;
    if (std::string words = layoutWords(); !words.empty()) parts.push_back(std::move(words));
    if (sheet_.differences) parts.push_back("from " + shortened(engine(donor_).name));
    if (std::string words = purposeWords(); !words.empty()) parts.push_back(std::move(words));
    if (!sheet_.besides.empty()) parts.push_back("also: " + sheet_.besides);
    sheet_.subtitle = join(parts, " · ");
  }

  std::string layoutWords() const {
    constexpr std::string_view kLayouts[] = {"single", "twin", "triple"};
    std::vector<std::string> words;
    const std::string_view layout = firing::layoutName(evaluation_, sheet_.engine);
    if (!layout.empty()) {
      words.emplace_back(layout);
    } else if (stands(in::cylinderCount)) {
      const auto count = static_cast<std::size_t>(evaluation_.cylinders(sheet_.engine));
      words.push_back(count <= std::size(kLayouts) ? std::string(kLayouts[count - 1])
                                                   : std::to_string(count) + " cylinders");
    }
    if (stands(in::cycle)) words.push_back(wordValue(in::cycle, value(in::cycle), style_));
    if (compressionIgnition()) words.emplace_back("compression ignition");
    return join(words, ", ");
  }

  std::string purposeWords() const {
    std::vector<std::string> words;
    if (stands(in::use)) words.push_back(wordValue(in::use, value(in::use), style_));
    if (stands(in::classLimit)) {
      words.push_back(style_.text(Kind::Volume, value(in::classLimit), 0) + " class");
    }
    return join(words, ", ");
  }

  void writeTitleBlock() {
    sheet_.titleBlock = {
        .project = project_.name.empty() ? options_.projectName : project_.name,
        .drawnFor = project_.drawnFor,
        .units = join({unitOf(Kind::Length), unitOf(Kind::Volume), unitOf(Kind::Mass)}, " · "),
        .revision = project_.revision,
        .date = options_.date,
        .sheet = "1 of 1",
        .program = "Strokewright " + options_.programVersion,
    };
  }

  // ---- Rows

  template <typename Cellular>
  Row rowBy(std::string label, std::string unit, Cellular cellular) const {
    Row row{std::move(label), std::move(unit), {}, {}, Emphasis::Plain};
    for (const Column& column : sheet_.columns) row.texts.push_back(cellular(column.engine));
    return row;
  }

  template <typename Described>
  std::string difference(const Described& described) const {
    return sheet_.differences ? numbers_.difference(sheet_.engine, donor_, described)
                              : std::string();
  }

  template <typename Described>
  Row rowOf(const Described& described, std::string label) const {
    Row row = rowBy(std::move(label), unitOf(described.kind),
                    [&](int number) { return numbers_.text(number, described); });
    row.difference = difference(described);
    return row;
  }
  Row rowOf(const Result& result) const { return rowOf(result, std::string(result.name)); }
  Row rowOf(const Input& input) const { return rowOf(input, std::string(input.label)); }

  /// Rows that belong together as one; each for itself where that would be too long to read, and
  /// where a number differs between cylinders. One of which nothing is known is left out.
  Rows sideBySide(std::string label, Rows parts, std::string_view between = " / ") const {
    if (std::ranges::any_of(parts, says)) {
      std::erase_if(parts, [](const Row& part) { return !says(part); });
    }
    if (parts.size() == 1) return parts;
    Row row{std::move(label), unitsOf(parts), {}, {}, Emphasis::Plain};
    std::vector<std::string> differences;
    for (const Row& part : parts) differences.push_back(part.difference);
    row.difference = together(differences, between);
    for (std::size_t i = 0; i < sheet_.columns.size(); ++i) {
      std::vector<Text> texts;
      for (const Row& part : parts) texts.push_back(part.texts[i]);
      row.texts.push_back(Numbers::together(texts, between));
    }
    const bool apart = std::ranges::any_of(
        parts, [](const Row& part) { return std::ranges::any_of(part.texts, &Text::differs); });
    return apart || tooLong(row) ? parts : Rows{std::move(row)};
  }

  static bool tooLong(const Row& row) {
    return std::ranges::any_of(row.texts, [](const Text& it) {
      return it.brief.empty() && length(it.full) > kMostLetters;
    });
  }

  /// Each unit once.
  static std::string unitsOf(const Rows& rows) {
    std::vector<std::string> units;
    for (const Row& row : rows) {
      const bool known = row.unit.empty() || std::ranges::find(units, row.unit) != units.end();
      if (!known) units.push_back(row.unit);
    }
    return join(units, " / ");
  }

  /// Differences side by side: empty where there is not one of them or they are too long to read,
  /// "0" where all are.
  static std::string together(std::vector<std::string> differences, std::string_view between) {
    const bool same = std::ranges::all_of(
        differences, [&](const std::string& it) { return it == differences[0]; });
    if (same && (differences[0].empty() || differences[0] == "0")) return differences[0];
    for (std::string& it : differences) {
      if (it.empty()) it = kNothing;
    }
    std::string all = join(differences, between);
    return length(all) > kMostLettersOfDifference ? std::string() : all;
  }

  /// A size as drawings have it.
  Row sizeOf(const Input& input) const {
    Row row = rowBy(std::string(input.label), unitOf(input.kind),
                    [&](int number) { return numbers_.text(number, input, Zeros::Dropped); });
    row.difference = numbers_.withoutZeros(difference(input));
    return row;
  }

  static Rows all(std::vector<Rows> parts) {
    Rows rows;
    for (Rows& part : parts) std::ranges::move(part, std::back_inserter(rows));
    return rows;
  }

  Row toleranceOf(const Result& result) const {
    return subordinate(rowBy("± likely / worst case", unitOf(result.kind),
                             [&](int number) { return numbers_.tolerance(number, result); }));
  }

  void addGroup(Rows rows) {
    std::erase_if(rows, [](const Row& row) { return !says(row); });
    if (!rows.empty()) sheet_.groups.push_back({std::move(rows)});
  }

  void writeGroups() {
    addGroup(sizeRows());
    addGroup(partRows());
    addGroup(deckRows());
    addGroup(compressionRows());
    addGroup(speedRows());
    addGroup(ceilingRows());
    addGroup(massRows());
    addGroup(clearanceRows());
  }

  Rows sizeRows() const {
    Rows rows = sideBySide("Bore × stroke", {sizeOf(in::bore), strokeRow()}, " × ");
    if (offsetSomewhere()) rows.push_back(rowOf(out::trueStroke));
    rows.push_back(strong(rowOf(out::displacement)));
    rows.push_back(toleranceOf(out::displacement));
    rows.push_back(rowOf(out::classMargin, classLabel()));
    return rows;
  }

  std::string classLabel() const {
    std::string label(out::classMargin.name);
    if (stands(in::classLimit)) {
      label += " to " + numbers_.withoutZeros(style_.number(Kind::Volume, value(in::classLimit)));
    }
    return label;
  }

  /// Twice the throw; the true stroke has a row of its own where it is another.
  Row strokeRow() const {
    Row row = rowBy(std::string(in::stroke.label), unitOf(Kind::Length), [&](int number) {
      return numbers_.twice(number, out::crankRadius, Zeros::Dropped);
    });
    row.difference = numbers_.withoutZeros(strokeDifference());
    return row;
  }

  std::string strokeDifference() const {
    if (difference(out::crankRadius).empty()) return {};
    const double by = assessment_(sheet_.engine, out::crankRadius).value -
                      assessment_(donor_, out::crankRadius).value;
    return style_.difference(Kind::Length, 2.0 * by);
  }

  bool offsetSomewhere() const {
    return std::ranges::any_of(sheet_.columns, [&](const Column& column) {
      return numbers_.isValue(column.engine, out::netOffset) &&
             !numbers_.isEverywhere(column.engine, out::netOffset, 0.0);
    });
  }

  Rows partRows() const {
    return all({
        {rowOf(in::rodLength)},
        sideBySide("Rod ratio / largest angle",
                   {rowOf(out::rodRatio), rowOf(out::largestRodAngle)}),
        sideBySide("Compression height / pin Ø",
                   {rowOf(in::compressionHeight), rowOf(in::gudgeonPinDiameter)}),
        bigEndRows(),
    });
  }

  Rows bigEndRows() const {
    const Row pin = sizeOf(in::bigEndPinDiameter);
    const Row eye = sizeOf(in::bigEndEyeDiameter);
    const Row width = sizeOf(in::bigEndWidth);
    Rows rows = sideBySide("Big end: pin / eye / width", {pin, eye, width});
    return rows.size() == 1 ? rows : all({sideBySide("Big end: pin / eye", {pin, eye}), {width}});
  }

  Rows deckRows() const {
    return all({
        {rowOf(out::protrusionWithoutSpacer)},
        spacerRows(),
        gasketRows(),
        {rowOf(out::deckClearance), strong(rowOf(out::squishGap, "Squish gap, cold")),
         toleranceOf(out::squishGap),
         subordinate(
             rowBy("worst case, from … to", unitOf(Kind::FineLength),
                   [&](int number) { return numbers_.worstRange(number, out::squishGap); }))},
        sideBySide("Gap running / at over-rev",
                   {rowOf(out::runningSquish), rowOf(out::overRevSquish)}),
        {subordinate(
            rowBy("at over-rev, worst case, from … to", unitOf(Kind::FineLength),
                  [&](int number) { return numbers_.worstRange(number, out::overRevSquish); }))},
    });
  }

  /// What was decided is looked at; what would be wanted stands below it, or in its stead while
  /// nothing is decided.
  Rows spacerRows() const {
    if (!evaluation_.inputGiven(sheet_.engine, in::spacer)) {
      return {strong(rowOf(out::spacerToMake)), toleranceOf(out::spacerToMake),
              enteredRow(in::spacer, "Spacer as entered")};
    }
    return {strong(enteredRow(in::spacer, "Spacer")),
            subordinate(rowBy("± as entered", unitOf(Kind::FineLength),
                              [&](int number) { return numbers_.limitOf(number, in::spacer); })),
            subordinate(rowOf(out::spacerToMake, wouldBeLabel()))};
  }

  /// With the ± that was entered where there is room for it; the spacer has it in the row below.
  Row enteredRow(const Input& input, std::string label) const {
    Row row = rowBy(std::move(label), unitOf(input.kind),
                    [&](int number) { return numbers_.entered(number, input); });
    if (&input == &in::spacer && evaluation_.inputGiven(sheet_.engine, input)) {
      for (Text& text : row.texts) text.exact.clear();
    }
    row.difference = difference(input);
    return row;
  }
  Row enteredRow(const Input& input) const { return enteredRow(input, std::string(input.label)); }

  std::string wouldBeLabel() const {
    const auto wanted = [&](const std::string& what, const Input& input) {
      std::string label = "for " + what;
      if (stands(input)) label += " of " + style_.number(input.kind, value(input));
      return label + " it would be";
    };
    const double driver = stands(in::stackDriver) ? value(in::stackDriver) : 0.0;
    if (driver == model::answer(model::StackDriver::DeckClearance)) {
      return wanted("a deck clearance", in::wantedDeckClearance);
    }
    if (driver == model::answer(model::StackDriver::CompressionRatio)) {
      return wanted("a ratio", in::wantedCompressionRatio);
    }
    return wanted("a squish gap", in::wantedSquish);
  }

  /// All that is clamped; a second and third base gasket where one has it, each with its ±.
  Rows gasketRows() const {
    Rows under = {enteredRow(in::baseGasket)};
    for (const Input* gasket : {&in::secondBaseGasket, &in::thirdBaseGasket}) {
      if (isLaidIn(*gasket)) under.push_back(enteredRow(*gasket));
    }
    if (under.size() > 1) return all({std::move(under), {enteredRow(in::headGasket)}});
    return sideBySide("Base / head gasket, compressed",
                      {under.front(), enteredRow(in::headGasket)});
  }

  /// In some cylinder of some engine on the sheet.
  bool isLaidIn(const Input& part) const {
    return std::ranges::any_of(sheet_.columns, [&](const Column& column) {
      for (int i = 0; i < evaluation_.cylinders(column.engine); ++i) {
        if (evaluation_.inputGiven(column.engine, part, i) &&
            evaluation_.inputValue(column.engine, part, i) != 0.0) {
          return true;
        }
      }
      return false;
    });
  }

  Rows compressionRows() const {
    return all({
        {rowOf(out::clearanceVolume), strong(rowOf(out::compressionRatio)),
         toleranceOf(out::compressionRatio),
         subordinate(rowOf(out::compressionRatioWithoutCrevice, "without crevice"))},
        twoStroke() ? twoStrokeRows()
                    : Rows{rowOf(out::effectiveCompressionRatio, effectiveLabel())},
    });
  }

  /// Of the ports only what is known; nothing waits for a drawing of them.
  Rows twoStrokeRows() const {
    Rows rows = {rowOf(out::trappedCompressionRatio), rowOf(out::primaryCompressionRatio)};
    const auto known = [&](const Result& result) {
      return numbers_.isValue(sheet_.engine, result);
    };
    if (known(out::exhaustDuration) || known(out::transferDuration)) {
      std::ranges::move(sideBySide("Exhaust / transfer duration",
                                   {rowOf(out::exhaustDuration), rowOf(out::transferDuration)}),
                        std::back_inserter(rows));
    }
    for (const Result* result : {&out::blowdown, &out::crankingPressure}) {
      if (known(*result)) rows.push_back(rowOf(*result));
    }
    return rows;
  }

  std::string effectiveLabel() const {
    if (!stands(in::inletClosingLift)) return "Effective, closing lift not said";
    const double lift = value(in::inletClosingLift);
    return "Effective, closing at " +
           (lift > 0.0 ? style_.text(Kind::FineLength, lift) : std::string("the seat"));
  }

  Rows speedRows() const {
    return all({
        {rowOf(out::workingSpeed, "At a speed of"), rowOf(out::meanPistonSpeed),
         rowOf(out::peakPistonSpeed), rowOf(out::peakAcceleration)},
        sideBySide("Rod tension / stress", {rowOf(out::rodTension), rowOf(out::rodStress)}),
        {rodLoadRow()},
    });
  }

  /// Only of rods that are the donor's own: others have not proven that load.
  Row rodLoadRow() const {
    Row row = rowOf(out::rodLoadRatio, "Rod load against the proven");
    const auto own = static_cast<double>(out::Rods::Donors);
    bool anyBesideDonor = false;
    for (std::size_t i = 0; i < sheet_.columns.size(); ++i) {
      const int number = sheet_.columns[i].engine;
      const bool counts = numbers_.isEverywhere(number, out::rods, own);
      if (!counts) row.texts[i] = {std::string(kNothing), {}};
      anyBesideDonor = anyBesideDonor || (counts && number != donor_);
    }
    if (!anyBesideDonor) row.texts.assign(row.texts.size(), {std::string(kNothing), {}});
    if (!numbers_.isEverywhere(sheet_.engine, out::rods, own)) row.difference.clear();
    return row;
  }

  Rows ceilingRows() const {
    return {
        strong(revCeilingRow()),
        subordinate(rowOf(out::governs, "stopped by")),
        subordinate(rowOf(out::nextCeiling, "next limit")),
        rowOf(out::breathingSpeed, "Breathing (power only)"),
    };
  }

  /// A ceiling with a line missing is only as good as the lines it has.
  Row revCeilingRow() const {
    Row row = rowOf(out::revCeiling);
    for (std::size_t i = 0; i < sheet_.columns.size(); ++i) {
      const int number = sheet_.columns[i].engine;
      if (numbers_.isValue(number, out::revCeiling) && lineWaits(number)) {
        row.texts[i].full = "at most " + row.texts[i].full;
      }
    }
    return row;
  }

  bool lineWaits(int number) const {
    return std::ranges::any_of(limits::kRevLines, [&](const limits::RevLine& line) {
      for (int i = 0; i < evaluation_.cylinders(number); ++i) {
        if (assessment_(number, *line.ceiling, i).state == describe::State::Waits) return true;
      }
      return false;
    });
  }

  /// It stands in the engine of the sheet, and no engine beside it has another.
  bool sameBalanceFactor() const {
    if (!stands(in::balanceFactor)) return false;
    return std::ranges::all_of(sheet_.columns, [&](const Column& column) {
      return evaluation_.inputStands(column.engine, in::balanceFactor) &&
             evaluation_.inputValue(column.engine, in::balanceFactor) == value(in::balanceFactor);
    });
  }

  Rows massRows() const {
    std::string bob = "Bob weight";
    if (sameBalanceFactor()) {
      bob += " at " + style_.text(Kind::Share, value(in::balanceFactor), 0);
    }
    return all({
        sideBySide("Reciprocating / rotating mass",
                   {rowOf(out::reciprocatingMass), rowOf(out::rotatingMass)}),
        {rowOf(out::bobWeight, std::move(bob)), rowOf(out::staticMoment)},
    });
  }

  Rows clearanceRows() const {
    return all({
        sideBySide("Skirt to web / out of liner", {rowOf(out::skirtToWeb, "Skirt to web"),
                                                   rowOf(out::skirtOut, "Skirt out of liner")}),
        {rowOf(out::pinAboveLiner, "Pin axis above liner edge")},
    });
  }

  // ---- Throws and firing

  /// A crank of which every throw was said; a single has nothing to say.
  bool saysThrows(int number) const {
    return evaluation_.cylinders(number) > 1 && evaluation_.inputGiven(number, in::throwAhead);
  }

  /// What is said of a result in all cylinders, or what it waits for.
  template <typename Say>
  std::string saidOf(int number, const Result& result, Say say) const {
    const Text text = numbers_.text(number, result);
    if (!numbers_.isValue(number, result)) return text.full;
    const int n = evaluation_.cylinders(number);
    std::vector<double> values(static_cast<std::size_t>(n));
    for (int i = 0; i < n; ++i) {
      values[static_cast<std::size_t>(i)] = assessment_(number, result, i).value;
    }
    return say(values);
  }

  std::string degrees(double angle) const {
    return numbers_.withoutZeros(style_.number(Kind::Angle, angle, 1));
  }

  std::string listed(const std::vector<double>& angles, std::string_view between) const {
    std::vector<std::string> texts(angles.size());
    std::ranges::transform(angles, texts.begin(), [&](double angle) { return degrees(angle); });
    return join(texts, between);
  }

  /// Few stand on one line together.
  std::string inARow(const std::vector<double>& angles) const {
    const std::string all = listed(angles, "\u00A0·\u00A0");
    return (length(all) <= kMostLetters ? all : listed(angles, " · ")) + unitOf(Kind::Angle);
  }

  /// "fires 1-2, 450 · 270°; 1 to 2: throws ahead by 0 · 270°; tops 0 · 90°"
  std::string firingOf(int number, const std::string& order) const {
    constexpr int kMostWithTops = 8;  // cylinders: a line of numbers, not a column
    const int n = evaluation_.cylinders(number);
    std::vector<std::string> numbers;
    std::vector<double> throws;
    std::vector<double> axes;
    for (int i = 0; i < n; ++i) {
      numbers.push_back(numberOf(number, i));
      throws.push_back(evaluation_.inputValue(number, in::throwAhead, i));
      axes.push_back(evaluation_.inputValue(number, in::cylinderAxis, i));
    }
    const std::string tops = saidOf(number, out::topAfterFirst, [&](std::vector<double> angles) {
      for (double& angle : angles) angle = firing::asRead(angle, 2.0 * std::numbers::pi);
      return inARow(angles);
    });
    const bool inLine =
        std::ranges::all_of(axes, [&](double axis) { return axis == axes.front(); });
    bool counted = true;
    for (int i = 0; i < n; ++i) {
      counted = counted && numbers[static_cast<std::size_t>(i)] == std::to_string(i + 1);
    }
    const std::string cylinders =
        counted ? "1 to " + std::to_string(n) : "cylinders " + join(numbers, ", ");
    return "fires " + order + "; " + cylinders + ": throws ahead by " + inARow(throws) +
           (inLine ? "" : "; axes likewise " + inARow(axes)) +
           (n > kMostWithTops ? "; tops on the throws sheet" : "; tops " + tops);
  }

  firing::Strokes strokesOf(int number) const {
    const bool two =
        evaluation_.inputValue(number, in::cycle) == model::answer(model::Cycle::TwoStroke);
    return two ? firing::Strokes::Two : firing::Strokes::Four;
  }

  std::string numberOf(int engine, int cylinder) const {
    return std::to_string(model::numberOfCylinder(evaluation_, engine, cylinder));
  }

  std::string orderAndIntervals(int number, const std::vector<double>& firesAt) const {
    firing::Order order = firing::sorted(firesAt);
    const firing::Strokes strokes = strokesOf(number);
    std::vector<int> numbers(firesAt.size());
    for (std::size_t i = 0; i < numbers.size(); ++i) {
      numbers[i] = model::numberOfCylinder(evaluation_, number, static_cast<int>(i));
    }
    nameTogetherAsEntered(number, numbers, order);
    const std::string text = firing::words(order, numbers);
    if (firing::isEven(order, strokes)) {
      return text + ", " + degrees(order.largestGap(strokes)) + unitOf(Kind::Angle) + " each";
    }
    return text + ", " + inARow(order.intervals(strokes));
  }

  /// Those that fire together, in the order in which they were entered.
  void nameTogetherAsEntered(int engine, const std::vector<int>& numbers,
                             firing::Order& order) const {
    if (!evaluation_.inputGiven(engine, in::firingOrder)) return;
    const auto entered = [&](int cylinder) {
      const int named = numbers[static_cast<std::size_t>(cylinder)];
      int place = 0;
      while (place < evaluation_.cylinders(engine) &&
             evaluation_.inputValue(engine, in::firingOrder, place) != named) {
        ++place;
      }
      return place;
    };
    for (std::size_t from = 0, to = 0; from < order.at.size(); from = to) {
      while (to < order.at.size() && order.at[to] - order.at[from] < firing::kSame) ++to;
      std::ranges::sort(order.cylinders.begin() + static_cast<std::ptrdiff_t>(from),
                        order.cylinders.begin() + static_cast<std::ptrdiff_t>(to), {}, entered);
    }
  }

  void writeStars() {
    if (!saysThrows(sheet_.engine)) return;
    sheet_.stars.push_back(starOf(sheet_.engine));
    if (!sheet_.differences || !saysThrows(donor_)) return;
    Star donors = starOf(donor_);
    Star& own = sheet_.stars.front();
    if (donors.caption != own.caption)
      donors.firing = firing::seenOf(evaluation_, donor_).words() + "; " + donors.firing;
    if (donors.throws == own.throws && donors.firing == own.firing) {
      own.heading = "donor, " + own.heading;
    } else {
      sheet_.stars.push_back(std::move(donors));
    }
  }

  Star starOf(int number) const {
    Star star;
    for (int i = 0; i < evaluation_.cylinders(number); ++i) {
      star.throws.push_back({.ahead = evaluation_.inputValue(number, in::throwAhead, i),
                             .axis = evaluation_.inputValue(number, in::cylinderAxis, i),
                             .name = numberOf(number, i)});
    }
    const firing::Seen seen = firing::seenOf(evaluation_, number);
    star.clockwise = seen.clockwise;
    star.heading = partKey(engine(number).part);
    star.order = saidOf(number, out::firesAfterFirst, [&](const std::vector<double>& firesAt) {
      return orderAndIntervals(number, firesAt);
    });
    star.firing = firingOf(number, star.order);
    star.senseSaid = seen.rotationSaid;
    star.caption = "Throws " + seen.words();
    return star;
  }

  // ---- Boxes and margins

  void writeBoxes() {
    const bool noPlate = numbers_.isEverywhere(sheet_.engine, out::spacerInStack, 0.0);
    sheet_.asBuilt = {
        noPlate ? boxes("deck clearance", out::deckClearance) : spacerBoxes(),
        boxes("squish gap", out::squishGap),
    };
    const Text ratio = numbers_.text(sheet_.engine, out::compressionRatio);
    sheet_.closing = {{"ratio", ratio.brief.empty() ? ratio.full : ratio.brief}, {"by, date", {}}};
  }

  Measured boxes(std::string_view what, const Result& result) const {
    Measured all{std::string(what), {}};
    const int count = evaluation_.cylinders(sheet_.engine);
    for (int i = 0; i < count; ++i) {
      const describe::Cell& cell = assessment_(sheet_.engine, result, i);
      const bool known = cell.state == describe::State::Value;
      all.boxes.push_back(
          {count > 1 ? numberOf(sheet_.engine, i) : std::string(),
           known ? style_.number(result.kind, cell.value, result.decimals) : std::string()});
    }
    return all;
  }

  /// A spacer as it was typed; a negative one is what is to be taken off.
  Measured spacerBoxes() const {
    Measured all = boxes("spacer", out::spacerInStack);
    const describe::Entry& entry = engine(sheet_.engine)[in::spacer];
    for (std::size_t i = 0; i < all.boxes.size(); ++i) {
      const auto cylinder = static_cast<int>(i);
      const describe::Cell& cell = assessment_(sheet_.engine, out::spacerInStack, cylinder);
      if (cell.state != describe::State::Value) continue;
      const double thick = std::abs(cell.value);
      all.boxes[i].drawn = evaluation_.inputGiven(sheet_.engine, in::spacer, cylinder)
                               ? asEntered(style_, Kind::FineLength, entry, thick)
                               : style_.number(Kind::FineLength, thick);
      if (cell.value < 0.0) all.boxes[i].what = "skim";
    }
    return all;
  }

  void writeCautions() {
    sheet_.cautions =
        "Numbers, not permission: verify with your own instruments, never run above the governing "
        "ceiling. Rotating and pressed parts can kill. Pressing, heating, lifting, first starts, "
        "road and class matters follow licensed practice, local codes and the scrutineer.";
    if (compressionIgnition()) {
      sheet_.cautions += " Keep an air shut-off plate at hand at the first start: it can run away.";
    }
  }

  // ---- Terms

  void sayInTerms() {
    const EngineTerms terms(evaluation_, sheet_.engine, options_);
    const auto say = [&](std::string& text) { terms.say(text); };
    for (Group& group : sheet_.groups) {
      for (Row& row : group.rows) {
        say(row.label);
        for (Text& text : row.texts) {
          say(text.full);
          say(text.brief);
          say(text.exact);
        }
      }
    }
    for (Star& star : sheet_.stars) {
      for (std::string* text : {&star.caption, &star.order, &star.firing}) say(*text);
    }
    for (Objection& objection : sheet_.objections) say(objection.sentence);
    for (Measured& measured : sheet_.asBuilt) say(measured.what);
    for (std::string* text :
         {&sheet_.restsOn, &sheet_.restsFurtherOn, &sheet_.waitsFor, &sheet_.cautions}) {
      say(*text);
    }
  }

  const Assessment& assessment_;
  const describe::Evaluation& evaluation_;
  const model::Project& project_;
  const Style& style_;
  const SheetOptions& options_;
  const Numbers numbers_;
  int donor_;
  std::vector<int> besides_;  ///< engines without a column
  Sheet sheet_;
};

}  // namespace

Sheet sheetOf(const assess::Assessment& assessment, const units::Style& style,
              const SheetOptions& options) {
  return Writer(assessment, style, options).write();
}

}  // namespace strokewright::sheet
