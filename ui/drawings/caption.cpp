#include "ui/drawings/caption.h"

#include <QPainter>

namespace strokewright::ui {
namespace {

constexpr int kLies = Qt::AlignHCenter | Qt::AlignTop | Qt::TextWordWrap;

}  // namespace

double captionHeight(Drafting& draft, const QString& words, double width) {
  draft.painter().setFont(draft.font());
  constexpr double kAnyHeight = 1e6;
  const QRectF room(0.0, 0.0, width, kAnyHeight);
  return draft.painter().boundingRect(room, kLies, words).height() + 0.2 * draft.textHeight();
}

void paintCaption(Drafting& draft, const QRectF& room, const QString& words) {
  draft.painter().setFont(draft.font());
  draft.painter().setPen(draft.ink().faint);
  draft.painter().drawText(room, kLies, words);
}

}  // namespace strokewright::ui
