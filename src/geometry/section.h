#pragma once
// Exact cuts and shadows of solids, for every picture and drawing. Curves become polygons within `drawn_chord_mm`.
#include "geometry/solid.h"

#include <utility>
#include <vector>

namespace baywright::geometry {

/// A plane with coordinates: `right` and `up` are unit vectors square to each other, `point` is their origin. The
/// plane's normal is right x up, toward the viewer.
struct View {
  Vec3 point{0.0};
  Vec3 right{1.0, 0.0, 0.0};
  Vec3 up{0.0, 1.0, 0.0};

  [[nodiscard]] Vec3 normal() const { return glm::cross(right, up); }
  [[nodiscard]] Vec2 flat(const Vec3& p) const { return {glm::dot(p - point, right), glm::dot(p - point, up)}; }
  [[nodiscard]] double depth(const Vec3& p) const { return glm::dot(p - point, normal()); }  // toward the viewer
};

/// An area in view coordinates, mm: outline counter-clockwise, holes clockwise.
struct Region {
  Outline outline;
  std::vector<Outline> holes;
};

[[nodiscard]] double area(const Region& region);  // mm²

/// The cut of the solid by the view's plane. A face that lies in the plane counts as cut when the solid is behind the
/// plane (on the far side of the viewer); a plane that only touches an edge, a corner or a round side cuts nothing. A
/// mesh without an inside has none: see `cut_lines`.
[[nodiscard]] std::vector<Region> section(const Placed& placed, const View& view);

/// Where the plane cuts the surface of a mesh without an inside, a line a triangle; none of any other solid.
[[nodiscard]] std::vector<std::pair<Vec2, Vec2>> cut_lines(const Placed& placed, const View& view);

/// The solid as seen along the view's normal from far away. Exact along the extrusion axis and square to it, and for
/// convex solids; else, and for a mesh, put together on a grid of `thinnest_mm`.
[[nodiscard]] std::vector<Region> shadow(const Placed& placed, const View& view);

/// The part that two convex outlines share; empty where they share no area.
[[nodiscard]] Outline common(const Outline& a, const Outline& b);

}  // namespace baywright::geometry
