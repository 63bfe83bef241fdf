#pragma once
// One drive put at one place: the parts it brings, each with its pose, and what each dimension does to them.
#include "fit/scene.h"

#include <set>
#include <utility>

namespace baywright::fit {

/// A seating's own elements follow the host's, on which `scene` stands: the host must outlive it.
struct Seated {
  Scene scene;
  std::set<std::pair<int, int>> mates;  // pairs (low, high) whose contact is intended
  std::set<int>
      joint_host;  // host elements that the standard's own stack holds the card to: socket, stand-offs, carrier
  std::set<int> joint_drive;  // the card's elements in that stack
  Frame slot;                 // the slot's frame
  Frame card;                 // the card's frame: z = 0 on its component face
  double length = 0.0;        // leading edge to screw hole, mm
};

}  // namespace baywright::fit
