#include "thermal/air.h"

#include <cmath>

namespace baywright::thermal {

namespace {

constexpr double gas_constant = 8314.32;  // J/(kmol K), as that standard has it
constexpr double molar_mass = 28.9644;    // kg/kmol
constexpr double heat_ratio = 1.4;        // of the specific heats
constexpr double coldest = 200.0;         // K
constexpr double hottest = 500.0;

}  // namespace

std::optional<Fluid> air_at(double kelvin, double pascal) {
  if (!(kelvin >= coldest && kelvin <= hottest && pascal > 0.0 && std::isfinite(pascal))) return std::nullopt;
  const double root = kelvin * std::sqrt(kelvin);
  const double dynamic = 1.458e-6 * root / (kelvin + 110.4);  // Pa s
  const double conductivity = 2.64638e-3 * root / (kelvin + 245.4 * std::pow(10.0, -12.0 / kelvin));
  const double density = pascal * molar_mass / (gas_constant * kelvin);
  const double specific_heat = heat_ratio / (heat_ratio - 1.0) * gas_constant / molar_mass;  // J/(kg K)
  const double viscosity = dynamic / density;
  const double diffusivity = conductivity / (density * specific_heat);
  return Fluid{conductivity, viscosity, diffusivity, viscosity / diffusivity, 1.0 / kelvin};
}

}  // namespace baywright::thermal
