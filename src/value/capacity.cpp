#include "value/capacity.h"

#include <cmath>

namespace baywright::value {

double gibibytes(double gigabytes) {
  return gigabytes * 1e9 / 1073741824.0;
}

double tebibytes(double gigabytes) {
  return gibibytes(gigabytes) / 1024.0;
}

std::optional<std::int64_t> blocks(double gigabytes) {
  if (!(gigabytes >= 50.0 && gigabytes <= 1e8) || gigabytes != std::floor(gigabytes)) return std::nullopt;
  return 97'696'368 + 1'953'504 * (static_cast<std::int64_t>(gigabytes) - 50);
}

}  // namespace baywright::value
