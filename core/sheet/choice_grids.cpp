/// What could be laid from the shelf, and what lost, on the sheet of the stack.

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

#include "core/choice/tables.h"
#include "core/describe/tabulated.h"
#include "core/describe/wording.h"
#include "core/model/lists.h"
#include "core/sheet/bench_writers.h"
#include "core/sheet/words.h"

namespace strokewright::sheet {

using describe::Quantity;
using describe::Rows;
using units::Kind;

namespace {

constexpr int kRowsOnPage = 14;  // of two tables of cylinders and two of stacks
constexpr int kMostStacks = 4;   // in each
constexpr std::size_t kLettersInLine = 104;
constexpr std::string_view kNext = " · ";
constexpr std::string_view kTo = " … ";

/// How many stacks find room in each table, beside a row for each cylinder in each of the others.
std::size_t roomForStacks(int cylinders) {
  return static_cast<std::size_t>(std::clamp(kRowsOnPage / 2 - cylinders, 0, kMostStacks));
}

/// How what is not the same in all cylinders is written.
enum class Unlike {
  EachByItself,  ///< in the order of the cylinders, which are named
  FromTo,        ///< from the least to the greatest, where there is no room for each
};

/// One line for each stack of a table that has a row for each kind of cylinder in it.
class ChoiceGrid {
 public:
  ChoiceGrid(const BenchWork& work, const Rows& rows) : work_(work), rows_(rows) {
    const Eigen::ArrayXd& places = rows["place"].numbers;
    for (Eigen::Index row = 0; row < places.size(); ++row) {
      if (row > 0 && places[row] == places[row - 1]) {
        ++stacks_.back().count;
      } else {
        stacks_.push_back({row, 1});
      }
    }
  }

  /// @param all, some the heading, and what it is where only the first {1} of {2} find room
  Grid best(std::string_view all, std::string_view some) {
    return written(all, some, [this](Unlike unlike) {
      put(headed("place"), [&](const Stack& it) { return number("place", it.first); });
      putParts(unlike);
      put(headed("squish_m"),
          [&](const Stack& it) { return reach(it, "squish_m", "squish_most_m"); });
      put(work_.headed("at worst", Kind::FineLength), [&](const Stack& it) {
        return text("squish_at_worst_m", least(it, "squish_at_worst_m"));
      });
      put(headed("ratio"), [&](const Stack& it) { return reach(it, "ratio", "ratio_most"); });
    });
  }

  Grid lost(std::string_view all, std::string_view some) {
    return written(all, some, [this](Unlike unlike) {
      put(headed("why"),
          [&](const Stack& it) { return rows_["why"].words[static_cast<std::size_t>(it.first)]; });
      put("Is / limit", [&](const Stack& it) { return lostBy(it); });
      putParts(unlike);
      put(headed("squish_m"),
          [&](const Stack& it) { return reach(it, "squish_m", "squish_most_m"); });
    });
  }

 private:
  /// The rows of one stack: a single one where all cylinders get the same.
  struct Stack {
    Eigen::Index first;
    Eigen::Index count;
  };

  template <typename Columns>
  Grid written(std::string_view all, std::string_view some, const Columns& putColumns) {
    const Quantity there{Kind::Count, static_cast<double>(stacks_.size())};
    stacks_.resize(std::min(stacks_.size(), roomForStacks(work_.cylinders())));
    const Quantity shown{Kind::Count, static_cast<double>(stacks_.size())};
    const std::string_view heading = shown == there ? all : some;
    for (const Unlike unlike : {Unlike::EachByItself, Unlike::FromTo}) {
      grid_ = {describe::word({heading, {shown, there}}, work_.style), {}, {}};
      grid_.rows.resize(stacks_.size());
      putColumns(unlike);
      if (letters() <= kLettersInLine) break;
    }
    return std::move(grid_);
  }

  template <typename Text>
  void put(std::string heading, const Text& text) {
    grid_.columns.push_back(std::move(heading));
    for (std::size_t i = 0; i < stacks_.size(); ++i) grid_.rows[i].push_back(text(stacks_[i]));
  }

  /// A part that lies in none of the stacks has no column.
  void putParts(Unlike unlike) {
    const bool anyUnlike =
        std::ranges::any_of(stacks_, [](const Stack& stack) { return stack.count > 1; });
    if (anyUnlike && unlike == Unlike::EachByItself) {
      put(headed("cylinders"), [&](const Stack& stack) {
        const auto first = rows_["cylinders"].words.begin() + stack.first;
        return join({first, first + stack.count}, kNext);
      });
    }
    for (const std::string_view part :
         {"plate_m", "base_gasket_m", "second_base_gasket_m", "head_gasket_m"}) {
      const auto laid = [&](const Stack& it) { return !std::isnan(greatest(it, part)); };
      if (std::ranges::none_of(stacks_, laid)) continue;
      put(headed(part), [&](const Stack& stack) { return parts(stack, part, unlike); });
    }
  }

