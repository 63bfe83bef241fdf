#include "geometry/sector.h"

#include <cmath>
#include <numbers>

namespace baywright::geometry {

namespace {

Vec2 on_circle(double radius, double angle) {
  return {radius * std::cos(angle), radius * std::sin(angle)};
}

}  // namespace

Piece hull(const Piece& ring, const Stretch& sector) {
  if (sector.whole()) return ring;
  const double middle = 0.5 * (sector.from + sector.to);
  Piece prism;
  prism.height = ring.height;
  prism.corners = {on_circle(ring.bore, sector.from), on_circle(ring.radius, sector.from),
                   on_circle(ring.radius / std::cos(0.5 * (sector.to - sector.from)), middle),
                   on_circle(ring.radius, sector.to), on_circle(ring.bore, sector.to)};
  return prism;
}

std::optional<Piece> core(const Piece& ring, const Stretch& sector) {
  if (sector.whole()) return ring;
  const double half = 0.5 * (sector.to - sector.from);
  const double inner = ring.bore / std::cos(half);
  if (!(inner < ring.radius * std::cos(half))) return std::nullopt;
  Piece prism;
  prism.height = ring.height;
  prism.corners = {on_circle(inner, sector.from), on_circle(ring.radius, sector.from),
                   on_circle(ring.radius, sector.to), on_circle(inner, sector.to)};
  return prism;
}

std::vector<Stretch> stretches(const Piece& piece) {
  if (piece.base != Piece::Base::ring) return {Stretch{}};
  constexpr int parts = 6;
  std::vector<Stretch> found;
  for (int i = 0; i < parts; ++i) {
    const double step = 2.0 * std::numbers::pi / parts;
    found.push_back({i * step, (i + 1) * step});
  }
  return found;
}

std::vector<Stretches> halved(const Stretches& pair) {
  const bool split_a = pair.b.whole() || pair.a.to - pair.a.from >= pair.b.to - pair.b.from;
  const Stretch& wide = split_a ? pair.a : pair.b;
  const double middle = 0.5 * (wide.from + wide.to);
  std::vector<Stretches> found;
  for (const Stretch& half : {Stretch{wide.from, middle}, Stretch{middle, wide.to}}) {
    found.push_back(split_a ? Stretches{half, pair.b} : Stretches{pair.a, half});
  }
  return found;
}

}  // namespace baywright::geometry
