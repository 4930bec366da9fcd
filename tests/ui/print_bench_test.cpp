#include <gtest/gtest.h>

#include <QComboBox>
#include <QFile>
#include <QPrinter>
#include <QPushButton>
#include <QTemporaryDir>
#include <algorithm>
#include <cmath>
#include <ostream>
#include <string>
#include <vector>

#include "core/describe/tabulated.h"
#include "core/firing/results.h"
#include "core/model/entry_text.h"
#include "core/model/lists.h"
#include "core/plate/outline.h"
#include "core/storage/project_text.h"
#include "tests/ui/fixture.h"
#include "tests/ui/print_page.h"
#include "ui/print/page_frame.h"
#include "ui/print/sheet_preview.h"
#include "ui/print/sheet_printer.h"
#include "ui/widgets/result_label.h"

namespace strokewright::ui {
namespace {

using sheet::SheetKind;

constexpr double kPointsPerMillimetre = 72.0 / 25.4;

describe::Entry typed(const describe::Input& input, const char* text) {
  return model::entryFrom(input, text, units::UnitGroup::metric());
}

/// A sample with its plate entered: small enough for A4 where it has one cylinder.
model::Project withPlate(const char* name) {
  QFile file(QStringLiteral(STROKEWRIGHT_SOURCE_DIR "/samples/") + QLatin1StringView(name) +
             QStringLiteral(".strokewright"));
  EXPECT_TRUE(file.open(QIODevice::ReadOnly));
  model::Project project = storage::read(file.readAll().toStdString()).project.value();
  model::Engine& engine = project.engines[static_cast<std::size_t>(project.target())];
  engine.set(in::cylinderPitch, typed(in::cylinderPitch, "84"));
  engine.set(in::plateBore, typed(in::plateBore, "72"));
  const bool triple = std::string_view(name) == "burdock-719";
  engine.set(in::plateLength, typed(in::plateLength, triple ? "280" : "112"));
  engine.set(in::plateWidth, typed(in::plateWidth, "110"));
  if (const describe::Entry& spacer = engine[in::spacer]; spacer.values.front() <= 0.0) {
    engine.set(in::spacer, typed(in::spacer, "1.35"));
  }
  engine.lists.clear();
  for (const char* across : {"-45", "45"}) {
    describe::Entries& hole = engine.lists[&model::list::plateHoles].emplace_back();
    hole[&model::list::holeAlong] = typed(model::list::holeAlong, "-42");
    hole[&model::list::holeAcross] = typed(model::list::holeAcross, across);
    hole[&model::list::holeDiameter] = typed(model::list::holeDiameter, "9");
  }
  return project;
}

/// A V of twelve that fires unevenly, with nothing else entered that differs.
model::Project veeTwelve() {
  model::Project project = withPlate("culvert-1040");
  model::Engine& engine = project.engines[static_cast<std::size_t>(project.target())];
  engine.set(in::cylinderCount, typed(in::cylinderCount, "12"));
  engine.set(in::throwAhead, typed(in::throwAhead,
                                   "0; 240; 120; 120; 240; 0; -22.5; 217.5; 97.5; 97.5; 217.5; "
                                   "-22.5"));
  engine.set(in::cylinderAxis, typed(in::cylinderAxis, "0; 0; 0; 0; 0; 0; 65; 65; 65; 65; 65; 65"));
  engine.set(in::firingOrder, {});
  return project;
}

/// Twelve unlike cylinders, each with everything entered in several readings.
model::Project twelve() {
  model::Project project;
  model::Engine& engine = project.engines.emplace_back();
  engine.name = std::string(200, 'W');
  project.name = engine.name;
  const auto each = [&](const describe::Input& input, double first, double step) {
    QStringList texts;
    for (int i = 0; i < 12; ++i) texts.append(QString::number(first + i * step, 'f', 3));
    engine.set(input, typed(input, texts.join(QStringLiteral("; ")).toUtf8().constData()));
  };
  engine.set(in::cylinderCount, typed(in::cylinderCount, "12"));
  engine.set(in::cycle, typed(in::cycle, "two-stroke"));
  each(in::bore, 76.0, 0.013);
  each(in::crankThrow, 33.0, 0.01);
  each(in::rodLength, 118.0, 0.07);
  each(in::compressionHeight, 29.9, 0.031);
  each(in::seatHeight, 98.0, 0.3);
  each(in::barrelHeight, 80.0, 0.17);
  each(in::baseGasket, 0.2, 0.07);
  each(in::headGasket, 0.6, 0.11);
  each(in::measuredDeckClearance, -0.2, 0.05);
  each(in::chamberVolume, 20.5, 3.1);
  each(in::crownFill, 44.5, 1.1);
  each(in::wholeVolume, 30.5, 1.1);
  each(in::crankcaseVolume, 400.0, 5.0);
  engine.set(in::headGasketBore, typed(in::headGasketBore, "77"));
  engine.set(in::wantedSquish, typed(in::wantedSquish, "0.9"));
  engine.set(in::cylinderPitch, typed(in::cylinderPitch, "84"));
  return project;
}

struct BenchRow {
  const char* name;  ///< of a sample; "twelve"; "vee-twelve"
  SheetKind kind;
  QPageSize::PageSizeId paper;
  const char* decimalMark;
  bool inches;
  friend void PrintTo(const BenchRow& row, std::ostream* out) {
    *out << row.name << ' ' << nameOf(row.kind) << ' ' << row.decimalMark;
  }
};

std::vector<BenchRow> everySheet() {
  std::vector<BenchRow> rows;
  for (const char* name :
       {"burdock-719", "culvert-1040", "tansy-270", "teasel-125", "twelve", "vee-twelve"}) {
    for (const sheet::SheetName& sheet : sheet::sheetNames()) {
      if (sheet.kind == SheetKind::Spec) continue;
      if (name == std::string_view("vee-twelve") && sheet.kind != SheetKind::Throws) continue;
      if (name == std::string_view("twelve") && sheet.kind == SheetKind::Plate) continue;  // none
      rows.push_back({name, sheet.kind, QPageSize::A4, ".", false});
      rows.push_back({name, sheet.kind, QPageSize::Letter, ",", true});
    }
  }
  return rows;
}

class BenchSheetOnPaper : public testing::TestWithParam<BenchRow> {
 protected:
  void SetUp() override {
    units::Style style;
    style.decimalMark = GetParam().decimalMark;
    if (GetParam().inches) style.group = units::UnitGroup::inchPound();
    const std::string_view name = GetParam().name;
    const model::Project project = name == "twelve"       ? twelve()
                                   : name == "vee-twelve" ? veeTwelve()
                                                          : withPlate(GetParam().name);
    const assess::Assessment assessment(project);
    const SheetOrder order{.kind = GetParam().kind};
    QString error;
    ASSERT_TRUE(writeSheetPdf(assessment, style, order, GetParam().paper, pdf_, &error))
        << error.toStdString();
    paper_ =
        sheetPaper(assessment, style, order, GetParam().paper).fullRect(QPageLayout::Point).size();
    words_ = printedWords(pdf_);
    ASSERT_GT(words_.size(), 40u);
  }

