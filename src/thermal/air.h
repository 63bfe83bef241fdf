#pragma once
// What carries heat away: a fluid's properties. SI throughout this room: m, m2, W, K; temperatures are absolute.
#include <optional>

namespace baywright::thermal {

inline constexpr double ice_point = 273.15;    // K at 0 °C
inline constexpr double sea_level = 101325.0;  // Pa, standard atmosphere

struct Fluid {
  double conductivity = 0.0;  // W/(m K)
  double viscosity = 0.0;     // kinematic, m2/s
  double diffusivity = 0.0;   // thermal, m2/s
  double prandtl = 0.0;
  double expansion = 0.0;  // 1/K
};

/// Dry air as the U.S. Standard Atmosphere 1976 has it (NOAA-S/T 76-1562): Sutherland's law for the viscosity, its own
/// law for the conductivity, the ideal gas. None outside 200..500 K, or without a pressure above 0: beyond the
/// temperatures of the atmosphere the laws are carried on, within 2 % of handbook values for air (from memory).
[[nodiscard]] std::optional<Fluid> air_at(double kelvin, double pascal = sea_level);

}  // namespace baywright::thermal
