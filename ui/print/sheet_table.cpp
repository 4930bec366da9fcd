#include "ui/print/sheet_table.h"

#include <QFontMetricsF>
#include <algorithm>
#include <numeric>

#include "ui/document/taste.h"

namespace strokewright::ui {
namespace {

constexpr double kBetween = 2.2;   // [mm] between columns
constexpr double kGroupGap = 1.4;  // [mm] above and below the rule between groups, together
constexpr double kIndent = 2.5;    // [mm] of a subordinate label
constexpr double kHeadings = 2.0;  // [rows]

QString unitText(const QString& unit) {
  return unit.isEmpty() ? QString() : QStringLiteral(", ") + unit;
}

}  // namespace

SheetTable::SheetTable(Drafting& draft, const sheet::Sheet& sheet, double width, bool brief)
    : draft_(draft), sheet_(sheet), width_(width), columns_(sheet.columns.size() + 1, 0.0) {
  const double share =
      0.56 * width / static_cast<double>(std::max<std::size_t>(sheet.columns.size(), 1)) -
      draft.mm(kBetween);
  for (const sheet::Group& group : sheet.groups) {
    for (const sheet::Row& row : group.rows) {
      lines_.push_back(lineOf(row, share, brief));
      lines_.back().beginsGroup = &row == &group.rows.front();
    }
  }
  columns_.back() = sheet.differences ? draft.textWidth(QStringLiteral("difference")) : 0.0;
  for (std::size_t i = 0; i < sheet.columns.size(); ++i) {
    columns_[i] = draft.textWidth(fromCore(sheet.columns[i].heading), true);
  }
  for (const Line& line : lines_) {
    const bool bold = line.emphasis == sheet::Emphasis::Strong;
    labels_ = std::max(labels_, labelWidth(line));
    for (std::size_t i = 0; i < line.texts.size(); ++i) {
      columns_[i] = std::max(columns_[i], draft.textWidth(line.texts[i], bold));
    }
    columns_.back() = std::max(columns_.back(), draft.textWidth(line.difference));
  }
}

SheetTable::Line SheetTable::lineOf(const sheet::Row& row, double share, bool brief) const {
  Line line{fromCore(row.label),
            unitText(fromCore(row.unit)),
            {},
            fromCore(row.difference),
            row.emphasis,
            false};
  const bool bold = row.emphasis == sheet::Emphasis::Strong;
  for (const sheet::Text& text : row.texts) {
    const bool wide = draft_.textWidth(fromCore(text.full), bold) > share;
    line.texts.push_back(fromCore(brief && wide && !text.brief.empty() ? text.brief : text.full));
  }
  return line;
}

double SheetTable::labelWidth(const Line& line) const {
  const bool bold = line.emphasis == sheet::Emphasis::Strong;
  const double indent = line.emphasis == sheet::Emphasis::Subordinate ? draft_.mm(kIndent) : 0.0;
  return indent + draft_.textWidth(line.label, bold) + draft_.textWidth(line.unit);
}

bool SheetTable::fits() const {
  const double gaps = draft_.mm(kBetween) * static_cast<double>(columns_.size());
  return labels_ + gaps + std::accumulate(columns_.begin(), columns_.end(), 0.0) <= width_;
}

double SheetTable::height(double pitch) const {
  const auto rows = static_cast<double>(lines_.size());
  const auto groups = static_cast<double>(sheet_.groups.size());
  return draft_.mm((rows + kHeadings) * pitch + groups * kGroupGap);
}

void SheetTable::paint(QPointF topLeft, double pitch) {
  paintHeading(topLeft, pitch);
  double y = topLeft.y() + draft_.mm(kHeadings * pitch);
  for (const Line& line : lines_) {
    if (line.beginsGroup) {
      const double rule = y + draft_.mm(kGroupGap / 2.0);
      draft_.line(QPointF(topLeft.x(), rule), QPointF(topLeft.x() + width_, rule), draft_.narrow());
      y += draft_.mm(kGroupGap);
    }
    paintLine(line, QPointF(topLeft.x(), y), pitch);
    y += draft_.mm(pitch);
  }
}

void SheetTable::rightAligned(double right, double y, double width, const QString& text, bool bold,
                              const QColor& colour) {
  const QFontMetricsF metrics(draft_.font(bold), draft_.painter().device());
  draft_.text(QPointF(right, y), Qt::AlignRight, metrics.elidedText(text, Qt::ElideRight, width),
              bold, colour);
}

void SheetTable::paintHeading(QPointF topLeft, double pitch) {
  const double first = topLeft.y() + draft_.mm(0.5 * pitch);
  const double second = first + draft_.mm(pitch);
  double right = topLeft.x() + width_;
  if (sheet_.differences) {
    rightAligned(right, second, width_, QStringLiteral("difference"), false, draft_.ink().faint);
    right -= columns_.back() + draft_.mm(kBetween);
  }
  for (std::size_t i = sheet_.columns.size(); i-- > 0;) {
    const sheet::Column& column = sheet_.columns[i];
    const bool own = column.engine == sheet_.engine;
    rightAligned(right, first, columns_[i], fromCore(column.heading), false, draft_.ink().faint);
    rightAligned(right, second, columns_[i], fromCore(column.name), own, draft_.ink().line);
    right -= columns_[i] + draft_.mm(kBetween);
  }
}

void SheetTable::paintLine(const Line& line, QPointF topLeft, double pitch) {
  const double y = topLeft.y() + draft_.mm(pitch / 2.0);
  const bool bold = line.emphasis == sheet::Emphasis::Strong;
  const bool subordinate = line.emphasis == sheet::Emphasis::Subordinate;
  const QColor colour = subordinate ? draft_.ink().faint : draft_.ink().line;
  const double indent = subordinate ? draft_.mm(kIndent) : 0.0;
  const QRectF label =
      draft_.text(QPointF(topLeft.x() + indent, y), Qt::AlignLeft, line.label, bold, colour);
  draft_.text(QPointF(label.right(), y), Qt::AlignLeft, line.unit, false, draft_.ink().faint);
  double right = topLeft.x() + width_;
  if (sheet_.differences) {
    rightAligned(right, y, width_, line.difference, false, draft_.ink().faint);
    right -= columns_.back() + draft_.mm(kBetween);
  }
  for (std::size_t i = line.texts.size(); i-- > 0;) {
    draft_.text(QPointF(right, y), Qt::AlignRight, line.texts[i], bold, colour);
    right -= columns_[i] + draft_.mm(kBetween);
  }
}

}  // namespace strokewright::ui
