#pragma once
/// The commands, one function each. Each writes what it found to out and returns the exit status:
/// 0 nothing forbids, 1 something forbids or a result of the sheet is refused.
/// All of them throw Unusable where the file or the call cannot be used.

#include <iosfwd>

#include "app/arguments.h"
#include "app/command_line.h"

namespace strokewright::app {

int results(const Arguments& arguments, std::ostream& out, std::ostream& err);
/// 1 also where the table has no rows for what is entered.
int table(const Arguments& arguments, std::ostream& out, std::ostream& err);
int inputs(const Arguments& arguments, std::ostream& out);
int quantities(const Arguments& arguments, std::ostream& out);
/// 1 also where no value within the limits of the entry does it.
int solve(const Arguments& arguments, std::ostream& out, std::ostream& err);
int sheet(const Arguments& arguments, std::ostream& err, const SheetWriter& writeSheet);
/// 1 also where it is not known when the cylinders fire.
int sound(const Arguments& arguments, std::ostream& err);
int check(const Arguments& arguments, std::ostream& out, std::ostream& err);

}  // namespace strokewright::app
