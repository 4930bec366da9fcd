#include <gtest/gtest.h>

#include <QComboBox>
#include <QFileInfo>
#include <QPrinter>
#include <QPushButton>
#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <ostream>
#include <vector>

#include "core/model/entry_text.h"
#include "core/storage/project_text.h"
#include "tests/ui/fixture.h"
#include "tests/ui/print_page.h"
#include "ui/print/page_frame.h"
#include "ui/print/sheet_preview.h"
#include "ui/print/sheet_printer.h"

namespace strokewright::ui {
namespace {

constexpr double kPointsPerMillimetre = 72.0 / 25.4;

void type(model::Engine& engine, const describe::Input& input, const QString& text) {
  engine.set(input, model::entryFrom(input, text.toStdString(), units::UnitGroup::metric()));
}

/// As much as a sheet can be asked to hold: twelve unlike cylinders, names without end, and next to
/// everything objected to.
model::Project crowded() {
  model::Project project;
  const std::string longName(200, 'W');
  project.name = longName;
  project.drawnFor = longName;
  project.revision = longName;
  for (const model::Part part : {model::Part::Donor, model::Part::Target, model::Part::Variant}) {
    model::Engine& engine = project.engines.emplace_back();
    engine.name = longName;
    engine.part = part;
    const auto each = [](double first, double step) {
      QStringList texts;
      for (int i = 0; i < 12; ++i) texts.append(QString::number(first + i * step, 'f', 3));
      return texts.join(QStringLiteral("; "));
    };
    type(engine, in::cylinderCount, QStringLiteral("12"));
    type(engine, in::cycle, QStringLiteral("four-stroke"));
    type(engine, in::use, QStringLiteral("race"));
    type(engine, in::bore, each(76.0, 0.013));
    type(engine, in::crankThrow, each(33.0, 0.01));
    type(engine, in::rodLength, each(84.0, 0.07));
    type(engine, in::compressionHeight, each(29.9, 0.031));
    type(engine, in::seatHeight, each(98.0, 0.3));
    type(engine, in::barrelHeight, each(50.0, 0.17));
    type(engine, in::baseGasket, each(0.2, 0.07));
    type(engine, in::headGasket, each(0.6, 0.11));
    type(engine, in::headGasketBore, QStringLiteral("70"));
    type(engine, in::chamberVolume, each(1.5, 3.1));
    type(engine, in::wantedSquish, QStringLiteral("0.035"));
    type(engine, in::spacer, each(0.05, 0.4));
    type(engine, in::pistonMass, QStringLiteral("0.2"));
    type(engine, in::ringWidth, QStringLiteral("3"));
    type(engine, in::skirtLength, QStringLiteral("60"));
    type(engine, in::counterweightRadius, QStringLiteral("90"));
    type(engine, in::gudgeonPinDiameter, QStringLiteral("30"));
    type(engine, in::smallEndBore, QStringLiteral("18"));
    type(engine, in::rodSmallEndMass, QStringLiteral("500"));
    type(engine, in::rodBigEndMass, QStringLiteral("105"));
    type(engine, in::wantedSpeed, QStringLiteral("85000"));
    type(engine, in::balanceFactor, QStringLiteral("0.5"));
    type(engine, in::classLimit, QStringLiteral("0.7"));
  }
  project.referenceDonor = 0;
  return project;
}

/// As many throws as there can be, with nothing alike.
model::Project twelveThrows() {
  model::Project project = crowded();
  for (model::Engine& engine : project.engines) {
    type(engine, in::throwAhead,
         engine.part == model::Part::Donor
             ? QStringLiteral("0; 0; 240; 240; 120; 120; 120; 120; 240; 240; 0; 0")
             : QStringLiteral("0; 3.5; 241; 244; 117; 121; 118; 123; 239; 242; 355; 7"));
    type(engine, in::cylinderAxis, QStringLiteral("0; 60; 0; 60; 0; 60; 0; 60; 0; 60; 0; 60"));
  }
  return project;
}

model::Project sampleProject(const QString& name) {
  QFile file(QStringLiteral(STROKEWRIGHT_SOURCE_DIR "/samples/") + name +
             QStringLiteral(".strokewright"));
  EXPECT_TRUE(file.open(QIODevice::ReadOnly));
  return storage::read(file.readAll().toStdString()).project.value();
}

struct PageRow {
  const char* name;  ///< of a sample; "crowded", "throws"
  QPageSize::PageSizeId paper;
  const char* size;  ///< as pdfinfo says it [pt]
  const char* decimalMark;
  bool inches;
  friend void PrintTo(const PageRow& row, std::ostream* out) {
    *out << row.name << ' ' << row.size << ' ' << row.decimalMark << (row.inches ? " inch" : "");
  }
};

class SheetOnPaper : public testing::TestWithParam<PageRow> {
 protected:
  void SetUp() override {
    units::Style style;
    style.decimalMark = GetParam().decimalMark;
    if (GetParam().inches) style.group = units::UnitGroup::inchPound();
    const QString name = QLatin1StringView(GetParam().name);
    const model::Project project = name == QStringLiteral("crowded")  ? crowded()
                                   : name == QStringLiteral("throws") ? twelveThrows()
                                                                      : sampleProject(name);
    const assess::Assessment assessment(project);
    QString error;
    ASSERT_TRUE(writeSheetPdf(assessment, style, {}, GetParam().paper, pdf_, &error))
        << error.toStdString();
    words_ = printedWords(pdf_);
    ASSERT_GT(words_.size(), 150u);
  }

