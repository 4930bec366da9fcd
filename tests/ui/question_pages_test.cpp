/// Survey, running gap, how sure, fillings, ports, what if: the pictures against the core.

#include <QApplication>
#include <QComboBox>
#include <QElapsedTimer>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTest>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/burette/results.h"
#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/describe/tabulated.h"
#include "core/plate/results.h"
#include "core/ports/results.h"
#include "core/running/results.h"
#include "core/spread/tables.h"
#include "core/survey/results.h"
#include "tests/ui/drawn_labels.h"
#include "tests/ui/fixture.h"
#include "ui/pages/answer_line.h"
#include "ui/pages/desk.h"
#include "ui/pages/findings_foot.h"
#include "ui/pages/link_button.h"
#include "ui/pages/measure_first.h"
#include "ui/pages/page.h"
#include "ui/pages/what_if_view.h"
#include "ui/plots/bore_stroke_map.h"
#include "ui/plots/fillings_scene.h"
#include "ui/plots/likelihood_plot.h"
#include "ui/plots/plot_widget.h"
#include "ui/plots/ports_scene.h"
#include "ui/plots/running_scene.h"
#include "ui/plots/sampling.h"
#include "ui/plots/survey_scene.h"
#include "ui/plots/sweep_scene.h"
#include "ui/widgets/finding_line.h"
#include "ui/widgets/origin_dialog.h"
#include "ui/widgets/pasted_readings.h"
#include "ui/widgets/quantity_edit.h"
#include "ui/widgets/search_box.h"

namespace strokewright::ui {
namespace {

using namespace Qt::StringLiterals;

constexpr double kMillimetres = 1e3;

class Question : public WithDocument {
 protected:
  Question() { EXPECT_TRUE(document_.openCopy(sample(u"burdock-719"_s), u"burdock"_s)); }

  double value(const describe::Result& result, int cylinder = 0) {
    return document_.assessment()(kTarget, result, cylinder).value;
  }
  void type(const describe::Input& input, const QString& text) {
    document_.type(kTarget, input, text);
  }
  static const PageDescription& pageOf(const QString& key) {
    return *std::ranges::find(pages(), key, &PageDescription::key);
  }

