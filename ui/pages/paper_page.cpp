#include <QCoreApplication>
#include <QFormLayout>
#include <QVBoxLayout>
#include <algorithm>

#include "core/chamber/results.h"
#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/limits/results.h"
#include "core/sheet/bench.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/comparison.h"
#include "ui/pages/desk.h"
#include "ui/pages/link_button.h"
#include "ui/pages/project_text.h"
#include "ui/pages/standing.h"
#include "ui/print/sheet_preview.h"

namespace strokewright::ui {

namespace {

using model::Project;

QString tr(const char* text) { return QCoreApplication::translate("PaperPage", text); }

/// Where what is objected to stands: the sheet has a column for one variant at most.
QString whereListed(const Desk& desk, const LeftToDo& left) {
  if (left.ofVariants == 0) return tr("One page; what is objected to is listed on it.");
  return tr("One page; what is objected to in %1 is listed on it, what is in a variant where it "
            "has "
            "a column.")
      .arg(desk.document.engineName(desk.subject()));
}

/// How far it may leave, by what its face will say.
QString mayLeave(const sheet::BenchSheet& bench) {
  const auto says = [&](std::string_view word) {
    return std::ranges::any_of(bench.objections,
                               [&](const sheet::Objection& it) { return it.word == word; });
  };
  if (says("forbids") || says("refused")) return tr("Not yet");
  if (!bench.whyNoDrawing.empty()) return tr("Unfinished");
  return bench.objections.empty() ? tr("Ready") : tr("With objections");
}

/// Of a sheet for the bench: what stands on it is another matter than what the spec sheet rests on.
Answer ofBench(const Desk& desk) {
  const sheet::BenchSheet bench =
      sheet::benchSheetOf(desk.document.assessment(), desk.taste.style(),
                          {.words =
                               [&](const std::string& text) {
                                 return desk.taste.inTerms(fromCore(text)).toStdString();
                               }},
                          desk.sheet());
  const QString name = fromCore(sheet::nameOf(desk.sheet()));
  const auto listed = static_cast<int>(bench.objections.size());
  Answer said;
  said.number = mayLeave(bench);
  said.sentence = !bench.whyNoDrawing.empty() ? tr("%1: %2").arg(name, fromCore(bench.whyNoDrawing))
                  : listed == 0               ? tr("%1: nothing stands against it.").arg(name)
                  : listed == 1
                      ? tr("%1: 1 objection stands against it, and is said on it.").arg(name)
                      : tr("%1: %2 objections stand against it; it lists what it has room for and "
                           "counts the rest.")
                            .arg(name)
                            .arg(listed);
  const auto others = std::ranges::count_if(
      bench.leftOut, [](const sheet::Objection& it) { return it.word != "remarks"; });
  if (others > 0) {
    said.further = others == 1 ? tr("1 more is to something else")
                               : tr("%1 more are to something else").arg(others);
  }
  return said;
}

Answer answer(const Desk& desk) {
  if (desk.sheet() != sheet::SheetKind::Spec) return ofBench(desk);
  Answer said;
  const LeftToDo left = leftToDo(desk);
  const bool forbidden = desk.document.assessment().forbidden();
  said.number = forbidden              ? tr("Not yet")
                : left.objections > 0  ? tr("With objections")
                : left.missing.empty() ? tr("Ready")
                                       : tr("Unfinished");
  said.sentence = forbidden ? tr("Something forbids it; the sheet says so on its face.")
                  : left.objections > 0
                      ? whereListed(desk, left)
                      : tr("One page with the section, the stack, donor and target beside it.");
  said.further = leftText(left);
  if (!left.missing.empty()) {
    const MissingEntry& first = left.missing.front();
    const QString label = inSentence(desk.taste.label(*first.input));
    const QString whose = engineName(desk, first.engine);
    said.further = left.missing.size() == 1
                       ? tr("%1: %2 of %3").arg(said.further, label, whose)
                       : tr("%1, first %2 of %3").arg(said.further, label, whose);
    said.unlocks = first.input;
    said.unlocksOf = first.engine;
  }
  return said;
}

/// The title block and the sheet.
QWidget* picture(Desk& desk, QWidget* parent) {
  auto* pane = new QWidget(parent);
  struct Field {
    QString label;
    QString step;
    std::string Project::*place;
  };
  const Field fields[] = {
      {tr("Project"), tr("name of the project"), &Project::name},
      {tr("Drawn for"), tr("drawn for"), &Project::drawnFor},
      {tr("Revision"), tr("revision"), &Project::revision},
      {tr("Note"), tr("note of the project"), &Project::note},
  };
  auto* block = new QFormLayout;
  block->setVerticalSpacing(8);
  block->addRow(new QuietLabel(tr("title block"), pane));
  for (const Field& field : fields) {
    block->addRow(field.label, new ProjectText(desk.document, field.label, field.step,
                                               {.ofProject = field.place}, pane));
  }
  auto* preview = new SheetPreview(desk.document, desk.taste, pane);
  QObject::connect(preview, &SheetPreview::said, &desk, &Desk::said);
  preview->setKind(desk.sheet());
  QObject::connect(preview, &SheetPreview::kindChosen, &desk, &Desk::speakOfSheet);
  auto* row = new QHBoxLayout(pane);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(24);
  row->addLayout(block, 1);
  row->addWidget(preview, 2);
  return pane;
}

}  // namespace

PageDescription paperPage() {
  return {
      .key = QStringLiteral("paper"),
      .name = tr("Paper"),
      .question = tr("What goes to the machine?"),
      .decides = {&out::displacement, &out::spacerToMake, &out::compressionRatio, &out::revCeiling},
      .speaksOfAll = true,
      .answer = &answer,
      .picture = &picture};
}

}  // namespace strokewright::ui
