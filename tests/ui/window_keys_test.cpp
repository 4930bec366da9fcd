/// Keys of the window, and what a new project forgets.

#include <QApplication>
#include <QLineEdit>
#include <QTest>

#include "tests/ui/fixture.h"
#include "ui/pages/desk.h"
#include "ui/pages/main_window.h"
#include "ui/pages/page.h"
#include "ui/pages/page_description.h"
#include "ui/pages/project_text.h"
#include "ui/pages/start_page.h"

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
