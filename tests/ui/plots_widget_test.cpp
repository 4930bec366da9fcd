/// The plot itself: theme, moving about in it, copying and saving.

#include <QClipboard>
#include <QGuiApplication>
#include <QMimeData>
#include <QPainter>
#include <QTest>
#include <QWheelEvent>
#include <QXmlStreamReader>
#include <algorithm>
#include <cmath>
#include <limits>

#include "tests/ui/drawn_labels.h"
#include "tests/ui/fixture.h"
#include "tests/ui/print_page.h"
#include "ui/plots/likelihood_scene.h"
#include "ui/plots/plot_export.h"
#include "ui/plots/plot_theme.h"
#include "ui/plots/plot_widget.h"

namespace strokewright::ui {
namespace {

PlotScene smallScene() {
  PlotScene scene;
  scene.panels = {{.x = {.title = QStringLiteral("angle, °"), .from = 0.0, .to = 360.0},
                   .y = {.title = QStringLiteral("travel, mm"), .from = 0.0, .to = 60.0}}};
  scene.curves = {{.label = QStringLiteral("donor"),
                   .ink = Ink::Blue,
                   .line = Qt::DashLine,
                   .x = {0.0, 180.0, 360.0},
                   .y = {0.0, 58.25, 0.0}}};
  scene.table = [](const PlotScene& it) {
    return PlotTable{
        {{.heading = QStringLiteral("angle, °"), .numbers = it.curves[0].x, .decimals = 1},
         {.heading = QStringLiteral("travel; mm"), .numbers = it.curves[0].y}}};
  };
  return scene;
}

QPalette palette(const QColor& paper, const QColor& text, const QColor& link) {
  QPalette palette;
  palette.setColor(QPalette::Window, paper);
  palette.setColor(QPalette::WindowText, text);
  palette.setColor(QPalette::Link, link);
  return palette;
}
const QPalette kLight = palette(QColor(0xef, 0xef, 0xef), Qt::black, QColor(0x0b, 0x5c, 0xa8));
const QPalette kDark =
    palette(QColor(0x1d, 0x1f, 0x21), QColor(0xe8, 0xe8, 0xe4), QColor(0x6f, 0xb7, 0xf2));

class Plot : public FreshSettings {
 protected:
  Plot() {
    plot_.resize(800, 500);
    plot_.setScene(smallScene());
    plot_.show();
  }
  void roll(QPoint pixels, QPoint angle, Qt::ScrollPhase phase) {
    const QPointF at = plot_.toWidget(0, {90.0, 30.0});
    QWheelEvent event(at, plot_.mapToGlobal(at), pixels, angle, Qt::NoButton, {}, phase, false);
    QCoreApplication::sendEvent(&plot_, &event);
  }

