#include "ui/widgets/entry_edit.h"

#include "ui/widgets/choice_edit.h"
#include "ui/widgets/quantity_edit.h"

namespace strokewright::ui {

QWidget* makeEntryEdit(Document& document, const EntryPlace& place, QWidget* parent) {
  if (place.input->kind == units::Kind::Choice) return new ChoiceEdit(document, place, parent);
  return new QuantityEdit(document, place, parent);
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
