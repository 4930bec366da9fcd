/// Spacer and plate: what is shown is what is put in, and is not objected to.

#include <QApplication>
#include <QImage>
#include <QPaintEngine>
#include <QPainter>
#include <QTest>
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "core/deck/results.h"
#include "core/plate/outline.h"
#include "core/plate/results.h"
#include "tests/ui/fixture.h"
#include "ui/document/taste.h"
#include "ui/drawings/plate_painter.h"
#include "ui/pages/desk.h"
#include "ui/pages/main_window.h"
#include "ui/pages/page.h"
#include "ui/pages/page_description.h"
#include "ui/widgets/table_view.h"

namespace strokewright::ui {
namespace {

using namespace Qt::StringLiterals;

/// The triple with seats whose spacers come out in thousandths.
class PlatePage : public WithDocument {
 protected:
  void SetUp() override {
    ASSERT_TRUE(document_.openCopy(sample(u"burdock-719"_s), u"burdock-719"_s));
    type(in::seatHeight, u"98.178; 98.202; 98.218"_s);
    type(in::spacer, {});
    type(in::platesInStack, u"one_for_all"_s);
    window_.resize(1366, 700);
    window_.show();
  }

  void type(const describe::Input& input, const QString& text) {
    document_.type(kTarget, input, text);
    document_.closeStep();
  }
  const Answer& shown(const PageDescription& page) {
    window_.showPage(page.key);
    QApplication::processEvents();
    return window_.page()->answer();
  }
  /// "0.97; 0.95; 0.93" as the page writes it.
  QString entered() const {
    return fromCore(document_.entry(kTarget, in::spacer).text)
        .section(u" ±"_s, 0, 0)
        .replace(u"; "_s, u" · "_s);
  }
  const describe::Finding* said(std::string_view rule) const {
    const auto findings = document_.assessment().findings(kTarget);
    const auto found = std::ranges::find(findings, rule, &describe::Finding::key);
    return found == findings.end() ? nullptr : &*found;
  }

  MainWindow window_{document_, taste_};
  Desk desk_{document_, taste_};
};

TEST_F(PlatePage, TheSpacerToMakeIsPutInAsItIsShown) {
  const PageDescription deck = deckPage();
  const Answer answer = shown(deck);
  EXPECT_TRUE(answer.further.contains(u"rounded to 0.01\u00A0mm"_s))
      << answer.further.toStdString();
  deck.deed.act(desk_);
  EXPECT_EQ(entered() + u"\u00A0mm"_s, answer.number);
  EXPECT_EQ(said("wanted_not_met"), nullptr);
}

TEST_F(PlatePage, EachKindIsPutInAsItIsShownAndNotObjectedTo) {
  const PageDescription page = platePage();
  const auto plates = [&] {
    return document_.evaluation().tabulated(kTarget, out::platesCompared);
  };
  const QString flat = shown(page).number;
  EXPECT_TRUE(shown(page).further.contains(u"rounded to 0.01\u00A0mm"_s));
  for (const int row : {0, 3, 6}) {
    const describe::Tabulated rows = plates();
    page.tables.front().take(desk_, rows, row);
    QStringList thicknesses;
    for (int i = row; i < row + 3; ++i) {
      thicknesses += taste_.number(units::Kind::FineLength, rows.rows["thickness_m"].numbers[i]);
    }
    if (row == 0) {
      thicknesses = {thicknesses.front()};
      EXPECT_EQ(thicknesses.front() + u"\u00A0mm"_s, flat);
    }
    EXPECT_EQ(entered(), thicknesses.join(u" · "_s));
    EXPECT_EQ(said("wanted_not_met"), nullptr) << row;
    EXPECT_EQ(said("one_flat_plate_serves") != nullptr, row > 0) << row;
  }
}

TEST_F(PlatePage, SpeaksOfTheWholePlateWhateverCylinderIsShown) {
  type(in::spacer, u"1.00; 0.95; 0.90"_s);
  const PageDescription page = platePage();
  const Answer all = page.answer(desk_);
  desk_.showCylinder(1);
  const Answer one = page.answer(desk_);
  EXPECT_EQ(one.number, u"1.00 · 0.95 · 0.90\u00A0mm"_s);
  EXPECT_EQ(one.further, all.further);
  EXPECT_TRUE(
      one.further.contains(u"at the cylinder axes; 1.03\u00A0mm at the end at cylinder 1"_s))
      << one.further.toStdString();
  EXPECT_TRUE(one.further.contains(u" to "_s)) << one.further.toStdString();
}

/// A plate on white paper.
class DrawnPlate {
 public:
  /// @param millimetre [px]
  DrawnPlate(const plate::Outline& outline, double millimetre, const units::Style& style)
      : outline_(outline), scale_(1000.0 * millimetre) {
    image_.fill(Qt::white);
    QPainter painter(&image_);
    Medium medium;
    medium.millimetre = millimetre;
    medium.narrow = 1.0 / millimetre;
    medium.points = 9.0;
    medium.ink = DrawingInk::onPaper();
    Drafting draft(painter, medium);
    paintPlate(draft, QRectF(image_.rect()).center(), outline, PlateLies::Level, style);
  }

