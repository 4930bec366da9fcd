#include "app/command_line.h"

#include <algorithm>
#include <array>
#include <filesystem>
#include <ostream>
#include <vector>

#include "app/arguments.h"
#include "app/commands.h"
#include "app/joined.h"
#include "app/nearest.h"
#include "app/text_table.h"

namespace strokewright::app {
namespace {

constexpr Option kJson{"--json", "", "write JSON: SI, the unit named, whatever the locale"};
constexpr Option kEngine{
    "--engine", "NAME",
    "the engine of this name; without it all are told of, and the target is changed"};
constexpr Option kSet{"--set", "KEY=TEXT", "enter TEXT before anything is computed; the file stays",
                      false, true};
constexpr Option kCylinder{"--cylinder", "N", "the cylinder, counted from 1; without it the first"};
constexpr Option kWant{"--want", "KEY=TEXT", "the result that is wanted, and what it should be",
                       true};
constexpr Option kBy{"--by", "KEY", "the entry that is to be changed for it", true};
constexpr Option kOut{"-o", "OUT.pdf",
                      "where the sheet is written; the plate also as OUT.svg or OUT.dxf", true};
constexpr Option kKind{"--kind", "spec|survey|burette|stack|plate|throws",
                       "which sheet; without it the spec sheet"};
constexpr Option kPaper{"--paper", "A4|Letter",
                        "the paper; without it what is usual where you are"};
constexpr Option kWav{"-o", "OUT.wav", "where the sound is written", true};
constexpr Option kSpeed{"--speed", "RPM", "the speed of the crank; without it the speed wanted"};
constexpr Option kHelp{"--help", "", "print commands and options, or those of one command"};
constexpr Option kVersion{"--version", "", "print the version"};

constexpr std::array kAllOptions = {kJson, kEngine, kSet,   kCylinder, kWant, kBy,
                                    kOut,  kKind,   kPaper, kSpeed,    kHelp, kVersion};

constexpr Operand kFile{"FILE", "A project file is needed."};
constexpr Operand kKey{"KEY", "The key of a table is needed. All of them: strokewright quantities"};

/// What a command is given to work with.
struct Call {
  Arguments arguments;
  std::ostream& out;
  std::ostream& err;
  const SheetWriter& writeSheet;
};

struct Command {
  std::string_view word;
  std::vector<Operand> operands;
  std::vector<Option> options;
  std::string_view says;
  int (*run)(const Call& call);
};

const std::vector<Command>& commands() {
  static const std::vector<Command> kCommands = {
      {"results",
       {kFile},
       {kJson, kEngine, kSet},
       "every result of every engine, its ±, and what speaks against the engine",
       [](const Call& call) { return results(call.arguments, call.out, call.err); }},
      {"table",
       {kFile, kKey},
       {kJson, kEngine, kCylinder, kSet},
       "a table of one engine, as CSV in SI",
       [](const Call& call) { return table(call.arguments, call.out, call.err); }},
      {"inputs",
       {},
       {kJson},
       "what can be entered: key, unit, limits, default, how to measure",
       [](const Call& call) { return inputs(call.arguments, call.out); }},
      {"quantities",
       {},
       {kJson},
       "what is computed, results and tables: key, unit, formula, source, validity",
       [](const Call& call) { return quantities(call.arguments, call.out); }},
      {"solve",
       {kFile},
       {kJson, kWant, kBy, kEngine, kSet},
       "what one entry would have to be for a result to be as wanted",
       [](const Call& call) { return solve(call.arguments, call.out, call.err); }},
      {"sheet",
       {kFile},
       {kOut, kKind, kPaper, kEngine, kSet},
       "one page, PDF: the spec sheet, or one for the bench",
       [](const Call& call) { return sheet(call.arguments, call.err, call.writeSheet); }},
      {"sound",
       {kFile},
       {kWav, kSpeed, kEngine, kSet},
       "the rhythm of the firings as three seconds of plain pulses, WAV",
       [](const Call& call) { return sound(call.arguments, call.err); }},
      {"check",
       {kFile},
       {kEngine, kSet},
       "what forbids, objects and remarks, and what waits",
       [](const Call& call) { return check(call.arguments, call.out, call.err); }},
  };
  return kCommands;
}

const Command* findCommand(std::string_view word) {
  const auto found = std::ranges::find(commands(), word, &Command::word);
  return found == commands().end() ? nullptr : &*found;
}

std::string usage(const Command& command) {
  std::string text = joined({"strokewright ", command.word});
  for (const Operand& operand : command.operands) text.append(" ").append(operand.name);
  for (const Option& option : command.options) text.append(" ").append(usage(option));
  return text;
}

void printOptions(std::span<const Option> options, std::ostream& out) {
  TextTable table;
  for (const Option& option : options) {
    std::string name(option.name);
    if (!option.argument.empty()) name.append(" ").append(option.argument);
    table.add({name, std::string(option.says)});
  }
  table.print(out);
}

void printHelp(std::ostream& out) {
  out << "Strokewright plans an engine conversion: know before you cut.\n\n"
         "strokewright [FILE]\n";
  for (const Command& command : commands()) out << usage(command) << '\n';
  out << "\nWithout a command the window opens. The commands need no display:\n";
  TextTable table;
  for (const Command& command : commands()) {
    table.add({std::string(command.word), std::string(command.says)});
  }
  table.print(out);
  out << "\nOptions:\n";
  printOptions(kAllOptions, out);
  out << "\nText is as in the window: 66.0   0,5 mm   2 5/8 in   40 thou   98.12; 98.20; 98.29 ± "
         "0.03\n"
         "KEY leads as in the file, counted from 0: bore_m   shelf[2].thickness_m   "
         "seat_height_m.value[1]\n"
         "Exit status: 0 nothing forbids; 1 something forbids, is refused, has no solution or no "
         "rows;\n2 the file or the call is unusable.\n";
}

void printHelp(const Command& command, std::ostream& out) {
  out << usage(command) << "\n\n" << command.word << ": " << command.says << ".\n\nOptions:\n";
  printOptions(command.options, out);
}

/// @throws Unusable with the usage of the command.
Arguments argumentsOf(const Command& command, std::span<const std::string> args) {
  try {
    return Arguments(args, command.options, command.operands);
  } catch (const Unusable& unusable) {
    throw Unusable({unusable.what(), "\n", usage(command)});
  }
}

int runCommand(std::span<const std::string> args, std::ostream& out, std::ostream& err,
               const SheetWriter& writeSheet) {
  if (args.empty() || args[0].starts_with('-')) {
    const Arguments general(args, std::array{kHelp, kVersion}, {});
    if (general.has("--version")) {
      out << "strokewright " STROKEWRIGHT_VERSION "\n";
    } else {
      printHelp(out);
    }
    return 0;
  }
  const Command* command = findCommand(args[0]);
  if (command == nullptr) {
    std::vector<std::string_view> words;
    for (const Command& each : commands()) words.push_back(each.word);
    throw Unusable({"There is no command “", args[0], "”.", didYouMean(args[0], words),
                    " All of them: strokewright --help"});
  }
  if (std::ranges::find(args, kHelp.name) != args.end()) {
    printHelp(*command, out);
    return 0;
  }
  return command->run({argumentsOf(*command, args.subspan(1)), out, err, writeSheet});
}

}  // namespace

bool asksForWindow(std::span<const std::string> args) {
  if (args.empty()) return true;
  if (args.size() > 1 || args[0].starts_with('-') || findCommand(args[0]) != nullptr) return false;
  std::error_code ignored;
  return args[0].find_first_of("./\\") != std::string::npos ||
         std::filesystem::exists(std::filesystem::path(args[0]), ignored);
}

int run(std::span<const std::string> args, std::ostream& out, std::ostream& err,
        const SheetWriter& writeSheet) {
  try {
    const int status = runCommand(args, out, err, writeSheet);
    if (!out.flush())
      throw Unusable({"What was found could not be written out. Is the disk full?"});
    return status;
  } catch (const Unusable& unusable) {
    err << unusable.what() << '\n';
    return 2;
  }
}

}  // namespace strokewright::app
