#pragma once
// A build compiled once: the machine without its drives, placed, with a tree over it. Immutable afterwards.
#include "build/build.h"
#include "fit/scene.h"
#include "geometry/tree.h"

#include <span>
#include <string>
#include <vector>

namespace baywright::fit {

struct HostPlace {
  Frame frame;  // origin on the board's face: seating plane crossed with the card's centre line; x across, y toward
                // the screw, z out of the board
  int standoff = -1;  // index of the stand-off height's dimension; -1: neither an M.2 nor a mini card socket
  double seat = 0.0;  // z of the card's underside in the socket, mm
  int socket = -1;    // element: the housing; an M.2 socket's ledge under the card follows
  int count = 0;      // elements of the socket, from `socket` on
  std::vector<std::pair<int, int>> soldered;  // size (2242) and element of stand-offs that are always there
};

struct PlacedPart {
  Frame frame;
  int distance = -1;  // index of the dimension `by`, or -1
  int first = 0;      // elements [first, first + count)
  int count = 0;
};

struct Host {
  Scene scene;                    // the machine's elements
  std::vector<PlacedPart> parts;  // one a part of the build
  std::vector<HostPlace> places;  // one a place of the build
  std::vector<std::pair<int, int>> held;  // one a place: first element and count of what sits there already
  geometry::Tree tree;            // over the elements' swept bounds
};

/// An M.2 socket with its seating plane at the origin of `frame`.
[[nodiscard]] HostPlace put_m2_socket(Scene& scene, const Frame& frame, const standards::m2::SocketClass& height_class,
                                      const tolerance::Dimension& standoff, const std::string& name);

/// What sits at places already (`Place::holds`) is part of the machine. `values` replace nominal ones by index of the
/// dimension (as in `Host::scene.dimensions`); empty: nominal.
[[nodiscard]] Host compile(const build::Build& build, std::span<const double> values = {});

}  // namespace baywright::fit
