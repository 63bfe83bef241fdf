#pragma once
// Measuring between two things that were pointed at: faces, edges, holes. World coordinates, mm. No toolkit.
#include "geometry/solid.h"

#include <array>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace baywright::viewer {

using geometry::Vec3;

/// A line of sight: points `from` + t `along` (unit) with t of `nearest` or more are before the eye.
struct Sight {
  Vec3 from{0.0};
  Vec3 along{0.0, 0.0, -1.0};
  double nearest = 0.0;
};

/// A hole that a part has and that its solid does not show.
struct HoleAxis {
  Vec3 at{0.0};    // on the face
  Vec3 axis{0.0};  // unit, out of the face
  double diameter = 0.0;
};

struct Picked {
  enum class Kind {
    face,   // flat
    round,  // the side of a bar
    edge,   // straight
    hole,   // a hole's, a bore's or a round edge's axis, with its diameter
  };
  Kind kind = Kind::face;
  int element = -1;                          // for the caller
  Vec3 at{0.0};                              // where it was met; of a hole on its axis
  Vec3 way{0.0};                             // unit. Face: outward normal; edge: along it; else: the axis
  double diameter = 0.0;                     // round, hole
  double length = 0.0;                       // edge
  std::vector<std::array<Vec3, 2>> outline;  // to draw
  /// What distances are measured to. A face is a sheet of 2e-6 mm behind it, an edge or an axis a rod as thin.
  geometry::Placed shape;
};

/// What of the solid a line of sight meets first. Edges and round edges within `reach` mm (>= 0) of where it does are
/// preferred to the face that they bound, `holes` too, inside them as well. None: it misses the solid.
[[nodiscard]] std::optional<Picked> pick(const geometry::Placed& solid, const Sight& sight, double reach,
                                         std::span<const HoleAxis> holes = {});

struct Measurement {
  double distance = 0.0;  // the closest; 0 where they touch or cross
  Vec3 from{0.0};         // the closest points
  Vec3 to{0.0};
  Vec3 along{0.0};              // `to` less `from`, sizes along the world's axes
  std::optional<double> angle;  // degrees, 0..90, between planes, lines, or a line and a plane; none with a round side
  struct Gap {
    double mm = 0.0;  // along the normal of the first that is a flat face, from its plane to the nearest of the other
    bool behind = false;   // the other lies behind that face
    bool crosses = false;  // the other lies on both sides: `mm` is 0
    Vec3 normal{0.0};
  };
  std::optional<Gap> gap;  // none: neither is a flat face
};
[[nodiscard]] Measurement measured(const Picked& first, const Picked& second);

/// "flat face", "hole of 3.4", "edge, 80 long": what was picked.
[[nodiscard]] std::string words_of(const Picked& picked);
/// What was measured, a line each, the closest distance first: "9.10 mm apart", "x 0.00, y 0.00, z 9.10", "parallel",
/// "9.10 before the first face, along its normal".
[[nodiscard]] std::vector<std::string> words_of(const Measurement& measurement, const Picked& first,
                                                const Picked& second);

}  // namespace baywright::viewer
