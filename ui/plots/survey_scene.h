#pragma once
/// The barrel seats over the length of the crank, and the plates that would level them.

#include "ui/plots/scene_view.h"

namespace strokewright::ui {

/// Above, the seats of an engine with their ± and how far each stands off the fitted line; below,
/// on the same length, the flat and the tapered plate and the one each cylinder would need.
SceneShown surveyScene(Document& document, int engine);

}  // namespace strokewright::ui
