#include "core/plate/dxf.h"

#include <array>
#include <cmath>
#include <utility>

#include "core/units/kind.h"
#include "core/units/style.h"

namespace strokewright::plate {
namespace {

constexpr double kMillimetres = 1e3;  // in a metre
constexpr double kTextHeight = 3.0;   // [mm]
constexpr double kTextPitch = 5.0;    // [mm]
constexpr double kCheckBar = 100.0;   // [mm]
constexpr double kCheckEnd = 1.5;     // [mm]
constexpr double kBeyond = 3.0;       // [mm] centre lines run past the circle
constexpr double kToLine = 6.0;       // [mm] from the edge to the first dimension line
constexpr double kToNextLine = 14.0;  // [mm] from the edge to the second
constexpr double kPastLine = 1.5;     // [mm] extension lines run past it
constexpr double kLetter = 0.9;       // width of a letter, of its height

struct Layer {
  std::string_view name;
  int colour;
  std::string_view lineType = "CONTINUOUS";
};
constexpr Layer kOutlines{"OUTLINE", 7};
constexpr Layer kBores{"BORES", 1};
constexpr Layer kHoles{"HOLES", 5};
constexpr Layer kPartings{"PARTINGS", 6, "DASHED"};
constexpr Layer kCheck{"CHECK_BAR", 4};
constexpr Layer kCentres{"CENTRES", 3, "CENTER"};
constexpr Layer kTexts{"TEXT", 2};
constexpr Layer kDimensions{"DIMENSIONS", 8};
constexpr std::array kLayers = {kOutlines, kBores, kHoles, kPartings,
                                kCentres,  kCheck, kTexts, kDimensions};

/// The next letter of a text in UTF-8, which is eaten.
char32_t nextLetter(std::string_view& text) {
  const auto lead = static_cast<unsigned char>(text.front());
  text.remove_prefix(1);
  if (lead < 0x80U) return lead;
  char32_t letter = lead & (lead < 0xE0U ? 0x1FU : lead < 0xF0U ? 0x0FU : 0x07U);
  while (!text.empty() && (static_cast<unsigned char>(text.front()) & 0xC0U) == 0x80U) {
    letter = (letter << 6U) | (static_cast<unsigned char>(text.front()) & 0x3FU);
    text.remove_prefix(1);
  }
  return letter;
}

/// ASCII, with the format's own signs for ± and Ø; a line never breaks.
std::string inAscii(std::string_view text) {
  constexpr std::string_view kDigits = "0123456789ABCDEF";
  std::string ascii;
  while (!text.empty()) {
    const char32_t letter = nextLetter(text);
    if (letter == U'±') {
      ascii += "%%p";
    } else if (letter == U'Ø') {
      ascii += "%%c";
    } else if (letter < U' ' || letter == U'\u00A0' || letter == U'\u202F') {
      ascii += ' ';
    } else if (letter < 0x7FU) {
      ascii += static_cast<char>(letter);
    } else {
      ascii += "\\U+";
      for (unsigned shift = 16; shift > 0; shift -= 4) {
        ascii += kDigits[(letter >> (shift - 4)) & 0xFU];
      }
    }
  }
  return ascii;
}

/// [mm] to the nanometre, so that 36 stays 36
double millimetres(double metres) {
  constexpr double kNanometres = 1e6;
  const double length = units::fromSi(units::unitsOf(units::Kind::Length).front(), metres);
  return std::round(length * kNanometres) / kNanometres;
}

struct Point {
  double x;  ///< [mm]
  double y;  ///< [mm]
};

class Writer {
 public:
  std::string write(const Outline& outline, std::span<const std::string> remarks) {
    writeHeader();
    writeTables();
    pair(0, "SECTION");
    pair(2, "ENTITIES");
    for (const Stretch& metal : outline.stretches()) writeMetal(outline, metal);
    for (std::size_t i = 0; i < outline.holes.size(); ++i) {
      writeHole(outline.holes[i]);
      writeNumber(outline, outline.holes[i], i + 1);
    }
    for (const double parting : outline.partings) writeParting(outline, millimetres(parting));
    for (const Gap& gap : outline.gaps) nameGap(outline, gap);
    writeDimensions(outline);
    writeInMiddle({millimetres(outline.along), millimetres(outline.lower()) - kTextHeight},
                  "thrust side");
    const Point below{millimetres(outline.left()), millimetres(outline.lower()) - 2.0 * kTextPitch};
    writeCheckBar(below);
    Point place{below.x, below.y - 2.0 * kTextPitch};
    for (const std::string& remark : remarks) writeRemark(place, remark);
    writeHoleList(place, outline);
    pair(0, "ENDSEC");
    pair(0, "EOF");
    return std::move(text_);
  }

