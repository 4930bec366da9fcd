/// The window and its pages: everything reached, named, seen whole, and in agreement.

#include <QAbstractButton>
#include <QAccessible>
#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QMenuBar>
#include <QMessageBox>
#include <QMimeData>
#include <QProcess>
#include <QScrollArea>
#include <QScrollBar>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>
#include <algorithm>
#include <set>

#include "core/deck/results.h"
#include "core/plate/results.h"
#include "tests/ui/fixture.h"
#include "ui/pages/comparison.h"
#include "ui/pages/desk.h"
#include "ui/pages/difference_label.h"
#include "ui/pages/limit_lines.h"
#include "ui/pages/link_button.h"
#include "ui/pages/main_window.h"
#include "ui/pages/notice_bar.h"
#include "ui/pages/page.h"
#include "ui/pages/paper_palette.h"
#include "ui/pages/standing.h"
#include "ui/pages/start_page.h"
#include "ui/pages/title_strip.h"
#include "ui/pages/way_through.h"
#include "ui/plots/plot_theme.h"
#include "ui/print/sheet_preview.h"
#include "ui/widgets/entry_edit.h"
#include "ui/widgets/ink.h"
#include "ui/widgets/quantity_edit.h"
#include "ui/widgets/result_label.h"
#include "ui/widgets/whole_rows.h"
#include "ui/widgets/why_panel.h"

namespace strokewright::ui {
namespace {

using namespace Qt::StringLiterals;

void settle() {
  for (int i = 0; i < 3; ++i) {
    QApplication::processEvents();
    QApplication::sendPostedEvents();
  }
}

class Window : public WithDocument {
 protected:
  void SetUp() override {
    window_.resize(1366, 700);
    window_.show();
    settle();
  }

  void openSample(const QString& name) {
    ASSERT_TRUE(document_.openCopy(sample(name), name)) << document_.error().toStdString();
  }

  Page& show(const PageDescription& page) {
    window_.showPage(page.key);
    settle();
    return *window_.page();
  }

