#include "core/plate/outline.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "core/deck/results.h"
#include "core/describe/refusal.h"
#include "core/model/inputs.h"
#include "core/model/lists.h"
#include "core/plate/taper.h"
#include "core/survey/results.h"

namespace strokewright::plate {

namespace in = model::in;
namespace list = model::list;
using describe::Reader;

namespace {

constexpr double kMostCornerShare = 0.25;  // of the shorter side

constexpr std::string_view kEdge = "edge";
constexpr std::string_view kBore = "bore";
constexpr std::string_view kNoPlate = ": no plate";

/// From where to where something reaches [m].
struct Span {
  double from;
  double to;
  double middle() const { return (from + to) / 2.0; }
};

template <typename Place>
Span reach(const std::vector<Hole>& holes, bool boresAlone, Place place) {
  Span span{HUGE_VAL, -HUGE_VAL};
  for (const Hole& hole : holes) {
    if (boresAlone && !hole.isBore) continue;
    span.from = std::min(span.from, place(hole) - hole.diameter / 2.0);
    span.to = std::max(span.to, place(hole) + hole.diameter / 2.0);
  }
  return span;
}

template <typename Place>
double middleOf(const std::vector<Hole>& holes, double size, Place place) {
  const double middle = reach(holes, true, place).middle();
  const Span all = reach(holes, false, place);
  const bool runsOut = all.from < middle - size / 2.0 || all.to > middle + size / 2.0;
  return runsOut ? all.middle() : middle;
}

std::string nameOf(std::string_view what, std::size_t number) {
  return std::string(what) + " " + std::to_string(number);
}

/// The holes of the list that have a place and a size, each kind counted for itself.
std::vector<Hole> listedHoles(const Reader& read) {
  std::vector<Hole> holes;
  std::vector<std::size_t> counted(list::holeFor.choices.size());
  for (const describe::Entries& item : read.items(list::plateHoles)) {
    const auto along = standingIn(item, list::holeAlong);
    const auto across = standingIn(item, list::holeAcross);
    const auto diameter = standingIn(item, list::holeDiameter);
    if (!along || !across || !diameter) continue;
    const auto use = static_cast<std::size_t>(
        standingIn(item, list::holeFor).value_or(model::answer(model::HoleFor::Other)));
    holes.push_back({.name = nameOf(list::holeFor.choices[use].label, ++counted[use]),
                     .along = *along,
                     .across = *across,
                     .diameter = *diameter,
                     .mayPart = use == static_cast<std::size_t>(model::HoleFor::Stud)});
  }
  return holes;
}

/// A cylinder over which the plate lies, or would.
struct Seat {
  double along;  ///< [m]
  int number;
  bool hasPlate;
  double from = -HUGE_VAL;  ///< [m] where its own plate would begin, were the plates endless
  double to = HUGE_VAL;     ///< [m] where it would end
};

std::vector<Seat> seatsOf(Reader& read) {
  const bool known = read.knownInAll(out::spacerInStack);
  const auto hasPlate = [&](int i) { return !known || read.at(i)(out::spacerInStack) >= kTrue; };
  int leads = 0;
  while (leads < read.cylinders() && !hasPlate(leads)) ++leads;
  Reader leader = read.at(leads < read.cylinders() ? leads : 0);
  std::vector<Seat> seats;
  for (int i = 0; i < read.cylinders(); ++i) {
    Reader here = read.at(i);
    if (!model::ofOneBank(leader, here)) continue;
    seats.push_back({here(out::cylinderPosition), model::numberOfCylinder(here), hasPlate(i)});
  }
  return seats;
}

/// A bore is in the plate of its cylinder alone; of a hole between two each may have a part.
bool isIn(const Hole& hole, const Seat& seat) {
  if (hole.isBore) return hole.name == nameOfBore(seat.number);
  const double radius = hole.diameter / 2.0 - Outline::kSame;
  return hole.along + radius > seat.from && hole.along - radius < seat.to;
}

/// Half-way between each bore and the next; what has no plate is left out, with its holes.
void part(Outline& outline, std::vector<Seat> seats) {
  std::ranges::sort(seats, {}, &Seat::along);
  for (std::size_t i = 1; i < seats.size(); ++i) {
    seats[i].from = seats[i - 1].to = (seats[i - 1].along + seats[i].along) / 2.0;
  }
  for (std::size_t i = 0; i < seats.size(); ++i) {
    const Seat& seat = seats[i];
    const double from = std::clamp(seat.from, outline.left(), outline.right());
    const double to = std::clamp(seat.to, outline.left(), outline.right());
    if (!seat.hasPlate) {
      if (to <= from + Outline::kSame) continue;
      outline.gaps.push_back(
          {nameOf("cylinder", static_cast<std::size_t>(seat.number)).append(kNoPlate), from, to});
    } else if (i > 0 && seats[i - 1].hasPlate && from > outline.left() && from < outline.right()) {
      outline.partings.push_back(from);
    }
  }
  std::erase_if(outline.holes, [&](const Hole& hole) {
    return std::ranges::none_of(
        seats, [&](const Seat& seat) { return seat.hasPlate && isIn(hole, seat); });
  });
}

double lengthOver(const std::vector<Seat>& seats, double bore) {
  const auto [first, last] = std::ranges::minmax(seats, {}, &Seat::along);
  return last.along - first.along + bore;
}

}  // namespace

std::string nameOfBore(int number) { return nameOf(kBore, static_cast<std::size_t>(number)); }

Outline outlineAround(std::vector<Hole> holes, double length, double width) {
  constexpr std::string_view kNoSize = "A plate of {1} is none: it needs more than {2}.";
  for (const double size : {length, width}) {
    if (!(size > 0.0)) throw describe::Refusal(kNoSize, units::Kind::Length, size, 0.0);
  }
  Outline outline{.along = middleOf(holes, length, [](const Hole& hole) { return hole.along; }),
                  .across = middleOf(holes, width, [](const Hole& hole) { return hole.across; }),
                  .length = length,
                  .width = width,
                  .holes = {}};
  outline.holes = std::move(holes);
  return outline;
}

double Outline::corner() const {
  double shortest = std::min(length, width);
  for (const Stretch& metal : stretches()) shortest = std::min(shortest, metal.to - metal.from);
  return std::min(kCorner, kMostCornerShare * shortest);
}

bool Outline::endsInGap(double end) const {
  return std::ranges::any_of(gaps, [&](const Gap& gap) {
    return std::abs(gap.from - end) < kSame || std::abs(gap.to - end) < kSame;
  });
}

std::vector<Stretch> Outline::stretches() const {
  std::vector<Stretch> stretches;
  double from = left();
  for (const Gap& gap : gaps) {
    if (gap.from > from + kSame) stretches.push_back({from, gap.from});
    from = gap.to;
  }
  if (right() > from + kSame) stretches.push_back({from, right()});
  return stretches;
}

double wallBetween(const Hole& one, const Hole& other) {
  const double apart = std::hypot(one.along - other.along, one.across - other.across);
  return apart - (one.diameter + other.diameter) / 2.0;
}

double wallToEdge(const Outline& outline, const Hole& hole) {
  return std::min({hole.along - outline.left(), outline.right() - hole.along,
                   hole.across - outline.lower(), outline.upper() - hole.across}) -
         hole.diameter / 2.0;
}

double wallToParting(const Outline& outline, const Hole& hole) {
  double least = HUGE_VAL;
  for (const double parting : outline.partings) {
    least = std::min(least, std::abs(hole.along - parting) - hole.diameter / 2.0);
  }
  return least;
}

double wallToGap(const Outline& outline, const Hole& hole) {
  double least = HUGE_VAL;
  for (const Gap& gap : outline.gaps) {
    const double away = std::max(gap.from - hole.along, hole.along - gap.to);
    least = std::min(least, away - hole.diameter / 2.0);
  }
  return least;
}

Wall leastWall(const Outline& outline, const Hole& hole) {
  Wall least{wallToEdge(outline, hole), kEdge};
  const double parting = wallToParting(outline, hole);
  if (parting < least.thickness) least = {parting, kParting};
  const double end = wallToGap(outline, hole);
  if (end < least.thickness) least = {end, kEnd};
  for (const Hole& other : outline.holes) {
    if (&other == &hole) continue;
    const double wall = wallBetween(hole, other);
    if (wall < least.thickness) least = {wall, other.name};
  }
  return least;
}

Spot spotForNumber(const Outline& outline, const Hole& hole, double room) {
  if (hole.isBore) {
    constexpr double kOffCentre = 0.15;  // of the diameter
    return {hole.along + kOffCentre * hole.diameter, hole.across + kOffCentre * hole.diameter};
  }
  constexpr double kNothing = 1e-9;  // [m]
  constexpr double kEighth = std::numbers::pi / 4.0;
  const double inwards = std::atan2(outline.across - hole.across, outline.along - hole.along);
  const double away = hole.diameter / 2.0 + 1.2 * room;
  Spot best;
  double most = -HUGE_VAL;
  for (const int turn : {0, 1, -1, 2, -2, 3, -3, 4}) {
    const double angle = inwards + turn * kEighth;
    const Hole taken{.name = {},
                     .along = hole.along + away * std::cos(angle),
                     .across = hole.across + away * std::sin(angle),
                     .diameter = 2.0 * room};
    const double clear = leastWall(outline, taken).thickness;
    if (clear <= most + kNothing) continue;
    most = clear;
    best = {taken.along, taken.across};
  }
  return best;
}

Outline outlineAsEntered(Reader& read) {
  const double bore = read(in::plateBore);
  const std::vector<Seat> seats = seatsOf(read);
  std::vector<Hole> holes;
  holes.reserve(seats.size());
  for (const Seat& seat : seats) {
    holes.push_back({nameOfBore(seat.number), seat.along, 0.0, bore, true});
  }
  std::ranges::move(listedHoles(read), std::back_inserter(holes));
  Outline outline = outlineAround(std::move(holes), read(in::plateLength), read(in::plateWidth));
  if (read.choice<model::PlatesInStack>(in::platesInStack) == model::PlatesInStack::OneForEach) {
    part(outline, seats);
  }
  if (outline.stretches().empty() && std::ranges::any_of(seats, &Seat::hasPlate)) {
    constexpr std::string_view kNothingLeft =
        "A length of {1} leaves nothing of the plates: it is meant over all cylinders, whose bores "
        "take {2}.";
    throw describe::Refusal(kNothingLeft, units::Kind::Length, outline.length,
                            lengthOver(seats, bore));
  }
  return outline;
}

double lengthOverBores(Reader& read) { return lengthOver(seatsOf(read), read(in::plateBore)); }

Outline outlineFrom(const describe::Rows& rows) {
  const double length = rows["length_m"].numbers[0];
  const double width = rows["width_m"].numbers[0];
  Outline outline{.along = rows["along_m"].numbers[0],
                  .across = rows["across_m"].numbers[0],
                  .length = length,
                  .width = width,
                  .holes = {}};
  for (std::size_t i = 1; i < rows.size(); ++i) {
    const auto at = static_cast<Eigen::Index>(i);
    const std::string& feature = rows["feature"].words[i];
    const double along = rows["along_m"].numbers[at];
    if (feature.starts_with(kParting)) {
      outline.partings.push_back(along);
    } else if (feature.ends_with(kNoPlate)) {
      const double half = rows["length_m"].numbers[at] / 2.0;
      outline.gaps.push_back({feature, along - half, along + half});
    } else {
      outline.holes.push_back({.name = feature,
                               .along = along,
                               .across = rows["across_m"].numbers[at],
                               .diameter = rows["diameter_m"].numbers[at],
                               .isBore = feature.starts_with(kBore),
                               .mayPart = feature.starts_with("stud")});
    }
  }
  return outline;
}

}  // namespace strokewright::plate

