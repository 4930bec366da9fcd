#include "ui/drawings/stack_painter.h"

#include <QPolygonF>
#include <algorithm>
#include <array>
#include <cmath>

#include "core/model/inputs.h"
#include "ui/document/taste.h"

namespace strokewright::ui {
namespace {

using describe::Input;
using units::Kind;

namespace in = model::in;

// What is not to scale, as shares of the height.
constexpr double kHead = 0.13;
constexpr double kUpperBarrel = 0.17;
constexpr double kLowerBarrel = 0.12;
constexpr double kCrankcase = 0.13;
constexpr double kMostOfOneLayer = 0.30;                               // thicker ones are broken
constexpr double kScaled = 1.0 - kHead - kUpperBarrel - kLowerBarrel;  // with the crankcase

constexpr double kMetal = 0.37;  // of the width; the rest is piston

constexpr double kGap = 0.8;             // [mm] between barrel and piston
constexpr double kLeastWidth = 6.5;      // [mm] of metal and piston
constexpr double kToLine = 2.6;          // [mm] from the part to its dimension line
constexpr double kEdge = 0.5;            // [mm]
constexpr double kBreak = 1.6;           // [mm] between the two lines of a break
constexpr double kTooth = 1.1;           // [mm] of a break
constexpr double kLeastCrankcase = 5.2;  // [mm]
constexpr double kLeastLayer = 0.25;     // [mm] drawn, so that a foil is still seen

constexpr std::array kEnlargements = {50.0, 40.0, 30.0, 25.0, 20.0, 15.0, 12.0, 10.0, 8.0,
                                      6.0,  5.0,  4.0,  3.0,  2.5,  2.0,  1.5,  1.0,  0.5};

/// Where the crown stands, in the lines in which it can be written.
struct CrownWords {
  QString amount = {};  ///< empty: not known
  QStringList where = {};
};

/// A chain is read in one unit: where thicknesses have another than lengths, in that of lengths.
QString numberOf(const units::Style& style, double value, Kind kind = Kind::FineLength) {
  const bool oneUnit = style.unit(Kind::Length) == style.unit(Kind::FineLength);
  return fromCore(style.number(oneUnit ? kind : Kind::Length, value));
}

QStringList belowDeck() { return {QStringLiteral("below"), QStringLiteral("deck")}; }

CrownWords crownWords(const Cylinder& cylinder, const units::Style& style) {
  if (!cylinder.deckClearance) return {};
  const double below = *cylinder.deckClearance;
  const QString amount = numberOf(style, std::abs(below));
  if (amount == numberOf(style, 0.0)) return {amount, {QStringLiteral("flush")}};
  return {amount, below > 0.0 ? belowDeck() : QStringList{QStringLiteral("proud")}};
}

class StackPainter {
 public:
  StackPainter(Drafting& draft, const QRectF& area, const Cylinder& cylinder,
               const units::Style& style, const StackOptions& options)
      : draft_(draft), area_(area), it_(cylinder), style_(style), options_(options) {
    chooseEnlargement();
    placeAcross();
    placeDown();
  }

  bool hasRoomForCrown() const {
    return crownWords(it_, style_).amount.isEmpty() || !crownLines().isEmpty();
  }

  StackDrawn paint() {
    paintHead();
    paintHeadGasket();
    paintBarrel();
    paintLayers();
    paintPiston();
    dimensionLeft();
    dimensionRight();
    return std::move(drawn_);
  }

 private:
  struct Layer {
    const Measure* measure;
    QString name;
    double high = 0.0;  ///< [device units]
    double low = 0.0;
    bool broken = false;
    bool isSpacer = false;
  };

  /// Below the deck positive [m]; flush where it is not known.
  double clearance() const { return it_.deckClearance.value_or(0.0); }
  bool hasFoot() const { return !it_.direct || it_.spacer > 0.0; }

  // ---- Places

  /// High enough for the arrows of its dimension.
  double crankcase() const {
    return std::max(kCrankcase * area_.height(), draft_.mm(kLeastCrankcase));
  }