 private:
  void pair(int code, std::string_view value) {
    text_.append(std::to_string(code)).append("\n").append(value).append("\n");
  }
  void pair(int code, int value) { pair(code, std::to_string(value)); }
  void pair(int code, double value) { pair(code, units::exact(value)); }
  void at(int code, Point point) {
    pair(code, point.x);
    pair(code + 10, point.y);
  }

  void writeHeader() {
    pair(0, "SECTION");
    pair(2, "HEADER");
    pair(9, "$ACADVER");
    pair(1, "AC1009");
    pair(9, "$INSUNITS");
    pair(70, 4);
    pair(9, "$MEASUREMENT");
    pair(70, 1);
    pair(0, "ENDSEC");
  }

  void beginTable(std::string_view name, int entries) {
    pair(0, "TABLE");
    pair(2, name);
    pair(70, entries);
  }

  void writeTables() {
    pair(0, "SECTION");
    pair(2, "TABLES");
    beginTable("LTYPE", 3);
    writeLineType("CONTINUOUS", "Solid line", {});
    writeLineType("DASHED", "Dashes", {{6.0, -3.0}});
    writeLineType("CENTER", "Long dash, short dash", {{12.0, -2.0, 2.0, -2.0}});
    pair(0, "ENDTAB");
    beginTable("LAYER", static_cast<int>(kLayers.size()));
    for (const Layer& layer : kLayers) {
      pair(0, "LAYER");
      pair(2, layer.name);
      pair(70, 0);
      pair(62, layer.colour);
      pair(6, layer.lineType);
    }
    pair(0, "ENDTAB");
    pair(0, "ENDSEC");
  }

  /// @param dashes [mm] negative: a gap
  void writeLineType(std::string_view name, std::string_view looks,
                     const std::vector<double>& dashes) {
    pair(0, "LTYPE");
    pair(2, name);
    pair(70, 0);
    pair(3, looks);
    pair(72, 65);
    pair(73, static_cast<int>(dashes.size()));
    double length = 0.0;
    for (const double dash : dashes) length += dash < 0.0 ? -dash : dash;
    pair(40, length);
    for (const double dash : dashes) pair(49, dash);
  }

  void begin(std::string_view entity, const Layer& layer) {
    pair(0, entity);
    pair(8, layer.name);
  }

  void line(const Layer& layer, Point from, Point to) {
    begin("LINE", layer);
    at(10, from);
    at(11, to);
  }

  /// A quarter of a circle, anticlockwise. @param from [degrees]
  void quarter(Point centre, double radius, double from) {
    begin("ARC", kOutlines);
    at(10, centre);
    pair(40, radius);
    pair(50, from);
    pair(51, from + 90.0);
  }

