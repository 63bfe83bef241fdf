#pragma once
// The face that carries the chosen place as a flat plan: its holes and stand-offs, what each is called in the build
// file, and the edits that move them. No toolkit.
#include "build/edit.h"
#include "plans/drilling.h"
#include "viewer/answers.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace baywright::viewer {

using geometry::Vec2;

/// Something that stands on the plan. Positions are mm from the part's left and lower edge, as on the drill template.
struct HoleMark {
  enum class Kind {
    hole,      // of a place's `fixing`
    standoff,  // of an M.2 slot: does not move but with its place
    own,       // the part has it for itself: does not move
    place,     // where a place is: its connector end on its centre line. Moves all that the place has
  };
  Kind kind = Kind::hole;
  Vec2 at{0.0};
  double diameter = 0.0;  // mm; 0 of a place
  int number = 0;         // as on the template, from 1; 0 of a place
  std::string place;      // whose; of the part's own holes their name
  bool chosen = false;    // of the place that the window shows
  std::size_t index = 0;  // of a hole: in `fixing.holes`; of a stand-off: in the slot's sizes
  std::string name;       // "hole 3", "stand-off 2280", "hand drilled"
  bool there = false;     // of a hole: the part's drawing or outline has it already, so nobody drills it
  std::string held{};     // why it does not move, in words; empty: it does

  [[nodiscard]] bool moves() const { return held.empty(); }
};

struct HolePlan {
  std::string part;
  Vec2 size{0.0};
  std::vector<geometry::Outline> outline;   // of the part's face, holes among them
  geometry::Pose pose;                      // of the flat coordinates in the world; z out of the face
  geometry::Bounds bounds;                  // what is to be seen of it, world: the face with room about it
  std::vector<HoleMark> marks;              // places first, then holes by number
  std::optional<plans::Drilling> drilling;  // all holes of the part, or of the place alone where others lie elsewhere
  std::string refused;                      // why there is no template, in words; empty: there is one
  bool whole_part = false;                  // the holes of all places on that face are there, not only the chosen one's
};

/// Whether a place stands on a face of a part with holes or stand-offs that a plan can show.
[[nodiscard]] bool has_hole_plan(const build::Build& build, const std::string& place);

/// Of the place that is shown; none: as above. `moving`: for a frame of a drag, without the ways of drilling.
[[nodiscard]] std::optional<HolePlan> hole_plan(const Shown& shown, bool moving = false);

/// The edits that bring a mark there, rounded to a thousandth; empty of one that does not move. `text` and `build` are
/// those of the build file before any of them.
[[nodiscard]] std::vector<build::Edit> moved(const build::Build& build, std::string_view text, const HoleMark& mark,
                                             const Vec2& to);

}  // namespace baywright::viewer