  void chooseEnlargement() {
    const double aboveDeck = it_.headGasket + std::max<double>(it_.headRecess, 0.0);
    const double atDeck =
        std::max(aboveDeck, -clearance()) + std::max({clearance(), it_.linerProud.value, 0.0});
    double below = std::max<double>(it_.spacer, 0.0);
    for (const Measure& gasket : it_.baseGaskets) below += gasket;
    const double most = draft_.mm(1000.0);
    const double room = kScaled * area_.height() - crankcase();
    // One thick layer is broken rather than making all others vanish.
    const auto fits = [&](double enlargement) {
      const double scale = enlargement * most;
      const double capped = std::min(below * scale, kMostOfOneLayer * area_.height());
      return atDeck * scale + capped <= room;
    };
    const auto chosen = std::ranges::find_if(kEnlargements, fits);
    drawn_.enlargement = chosen == kEnlargements.end() ? kEnlargements.back() : *chosen;
    scale_ = drawn_.enlargement * most;
  }

  void placeAcross() {
    const double left = area_.left() + leftTextWidth() + draft_.mm(kToLine + kToText + kEdge);
    const double right =
        area_.right() -
        std::max(draft_.textWidth(squishName(), true), draft_.textWidth(squishText(), true)) -
        draft_.mm(kToLine + kToText + kEdge);
    const double width = std::max(right - left, draft_.mm(kLeastWidth));
    metalLeft_ = left;
    const double piston = draft_.textWidth(belowDeck().join(QChar(u' '))) + draft_.mm(4.5);
    metalRight_ = left + std::min(kMetal * width, std::max(draft_.mm(5.0), width - piston));
    pistonLeft_ = metalRight_ + draft_.mm(kGap);
    pistonRight_ = left + width;
  }

  void placeDown() {
    const double aboveDeck =
        std::max(it_.headGasket + std::max<double>(it_.headRecess, 0.0), -clearance()) * scale_;
    headTop_ = area_.top() + draft_.mm(kEdge);
    deck_ = headTop_ + kHead * area_.height() + std::min(aboveDeck, 0.5 * area_.height());
    headFace_ = deck_ - std::max(it_.headGasket * scale_,
                                 it_.headGasket > 0.0 ? draft_.mm(kLeastLayer) : 0.0);
    crown_ = std::clamp(deck_ + clearance() * scale_, headTop_ + draft_.mm(2.0),
                        deck_ + 0.35 * area_.height());
    placeLayers();
  }

  /// From the crankcase up; what is left over becomes barrel.
  void placeLayers() {
    bottom_ = area_.bottom() - draft_.mm(kEdge);
    if (!hasFoot()) {
      foot_ = bottom_;
      return;
    }
    double y = bottom_ - crankcase();
    seat_ = y;
    if (it_.spacer > 0.0) {
      Layer layer{&it_.spacer, QStringLiteral("spacer"), 0.0, y, false, true};
      y = stacked(layer, y);
      layers_.push_back(layer);
    }
    for (const Measure& gasket : it_.baseGaskets) {
      if (gasket <= 0.0) continue;
      Layer layer{&gasket, QStringLiteral("base gasket"), 0.0, y, false, false};
      y = stacked(layer, y);
      layers_.push_back(layer);
    }
    foot_ = y;
  }

  double stacked(Layer& layer, double low) const {
    const double full = layer.measure->value * scale_;
    const double height =
        std::min(std::max(full, draft_.mm(kLeastLayer)), kMostOfOneLayer * area_.height());
    layer.broken = height < full * 0.999;
    layer.high = low - height;
    return layer.high;
  }

  // ---- Parts

  QRectF across(double high, double low) const {
    return QRectF(QPointF(metalLeft_, high), QPointF(metalRight_, low));
  }

  void paintHead() {
    const double band = headFace_ - it_.headRecess * scale_;
    const double bandLeft = metalRight_ - draft_.mm(1.0);
    const double chamber = pistonLeft_ + 0.55 * (pistonRight_ - pistonLeft_);
    const double rise = 0.7 * (band - headTop_);
    QPainterPath metal(QPointF(metalLeft_ - draft_.mm(1.5), headTop_));
    metal.lineTo(QPointF(metalLeft_ - draft_.mm(1.5), headFace_));
    metal.lineTo(QPointF(bandLeft, headFace_));
    metal.lineTo(QPointF(bandLeft, band));
    metal.lineTo(QPointF(chamber, band));
    metal.quadTo(QPointF(chamber + 0.15 * (pistonRight_ - chamber), band - rise),
                 QPointF(pistonRight_, band - rise));
    metal.lineTo(QPointF(pistonRight_, headTop_));
    metal.closeSubpath();
    draft_.hatch(metal, 1.8, true);
    draft_.outline(metal, draft_.assumed());
    draft_.line(QPointF(metalLeft_ - draft_.mm(1.5), headFace_), QPointF(bandLeft, headFace_),
                draft_.wide());
    draft_.line(QPointF(bandLeft, band), QPointF(chamber, band), draft_.wide());
    bandEnd_ = chamber;
    band_ = band;
  }

