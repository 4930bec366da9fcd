#pragma once
/// A line of plain text in the project: names, notes, title block.

#include <QLineEdit>

#include "ui/document/document.h"

namespace strokewright::ui {

/// Where a text lives: in the project, or in one of its engines.
struct TextPlace {
  std::string model::Project::*ofProject = nullptr;
  std::string model::Engine::*ofEngine = nullptr;
  int engine = -1;

  /// nullptr: the engine is gone.
  const std::string* in(const model::Project& project) const;
  std::string* in(model::Project& project) const;
};

/// Every keystroke goes through the one door; undo and redo are the document's. Enter goes on to
/// the next line, up and down to the field above and below.
class ProjectText final : public QLineEdit {
  Q_OBJECT

 public:
  /// @param name what it is, for those who cannot see the row.
  /// @param step what changing it is called in undo: "name of Burdock 719".
  ProjectText(Document& document, const QString& name, const QString& step, TextPlace place,
              QWidget* parent = nullptr);

 protected:
  bool event(QEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  void refresh();
  void type(const QString& text);

  Document& document_;
  QString step_;
  TextPlace place_;
};

}  // namespace strokewright::ui
