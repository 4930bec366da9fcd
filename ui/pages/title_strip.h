#pragma once
/// The title block at the foot of the window.

#include <QWidget>
#include <vector>

class QHBoxLayout;
class QLabel;

namespace strokewright::ui {

class Desk;

/// Project, engine, units, revision, when it was saved, and what is left to do.
class TitleStrip final : public QWidget {
  Q_OBJECT

 public:
  explicit TitleStrip(Desk& desk, QWidget* parent = nullptr);

  /// In a low window the captions are said by the tips alone.
  void setCaptioned(bool captioned);

 protected:
  bool event(QEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  QLabel* addCell(const QString& caption, int share);
  void refresh();
  void refreshFile();

  Desk& desk_;
  QHBoxLayout* cells_;
  std::vector<QWidget*> captions_;
  QLabel* project_;
  QLabel* engine_;
  QLabel* units_;
  QLabel* revision_;
  QLabel* saved_;
  QLabel* left_;
};

}  // namespace strokewright::ui
