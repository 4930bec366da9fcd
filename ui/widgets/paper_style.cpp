#include "ui/widgets/paper_style.h"

#include <QPainter>
#include <QStyleOption>

#include "ui/widgets/ink.h"

namespace strokewright::ui {
namespace {

void frame(QPainter& painter, const QStyleOption& option) {
  const bool focus = (option.state & QStyle::State_HasFocus) != 0;
  const QPalette& palette = option.palette;
  painter.save();
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(focus ? ink::accent(palette) : ink::rule(palette), focus ? 2 : 1));
  painter.drawRect(option.rect.adjusted(0, 0, -1, -1));
  painter.restore();
}

}  // namespace

void PaperStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                                    QPainter* painter, const QWidget* widget) const {
  QProxyStyle::drawComplexControl(control, option, painter, widget);
  if (control == CC_ComboBox || control == CC_SpinBox) {
    frame(*painter, *option);
  } else if (control == CC_ScrollBar) {
    const QRect slider = subControlRect(control, option, SC_ScrollBarSlider, widget);
    painter->fillRect(slider.adjusted(1, 1, -1, -1), ink::rule(option->palette));
  }
}

void PaperStyle::drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                             const QWidget* widget) const {
  if (element != CE_Splitter) {
    QProxyStyle::drawControl(element, option, painter, widget);
    return;
  }
  constexpr int kDots = 5;
  constexpr int kDot = 2;    // [px]
  constexpr int kApart = 5;  // [px]
  const bool upright = (option->state & State_Horizontal) != 0;
  for (int i = 0; i < kDots; ++i) {
    const int along = (i - kDots / 2) * kApart;
    const QPoint at = option->rect.center() + (upright ? QPoint(0, along) : QPoint(along, 0));
    painter->fillRect(QRect(at, QSize(kDot, kDot)), ink::rule(option->palette));
  }
}

int PaperStyle::pixelMetric(PixelMetric metric, const QStyleOption* option,
                            const QWidget* widget) const {
  constexpr int kBesideTabs = 16;  // [px] both sides
  return metric == PM_TabBarTabHSpace ? kBesideTabs
                                      : QProxyStyle::pixelMetric(metric, option, widget);
}

void PaperStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option,
                               QPainter* painter, const QWidget* widget) const {
  QProxyStyle::drawPrimitive(element, option, painter, widget);
  if (element == PE_FrameLineEdit || element == PE_IndicatorCheckBox) frame(*painter, *option);
}

}  // namespace strokewright::ui
