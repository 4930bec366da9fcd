#include "core/describe/catalogue.h"

#include <stdexcept>
#include <utility>

#include "core/describe/finding.h"
#include "core/describe/table.h"

namespace strokewright::describe {
namespace {

template <typename Description>
void numberByPlace(const std::vector<const Description*>& table) {
  int place = 0;
  for (const Description* description : table) description->number = place++;
}

template <typename Description>
const Description* find(std::span<const Description* const> table, std::string_view key) {
  for (const Description* description : table) {
    if (description->key == key) return description;
  }
  return nullptr;
}

}  // namespace

Catalogue::Catalogue(std::vector<const Input*> inputs, std::vector<const Result*> results,
                     std::vector<const Rule*> rules, std::vector<const Table*> tables,
                     const Input& cylinderCount)
    : inputs_(std::move(inputs)),
      results_(std::move(results)),
      rules_(std::move(rules)),
      tables_(std::move(tables)),
      cylinderCount_(&cylinderCount) {
  if (inputs_.size() > static_cast<std::size_t>(kMostInputs)) {
    throw std::length_error("more inputs than kMostInputs");
  }
  if (results_.size() > static_cast<std::size_t>(kMostResults)) {
    throw std::length_error("more results than kMostResults");
  }
  numberByPlace(inputs_);
  numberByPlace(results_);
}

const Input* Catalogue::findInput(std::string_view key) const {
  return find(std::span<const Input* const>(inputs_), key);
}

const Result* Catalogue::findResult(std::string_view key) const {
  return find(std::span<const Result* const>(results_), key);
}

const Table* Catalogue::findTable(std::string_view key) const {
  return find(std::span<const Table* const>(tables_), key);
}

}  // namespace strokewright::describe
