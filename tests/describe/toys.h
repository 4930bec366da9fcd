#pragma once
/// A catalogue without a trade: what the machinery does, shown on sums.

#include <cmath>
#include <optional>
#include <utility>
#include <vector>

#include "core/describe/evaluation.h"
#include "core/describe/finding.h"
#include "core/describe/reader.h"
#include "core/describe/table.h"

namespace strokewright::describe::toys {

using units::Kind;

inline constexpr Choice kSorts[] = {{"plain", "plain"}, {"odd", "odd"}};

inline const Input cylinders{.key = "cylinders",
                             .label = "Cylinders",
                             .symbol = {},
                             .kind = Kind::Count,
                             .typical = 1.0,
                             .possible = {.least = 1.0, .most = 12.0}};
inline const Input sort{.key = "sort",
                        .label = "Sort",
                        .symbol = {},
                        .kind = Kind::Choice,
                        .choices = kSorts,
                        .standing = {.value = 0.0, .origin = "toy"}};
inline const Input place{.key = "place",
                         .label = "Place",
                         .symbol = {},
                         .kind = Kind::Ratio,
                         .scope = Scope::Place,
                         .list = true,
                         .typical = 1.0};
inline const Input part{.key = "part",
                        .label = "Part",
                        .symbol = {},
                        .kind = Kind::Ratio,
                        .scope = Scope::Part,
                        .list = true,
                        .typical = 1.0,
                        .possible = {.most = 1000.0}};
inline const Input other{
    .key = "other", .label = "Other", .symbol = {}, .kind = Kind::Ratio, .typical = 1.0};
inline const Input first{.key = "first",
                         .label = "First",
                         .symbol = {},
                         .kind = Kind::Ratio,
                         .typical = 1.0,
                         .instead = &other};
inline const Input preset{.key = "preset",
                          .label = "Preset",
                          .symbol = {},
                          .kind = Kind::Ratio,
                          .typical = 2.0,
                          .standing = {.value = 2.0, .origin = "toy"}};
inline const Input presetBy{.key = "preset_by",
                            .label = "Preset by another",
                            .symbol = {},
                            .kind = Kind::Ratio,
                            .typical = 6.0,
                            .standing = {.value = std::nullopt,
                                         .by = [](Reader& read) { return 3.0 * read(preset); },
                                         .origin = "toy"}};
inline const Input x1{
    .key = "x1", .label = "X 1", .symbol = {}, .kind = Kind::Ratio, .typical = 1.0};
inline const Input x2{
    .key = "x2", .label = "X 2", .symbol = {}, .kind = Kind::Ratio, .typical = 1.0};
inline const Input x3{
    .key = "x3", .label = "X 3", .symbol = {}, .kind = Kind::Ratio, .typical = 1.0};
inline const Input x4{
    .key = "x4", .label = "X 4", .symbol = {}, .kind = Kind::Ratio, .typical = 1.0};

/// A leaf with a limit.
inline double root(double value) {
  if (value < 0.0) throw Refusal("No root of {1}: at least {2}.", Kind::Ratio, value, 0.0);
  return std::sqrt(value);
}

inline const Result sum{
    .key = "sum", .name = "Sum", .kind = Kind::Ratio, .value = [](Reader& read) {
      return read(place) + read(part);
    }};
inline const Result total{.key = "total",
                          .name = "Total",
                          .kind = Kind::Ratio,
                          .per = Per::Engine,
                          .value = [](Reader& read) { return read.sum(sum); }};
inline const Result least{.key = "least",
                          .name = "Least",
                          .kind = Kind::Ratio,
                          .per = Per::Engine,
                          .value = [](Reader& read) { return read.least(sum); }};
inline const Result most{.key = "most",
                         .name = "Most",
                         .kind = Kind::Ratio,
                         .per = Per::Engine,
                         .value = [](Reader& read) { return read.most(sum); }};
inline const Result overLeast{
    .key = "over_least", .name = "Over the least", .kind = Kind::Ratio, .value = [](Reader& read) {
      return read(sum) - read.least(sum);
    }};
inline const Result eitherOr{
    .key = "either_or", .name = "Either or", .kind = Kind::Ratio, .value = [](Reader& read) {
      return read.either(first, other) ? read(first) : read(other);
    }};
inline const Result twice{
    .key = "twice", .name = "Twice", .kind = Kind::Ratio, .value = [](Reader& read) {
      return 2.0 * read(eitherOr);
    }};
inline const Result rest{
    .key = "rest", .name = "Root of the rest", .kind = Kind::Ratio, .value = [](Reader& read) {
      return root(read(x1) - 1.0);
    }};
inline const Result onRest{.key = "on_rest",
                           .name = "One more than the root",
                           .kind = Kind::Ratio,
                           .value = [](Reader& read) { return 1.0 + read(rest); }};
inline const Result odd{
    .key = "odd", .name = "For the odd", .kind = Kind::Ratio, .value = [](Reader& read) {
      if (static_cast<int>(read(sort)) == 0) return read.none("plain ones have none");
      return read(x1);
    }};
inline const Result onOdd{
    .key = "on_odd", .name = "From the odd", .kind = Kind::Ratio, .value = [](Reader& read) {
      return 1.0 / read(odd);
    }};
inline const Result still{.key = "still",
                          .name = "Sum held still, and part",
                          .kind = Kind::Ratio,
                          .value = [](Reader& read) { return read.held(sum) + read(part); }};
inline const Result ramp{
    .key = "ramp", .name = "At least one", .kind = Kind::Ratio, .value = [](Reader& read) {
      return std::fmax(read(x1), 1.0);
    }};
inline const Result ifKnown{
    .key = "if_known", .name = "If known", .kind = Kind::Ratio, .value = [](Reader& read) {
      return read.known(sum) ? read(sum) : -1.0;
    }};
inline const Result presets{
    .key = "presets", .name = "Presets", .kind = Kind::Ratio, .value = [](Reader& read) {
      return read(preset) + read(presetBy);
    }};
inline const Result ahead{
    .key = "ahead", .name = "Ahead of the donor", .kind = Kind::Ratio, .value = [](Reader& read) {
      if (!read.hasDonor()) return read.none("no donor");
      return read(sum) - read.donor(sum);
    }};
inline const Result donorsX{
    .key = "donors_x", .name = "Donor's X 1", .kind = Kind::Ratio, .value = [](Reader& read) {
      return read.donorGiven(x1) ? read.donor(x1) : 0.0;
    }};
inline const Result difference{
    .key = "difference", .name = "Gap", .kind = Kind::Ratio, .value = [](Reader& read) {
      return read(x1) - read(x2) - read(x3) - read(x4);
    }};
inline const Result series{
    .key = "series", .name = "In series", .kind = Kind::Ratio, .value = [](Reader& read) {
      return read(x1) + read(x2);
    }};
inline const Result parallel{
    .key = "parallel", .name = "In parallel", .kind = Kind::Ratio, .value = [](Reader& read) {
      return read(x1) * read(x2) / (read(x1) + read(x2));
    }};
inline const Result product{
    .key = "product", .name = "Product", .kind = Kind::Ratio, .value = [](Reader& read) {
      return read(x1) * read(x2);
    }};
inline const Result squareOver{
    .key = "square_over", .name = "Square over", .kind = Kind::Ratio, .value = [](Reader& read) {
      return read(x1) * read(x1) / read(x2);
    }};
inline const Result clearance{
    .key = "clearance", .name = "Clearance", .kind = Kind::Ratio, .value = [](Reader& read) {
      return read(x1) - read(x2);
    }};

inline const Rule saysSum{
    .key = "says_sum",
    .source = "toy",
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      speak
          .say(Weight::Objects,
               {"The sum is {1} of {2}.", {Quantity{Kind::Ratio, read(sum)}, &part}}, {&part})
          .mends.push_back(takeAs(part, 2.0 * read(part)));
    }};
