#include "ui/print/sheet_table.h"

#include <QFontMetricsF>
#include <algorithm>
#include <numeric>
#include <utility>

#include "ui/document/taste.h"
#include "ui/widgets/text_widths.h"

namespace strokewright::ui {
namespace {

constexpr double kBetween = 2.8;  // [mm] between columns, at least
constexpr double kMostBetween = 5.5;
constexpr double kGroupGap = 1.0;  // [mm] above and below the rule between groups, together
constexpr double kIndent = 2.5;    // [mm] of a subordinate label
constexpr double kName = 20.0;     // [mm] of an engine, before it is cut short
constexpr int kLastRank = 3;       // of a cell to be shortened
constexpr double kHeadings = 2.0;  // [rows]

const QString kDifference = QStringLiteral("difference");

QString unitText(const QString& unit) {
  return unit.isEmpty() ? QString() : QStringLiteral(", ") + unit;
}

}  // namespace

SheetTable::SheetTable(Drafting& draft, const sheet::Sheet& sheet, double width, Brief mayBe)
    : draft_(draft),
      sheet_(sheet),
      width_(width),
      plain_(draft.font()),
      bold_(draft.font(true)),
      columns_(sheet.columns.size() + 1, 0.0) {
  for (const sheet::Group& group : sheet.groups) {
    for (const sheet::Row& row : group.rows) {
      lines_.push_back(lineOf(row));
      lines_.back().beginsGroup = &row == &group.rows.front();
    }
  }
  columns_.back() = sheet.differences ? textWidth(kDifference) : 0.0;
  for (const Line& line : lines_) {
    labels_ = std::max(labels_, labelWidth(line));
    columns_.back() = std::max(columns_.back(), textWidth(line.difference));
  }
  for (std::size_t i = 0; i < sheet.columns.size(); ++i) columns_[i] = naturalWidth(i);
  while (mayBe != Brief::Nothing && !fits() && shortenWidest(mayBe)) {
  }
  sayExactly();
  const double spare = (width_ - needs()) / static_cast<double>(columns_.size());
  between_ = draft_.mm(kBetween) + std::clamp(spare, 0.0, draft_.mm(kMostBetween - kBetween));
}

SheetTable::Line SheetTable::lineOf(const sheet::Row& row) {
  Line line{.label = fromCore(row.label),
            .unit = unitText(fromCore(row.unit)),
            .difference = fromCore(row.difference),
            .emphasis = row.emphasis};
  for (const sheet::Text& text : row.texts) {
    line.texts.push_back(fromCore(text.full));
    line.brief.push_back(fromCore(text.brief));
    line.exact.push_back(fromCore(text.exact));
    line.differs.push_back(text.differs);
  }
  return line;
}

double SheetTable::textWidth(const QString& text, bool bold) const {
  return textWidthOf(text, bold ? bold_ : plain_, *draft_.painter().device());
}

double SheetTable::cellWidth(const Line& line, std::size_t column) const {
  return textWidth(line.texts[column], line.emphasis == sheet::Emphasis::Strong);
}

double SheetTable::naturalWidth(std::size_t column) const {
  const sheet::Column& it = sheet_.columns[column];
  double width = std::max(textWidth(fromCore(it.heading)),
                          std::min(textWidth(fromCore(it.name), true), draft_.mm(kName)));
  for (const Line& line : lines_) width = std::max(width, cellWidth(line, column));
  return width;
}

/// Takes the brief text in the widest cell that has one; what the sheet is looked at for comes
/// last.
/// @returns whether there was one.
bool SheetTable::shortenWidest(Brief mayBe) {
  for (int rank = 0; rank <= (mayBe == Brief::Waits ? 0 : kLastRank); ++rank) {
    Line* widest = nullptr;
    std::size_t at = 0;
    for (Line& line : lines_) {
      for (std::size_t i = 0; i < line.texts.size(); ++i) {
        if (line.brief[i].isEmpty() || rankOf(line, i) != rank) continue;
        if (widest != nullptr && cellWidth(line, i) <= cellWidth(*widest, at)) continue;
        widest = &line;
        at = i;
      }
    }
    if (widest == nullptr) continue;
    widest->texts[at] = widest->brief[at];
    widest->brief[at].clear();
    columns_[at] = naturalWidth(at);
    return true;
  }
  return false;
}

int SheetTable::rankOf(const Line& line, std::size_t column) const {
  if (!line.differs[column]) return 0;
  if (line.emphasis != sheet::Emphasis::Strong) return 1;
  return sheet_.columns[column].engine == sheet_.engine ? kLastRank : 2;
}

/// Takes the exact texts of every line for which there is room: those of all its engines or of
/// none.
void SheetTable::sayExactly() {
  for (Line& line : lines_) {
    const std::vector<QString> brief = line.texts;
    const std::vector<double> before = columns_;
    for (std::size_t i = 0; i < line.texts.size(); ++i) {
      if (line.exact[i].isEmpty()) continue;
      line.texts[i] = line.exact[i];
      columns_[i] = std::max(columns_[i], cellWidth(line, i));
    }
    if (fits()) continue;
    line.texts = brief;
    columns_ = before;
  }
}

double SheetTable::labelWidth(const Line& line) const {
  const bool bold = line.emphasis == sheet::Emphasis::Strong;
  const double indent = line.emphasis == sheet::Emphasis::Subordinate ? draft_.mm(kIndent) : 0.0;
  return indent + textWidth(line.label, bold) + textWidth(line.unit);
}

double SheetTable::needs() const {
  const double gaps = draft_.mm(kBetween) * static_cast<double>(columns_.size());
  return labels_ + gaps + std::accumulate(columns_.begin(), columns_.end(), 0.0);
}

bool SheetTable::fits() const { return needs() <= width_; }

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
    rightAligned(right, second, width_, kDifference, false, draft_.ink().faint);
    right -= columns_.back() + between_;
  }
  for (std::size_t i = sheet_.columns.size(); i-- > 0;) {
    const sheet::Column& column = sheet_.columns[i];
    const bool own = column.engine == sheet_.engine;
    rightAligned(right, first, columns_[i], fromCore(column.heading), false, draft_.ink().faint);
    rightAligned(right, second, columns_[i], fromCore(column.name), own, draft_.ink().line);
    right -= columns_[i] + between_;
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
    right -= columns_.back() + between_;
  }
  for (std::size_t i = line.texts.size(); i-- > 0;) {
    draft_.text(QPointF(right, y), Qt::AlignRight, line.texts[i], bold, colour);
    right -= columns_[i] + between_;
  }
}

}  // namespace strokewright::ui