  const describe::Column& column(std::string_view key) const {
    return *std::ranges::find(rows_.columns(), key, &describe::Column::key);
  }
  std::string headed(std::string_view key) const { return work_.headed(column(key)); }
  std::string text(std::string_view key, double number) const {
    if (std::isnan(number)) return std::string(kNothing);
    return work_.number(column(key).kind, number, column(key).decimals);
  }
  std::string number(std::string_view key, Eigen::Index row) const {
    return text(key, rows_[key].numbers[row]);
  }

  /// Those that are absent do not count.
  double least(const Stack& stack, std::string_view key) const {
    return folded(stack, key, [](double a, double b) { return std::fmin(a, b); });
  }
  double greatest(const Stack& stack, std::string_view key) const {
    return folded(stack, key, [](double a, double b) { return std::fmax(a, b); });
  }
  template <typename Fold>
  double folded(const Stack& stack, std::string_view key, const Fold& fold) const {
    double number = describe::kAbsent;
    for (const double it : rows_[key].numbers.segment(stack.first, stack.count)) {
      number = fold(number, it);
    }
    return number;
  }

  std::string parts(const Stack& stack, std::string_view key, Unlike unlike) const {
    std::vector<std::string> texts;
    for (Eigen::Index i = 0; i < stack.count; ++i) texts.push_back(number(key, stack.first + i));
    if (std::ranges::count(texts, texts.front()) == std::ssize(texts)) return texts.front();
    if (unlike == Unlike::EachByItself) return join(texts, kNext);
    const bool someWithout = std::ranges::count(texts, kNothing) > 0;
    const double from = someWithout ? describe::kAbsent : least(stack, key);
    return join({text(key, from), text(key, greatest(stack, key))}, kTo);
  }

  /// @param upTo a column that is absent where its number is no more than the least
  std::string reach(const Stack& stack, std::string_view key, std::string_view upTo) const {
    const std::string from = text(key, least(stack, key));
    const std::string to = text(key, std::fmax(greatest(stack, key), greatest(stack, upTo)));
    return from == to ? from : join({from, to}, kTo);
  }

  /// The number that lost it, and the limit of that.
  std::string lostBy(const Stack& stack) const {
    constexpr std::pair<std::string_view, std::string_view> kBy[] = {
        {"gap_is_m", "gap_limit_m"},
        {"gap_apart_m", "gap_apart_limit_m"},
        {"ratio_is", "ratio_limit"},
        {"ratio_apart", "ratio_apart_limit"},
        {"parts_needed", "parts_there"}};
    for (const auto& [is, limit] : kBy) {
      const Quantity number{column(is).kind, rows_[is].numbers[stack.first]};
      const Quantity allowed{column(limit).kind, rows_[limit].numbers[stack.first]};
      if (std::isnan(number.value) || std::isnan(allowed.value)) continue;
      return describe::word({"{1} / {2}", {number, allowed}}, work_.style);
    }
    return std::string(kNothing);
  }

  /// Of a line as wide as each column at its widest.
  std::size_t letters() const {
    std::size_t sum = 0;
    for (std::size_t i = 0; i < grid_.columns.size(); ++i) {
      std::size_t widest = 0;
      for (const auto& row : grid_.rows) widest = std::max(widest, length(row[i]));
      sum += widest;
    }
    return sum;
  }

  const BenchWork& work_;
  const Rows& rows_;
  std::vector<Stack> stacks_;
  Grid grid_;
};

}  // namespace

void writeChoice(BenchWork& work) {
  if (work.items(model::list::shelf).empty()) return;
  const auto best = work.tabulated(out::stackChoices);
  const auto lost = work.tabulated(out::stacksBeaten);
  if (!best.rows) {
    work.sheet.notes.push_back("No choice from the shelf. " + best.whyNot);
    return;
  }
  if (roomForStacks(work.cylinders()) == 0) {
    work.sheet.notes.emplace_back("What can be laid from the shelf: see the window.");
    return;
  }
  if (best.rows->size() == 0) {
    work.sheet.notes.emplace_back("No stack from the shelf keeps within the limits.");
  } else {
    work.sheet.grids.push_back(ChoiceGrid(work, *best.rows)
                                   .best("The best stacks from the shelf",
                                         "The first {1} of the {2} best stacks from the shelf"));
  }
  const auto notes = work.tabulated(out::choiceNotes);
  for (std::size_t row = 0; notes.rows && row < notes.rows->size(); ++row) {
    work.sheet.notes.push_back("Choice from the shelf. " +
                               describe::word(choice::noteIn(*notes.rows, row), work.style));
  }
  if (!lost.rows || lost.rows->size() == 0) return;
  work.sheet.grids.push_back(ChoiceGrid(work, *lost.rows)
                                 .lost("The nearest stacks that lost",
                                       "The first {1} of the {2} nearest stacks that lost"));
}

}  // namespace strokewright::sheet
