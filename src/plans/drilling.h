#pragma once
// The holes of a panel as somebody drills them: where from its edges, how large, in which order, and whether all screws
// still enter with the error of the way they are made.
#include "build/build.h"
#include "geometry/solid.h"

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

namespace baywright::plans {

using geometry::Outline;
using geometry::Vec2;

/// mm from the part's lower left corner, x to the right and y up, looking at the face on which the drives are; on a
/// back face that is the part turned over. The left and the lower edge are the datum edges.
struct DrillHole {
  Vec2 at{0.0};
  std::string place;              // whose hole it is; of the part's own holes their name
  bool own = false;               // the part has it already: a pattern for what it will be fixed to
  bool there = false;             // of a place: the part's outline has that hole already; nobody drills it
  double there_wide = 0.0;        // mm: diameter of the hole that is there; of one that is not `there` it is a pilot
                                  // that is drilled up; 0: none
  double there_off = 0.0;         // mm: how far that one is from where the place has it
  tolerance::Dimension diameter;  // as asked for; of one that is there as it is
  std::string meets;              // the drive's hole behind it; empty: none of the build's drives has one there
  double edge = 0.0;              // mm, its centre to the nearest edge of the part
  double edge_asked = 0.0;        // by the rule of `edge_distance_in_diameters`; 0 of the part's own
  double web = 0.0;               // mm of sheet between it and the nearest other hole; infinite with one hole
  double web_asked = 0.0;         // by the rule of `web_in_thicknesses`; 0 of the part's own
  double bend = 0.0;              // mm from its edge to the nearest bend of the part; infinite without one
  double bend_asked = 0.0;        // by the rule of `bend_distance_in_thicknesses`; 0 of the part's own
};

/// What keeps the screw from passing the hole: a pan head, a washer under it. Unknown: no head of the thread is
/// published.
enum class Cover { head, washer, nothing, unknown };

/// One way of making the holes of a pattern.
struct Placing {
  std::string process;            // "hand drill"
  tolerance::Dimension position;  // of a hole, either axis
  double zone = 0.0;              // mm, diameter of the zone round its place in which a hole's axis lies
  double least_hole = 0.0;        // mm, asked for: with no smaller one all screws enter, whatever the limits do
  double drill = 0.0;             // mm: the next size in steps of 0.1
  Cover cover = Cover::unknown;   // over that hole, as large as the process may make it
  bool washer_under = false;      // that hole leaves a spacer or stand-off less than 1 mm of seat round it (practice)
  std::int64_t entered = 0;       // of the drillings drawn with the holes as asked for: those that take all screws
  std::int64_t drawn = 0;
};

/// The holes of one place.
struct Pattern {
  std::string place;
  std::string drive;  // whose holes they are held against; empty: no drive of the build has two holes there
  std::vector<std::string> drives;  // of the build, that have as many holes there, that one first
  std::string thread;               // of the screws; empty: none are spoken of
  tolerance::Dimension diameter;
  tolerance::Dimension sheet;
  std::optional<tolerance::Dimension> length;  // of the screw under its head, or of the stand-offs' studs
  enum class Stand { sheet, spacers, standoffs, other };
  Stand stand = Stand::sheet;                  // what the drive stands on
  std::optional<tolerance::Dimension> raised;  // by how much
  std::optional<tolerance::Dimension> placed;  // as the build says
  double zones_allowed = 0.0;                  // mm: of the holes at their least
  double drive_zone = 0.0;                     // mm, diameter: where the drive's own holes may be, and by how much the
                                               // two patterns differ
  Cover asked_cover = Cover::unknown;          // over the holes as asked for, where there are `placings`
  bool asked_under = false;                    // they leave what stands on the sheet too little seat, as washer_under
  std::vector<Placing> placings;               // the build's own way first, where it names one
  Outline drive_outline;                       // of the drive's length and width; empty: not known
  Vec2 connector{0.0};                         // middle of its connector end
};

struct Drilling {
  std::string part;
  Vec2 size{0.0};                // mm
  std::vector<Outline> outline;  // of the part's largest body, openings after it but those that are `there`; the box
                                 // round it, unless it is a plate that is seen along z
  std::vector<std::array<Vec2, 2>> bends;  // their middle lines
  bool bend_from_a = false;  // one of them lies between the left edge and a hole: flat, that edge is no place to
  bool bend_from_b = false;  // measure from once it is bent; likewise of the lower edge
  std::vector<DrillHole> holes;
  std::vector<Pattern> patterns;
  std::vector<std::size_t> order;  // holes in the order of drilling: small ones first, then the shortest way on; none
                                   // that the part has already, unless it has no others
};

/// The holes of a place, or of a part: those of all its places, and its own. Neither named: of the one part that has
/// panels. Refused, in words: no such part, no holes, holes in walls that no part describes, holes on several faces, a
/// hole off its part or in an opening of it that is no such hole, a part of less than 10 mm in either direction.
/// Without `ways` the patterns have no `placings`, which are most of the work: for a frame of a drag.
[[nodiscard]] std::variant<Drilling, std::string> drilling(const build::Build& build, const std::string& place,
                                                           const std::string& part, bool ways = true);

/// Hole less screw, mm (ASME Y14.5, from memory: no text of the standard was at hand). Fixed fastener, the thread in
/// one of the two parts: the diameters of both parts' position zones together may be so much. Floating fastener,
/// clearance holes in both: each part's may.
[[nodiscard]] double zones_allowed(double least_hole, double largest_screw);

/// Whether a rigid pattern of screws can be pushed and turned so that each enters its hole. `at`: where they should be,
/// `off`: how far each hole is off its screw, `play`: half of hole less screw; lists of one length, mm; turns are
/// small. Yes and no are both certain; a no may also be a case that 200 steps did not settle.
[[nodiscard]] bool all_enter(std::span<const Vec2> at, std::span<const Vec2> off, std::span<const double> play);

/// A sheet's share of a panel that is larger than it, mm.
struct Tile {
  Vec2 low{0.0};
  Vec2 high{0.0};
  int column = 0;
  int row = 0;
};
/// A round thing that should be whole on a tile.
struct Kept {
  Vec2 at{0.0};
  double radius = 0.0;
};
/// As few tiles no larger than `room` as there can be, each overlapping the next by `overlap`, from the lower left on
/// by rows. Where there is room to choose, neither a tile's edge nor the middle of an overlap cuts anything that is
/// kept. Wants `room` larger than `overlap`.
[[nodiscard]] std::vector<Tile> tiles(const Vec2& size, const Vec2& room, double overlap,
                                      const std::vector<Kept>& kept);

}  // namespace baywright::plans
