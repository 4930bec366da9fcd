#include "ui/widgets/entry_edit.h"

#include "ui/widgets/choice_edit.h"
#include "ui/widgets/quantity_edit.h"

namespace strokewright::ui {

QWidget* makeEntryEdit(Document& document, int engine, const describe::Input& input,
                       QWidget* parent) {
  if (input.kind == units::Kind::Choice) return new ChoiceEdit(document, engine, input, parent);
  return new QuantityEdit(document, engine, input, parent);
}

const describe::Input* inputOf(const QWidget* field) {
  if (const auto* quantity = qobject_cast<const QuantityEdit*>(field)) return &quantity->input();
  if (const auto* choice = qobject_cast<const ChoiceEdit*>(field)) return &choice->input();
  return nullptr;
}

int engineOf(const QWidget* field) {
  if (const auto* quantity = qobject_cast<const QuantityEdit*>(field)) return quantity->engine();
  if (const auto* choice = qobject_cast<const ChoiceEdit*>(field)) return choice->engine();
  return -1;
}

}  // namespace strokewright::ui
