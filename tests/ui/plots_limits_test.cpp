/// The bars of the rev limits.

#include <algorithm>
#include <numbers>

#include "core/limits/results.h"
#include "tests/ui/fixture.h"
#include "ui/plots/limits_chart.h"
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

TEST_F(LimitsView, NamesWhatStopsItFirstAndWhatComesNext) {
  EXPECT_TRUE(view_.readout().contains(QStringLiteral("by ring flutter")))
      << view_.readout().toStdString();
  EXPECT_TRUE(view_.readout().contains(QStringLiteral("Next would be the donor's proven")));
}

TEST_F(LimitsView, TheRevsWantedAreALine) {
  ASSERT_EQ(scene().curves.size(), 1u);
  EXPECT_NEAR(scene().curves.front().x.front(), 9500.0, 1e-6);
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
