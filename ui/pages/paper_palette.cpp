#include "ui/pages/paper_palette.h"

#include "ui/widgets/ink.h"

namespace strokewright::ui {

namespace {

struct Tones {
  QColor paper, sheet, shade, ink, muted, rule;
};

const Tones kLight{QColor(0xfc, 0xfc, 0xf9), QColor(0xff, 0xff, 0xff), QColor(0xf4, 0xf4, 0xf1),
                   QColor(0x1b, 0x1c, 0x1e), QColor(0x60, 0x63, 0x68), QColor(0xc4, 0xc5, 0xc2)};
const Tones kDark{QColor(0x1a, 0x1c, 0x1f), QColor(0x14, 0x16, 0x18), QColor(0x23, 0x26, 0x2a),
                  QColor(0xec, 0xec, 0xe6), QColor(0xa6, 0xa9, 0xae), QColor(0x4b, 0x4f, 0x55)};

}  // namespace

QPalette paperPalette(const QPalette& desktop) {
  const Tones& tone = ink::dark(desktop) ? kDark : kLight;
  QPalette palette = desktop;
  palette.setColor(QPalette::Window, tone.paper);
  palette.setColor(QPalette::Base, tone.sheet);
  palette.setColor(QPalette::AlternateBase, tone.shade);
  palette.setColor(QPalette::Button, tone.shade);
  palette.setColor(QPalette::ToolTipBase, tone.shade);
  palette.setColor(QPalette::Mid, tone.rule);
  for (const QPalette::ColorRole role :
       {QPalette::WindowText, QPalette::Text, QPalette::ButtonText, QPalette::ToolTipText}) {
    palette.setColor(role, tone.ink);
    palette.setColor(QPalette::Disabled, role, tone.muted);
  }
  palette.setColor(QPalette::PlaceholderText, tone.muted);
  const QColor accent = ink::accent(palette);
  for (const QPalette::ColorRole role :
       {QPalette::Link, QPalette::LinkVisited, QPalette::Highlight}) {
    palette.setColor(role, accent);
  }
  palette.setColor(QPalette::HighlightedText, tone.sheet);
  return palette;
}

}  // namespace strokewright::ui