  MainWindow window_{document_, taste_};
};

// Nothing forgotten ------------------------------------------------------------------------------

TEST(Pages, AskForEveryInput) {
  for (const describe::Input* input : assess::catalogue().inputs()) {
    EXPECT_TRUE(std::any_of(pages().begin(), pages().end(), [&](const PageDescription& page) {
      return page.asksFor(*input);
    })) << input->key;
  }
}

TEST(Pages, ShowEveryResult) {
  for (const describe::Result* result : assess::catalogue().results()) {
    EXPECT_TRUE(std::any_of(pages().begin(), pages().end(), [&](const PageDescription& page) {
      return std::find(page.results.begin(), page.results.end(), result) != page.results.end();
    })) << result->key;
  }
}

TEST(Pages, HaveEachNameQuestionAndKeyOnce) {
  std::set<QString> said;
  for (const PageDescription& page : pages()) {
    EXPECT_TRUE(said.insert(page.key).second);
    EXPECT_TRUE(said.insert(page.name).second);
    EXPECT_TRUE(page.question.endsWith(u'?')) << page.question.toStdString();
  }
}

// Seen and heard ---------------------------------------------------------------------------------

void expectNames(QAccessibleInterface* shown, int& seen) {
  if (shown->state().focusable && !shown->state().invisible) {
    ++seen;
    EXPECT_FALSE(shown->text(QAccessible::Name).isEmpty())
        << (shown->object() != nullptr ? shown->object()->metaObject()->className() : "?") << " in "
        << (shown->object() != nullptr && shown->object()->parent() != nullptr
                ? shown->object()->parent()->metaObject()->className()
                : "?");
  }
  for (int i = 0; i < shown->childCount(); ++i) {
    if (shown->child(i) != nullptr) {
      expectNames(shown->child(i), seen);
    }
  }
}

TEST_F(Window, NamesWhateverTakesTheFocusOnTheFirstScreen) {
  int seen = 0;
  expectNames(QAccessible::queryAccessibleInterface(&window_), seen);
  EXPECT_GT(seen, 5);
}

TEST_F(Window, NamesWhateverTakesTheFocusOnEveryPage) {
  openSample(u"burdock-719"_s);
  for (const PageDescription& page : pages()) {
    SCOPED_TRACE(page.key.toStdString());
    show(page);
    int seen = 0;
    expectNames(QAccessible::queryAccessibleInterface(&window_), seen);
    EXPECT_GT(seen, 5);
  }
}

TEST_F(Window, FitsALaptop) {
  openSample(u"burdock-719"_s);
  for (const PageDescription& page : pages()) {
    show(page);
    EXPECT_LE(window_.minimumSizeHint().width(), 1366) << page.key.toStdString();
    EXPECT_LE(window_.minimumSizeHint().height(), 700) << page.key.toStdString();
  }
}

/// Entries whose field is seen from top to foot.
std::set<const describe::Input*> entriesSeen(const QWidget& page) {
  std::set<const describe::Input*> seen;
  for (const QWidget* field : page.findChildren<QWidget*>()) {
    const bool whole = field->visibleRegion().boundingRect().height() == field->height();
    if (inputOf(field) != nullptr && whole) {
      seen.insert(inputOf(field));
    }
  }
  return seen;
}

/// 1366 x 768 at one and a half times the size of everything.
TEST_F(Window, IsOfUseInALowWindow) {
  openSample(u"burdock-719"_s);
  const QSize low(911, 512);
  window_.resize(low);
  for (const PageDescription& description : pages()) {
    SCOPED_TRACE(description.key.toStdString());
    Page& page = show(description);
    EXPECT_EQ(window_.size(), low);
    const auto* strip = window_.findChild<TitleStrip*>();
    EXPECT_LE(strip->mapTo(&window_, strip->rect().bottomLeft()).y(), low.height());
    if (page.idle()) continue;
    std::size_t asked = 0;
    for (const EntryGroup& group : description.entries) {
      asked += group.inputs.size();
      for (const describe::Input* input : group.inputs) {
        ASSERT_TRUE(page.focusEntry(kTarget, *input)) << input->key;
        EXPECT_FALSE(QApplication::focusWidget()->visibleRegion().isEmpty()) << input->key;
      }
    }
    page.focusFirst();
    settle();
    EXPECT_GE(entriesSeen(page).size(), std::min<std::size_t>(asked, 3));
    for (const describe::List* list : description.lists) {
      ASSERT_TRUE(page.focusList(*list));
      settle();
      EXPECT_FALSE(QApplication::focusWidget()->visibleRegion().isEmpty()) << list->key;
    }
    if (!description.results.empty()) {
      page.explain(kTarget, *description.results.front(), -1);
      settle();
      EXPECT_TRUE(page.findChild<WhyPanel*>()->isVisible());
      EXPECT_GT(page.findChild<WhyPanel*>()->height(), 10 * page.fontMetrics().height());
    }
  }
}

/// Rows of the page's lists are seen whole or not at all, wherever they are scrolled to.
void expectWholeRows(const Page& page) {
  for (const QScrollArea* area : page.findChildren<QScrollArea*>()) {
    const QWidget* content = area->widget();
    if (!area->isVisible() || area->findChild<WholeRows*>() == nullptr) continue;
    QScrollBar* bar = area->verticalScrollBar();
    for (const int at : {bar->minimum(), bar->maximum() / 2, bar->maximum()}) {
      bar->setValue(at);
      settle();
      QRegion region = content->visibleRegion();
      if (!content->mask().isEmpty()) region &= content->mask();
      int whole = 0;
      int parts = 0;
      for (const auto& [top, bottom] : rowsIn(*content)) {
        const QRect row(0, top, content->width(), bottom - top + 1);
        const int seen = region.intersected(row).boundingRect().height();
        whole += seen == row.height();
        parts += seen > 0 && seen < row.height() && row.height() <= area->viewport()->height();
      }
      EXPECT_TRUE(parts == 0 || whole == 0)
          << area->metaObject()->className() << " at " << at << " of " << bar->maximum();
    }
  }
}

TEST_F(Window, ShowsNoRowOfAListInPart) {
  openSample(u"burdock-719"_s);
  for (const QSize size : {QSize(1366, 768), QSize(1280, 700), QSize(911, 512)}) {
    window_.resize(size);
    for (const PageDescription& page : pages()) {
      SCOPED_TRACE(page.key.toStdString() + " at " + std::to_string(size.width()));
      expectWholeRows(show(page));
    }
  }
}

TEST_F(Window, NeverCutsWhatIsLeftToDo) {
  openSample(u"burdock-719"_s);
  show(pages().front());
  const auto* strip = window_.findChild<TitleStrip*>();
  const QString left = leftText(leftToDo(Desk(document_, taste_)));
  for (const int width : {1366, 911, 760}) {
    window_.resize(width, 600);
    settle();
    const auto labels = strip->findChildren<QLabel*>();
    const auto said =
        std::ranges::find_if(labels, [&](const QLabel* label) { return label->text() == left; });
    ASSERT_NE(said, labels.end());
    EXPECT_TRUE((*said)->isVisible());
    EXPECT_GE((*said)->width(), (*said)->sizeHint().width()) << width;
    EXPECT_LE((*said)->mapTo(strip, (*said)->rect().topRight()).x(), strip->width()) << width;
  }
}

TEST_F(Window, TheTitleBlockOfALowWindowSaysWhatItsPartsAre) {
  openSample(u"burdock-719"_s);
  ASSERT_TRUE(document_.saveAs(inFolder(u"burdock.strokewright"_s)));
  show(pages().front());
  const auto* strip = window_.findChild<TitleStrip*>();
  for (const QSize size : {QSize(1366, 700), QSize(1366, 512), QSize(911, 512), QSize(760, 512)}) {
    window_.resize(size);
    settle();
    const QLabel* caption = strip->findChildren<QLabel*>().first();
    const bool below = size.height() > 600;
    if (caption->isVisible()) {
      EXPECT_EQ(caption->parentWidget()->height() > caption->height() + 5, below);
    }
    QStringList seen;
    for (const QLabel* label : strip->findChildren<QLabel*>()) {
      if (!label->isVisible()) continue;
      seen += label->text();
      EXPECT_GE(label->width(), label->sizeHint().width()) << label->text().toStdString();
    }
    EXPECT_EQ(seen.size() % 2, 0) << "a caption to each";
    EXPECT_TRUE(seen.contains(u"engine"_s));
    EXPECT_EQ(seen.count(u"Burdock 719"_s), size.width() > 1000 ? 2 : 1);
    EXPECT_EQ(seen.contains(u"saved"_s), size.width() > 800);
  }
}

/// A label that cannot be scrolled to and is smaller than its text.
void expectWhole(const QWidget& page) {
  for (const QLabel* label : page.findChildren<QLabel*>()) {
    if (!label->isVisible() || label->text().isEmpty() ||
        label->sizePolicy().horizontalPolicy() == QSizePolicy::Ignored) {
      continue;
    }
    const int width =
        label->wordWrap() ? label->minimumSizeHint().width() : label->sizeHint().width();
    EXPECT_GE(label->width() + 1, width) << label->text().toStdString();
    const int height =
        label->wordWrap() ? label->heightForWidth(label->width()) : label->sizeHint().height();
    EXPECT_GE(label->height() + 1, height) << label->text().toStdString();
  }
}

TEST_F(Window, SaysWholeWhenItWasSavedAndThatItChangedSince) {
  openSample(u"burdock-719"_s);
  ASSERT_TRUE(document_.saveAs(inFolder(u"burdock.strokewright"_s)));
  document_.type(kTarget, in::bore, u"68.5"_s);
  show(pages().front());
  const auto* strip = window_.findChild<TitleStrip*>();
  const auto labels = strip->findChildren<QLabel*>();
  const auto saved = std::ranges::find_if(
      labels, [](const QLabel* label) { return label->text().endsWith(u", changed since"_s); });
  ASSERT_NE(saved, labels.end());
  EXPECT_GE((*saved)->width(), (*saved)->sizeHint().width());
}

TEST_F(Window, ClipsNoLabelWhateverTheSizeOfTheText) {
  openSample(u"burdock-719"_s);
  const QFont body = QApplication::font();
  for (const double scale : {1.0, 1.5, 2.0}) {
    QFont larger = body;
    larger.setPointSizeF(body.pointSizeF() * scale);
    QApplication::setFont(larger);
    window_.resize(static_cast<int>(1366 * scale), static_cast<int>(768 * scale));
    for (const PageDescription& page : pages()) {
      SCOPED_TRACE(page.key.toStdString() + " at " + std::to_string(scale));
      expectWhole(show(page));
    }
  }
  QApplication::setFont(body);
}

/// No table of the page is wider than its place, and no cell is too low for its words.
void expectTablesWhole(const Page& page) {
  if (page.idle()) return;
  for (const Comparison* table : page.findChildren<Comparison*>()) {
    EXPECT_TRUE(table->isVisible());
    EXPECT_EQ(table->findChild<QScrollArea*>()->horizontalScrollBar()->maximum(), 0);
    for (const ResultLabel* cell : table->findChildren<ResultLabel*>()) {
      EXPECT_GE(cell->height(), cell->heightForWidth(cell->width()))
          << cell->accessibleName().toStdString();
    }
    for (const QuantityEdit* cell : table->findChildren<QuantityEdit*>()) {
      EXPECT_GE(cell->height(), cell->heightForWidth(cell->width()))
          << cell->accessibleName().toStdString();
    }
  }
}

TEST_F(Window, ShowsTheTablesOfThreeEnginesWithoutScrollingSidewaysOnASmallScreen) {
  openSample(u"burdock-719"_s);
  window_.resize(911, 512);  // 1366 × 768 at 150 %
  for (const PageDescription& page : {motionPage(), boreStrokePage(), throwsPage(), platePage()}) {
    SCOPED_TRACE(page.key.toStdString());
    int seen = 0;
    for (const Comparison* table : show(page).findChildren<Comparison*>()) {
      if (!table->isVisible()) continue;
      ++seen;
      EXPECT_EQ(table->findChild<QScrollArea*>()->horizontalScrollBar()->maximum(), 0);
    }
    EXPECT_GE(seen, 1);
    EXPECT_EQ(window_.width(), 911);
  }
}

TEST_F(Window, ShowsTheTablesOfTwoToFourEnginesWithoutScrollingSideways) {
  openSample(u"burdock-719"_s);
  for (std::size_t engines = document_.project().engines.size(); engines <= 4; ++engines) {
    for (const int width : {1366, 1280}) {
      window_.resize(width, 700);
      for (const PageDescription& page : pages()) {
        SCOPED_TRACE(page.key.toStdString() + ", engines: " + std::to_string(engines));
        expectTablesWhole(show(page));
        EXPECT_EQ(window_.width(), width);
      }
    }
    document_.addEngine(model::Part::Variant, document_.project().target());
  }
}

TEST_F(Window, ElidesNoReasonWhileEverythingWaits) {
  document_.startNew();
  for (const PageDescription& page : pages()) {
    SCOPED_TRACE(page.key.toStdString());
    expectTablesWhole(show(page));
  }
}

TEST_F(Window, ShowsElevenEntriesOfTheDeckAtOnce) {
  openSample(u"burdock-719"_s);
  window_.resize(1366, 768);
  const Page& deck = show(deckPage());
  const std::set<const describe::Input*> seen = entriesSeen(deck);
  EXPECT_GE(seen.size(), 11u);
  EXPECT_TRUE(seen.contains(&in::spacer));
}

TEST_F(Window, GivesTheWorkingThePlaceOfThePicture) {
  openSample(u"burdock-719"_s);
  for (const PageDescription& page : pages()) {
    const Page& shown = show(page);
    const auto tables = shown.findChildren<Comparison*>();
    if (tables.isEmpty() || page.results.empty() || shown.idle()) {
      continue;
    }
    SCOPED_TRACE(page.key.toStdString());
    const int width = tables.front()->width();
    window_.page()->explain(kTarget, *page.results.front(), -1);
    settle();
    EXPECT_TRUE(shown.findChild<WhyPanel*>()->isVisible());
    EXPECT_GE(tables.front()->width(), width);
    expectTablesWhole(shown);
    QTest::keyClick(shown.findChild<WhyPanel*>(), Qt::Key_Escape);
    EXPECT_FALSE(shown.findChild<WhyPanel*>()->isVisible());
  }
}

TEST_F(Window, LetsTabFollowTheReadingOrder) {
  openSample(u"burdock-719"_s);
  for (const PageDescription& page : pages()) {
    SCOPED_TRACE(page.key.toStdString());
    const Page& shown = show(page);
    if (shown.idle()) continue;
    for (const Comparison* table : shown.findChildren<Comparison*>()) {
      const QWidget* before = nullptr;
      const QWidget* first = shown.nextInFocusChain();
      for (const QWidget* at = first; at != &shown; at = at->nextInFocusChain()) {
        if (!table->isAncestorOf(at) || (at->focusPolicy() & Qt::TabFocus) == 0) {
          continue;
        }
        if (before != nullptr) {
          const QPoint from = before->mapTo(table, before->rect().center());
          const QPoint to = at->mapTo(table, at->rect().center());
          const bool sameRow = std::abs(from.y() - to.y()) < before->height() / 2;
          EXPECT_TRUE(sameRow ? to.x() > from.x() : to.y() > from.y())
              << at->accessibleName().toStdString();
        }
        before = at;
      }
      EXPECT_NE(before, nullptr);
    }
  }
}

TEST_F(Window, IsReadableOnLightAndDarkPaper) {
  for (const QColor& ground : {QColor(0xef, 0xef, 0xef), QColor(0x2d, 0x2d, 0x2d)}) {
    const QPalette paper = paperPalette(QPalette(ground, ground));
    EXPECT_EQ(ink::dark(paper), ground.lightness() < 128);
    for (const QPalette::ColorRole place :
         {QPalette::Window, QPalette::Base, QPalette::AlternateBase, QPalette::Button}) {
      const QColor under = paper.color(place);
      for (const QColor& colour : {ink::text(paper), ink::muted(paper), ink::accent(paper),
                                   ink::objects(paper), ink::forbids(paper)}) {
        EXPECT_GE(contrast(colour, under), 4.5) << colour.name().toStdString();
      }
      EXPECT_GE(contrast(ink::rule(paper), under), 3.0);
    }
    EXPECT_GE(contrast(paper.color(QPalette::HighlightedText), paper.color(QPalette::Highlight)),
              4.5);
  }
}

TEST_F(Window, FollowsTheDesktopIntoTheDark) {
  openSample(u"tansy-270"_s);
  const Page& page = show(pages().front());
  const QPalette before = QApplication::palette();
  QApplication::setPalette(QPalette(QColor(0x2d, 0x2d, 0x2d)));
  settle();
  EXPECT_TRUE(ink::dark(window_.palette()));
  for (const QuietLabel* label : page.findChildren<QuietLabel*>()) {
    EXPECT_GE(contrast(label->palette().color(QPalette::WindowText),
                       window_.palette().color(QPalette::Window)),
              4.5)
        << label->text().toStdString();
  }
  QApplication::setPalette(before);
  settle();
  EXPECT_FALSE(ink::dark(window_.palette()));
}

// In agreement -----------------------------------------------------------------------------------

QString plain(QString text) { return text.replace(u'\u00A0', u' '); }

class Samples : public Window, public testing::WithParamInterface<const char*> {};

TEST_P(Samples, ShowWhatTheAssessmentTells) {
  openSample(QLatin1StringView(GetParam()));
  const assess::Assessment& assessment = document_.assessment();
  for (const PageDescription& page : pages()) {
    int numbers = 0;
    for (const Comparison* table : show(page).findChildren<Comparison*>()) {
      for (const ResultLabel* label : table->findChildren<ResultLabel*>()) {
        const describe::Cell& cell = assessment(label->engine(), label->result());
        if (cell.state == describe::State::Value &&
            assessment.sameInAll(label->engine(), label->result()) &&
            label->objectName().isEmpty()) {
          ++numbers;
          EXPECT_TRUE(plain(label->shownText())
                          .startsWith(plain(taste_.value(label->result(), cell.value))))
              << label->shownText().toStdString();
        }
      }
    }
    const bool any = std::ranges::any_of(page.results, [&](const describe::Result* result) {
      return assessment(kTarget, *result).state == describe::State::Value &&
             assessment.sameInAll(kTarget, *result);
    });
    EXPECT_EQ(numbers > 0, any) << page.key.toStdString();
  }
}

/// What a sample has not measured is named by its entry; ports mean nothing for a four-stroke.
TEST_P(Samples, AnswerEveryQuestion) {
  openSample(QLatin1StringView(GetParam()));
  for (const PageDescription& page : pages()) {
    const Answer& answer = show(page).answer();
    EXPECT_FALSE(answer.sentence.isEmpty()) << page.key.toStdString();
    const bool without = answer.unlocks != nullptr || answer.result == nullptr ||
                         answer.sentence.startsWith(u"no plate"_s);
    EXPECT_TRUE(without || !answer.number.isEmpty()) << page.key.toStdString();
  }
}

INSTANTIATE_TEST_SUITE_P(Four, Samples,
                         testing::Values("tansy-270", "burdock-719", "teasel-125", "culvert-1040"),
                         [](const auto& row) {
                           const std::string name = row.param;
                           return name.substr(0, name.find('-'));
                         });

TEST_F(Window, SaysWhichEntryWouldUnlockTheAnswer) {
  document_.startNew();
  for (const PageDescription& description : pages()) {
    const Answer& answer = show(description).answer();
    if (answer.result == nullptr) {
      continue;
    }
    ASSERT_NE(answer.unlocks, nullptr) << description.key.toStdString();
    window_.page()->focusEntry(answer.unlocksOf, *answer.unlocks);
  }
}

TEST_F(Window, SaysOnceWhatSeveralEnginesHaveInCommon) {
  openSample(u"burdock-719"_s);
  const Desk desk(document_, taste_);
  const auto shared = findingsOf(desk, deckPage());
  const auto seats = std::find_if(shared.begin(), shared.end(), [](const SharedFinding& finding) {
    return finding.finding->about.front() == &in::seatHeight;
  });
  ASSERT_NE(seats, shared.end());
  EXPECT_EQ(seats->engines.size(), document_.project().engines.size());
}

TEST_F(Window, TellsEachFindingAtHomeAndLeadsThereFromElsewhere) {
  openSample(u"burdock-719"_s);
  const Desk desk(document_, taste_);
  for (const int engine : columnsOf(desk)) {
    for (const describe::Finding& finding : document_.assessment().findings(engine)) {
      EXPECT_TRUE(std::ranges::any_of(pages(), [&](const PageDescription& page) {
        return !page.speaksOfAll && belongsTo(page, finding);
      })) << finding.key;
    }
  }
  const Elsewhere others = elsewhere(desk, enginesPage());
  ASSERT_GT(others.count, 0U);
  EXPECT_EQ(others.pages.front()->key, revsPage().key);  // ring flutter stops the speed wanted
  show(enginesPage());
  const auto keys = window_.page()->findChildren<LinkButton*>();
  const auto lead = std::ranges::find_if(
      keys, [](const LinkButton* key) { return key->text().contains(revsPage().name); });
  ASSERT_NE(lead, keys.end());
  (*lead)->click();
  settle();
  EXPECT_EQ(window_.page()->description().key, revsPage().key);
}

TEST_F(Window, WhereNoPortMeansAnythingOneSentenceSaysSo) {
  openSample(u"burdock-719"_s);  // a four-stroke
  EXPECT_TRUE(show(portsPage()).idle());
  for (const Comparison* table : window_.page()->findChildren<Comparison*>()) {
    EXPECT_FALSE(table->isVisible());
  }
  EXPECT_FALSE(window_.page()->answer().sentence.isEmpty());
  openSample(u"teasel-125"_s);  // a two-stroke
  EXPECT_FALSE(show(portsPage()).idle());
  EXPECT_TRUE(window_.page()->findChild<Comparison*>()->isVisible());
}

TEST_F(Window, SaysWhyTheSpacerCannotBePutIn) {
  openSample(u"burdock-719"_s);
  show(deckPage());
  const auto keys = window_.page()->findChildren<LinkButton*>();
  const auto deed = std::ranges::find_if(keys, [](const LinkButton* key) {
    return key->text() == deckPage().deed.says && !key->isEnabled();
  });
  ASSERT_NE(deed, keys.end());
  EXPECT_EQ((*deed)->toolTip(), u"already so"_s);
  EXPECT_TRUE((*deed)->accessibleName().endsWith(u"already so"_s));
}

// By hand ----------------------------------------------------------------------------------------

TEST_F(Window, PutsTheSpacerToMakeIntoTheTarget) {
  openSample(u"burdock-719"_s);
  const int target = document_.project().target();
  document_.type(target, in::spacer, {});
  show(deckPage());
  const PageDescription deck = deckPage();
  for (QWidget* widget : window_.page()->findChildren<QWidget*>()) {
    if (widget->accessibleName() == deck.deed.says) {
      QTest::mouseClick(widget, Qt::LeftButton);
    }
  }
  const describe::Entry& spacer = document_.entry(target, in::spacer);
  EXPECT_EQ(spacer.text, "1.03; 0.95; 0.86 ± 0.01 mm");
  EXPECT_EQ(spacer.origin, describe::Origin::Computed);
  document_.undoStack().undo();
  EXPECT_TRUE(document_.entry(target, in::spacer).empty());
}

/// Types as a person does: a text into the field that has the focus, then Tab.
class Typist {
 public:
  explicit Typist(MainWindow& window) : window_(window) {}

