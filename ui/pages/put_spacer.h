#pragma once
/// The one key that makes the spacer to make the spacer planned.

#include <QString>
#include <vector>

namespace strokewright::ui {

class Desk;

/// What is typed for plates of these thicknesses [m], never none: each to the nearest 0.01 mm, and
/// the ± they are made to. "1.03; 0.95 ± 0.01 mm"
QString spacerText(const Desk& desk, const std::vector<double>& spacers);

/// [m] what is to be made, for each cylinder of the subject. @pre it is known
std::vector<double> spacersToMake(const Desk& desk);

/// "rounded to 0.01 mm"; empty where plates of these thicknesses [m] are such already.
QString roundedOff(const Desk& desk, const std::vector<double>& spacers);

/// The subject has a spacer to make, and it is not what is entered already.
bool canPutSpacer(const Desk& desk);

/// Puts it into the entry as spacerText() has it, origin computed: one number, or one for each
/// cylinder where they differ. One undo step. @pre canPutSpacer().
void putSpacer(Desk& desk);

}  // namespace strokewright::ui
