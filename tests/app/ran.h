#pragma once
/// What a call of the program says and returns.

#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "app/command_line.h"
#include "core/storage/project_text.h"

namespace strokewright::app {

struct Ran {
  int status = -1;
  std::string out;
  std::string err;
};

inline Ran ran(const std::vector<std::string>& args, const SheetWriter& writeSheet = {}) {
  std::ostringstream out;
  std::ostringstream err;
  const int status = run(args, out, err, writeSheet);
  return {status, out.str(), err.str()};
}

inline std::string sample(const std::string& name) {
  return STROKEWRIGHT_SOURCE_DIR "/samples/" + name + ".strokewright";
}

inline std::string textOf(const std::string& path) {
  std::ostringstream text;
  text << std::ifstream(path).rdbuf();
  return text.str();
}

inline model::Project projectOf(const std::string& path) {
  return storage::read(textOf(path)).project.value();
}

}  // namespace strokewright::app
