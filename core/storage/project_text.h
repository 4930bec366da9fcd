#pragma once
/// A project as the text of its file, and back. No file is opened here.
///
/// The format is described in resources/format/project-format.md: JSON, SI, one line an entry.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/describe/finding.h"
#include "core/model/engine.h"

namespace strokewright::storage {

/// The version of the format that is written, and the newest that can be read.
inline constexpr int kFileVersion = 2;

/// The text of a project: the same text for the same project, whatever the locale. Nothing that
/// was entered is left out; what is empty is.
/// @pre every number is finite, every answer is among its choices.
std::string write(const model::Project& project);

/// Something to say about a place in a file.
struct Remark {
  describe::Sentence says;  ///< begins with the place and says what to do
  std::string key;          ///< of the place, may be empty
  int line = 0;             ///< counted from 1; 0: the file as a whole
  int column = 0;           ///< [characters] counted from 1
};

/// What came of reading a file.
struct Read {
  std::optional<model::Project> project;  ///< empty: refused
  std::vector<Remark> remarks;            ///< all the reasons; or what was noted while reading
};

/// Reads a project of this or an earlier version of the format.
///
/// Refused, with every place that is wrong and the way to it in words: what is not JSON in UTF-8,
/// what no project is, a newer version, unknown and repeated keys, values of the wrong type,
/// unknown answers, units and origins, a reference donor that is none. Where the number of an entry
/// and its text disagree by more than the rounding of a conversion, the number stands and the text
/// is dropped with a remark; where there is only a text that reads as a number, it is taken, with a
/// remark. A list where one number belongs is kept as text, unknown, with a remark. A single donor
/// is the reference where none is named. Never throws.
Read read(std::string_view text);

}  // namespace strokewright::storage
