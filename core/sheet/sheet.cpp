#include "core/sheet/sheet.h"

#include <algorithm>
#include <cstddef>
#include <functional>
#include <span>
#include <utility>

#include "core/chamber/results.h"
#include "core/clearance/results.h"
#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/describe/wording.h"
#include "core/limits/results.h"
#include "core/masses/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"

namespace strokewright::sheet {
namespace {

using assess::Assessment;
using describe::Cell;
using describe::Finding;
using describe::Input;
using describe::Origin;
using describe::Result;
using describe::State;
using units::Kind;
using units::Style;

namespace in = model::in;

constexpr std::string_view kNothing = "–";
constexpr std::size_t kMostNames = 12;  // of one origin; the rest is counted

std::string join(const std::vector<std::string>& parts, std::string_view between) {
  std::string text;
  for (const std::string& part : parts) {
    if (!text.empty()) text += between;
    text += part;
  }
  return text;
}

/// Names of a list, the last ones only counted where there are very many.
std::string namesOf(std::vector<std::string> names) {
  if (names.size() > kMostNames) {
    const std::size_t rest = names.size() - kMostNames + 1;
    names.resize(kMostNames - 1);
    names.push_back("and " + std::to_string(rest) + " more");
  }
  return join(names, ", ");
}

/// "Bore" inside a sentence.
std::string inSentence(std::string_view label) {
  std::string text(label);
  const auto lower = [](char letter) { return letter >= 'a' && letter <= 'z'; };
  if (text.size() > 1 && text[0] >= 'A' && text[0] <= 'Z' && lower(text[1])) {
    text[0] = static_cast<char>(text[0] - 'A' + 'a');
  }
  return text;
}

/// What one cylinder says, as it goes into a list of cylinders.
Text listed(const std::vector<std::string>& texts, const std::string& range) {
  const bool same = std::ranges::all_of(texts, [&](const auto& text) { return text == texts[0]; });
  if (same) return {texts[0], {}};
  return {join(texts, " · "), range};
}

class Writer {
 public:
  Writer(const Assessment& assessment, const Style& style, const SheetOptions& options)
      : assessment_(assessment),
        project_(assessment.project()),
        style_(style),
        options_(options),
        donor_(assessment.evaluation().referenceDonor()) {
    sheet_.engine = options.engine >= 0 ? options.engine : project_.target();
    if (sheet_.engine < 0 && !project_.engines.empty()) sheet_.engine = 0;
  }

  Sheet write() {
    writeTitleBlock();
    sheet_.checkBar = "Check bar " + style_.text(Kind::Length, kCheckBar, -1) + " before use";
    if (sheet_.engine < 0) return std::move(sheet_);
    chooseColumns();
    writeTitle();
    writeGroups();
    writeObjections();
    writeRestsOn();
    writeWaits();
    writeBoxes();
    writeCautions();
    return std::move(sheet_);
  }

 private:
  const model::Engine& engine(int number) const {
    return project_.engines[static_cast<std::size_t>(number)];
  }
  int cylinders() const { return assessment_.evaluation().cylinders(sheet_.engine); }
  const Cell& cell(int number, const Result& result, int cylinder = 0) const {
    return assessment_(number, result, cylinder);
  }
  bool isValue(int number, const Result& result) const {
    return everyCylinder(number, result, [](const Cell& it) { return it.state == State::Value; });
  }
  template <typename Test>
  bool everyCylinder(int number, const Result& result, Test test) const {
    for (int i = 0; i < cylindersOf(number, result); ++i) {
      if (!test(cell(number, result, i))) return false;
    }
    return true;
  }
  int cylindersOf(int number, const Result& result) const {
    return result.per == describe::Per::Engine ? 1 : assessment_.evaluation().cylinders(number);
  }
  /// The answer to a choice, as it stands.
  template <typename Answer>
  bool answers(const Input& input, Answer answer) const {
    const describe::Evaluation& evaluation = assessment_.evaluation();
    return evaluation.inputStands(sheet_.engine, input) &&
           static_cast<int>(evaluation.inputValue(sheet_.engine, input)) ==
               static_cast<int>(answer);
  }
  bool compressionIgnition() const { return answers(in::ignition, model::Ignition::Compression); }

