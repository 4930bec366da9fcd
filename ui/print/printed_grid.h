#pragma once
/// A table on a sheet: words on the left, numbers at the right of their columns.

#include <QPointF>
#include <QString>
#include <QStringList>
#include <vector>

#include "core/sheet/bench.h"
#include "ui/drawings/drafting.h"

namespace strokewright::ui {

/// Headings are broken at blanks where they are wider than what stands under them. A narrow table
/// of many rows is laid in two halves side by side.
class PrintedGrid {
 public:
  /// @param draft, grid outlive it
  /// @param width [device units]
  PrintedGrid(Drafting& draft, const sheet::Grid& grid, double width);

  bool fits() const { return natural_ <= width_; }
  /// [device units] with its heading
  double needs() const;
  /// Leaves room for another beside it.
  /// @pre it is as wide as is needed
  void narrowTo(double width) { width_ = width; }
  /// [device units] with at most so many rows in all
  double height(std::size_t rows) const;
  /// @param rows the others are counted in a line under the table
  void paint(QPointF topLeft, std::size_t rows);

 private:
  struct Column {
    QStringList heading;  ///< line by line
    double width = 0.0;   ///< [device units] without the gap to the next
  };

  /// Of a heading; a degree sign does not stand alone.
  QStringList wordsOf(std::size_t place) const;
  void measure();
  void breakHeading(Column& column, std::size_t place);
  void widenTallHeadings();
  std::size_t halves(std::size_t rows) const;
  std::size_t inOneHalf(std::size_t rows) const;
  double pitch() const;
  double headingHeight() const;
  void paintHalf(QPointF topLeft, double width, std::size_t from, std::size_t to);
  void paintCell(const Column& column, std::size_t place, double left, double y,
                 const QString& text, bool faint);

  Drafting& draft_;
  const sheet::Grid& grid_;
  double width_;
  double natural_ = 0.0;  ///< [device units] what it needs
  std::vector<Column> columns_;
};

}  // namespace strokewright::ui
