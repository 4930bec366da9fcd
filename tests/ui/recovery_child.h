#pragma once
/// A second process for the tests of recovery, since nothing else dies as honestly.

#include <QString>

namespace strokewright::ui {

/// `ui_tests --type-and-hang FILE TEXT`: opens FILE (or starts a new project where FILE is "-"),
/// types TEXT into the bore of the first engine, says "typed" once its recovery file is on disk,
/// and waits to be killed.
int typeAndHang(const QString& file, const QString& text);

}  // namespace strokewright::ui
