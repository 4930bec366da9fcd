/// What can be seen and heard of the widgets: contrast, names, sizes.

#include <QAccessible>
#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QImage>
#include <QLabel>
#include <QPainter>
#include <QScrollArea>
#include <QScrollBar>
#include <QStyle>
#include <QStyleOption>
#include <QVBoxLayout>
#include <cmath>

#include "core/chamber/results.h"
#include "core/survey/results.h"
#include "tests/ui/fixture.h"
#include "ui/widgets/choice_edit.h"
#include "ui/widgets/entry_words.h"
#include "ui/widgets/finding_line.h"
#include "ui/widgets/ink.h"
#include "ui/widgets/origin_dialog.h"
#include "ui/widgets/quantity_edit.h"
#include "ui/widgets/result_label.h"
#include "ui/widgets/table_view.h"
#include "ui/widgets/whole_rows.h"
#include "ui/widgets/why_panel.h"

namespace strokewright::ui {
namespace {

QPalette lightPalette() { return {QColor(0xef, 0xef, 0xef), QColor(0xef, 0xef, 0xef)}; }
QPalette darkPalette() { return {QColor(0x2d, 0x2d, 0x2d), QColor(0x2d, 0x2d, 0x2d)}; }

// WCAG 2.1, definitions of relative luminance and contrast ratio.
double luminance(const QColor& colour) {
  const auto channel = [](float share) {
    const double s = static_cast<double>(share);
    return s <= 0.03928 ? s / 12.92 : std::pow((s + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * channel(colour.redF()) + 0.7152 * channel(colour.greenF()) +
         0.0722 * channel(colour.blueF());
}

double contrast(const QColor& a, const QColor& b) {
  const double one = luminance(a);
  const double other = luminance(b);
  return (std::max(one, other) + 0.05) / (std::min(one, other) + 0.05);
}

TEST(Ink, WritingIsReadableOnLightAndDarkPaper) {
  EXPECT_FALSE(ink::dark(lightPalette()));
  EXPECT_TRUE(ink::dark(darkPalette()));
  for (const QPalette& palette : {lightPalette(), darkPalette()}) {
    const QColor paper = palette.color(QPalette::Window);
    for (const QColor& colour : {ink::text(palette), ink::muted(palette), ink::accent(palette),
                                 ink::objects(palette), ink::forbids(palette)}) {
      EXPECT_GE(contrast(colour, paper), 4.5) << colour.name().toStdString();
    }
    EXPECT_GE(contrast(ink::rule(palette), paper), 3.0);
  }
}

TEST(Ink, WhatIsNotToBeHadJustNowIsReadableToo) {
  for (QPalette palette : {lightPalette(), darkPalette()}) {
    palette.setColor(QPalette::Disabled, QPalette::WindowText, ink::muted(palette));
    palette.setCurrentColorGroup(QPalette::Disabled);
    EXPECT_GE(contrast(ink::muted(palette), palette.color(QPalette::Window)), 4.5);
  }
}

TEST(Ink, TheDotsBetweenTwoPanesAreSeen) {
  for (const QPalette& palette : {lightPalette(), darkPalette()}) {
    QImage image(16, 60, QImage::Format_RGB32);
    image.fill(palette.color(QPalette::Window));
    QStyleOption option;
    option.rect = image.rect();
    option.palette = palette;
    option.state = QStyle::State_Enabled | QStyle::State_Horizontal;
    QPainter painter(&image);
    QApplication::style()->drawControl(QStyle::CE_Splitter, &option, &painter);
    painter.end();
    int dots = 0;
    for (int y = 0; y < image.height(); ++y) {
      for (int x = 0; x < image.width(); ++x) {
        dots += contrast(image.pixelColor(x, y), palette.color(QPalette::Window)) >= 3.0;
      }
    }
    EXPECT_GE(dots, 16);
  }
}

void expectNames(QAccessibleInterface* shown, int& seen) {
  if (shown->state().focusable && !shown->state().invisible) {
    ++seen;
    EXPECT_FALSE(shown->text(QAccessible::Name).isEmpty())
        << (shown->object() != nullptr ? shown->object()->metaObject()->className() : "?");
  }
  for (int i = 0; i < shown->childCount(); ++i) {
    if (shown->child(i) != nullptr) expectNames(shown->child(i), seen);
  }
}

using Sight = WithDocument;

TEST_F(Sight, WhateverTakesTheFocusHasAName) {
  document_.type(kTarget, in::bore, QStringLiteral("abc"));
  QWidget window;
  new QuantityEdit(document_, kTarget, in::bore, &window);
  new ChoiceEdit(document_, kTarget, in::cycle, &window);
  new ResultLabel(document_, kTarget, out::displacement, -1, &window);
  auto* line = new FindingLine(document_, &window);
  ASSERT_FALSE(document_.assessment().findings(kTarget).empty());
  line->setFinding(document_.assessment().findings(kTarget).front());
  auto* why = new WhyPanel(document_, &window);
  window.show();
  why->explain(kTarget, out::displacement, 0);
  int seen = 0;
  expectNames(QAccessible::queryAccessibleInterface(&window), seen);
  EXPECT_GE(seen, 5);

  OriginDialog dialog(document_, {kTarget, in::bore});
  dialog.show();
  expectNames(QAccessible::queryAccessibleInterface(&dialog), seen);
}

TEST_F(Sight, SizesFollowTheWriting) {
  QuantityEdit field(document_, kTarget, in::bore);
  ResultLabel result(document_, kTarget, out::displacement);
  const QSize before = field.sizeHint();
  const QSize resultBefore = result.sizeHint();
  QFont font = field.font();
  font.setPointSizeF(2 * font.pointSizeF());
  field.setFont(font);
  result.setFont(font);
  EXPECT_GT(field.sizeHint().width(), before.width() * 3 / 2);
  EXPECT_GT(field.sizeHint().height(), before.height() * 3 / 2);
  EXPECT_GT(result.sizeHint().width(), resultBefore.width() * 3 / 2);
}

/// The picture has ink of the colour somewhere.
bool holds(const QImage& picture, const QColor& colour) {
  for (int y = 0; y < picture.height(); ++y) {
    for (int x = 0; x < picture.width(); ++x) {
      if (picture.pixelColor(x, y) == colour) return true;
    }
  }
  return false;
}

TEST_F(Sight, ObjectionsAreMarkedBesideTheFieldOnLightAndDarkPaper) {
  document_.type(kTarget, in::bore, QStringLiteral("abc"));
  for (const QPalette& palette : {lightPalette(), darkPalette()}) {
    QWidget window;
    window.setPalette(palette);
    auto* field = new QuantityEdit(document_, kTarget, in::bore, &window);
    field->resize(field->sizeHint());
    EXPECT_TRUE(holds(window.grab().toImage(), ink::objects(palette)));
    document_.type(kTarget, in::bore, QStringLiteral("76"));
    EXPECT_FALSE(holds(window.grab().toImage(), ink::objects(palette)));
    document_.type(kTarget, in::bore, QStringLiteral("abc"));
  }
}

TEST_F(Sight, LinksInRichTextHaveTheAccentOfTheirPaper) {
  for (const QPalette& palette : {lightPalette(), darkPalette()}) {
    TableView view(document_, kTarget, out::seats);
    view.setPalette(palette);
    view.resize(400, 100);
    view.show();
    ASSERT_TRUE(view.message().startsWith(QStringLiteral("waits for")));
    EXPECT_GE(contrast(ink::accent(palette), palette.color(QPalette::Window)), 4.5);
    EXPECT_TRUE(view.findChild<QLabel*>()->text().contains(ink::accent(palette).name()));
  }
}

TEST_F(Sight, BoxesAndFieldsHaveAnEdge) {
  for (const QPalette& palette : {lightPalette(), darkPalette()}) {
    QLineEdit field;
    QComboBox box;
    QCheckBox mark;
    QScrollBar bar(Qt::Vertical);
    for (QWidget* each : std::initializer_list<QWidget*>{&field, &box, &mark, &bar}) {
      each->setPalette(palette);
      each->resize(80, 120);
      EXPECT_TRUE(holds(each->grab().toImage(), ink::rule(palette)))
          << each->metaObject()->className();
    }
  }
}

TEST_F(Sight, TheLettersOfOriginsHaveAKey) {
  EXPECT_TRUE(originKey().startsWith(QStringLiteral("m\u00A0measured")));
}

TEST(WholeRowsOfAnArea, GoThroughOneThatIsTooHigh) {
  QScrollArea area;
  area.setFrameShape(QFrame::NoFrame);
  area.setWidgetResizable(true);
  auto* body = new QWidget;
  auto* list = new QVBoxLayout(body);
  list->setContentsMargins(0, 0, 0, 0);
  list->setSpacing(0);
  for (const int height : {30, 250, 30, 30}) {
    auto* row = new QWidget;
    row->setFixedHeight(height);
    list->addWidget(row);
  }
  new WholeRows(area);
  area.setWidget(body);
  area.resize(200, 100);
  area.show();
  QApplication::processEvents();
  QScrollBar& bar = *area.verticalScrollBar();
  int seenTo = 0;
  for (int steps = 0; steps < 20; ++steps) {
    EXPECT_LE(bar.value(), seenTo) << "nothing is passed over";
    seenTo = bar.value() + area.viewport()->height();
    bar.triggerAction(QScrollBar::SliderSingleStepAdd);
  }
  EXPECT_GE(seenTo, 340);
}

}  // namespace
}  // namespace strokewright::ui
