#pragma once
/// The title block at the foot of the window.

#include <QWidget>
#include <vector>

class QBoxLayout;
class QHBoxLayout;
class QLabel;

namespace strokewright::ui {

class Desk;

/// Project, engine, units, revision, when it was saved, and what is left to do. What is left is
/// never cut: in a narrow window long names are, and then cell after cell goes, those first that
/// say nothing of their own.
class TitleStrip final : public QWidget {
  Q_OBJECT

 public:
  explicit TitleStrip(Desk& desk, QWidget* parent = nullptr);

  /// In a low window the captions stand before what they are of.
  void setLow(bool low);

  QSize minimumSizeHint() const override;

 protected:
  void resizeEvent(QResizeEvent* event) override;
  bool event(QEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  struct Cell {
    QWidget* whole;
    QBoxLayout* parts;
    QLabel* caption;
    QLabel* value;
  };

  QLabel* addCell(const QString& caption, int share);
  int leastWidth(const Cell& cell) const;
  void fit();
  void refresh();
  void refreshFile();

  Desk& desk_;
  QHBoxLayout* cells_;
  std::vector<Cell> parts_;  ///< as the cells stand
  QLabel* project_;
  QLabel* engine_;
  QLabel* units_;
  QLabel* revision_;
  QLabel* saved_;
  QLabel* left_;
};

}  // namespace strokewright::ui
