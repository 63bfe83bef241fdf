#pragma once
// Which way a seating is looked at, so that the gap that decides is seen square on.
#include "build/build.h"
#include "fit/finding.h"
#include "fit/seated.h"
#include "geometry/section.h"
#include "output/dimension_line.h"
#include "output/projection.h"

#include <optional>
#include <string>
#include <vector>

namespace baywright::output {

/// How a drive stands at its place, on which the views depend: cards and cased drives that lie on the face, add-in
/// cards (with what they carry) and drives that stand up from it.
enum class Stance { m2, mini, card, flat, on_edge };
[[nodiscard]] Stance stance_of(const build::Place& place);
[[nodiscard]] bool upright(Stance stance);

/// A section through the drive and what is near it.
struct SectionView {
  geometry::View view;
  Window window;      // the drive, its socket, and the parts near them
  std::string title;  // "Section along the card, on its centre line"
  bool along = true;  // to the right is away from the connector; else the drive is cut across
};

/// The view beside or below the section.
struct OuterView {
  geometry::View view;
  Window window;
  std::string title;    // "Plan on the card"
  bool beside = false;  // an elevation, level with the section; else a plan
  bool heights = true;  // the section gets heights; else the elevation has the one that matters
};

/// Where the gap that decides lies in a section: the faces that it is between, in view coordinates.
struct Spot {
  Vec2 on_drive{0.0};
  Vec2 on_other{0.0};
  Vec2 along{0.0};       // unit, from the drive's part to the other
  bool in_plane = true;  // false: the gap is not seen square on, and `along` is where it points in the section
  std::vector<geometry::Region> overlap;  // the areas that the two cuts share; empty where they share none
};

/// Of what lies flat: along it, on its centre line where that shows the gap, else through the place where it is, or
/// across where the gap is to a side. What stands up is cut across, with its neighbours, unless the gap is along it. A
/// screw is cut through its axis. `finding` may be null.
[[nodiscard]] SectionView section_view(const fit::Seated& seated, Stance stance, const fit::Finding* finding);

/// From above, to the right away from the connector; for what stands up and is cut across an elevation on its component
/// side, unless `holes` in the face that carries it are to be shown.
[[nodiscard]] OuterView outer_view(const fit::Seated& seated, Stance stance, const SectionView& section, bool holes);

/// The drive and its socket, with `margin` mm round them.
[[nodiscard]] Window window_round(const fit::Seated& seated, const geometry::View& view, double margin);

[[nodiscard]] Spot spot_in(const fit::Seated& seated, const fit::Finding& finding, const geometry::View& view);

/// Elements of the scene that are the solid a finding is about, or others of its kind on the same part: fin 1, fin 2.
[[nodiscard]] std::vector<int> alike(const fit::Scene& scene, const std::string& part, const std::string& body);

/// The heights of what the section cuts that dimensions with a name decide: of the drive's parts and of its stand-off,
/// and the distances of host parts. Levels are placed on paper.
[[nodiscard]] std::vector<Height> heights_in(const fit::Seated& seated, Stance stance, const std::string& drive,
                                             const fit::Finding* finding, const SectionView& section,
                                             const std::vector<Seen>& seen, const Placement& placement);

/// The figures of a length of some solids along a world direction: those of the dimension that makes it so long, else
/// the length itself to a hundredth.
[[nodiscard]] std::string figures_of(const fit::Scene& scene, const std::vector<int>& elements,
                                     const geometry::Vec3& along, double length);

/// "away from the board" and the like: a world direction as seen from the place.
[[nodiscard]] std::string direction_in_slot(const fit::Seated& seated, Stance stance, const geometry::Vec3& direction);

}  // namespace baywright::output
