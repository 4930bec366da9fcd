/// The page of the rhythm: its bars, and what is played and saved of it.

#include <QApplication>
#include <QComboBox>
#include <QDesktopServices>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>
#include <QUrl>
#include <algorithm>
#include <cmath>
#include <complex>
#include <cstdint>
#include <numbers>
#include <vector>

#include "tests/ui/fixture.h"
#include "ui/pages/desk.h"
#include "ui/pages/page.h"
#include "ui/pages/standing.h"
#include "ui/plots/rhythm_scene.h"
#include "ui/plots/rhythm_view.h"

namespace strokewright::ui {
namespace {

using namespace Qt::StringLiterals;

/// Stands in for the player of the desktop.
class Player : public QObject {
  Q_OBJECT

 public:
  Player() { QDesktopServices::setUrlHandler(u"file"_s, this, "play"); }
  ~Player() override { QDesktopServices::unsetUrlHandler(u"file"_s); }

  QStringList played;

 public Q_SLOTS:
  void play(const QUrl& url) { played += url.toLocalFile(); }
};

/// Samples of a file of one channel and 16 bits at 44 100 a second, as RIFF WAVE lays them out.
std::vector<double> samplesIn(const QByteArray& bytes) {
  std::vector<double> samples;
  for (qsizetype at = 44; at + 1 < bytes.size(); at += 2) {
    const auto low = static_cast<std::uint8_t>(bytes[at]);
    const auto high = static_cast<std::uint8_t>(bytes[at + 1]);
    samples.push_back(static_cast<std::int16_t>(low | high << 8));
  }
  return samples;
}

/// How strong one frequency [Hz] is.
double strength(const std::vector<double>& samples, double frequency) {
  std::complex<double> sum;
  for (std::size_t i = 0; i < samples.size(); ++i) {
    const double turns = frequency * static_cast<double>(i) / 44100.0;
    sum += samples[i] * std::polar(1.0, -2.0 * std::numbers::pi * turns);
  }
  return std::abs(sum) / static_cast<double>(samples.size());
}

class RhythmPage : public WithDocument {
 protected:
  RhythmPage() {
    EXPECT_TRUE(document_.openCopy(sample(u"burdock-719"_s), u"burdock"_s));
    page_.resize(1200, 700);
    page_.show();
    EXPECT_TRUE(QTest::qWaitForWindowExposed(&page_));
    view_ = page_.findChild<RhythmView*>();
  }

  static const PageDescription& description() {
    return *std::ranges::find(pages(), u"rhythm"_s, &PageDescription::key);
  }
  QPushButton* button(const QString& begins) {
    for (auto* one : view_->findChildren<QPushButton*>()) {
      if (one->text().remove(u'&').startsWith(begins)) return one;
    }
    return nullptr;
  }
  QLineEdit* speed() { return view_->findChild<QLineEdit*>(); }
  /// Something that is seen says so below the speed.
  bool isShown(const QString& words) const {
    return std::ranges::any_of(view_->findChildren<QLabel*>(), [&](const QLabel* label) {
      return label->isVisible() && label->text().contains(words);
    });
  }
  /// [Hz] the loudest of these.
  static double loudest(const QByteArray& wav, std::initializer_list<double> frequencies) {
    const std::vector<double> samples = samplesIn(wav);
    return *std::ranges::max_element(
        frequencies, {}, [&](double frequency) { return strength(samples, frequency); });
  }

