#pragma once
/// Drawing as a draughtsman does it: two line widths, line types, hatching, dimensions.
///
/// Line types and the widths' ratio of 2 : 1 after ISO 128-2, dimensions after ISO 129-1. Every
/// coordinate is in device units; millimetres are those of the paper or the screen.

#include <QColor>
#include <QFont>
#include <QPainter>
#include <QPainterPath>
#include <QPalette>
#include <QPen>
#include <QPointF>
#include <QRectF>
#include <QString>

namespace strokewright::ui {

/// The colours of a drawing.
struct DrawingInk {
  QColor line;    ///< outlines and text
  QColor faint;   ///< dimensions, centre lines, secondary text
  QColor hatch;   ///< hatching
  QColor paper;   ///< what it is drawn on
  QColor fill;    ///< faces that are seen, not cut
  QColor accent;  ///< what is pointed at

  static DrawingInk onPaper();
  static DrawingInk of(const QPalette& palette);
};

/// On what, how large and how wide is drawn.
struct Medium {
  double millimetre = 1.0;  ///< device units
  double narrow = 0.18;     ///< [mm] narrow lines; wide ones are twice as wide
  double points = 8.0;      ///< size of the text
  QFont font;               ///< family; its size is not read
  DrawingInk ink;

  /// A widget or pixmap of a screen: lines of 1 and 2 pixels, the font as it is.
  static Medium screen(const QPaintDevice& device, const QFont& font, const QPalette& palette);
};

/// How the text of a dimension lies.
enum class Reading {
  Along,   ///< on the dimension line, readable from below or from the right
  Beyond,  ///< likewise, on the dimension line drawn out over its end: too short to carry it
  Level,   ///< beside the dimension line
};

/// [mm] from a dimension line to its level text, clear of the ends of the extension lines.
inline constexpr double kToText = 1.9;

class Drafting {
 public:
  /// The painter keeps its transformation and outlives the drafting.
  Drafting(QPainter& painter, Medium medium);

  QPainter& painter() { return painter_; }
  const Medium& medium() const { return medium_; }
  const DrawingInk& ink() const { return medium_.ink; }
  double mm(double millimetres) const { return millimetres * medium_.millimetre; }

  QPen wide() const;
  QPen heavy() const;  ///< wider than wide: the part in question
  QPen narrow() const;
  QPen centre() const;   ///< long dash, dot
  QPen parting() const;  ///< dashes: where it is cut
  QPen assumed() const;  ///< long dash, two dots: an outline that nobody gave
  QPen given(bool isGiven) const { return isGiven ? wide() : assumed(); }

  /// Hatches an area with narrow lines at 45°.
  /// @param spacing [mm] between the lines
  /// @param falling lines fall to the right instead of rising: the neighbouring part
  void hatch(const QPainterPath& area, double spacing, bool falling = false);
  void hatch(const QRectF& area, double spacing, bool falling = false);

  void line(QPointF from, QPointF to, const QPen& pen);
  void outline(const QPainterPath& path, const QPen& pen);
  void rectangle(const QRectF& rectangle, const QPen& pen);
  void circle(QPointF centre, double radius, const QPen& pen, const QBrush& brush = Qt::NoBrush);
  /// A cross of centre lines.
  void cross(QPointF centre, double reach);

  QFont font(bool bold = false) const;
  QFont font(double points, bool bold) const;
  double textWidth(const QString& text, bool bold = false) const;
  double textHeight() const;
  /// Text at a point: AlignLeft begins there, AlignRight ends there; AlignVCenter by default.
  /// @returns the box it fills.
  QRectF text(QPointF at, Qt::Alignment alignment, const QString& text, bool bold = false,
              const QColor& colour = {});
  /// Text on hatching: the paper is cleared behind it.
  QRectF label(QPointF centre, const QString& text, bool bold = false);

  struct Dimension {
    QPointF from;
    QPointF to;
    double offset = 0.0;  ///< [device units] of the dimension line, to the left of from → to
    QString text;
    Reading reading = Reading::Along;
    bool bold = false;
    QColor colour = {};
    double textShift = 0.0;  ///< [device units] of a level text downwards, with a leader to it
  };
  /// Extension lines, dimension line, two filled arrows and the text. Where it is too short the
  /// arrows come from outside.
  /// @returns the box of line and text, for picking.
  QRectF dimension(const Dimension& dimension);
  /// [device units] Along a dimension line, clear of the extension lines at its ends.
  double roomAlong(const QString& text, bool bold = false) const;

  /// A leader with a filled arrow at its tip, then a text beside its end.
  QRectF leader(QPointF tip, QPointF end, const QString& text, bool bold = false);

 private:
  void arrow(QPointF tip, QPointF direction, const QColor& colour);
  QRectF textAlong(QPointF middle, QPointF direction, const Dimension& dimension);
  QRectF textBeside(QPointF middle, QPointF side, const Dimension& dimension);

  QPainter& painter_;
  Medium medium_;
};

/// Device units to the millimetre of a screen or of paper.
double millimetresOn(const QPaintDevice& device);

}  // namespace strokewright::ui
