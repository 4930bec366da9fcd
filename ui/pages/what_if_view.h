#pragma once
/// The question of what an entry would have to be, and what would follow.

#include <QWidget>
#include <vector>

#include "ui/pages/what_if.h"

class QComboBox;
class QLabel;
class QLineEdit;

namespace strokewright::ui {

class PlotReadout;
class PlotWidget;
class Refresher;
class SearchBox;

/// One row that asks: this result, in this cylinder, is to be so much, by that entry. Below it the
/// result over the entry, the main results as they are and as they would be, and what would object
/// or forbid then. Text that names no single result or entry stays and is said; nothing is taken.
class WhatIfView final : public QWidget {
  Q_OBJECT

 public:
  WhatIfView(Desk& desk, QWidget* parent = nullptr);

  QString readout() const;   ///< before and after, as plain text
  QString thenText() const;  ///< what would object or forbid then

 private:
  void layOut();
  void refresh();
  void offerCylinders(const WhatIfPlace& place);
  void takeWanted();
  void choose(const describe::Result* result);
  void take();
  void sayThen();
  void sayBeforeAndAfter(const std::optional<assess::Solution>& found);

  Desk& desk_;
  SearchBox* result_;
  QLabel* cylinderLabel_;
  QComboBox* cylinder_;
  QLineEdit* wanted_;
  QLabel* unit_;
  SearchBox* input_;
  PlotWidget* plot_;
  PlotReadout* readout_;
  QLabel* then_;  ///< what would object
  Refresher* refresher_;
  std::vector<const describe::Result*> results_;
  std::vector<const describe::Input*> inputs_;
};

}  // namespace strokewright::ui
