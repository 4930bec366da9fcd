#pragma once
/// From field to field by the arrow keys.

class QKeyEvent;
class QWidget;

namespace strokewright::ui {

/// Up or down without a modifier.
bool goesUpOrDown(const QKeyEvent& event);

/// Up, down, left or right: a button leaves them to what it lies on, which may scroll, where by
/// itself it would pass the focus on.
bool isArrow(const QKeyEvent& event);

/// The nearest field above or below this one, a line to write on or an answer to be chosen, that
/// shares its column: one it overlaps from left to right. Among what lies on the same widget.
/// @returns nullptr where there is none
QWidget* fieldBeside(const QWidget& field, bool above);

/// As Tab does: what was typed is one step, all of the other field is selected, and it is seen.
/// @returns false where there is none
bool goToField(QWidget* field);

}  // namespace strokewright::ui
