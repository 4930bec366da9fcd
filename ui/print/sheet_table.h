#pragma once
/// The table of the sheet: donor, target, variant, difference.

#include <QFont>
#include <QPointF>
#include <QString>
#include <vector>

#include "core/sheet/sheet.h"
#include "ui/drawings/drafting.h"

namespace strokewright::ui {

/// What is said in brief where there is too little room, the widest cells first.
enum class Brief {
  Nothing,
  Waits,  ///< "waits" without what for
  Lists,  ///< and "0.86 … 1.03", without saying of which cylinder
};

class SheetTable {
 public:
  /// @param width [device units]
  SheetTable(Drafting& draft, const sheet::Sheet& sheet, double width, Brief mayBe);

  /// Everything finds room beside everything else.
  bool fits() const;
  /// @param pitch [mm] from row to row
  double height(double pitch) const;  ///< [device units]
  void paint(QPointF topLeft, double pitch);

 private:
  struct Line {
    QString label;
    QString unit;
    std::vector<QString> texts = {};
    std::vector<QString> brief = {};  ///< of each text; empty: there is none, or it is taken
    std::vector<QString> exact = {};  ///< of each text; empty: there is none
    std::vector<bool> differs = {};   ///< from cylinder to cylinder
    QString difference;
    sheet::Emphasis emphasis = sheet::Emphasis::Plain;
    bool beginsGroup = false;
  };

  static Line lineOf(const sheet::Row& row);
  double textWidth(const QString& text, bool bold = false) const;  ///< [device units]
  double labelWidth(const Line& line) const;
  double cellWidth(const Line& line, std::size_t column) const;
  double naturalWidth(std::size_t column) const;
  double needs() const;  ///< [device units]
  bool shortenWidest(Brief mayBe);
  void sayExactly();
  int rankOf(const Line& line, std::size_t column) const;
  void paintHeading(QPointF topLeft, double pitch);
  void paintLine(const Line& line, QPointF topLeft, double pitch);
  void rightAligned(double right, double y, double width, const QString& text, bool bold,
                    const QColor& colour);

  Drafting& draft_;
  const sheet::Sheet& sheet_;
  double width_;
  QFont plain_;
  QFont bold_;
  std::vector<Line> lines_;
  double labels_ = 0.0;          ///< [device units]
  std::vector<double> columns_;  ///< [device units] widths, the difference last
  double between_ = 0.0;         ///< [device units] them
};

}  // namespace strokewright::ui
