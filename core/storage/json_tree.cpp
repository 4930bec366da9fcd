#include "core/storage/json_tree.h"

#include <algorithm>
#include <boost/nowide/utf/utf.hpp>
#include <iterator>
#include <limits>
#include <nlohmann/json.hpp>
#include <utility>

#include "core/units/style.h"

namespace strokewright::storage {
namespace {

using nlohmann::json;

/// Far more than a project needs, far less than a stack holds.
constexpr std::size_t kMostNested = 16;

/// [bytes] where the text first is not UTF-8, unless it merely breaks off inside a character;
/// beyond any text where it is.
std::size_t firstNotUtf8(std::string_view text) {
  namespace utf = boost::nowide::utf;
  for (auto at = text.begin(); at != text.end();) {
    const auto start = at;
    if (utf::utf_traits<char>::decode(at, text.end()) == utf::illegal) {
      return static_cast<std::size_t>(start - text.begin());
    }
  }
  return std::numeric_limits<std::size_t>::max();
}

/// Walks through the text and leaves a mark how far reading has come.
class Cursor {
 public:
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  Cursor(const char* place, const char*& reached) : place_(place), reached_(&reached) {}

  reference operator*() const { return *place_; }
  Cursor& operator++() {
    *reached_ = ++place_;
    return *this;
  }
  bool operator==(const Cursor& other) const { return place_ == other.place_; }

 private:
  const char* place_;
  const char** reached_;
};

/// Takes the events of the parser and grows the tree.
class Grower {
 public:
  Grower(std::string_view text, const char* const& reached) : text_(text), reached_(reached) {}

  Node& root() { return root_; }
  /// @pre reading ended before the text did.
  Unreadable unreadable() const {
    Unreadable found = unreadable_;
    found.behind = lastKeys();
    return found;
  }

  bool null() { return add({}); }
  bool boolean(bool) { return add({}); }
  bool number_integer(json::number_integer_t number) {
    return add(Node::of(static_cast<double>(number)));
  }
  bool number_unsigned(json::number_unsigned_t number) {
    return add(Node::of(static_cast<double>(number)));
  }
  bool number_float(json::number_float_t number, const json::string_t&) {
    return add(Node::of(number));
  }
  bool string(json::string_t& text) { return add(Node::of(text)); }
  bool binary(json::binary_t&) { return false; }
  bool key(json::string_t& key) {
    key_ = std::move(key);
    keyAt_ = openingQuote();
    return true;
  }
  bool start_object(std::size_t) { return open(Node::object()); }
  bool start_array(std::size_t) { return open(Node::list()); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }
  bool parse_error(std::size_t position, const std::string&, const json::exception& error) {
    constexpr int kNumberOverflow = 406;
    const std::size_t at = position > 0 ? position - 1 : 0;
    unreadable_.at = std::min(at, text_.size());
    unreadable_.why = error.id == kNumberOverflow ? Unreadable::Why::TooLarge
                      : at >= text_.size()        ? Unreadable::Why::BreaksOff
                                                  : Unreadable::Why::NotJson;
    if (const std::size_t bad = firstNotUtf8(text_); bad <= unreadable_.at) {
      unreadable_.why = Unreadable::Why::NotUtf8;
      unreadable_.at = bad;
    }
    return false;
  }

 private:
  std::size_t consumed() const { return static_cast<std::size_t>(reached_ - text_.data()); }

  /// Where the key that was just read began.
  std::size_t openingQuote() const {
    std::size_t at = consumed() - 1;
    const auto escaped = [this](std::size_t quote) {
      std::size_t slashes = 0;
      while (slashes < quote && text_[quote - 1 - slashes] == '\\') ++slashes;
      return slashes % 2 != 0;
    };
    do {
      --at;
    } while (at > 0 && (text_[at] != '"' || escaped(at)));
    return at;
  }

  bool add(Node node) {
    place(std::move(node));
    return true;
  }

  Node& place(Node node) {
    if (open_.empty()) {
      root_ = std::move(node);
      return root_;
    }
    const bool member = open_.back()->type == Node::Type::Object;
    node.at = member ? keyAt_ : consumed() - 1;
    if (member) node.key = std::exchange(key_, {});
    return open_.back()->children.emplace_back(std::move(node));
  }

  bool open(Node node) {
    if (open_.size() == kMostNested) {
      unreadable_ = {.why = Unreadable::Why::TooDeep, .at = consumed() - 1, .behind = {}};
      return false;
    }
    open_.push_back(&place(std::move(node)));
    return true;
  }

  bool close() {
    open_.pop_back();
    return true;
  }

  std::vector<std::string> lastKeys() const {
    std::vector<std::string> keys;
    const auto add = [&keys](const std::string& key) {
      if (!key.empty() && keys.size() < 2) keys.push_back(key);
    };
    add(key_);
    if (key_.empty() && !open_.empty() && !open_.back()->children.empty()) {
      add(open_.back()->children.back().key);
    }
    std::for_each(open_.rbegin(), open_.rend(), [&add](const Node* open) { add(open->key); });
    return keys;
  }

  std::string_view text_;
  const char* const& reached_;
  Node root_;
  std::vector<Node*>
      open_;  ///< from the root down; a parent grows only while its last child is shut
  std::string key_;
  std::size_t keyAt_ = 0;
  Unreadable unreadable_;
};

std::string quoted(const std::string& text) {
  return json(text).dump(-1, ' ', false, json::error_handler_t::replace);
}

void append(std::string& out, const Node& node, int depth, int flatFrom) {
  if (!node.key.empty()) out += quoted(node.key) + ": ";
  if (node.type == Node::Type::Number) out += units::exact(node.number);
  if (node.type == Node::Type::Text) out += quoted(node.text);
  if (node.type == Node::Type::Other) out += "null";
  if (node.type != Node::Type::Object && node.type != Node::Type::List) return;

  const bool listsObjects = node.type == Node::Type::List && !node.children.empty() &&
                            node.children.front().type == Node::Type::Object;
  const bool flat = node.children.empty() || (depth >= flatFrom && !listsObjects);
  const auto newLine = [&](int level) {
    if (!flat) out += '\n' + std::string(2 * static_cast<std::size_t>(level), ' ');
  };
  out += node.type == Node::Type::Object ? '{' : '[';
  for (const Node& child : node.children) {
    if (&child != &node.children.front()) out += flat ? ", " : ",";
    newLine(depth + 1);
    append(out, child, depth + 1, flatFrom);
  }
  newLine(depth);
  out += node.type == Node::Type::Object ? '}' : ']';
}

}  // namespace

Node Node::object(std::string_view key) {
  Node node;
  node.type = Type::Object;
  node.key = key;
  return node;
}

Node Node::list(std::string_view key) {
  Node node = object(key);
  node.type = Type::List;
  return node;
}

Node Node::of(double number, std::string_view key) {
  Node node = object(key);
  node.type = Type::Number;
  node.number = number;
  return node;
}

Node Node::of(std::string_view text, std::string_view key) {
  Node node = object(key);
  node.type = Type::Text;
  node.text = text;
  return node;
}

std::variant<Node, Unreadable> parseJson(std::string_view text) {
  const char* reached = text.data();
  Grower grower(text, reached);
  const Cursor begin(text.data(), reached);
  const Cursor end(text.data() + text.size(), reached);
  if (!json::sax_parse(begin, end, &grower)) return grower.unreadable();
  return std::move(grower.root());
}

std::string jsonText(const Node& node, int flatFrom) {
  std::string out;
  append(out, node, 0, flatFrom);
  return out += '\n';
}

}  // namespace strokewright::storage
