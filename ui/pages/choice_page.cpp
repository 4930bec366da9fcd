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

/// Rows of the best stack: one where all cylinders get the same parts.
Eigen::Index rowsOfBest(const Tabulated& stacks) {
  return (stacks.rows["place"].numbers == 1.0).count();
}

/// "0.95", where the cylinders differ "0.95 · 1.05"; empty where no part lies there.
QString thicknesses(const Desk& desk, const Tabulated& stacks, std::string_view column) {
  QStringList texts;
  for (Eigen::Index row = 0; row < rowsOfBest(stacks); ++row) {
    const double thickness = numberIn(stacks, column, row);
    texts += std::isnan(thickness) ? QStringLiteral("–")
                                   : desk.taste.number(Kind::FineLength, thickness);
  }
  texts.removeDuplicates();
  return texts == QStringList(QStringLiteral("–")) ? QString() : texts.join(QStringLiteral(" · "));
}

/// "plate 0.95, base gasket 0.25, head gasket 0.75".
QString partsWords(const Desk& desk, const Tabulated& stacks) {
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
    const QString figures = thicknesses(desk, stacks, named.column);
    if (!figures.isEmpty()) parts += named.words.arg(figures);
  }
  return parts.join(QStringLiteral(", "));
}

/// "0.90", or "0.86 … 0.94", of the best stack.
QString reach(const Desk& desk, const Tabulated& stacks, Kind kind, std::string_view least,
              std::string_view most) {
  const Eigen::Index rows = rowsOfBest(stacks);
  const double from = stacks.rows[least].numbers.head(rows).minCoeff();
  double to = stacks.rows[least].numbers.head(rows).maxCoeff();
  for (Eigen::Index row = 0; row < rows; ++row) to = std::fmax(to, numberIn(stacks, most, row));
  const QString low = desk.taste.number(kind, from);
  const QString high = desk.taste.number(kind, to);
  return low == high ? low : low + QStringLiteral(" … ") + high;
}

/// Why most stacks lost; empty where none did.
QString mostLost(const Desk& desk, const Tabulated& lost) {
  if (lost.state != describe::State::Value || lost.rows.size() == 0) return {};
  const Eigen::ArrayXd& stacks = lost.rows["stacks"].numbers;
  Eigen::Index most = 0;
  for (Eigen::Index row = 1; row < stacks.size(); ++row) {
    if (stacks[row] > stacks[most]) most = row;
  }
  return tr("%1: %2 of %3 stacks")
      .arg(desk.taste.inTerms(fromCore(lost.rows["why"].words[static_cast<std::size_t>(most)])),
           desk.taste.number(Kind::Count, stacks[most]),
           desk.taste.number(Kind::Count, (stacks.isNaN()).select(0.0, stacks).sum()));
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
    said.further = mostLost(desk, tabulated(desk, out::stacksLost));
    return said;
  }
  const QString gap = reach(desk, stacks, Kind::FineLength, "squish_m", "squish_most_m");
  said.number = QStringLiteral("%1\u00A0%2").arg(gap, desk.taste.unit(Kind::FineLength));
  said.sentence =
      tr("squish gap with %1 · ratio %2")
          .arg(partsWords(desk, stacks), reach(desk, stacks, Kind::Ratio, "ratio", "ratio_most"));
  const double atWorst =
      stacks.rows["squish_at_worst_m"].numbers.head(rowsOfBest(stacks)).minCoeff();
  said.further = tr("at worst %1").arg(desk.taste.shown(Kind::FineLength, atWorst));
  return said;
}

const describe::Input* inputWith(std::string_view key) {
  const auto inputs = model::inputs();
  const auto found = std::ranges::find(inputs, key, [](const auto* input) { return input->key; });
  return found == inputs.end() ? nullptr : *found;
}

/// What is typed to have the stack at this place of the list.
describe::Mend stackAt(const Desk& desk, double place) {
  const Tabulated entries = tabulated(desk, out::stackEntries);
  describe::Mend stack;
  stack.computed = true;
  for (std::size_t row = 0; row < entries.rows.size(); ++row) {
    if (numberIn(entries, "place", static_cast<Eigen::Index>(row)) == place) {
      stack.entries.emplace_back(inputWith(entries.rows["entry"].words[row]),
                                 entries.rows["text"].words[row]);
    }
  }
  return stack;
}

/// Something of it is not what the subject has already.
bool differs(const Desk& desk, const describe::Mend& stack) {
  return std::ranges::any_of(stack.entries, [&](const auto& entry) {
    const auto& [input, text] = entry;
    const describe::Entry typed = model::entryFrom(*input, text, desk.taste.style().group);
    return typed.values != desk.document.entry(desk.subject(), *input).values;
  });
}

bool canPutStack(const Desk& desk) {
  return desk.subject() >= 0 && differs(desk, stackAt(desk, 1.0));
}

void putStack(Desk& desk, const describe::Mend& stack) {
  desk.document.take(desk.subject(), stack, tr("stack"));
}

void putBest(Desk& desk) { putStack(desk, stackAt(desk, 1.0)); }

void putRow(Desk& desk, const Tabulated& stacks, int row) {
  putStack(desk, stackAt(desk, numberIn(stacks, "place", row)));
}

}  // namespace

PageDescription choicePage() {
  return {.key = QStringLiteral("choice"),
          .name = tr("Choice"),
          .question = tr("Which gaskets and plate, from what is there?"),
          .entries = {{{}, {&in::wantedSquish, &in::wantedCompressionRatio, &in::stackOrder}},
                      {tr("What a stack must keep"),
                       {&in::squishLeast, &in::squishLeastAtWorst, &in::squishMost, &in::ratioLeast,
                        &in::ratioMost, &in::platesInStack, &in::gasketsInStack,
                        &in::baseGasketsLeast, &in::baseGasketsMost}}},
          .decides = {&out::squishGap},
          .answer = &answer,
          .tables = {{&out::stackChoices, tr("no stack fits"), &putRow},
                     {&out::stacksLost, tr("no stack was lost")},
                     {&out::stacksBeaten, tr("no nearer stack was lost")}},
          .lists = {&model::list::shelf},
          .deed = {.says = tr("put into the target"), .possible = &canPutStack, .act = &putBest}};
}

}  // namespace strokewright::ui