  Desk desk_{document_, taste_};
};

// Survey -----------------------------------------------------------------------------------------

class SurveyPicture : public Question {
 protected:
  SurveyPicture() {
    type(in::cylinderPitch, u"90"_s);
    type(in::seatHeight, u"98.12 | 98.13 | 98.11; 98.20; 98.29"_s);
  }
  SceneShown shown_() { return surveyScene(document_, kTarget); }
};

TEST_F(SurveyPicture, HasASeatForEachCylinderOnItsHeightAndPlace) {
  const PlotScene scene = shown_().scene;
  std::vector<PlotMark> seats;
  std::ranges::copy_if(scene.marks, std::back_inserter(seats),
                       [](const PlotMark& mark) { return mark.panel == 0; });
  ASSERT_EQ(seats.size(), 3u);
  EXPECT_NEAR(seats[2].at.x(), 180.0, 1e-9);
  EXPECT_NEAR(seats[1].at.y(), 98.20, 1e-9);
  EXPECT_GT(seats[0].plusMinus.y(), 0.0) << "the scatter of its readings";
}

TEST_F(SurveyPicture, DrawsTheFlatAndTheTaperedPlateAsThickAsTheyAre) {
  const PlotScene scene = shown_().scene;
  const auto plate = [&](const QString& name) {
    return *std::ranges::find(scene.curves, name, &PlotCurve::label);
  };
  EXPECT_NEAR(plate(u"flat"_s).y.front(), value(out::flatSpacer) * kMillimetres, 1e-9);
  const PlotCurve tapered = plate(u"tapered"_s);
  const double share = (180.0 - tapered.x[0]) / (tapered.x[1] - tapered.x[0]);
  EXPECT_NEAR(tapered.y[0] + share * (tapered.y[1] - tapered.y[0]),
              value(out::taperedSpacer, 2) * kMillimetres, 1e-9);
}

TEST_F(SurveyPicture, SaysWhatTheNumbersBesideTheSeatsAre) {
  EXPECT_TRUE(shown_().sentence.contains(u"how far each stands above it"_s));
  type(in::cylinderCount, u"2"_s);
  type(in::seatHeight, u"98.12; 98.20"_s);
  EXPECT_FALSE(shown_().sentence.contains(u"how far each stands above it"_s));
  EXPECT_TRUE(shown_().sentence.contains(u"the numbers beside the seats are their heights"_s));
}

TEST_F(SurveyPicture, SaysHowMuchSteeperItIsDrawn) {
  SceneView view(document_, taste_, u"seats"_s, [this] { return shown_(); });
  view.resize(800, 600);
  view.show();
  QApplication::processEvents();
  EXPECT_TRUE(view.sentence().contains(u"times as steep"_s)) << view.sentence().toStdString();
  EXPECT_FALSE(view.sentence().contains(u"%1"_s));
}

TEST_F(SurveyPicture, OfASingleNothingIsDrawnAndThatIsSaid) {
  type(in::cylinderCount, u"1"_s);
  type(in::seatHeight, u"98.12"_s);
  SceneView view(document_, taste_, u"seats"_s, [this] { return shown_(); });
  view.resize(800, 600);
  view.show();
  QApplication::processEvents();
  EXPECT_TRUE(view.scene().empty());
  EXPECT_TRUE(view.sentence().startsWith(u"One cylinder has one seat"_s))
      << view.sentence().toStdString();
  EXPECT_FALSE(view.sentence().contains(u"as steep"_s));
}

TEST_F(SurveyPicture, DoesNotWaitForTheWidthBetweenTheReadingsAcross) {
  type(in::seatAcross, u"0"_s);
  type(in::seatAcrossWidth, {});
  EXPECT_FALSE(shown_().scene.marks.empty()) << shown_().sentence.toStdString();
}

TEST_F(SurveyPicture, WithoutAPitchItSaysWhatItWaitsFor) {
  type(in::cylinderPitch, {});
  EXPECT_TRUE(shown_().sentence.contains(u"cylinder pitch"_s)) << shown_().sentence.toStdString();
}

TEST_F(Question, TheSurveyAnswersWithHowFarTheTwoWaysAreApart) {
  type(in::seatHeight, u"98.12; 98.20; 98.29"_s);
  type(in::measuredDeckClearance, u"0.10"_s);
  ASSERT_EQ(document_.assessment()(kTarget, out::deckClosure).state, describe::State::Value);
  const Answer answer = pageOf(u"survey"_s).answer(desk_);
  EXPECT_EQ(answer.result, &out::deckClosure);
  EXPECT_TRUE(
      answer.number.contains(taste_.number(units::Kind::FineLength, value(out::deckClosure))))
      << answer.number.toStdString();
}

// Readings ---------------------------------------------------------------------------------------

struct Pasted {
  const char* block;
  int cylinders;
  bool list;
  const char* text;
};
void PrintTo(const Pasted& row, std::ostream* out) { *out << row.block; }

class PastedBlock : public testing::TestWithParam<Pasted> {};

TEST_P(PastedBlock, BecomesCylindersAndReadings) {
  const Pasted& row = GetParam();
  EXPECT_EQ(readingsText(QString::fromLatin1(row.block), row.cylinders, row.list),
            QString::fromLatin1(row.text));
}

INSTANTIATE_TEST_SUITE_P(
    Tables, PastedBlock,
    testing::Values(Pasted{"98.12\t98.13\n98.20\t98.21\n", 2, true, "98.12 | 98.13; 98.20 | 98.21"},
                    Pasted{"98.12\r\n98.20\r\n98.29", 3, true, "98.12; 98.20; 98.29"},
                    Pasted{"98.12\t98.20\t98.29", 3, true, "98.12; 98.20; 98.29"},
                    Pasted{"98.12\t98.20\t98.29", 2, true, "98.12 | 98.20 | 98.29"},
                    Pasted{"98.12\t\n98.20\t98.21", 2, true, "98.12; 98.20 | 98.21"},
                    Pasted{"90.1\n90.2", 3, false, "90.1 | 90.2"},
                    Pasted{"98.12", 3, true, "98.12"}, Pasted{"", 3, true, ""}));

// Findings ---------------------------------------------------------------------------------------

TEST_F(Question, TheFootSaysOnceHowSeveralCommasAreRead) {
  const FindingsFoot foot(desk_, pageOf(u"deck"_s));
  type(in::headGasket, u"1,125"_s);
  type(in::wantedSquish, u"1,125"_s);
  std::vector<const describe::Finding*> said;
  for (const FindingLine* line : foot.findChildren<FindingLine*>()) {
    if (line->isVisibleTo(&foot) && line->finding().key == "thousand_or_decimal") {
      said.push_back(&line->finding());
    }
  }
  ASSERT_EQ(said.size(), 1u);
  EXPECT_TRUE(taste_.sentence(said.front()->says).contains(u"; squish gap wanted: each comma"_s));
}

TEST_F(Question, TheFootSaysHowManyItDoesNotShow) {
  FindingsFoot foot(desk_, pageOf(u"deck"_s));
  type(in::headGasket, u"abc"_s);
  type(in::wantedSquish, u"abc"_s);
  type(in::rodLength, u"abc"_s);
  type(in::compressionHeight, u"abc"_s);
  foot.resize(700, foot.sizeHint().height());
  foot.show();
  ASSERT_TRUE(QTest::qWaitForWindowExposed(&foot));
  foot.resize(700, foot.sizeHint().height());
  QTest::qWait(1);
  const auto linesSeen = [&](bool whole) {
    int count = 0;
    for (const FindingLine* line : foot.findChildren<FindingLine*>()) {
      const QRect at(line->mapTo(foot.viewport(), QPoint()), line->size());
      count += line->isVisibleTo(&foot) && (!whole || foot.viewport()->rect().contains(at));
    }
    return count;
  };
  const auto says = [&](const QString& words) {
    return std::ranges::any_of(foot.findChildren<LinkButton*>(), [&](const LinkButton* link) {
      return link->isVisible() && link->text() == words;
    });
  };
  const int hidden = linesSeen(false) - linesSeen(true);
  ASSERT_GT(hidden, 0);
  EXPECT_TRUE(says(u"%1 more below"_s.arg(hidden)));
  foot.verticalScrollBar()->setValue(foot.verticalScrollBar()->maximum());
  EXPECT_TRUE(says(u"%1 more above"_s.arg(linesSeen(false) - linesSeen(true))));
  for (const describe::Input* input :
       {&in::headGasket, &in::wantedSquish, &in::rodLength, &in::compressionHeight}) {
    type(*input, {});
  }
}

// Running gap ------------------------------------------------------------------------------------

TEST_F(Question, TheRunningGapIsACurveForEachEngineThroughItsMarks) {
  const PlotScene scene = runningScene(document_, kTarget, 0).scene;
  const QString name = document_.engineName(kTarget);
  const PlotCurve& curve = *std::ranges::find(scene.curves, name, &PlotCurve::label);
  EXPECT_TRUE(curve.heavy);
  ASSERT_EQ(scene.marks.size(), 2u);
  EXPECT_NEAR(scene.marks[0].at.y(), value(out::runningSquish) * kMillimetres, 1e-9);
  EXPECT_NEAR(scene.marks[1].at.y(), value(out::overRevSquish) * kMillimetres, 1e-9);
  // The gap falls with the square of the speed: between two of the points it is nearly straight.
  const auto after = std::ranges::upper_bound(curve.x, scene.marks[0].at.x());
  const auto i = static_cast<std::size_t>(after - curve.x.begin());
  const double share = (scene.marks[0].at.x() - curve.x[i - 1]) / (curve.x[i] - curve.x[i - 1]);
  EXPECT_NEAR(curve.y[i - 1] + share * (curve.y[i] - curve.y[i - 1]), scene.marks[0].at.y(), 1e-3);
}

TEST_F(Question, TheRunningGapHasBothItsNumbersHoweverNarrowItIs) {
  const PlotScene scene = runningScene(document_, kTarget, 0).scene;
  for (const QSize size : {QSize(300, 290), QSize(320, 240), QSize(520, 520)}) {
    PlotCanvas canvas(nullptr);
    const std::vector<PlotLabel> labels = labelsOf(canvas, scene, size);
    for (const PlotMark& mark : scene.marks) {
      EXPECT_NE(std::ranges::find(labels, mark.label, &PlotLabel::words), labels.end())
          << mark.label.toStdString() << size.width();
    }
  }
}

TEST_F(Question, WithoutASpeedWantedTheCurveIsDrawnAndTheMarkIsNot) {
  type(in::wantedSpeed, {});
  const PlotScene scene = runningScene(document_, kTarget, 0).scene;
  EXPECT_TRUE(scene.marks.empty());
  EXPECT_NE(std::ranges::find(scene.curves, document_.engineName(kTarget), &PlotCurve::label),
            scene.curves.end());
}

TEST_F(Question, TheRunningGapSaysItsParts) {
  const QString sentence = runningScene(document_, kTarget, 0).sentence;
  EXPECT_TRUE(sentence.contains(taste_.value(out::runningSquish, value(out::runningSquish))))
      << sentence.toStdString();
}

TEST_F(Question, TheDeckAnswersWithNoThicknessWhereNoPlateGoesIn) {
  const PageDescription& deck = pageOf(u"deck"_s);
  type(in::spacer, {});
  EXPECT_TRUE(deck.deed.possible(desk_));
  type(in::compressionHeight, u"25"_s);
  ASSERT_LT(value(out::spacerToMake), -1e-3);
  const Answer answer = deck.answer(desk_);
  EXPECT_EQ(answer.number, u"none"_s);
  const QString off = taste_.shown(units::Kind::FineLength, -value(out::spacerToMake));
  EXPECT_TRUE(answer.sentence.contains(u"take %1 off"_s.arg(off))) << answer.sentence.toStdString();
  EXPECT_FALSE(deck.deed.possible(desk_));
}

TEST_F(Question, TheSurveySpeaksOfTheDonorWhileOnlyHisTwoWaysAreKnown) {
  type(in::measuredDeckClearance, {});
  document_.type(kDonor, in::measuredDeckClearance, u"0.9"_s);
  const Answer answer = pageOf(u"survey"_s).answer(desk_);
  ASSERT_EQ(document_.assessment()(kDonor, out::deckClosure).state, describe::State::Value);
  EXPECT_FALSE(answer.number.isEmpty());
  EXPECT_TRUE(answer.sentence.startsWith(u"on the donor"_s)) << answer.sentence.toStdString();
}

TEST_F(Question, AnEmptyPictureSaysThatNothingIsDrawnYet) {
  PlotWidget plot;
  plot.setScene({});
  const auto* said = plot.findChild<QLabel*>();
  ASSERT_NE(said, nullptr);
  EXPECT_TRUE(said->isVisibleTo(&plot));
  plot.setScene(runningScene(document_, kTarget, 0).scene);
  EXPECT_FALSE(said->isVisibleTo(&plot));
}

TEST_F(Question, TheMapOfNoCylindersSpeaksOfNone) {
  for (const int engine : {kDonor, kTarget}) {
    document_.type(engine, in::cylinderCount, {});
    document_.type(engine, in::bore, {});
  }
  BoreStrokeMap map(document_, taste_);
  map.show();
  QApplication::processEvents();
  QStringList said;
  for (const QLabel* label : map.findChildren<QLabel*>()) said += label->text();
  EXPECT_FALSE(said.join(u' ').contains(u"1 cylinders"_s)) << said.join(u' ').toStdString();
  EXPECT_TRUE(said.join(u' ').contains(u"waits for number of cylinders"_s))
      << said.join(u' ').toStdString();
}

// How sure ---------------------------------------------------------------------------------------

class HowSure : public Question {
 protected:
  HowSure() {
    view_.resize(700, 600);
    view_.show();
    QApplication::processEvents();
  }
  const PlotScene& scene(int plot) { return view_.findChildren<PlotWidget*>()[plot]->scene(); }

