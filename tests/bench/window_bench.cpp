// What a person waits for: an edit with everything visible recomputed and painted again, page by
// page. How long the first screen takes is first_screen.py's question.
//
// One frame is 16 ms. Run at other scales with QT_SCALE_FACTOR; nothing needs a display.

#include <benchmark/benchmark.h>

#include <QApplication>
#include <QTemporaryDir>
#include <clocale>
#include <string>

#include "core/model/inputs.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/drawings/crank_view.h"
#include "ui/pages/main_window.h"
#include "ui/pages/page_description.h"

namespace strokewright::ui {
namespace {

constexpr int kTarget = 1;
constexpr QSize kLaptop(1366, 768);

/// Lets everything that is due happen: layout, paint.
void settle() {
  QCoreApplication::sendPostedEvents();
  QCoreApplication::processEvents();
}

/// One key typed into the bore of the target, seen on one page.
void edit(benchmark::State& state, const std::string& page) {
  Taste taste;
  Document document(taste);
  MainWindow window(document, taste);
  window.openFile(QStringLiteral(STROKEWRIGHT_SOURCE_DIR "/samples/burdock-719.strokewright"));
  window.resize(kLaptop);
  window.showPage(QString::fromStdString(page));
  window.show();
  settle();
  bool wide = false;
  for (auto _ : state) {
    wide = !wide;
    document.type(kTarget, model::in::bore,
                  wide ? QStringLiteral("68.01") : QStringLiteral("68.00"));
    settle();
  }
  document.undoStack().setClean();
}

/// The crank in space turned by two degrees, as it turns by itself.
void turn(benchmark::State& state) {
  Taste taste;
  Document document(taste);
  document.openCopy(QStringLiteral(STROKEWRIGHT_SOURCE_DIR "/samples/burdock-719.strokewright"),
                    {});
  CrankPane pane(document, taste, [] { return kTarget; });
  pane.resize(kLaptop);
  pane.show();
  settle();
  auto* view = pane.findChild<CrankView*>();
  double angle = 0.0;
  for (auto _ : state) {
    angle += 0.035;
    view->setCrankAngle(angle);
    settle();
  }
}

}  // namespace
}  // namespace strokewright::ui

int main(int argc, char** argv) {
  const QTemporaryDir home;
  for (const char* place : {"XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME"}) {
    qputenv(place, home.filePath(QLatin1StringView(place)).toLocal8Bit());
  }
  qputenv("QT_QPA_PLATFORM", "offscreen");
  qputenv("QT_LOGGING_RULES", "qt.qpa.*=false");
  QApplication application(argc, argv);
  std::setlocale(LC_NUMERIC, "C");
  QApplication::setStyle(QStringLiteral("Fusion"));
  for (const strokewright::ui::PageDescription& page : strokewright::ui::pages()) {
    const std::string key = page.key.toStdString();
    benchmark::RegisterBenchmark(("edit/" + key).c_str(), strokewright::ui::edit, key)
        ->Unit(benchmark::kMillisecond);
  }
  benchmark::RegisterBenchmark("turn/crank", strokewright::ui::turn)->Unit(benchmark::kMillisecond);
  benchmark::Initialize(&argc, argv);
  benchmark::RunSpecifiedBenchmarks();
  return 0;
}
