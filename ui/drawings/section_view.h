#pragma once
/// The cylinder in section, to scale, turning with the crank angle.

#include <QWidget>

namespace strokewright::ui {

class Document;
class Taste;

/// Draws one cylinder of one engine. Follows the document, the taste and the palette by itself.
class SectionView final : public QWidget {
  Q_OBJECT

 public:
  SectionView(Document& document, Taste& taste, QWidget* parent = nullptr);

  void setCrankAngle(double angle);  ///< [rad] after the throw stands along the cylinder axis
  void setCylinder(int cylinder);    ///< counted from 0
  void setEngine(int engine);        ///< index into the project

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  void describe();

  Document& document_;
  Taste& taste_;
  double crankAngle_ = 0.0;
  int cylinder_ = 0;
  int engine_ = -1;  ///< -1: the target
};

}  // namespace strokewright::ui