  /// Its outline; at an end that is a gap's the corners are square, and its place is said.
  void writeMetal(const Outline& outline, const Stretch& metal) {
    const double left = millimetres(metal.from);
    const double right = millimetres(metal.to);
    const double lower = millimetres(outline.lower());
    const double upper = millimetres(outline.upper());
    const double corner = millimetres(outline.corner());
    const double atLeft = outline.endsInGap(metal.from) ? 0.0 : corner;
    const double atRight = outline.endsInGap(metal.to) ? 0.0 : corner;
    line(kOutlines, {left + atLeft, lower}, {right - atRight, lower});
    line(kOutlines, {right, lower + atRight}, {right, upper - atRight});
    line(kOutlines, {right - atRight, upper}, {left + atLeft, upper});
    line(kOutlines, {left, upper - atLeft}, {left, lower + atLeft});
    if (atRight > 0.0) {
      quarter({right - corner, upper - corner}, corner, 0.0);
      quarter({right - corner, lower + corner}, corner, 270.0);
    } else {
      writePlace(right, upper);
    }
    if (atLeft > 0.0) {
      quarter({left + corner, upper - corner}, corner, 90.0);
      quarter({left + corner, lower + corner}, corner, 180.0);
    } else {
      writePlace(left, upper);
    }
  }

  void writeText(const Layer& layer, Point place, std::string_view text) {
    begin("TEXT", layer);
    at(10, place);
    pair(40, kTextHeight);
    pair(1, inAscii(text));
  }

  /// @param middle of the text
  void writeInMiddle(Point middle, std::string_view text) {
    writeText(kTexts, middle, text);
    pair(72, 1);
    at(11, middle);
    pair(73, 2);
  }

  /// Above the plate, from one place along the crankshaft to another.
  void dimensionAlong(double from, double to, double edge, double away) {
    if (to <= from) return;
    const double y = edge + away;
    line(kDimensions, {from, y}, {to, y});
    for (const double end : {from, to}) line(kDimensions, {end, edge}, {end, y + kPastLine});
    writeText(kDimensions, {from + kPastLine, y + kPastLine}, units::exact(to - from));
  }

  /// Left of the plate, from one place across the crankshaft to another.
  void dimensionAcross(double from, double to, double edge, double away) {
    if (to <= from) return;
    const double x = edge - away;
    line(kDimensions, {x, from}, {x, to});
    for (const double end : {from, to}) line(kDimensions, {edge, end}, {x - kPastLine, end});
    writeText(kDimensions, {x + kPastLine, from + kPastLine}, units::exact(to - from));
  }

  /// Overall, from two edges to the axis of the first cylinder, and the radius of the corners.
  void writeDimensions(const Outline& outline) {
    const std::vector<Stretch> metal = outline.stretches();
    const double left = millimetres(metal.front().from);
    const double right = millimetres(metal.back().to);
    const double lower = millimetres(outline.lower());
    const double upper = millimetres(outline.upper());
    dimensionAlong(left, right, upper, kToNextLine);
    dimensionAlong(left, 0.0, upper, kToLine);
    if (left > 0.0 && !outline.endsInGap(metal.front().from)) writePlace(left, upper);
    dimensionAcross(lower, upper, left, kToNextLine);
    dimensionAcross(lower, 0.0, left, kToLine);
    const std::string radius = "R " + units::exact(millimetres(outline.corner()));
    if (!outline.endsInGap(metal.back().to)) {
      writeText(kDimensions, {right + kPastLine, upper}, radius);
    } else if (!outline.endsInGap(metal.front().from)) {
      writeText(kDimensions, {left, lower - kTextHeight - kPastLine}, radius);
    }
  }

  static double widthOf(std::string_view text) {
    return kLetter * kTextHeight * static_cast<double>(text.size());
  }