  // ---- Head

  void chooseColumns() {
    const bool besideDonor = donor_ >= 0 && donor_ != sheet_.engine;
    if (besideDonor) addColumn(donor_, "donor");
    addColumn(sheet_.engine, std::string(partKey(engine(sheet_.engine).part)));
    sheet_.differences = besideDonor;

    std::vector<int> others;
    for (int i = 0; i < static_cast<int>(project_.engines.size()); ++i) {
      if (i != sheet_.engine && i != donor_) others.push_back(i);
    }
    if (others.size() == 1 && engine(others[0]).part == model::Part::Variant) {
      addColumn(others[0], "variant");
      return;
    }
    std::vector<std::string> names;
    for (const int other : others) names.push_back(engine(other).name);
    if (!names.empty()) sheet_.alsoInProject = "Also in this project: " + namesOf(names) + ".";
  }

  void addColumn(int number, std::string heading) {
    sheet_.columns.push_back({std::move(heading), engine(number).name, number});
  }

  void writeTitle() {
    sheet_.title = engine(sheet_.engine).name;
    std::vector<std::string> parts;
    if (const std::string layout = layoutWords(); !layout.empty()) parts.push_back(layout);
    if (donor_ >= 0 && donor_ != sheet_.engine) parts.push_back("from " + engine(donor_).name);
    if (const std::string purpose = purposeWords(); !purpose.empty()) parts.push_back(purpose);
    sheet_.subtitle = join(parts, " · ");
  }

  std::string layoutWords() const {
    std::vector<std::string> words;
    if (assessment_.evaluation().inputStands(sheet_.engine, in::cylinderCount)) {
      constexpr std::string_view kLayouts[] = {"single", "twin", "triple"};
      const auto count = static_cast<std::size_t>(cylinders());
      words.push_back(count <= std::size(kLayouts) ? std::string(kLayouts[count - 1])
                                                   : std::to_string(count) + " cylinders");
    }
    addAnswer(words, in::cycle);
    if (compressionIgnition()) words.push_back("compression ignition");
    return join(words, ", ");
  }

  std::string purposeWords() const {
    std::vector<std::string> words;
    addAnswer(words, in::use);
    if (assessment_.evaluation().inputStands(sheet_.engine, in::classLimit)) {
      words.push_back(inputText(sheet_.engine, in::classLimit, 0, 0) + " " +
                      std::string(style_.unit(Kind::Volume)) + " class");
    }
    return join(words, ", ");
  }

  void addAnswer(std::vector<std::string>& words, const Input& choice) const {
    const describe::Evaluation& evaluation = assessment_.evaluation();
    if (!evaluation.inputStands(sheet_.engine, choice)) return;
    words.push_back(wordValue(choice, evaluation.inputValue(sheet_.engine, choice), style_));
  }

  void writeTitleBlock() {
    const auto unit = [&](Kind kind) { return std::string(style_.unit(kind)); };
    sheet_.titleBlock = {
        .project = project_.name,
        .drawnFor = project_.drawnFor,
        .units = join({unit(Kind::Length), unit(Kind::Volume), unit(Kind::Mass)}, " · "),
        .revision = project_.revision,
        .date = options_.date,
        .sheet = "1 of 1",
        .program = "Strokewright " + options_.programVersion,
    };
  }

  // ---- Numbers

  /// The number of a result in one cylinder, or why there is none.
  std::string resultText(int number, const Result& result, int cylinder) const {
    const Cell& it = cell(number, result, cylinder);
    if (it.state != State::Value) return std::string(kNothing);
    if (result.kind == Kind::Choice) return wordValue(result, it.value, style_);
    return style_.number(result.kind, it.value, result.decimals);
  }

  Text text(int number, const Result& result) {
    const int count = cylindersOf(number, result);
    std::vector<std::string> texts;
    for (int i = 0; i < count; ++i) {
      if (cell(number, result, i).state == State::Waits) return waiting(number, result, i);
      noteRefusal(number, cell(number, result, i));
      texts.push_back(resultText(number, result, i));
    }
    if (!isValue(number, result)) return listed(texts, std::string(kNothing));
    const auto least = extreme(number, result, std::less<>());
    const auto most = extreme(number, result, std::greater<>());
    return listed(texts,
                  resultText(number, result, least) + " … " + resultText(number, result, most));
  }

