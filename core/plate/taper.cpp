#include "core/plate/taper.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/deck/results.h"
#include "core/model/inputs.h"
#include "core/plate/outline.h"
#include "core/survey/results.h"

namespace strokewright::plate {

namespace in = model::in;
using describe::Reader;

std::optional<survey::SeatLine> taperInStack(Reader& read) {
  const bool inOnePiece =
      read.choice<model::PlatesInStack>(in::platesInStack) == model::PlatesInStack::OneForAll;
  if (!inOnePiece || model::severalBanks(read) ||
      read.most(out::spacerInStack) - read.least(out::spacerInStack) < kTrue) {
    return std::nullopt;
  }
  std::vector<survey::SeatPoint> points;
  points.reserve(static_cast<std::size_t>(read.cylinders()));
  for (int i = 0; i < read.cylinders(); ++i) {
    Reader here = read.at(i);
    points.push_back({.along = here(out::cylinderPosition), .height = here(out::spacerInStack)});
  }
  const survey::SeatLine line = survey::fitLine(points);
  const bool straight = std::ranges::all_of(points, [&](const survey::SeatPoint& point) {
    return std::abs(point.height - line.at(point.along)) <= 2.0 * kTrue;
  });
  return straight ? std::optional(line) : std::nullopt;
}

namespace {

/// The number of the cylinder that stands next to this place along the crankshaft [m].
int cylinderNextTo(Reader& read, double along) {
  int next = 0;
  for (int i = 1; i < read.cylinders(); ++i) {
    const auto away = [&](int cylinder) {
      return std::abs(read.at(cylinder)(out::cylinderPosition) - along);
    };
    if (away(i) < away(next)) next = i;
  }
  Reader there = read.at(next);
  return model::numberOfCylinder(there);
}

}  // namespace

}  // namespace strokewright::plate

namespace strokewright::out {

using describe::Column;
using describe::Reader;
using describe::Rows;
using units::Kind;

namespace {

constexpr Column kColumns[] = {
    {.key = "cylinder", .name = "End at cylinder", .kind = Kind::Count},
    {.key = "along_m", .name = "Along the crankshaft", .symbol = "z", .kind = Kind::Length},
    {.key = "thickness_m", .name = "Thickness", .symbol = "t", .kind = Kind::FineLength},
    {.key = "slope",
     .name = "Grows along the crankshaft",
     .symbol = "b",
     .kind = Kind::Share,
     .decimals = 3}};

}  // namespace

const describe::Table taperedPlateEnds{
    .key = "tapered_plate_ends",
    .name = "Tapered plate at its ends",
    .per = describe::Per::Engine,
    .columns = kColumns,
    .formula =
        "t = t_0 + b z through the thicknesses at the cylinder axes, carried on to both ends of "
        "the outline",
    .source = "plane geometry; linear least squares: Draper and Smith, ch. 1",
    .valid =
        "one plate for all that is tapered; places counted from the axis of the first cylinder",
    .fill = [](Reader& read, Rows& rows) {
      const auto line = plate::taperInStack(read);
      if (!read.complete()) return;
      if (!line) {
        read.none("the plate is not tapered");
        return;
      }
      const plate::Outline outline = plate::outlineAsEntered(read);
      for (const double end : {outline.left(), outline.right()}) {
        rows.add({static_cast<double>(plate::cylinderNextTo(read, end)), end, line->at(end),
                  line->slope});
      }
    }};

}  // namespace strokewright::out
