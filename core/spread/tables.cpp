#include "core/spread/tables.h"

#include <array>
#include <string>

#include "core/chamber/results.h"
#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/describe/evaluation.h"
#include "core/model/inputs.h"
#include "core/spread/distribution.h"

namespace strokewright::spread {

using describe::Reader;
using describe::Rows;

namespace {

constexpr std::string_view kFormula =
    "independent errors, each with its ± and its shape, moved as the ± itself is";
constexpr std::string_view kSource =
    "JCGM 101:2008, propagation of distributions; the sum by its characteristic function";
constexpr std::string_view kValid =
    "errors small enough that everything moves in proportion; entries without a ± add nothing";

/// What a stack holds, in the order of its numbers.
constexpr std::array kMoved = {&out::squishGap, &out::sweptVolume, &out::clearanceVolume};

Stack stacked(double gap, double swept, double clearance,
              const std::vector<describe::Move>& moves) {
  Stack stack{.gap = gap, .swept = swept, .clearance = clearance, .sources = {}};
  for (const describe::Move& move : moves) {
    stack.sources.push_back(
        {.shape = move.shape, .gap = move.by[0], .swept = move.by[1], .clearance = move.by[2]});
  }
  return stack;
}

/// Equal bins over all that can be.
void addHistogram(const Spread& spread, Rows& rows) {
  constexpr int kBins = 60;
  const Bins bins{.low = spread.low(), .high = spread.high(), .count = kBins};
  if (!(bins.high > bins.low)) return;
  const std::vector<double> chances = spread.histogram(bins);
  for (int i = 0; i < kBins; ++i) {
    rows.add({bins.edge(i), bins.edge(i + 1), chances[static_cast<std::size_t>(i)]});
  }
}

}  // namespace

Stack stackOf(Reader& read) {
  return stacked(read(out::squishGap), read(out::sweptVolume), read(out::clearanceVolume),
                 read.moves(kMoved));
}

Stack stackOf(describe::Evaluation& evaluation, int engine, int cylinder) {
  const auto value = [&](const describe::Result& result) {
    return evaluation.cell(engine, result, cylinder).value;
  };
  return stacked(value(out::squishGap), value(out::sweptVolume), value(out::clearanceVolume),
                 evaluation.moves(engine, kMoved, cylinder));
}

}  // namespace strokewright::spread

namespace strokewright::out {

namespace in = model::in;
using describe::Column;
using describe::Per;
using describe::Reader;
using describe::Rows;
using units::Kind;

namespace {

constexpr Column kPercentiles[] = {
    {.key = "chance_below", .name = "Chance of less", .kind = Kind::Share},
    {.key = "gap_m", .name = "Squish gap", .symbol = "s", .kind = Kind::FineLength, .decimals = 3},
    {.key = "ratio", .name = "Compression ratio", .symbol = "ε", .kind = Kind::Ratio}};

constexpr Column kGapBins[] = {
    {.key = "from_m", .name = "Gap from", .kind = Kind::FineLength, .decimals = 4},
    {.key = "to_m", .name = "to", .kind = Kind::FineLength, .decimals = 4},
    {.key = "chance", .name = "Chance", .kind = Kind::Share, .decimals = 3}};

constexpr Column kRatioBins[] = {
    {.key = "from", .name = "Ratio from", .kind = Kind::Ratio, .decimals = 3},
    {.key = "to", .name = "to", .kind = Kind::Ratio, .decimals = 3},
    {.key = "chance", .name = "Chance", .kind = Kind::Share, .decimals = 3}};

constexpr Column kChances[] = {
    {.key = "what", .name = "Squish gap", .words = true},
    {.key = "gap_m", .name = "Under", .kind = Kind::FineLength},
    {.key = "chance", .name = "Chance", .kind = Kind::Share, .decimals = 3}};

}  // namespace

const Table likelihood{.key = "likelihood",
                       .name = "How likely each squish gap and each ratio is",
                       .per = Per::Cylinder,
                       .columns = kPercentiles,
                       .formula = spread::kFormula,
                       .source = spread::kSource,
                       .valid = spread::kValid,
                       .fill = [](Reader& read, Rows& rows) {
                         const spread::Stack stack = spread::stackOf(read);
                         if (stack.sources.empty()) return;
                         const spread::SumSpread gap = spread::gapSpread(stack);
                         const spread::RatioSpread ratio(stack);
                         for (const double chance : {0.001, 0.01, 0.025, 0.05, 0.25, 0.5, 0.75,
                                                     0.95, 0.975, 0.99, 0.999}) {
                           rows.add({chance, gap.quantile(chance), ratio.quantile(chance)});
                         }
                       }};

const Table gapHistogram{.key = "gap_histogram",
                         .name = "Squish gap, chance of each",
                         .per = Per::Cylinder,
                         .columns = kGapBins,
                         .formula = spread::kFormula,
                         .source = spread::kSource,
                         .valid = spread::kValid,
                         .fill = [](Reader& read, Rows& rows) {
                           const spread::Stack stack = spread::stackOf(read);
                           spread::addHistogram(spread::gapSpread(stack), rows);
                         }};

const Table ratioHistogram{.key = "ratio_histogram",
                           .name = "Compression ratio, chance of each",
                           .per = Per::Cylinder,
                           .columns = kRatioBins,
                           .formula = spread::kFormula,
                           .source = spread::kSource,
                           .valid = spread::kValid,
                           .fill = [](Reader& read, Rows& rows) {
                             spread::addHistogram(spread::RatioSpread(spread::stackOf(read)), rows);
                           }};

const Table gapChances{
    .key = "gap_chances",
    .name = "Chance that the squish gap is too small",
    .per = Per::Cylinder,
    .columns = kChances,
    .formula = spread::kFormula,
    .source = spread::kSource,
    .valid = spread::kValid,
    .fill = [](Reader& read, Rows& rows) {
      const spread::Stack stack = spread::stackOf(read);
      const spread::SumSpread gap = spread::gapSpread(stack);
      rows.add({"touches the head, cold", 0.0, gap.chanceBelow(0.0)});
      const double least = read(in::squishLeast);
      rows.add({"under the least of common practice", least, gap.chanceBelow(least)});
      if (read.given(in::wantedSquish)) {
        const double wanted = read(in::wantedSquish);
        rows.add({"under the one wanted", wanted, gap.chanceBelow(wanted)});
      }
      const double most = read(in::squishMost);
      rows.add({"under the most that still squishes", most, gap.chanceBelow(most)});
    }};

}  // namespace strokewright::out

namespace strokewright::spread {

std::span<const describe::Table* const> tables() {
  static constexpr std::array kTables = {&out::likelihood, &out::gapHistogram, &out::ratioHistogram,
                                         &out::gapChances};
  return kTables;
}

}  // namespace strokewright::spread
