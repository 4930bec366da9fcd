#pragma once
/// Room for the working of a number on a page.

#include <QWidget>

#include "core/describe/result.h"

class QBoxLayout;

namespace strokewright::ui {

class Desk;
class WhyPanel;

/// A picture or tables, and the working of a number while it is asked for: beside the picture or
/// below the tables where both have room, else in their place.
class WhyPlace final : public QWidget {
  Q_OBJECT

 public:
  enum class Of { Picture, Tables };
  WhyPlace(Desk& desk, QWidget* content, Of of, QWidget* parent = nullptr);

  QSize minimumSizeHint() const override;
  void explain(int engine, const describe::Result& result, int cylinder);

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  void makePanel();
  void arrange();

  Desk& desk_;
  QWidget* content_;
  Of of_;
  WhyPanel* why_ = nullptr;  ///< made when it is first asked
  QBoxLayout* layout_;
};

}  // namespace strokewright::ui