namespace strokewright::out {

using describe::Column;
using describe::kAbsent;
using describe::Reader;
using describe::Rows;
using units::Kind;

namespace {

/// Where no cylinder is to have a plate; it is not asked how large one would be.
bool noneIsToBeMade(Reader& read) {
  return read.knownInAll(spacerInStack) && read.most(spacerInStack) < plate::kTrue;
}

/// @throws describe::Refusal where something is to come off instead
void sayWhyNone(Reader& read) {
  const double least = -read.most(spacerInStack);
  const double most = -read.least(spacerInStack);
  if (most < plate::kTrue) {
    read.none("No plate is to be made: the stack is counted without one.");
    return;
  }
  constexpr std::string_view kAlike =
      "No plate is to be made: take {1} off the metal instead, or as much off the gaskets.";
  constexpr std::string_view kUnlike =
      "No plate is to be made: take {1} to {2} off the metal instead, or as much off the gaskets.";
  throw describe::Refusal(most - least < plate::kTrue ? kAlike : kUnlike, Kind::FineLength, least,
                          most);
}

constexpr Column kColumns[] = {
    {.key = "feature", .name = "Feature", .words = true},
    {.key = "along_m", .name = "Along the crankshaft", .symbol = "z", .kind = Kind::Length},
    {.key = "across_m", .name = "Across it", .symbol = "x", .kind = Kind::Length},
    {.key = "diameter_m", .name = "Diameter", .symbol = "d", .kind = Kind::Length},
    {.key = "length_m", .name = "Length", .kind = Kind::Length},
    {.key = "width_m", .name = "Width", .kind = Kind::Length},
    {.key = "wall_m", .name = "Least wall", .kind = Kind::Length},
    {.key = "beside", .name = "Wall to", .words = true}};

}  // namespace

const describe::Table plateOutline{
    .key = "plate_outline",
    .name = "Spacer plate as it is cut out",
    .per = describe::Per::Engine,
    .columns = kColumns,
    .formula =
        "bores at the cylinders, the outline about their middle; wall = distance of the "
        "centres − (d₁ + d₂)/2; plates of their own part half-way between the bores, "
        "where a cylinder needs none there is none, and that beside it ends there",
    .source = "plane geometry",
    .valid =
        "places counted from the axis of the first cylinder; corners count as square; a negative "
        "wall is cut: by a parting, or by the end of a plate beside a cylinder without one, only a "
        "stud hole may be",
    .fill = [](Reader& read, Rows& rows) {
      if (noneIsToBeMade(read)) {
        sayWhyNone(read);
        return;
      }
      const plate::Outline outline = plate::outlineAsEntered(read);
      rows.add({"plate", outline.along, outline.across, kAbsent, outline.length, outline.width,
                kAbsent, ""});
      for (const plate::Hole& hole : outline.holes) {
        const plate::Wall wall = plate::leastWall(outline, hole);
        rows.add({hole.name, hole.along, hole.across, hole.diameter, kAbsent, kAbsent,
                  wall.thickness, std::string(wall.beside)});
      }
      for (std::size_t i = 0; i < outline.partings.size(); ++i) {
        rows.add({plate::nameOf(plate::kParting, i + 1), outline.partings[i], kAbsent, kAbsent,
                  kAbsent, kAbsent, kAbsent, ""});
      }
      for (const plate::Gap& gap : outline.gaps) {
        rows.add({gap.name, (gap.from + gap.to) / 2.0, kAbsent, kAbsent, gap.to - gap.from, kAbsent,
                  kAbsent, ""});
      }
    }};

}  // namespace strokewright::out