  void paintHeadGasket() {
    if (it_.headGasket <= 0.0) return;
    paintLayer(QRectF(QPointF(metalLeft_, headFace_), QPointF(metalRight_ - draft_.mm(1.0), deck_)),
               false);
  }

  /// Cut, in its own hatching; too thin for that: filled.
  void paintLayer(const QRectF& layer, bool isSpacer) {
    if (layer.height() < draft_.mm(0.8)) {
      draft_.painter().fillRect(layer, draft_.ink().line);
      return;
    }
    draft_.painter().fillRect(layer, draft_.ink().paper);
    draft_.hatch(layer, isSpacer ? 0.8 : 1.1, !isSpacer);
    draft_.rectangle(layer, isSpacer ? draft_.heavy() : draft_.wide());
  }

  void paintBarrel() {
    const double proud = std::max<double>(it_.linerProud, 0.0) * scale_;
    const double linerLeft =
        proud > 0.0 ? metalRight_ - 0.35 * (metalRight_ - metalLeft_) : metalRight_;
    const QRectF body(QPointF(metalLeft_, deck_ + proud), QPointF(linerLeft, foot_));
    paintPart(body, false);
    if (proud > 0.0)
      paintPart(QRectF(QPointF(linerLeft, deck_), QPointF(metalRight_, foot_)), true);
    blockFace_ = body.top();
    const double middle = body.top() + (foot_ - body.top()) * 0.62;
    paintBreak(metalLeft_, metalRight_, middle);
    if (it_.direct) {  // the barrel is named at its dimension
      name(QRectF(body.topLeft(), QPointF(linerLeft, middle)), QStringLiteral("block"));
    }
  }

  /// The name of a part inside it, where there is room.
  void name(const QRectF& part, const QString& text) {
    if (draft_.textWidth(text) + draft_.mm(3.0) < part.width()) draft_.label(part.center(), text);
  }

  void paintPart(const QRectF& part, bool falling) {
    draft_.hatch(part, 1.8, falling);
    draft_.rectangle(part, draft_.wide());
  }

  void paintBreak(double left, double right, double y) {
    const double over = draft_.mm(1.2);
    const double tooth = draft_.mm(kTooth);
    const double half = draft_.mm(kBreak) / 2.0;
    const double middle = (left + right) / 2.0;
    const QPolygonF upper({QPointF(left - over, y), QPointF(middle - 2.0 * tooth, y),
                           QPointF(middle - tooth, y - 1.4 * tooth),
                           QPointF(middle + tooth, y + 1.4 * tooth),
                           QPointF(middle + 2.0 * tooth, y), QPointF(right + over, y)});
    const QPolygonF lower = upper.translated(0.0, half);
    QPolygonF between = upper.translated(0.0, -half);
    for (auto point = lower.crbegin(); point != lower.crend(); ++point) between.append(*point);
    QPainter& painter = draft_.painter();
    painter.setPen(Qt::NoPen);
    painter.setBrush(draft_.ink().paper);
    painter.drawPolygon(between);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(draft_.narrow());
    painter.drawPolyline(upper.translated(0.0, -half));
    painter.drawPolyline(lower);
  }

  void paintLayers() {
    if (!hasFoot()) return;
    const QRectF crankcase(QPointF(metalLeft_ - draft_.mm(1.5), seat_),
                           QPointF(metalRight_, bottom_));
    draft_.hatch(crankcase, 2.2, true);
    draft_.rectangle(crankcase, draft_.assumed());
    draft_.line(crankcase.topLeft(), crankcase.topRight(), draft_.wide());
    name(crankcase, QStringLiteral("crankcase"));
    for (const Layer& layer : layers_) {
      paintLayer(across(layer.high, layer.low), layer.isSpacer);
      if (layer.broken) paintBreak(metalLeft_, metalRight_, (layer.high + layer.low) / 2.0);
    }
  }

