#include "thermal/fins.h"

#include <cmath>
#include <limits>

namespace baywright::thermal {

namespace {

constexpr Nusselt unknown{0.0, std::numeric_limits<double>::infinity()};

double elenbaas(double x) {
  return x / 24.0 * std::pow(1.0 - std::exp(-35.0 / x), 0.75);
}

}  // namespace

double channel_number(double ra_of_spacing, double spacing, double length) {
  return ra_of_spacing * spacing / length;
}

Nusselt channel_elenbaas(double x) {
  constexpr double from = 0.1;
  constexpr double to = 1e5;
  if (!(x > 0.0)) return unknown;
  if (!(x > from)) return {0.0, elenbaas(from)};
  if (!(x < to)) return {elenbaas(to), unknown.high};
  return {elenbaas(x), elenbaas(x)};
}

Nusselt channel_bar_cohen(double x) {
  if (!(x > 0.0) || !std::isfinite(x)) return unknown;
  const double value = 1.0 / std::sqrt(576.0 / (x * x) + 2.873 / std::sqrt(x));
  return {value, value};
}

double best_spacing(double ra_of_length, double length) {
  return 2.714 * length / std::pow(ra_of_length, 0.25);
}

int fins_on(double width, double spacing, double thickness) {
  constexpr double hair = 1e-9;  // ten that fill the base to the last digit are ten
  const double count = width / (spacing + thickness) + hair;
  return count >= 0.0 && count < 1e6 ? static_cast<int>(count) : 0;
}

double fin_efficiency(double transfer, double conductivity, double thickness, double height) {
  const double m = std::sqrt(2.0 * transfer / (conductivity * thickness)) * (height + 0.5 * thickness);
  return m > 0.0 ? std::tanh(m) / m : 1.0;
}

}  // namespace baywright::thermal
