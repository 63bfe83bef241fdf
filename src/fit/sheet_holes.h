#pragma once
// The holes of a part as its sheet has them: which are there already, and how much sheet is left round each.
#include "build/part_face.h"
#include "geometry/solid.h"

#include <cstddef>
#include <limits>
#include <optional>
#include <string>
#include <vector>

namespace baywright::fit {

/// mm, in the flat coordinates of the part's face.
struct SheetHole {
  geometry::Vec2 at{0.0};
  double diameter = 0.0;  // as asked for
  double there = 0.0;  // diameter of the part's hole there, at the same middle, that is this one or its pilot; 0: none
  bool own = false;    // the part has it, and nobody drills it
  std::size_t given = 0;  // its place in the list that was laid out

  // As laid out:
  enum class On { sheet, opening, nothing };
  On on = On::sheet;                                      // where its middle lies
  double edge = std::numeric_limits<double>::infinity();  // from its middle to the nearest edge, openings included
  geometry::Vec2 edge_at{0.0};                            // there
  double web = std::numeric_limits<double>::infinity();   // of sheet to the nearest other hole; below 0 they overlap
  std::size_t other = 0;                                  // that one, in HoleSheet::holes
  double bend = std::numeric_limits<double>::infinity();  // from its edge to the nearest bend; below 0 it runs into it
  geometry::Vec2 bend_at{0.0};                            // the bend's point nearest to it
  std::optional<double> inside{};                         // of that bend, as parts::Bend
};

struct HoleSheet {
  std::vector<geometry::Outline> outline;  // of the part's largest body, then its openings but those that are holes;
                                           // the box round it, unless it is a plate that is seen along z
  std::vector<parts::Bend> bends;          // flat too
  std::vector<SheetHole> holes;            // those given but for the part's own that are a place's
};

/// Lays holes on a face of a part; those that are its `own` come last. A round hole of the outline that is one of them
/// is no opening. Two holes at the same place are one.
[[nodiscard]] HoleSheet lay_out(const parts::Part& part, const build::PartFace& face, std::vector<SheetHole> holes);

/// The part's own holes, which are on its top and its back.
[[nodiscard]] std::vector<SheetHole> own_holes(const parts::Part& part, const build::PartFace& face);

// How much sheet is asked for, mm; common practice.
[[nodiscard]] double edge_asked(double diameter);                                        // from the middle to an edge
[[nodiscard]] double web_asked(double thickness);                                        // between two holes
[[nodiscard]] double bend_asked(double thickness, const std::optional<double>& inside);  // from its edge to a bend

}  // namespace baywright::fit
