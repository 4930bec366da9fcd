#include "ui/print/text_flow.h"

#include <QHash>
#include <QPaintDevice>
#include <QPainter>
#include <QRegularExpression>
#include <QTextLayout>
#include <QTextOption>
#include <utility>

namespace strokewright::ui {

namespace {

/// A unit such as µm/m·K is not broken after its stroke.
QString withWholeUnits(QString text) {
  static const QRegularExpression stroke(QStringLiteral("(?<=\\w)/(?=\\w)"),
                                         QRegularExpression::UseUnicodePropertiesOption);
  return text.replace(stroke, QStringLiteral("/\u2060"));
}

QString wordsOf(const Paragraph& paragraph) {
  const QString text = withWholeUnits(paragraph.text);
  return paragraph.lead.isEmpty() ? text : paragraph.lead + QStringLiteral("\u2002") + text;
}

constexpr qsizetype kMostRemembered = 1024;  // some ten sheets of them

struct InColumn {
  QString lead;
  QString text;
  QFont font;
  double width;
  int resolution;

  bool operator==(const InColumn&) const = default;
};

std::size_t qHash(const InColumn& key, std::size_t seed) {
  return qHashMulti(seed, key.lead, key.text, key.font, key.width, key.resolution);
}

}  // namespace

TextFlow::TextFlow(const QFont& font, QPaintDevice& device, std::function<LineRoom(double)> room)
    : font_(font), device_(device), room_(std::move(room)) {}

TextFlow::TextFlow(const QFont& font, QPaintDevice& device, const LineRoom& column)
    : TextFlow(font, device, [column](double) { return column; }) {
  columnWidth_ = column.width;
}

void TextFlow::layOut(QTextLayout& layout, const Paragraph& paragraph, double from) const {
  QFont bold = font_;
  bold.setBold(true);
  QTextLayout::FormatRange lead;
  lead.start = 0;
  lead.length = static_cast<int>(paragraph.lead.size());
  lead.format.setFont(bold);
  layout.setFormats({lead});
  QTextOption option;
  option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
  layout.setTextOption(option);
  layout.setCacheEnabled(true);
  double y = from;
  layout.beginLayout();
  for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
    const LineRoom room = room_(y);
    line.setLineWidth(room.width);
    line.setPosition(QPointF(room.left, y));
    y += line.height();
  }
  layout.endLayout();
}

double TextFlow::height(const Paragraph& paragraph, double from) const {
  if (!columnWidth_) return measured(paragraph, from);
  static QHash<InColumn, double> remembered;
  const InColumn key{paragraph.lead, paragraph.text, font_, *columnWidth_, device_.logicalDpiX()};
  const auto found = remembered.constFind(key);
  if (found != remembered.constEnd()) return *found;
  if (remembered.size() >= kMostRemembered) remembered.clear();
  return *remembered.insert(key, measured(paragraph, 0.0));
}

double TextFlow::measured(const Paragraph& paragraph, double from) const {
  QTextLayout layout(wordsOf(paragraph), font_, &device_);
  layOut(layout, paragraph, from);
  double height = 0.0;
  for (int i = 0; i < layout.lineCount(); ++i) height += layout.lineAt(i).height();
  return height;
}

double TextFlow::draw(QPainter& painter, const QColor& colour, const Paragraph& paragraph,
                      double from) const {
  QTextLayout layout(wordsOf(paragraph), font_, &device_);
  layOut(layout, paragraph, from);
  painter.setPen(colour);
  layout.draw(&painter, QPointF(0.0, 0.0));
  double next = from;
  for (int i = 0; i < layout.lineCount(); ++i) next += layout.lineAt(i).height();
  return next;
}

}  // namespace strokewright::ui
