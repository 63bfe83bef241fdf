#pragma once
// Gap-filling pads: how far they are pressed, and the thicknesses that are sold.
#include <array>

namespace baywright::parts {

// Compression range as a share of the free thickness: rule of thumb of pad makers' tutorials (secondary). Below, the
// pad may not touch everywhere; above, silicone pads bleed oil.
inline constexpr double pad_least = 0.20;
inline constexpr double pad_most = 0.45;

/// Free thicknesses in every shop, mm, ascending: common practice, no source.
inline constexpr std::array pad_thicknesses{0.5, 1.0, 1.5, 2.0, 2.5, 3.0};

/// ± as a share of the thickness, where a packet states none: two makers' pages (secondary).
inline constexpr double pad_limit = 0.10;

}  // namespace baywright::parts