  QPointF at(double along, double across) const {
    return QRectF(image_.rect()).center() +
           scale_ * QPointF(along - outline_.along, outline_.across - across);
  }

  bool isDark(QPointF at) const {
    const QRect about(QPoint(qRound(at.x()) - 1, qRound(at.y()) - 1), QSize(3, 3));
    for (int x = about.left(); x <= about.right(); ++x) {
      for (int y = about.top(); y <= about.bottom(); ++y) {
        if (qGray(image_.pixel(x, y)) < 128) return true;
      }
    }
    return false;
  }

 private:
  const plate::Outline& outline_;
  double scale_;  ///< [px] of a metre
  QImage image_{400, 260, QImage::Format_RGB32};
};

/// A number has paper of its own, which takes away what it lies over.
TEST_F(PlatePage, NumbersOfASmallDrawingLieOverNoHole) {
  type(in::platesInStack, u"one_for_each"_s);
  const plate::Outline outline =
      plate::outlineFrom(document_.evaluation().tabulated(kTarget, out::plateOutline).rows);
  ASSERT_GT(outline.holes.size(), 10u);
  for (const double millimetre : {0.8, 1.0, 1.2}) {  // [px]
    const DrawnPlate drawn(outline, millimetre, taste_.style());
    for (const plate::Hole& hole : outline.holes) {
      const double scale = 1000.0 * millimetre;
      const QPointF centre = drawn.at(hole.along, hole.across);
      for (double angle = 0.0; angle < 6.28; angle += 0.1) {
        const QPointF out(std::cos(angle), std::sin(angle));
        EXPECT_TRUE(drawn.isDark(centre + 0.5 * scale * hole.diameter * out))
            << hole.name << " at " << angle << ", " << millimetre << " px to the millimetre";
      }
    }
  }
}

TEST_F(PlatePage, DrawsNoOutlineForACylinderWithoutAPlate) {
  type(in::platesInStack, u"one_for_each"_s);
  type(in::spacer, u"1.03; 0; 0.86"_s);
  const plate::Outline outline =
      plate::outlineFrom(document_.evaluation().tabulated(kTarget, out::plateOutline).rows);
  ASSERT_EQ(outline.gaps.size(), 1u);
  const DrawnPlate drawn(outline, 1.2, taste_.style());
  const plate::Gap& gap = outline.gaps.front();
  const double quarter = outline.lower() / 2.0;  // clear of bores, studs and words
  EXPECT_TRUE(drawn.isDark(drawn.at(gap.from, quarter)));
  EXPECT_TRUE(drawn.isDark(drawn.at(gap.to, quarter)));
  for (double share = 0.2; share < 0.9; share += 0.1) {
    const double along = gap.from + share * (gap.to - gap.from);
    EXPECT_FALSE(drawn.isDark(drawn.at(along, outline.lower()))) << share;
    EXPECT_FALSE(drawn.isDark(drawn.at(along, outline.upper()))) << share;
    EXPECT_FALSE(drawn.isDark(drawn.at(along, quarter))) << share;
  }
}

/// Where texts and lines of a drawing are put.
class Places final : public QPaintEngine {
 public:
  struct Text {
    QString words;
    QRectF box;
  };

