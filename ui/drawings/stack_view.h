#pragma once
/// The deck enlarged: the stack layer by layer with its thicknesses, at top dead centre.

#include <QWidget>
#include <vector>

#include "ui/drawings/stack_painter.h"

namespace strokewright::ui {

class Document;
class Taste;

/// Draws the stack of one cylinder of one engine. Follows the document, the taste and the palette.
class StackView final : public QWidget {
  Q_OBJECT

 public:
  StackView(Document& document, Taste& taste, QWidget* parent = nullptr);

  void setCylinder(int cylinder);  ///< counted from 0
  void setEngine(int engine);      ///< index into the project

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 public Q_SLOTS:
  /// Draws the dimension of this entry in the accent; nullptr: none. Emits nothing.
  void highlight(const describe::Input* input);

 Q_SIGNALS:
  /// The dimension of this entry was clicked: go to its field.
  void inputPicked(const describe::Input* input);
  /// The pointer came to this entry's dimension, or left them all (nullptr): point at its field.
  void inputHovered(const describe::Input* input);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void changeEvent(QEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void leaveEvent(QEvent* event) override;

 private:
  const describe::Input* inputAt(const QPointF& place) const;
  void hover(const describe::Input* input);
  void describe();

  Document& document_;
  Taste& taste_;
  int cylinder_ = 0;
  int engine_ = -1;  ///< -1: the target
  const describe::Input* highlighted_ = nullptr;
  const describe::Input* hovered_ = nullptr;
  std::vector<StackMark> marks_;  ///< of the last painting
};

}  // namespace strokewright::ui
