#pragma once
/// Fields whose text is a question or a place, not an entry.

class QEvent;
class QLineEdit;

namespace strokewright::ui {

/// Undo and redo in this field are those of the document: what is typed here is no step of its own.
void leaveUndoToDocument(QLineEdit& field);

/// A key that undoes or redoes, pressed or about to be.
bool undoes(const QEvent& event);

}  // namespace strokewright::ui
