#pragma once
// A solid: a flat base in the local plane z = 0, extruded along +z - boxes, prisms (simple outline with holes, convex
// or not), solid and hollow cylinders are all of this one form - or a mesh.
#include "geometry/mesh.h"
#include "geometry/vectors.h"

#include <memory>
#include <span>
#include <string>
#include <variant>
#include <vector>

namespace baywright::geometry {

/// Why something is not a solid, in plain words, with the figures: "the outline crosses itself near (3.0, 4.5)".
struct Refusal {
  std::string reason;
};

using Outline = std::vector<Vec2>;  // a closed polygon, mm, last point joined to the first, either sense

/// A convex part of a solid, in the solid's own coordinates: what distance and overlap are measured on.
struct Piece {
  enum class Base { polygon, disc, ring };
  Base base = Base::polygon;
  std::vector<Vec2> corners;  // polygon: convex, counter-clockwise, at least 3, no three on a line; else empty
  double radius = 0.0;        // disc and ring: outer radius, centred on the local z axis, mm; else 0
  double bore = 0.0;    // ring: inner radius, 0 < bore < radius; else 0. A ring is the one piece that is not convex
  double height = 0.0;  // from z = 0 to z = height, mm, > 0
};

/// Immutable. Copies are cheap (shared data).
class Solid {
 public:
  /// A box with one corner at the origin, its edges along +x, +y, +z. Sizes in mm.
  /// Refused: a size that is not a finite number, below `thinnest_mm` (so zero and negative) or above `largest_mm`.
  [[nodiscard]] static std::variant<Solid, Refusal> box(const Vec3& size);

  /// `outline` with `holes` cut out, extruded from z = 0 to `height`. Either sense of rotation is accepted, a repeated
  /// closing point too. Refused: fewer than three corners, no area, a side shorter than `thinnest_mm`, an outline that
  /// crosses or touches itself, a hole that crosses, touches or leaves the outline or another hole, figures that are
  /// not finite or beyond `largest_mm`, a height as for `box`.
  [[nodiscard]] static std::variant<Solid, Refusal> prism(Outline outline, std::vector<Outline> holes, double height);

  /// A cylinder about the local z axis from z = 0 to `height`; `bore` 0 makes it solid. Diameters in mm.
  /// Refused: sizes as for `box`, a bore that is negative or leaves a wall thinner than `thinnest_mm`.
  [[nodiscard]] static std::variant<Solid, Refusal> cylinder(double diameter, double bore, double height);

  /// A mesh as it is. One that is not closed is only a surface: see `Bound::surface`.
  [[nodiscard]] static Solid mesh(Mesh mesh);

  /// Convex pieces whose union is the solid and whose insides do not meet. At least one; none for a mesh.
  [[nodiscard]] std::span<const Piece> pieces() const;

  /// The mesh that it is; null for every other solid.
  [[nodiscard]] const Mesh* mesh() const;

  /// The base as it was given, counter-clockwise, holes clockwise; for a cylinder or a mesh empty.
  [[nodiscard]] const Outline& outline() const;
  [[nodiscard]] const std::vector<Outline>& holes() const;
  [[nodiscard]] double diameter() const;  // 0 for a prism or box
  [[nodiscard]] double bore() const;      // 0 unless hollow
  [[nodiscard]] double height() const;    // 0 for a mesh
  [[nodiscard]] bool convex() const;      // one piece, and that no ring; false for a mesh
  [[nodiscard]] double volume() const;    // mm³, exact to rounding

 private:
  struct Data;
  explicit Solid(std::shared_ptr<const Data> data) : data_(std::move(data)) {}
  std::shared_ptr<const Data> data_;
};

/// A solid where it stands in the world.
struct Placed {
  Solid solid;
  Pose pose;
};

/// The tightest axis-aligned box in world coordinates (exact for discs, not the box of a turned box).
[[nodiscard]] Bounds bounds(const Placed& placed);
[[nodiscard]] Bounds bounds(const Piece& piece, const Pose& pose);

/// The farthest point of the piece along the world direction `toward` (any length but zero). For a face or an edge at
/// right angles to it, some point of it; the same one for the same input. A ring counts as its outer disc.
[[nodiscard]] Vec3 farthest(const Piece& piece, const Pose& pose, const Vec3& toward);

/// Unit outward normals of the flat faces in world coordinates: base, top, then the sides in the order of `corners`.
[[nodiscard]] std::vector<Vec3> face_normals(const Piece& piece, const Pose& pose);

}  // namespace baywright::geometry
