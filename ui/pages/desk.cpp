#include "ui/pages/desk.h"

#include "ui/document/document.h"

namespace strokewright::ui {

void Desk::showCylinder(int cylinder) {
  if (cylinder != cylinder_) {
    cylinder_ = cylinder;
    Q_EMIT cylinderChanged();
  }
}

int Desk::subject() const {
  const model::Project& project = document.project();
  return project.target() >= 0 || project.engines.empty() ? project.target() : 0;
}

int Desk::donor() const { return document.project().referenceDonor; }

}  // namespace strokewright::ui
