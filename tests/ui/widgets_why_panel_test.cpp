#include <QSignalSpy>
#include <QTest>
#include <QTextBrowser>
#include <QToolButton>

#include "core/chamber/results.h"
#include "core/deck/results.h"
#include "core/motion/results.h"
#include "tests/ui/fixture.h"
#include "ui/widgets/why_panel.h"
#include "ui/widgets/why_text.h"

namespace strokewright::ui {
namespace {

TEST(FormulaWithNumbers, PutsNumbersWhereSymbolsStandBehindTheEqualsSign) {
  EXPECT_EQ(formulaWithNumbers(QStringLiteral("V_d = π/4 · B² · S_t"),
                               {{QStringLiteral("S_t"), QStringLiteral("72 mm")},
                                {QStringLiteral("B"), QStringLiteral("76 mm")},
                                {QStringLiteral("V_d"), QStringLiteral("327 ml")}}),
            QStringLiteral("V_d = π/4 · (76 mm)² · (72 mm)"));
}

TEST(FormulaWithNumbers, LeavesLongerWordsAlone) {
  EXPECT_EQ(formulaWithNumbers(QStringLiteral("x = S_t + S + max(S)"),
                               {{QStringLiteral("S"), QStringLiteral("1")}}),
            QStringLiteral("x = S_t + (1) + max((1))"));
}

TEST(FormulaWithNumbers, LeavesWhatExplainsTheSumAlone) {
  const std::vector<std::pair<QString, QString>> forces = {
      {QStringLiteral("F"), QStringLiteral("9 kN")},
      {QStringLiteral("F_0"), QStringLiteral("8 kN")}};
  EXPECT_EQ(formulaWithNumbers(QStringLiteral("F / F_0, F_0 of the donor; F as read"), forces),
            QStringLiteral("(9 kN) / (8 kN), F_0 of the donor; F as read"));
  EXPECT_EQ(formulaWithNumbers(QStringLiteral("x = F + k; or F, k and F_0 apart"), forces),
            QStringLiteral("x = (9 kN) + k; or (9 kN), k and F_0 apart"));
}

const QString kWays = QStringLiteral("t = d + p; or s − g + p; or v / a + p; minus: take it off");

TEST(FormulaUsed, IsTheWayForWhichThereAreNumbers) {
  const FormulaUsed used = formulaUsed(kWays, {{QStringLiteral("s"), QStringLiteral("1.0")},
                                               {QStringLiteral("g"), QStringLiteral("0.3")},
                                               {QStringLiteral("p"), QStringLiteral("0.5")}});
  EXPECT_EQ(used.plain, QStringLiteral("t = s − g + p; minus: take it off"));
  EXPECT_EQ(used.filled, QStringLiteral("t = (1.0) − (0.3) + (0.5)"));
  EXPECT_TRUE(used.whole);
}

TEST(FormulaUsed, KeepsAllWaysWhereNumbersAreMissing) {
  const FormulaUsed used = formulaUsed(kWays, {{QStringLiteral("p"), QStringLiteral("0.5")}});
  EXPECT_EQ(used.plain, kWays);
  EXPECT_FALSE(used.whole);
}

TEST(FormulaUsed, TellsSymbolsWithTwoMarksApart) {
  EXPECT_EQ(formulaUsed(QStringLiteral("x = V_c,w − V_c"),
                        {{QStringLiteral("V_c"), QStringLiteral("2")},
                         {QStringLiteral("V_c,w"), QStringLiteral("3")}})
                .filled,
            QStringLiteral("x = (3) − (2)"));
}

class Why : public WithDocument {
 protected:
  void SetUp() override {
    document_.type(kTarget, in::cylinderCount, QStringLiteral("2"));
    document_.type(kTarget, in::crankThrow, QStringLiteral("36 ± 0.02"));
    document_.type(kTarget, in::rodLength, QStringLiteral("130"));
    document_.type(kTarget, in::bore, QStringLiteral("76.00 ± 0.10"));
    panel_.explain(kTarget, out::sweptVolume, 0);
  }

