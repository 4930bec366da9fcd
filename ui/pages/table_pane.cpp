#include "ui/pages/table_pane.h"

#include <QCoreApplication>
#include <QVBoxLayout>
#include <algorithm>

#include "core/model/inputs.h"
#include "core/model/lists.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"
#include "ui/pages/link_button.h"
#include "ui/widgets/list_edit.h"
#include "ui/widgets/table_view.h"

namespace strokewright::ui {

namespace {

/// A caption above its content; it follows the terms chosen.
/// @param words what it says now
QuietLabel* captioned(const Taste& taste, const std::function<QString()>& words, QWidget* content,
                      QWidget* pane) {
  auto* label = new QuietLabel({}, pane);
  label->setWordWrap(true);
  auto* column = new QVBoxLayout(pane);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  column->addWidget(label);
  column->addWidget(content, 1);
  const auto word = [label, words] { say(*label, words()); };
  QObject::connect(&taste, &Taste::changed, label, word);
  word();
  return label;
}

bool isOfEngine(const describe::List& list) {
  return model::listOf(model::engineLists(), list.key) == &list;
}

/// "cylinder 2" of a table that is one for each; empty where that says nothing.
QString cylinderWords(const Desk& desk, const describe::Table& table, int cylinder) {
  const int engine = desk.subject();
  const describe::Evaluation& evaluation = desk.document.evaluation();
  if (table.per != describe::Per::Cylinder || engine < 0 || evaluation.cylinders(engine) < 2) {
    return {};
  }
  return QCoreApplication::translate("TablePane", "cylinder %1")
      .arg(model::numberOfCylinder(evaluation, engine, cylinder));
}

}  // namespace

QWidget* makeTablePane(Desk& desk, const TableOnPage& shown, QWidget* parent,
                       const std::function<int()>& cylinder) {
  auto* view = new TableView(desk.document, desk.subject(), *shown.table);
  view->setWhenEmpty(shown.whenEmpty);
  view->setSortable(true);
  const auto which = [&desk, cylinder] {
    return cylinder ? cylinder() : std::max(0, desk.cylinder());
  };
  const QString hint = shown.take == nullptr
                           ? QString()
                           : QCoreApplication::translate(
                                 "TablePane", "Enter or a double click puts a row into the target");
  auto* pane = new QWidget(parent);
  const auto words = [&desk, which, hint, &table = *shown.table] {
    return joined(
        {desk.taste.inTerms(fromCore(table.name)), cylinderWords(desk, table, which()), hint});
  };
  QuietLabel* const caption = captioned(desk.taste, words, view, pane);
  const auto follow = [view, caption, words, which, &desk] {
    view->setEngine(desk.subject());
    view->setCylinder(which());
    say(*caption, words());
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
  return pane;
}

QWidget* makeListPane(Desk& desk, const describe::List& list, QWidget* parent) {
  const bool ofEngine = isOfEngine(list);
  auto* edit = new ListEdit(desk.document, {&list, ofEngine ? desk.subject() : -1});
  if (ofEngine) {
    QObject::connect(&desk.document, &Document::projectChanged, edit,
                     [edit, &desk] { edit->setEngine(desk.subject()); });
  }
  auto* pane = new QWidget(parent);
  captioned(
      desk.taste,
      [&desk, &list] {
        return desk.taste.inTerms(fromCore(list.about.empty() ? list.name : list.about));
      },
      edit, pane);
  return pane;
}

}  // namespace strokewright::ui
