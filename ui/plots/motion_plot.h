#pragma once
/// Displacement, velocity and acceleration of the piston against crank angle, all engines in one.

#include <QWidget>
#include <memory>

namespace strokewright::ui {

class Document;
class Taste;

/// Three plots one above the other that share the crank angle, with a cursor that reads every
/// engine and the difference between donor and target, and a strip of words that says it.
/// Each engine turns at its own working speed; one that waits for entries is left out and named.
/// Where it is low the upper plots are left out, so that the lower ones can be read.
class MotionPlot final : public QWidget {
  Q_OBJECT

 public:
  MotionPlot(Document& document, Taste& taste, QWidget* parent = nullptr);
  ~MotionPlot() override;

  double cursor() const;         ///< [rad] after top dead centre of the crank, 0 to a full turn
  void setCursor(double angle);  ///< [rad] wrapped into the turn shown
  QString readout() const;       ///< what the strip says, as plain text

 Q_SIGNALS:
  void cursorMoved(double angle);  ///< [rad] by mouse, key or typing

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  class Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace strokewright::ui
