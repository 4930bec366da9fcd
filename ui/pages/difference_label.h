#pragma once
/// By how much an entry of one engine differs from another's.

#include <QWidget>

#include "core/describe/evaluation.h"
#include "core/describe/input.h"

namespace strokewright::ui {

class Desk;

/// Quiet, right-aligned; nothing while either is not known. Follows refresh() alone.
class DifferenceLabel final : public QWidget {
  Q_OBJECT

 public:
  DifferenceLabel(const Desk& desk, const describe::Input& input, int engine, int comparedWith,
                  QWidget* parent = nullptr);

  void refresh();
  QString shownText() const { return text_; }
  QSize sizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  bool entered(const describe::Evaluation& evaluation, int engine, int cylinder) const;
  QString difference() const;

  const Desk& desk_;
  const describe::Input& input_;
  int engine_;
  int comparedWith_;
  QString text_;
};

}  // namespace strokewright::ui
