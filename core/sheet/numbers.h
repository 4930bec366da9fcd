#pragma once
/// Entries and results as the cells of the sheet's table.

#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "core/assess/assess.h"
#include "core/sheet/sheet.h"
#include "core/units/style.h"

namespace strokewright::sheet {

/// What stands where there is no number.
inline constexpr std::string_view kNothing = "–";

/// One decimal more than usual is shown where it is not nought and the last one: 0.795, but 1.03
/// for 1.0333.
/// @returns decimals in the bench unit; negative: the default of the unit will do
int decimalsFor(const units::Style& style, units::Kind kind, double si);

/// One value of an entry [SI] with as many decimals as were typed, the default at least.
std::string asEntered(const units::Style& style, units::Kind kind, const describe::Entry& entry,
                      double si);

/// How the zeros at the end of a number are treated.
enum class Zeros { Kept, Dropped };

class Numbers {
 public:
  /// Both outlive it.
  Numbers(const assess::Assessment& assessment, const units::Style& style)
      : assessment_(assessment), style_(style) {}

  /// The result has a number in every cylinder of the engine.
  bool isValue(int engine, const describe::Result& result) const;
  /// It is this number in every cylinder.
  bool isEverywhere(int engine, const describe::Result& result, double value) const;

  Text text(int engine, const describe::Result& result) const;
  Text text(int engine, const describe::Input& input, Zeros zeros = Zeros::Kept) const;
  /// As it was typed, and in its exact text with the ± it carries: "0.795 ± 0.005".
  Text entered(int engine, const describe::Input& input) const;
  /// The largest ± that the entry carries in any cylinder, or a dash.
  Text limitOf(int engine, const describe::Input& input) const;
  /// Twice a length that is a result: a stroke from its throw.
  Text twice(int engine, const describe::Result& result, Zeros zeros) const;
  /// "likely / worst case", the largest of all cylinders.
  Text tolerance(int engine, const describe::Result& result) const;
  /// From the least to the most that the worst case leaves, over all cylinders; rounded outwards.
  Text worstRange(int engine, const describe::Result& result) const;

  /// One number for all cylinders, with its sign; empty where there is none.
  std::string difference(int engine, int donor, const describe::Result& result) const;
  std::string difference(int engine, int donor, const describe::Input& input) const;

  /// Several numbers in one cell, none of which differs between cylinders. Where one waits, the
  /// cell waits.
  static Text together(const std::vector<Text>& parts, std::string_view between);
  /// "68.00" becomes "68", "68.50" becomes "68.5".
  std::string withoutZeros(std::string number) const;

  /// The results that were asked for as text, in page order.
  std::vector<const describe::Result*> asked() const;

 private:
  int cylinders(int engine, const describe::Result& result) const;
  std::string one(int engine, const describe::Result& result, int cylinder) const;
  std::string one(int engine, const describe::Input& input, int cylinder) const;
  double limit(int engine, const describe::Input& input) const;
  Text waiting(int engine, const describe::Result& result, int cylinder) const;

  const assess::Assessment& assessment_;
  const units::Style& style_;
  mutable std::set<const describe::Result*> asked_;
};

}  // namespace strokewright::sheet
