/// Chooses between the window and a command, before any part of Qt looks for a display.

#include <QApplication>
#include <QIcon>
#include <clocale>
#include <iostream>
#include <string>
#include <vector>

#include "app/command_line.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/main_window.h"
#include "ui/print/sheet_printer.h"
#include "ui/widgets/paper_style.h"

namespace {

using namespace strokewright;
using Arguments = std::vector<std::string>;

/// Where settings and recovery files live, and how the desktop knows the window.
void introduce() {
  QCoreApplication::setOrganizationName(QStringLiteral("strokewright"));
  QCoreApplication::setApplicationName(QStringLiteral("strokewright"));
  QCoreApplication::setApplicationVersion(QStringLiteral(STROKEWRIGHT_VERSION));
  QGuiApplication::setApplicationDisplayName(QStringLiteral("Strokewright"));
  QGuiApplication::setDesktopFileName(QStringLiteral("org.strokewright.Strokewright"));
}

/// Qt makes the C library use the reader's decimal mark; nothing here may depend on that.
void keepPoint() { std::setlocale(LC_NUMERIC, "C"); }

app::SheetOutcome writeSheet(const assess::Assessment& assessment, const app::SheetCall& call) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  int argc = 1;
  std::string name = "strokewright";
  char* argv[] = {name.data(), nullptr};
  introduce();
  const QGuiApplication application(argc, argv);
  keepPoint();
  const ui::Taste taste;
  const ui::SheetOrder order{.engine = call.engine, .kind = call.kind};
  const auto paper = ui::paperOf(ui::fromCore(call.paper)).value_or(ui::defaultPaper());
  const QString path = ui::fromCore(call.path);
  QString error;
  if (!ui::writeSheetFile(assessment, taste.style(), order, paper, path, &error)) {
    return {false, error.toStdString()};
  }
  return {true, ui::otherPaper(assessment, taste.style(), order, paper, path).toStdString()};
}

/// X11 and Wayland say in the environment where they are; without them Qt would abort.
bool hasDisplay() {
#ifdef Q_OS_LINUX
  return !qEnvironmentVariableIsEmpty("DISPLAY") ||
         !qEnvironmentVariableIsEmpty("WAYLAND_DISPLAY") ||
         !qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM");
#else
  return true;
#endif
}

int openWindow(const Arguments& args, int& argc, char** argv) {
  if (!hasDisplay()) {
    std::cerr << "There is no display here for the window. What works without one: "
                 "strokewright --help\n";
    return 2;
  }
  introduce();
  QApplication application(argc, argv);
  keepPoint();
  QApplication::setStyle(new ui::PaperStyle);
  QApplication::setWindowIcon(QIcon(QStringLiteral(":/icons/org.strokewright.Strokewright.svg")));
  ui::Taste taste;
  ui::Document document(taste);
  ui::MainWindow window(document, taste);
  window.showStart();
  if (!args.empty()) window.openFile(ui::fromCore(args.front()));
  window.show();
  return QApplication::exec();
}

}  // namespace

int main(int argc, char** argv) {
  const Arguments args(argv + 1, argv + argc);
  if (app::asksForWindow(args)) return openWindow(args, argc, argv);
  return app::run(args, std::cout, std::cerr, writeSheet);
}
