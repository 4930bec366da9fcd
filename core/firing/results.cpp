#include "core/firing/results.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <numeric>
#include <optional>
#include <string>
#include <utility>

#include "core/describe/refusal.h"
#include "core/firing/layouts.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "core/units/unit_group.h"

namespace strokewright::firing {

namespace in = model::in;
using describe::Reader;

namespace {

constexpr double kTurn = 2.0 * std::numbers::pi;
constexpr std::string_view kPlane = "plane geometry";
constexpr std::string_view kEqual =
    "each cylinder on its own crankpin or sharing one; not for master and slave rods, whose tops "
    "lie elsewhere";

/// [rad] when this cylinder stands at its top, as topOf().
double topHere(Reader& here) {
  const double offsetTop = here.given(in::cylinderOffset) || here.given(in::pinOffset)
                               ? here(out::topDeadCentreAngle)
                               : 0.0;
  return topOf({.ahead = aheadOf(here), .axis = here(in::cylinderAxis), .offsetTop = offsetTop});
}

int whole(double value) { return static_cast<int>(value); }

/// The order of these tops, as entered or, for none, the most even one. Every cylinder of an engine
/// asks for the same: the last one is kept.
std::optional<Order> found(const Crank& crank, const std::vector<int>& cylinders,
                           const std::vector<bool>& together) {
  struct Last {
    Crank crank;
    std::vector<int> cylinders;
    std::vector<bool> together;
    std::optional<Order> order;
  };
  if (cylinders.empty()) return mostEven(crank);
  thread_local std::optional<Last> last;
  if (!last || last->crank != crank || last->cylinders != cylinders || last->together != together) {
    last = {crank, cylinders, together, orderAs(cylinders, crank.tops, crank.strokes, together)};
  }
  return last->order;
}

}  // namespace

double aheadOf(Reader& read) {
  if (read.cylinders() == 1 && !read.given(in::throwAhead)) return 0.0;
  return read(in::throwAhead);
}

std::optional<Reader> besideOf(Reader& read) {
  if (read(in::cylinderCount) != read.donor(in::cylinderCount)) return std::nullopt;
  const double number = read(in::cylinderNumber);
  for (int i = 0; i < read.cylinders(); ++i) {
    Reader there = read.at(i);
    if (there.donor(in::cylinderNumber) == number) return there;
  }
  return std::nullopt;
}

std::vector<int> numbersOf(Reader& read) {
  read(in::cylinderCount);  // waited for: without it there is one cylinder
  std::vector<int> numbers;
  for (int i = 0; i < read.cylinders(); ++i) {
    const int number = whole(read.at(i)(in::cylinderNumber));
    if (std::ranges::find(numbers, number) != numbers.end()) {
      throw describe::Refusal(kSameNumber, units::Kind::Count, number, 0.0);
    }
    numbers.push_back(number);
  }
  return numbers;
}

Crank crankOf(Reader& read) {
  Crank crank{.strokes = model::twoStroke(read) ? Strokes::Two : Strokes::Four,
              .tops = {},
              .axes = {},
              .places = {},
              .numbers = numbersOf(read)};
  for (int i = 0; i < read.cylinders(); ++i) {
    Reader here = read.at(i);
    crank.tops.push_back(here.held(out::topAfterFirst));
    crank.axes.push_back(here(in::cylinderAxis));
    crank.places.push_back(here.given(in::cylinderPosition) ? here(in::cylinderPosition) : i);
  }
  return crank;
}

std::vector<int> placesNamed(Reader& read, std::span<const int> numbers) {
  std::vector<int> cylinders;
  for (int i = 0; i < read.cylinders(); ++i) {
    const int number = whole(read.at(i)(in::firingOrder));
    const auto found = std::ranges::find(numbers, number);
    cylinders.push_back(found == numbers.end() ? -1 : static_cast<int>(found - numbers.begin()));
  }
  return cylinders;
}

std::vector<bool> joinedInOrder(Reader& read) {
  constexpr std::string_view kDigits = "0123456789";
  constexpr std::string_view kBlanks = " \t";
  std::string_view text = read.entry(in::firingOrder)->text;
  std::vector<bool> joined;
  while (!text.empty()) {
    const std::size_t digit = std::min(text.find_first_of(kDigits), text.size());
    std::string_view parting = text.substr(0, digit);
    text.remove_prefix(digit);
    text.remove_prefix(std::min(text.find_first_not_of(kDigits), text.size()));
    parting.remove_prefix(std::min(parting.find_first_not_of(kBlanks), parting.size()));
    joined.push_back(parting.substr(0, parting.find_first_of(kBlanks)) == "+");
  }
  return joined;
}

std::vector<Order> ordersOf(const Crank& crank) {
  return everyOrder(crank.tops, crank.strokes, crank.standing());
}

Order mostEven(const Crank& crank) {
  thread_local std::optional<std::pair<Crank, Order>> last;
  if (!last || last->first != crank) last = {crank, ordersOf(crank).front()};
  return last->second;
}

bool namesEachOnce(Reader& read, std::span<const int> numbers) {
  std::vector<int> cylinders = placesNamed(read, numbers);
  const std::size_t typed = read.entry(in::firingOrder)->values.size();
  if (typed > cylinders.size()) return false;
  std::ranges::sort(cylinders);
  return cylinders.front() >= 0 && std::ranges::adjacent_find(cylinders) == cylinders.end();
}

namespace {

/// The order where it is said on which turn each cylinder fires.
std::optional<Order> orderOnTurns(Reader& read, const Crank& crank, std::vector<int> cylinders) {
  const int first = cylinders.empty() ? 0 : cylinders.front();
  std::vector<double> firesAt;
  for (int i = 0; i < read.cylinders(); ++i) {
    const double later = read.at(i)(in::firesLater);
    if (later > 0.0 && (i == first || crank.strokes == Strokes::Two)) return std::nullopt;
    const double top =
        crank.tops[static_cast<std::size_t>(i)] - crank.tops[static_cast<std::size_t>(first)];
    firesAt.push_back(within(top, kTurn) + later * kTurn);
  }
  if (cylinders.empty()) return sorted(firesAt);
  return orderAt(cylinders, firesAt);
}

}  // namespace

Sought soughtOrder(Reader& read, const Crank& crank) {
  const bool named = read.given(in::firingOrder);
  const std::vector<int> cylinders = named ? placesNamed(read, crank.numbers) : std::vector<int>{};
  const std::vector<bool> together = named ? joinedInOrder(read) : std::vector<bool>{};
  if (named && !namesEachOnce(read, crank.numbers)) return {std::nullopt, kNotEachOnce};
  if (!read.given(in::firesLater)) return {found(crank, cylinders, together), kThrowsCannot};
  std::optional<Order> order = orderOnTurns(read, crank, cylinders);
  if (order && !fireTogether(*order, together)) order.reset();
  return {std::move(order), kTurnsCannot};
}

Order orderOf(Reader& read, const Crank& crank) {
  Sought sought = soughtOrder(read, crank);
  if (!sought.order) throw describe::Refusal(sought.whyNot, units::Kind::Count, 0.0, 0.0);
  return *std::move(sought.order);
}

std::string turnsLaterOf(const std::vector<Order>& orders, std::size_t which, const Crank& crank) {
  const Order& order = orders[which];
  const auto here = orders.begin() + static_cast<std::ptrdiff_t>(which);
  if (std::none_of(orders.begin(), here,
                   [&](const Order& before) { return before.cylinders == order.cylinders; })) {
    return {};
  }
  std::string later;
  for (std::size_t i = 0; i < crank.tops.size(); ++i) {
    const auto place = std::ranges::find(order.cylinders, static_cast<int>(i));
    const double at = order.at[static_cast<std::size_t>(place - order.cylinders.begin())];
    if (i > 0) later += "; ";
    later += at < kTurn - kSame ? "0" : "1";
  }
  return later;
}

std::string_view shortEnd(double end) {
  const std::string_view label = in::viewedFrom.choices[static_cast<std::size_t>(end)].label;
  return label.substr(0, label.find(" ("));
}

Seen seenOf(const describe::Evaluation& evaluation, int engine) {
  Seen seen;
  seen.rotationSaid = evaluation.inputStands(engine, in::rotation);
  seen.clockwise = !seen.rotationSaid || evaluation.inputValue(engine, in::rotation) ==
                                             model::answer(model::Rotation::Clockwise);
  if (evaluation.inputStands(engine, in::viewedFrom)) {
    const double end = evaluation.inputValue(engine, in::viewedFrom);
    seen.end = shortEnd(end);
    seen.otherEnd = shortEnd(1.0 - end);
  }
  return seen;
}

std::string Seen::words() const {
  std::string text = "seen from ";
  text += end.empty() ? "an end that nobody named" : "the " + std::string(end);
  if (!rotationSaid) return text + ", sense not given: clockwise assumed";
  return text + (clockwise ? ", turns clockwise" : ", turns anticlockwise");
}

std::string Seen::wordsFromBehind() const {
  std::string text = "from the " + std::string(otherEnd);
  text += clockwise ? ", where it turns anticlockwise" : ", where it turns clockwise";
  return rotationSaid ? text : text + " (sense assumed)";
}

bool turnsAgainstDonor(Reader& read) {
  if (read.isDonor() || !read.hasDonor()) return false;
  for (const describe::Input* input : {&in::rotation, &in::viewedFrom}) {
    if (!read.given(*input) || !read.donorGiven(*input)) return false;
  }
  const bool otherEnd = read(in::viewedFrom) != read.donor(in::viewedFrom);
  const bool otherWay = read(in::rotation) != read.donor(in::rotation);
  return otherEnd != otherWay;  // else the same, said from the other end
}

double aMinute(double speed) {
  return units::fromSi(units::unitsOf(units::Kind::Speed).front(), speed);
}

std::string words(const Order& order, std::span<const int> numbers) {
  std::string text;
  for (std::size_t i = 0; i < order.cylinders.size(); ++i) {
    const bool together = i > 0 && order.at[i] - order.at[i - 1] < kSame;
    if (i > 0) text += together ? "+" : "-";
    text += std::to_string(numbers[static_cast<std::size_t>(order.cylinders[i])]);
  }
  return text;
}

std::string inDegrees(std::span<const double> angles) {
  constexpr double kTenth = kTurn / 3600.0;
  std::vector<long> tenths;
  for (const double angle : angles) tenths.push_back(std::lround(angle / kTenth));
  const auto [least, most] = std::ranges::minmax(angles);
  if (most - least >= kSame) {
    // What the rounding of all leaves goes to those that are rounded furthest the other way.
    const double sum = std::accumulate(angles.begin(), angles.end(), 0.0);
    long left = std::lround(sum / kTenth) - std::accumulate(tenths.begin(), tenths.end(), 0L);
    for (const long step = left > 0 ? 1 : -1; left != 0; left -= step) {
      std::size_t furthest = 0;
      const auto off = [&](std::size_t i) {
        return static_cast<double>(step) * (angles[i] / kTenth - static_cast<double>(tenths[i]));
      };
      for (std::size_t i = 1; i < tenths.size(); ++i) {
        if (off(i) > off(furthest) + kSame) furthest = i;
      }
      tenths[furthest] += step;
    }
  }
  std::string text;
  for (const long each : tenths) {
    if (!text.empty()) text += "-";
    text += std::to_string(each / 10);
    if (each % 10 != 0) text += "." + std::to_string(each % 10);
  }
  return text;
}

namespace {

/// [rad] The result without a jump by a turn where a ± moves it past a whole one.
double steady(Reader& read, const describe::Result& result) {
  const double held = read.held(result);
  return held + result.step(held, read(result));
}

/// The cylinder that is named first in the order entered; the first of all while none is.
int firstToFire(Reader& read) {
  if (!read.given(in::firingOrder)) return 0;
  const int named = whole(read.at(0)(in::firingOrder));
  for (int i = 0; i < read.cylinders(); ++i) {
    if (whole(read.at(i)(in::cylinderNumber)) == named) return i;
  }
  return 0;
}

/// The cylinder whose number the donor fires first; the first of all where none goes by it.
int firstOfDonor(Reader& read) {
  Reader first = read.at(0);
  const double named = first.donorGiven(in::firingOrder) ? first.donor(in::firingOrder)
                                                         : first.donor(in::cylinderNumber);
  for (int i = 0; i < read.cylinders(); ++i) {
    if (read.at(i)(in::cylinderNumber) == named) return i;
  }
  return 0;
}

/// [rad] From the top of the cylinder that fires first to that of this one.
double topAfter(Reader& read) {
  Reader first = read.at(firstToFire(read));
  return within(read(out::topAfterFirst) - first(out::topAfterFirst), kTurn);
}

double turnsLater(Reader& read) {
  const Crank crank = crankOf(read);
  const Order order = orderOf(read, crank);
  const auto here = std::ranges::find(order.cylinders, read.cylinder());
  const double at = order.at[static_cast<std::size_t>(here - order.cylinders.begin())];
  const double top = crank.tops[static_cast<std::size_t>(read.cylinder())] -
                     crank.tops[static_cast<std::size_t>(firstToFire(read))];
  return std::round((at - within(top, kTurn)) / kTurn);
}

/// The intervals, the order held still.
std::vector<double> intervalsOf(Reader& read) {
  Order order;
  for (int i = 0; i < read.cylinders(); ++i) {
    Reader here = read.at(i);
    order.at.push_back(steady(here, out::firesAfterFirst));
  }
  std::ranges::sort(order.at);
  return order.intervals(model::twoStroke(read) ? Strokes::Two : Strokes::Four);
}

}  // namespace

}  // namespace strokewright::firing

