/// The window's tests: no display, settings and data of their own, one font and style everywhere.

#include <gtest/gtest.h>

#include <QApplication>
#include <QLocale>
#include <QSettings>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <clocale>

#include "tests/ui/recovery_child.h"

int main(int argc, char** argv) {
  testing::InitGoogleTest(&argc, argv);
  qputenv("QT_QPA_PLATFORM", "offscreen");
  QStandardPaths::setTestModeEnabled(true);
  QApplication application(argc, argv);
  std::setlocale(LC_NUMERIC, "C");
  QApplication::setStyle(QStringLiteral("Fusion"));
  QApplication::setOrganizationName(QStringLiteral("Strokewright"));
  QApplication::setApplicationName(QStringLiteral("strokewright"));
  QLocale::setDefault(QLocale::c());

  const QStringList arguments = QApplication::arguments();
  if (arguments.value(1) == QStringLiteral("--type-and-hang")) {
    return strokewright::ui::typeAndHang(arguments.value(2), arguments.value(3));
  }
  const QTemporaryDir settings;
  QSettings::setDefaultFormat(QSettings::IniFormat);
  QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, settings.path());
  return RUN_ALL_TESTS();
}
