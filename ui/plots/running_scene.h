#pragma once
/// The squish gap against the speed at which the engine turns.

#include "ui/plots/scene_view.h"

namespace strokewright::ui {

/// One curve for each engine; of the subject the gap cold, the working speed and the over-rev with
/// their ± at worst, the least that practice leaves, and where the crown would meet the head.
/// @param cylinder counted from 0; -1: of each engine the one with the least gap.
SceneShown runningScene(Document& document, int subject, int cylinder);

/// The cylinder with the least running gap; 0 where none has a value.
int cylinderRunningClosest(const Document& document, int engine);

}  // namespace strokewright::ui