  void write(int engine, const describe::Input& input, const char* text) {
    for (int steps = 0; steps < kMostSteps; ++steps) {
      QWidget* field = QApplication::focusWidget();
      ASSERT_NE(field, nullptr);
      if (inputOf(field) == &input && engineOf(field) == engine) {
        QTest::keyClicks(field, QString::fromUtf8(text));
        return;
      }
      QTest::keyClick(field, Qt::Key_Tab);
    }
    FAIL() << "Tab does not reach " << input.key;
  }

  void page(const QString& key) {
    const auto found = std::ranges::find(pages(), key, &PageDescription::key);
    const auto number = static_cast<int>(found - pages().begin()) + 1;
    QTest::keyClick(&window_, static_cast<Qt::Key>(Qt::Key_0 + number), Qt::ControlModifier);
    settle();
  }

 private:
  static constexpr int kMostSteps = 400;
  MainWindow& window_;
};

TEST_F(Window, LeadsFromNothingToTheSpacerByKeyboardAlone) {
  window_.activateWindow();
  ASSERT_TRUE(QTest::qWaitForWindowActive(&window_));
  QTest::keyClick(&window_, Qt::Key_N, Qt::ControlModifier);
  settle();
  Typist typist(window_);
  struct Entry {
    const describe::Input* input;
    const char* text;
  };
  const Entry first[] = {{&in::cylinderCount, "1"},
                         {&in::bore, "66.0"},
                         {&in::crankThrow, "33"},
                         {&in::rodLength, "118 mm"},
                         {&in::compressionHeight, "27,5"}};
  const Entry second[] = {{&in::wantedSquish, "0.90"},
                          {&in::seatHeight, "98.20"},
                          {&in::barrelHeight, "79.25"},
                          {&in::baseGasket, "0.25"},
                          {&in::headGasket, "0.75"}};
  for (const int engine : {kDonor, kTarget}) {
    typist.page(u"engines"_s);
    for (const Entry& entry : first) {
      typist.write(engine, *entry.input, entry.text);
    }
    typist.page(u"deck"_s);
    for (const Entry& entry : second) {
      typist.write(engine, *entry.input, entry.text);
    }
  }
  // δ wanted 0.15; crown 118 + 33 + 27.5; stack 98.20 + 0.25 + 79.25: by hand.
  EXPECT_EQ(window_.page()->answer().number, u"0.95\u00A0mm"_s);
}

TEST_F(Window, NamesOnlyEntriesThatReallyBuyTheNextRevs) {
  openSample(u"burdock-719"_s);
  const Page& revs = show(revsPage());
  settle();
  const QString said = revs.findChild<NextRevs*>()->shownText();
  EXPECT_TRUE(said.contains(taste_.label(in::crankThrow))) << said.toStdString();
  EXPECT_FALSE(said.contains(taste_.label(in::cylinderOffset))) << said.toStdString();
}

// The window -------------------------------------------------------------------------------------

TEST_F(Window, GoesThroughAllPagesWithCtrlTab) {
  openSample(u"tansy-270"_s);
  window_.showPage(pages().front().key);
  for (std::size_t i = 1; i <= pages().size(); ++i) {
    QTest::keyClick(&window_, Qt::Key_Tab, Qt::ControlModifier);
    settle();
    EXPECT_EQ(window_.page()->description().key, pages()[i % pages().size()].key);
    const QWidget* focus = QApplication::focusWidget();
    EXPECT_TRUE(window_.page()->idle() ||
                (window_.page()->isAncestorOf(focus) && focus->isVisible()))
        << window_.page()->description().key.toStdString();
  }
}

TEST_F(Window, CarriesNameAndModifiedMarkInItsTitle) {
  openSample(u"tansy-270"_s);
  const bool copy = window_.isWindowModified();
  EXPECT_TRUE(window_.windowTitle().startsWith(u"tansy-270[*]"_s));
  document_.type(document_.project().target(), in::bore, u"80"_s);
  EXPECT_TRUE(window_.isWindowModified());
  document_.undoStack().undo();
  EXPECT_EQ(window_.isWindowModified(), copy);
}

TEST_F(Window, OpensAFileThatIsDroppedOnIt) {
  QMimeData dragged;
  dragged.setUrls({QUrl::fromLocalFile(sample(u"teasel-125"_s))});
  QDragEnterEvent enter(QPoint(10, 10), Qt::CopyAction, &dragged, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(&window_, &enter);
  EXPECT_TRUE(enter.isAccepted());
  QDropEvent drop(QPointF(10, 10), Qt::CopyAction, &dragged, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(&window_, &drop);
  EXPECT_EQ(document_.path(), sample(u"teasel-125"_s));
  EXPECT_NE(window_.page(), nullptr);
}

TEST_F(Window, SaysWhyAFileCannotBeOpenedAndKeepsTheProject) {
  put(inFolder(u"broken.strokewright"_s), "{ not a project");
  document_.type(kTarget, in::bore, u"66"_s);
  EXPECT_FALSE(window_.openFile(inFolder(u"broken.strokewright"_s)));
  EXPECT_FALSE(window_.notice().shownText().isEmpty());
  EXPECT_EQ(bore().text, "66");
}

TEST_F(Window, AsksBeforeItClosesOnUnsavedWork) {
  document_.type(kTarget, in::bore, u"66"_s);
  QString asked;
  QTimer::singleShot(0, [&asked] {
    auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
    ASSERT_NE(box, nullptr);
    asked = box->text();
    box->button(QMessageBox::Cancel)->click();
  });
  EXPECT_FALSE(window_.close());
  EXPECT_TRUE(asked.contains(document_.shownName())) << asked.toStdString();
  QTimer::singleShot(0, [] {
    auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
    ASSERT_NE(box, nullptr);
    box->button(QMessageBox::Discard)->click();
  });
  EXPECT_TRUE(window_.close());
}

TEST_F(Window, TheAnswersToUnsavedWorkHaveTheirLettersAndEscapeIsCancel) {
  document_.type(kTarget, in::bore, u"66"_s);
  QTimer::singleShot(0, [] {
    auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
    ASSERT_NE(box, nullptr);
    for (const auto& [button, key] :
         {std::pair{QMessageBox::Save, Qt::Key_S}, std::pair{QMessageBox::Discard, Qt::Key_D},
          std::pair{QMessageBox::Cancel, Qt::Key_C}}) {
      EXPECT_EQ(box->button(button)->shortcut(), QKeySequence(Qt::ALT | key));
    }
    QTest::keyClick(box, Qt::Key_Escape);
    EXPECT_EQ(box->clickedButton(), box->button(QMessageBox::Cancel));
  });
  EXPECT_FALSE(window_.close());
  EXPECT_TRUE(document_.modified());
}

TEST_F(WithDocument, AWindowLeftOffTheScreenComesBack) {
  {
    MainWindow window(document_, taste_);
    window.setGeometry(-5000, -5000, 900, 650);
    QSettings().setValue(u"window/geometry"_s, window.saveGeometry());
  }
  MainWindow window(document_, taste_);
  EXPECT_TRUE(window.screen()->availableGeometry().intersects(window.frameGeometry()));
}

TEST_F(WithDocument, TheRevsAreOpenWhileOneLineStillWaits) {
  ASSERT_TRUE(document_.open(sample(u"teasel-125"_s)));
  const Desk desk(document_, taste_);
  const PageDescription revs = revsPage();
  PageDescription quiet = revs;  // without what objects to it
  quiet.entries.clear();
  document_.type(document_.project().target(), in::rodLeastSection, u"60"_s);
  EXPECT_EQ(stateOf(desk, quiet).standing, Standing::Settled);
  document_.type(document_.project().target(), in::rodLeastSection, {});
  EXPECT_EQ(stateOf(desk, quiet).standing, Standing::Open);
}

TEST_F(Window, TheCeilingIsAtMostSoMuchWhileOneLineWaits) {
  openSample(u"teasel-125"_s);
  document_.type(kTarget, in::wantedSpeed, u"5000"_s);
  document_.type(kTarget, in::rodLeastSection, u"60"_s);
  EXPECT_FALSE(show(revsPage()).answer().number.startsWith(u"at most"_s));
  EXPECT_TRUE(window_.page()->answer().sentence.contains(u"below the ceiling"_s))
      << window_.page()->answer().sentence.toStdString();
  document_.type(kTarget, in::rodLeastSection, {});
  const Answer& answer = window_.page()->answer();
  EXPECT_TRUE(answer.number.startsWith(u"at most "_s)) << answer.number.toStdString();
  EXPECT_TRUE(answer.sentence.startsWith(u"1 limit is not known yet"_s))
      << answer.sentence.toStdString();
  EXPECT_FALSE(answer.sentence.contains(u"below the ceiling"_s));
}

TEST_F(Window, ThePlateFollowsHowManyThereAreToBe) {
  openSample(u"burdock-719"_s);
  document_.type(kTarget, in::spacer, u"1.00; 0.90; 0.80"_s);
  document_.type(kTarget, in::platesInStack, u"one_for_each"_s);
  show(platePage());
  EXPECT_EQ(window_.page()->answer().number, u"1.00 · 0.90 · 0.80\u00A0mm"_s);
  document_.type(kTarget, in::platesInStack, u"one_for_all"_s);
  EXPECT_EQ(window_.page()->answer().number, u"1.00 · 0.90 · 0.80\u00A0mm"_s);
  EXPECT_TRUE(window_.page()->answer().sentence.contains(u"tapered"_s));
  document_.type(kTarget, in::spacer, {});
  const double flat = document_.assessment()(kTarget, out::flatSpacer).value;
  EXPECT_EQ(window_.page()->answer().number, taste_.value(out::flatSpacer, flat));
  EXPECT_TRUE(window_.page()->answer().sentence.contains(u"flat"_s));
}

TEST_F(Window, ASpacerForARatioSaysTheGapItLeaves) {
  openSample(u"burdock-719"_s);
  document_.type(kTarget, in::stackDriver, u"compression_ratio"_s);
  document_.type(kTarget, in::wantedCompressionRatio, u"13"_s);
  show(deckPage());
  const double gap = document_.assessment()(kTarget, out::squishWithSpacerToMake, 0).value;
  EXPECT_LT(gap, 0.5e-3);
  EXPECT_TRUE(window_.page()->answer().sentence.contains(
      u"leaves a squish gap of "_s + taste_.number(units::Kind::FineLength, gap)))
      << window_.page()->answer().sentence.toStdString();
}

TEST_F(Window, CountsNoDifferenceWithWhatCannotBe) {
  openSample(u"burdock-719"_s);
  show(enginesPage());
  const auto differences = [&] {
    QStringList texts;
    for (const auto* label : window_.page()->findChildren<DifferenceLabel*>()) {
      texts += label->accessibleName();
    }
    return texts;
  };
  EXPECT_TRUE(differences().contains(u"difference +2.00"_s));  // bore 68 beside 66
  document_.type(kTarget, in::bore, u"-3"_s);
  settle();
  EXPECT_FALSE(differences().join(u'|').contains(u"69"_s));
  EXPECT_FALSE(differences().contains(u"difference unlike"_s));
  document_.type(kTarget, in::rodLength, u"118; 119; 118"_s);
  settle();
  EXPECT_TRUE(differences().contains(u"difference unlike"_s));
  EXPECT_FALSE(differences().contains(u"difference +2.00"_s));
}

TEST_F(Window, WhatOnlyChecksKeepsNoSheetUnfinished) {
  openSample(u"burdock-719"_s);
  const Desk& desk = *window_.findChild<Desk*>();
  for (const MissingEntry& missing : missingEntries(desk)) {
    EXPECT_NE(missing.input, &in::wholeVolume);
    EXPECT_NE(missing.input, &in::measuredDeckClearance);
  }
}

TEST_F(Window, CtrlZInAQuestionIsThatOfTheProject) {
  openSample(u"burdock-719"_s);
  const std::string before = document_.entry(kTarget, in::bore).text;
  document_.type(kTarget, in::bore, u"67"_s);
  document_.closeStep();
  for (const QString& key : {u"what_if"_s, u"motion"_s, u"rhythm"_s}) {
    SCOPED_TRACE(key.toStdString());
    window_.showPage(key);
    settle();
    for (auto* field : window_.page()->findChildren<QLineEdit*>()) {
      // Where words are searched for, the list that drops down has the keys.
      if (inputOf(field) != nullptr || !field->isVisible() || field->completer()) continue;
      field->setFocus();
      QTest::keyClicks(field, u"9"_s);
      QTest::keyClick(field, Qt::Key_Z, Qt::ControlModifier);
      EXPECT_EQ(document_.entry(kTarget, in::bore).text, before);
      document_.undoStack().redo();
    }
  }
}

TEST_F(Window, TabGoesFromTheKeysOverTheRecentFilesToTheSamples) {
  const QTemporaryDir folder;
  document_.startNew();
  ASSERT_TRUE(document_.saveAs(folder.filePath(u"first.strokewright"_s)));
  window_.showStart();
  settle();
  QStringList reached;
  QWidget* start = window_.findChild<StartPage*>();
  for (QWidget* at = start->focusProxy(); reached.size() < 4; at = at->nextInFocusChain()) {
    if (const auto* key = qobject_cast<const QAbstractButton*>(at)) reached += key->text();
  }
  EXPECT_EQ(reached.mid(2), (QStringList{u"first"_s, u"Burdock 719"_s}));
}

TEST_F(Window, WhereThereIsNoRoomForAPlateItSaysWhatComesOff) {
  openSample(u"burdock-719"_s);
  document_.type(kTarget, in::spacer, {});
  document_.type(kTarget, in::platesInStack, u"one_for_all"_s);
  document_.type(kTarget, in::barrelHeight, u"82"_s);  // 2.75 mm more than the sample's
  show(platePage());
  const double flat = document_.assessment()(kTarget, out::flatSpacer).value;
  ASSERT_LT(flat, 0.0);
  EXPECT_EQ(window_.page()->answer().number, u"none"_s);
  EXPECT_EQ(window_.page()->answer().sentence,
            u"take %1 off"_s.arg(taste_.shown(units::Kind::FineLength, -flat)));
  document_.type(kTarget, in::platesInStack, u"one_for_each"_s);
  EXPECT_EQ(window_.page()->answer().number, u"none"_s);
  EXPECT_TRUE(window_.page()->answer().sentence.startsWith(u"cylinder 1: take "_s))
      << window_.page()->answer().sentence.toStdString();
}

TEST_F(WithDocument, APageWhoseAnswerIsRefusedIsForbiddenAndSaysWhy) {
  ASSERT_TRUE(document_.open(sample(u"burdock-719"_s)));
  const Desk desk(document_, taste_);
  document_.type(kTarget, in::rodLength, u"20"_s);  // shorter than the throw: it cannot turn
  for (const PageDescription& page : {deckPage(), compressionPage(), motionPage()}) {
    ASSERT_EQ(document_.assessment()(kTarget, *page.decides.back()).state, describe::State::Refused)
        << page.key.toStdString();
    EXPECT_EQ(stateOf(desk, page).standing, Standing::Forbidden) << page.key.toStdString();
    const auto findings = findingsOf(desk, page);
    EXPECT_TRUE(std::ranges::any_of(findings, [](const SharedFinding& shared) {
      return shared.finding->weight == describe::Weight::Forbids;
    })) << page.key.toStdString();
  }
}

// Mean piston speed is 2 S n: of the donor's 62 mm at 9500 rpm 19.63 m/s, of the target's 66 mm
// 20.90 m/s (Heywood ch. 2).
TEST_F(WithDocument, TheMotionIsComparedAtTheSameSpeed) {
  ASSERT_TRUE(document_.open(sample(u"burdock-719"_s)));
  const Desk desk(document_, taste_);
  QString said = motionPage().answer(desk).further;
  said.replace(QChar::Nbsp, QChar::Space);
  EXPECT_EQ(said,
            u"donor 19.84 m/s at 9600 rpm; at 9500 rpm it would be 19.63 m/s, difference +1.27"_s);
  document_.type(kDonor, in::wantedSpeed, u"9500"_s);
  said = motionPage().answer(desk).further;
  said.replace(QChar::Nbsp, QChar::Space);
  EXPECT_EQ(said, u"donor 19.63 m/s, difference +1.27"_s);
}

TEST_F(WithDocument, WhatDoesNotApplyIsNotNeededOnAnEmptyProject) {
  const Desk desk(document_, taste_);
  for (const PageDescription& page : pages()) {
    EXPECT_NE(stateOf(desk, page).standing, Standing::Settled) << page.key.toStdString();
  }
  EXPECT_EQ(stateOf(desk, portsPage()).standing, Standing::Open) << "of which cycle it is";
  document_.type(kTarget, in::cycle, u"four_stroke"_s);
  for (const PageDescription& page : {portsPage(), choicePage(), whatIfPage()}) {
    EXPECT_EQ(stateOf(desk, page).standing, Standing::NotNeeded) << page.key.toStdString();
  }
}

TEST_F(Window, NamesTheEntryThatTheSheetMisses) {
  openSample(u"burdock-719"_s);
  const int target = document_.project().target();
  document_.type(target, in::compressionHeight, {});
  const Answer& answer = show(paperPage()).answer();
  ASSERT_NE(answer.unlocks, nullptr);
  EXPECT_TRUE(answer.further.contains(inSentence(taste_.label(*answer.unlocks))))
      << answer.further.toStdString();
}

TEST_F(Window, ThePaperAnswersForTheSheetThatIsChosen) {
  openSample(u"burdock-719"_s);
  const Page& paper = show(paperPage());
  const QString ofSpec = paper.answer().sentence;
  EXPECT_TRUE(ofSpec.startsWith(u"One page"_s)) << ofSpec.toStdString();
  const auto boxes = paper.findChild<SheetPreview*>()->findChildren<QComboBox*>();
  auto* const sheets = *std::ranges::find(boxes, u"Sheet"_s, &QComboBox::accessibleName);
  const auto choose = [&](sheet::SheetKind kind) {
    sheets->setCurrentIndex(sheets->findData(static_cast<int>(kind)));
    return paper.answer().sentence;
  };
  EXPECT_TRUE(choose(sheet::SheetKind::Throws).startsWith(u"Throws sheet: "_s));
  EXPECT_TRUE(choose(sheet::SheetKind::Survey).startsWith(u"Survey sheet: "_s));
  document_.type(document_.project().target(), in::headGasket, {});
  EXPECT_TRUE(choose(sheet::SheetKind::Stack).startsWith(u"Stack sheet: Squish gap waits"_s))
      << paper.answer().sentence.toStdString();
  EXPECT_EQ(paper.answer().number, u"Unfinished"_s);
  document_.undoStack().undo();
  EXPECT_EQ(choose(sheet::SheetKind::Spec), ofSpec);
}

TEST_F(WithDocument, TheLimitLinesShowVariantsWhereThereIsRoom) {
  ASSERT_TRUE(document_.open(sample(u"burdock-719"_s)));
  Desk desk(document_, taste_);
  LimitLines lines(desk);
  lines.resize(400, 300);
  lines.show();
  EXPECT_EQ(lines.engines(), (std::vector{kDonor, kTarget}));
  lines.resize(1200, 300);
  EXPECT_EQ(lines.engines(), (std::vector{kDonor, kTarget, 2}));
  lines.resize(400, 300);
  EXPECT_EQ(lines.engines(), (std::vector{kDonor, kTarget}));
}

TEST_F(WithDocument, TheWayThroughWritesEveryStateOut) {
  EXPECT_EQ(stateText({Standing::Settled, 0}), u"settled"_s);
  EXPECT_EQ(stateText({Standing::NotNeeded, 0}), u"not needed"_s);
  EXPECT_EQ(stateText({Standing::Open, 0}), u"open"_s);
  EXPECT_EQ(stateText({Standing::ObjectedTo, 2}), u"objected to · 2"_s);
  EXPECT_EQ(stateText({Standing::Forbidden, 1}), u"forbidden · 1"_s);
}

/// The key of the notice, or of the first screen, that says this.
QAbstractButton* key(const QWidget& place, const QString& says) {
  for (auto* button : place.findChildren<QAbstractButton*>()) {
    if (button->text() == says && button->isVisible()) {
      return button;
    }
  }
  return nullptr;
}

TEST_F(Window, OffersTheWorkThatACrashLeftAndRecoversIt) {
  QProcess child;
  child.start(QApplication::applicationFilePath(), {u"--type-and-hang"_s, u"-"_s, u"98,20"_s});
  ASSERT_TRUE(child.waitForReadyRead());
  child.kill();
  child.waitForFinished();
  window_.showStart();
  settle();
  EXPECT_TRUE(window_.notice().shownText().contains(u"New conversion"_s));
  EXPECT_TRUE(window_.notice().shownText().contains(u"never saved"_s));
  EXPECT_NE(key(window_.notice(), u"keep for later"_s), nullptr);
  QAbstractButton* recover = key(window_.notice(), u"recover"_s);
  ASSERT_NE(recover, nullptr);
  recover->click();
  settle();
  EXPECT_EQ(document_.entry(kDonor, in::bore).text, "98,20");
  EXPECT_NE(window_.page(), nullptr);
}

TEST_F(Window, OffersWhatACrashLeftOfTheFileThatIsOpened) {
  const QString path = inFolder(u"burdock.strokewright"_s);
  const QString other = inFolder(u"other.strokewright"_s);
  ASSERT_TRUE(document_.saveAs(other));
  ASSERT_TRUE(document_.saveAs(path));
  QProcess child;
  child.start(QApplication::applicationFilePath(), {u"--type-and-hang"_s, path, u"98.20"_s});
  ASSERT_TRUE(child.waitForReadyRead());
  child.kill();
  child.waitForFinished();
  ASSERT_TRUE(window_.openFile(other));
  settle();
  EXPECT_EQ(key(window_.notice(), u"recover"_s), nullptr) << "it is of another file";
  ASSERT_TRUE(window_.openFile(path));
  settle();
  EXPECT_TRUE(window_.notice().shownText().contains(u"burdock.strokewright"_s));
  QAbstractButton* recover = key(window_.notice(), u"recover"_s);
  ASSERT_NE(recover, nullptr);
  recover->click();
  settle();
  EXPECT_EQ(document_.entry(kDonor, in::bore).text, "98.20");
  EXPECT_EQ(document_.path(), path);
}

TEST_F(Window, StartsBesideARecoveryFileThatCannotBeRead) {
  QDir().mkpath(RecoveryFile::folder());
  put(RecoveryFile::folder() + u"/broken.recovery"_s, "{");
  window_.showStart();
  settle();
  QAbstractButton* discard = key(window_.notice(), u"discard"_s);
  ASSERT_NE(discard, nullptr);
  discard->click();
  EXPECT_TRUE(RecoveredWork::find().empty());
}

TEST_F(Window, GreysARecentFileThatIsGoneAndForgetsItOnRequest) {
  taste_.noteFile(inFolder(u"gone.strokewright"_s));
  settle();
  QAbstractButton* gone = key(window_, u"gone"_s);
  ASSERT_NE(gone, nullptr);
  EXPECT_FALSE(gone->isEnabled());
  key(window_, u"remove"_s)->click();
  settle();
  EXPECT_TRUE(taste_.recentFiles().isEmpty());
  EXPECT_EQ(key(window_, u"gone"_s), nullptr);
}

TEST_F(Window, FollowsEnginesThatComeAndGo) {
  openSample(u"tansy-270"_s);
  for (const PageDescription& page : pages()) {
    show(page);
  }
  const std::size_t engines = document_.project().engines.size();
  const int variant = document_.addEngine(model::Part::Variant, document_.project().target());
  settle();
  EXPECT_EQ(document_.project().engines.size(), engines + 1);
  document_.removeEngine(variant);
  document_.removeEngine(document_.project().referenceDonor);
  settle();
  document_.undoStack().undo();
  while (!document_.project().engines.empty()) {
    document_.removeEngine(0);
    settle();
  }
  for (const PageDescription& page : pages()) {
    EXPECT_FALSE(show(page).answer().sentence.isEmpty()) << page.key.toStdString();
  }
}

}  // namespace
}  // namespace strokewright::ui