  Desk desk_{document_, taste_};
  Page page_{desk_, description()};
  RhythmView* view_ = nullptr;
};

// By hand: an even triple at 3000 rpm fires 3/2 · 50 = 75 times a second.
TEST_F(RhythmPage, SavesTheFrequencyOfTheFirings) {
  ASSERT_NE(view_, nullptr);
  QTest::keyClicks(speed(), u"3000"_s);
  QSignalSpy said(&desk_, &Desk::said);
  const QString path = inFolder(u"rhythm.wav"_s);
  ASSERT_TRUE(view_->saveSound(path));
  ASSERT_EQ(said.size(), 1);
  EXPECT_TRUE(said[0][0].toString().contains(path));
  const QByteArray wav = contentOf(path);
  ASSERT_EQ(wav.size(), 44 + 2 * 3 * 44100);
  EXPECT_EQ(loudest(wav, {25.0, 37.5, 50.0, 75.0, 100.0}), 75.0);
}

TEST_F(RhythmPage, PlaysAtTheSpeedWantedByTheKeyboard) {
  ASSERT_NE(view_, nullptr);
  Player player;
  QPushButton* listen = button(u"Listen"_s);
  ASSERT_NE(listen, nullptr);
  EXPECT_EQ(speed()->placeholderText(),
            taste_.shown(units::Kind::Speed, 9500 * std::numbers::pi / 30));
  listen->setFocus();
  QTest::keyClick(listen, Qt::Key_Space);
  ASSERT_EQ(player.played.size(), 1);
  // 9500 rpm: 237.5 firings a second.
  EXPECT_EQ(loudest(contentOf(player.played[0]), {75.0, 158.3, 237.5, 200.0}), 237.5);
  QTest::keyClick(listen, Qt::Key_Space);
  ASSERT_EQ(player.played.size(), 2);
  EXPECT_NE(player.played[0], player.played[1]);
}

TEST_F(RhythmPage, PlaysTheDonorToo) {
  ASSERT_NE(view_, nullptr);
  document_.type(kDonor, in::throwAhead, u"0; 180; 0"_s);
  document_.type(kDonor, in::firingOrder, QString());
  auto* engines = view_->findChild<QComboBox*>();
  ASSERT_EQ(engines->count(), 2);
  engines->setCurrentIndex(1);
  QTest::keyClicks(speed(), u"3000"_s);
  const QString path = inFolder(u"donor.wav"_s);
  ASSERT_TRUE(view_->saveSound(path));
  // Fires 0-180-360 and then waits for a turn: its half order is there, that of the even triple is
  // not.
  EXPECT_GT(strength(samplesIn(contentOf(path)), 25.0), 100.0);
}

TEST_F(RhythmPage, SaysWhyThereIsNothingToHear) {
  ASSERT_NE(view_, nullptr);
  QSignalSpy said(&desk_, &Desk::said);
  QTest::keyClicks(speed(), u"fast"_s);
  EXPECT_TRUE(isShown(u"“fast” is no speed"_s)) << "before anything is asked for";
  EXPECT_FALSE(view_->saveSound(inFolder(u"x.wav"_s)));
  speed()->setText(u"1e12"_s);
  EXPECT_FALSE(isShown(u"is no speed"_s)) << "mended";
  EXPECT_FALSE(view_->saveSound(inFolder(u"x.wav"_s)));
  EXPECT_TRUE(isShown(u"too fast to be heard"_s));
  EXPECT_EQ(speed()->text(), u"1e12"_s) << "what was typed stays";
  speed()->clear();
  EXPECT_FALSE(isShown(u"too fast to be heard"_s));
  EXPECT_FALSE(view_->saveSound(inFolder(u"no such folder/x.wav"_s)));
  ASSERT_EQ(said.size(), 1);
  EXPECT_TRUE(said[0][0].toString().contains(u"could not be written"_s));
  document_.type(kTarget, in::throwAhead, QString());
  view_->listen();
  ASSERT_EQ(said.size(), 2);
  EXPECT_TRUE(said[1][0].toString().contains(u"nothing to hear"_s))
      << said[1][0].toString().toStdString();
}

TEST_F(RhythmPage, EndsASentenceOnce) {
  ASSERT_NE(view_, nullptr);
  QSignalSpy said(&desk_, &Desk::said);
  document_.type(kTarget, in::firingOrder, u"1-1-2"_s);
  view_->listen();
  ASSERT_EQ(said.size(), 1);
  EXPECT_TRUE(said[0][0].toString().contains(u"name each cylinder once."_s));
  EXPECT_FALSE(said[0][0].toString().contains(u".."_s)) << said[0][0].toString().toStdString();
}

TEST_F(RhythmPage, IsNotSettledBeforeThereAreThrows) {
  document_.startNew();
  document_.type(kTarget, in::cylinderCount, u"3"_s);
  document_.type(kTarget, in::cycle, u"four-stroke"_s);
  document_.type(kTarget, in::wantedSpeed, u"9000"_s);
  EXPECT_EQ(stateOf(desk_, description()).standing, Standing::Open);
  document_.type(kTarget, in::throwAhead, u"0; 240; 120"_s);
  EXPECT_EQ(stateOf(desk_, description()).standing, Standing::Settled);
}

TEST_F(RhythmPage, SaysSoBeforeItAsksForAName) {
  ASSERT_NE(view_, nullptr);
  QSignalSpy said(&desk_, &Desk::said);
  QTest::keyClicks(speed(), u"fast"_s);
  QTest::mouseClick(button(u"Save sound"_s), Qt::LeftButton);  // no dialog, which would wait
  EXPECT_TRUE(isShown(u"“fast” is no speed"_s));
  EXPECT_TRUE(said.isEmpty());
}

TEST_F(RhythmPage, IsTickedAtWholeOrders) {
  document_.type(kTarget, in::cycle, u"two-stroke"_s);
  document_.type(kTarget, in::firingOrder, QString());
  const PlotScene scene = rhythmScene(document_, kTarget).scene;
  const auto& ticks = scene.panels[0].x.names;
  ASSERT_GE(ticks.size(), 5U);
  for (const auto& [order, name] : ticks) EXPECT_EQ(name, QString::number(order));
  EXPECT_EQ(ticks[1].first, 2.0);
}

TEST_F(RhythmPage, SparesTheProject) {
  ASSERT_NE(view_, nullptr);
  const QString path = inFolder(u"job.strokewright"_s);
  ASSERT_TRUE(document_.saveAs(path));
  const QByteArray before = contentOf(path);
  EXPECT_FALSE(view_->saveSound(path));
  EXPECT_EQ(contentOf(path), before);
}

TEST_F(RhythmPage, HasABarForEachOrderBesideTheDonors) {
  document_.type(kDonor, in::throwAhead, u"0; 180; 0"_s);
  document_.type(kDonor, in::firingOrder, QString());
  const PlotScene scene = rhythmScene(document_, kTarget).scene;
  ASSERT_EQ(scene.regions.size(), 32U);
  // Order 1½ of an even triple: 1; the donor's at 0, 180, 360: |1 + e^(i270°) + e^(i540°)| / 3 = ⅓.
  const PlotRegion& own = scene.regions[4];
  const PlotRegion& donors = scene.regions[5];
  EXPECT_NEAR(own.most.y(), 1.0, 1e-9);
  EXPECT_EQ(own.outline, Qt::SolidLine);
  EXPECT_NEAR(donors.most.y(), 1.0 / 3.0, 1e-9);
  EXPECT_EQ(donors.outline, Qt::DashLine);
  EXPECT_LT(donors.least.x(), own.least.x());
}

TEST_F(RhythmPage, ShowsNameAndSpeedWholeInANarrowPlace) {
  document_.edit(u"name"_s, [](model::Project& project) {
    project.engines[kTarget].name = "Burdock 719 of the second series";
  });
  QWidget window;
  window.resize(1000, 500);
  RhythmView view(
      document_, taste_, [] { return int{kTarget}; }, &window);
  const QWidget* engine = view.findChild<QComboBox*>();
  const auto* speed = view.findChild<QLineEdit*>();
  window.show();
  ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
  ASSERT_TRUE(QTest::qWaitFor([&] { return engine->width() == engine->sizeHint().width(); }));
  for (const int width : {view.minimumSizeHint().width(), 1000}) {
    view.resize(width, 500);
    QApplication::processEvents();
    EXPECT_GE(engine->width(), engine->sizeHint().width());
    EXPECT_GT(speed->width(), speed->fontMetrics().horizontalAdvance(speed->placeholderText()));
    int right = 0;
    for (const auto* button : view.findChildren<QPushButton*>()) {
      EXPECT_GE(button->width(), button->sizeHint().width());
      EXPECT_EQ(button->y() > speed->geometry().bottom(), width < 1000);
      right = std::max(right, button->geometry().right());
    }
    EXPECT_LT(right, width);
  }
}

TEST_F(RhythmPage, SaysThatItIsNoExhaust) {
  ASSERT_NE(view_, nullptr);
  EXPECT_TRUE(isShown(u"not the sound of the exhaust"_s));
}

}  // namespace
}  // namespace strokewright::ui

#include "rhythm_page_test.moc"
