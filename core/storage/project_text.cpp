#include "core/storage/project_text.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <initializer_list>
#include <limits>
#include <set>
#include <span>
#include <utility>
#include <variant>

#include "core/model/entry_text.h"
#include "core/model/inputs.h"
#include "core/model/lists.h"
#include "core/storage/json_tree.h"
#include "core/units/kind.h"
#include "core/units/parse.h"
#include "core/units/style.h"
#include "core/units/unit_group.h"

namespace strokewright::storage {
namespace {

using describe::Argument;
using describe::Entry;
using describe::Input;
using model::Engine;
using model::Project;

constexpr std::string_view kFormat = "strokewright project";
constexpr std::string_view kOneSigma = "one_sigma";
constexpr std::string_view kLimit = "limit";

/// Brings the tree of a file from one version to the next and notes what a person should know.
using Upgrade = void (*)(Node& file, std::vector<Remark>& remarks);

/// Version 2 adds lists, readings and shapes of a ±: there is nothing to change in a file without.
void toVersion2(Node&, std::vector<Remark>&) {}

/// Entry n - 1 leads from version n to n + 1.
constexpr std::array<Upgrade, kFileVersion - 1> kUpgrades{toVersion2};
static_assert(kUpgrades.back() != nullptr, "every change of the format needs its upgrade");

/// Equal but for the rounding of a conversion: 4 epsilon of the first.
bool sameNumber(double a, double b) {
  return std::abs(a - b) <= 4 * std::numeric_limits<double>::epsilon() * std::abs(a);
}

bool sameNumbers(const std::vector<double>& a, const std::vector<double>& b) {
  return std::ranges::equal(a, b, sameNumber);
}

/// The entry holds what was typed; a ± may have been entered beside the text.
bool agree(const Entry& entry, const Entry& typed) {
  return sameNumbers(entry.values, typed.values) &&
         std::ranges::equal(entry.readings, typed.readings, sameNumbers) &&
         (!typed.plusMinus || (entry.plusMinus && sameNumber(*entry.plusMinus, *typed.plusMinus)));
}

const Input* findInput(std::span<const Input* const> among, std::string_view key) {
  const auto found = std::find_if(among.begin(), among.end(),
                                  [&](const Input* input) { return input->key == key; });
  return found == among.end() ? nullptr : *found;
}

// Writing

void addText(Node& object, std::string_view key, std::string_view text) {
  if (!text.empty()) object.children.push_back(Node::of(text, key));
}

Node oneValue(const Input& input, double value, std::string_view key = {}) {
  if (input.kind != units::Kind::Choice) return Node::of(value, key);
  return Node::of(input.choices[static_cast<std::size_t>(value)].key, key);
}

Node entryNode(const Input& input, const Entry& entry) {
  Node node = Node::object(input.key);
  if (entry.values.size() == 1) {
    node.children.push_back(oneValue(input, entry.values.front(), "value"));
  } else if (entry.known()) {
    Node& list = node.children.emplace_back(Node::list("value"));
    for (const double value : entry.values) list.children.push_back(oneValue(input, value));
  }
  if (!entry.readings.empty()) {
    Node& all = node.children.emplace_back(Node::list("readings"));
    for (const std::vector<double>& readings : entry.readings) {
      Node& ofOne = all.children.emplace_back(Node::list());
      for (const double reading : readings) ofOne.children.push_back(oneValue(input, reading));
    }
  }
  if (entry.plusMinus) node.children.push_back(Node::of(*entry.plusMinus, "plus_minus"));
  if (entry.oneSigma) addText(node, "plus_minus_is", kOneSigma);
  if (entry.shape != describe::Shape::Normal) {
    addText(node, "plus_minus_shape", describe::shapeKey(entry.shape));
  }
  addText(node, "origin", describe::originKey(entry.origin));
  addText(node, "instrument", entry.instrument);
  addText(node, "date", entry.date);
  addText(node, "note", entry.note);
  addText(node, "text", entry.text);
  addText(node, "unit", entry.unit);
  return node;
}

Node entriesNode(const describe::Entries& entries, std::string_view key = {}) {
  Node node = Node::object(key);
  for (const auto& [input, entry] : entries) node.children.push_back(entryNode(*input, entry));
  return node;
}

void addLists(Node& node, const describe::Lists& lists) {
  if (lists.empty()) return;
  Node& all = node.children.emplace_back(Node::object("lists"));
  for (const auto& [list, items] : lists) {
    Node& one = all.children.emplace_back(Node::list(list->key));
    for (const describe::Entries& item : items) one.children.push_back(entriesNode(item));
  }
}

Node engineNode(const Engine& engine) {
  Node node = Node::object();
  addText(node, "name", engine.name);
  addText(node, "part", model::partKey(engine.part));
  addText(node, "note", engine.note);
  node.children.push_back(entriesNode(engine.entries, "entries"));
  addLists(node, engine.lists);
  return node;
}

Node projectNode(const Project& project) {
  Node node = Node::object("project");
  addText(node, "name", project.name);
  addText(node, "note", project.note);
  addText(node, "drawn_for", project.drawnFor);
  addText(node, "revision", project.revision);
  if (project.referenceDonor >= 0 && project.referenceDonor < std::ssize(project.engines) &&
      project.engines[static_cast<std::size_t>(project.referenceDonor)].part ==
          model::Part::Donor) {
    node.children.push_back(Node::of(project.referenceDonor, "reference_donor"));
  }
  addLists(node, project.lists);
  return node;
}

// Reading

/// A member of an object and what takes it.
struct Field {
  std::string_view key;
  std::function<void(const Node&)> take;
};
using Fields = std::initializer_list<Field>;

class ProjectReader {
 public:
  explicit ProjectReader(std::string_view text) : text_(text) {}

