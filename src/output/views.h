#pragma once
// Which way a seating is looked at, so that the gap that decides is seen square on.
#include "fit/finding.h"
#include "fit/seated.h"
#include "geometry/section.h"
#include "output/dimension_line.h"
#include "output/projection.h"

#include <optional>
#include <string>
#include <vector>

namespace baywright::output {

/// A section through the drive and what is near it.
struct SectionView {
  geometry::View view;
  Window window;      // the drive, its socket, and the parts near them
  std::string title;  // "Section along the card, on its centre line"
  bool along = true;  // to the right is toward the screw; else the card is cut across
};

/// Where the gap that decides lies in a section: the faces that it is between, in view coordinates.
struct Spot {
  Vec2 on_drive{0.0};
  Vec2 on_other{0.0};
  Vec2 along{0.0};               // unit, from the drive's part to the other
  bool in_plane = true;          // false: the gap is not seen square on, and `along` is where it points in the section
  std::vector<Outline> overlap;  // the areas that the two cuts share; empty where they share none
};

/// The card's plane, on its centre line where that shows the gap, else through the place where it is. `finding` may be
/// null.
[[nodiscard]] SectionView section_view(const fit::Seated& seated, const fit::Finding* finding);

/// Seen from above the card's component face, to the right toward the screw.
[[nodiscard]] geometry::View plan_view(const fit::Seated& seated);

/// The drive and its socket, with `margin` mm round them.
[[nodiscard]] Window window_round(const fit::Seated& seated, const geometry::View& view, double margin);

[[nodiscard]] Spot spot_in(const fit::Seated& seated, const fit::Finding& finding, const geometry::View& view);

/// Elements of the scene that are the solid a finding is about, or others of its kind on the same part: fin 1, fin 2.
[[nodiscard]] std::vector<int> alike(const fit::Scene& scene, const std::string& part, const std::string& body);

/// The heights of what the section cuts that dimensions with a name decide: of the drive's parts and of its stand-off,
/// and the distances of host parts. Levels are placed on paper.
[[nodiscard]] std::vector<Height> heights_in(const fit::Seated& seated, const std::string& drive,
                                             const fit::Finding* finding, const SectionView& section,
                                             const std::vector<Seen>& seen, const Placement& placement);

/// The figures of a length of some solids along a world direction: those of the dimension that makes it so long, else
/// the length itself to a hundredth.
[[nodiscard]] std::string figures_of(const fit::Scene& scene, const std::vector<int>& elements,
                                     const geometry::Vec3& along, double length);

/// "away from the board" and the like: a world direction as seen from the slot.
[[nodiscard]] std::string direction_in_slot(const fit::Seated& seated, const geometry::Vec3& direction);

}  // namespace baywright::output
