#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <regex>
#include <set>

#include "tests/app/ran.h"

namespace strokewright::app {
namespace {

std::string manPage() { return textOf(STROKEWRIGHT_SOURCE_DIR "/resources/strokewright.1"); }

/// Between the heading of a section and the next one.
std::string section(const std::string& page, const std::string& heading) {
  const std::size_t from = page.find(".SH " + heading + "\n");
  return page.substr(from, page.find("\n.SH ", from + 1) - from);
}

std::set<std::string> optionsIn(const std::string& text) {
  static const std::regex kOption("(^|[\\s\\[])(--[a-z]+|-o)\\b");
  std::set<std::string> options;
  for (std::sregex_iterator it(text.begin(), text.end(), kOption); it != std::sregex_iterator();
       ++it) {
    options.insert((*it)[2]);
  }
  return options;
}

/// The usage lines without blanks, "strokewrightinputs[--json]", out of the macros of the synopsis.
std::set<std::string> usagesOfManPage() {
  std::istringstream lines(section(manPage(), "SYNOPSIS"));
  std::set<std::string> usages;
  std::string usage;
  for (std::string line; std::getline(lines, line);) {
    const bool starts = line.starts_with(".SY ");
    if ((starts || line == ".YS") && !usage.empty()) usages.insert(std::exchange(usage, {}));
    if (line.starts_with(".SH") || line == ".YS") continue;
    line = std::regex_replace(line.substr(line.find(' ')), std::regex(R"(\\\||["\\ ])"), "");
    usage += line;
  }
  return usages;
}

std::set<std::string> usagesOfHelp() {
  std::istringstream lines(ran({"--help"}).out);
  std::set<std::string> usages;
  for (std::string line; std::getline(lines, line);) {
    if (!line.starts_with("strokewright ")) continue;
    std::erase(line, ' ');
    usages.insert(line);
  }
  return usages;
}

TEST(ManPage, ListsTheOptionsOfTheHelp) {
  std::string options = section(manPage(), "OPTIONS");
  std::erase(options, '\\');
  const std::string help = ran({"--help"}).out;
  EXPECT_EQ(optionsIn(options), optionsIn(help.substr(help.find("Options:"))));
}

TEST(ManPage, ShowsTheUsageOfTheHelp) { EXPECT_EQ(usagesOfManPage(), usagesOfHelp()); }

}  // namespace
}  // namespace strokewright::app
