#pragma once
/// What would it have to be: the question, and what the workbench finds.

#include <QString>
#include <optional>
#include <vector>

#include "core/assess/assess.h"

namespace strokewright::ui {

class Desk;

/// Which result should be what, and by which entry.
struct WhatIf {
  const describe::Result* result = nullptr;
  std::optional<double> wanted = {};  ///< [SI] nothing: not said yet
  const describe::Input* input = nullptr;
  QString resultTyped = {};  ///< stands where the result is asked for and names no single one
  QString inputTyped = {};   ///< the same of the entry
  QString wantedTyped = {};  ///< stands where the wanted value is asked for and cannot be read

  bool operator==(const WhatIf&) const = default;
};

/// Where it is asked: the subject, in the cylinder shown, else in the first. An entry that holds a
/// number for each cylinder is changed in that one alone.
struct WhatIfPlace {
  int engine = -1;
  int cylinder = 0;
  int inputCylinder = -1;  ///< -1: the same in every cylinder
};
WhatIfPlace placeOf(const Desk& desk);

/// Results of the subject that have a number there.
std::vector<const describe::Result*> askable(const Desk& desk);

/// [SI] what stands for an entry: what was entered, its default, or the spacer counted with while
/// none is entered. Nothing where only a typical value is read.
std::optional<double> standsAt(const Desk& desk, const WhatIfPlace& place,
                               const describe::Input& input);

/// The entry asked for is measured, stands, and the result reads it.
bool reaches(const Desk& desk);

/// Measured entries of the subject that stand and move the result asked for, in page order.
std::vector<const describe::Input*> movers(const Desk& desk);

/// Nothing while no value is wanted, the result has none, or the entry does not reach it.
std::optional<assess::Solution> solved(const Desk& desk);

/// What would object or forbid, with what was found in the entry, and does not now; the heaviest
/// first.
std::vector<describe::Finding> saidThen(const Desk& desk);

/// The entry can be made what was found, and is not already.
bool canTakeWhatIf(const Desk& desk);
/// Puts what was found into the entry, of origin computed, as one step; the ± of the entry stays.
void takeWhatIf(Desk& desk);

}  // namespace strokewright::ui
