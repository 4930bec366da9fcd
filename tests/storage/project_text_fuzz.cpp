// Coverage-guided search for a text that breaks reading, or is read as a project that does not
// come back from its own text.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "core/storage/project_text.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  namespace storage = strokewright::storage;
  const auto read = storage::read(std::string(data, data + size));
  if (!read.project) {
    if (read.remarks.empty()) std::abort();
    return 0;
  }
  if (storage::read(storage::write(*read.project)).project != read.project) std::abort();
  return 0;
}
