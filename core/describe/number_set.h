#pragma once
/// Sets of described inputs and results by their numbers, quick to join and to walk through.

#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>

#include "core/describe/catalogue.h"

namespace strokewright::describe {

/// @tparam kMost how many there may be
template <int kMost>
class NumberSet {
 public:
  void set(std::size_t number) { words_[number / kBits] |= Word{1} << number % kBits; }

  /// Takes out the least number, which is told; kMost when there is none.
  std::size_t takeFirst() {
    for (std::size_t i = 0; i < words_.size(); ++i) {
      if (words_[i] == 0) continue;
      const auto bit = static_cast<std::size_t>(std::countr_zero(words_[i]));
      words_[i] &= words_[i] - 1;
      return i * kBits + bit;
    }
    return kMost;
  }

  bool operator[](std::size_t number) const {
    return (words_[number / kBits] >> number % kBits & 1) != 0;
  }

  bool any() const {
    Word all = 0;
    for (const Word word : words_) all |= word;
    return all != 0;
  }

  NumberSet& operator|=(const NumberSet& other) {
    for (std::size_t i = 0; i < words_.size(); ++i) words_[i] |= other.words_[i];
    return *this;
  }

  friend NumberSet operator|(NumberSet one, const NumberSet& other) { return one |= other; }

  friend NumberSet operator&(NumberSet one, const NumberSet& other) {
    for (std::size_t i = 0; i < one.words_.size(); ++i) one.words_[i] &= other.words_[i];
    return one;
  }

  /// Visits the numbers, the least first.
  template <typename Visit>
  void each(Visit visit) const {
    for (std::size_t i = 0; i < words_.size(); ++i) {
      for (Word left = words_[i]; left != 0; left &= left - 1) {
        visit(i * kBits + static_cast<std::size_t>(std::countr_zero(left)));
      }
    }
  }

 private:
  using Word = std::uint64_t;
  static constexpr std::size_t kBits = 64;
  static_assert(kMost % kBits == 0);
  std::array<Word, kMost / kBits> words_{};
};

using InputSet = NumberSet<kMostInputs>;
using ResultSet = NumberSet<kMostResults>;

}  // namespace strokewright::describe