inline const Rule saysLarge{
    .key = "says_large",
    .source = "toy",
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read(sum) <= 10.0) return;
      speak.say(Weight::Remarks, {"{1} is large.", {Quantity{Kind::Ratio, read(sum)}}}, {&part})
          .mends.push_back(takeAs(part, 1.0));
    }};
inline const Rule saysRest{
    .key = "says_rest", .source = "toy", .judge = [](Reader& read, Speaker& speak) {
      speak.say(Weight::Forbids, {"said before it read", {}}, {&x1});
      read(onRest);
    }};
inline const Rule saysWorst{
    .key = "says_worst", .source = "toy", .judge = [](Reader& read, Speaker& speak) {
      speak.say(Weight::Remarks,
                {"{1} ± {2}, likely {3}",
                 {Quantity{Kind::Ratio, read(series)}, Quantity{Kind::Ratio, read.worst(series)},
                  Quantity{Kind::Ratio, read.likely(series)}}},
                {&x1});
    }};

inline constexpr Column kDoublesColumns[] = {
    {.key = "name", .name = "Name", .words = true},
    {.key = "place", .name = "Place, \"so to say\"", .kind = Kind::Length},
    {.key = "per_cent", .name = "Share", .kind = Kind::Share, .decimals = 1}};
/// A row for each cylinder; the share stands where the place is positive.
inline const Table doubles{
    .key = "doubles",
    .name = "Doubles",
    .per = Per::Engine,
    .columns = kDoublesColumns,
    .fill = [](Reader& read, Rows& rows) {
      for (int i = 0; i < read.cylinders(); ++i) {
        const double value = read.at(i)(place);
        rows.add({i == 0 ? "first; of all" : "next", value, value > 0.0 ? value / 8.0 : kAbsent});
      }
    }};