  /// Between the plates and clear of the dimensions; broken or turned where it is narrow there, and
  /// below where it is too narrow for that.
  void nameGap(const Outline& outline, const Gap& gap) {
    const bool dimensioned = outline.stretches().front().from > gap.to - Outline::kSame;
    const double from = millimetres(gap.from) + kPastLine;
    const double to = millimetres(gap.to) - kPastLine - (dimensioned ? kToNextLine + kPastLine : 0);
    const Point middle{(from + to) / 2.0, millimetres(outline.across)};
    const std::string_view name = gap.name;
    const std::size_t colon = name.find(':') + 1;
    if (widthOf(name) <= to - from) {
      writeInMiddle(middle, name);
    } else if (widthOf(name.substr(0, colon)) <= to - from) {
      writeInMiddle({middle.x, middle.y + kTextPitch / 2.0}, name.substr(0, colon));
      writeInMiddle({middle.x, middle.y - kTextPitch / 2.0}, name.substr(colon + 1));
    } else if (kTextHeight <= to - from && widthOf(name) <= millimetres(outline.width)) {
      writeInMiddle(middle, name);
      pair(50, 90);
    } else {
      writeInMiddle({middle.x, millimetres(outline.lower()) - kTextHeight}, name);
    }
  }

  void writeHole(const Hole& hole) {
    const Point centre{millimetres(hole.along), millimetres(hole.across)};
    const double radius = millimetres(hole.diameter) / 2.0;
    begin("CIRCLE", hole.isBore ? kBores : kHoles);
    at(10, centre);
    pair(40, radius);
    const double reach = radius + kBeyond;
    line(kCentres, {centre.x - reach, centre.y}, {centre.x + reach, centre.y});
    line(kCentres, {centre.x, centre.y - reach}, {centre.x, centre.y + reach});
  }

  /// As in the table of holes; of a bore its name as well.
  void writeNumber(const Outline& outline, const Hole& hole, std::size_t number) {
    const std::string digits = std::to_string(number);
    const double diagonal = std::hypot(widthOf(digits), kTextHeight);
    const Spot spot = spotForNumber(outline, hole, diagonal / 2.0 / kMillimetres);
    writeInMiddle({millimetres(spot.along), millimetres(spot.across)},
                  hole.isBore ? digits + " " + hole.name : digits);
  }

  void writeParting(const Outline& outline, double x) {
    const double upper = millimetres(outline.upper());
    line(kPartings, {x, millimetres(outline.lower())}, {x, upper});
    writePlace(x, upper);
  }

  /// Above the plate, from the axis of the first cylinder.
  void writePlace(double x, double upper) {
    line(kDimensions, {x, upper}, {x, upper + kTextHeight + kPastLine});
    writeText(kDimensions, {x + kPastLine, upper + kPastLine}, units::exact(x));
  }

  /// To be measured on whatever was made of the file, before anything is cut by it.
  void writeCheckBar(Point from) {
    const double to = from.x + kCheckBar;
    line(kCheck, from, {to, from.y});
    for (const double end : {from.x, to}) {
      line(kCheck, {end, from.y - kCheckEnd}, {end, from.y + kCheckEnd});
    }
    writeText(kTexts, {from.x + kCheckEnd, from.y + kCheckEnd}, "100 mm");
  }

  /// @param place goes on to the next line
  void writeRemark(Point& place, std::string_view remark) {
    writeText(kTexts, place, remark);
    place.y -= kTextPitch;
  }

  /// What the table of holes says, for who has the drawing alone.
  void writeHoleList(Point& place, const Outline& outline) {
    for (std::size_t i = 0; i < outline.holes.size(); ++i) {
      const Hole& hole = outline.holes[i];
      writeRemark(place, std::to_string(i + 1) + " " + hole.name + ": along " +
                             units::exact(millimetres(hole.along)) + ", across " +
                             units::exact(millimetres(hole.across)) + ", Ø " +
                             units::exact(millimetres(hole.diameter)));
    }
    for (const double parting : outline.partings) {
      writeRemark(place, "parting: along " + units::exact(millimetres(parting)));
    }
  }

  std::string text_;
};

}  // namespace

std::string dxf(const Outline& outline, std::span<const std::string> remarks) {
  return Writer().write(outline, remarks);
}

}  // namespace strokewright::plate
