#pragma once
// What can be printed or cut for a build: spacers, shims, stand-offs for an insert, its flat parts, guides to drill by.
#include "build/build.h"
#include "geometry/solid.h"
#include "standards/general_tolerances.h"

#include <string>
#include <variant>
#include <vector>

namespace baywright::plans {

using geometry::Outline;
using geometry::Vec2;

struct PrintedHole {
  Vec2 at{0.0};
  double asked = 0.0;  // mm, diameter
  double drawn = 0.0;  // mm: with what the way of printing shrinks holes by; never below `asked`
};

/// Flat on the print bed, z up, mm. A guide and a part with a place's holes are seen from the face with the drives,
/// from its lower left corner.
struct Printable {
  enum class Kind { spacer, shim, standoff, plate, guide };
  Kind kind = Kind::spacer;
  std::string name;               // "spacer M3", "guide for hand drilled", of a plate its part's
  double outside = 0.0;           // round ones about the origin: diameter; else 0
  Outline outline;                // of the others
  std::vector<Outline> openings;  // of a plate, as its outline has them: nothing is allowed on these
  std::vector<PrintedHole> holes;
  double height = 0.0;
  std::optional<tolerance::Dimension> needed;  // a spacer or shim for a place: the height that the build counts on
  const standards::general_tolerances::Process* process = nullptr;
};

/// `asked`: a part of the build by its name (one box or prism, no board), "guide PLACE", "spacer PLACE", "shim PLACE",
/// or "spacer THREAD LENGTH" and so with "shim" and "stand-off", the length as in a build file, without limits. Spacers
/// are 1 to 100 mm long, shims 0.1 to 3, stand-offs as long as their insert or more, to 100. Refused, in words: a name
/// that is nothing of these (with what can be made), no such thread or insert, another length or one that is open or
/// "?", holes that leave no wall.
[[nodiscard]] std::variant<Printable, std::string> printable(const build::Build& build, const std::string& asked,
                                                             const standards::general_tolerances::Process& process);

/// The solid to print. A hole is a polygon round its circle, the outside one within it, each no farther from it than
/// `printed_chord_mm`: so no printed hole is smaller than drawn, and nothing is larger outside. Refused as
/// geometry::Solid::prism does.
inline constexpr double printed_chord_mm = 0.02;
[[nodiscard]] std::variant<geometry::Solid, geometry::Refusal> printed(const Printable& part);

/// Whether it can be cut from a sheet: a shim, a plate, a guide.
[[nodiscard]] bool flat(const Printable& part);

}  // namespace baywright::plans
