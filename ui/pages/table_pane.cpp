#include "ui/pages/table_pane.h"

#include <QCoreApplication>
#include <QVBoxLayout>
#include <algorithm>

#include "core/model/lists.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/desk.h"
#include "ui/pages/link_button.h"
#include "ui/widgets/list_edit.h"
#include "ui/widgets/table_view.h"

namespace strokewright::ui {

namespace {

/// A caption above its content.
/// @param hint what can be done with it, or empty
QWidget* captioned(const Taste& taste, std::string_view caption, const QString& hint,
                   QWidget* content, QWidget* parent) {
  auto* pane = new QWidget(parent);
  auto* label = new QuietLabel({}, pane);
  label->setWordWrap(true);
  auto* column = new QVBoxLayout(pane);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  column->addWidget(label);
  column->addWidget(content, 1);
  const auto word = [label, caption, hint, &taste] {
    const QString words = taste.inTerms(fromCore(caption));
    say(*label, hint.isEmpty() ? words : words + QStringLiteral(" · ") + hint);
  };
  QObject::connect(&taste, &Taste::changed, label, word);
  word();
  return pane;
}

bool isOfEngine(const describe::List& list) {
  return model::listOf(model::engineLists(), list.key) == &list;
}

}  // namespace

QWidget* makeTablePane(Desk& desk, const TableOnPage& shown, QWidget* parent) {
  auto* view = new TableView(desk.document, desk.subject(), *shown.table);
  view->setWhenEmpty(shown.whenEmpty);
  view->setSortable(true);
  const auto follow = [view, &desk] {
    view->setEngine(desk.subject());
    view->setCylinder(std::max(0, desk.cylinder()));
  };
  follow();
  QObject::connect(&desk.document, &Document::projectChanged, view, follow);
  QObject::connect(&desk, &Desk::cylinderChanged, view, follow);
  QObject::connect(view, &TableView::entryAsked, &desk, &Desk::entryAsked);
  if (shown.take != nullptr) {
    QObject::connect(view, &TableView::rowTaken, &desk, [view, &desk, take = shown.take](int row) {
      take(desk, view->filled(), row);
    });
  }
  if (shown.choose != nullptr) {
    QObject::connect(
        view, &TableView::rowChosen, &desk,
        [view, &desk, choose = shown.choose](int row) { choose(desk, view->filled(), row); });
  }
  const QString hint = shown.take == nullptr
                           ? QString()
                           : QCoreApplication::translate(
                                 "TablePane", "Enter or a double click puts a row into the target");
  return captioned(desk.taste, shown.table->name, hint, view, parent);
}

QWidget* makeListPane(Desk& desk, const describe::List& list, QWidget* parent) {
  const bool ofEngine = isOfEngine(list);
  auto* edit = new ListEdit(desk.document, {&list, ofEngine ? desk.subject() : -1});
  if (ofEngine) {
    QObject::connect(&desk.document, &Document::projectChanged, edit,
                     [edit, &desk] { edit->setEngine(desk.subject()); });
  }
  return captioned(desk.taste, list.about.empty() ? list.name : list.about, {}, edit, parent);
}

}  // namespace strokewright::ui
