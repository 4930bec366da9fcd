#pragma once
/// Rules that look at inputs and results and speak up.

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "core/describe/reader.h"
#include "core/units/style.h"

namespace strokewright::describe {

/// How much a message weighs.
enum class Weight : std::uint8_t {
  Remarks,  ///< said once, nothing held
  Objects,  ///< may leave with a written reason
  Forbids,  ///< cannot exist, or must not leave for the bench
};
std::string_view weightWord(Weight weight);  ///< "remarks", "objects", "forbids"

/// A number in a sentence, worded at the edge in the reader's units.
struct Quantity {
  units::Kind kind;
  double value;       ///< [SI]
  int decimals = -1;  ///< negative: the unit's default
  bool operator==(const Quantity&) const = default;
};

/// A gap or a thickness.
/// @param value [m]
inline Quantity fine(double value) { return {units::Kind::FineLength, value}; }

/// What may stand for {1}, {2}, … in a template.
using Argument =
    std::variant<Quantity, std::vector<Quantity>, const Input*, const Result*, std::string>;

/// A sentence as data: English template and its arguments.
struct Sentence {
  std::string_view pattern;  ///< a literal with {1}, {2}, …
  std::vector<Argument> arguments;
  bool operator==(const Sentence&) const = default;
};

/// What would put it right, offered as one key: texts as if typed into these entries of the engine.
struct Mend {
  Sentence says;                                              ///< "Bore: take 76.20 mm"
  std::vector<std::pair<const Input*, std::string>> entries;  ///< an empty text clears the entry
  /// Worked out from several numbers, so its entries are of origin computed. A slip of the pen put
  /// right leaves the origin as it is: what was measured stays measured.
  bool computed = false;
  bool operator==(const Mend&) const = default;
};

/// Text that is this number when typed into the entry, whatever unit the entry shows: "76.2 mm".
/// What lies beyond ten digits is left out.
std::string typedText(const Input& input, double value, const units::Style& style = {});

/// One entry put to another number: "Bore: take 76.20 mm".
Mend takeAs(const Input& input, double value);

/// takeAs() of a number worked out from several.
Mend takeComputed(const Input& input, double value);

struct Finding {
  Weight weight = Weight::Remarks;
  std::string_view key;          ///< of the rule, stable, snake case
  std::string_view source = {};  ///< of the limit: a standard, a textbook, or common practice
  int engine = 0;
  int cylinder = -1;  ///< counted from 0; -1: all or none in particular
  Sentence says;
  Sentence hint;                    ///< a suspicion or advice, may be empty: "Meant as inches?"
  std::vector<const Input*> about;  ///< the entries it belongs to, the first one first
  const List* list = nullptr;       ///< whose column the first of them is; nullptr: an entry
  int item = -1;                    ///< of the list, counted from 0
  std::vector<Mend> mends;
  bool operator==(const Finding&) const = default;
};

/// Takes what one rule says; fills in the rule's key and source, engine and cylinder.
class Speaker {
 public:
  explicit Speaker(std::vector<Finding>& findings) : findings_(findings) {}
  /// The returned finding may be completed (hint, mends) until the next call.
  Finding& say(Weight weight, Sentence sentence, std::vector<const Input*> about);

 private:
  std::vector<Finding>& findings_;
};

/// A rule. One that met a missing entry, a refusal or something that does not apply stays silent.
struct Rule {
  std::string_view key;
  std::string_view source = {};
  Per per = Per::Engine;  ///< per cylinder: asked for each; equal answers of all are said once
  void (*judge)(Reader& read, Speaker& speak) = nullptr;
};

}  // namespace strokewright::describe
