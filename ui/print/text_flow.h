#pragma once
/// Text that flows down a page and past a figure beside it.

#include <QColor>
#include <QFont>
#include <QString>
#include <functional>
#include <optional>
#include <vector>

class QPainter;
class QPaintDevice;
class QTextLayout;

namespace strokewright::ui {

/// A paragraph that begins with a word in bold.
struct Paragraph {
  QString lead;
  QString text;
};

/// Where a line may run [device units].
struct LineRoom {
  double left = 0.0;
  double width = 0.0;
};

/// Lays paragraphs out line by line.
class TextFlow {
 public:
  /// @param room where a line may run that begins at a height [device units].
  TextFlow(const QFont& font, QPaintDevice& device, std::function<LineRoom(double)> room);
  /// @param column where every line runs.
  TextFlow(const QFont& font, QPaintDevice& device, const LineRoom& column);

  /// Height that a paragraph takes, starting at a height [device units]. To share a page it is
  /// asked for again and again, and most paragraphs are as they were before an edit: what a column
  /// takes is remembered.
  double height(const Paragraph& paragraph, double from) const;
  /// Draws it and returns where the next one starts.
  double draw(QPainter& painter, const QColor& colour, const Paragraph& paragraph,
              double from) const;

 private:
  double measured(const Paragraph& paragraph, double from) const;
  void layOut(QTextLayout& layout, const Paragraph& paragraph, double from) const;

  QFont font_;
  QPaintDevice& device_;
  std::function<LineRoom(double)> room_;
  std::optional<double> columnWidth_;  ///< where all lines have the same room
};

}  // namespace strokewright::ui
