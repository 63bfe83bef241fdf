#include "render/rounding.h"

#include <cmath>
#include <initializer_list>

namespace baywright::render {

namespace {
constexpr double hair = 1.0 + 1e-9;  // rounding of the powers of ten
}

double rounded_up(double value) {
  if (!(value > 0.0) || !std::isfinite(value)) return 1.0;
  const double ten = std::pow(10.0, std::floor(std::log10(value)));
  for (const double step : {1.0, 2.0, 5.0})
    if (value <= step * ten * hair) return step * ten;
  return 10.0 * ten;
}

double rounded_down(double value) {
  if (!(value > 0.0) || !std::isfinite(value)) return 1.0;
  const double ten = std::pow(10.0, std::floor(std::log10(value)));
  for (const double step : {5.0, 2.0, 1.0})
    if (value * hair >= step * ten) return step * ten;
  return ten;
}

}  // namespace baywright::render
