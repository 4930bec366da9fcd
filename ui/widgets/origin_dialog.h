#pragma once
/// Where a number came from, when, and what else is worth noting.

#include <QDialog>

#include "ui/document/document.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QPlainTextEdit;

namespace strokewright::ui {

class OriginDialog final : public QDialog {
  Q_OBJECT

 public:
  OriginDialog(const Document& document, const EntryPlace& place, QWidget* parent = nullptr);

  /// Origin, shape of the ±, instrument, date and note as they stand in the dialog; nothing else of
  /// the entry.
  describe::Entry answer() const;

 private:
  void judgeDate();

  // As they stand below each other: Tab goes through them in this order.
  QComboBox* origin_;
  QLineEdit* instrument_;
  QComboBox* shape_;
  QLineEdit* date_;
  QLabel* noDate_;  ///< beside the date, where it cannot be read as one
  QPlainTextEdit* note_;
};

}  // namespace strokewright::ui
