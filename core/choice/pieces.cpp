#include "core/choice/pieces.h"

#include <cmath>
#include <string_view>
#include <tuple>
#include <utility>

#include "core/chamber/chamber.h"
#include "core/describe/refusal.h"

namespace strokewright::choice {
namespace {

using describe::Refusal;
using units::Kind;

constexpr double kThickest = 0.1;    // [m]
constexpr double kFarthest = 0.2;    // [m] of a gap with nothing chosen
constexpr double kFarthestNm = 1e9;  // beyond all gaps
constexpr double kNotGiven = std::numeric_limits<double>::quiet_NaN();

Nm wholeNm(double length) {
  return static_cast<Nm>(std::lround(std::clamp(length * 1e9, -kFarthestNm, kFarthestNm)));
}

// The checks are worded so that what is no number fails them.

void refuseUnder(double value, double limit, Kind kind, std::string_view sentence) {
  if (!(value >= limit)) throw Refusal(sentence, kind, value, limit);
}

void refuseOver(double value, double limit, Kind kind, std::string_view sentence) {
  if (!(value <= limit)) throw Refusal(sentence, kind, value, limit);
}

void refuseUnlessOver(double value, double limit, Kind kind, std::string_view sentence) {
  if (!(value > limit && std::isfinite(value))) throw Refusal(sentence, kind, value, limit);
}

void refuseNaN(double value, Kind kind, std::string_view sentence) {
  if (std::isnan(value)) throw Refusal(sentence, kind, value, 0.0);
}

void check(const Part& part) {
  refuseUnder(part.thickness, 0.0, Kind::FineLength,
              "A part {1} thick cannot lie in a stack: no thickness is under {2}.");
  refuseOver(part.thickness, kThickest, Kind::FineLength,
             "A part {1} thick is no gasket, shim or plate: at most {2} is searched.");
  refuseUnder(part.plusMinus, 0.0, Kind::FineLength,
              "An error of ±{1} cannot be: it must not be under {2}.");
  refuseOver(part.plusMinus, kThickest, Kind::FineLength,
             "An error of ±{1} leaves nothing to choose by: at most {2} is searched.");
  refuseUnder(part.quantity.value_or(0), 0, Kind::Count,
              "There cannot be {1} of a part: at least {2}.");
  if (part.role == Role::HeadGasket) {
    refuseUnlessOver(part.bore, 0.0, Kind::Length,
                     "A head gasket with a bore of {1} cannot be: it must exceed {2}.");
  }
}

void check(const Cylinder& cylinder) {
  for (const double gap : {cylinder.deckClearanceBare, cylinder.squishBare}) {
    refuseOver(std::abs(gap), kFarthest, Kind::FineLength,
               "A gap of {1} before anything is chosen is too far off: at most {2} is searched.");
  }
  refuseUnder(cylinder.worst, 0.0, Kind::FineLength,
              "An error of ±{1} cannot be: it must not be under {2}.");
  refuseOver(cylinder.worst, kThickest, Kind::FineLength,
             "An error of ±{1} leaves nothing to choose by: at most {2} is searched.");
  refuseUnlessOver(cylinder.bore, 0.0, Kind::Length,
                   "A bore of {1} cannot be: it must exceed {2}.");
  refuseUnlessOver(cylinder.sweptVolume, 0.0, Kind::Volume,
                   "A swept volume of {1} cannot be: it must exceed {2}.");
  if (!std::isfinite(cylinder.volumesBesideStack)) {
    throw Refusal("The volumes above the piston come to {1}, which is no volume.", Kind::Volume,
                  cylinder.volumesBesideStack, 0.0);
  }
}

void check(const Wants& wants) {
  for (const double limit :
       {wants.squishLeast, wants.squishMost, wants.leastAtWorst, wants.squishSpread}) {
    refuseNaN(limit, Kind::FineLength, "A limit of {1} is no limit.");
  }
  for (const double limit : {wants.ratioLeast, wants.ratioMost, wants.ratioSpread}) {
    refuseNaN(limit, Kind::Ratio, "A limit of {1} is no limit.");
  }
  if (wants.sortBy == SortBy::SquishNearness) {
    refuseOver(std::abs(wants.squish.value_or(kNotGiven)), kFarthest, Kind::FineLength,
               "A wanted gap of {1} cannot be come near to: at most {2} is searched.");
  }
  if (wants.sortBy == SortBy::RatioNearness) {
    refuseUnlessOver(wants.ratio.value_or(kNotGiven), 1.0, Kind::Ratio,
                     "A compression ratio of {1} cannot be come near to: it must exceed {2}.");
  }
  refuseUnder(wants.baseGasketsLeast, 0, Kind::Count,
              "{1} base gaskets cannot be asked for: at least {2}.");
  refuseOver(wants.baseGasketsMost, 2, Kind::Count,
             "{1} base gaskets in a cylinder are not searched: at most {2}.");
  refuseUnder(wants.baseGasketsMost, wants.baseGasketsLeast, Kind::Count,
              "At most {1} base gaskets are asked for, but at least {2}.");
}

Piece pieceOf(const std::vector<Part>& shelf, std::array<int, 2> parts) {
  Piece piece{.parts = parts};
  for (const int place : parts) {
    if (place == kNone) continue;
    const Part& part = shelf[static_cast<std::size_t>(place)];
    ++piece.count;
    piece.thickness += wholeNm(part.thickness);
    piece.plusMinus += wholeNm(part.plusMinus);
  }
  return piece;
}

std::vector<int> placesOf(Role role, const std::vector<Part>& shelf) {
  std::vector<int> places;
  for (std::size_t i = 0; i < shelf.size(); ++i) {
    if (shelf[i].role == role) places.push_back(static_cast<int>(i));
  }
  return places;
}

std::vector<Piece> platesOf(const std::vector<Part>& shelf, const Wants& wants) {
  std::vector<Piece> plates;
  if (!wants.plateNeeded) plates.emplace_back();
  for (const int place : placesOf(Role::Plate, shelf)) plates.push_back(plateOf(shelf, place));
  return plates;
}

std::vector<Piece> baseSetsOf(const std::vector<Part>& shelf, const Wants& wants) {
  const std::vector<int> places = placesOf(Role::BaseGasket, shelf);
  std::vector<Piece> sets;
  const auto add = [&](int first, int second) {
    const Piece set = baseSetOf(shelf, {first, second});
    if (set.count >= wants.baseGasketsLeast && set.count <= wants.baseGasketsMost) {
      sets.push_back(set);
    }
  };
  add(kNone, kNone);
  for (std::size_t i = 0; i < places.size(); ++i) {
    add(places[i], kNone);
    for (std::size_t j = i; j < places.size(); ++j) add(places[i], places[j]);
  }
  return sets;
}

std::vector<Piece> headGasketsOf(const std::vector<Part>& shelf) {
  std::vector<Piece> gaskets;
  for (const int place : placesOf(Role::HeadGasket, shelf)) {
    gaskets.push_back(headGasketOf(shelf, place));
  }
  return gaskets;
}

Bare bareOf(const Cylinder& cylinder) {
  const Nm deckClearance = wholeNm(cylinder.deckClearanceBare);
  return {.deckClearance = deckClearance,
          .squish = deckClearance + wholeNm(cylinder.squishBare),
          .worst = wholeNm(cylinder.worst),
          .area = chamber::boreArea(cylinder.bore) / 1e9,
          .sweptVolume = cylinder.sweptVolume,
          .otherVolumes = cylinder.volumesBesideStack};
}

}  // namespace

Reach reachOf(std::span<const Measure> measures) {
  Reach reach;
  for (const Measure& measure : measures) reach.take(measure);
  return reach;
}

Pieces::Pieces(const Question& question) : wants(question.wants) {
  const std::vector<Part>& shelf = question.shelf;
  for (const Part& part : shelf) check(part);
  for (const Cylinder& cylinder : question.cylinders) check(cylinder);
  check(wants);
  refuseUnder(static_cast<double>(question.cylinders.size()), 1, Kind::Count,
              "{1} cylinders leave nothing to choose for: at least {2} is needed.");
  squishWanted = wants.sortBy == SortBy::SquishNearness ? wholeNm(*wants.squish) : 0;
  ratioWanted = wants.sortBy == SortBy::RatioNearness ? *wants.ratio : 0.0;
  // No ratio is infinite where there is room above the piston.
  limits = {.squishLeast = wholeNm(wants.squishLeast),
            .squishMost = wholeNm(wants.squishMost),
            .leastAtWorst = wholeNm(wants.leastAtWorst),
            .ratioLeast = wants.ratioLeast,
            .ratioMost = std::min(wants.ratioMost, std::numeric_limits<double>::max())};
  squishSpread = wholeNm(wants.squishSpread);
  plates = platesOf(shelf, wants);
  baseSets = baseSetsOf(shelf, wants);
  headGaskets = headGasketsOf(shelf);
  refuseUnder(
      static_cast<double>(headGaskets.size()), 1, Kind::Count,
      "{1} head gaskets on the shelf leave nothing to choose: at least {2} is needed, of 0 mm "
      "where none is fitted.");
  refuseUnder(static_cast<double>(baseSets.size()), 1, Kind::Count,
              "Base gaskets are needed, and there are {1} on the shelf: at least {2}.");
  refuseUnder(static_cast<double>(plates.size()), 1, Kind::Count,
              "A plate is needed, and there are {1} on the shelf: at least {2}.");
  for (const Cylinder& cylinder : question.cylinders) cylinders.push_back(bareOf(cylinder));
  for (const Part& part : shelf) {
    const int each = part.servesAll ? static_cast<int>(cylinders.size()) : 1;
    quantities.push_back(part.quantity ? each * *part.quantity : std::numeric_limits<int>::max());
    servesAll.push_back(part.servesAll);
  }
}

double Pieces::share(Nm squish, double ratio) const {
  const double distance =
      sortsBySquish() ? static_cast<double>(squish - squishWanted) : ratio - ratioWanted;
  return distance * distance;
}

double Pieces::key(std::span<const Measure> measures) const {
  if (sortsByNearness()) {
    double sum = 0.0;
    for (const Measure& measure : measures) sum += share(measure.squish, measure.ratio);
    return sum;
  }
  const Reach reach = reachOf(measures);
  return sortsBySquish() ? static_cast<double>(reach.squishSpread()) : reach.ratioSpread();
}

double Pieces::rank(double key) const {
  const double rank =
      sortsByNearness() ? std::sqrt(key / static_cast<double>(cylinders.size())) : key;
  return sortsBySquish() ? metres(rank) : rank;
}

Piece plateOf(const std::vector<Part>& shelf, int plate) { return pieceOf(shelf, {plate, kNone}); }

Piece baseSetOf(const std::vector<Part>& shelf, const std::array<int, 2>& gaskets) {
  return pieceOf(shelf, gaskets);
}

Piece headGasketOf(const std::vector<Part>& shelf, int gasket) {
  Piece piece = pieceOf(shelf, {gasket, kNone});
  const Part& part = shelf[static_cast<std::size_t>(gasket)];
  piece.volume =
      chamber::gasketVolume({.gasketBore = part.bore, .thickness = metres(piece.thickness)});
  return piece;
}

bool operator<(const Set& one, const Set& other) {
  return std::tie(one.plate, one.baseGaskets, one.headGasket) <
         std::tie(other.plate, other.baseGaskets, other.headGasket);
}

Set setOf(const Piece& plate, const Piece& baseSet, const Piece& headGasket) {
  return {.plate = plate.parts[0], .baseGaskets = baseSet.parts, .headGasket = headGasket.parts[0]};
}

Measure measureOf(const Bare& cylinder, const Piece& plate, const Piece& baseSet,
                  const Piece& headGasket) {
  const Nm underBarrel = plate.thickness + baseSet.thickness;
  const Nm squish = cylinder.squish + underBarrel + headGasket.thickness;
  return {.squish = squish,
          .squishAtWorst =
              squish - cylinder.worst - plate.plusMinus - baseSet.plusMinus - headGasket.plusMinus,
          .ratio = cylinder.ratio(underBarrel, headGasket.volume)};
}

bool enoughOf(const Pieces& pieces, const Piece& piece, int cylinders) {
  return std::ranges::all_of(piece.parts, [&](int place) {
    const auto inOne = std::ranges::count(piece.parts, place);
    return place == kNone ||
           inOne * cylinders <= pieces.quantities[static_cast<std::size_t>(place)];
  });
}

bool allAlike(const Pieces& pieces) {
  return pieces.cylinders.size() == 1 ||
         (pieces.wants.onePlateForAll && pieces.wants.sameGasketsInAll);
}

Reason ownReason(const Pieces& pieces, const Measure& measure) {
  const Limits& limits = pieces.limits;
  if (measure.squish < limits.squishLeast) return Reason::TooClose;
  if (measure.squishAtWorst < limits.leastAtWorst) return Reason::TooCloseAtWorst;
  if (measure.squish > limits.squishMost) return Reason::TooWide;
  if (measure.ratio > limits.ratioMost) return Reason::RatioOver;
  if (measure.ratio < limits.ratioLeast) return Reason::RatioUnder;
  return Reason::Beaten;
}

int unlikeForAll(const Pieces& pieces, const Set& one, const Set& other) {
  const auto partsOf = [](const Set& set) {
    return std::array{set.plate, set.baseGaskets[0], set.baseGaskets[1], set.headGasket};
  };
  const std::array ofOne = partsOf(one);
  const std::array ofOther = partsOf(other);
  for (const std::array<int, 4>& parts : {ofOne, ofOther}) {
    for (const int part : parts) {
      if (part == kNone || !pieces.servesAll[static_cast<std::size_t>(part)]) continue;
      if (std::ranges::count(ofOne, part) != std::ranges::count(ofOther, part)) return part;
    }
  }
  return kNone;
}

std::vector<int> needs(const Pieces& pieces, std::span<const Set> sets) {
  std::vector<int> needed(pieces.quantities.size());
  const auto add = [&needed](int place) {
    if (place != kNone) ++needed[static_cast<std::size_t>(place)];
  };
  for (std::size_t i = 0; i < sets.size(); ++i) {
    if (i == 0 || !pieces.wants.onePlateForAll) add(sets[i].plate);
    for (const int gasket : sets[i].baseGaskets) add(gasket);
    add(sets[i].headGasket);
  }
  return needed;
}

Verdict verdictOn(const Pieces& pieces, std::span<const Set> sets,
                  std::span<const Measure> measures) {
  const Reach reach = reachOf(measures);
  const bool squishSpreads = reach.squishSpread() > pieces.squishSpread;
  if (squishSpreads && allAlike(pieces)) return {.reason = Reason::SquishSpreadOver};
  Verdict verdict;
  for (std::size_t i = 0; i < measures.size(); ++i) {
    const Reason reason = ownReason(pieces, measures[i]);
    if (reason < verdict.reason) verdict = {.reason = reason, .cylinder = static_cast<int>(i)};
  }
  if (verdict.reason < Reason::Beaten) return verdict;
  const std::vector<int> needed = needs(pieces, sets);
  for (std::size_t i = 0; i < needed.size(); ++i) {
    if (needed[i] > pieces.quantities[i]) {
      return {.reason = Reason::TooFew, .part = static_cast<int>(i)};
    }
  }
  for (const Set& set : sets) {
    const int unlike = unlikeForAll(pieces, sets.front(), set);
    if (unlike != kNone) return {.reason = Reason::TooFew, .part = unlike};
  }
  if (squishSpreads) return {.reason = Reason::SquishSpreadOver};
  if (reach.ratioSpread() > pieces.wants.ratioSpread) return {.reason = Reason::RatioSpreadOver};
  return verdict;
}

Candidate candidateOf(const Pieces& pieces, std::span<const Measure> measures,
                      std::vector<Set> sets) {
  Candidate candidate{
      .rank = {.key = pieces.key(measures), .atWorst = pieces.atWorst(reachOf(measures).atWorst)},
      .sets = std::move(sets)};
  for (const int count : needs(pieces, candidate.sets)) {
    candidate.rank.parts += count;
    candidate.rank.differentParts += count > 0 ? 1 : 0;
  }
  return candidate;
}

bool Rank::operator<(const Rank& other) const {
  return std::tie(key, other.atWorst, parts, differentParts) <
         std::tie(other.key, atWorst, other.parts, other.differentParts);
}

bool Candidate::operator<(const Candidate& other) const {
  if (rank < other.rank || other.rank < rank) return rank < other.rank;
  return sets < other.sets;
}

bool BestList::mayTake(const Rank& rank, std::span<const Set> beginning) const {
  if (!full()) return true;
  const Candidate& worst = candidates_.back();
  if (rank < worst.rank || worst.rank < rank) return rank < worst.rank;
  const auto first = worst.sets.begin();
  const auto size = static_cast<std::ptrdiff_t>(beginning.size());
  return !std::lexicographical_compare(first, first + size, beginning.begin(), beginning.end());
}

void BestList::offer(Candidate candidate) {
  if (full()) {
    if (!(candidate < candidates_.back())) return;
    candidates_.pop_back();
  }
  const auto place = std::upper_bound(candidates_.begin(), candidates_.end(), candidate);
  candidates_.insert(place, std::move(candidate));
}

Stack stackOf(const Question& question, const Pieces& pieces, const std::vector<Set>& sets,
              std::vector<Measure>& measures) {
  Stack stack;
  for (std::size_t i = 0; i < sets.size(); ++i) {
    const Bare& cylinder = pieces.cylinders[i];
    const Piece plate = plateOf(question.shelf, sets[i].plate);
    const Piece baseSet = baseSetOf(question.shelf, sets[i].baseGaskets);
    const Measure measure =
        measureOf(cylinder, plate, baseSet, headGasketOf(question.shelf, sets[i].headGasket));
    measures.push_back(measure);
    stack.cylinders.push_back(
        {.set = sets[i],
         .deckClearance = metres(cylinder.deckClearance + plate.thickness + baseSet.thickness),
         .squish = metres(measure.squish),
         .squishAtWorst = metres(measure.squishAtWorst),
         .ratio = measure.ratio});
  }
  const Reach reach = reachOf(measures);
  const Candidate candidate = candidateOf(pieces, measures, sets);
  stack.squishSpread = metres(reach.squishSpread());
  stack.ratioSpread = reach.ratioSpread();
  stack.rank = pieces.rank(candidate.rank.key);
  stack.parts = candidate.rank.parts;
  stack.differentParts = candidate.rank.differentParts;
  return stack;
}

std::vector<Stack> stacksOf(const Question& question, const Pieces& pieces, const BestList& best) {
  std::vector<Stack> stacks;
  for (const Candidate& candidate : best.candidates()) {
    std::vector<Measure> measures;
    stacks.push_back(stackOf(question, pieces, candidate.sets, measures));
  }
  return stacks;
}

}  // namespace strokewright::choice
