#pragma once
// The screws that hold a cased drive, as a section through their axes shows them: sheet, spacer, shank and how deep it
// goes into the drive. The scene has their heads only, since a shank lies in holes that its solids do not have.
#include "output/page.h"
#include "output/views.h"

#include <optional>
#include <string>
#include <vector>

namespace baywright::output {

/// A screw in a section's coordinates, mm.
struct ShownScrew {
  Vec2 head{0.0};       // on its axis, where the head lies on the sheet
  Vec2 in{0.0};         // unit, from the head into the drive
  double high = 0.0;    // of the head
  double before = 0.0;  // from the head to where it enters the drive, as drawn
  double sheet = 0.0;   // of `before`, the sheet
  double deep = 0.0;    // in the drive; 0 where its length is not known
  double radius = 0.0;  // of its thread
  double hole = 0.0;    // radius of the sheet's hole
  bool stud = false;    // of a stand-off: it begins where the drive does

  [[nodiscard]] Vec2 entry() const { return head + in * before; }
  [[nodiscard]] Vec2 tip() const { return entry() + in * deep; }
};

/// Those whose axis lies in the view's plane. None where the drive is not screwed to a bay.
[[nodiscard]] std::vector<ShownScrew> screws_in(const Subject& s, const geometry::View& view);

void draw_screws(Group& group, const std::vector<ShownScrew>& screws, const Placement& placement);

/// What the gap that decides is between, in the section: of a screw its tip and the depth that is allowed or wanted, of
/// holes the screw and the edge of its hole; else as `spot_in`.
[[nodiscard]] Spot spot_of(const Subject& s, const geometry::View& view);

/// The screw that decides; none where something else does.
[[nodiscard]] std::optional<ShownScrew> deciding_screw(const Subject& s, const geometry::View& view);

/// How deep it goes in and how deep it may or has to, as dimensions to either side of it.
void draw_depths(const Subject& s, Group& group, const ShownScrew& screw, const Placement& placement);

}  // namespace baywright::output
