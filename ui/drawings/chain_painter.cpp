#include "ui/drawings/chain_painter.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "ui/document/taste.h"

namespace strokewright::ui {
namespace {

// All in millimetres.
constexpr double kLeastLink = 6.5;
constexpr double kHead = 5.0;     // of the head above its squish face
constexpr double kAxis = 1.8;     // around the name of the centre line under the blocks
constexpr double kWords = 6.8;    // of that name and the caption
constexpr double kBlock = 20.0;   // width
constexpr double kBetween = 4.0;  // the two columns
constexpr double kToLine = 5.0;   // from a block to its dimension line
constexpr double kTaken = 1.6;    // height of what is taken off

class ChainPainter {
 public:
  ChainPainter(Drafting& draft, const QRectF& area, const sheet::Chain& chain)
      : draft_(draft),
        chain_(chain),
        middle_(middleIn(area)),
        face_(area.top() + draft.mm(kHead)),
        axis_(area.bottom() - 2.0 * draft.textHeight() - draft.mm(kAxis)),
        caption_(area.left(), area.bottom() - draft.textHeight() / 2.0) {}

  void paint() {
    paintHead();
    paintAxis();
    paintSide(chain_.ofCase, heights(chain_.ofCase, false), true);
    paintSide(chain_.ofCrank, heights(chain_.ofCrank, true), false);
    draft_.text(caption_, Qt::AlignLeft, fromCore(chain_.caption), false, draft_.ink().faint);
  }

 private:
  double mm(double millimetres) const { return draft_.mm(millimetres); }

  static QString textOf(const sheet::Link& link) {
    return fromCore(link.name) + QStringLiteral("   ") + fromCore(link.text);
  }

  /// The blocks give way to the texts of the case, which are the longer ones.
  double middleIn(const QRectF& area) const {
    double widest = 0.0;
    for (const sheet::Link& link : chain_.ofCase) {
      widest = std::max(widest, draft_.textWidth(textOf(link)));
    }
    return std::max(area.center().x(),
                    area.left() + widest + mm(kToLine + kToText + kBlock + kBetween / 2.0));
  }

  double left(bool ofCase) const {
    return ofCase ? middle_ - mm(kBetween / 2.0 + kBlock) : middle_ + mm(kBetween / 2.0);
  }

  /// From the axis up to the squish face in device units, the gap last.
  std::vector<double> heights(const std::vector<sheet::Link>& links, bool withGap) const {
    double count = withGap ? 1.0 : 0.0;
    double total = 0.0;
    for (const sheet::Link& link : links) {
      if (link.value < 0.0) continue;
      count += 1.0;
      total += link.value;
    }
    const double least = std::min(mm(kLeastLink), (axis_ - face_) / count);
    const double spare = (axis_ - face_) - least * count;
    std::vector<double> heights;
    for (const sheet::Link& link : links) {
      const bool takes = link.value < 0.0;
      const double share = total > 0.0 ? link.value / total : 0.0;
      heights.push_back(takes ? 0.0 : least + spare * share);
    }
    return heights;
  }

  void paintHead() {
    const QRectF head(left(true), face_ - mm(kHead), mm(2.0 * kBlock + kBetween), mm(kHead));
    draft_.hatch(head, 1.6, true);
    draft_.line(head.bottomLeft(), head.bottomRight(), draft_.wide());
    draft_.label(head.center(), QStringLiteral("head, squish face"));
  }

  void paintAxis() {
    const double reach = mm(kBlock + kBetween + kToLine);
    draft_.line(QPointF(middle_ - reach, axis_), QPointF(middle_ + reach, axis_), draft_.centre());
    draft_.text(QPointF(middle_, axis_ + mm(0.6)), Qt::AlignHCenter | Qt::AlignTop,
                QStringLiteral("crank axis"));
  }

  void paintSide(const std::vector<sheet::Link>& links, const std::vector<double>& heights,
                 bool ofCase) {
    double foot = axis_;
    for (std::size_t i = 0; i < links.size(); ++i) {
      if (links[i].value < 0.0) {
        paintTaken(links[i], foot, ofCase);
        continue;
      }
      const QRectF block(left(ofCase), foot - heights[i], mm(kBlock), heights[i]);
      draft_.hatch(block, ofCase ? 2.2 : 3.2, (i % 2 == 1) == ofCase);
      draft_.rectangle(block, draft_.wide());
      dimension(links[i], block.bottom(), block.top(), ofCase, false);
      foot = block.top();
    }
    if (!ofCase) dimension(chain_.gap, foot, face_, ofCase, true);
  }

  /// The outline of what was there, over the joint that comes lower by it; its text stands lower
  /// than that of the link above.
  void paintTaken(const sheet::Link& link, double joint, bool ofCase) {
    const double edge = ofCase ? left(true) : left(false) + mm(kBlock);
    const double side = ofCase ? -1.0 : 1.0;
    const double out = ofCase ? edge - mm(kTaken) : edge;
    draft_.rectangle(QRectF(out, joint - mm(kTaken), mm(kTaken), mm(kTaken)), draft_.assumed());
    draft_.leader(QPointF(edge + side * mm(kTaken / 2.0), joint - mm(kTaken / 2.0)),
                  QPointF(edge + side * mm(kToLine + 1.4), joint + mm(kLeastLink / 2.0)),
                  textOf(link), true);
  }

  /// Arrows at both ends, name and number outside.
  void dimension(const sheet::Link& link, double low, double high, bool ofCase, bool bold) {
    const double x = ofCase ? left(true) : left(false) + mm(kBlock);
    const QPointF lower(x, low);
    const QPointF upper(x, high);
    draft_.dimension({.from = ofCase ? lower : upper,
                      .to = ofCase ? upper : lower,
                      .offset = mm(kToLine),
                      .text = textOf(link),
                      .reading = Reading::Level,
                      .bold = bold});
  }

  Drafting& draft_;
  const sheet::Chain& chain_;
  double middle_;
  double face_;
  double axis_;
  QPointF caption_;
};

}  // namespace

double leastChainHeight(const sheet::Chain& chain) {
  const auto links = std::max(chain.ofCase.size(), chain.ofCrank.size() + 1);
  return kLeastLink * static_cast<double>(links) + kHead + kAxis + kWords;
}

void paintChain(Drafting& draft, const QRectF& area, const sheet::Chain& chain) {
  ChainPainter(draft, area, chain).paint();
}

}  // namespace strokewright::ui
