#include "ui/pages/limit_lines.h"

#include <QLabel>
#include <algorithm>

#include "tests/ui/fixture.h"
#include "ui/pages/desk.h"

namespace strokewright::ui {
namespace {

using namespace Qt::StringLiterals;

TEST_F(WithDocument, TheLimitLinesNameTheDonorsLimitWhereItDiffers) {
  document_.type(kTarget, in::use, u"road"_s);
  document_.type(kDonor, in::use, u"road"_s);
  Desk desk(document_, taste_);
  LimitLines lines(desk);
  const auto says = [&lines](const QString& text) {
    return std::ranges::any_of(lines.findChildren<QLabel*>(), [&text](const QLabel* label) {
      return label->text().replace(QChar::Nbsp, u' ').contains(text);
    });
  };
  EXPECT_FALSE(says(u"donor:"_s));
  document_.type(kDonor, in::meanPistonSpeedLimit, u"22"_s);
  EXPECT_TRUE(says(u"donor: 22.00 m/s, entered"_s));
}

}  // namespace
}  // namespace strokewright::ui
