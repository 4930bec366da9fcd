#include "ui/plots/engines_shown.h"

#include <QObject>
#include <QStringList>

#include "ui/document/taste.h"

namespace strokewright::ui {
namespace {

const model::Engine& engineOf(const model::Project& project, int engine) {
  return project.engines[static_cast<std::size_t>(engine)];
}

}  // namespace

Qt::PenStyle lineOf(const model::Project& project, int engine) {
  switch (engineOf(project, engine).part) {
    case model::Part::Donor:
      return Qt::DashLine;
    case model::Part::Target:
      return Qt::SolidLine;
    case model::Part::Variant:
      break;
  }
  int before = 0;
  for (int i = 0; i < engine; ++i) {
    if (engineOf(project, i).part == model::Part::Variant) ++before;
  }
  static constexpr Qt::PenStyle kStyles[] = {Qt::DotLine, Qt::DashDotLine, Qt::DashDotDotLine};
  return kStyles[before % 3];
}

PlotMark::Shape shapeOf(const model::Project& project, int engine) {
  switch (engineOf(project, engine).part) {
    case model::Part::Donor:
      return PlotMark::Shape::Square;
    case model::Part::Target:
      return PlotMark::Shape::Disc;
    case model::Part::Variant:
      break;
  }
  return PlotMark::Shape::Diamond;
}

QString nameOf(const model::Project& project, int engine) {
  const model::Engine& it = engineOf(project, engine);
  return it.name.empty() ? fromCore(model::partKey(it.part)) : fromCore(it.name);
}

QString whyNot(const assess::Assessment& assessment, const Taste& taste, int engine,
               const describe::Result& result, int cylinder) {
  const describe::Cell& cell = assessment(engine, result, cylinder);
  return whyNot(assessment, taste, cell.state, cell.notes);
}

QString whyNot(const assess::Assessment& assessment, const Taste& taste, describe::State state,
               const describe::Frame& notes) {
  switch (state) {
    case describe::State::Value:
      return {};
    case describe::State::None:
      return fromCore(notes.none);
    case describe::State::Refused: {
      QString sentence = taste.sentence(assessment.evaluation().refusal(notes));
      if (sentence.endsWith(u'.')) sentence.chop(1);  // who asks ends the sentence
      return sentence;
    }
    case describe::State::Waits:
      break;
  }
  QStringList names;
  for (const auto& wait : assessment.waitsFor(notes)) {
    const QString name = inSentence(taste.label(*wait.input));
    names << (wait.donors ? QObject::tr("the donor's %1").arg(name) : name);
  }
  return QObject::tr("waits for %1").arg(names.join(QStringLiteral(", ")));
}

double toShown(const units::Style& style, units::Kind kind, double si) {
  return units::fromSi(style.group[kind], si);
}

double fromShown(const units::Style& style, units::Kind kind, double shown) {
  return units::toSi(style.group[kind], shown);
}

QString titled(const QString& name, const Taste& taste, units::Kind kind) {
  const QString unit = taste.unit(kind);
  return unit.isEmpty() ? name : name + QStringLiteral(", ") + unit;
}

}  // namespace strokewright::ui
