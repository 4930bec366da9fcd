#pragma once
/// What to measure again: the entries that make most of the ± of gap and ratio.

#include <QWidget>
#include <functional>
#include <vector>

#include "ui/plots/likelihood_scene.h"

class QGridLayout;
class QLabel;

namespace strokewright::describe {
struct Input;
}

namespace strokewright::ui {

class Desk;
class LinkButton;
class Refresher;

/// The few entries with the largest shares, each with its share in the likely ± and what would be
/// left without it; the name leads to the field.
class MeasureFirst final : public QWidget {
  Q_OBJECT

 public:
  /// @param which says whose ± it is, asked at every refresh.
  MeasureFirst(Desk& desk, std::function<CylinderShown()> which, QWidget* parent = nullptr);

  /// After a change that neither project nor taste tells: another cylinder.
  void changed();

  QString text() const;  ///< everything, as plain text

 private:
  struct Row {
    LinkButton* entry;
    std::vector<QLabel*> numbers;
    const describe::Input* input = nullptr;
    int engine = -1;
  };

  void refresh();
  void addRow();

  Desk& desk_;
  std::function<CylinderShown()> which_;
  Refresher* refresher_;
  QGridLayout* grid_;
  QLabel* none_;
  std::vector<QLabel*> heads_;
  std::vector<Row> rows_;
};

}  // namespace strokewright::ui
