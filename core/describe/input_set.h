#pragma once
/// A set of described inputs by their numbers, quick to join and to walk through.

#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>

#include "core/describe/catalogue.h"

namespace strokewright::describe {

class InputSet {
 public:
  void set(std::size_t number) { words_[number / kBits] |= Word{1} << number % kBits; }

  bool operator[](std::size_t number) const {
    return (words_[number / kBits] >> number % kBits & 1) != 0;
  }

  bool any() const {
    Word all = 0;
    for (const Word word : words_) all |= word;
    return all != 0;
  }

  InputSet& operator|=(const InputSet& other) {
    for (std::size_t i = 0; i < words_.size(); ++i) words_[i] |= other.words_[i];
    return *this;
  }

  friend InputSet operator|(InputSet one, const InputSet& other) { return one |= other; }

  friend InputSet operator&(InputSet one, const InputSet& other) {
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
  static_assert(kMostInputs % kBits == 0);
  std::array<Word, kMostInputs / kBits> words_{};
};

}  // namespace strokewright::describe
