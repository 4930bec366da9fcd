#pragma once
/// The sheets as they will leave the printer.

#include <QPageSize>
#include <QWidget>

#include "ui/print/sheet_printer.h"

class QComboBox;
class QLabel;
class QPushButton;

namespace strokewright::ui {

class Document;
class Taste;
class SheetPicture;

/// The page, fitted to the window, which sheet it is, its paper, and the two ways out: printer and
/// file.
class SheetPreview final : public QWidget {
  Q_OBJECT

 public:
  SheetPreview(Document& document, Taste& taste, QWidget* parent = nullptr);

  void setEngine(int engine);  ///< index into the project; -1: the target
  void setKind(sheet::SheetKind kind);

 public Q_SLOTS:
  void print();    ///< asks for the printer, then prints
  void savePdf();  ///< asks for the file, then writes it; the plate also as SVG or DXF

 Q_SIGNALS:
  /// Said in the window's status line: where the page went, or why not.
  void said(const QString& sentence);
  /// Another sheet is shown.
  void kindChosen(sheet::SheetKind kind);

 private:
  void refresh();
  sheet::SheetKind kind() const;
  QPageSize::PageSizeId paper() const;
  SheetOrder order() const;
  QString suggestedPath() const;

  Document& document_;
  Taste& taste_;
  SheetPicture* picture_;
  QComboBox* paper_;
  QComboBox* kind_;
  QLabel* needs_;  ///< another paper than was chosen
  QPushButton* save_;
  int engine_ = -1;
};

}  // namespace strokewright::ui
