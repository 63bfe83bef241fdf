#include "plans/printed_hole.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace baywright::plans {

PrintedHole hole(const Vec2& at, double diameter, const standards::general_tolerances::Process& process) {
  const double shrinks = process.diameter ? std::max(0.0, -process.diameter->nominal) : 0.0;
  return {at, diameter, diameter + shrinks};
}

Outline ring(const Vec2& centre, double radius, int sides) {
  Outline out;
  for (int i = 0; i < sides; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / sides;
    out.push_back(centre + radius * Vec2(std::cos(angle), std::sin(angle)));
  }
  return out;
}

int sides_of(double radius) {
  const double half = std::acos(radius / (radius + printed_chord_mm));
  return std::max(24, static_cast<int>(std::ceil(std::numbers::pi / half)));
}

Outline round_a_hole(const PrintedHole& hole) {
  const double radius = 0.5 * hole.drawn;
  const int sides = sides_of(radius);
  return ring(hole.at, radius / std::cos(std::numbers::pi / sides), sides);
}

}  // namespace baywright::plans
