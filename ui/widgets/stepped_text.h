#pragma once
/// Up and down in a number field.

#include <QString>

namespace strokewright::ui {

/// The text with the number at the cursor moved by so many of its last digit: "98.20" up is
/// "98.21". Marks, units and ± stay as typed; a text without a plain number there (a fraction, a
/// word) comes back as it is.
QString steppedText(const QString& text, int cursor, int by);

}  // namespace strokewright::ui
