#pragma once
/// A choice among many: to be typed into, found by any part of its words.

#include <QComboBox>

namespace strokewright::ui {

/// What is typed only searches. Text that finds nothing, or several, stays and is told; an emptied
/// line gives way to what was chosen before. The wheel never changes it.
class SearchBox final : public QComboBox {
  Q_OBJECT

 public:
  /// @param name for those who cannot see what stands beside it.
  explicit SearchBox(const QString& name, QWidget* parent = nullptr);

  /// Takes these words and shows one of them; does nothing where both stand already.
  /// @param current -1: none, and what was typed in vain stays
  void offer(const QStringList& words, int current);
  /// Takes what is typed as if the line were left.
  void settle();

 Q_SIGNALS:
  void chosen(int row);  ///< by the person
  void notFound(const QString& typed);

 protected:
  bool event(QEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;

 private:
  int lastWith(const QString& part) const;

  int chosen_ = -1;
  QString inVain_;  ///< typed, and names no single one
};

}  // namespace strokewright::ui