  QRectF piston() const {
    const double low = area_.bottom() - draft_.mm(kEdge) - 0.04 * area_.height();
    return QRectF(QPointF(pistonLeft_, crown_), QPointF(pistonRight_, low));
  }
  double pistonBreak() const { return crown_ + 0.45 * piston().height(); }
  double ringDepth() const { return 0.09 * (pistonRight_ - pistonLeft_); }

  void paintPiston() {
    const QRectF piston = this->piston();
    const double low = piston.bottom();
    pin_ = crown_ + 0.68 * (low - crown_);
    QPainter& painter = draft_.painter();
    painter.fillRect(piston, draft_.ink().fill);
    draft_.line(piston.topLeft(), piston.topRight(), draft_.wide());
    draft_.line(piston.topLeft(), piston.bottomLeft(), draft_.wide());
    draft_.line(piston.bottomLeft(), piston.bottomRight(), draft_.assumed());
    paintRings();
    const double radius = std::min(0.13 * (low - crown_), 0.2 * piston.width());
    const QPointF pin(pistonRight_ - 0.32 * piston.width(), pin_);
    draft_.circle(pin, radius, draft_.wide(), draft_.ink().paper);
    draft_.cross(pin, radius + draft_.mm(1.5));
    paintBreak(pistonLeft_, pistonRight_, pistonBreak());
    pinRight_ = pin.x() + radius + draft_.mm(1.5);
    sayCrown();
  }

  void paintRings() {
    const double height = draft_.mm(0.9);
    for (int i = 0; i < 2; ++i) {
      const double y = crown_ + draft_.mm(2.2 + 2.4 * i);
      draft_.painter().fillRect(
          QRectF(metalRight_, y, pistonLeft_ - metalRight_ + ringDepth(), height),
          draft_.ink().line);
    }
  }

  /// Between crown and break, beside the rings.
  QRectF roomForCrown() const {
    return QRectF(QPointF(pistonLeft_ + ringDepth(), crown_ + draft_.mm(0.6)),
                  QPointF(pistonRight_, pistonBreak() - draft_.mm(kBreak / 2.0 + 1.4 * kTooth)));
  }

  /// As few as find room; none where none do.
  QStringList crownLines() const {
    const auto [amount, where] = crownWords(it_, style_);
    const QSizeF room = roomForCrown().size() - QSizeF(draft_.mm(1.0), 0.0);
    for (QStringList lines : {QStringList{where.join(QChar(u' '))}, where}) {
      lines.prepend(amount);
      const auto fits = [&](const QString& line) { return draft_.textWidth(line) <= room.width(); };
      if (std::ranges::all_of(lines, fits) &&
          static_cast<double>(lines.size()) * draft_.textHeight() <= room.height())
        return lines;
    }
    return {};
  }

  void sayCrown() {
    const QRectF room = roomForCrown();
    QPointF at(room.center().x(), room.top());
    for (const QString& line : crownLines()) {
      draft_.text(at, Qt::AlignHCenter | Qt::AlignTop, line);
      at += QPointF(0.0, draft_.textHeight());
    }
  }

  // ---- Dimensions

  QString number(double value, Kind kind = Kind::FineLength) const {
    return numberOf(style_, value, kind);
  }
  /// Of what was not given no number is shown: none is the builder's.
  QString number(const Measure& measure, Kind kind = Kind::FineLength) const {
    return measure.given ? number(measure.value, kind) : QStringLiteral("?");
  }
  QString named(const QString& name, const Measure& measure, Kind kind = Kind::FineLength) const {
    return name + QStringLiteral("\u2002") + number(measure, kind);
  }
  QString named(const QString& name, double value, Kind kind = Kind::FineLength) const {
    return name + QStringLiteral("\u2002") + number(value, kind);
  }
  QString squishName() const {
    return it_.compressionIgnition ? QStringLiteral("bumping") : QStringLiteral("squish");
  }
  QString squishText() const {
    return it_.squishGap ? number(*it_.squishGap) : QStringLiteral("–");
  }

  QString spacerText() const {
    return named(it_.spacerToMake ? QStringLiteral("spacer to make") : QStringLiteral("spacer"),
                 it_.spacer);
  }
  QString barrelText() const {
    return it_.direct ? named(QStringLiteral("deck"), it_.directDeck, Kind::Length)
                      : named(QStringLiteral("barrel"), it_.barrel, Kind::Length);
  }
  QString seatText() const { return named(QStringLiteral("seat"), it_.seat, Kind::Length); }
  QString skimText() const { return named(QStringLiteral("skim"), -it_.spacer); }

