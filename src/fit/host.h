#pragma once
// A build compiled once: the machine without its drives, placed, with a tree over it. Immutable afterwards.
#include "build/build.h"
#include "fit/scene.h"
#include "geometry/tree.h"

#include <span>
#include <string>
#include <vector>

namespace baywright::fit {

struct HostSlot {
  Frame frame;  // origin on the board's face: seating plane crossed with the card's centre line; x across, y toward
                // the screw, z out of the board
  int standoff = -1;                          // index of the stand-off height's dimension; -1: not an M.2 socket
  double seat = 0.0;                          // z of the card's underside in the socket, mm
  int socket = -1;                            // element: the housing; `socket + 1` is the ledge under the card
  std::vector<std::pair<int, int>> soldered;  // size (2242) and element of stand-offs that are always there
};

struct HostPlace {
  Frame frame;
  int distance = -1;  // index of the dimension `by`, or -1
  int first = 0;      // elements [first, first + count)
  int count = 0;
};

struct Host {
  Scene scene;                   // the machine's elements
  std::vector<HostPlace> parts;  // one a part of the build
  std::vector<HostSlot> slots;   // one a slot of the build
  geometry::Tree tree;           // over the elements' swept bounds
};

/// `values` replace nominal ones by index of the dimension (as in `Host::scene.dimensions`); empty: nominal.
[[nodiscard]] Host compile(const build::Build& build, std::span<const double> values = {});

}  // namespace baywright::fit