  Places() : QPaintEngine(AllFeatures) {}
  bool begin(QPaintDevice* /*device*/) override { return true; }
  bool end() override { return true; }
  Type type() const override { return User; }
  void updateState(const QPaintEngineState& /*state*/) override {}
  void drawPixmap(const QRectF& /*to*/, const QPixmap& /*map*/, const QRectF& /*of*/) override {}
  void drawTextItem(const QPointF& at, const QTextItem& item) override {
    const QRectF box = QFontMetricsF(item.font(), paintDevice()).tightBoundingRect(item.text());
    texts.push_back({item.text(), there().mapRect(box.translated(at))});
  }
  void drawLines(const QLineF* drawn, int count) override {
    for (int i = 0; i < count; ++i) lines.push_back(there().map(drawn[i]));
  }
  void drawPath(const QPainterPath& /*path*/) override {}
  void drawPolygon(const QPointF* /*corners*/, int /*count*/, PolygonDrawMode /*mode*/) override {}
  void drawRects(const QRectF* /*rects*/, int /*count*/) override {}
  void drawEllipse(const QRectF& circle) override { circles.push_back(there().mapRect(circle)); }

  std::vector<Text> texts;
  std::vector<QLineF> lines;
  std::vector<QRectF> circles;

 private:
  QTransform there() const { return painter()->combinedTransform(); }
};

class PlacesOnPaper final : public QPaintDevice {
 public:
  explicit PlacesOnPaper(QSize size) : size_(size) {}
  QPaintEngine* paintEngine() const override { return &places; }
  mutable Places places;

 protected:
  int metric(PaintDeviceMetric metric) const override {
    constexpr int kDots = 96;
    switch (metric) {
      case PdmWidth:
        return size_.width();
      case PdmHeight:
        return size_.height();
      case PdmDpiX:
      case PdmDpiY:
      case PdmPhysicalDpiX:
      case PdmPhysicalDpiY:
        return kDots;
      case PdmDevicePixelRatioScaled:
        return static_cast<int>(devicePixelRatioFScale());
      default:
        return 1;
    }
  }

 private:
  QSize size_;
};

TEST_F(PlatePage, NamesOfGapsAndDimensionsLieOverNothing) {
  type(in::platesInStack, u"one_for_each"_s);
  for (const auto& spacers : {u"0; 0.95; 0.86"_s, u"1.03; 0; 0.86"_s, u"1.03; 0.95; 0"_s,
                              u"0; 0; 0.86"_s, u"0; 0.95; 0"_s}) {
    for (const auto& length : {u"280"_s, u"264"_s}) {
      type(in::spacer, spacers);
      type(in::plateLength, length);
      const plate::Outline outline =
          plate::outlineFrom(document_.evaluation().tabulated(kTarget, out::plateOutline).rows);
      for (const double millimetre : {1.0, 1.2, 1.7, 2.6, 3.78}) {  // [px]
        for (const PlateLies lies : {PlateLies::Level, PlateLies::Upright}) {
          const QSizeF room = millimetre * plateRoom(outline, lies) + QSizeF(80.0, 80.0);
          PlacesOnPaper paper(room.toSize());
          QPainter painter(&paper);
          Medium medium;
          medium.millimetre = millimetre;
          medium.points = 8.0;
          Drafting draft(painter, medium);
          paintPlate(draft, QRectF({}, room).center(), outline, lies, taste_.style());
          painter.end();
          const std::vector<Places::Text>& texts = paper.places.texts;
          const std::string where = (spacers + u", length "_s + length).toStdString() + ", " +
                                    std::to_string(millimetre) + " px to the millimetre";
          for (std::size_t i = 0; i < texts.size(); ++i) {
            const auto& [words, box] = texts[i];
            for (std::size_t j = 0; j < i; ++j) {
              EXPECT_FALSE(box.intersects(texts[j].box))
                  << words.toStdString() << " over " << texts[j].words.toStdString() << ", "
                  << where;
            }
            const bool onPaperOfItsOwn = words.contains(u"bore"_s) || words.toInt() > 0;
            if (onPaperOfItsOwn) continue;
            for (const QLineF& line : paper.places.lines) {
              const QRectF about = QRectF(line.p1(), line.p2()).normalized();
              EXPECT_FALSE(box.intersects(about.adjusted(-0.2, -0.2, 0.2, 0.2)))
                  << words.toStdString() << " over a line, " << where;
            }
            for (const QRectF& circle : paper.places.circles) {
              EXPECT_FALSE(box.intersects(circle)) << words.toStdString() << ", " << where;
            }
          }
        }
      }
    }
  }
}

}  // namespace
}  // namespace strokewright::ui
