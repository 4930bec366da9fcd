#include "ui/print/page_frame.h"

#include <QFontMetricsF>
#include <QGuiApplication>
#include <array>
#include <utility>

#include "ui/document/taste.h"

namespace strokewright::ui {
namespace {

// All in millimetres.
constexpr double kLetterSpacing = 0.02;  // [device units]
constexpr double kPoints = 8.0;          // [pt] of the text; nothing is smaller
constexpr double kPad = 2.5;             // from the frame to what is in it
constexpr double kHead = 11.5;
constexpr double kTitleBlock = 10.5;
constexpr double kFrame = 0.7;  // line width

constexpr int kNarrowCautions = 90;  // [%] of the font's own width, where that spares a line

}  // namespace

Medium paperMedium(double millimetre, int stretch) {
  Medium medium;
  medium.millimetre = millimetre;
  medium.points = kPoints;
  medium.font = QGuiApplication::font();
  medium.font.setStretch(stretch);
  medium.font.setHintingPreference(QFont::PreferNoHinting);
  // Hardly any, but with it letters are not drawn together, and "flutter" is found in the file.
  medium.font.setLetterSpacing(QFont::AbsoluteSpacing, kLetterSpacing);
  medium.ink = DrawingInk::onPaper();
  return medium;
}

PageFrame::PageFrame(Drafting& draft, const QSizeF& paper)
    : draft_(draft),
      outer_(draft.mm(kFilingMargin), draft.mm(kMargin),
             draft.mm(paper.width() - kFilingMargin - kMargin),
             draft.mm(paper.height() - 2.0 * kMargin)),
      inner_(outer_.adjusted(draft.mm(kPad), 0.0, -draft.mm(kPad), 0.0)) {}

QString PageFrame::elided(const QString& text, double width, const QFont& font) {
  return QFontMetricsF(font, draft_.painter().device()).elidedText(text, Qt::ElideRight, width);
}

void PageFrame::rule(double y) {
  draft_.line(QPointF(outer_.left(), y), QPointF(outer_.right(), y), draft_.wide());
}

TextFlow PageFrame::fullWidth(int stretch) {
  QFont font = draft_.font();
  if (stretch != 0) font.setStretch(stretch);
  return TextFlow(font, *draft_.painter().device(), LineRoom{inner_.left(), inner_.width()});
}

void PageFrame::paintFrame() {
  QPen pen = draft_.wide();
  pen.setWidthF(mm(kFrame));
  draft_.rectangle(outer_, pen);
}

double PageFrame::paintHead(const QString& kind, const QString& title, const QString& subtitle) {
  QPainter& painter = draft_.painter();
  const double top = outer_.top() + mm(1.2);
  const QRectF said = draft_.text(QPointF(inner_.right(), top + mm(3.2)), Qt::AlignRight, kind,
                                  false, draft_.ink().faint);
  const QFont large = draft_.font(16.0, true);
  const QFontMetricsF metrics(large, painter.device());
  painter.setFont(large);
  painter.setPen(draft_.ink().line);
  painter.drawText(QPointF(inner_.left(), top + metrics.ascent()),
                   elided(title, said.left() - inner_.left() - mm(4.0), large));
  const double bottom = outer_.top() + mm(kHead);
  draft_.text(QPointF(inner_.left(), bottom - mm(2.6)), Qt::AlignLeft,
              elided(subtitle, inner_.width(), draft_.font()));
  return bottom;
}

double PageFrame::paintTitleBlock(const sheet::TitleBlock& block) {
  const double top = outer_.bottom() - mm(kTitleBlock);
  rule(top);
  const std::array<std::pair<const char*, const std::string*>, 7> cells{{
      {"project", &block.project},
      {"drawn for", &block.drawnFor},
      {"units", &block.units},
      {"revision", &block.revision},
      {"date", &block.date},
      {"sheet", &block.sheet},
      {"made with", &block.program},
  }};
  constexpr std::array kShares = {0.235, 0.19, 0.115, 0.085, 0.12, 0.065, 0.19};
  double left = outer_.left();
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const double width = kShares[i] * outer_.width();
    if (i > 0) draft_.line(QPointF(left, top), QPointF(left, outer_.bottom()), draft_.wide());
    const QPointF at(left + mm(1.6), top + mm(1.0));
    draft_.text(at, Qt::AlignLeft | Qt::AlignTop, QLatin1String(cells[i].first), false,
                draft_.ink().faint);
    const QString value = elided(fromCore(*cells[i].second), width - mm(2.6), draft_.font(true));
    draft_.text(at + QPointF(0.0, mm(4.6)), Qt::AlignLeft | Qt::AlignTop, value, i == 0);
    left += width;
  }
  return top;
}

double PageFrame::paintCautions(const std::string& cautions, double bottom) {
  if (cautions.empty()) return bottom;
  const Paragraph paragraph{QStringLiteral("Take care."), fromCore(cautions)};
  const TextFlow natural = fullWidth();
  const TextFlow narrow = fullWidth(kNarrowCautions);
  const bool spares = narrow.height(paragraph, 0.0) < natural.height(paragraph, 0.0);
  const TextFlow& flow = spares ? narrow : natural;  // a last line of a word or two
  const double top = bottom - mm(1.0) - flow.height(paragraph, 0.0);
  flow.draw(draft_.painter(), draft_.ink().line, paragraph, top);
  return top - mm(1.0);
}

double PageFrame::paintCheckBar(const std::string& words, double y) {
  const QPointF left(inner_.left(), y);
  const QPointF right(inner_.left() + mm(1000.0 * sheet::kCheckBar), y);
  draft_.line(left, right, draft_.wide());
  for (const QPointF& end : {left, right}) {
    draft_.line(end - QPointF(0.0, mm(1.6)), end + QPointF(0.0, mm(1.6)), draft_.narrow());
  }
  draft_.text(QPointF((left.x() + right.x()) / 2.0, y - mm(0.6)),
              Qt::AlignHCenter | Qt::AlignBottom, fromCore(words));
  return right.x();
}

}  // namespace strokewright::ui
