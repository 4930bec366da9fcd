#pragma once
/// The crank of the engine in question, turning.

#include <QWidget>
#include <functional>

#include "ui/drawings/crank.h"

namespace strokewright::ui {

class Document;
class Taste;

/// Drags of the mouse and arrow keys walk round it, Page Up and Page Down turn the crank, Home
/// shows it at an angle, End from the end. Follows the document, the taste, the palette and the
/// font; its accessible description says in words what is seen.
class CrankView final : public QWidget {
  Q_OBJECT

 public:
  /// @param which engine is shown, asked at every repaint; -1: none
  CrankView(Document& document, Taste& taste, std::function<int()> which,
            QWidget* parent = nullptr);

  double crankAngle() const { return crankAngle_; }
  void setCrankAngle(double angle);  ///< [rad] since the first throw stood along its cylinder
  const Viewpoint& viewpoint() const { return viewpoint_; }
  void lookFrom(const Viewpoint& viewpoint);

  /// From which end and how it is looked at, and which cylinder is taken to stand where.
  QString seenInWords() const;

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 Q_SIGNALS:
  void turnAsked(int degrees);  ///< of the crank

 protected:
  void paintEvent(QPaintEvent* event) override;
  void changeEvent(QEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void walk(double right, double up);
  void read();
  /// Draws anew and tells those who cannot see it.
  void describe();

  Document& document_;
  Taste& taste_;
  std::function<int()> which_;
  Crank crank_;
  int engine_ = -1;  ///< whose it is
  Viewpoint viewpoint_ = Viewpoint::isometric();
  double crankAngle_ = 0.0;
  QPointF grasped_;
};

/// The view with what turns it. Another project begins at rest, at 0°.
class CrankPane final : public QWidget {
  Q_OBJECT

 public:
  CrankPane(Document& document, Taste& taste, std::function<int()> which,
            QWidget* parent = nullptr);
};

}  // namespace strokewright::ui
