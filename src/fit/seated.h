#pragma once
// One drive put at one place: the parts it brings, each with its pose, and what each dimension does to them.
#include "fit/scene.h"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace baywright::fit {

/// A screw of the seating: where a driver has to come.
struct SeatedScrew {
  geometry::Vec3 head{0.0};  // world, mm: the middle of the head's outer face
  geometry::Vec3 axis{0.0};  // unit, out of the head: the driver comes from there
  std::string thread;        // "M2"
  double across = 0.0;       // mm, of the head
  double length = 0.0;       // mm, under the head: how far out it stands when it is started; 0 where it is not known
  int element = -1;          // the head
};

/// A seating's own elements follow the host's, on which `scene` stands: the host must outlive it.
struct Seated {
  Scene scene;
  std::set<std::pair<int, int>> mates{};  // pairs (low, high) whose contact is intended
  std::set<int> joint_host{};  // elements that the standard's own stack holds the drive to: socket, stand-offs, carrier
  std::set<int> joint_drive{};   // the drive's elements in that stack
  std::map<int, int> machine{};  // own elements that belong to the machine (a bay's walls, a slot's cover), with the
                                 // dimension that sets their distance, or -1
  Frame slot{};                  // the place's frame: x across, y along the drive from its connector, z out of the face
  Frame card{};                  // the drive's frame; an M.2 card: z = 0 on its component face
  std::vector<std::string> meets{};  // by hole of a bay or panel: the drive's hole behind it; empty: none
  std::set<int> fixed_after{};  // own elements that do not come in with the drive: stand-offs, screws, a cable's plug
  std::vector<SeatedScrew> screws{};
  double length = 0.0;  // mm, along y: an M.2 card's leading edge to its screw hole; else to the drive's far end

  /// Whether an element is the drive's own, with all that it wears and brings.
  [[nodiscard]] bool brings(int element) const {
    return element >= scene.first_element() && !machine.contains(element);
  }
  void mate(int a, int b) {
    if (a >= 0 && b >= 0 && a != b) mates.insert(std::minmax(a, b));
  }
};

}  // namespace baywright::fit