  QTemporaryDir folder_;
  QString pdf_ = folder_.filePath(QStringLiteral("spec sheet.pdf"));
  std::vector<PrintedWord> words_;
};

TEST_P(SheetOnPaper, IsOnePageOfTheRightSize) {
  const QString info = ran(QStringLiteral("pdfinfo"), {pdf_});
  EXPECT_TRUE(info.contains(QRegularExpression(QStringLiteral("Pages: +1\n"))))
      << info.toStdString();
  EXPECT_TRUE(info.contains(QLatin1StringView(GetParam().size))) << info.toStdString();
}

TEST_P(SheetOnPaper, HasNoWordOutsideTheFrame) {
  const QSizeF paper = QPageSize(GetParam().paper).size(QPageSize::Point);
  const double margin = kMargin * kPointsPerMillimetre;
  const QRectF frame(QPointF(kFilingMargin * kPointsPerMillimetre, margin),
                     QPointF(paper.width() - margin, paper.height() - margin));
  for (const PrintedWord& word : words_) {
    EXPECT_TRUE(frame.contains(word.box))
        << word.text.toStdString() << " at " << word.box.left() << ", " << word.box.top();
  }
}

TEST_P(SheetOnPaper, HasNoTextBelowEightPoints) {
  for (const PrintedWord& word : words_) {
    // A line of this font is 1.16 times as high as its type.
    // Words that stand upright are as wide as a line is high; short ones never stand upright.
    const bool upright = word.text.size() > 3 && word.box.height() > 1.5 * word.box.width();
    EXPECT_GE(upright ? word.box.width() : word.box.height(), 9.2) << word.text.toStdString();
  }
}

TEST_P(SheetOnPaper, WritesNoWordOverAnother) {
  for (std::size_t i = 0; i < words_.size(); ++i) {
    for (std::size_t j = i + 1; j < words_.size(); ++j) {
      const QRectF both = words_[i].box & words_[j].box;
      EXPECT_FALSE(both.width() > 1.0 && both.height() > 2.5)
          << words_[i].text.toStdString() << " over " << words_[j].text.toStdString() << " at "
          << both.left() << ", " << both.top();
    }
  }
}

TEST_P(SheetOnPaper, HasItsFontsInIt) {
  const QString fonts = ran(QStringLiteral("pdffonts"), {pdf_});
  const QStringList lines = fonts.split(QLatin1Char('\n'), Qt::SkipEmptyParts).mid(2);
  ASSERT_FALSE(lines.isEmpty());
  for (const QString& line : lines) {
    EXPECT_TRUE(line.contains(QRegularExpression(QStringLiteral(" yes (yes|no) +(yes|no) "))))
        << line.toStdString();
  }
  EXPECT_TRUE(ran(QStringLiteral("pdfimages"), {QStringLiteral("-list"), pdf_})
                  .split(QLatin1Char('\n'), Qt::SkipEmptyParts)
                  .mid(2)
                  .isEmpty());
}

TEST_P(SheetOnPaper, IsReadInGrey) {
  const QImage page = printedPicture(pdf_);
  ASSERT_FALSE(page.isNull());
  EXPECT_TRUE(page.allGray());
}

TEST_P(SheetOnPaper, HasACheckBarOfAHundredMillimetres) {
  const QImage page = printedPicture(pdf_).convertToFormat(QImage::Format_Grayscale8);
  // The only run of dark pixels about this long that is no line of frame or table.
  bool found = false;
  for (int y = page.height() / 2; y < page.height() && !found; ++y) {
    const uchar* line = page.constScanLine(y);
    int run = 0;
    for (int x = 0; x < page.width(); ++x) {
      if (line[x] < 110) {
        ++run;
        continue;
      }
      found = found || std::abs(run - 1000) <= 3;
      run = 0;
    }
  }
  EXPECT_TRUE(found);
}

TEST_P(SheetOnPaper, KeepsToTheReadersDecimalMark) {
  if (QLatin1StringView(GetParam().decimalMark) != QLatin1StringView(",")) return;
  static const QRegularExpression point(QStringLiteral("\\d\\.\\d"));
  for (const PrintedWord& word : words_) {
    EXPECT_FALSE(word.text.contains(point)) << word.text.toStdString();
  }
}

INSTANTIATE_TEST_SUITE_P(
    Pages, SheetOnPaper,
    testing::Values(PageRow{"burdock-719", QPageSize::A4, "595 x 842", ".", false},
                    PageRow{"burdock-719", QPageSize::Letter, "612 x 792", ",", false},
                    PageRow{"culvert-1040", QPageSize::A4, "595 x 842", ",", false},
                    PageRow{"culvert-1040", QPageSize::Letter, "612 x 792", ".", false},
                    PageRow{"tansy-270", QPageSize::A4, "595 x 842", ".", true},
                    PageRow{"tansy-270", QPageSize::Letter, "612 x 792", ".", false},
                    PageRow{"teasel-125", QPageSize::A4, "595 x 842", ",", false},
                    PageRow{"teasel-125", QPageSize::Letter, "612 x 792", ".", true},
                    PageRow{"crowded", QPageSize::A4, "595 x 842", ".", false},
                    PageRow{"crowded", QPageSize::Letter, "612 x 792", ".", true},
                    PageRow{"throws", QPageSize::A4, "595 x 842", ".", false},
                    PageRow{"throws", QPageSize::Letter, "612 x 792", ".", true}),
    [](const auto& row) {
      std::string name = row.param.name;
      std::erase(name, '-');
      return name + (row.param.paper == QPageSize::A4 ? "A4" : "Letter");
    });

// ---- What is on it

class PrintedSheet : public WithDocument {
 protected:
  QString pdf_ = inFolder(QStringLiteral("sheet.pdf"));
};

TEST_F(PrintedSheet, SaysTheDecisiveNumbers) {
  ASSERT_TRUE(document_.open(sample(QStringLiteral("burdock-719"))));
  ASSERT_TRUE(
      writeSheetPdf(document_.assessment(), units::Style(), {}, QPageSize::A4, pdf_, nullptr));
  const QString text = printedText(pdf_).simplified();
  for (const char* words : {"Burdock 719", "from Burdock 636", "719.07", "11.20", "9142",
                            "ring flutter", "1.03 · 0.95 · 0.86", "Check bar 100.00 mm"}) {
    EXPECT_TRUE(text.contains(QString::fromUtf8(words))) << words;
  }
}

TEST_F(PrintedSheet, SaysTheScaleOfItsDrawingsAndWhereTheCrownStands) {
  for (const char* name : {"burdock-719", "culvert-1040", "tansy-270", "teasel-125"}) {
    ASSERT_TRUE(document_.open(sample(QLatin1StringView(name))));
    for (const auto paper : {QPageSize::A4, QPageSize::Letter}) {
      ASSERT_TRUE(writeSheetPdf(document_.assessment(), units::Style(), {}, paper, pdf_, nullptr));
      const QString text =
          ran(QStringLiteral("pdftotext"), {QStringLiteral("-raw"), pdf_, QStringLiteral("-")})
              .simplified();
      for (const char* words : {"Section at top dead centre, cylinder 1, 1 : [\\d.]+\\.",
                                "Stack of cylinder 1 at top dead centre, [\\d.]+ : 1",
                                "\\d\\.\\d\\d (below deck|proud)|flush"}) {
        EXPECT_TRUE(text.contains(QRegularExpression(QLatin1StringView(words))))
            << name << ": " << words << " in " << text.toStdString();
      }
    }
  }
}

/// [mm] From its heading to the foot of the numbers below it.
double heightOfMotionPlot(const QString& pdf) {
  const std::vector<PrintedWord> words = printedWords(pdf);
  const auto heading = std::ranges::find(words, QStringLiteral("Acceleration"), &PrintedWord::text);
  if (heading == words.end()) return 0.0;
  const auto lastAngle = std::ranges::find_if(words, [&](const PrintedWord& it) {
    return it.text == QStringLiteral("360°") && it.box.left() > heading->box.left();
  });
  if (lastAngle == words.end()) return 0.0;
  return (lastAngle->box.bottom() - heading->box.top()) / kPointsPerMillimetre;
}

TEST_F(PrintedSheet, OfEverySampleHasPlotsThatCanBeReadOrLeavesTheMapOutWithAWord) {
  for (const char* name : {"burdock-719", "culvert-1040", "tansy-270", "teasel-125"}) {
    ASSERT_TRUE(document_.open(sample(QLatin1StringView(name))));
    for (const auto paper : {QPageSize::A4, QPageSize::Letter}) {
      ASSERT_TRUE(writeSheetPdf(document_.assessment(), units::Style(), {}, paper, pdf_, nullptr));
      const QString text =
          ran(QStringLiteral("pdftotext"), {QStringLiteral("-raw"), pdf_, QStringLiteral("-")})
              .simplified();
      const bool map = text.contains(QStringLiteral("Stroke over bore"));
      const bool motion = text.contains(QStringLiteral("Acceleration downwards"));
      EXPECT_TRUE(map || paper != QPageSize::A4) << name;
      EXPECT_TRUE(motion || !map) << name;
      EXPECT_TRUE(!motion || heightOfMotionPlot(pdf_) > 27.0) << name << ' ' << paper;
      EXPECT_EQ(motion && !map, text.contains(QStringLiteral("for the map: see"))) << name;
      EXPECT_EQ(!motion, text.contains(QStringLiteral("for the plots: see"))) << name;
    }
  }
}

TEST_F(PrintedSheet, OfAVariantWithoutAColumnSaysHowMuchIsSaidOfIt) {
  ASSERT_TRUE(document_.open(sample(QStringLiteral("burdock-719"))));
  ASSERT_TRUE(
      writeSheetPdf(document_.assessment(), units::Style(), {}, QPageSize::Letter, pdf_, nullptr));
  const QString text = printedText(pdf_).simplified();
  EXPECT_TRUE(text.contains(QStringLiteral("also: short rod"))) << text.toStdString();
  EXPECT_TRUE(text.contains(QRegularExpression(QStringLiteral("On the sheet of short rod: \\d"))))
      << text.toStdString();
}

// Each number stands closer to the name it belongs to than to the next one.
TEST_F(PrintedSheet, PutsTheNumberOfABoxCloseToItsName) {
  ASSERT_TRUE(document_.open(sample(QStringLiteral("burdock-719"))));
  for (const auto kind : {sheet::SheetKind::Spec, sheet::SheetKind::Survey}) {
    const QString name =
        kind == sheet::SheetKind::Spec ? QStringLiteral("spacer") : QStringLiteral("cylinder");
    const QString number =
        kind == sheet::SheetKind::Spec ? QStringLiteral("1.030") : QStringLiteral("98.12");
    ASSERT_TRUE(writeSheetPdf(document_.assessment(), units::Style(), {.kind = kind}, QPageSize::A4,
                              pdf_, nullptr));
    const std::vector<PrintedWord> words = printedWords(pdf_);
    bool found = false;
    for (std::size_t i = 1; i + 1 < words.size(); ++i) {
      if (words[i].text != number || words[i + 1].text != name) continue;
      found = true;
      const double before = words[i].box.left() - words[i - 1].box.right();
      const double after = words[i + 1].box.left() - words[i].box.right();
      EXPECT_LT(1.3 * before, after) << name.toStdString();
    }
    EXPECT_TRUE(found) << name.toStdString();
  }
}

TEST_F(PrintedSheet, ShowsTheThrowsWithTheirTops) {
  ASSERT_TRUE(document_.open(sample(QStringLiteral("tansy-270"))));
  for (const auto paper : {QPageSize::A4, QPageSize::Letter}) {
    ASSERT_TRUE(writeSheetPdf(document_.assessment(), units::Style(), {}, paper, pdf_, nullptr));
    const QString text =
        ran(QStringLiteral("pdftotext"), {QStringLiteral("-raw"), pdf_, QStringLiteral("-")})
            .simplified();
    for (const char* words :
         {"fires 1-2, 450 · 270°", "fires 1-2, 360° each", "Throws seen from the output end"}) {
      EXPECT_TRUE(text.contains(QString::fromUtf8(words))) << words << text.toStdString();
    }
  }
}

TEST_F(PrintedSheet, ListsWhatSpeaksAgainstItOrSaysHowMuchIsLeftOut) {
  const model::Project project = crowded();
  const assess::Assessment assessment(project);
  ASSERT_TRUE(writeSheetPdf(assessment, units::Style(), {}, QPageSize::Letter, pdf_, nullptr));
  const QString text =
      ran(QStringLiteral("pdftotext"), {QStringLiteral("-raw"), pdf_, QStringLiteral("-")})
          .simplified();
  static const QRegularExpression count(
      QStringLiteral("Not listed \\d+ [^:]+ on [^:]+: see the window, or strokewright check"));
  EXPECT_TRUE(text.contains(count)) << text.toStdString();
}

class EveryWarning : public PrintedSheet, public testing::WithParamInterface<const char*> {};

TEST_P(EveryWarning, StandsOnTheSheetOfASample) {
  ASSERT_TRUE(document_.open(sample(QLatin1StringView(GetParam()))));
  for (const auto paper : {QPageSize::A4, QPageSize::Letter}) {
    ASSERT_TRUE(writeSheetPdf(document_.assessment(), units::Style(), {}, paper, pdf_, nullptr));
    const QString text =
        ran(QStringLiteral("pdftotext"), {QStringLiteral("-raw"), pdf_, QStringLiteral("-")})
            .simplified();
    EXPECT_FALSE(text.contains(QStringLiteral("see the window, or strokewright check")))
        << text.toStdString();
  }
}

INSTANTIATE_TEST_SUITE_P(Samples, EveryWarning,
                         testing::Values("burdock-719", "culvert-1040", "tansy-270", "teasel-125"),
                         [](const auto& row) {
                           std::string name = row.param;
                           std::erase(name, '-');
                           return name;
                         });

TEST_F(PrintedSheet, OfAProjectWithoutAnythingIsStillAPage) {
  const model::Project project;
  const assess::Assessment assessment(project);
  EXPECT_TRUE(writeSheetPdf(assessment, units::Style(), {}, QPageSize::A4, pdf_, nullptr));
  EXPECT_TRUE(printedText(pdf_).contains(QStringLiteral("sheet")));
}

TEST_F(PrintedSheet, OfAnEmptyTargetIsAPage) {
  ASSERT_TRUE(
      writeSheetPdf(document_.assessment(), units::Style(), {}, QPageSize::A4, pdf_, nullptr));
  EXPECT_TRUE(printedText(pdf_).contains(QStringLiteral("waits")));
}

TEST_F(PrintedSheet, OfACrankThatCannotTurnSaysWhyThereIsNoDrawing) {
  ASSERT_TRUE(document_.open(sample(QStringLiteral("teasel-125"))));
  document_.type(document_.project().target(), in::rodLength, QStringLiteral("20"));
  ASSERT_TRUE(
      writeSheetPdf(document_.assessment(), units::Style(), {}, QPageSize::A4, pdf_, nullptr));
  EXPECT_TRUE(printedText(pdf_).contains(QStringLiteral("No drawing.")));
}

TEST_F(PrintedSheet, SpeaksTheReadersTerms) {
  ASSERT_TRUE(document_.open(sample(QStringLiteral("burdock-719"))));
  const auto words = [&](Terms terms) {
    EXPECT_TRUE(writeSheetPdf(document_.assessment(), units::Style(), {.terms = terms},
                              QPageSize::A4, pdf_, nullptr));
    return printedText(pdf_).simplified();
  };
  const QString british = words(Terms::British);
  EXPECT_TRUE(british.contains(QStringLiteral("liner"))) << british.toStdString();
  EXPECT_FALSE(british.contains(QStringLiteral("sleeve"))) << british.toStdString();
  const QString american = words(Terms::American);
  EXPECT_TRUE(american.contains(QStringLiteral("sleeve"))) << american.toStdString();
  EXPECT_FALSE(american.contains(QStringLiteral("gudgeon"), Qt::CaseInsensitive));
}

TEST_F(PrintedSheet, BearsTheNameOfTheFileWhereTheProjectHasNone) {
  const auto title = [&](const SheetOrder& order) {
    EXPECT_TRUE(
        writeSheetPdf(document_.assessment(), units::Style(), order, QPageSize::A4, pdf_, nullptr));
    return ran(QStringLiteral("pdfinfo"), {pdf_}).section(u'\n', 0, 0).section(u':', 1).trimmed();
  };
  const SheetOrder order{.projectName = QStringLiteral("winter job")};
  EXPECT_EQ(title(order), QStringLiteral("winter job"));
  EXPECT_TRUE(printedText(pdf_).contains(QStringLiteral("winter job")));
  document_.edit(QStringLiteral("name of the project"),
                 [](model::Project& project) { project.name = "Spring"; });
  EXPECT_EQ(title(order), QStringLiteral("Spring"));
}

TEST_F(PrintedSheet, LeavesTheOldFileWhereItCannotWrite) {
  QString error;
  const QString nowhere = inFolder(QStringLiteral("no such folder/sheet.pdf"));
  EXPECT_FALSE(
      writeSheetPdf(document_.assessment(), units::Style(), {}, QPageSize::A4, nowhere, &error));
  EXPECT_TRUE(error.contains(nowhere)) << error.toStdString();
  EXPECT_FALSE(QFileInfo::exists(nowhere));
}

TEST_F(PrintedSheet, IsTheSameFromAPrinterAsInAFile) {
  ASSERT_TRUE(document_.open(sample(QStringLiteral("culvert-1040"))));
  QPrinter printer(QPrinter::HighResolution);
  const QString printed = inFolder(QStringLiteral("printed.pdf"));
  printer.setOutputFormat(QPrinter::PdfFormat);
  printer.setOutputFileName(printed);
  printer.setPageSize(QPageSize(QPageSize::A4));
  ASSERT_TRUE(printSheet(document_.assessment(), units::Style(), {}, printer, nullptr));
  ASSERT_TRUE(
      writeSheetPdf(document_.assessment(), units::Style(), {}, QPageSize::A4, pdf_, nullptr));
  EXPECT_EQ(printedText(printed), printedText(pdf_));
}

TEST(Paper, IsKnownByItsName) {
  EXPECT_EQ(paperOf(u"a4"), QPageSize::A4);
  EXPECT_EQ(paperOf(u"LETTER"), QPageSize::Letter);
  EXPECT_EQ(paperOf(u"A5"), std::nullopt);
}

TEST(Paper, IsLetterWherePeopleMeasureInInches) {
  const QLocale before;
  QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedStates));
  EXPECT_EQ(defaultPaper(), QPageSize::Letter);
  QLocale::setDefault(QLocale(QLocale::German, QLocale::Germany));
  EXPECT_EQ(defaultPaper(), QPageSize::A4);
  QLocale::setDefault(before);
}

