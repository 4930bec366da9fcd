#include "core/choice/every_stack.h"

#include <span>

#include "core/choice/pieces.h"

namespace strokewright::choice {
namespace {

class EveryStack {
 public:
  EveryStack(const Pieces& pieces, Tally& tally) : pieces_(pieces), tally_(tally) {}

  /// Gives this cylinder every set it can have, and goes on to the next.
  void fill(std::size_t cylinder) {
    if (cylinder == pieces_.cylinders.size()) {
      consider();
      return;
    }
    const bool first = cylinder == 0;
    const bool samePlate = !first && pieces_.wants.onePlateForAll;
    const bool sameGaskets = !first && pieces_.wants.sameGasketsInAll;
    const auto choices = [](bool same, const std::vector<Piece>& all, const Piece* chosen) {
      return same ? std::span<const Piece>(chosen, 1) : std::span<const Piece>(all);
    };
    for (const Piece& plate : choices(samePlate, pieces_.plates, plate_)) {
      for (const Piece& baseSet : choices(sameGaskets, pieces_.baseSets, baseSet_)) {
        for (const Piece& headGasket : choices(sameGaskets, pieces_.headGaskets, headGasket_)) {
          plate_ = &plate;
          baseSet_ = &baseSet;
          headGasket_ = &headGasket;
          sets_.push_back(setOf(plate, baseSet, headGasket));
          measures_.push_back(measureOf(pieces_.cylinders[cylinder], plate, baseSet, headGasket));
          fill(cylinder + 1);
          sets_.pop_back();
          measures_.pop_back();
        }
      }
    }
  }

  const BestList& best() const { return best_; }

 private:
  void consider() {
    ++tally_.considered;
    const Reason why = verdictOn(pieces_, sets_, measures_).reason;
    ++tally_.lostTo(why);
    if (why == Reason::Beaten) {
      best_.offer(candidateOf(pieces_, measures_, sets_));
    }
  }

  const Pieces& pieces_;
  Tally& tally_;
  BestList best_;
  // What is being filled. The pieces are those given last: the same in all cylinders before, where
  // they have to be the same.
  std::vector<Set> sets_;
  std::vector<Measure> measures_;
  const Piece* plate_ = nullptr;
  const Piece* baseSet_ = nullptr;
  const Piece* headGasket_ = nullptr;
};

}  // namespace

Answer chooseFromEveryStack(const Question& question) {
  const Pieces pieces(question);
  Answer answer;
  EveryStack every(pieces, answer.tally);
  every.fill(0);
  answer.best = stacksOf(question, pieces, every.best());
  answer.tally.lostTo(Reason::Beaten) -= static_cast<double>(answer.best.size());
  return answer;
}

}  // namespace strokewright::choice
