#pragma once
/// From a project to everything the workbench tells of it.

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/describe/evaluation.h"
#include "core/describe/finding.h"
#include "core/model/engine.h"

namespace strokewright::assess {

/// All inputs, results, rules and tables of the workbench.
const describe::Catalogue& catalogue();

/// Never stored, never edited, never undone: made again from the project at every edit.
/// The project must outlive it.
class Assessment {
 public:
  explicit Assessment(const model::Project& project);
  explicit Assessment(model::Project&& project) = delete;

  const model::Project& project() const { return *project_; }
  describe::Evaluation& evaluation() { return evaluation_; }
  const describe::Evaluation& evaluation() const { return evaluation_; }

  const describe::Cell& operator()(int engine, const describe::Result& result,
                                   int cylinder = 0) const {
    return evaluation_.cell(engine, result, cylinder);
  }

  /// The entries a result waits for, in page order; those of the reference donor after its own.
  struct Wait {
    const describe::Input* input = nullptr;
    bool donors = false;
    bool operator==(const Wait&) const = default;
  };
  std::vector<Wait> waitsFor(int engine, const describe::Result& result, int cylinder = 0) const;
  /// The same of what was noted while something was evaluated.
  std::vector<Wait> waitsFor(const describe::Frame& notes) const;

  /// How many results of this engine wait for an entry.
  int waiting(int engine, const describe::Input& input) const;

  /// What speaks against an engine, the heaviest first, then in page order.
  std::span<const describe::Finding> findings(int engine) const {
    return findings_[static_cast<std::size_t>(engine)];
  }
  /// Something forbids, in any engine.
  bool forbidden() const;

  /// Equal in every cylinder, to the digits a double has.
  bool sameInAll(int engine, const describe::Result& result) const;

 private:
  void addRefusals(int engine, std::vector<describe::Finding>& findings);

  const model::Project* project_;
  describe::Evaluation evaluation_;
  std::vector<std::vector<describe::Finding>> findings_;
};

/// What is said now and was not before, or weighs more than it did.
std::vector<describe::Finding> newlySaid(std::span<const describe::Finding> before,
                                         std::span<const describe::Finding> now);

/// Which input would have to be what for a result to be as wanted.
struct Solution {
  std::optional<double> value;  ///< [SI] of the input; nothing: none that was looked at does it
  double nearest = 0.0;         ///< [SI] of the input, where the result comes nearest
  double reached = 0.0;         ///< [SI] of the result there
  bool still = false;           ///< the result stayed as it is at everything that was tried
  /// [SI] of the input: what was looked at.
  double from = 0.0;
  double to = 0.0;
  bool everywhere = false;  ///< and that is all the input can be
  /// What the result waits for at every other value of the input (an offset asks for its side).
  std::optional<describe::Frame> waits = std::nullopt;
};

/// Solves for the input over all that is possible, starting near where it stands; where the input
/// has no limit of its own, up to twenty times what is usual.
/// @param inputCylinder -1: the same number in every cylinder.
/// @source bracketing root finder TOMS 748 of Boost.Math (Alefeld, Potra, Shi 1995).
Solution solve(describe::Evaluation& evaluation, int engine, const describe::Result& result,
               int cylinder, double wanted, const describe::Input& input, int inputCylinder);

/// What a solution rests on unasked: while no spacer is entered, the one to make follows every
/// entry it is computed from. One sentence; nothing where none follows.
/// @param result, cylinder, input, inputCylinder as they were solved for.
std::optional<describe::Sentence> whatFollows(const describe::Evaluation& evaluation, int engine,
                                              const describe::Result& result, int cylinder,
                                              const Solution& solution,
                                              const describe::Input& input, int inputCylinder);

/// A result against an input, at the given values of the input; NaN never: a point that is
/// refused or waits is left out. The input cylinder -1 stands for all of them.
struct SweepPoint {
  double input;   ///< [SI]
  double result;  ///< [SI]
};
std::vector<SweepPoint> sweep(describe::Evaluation& evaluation, int engine,
                              const describe::Result& result, int cylinder,
                              const describe::Input& input, int inputCylinder,
                              std::span<const double> at);

}  // namespace strokewright::assess
