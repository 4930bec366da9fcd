#pragma once
/// What is said below a figure.

#include <QRectF>
#include <QString>

#include "ui/drawings/drafting.h"

namespace strokewright::ui {

/// [device units] It goes on as many lines as the width asks for.
double captionHeight(Drafting& draft, const QString& words, double width);

/// Faint, in the middle, from the top of its room on.
void paintCaption(Drafting& draft, const QRectF& room, const QString& words);

}  // namespace strokewright::ui
