/// The window's tests: no display, settings and data of their own, one style everywhere.

#include <gtest/gtest.h>

#include <QApplication>
#include <QDir>
#include <QLocale>
#include <QTemporaryDir>
#include <clocale>

#include "tests/ui/recovery_child.h"
#include "ui/widgets/paper_style.h"

namespace {

/// Settings, data and cache go below this folder, in this process and in those it starts.
void keepTo(const QString& folder) {
  for (const char* place : {"XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME"}) {
    qputenv(place, QDir(folder).filePath(QLatin1StringView(place)).toLocal8Bit());
  }
}

}  // namespace

int main(int argc, char** argv) {
  testing::InitGoogleTest(&argc, argv);
  const bool child = argc == 4 && qstrcmp(argv[1], "--type-and-hang") == 0;
  const QTemporaryDir home;
  if (!child) keepTo(home.path());
  qputenv("QT_QPA_PLATFORM", "offscreen");
  QApplication application(argc, argv);
  std::setlocale(LC_NUMERIC, "C");
  QApplication::setStyle(new strokewright::ui::PaperStyle(QStringLiteral("Fusion")));
  QApplication::setOrganizationName(QStringLiteral("Strokewright"));
  QApplication::setApplicationName(QStringLiteral("strokewright"));
  QLocale::setDefault(QLocale::c());
  if (child) {
    return strokewright::ui::typeAndHang(QString::fromLocal8Bit(argv[2]),
                                         QString::fromLocal8Bit(argv[3]));
  }
  return RUN_ALL_TESTS();
}
