#pragma once
/// The right field for an input.

#include "ui/document/document.h"

class QWidget;

namespace strokewright::ui {

/// A ChoiceEdit for a choice, a QuantityEdit for everything else. Owned by the parent.
QWidget* makeEntryEdit(Document& document, const EntryPlace& place, QWidget* parent);
inline QWidget* makeEntryEdit(Document& document, int engine, const describe::Input& input,
                              QWidget* parent) {
  return makeEntryEdit(document, EntryPlace(engine, input), parent);
}

/// The input that a field made by makeEntryEdit shows, or nullptr for any other widget.
const describe::Input* inputOf(const QWidget* field);
/// The engine it shows it of; -1: of the project, or another widget.
int engineOf(const QWidget* field);

}  // namespace strokewright::ui
