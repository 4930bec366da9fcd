#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <cmath>

#include "core/choice/tables.h"
#include "core/deck/results.h"
#include "core/describe/tabulated.h"
#include "core/model/entry_text.h"
#include "core/model/inputs.h"
#include "core/model/lists.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"

namespace strokewright::ui {

namespace {

namespace in = model::in;
using describe::Tabulated;
using units::Kind;

QString tr(const char* text) { return QCoreApplication::translate("ChoicePage", text); }

Tabulated tabulated(const Desk& desk, const describe::Table& table) {
  return desk.document.evaluation().tabulated(desk.subject(), table);
}

double numberIn(const Tabulated& filled, std::string_view column, Eigen::Index row) {
  return filled.rows[column].numbers[row];
}

/// The rows of one stack: a single one where all cylinders get the same parts.
struct StackRows {
  int place = 1;
  Eigen::Index first = 0;
  Eigen::Index count = 0;
};

StackRows rowsOf(const Tabulated& stacks, int place) {
  StackRows rows{.place = place};
  const Eigen::ArrayXd& places = stacks.rows["place"].numbers;
  while (rows.first < places.size() && places[rows.first] != place) ++rows.first;
  rows.count = (places == static_cast<double>(place)).count();
  return rows;
}

/// The stack that is spoken of: the one selected, else the best.
StackRows spokenOf(const Desk& desk, const Tabulated& stacks) {
  const StackRows selected = rowsOf(stacks, desk.stackPlace());
  return selected.count > 0 ? selected : rowsOf(stacks, 1);
}

/// "0.95", where the cylinders differ "0.95 · 1.05"; empty where no part lies there.
QString thicknesses(const Desk& desk, const Tabulated& stacks, const StackRows& rows,
                    std::string_view column) {
  QStringList texts;
  for (Eigen::Index row = 0; row < rows.count; ++row) {
    const double thickness = numberIn(stacks, column, rows.first + row);
    texts += std::isnan(thickness) ? QStringLiteral("–")
                                   : desk.taste.number(Kind::FineLength, thickness);
  }
  texts.removeDuplicates();
  return texts == QStringList(QStringLiteral("–")) ? QString() : texts.join(QStringLiteral(" · "));
}

/// "plate 0.95, base gasket 0.25, head gasket 0.75".
QString partsWords(const Desk& desk, const Tabulated& stacks, const StackRows& rows) {
  struct Named {
    std::string_view column;
    QString words;
  };
  const Named all[] = {{"plate_m", tr("plate %1")},
                       {"base_gasket_m", tr("base gasket %1")},
                       {"second_base_gasket_m", tr("second base gasket %1")},
                       {"head_gasket_m", tr("head gasket %1")}};
  QStringList parts;
  for (const Named& named : all) {
    const QString figures = thicknesses(desk, stacks, rows, named.column);
    if (!figures.isEmpty()) parts += named.words.arg(figures);
  }
  return parts.join(QStringLiteral(", "));
}

/// "0.90", or "0.86 … 0.94", of one stack.
QString reach(const Desk& desk, const Tabulated& stacks, const StackRows& rows, Kind kind,
              std::string_view least, std::string_view most) {
  const auto lowest = stacks.rows[least].numbers.segment(rows.first, rows.count);
  const double from = lowest.minCoeff();
  double to = lowest.maxCoeff();
  for (Eigen::Index row = 0; row < rows.count; ++row) {
    to = std::fmax(to, numberIn(stacks, most, rows.first + row));
  }
  const QString low = desk.taste.number(kind, from);
  const QString high = desk.taste.number(kind, to);
  return low == high ? low : low + QStringLiteral(" … ") + high;
}

/// What keeps every stack out, and whether the search stopped.
QStringList notes(const Desk& desk) {
  const Tabulated told = tabulated(desk, out::choiceNotes);
  QStringList sentences;
  for (std::size_t row = 0; row < told.rows.size(); ++row) {
    sentences += desk.taste.sentence(choice::noteIn(told.rows, row));
  }
  return sentences;
}

Answer answer(const Desk& desk) {
  if (desk.subject() < 0) return unanswered(desk, desk.subject(), out::stackChoices);
  Answer said;
  if (desk.document.items({&model::list::shelf}).empty()) {
    said.sentence = tr("The shelf is empty: enter gaskets and plates.");
    return said;
  }
  const Tabulated stacks = tabulated(desk, out::stackChoices);
  if (stacks.state != describe::State::Value) {
    return unanswered(desk, desk.subject(), out::stackChoices);
  }
  if (stacks.rows.size() == 0) {
    said.sentence = tr("No stack from the shelf fits.");
    said.further = joined(notes(desk));
    return said;
  }
  const StackRows rows = spokenOf(desk, stacks);
  const QString gap = reach(desk, stacks, rows, Kind::FineLength, "squish_m", "squish_most_m");
  said.number = QStringLiteral("%1\u00A0%2").arg(gap, desk.taste.unit(Kind::FineLength));
  said.sentence = (rows.place == 1 ? tr("squish gap of the best stack, place 1: %1 · ratio %2")
                                   : tr("squish gap of place %1: %2 · ratio %3").arg(rows.place))
                      .arg(partsWords(desk, stacks, rows),
                           reach(desk, stacks, rows, Kind::Ratio, "ratio", "ratio_most"));
  const double atWorst =
      stacks.rows["squish_at_worst_m"].numbers.segment(rows.first, rows.count).minCoeff();
  const QString worst = tr("at worst %1").arg(desk.taste.shown(Kind::FineLength, atWorst));
  said.further = joined(QStringList(worst) + notes(desk));
  return said;
}

const describe::Input* inputWith(std::string_view key) {
  const auto inputs = model::inputs();
  const auto found = std::ranges::find(inputs, key, [](const auto* input) { return input->key; });
  return found == inputs.end() ? nullptr : *found;
}

/// A stack as it is typed.
struct TypedStack {
  int place = 0;  ///< in the list, from 1; 0: there is none
  describe::Mend mend;
};

/// The stack at this place of the list, else the best one.
TypedStack stackAt(const Desk& desk, int wanted) {
  if (desk.subject() < 0) return {};
  const Tabulated entries = tabulated(desk, out::stackEntries);
  const auto rows = static_cast<Eigen::Index>(entries.rows.size());
  if (rows == 0) return {};
  const bool there = (entries.rows["place"].numbers == static_cast<double>(wanted)).any();
  TypedStack stack{.place = there ? wanted : 1, .mend = {}};
  stack.mend.computed = true;
  for (Eigen::Index row = 0; row < rows; ++row) {
    if (numberIn(entries, "place", row) != stack.place) continue;
    const auto at = static_cast<std::size_t>(row);
    stack.mend.entries.emplace_back(inputWith(entries.rows["entry"].words[at]),
                                    entries.rows["text"].words[at]);
  }
  return stack;
}

TypedStack stackSpokenOf(const Desk& desk) { return stackAt(desk, desk.stackPlace()); }

/// Something of it is not what the subject has already.
bool differs(const Desk& desk, const TypedStack& stack) {
  return std::ranges::any_of(stack.mend.entries, [&](const auto& entry) {
    const auto& [input, text] = entry;
    const describe::Entry typed = model::entryFrom(*input, text, desk.taste.style().group);
    return typed.values != desk.document.entry(desk.subject(), *input).values;
  });
}

bool canPutStack(const Desk& desk) { return differs(desk, stackSpokenOf(desk)); }

QString deedWords(const Desk& desk) {
  const TypedStack stack = stackSpokenOf(desk);
  if (stack.place == 0) return tr("put into the target");
  return (differs(desk, stack) ? tr("put place %1 into the target")
                               : tr("place %1 is in the target"))
      .arg(stack.place);
}

void putSpokenOf(Desk& desk) {
  desk.document.take(desk.subject(), stackSpokenOf(desk).mend, tr("stack"));
}

/// While no row is selected the best one is spoken of.
void speakOfRow(Desk& desk, const Tabulated& stacks, int row) {
  desk.speakOfStack(row < 0 ? 1 : static_cast<int>(numberIn(stacks, "place", row)));
}

void putRow(Desk& desk, const Tabulated& stacks, int row) {
  speakOfRow(desk, stacks, row);
  putSpokenOf(desk);
}

}  // namespace

PageDescription choicePage() {
  return {
      .key = QStringLiteral("choice"),
      .name = tr("Choice"),
      .question = tr("Which gaskets and plate, from what is there?"),
      .entries = {{{}, {&in::wantedSquish, &in::wantedCompressionRatio, &in::stackOrder}},
                  {tr("What a stack must keep"),
                   {&in::squishLeast, &in::squishLeastAtWorst, &in::squishMost, &in::ratioLeast,
                    &in::ratioMost, &in::platesInStack, &in::gasketsInStack, &in::baseGasketsLeast,
                    &in::baseGasketsMost}}},
      .decides = {&out::squishGap},
      .needed =
          [](const Desk& desk) { return !desk.document.items({&model::list::shelf}).empty(); },
      .open =
          [](const Desk& desk) {
            const Tabulated stacks = tabulated(desk, out::stackChoices);
            return stacks.state == describe::State::Value && stacks.rows.size() == 0;
          },
      .answer = &answer,
      .tables = {{&out::stackChoices, tr("no stack fits"), &putRow, &speakOfRow, tr("Best stacks")},
                 {.table = &out::stacksLost,
                  .whenEmpty = tr("no stack was lost"),
                  .tab = tr("Why lost")},
                 {.table = &out::stacksBeaten,
                  .whenEmpty = tr("no nearer stack was lost"),
                  .tab = tr("Nearest lost")}},
      .lists = {&model::list::shelf},
      .deed = {.says = tr("put into the target"),
               .saysNow = &deedWords,
               .possible = &canPutStack,
               .act = &putSpokenOf}};
}

}  // namespace strokewright::ui
