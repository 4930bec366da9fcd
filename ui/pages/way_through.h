#pragma once
/// The way through the job: a route of stations in the order the builder meets them.

#include <QListWidget>

namespace strokewright::ui {

class Desk;

/// One station for each page with its state written out; the one that is shown stands out. Below
/// the last one the engines with the line that each has in drawings and plots.
class WayThrough final : public QListWidget {
  Q_OBJECT

 public:
  explicit WayThrough(Desk& desk, QWidget* parent = nullptr);

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 private:
  void refresh();

  Desk& desk_;
};

/// Which line is which engine: donor dashed, target solid, variants dotted and dash-dotted.
class EngineKey final : public QWidget {
  Q_OBJECT

 public:
  explicit EngineKey(Desk& desk, QWidget* parent = nullptr);

  QSize sizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  void refresh();

  Desk& desk_;
  QStringList names_;
};

}  // namespace strokewright::ui
