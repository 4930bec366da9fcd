/// Keys of the window, and what a new project forgets.

#include <QApplication>
#include <QLineEdit>
#include <QTest>
#include <algorithm>
#include <vector>

#include "tests/ui/fixture.h"
#include "ui/pages/desk.h"
#include "ui/pages/main_window.h"
#include "ui/pages/page.h"
#include "ui/pages/page_description.h"
#include "ui/pages/project_text.h"
#include "ui/pages/start_page.h"
#include "ui/widgets/search_box.h"

namespace strokewright::ui {
namespace {

using namespace Qt::StringLiterals;

class WindowKeys : public WithDocument {
 protected:
  void SetUp() override {
    window_.resize(1366, 700);
    window_.show();
    window_.activateWindow();
    ASSERT_TRUE(QTest::qWaitFor([this] { return window_.isActiveWindow(); }));
  }

  MainWindow window_{document_, taste_};
};

TEST_F(WindowKeys, OfPagesDoNothingOnTheStartPage) {
  window_.showStart();
  QTest::keyClick(&window_, Qt::Key_6, Qt::ControlModifier);
  QApplication::processEvents();
  EXPECT_EQ(window_.page(), nullptr);
  window_.showPage(pages().front().key);
  QTest::keyClick(&window_, Qt::Key_6, Qt::ControlModifier);
  ASSERT_NE(window_.page(), nullptr);
  EXPECT_EQ(window_.page()->description().key, pages()[5].key);
}

TEST_F(WindowKeys, ReachEveryPage) {
  window_.showPage(pages().front().key);
  for (std::size_t i = 0; i < pages().size(); ++i) {
    const auto digit = static_cast<Qt::Key>(Qt::Key_1 + static_cast<int>(i % 9));
    QTest::keyClick(&window_, digit, i < 9 ? Qt::ControlModifier : Qt::AltModifier);
    EXPECT_EQ(window_.page()->description().key, pages()[i].key);
  }
}

TEST_F(WindowKeys, GoFromAreaToAreaAndRoundOnEveryPage) {
  for (const PageDescription& page : pages()) {
    window_.showPage(page.key);
    QApplication::processEvents();
    window_.page()->focusFirst();
    std::vector<const QWidget*> met;
    for (int i = 0; i < 12; ++i) {
      QTest::keyClick(&window_, Qt::Key_F6);
      const QWidget* now = QApplication::focusWidget();
      ASSERT_NE(now, nullptr);
      if (std::ranges::find(met, now) == met.end()) met.push_back(now);
    }
    EXPECT_GE(met.size(), 2U) << page.key.toStdString();
    const QWidget* last = QApplication::focusWidget();
    QTest::keyClick(&window_, Qt::Key_F6);
    QTest::keyClick(&window_, Qt::Key_F6, Qt::ShiftModifier);
    EXPECT_EQ(QApplication::focusWidget(), last) << page.key.toStdString() << ", and back";
  }
}

TEST_F(WindowKeys, UndoFromWhereAnEntryIsSearched) {
  document_.type(kTarget, in::bore, u"76"_s);
  window_.showPage(u"what_if"_s);
  QApplication::processEvents();
  auto* box = window_.page()->findChild<SearchBox*>();
  ASSERT_NE(box, nullptr);
  box->setFocus();
  QTest::keyClick(box, Qt::Key_Z, Qt::ControlModifier);
  EXPECT_NE(document_.entry(kTarget, in::bore).text, "76");
}

TEST_F(WindowKeys, EnterInANameGoesOn) {
  window_.showPage(pages().front().key);
  QApplication::processEvents();
  auto* name = window_.page()->findChild<ProjectText*>();
  ASSERT_NE(name, nullptr);
  name->setFocus();
  QTest::keyClicks(name, u"Sorrel"_s);
  QTest::keyClick(name, Qt::Key_Return);
  EXPECT_FALSE(name->hasFocus());
  EXPECT_NE(qobject_cast<QLineEdit*>(QApplication::focusWidget()), nullptr);
}

TEST_F(WindowKeys, UpGoesBackThroughTheNamesOfTheEngine) {
  window_.showPage(u"engines"_s);
  QApplication::processEvents();
  ASSERT_TRUE(window_.page()->focusEntry(kTarget, in::cylinderCount));
  const auto goes = [](Qt::Key key) {
    QTest::keyClick(QApplication::focusWidget(), key);
    return QApplication::focusWidget();
  };
  const QWidget* count = QApplication::focusWidget();
  const QWidget* note = goes(Qt::Key_Up);
  ASSERT_NE(qobject_cast<const ProjectText*>(note), nullptr);
  const QWidget* name = goes(Qt::Key_Up);
  ASSERT_NE(qobject_cast<const ProjectText*>(name), nullptr);
  EXPECT_LT(name->y(), note->y());
  EXPECT_EQ(goes(Qt::Key_Down), note);
  EXPECT_EQ(goes(Qt::Key_Return), count);
}

TEST_F(WindowKeys, AnotherProjectIsAskedNothingYet) {
  Desk desk(document_, taste_);
  const WhatIf first = desk.whatIf();
  WhatIf armed = first;
  armed.wanted = 1.1e-3;
  desk.ask(armed);
  desk.speakOfStack(3);
  document_.type(kTarget, in::bore, u"76"_s);
  EXPECT_EQ(desk.whatIf(), armed) << "an edit leaves it";
  document_.startNew();
  EXPECT_EQ(desk.whatIf(), first);
  EXPECT_EQ(desk.stackPlace(), 1);
}

}  // namespace
}  // namespace strokewright::ui
