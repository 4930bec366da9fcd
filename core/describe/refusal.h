#pragma once
/// The one exception of the core: a leaf function met a limit that its numbers break.

#include <stdexcept>
#include <string_view>

#include "core/units/kind.h"

namespace strokewright::describe {

/// Thrown by leaf functions in every build type. The sentence is a template for the edge to word
/// in the reader's units: {1} is the value met, {2} the limit.
class Refusal : public std::domain_error {
 public:
  /// @param sentence a literal, for instance "A rod of {1} cannot turn: it needs more than {2}."
  /// @param value, limit [SI of kind]
  Refusal(std::string_view sentence, units::Kind kind, double value, double limit);

  std::string_view sentence() const { return sentence_; }
  units::Kind kind() const { return kind_; }
  double value() const { return value_; }
  double limit() const { return limit_; }

 private:
  std::string_view sentence_;
  units::Kind kind_;
  double value_;
  double limit_;
};

}  // namespace strokewright::describe
