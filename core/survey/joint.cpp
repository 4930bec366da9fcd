#include "core/survey/joint.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "core/model/inputs.h"

namespace strokewright::survey {

namespace in = model::in;
using describe::Entry;
using describe::Input;
using describe::Reader;
using describe::Sentence;

namespace {

std::size_t placeIn(Reader& read, const Entry& entry) {
  return entry.values.size() > 1 ? static_cast<std::size_t>(read.cylinder()) : 0;
}

}  // namespace

Joint jointOf(Reader& read, const describe::Result& closure, std::span<const Rests> ways) {
  const double likely = read.likely(closure);
  double worst = read.worst(closure);
  double squares = likely * likely;
  for (const Rests& way : ways) {
    const Entry& entry = *read.entry(*way.on);
    const std::size_t place = placeIn(read, entry);
    if (describe::limitOf(*way.on, entry, place) > 0.0) continue;  // counted already
    const double share = std::abs(way.worth) * describe::limitOrUsual(*way.on, entry, place);
    worst += share;
    squares += share * share;
  }
  return {.likely = std::sqrt(squares), .worst = worst};
}

void addPart(Reader& read, std::vector<Rests>& ways, const Input& part, double worth) {
  if (read.given(part) && read(part) != 0.0) ways.push_back({&part, worth});
}

std::vector<Rests> deckRestsOn(Reader& read) {
  std::vector<Rests> ways;
  const auto add = [&](const Input& input, double worth = 1.0) {
    if (read.given(input)) ways.push_back({&input, worth});
  };
  if (read.either(in::seatHeight, in::deckHeight)) {
    add(in::seatHeight);
    for (const Input* gasket : {&in::baseGasket, &in::secondBaseGasket, &in::thirdBaseGasket}) {
      addPart(read, ways, *gasket);
    }
    add(in::barrelHeight);
  } else {
    add(in::deckHeight);
  }
  addPart(read, ways, in::spacer);
  if (read.choice<model::HeightTakenTo>(in::heightTakenTo) == model::HeightTakenTo::BlockFace) {
    addPart(read, ways, in::linerProud);
  }
  if (read.either(in::crankThrow, in::stroke)) {
    add(in::crankThrow);
  } else {
    add(in::stroke, 0.5);
  }
  add(in::rodLength);
  add(in::compressionHeight);
  return ways;
}

Sentence suspicion(Reader& read, std::span<const Rests> ways, bool ofOneCylinder) {
  std::vector<const Input*> found;
  for (const Rests& way : ways) {
    if ((read.entry(*way.on)->values.size() > 1) == ofOneCylinder) found.push_back(way.on);
  }
  std::stable_sort(found.begin(), found.end(), [&](const Input* a, const Input* b) {
    const auto rank = [&](const Input* input) {
      const Entry& entry = *read.entry(*input);
      const double limit = describe::limitOf(*input, entry, placeIn(read, entry));
      return limit > 0.0 ? limit : HUGE_VAL;
    };
    return rank(a) > rank(b);
  });
  if (found.size() > 3) found.resize(3);
  // Last, that all of them are right, but not of the same day.
  static constexpr std::array<std::string_view, 4> kPatterns = {
      "Was it measured with another spacer or gasket than entered now?",
      "{1}: {2}. Was it measured with another spacer or gasket than entered now?",
      "{1}: {2}, {3}. Was it measured with another spacer or gasket than entered now?",
      "{1}: {2}, {3}, {4}. Was it measured with another spacer or gasket than entered now?"};
  const std::string_view look = read.cylinders() == 1 ? "Look at the least certain first"
                                : ofOneCylinder
                                    ? "Not in every cylinder, so look at what was read there"
                                    : "The same in every cylinder, so look at what they share";
  Sentence says{kPatterns[found.size()], {std::string(look)}};
  says.arguments.insert(says.arguments.end(), found.begin(), found.end());
  return says;
}

}  // namespace strokewright::survey
