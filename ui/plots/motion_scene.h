#pragma once
/// The motion of every engine as a scene, for the screen and for paper.

#include <QString>
#include <vector>

#include "core/assess/assess.h"
#include "core/describe/tabulated.h"
#include "core/motion/slider_crank.h"
#include "ui/plots/engines_shown.h"
#include "ui/plots/plot_scene.h"

namespace strokewright::ui {

/// An engine whose motion is known; its first cylinder stands for all.
struct Mover {
  int engine = 0;
  motion::SliderCrank mechanism;
  double speed = 0.0;  ///< [rad/s] working speed
};

/// All that are known, in the order of the project.
std::vector<Mover> moversOf(const assess::Assessment& assessment);

/// Downwards is plus, as the travel is counted from top dead centre.
struct MotionPoint {
  double travel = 0.0;        ///< [m] below top dead centre
  double velocity = 0.0;      ///< [m/s]
  double acceleration = 0.0;  ///< [m/s2]
};

/// @param angle [rad] of the crank, zero with the throw on the cylinder axis
MotionPoint pointOf(const Mover& mover, double angle);

/// The table out::pistonMotion of every engine, in the order of the project.
using Motions = std::vector<describe::Tabulated>;
Motions motionsOf(describe::Evaluation& evaluation);

/// "Speed downwards, m/s"
/// @param column of out::pistonMotion
QString titleOf(const describe::Column& column, const Taste& taste);

/// A panel for each column of the table over the first one, with the peaks marked. What is copied
/// and saved are the tables side by side and the difference between donor and target.
/// @param turns 1 or 2 turns of the crank
PlotScene motionScene(const assess::Assessment& assessment, const Taste& taste, Motions motions,
                      int turns);

/// The scene without its upper panels.
PlotScene withoutPanelsAbove(PlotScene scene, int panels);

/// Names every engine that is not shown, and what it waits for.
QString leftOut(const assess::Assessment& assessment, const Taste& taste, const Motions& motions);

}  // namespace strokewright::ui
