#pragma once
/// The deck enlarged: the stack layer by layer with its thicknesses, at top dead centre.

#include <vector>

#include "ui/drawings/cylinder_view.h"
#include "ui/drawings/stack_painter.h"

namespace strokewright::ui {

class StackView final : public CylinderView {
  Q_OBJECT

 public:
  StackView(Document& document, Taste& taste, QWidget* parent = nullptr);

 public Q_SLOTS:
  /// Draws the dimension of this entry in the accent; nullptr: none. Emits nothing.
  void highlight(const describe::Input* input);

 Q_SIGNALS:
  /// The dimension of this entry was clicked: go to its field.
  void inputPicked(const describe::Input* input);
  /// The pointer came to this entry's dimension, or left them all (nullptr): point at its field.
  void inputHovered(const describe::Input* input);

 protected:
  void draw(Drafting& draft, const Cylinder& cylinder) override;
  QString inWords(const Cylinder& cylinder) const override;
  void paintEvent(QPaintEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void leaveEvent(QEvent* event) override;

 private:
  const describe::Input* inputAt(const QPointF& place) const;
  void hover(const describe::Input* input);

  const describe::Input* highlighted_ = nullptr;
  const describe::Input* hovered_ = nullptr;
  std::vector<StackMark> marks_;  ///< of the last painting
};

}  // namespace strokewright::ui
