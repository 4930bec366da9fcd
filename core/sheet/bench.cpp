#include "core/sheet/bench.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

#include "core/deck/results.h"
#include "core/describe/tabulated.h"
#include "core/describe/wording.h"
#include "core/model/inputs.h"
#include "core/sheet/bench_writers.h"
#include "core/sheet/engine_terms.h"
#include "core/sheet/objections.h"
#include "core/sheet/words.h"

namespace strokewright::sheet {

using describe::Input;
using describe::Result;
using units::Kind;

double BenchWork::limit(const Input& input, int cylinder) const {
  const auto place = static_cast<std::size_t>(cylinder);
  return describe::limitOf(input, entry(input), entry(input).values.size() > 1 ? place : 0);
}

namespace {

/// Without what says how readings are typed, which is parted by semicolons from what is done.
std::string forPaper(std::string_view measure) {
  const std::size_t bar = measure.find('|');
  if (bar == std::string_view::npos) return std::string(measure);
  return std::string(measure.substr(0, measure.rfind(';', bar))) + ".";
}

/// Figures of a described text with the reader's decimal mark.
std::string withMark(std::string_view text, const units::Style& style) {
  const auto isDigit = [](char letter) { return letter >= '0' && letter <= '9'; };
  std::string marked;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool mark = text[i] == '.' && i > 0 && isDigit(text[i - 1]) && i + 1 < text.size() &&
                      isDigit(text[i + 1]);
    marked += mark ? std::string_view(style.decimalMark) : text.substr(i, 1);
  }
  return marked;
}

}  // namespace

Asked BenchWork::ask(const Input& input, int readings) const {
  Asked asked{.label = std::string(input.label),
              .unit = std::string(style.unit(input.kind)),
              .instrument = withMark(input.instrument, style),
              .how = withMark(forPaper(input.measure), style),
              .readings = readings,
              .input = &input};
  if (input.plusMinus > 0.0) {
    asked.instrument += ", ± " + style.editable(input.kind, input.plusMinus) + " " + asked.unit;
  }
  const int places = input.list ? cylinders() : 1;
  for (int i = 0; i < places; ++i) {
    const bool given = evaluation_.inputGiven(engine, input, i);
    asked.places.push_back({places > 1 ? std::to_string(numberOf(i)) : std::string(),
                            given ? number(input, i) : std::string()});
  }
  return asked;
}

std::string BenchWork::number(const Input& input, int cylinder) const {
  if (!stands(input, cylinder)) return std::string(kNothing);
  return asEntered(style, input.kind, entry(input), value(input, cylinder));
}

std::string BenchWork::number(const Result& result, int cylinder) const {
  const describe::Cell& it = cell(result, result.per == describe::Per::Engine ? 0 : cylinder);
  if (it.state != describe::State::Value) return std::string(kNothing);
  return number(result.kind, it.value, result.decimals);
}

std::string BenchWork::number(Kind kind, double si, int decimals) const {
  return style.number(kind, si, decimals);
}

std::string BenchWork::withLimit(Kind kind, double si, double limit) const {
  std::string text = number(kind, si);
  if (limit > 0.0) text += " ± " + number(kind, limit);
  return text;
}

std::string BenchWork::entered(const Input& input, int cylinder) const {
  std::string text = number(input, cylinder);
  const double within = limit(input, cylinder);
  if (within <= 0.0) return text;
  return text + " ± " + style.number(input.kind, within, decimalsFor(style, input.kind, within));
}

std::string BenchWork::spacer(int cylinder) const {
  return given(model::in::spacer, cylinder) ? number(model::in::spacer, cylinder)
                                            : number(out::spacerInStack, cylinder);
}

std::string BenchWork::inItsUnit(Kind kind, std::string number) const {
  if (style.unit(Kind::Length) == style.unit(Kind::FineLength)) return number;
  return number.append("\u00A0").append(style.unit(kind));
}

std::string BenchWork::headed(const describe::Column& column) const {
  return headed(column.name, column.kind);
}

std::string BenchWork::headed(std::string_view name, Kind kind) const {
  std::string text = withMark(name, style);
  if (const auto unit = style.unit(kind); !unit.empty()) text.append(", ").append(unit);
  return text;
}

Grid BenchWork::grid(std::string_view heading, const describe::Rows& rows) const {
  Grid grid{std::string(heading), {}, std::vector<std::vector<std::string>>(rows.size())};
  for (std::size_t i = 0; i < rows.columns().size(); ++i) {
    const describe::Column& column = rows.columns()[i];
    grid.columns.push_back(headed(column));
    for (std::size_t row = 0; row < rows.size(); ++row) {
      if (column.words) {
        grid.rows[row].push_back(withMark(rows.cells()[i].words[row], style));
        continue;
      }
      const double number = rows.cells()[i].numbers[static_cast<Eigen::Index>(row)];
      grid.rows[row].push_back(inGrid(column, number));
    }
  }
  return grid;
}

std::string BenchWork::inGrid(const describe::Column& column, double si) const {
  constexpr int kMostMore = 2;
  if (std::isnan(si)) return std::string(kNothing);
  const int usual =
      column.decimals < 0 ? units::unitsOf(column.kind).front().decimals : column.decimals;
  const std::string nought = number(column.kind, 0.0, usual);
  std::string text = number(column.kind, si, usual);
  for (int more = 1; more <= kMostMore && text == number(column.kind, 0.0, usual + more - 1);
       ++more) {
    text = number(column.kind, si, usual + more);
  }
  return text == number(column.kind, 0.0, usual + kMostMore) ? nought : text;
}

