/// The bars of the rev limits.

#include <QApplication>
#include <algorithm>
#include <numbers>

#include "core/limits/results.h"
#include "tests/ui/drawn_labels.h"
#include "tests/ui/fixture.h"
#include "ui/plots/limits_chart.h"
#include "ui/plots/limits_scene.h"
#include "ui/plots/plot_widget.h"

namespace strokewright::ui {
namespace {

class LimitsView : public WithDocument {
 protected:
  LimitsView() {
    EXPECT_TRUE(document_.open(sample(QStringLiteral("burdock-719"))));
    view_.resize(1200, 700);
    view_.show();
  }
  const PlotScene& scene() { return view_.findChild<PlotWidget*>()->scene(); }

  LimitsChart view_{document_, taste_};
};

TEST_F(LimitsView, TheLowestBarIsHeavyAndEndsAtTheCeiling) {
  const auto isHeavy = [](const PlotRegion& bar) { return bar.heavy; };
  ASSERT_EQ(std::count_if(scene().regions.begin(), scene().regions.end(), isHeavy), 1);
  const auto bar = std::find_if(scene().regions.begin(), scene().regions.end(), isHeavy);
  const double ceiling = document_.assessment()(kTarget, out::revCeiling).value;
  EXPECT_NEAR(bar->most.x(), ceiling * 30.0 / std::numbers::pi, 1e-6);
}

TEST_F(LimitsView, TheDonorsBarsAreDashedOutlinesBeside) {
  const auto ofDonor = [](const PlotRegion& bar) {
    return bar.fill == PlotRegion::Fill::Open && bar.outline == Qt::DashLine;
  };
  // Not its own proven acceleration: that is what the target is held against.
  EXPECT_EQ(std::count_if(scene().regions.begin(), scene().regions.end(), ofDonor), 5);
}

TEST_F(LimitsView, AVariantHasDottedBarsBelowTheDonors) {
  std::vector<const PlotRegion*> dotted;
  for (const PlotRegion& bar : scene().regions) {
    if (bar.outline == Qt::DotLine) dotted.push_back(&bar);
  }
  ASSERT_EQ(dotted.size(), 6u);  // all the target's lines: it is held against the donor too
  constexpr int kVariant = 2;
  const double ceiling = document_.assessment()(kVariant, out::ceilingRingFlutter).value;
  EXPECT_NEAR(dotted[1]->most.x(), ceiling * 30.0 / std::numbers::pi, 1e-6);
  EXPECT_TRUE(scene().panels[0].y.title.contains(QStringLiteral("dotted: short rod")));
  for (std::size_t i = 0; i < scene().regions.size(); ++i) {
    for (std::size_t j = i + 1; j < scene().regions.size(); ++j) {
      const PlotRegion& one = scene().regions[i];
      const PlotRegion& other = scene().regions[j];
      EXPECT_TRUE(one.most.y() <= other.least.y() || other.most.y() <= one.least.y()) << i << j;
    }
    EXPECT_GT(scene().regions[i].least.y(), scene().panels[0].y.from);
  }
}

TEST_F(LimitsView, WithoutVariantsThereIsNoRoomKeptForThem) {
  const double with = scene().panels[0].y.from;
  document_.removeEngine(2);
  EXPECT_GT(scene().panels[0].y.from, with);
  EXPECT_FALSE(scene().panels[0].y.title.contains(QStringLiteral("dotted")));
}

TEST_F(LimitsView, NamesWhatStopsItFirstAndWhatComesNext) {
  EXPECT_TRUE(view_.readout().contains(QStringLiteral("by ring flutter")))
      << view_.readout().toStdString();
  EXPECT_TRUE(view_.readout().contains(QStringLiteral("Next would be the donor's proven")));
}

TEST_F(LimitsView, TheRevsWantedAreALine) {
  ASSERT_EQ(scene().curves.size(), 1u);
  EXPECT_NEAR(scene().curves.front().x.front(), 9500.0, 1e-6);
}

TEST_F(LimitsView, TheRevsWantedAreNamedAtTheTopOfTheirLine) {
  const PlotMark& name = scene().marks.front();
  EXPECT_EQ(name.label, QStringLiteral("wanted 9500\u00A0rpm"));
  EXPECT_EQ(name.at, QPointF(scene().curves.front().x.front(), scene().panels[0].y.to));
}

TEST_F(LimitsView, NamesStandAboveTheBarsWhereItIsNarrow) {
  EXPECT_EQ(scene().panels[0].y.names.front().second, limitNames().front());
  view_.resize(260, 500);
  QApplication::processEvents();
  for (const auto& [at, name] : scene().panels[0].y.names) EXPECT_TRUE(name.isEmpty());
  for (const QString& name : limitNames()) {
    EXPECT_TRUE(std::ranges::any_of(scene().marks, [&](const PlotMark& mark) {
      return mark.label.endsWith(name);
    })) << name.toStdString();
  }
}

TEST_F(LimitsView, WhereItIsNarrowEveryBarHasItsName) {
  for (const char* name : {"burdock-719", "culvert-1040", "tansy-270", "teasel-125"}) {
    ASSERT_TRUE(document_.open(sample(QString::fromLatin1(name))));
    view_.resize(300, 18 * view_.fontMetrics().lineSpacing());
    QApplication::processEvents();
    PlotCanvas canvas(nullptr);
    const QSize size = view_.findChild<PlotWidget*>()->size();
    const std::vector<PlotLabel> labels = labelsOf(canvas, scene(), size);
    for (const QString& limit : limitNames()) {
      EXPECT_TRUE(std::ranges::any_of(
          labels, [&](const PlotLabel& label) { return label.words.endsWith(limit); }))
          << name << limit.toStdString();
    }
  }
}

TEST_F(LimitsView, NoBarHasAnothersNumberWithoutTheTargets) {
  for (const char* name : {"burdock-719", "culvert-1040", "tansy-270", "teasel-125"}) {
    ASSERT_TRUE(document_.open(sample(QString::fromLatin1(name))));
    for (const QSize size : {QSize(460, 300), QSize(600, 260), QSize(700, 900)}) {
      view_.resize(size);
      QApplication::processEvents();
      const PlotScene& chart = scene();
      ASSERT_FALSE(chart.panels[0].y.names.front().second.isEmpty()) << "names beside";
      PlotCanvas canvas(nullptr);
      const std::vector<PlotLabel> labels =
          labelsOf(canvas, chart, view_.findChild<PlotWidget*>()->size());
      const auto stands = [&](const PlotMark& mark) {
        return std::ranges::any_of(labels, [&](const PlotLabel& label) {
          const double y = canvas.toWidget(0, mark.at).y();
          return label.words == mark.label &&
                 std::abs(label.box.center().y() - y) <= std::max(label.box.height(), 1.0);
        });
      };
      for (const PlotMark& mark : chart.marks) {
        const bool ofTheTarget = mark.after < 0 && mark.at.y() < 0.0;
        if (!ofTheTarget) continue;
        EXPECT_TRUE(stands(mark)) << name << size.width() << mark.label.toStdString();
      }
    }
  }
}

TEST_F(LimitsView, BesideALimitThatWaitsNoOthersNumberStands) {
  const auto numbers = [&] {
    return std::ranges::count_if(scene().marks,
                                 [](const PlotMark& mark) { return mark.after >= 0; });
  };
  const auto before = numbers();
  EXPECT_GT(before, 0);
  document_.type(kTarget, in::rodLeastSection, QString());
  EXPECT_LT(numbers(), before);
}

TEST_F(LimitsView, BreathingStandsApartAndIsNeverTheHeavyOne) {
  const auto& names = scene().panels.front().y.names;
  ASSERT_EQ(names.size(), 6u);
  EXPECT_TRUE(names.back().second.contains(QStringLiteral("power, not safety")));
  EXPECT_GT(names[4].first - names[5].first, names[3].first - names[4].first);
}

TEST_F(LimitsView, ALimitThatWaitsIsNamed) {
  document_.type(kTarget, in::rodLeastSection, QString());
  EXPECT_TRUE(view_.readout().contains(QStringLiteral("Not counted: rod tension")))
      << view_.readout().toStdString();
}

}  // namespace
}  // namespace strokewright::ui