  template <typename Before>
  int extreme(int number, const Result& result, Before before) const {
    int best = 0;
    for (int i = 1; i < cylindersOf(number, result); ++i) {
      if (before(cell(number, result, i).value, cell(number, result, best).value)) best = i;
    }
    return best;
  }

  Text waiting(int number, const Result& result, int cylinder) const {
    const auto waits = assessment_.waitsFor(number, result, cylinder);
    if (waits.empty()) return {"waits", {}};
    const auto& first = waits.front();
    std::string name = (first.donors ? "the donor's " : "") + inSentence(first.input->label);
    if (waits.size() > 1) name += " and " + std::to_string(waits.size() - 1) + " more";
    return {"waits for " + name, "waits"};
  }

  std::string inputText(int number, const Input& input, int cylinder, int decimals = -1) const {
    const describe::Evaluation& evaluation = assessment_.evaluation();
    if (!evaluation.inputGiven(number, input, cylinder) &&
        !evaluation.inputStands(number, input, cylinder)) {
      return std::string(kNothing);
    }
    const double value = evaluation.inputValue(number, input, cylinder);
    if (input.kind == Kind::Choice) return wordValue(input, value, style_);
    return style_.number(input.kind, value, decimals);
  }

  Text text(int number, const Input& input) const {
    const describe::Evaluation& evaluation = assessment_.evaluation();
    const int count = evaluation.cylinders(number);
    std::vector<std::string> texts;
    int least = 0;
    int most = 0;
    for (int i = 0; i < count; ++i) {
      texts.push_back(inputText(number, input, i));
      const double value = evaluation.inputValue(number, input, i);
      if (value < evaluation.inputValue(number, input, least)) least = i;
      if (value > evaluation.inputValue(number, input, most)) most = i;
    }
    return listed(texts, inputText(number, input, least) + " … " + inputText(number, input, most));
  }

  /// Several numbers in one row, each once; those that differ between cylinders as a range.
  static Text together(const std::vector<Text>& parts, std::string_view between) {
    if (const auto waits = std::ranges::find(parts, "waits", &Text::brief); waits != parts.end()) {
      return *waits;
    }
    std::vector<std::string> texts;
    for (const Text& part : parts) texts.push_back(part.brief.empty() ? part.full : part.brief);
    const bool empty = std::ranges::all_of(texts, [](const auto& it) { return it == kNothing; });
    return {empty ? std::string(kNothing) : join(texts, between), {}};
  }

  /// Against the reference donor; empty where one of the two has no number.
  std::string difference(const Result& result) const {
    if (!sheet_.differences || result.kind == Kind::Choice) return {};
    if (!isValue(sheet_.engine, result) || !isValue(donor_, result)) return {};
    if (cylindersOf(sheet_.engine, result) != cylindersOf(donor_, result)) return {};
    std::vector<std::string> texts;
    for (int i = 0; i < cylindersOf(sheet_.engine, result); ++i) {
      const double by = cell(sheet_.engine, result, i).value - cell(donor_, result, i).value;
      texts.push_back(style_.difference(result.kind, by, result.decimals));
    }
    const Text all = listed(texts, {});
    return all.full == texts[0] ? all.full : std::string();
  }

  std::string difference(const Input& input) const {
    const describe::Evaluation& evaluation = assessment_.evaluation();
    if (!sheet_.differences || evaluation.cylinders(donor_) != cylinders()) return {};
    std::vector<std::string> texts;
    for (int i = 0; i < cylinders(); ++i) {
      if (!evaluation.inputStands(sheet_.engine, input, i)) return {};
      if (!evaluation.inputStands(donor_, input, i)) return {};
      texts.push_back(style_.difference(input.kind, evaluation.inputValue(sheet_.engine, input, i) -
                                                        evaluation.inputValue(donor_, input, i)));
    }
    const Text all = listed(texts, {});
    return all.full == texts[0] ? all.full : std::string();
  }

  // ---- Rows

