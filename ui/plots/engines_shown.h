#pragma once
/// How the engines of a project are told apart in every plot, and how a result that is not there is
/// named.

#include <QString>
#include <Qt>

#include "core/assess/assess.h"
#include "ui/plots/plot_scene.h"

namespace strokewright::ui {

class Taste;

/// Donors dashed, the target solid, variants dotted and dash-dotted in turn.
Qt::PenStyle lineOf(const model::Project& project, int engine);

/// Donors square, targets round and full, variants diamonds.
PlotMark::Shape shapeOf(const model::Project& project, int engine);

/// Name of an engine; the part it plays where it has none.
QString nameOf(const model::Project& project, int engine);

/// "waits for rod length and throw", or why it is refused; empty where it has a value.
QString whyNot(const assess::Assessment& assessment, const Taste& taste, int engine,
               const describe::Result& result, int cylinder = 0);

/// The same of anything that was evaluated.
QString whyNot(const assess::Assessment& assessment, const Taste& taste, describe::State state,
               const describe::Frame& notes);

/// SI to the unit shown, as a plain number for axes.
double toShown(const units::Style& style, units::Kind kind, double si);
/// And back.
double fromShown(const units::Style& style, units::Kind kind, double shown);

/// "Travel, mm"; the name alone where the kind has no unit.
QString titled(const QString& name, const Taste& taste, units::Kind kind);

}  // namespace strokewright::ui
