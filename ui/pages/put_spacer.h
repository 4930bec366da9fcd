#pragma once
/// The one key that makes the spacer to make the spacer planned.

namespace strokewright::ui {

class Desk;

/// The subject has a spacer to make, and it is not what is entered already.
bool canPutSpacer(const Desk& desk);

/// Puts it into the entry, rounded to 0.01 mm, origin computed: one number, or one for each
/// cylinder where they differ. One undo step. @pre canPutSpacer().
void putSpacer(Desk& desk);

}  // namespace strokewright::ui
