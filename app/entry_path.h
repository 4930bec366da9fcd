#pragma once
/// Where in a project a --set goes.

#include "app/arguments.h"
#include "core/model/engine.h"

namespace strokewright::app {

/// Enters the text where the key leads to, as in the file, counted from 0: an entry of the engine
/// ("bore_m"), one of an item of a list ("shelf[2].thickness_m"), or of an entry the number of one
/// cylinder ("seat_height_m.value[1]") or one of its readings ("seat_height_m.readings[1][0]").
/// @param engine  index of the engine it is about
/// @throws Unusable where the key leads nowhere, or the text cannot be read.
void enter(model::Project& project, int engine, const Assignment& set);

}  // namespace strokewright::app
