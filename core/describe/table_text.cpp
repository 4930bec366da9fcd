#include "core/describe/table_text.h"

#include <algorithm>
#include <cmath>

namespace strokewright::describe {
namespace {

constexpr std::string_view kGroupSpace = "\u202F";

/// A style that other programs read.
units::Style forMachines(units::Style style) {
  style.minus = "-";
  return style;
}

std::string ungrouped(std::string text) {
  for (std::size_t at = 0; (at = text.find(kGroupSpace, at)) != std::string::npos;) {
    text.erase(at, kGroupSpace.size());
  }
  return text;
}

class Writer {
 public:
  /// @param style nullptr: SI
  Writer(const units::Style* style, char separator, std::string_view lineEnd)
      : style_(style), separator_(separator), lineEnd_(lineEnd) {}

  std::string write(std::span<const HeadedColumn> columns) const {
    std::string text;
    std::size_t rows = 0;
    for (const HeadedColumn& column : columns) {
      rows = std::max({rows, sizeOf(column.cells.numbers), column.cells.words.size()});
      separate(text, &column == columns.data());
      text += quoted(heading(column));
    }
    text += lineEnd_;
    for (std::size_t row = 0; row < rows; ++row) {
      for (const HeadedColumn& column : columns) {
        separate(text, &column == columns.data());
        text += quoted(field(column, row));
      }
      text += lineEnd_;
    }
    return text;
  }

 private:
  static std::size_t sizeOf(const Eigen::ArrayXd& numbers) {
    return static_cast<std::size_t>(numbers.size());
  }

  void separate(std::string& text, bool first) const {
    if (!first) text += separator_;
  }

  std::string heading(const HeadedColumn& column) const {
    const std::string_view unit = style_ != nullptr ? style_->unit(column.kind) : si(column.kind);
    if (unit.empty()) return column.name;
    return column.name + " (" + std::string(unit) + ")";
  }

  static std::string_view si(units::Kind kind) {
    const std::string_view name = units::siName(kind);
    return name == "1" ? std::string_view() : name;
  }

  std::string field(const HeadedColumn& column, std::size_t row) const {
    if (row < column.cells.words.size()) return column.cells.words[row];
    if (row >= sizeOf(column.cells.numbers)) return {};
    const double number = column.cells.numbers[static_cast<Eigen::Index>(row)];
    if (std::isnan(number)) return {};
    if (style_ == nullptr) return units::exact(number);
    return ungrouped(style_->number(column.kind, number, column.decimals));
  }

  std::string quoted(const std::string& field) const {
    if (field.find_first_of(std::string("\"\r\n") + separator_) == std::string::npos) return field;
    std::string text = "\"";
    for (const char letter : field) text.append(letter == '"' ? 2 : 1, letter);
    return text + '"';
  }

  const units::Style* style_;
  char separator_;
  std::string_view lineEnd_;
};

constexpr std::string_view kRecordEnd = "\r\n";

HeadedColumn headedAs(std::string name, const Column& column, Cells cells) {
  return {.name = std::move(name),
          .kind = column.words ? units::Kind::Ratio : column.kind,
          .decimals = column.decimals,
          .cells = std::move(cells)};
}

}  // namespace

std::vector<HeadedColumn> headed(const Rows& rows) {
  std::vector<HeadedColumn> columns;
  for (std::size_t i = 0; i < rows.columns().size(); ++i) {
    const Column& column = rows.columns()[i];
    columns.push_back(headedAs(std::string(column.name), column, rows.cells()[i]));
  }
  return columns;
}

std::vector<HeadedColumn> sideBySide(
    std::span<const NamedRows> named,
    std::optional<std::pair<std::size_t, std::size_t>> difference) {
  const Rows& first = *named.front().rows;
  std::vector<HeadedColumn> columns = {headed(first).front()};
  for (const NamedRows& each : named) {
    for (std::size_t i = 1; i < first.columns().size(); ++i) {
      const Column& column = first.columns()[i];
      columns.push_back(
          headedAs(each.name + ": " + std::string(column.name), column, each.rows->cells()[i]));
    }
  }
  if (!difference) return columns;
  const std::vector<Cells>& of = named[difference->first].rows->cells();
  const std::vector<Cells>& from = named[difference->second].rows->cells();
  for (std::size_t i = 1; i < first.columns().size(); ++i) {
    const Column& column = first.columns()[i];
    if (column.words) continue;
    columns.push_back(headedAs("Difference: " + std::string(column.name), column,
                               {.numbers = of[i].numbers - from[i].numbers}));
  }
  return columns;
}

std::string csv(std::span<const HeadedColumn> columns) {
  return Writer(nullptr, ',', kRecordEnd).write(columns);
}

std::string csv(std::span<const HeadedColumn> columns, const units::Style& style) {
  const units::Style marks = forMachines(style);
  return Writer(&marks, marks.decimalMark == "," ? ';' : ',', kRecordEnd).write(columns);
}

std::string tabbed(std::span<const HeadedColumn> columns, const units::Style& style) {
  const units::Style marks = forMachines(style);
  return Writer(&marks, '\t', "\n").write(columns);
}

}  // namespace strokewright::describe
