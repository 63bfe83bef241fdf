#pragma once
// Which round hole that a part has already is the one that a place wants: one rule for checks, templates and plans.
#include "build/build.h"
#include "build/part_face.h"
#include "geometry/solid.h"

#include <vector>

namespace baywright::build {

/// mm, in the flat coordinates of a part's face.
struct RoundHole {
  geometry::Vec2 at{0.0};
  double diameter = 0.0;
};

/// mm: what an outline's corners may be off their circle, and two holes off each other to be one.
constexpr double round_to = 0.05;

/// Of the part's largest body, then its openings, flat; the box round it, unless it is a plate that is seen along z.
[[nodiscard]] std::vector<geometry::Outline> outline_of(const parts::Part& part, const PartFace& face);

/// Those of its own, on its top and its back, and the openings of its outline that are round and none of these.
[[nodiscard]] std::vector<RoundHole> round_holes(const parts::Part& part, const PartFace& face);

/// The hole that an opening is, round to `round_to`; none: it is not round.
[[nodiscard]] std::optional<RoundHole> round_of(const geometry::Outline& opening);

/// Whether they are one hole, as far as an outline's corners say.
[[nodiscard]] bool same_hole(const RoundHole& a, const RoundHole& b);

/// Fills in `Fixing::there` of every place: of the part's round holes within which the wanted hole's middle lies the
/// nearest, no more than 0.5 mm larger than asked for. A larger one is an opening, with no sheet for a screw's head.
void find_there(Build& build);

}  // namespace baywright::build
