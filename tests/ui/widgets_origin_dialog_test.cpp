/// Where a number comes from: keys, and what cannot be read.

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QTest>
#include <optional>
#include <string>

#include "tests/ui/fixture.h"
#include "ui/widgets/origin_dialog.h"

namespace strokewright::ui {
namespace {

class Origins : public WithDocument {
 protected:
  Origins() {
    document_.type(kTarget, in::bore, QStringLiteral("76"));
    dialog_.emplace(document_, EntryPlace(kTarget, in::bore));
    dialog_->show();
  }

  QLineEdit* date() const { return dialog_->findChildren<QLineEdit*>().back(); }
  bool objects() const {
    for (const QLabel* label : dialog_->findChildren<QLabel*>()) {
      if (label->isVisible() && label->text().contains(QStringLiteral("no date"))) return true;
    }
    return false;
  }

  std::optional<OriginDialog> dialog_;
};

TEST_F(Origins, TabGoesDownFieldByField) {
  dialog_->activateWindow();
  ASSERT_TRUE(QTest::qWaitFor([this] { return dialog_->isActiveWindow(); }));
  const auto height = [this] {
    return QApplication::focusWidget()->mapTo(&*dialog_, QPoint()).y();
  };
  int above = height();
  for (int i = 0; i < 4; ++i) {
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    EXPECT_GT(height(), above) << i;
    above = height();
  }
  EXPECT_NE(QApplication::focusWidget()->metaObject()->className(), std::string("QPushButton"));
}

TEST_F(Origins, ADateThatIsNoneIsSaidBesideItAndKept) {
  EXPECT_FALSE(objects()) << "none is fine";
  for (const char* none : {"yesterday", "2026-02-30", "31.5.2026"}) {
    date()->setText(QString::fromLatin1(none));
    EXPECT_TRUE(objects()) << none;
    EXPECT_EQ(dialog_->answer().date, none);
    QApplication::processEvents();
    EXPECT_GT(date()->width(), date()->fontMetrics().horizontalAdvance(date()->text() + u'0'));
  }
  date()->setText(QStringLiteral("2026-05-31"));
  EXPECT_FALSE(objects());
}

}  // namespace
}  // namespace strokewright::ui
