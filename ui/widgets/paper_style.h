#pragma once
/// The desktop's own controls, with edges that are seen on our paper.

#include <QProxyStyle>

namespace strokewright::ui {

/// Boxes and fields have a frame in the colour of rules, in the accent with the focus; what is
/// drawn along a scroll bar is darker than its groove, on dark paper lighter; what parts two panes
/// has dots that are seen; tabs are narrow.
class PaperStyle final : public QProxyStyle {
  Q_OBJECT

 public:
  using QProxyStyle::QProxyStyle;

  void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                          QPainter* painter, const QWidget* widget = nullptr) const override;
  void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                   const QWidget* widget = nullptr) const override;
  int pixelMetric(PixelMetric metric, const QStyleOption* option = nullptr,
                  const QWidget* widget = nullptr) const override;
  void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget = nullptr) const override;
};

}  // namespace strokewright::ui