  Read read() {
    Read result;
    auto parsed = parseJson(text_);
    if (const auto* unreadable = std::get_if<Unreadable>(&parsed)) {
      refuse(*unreadable);
    } else {
      file(std::get<Node>(parsed));
    }
    if (!refused_) result.project = std::move(project_);
    result.remarks = std::move(remarks_);
    return result;
  }

 private:
  /// @param pattern  {1} line, {2} column, {3} the way to the place in words.
  void remark(std::size_t at, std::string_view key, std::string_view pattern,
              std::initializer_list<Argument> arguments) {
    remark(at, key, pattern, arguments, way());
  }

  void remark(std::size_t at, std::string_view key, std::string_view pattern,
              std::initializer_list<Argument> arguments, const std::string& way) {
    const std::string_view before = text_.substr(0, at);
    const auto lineStart = before.rfind('\n') + 1;  // npos + 1 is the very beginning
    const auto startsCharacter = [](char byte) { return (byte & 0xC0) != 0x80; };
    Remark said;
    said.key = key;
    said.line = 1 + static_cast<int>(std::count(before.begin(), before.end(), '\n'));
    said.column =
        1 + static_cast<int>(std::count_if(before.begin() + static_cast<std::ptrdiff_t>(lineStart),
                                           before.end(), startsCharacter));
    said.says = {pattern, {std::to_string(said.line), std::to_string(said.column), way}};
    said.says.arguments.insert(said.says.arguments.end(), arguments);
    remarks_.push_back(std::move(said));
  }

  void refuse(const Node& node, std::string_view pattern,
              std::initializer_list<Argument> arguments = {}) {
    refused_ = true;
    remark(node.at, node.key, pattern, arguments);
  }

  void refuse(const Unreadable& unreadable) {
    refused_ = true;
    std::string behind;  // ", after “value” in “bore_m”"
    for (const std::string& key : unreadable.behind) {
      behind.append(behind.empty() ? ", after “" : " in “").append(key).append("”");
    }
    remark(unreadable.at, {}, patternOf(unreadable.why), {}, behind);
  }

  /// {3} the keys read last.
  static std::string_view patternOf(Unreadable::Why why) {
    switch (why) {
      case Unreadable::Why::BreaksOff:
        return "Line {1}, column {2}{3}: the file breaks off here. Open its backup or the "
               "autosave.";
      case Unreadable::Why::NotUtf8:
        return "Line {1}, column {2}{3}: this letter is not in UTF-8; the file was saved in "
               "another encoding, such as Latin-1. Save it in UTF-8 in a text editor, or open the "
               "backup.";
      case Unreadable::Why::TooLarge:
        return "Line {1}, column {2}{3}: this number is too large. Mend it or open the backup.";
      case Unreadable::Why::TooDeep:
        return "Line {1}, column {2}{3}: nested deeper than any project. Open the backup.";
      case Unreadable::Why::NotJson:
        break;
    }
    return "Line {1}, column {2}{3}: this cannot be read; look for a comma, bracket or quotation "
           "mark too many or too few. Mend the place or open the backup.";
  }