  QString gasketText() const { return named(QStringLiteral("head gasket"), it_.headGasket); }

  /// Room that the texts on the left need.
  double leftTextWidth() const {
    double width = draft_.textWidth(barrelText());
    const auto make = [&](const QString& text, bool bold = false) {
      width = std::max(width, draft_.textWidth(text, bold));
    };
    if (it_.headGasket > 0.0) make(gasketText());
    if (it_.linerProud > 0.0) make(named(QStringLiteral("liner proud"), it_.linerProud));
    if (it_.spacer > 0.0) make(spacerText(), true);
    if (it_.spacer < 0.0) make(skimText(), true);
    if (!it_.direct) make(seatText());
    if (it_.baseGaskets[0] > 0.0) {
      make(named(QStringLiteral("base gasket"), it_.baseGaskets[0]));
    }
    return width;
  }

  /// One dimension of the chain on the left.
  struct Link {
    const Input* input;
    double high;
    double low;
    QString text;
    bool bold = false;
    double textAt = 0.0;
  };

  void dimensionLeft() {
    std::vector<Link> chain;
    if (it_.headGasket > 0.0) {
      chain.push_back({&in::headGasket, headFace_, deck_, gasketText()});
    }
    if (blockFace_ > deck_) {
      chain.push_back({&in::linerProud, deck_, blockFace_,
                       named(QStringLiteral("liner proud"), it_.linerProud)});
    }
    chain.push_back(
        {it_.direct ? &in::deckHeight : &in::barrelHeight, blockFace_, foot_, barrelText()});
    if (!it_.direct && it_.spacer < 0.0) {
      chain.push_back({&in::spacer, foot_, foot_ + draft_.mm(0.01), skimText(), true});
    }
    for (auto layer = layers_.rbegin(); layer != layers_.rend(); ++layer) {
      chain.push_back({layer->measure->input, layer->high, layer->low,
                       layer->isSpacer ? spacerText() : named(layer->name, *layer->measure),
                       layer->isSpacer});
    }
    if (!it_.direct) chain.push_back({&in::seatHeight, seat_, bottom_, seatText()});
    spread(chain);
    for (const Link& link : chain) drawLink(link);
  }

  /// Texts keep their distance; first downwards, then, from the edge, back up.
  void spread(std::vector<Link>& chain) const {
    const double height = draft_.textHeight();
    double least = area_.top() + height / 2.0;
    for (Link& link : chain) {
      link.textAt = std::max((link.high + link.low) / 2.0, least);
      least = link.textAt + height;
    }
    double most = area_.bottom() - height / 2.0;
    for (auto link = chain.rbegin(); link != chain.rend(); ++link) {
      link->textAt = std::min(link->textAt, most);
      most = link->textAt - height;
    }
  }

  QColor colourOf(const Input* input) const {
    return input != nullptr && input == options_.highlighted ? draft_.ink().accent : QColor();
  }

  void drawLink(const Link& link) {
    mark(link.input, draft_.dimension({.from = QPointF(metalLeft_, link.low),
                                       .to = QPointF(metalLeft_, link.high),
                                       .offset = draft_.mm(kToLine),
                                       .text = link.text,
                                       .reading = Reading::Level,
                                       .bold = link.bold,
                                       .colour = colourOf(link.input),
                                       .textShift = link.textAt - (link.high + link.low) / 2.0}));
  }

  void mark(const Input* input, const QRectF& area) { drawn_.marks.push_back({input, area}); }

