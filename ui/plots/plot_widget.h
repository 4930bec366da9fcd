#pragma once
/// The one plot of the program. Everything else describes what it wants as a PlotScene.

#include <QPointF>
#include <QWidget>
#include <memory>

#include "ui/plots/plot_canvas.h"

namespace strokewright::ui {

/// Shows a scene and lets a person move in it: wheel and +/- zoom, drag and touch pad move, Shift
/// and drag zooms to a frame, double click and Home fit, arrow keys ask for the cursor, Ctrl+C
/// copies picture and data. Follows the palette.
class PlotWidget final : public QWidget {
  Q_OBJECT

 public:
  explicit PlotWidget(QWidget* parent = nullptr);
  ~PlotWidget() override;

  /// Shows another scene. What the person zoomed to stays unless the axes have other titles.
  void setScene(PlotScene scene);
  const PlotScene& scene() const;

  void setCursor(const PlotCursor& cursor);
  /// The cursor goes with the pointer until a click or a key holds it; Esc lets it go again.
  void setFollowsPointer(bool follows);

  void fit();
  void zoom(double factor);  ///< about the cursor; above 1: closer

  /// Place in the widget of a point of a panel, and back.
  QPointF toWidget(int panel, QPointF at) const;
  QPointF fromWidget(int panel, QPointF place) const;
  PlotRange visibleX() const;
  PlotRange visibleY(int panel) const;

  void copy() const;
  void saveAs();  ///< asks where and as what

  QSize sizeHint() const override { return {720, 480}; }
  QSize minimumSizeHint() const override { return {260, 160}; }

 Q_SIGNALS:
  void cursorAsked(QPointF at);            ///< by the pointer, in the units shown
  void cursorStepped(QPoint steps);        ///< by arrow keys; Shift makes ten of one
  void confirmed();                        ///< Enter
  void markDragged(int mark, QPointF at);  ///< while a draggable mark is moved
  void markDropped(int mark);
  void dragGivenUp(int mark);  ///< Esc while dragging

 protected:
  bool event(QEvent* event) override;
  void changeEvent(QEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  class Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace strokewright::ui