  /// ", in “bore_m” of “entries” of engine “old”"
  std::string way() const {
    std::string words;
    for (std::size_t i = inside_.size(); i > 1; --i) {  // the outermost is the file
      words.append(words.empty() ? ", in " : " of ").append(inside_[i - 1]);
    }
    return words;
  }

  static std::string quoted(std::string_view key) {
    return std::string("“").append(key).append("”");
  }

  /// One of a list, which has no key: "no. 2 of “holes”".
  static std::string placed(std::size_t place, const std::string& list) {
    return "no. " + std::to_string(place + 1) + " of " + list;
  }

  static std::string_view typeName(Node::Type type) {
    constexpr std::array<std::string_view, 5> kNames = {"an object in braces", "a list in brackets",
                                                        "a number", "a text in quotation marks",
                                                        "true, false or null"};
    return kNames[static_cast<std::size_t>(type)];
  }

  bool is(const Node& node, Node::Type type) { return is(node, type, quoted(node.key), node); }

  /// @param place  whose line and column are told.
  bool is(const Node& node, Node::Type type, const std::string& name, const Node& place) {
    if (node.type == type) return true;
    refuse(
        place,
        "Line {1}, column {2}{3}: {4} must be {5}, not {6}. Mend it in a text editor or open the "
        "backup.",
        {name, std::string(typeName(type)), std::string(typeName(node.type))});
    return false;
  }

  /// Hands each member to what takes it; `takes` says whether it knows the key.
  template <typename Takes>
  void eachMember(const Node& node, const std::string& name, const Takes& takes) {
    if (!is(node, Node::Type::Object, name, node)) return;
    inside_.push_back(name);
    std::set<std::string_view> seen;
    for (const Node& member : node.children) {
      if (!seen.insert(member.key).second) {
        refuse(member,
               "Line {1}, column {2}{3}: the key “{4}” stands here a second time. Keep one.",
               {member.key});
      } else if (!takes(member)) {
        refuse(
            member,
            "Line {1}, column {2}{3}: the key “{4}” is not known. Mend its spelling or remove it.",
            {member.key});
      }
    }
    inside_.pop_back();
  }

  void object(const Node& node, const std::string& name, Fields fields) {
    eachMember(node, name, [&](const Node& member) {
      const auto field = std::find_if(fields.begin(), fields.end(), [&](const Field& candidate) {
        return candidate.key == member.key;
      });
      if (field == fields.end()) return false;
      field->take(member);
      return true;
    });
  }

  void text(const Node& node, std::string& into) {
    if (is(node, Node::Type::Text)) into = node.text;
  }

  void file(Node& file) {
    if (!isProject(file)) return;
    const int version = versionOf(file);
    if (version == 0) return;
    for (const Upgrade upgrade :
         std::span<const Upgrade>(kUpgrades).subspan(static_cast<std::size_t>(version - 1))) {
      upgrade(file, remarks_);
    }
    const auto known = [](const Node&) {};
    object(file, "the file",
           {{"format", known},
            {"version", known},
            {"written_by", [&](const Node& node) { is(node, Node::Type::Text); }},
            {"project", [&](const Node& node) { project(node); }},
            {"engines", [&](const Node& node) { engines(node); }}});
    if (project_.referenceDonor >= std::ssize(project_.engines)) {
      refuse(*member(*member(file, "project"), "reference_donor"),
             "Line {1}, column {2}{3}: there is no engine {4}; engines are counted from 0.",
             {std::to_string(project_.referenceDonor)});
    } else if (!refused_) {
      settleReferenceDonor(file);
    }
  }

  /// It is a donor; a single one need not be named.
  void settleReferenceDonor(const Node& file) {
    const std::vector<Engine>& engines = project_.engines;
    if (project_.referenceDonor < 0) {
      if (std::ranges::count(engines, model::Part::Donor, &Engine::part) != 1) return;
      const auto only = std::ranges::find(engines, model::Part::Donor, &Engine::part);
      project_.referenceDonor = static_cast<int>(only - engines.begin());
      return;
    }
    const model::Part part = engines[static_cast<std::size_t>(project_.referenceDonor)].part;
    if (part == model::Part::Donor) return;
    refuse(*member(*member(file, "project"), "reference_donor"),
           "Line {1}, column {2}{3}: engine {4} is no donor but a {5}. Name the place of a donor, "
           "counted from 0, or make that engine’s “part” donor.",
           {std::to_string(project_.referenceDonor), std::string(model::partKey(part))});
  }

