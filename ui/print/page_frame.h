#pragma once
/// What every sheet has around its matter: frame, head, title block, cautions, check bar.

#include <QRectF>
#include <QSizeF>
#include <QString>
#include <string>

#include "core/sheet/sheet.h"
#include "ui/drawings/drafting.h"
#include "ui/print/text_flow.h"

namespace strokewright::ui {

/// Margins of the drawing frame [mm]: room to file it on the left, as ISO 5457 has it.
inline constexpr double kFilingMargin = 20.0;
inline constexpr double kMargin = 10.0;

/// Pens, ink and a font of 8 points for paper.
/// @param millimetre [device units]
/// @param stretch    [%] of the font's own width
Medium paperMedium(double millimetre, int stretch);

class PageFrame {
 public:
  /// @param draft outlives it
  /// @param paper [mm]
  PageFrame(Drafting& draft, const QSizeF& paper);

  const QRectF& outer() const { return outer_; }
  const QRectF& inner() const { return inner_; }  ///< less a little room at both sides

  void paintFrame();
  /// Kind, title and a line under it. @returns the lower edge.
  double paintHead(const QString& kind, const QString& title, const QString& subtitle);
  /// At the foot. @returns its upper edge.
  double paintTitleBlock(const sheet::TitleBlock& block);
  /// From the bottom up. @returns its upper edge.
  double paintCautions(const std::string& cautions, double bottom);
  /// At the left, its line at this height. @returns its right end.
  double paintCheckBar(const std::string& words, double y);
  /// A wide line from edge to edge.
  void rule(double y);
  /// Lines from edge to edge.
  /// @param stretch [%] of the font's own width; 0: that of the page
  TextFlow fullWidth(int stretch = 0);
  QString elided(const QString& text, double width, const QFont& font);

 private:
  double mm(double millimetres) const { return draft_.mm(millimetres); }

  Drafting& draft_;
  QRectF outer_;
  QRectF inner_;
};

}  // namespace strokewright::ui
