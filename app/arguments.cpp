#include "app/arguments.h"

#include <algorithm>

#include "app/nearest.h"

namespace strokewright::app {
namespace {

const Option& known(std::string_view name, std::span<const Option> options) {
  const auto found = std::ranges::find(options, name, &Option::name);
  if (found != options.end()) return *found;
  std::vector<std::string_view> names;
  for (const Option& option : options) names.push_back(option.name);
  throw Unusable({"There is no option “", name, "” here.", didYouMean(name, names)});
}

}  // namespace

std::string usage(const Option& option) {
  std::string text(option.name);
  if (!option.argument.empty()) text.append(" ").append(option.argument);
  if (!option.needed) text = joined({"[", text, "]"});
  if (option.repeated) text += "...";
  return text;
}

Arguments::Arguments(std::span<const std::string> args, std::span<const Option> options,
                     std::span<const Operand> operands) {
  for (std::size_t i = 0; i < args.size(); ++i) {
    const std::string& arg = args[i];
    if (!arg.starts_with('-')) {
      if (operands_.size() == operands.size()) {
        throw Unusable({"“", arg, "” is one too many here."});
      }
      operands_.emplace_back(operands[operands_.size()].name, arg);
      continue;
    }
    const std::size_t equals = arg.find('=');
    const Option& option = known(std::string_view(arg).substr(0, equals), options);
    if (option.argument.empty()) {
      if (equals != std::string::npos) {
        throw Unusable({"The option ", option.name, " takes nothing behind it."});
      }
      given_.emplace_back(option.name, std::string());
    } else if (equals != std::string::npos) {
      given_.emplace_back(option.name, arg.substr(equals + 1));
    } else if (i + 1 < args.size()) {
      given_.emplace_back(option.name, args[++i]);
    } else {
      throw Unusable({"The option ", option.name, " needs ", option.argument, " behind it."});
    }
  }
  if (operands_.size() < operands.size()) throw Unusable({operands[operands_.size()].needed});
  for (const Option& option : options) {
    if (option.needed && !has(option.name)) throw Unusable({"This needs ", usage(option), "."});
  }
}

const std::string& Arguments::operand(std::string_view name) const {
  const auto isNamed = [name](const auto& given) { return given.first == name; };
  return std::ranges::find_if(operands_, isNamed)->second;
}

std::optional<std::string> Arguments::text(std::string_view option) const {
  std::optional<std::string> last;
  for (const auto& [name, text] : given_) {
    if (name == option) last = text;
  }
  return last;
}

std::vector<Assignment> Arguments::assignments(std::string_view option) const {
  std::vector<Assignment> all;
  for (const auto& [name, text] : given_) {
    if (name != option) continue;
    const std::size_t equals = text.find('=');
    if (equals == std::string::npos || equals == 0) {
      throw Unusable({"The option ", option, " takes KEY=TEXT, and “", text, "” is none."});
    }
    all.push_back({text.substr(0, equals), text.substr(equals + 1)});
  }
  return all;
}

}  // namespace strokewright::app