  static const Node* member(const Node& object, std::string_view key) {
    const auto found = std::find_if(object.children.begin(), object.children.end(),
                                    [&](const Node& node) { return node.key == key; });
    return found == object.children.end() ? nullptr : &*found;
  }

  bool isProject(const Node& file) {
    const Node* format = member(file, "format");
    if (format && format->text == kFormat) return true;
    refuse(
        format ? *format : file,
        "Line {1}, column {2}{3}: this is no Strokewright project; its “format” does not say so.");
    return false;
  }

  /// The version of the file; 0 when it is refused.
  int versionOf(const Node& file) {
    const Node* version = member(file, "version");
    if (!version) {
      refuse(file, "Line {1}, column {2}{3}: the file does not say its “version”.");
      return 0;
    }
    if (!is(*version, Node::Type::Number)) return 0;
    if (version->number < 1.0 || version->number != std::floor(version->number)) {
      refuse(*version, "Line {1}, column {2}{3}: “version” must be a whole number from 1.");
      return 0;
    }
    if (version->number > kFileVersion) {
      const Node* program = member(file, "written_by");
      refuse(*version,
             "Line {1}, column {2}{3}: this file is of version {4} of the format, written by "
             "Strokewright {5}; this one reads up to version {6}. Open it with the newer one.",
             {units::exact(version->number), program ? program->text : std::string("?"),
              std::to_string(kFileVersion)});
      return 0;
    }
    return static_cast<int>(version->number);
  }

  void project(const Node& node) {
    object(node, quoted(node.key),
           {{"name", [&](const Node& name) { text(name, project_.name); }},
            {"note", [&](const Node& note) { text(note, project_.note); }},
            {"drawn_for", [&](const Node& whom) { text(whom, project_.drawnFor); }},
            {"revision", [&](const Node& revision) { text(revision, project_.revision); }},
            {"reference_donor", [&](const Node& donor) { referenceDonor(donor); }},
            {"lists", [&](const Node& lists) {
               this->lists(lists, model::projectLists(), project_.lists);
             }}});
  }

  void referenceDonor(const Node& node) {
    if (!is(node, Node::Type::Number)) return;
    if (node.number < 0.0 || node.number > 1e6 || node.number != std::floor(node.number)) {
      refuse(node, "Line {1}, column {2}{3}: “{4}” must be the place of an engine, counted from 0.",
             {node.key});
      return;
    }
    project_.referenceDonor = static_cast<int>(node.number);
  }

  void engines(const Node& node) {
    if (!is(node, Node::Type::List)) return;
    for (std::size_t i = 0; i < node.children.size(); ++i) {
      const Node& child = node.children[i];
      const Node* name = member(child, "name");
      const bool named = name != nullptr && !name->text.empty();
      engine(child, named ? "engine " + quoted(name->text) : placed(i, quoted(node.key)));
    }
  }

  void engine(const Node& node, const std::string& called) {
    Engine& engine = project_.engines.emplace_back();
    object(node, called,
           {{"name", [&](const Node& name) { text(name, engine.name); }},
            {"part", [&](const Node& part) { this->part(part, engine.part); }},
            {"note", [&](const Node& note) { text(note, engine.note); }},
            {"entries",
             [&](const Node& entries) {
               this->entries(entries, quoted(entries.key), model::inputs(), engine.entries);
             }},
            {"lists",
             [&](const Node& lists) { this->lists(lists, model::engineLists(), engine.lists); }}});
  }

  void part(const Node& node, model::Part& into) {
    if (!is(node, Node::Type::Text)) return;
    if (const auto part = model::partOf(node.text)) {
      into = *part;
    } else {
      refuse(node,
             "Line {1}, column {2}{3}: “{4}” is no part an engine plays. Say donor, target or "
             "variant.",
             {node.text});
    }
  }

  void entries(const Node& node, const std::string& name, std::span<const Input* const> known,
               describe::Entries& into) {
    eachMember(node, name, [&](const Node& member) {
      const Input* input = findInput(known, member.key);
      if (input == nullptr) return false;
      Entry read = entry(member, *input);
      if (!read.empty()) into.insert_or_assign(input, std::move(read));
      return true;
    });
  }

  void lists(const Node& node, std::span<const describe::List* const> known,
             describe::Lists& into) {
    eachMember(node, quoted(node.key), [&](const Node& member) {
      const describe::List* list = model::listOf(known, member.key);
      if (list == nullptr) return false;
      if (!is(member, Node::Type::List) || member.children.empty()) return true;
      std::vector<describe::Entries>& items = into[list];
      for (std::size_t i = 0; i < member.children.size(); ++i) {
        entries(member.children[i], placed(i, quoted(member.key)), list->columns,
                items.emplace_back());
      }
      return true;
    });
  }

