#pragma once
/// Bore against stroke: what each choice would give, and what says no to it.

#include <QWidget>
#include <memory>

namespace strokewright::ui {

class Document;
class Taste;

/// Curves of equal displacement, the class limit, the regions where a limit says no at the wanted
/// revs, and every engine as a point with its ±. A cross-hair reads any point; the target's point
/// can be dragged, which edits bore and stroke (or throw) as one undo step.
class BoreStrokeMap final : public QWidget {
  Q_OBJECT

 public:
  BoreStrokeMap(Document& document, Taste& taste, QWidget* parent = nullptr);
  ~BoreStrokeMap() override;

  double bore() const;                            ///< [m] of the cross-hair
  double stroke() const;                          ///< [m] of the cross-hair
  void setCrossHair(double bore, double stroke);  ///< [m]
  QString readout() const;                        ///< what the strip says, as plain text

  /// Puts the cross-hair's bore and stroke, to the nearest 0.1 mm, into the target: one undo step.
  /// Nothing where the cross-hair was not placed, or stands where the target is.
  void putIntoTarget();

 private:
  class Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace strokewright::ui
