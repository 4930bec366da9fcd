#include "core/choice/choice.h"

#include <algorithm>
#include <cstddef>
#include <stdexcept>

#include "core/choice/pieces.h"
#include "core/choice/search.h"

namespace strokewright::choice {
namespace {

void checkPlace(const std::vector<Part>& shelf, int place, Role role) {
  if (place < 0 || static_cast<std::size_t>(place) >= shelf.size() ||
      shelf[static_cast<std::size_t>(place)].role != role) {
    throw std::invalid_argument("a set names a part that is not on the shelf");
  }
}

void checkSets(const Question& question, const std::vector<Set>& sets) {
  if (sets.size() != question.cylinders.size()) {
    throw std::invalid_argument("a stack needs one set for each cylinder");
  }
  for (const Set& set : sets) {
    checkPlace(question.shelf, set.headGasket, Role::HeadGasket);
    if (set.plate != kNone) checkPlace(question.shelf, set.plate, Role::Plate);
    for (const int gasket : set.baseGaskets) {
      if (gasket != kNone) checkPlace(question.shelf, gasket, Role::BaseGasket);
    }
  }
}

Loss lossOf(const Question& question, const Verdict& verdict, const Stack& stack, int needed) {
  const Wants& wants = question.wants;
  const auto at = [](int index) { return static_cast<std::size_t>(index); };
  const auto loss = [&](double value, double limit) {
    return Loss{.reason = verdict.reason,
                .cylinder = verdict.cylinder,
                .part = verdict.part,
                .value = value,
                .limit = limit};
  };
  const auto fit = [&] { return stack.cylinders[at(verdict.cylinder)]; };
  switch (verdict.reason) {
    case Reason::TooClose:
      return loss(fit().squish, wants.squishLeast);
    case Reason::TooCloseAtWorst:
      return loss(fit().squishAtWorst, wants.leastAtWorst);
    case Reason::TooWide:
      return loss(fit().squish, wants.squishMost);
    case Reason::RatioOver:
      return loss(fit().ratio, wants.ratioMost);
    case Reason::RatioUnder:
      return loss(fit().ratio, wants.ratioLeast);
    case Reason::TooFew:
      return loss(needed, question.shelf[at(verdict.part)].quantity.value_or(needed));
    case Reason::SquishSpreadOver:
      return loss(stack.squishSpread, wants.squishSpread);
    case Reason::RatioSpreadOver:
      return loss(stack.ratioSpread, wants.ratioSpread);
    case Reason::Beaten:
      break;
  }
  return loss(stack.rank, stack.rank);
}

/// How many of a part the stack takes off the shelf.
int needed(const Pieces& pieces, const std::vector<Set>& sets, int part) {
  if (part == kNone) return 0;
  const auto place = static_cast<std::size_t>(part);
  const int cylinders = static_cast<int>(sets.size());
  const int filled = needs(pieces, sets)[place];
  return pieces.servesAll[place] ? (filled + cylinders - 1) / cylinders : filled;
}

}  // namespace

Answer choose(const Question& question) {
  const Pieces pieces(question);
  BestList best;
  Answer answer;
  if (allAlike(pieces)) {
    searchAlike(pieces, best, answer.tally);
  } else {
    const Searched searched = searchMixed(pieces, best, answer.tally);
    answer.searchedAll = searched.all;
    answer.noneNearer = searched.noneNearer;
  }
  answer.best = stacksOf(question, pieces, best);
  return answer;
}

Judged judge(const Question& question, const std::vector<Set>& sets) {
  const Pieces pieces(question);
  checkSets(question, sets);
  std::vector<Measure> measures;
  const Stack stack = stackOf(question, pieces, sets, measures);
  const Verdict verdict = verdictOn(pieces, sets, measures);
  if (verdict.reason == Reason::Beaten) return {.stack = stack, .loss = std::nullopt};
  return {.stack = stack,
          .loss = lossOf(question, verdict, stack, needed(pieces, sets, verdict.part))};
}

std::optional<Loss> whyLost(const Question& question, const Answer& answer,
                            const std::vector<Set>& sets) {
  const Judged judged = judge(question, sets);
  if (judged.loss) return judged.loss;
  const bool listed = std::any_of(answer.best.begin(), answer.best.end(), [&](const Stack& stack) {
    return std::equal(stack.cylinders.begin(), stack.cylinders.end(), sets.begin(), sets.end(),
                      [](const Fit& fit, const Set& set) { return fit.set == set; });
  });
  if (listed || answer.best.empty()) return std::nullopt;
  return Loss{
      .reason = Reason::Beaten, .value = judged.stack.rank, .limit = answer.best.back().rank};
}

}  // namespace strokewright::choice
