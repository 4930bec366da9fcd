#pragma once
/// Paper and ink: near-white and near-black, and the reverse where the desktop is dark.

#include <QPalette>

namespace strokewright::ui {

/// Everything a widget of ours paints with, in the tone of the desktop's palette.
QPalette paperPalette(const QPalette& desktop);

}  // namespace strokewright::ui