BenchWork::Told BenchWork::tabulated(const describe::Table& table) {
  describe::Tabulated told = evaluation_.tabulated(engine, table);
  switch (told.state) {
    case describe::State::Value:
      return {std::move(told.rows), {}};
    case describe::State::Refused:
      return {std::nullopt, word(evaluation_.refusal(told.notes), style)};
    case describe::State::None:
      return {std::nullopt, std::string(told.notes.none)};
    case describe::State::Waits:
      break;
  }
  std::vector<std::string> names;
  for (const auto& wait : assessment_.waitsFor(told.notes)) {
    names.push_back((wait.donors ? "the donor's " : "") + describe::inSentence(wait.input->label));
  }
  return {std::nullopt, "Not entered yet: " + namesOf(std::move(names)) + "."};
}

namespace {

std::string cautionsOf(SheetKind kind) {
  switch (kind) {
    case SheetKind::Survey:
      return "Old parts: sodium-filled exhaust valves are never cut, ground or heated; gaskets and "
             "linings may hold asbestos, so no dry dust and no wire brush. Engine stand rated for "
             "the load, fingers out of chain and gears.";
    case SheetKind::Burette:
      return "Fill with a fluid that does not burn: no petrol, and none of it near lamp or heater. "
             "Thin oil or coloured water with a drop of soap; dry and oil the metal afterwards.";
    case SheetKind::Stack:
      return "Numbers, not permission: prove the gap at the trial assembly, with solder on the pin "
             "axis and the head torqued, before the engine is turned by anything but hand. Plugs "
             "out before turning, fingers out of chain and gears.";
    case SheetKind::Plate:
      return "Measure the check bar before use, and every place on the case itself. Clamp a thin "
             "plate "
             "all round, break the edges, take off swarf with a brush; magnesium swarf burns and "
             "is "
             "never put out with water.";
    case SheetKind::Throws:
      return "Rotating and pressed parts can kill: turn by hand, plugs out, fingers out of chain "
             "and "
             "gears; never run above the governing ceiling. A built-up crank is pressed behind a "
             "screen with eyes covered, and its angles are measured anew from the end named here "
             "before it turns.";
    case SheetKind::Spec:
      break;
  }
  return {};
}

void writeOwn(BenchWork work, SheetKind kind) {
  switch (kind) {
    case SheetKind::Survey:
      return writeSurvey(work);
    case SheetKind::Burette:
      return writeBurette(work);
    case SheetKind::Stack:
      return writeStack(work);
    case SheetKind::Plate:
      return writePlate(work);
    case SheetKind::Throws:
      return writeThrows(work);
    case SheetKind::Spec:
      return;
  }
}

/// What stands on other sheets is not listed.
void leaveOut(BenchSheet& sheet) {
  const auto elsewhere = [&](const Objection& it) { return !standsOn(sheet.kind, it); };
  std::ranges::copy_if(sheet.objections, std::back_inserter(sheet.leftOut), elsewhere);
  std::erase_if(sheet.objections, elsewhere);
}

void sayInTerms(BenchSheet& sheet, const EngineTerms& terms) {
  const auto say = [&](std::string& text) { terms.say(text); };
  for (Asked& asked : sheet.asked) {
    for (std::string* text : {&asked.label, &asked.instrument, &asked.how}) say(*text);
  }
  for (Grid& grid : sheet.grids) {
    say(grid.heading);
    for (std::string& column : grid.columns) say(column);
    for (auto& row : grid.rows) say(row.front());
  }
  if (sheet.chain) {
    for (Link& link : sheet.chain->ofCase) say(link.name);
    for (Link& link : sheet.chain->ofCrank) say(link.name);
    say(sheet.chain->gap.name);
  }
  for (std::string& note : sheet.notes) say(note);
  say(sheet.whyNoDrawing);
  say(sheet.cautions);
}

}  // namespace

BenchSheet benchSheetOf(const assess::Assessment& assessment, const units::Style& style,
                        const SheetOptions& options, SheetKind kind) {
  SheetOptions ofItself = options;
  ofItself.variantColumn = false;  // nor what is said of it
  Sheet spec = sheetOf(assessment, style, ofItself);
  BenchSheet sheet{.kind = kind,
                   .engine = spec.engine,
                   .title = std::move(spec.title),
                   .subtitle = std::move(spec.subtitle),
                   .objections = std::move(spec.objections),
                   .checkBar = std::move(spec.checkBar),
                   .cautions = cautionsOf(kind),
                   .titleBlock = std::move(spec.titleBlock)};
  if (kind == SheetKind::Throws) {
    if (!spec.stars.empty()) sheet.star = std::move(spec.stars.front());
  }
  leaveOut(sheet);
  if (sheet.engine < 0) {
    sheet.whyNoDrawing = "There is no engine yet.";
    return sheet;
  }
  writeOwn(BenchWork(assessment, style, sheet), kind);
  sayInTerms(sheet, EngineTerms(assessment.evaluation(), sheet.engine, options));
  return sheet;
}

}  // namespace strokewright::sheet