  template <typename Cellular>
  Row rowBy(std::string label, std::string unit, std::string difference, Cellular cellular) {
    Row row{std::move(label), std::move(unit), {}, std::move(difference), Emphasis::Plain};
    for (const Column& column : sheet_.columns) row.texts.push_back(cellular(column.engine));
    return row;
  }

  template <typename Described>
  Row rowOf(const Described& described, std::string label) {
    return rowBy(std::move(label), std::string(style_.unit(described.kind)), difference(described),
                 [&](int number) { return text(number, described); });
  }
  Row rowOf(const Result& result) { return rowOf(result, std::string(result.name)); }
  Row rowOf(const Input& input) { return rowOf(input, std::string(input.label)); }

  template <typename... Described>
  Row rowOfSeveral(std::string label, std::string_view between, const Described&... described) {
    std::vector<std::string> units;
    const auto note = [&](std::string_view unit) {
      if (!unit.empty() && std::ranges::find(units, unit) == units.end()) {
        units.emplace_back(unit);
      }
    };
    (note(style_.unit(described.kind)), ...);
    std::string by = join({orNothing(difference(described))...}, between);
    const bool none = !(... || !difference(described).empty());
    return rowBy(std::move(label), join(units, " / "), none ? std::string() : std::move(by),
                 [&](int number) { return together({text(number, described)...}, between); });
  }
  static std::string orNothing(std::string it) {
    return it.empty() ? std::string(kNothing) : std::move(it);
  }

  /// The ± of a result: the largest of all cylinders.
  Row toleranceOf(const Result& result) {
    Row row = rowBy("± likely / worst case", std::string(style_.unit(result.kind)), {},
                    [&](int number) { return tolerance(number, result); });
    row.emphasis = Emphasis::Subordinate;
    return row;
  }

  Text tolerance(int number, const Result& result) const {
    double likely = 0.0;
    double worst = 0.0;
    for (int i = 0; i < cylindersOf(number, result); ++i) {
      likely = std::max(likely, cell(number, result, i).likely);
      worst = std::max(worst, cell(number, result, i).worst);
    }
    if (!isValue(number, result) || worst <= 0.0) return {std::string(kNothing), {}};
    return {join({style_.number(result.kind, likely, result.decimals),
                  style_.number(result.kind, worst, result.decimals)},
                 " / "),
            {}};
  }

  Text worstRange(int number, const Result& result) const {
    if (!isValue(number, result)) return {std::string(kNothing), {}};
    double least = cell(number, result).value;
    double most = least;
    for (int i = 0; i < cylindersOf(number, result); ++i) {
      const Cell& it = cell(number, result, i);
      least = std::min(least, it.value - it.worst);
      most = std::max(most, it.value + it.worst);
    }
    return {style_.number(result.kind, least, result.decimals) + " … " +
                style_.number(result.kind, most, result.decimals),
            {}};
  }

  static Row strong(Row row) {
    row.emphasis = Emphasis::Strong;
    return row;
  }
  static Row subordinate(Row row) {
    row.emphasis = Emphasis::Subordinate;
    return row;
  }
  /// Some engine has something to say in this row.
  static bool says(const Row& row) {
    return std::ranges::any_of(row.texts, [](const Text& it) { return it.full != kNothing; });
  }

