#pragma once
/// What was typed behind the name of the program.

#include <optional>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "app/joined.h"

namespace strokewright::app {

/// The call or the file cannot be used; says why in a sentence, and what to do.
class Unusable : public std::runtime_error {
 public:
  explicit Unusable(std::initializer_list<std::string_view> pieces)
      : std::runtime_error(joined(pieces)) {}
};

struct Option {
  std::string_view name;      ///< "--engine"
  std::string_view argument;  ///< "NAME"; empty: the option takes none
  std::string_view says;      ///< what it does, in half a line
  bool needed = false;
  bool repeated = false;
};

/// What stands behind the command without a dash.
struct Operand {
  std::string_view name;    ///< "FILE"
  std::string_view needed;  ///< said where it is missing
};

/// "[--engine NAME]", as in a usage line.
std::string usage(const Option& option);

/// KEY=TEXT, taken apart.
struct Assignment {
  std::string key;
  std::string text;
};

class Arguments {
 public:
  /// @param options  those the command knows.
  /// @param operands  those the command needs, in their order.
  /// @throws Unusable for an unknown option, a missing argument, and an operand too many or too
  /// few.
  Arguments(std::span<const std::string> args, std::span<const Option> options,
            std::span<const Operand> operands);

  /// What was given for an operand. @pre the command needs it.
  const std::string& operand(std::string_view name) const;
  bool has(std::string_view option) const { return text(option).has_value(); }
  /// What stands behind the option; the last one where it was given twice.
  std::optional<std::string> text(std::string_view option) const;
  /// Every KEY=TEXT behind the option, in the order of the call.
  /// @throws Unusable where there is no "=" or no key.
  std::vector<Assignment> assignments(std::string_view option) const;

 private:
  std::vector<std::pair<std::string_view, std::string>> operands_;
  std::vector<std::pair<std::string_view, std::string>> given_;
};

}  // namespace strokewright::app
