#pragma once
/// When the ports stand open over a turn of the crank.

#include "ui/plots/scene_view.h"

namespace strokewright::ui {

/// A row for each kind of port: the target's bar full, the reference donor's an outline below it.
/// @param cylinder counted from 0.
SceneShown portsScene(Document& document, int subject, int cylinder);

}  // namespace strokewright::ui