  QTemporaryDir folder_;
  QString pdf_ = folder_.filePath(QStringLiteral("bench sheet.pdf"));
  QSizeF paper_;  ///< [pt]
  std::vector<PrintedWord> words_;
};

TEST_P(BenchSheetOnPaper, IsOnePage) {
  const QString info = ran(QStringLiteral("pdfinfo"), {pdf_});
  EXPECT_TRUE(info.contains(QRegularExpression(QStringLiteral("Pages: +1\n"))))
      << info.toStdString();
}

TEST_P(BenchSheetOnPaper, HasNoWordOutsideTheFrame) {
  const double margin = kMargin * kPointsPerMillimetre;
  const QRectF frame(QPointF(kFilingMargin * kPointsPerMillimetre, margin),
                     QPointF(paper_.width() - margin, paper_.height() - margin));
  for (const PrintedWord& word : words_) {
    EXPECT_TRUE(frame.contains(word.box))
        << word.text.toStdString() << " at " << word.box.left() << ", " << word.box.top();
  }
}

TEST_P(BenchSheetOnPaper, WritesNoWordOverAnother) {
  for (std::size_t i = 0; i < words_.size(); ++i) {
    for (std::size_t j = i + 1; j < words_.size(); ++j) {
      const QRectF both = words_[i].box & words_[j].box;
      EXPECT_FALSE(both.width() > 1.0 && both.height() > 2.5)
          << words_[i].text.toStdString() << " over " << words_[j].text.toStdString() << " at "
          << both.left() << ", " << both.top();
    }
  }
}

TEST_P(BenchSheetOnPaper, KeepsToTheReadersDecimalMark) {
  if (std::string_view(GetParam().decimalMark) != ",") return;
  static const QRegularExpression point(QStringLiteral("^−?\\d+\\.\\d"));
  for (const PrintedWord& word : words_) {
    EXPECT_FALSE(word.text.contains(point)) << word.text.toStdString();
  }
}

INSTANTIATE_TEST_SUITE_P(Sheets, BenchSheetOnPaper, testing::ValuesIn(everySheet()),
                         [](const auto& row) {
                           std::string name = row.param.name;
                           std::erase(name, '-');
                           for (const sheet::SheetName& it : sheet::sheetNames()) {
                             if (it.kind == row.param.kind) name += std::string("_") += it.key;
                           }
                           return name + (row.param.paper == QPageSize::A4 ? "_A4" : "_Letter");
                         });

/// Some row of the page has a dark line of this length.
bool hasRun(const QImage& page, double millimetres) {
  const QImage grey = page.convertToFormat(QImage::Format_Grayscale8);
  const int wanted = static_cast<int>(std::lround(10.0 * millimetres));
  for (int y = 0; y < grey.height(); ++y) {
    const uchar* line = grey.constScanLine(y);
    int run = 0;
    for (int x = 0; x < grey.width(); ++x) {
      if (line[x] < 130) {
        ++run;
        continue;
      }
      if (std::abs(run - wanted) <= 3) return true;
      run = 0;
    }
  }
  return false;
}

class ThrowsOnPaper : public WithDocument {
 protected:
  QString printed() {
    const QString pdf = inFolder(QStringLiteral("throws.pdf"));
    EXPECT_TRUE(writeSheetPdf(document_.assessment(), taste_.style(), {.kind = SheetKind::Throws},
                              QPageSize::A4, pdf, nullptr));
    return printedText(pdf).simplified();
  }
};

// As the window words it and as the program prints it as JSON: one evaluation, three edges.
TEST_F(ThrowsOnPaper, SaysOfEachTopWhatTheWindowSays) {
  ASSERT_TRUE(document_.open(sample(QStringLiteral("burdock-719"))));
  const QString text = printed();
  for (int i = 0; i < 3; ++i) {
    const ResultLabel top(document_, kTarget, out::topAfterFirst, i);
    const QString shown = top.shownText().remove(QChar(u'°'));
    EXPECT_TRUE(text.contains(shown)) << shown.toStdString() << " in " << text.toStdString();
  }
}

TEST_F(ThrowsOnPaper, DrawsTheCrankOrSaysWhatIsMissing) {
  ASSERT_TRUE(document_.open(sample(QStringLiteral("burdock-719"))));
  EXPECT_TRUE(
      printed().contains(QStringLiteral("Cylinder 1 at its top dead centre, at an angle "
                                        "(isometric), seen from the free end, turns clockwise.")));
  document_.type(kTarget, in::rodLength, QStringLiteral("20"));
  EXPECT_TRUE(printed().contains(QStringLiteral("No drawing.")));
  document_.type(kTarget, in::rodLength, QStringLiteral("118"));
  document_.type(kTarget, in::throwAhead, {});
  EXPECT_TRUE(printed().contains(QStringLiteral("Not entered yet: throw angle ahead")));
}

TEST_F(ThrowsOnPaper, LeavesRoomToSpareToWhatIsSaidAgainstIt) {
  document_.startNew();
  document_.type(kTarget, in::cylinderCount, QStringLiteral("3"));
  document_.type(kTarget, in::cycle, QStringLiteral("four-stroke"));
  document_.type(kTarget, in::throwAhead, QStringLiteral("0; 0; 0"));
  document_.type(kTarget, in::cylinderAxis, QStringLiteral("0; 120; 240"));
  const QString text = printed();
  EXPECT_TRUE(text.contains(QStringLiteral("3 rods stand on one throw")));
  EXPECT_TRUE(text.contains(QStringLiteral("measure how the followers stand")));
  EXPECT_FALSE(text.contains(QStringLiteral("On other sheets"))) << text.toStdString();
}

TEST_F(ThrowsOnPaper, NamesEachPistonOfAVeeByItself) {
  document_.startNew();
  document_.type(kTarget, in::cylinderCount, QStringLiteral("8"));
  document_.type(kTarget, in::cycle, QStringLiteral("four-stroke"));
  document_.type(kTarget, in::throwAhead, QStringLiteral("0; 0; 90; 90; 270; 270; 180; 180"));
  document_.type(kTarget, in::cylinderAxis, QStringLiteral("0; -90; 0; -90; 0; -90; 0; -90"));
  document_.type(kTarget, in::viewedFrom, QStringLiteral("free_end"));
  document_.type(kTarget, in::rotation, QStringLiteral("anticlockwise"));
  document_.type(kTarget, in::cylinderPosition,
                 QStringLiteral("0; 22; 112; 134; 224; 246; 336; 358"));
  const QString text = printed();
  for (const auto* merged : {"3, 8", "1, 6"}) {
    EXPECT_FALSE(text.contains(QLatin1StringView(merged))) << merged;
  }
}

class PlateOnPaper : public WithDocument {
 protected:
  QString file(const char* name) { return inFolder(QLatin1StringView(name)); }
  const SheetOrder order_{.kind = SheetKind::Plate};
};

TEST_F(PlateOnPaper, IsDrawnAtFullSizeBesideACheckBarOfAHundredMillimetres) {
  const model::Project project = withPlate("teasel-125");
  assess::Assessment assessment(project);
  ASSERT_TRUE(writeSheetPdf(assessment, {}, order_, QPageSize::A4, file("plate.pdf"), nullptr));
  const QImage page = printedPicture(file("plate.pdf"));
  EXPECT_TRUE(hasRun(page, 100.0));
  EXPECT_TRUE(hasRun(page, 112.0)) << "the dimension over its length";
  const QString text = printedText(file("plate.pdf"));
  const auto told = assessment.evaluation().tabulated(1, out::plateOutline);
  const plate::Outline outline = plate::outlineFrom(told.rows);
  for (const double length : {-outline.left(), -outline.lower()}) {
    EXPECT_TRUE(text.contains(fromCore(units::Style{}.number(units::Kind::Length, length))))
        << "from an edge to the axis of cylinder 1: " << length;
  }
  EXPECT_TRUE(text.contains(QStringLiteral("R 5.00"))) << text.toStdString();
}

TEST_F(PlateOnPaper, TakesLargerPaperWhereItNeedsIt) {
  const model::Project triple = withPlate("burdock-719");
  const assess::Assessment assessment(triple);
  const QPageLayout page = sheetPaper(assessment, {}, order_, QPageSize::A4);
  EXPECT_EQ(page.pageSize().id(), QPageSize::A3);
  EXPECT_EQ(page.orientation(), QPageLayout::Landscape);
  ASSERT_TRUE(writeSheetPdf(assessment, {}, order_, QPageSize::A4, file("plate.pdf"), nullptr));
  EXPECT_TRUE(printedText(file("plate.pdf")).contains(QStringLiteral("paper of A3, landscape")));
  const model::Project single = withPlate("teasel-125");
  EXPECT_EQ(sheetPaper(assess::Assessment(single), {}, order_, QPageSize::A4).pageSize().id(),
            QPageSize::A4);
  EXPECT_EQ(sheetPaper(assessment, {}, {}, QPageSize::A4).pageSize().id(), QPageSize::A4);
}

TEST_F(PlateOnPaper, SaysWhichOtherPaperItTookAndWhy) {
  const model::Project triple = withPlate("burdock-719");
  const assess::Assessment assessment(triple);
  const auto said = [&](const SheetOrder& order, QPageSize::PageSizeId paper, const char* path) {
    return otherPaper(assessment, {}, order, paper, QLatin1StringView(path)).toStdString();
  };
  EXPECT_EQ(said(order_, QPageSize::A4, "plate.pdf"),
            "plate.pdf is on paper of A3, landscape: at full size the plate finds no room on A4 "
            "upright.");
  EXPECT_EQ(said(order_, QPageSize::A4, "plate.dxf"), "");
  EXPECT_EQ(said({}, QPageSize::A4, "spec.pdf"), "");
  const model::Project single = withPlate("teasel-125");
  EXPECT_EQ(otherPaper(assess::Assessment(single), {}, order_, QPageSize::A4, {}), QString());
}

TEST_F(PlateOnPaper, LiesOnTheSmallestPaperWithItsWordsBesideIt) {
  model::Project twin = withPlate("tansy-270");
  model::Engine& engine = twin.engines[static_cast<std::size_t>(twin.target())];
  engine.set(in::plateLength, typed(in::plateLength, "190"));
  const assess::Assessment assessment(twin);
  const QPageLayout page = sheetPaper(assessment, {}, order_, QPageSize::A4);
  EXPECT_EQ(page.pageSize().id(), QPageSize::A4);
  EXPECT_EQ(page.orientation(), QPageLayout::Landscape);
  ASSERT_TRUE(writeSheetPdf(assessment, {}, order_, QPageSize::A4, file("plate.pdf"), nullptr));
  EXPECT_TRUE(printedText(file("plate.pdf")).contains(QStringLiteral("bore 2")));
  EXPECT_TRUE(hasRun(printedPicture(file("plate.pdf")), 190.0)) << "at full size";
}

TEST_F(PlateOnPaper, IsNotPrintedOnPaperThatIsTooSmall) {
  const model::Project project = withPlate("burdock-719");
  const assess::Assessment assessment(project);
  QPrinter printer(QPrinter::HighResolution);
  printer.setOutputFormat(QPrinter::PdfFormat);
  printer.setOutputFileName(file("printed.pdf"));
  printer.setPageSize(QPageSize(QPageSize::A4));
  QString error;
  EXPECT_FALSE(printSheet(assessment, {}, order_, printer, &error));
  EXPECT_TRUE(error.contains(QStringLiteral("needs paper"))) << error.toStdString();
}

TEST_F(PlateOnPaper, IsADrawingInMillimetresAsSvg) {
  const model::Project project = withPlate("teasel-125");
  const assess::Assessment assessment(project);
  ASSERT_TRUE(writeSheetFile(assessment, {}, order_, QPageSize::A4, file("plate.svg"), nullptr));
  QFile svg(file("plate.svg"));
  ASSERT_TRUE(svg.open(QIODevice::ReadOnly));
  const QString text = QString::fromUtf8(svg.readAll());
  EXPECT_TRUE(text.contains(QStringLiteral("width=\"210mm\" height=\"297mm\"")));
  EXPECT_TRUE(text.contains(QStringLiteral("viewBox=\"0 0 21000 29700\"")));
  EXPECT_TRUE(text.contains(QStringLiteral("matrix(0,-1,1,0,"))) << "numbers read from the right";
  EXPECT_FALSE(text.contains(QStringLiteral("matrix(0,1,-1,0,")));
}

// Read back by a program that knows nothing of this one.
TEST_F(PlateOnPaper, IsADrawingInMillimetresAsDxf) {
  const model::Project project = withPlate("burdock-719");
  const assess::Assessment assessment(project);
  ASSERT_TRUE(writeSheetFile(assessment, {}, order_, QPageSize::A4, file("plate.dxf"), nullptr));
  const QString told =
      ran(QStringLiteral("/usr/bin/python3"), {QStringLiteral("-c"), QStringLiteral(R"(
import sys, ezdxf
document = ezdxf.readfile(sys.argv[1])
circles = [(round(c.dxf.center.x, 6), round(c.dxf.center.y, 6), round(2 * c.dxf.radius, 6))
           for c in document.modelspace().query('CIRCLE')]
arcs = document.modelspace().query('ARC')
texts = {t.dxf.text for t in document.modelspace().query('TEXT')}
print(len(document.audit().errors), document.units, len(arcs), circles,
      {'1 bore 1', '4', '5', 'thrust side'} <= texts)
)"),
                                               file("plate.dxf")});
  EXPECT_EQ(told.trimmed(),
            QStringLiteral("0 4 4 [(0.0, 0.0, 72.0), (84.0, 0.0, 72.0), (168.0, 0.0, 72.0), "
                           "(-42.0, -45.0, 9.0), (-42.0, 45.0, 9.0)] True"));
}

TEST_F(PlateOnPaper, IsInMillimetresInItsDrawingsWhateverTheReaderLikes) {
  const model::Project project = withPlate("teasel-125");
  const assess::Assessment assessment(project);
  units::Style inches{.decimalMark = ","};
  inches.group = units::UnitGroup::inchPound();
  for (const char* name : {"plate.svg", "plate.dxf"}) {
    ASSERT_TRUE(writeSheetFile(assessment, inches, order_, QPageSize::Letter, file(name), nullptr));
    QFile drawing(file(name));
    ASSERT_TRUE(drawing.open(QIODevice::ReadOnly));
    const QString text = QString::fromUtf8(drawing.readAll());
    EXPECT_TRUE(text.contains(QStringLiteral("Thickness 1"))) << name;
    EXPECT_FALSE(text.contains(QStringLiteral("thou"))) << name;
  }
}

TEST_F(PlateOnPaper, ThatMustNotBeCutSaysSoInItsDrawingsToo) {
  model::Project project = withPlate("teasel-125");
  model::Engine& engine = project.engines[static_cast<std::size_t>(project.target())];
  engine.set(in::plateBore, typed(in::plateBore, "40"));
  const assess::Assessment assessment(project);
  EXPECT_TRUE(whatForbids(assessment, {}, order_).startsWith(QStringLiteral("A plate bore of")));
  for (const char* name : {"plate.svg", "plate.dxf"}) {
    ASSERT_TRUE(writeSheetFile(assessment, {}, order_, QPageSize::A4, file(name), nullptr));
    QFile drawing(file(name));
    ASSERT_TRUE(drawing.open(QIODevice::ReadOnly));
    EXPECT_TRUE(drawing.readAll().contains("NOT TO BE CUT: A plate bore of 40")) << name;
  }
}

TEST_F(PlateOnPaper, ThatCannotBeDrawnIsNoFile) {
  ASSERT_TRUE(document_.open(sample(QStringLiteral("culvert-1040"))));
  QString error;
  for (const auto& [spacer, why] :
       {std::pair{"0", "No plate is to be made"}, {"0.5", "bore of the spacer plate"}}) {
    document_.type(kTarget, in::spacer, QString::fromLatin1(spacer));
    for (const char* name : {"plate.dxf", "plate.svg", "plate.pdf"}) {
      EXPECT_FALSE(
          writeSheetFile(document_.assessment(), {}, order_, QPageSize::A4, file(name), &error));
      EXPECT_TRUE(error.contains(QLatin1StringView(why))) << error.toStdString();
      EXPECT_FALSE(QFile::exists(file(name)));
    }
  }
}

TEST_F(PlateOnPaper, ChoosesAmongSheetsInThePreview) {
  ASSERT_TRUE(document_.open(sample(QStringLiteral("burdock-719"))));
  SheetPreview preview(document_, taste_);
  preview.resize(500, 700);
  QComboBox* kind = nullptr;
  for (QComboBox* box : preview.findChildren<QComboBox*>()) {
    if (box->accessibleName() == QStringLiteral("Sheet")) kind = box;
  }
  ASSERT_NE(kind, nullptr);
  ASSERT_EQ(kind->count(), static_cast<int>(sheet::sheetNames().size()));
  QImage before = preview.grab().toImage();
  for (int i = 1; i < kind->count(); ++i) {
    kind->setCurrentIndex(i);
    const QImage now = preview.grab().toImage();
    EXPECT_NE(now, before) << kind->currentText().toStdString();
    before = now;
  }
  kind->setCurrentIndex(kind->findData(static_cast<int>(SheetKind::Plate)));
  const auto buttons = preview.findChildren<QPushButton*>();
  EXPECT_TRUE(std::any_of(buttons.begin(), buttons.end(), [](const QPushButton* button) {
    return button->text().contains(QStringLiteral("DXF"));
  }));
}

}  // namespace
}  // namespace strokewright::ui
