#include "thermal/convection.h"

#include <cmath>
#include <limits>

namespace baywright::thermal {

namespace {

constexpr double open = std::numeric_limits<double>::infinity();

Nusselt exactly(double value) {
  return {value, value};
}

bool usable(double figure) {
  return figure >= 0.0 && std::isfinite(figure);
}

/// (1 + (0.492/Pr)^(9/16)), which both laws of Churchill and Chu raise to a power.
double prandtl_term(double prandtl) {
  return 1.0 + std::pow(0.492 / prandtl, 9.0 / 16.0);
}

double churchill_chu(double ra, double prandtl) {
  const double root = 0.825 + 0.387 * std::pow(ra, 1.0 / 6.0) / std::pow(prandtl_term(prandtl), 8.0 / 27.0);
  return root * root;
}

}  // namespace

double grashof(const Fluid& fluid, double rise, double length, double g) {
  return g * fluid.expansion * rise * length * length * length / (fluid.viscosity * fluid.viscosity);
}

double rayleigh(const Fluid& fluid, double rise, double length, double g) {
  return g * fluid.expansion * rise * length * length * length / (fluid.viscosity * fluid.diffusivity);
}

double reynolds(const Fluid& fluid, double speed, double length) {
  return speed * length / fluid.viscosity;
}

Nusselt vertical_plate(double ra, double prandtl) {
  constexpr double from = 0.1;
  constexpr double to = 1e12;
  if (!usable(ra) || !(prandtl > 0.0)) return {0.0, open};
  if (ra < from) return {churchill_chu(0.0, prandtl), churchill_chu(from, prandtl)};
  if (ra > to) return {churchill_chu(to, prandtl), open};
  return exactly(churchill_chu(ra, prandtl));
}

Nusselt vertical_plate_laminar(double ra, double prandtl) {
  constexpr double to = 1e9;
  if (!usable(ra) || !(prandtl > 0.0)) return {0.0, open};
  const auto law = [&](double at) {
    return 0.68 + 0.670 * std::pow(at, 0.25) / std::pow(prandtl_term(prandtl), 4.0 / 9.0);
  };
  if (ra > to) return {law(to), open};
  return exactly(law(ra));
}

Nusselt horizontal_up(double ra) {
  constexpr double from = 1e4;
  constexpr double turbulent = 1e7;
  constexpr double to = 1e11;
  if (!usable(ra)) return {0.0, open};
  if (ra < from) return {0.54 * std::pow(ra, 0.25), 0.54 * std::pow(from, 0.25)};
  if (ra <= turbulent) return exactly(0.54 * std::pow(ra, 0.25));
  if (ra <= to) return exactly(0.15 * std::cbrt(ra));
  return {0.15 * std::cbrt(to), open};
}

Nusselt horizontal_down(double ra) {
  constexpr double from = 1e5;
  constexpr double to = 1e11;
  if (!usable(ra)) return {0.0, open};
  if (ra < from) return {0.27 * std::pow(ra, 0.25), 0.27 * std::pow(from, 0.25)};
  if (ra <= to) return exactly(0.27 * std::pow(ra, 0.25));
  return {0.27 * std::pow(to, 0.25), open};
}

Nusselt flat_plate(double re, double prandtl) {
  constexpr double turns = 5e5;
  constexpr double to = 1e8;
  if (!usable(re) || !(prandtl >= 0.6)) return {0.0, open};
  const double share = std::cbrt(prandtl);
  if (re <= turns) return exactly(0.664 * std::sqrt(re) * share);
  const auto mixed = [&](double at) { return (0.037 * std::pow(at, 0.8) - 871.0) * share; };
  // The mixed law was made for Pr up to 60; the laminar one has no such end.
  if (!(prandtl <= 60.0)) return {0.0, open};
  if (re <= to) return exactly(mixed(re));
  return {mixed(to), open};
}

double layer_thickness(double grashof, double length) {
  return 5.0 * length / std::pow(0.25 * grashof, 0.25);
}

}  // namespace baywright::thermal
