#include "core/clearance/results.h"

#include <array>

#include "core/clearance/clearance.h"
#include "core/deck/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"

namespace strokewright::clearance {

namespace in = model::in;
using describe::Judged;
using describe::Reader;
using units::Kind;

namespace {

constexpr std::string_view kCold =
    "cold and still, with circles for outlines; check by trial assembly";

BottomEnd bottomEnd(Reader& read) {
  return {.bottomPinHeight = motion::bottomPinHeight(motion::mechanism(read)),
          .skirtLength = read(in::skirtLength)};
}

double linerBottom(Reader& read) {
  return read.either(in::linerBottomHeight, in::linerLength)
             ? read(in::linerBottomHeight)
             : linerBottomHeight(read(out::deckHeight), read(in::linerLength));
}

}  // namespace

}  // namespace strokewright::clearance

namespace strokewright::out {

namespace in = model::in;
using describe::Judged;
using describe::Reader;
using units::Kind;

const Result bushWall{.key = "bush_wall_m",
                      .name = "Small end: wall between pin and rod",
                      .symbol = "w",
                      .kind = Kind::FineLength,
                      .formula = "w = (d_se − d_gp) / 2",
                      .source = "plane geometry",
                      .valid = "a bush; with a needle cage it is the needle's room",
                      .value = [](Reader& read) {
                        return clearance::bushWall({.bore = read(in::smallEndBore),
                                                    .pinDiameter = read(in::gudgeonPinDiameter)});
                      }};

const Result skirtToWeb{.key = "skirt_to_web_m",
                        .name = "Skirt to web at bottom dead centre",
                        .symbol = "c_sk",
                        .kind = Kind::FineLength,
                        .judged = Judged::WorstCase,
                        .formula = "c = y_BDC − h_sk − R_cw",
                        .source = "plane geometry",
                        .valid = clearance::kCold,
                        .value = [](Reader& read) {
                          return clearance::skirtToWeb(clearance::bottomEnd(read),
                                                       read(in::counterweightRadius));
                        }};

const Result skirtOut{.key = "skirt_out_of_liner_m",
                      .name = "Skirt out of the liner at bottom dead centre",
                      .symbol = "x_out",
                      .kind = Kind::FineLength,
                      .formula = "x_out = y_lb − (y_BDC − h_sk), y_lb as entered or H − l_lin",
                      .source = "plane geometry",
                      .valid = clearance::kCold,
                      .value = [](Reader& read) {
                        return clearance::skirtOutOfLiner(clearance::bottomEnd(read),
                                                          clearance::linerBottom(read));
                      }};

const Result pinAboveLiner{.key = "pin_above_liner_bottom_m",
                           .name = "Pin axis above the liner's lower edge",
                           .symbol = "y_BDC − y_lb",
                           .kind = Kind::FineLength,
                           .judged = Judged::WorstCase,
                           .formula = "y_BDC − y_lb",
                           .source = "plane geometry",
                           .valid = clearance::kCold,
                           .value = [](Reader& read) {
                             return clearance::pinAboveLinerBottom(clearance::bottomEnd(read),
                                                                   clearance::linerBottom(read));
                           }};

const Result rodToLiner{
    .key = "rod_to_liner_m",
    .name = "Rod to the liner's lower edge",
    .symbol = "c_rod",
    .kind = Kind::FineLength,
    .judged = Judged::WorstCase,
    .formula = "least over a turn of B/2 ∓ (e_pin + (y − y_lb) tan φ) − b_sh / cos φ, both sides",
    .source = "plane geometry, measured from the liner axis",
    .valid = "a shank of even width where it passes the edge; check by trial assembly",
    .value = [](Reader& read) {
      const motion::SliderCrank mechanism = motion::mechanism(read);
      const double cylinderOffset = read(in::cylinderOffset);
      const bool towards =
          cylinderOffset != 0.0 &&
          read.choice<model::Side>(in::cylinderOffsetSide) == model::Side::TowardsThrust;
      const clearance::Liner liner{.bore = read(in::bore),
                                   .bottomHeight = clearance::linerBottom(read),
                                   .cylinderOffset = towards ? -cylinderOffset : cylinderOffset,
                                   .rodHalfWidth = read(in::rodHalfWidth)};
      if (!read.complete()) return 0.0;
      return clearance::rodToLiner(mechanism, liner).gap;
    }};

}  // namespace strokewright::out

namespace strokewright::clearance {

std::span<const describe::Result* const> results() {
  static constexpr std::array kResults = {&out::bushWall, &out::skirtToWeb, &out::skirtOut,
                                          &out::pinAboveLiner, &out::rodToLiner};
  return kResults;
}

}  // namespace strokewright::clearance
