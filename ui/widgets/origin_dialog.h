#pragma once
/// Where a number came from, when, and what else is worth noting.

#include <QDialog>

#include "ui/document/document.h"

class QComboBox;
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
  QComboBox* origin_;
  QComboBox* shape_;
  QLineEdit* instrument_;
  QLineEdit* date_;
  QPlainTextEdit* note_;
};

}  // namespace strokewright::ui
