#pragma once
// What can be printed or cut for a build: spacers, shims, stand-offs for an insert, its flat parts, guides to drill by,
// brackets and adapter plates for cased drives.
#include "build/build.h"
#include "geometry/solid.h"
#include "plans/printed_hole.h"
#include "standards/drives.h"
#include "standards/general_tolerances.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace baywright::plans {

/// A sheet that is an L: its foot lies on a panel, its upright stands against a drive's side. mm.
struct Bent {
  double radius = 0.0;     // inside
  double foot = 0.0;       // leg, from the outer face of the other one
  double upright = 0.0;    // likewise
  double allowance = 0.0;  // of flat sheet that goes into the bend: the middle between both
  double least_allowance = 0.0;
  double most_allowance = 0.0;
  double raised = 0.0;     // the drive's base over the panel
  double foot_hole = 0.0;  // middles of the foot's holes from the upright's outer face

  /// How much of the foot is flat: in the blank the bend begins there.
  [[nodiscard]] double flat_foot(double thickness) const { return foot - thickness - radius; }
};

/// Figures that say a length, sunk into a face that carries nothing. mm.
struct Mark {
  std::string text;              // "8.0"
  std::vector<Outline> strokes;  // seen from above
  double depth = 0.0;
  bool through = false;  // the strokes are as deep as what they are in is high
  // A round part has it on a tab beside itself, along +x about y = 0; zero without one.
  double tab_end = 0.0;  // its far end
  double tab_width = 0.0;
  double tab_height = 0.0;  // no more than the part's
};

/// Flat on the print bed, z up, mm. A guide and a part with a place's holes are seen from the face with the drives,
/// from its lower left corner.
struct Printable {
  enum class Kind { spacer, shim, standoff, plate, guide, bracket, adapter };
  Kind kind = Kind::spacer;
  std::string name;      // "spacer M3", "guide for hand drilled", of a plate its part's
  double outside = 0.0;  // round ones about the origin: diameter; else 0
  Outline outline;       // of the others; of a bent one the flat blank, x along the bend, y from the foot's end
  std::vector<Outline> openings;  // of a plate, as its outline has them: nothing is allowed on these
  std::vector<PrintedHole> holes;
  double height = 0.0;  // of a bent one its thickness
  std::optional<Bent> bent;
  std::optional<Mark> mark;
  std::optional<tolerance::Dimension> needed;  // a spacer or shim for a place: the height that the build counts on
  std::vector<std::array<Vec2, 2>> bends;      // of a plate: the lines along which it is bent, flat
  bool bend_between = false;  // of a guide: a bend of the panel lies between a datum edge and its holes
  const standards::drives::Family* drive = nullptr;  // a bracket or adapter: what it carries
  std::string insert;  // a bracket or adapter: thread of its heat-set inserts; empty: none
  std::string uncut;   // why it cannot be cut from a sheet, in words; empty: it can
  const standards::general_tolerances::Process* process = nullptr;
};

using Made = std::variant<Printable, std::string>;  // or why not, in words

/// `asked`: a part of the build by its name (one box or prism, no board), "guide PLACE", "spacer PLACE", "shim PLACE",
/// or "spacer THREAD LENGTH" and so with "shim" and "stand-off", the length as in a build file, without limits. Spacers
/// are 1 to 100 mm long, shims 0.1 to 3, stand-offs as long as their insert or more, to 100; "bracket ..." and "adapter
/// ..." as bracket.h and adapter_plate.h say. Refused, in words: a name that is nothing of these (with what can be
/// made), no such thread or insert, another length or one that is open or "?", holes that leave no wall.
[[nodiscard]] Made printable(const build::Build& build, const std::string& asked,
                             const standards::general_tolerances::Process& process);

/// The solid to print. A hole is a polygon round its circle, the outside one within it, each no farther from it than
/// `printed_chord_mm`: so no printed hole is smaller than drawn, and nothing is larger outside. One that is bent stands
/// on end. Refused as geometry::Solid::prism and geometry::Mesh::make do.
[[nodiscard]] std::variant<geometry::Solid, geometry::Refusal> printed(const Printable& part);

}  // namespace baywright::plans
