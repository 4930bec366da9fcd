#pragma once
/// Through a reader a result gets its numbers; the reader notes what was read.
///
/// So missing entries, refusals, the working, the ± and dependents need no code in any result.

#include <span>
#include <string_view>
#include <vector>

#include "core/describe/entry.h"
#include "core/describe/evaluation.h"
#include "core/describe/input.h"
#include "core/describe/result.h"

namespace strokewright::describe {

class Reader {
 public:
  /// [SI] of this cylinder. An empty entry gives its default, else its typical value and the
  /// result waits for it; an impossible one gives its typical value and the result is refused.
  double operator()(const Input& input);

  /// [SI] of this cylinder.
  /// @throws Refusal where that result is refused.
  double operator()(const Result& result);

  /// The answer to a choice, as the enumeration of its model.
  template <typename Answer>
  Answer choice(const Input& input) {
    return static_cast<Answer>(static_cast<int>((*this)(input)));
  }

  /// Entered in this cylinder, be it good or not. Nothing waits for it.
  bool given(const Input& input);

  /// A number stands in this cylinder: entered and possible, or a default. Nothing waits for it.
  bool stands(const Input& input);

  /// Nothing was missing so far: what is costly to work out may stop here if not.
  bool complete() const;

  /// Either this or that input is needed: true when the first is to be read. With neither entered
  /// the result waits for the first (whose description names the other).
  bool either(const Input& first, const Input& other) { return given(first) || !given(other); }

  /// The result has a value: it does not wait, is not refused and does apply. Nothing waits for it.
  bool known(const Result& result);

  /// The result is refused, in any cylinder.
  bool refused(const Result& result);

  /// known() in every cylinder.
  bool knownInAll(const Result& result);

  /// The result means something for this engine (breathing does not for a two-stroke).
  bool applies(const Result& result);

  /// Says that the asking result means nothing for this engine, and why; return what it returns.
  double none(std::string_view why);

  /// The result, held still while entries are nudged for their ±.
  double held(const Result& result);

  double sum(const Result& result);    ///< over all cylinders
  double least(const Result& result);  ///< over all cylinders
  double most(const Result& result);   ///< over all cylinders

  bool hasDonor() const;               ///< there is a reference donor (a donor is its own)
  bool isDonor() const;                ///< this engine plays the donor
  double donor(const Result& result);  ///< of the reference donor, same cylinder
  double donor(const Input& input);    ///< of the reference donor, same cylinder
  bool donorGiven(const Input& input);
  bool donorKnown(const Result& result);

  double worst(const Result& result);   ///< its ± by the plain sum; for rules and tables
  double likely(const Result& result);  ///< its ± by the root of squares; for rules and tables

  /// How each independent error that these results read moves them in this cylinder. For tables.
  std::vector<Move> moves(std::span<const Result* const> results);

  /// What is kept in a list of the engine, or of the project.
  std::span<const Entries> items(const List& list) const;

  int cylinder() const;  ///< counted from 0
  int cylinders() const;
  Reader at(int cylinder) const;  ///< the same, for another cylinder

  /// The entry itself, for findings that speak about text and ±. Never nullptr.
  const Entry* entry(const Input& input) const;

 private:
  friend class Evaluation;
  Reader(Evaluation& evaluation, int engine, int cylinder, Frame* frame)
      : evaluation_(&evaluation), engine_(engine), cylinder_(cylinder), frame_(frame) {}

  double cell(int engine, const Result& result, int cylinder);
  template <typename Operation>
  double fold(const Result& result, Operation operation);
  double slot(int engine, const Input& input, int cylinder);
  bool givenIn(int engine, const Input& input, int cylinder);
  void mergeFromDonor(const Frame& from);
  void noteInput(const Input& input, bool own, int cylinder);
  void noteResult(int engine, const Result& result, int cylinder);

  Evaluation* evaluation_;
  int engine_;
  int cylinder_;
  Frame* frame_;  ///< where reads are noted; nullptr while nudging
};

// While entries are nudged for their ±, numbers are read a million times: the short way is here.

inline double Reader::operator()(const Input& input) {
  if (frame_ == nullptr) {
    const Evaluation::EngineState& state = evaluation_->engines_[Evaluation::index(engine_)];
    const std::size_t place = Evaluation::at(state, input, cylinder_);
    if (state.slots[place] != Evaluation::Slot::StandingBy) return state.values[place];
  }
  return slot(engine_, input, cylinder_);
}

inline double Reader::operator()(const Result& result) {
  return frame_ == nullptr ? evaluation_->nudgedValue(engine_, result, cylinder_)
                           : cell(engine_, result, cylinder_);
}

}  // namespace strokewright::describe