  bool says(const char* text) const { return panel_.plainText().contains(QString::fromUtf8(text)); }
  void follow(const char* link) {
    auto* text = panel_.findChild<QTextBrowser*>();
    Q_EMIT text->anchorClicked(QUrl(QString::fromLatin1(link)));
  }

  WhyPanel panel_{document_};
};

TEST_F(Why, ShowsFormulaNumbersSourceAndValidity) {
  for (const char* text :
       {"Swept volume of one cylinder", "V_d = π/4 · B² · 2 r", "(76.00 mm)² · 2 (36.000 mm)",
        "326.63", "± 0.88 likely", "± 1.04 worst case", "Bore", "Throw", "Heywood ch. 2",
        "any bore and stroke"}) {
    EXPECT_TRUE(says(text)) << text << "\n" << panel_.plainText().toStdString();
  }
}

// 2 · 0.10 / 76 of 326.63 ml is 0.86 ml, 0.02 / 36 of it 0.18 ml (first order, plane geometry).
TEST_F(Why, RanksWhatThePlusMinusIsMadeOf) {
  const QString text = panel_.plainText();
  const qsizetype ranked = text.indexOf(QStringLiteral("What its ±"));
  ASSERT_GE(ranked, 0) << text.toStdString();
  const qsizetype bore = text.indexOf(QStringLiteral("± 0.86"), ranked);
  const qsizetype crankThrow = text.indexOf(QStringLiteral("± 0.18"), ranked);
  EXPECT_GT(bore, ranked);
  EXPECT_GT(crankThrow, bore);
}

TEST_F(Why, FollowsEveryEdit) {
  document_.type(kTarget, in::bore, QStringLiteral("77"));
  EXPECT_TRUE(says("335.28"));
}

TEST_F(Why, ResultsLeadToTheirOwnWorkingAndBack) {
  follow("result:true_stroke_m@1@0");
  EXPECT_TRUE(panel_.plainText().startsWith(QStringLiteral("True stroke")));
  panel_.findChildren<QToolButton*>().front()->click();
  EXPECT_TRUE(panel_.plainText().startsWith(QStringLiteral("Swept volume")));
}

TEST_F(Why, EntriesLeadToTheirField) {
  QSignalSpy asked(&panel_, &WhyPanel::entryAsked);
  follow("input:bore_m@1");
  ASSERT_EQ(asked.count(), 1);
  EXPECT_EQ(asked[0][0].toInt(), kTarget);
  EXPECT_EQ(asked[0][1].value<const describe::Input*>(), &in::bore);
}

/// 2 · 72 mm · 8500 / 60 a second = 20.4 m/s.
TEST_F(Why, TheMeanPistonSpeedIsASumOfNumbers) {
  document_.type(kTarget, in::wantedSpeed, QStringLiteral("8500"));
  panel_.explain(kTarget, out::meanPistonSpeed, 0);
  QString text = panel_.plainText();
  text.replace(QChar::Nbsp, QChar::Space).remove(QChar(0x202F));
  EXPECT_TRUE(text.contains(QStringLiteral("= 2 (72.000 mm) (8500 rpm) = 20.40 m/s")))
      << text.toStdString();
}

TEST_F(Why, TheDonorsSymbolsTakeNoNumberOfTheTarget) {
  ASSERT_TRUE(document_.openCopy(sample(QStringLiteral("burdock-719")), QString()));
  panel_.explain(document_.project().target(), out::headMoved, 0);
  EXPECT_TRUE(says(" − (H_donor + t_g,donor)")) << panel_.plainText().toStdString();
  EXPECT_TRUE(says("Δh = ((")) << panel_.plainText().toStdString();
}

TEST_F(Why, SaysWhatAResultWaitsFor) {
  panel_.explain(kDonor, out::sweptVolume, 0);
  EXPECT_TRUE(says("Waits for")) << panel_.plainText().toStdString();
}

TEST_F(Why, EscapeCloses) {
  const QSignalSpy closed(&panel_, &WhyPanel::closed);
  QTest::keyClick(&panel_, Qt::Key_Escape);
  EXPECT_FALSE(panel_.isVisible());
  EXPECT_EQ(closed.count(), 1);
}

TEST_F(Why, EnterAndSpaceOnCloseClose) {
  for (const Qt::Key key : {Qt::Key_Return, Qt::Key_Enter, Qt::Key_Space}) {
    panel_.explain(kTarget, out::sweptVolume, 0);
    auto* close = panel_.findChildren<QToolButton*>().back();
    close->setFocus();
    QTest::keyClick(close, key);
    EXPECT_FALSE(panel_.isVisible()) << key;
  }
}

TEST_F(Why, ClosesWhenAnotherProjectOpens) {
  ASSERT_TRUE(document_.openCopy(sample(QStringLiteral("burdock-719")), QString()));
  EXPECT_FALSE(panel_.isVisible());
}

TEST_F(Why, ClosesWhenItsEngineGoes) {
  document_.removeEngine(kTarget);
  EXPECT_FALSE(panel_.isVisible());
}

/// A fresh spacer, asked of each of the three it may be made for: the sum stands as it was done.
TEST_F(Why, ShowsTheSumThatGaveTheSpacer) {
  ASSERT_TRUE(document_.openCopy(sample(QStringLiteral("burdock-719")), QString()));
  const int target = document_.project().target();
  const auto sum = [&](const char* driver, const describe::Input* wanted, const char* typed) {
    document_.type(target, in::stackDriver, QString::fromUtf8(driver));
    document_.type(target, *wanted, QString::fromUtf8(typed));
    panel_.explain(target, out::spacerToMake, 0);
    QString result = document_.taste().value(
        out::spacerToMake, document_.assessment()(target, out::spacerToMake, 0).value);
    result.replace(QChar::Nbsp, QChar::Space);
    EXPECT_TRUE(panel_.plainText().contains(QStringLiteral(" = ") + result))
        << panel_.plainText().toStdString();
  };
  sum("squish gap", &in::wantedSquish, "1.0");
  EXPECT_TRUE(says("t_sp = s_w − t_g + Δt_g/2 − h_rec + h_rise + p_0; minus:"));
  EXPECT_TRUE(says("t_sp = (1.00 mm) − (0.75 mm)"));
  EXPECT_FALSE(says("δ_w"));
  sum("deck clearance", &in::wantedDeckClearance, "0.5");
  EXPECT_TRUE(says("t_sp = δ_w + p_0; minus:"));
  EXPECT_TRUE(says("t_sp = (0.50 mm) + ("));
  sum("compression ratio", &in::wantedCompressionRatio, "10.5");
  EXPECT_TRUE(says("t_sp = (V_d / (ε_w − 1) − V_b) / (π/4 · B²) + p_0"));
  EXPECT_TRUE(says("/ ((10.50) − 1)"));
}

/// Every result of every sample can be explained.
TEST_F(Why, NoResultOfTheSamplesIsWithoutAnExplanation) {
  for (const char* name : {"tansy-270", "burdock-719", "teasel-125", "culvert-1040"}) {
    ASSERT_TRUE(document_.openCopy(sample(QString::fromLatin1(name)), QString()))
        << document_.error().toStdString();
    for (int engine = 0; engine < document_.evaluation().engines(); ++engine) {
      for (const describe::Result* result : document_.evaluation().catalogue().results()) {
        panel_.explain(engine, *result, 0);
        EXPECT_TRUE(panel_.plainText().contains(QStringLiteral("Source:"))) << result->key;
      }
    }
  }
}

}  // namespace
}  // namespace strokewright::ui
