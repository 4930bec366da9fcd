#pragma once
/// The orders in the rhythm of the firings as bars.

#include "ui/plots/scene_view.h"

namespace strokewright::ui {

/// One bar for each order, the subject's full and the reference donor's beside it an outline.
/// @param subject engine in question, or -1: an empty scene
SceneShown rhythmScene(Document& document, int subject);

}  // namespace strokewright::ui
