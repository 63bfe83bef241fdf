#pragma once
// Mean heat transfer from a surface to the air, by published correlations, each within its range.
#include "thermal/air.h"

namespace baywright::thermal {

inline constexpr double gravity = 9.81;  // m/s2

/// A mean Nusselt number. Within the correlation's range both are its value; outside it, what is still sure: 0 and
/// infinity where nothing is.
struct Nusselt {
  double low = 0.0;
  double high = 0.0;
  [[nodiscard]] bool in_range() const { return low == high; }
};

/// `length` is that of the correlation, m; `rise` the surface's temperature over the fluid's, K.
[[nodiscard]] double grashof(const Fluid& fluid, double rise, double length, double g = gravity);
[[nodiscard]] double rayleigh(const Fluid& fluid, double rise, double length, double g = gravity);
/// `speed` along the plate, m/s.
[[nodiscard]] double reynolds(const Fluid& fluid, double speed, double length);

// All take what is not a number, or is below 0, for unknown: 0 to infinity.
// Below its range a law of the boundary layer leaves conduction out, so it is a lower bound there (Raithby and Hollands
// add the two; from memory), and its value where the range begins is an upper one, since heat transfer grows with Ra.

/// Vertical plate, length upward. Churchill and Chu 1975: all Ra; measured for 0.1 to 1e12.
[[nodiscard]] Nusselt vertical_plate(double ra, double prandtl);
/// The same authors' for a laminar layer, closer there: Ra to 1e9.
[[nodiscard]] Nusselt vertical_plate_laminar(double ra, double prandtl);
/// Horizontal plate with the hot side up. Length: area over perimeter. McAdams 1954: 0.54 Ra^(1/4) for 1e4 to 1e7,
/// 0.15 Ra^(1/3) from there to 1e11.
[[nodiscard]] Nusselt horizontal_up(double ra);
/// With the hot side down: 0.27 Ra^(1/4), 1e5 to 1e11 (McAdams, as older textbooks have it; newer ones have
/// 0.52 Ra^(1/5), a quarter less; from memory).
[[nodiscard]] Nusselt horizontal_down(double ra);
/// Flat plate in a stream along it, laminar from the edge: 0.664 Re^(1/2) Pr^(1/3) to Re 5e5; there it turns turbulent:
/// (0.037 Re^(4/5) - 871) Pr^(1/3) to 1e8. Pr from 0.6. From memory.
[[nodiscard]] Nusselt flat_plate(double re, double prandtl);

/// How thick the warm layer along a vertical plate has become at its upper end, m: five units of the laminar similarity
/// solution (Ostrach; from memory). Nearer than this, what stands beside a plate hinders its air.
[[nodiscard]] double layer_thickness(double grashof, double length);

}  // namespace baywright::thermal
