#pragma once
/// Files that are written whole or not at all.

#include <QByteArray>
#include <QString>

namespace strokewright::ui {

/// Writes a file so that a full disk or a crash leaves what was there before.
/// @returns empty, or why it was not written, as the system says it.
QString writeWhole(const QString& path, const QByteArray& content);

}  // namespace strokewright::ui
