#pragma once
/// What is not one number for each cylinder, described once: curves, rankings, firing tables.

#include <Eigen/Core>
#include <initializer_list>
#include <limits>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/describe/result.h"

namespace strokewright::describe {

struct Column {
  std::string_view key;          ///< of a column of numbers it ends in the SI unit: "travel_m"
  std::string_view name;         ///< trade name
  std::string_view symbol = {};  ///< as in the formula
  units::Kind kind = units::Kind::Ratio;
  bool words = false;  ///< holds text instead of numbers; kind and decimals mean nothing then
  int decimals = -1;   ///< written; negative: the unit's default
};

/// The number of a row that has none. It is never written: a field stays empty, JSON has null.
inline constexpr double kAbsent = std::numeric_limits<double>::quiet_NaN();

/// What stands in one column, from the first row to the last.
struct Cells {
  Eigen::ArrayXd numbers = {};          ///< [SI] kAbsent where a row has none
  std::vector<std::string> words = {};  ///< of a column of words, instead
};

/// The rows of a table, kept column by column.
class Rows {
 public:
  explicit Rows(std::span<const Column> columns) : columns_(columns), cells_(columns.size()) {}

  std::span<const Column> columns() const { return columns_; }
  const std::vector<Cells>& cells() const { return cells_; }  ///< in the order of the columns
  std::size_t size() const { return cells_.empty() ? 0 : sizeOf(0); }

  /// @throws std::out_of_range for a key that no column has.
  Cells& operator[](std::string_view key) { return cells_[place(key)]; }
  const Cells& operator[](std::string_view key) const { return cells_[place(key)]; }

  /// One row more; for tables that are short.
  /// @param row a number [SI] or a text for each column, in their order
  /// @throws std::bad_variant_access for a text where the column holds numbers, or the other way.
  void add(std::initializer_list<std::variant<double, std::string>> row);

  /// @throws std::length_error where columns are not of one length.
  void checkEven() const;
  /// No number is infinite.
  bool finite() const;

 private:
  std::size_t place(std::string_view key) const;
  std::size_t sizeOf(std::size_t column) const;

  std::span<const Column> columns_;
  std::vector<Cells> cells_;
};

/// A table gets its numbers through a reader, as a result does: what it waits for and why it is
/// refused needs no code in it. It is filled only when asked for.
struct Table {
  std::string_view key;   ///< snake case: "piston_motion"
  std::string_view name;  ///< trade name
  Per per = Per::Cylinder;
  std::span<const Column> columns;  ///< the first one says what a row is about
  std::string_view formula = {};
  std::string_view source = {};
  std::string_view valid = {};
  void (*fill)(Reader& read, Rows& rows) = nullptr;
};

}  // namespace strokewright::describe
