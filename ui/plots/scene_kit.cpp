#include "ui/plots/scene_kit.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace strokewright::ui {

void Extent::add(double number) {
  if (!std::isfinite(number)) return;
  const bool first = empty();
  least_ = first ? number : std::min(least_, number);
  most_ = first ? number : std::max(most_, number);
}

void Extent::add(const std::vector<double>& numbers) {
  for (const double number : numbers) add(number);
}

void Extent::showOn(PlotAxis& axis, double below, double above) const {
  if (empty()) return;
  constexpr double kShareOfOne = 0.01;  // of a number that stands alone
  double whole = most_ - least_;
  if (!(whole > 0.0)) whole = most_ != 0.0 ? kShareOfOne * std::abs(most_) : 1.0;
  axis.from = least_ - below * whole;
  axis.to = most_ + above * whole;
}

PlotCurve lineBetween(QPointF from, QPointF to, const QString& label, Ink ink, Qt::PenStyle line) {
  return {
      .label = label, .ink = ink, .line = line, .x = {from.x(), to.x()}, .y = {from.y(), to.y()}};
}

void keepTable(PlotScene& scene, describe::Rows rows) {
  scene.table = [rows = std::move(rows)](const PlotScene&) { return describe::headed(rows); };
}

}  // namespace strokewright::ui
