#pragma once
/// The limits on the revs as bars, for the screen and for paper.

#include <QStringList>

#include "core/assess/assess.h"
#include "ui/plots/plot_scene.h"

namespace strokewright::ui {

class Taste;

/// Where the name of a bar stands: beside it at the axis, or above it where the picture is narrow.
enum class LimitNames : std::uint8_t { Beside, Above };

/// One row for each limit that may govern, and below them, apart, breathing. The target's bar is
/// full, the reference donor's beside it an outline; the lowest of the target's is heavier.
PlotScene limitsScene(const assess::Assessment& assessment, const Taste& taste,
                      LimitNames names = LimitNames::Beside);

/// Of all bars, from the top.
QStringList limitNames();

/// What stops the target first, what comes next, where the wanted revs stand, and which limits wait
/// for entries.
QString limitsSentence(const assess::Assessment& assessment, const Taste& taste);

}  // namespace strokewright::ui
