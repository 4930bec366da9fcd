#pragma once
/// All inputs, results, rules and tables, in page order.

#include <span>
#include <string_view>
#include <vector>

#include "core/describe/input.h"
#include "core/describe/result.h"

namespace strokewright::describe {

struct Rule;

struct Table;

/// Inputs and results a catalogue can hold; raise them when a room needs more.
inline constexpr int kMostInputs = 192;
inline constexpr int kMostResults = 256;

/// Gathers the lists of the subjects and numbers inputs and results by their place.
/// A description belongs to one catalogue for the life of the program.
class Catalogue {
 public:
  /// @param cylinderCount which input says how many cylinders there are.
  Catalogue(std::vector<const Input*> inputs, std::vector<const Result*> results,
            std::vector<const Rule*> rules, std::vector<const Table*> tables,
            const Input& cylinderCount);

  std::span<const Input* const> inputs() const { return inputs_; }
  std::span<const Result* const> results() const { return results_; }
  std::span<const Rule* const> rules() const { return rules_; }
  std::span<const Table* const> tables() const { return tables_; }
  const Input& cylinderCount() const { return *cylinderCount_; }

  const Input* findInput(std::string_view key) const;    ///< nullptr when there is none
  const Result* findResult(std::string_view key) const;  ///< nullptr when there is none
  const Table* findTable(std::string_view key) const;    ///< nullptr when there is none

 private:
  std::vector<const Input*> inputs_;
  std::vector<const Result*> results_;
  std::vector<const Rule*> rules_;
  std::vector<const Table*> tables_;
  const Input* cylinderCount_;
};

}  // namespace strokewright::describe
