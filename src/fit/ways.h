#pragma once
// The straight ways by which people take a drive out of its place. Put in, it goes backward.
#include "build/build.h"
#include "fit/seated.h"
#include "geometry/sweep.h"

#include <string>
#include <vector>

namespace baywright::fit {

struct Way {
  enum class Kind {
    tilted,    // turned up about its edge in the socket, drawn out at that angle, then away
    searched,  // the same with several angles and depths, found by search
    up,        // away from the face that carries the place
    along,     // away from the connector
    back,      // toward the connector's side
    left,      // sideways, as seen from the connector end
    right,
    bare_first,  // without what it wears, which goes on afterward from above
  };
  Kind kind = Kind::up;
  double angle = 0.0;                    // degrees; tilted: at which it leaves the socket
  std::vector<geometry::Movement> legs;  // one after the other, from the seat until it is clear of the machine
  std::string through;  // the bay's own wall that has to be open for it: "end", "rear", "roof"; or empty
};

[[nodiscard]] std::string word(Way::Kind kind);  // "tilted", "along": facts of findings

/// Of an M.2 or mini card's turning up: where, about what, how far along itself until it is free of the socket.
struct Pivot {
  geometry::Vec3 edge{0.0};    // world: on the card's leading edge, underneath
  geometry::Vec3 across{0.0};  // unit: turning about it lifts the screw end
  geometry::Vec3 along{0.0};   // unit: toward the screw, in the seated card's plane
  double depth = 0.0;          // mm
};
[[nodiscard]] Pivot pivot_of(const Seated& seated);

/// Ways to try, the plain one of that kind of place first. `far`: mm, enough to leave the machine.
[[nodiscard]] std::vector<Way> ways_out(const Seated& seated, const build::Place& place, double far);

/// Directions in which what is free of its connector may leave, the usual one first; unit, world.
[[nodiscard]] std::vector<geometry::Vec3> exits(const Seated& seated, const build::Place& place);

}  // namespace baywright::fit
