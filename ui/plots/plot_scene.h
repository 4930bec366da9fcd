#pragma once
/// What a plot shows, as a plain value: made by one function per plot, drawn by PlotWidget on the
/// screen and by paintPlot() on paper. All numbers are in the units shown.

#include <QPointF>
#include <QString>
#include <functional>
#include <utility>
#include <vector>

#include "core/describe/table_text.h"
#include "core/units/style.h"

namespace strokewright::ui {

/// What a thing is drawn in; the theme gives each a colour that can be told from the others by
/// colour-blind eyes and stands out from light and from dark paper.
enum class Ink : std::uint8_t { Text, Faint, Accent, Blue, Green, Vermilion };

struct PlotAxis {
  QString title = {};  ///< name and unit
  double from = 0.0;   ///< shown at first, and again after "fit"
  double to = 1.0;
  bool degrees = false;                                ///< ticks at parts of a turn
  std::vector<std::pair<double, QString>> names = {};  ///< ticks with words instead of numbers
};

/// One pair of axes; panels stand one below the other and share x.
struct PlotPanel {
  PlotAxis x = {};
  PlotAxis y = {};
};

struct PlotCurve {
  int panel = 0;
  QString label = {};  ///< at the line's end; empty: none
  Ink ink = Ink::Text;
  Qt::PenStyle line = Qt::SolidLine;
  bool heavy = false;
  std::vector<double> x = {};
  std::vector<double> y = {};
};

/// A rectangle with its edges along the axes.
struct PlotRegion {
  int panel = 0;
  QString label = {};  ///< in words, inside the area
  Ink ink = Ink::Faint;
  enum class Fill : std::uint8_t { Rising, Falling, Solid, Open } fill = Fill::Rising;
  Qt::PenStyle outline = Qt::NoPen;
  bool heavy = false;
  QPointF least = {};
  QPointF most = {};
};

struct PlotMark {
  int panel = 0;
  QPointF at = {};
  QPointF plusMinus = {};  ///< half lengths of the bars; 0: none
  QString label = {};
  Ink ink = Ink::Text;
  enum class Shape : std::uint8_t { Disc, Ring, Square, Diamond, None } shape = Shape::Disc;
  bool draggable = false;
  bool keepsClear = false;  ///< its label is left out where it would cover a curve
  int after = -1;           ///< place of the mark without whose label it has none; -1: none
};

/// Data behind a plot whose table is not described in the core, in the units shown.
struct PlotTable {
  struct Column {
    QString heading = {};              ///< name and unit
    std::vector<double> numbers = {};  ///< NaN: an empty field
    std::vector<QString> words = {};   ///< instead of numbers
    int decimals = 4;
  };
  std::vector<Column> columns = {};

  operator std::vector<describe::HeadedColumn>() const;  ///< as a described table is written
};

struct PlotScene {
  units::Style style = {};  ///< decimal mark and minus sign of the ticks
  std::vector<PlotPanel> panels = {};
  std::vector<PlotRegion> regions = {};
  std::vector<PlotCurve> curves = {};
  std::vector<PlotMark> marks = {};
  /// Data behind the plot, for the clipboard and for files; made only when asked for.
  std::function<std::vector<describe::HeadedColumn>(const PlotScene&)> table = {};

  bool empty() const { return regions.empty() && curves.empty() && marks.empty(); }
};

}  // namespace strokewright::ui
