#include "core/describe/wording.h"
#include "core/model/inputs.h"
#include "core/sheet/bench_writers.h"

namespace strokewright::sheet {

namespace in = model::in;

namespace {

constexpr int kReadings = 3;
constexpr int kPlacesOfBarrel = 4;
constexpr int kPointsOfDeck = 4;  // they take out the rock of the piston
constexpr int kOfEachWall = 4;    // at two depths, in two directions

/// Not an entry: only its closeness is judged, at the bench.
Asked askMainBores(const BenchWork& work) {
  constexpr double kBoreGauge = 0.005e-3;
  constexpr double kOutOfRound = 0.015e-3;
  const auto kind = units::Kind::Length;
  const std::string unit(work.style.unit(kind));
  Asked asked{.label = "Main housing bores",
              .unit = unit,
              .instrument = "bore gauge, ± " + work.style.editable(kind, kBoreGauge) + " " + unit,
              .how = describe::word(
                  {"Each wall at two depths, in two directions; out of round by {1} at most "
                   "is common practice.",
                   {describe::Quantity{kind, kOutOfRound, 3}}},
                  work.style),
              .readings = kOfEachWall,
              .place = "wall"};
  for (int wall = 1; wall <= work.cylinders() + 1; ++wall) {
    asked.places.push_back({std::to_string(wall), {}});
  }
  return asked;
}

}  // namespace

void writeSurvey(BenchWork& work) {
  std::vector<Asked>& asked = work.sheet.asked;
  const bool direct = work.measuredDirect();
  if (direct) {
    asked.push_back(work.ask(in::deckHeight, kReadings));
  } else {
    asked.push_back(work.ask(in::seatHeight, kReadings));
    asked.push_back(work.ask(in::seatAcross, kReadings));
    asked.push_back(work.ask(in::barrelHeight, kPlacesOfBarrel));
  }
  asked.push_back(work.ask(in::measuredDeckClearance, kPointsOfDeck));
  asked.push_back(work.ask(in::linerProud, 1));
  if (!direct) asked.push_back(work.ask(in::seatAcrossWidth, 1));
  if (work.cylinders() > 1) asked.push_back(work.ask(in::cylinderPitch, kReadings));
  asked.push_back(askMainBores(work));
}

}  // namespace strokewright::sheet
