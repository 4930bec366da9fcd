#include "core/burette/burette.h"

namespace strokewright::burette {

double crownVolume(const CrownFilling& filling) {
  return chamber::boreArea(filling.bore) * filling.depth - filling.filled;
}

double ratioPerVolume(const chamber::Compression& volumes) {
  return volumes.sweptVolume / (volumes.clearanceVolume * volumes.clearanceVolume);
}

}  // namespace strokewright::burette
