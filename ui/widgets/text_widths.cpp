#include "ui/widgets/text_widths.h"

#include <QFontMetricsF>
#include <QHash>
#include <QPaintDevice>

namespace strokewright::ui {
namespace {

constexpr qsizetype kMostRemembered = 8192;  // some ten sheets and the tables of a window

struct Key {
  QString text;
  QFont font;
  int resolution;

  bool operator==(const Key&) const = default;
};

std::size_t qHash(const Key& key, std::size_t seed) {
  return qHashMulti(seed, key.text, key.font, key.resolution);
}

}  // namespace

double textWidthOf(const QString& text, const QFont& font, const QPaintDevice& device) {
  static QHash<Key, double> remembered;
  const Key key{text, font, device.logicalDpiX()};
  const auto found = remembered.constFind(key);
  if (found != remembered.constEnd()) return *found;
  if (remembered.size() >= kMostRemembered) remembered.clear();
  const double width = QFontMetricsF(font, &device).horizontalAdvance(text);
  remembered.insert(key, width);
  return width;
}

}  // namespace strokewright::ui
