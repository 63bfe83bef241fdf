#pragma once
// Drawing a value of a dimension at random: the same for the same seed, build and place in the list, in whatever order
// and on whatever thread it is asked for.
#include "tolerance/dimension.h"

#include <array>
#include <cstdint>

namespace baywright::tolerance {

/// The counter-based generator Philox4x32-10 (Salmon, Moraes, Dror and Shaw, "Parallel random numbers: as easy as 1, 2,
/// 3", SC 2011): four words that depend on counter and key alone.
[[nodiscard]] std::array<std::uint32_t, 4> philox(std::array<std::uint32_t, 4> counter,
                                                  std::array<std::uint32_t, 2> key);

/// Two independent numbers inside (0, 1), never 0 or 1, to 52 bits. `pair` counts up from 0.
[[nodiscard]] std::array<double, 2> chances(std::uint64_t seed, std::uint64_t build, std::uint32_t pair);

/// The z below which a normal variable stays with probability p, 0 < p < 1 (Wichura, Algorithm AS 241, Applied
/// Statistics 37, 1988, PPND16: about 1 part in 1e16). NaN elsewhere.
[[nodiscard]] double normal_below(double p);

/// The value, mm, below which the dimension stays with probability `chance`, inside (0, 1). Within its limits; uniform
/// between them, or normal about their middle with the limits at three sigma, and cut there. NaN with an open side.
[[nodiscard]] double drawn(const Dimension& dimension, double chance);

/// The variance of what is drawn, mm². Infinite with an open side.
[[nodiscard]] double variance(const Dimension& dimension);

}  // namespace baywright::tolerance