  void dimensionRight() {
    const double x = pistonRight_;
    if (it_.squishGap) {
      const QPointF middle(x + draft_.mm(kToLine + kToText), (band_ + crown_) / 2.0);
      draft_.line(QPointF(bandEnd_, band_), QPointF(x, band_), draft_.narrow());
      QRectF area = draft_.dimension({.from = QPointF(x, band_),
                                      .to = QPointF(x, crown_),
                                      .offset = draft_.mm(kToLine),
                                      .text = squishText(),
                                      .reading = Reading::Level,
                                      .bold = true,
                                      .colour = colourOf(it_.wanted)});
      area |= draft_.text(middle + QPointF(0.0, -draft_.textHeight()), Qt::AlignLeft, squishName(),
                          true, colourOf(it_.wanted));
      mark(it_.wanted, area);
    }
    mark(&in::compressionHeight,
         draft_.dimension({.from = QPointF(x, crown_),
                           .to = QPointF(x, pin_),
                           .offset = draft_.mm(kToLine),
                           .text = number(it_.compressionHeight, Kind::Length),
                           .reading = Reading::Level,
                           .colour = colourOf(&in::compressionHeight)}));
    draft_.line(QPointF(pinRight_, pin_), QPointF(x, pin_), draft_.narrow());
  }

  Drafting& draft_;
  const QRectF area_;
  const Cylinder& it_;
  const units::Style& style_;
  const StackOptions& options_;
  StackDrawn drawn_;
  double scale_ = 1.0;  ///< [device units per m] across the stack
  std::vector<Layer> layers_;
  double metalLeft_ = 0.0, metalRight_ = 0.0, pistonLeft_ = 0.0, pistonRight_ = 0.0;
  double headTop_ = 0.0, headFace_ = 0.0, deck_ = 0.0, crown_ = 0.0, blockFace_ = 0.0;
  double foot_ = 0.0, seat_ = 0.0, bottom_ = 0.0;
  double band_ = 0.0, bandEnd_ = 0.0, pin_ = 0.0, pinRight_ = 0.0;
};

}  // namespace

StackDrawn paintStack(Drafting& draft, const QRectF& area, const Cylinder& cylinder,
                      const units::Style& style, const StackOptions& options) {
  return StackPainter(draft, area, cylinder, style, options).paint();
}

bool hasRoomForCrown(Drafting& draft, const QRectF& area, const Cylinder& cylinder,
                     const units::Style& style) {
  return StackPainter(draft, area, cylinder, style, {}).hasRoomForCrown();
}

QString crownInWords(const Cylinder& cylinder, const units::Style& style) {
  const auto [amount, where] = crownWords(cylinder, style);
  if (where == QStringList{QStringLiteral("flush")}) return where.front();
  return (QStringList{amount} + where).join(QChar(u' ')).trimmed();
}

QString stackCaption(double enlargement, const Cylinder& cylinder, const units::Style& style,
                     const QString& crown) {
  const bool whole = enlargement == std::floor(enlargement);
  const QString scale = cylinder.deckClearance
                            ? fromCore(style.number(Kind::Ratio, enlargement, whole ? 0 : 1)) +
                                  QStringLiteral("\u00A0:\u00A01")
                            : QStringLiteral("not to scale");
  const QString caption =
      QStringLiteral("Stack of cylinder %1 at top dead centre, ").arg(cylinder.number) + scale;
  return crown.isEmpty() ? caption : caption + QStringLiteral("; crown ") + crown;
}

QString stackInWords(const Cylinder& cylinder, const units::Style& style) {
  QStringList parts;
  const auto say = [&](const char* what, double value, Kind kind) {
    parts.append(QLatin1String(what) + QLatin1Char(' ') + fromCore(style.text(kind, value)));
  };
  if (cylinder.squishGap)
    say(cylinder.compressionIgnition ? "bumping clearance" : "squish gap", *cylinder.squishGap,
        Kind::FineLength);
  say("head gasket", cylinder.headGasket, Kind::FineLength);
  if (cylinder.deckClearance) {
    const bool proud = *cylinder.deckClearance < 0.0;
    say(proud ? "crown above the deck by" : "crown below the deck by",
        std::abs(*cylinder.deckClearance), Kind::FineLength);
  }
  if (cylinder.direct) {
    say("deck height without spacer", cylinder.directDeck, Kind::Length);
  } else {
    say("barrel", cylinder.barrel, Kind::Length);
    for (const Measure& gasket : cylinder.baseGaskets) {
      if (gasket > 0.0) say("base gasket", gasket, Kind::FineLength);
    }
  }
  say(cylinder.spacer < 0.0 ? "skim" : "spacer", std::abs(cylinder.spacer.value), Kind::FineLength);
  if (!cylinder.direct) say("seat above the crank axis", cylinder.seat, Kind::Length);
  return parts.join(QStringLiteral(", ")) + QLatin1Char('.');
}

}  // namespace strokewright::ui
