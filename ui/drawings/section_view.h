#pragma once
/// The cylinder in section, to scale, turning with the crank angle.

#include "ui/drawings/cylinder_view.h"

namespace strokewright::ui {

class SectionView final : public CylinderView {
  Q_OBJECT

 public:
  SectionView(Document& document, Taste& taste, QWidget* parent = nullptr);

  void setCrankAngle(double angle);  ///< [rad] after the throw stands along the cylinder axis
  void showClearances();             ///< of the skirt at bottom dead centre: they are the answer

 protected:
  void draw(Drafting& draft, const Cylinder& cylinder) override;
  QString inWords(const Cylinder& cylinder) const override;

 private:
  double crankAngle_ = 0.0;
  bool clearances_ = false;
};

}  // namespace strokewright::ui