  PlotWidget plot_;
  QTemporaryDir folder_;
};

TEST(PlotTheme, EveryInkStandsOutFromLightAndDarkPaper) {
  for (const QPalette& colours : {kLight, kDark}) {
    const PlotTheme theme = plotTheme(colours, QFont());
    EXPECT_GE(contrast(theme.text, theme.paper), 4.5);
    for (const Ink ink : {Ink::Faint, Ink::Accent, Ink::Blue, Ink::Green, Ink::Vermilion}) {
      EXPECT_GE(contrast(theme[ink], theme.paper), 3.0) << static_cast<int>(ink);
    }
  }
  EXPECT_NEAR(contrast(Qt::black, Qt::white), 21.0, 1e-9);  // WCAG 2.1, definition
}

TEST_F(Plot, TurnsDarkWithThePalette) {
  plot_.setPalette(kLight);
  EXPECT_GT(plot_.grab().toImage().pixelColor(3, 3).lightness(), 200);
  plot_.setPalette(kDark);
  EXPECT_LT(plot_.grab().toImage().pixelColor(3, 3).lightness(), 60);
}

TEST_F(Plot, IsReachedByTab) { EXPECT_EQ(plot_.focusPolicy(), Qt::StrongFocus); }

TEST_F(Plot, TheWheelZoomsAtThePointer) {
  const QPointF under = plot_.toWidget(0, {90.0, 30.0});
  roll({}, {0, 120}, Qt::NoScrollPhase);
  EXPECT_LT(plot_.visibleX().to - plot_.visibleX().from, 360.0);
  EXPECT_NEAR(plot_.toWidget(0, {90.0, 30.0}).x(), under.x(), 1e-6);
  EXPECT_NEAR(plot_.toWidget(0, {90.0, 30.0}).y(), under.y(), 1e-6);
}

TEST_F(Plot, ATouchPadMovesIt) {
  const QPointF before = plot_.toWidget(0, {90.0, 30.0});
  roll({12, -7}, {}, Qt::ScrollUpdate);
  EXPECT_NEAR(plot_.toWidget(0, {90.0, 30.0}).x(), before.x() + 12.0, 1e-6);
  EXPECT_NEAR(plot_.toWidget(0, {90.0, 30.0}).y(), before.y() - 7.0, 1e-6);
}

TEST_F(Plot, PlusZoomsInAndHomeShowsAllAgain) {
  QTest::keyClick(&plot_, Qt::Key_Plus);
  EXPECT_LT(plot_.visibleX().to, 360.0);
  QTest::keyClick(&plot_, Qt::Key_Home);
  EXPECT_EQ(plot_.visibleX(), (PlotRange{0.0, 360.0}));
  EXPECT_EQ(plot_.visibleY(0), (PlotRange{0.0, 60.0}));
}

TEST_F(Plot, AnotherSceneKeepsWhatThePersonZoomedTo) {
  QTest::keyClick(&plot_, Qt::Key_Plus);
  const PlotRange seen = plot_.visibleX();
  plot_.setScene(smallScene());
  EXPECT_EQ(plot_.visibleX(), seen);
  PlotScene inches = smallScene();
  inches.panels[0].y.title = QStringLiteral("travel, in");
  plot_.setScene(inches);
  EXPECT_EQ(plot_.visibleX(), (PlotRange{0.0, 360.0}));
}

TEST_F(Plot, ASceneWithoutPanelsCanBeShownAndMovedIn) {
  plot_.setScene({});
  for (const Qt::Key key : {Qt::Key_Plus, Qt::Key_Home, Qt::Key_Left, Qt::Key_Escape}) {
    QTest::keyClick(&plot_, key);
  }
  QTest::mouseClick(&plot_, Qt::LeftButton);
  EXPECT_FALSE(plot_.grab().isNull());
}

TEST_F(Plot, CopiesPictureAndNumbers) {
  QTest::keyClick(&plot_, Qt::Key_C, Qt::ControlModifier);
  const QMimeData* const data = QGuiApplication::clipboard()->mimeData();
  EXPECT_TRUE(data->hasImage());
  EXPECT_EQ(data->text(),
            QStringLiteral("angle, °\ttravel; mm\n0.0\t0.0000\n180.0\t58.2500\n360.0\t0.0000\n"));
  EXPECT_TRUE(data->hasFormat(QStringLiteral("image/svg+xml")));
}

TEST_F(Plot, SavesNumbersWithTheMarkThatTellsUtf8) {
  PlotScene scene = smallScene();
  scene.style.decimalMark = ",";
  scene.curves[0].y[0] = -12345.25;
  scene.curves[0].y[2] = std::numeric_limits<double>::quiet_NaN();
  const QString path = folder_.filePath(QStringLiteral("plot.csv"));
  EXPECT_EQ(savePlot(scene, {600, 400}, path), QString());
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const QByteArray content = file.readAll();
  EXPECT_EQ(content.toStdString(),
            "\xEF\xBB\xBF"
            "angle, °;\"travel; mm\"\r\n0,0;-12345,2500\r\n180,0;58,2500\r\n360,0;\r\n");
}

TEST_F(Plot, APdfHasItsFontsAndNoImages) {
  const QString path = folder_.filePath(QStringLiteral("plot.pdf"));
  EXPECT_EQ(savePlot(smallScene(), {600, 400}, path), QString());
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const QByteArray content = file.readAll();
  EXPECT_TRUE(content.contains("/FontFile2"));
  EXPECT_FALSE(content.contains("/Subtype /Image"));
  EXPECT_FALSE(content.contains("/Subtype/Image"));
}

TEST_F(Plot, AnSvgIsWellFormedAndKeepsItsText) {
  const QString path = folder_.filePath(QStringLiteral("plot.svg"));
  EXPECT_EQ(savePlot(smallScene(), {600, 400}, path), QString());
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const QByteArray content = file.readAll();
  QXmlStreamReader xml(content);
  while (!xml.atEnd()) xml.readNext();
  EXPECT_FALSE(xml.hasError()) << xml.errorString().toStdString();
  EXPECT_TRUE(content.contains("travel, mm"));
}

/// The texts of a picture of this scene.
QByteArray pictureOf(const PlotScene& scene, const QTemporaryDir& folder) {
  const QString path = folder.filePath(QStringLiteral("labels.svg"));
  EXPECT_EQ(savePlot(scene, {600, 400}, path), QString());
  QFile file(path);
  EXPECT_TRUE(file.open(QIODevice::ReadOnly));
  return file.readAll();
}

TEST_F(Plot, ALabelThatKeepsClearGoesWhereNoCurveIsOrStaysAway) {
  PlotScene scene = smallScene();
  PlotCurve& curve = scene.curves.front();
  curve.x.clear();
  curve.y.clear();
  const auto fill = [&curve](double most) {  // up and down through all of the panel's width
    for (int x = 0; x <= 360; x += 2) {
      curve.x.push_back(x);
      curve.y.push_back(x % 4 == 0 ? 0.0 : most);
    }
  };
  fill(30.0);
  scene.marks = {{.at = {180.0, 10.0}, .label = QStringLiteral("the peak"), .keepsClear = true}};
  EXPECT_TRUE(pictureOf(scene, folder_).contains("the peak")) << "in the upper half";
  fill(60.0);
  EXPECT_FALSE(pictureOf(scene, folder_).contains("the peak"));
  scene.marks.front().keepsClear = false;
  EXPECT_TRUE(pictureOf(scene, folder_).contains("the peak"));
}

double distance(const QRectF& box, QPointF at) {
  return std::hypot(std::max({box.left() - at.x(), 0.0, at.x() - box.right()}),
                    std::max({box.top() - at.y(), 0.0, at.y() - box.bottom()}));
}

TEST_F(Plot, ALabelStandsAtItsOwnPointAndOffTheBars) {
  PlotScene scene = smallScene();
  scene.curves.front().x = {0.0, 360.0};
  for (const double slope : {-20.0, 0.0, 20.0}) {
    scene.curves.front().y = {30.0 - slope, 30.0 + slope};
    const auto onCurve = [&](double x) { return QPointF(x, 30.0 + slope * (x / 180.0 - 1.0)); };
    scene.marks = {
        {.at = onCurve(200.0), .plusMinus = {0.0, 12.0}, .label = QStringLiteral("0.81 mm")},
        {.at = onCurve(220.0),
         .plusMinus = {0.0, 12.0},
         .label = QStringLiteral("0.80 mm"),
         .shape = PlotMark::Shape::Ring}};
    for (const QSize size : {QSize(300, 200), QSize(500, 420), QSize(900, 500)}) {
      PlotCanvas canvas(nullptr);
      const std::vector<PlotLabel> labels = labelsOf(canvas, scene, size);
      for (std::size_t i = 0; i < scene.marks.size(); ++i) {
        const auto label = std::ranges::find(labels, scene.marks[i].label, &PlotLabel::words);
        ASSERT_NE(label, labels.end()) << i;
        const QPointF own = canvas.toWidget(0, scene.marks[i].at);
        const QPointF other = canvas.toWidget(0, scene.marks[1 - i].at);
        EXPECT_LT(distance(label->box, own), distance(label->box, other)) << slope << i;
        EXPECT_LT(distance(label->box, own), label->box.height()) << slope << i;
        for (const PlotMark& mark : scene.marks) {
          const double bar = canvas.toWidget(0, mark.at).x();
          EXPECT_FALSE(label->box.left() < bar && bar < label->box.right()) << slope << i;
        }
      }
    }
  }
}

TEST_F(Plot, BareWordsStandAtTheirEndInsideTheFrameOrNotAtAll) {
  PlotScene scene = smallScene();
  scene.curves.clear();
  for (const double end : {100.0, 200.0, 300.0, 350.0}) {
    scene.regions = {{.fill = PlotRegion::Fill::Solid, .least = {0.0, 20.0}, .most = {end, 40.0}}};
    scene.marks = {
        {.at = {end, 30.0}, .label = QStringLiteral("10 056 rpm"), .shape = PlotMark::Shape::None}};
    PlotCanvas canvas(nullptr);
    const std::vector<PlotLabel> labels = labelsOf(canvas, scene, {400, 200});
    EXPECT_EQ(labels.size(), end < 300.0 ? 1u : 0u) << end;
    for (const PlotLabel& label : labels) {
      EXPECT_NEAR(label.box.left(), canvas.toWidget(0, scene.marks[0].at).x(), 1.0);
      EXPECT_LE(label.box.right(), canvas.panelRect(0).right());
    }
  }
}

TEST_F(Plot, BareWordsMoveOffALineThatWouldRunThroughThem) {
  PlotScene scene = smallScene();
  scene.curves = {{.heavy = true, .x = {110.0, 110.0}, .y = {0.0, 60.0}}};
  scene.regions = {{.fill = PlotRegion::Fill::Solid, .least = {0.0, 20.0}, .most = {100.0, 40.0}}};
  scene.marks = {
      {.at = {100.0, 30.0}, .label = QStringLiteral("10 056 rpm"), .shape = PlotMark::Shape::None}};
  PlotCanvas canvas(nullptr);
  const std::vector<PlotLabel> labels = labelsOf(canvas, scene, {500, 200});
  ASSERT_EQ(labels.size(), 1u);
  EXPECT_GE(labels.front().box.left(), canvas.toWidget(0, {110.0, 30.0}).x() - 1.0);
}

TEST_F(Plot, ALabelIsLeftOutWithTheOneItComesAfter) {
  PlotScene scene = smallScene();
  scene.curves.clear();
  scene.marks = {{.at = {100.0, 40.0}, .shape = PlotMark::Shape::None},
                 {.at = {100.0, 20.0},
                  .label = QStringLiteral("10 645 rpm"),
                  .shape = PlotMark::Shape::None,
                  .after = 0}};
  PlotCanvas canvas(nullptr);
  EXPECT_EQ(labelsOf(canvas, scene, {500, 200}).size(), 0u);
  scene.marks.front().label = QStringLiteral("10 000 rpm");
  EXPECT_EQ(labelsOf(canvas, scene, {500, 200}).size(), 2u);
}

TEST_F(Plot, AnAreaTooSmallForItsWordsHasThemBesideIt) {
  PlotScene scene = smallScene();
  scene.curves.clear();
  scene.regions = {{.label = QStringLiteral("the crown meets the head"),
                    .least = {0.0, -60.0},
                    .most = {360.0, 4.0}}};
  for (const QSize size : {QSize(500, 200), QSize(200, 200)}) {
    PlotCanvas canvas(nullptr);
    const std::vector<PlotLabel> labels = labelsOf(canvas, scene, size);
    ASSERT_EQ(labels.size(), 1u) << size.width();
    EXPECT_LE(labels.front().box.bottom(), canvas.toWidget(0, {0.0, 4.0}).y());
    EXPECT_TRUE(canvas.panelRect(0).contains(labels.front().box));
  }
}

TEST_F(Plot, WithNothingToShowThereAreNoAxesAndNoStopForTheTabKey) {
  PlotScene scene = smallScene();
  scene.curves.clear();
  plot_.setScene(scene);
  EXPECT_TRUE(plot_.findChildren<QWidget*>().front()->isHidden());
  EXPECT_EQ(plot_.focusPolicy(), Qt::NoFocus);
  plot_.setScene(smallScene());
  EXPECT_FALSE(plot_.findChildren<QWidget*>().front()->isHidden());
}

TEST_F(Plot, FiguresOfAnAxisKeepApartHoweverLowItIs) {
  PlotScene scene = smallScene();
  scene.panels[0].y.from = 92.27;
  scene.panels[0].y.to = 92.53;
  scene.curves[0].y = {92.3, 92.4, 92.5};
  const QString path = folder_.filePath(QStringLiteral("low.pdf"));
  for (const int height : {100, 120, 160, 400}) {
    EXPECT_EQ(savePlot(scene, {600, height}, path), QString());
    std::vector<PrintedWord> figures = printedWords(path);
    std::erase_if(figures,
                  [](const PrintedWord& it) { return !it.text.startsWith(QStringLiteral("92")); });
    std::ranges::sort(figures, {}, [](const PrintedWord& it) { return it.box.top(); });
    ASSERT_GE(figures.size(), 2u) << height;
    for (std::size_t i = 1; i < figures.size(); ++i) {
      EXPECT_GE(figures[i].box.top() - figures[i - 1].box.top(), 0.8 * figures[i].box.height())
          << height;
    }
  }
}

TEST_F(Plot, APictureIsLightWhateverTheScreen) {
  plot_.setPalette(kDark);
  const QImage image = plotImage(plot_.scene(), {300, 200});
  EXPECT_EQ(image.size(), QSize(600, 400));
  EXPECT_GT(image.pixelColor(2, 2).lightness(), 240);
}

TEST_F(Plot, AnUnknownKindOfFileIsRefusedInWords) {
  EXPECT_FALSE(
      savePlot(smallScene(), {300, 200}, folder_.filePath(QStringLiteral("plot.xyz"))).isEmpty());
}

TEST_F(WithDocument, TheNumbersInAChartOfChancesAreThoseItsTitleNames) {
  for (const char* name : {"burdock-719", "culvert-1040", "tansy-270"}) {
    ASSERT_TRUE(document_.open(sample(QString::fromLatin1(name))));
    const CylinderShown which{document_.project().target(), 0};
    for (const PlotScene& chart :
         {gapScene(document_, which, {}), ratioScene(document_, which, {})}) {
      const QStringList words = chart.panels[0]
                                    .y.title.split(QStringLiteral(" from "))
                                    .back()
                                    .split(QStringLiteral(" to "));
      ASSERT_EQ(words.size(), 2) << name;
      PlotCanvas canvas(nullptr);
      const std::vector<PlotLabel> labels = labelsOf(canvas, chart, {310, 150});
      for (const PlotMark& mark : chart.marks) {
        if (mark.label.isEmpty()) continue;
        EXPECT_NE(std::ranges::find(labels, mark.label, &PlotLabel::words), labels.end())
            << name << mark.label.toStdString();
      }
      for (const QString& word : words) {
        EXPECT_NE(std::ranges::find(chart.marks, word, &PlotMark::label), chart.marks.end());
      }
    }
  }
}

}  // namespace
}  // namespace strokewright::ui
