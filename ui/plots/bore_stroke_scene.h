#pragma once
/// Bore against stroke as a scene, and what any point of it would give.

#include <QPointF>
#include <QString>
#include <optional>
#include <vector>

#include "core/assess/assess.h"
#include "ui/plots/engines_shown.h"
#include "ui/plots/plot_scene.h"

namespace strokewright::ui {

/// A choice of bore and stroke; the stroke is twice the throw.
struct Pair {
  double bore = 0.0;    ///< [m]
  double stroke = 0.0;  ///< [m]
};

/// The target as it would be with another bore and stroke. The spacer follows the squish gap wanted
/// where there is one, else what else is wanted of the deck; the head gasket's bore goes with the
/// bore; all other entries stay.
class Trial {
 public:
  /// @pre the project has a target
  explicit Trial(const assess::Assessment& assessment);

  int target() const { return target_; }
  std::optional<Pair> here() const { return here_; }  ///< where the target stands, if it does
  bool squishIsHeld() const { return squishIsHeld_; }

  /// Until the next call.
  const describe::Cell& at(const Pair& pair, const describe::Result& result);
  /// [m] the stroke at which a result is as wanted; nothing where none does.
  std::optional<double> strokeFor(const describe::Result& result, double wanted);

 private:
  void put(const Pair& pair);

  model::Project project_;  // with the spacer left open
  describe::Evaluation evaluation_;
  int target_;
  std::optional<Pair> here_;
  double gasketOverBore_ = 0.0;  // [m]
  bool throwGiven_ = false;
  bool strokeGiven_ = false;
  bool squishIsHeld_ = false;
};

/// Where an engine stands, if bore and throw are known.
std::optional<Pair> pairOf(const assess::Assessment& assessment, int engine);

/// The part of the plane that is shown, in SI.
struct MapWindow {
  Pair least, most;

  double width() const { return most.bore - least.bore; }       ///< [m]
  double height() const { return most.stroke - least.stroke; }  ///< [m]
  bool holds(const Pair& pair) const;
};
MapWindow windowFor(const assess::Assessment& assessment);

/// A limit that says no at the revs wanted, above a stroke, or whatever the stroke.
struct NoGo {
  QString says;
  std::optional<double> aboveStroke;  ///< [m] nothing: everywhere
};
std::vector<NoGo> noGos(Trial& trial, const assess::Assessment& assessment, const Taste& taste);

PlotScene boreStrokeScene(Trial& trial, const assess::Assessment& assessment, const Taste& taste,
                          const MapWindow& window);

}  // namespace strokewright::ui
