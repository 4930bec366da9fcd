#pragma once
/// The limits on the revs as bars, for the screen and for paper.

#include <QString>

#include "core/assess/assess.h"
#include "ui/plots/plot_scene.h"

namespace strokewright::ui {

class Taste;

/// One row for each limit that may govern, and below them, apart, breathing. The target's bar is
/// full, the reference donor's beside it an outline; the lowest of the target's is heavier.
PlotScene limitsScene(const assess::Assessment& assessment, const Taste& taste);

/// What stops the target first, what comes next, where the wanted revs stand, and which limits wait
/// for entries.
QString limitsSentence(const assess::Assessment& assessment, const Taste& taste);

}  // namespace strokewright::ui
