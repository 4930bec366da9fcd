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
  /// @param takesFile  the command needs exactly one file.
  /// @throws Unusable for an unknown option, a missing argument, and a file too many or too few.
  Arguments(std::span<const std::string> args, std::span<const Option> options, bool takesFile);

  const std::string& file() const { return file_; }
  bool has(std::string_view option) const { return text(option).has_value(); }
  /// What stands behind the option; the last one where it was given twice.
  std::optional<std::string> text(std::string_view option) const;
  /// Every KEY=TEXT behind the option, in the order of the call.
  /// @throws Unusable where there is no "=" or no key.
  std::vector<Assignment> assignments(std::string_view option) const;

 private:
  std::string file_;
  std::vector<std::pair<std::string_view, std::string>> given_;
};

}  // namespace strokewright::app
