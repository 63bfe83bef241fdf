#include "fit/chain.h"

#include <algorithm>
#include <cmath>

namespace baywright::fit {

namespace {

double weight(const ChainLink& link) {
  const tolerance::Dimension& d = link.dimension;
  return std::abs(link.sensitivity) * (d.open() ? std::min(d.minus, d.plus) : 0.5 * (d.minus + d.plus));
}

}  // namespace

void sort_by_weight(std::vector<ChainLink>& chain) {
  std::stable_sort(chain.begin(), chain.end(),
                   [](const ChainLink& a, const ChainLink& b) { return weight(a) > weight(b); });
}

}  // namespace baywright::fit
