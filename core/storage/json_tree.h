#pragma once
/// JSON as a tree that knows where in the text each piece began.

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace strokewright::storage {

/// One value. Members of an object keep their order, repeated keys included.
struct Node {
  enum class Type { Object, List, Number, Text, Other };  ///< Other: true, false, null

  Type type = Type::Other;
  std::string key;             ///< of a member of an object
  std::size_t at = 0;          ///< [bytes] where the member's key, else the value began
  double number = 0.0;         ///< of a Number; finite
  std::string text;            ///< of a Text
  std::vector<Node> children;  ///< of an Object or List

  static Node object(std::string_view key = {});
  static Node list(std::string_view key = {});
  static Node of(double number, std::string_view key = {});
  static Node of(std::string_view text, std::string_view key = {});
};

/// Why a text is not JSON that can be taken.
struct Unreadable {
  enum class Why { BreaksOff, NotJson, NotUtf8, TooLarge, TooDeep };
  Why why = Why::NotJson;
  std::size_t at = 0;  ///< [bytes] the first one that cannot be right
  /// Keys last read before it: of the member it stands in or behind, and of the object that holds
  /// that; the inner one first, none at the very beginning.
  std::vector<std::string> behind;
};

/// Reads JSON by the book (RFC 8259), whatever the locale: UTF-8, a number beyond what a double
/// holds and nesting deeper than any project are refused. Never throws.
std::variant<Node, Unreadable> parseJson(std::string_view text);

/// UTF-8 text with two blanks of indent, a point as decimal mark and the shortest numbers that read
/// back the same; bytes that are not UTF-8 become U+FFFD.
/// @param flatFrom  what is nested this deep stands on one line, but a list has one for each of its
///                  objects; the outermost is 0.
std::string jsonText(const Node& node, int flatFrom);

}  // namespace strokewright::storage