// ---- Preview

TEST_F(PrintedSheet, IsPreviewedOnWhiteWhateverThePalette) {
  ASSERT_TRUE(document_.open(sample(QStringLiteral("burdock-719"))));
  const QImage page = sheetPicture(document_.assessment(), units::Style(), {}, QPageSize::A4, 600);
  EXPECT_EQ(page.width(), 600);
  EXPECT_EQ(page.height(), 849);
  EXPECT_EQ(page.pixelColor(5, 5), QColor(Qt::white));
  EXPECT_TRUE(page.allGray());
}

/// Mean difference of two pictures of a page, 0 … 255.
double apart(const QImage& a, const QImage& b) {
  const QImage first = a.convertToFormat(QImage::Format_Grayscale8);
  const QImage second = b.convertToFormat(QImage::Format_Grayscale8);
  double sum = 0.0;
  for (int y = 0; y < first.height(); ++y) {
    for (int x = 0; x < first.width(); ++x) {
      sum += std::abs(qGray(first.pixel(x, y)) - qGray(second.pixel(x, y)));
    }
  }
  return sum / (first.width() * first.height());
}

// Against the PDF as another program draws it, at the width of a small and of a large window.
TEST_F(PrintedSheet, IsPreviewedAsItIsPrintedWhateverTheSizeOfTheWindow) {
  ASSERT_TRUE(document_.open(sample(QStringLiteral("burdock-719"))));
  ASSERT_TRUE(
      writeSheetPdf(document_.assessment(), units::Style(), {}, QPageSize::A4, pdf_, nullptr));
  const QImage printed = printedPicture(pdf_);
  for (const int width : {280, 700}) {
    const QImage shown =
        sheetPicture(document_.assessment(), units::Style(), {}, QPageSize::A4, width);
    // Letters are rastered a little differently, so both are looked at from afar.
    const QSize far(140, 198);
    const auto fromAfar = [&](const QImage& page) {
      return page.scaled(far, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
    };
    const double same = apart(fromAfar(shown), fromAfar(printed));
    EXPECT_LT(same, 6.0) << width;
    const QImage other =
        sheetPicture(document_.assessment(), units::Style(),
                     {.engine = document_.project().referenceDonor}, QPageSize::A4, width);
    EXPECT_GT(apart(fromAfar(other), fromAfar(printed)), 2.0 * same) << width;
  }
}

TEST_F(PrintedSheet, ChangesInThePreviewWithPaperAndProject) {
  ASSERT_TRUE(document_.open(sample(QStringLiteral("burdock-719"))));
  SheetPreview preview(document_, taste_);
  preview.resize(500, 700);
  const QImage first = preview.grab().toImage();
  auto* paper = preview.findChild<QComboBox*>();
  ASSERT_NE(paper, nullptr);
  paper->setCurrentIndex(1 - paper->currentIndex());
  const QImage second = preview.grab().toImage();
  EXPECT_NE(first, second);
  document_.type(document_.project().target(), in::bore, QStringLiteral("70"));
  EXPECT_NE(preview.grab().toImage(), second);
}

TEST_F(PrintedSheet, ChangesInThePreviewWithTheTerms) {
  ASSERT_TRUE(document_.open(sample(QStringLiteral("burdock-719"))));
  taste_.setTerms(Terms::British);
  SheetPreview preview(document_, taste_);
  preview.resize(500, 700);
  const QImage british = preview.grab().toImage();
  taste_.setTerms(Terms::American);
  EXPECT_NE(preview.grab().toImage(), british);
  taste_.setTerms(Terms::British);
  EXPECT_EQ(preview.grab().toImage(), british);
}

TEST_F(PrintedSheet, IsReachedInThePreviewByNameAndKey) {
  SheetPreview preview(document_, taste_);
  EXPECT_EQ(preview.findChild<QComboBox*>()->accessibleName(), QStringLiteral("Paper"));
  const auto buttons = preview.findChildren<QPushButton*>();
  ASSERT_EQ(buttons.size(), 2);
  for (const QPushButton* button : buttons) {
    EXPECT_TRUE(button->text().contains(QLatin1Char('&'))) << button->text().toStdString();
  }
}

}  // namespace
}  // namespace strokewright::ui
