#pragma once
// Plates side by side that stand upright with open ends, and fins on a base.
#include "thermal/convection.h"

namespace baywright::thermal {

/// x of the two laws below: Ra of the spacing times spacing over length (the way of the air).
[[nodiscard]] double channel_number(double ra_of_spacing, double spacing, double length);

/// Nusselt number of the spacing between two warm plates. Elenbaas 1942: 0.1 < x < 1e5; from memory.
[[nodiscard]] Nusselt channel_elenbaas(double x);
/// The same by Bar-Cohen and Rohsenow 1984, at all x; from memory. The two lie within 5 or 6 % of each other.
[[nodiscard]] Nusselt channel_bar_cohen(double x);

/// The spacing, m, at which thin fins on a base of given size give off most heat, from Ra of the fin's length:
/// Bar-Cohen and Rohsenow, 2.714 L Ra^(-1/4). The Nusselt number of the spacing is 1.307 there.
[[nodiscard]] double best_spacing(double ra_of_length, double length);
inline constexpr double nusselt_at_best_spacing = 1.307;

/// How many fins of this thickness stand at this spacing on a base of this width; at least 0.
[[nodiscard]] int fins_on(double width, double spacing, double thickness);

/// The share of heat that a straight fin gives off of what it would if it were as warm as its foot all over: tanh(m H)
/// / (m H), m = sqrt(2 h / (k t)), H the height with half the thickness for the tip. `transfer` W/(m2 K).
[[nodiscard]] double fin_efficiency(double transfer, double conductivity, double thickness, double height);

}  // namespace baywright::thermal
