#pragma once
/// A choice among many: to be typed into, found by any part of its words.

#include <QComboBox>

namespace strokewright::ui {

/// What is typed only searches; text that finds nothing gives way to what was chosen before. The
/// wheel never changes it.
class SearchBox final : public QComboBox {
  Q_OBJECT

 public:
  /// @param name for those who cannot see what stands beside it.
  explicit SearchBox(const QString& name, QWidget* parent = nullptr);

  /// Takes these words and shows one of them; does nothing where both stand already.
  void offer(const QStringList& words, int current);

 Q_SIGNALS:
  void chosen(int row);  ///< by the person

 protected:
  void wheelEvent(QWheelEvent* event) override;

 private:
  int lastWith(const QString& part) const;
  void settle();

  int chosen_ = -1;
};

}  // namespace strokewright::ui