inline constexpr Column kRootsColumns[] = {{.key = "n", .name = "Number", .kind = Kind::Count},
                                           {.key = "root", .name = "Root"},
                                           {.key = "sum", .name = "Sum"}};
inline const Table roots{.key = "roots",
                         .name = "Roots",
                         .columns = kRootsColumns,
                         .fill = [](Reader& read, Rows& rows) {
                           rows["n"].numbers = Eigen::ArrayXd::LinSpaced(3, 1.0, 3.0);
                           rows["root"].numbers = rows["n"].numbers * read(rest);
                           rows["sum"].numbers = rows["n"].numbers + read(sum);
                         }};

inline constexpr Column kOddsColumns[] = {{.key = "odd", .name = "Odd"}};
inline const Table odds{
    .key = "odds", .name = "Odds", .columns = kOddsColumns, .fill = [](Reader& read, Rows& rows) {
      rows.add({read(odd)});
    }};

inline constexpr Column kQuotientsColumns[] = {{.key = "quotient", .name = "Quotient"}};
inline const Table quotients{.key = "quotients",
                             .name = "Quotients",
                             .columns = kQuotientsColumns,
                             .fill = [](Reader& read, Rows& rows) {
                               rows.add({read(x1) / read(x2)});
                               rows.add({read(x3) / read(x2)});
                             }};

inline constexpr Column kUnevenColumns[] = {{.key = "a", .name = "A"}, {.key = "b", .name = "B"}};
inline const Table uneven{.key = "uneven",
                          .name = "Uneven",
                          .columns = kUnevenColumns,
                          .fill = [](Reader& read, Rows& rows) {
                            rows["a"].numbers = Eigen::ArrayXd::Constant(2, read(preset));
                          }};

inline const Catalogue& catalogue() {
  static const Catalogue kCatalogue(
      {&cylinders, &sort, &place, &part, &first, &other, &preset, &presetBy, &x1, &x2, &x3, &x4},
      {&sum,     &total,      &least,  &most,     &overLeast, &eitherOr,   &twice,    &rest,
       &onRest,  &odd,        &onOdd,  &still,    &ramp,      &ifKnown,    &presets,  &ahead,
       &donorsX, &difference, &series, &parallel, &product,   &squareOver, &clearance},
      {&saysSum, &saysLarge, &saysRest, &saysWorst}, {&doubles, &roots, &odds, &quotients, &uneven},
      cylinders);
  return kCatalogue;
}

/// Engines with entries; the evaluation may look at them as long as they live.
struct Engines {
  std::vector<Entries> entries;
  int donor = -1;

  explicit Engines(std::size_t count = 1) : entries(count) { catalogue(); }

  Engines& enter(const Input& input, std::vector<double> values, double limit = 0.0,
                 std::size_t engine = 0) {
    Entry entry;
    entry.values = std::move(values);
    if (limit > 0.0) entry.plusMinus = limit;
    entries[engine].insert_or_assign(&input, entry);
    return *this;
  }

  Evaluation evaluated() const {
    std::vector<Subject> subjects;
    for (std::size_t i = 0; i < entries.size(); ++i) {
      subjects.push_back({&entries[i], static_cast<int>(i) == donor});
    }
    Evaluation evaluation(catalogue(), subjects, donor);
    evaluation.runWithTolerances();
    return evaluation;
  }
};

}  // namespace strokewright::describe::toys