namespace strokewright::out {

namespace in = model::in;
using describe::Per;
using describe::Reader;
using units::Kind;

const Result topAfterFirst{
    .key = "top_after_first_rad",
    .name = "Top dead centre after the first cylinder’s",
    .symbol = "α",
    .kind = Kind::Angle,
    .period = firing::kTurn,
    .decimals = 1,
    .formula = "α = β − ψ + θ_TDC, less that of the first; a throw ahead comes earlier",
    .source = firing::kPlane,
    .valid = firing::kEqual,
    .value = [](Reader& read) {
      read(in::cylinderCount);  // waited for: without it there is one cylinder
      Reader first = read.at(0);
      return firing::within(firing::topHere(read) - firing::topHere(first), firing::kTurn);
    }};

const Result turnsLater{
    .key = "fires_turns_later",
    .name = "Fires so many turns after its first top",
    .kind = Kind::Count,
    .formula =
        "as the firing order has it; while none is entered, the most even one, of equals that with "
        "the fewest neighbours in sequence",
    .source = "enumeration",
    .valid = firing::kEqual,
    .value = [](Reader& read) { return firing::turnsLater(read); }};

const Result firesAfterFirst{
    .key = "fires_after_first_rad",
    .name = "Fires after the first by",
    .symbol = "α_f",
    .kind = Kind::Angle,
    .period = firing::kTurn,
    .decimals = 1,
    .formula =
        "α, or a turn later, as the firing order has it; while none is entered, the most "
        "even one",
    .source = "enumeration",
    .valid = firing::kEqual,
    .value = [](Reader& read) {
      return firing::topAfter(read) + firing::kTurn * read.held(turnsLater);
    }};

const Result largestFiringGap{
    .key = "largest_firing_gap_rad",
    .name = "Largest firing interval",
    .kind = Kind::Angle,
    .per = Per::Engine,
    .decimals = 1,
    .formula = "the most of the intervals from one firing to the next",
    .source = "definition",
    .valid = firing::kEqual,
    .value = [](Reader& read) { return std::ranges::max(firing::intervalsOf(read)); }};

const Result leastFiringGap{
    .key = "least_firing_gap_rad",
    .name = "Least firing interval",
    .kind = Kind::Angle,
    .per = Per::Engine,
    .decimals = 1,
    .formula = "the least of the intervals; 0 where two fire together",
    .source = "definition",
    .valid = firing::kEqual,
    .value = [](Reader& read) { return std::ranges::min(firing::intervalsOf(read)); }};

const Result firingFrequency{.key = "firings_a_minute",
                             .name = "Firings a minute at the speed wanted",
                             .symbol = "f",
                             .kind = Kind::Count,
                             .per = Per::Engine,
                             .formula = "f = n · N, halved for a four-stroke; N turns a minute",
                             .source = "definition",
                             .valid = "every cylinder fires",
                             .value = [](Reader& read) {
                               const double each = model::twoStroke(read) ? 1.0 : 0.5;
                               return read(in::cylinderCount) * each *
                                      firing::aMinute(read(in::wantedSpeed));
                             }};

const Result lobeBehindFirst{
    .key = "lobe_after_first_rad",
    .name = "Lobe ahead of the first lobe by, on the camshaft",
    .kind = Kind::Angle,
    .period = firing::kTurn,
    .decimals = 1,
    .formula = "−α_f / 2 or a turn more, counted in the sense in which the camshaft turns",
    .source = "the camshaft turns at half the speed of the crank",
    .valid =
        "four-stroke, all cylinders with the same cam timing; of a V a camshaft for each bank, "
        "each "
        "seen from its own bank",
    .value = [](Reader& read) {
      if (model::twoStroke(read)) return read.none("a two-stroke has no camshaft");
      // Held still, so that a lobe beside the first does not jump by a turn under its ±.
      const double firesAt = read.held(firesAfterFirst);
      return firing::lobeAngle(firesAt) - 0.5 * (firing::steady(read, firesAfterFirst) - firesAt);
    }};

const Result lobeMoved{
    .key = "lobe_moved_rad",
    .name = "Lobe moved against the donor’s camshaft by",
    .kind = Kind::Angle,
    .period = firing::kTurn,
    .decimals = 1,
    .formula = "difference of the lobe angles of the same workshop number, −180° to 180°",
    .source = "definition",
    .valid =
        "both camshafts counted from the lobe of the cylinder that the donor fires first; of a V "
        "whose one camshaft lies in the case only where the axes are the donor’s",
    .value = [](Reader& read) {
      if (read.isDonor()) return read.none("it is the donor’s own camshaft");
      if (!read.hasDonor()) return read.none("there is no donor to compare with");
      if (firing::turnsAgainstDonor(read)) {
        return read.none("it turns the other way than the donor: its camshaft is a mirror image");
      }
      const double lobe = read(lobeBehindFirst);
      const bool counted = read.given(in::cylinderCount) && read.donorGiven(in::cylinderCount);
      if (counted && read(in::cylinderCount) != read.donor(in::cylinderCount)) {
        return read.none("the donor has another number of cylinders");
      }
      read.donor(in::cylinderCount);  // waited for
      if (!counted) return 0.0;
      std::optional<Reader> beside = firing::besideOf(read);
      if (!beside) return read.none("the donor numbers its cylinders otherwise");
      Reader first = read.at(firing::firstOfDonor(read));
      const double moved = lobe - first(lobeBehindFirst) - beside->donor(lobeBehindFirst);
      return std::remainder(moved, firing::kTurn);
    }};

}  // namespace strokewright::out

namespace strokewright::firing {

std::span<const describe::Result* const> results() {
  static constexpr std::array kResults = {
      &out::crankLayout,     &out::topAfterFirst,    &out::turnsLater,
      &out::firesAfterFirst, &out::largestFiringGap, &out::leastFiringGap,
      &out::firingFrequency, &out::lobeBehindFirst,  &out::lobeMoved};
  return kResults;
}

}  // namespace strokewright::firing
