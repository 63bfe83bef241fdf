#pragma once
// Heat between a grey surface and much larger surroundings.

namespace baywright::thermal {

inline constexpr double stefan_boltzmann = 5.670374419e-8;  // W/(m2 K4), CODATA 2018

/// W/m2 that a surface at `kelvin` gives off, less what surroundings at `around` send back. Emissivity 0..1.
[[nodiscard]] double radiated(double emissivity, double kelvin, double around);

}  // namespace baywright::thermal
