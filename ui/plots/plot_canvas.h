#pragma once
/// Draws a scene. The only file that knows the plotting library.

#include <QPointF>
#include <QRectF>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "ui/plots/plot_scene.h"
#include "ui/plots/plot_theme.h"

class QPainter;
class QWidget;

namespace strokewright::ui {

/// Where the cursor stands, in the units shown.
struct PlotCursor {
  double x = 0.0;
  std::optional<double> y = {};                    ///< a cross-hair in the first panel
  std::vector<std::pair<int, QPointF>> dots = {};  ///< panel and place
};

/// From and to, in the units shown.
struct PlotRange {
  double from = 0.0;
  double to = 1.0;

  bool operator==(const PlotRange&) const = default;
};

/// Words in a plot, where they were drawn.
struct PlotLabel {
  QString words = {};
  QRectF box = {};  ///< in widget places
};

class PlotCanvas {
 public:
  explicit PlotCanvas(QWidget* parent);
  ~PlotCanvas();

  QWidget* widget() const;

  void setTheme(const PlotTheme& theme);
  void setScene(PlotScene scene);  ///< keeps the ranges seen where the panels are as many
  const PlotScene& scene() const;

  void setRangeX(PlotRange range);
  void setRangeY(int panel, PlotRange range);
  void fit();  ///< the ranges the scene asks for
  PlotRange rangeX() const;
  PlotRange rangeY(int panel) const;

  void setCursor(const std::optional<PlotCursor>& cursor);
  void setBand(const std::optional<QRectF>& band);  ///< a frame being drawn, in widget places

  void setFocused(bool focused);  ///< shows that keys go here

  QPointF toWidget(int panel, QPointF at) const;
  QPointF fromWidget(int panel, QPointF place) const;
  QRectF panelRect(int panel) const;
  /// Of marks, curves and areas, as last drawn.
  const std::vector<PlotLabel>& labels() const;

  void drawSoon();  ///< once, when the events are done
  void paint(QPainter& painter, const QRectF& target, double pixel);

 private:
  class Parts;
  std::unique_ptr<Parts> parts_;
};

/// Paints a scene into a rectangle of any painter, as vectors.
/// @param pixel how many of the painter's units one 96th of an inch of the plot takes. The font of
///              the theme is measured with it too and has to have a pixel size.
void paintPlot(const PlotScene& scene, const PlotTheme& theme, QPainter& painter,
               const QRectF& target, double pixel);

}  // namespace strokewright::ui
