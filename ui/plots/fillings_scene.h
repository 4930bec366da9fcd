#pragma once
/// What the burette says beside what was entered and computed.

#include "ui/plots/scene_view.h"

namespace strokewright::ui {

/// For each cylinder of an engine crown volume and clearance volume both ways, with their likely ±:
/// where the bars reach each other the two agree.
SceneShown fillingsScene(Document& document, int engine);

}  // namespace strokewright::ui