  Entry entry(const Node& node, const Input& input) {
    Entry entry;
    object(node, quoted(node.key),
           {{"value", [&](const Node& value) { values(value, input, entry.values); }},
            {"readings", [&](const Node& all) { readings(all, input, entry.readings); }},
            {"plus_minus",
             [&](const Node& limit) {
               if (is(limit, Node::Type::Number)) entry.plusMinus = limit.number;
             }},
            {"plus_minus_is", [&](const Node& is) { sigma(is, entry.oneSigma); }},
            {"plus_minus_shape", [&](const Node& is) { shape(is, entry.shape); }},
            {"origin", [&](const Node& origin) { this->origin(origin, entry.origin); }},
            {"instrument", [&](const Node& with) { text(with, entry.instrument); }},
            {"date", [&](const Node& date) { text(date, entry.date); }},
            {"note", [&](const Node& note) { text(note, entry.note); }},
            {"text", [&](const Node& typed) { text(typed, entry.text); }},
            {"unit", [&](const Node& unit) { this->unit(unit, input, entry.unit); }}});
    if (!refused_ && !entry.readings.empty()) compareReadings(node, input, entry);
    if (!refused_ && entry.values.size() > 1 && !input.list) keepAsText(node, input, entry);
    if (!refused_ && !entry.text.empty()) compareText(node, input, entry);
    return entry;
  }

  /// A list where one number belongs counts as unknown; it stays as if it had been typed.
  void keepAsText(const Node& node, const Input& input, Entry& entry) {
    remark(node.at, node.key,
           "Line {1}, column {2}{3}: {4} takes one value, not a list. It counts as unknown; the "
           "list is kept as its text.",
           {&input});
    units::Style style;
    if (!entry.unit.empty()) style.group.choose(input.kind, entry.unit);
    entry.text.clear();
    for (const double value : entry.values) {
      if (!entry.text.empty()) entry.text += "; ";
      entry.text += input.kind == units::Kind::Choice
                        ? std::string(input.choices[static_cast<std::size_t>(value)].key)
                        : style.editable(input.kind, value);
    }
    entry.unit = style.unit(input.kind);
    entry.values.clear();
    entry.readings.clear();
  }

  /// A list of readings for each value.
  void readings(const Node& node, const Input& input, std::vector<std::vector<double>>& into) {
    if (!is(node, Node::Type::List)) return;
    if (input.kind == units::Kind::Choice) {
      refuse(node, "Line {1}, column {2}{3}: {4} is no number and has no readings.", {&input});
      return;
    }
    for (std::size_t i = 0; i < node.children.size(); ++i) {
      const Node& ofOne = node.children[i];
      const std::string name = placed(i, quoted(node.key));
      if (!is(ofOne, Node::Type::List, name, node)) return;
      if (ofOne.children.empty()) {
        refuse(node, "Line {1}, column {2}{3}: {4} is empty. Put its readings in, or take it out.",
               {name});
        return;
      }
      std::vector<double>& numbers = into.emplace_back();
      for (std::size_t k = 0; k < ofOne.children.size(); ++k) {
        value(ofOne.children[k], placed(k, name), node, input, numbers);
      }
    }
  }

  /// The value of several readings is their mean; where it is not, the value wins.
  void compareReadings(const Node& node, const Input& input, Entry& entry) {
    std::vector<double> means;
    for (const std::vector<double>& ofOne : entry.readings) {
      means.push_back(units::meanOf(ofOne));
    }
    if (means.size() > 1 && !input.list) {
      refuse(node, "Line {1}, column {2}{3}: {4} takes one value, not a list.", {&input});
      return;
    }
    if (entry.known() && !sameNumbers(entry.values, means)) {
      remark(node.at, node.key,
             "Line {1}, column {2}{3}: the value of {4} is not the mean of its readings. The value "
             "stands; the readings were dropped.",
             {&input});
      entry.readings.clear();
    }
    if (!entry.known()) entry.values = std::move(means);
  }

  void shape(const Node& node, describe::Shape& into) {
    if (!is(node, Node::Type::Text)) return;
    if (const auto shape = describe::shapeOf(node.text)) {
      into = *shape;
    } else {
      refuse(node,
             "Line {1}, column {2}{3}: “{4}” is no shape of a ±. Say normal, rectangular or "
             "triangular.",
             {node.text});
    }
  }

