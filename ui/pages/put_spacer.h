#pragma once
/// The plates to make: what is said where one is none, and the one key that makes the spacer to
/// make the spacer planned.

#include <QString>
#include <vector>

#include "core/describe/result.h"

namespace strokewright::ui {

class Desk;
struct Answer;

/// [m] in each cylinder that is shown; where a result is one for the engine, that one.
/// @pre known()
std::vector<double> thicknessesShown(const Desk& desk, const describe::Result& result);

/// A thickness that cannot be made is no plate: instead of the number stands "none", and what does
/// the same. Where all are none, that is all the answer says.
/// @returns whether all are none
/// @pre known()
bool sayWherePlatesAreNone(Answer& said, const Desk& desk, const describe::Result& result);

/// What is typed for plates of these thicknesses [m], never none: each to the nearest 0.01 mm, and
/// the ± they are made to. "1.03; 0.95 ± 0.01 mm"
QString spacerText(const Desk& desk, const std::vector<double>& spacers);

/// [m] what is to be made, for each cylinder of the subject. @pre it is known
std::vector<double> spacersToMake(const Desk& desk);

/// "rounded to 0.01 mm"; empty where plates of these thicknesses [m] are such already.
QString roundedOff(const Desk& desk, const std::vector<double>& spacers);

/// The subject has a spacer to make that is a plate, and it is not what is entered already.
bool canPutSpacer(const Desk& desk);

/// Puts it into the entry as spacerText() has it, origin computed: one number, or one for each
/// cylinder where they differ. One undo step. @pre canPutSpacer().
void putSpacer(Desk& desk);

}  // namespace strokewright::ui
