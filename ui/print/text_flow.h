#pragma once
/// Text that flows down a page and past a figure beside it.

#include <QColor>
#include <QFont>
#include <QString>
#include <functional>
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

  /// Height that a paragraph takes, starting at a height [device units].
  double height(const Paragraph& paragraph, double from) const;
  /// Draws it and returns where the next one starts.
  double draw(QPainter& painter, const QColor& colour, const Paragraph& paragraph,
              double from) const;

 private:
  void layOut(QTextLayout& layout, const Paragraph& paragraph, double from) const;

  QFont font_;
  QPaintDevice& device_;
  std::function<LineRoom(double)> room_;
};

}  // namespace strokewright::ui