  void values(const Node& node, const Input& input, std::vector<double>& into) {
    if (node.type != Node::Type::List) {
      value(node, quoted(node.key), node, input, into);
      return;
    }
    if (node.children.empty()) {
      refuse(
          node,
          "Line {1}, column {2}{3}: the list of {4} is empty. Put a value in, or take “value” out.",
          {&input});
      return;
    }
    for (std::size_t i = 0; i < node.children.size(); ++i) {
      value(node.children[i], placed(i, quoted(node.key)), node, input, into);
    }
  }

  /// @param place  whose line and column are told.
  void value(const Node& node, const std::string& name, const Node& place, const Input& input,
             std::vector<double>& into) {
    if (input.kind == units::Kind::Choice) {
      if (!is(node, Node::Type::Text, name, place)) return;
      for (std::size_t answer = 0; answer < input.choices.size(); ++answer) {
        if (input.choices[answer].key != node.text) continue;
        into.push_back(static_cast<double>(answer));
        return;
      }
      refuse(place, "Line {1}, column {2}{3}: “{4}” is no answer to {5}. Say one of: {6}.",
             {node.text, &input, answersOf(input)});
    } else if (is(node, Node::Type::Number, name, place)) {
      into.push_back(node.number);
    }
  }

  static std::string answersOf(const Input& input) {
    std::string all;
    for (const describe::Choice& choice : input.choices) {
      if (!all.empty()) all += ", ";
      all += choice.key;
    }
    return all;
  }

  void sigma(const Node& node, bool& into) {
    if (!is(node, Node::Type::Text)) return;
    into = node.text == kOneSigma;
    if (!into && node.text != kLimit) {
      refuse(node, "Line {1}, column {2}{3}: a ± is a limit or one_sigma, not “{4}”.", {node.text});
    }
  }

  void origin(const Node& node, describe::Origin& into) {
    if (!is(node, Node::Type::Text)) return;
    if (const auto origin = describe::originOf(node.text)) {
      into = *origin;
    } else {
      refuse(node,
             "Line {1}, column {2}{3}: “{4}” is no origin. Say measured, makers_book, catalogue, "
             "assumed or computed.",
             {node.text});
    }
  }

  void unit(const Node& node, const Input& input, std::string& into) {
    if (!is(node, Node::Type::Text)) return;
    if (const units::Unit* unit = units::findUnit(input.kind, node.text)) {
      into = unit->name;
    } else {
      refuse(node, "Line {1}, column {2}{3}: “{4}” is no unit for {5}.", {node.text, &input});
    }
  }

  /// The number wins over the text.
  void compareText(const Node& node, const Input& input, Entry& entry) {
    units::UnitGroup group = units::UnitGroup::metric();
    if (!entry.unit.empty()) group.choose(input.kind, entry.unit);
    const Entry typed = model::entryFrom(input, entry.text, group);
    if (!entry.known() && typed.known()) {
      remark(node.at, node.key, "Line {1}, column {2}{3}: {4} is taken from its text, “{5}”.",
             {&input, entry.text});
      entry.values = typed.values;
      entry.readings = typed.readings;
      if (typed.plusMinus) entry.plusMinus = typed.plusMinus;
    } else if (!agree(entry, typed)) {
      remark(
          node.at, node.key,
          "Line {1}, column {2}{3}: the text “{5}” of {4} says something else than its number. The "
          "number stands; the text was dropped.",
          {&input, entry.text});
      entry.text.clear();
    }
  }

  std::string_view text_;
  Project project_;
  std::vector<Remark> remarks_;
  std::vector<std::string> inside_;  ///< names of what is being read, from the file inwards
  bool refused_ = false;
};

}  // namespace

std::string write(const Project& project) {
  constexpr int kEntryDepth = 4;
  Node file = Node::object();
  addText(file, "format", kFormat);
  file.children.push_back(Node::of(kFileVersion, "version"));
  addText(file, "written_by", STROKEWRIGHT_VERSION);
  file.children.push_back(projectNode(project));
  Node& engines = file.children.emplace_back(Node::list("engines"));
  for (const Engine& engine : project.engines) engines.children.push_back(engineNode(engine));
  return jsonText(file, kEntryDepth);
}

Read read(std::string_view text) { return ProjectReader(text).read(); }

}  // namespace strokewright::storage