  void addGroup(std::vector<Row> rows) {
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

  std::vector<Row> sizeRows() {
    std::vector<Row> rows;
    rows.push_back(boreAndStroke());
    if (offsetSomewhere()) rows.push_back(rowOf(out::trueStroke));
    rows.push_back(strong(rowOf(out::displacement)));
    rows.push_back(toleranceOf(out::displacement));
    rows.push_back(rowOf(out::classMargin));
    return rows;
  }

  /// The stroke is twice the throw; the true stroke has a row of its own where it is another.
  Row boreAndStroke() {
    Row row = rowBy("Bore × stroke", std::string(style_.unit(Kind::Length)), {},
                    [&](int number) { return boreAndStroke(number); });
    if (!sheet_.differences || !isValue(donor_, out::crankRadius) ||
        !isValue(sheet_.engine, out::crankRadius)) {
      return row;
    }
    const double stroke =
        2.0 * (cell(sheet_.engine, out::crankRadius).value - cell(donor_, out::crankRadius).value);
    row.difference =
        join({orNothing(difference(in::bore)), style_.difference(Kind::Length, stroke)}, " × ");
    return row;
  }

  Text boreAndStroke(int number) {
    const Text bore = text(number, in::bore);
    if (!isValue(number, out::crankRadius)) {
      return together({bore, text(number, out::crankRadius)}, " × ");
    }
    std::vector<std::string> strokes;
    for (int i = 0; i < cylindersOf(number, out::crankRadius); ++i) {
      strokes.push_back(style_.number(Kind::Length, 2.0 * cell(number, out::crankRadius, i).value));
    }
    const auto least = static_cast<std::size_t>(extreme(number, out::crankRadius, std::less<>()));
    const auto most = static_cast<std::size_t>(extreme(number, out::crankRadius, std::greater<>()));
    return together({bore, listed(strokes, strokes[least] + " … " + strokes[most])}, " × ");
  }

  bool offsetSomewhere() const {
    return std::ranges::any_of(sheet_.columns, [&](const Column& column) {
      return isValue(column.engine, out::netOffset) &&
             !everyCylinder(column.engine, out::netOffset,
                            [](const Cell& it) { return it.value == 0.0; });
    });
  }

  std::vector<Row> partRows() {
    return {
        rowOf(in::rodLength),
        rowOfSeveral("Rod ratio / largest rod angle", " / ", out::rodRatio, out::largestRodAngle),
        rowOf(in::compressionHeight),
        rowOf(in::gudgeonPinDiameter),
        rowOfSeveral("Big end: pin / eye × width", " / ", in::bigEndPinDiameter,
                     in::bigEndEyeDiameter, in::bigEndWidth),
    };
  }

  std::vector<Row> deckRows() {
    std::vector<Row> rows{
        rowOf(out::protrusionWithoutSpacer),
        strong(rowOf(out::spacerToMake)),
        toleranceOf(out::spacerToMake),
        rowOf(in::spacer, "Spacer as entered"),
        rowOf(in::baseGasket),
        rowOf(in::headGasket),
        rowOf(out::deckClearance),
        strong(rowOf(out::squishGap, squishName() + ", cold")),
        toleranceOf(out::squishGap),
    };
    rows.push_back(
        subordinate(rowBy("worst case, from … to", std::string(style_.unit(Kind::FineLength)), {},
                          [&](int number) { return worstRange(number, out::squishGap); })));
    return rows;
  }

  std::string squishName() const {
    return compressionIgnition() ? "Bumping clearance" : std::string(out::squishGap.name);
  }

  std::vector<Row> compressionRows() {
    return {
        rowOf(out::clearanceVolume),
        strong(rowOf(out::compressionRatio)),
        toleranceOf(out::compressionRatio),
        subordinate(rowOf(out::compressionRatioWithoutCrevice, "without crevice")),
        rowOf(out::effectiveCompressionRatio, effectiveLabel()),
    };
  }

  std::string effectiveLabel() const {
    const describe::Evaluation& evaluation = assessment_.evaluation();
    if (!evaluation.inputStands(sheet_.engine, in::inletClosingLift)) {
      return std::string(out::effectiveCompressionRatio.name);
    }
    const double lift = evaluation.inputValue(sheet_.engine, in::inletClosingLift);
    return lift > 0.0 ? "Effective, inlet closing at " + style_.text(Kind::FineLength, lift)
                      : "Effective, inlet closing at the seat";
  }

  std::vector<Row> speedRows() {
    return {
        rowOf(out::workingSpeed, "At a speed of"),
        rowOf(out::meanPistonSpeed),
        rowOf(out::peakPistonSpeed),
        rowOf(out::peakAcceleration),
        rowOfSeveral("Rod tension / stress", " / ", out::rodTension, out::rodStress),
        rowOf(out::rodLoadRatio, "Rod load against the proven"),
    };
  }

  std::vector<Row> ceilingRows() {
    return {
        strong(rowOf(out::revCeiling)),
        subordinate(rowOf(out::governs, "stopped by")),
        subordinate(rowOf(out::nextCeiling, "next")),
        rowOf(out::breathingSpeed, "Breathing (power, not safety)"),
    };
  }

  std::vector<Row> massRows() {
    std::string bob(out::bobWeight.name);
    if (assessment_.evaluation().inputStands(sheet_.engine, in::balanceFactor)) {
      bob += " at " +
             style_.text(Kind::Share,
                         assessment_.evaluation().inputValue(sheet_.engine, in::balanceFactor), 0);
    }
    return {
        rowOfSeveral("Reciprocating / rotating mass", " / ", out::reciprocatingMass,
                     out::rotatingMass),
        rowOf(out::bobWeight, bob),
        rowOf(out::staticMoment),
    };
  }

  std::vector<Row> clearanceRows() {
    return {
        rowOfSeveral("Skirt to web / out of liner", " / ", out::skirtToWeb, out::skirtOut),
        rowOf(out::pinAboveLiner),
    };
  }

  // ---- What speaks against it

  void noteRefusal(int number, const Cell& it) {
    if (it.state == State::Refused) refused_.push_back({number, &it});
  }

  /// "Burdock 636: " before what is not said of the engine the sheet is about.
  std::string named(int number, std::string sentence) const {
    return number == sheet_.engine ? std::move(sentence) : engine(number).name + ": " + sentence;
  }

  void add(std::string_view word, std::string sentence) {
    Objection objection{std::string(word), std::move(sentence)};
    auto& all = sheet_.objections;
    const bool said = std::ranges::find(all, objection.sentence, &Objection::sentence) != all.end();
    if (!said) all.push_back(std::move(objection));
  }

  void writeObjections() {
    using describe::Weight;
    for (const Weight weight : {Weight::Forbids, Weight::Objects, Weight::Remarks}) {
      for (const int number : ownFirst()) addFindings(number, weight);
      if (weight == Weight::Forbids) addRefusals();
    }
  }

  std::vector<int> ownFirst() const {
    std::vector<int> numbers{sheet_.engine};
    for (const Column& column : sheet_.columns) {
      if (column.engine != sheet_.engine) numbers.push_back(column.engine);
    }
    return numbers;
  }

  void addFindings(int number, describe::Weight weight) {
    const bool several = assessment_.evaluation().cylinders(number) > 1;
    for (const Finding& finding : assessment_.findings(number)) {
      if (finding.weight != weight) continue;
      std::string sentence = word(finding.says, style_);
      if (several && finding.cylinder >= 0) {
        sentence = "Cylinder " + std::to_string(finding.cylinder + 1) + ": " + sentence;
      }
      add(describe::weightWord(weight), named(number, std::move(sentence)));
    }
  }

  /// Refusals that no finding has said already.
  void addRefusals() {
    for (const auto& [number, it] : refused_) {
      const describe::RefusedBecause& because = assessment_.evaluation().refusal(*it);
      if (because.input != nullptr && forbidden(because.donors ? donor_ : number, *because.input)) {
        continue;
      }
      add("refused", named(number, word(because, style_)));
    }
  }

  bool forbidden(int number, const Input& input) const {
    return std::ranges::any_of(assessment_.findings(number), [&](const Finding& finding) {
      return finding.weight == describe::Weight::Forbids &&
             std::ranges::find(finding.about, &input) != finding.about.end();
    });
  }

  // ---- What it rests on

  /// Every entry that the results of the engine read, its own and the donor's.
  describe::Reads reads() const {
    describe::Reads all;
    for (const Result* result : assessment_.evaluation().catalogue().results()) {
      for (int i = 0; i < cylindersOf(sheet_.engine, *result); ++i) {
        all |= cell(sheet_.engine, *result, i).notes.read;
      }
    }
    return all;
  }

  void writeRestsOn() {
    const describe::Reads all = reads();
    std::vector<std::string> sentences;
    const auto say = [&](std::string_view what, std::vector<std::string> names) {
      if (!names.empty()) {
        sentences.push_back(std::string(what) + ": " + namesOf(std::move(names)) + ".");
      }
    };
    say("Assumed or decided", entriesFrom(Origin::Assumed, all));
    say("From the maker's book", entriesFrom(Origin::MakersBook, all));
    say("From a catalogue", entriesFrom(Origin::Catalogue, all));
    say("Computed", entriesFrom(Origin::Computed, all));
    say("No origin said", entriesFrom(Origin::NotSaid, all));
    say("By default", defaults(all, false));
    say("Taken as none", defaults(all, true));
    sheet_.restsOn = join(sentences, " ");
  }

  std::vector<std::string> entriesFrom(Origin origin, const describe::Reads& all) const {
    std::vector<std::string> names;
    const auto collect = [&](int number, const auto& read, std::string_view whose) {
      for (const auto& [input, entry] : engine(number).entries) {
        const bool counts = entry.known() && entry.origin == origin &&
                            input->kind != Kind::Choice && input->kind != Kind::Count;
        if (counts && read.test(static_cast<std::size_t>(input->number))) {
          names.push_back(std::string(whose) + inSentence(input->label));
        }
      }
    };
    collect(sheet_.engine, all.own, "");
    if (donor_ >= 0 && donor_ != sheet_.engine) collect(donor_, all.donor, "donor's ");
    return names;
  }

  /// Numbers that stand by default: those that are zero, or the others with their values.
  std::vector<std::string> defaults(const describe::Reads& all, bool zero) const {
    const describe::Evaluation& evaluation = assessment_.evaluation();
    std::vector<std::string> names;
    for (const Input* input : evaluation.catalogue().inputs()) {
      if (!all.own.test(static_cast<std::size_t>(input->number))) continue;
      if (input->kind == Kind::Choice || evaluation.inputGiven(sheet_.engine, *input)) continue;
      if (!evaluation.inputStands(sheet_.engine, *input)) continue;
      const double value = evaluation.inputValue(sheet_.engine, *input);
      if ((value == 0.0) != zero) continue;
      std::string name = inSentence(input->label);
      if (!zero) name += " " + wordValue(*input, value, style_);
      names.push_back(std::move(name));
    }
    return names;
  }

  void writeWaits() {
    std::vector<std::string> names;
    for (const Input* input : assessment_.evaluation().catalogue().inputs()) {
      const int count = assessment_.waiting(sheet_.engine, *input);
      if (count > 0) {
        names.push_back(inSentence(input->label) + " (" + std::to_string(count) + ")");
      }
    }
    if (!names.empty()) {
      sheet_.waitsFor =
          "Not entered yet, and how many results wait for it: " + namesOf(std::move(names)) + ".";
    }
  }

  // ---- Boxes and margins

  void writeBoxes() {
    const bool plate = !isValue(sheet_.engine, out::spacerInStack) ||
                       !everyCylinder(sheet_.engine, out::spacerInStack,
                                      [](const Cell& it) { return it.value == 0.0; });
    sheet_.asBuilt.push_back(plate ? boxes("spacer", out::spacerInStack)
                                   : boxes("deck clearance", out::deckClearance));
    sheet_.asBuilt.push_back(
        boxes(compressionIgnition() ? "bumping clearance" : "squish", out::squishGap));
    const Text ratio = text(sheet_.engine, out::compressionRatio);
    sheet_.closing = {{"ratio", ratio.brief.empty() ? ratio.full : ratio.brief}, {"by, date", {}}};
  }

  Measured boxes(std::string_view what, const Result& result) const {
    Measured all{std::string(what), {}};
    for (int i = 0; i < cylinders(); ++i) {
      std::string label = cylinders() > 1 ? std::to_string(i + 1) : std::string();
      const Cell& it = cell(sheet_.engine, result, i);
      all.boxes.push_back(
          {std::move(label), it.state == State::Value
                                 ? style_.number(result.kind, it.value, result.decimals)
                                 : std::string()});
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

  struct RefusedCell {
    int number;
    const Cell* cell;
  };

  const Assessment& assessment_;
  const model::Project& project_;
  const Style& style_;
  const SheetOptions& options_;
  int donor_;
  std::vector<RefusedCell> refused_;
  Sheet sheet_;
};

}  // namespace

Sheet sheetOf(const assess::Assessment& assessment, const units::Style& style,
              const SheetOptions& options) {
  return Writer(assessment, style, options).write();
}

}  // namespace strokewright::sheet