  LikelihoodPlot view_{document_, taste_, [] { return CylinderShown{kTarget, 0}; }};
};

TEST_F(HowSure, TheBarsHoldAllThatCanBe) {
  double sum = 0.0;
  for (const PlotRegion& bar : scene(0).regions) sum += bar.most.y() - bar.least.y();
  EXPECT_NEAR(sum, 100.0, 0.01);
  const describe::Tabulated table = document_.evaluation().tabulated(kTarget, out::gapHistogram, 0);
  ASSERT_EQ(scene(0).regions.size(), table.rows.size());
  EXPECT_NEAR(scene(0).regions.front().least.x(), table.rows["from_m"].numbers[0] * kMillimetres,
              1e-9);
}

TEST_F(Question, HowSureSpeaksOfTheCylinderThatIsLikeliestTooCloseAndNamesIt) {
  type(in::seatHeight, u"98.20; 98.12; 98.20 ± 0.03"_s);
  type(in::spacer, u"0.95"_s);
  type(in::squishLeast, u"0.85"_s);
  EXPECT_EQ(cylinderLikeliestTooClose(document_, kTarget), 1);
  const PageDescription& page = pageOf(u"likelihood"_s);
  EXPECT_TRUE(page.answer(desk_).sentence.endsWith(u"in cylinder 2"_s))
      << page.answer(desk_).sentence.toStdString();
  desk_.showCylinder(2);
  EXPECT_TRUE(page.answer(desk_).sentence.endsWith(u"in cylinder 3"_s));
}

TEST_F(Question, AChanceThatIsThereIsNotSaidToBeNought) {
  const PageDescription& page = pageOf(u"likelihood"_s);
  double chance = 1.0;
  for (double least = 0.8; chance >= 0.0005; least -= 0.002) {
    type(in::squishLeast, QString::number(least, 'f', 3));
    chance = *chanceUnderLeast(document_, {kTarget, cylinderLikeliestTooClose(document_, kTarget)});
  }
  ASSERT_GT(chance, 0.0);
  const QString sentence = page.answer(desk_).sentence;
  const QString least = taste_.shown(units::Kind::Share, 0.001);
  EXPECT_TRUE(sentence.contains(u"under %1 that it is under"_s.arg(least)))
      << sentence.toStdString();
}

TEST_F(HowSure, BarsUnderTheLeastAreHatched) {
  const double least = document_.evaluation().inputValue(kTarget, in::squishLeast) * kMillimetres;
  for (const PlotRegion& bar : scene(0).regions) {
    const bool under = 0.5 * (bar.least.x() + bar.most.x()) < least;
    EXPECT_EQ(bar.fill == PlotRegion::Fill::Falling, under) << bar.least.x();
  }
}

TEST_F(HowSure, SamplingStandsBesideTheComputedChances) {
  QSignalSpy sampled(&view_, &LikelihoodPlot::sampled);
  QTest::mouseClick(view_.findChild<QPushButton*>(), Qt::LeftButton);
  EXPECT_TRUE(view_.sampling());
  ASSERT_TRUE(sampled.wait(20'000));
  EXPECT_FALSE(view_.sampling());
  EXPECT_TRUE(view_.readout().contains(u"sampled"_s)) << view_.readout().toStdString();
  const auto& curves = scene(0).curves;
  const PlotCurve& outline =
      *std::ranges::find_if(curves, [](const PlotCurve& curve) { return curve.x.size() > 2; });
  double apart = 0.0;
  for (std::size_t i = 0; i < scene(0).regions.size(); ++i) {
    apart = std::max(apart, std::abs(outline.y[2 * i] - scene(0).regions[i].most.y()));
  }
  EXPECT_LT(apart, 0.15) << "per cent, of a million samples";
}

TEST_F(HowSure, WhatWasSampledStaysAfterAnEditAndSaysThatItIsOlder) {
  QSignalSpy sampled(&view_, &LikelihoodPlot::sampled);
  view_.sample();
  ASSERT_TRUE(sampled.wait(20'000));
  type(in::chamberVolume, u"21"_s);
  EXPECT_TRUE(view_.readout().contains(u"before the last change"_s))
      << view_.readout().toStdString();
}

TEST_F(Question, SamplingStopsWithinAFifthOfASecondAndTheWindowLives) {
  Sampling sampling;
  QSignalSpy progressed(&sampling, &Sampling::progressed);
  QSignalSpy cancelled(&sampling, &Sampling::cancelled);
  sampling.start(spread::stackOf(document_.evaluation(), kTarget, 0), 2'000'000'000);
  ASSERT_TRUE(progressed.wait(20'000));
  QElapsedTimer timer;
  timer.start();
  sampling.cancel();
  EXPECT_FALSE(sampling.running());
  EXPECT_EQ(cancelled.count(), 1);
  { const Sampling last; }
  EXPECT_LT(timer.elapsed(), 200);
}

TEST_F(Question, SamplingThatIsUnderWayEndsWithItsOwner) {
  QElapsedTimer timer;
  {
    Sampling sampling;
    sampling.start(spread::stackOf(document_.evaluation(), kTarget, 0), 2'000'000'000);
    QTest::qWait(50);
    timer.start();
  }
  EXPECT_LT(timer.elapsed(), 2000) << "all of them take many times that";
}

TEST_F(Question, MeasureFirstNamesTheLargestContributorFirst) {
  MeasureFirst first(desk_, [] { return CylinderShown{kTarget, 0}; });
  first.show();
  const auto gap = document_.evaluation().contributors(kTarget, out::squishGap);
  ASSERT_FALSE(gap.empty());
  EXPECT_TRUE(first.text().contains(taste_.label(*gap.front().input)))
      << first.text().toStdString();
}

TEST_F(Question, TheShapeOfAPlusMinusIsSaidWithItsOriginAndStaysWhileTyping) {
  type(in::bore, u"68.00 ± 0.02"_s);
  QuantityEdit field(document_, kTarget, in::bore);
  OriginDialog dialog(document_, {kTarget, in::bore});
  QComboBox* shape = nullptr;
  for (QComboBox* box : dialog.findChildren<QComboBox*>()) {
    if (box->currentText().contains(u"normal"_s)) shape = box;
  }
  ASSERT_NE(shape, nullptr);
  shape->setCurrentIndex(shape->findText(u"rectangular"_s, Qt::MatchContains));
  document_.say({kTarget, in::bore}, dialog.answer());
  EXPECT_EQ(bore().shape, describe::Shape::Rectangular);
  type(in::bore, u"68.01 ± 0.02"_s);
  EXPECT_EQ(bore().shape, describe::Shape::Rectangular);
}

// Fillings and ports -----------------------------------------------------------------------------

TEST_F(Question, TheBuretteStandsBesideTheVolumesComputed) {
  type(in::wholeVolume, u"25.4"_s);
  type(in::plugHoleVolume, u"1.0"_s);
  ASSERT_EQ(document_.assessment()(kTarget, out::clearanceByBurette).state, describe::State::Value);
  const PlotScene scene = fillingsScene(document_, kTarget).scene;
  const auto mark = std::ranges::find_if(scene.marks, [](const PlotMark& each) {
    return each.panel == 1 && each.shape == PlotMark::Shape::Square;
  });
  ASSERT_NE(mark, scene.marks.end());
  EXPECT_NEAR(mark->at.y(), value(out::clearanceVolume) * 1e6, 1e-6);
}

TEST_F(Question, ACrownThatAddsIsDrawnWithTheSignItWasEnteredWith) {
  type(in::crownVolume, u"1.0"_s);
  type(in::crownVolumeSense, u"adds"_s);
  type(in::crownFillDepth, u"5"_s);
  const double swept = 0.25 * std::numbers::pi * 66.0 * 66.0 * 5.0 * 1e-3;  // [ml] of 66 mm, 5 deep
  type(in::bore, u"66"_s);
  type(in::crownFill, QString::number(swept + 1.2, 'f', 2));
  const PlotScene scene = fillingsScene(document_, kTarget).scene;
  EXPECT_TRUE(scene.panels[0].y.title.contains(u"adds"_s));
  std::vector<double> crowns;
  for (const PlotMark& mark : scene.marks) {
    if (mark.panel == 0) crowns.push_back(mark.at.y());
  }
  ASSERT_EQ(crowns.size(), 6u);
  EXPECT_NEAR(crowns[0], 1.2, 0.01) << "by the burette";
  EXPECT_NEAR(crowns[1], 1.0, 1e-9) << "as entered";
}

TEST_F(Question, PortsOfATwoStrokeAreOpenForTheirDuration) {
  ASSERT_TRUE(document_.openCopy(sample(u"teasel-125"_s), u"teasel"_s));
  const PlotScene scene = portsScene(document_, kTarget, 0).scene;
  ASSERT_FALSE(scene.regions.empty());
  const PlotRegion& exhaust = scene.regions.front();
  EXPECT_NEAR(exhaust.most.x() - exhaust.least.x(), value(out::exhaustDuration) * 180.0 / M_PI,
              1e-6);
}

TEST_F(Question, PortsOfAFourStrokeSayWhyThereAreNone) {
  EXPECT_FALSE(portsScene(document_, kTarget, 0).sentence.isEmpty());
}

// What if ----------------------------------------------------------------------------------------

class WhatWouldItBe : public Question {
 protected:
  WhatWouldItBe() {
    type(in::spacer, u"0.95"_s);
    page_.resize(1100, 600);
    page_.show();
    QApplication::processEvents();
  }
  void ask(const describe::Result& result, double wanted, const describe::Input& input) {
    desk_.ask({.result = &result, .wanted = wanted, .input = &input});
    QApplication::processEvents();
  }

  Page page_{desk_, pageOf(u"what_if"_s)};
  WhatIfView& view_ = *page_.findChild<WhatIfView*>();
};

TEST_F(WhatWouldItBe, WhatIsTakenIsMarkedOnce) {
  const double now = document_.evaluation().inputValue(kTarget, in::spacer, 0);
  const auto marks = [&](double found) {
    return sweepScene(document_, {.engine = kTarget,
                                  .result = &out::squishGap,
                                  .input = &in::spacer,
                                  .now = now,
                                  .wanted = value(out::squishGap),
                                  .found = found})
        .marks.size();
  };
  EXPECT_EQ(marks(now + 0.1e-3), 2u);
  EXPECT_EQ(marks(now + 1e-9), 1u) << "it reads the same";
}

TEST_F(WhatWouldItBe, FindsTheSpacerForAnotherGapAndOneKeyTakesIt) {
  const double wanted = value(out::squishGap) + 0.1e-3;
  auto* field = view_.findChildren<QLineEdit*>().constFirst();
  for (QLineEdit* each : view_.findChildren<QLineEdit*>()) {
    if (each->accessibleName() == u"What it should be"_s) field = each;
  }
  field->setFocus();
  QTest::keyClicks(field, fromCore(taste_.style().editable(units::Kind::FineLength, wanted)));
  EXPECT_TRUE(page_.answer().number.contains(u"1.05"_s)) << page_.answer().number.toStdString();
  EXPECT_TRUE(view_.readout().contains(u"then"_s));
  QTest::keyClick(field, Qt::Key_Return, Qt::ControlModifier);
  EXPECT_NEAR(value(out::squishGap), wanted, 1e-9);
  EXPECT_EQ(document_.entry(kTarget, in::spacer).origin, describe::Origin::Computed);
  document_.undoStack().undo();
  EXPECT_EQ(document_.entry(kTarget, in::spacer).text, "0.95");
}

TEST_F(WhatWouldItBe, SaysWhyWhatIsWantedCannotBeRead) {
  ask(out::squishGap, 0.9e-3, in::spacer);
  for (QLineEdit* each : view_.findChildren<QLineEdit*>()) {
    if (each->accessibleName() != u"What it should be"_s) continue;
    each->setFocus();
    each->selectAll();
    QTest::keyClicks(each, u"1 1/x"_s);
  }
  EXPECT_TRUE(page_.answer().number.isEmpty());
  EXPECT_TRUE(page_.answer().sentence.contains(u"1 1/x"_s))
      << page_.answer().sentence.toStdString();
  EXPECT_FALSE(canTakeWhatIf(desk_));
}

TEST_F(WhatWouldItBe, SaysThatItIsSoAlready) {
  ask(out::squishGap, value(out::squishGap), in::spacer);
  EXPECT_TRUE(page_.answer().sentence.contains(u"as wanted"_s))
      << page_.answer().sentence.toStdString();
}

TEST_F(WhatWouldItBe, OffersOnlyEntriesThatMoveTheResult) {
  ask(out::compressionRatio, 11.0, in::chamberVolume);
  const auto moving = movers(desk_);
  EXPECT_NE(std::ranges::find(moving, &in::chamberVolume), moving.end());
  EXPECT_EQ(std::ranges::find(moving, &in::pistonMass), moving.end());
}

TEST_F(WhatWouldItBe, SaysWhatIsNearestWhereThereIsNoAnswer) {
  ask(out::compressionRatio, 400.0, in::creviceVolume);
  EXPECT_TRUE(page_.answer().number.isEmpty());
  EXPECT_TRUE(page_.answer().sentence.contains(u"nearest is"_s))
      << page_.answer().sentence.toStdString();
  EXPECT_FALSE(canTakeWhatIf(desk_));
}

TEST_F(WhatWouldItBe, ThePlotRunsThroughThePresentPointAndTheOneFound) {
  ask(out::compressionRatio, 11.0, in::chamberVolume);
  const PlotScene& scene = page_.findChild<PlotWidget*>()->scene();
  ASSERT_EQ(scene.marks.size(), 2u);
  EXPECT_NEAR(scene.marks[0].at.y(), value(out::compressionRatio), 1e-9);
  EXPECT_NEAR(scene.marks[1].at.y(), 11.0, 1e-9);
}

TEST_F(WhatWouldItBe, AnEntryForEachCylinderIsChangedInTheOneShown) {
  type(in::spacer, u"0.95; 1.00; 1.05"_s);
  desk_.showCylinder(1);
  ask(out::squishGap, value(out::squishGap, 1) + 0.1e-3, in::spacer);
  takeWhatIf(desk_);
  const std::vector<double>& spacers = document_.entry(kTarget, in::spacer).values;
  ASSERT_EQ(spacers.size(), 3u);
  EXPECT_NEAR(spacers[0], 0.95e-3, 1e-12);
  EXPECT_NEAR(spacers[1], 1.10e-3, 1e-9);
}

TEST_F(WhatWouldItBe, AnEntryForEachCylinderKeepsItsPlusMinus) {
  type(in::spacer, u"0.95; 1.00; 1.05 ± 0.02"_s);
  desk_.showCylinder(1);
  ask(out::squishGap, value(out::squishGap, 1) + 0.1e-3, in::spacer);
  takeWhatIf(desk_);
  EXPECT_NEAR(document_.entry(kTarget, in::spacer).limit(), 0.02e-3, 1e-12);
}

TEST_F(WhatWouldItBe, WhatIsTakenKeepsThePlusMinusOfItsEntry) {
  type(in::headGasket, u"0.65 ± 0.03"_s);
  ask(out::squishGap, value(out::squishGap) + 0.1e-3, in::headGasket);
  ASSERT_TRUE(canTakeWhatIf(desk_));
  takeWhatIf(desk_);
  EXPECT_NEAR(document_.entry(kTarget, in::headGasket).values.front(), 0.75e-3, 1e-9);
  EXPECT_NEAR(document_.entry(kTarget, in::headGasket).limit(), 0.03e-3, 1e-12);
}

TEST_F(WhatWouldItBe, OfferedIsWhatStandsAndOfAPairTheOneEntered) {
  type(in::crankThrow, {});
  type(in::stroke, u"66"_s);
  for (const describe::Result* result : {&out::compressionRatio, &out::squishGap}) {
    ask(*result, value(*result), in::stroke);
    const auto moving = movers(desk_);
    const auto offers = [&](const describe::Input& input) {
      return std::ranges::find(moving, &input) != moving.end();
    };
    EXPECT_TRUE(offers(in::stroke)) << result->key;
    EXPECT_TRUE(offers(in::rodLength)) << result->key;
    EXPECT_TRUE(offers(in::headGasket)) << result->key;
    EXPECT_FALSE(offers(in::crankThrow)) << result->key;
  }
}

TEST_F(WhatWouldItBe, WithNoSpacerEnteredTheOneCountedWithStands) {
  type(in::spacer, {});
  ask(out::squishGap, value(out::squishGap) + 0.1e-3, in::spacer);
  const PlotScene& scene = page_.findChild<PlotWidget*>()->scene();
  ASSERT_EQ(scene.marks.size(), 2u);
  EXPECT_NEAR(scene.marks[0].at.x(), value(out::spacerInStack) * kMillimetres, 1e-9);
  EXPECT_NEAR(scene.marks[0].at.y(), value(out::squishGap) * kMillimetres, 1e-9);
}

TEST_F(WhatWouldItBe, AnEntryThatDoesNotReachTheResultIsNotExchangedUnasked) {
  ask(out::compressionRatio, 11.0, in::pistonMass);
  EXPECT_FALSE(canTakeWhatIf(desk_));
  EXPECT_EQ(desk_.whatIf().input, &in::pistonMass);
  EXPECT_TRUE(page_.answer().sentence.contains(u"does not reach it"_s))
      << page_.answer().sentence.toStdString();
}

TEST_F(WhatWouldItBe, ASearchThatFindsNothingStaysIsSaidAndTakesNothing) {
  ask(out::squishGap, value(out::squishGap) + 0.1e-3, in::spacer);
  ASSERT_TRUE(canTakeWhatIf(desk_));
  auto* box = view_.findChildren<SearchBox*>().constLast();
  box->lineEdit()->setFocus();
  box->lineEdit()->selectAll();
  QTest::keyClicks(box->lineEdit(), u"no such thing"_s);
  QTest::keyClick(box->lineEdit(), Qt::Key_Return, Qt::ControlModifier);
  EXPECT_EQ(box->currentText(), u"no such thing"_s);
  EXPECT_FALSE(canTakeWhatIf(desk_));
  EXPECT_EQ(document_.entry(kTarget, in::spacer).text, "0.95") << "the key took nothing either";
  EXPECT_TRUE(page_.answer().sentence.startsWith(u"“no such thing” names no single entry"_s))
      << page_.answer().sentence.toStdString();
  box->lineEdit()->selectAll();
  QTest::keyClicks(box->lineEdit(), taste_.label(in::spacer));
  QTest::keyClick(box->lineEdit(), Qt::Key_Return);
  EXPECT_TRUE(canTakeWhatIf(desk_));
}

TEST_F(WhatWouldItBe, SaysWhatWouldObjectBeforeItIsTaken) {
  ask(out::squishGap, value(out::squishGap) + 0.01e-3, in::spacer);
  EXPECT_FALSE(view_.thenText().contains(u"forbids then"_s)) << view_.thenText().toStdString();
  ask(out::squishGap, -0.2e-3, in::spacer);
  EXPECT_TRUE(view_.thenText().contains(u"forbids then: The squish gap is −0.20"_s))
      << view_.thenText().toStdString();
  EXPECT_EQ(document_.entry(kTarget, in::spacer).text, "0.95");
}

}  // namespace
}  // namespace strokewright::ui
