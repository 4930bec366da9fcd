#pragma once
/// What several scenes are made of.

#include <initializer_list>

#include "core/describe/tabulated.h"
#include "ui/plots/plot_scene.h"

namespace strokewright::ui {

/// Gathers numbers and gives the axis that shows all of them.
class Extent {
 public:
  void add(double number);
  void add(const std::vector<double>& numbers);

  bool empty() const { return !(most_ >= least_); }
  double least() const { return least_; }
  double most() const { return most_; }

  /// Puts the ends with this share of the whole on either side; nothing where it is empty.
  void showOn(PlotAxis& axis, double below, double above) const;

 private:
  double least_ = 1.0;
  double most_ = 0.0;
};

/// A straight line between two points.
PlotCurve lineBetween(QPointF from, QPointF to, const QString& label, Ink ink, Qt::PenStyle line);

/// The rows of a described table, for the clipboard and for files.
void keepTable(PlotScene& scene, describe::Rows rows);

}  // namespace strokewright::ui
