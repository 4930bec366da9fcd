#include "ui/pages/difference_label.h"

#include <QPainter>
#include <algorithm>

#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/desk.h"
#include "ui/widgets/ink.h"

namespace strokewright::ui {

DifferenceLabel::DifferenceLabel(const Desk& desk, const describe::Input& input, int engine,
                                 int comparedWith, QWidget* parent)
    : QWidget(parent), desk_(desk), input_(input), engine_(engine), comparedWith_(comparedWith) {
  setSizePolicy(QSizePolicy::Minimum, QSizePolicy::Fixed);
  refresh();
}

/// Entered, and possible: nothing is counted with what cannot be.
bool DifferenceLabel::entered(const describe::Evaluation& evaluation, int engine,
                              int cylinder) const {
  return evaluation.inputGiven(engine, input_, cylinder) &&
         evaluation.inputStands(engine, input_, cylinder);
}

QString DifferenceLabel::difference() const {
  if (input_.kind == units::Kind::Choice || engine_ < 0 || comparedWith_ < 0) {
    return {};
  }
  const describe::Evaluation& evaluation = desk_.document.assessment().evaluation();
  const int cylinders =
      std::min(evaluation.cylinders(engine_), evaluation.cylinders(comparedWith_));
  const bool one = desk_.cylinder() >= 0;
  QString all;
  for (int i = one ? desk_.cylinder() : 0; i < (one ? desk_.cylinder() + 1 : cylinders); ++i) {
    if (i >= cylinders || !entered(evaluation, engine_, i) ||
        !entered(evaluation, comparedWith_, i)) {
      return {};
    }
    const QString text =
        desk_.taste.difference(input_.kind, evaluation.inputValue(engine_, input_, i) -
                                                evaluation.inputValue(comparedWith_, input_, i));
    if (!all.isEmpty() && text != all) {
      return tr("unlike");
    }
    all = text;
  }
  return all;
}

void DifferenceLabel::refresh() {
  const QString text = difference();
  if (text != text_) {
    text_ = text;
    setAccessibleName(text.isEmpty() ? QString() : tr("difference %1").arg(text));
    update();
  }
}

QSize DifferenceLabel::sizeHint() const {
  return {fontMetrics().horizontalAdvance(QStringLiteral("+00.00")), fontMetrics().height()};
}

void DifferenceLabel::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setPen(ink::muted(palette()));
  painter.drawText(rect(), Qt::AlignRight | Qt::AlignVCenter,
                   fontMetrics().elidedText(text_, Qt::ElideRight, width()));
}

}  // namespace strokewright::ui
