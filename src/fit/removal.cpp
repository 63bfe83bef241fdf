#include "fit/removal.h"

#include "geometry/limits.h"
#include "geometry/sweep.h"

#include <algorithm>
#include <deque>
#include <map>

namespace baywright::fit {

using geometry::Bounds;
using geometry::Movement;
using geometry::Vec3;

namespace {

constexpr int most_groups = 64;

Groups bit(int group) {
  return Groups{1} << group;
}

}  // namespace

Removal::Removal(const Host& host, const build::Build& build)
    : host_(host), group_(static_cast<std::size_t>(host.scene.element_count()), -1) {
  const auto fill = [this](int first, int count, int group) {
    for (int i = first; i < first + count; ++i) group_[static_cast<std::size_t>(i)] = group;
  };
  std::map<int, int> by_root;
  for (std::size_t i = 0; i < build.parts.size(); ++i) {
    const int root = build::comes_out_with(build, static_cast<int>(i));
    if (root < 0) continue;
    const auto [at, fresh] = by_root.try_emplace(root, static_cast<int>(names_.size()));
    if (at->second >= most_groups) continue;
    if (fresh) names_.push_back(build.parts[static_cast<std::size_t>(root)].name);
    fill(host.parts[i].first, host.parts[i].count, at->second);
  }
  // A board takes its sockets along.
  for (std::size_t i = 0; i < build.places.size(); ++i) {
    const auto at = by_root.find(build::comes_out_with(build, build.places[i].part));
    if (at == by_root.end() || at->second >= most_groups) continue;
    const HostPlace& place = host.places[i];
    if (place.socket >= 0) fill(place.socket, place.count, at->second);
    for (const auto& [size, element] : place.soldered) fill(element, 1, at->second);
  }
  for (std::size_t i = 0; i < build.places.size(); ++i) {
    if (build.places[i].holds < 0 || static_cast<int>(names_.size()) >= most_groups) continue;
    fill(host.held[i].first, host.held[i].second, static_cast<int>(names_.size()));
    names_.push_back(build.held[static_cast<std::size_t>(build.places[i].holds)].name);
  }
  hindrances_.resize(names_.size());
}

Groups Removal::all() const {
  return names_.size() >= most_groups ? ~Groups{0} : bit(static_cast<int>(names_.size())) - 1;
}

const std::vector<Groups>& Removal::hindrances(int group) const {
  auto& known = hindrances_[static_cast<std::size_t>(group)];
  if (known) return *known;
  Bounds all = Bounds::empty();
  for (const Element& element : host_.scene.elements) all.add(element.bounds);
  const double far = glm::length(all.high - all.low) + 1.0;
  std::vector<Groups> free;   // axes that only removable parts block
  std::vector<Groups> other;  // axes that what stays blocks too
  std::vector<int> near;
  for (int axis = 0; axis < 3; ++axis)
    for (const double sense : {1.0, -1.0}) {
      Movement movement;
      movement.shift[axis] = sense * far;
      Groups blocking = 0;
      bool stays = false;
      for (int a = 0; a < host_.scene.element_count(); ++a) {
        if (group_of(a) != group) continue;
        const Element& moving = host_.scene.element(a);
        host_.tree.near(geometry::swept(moving.bounds, movement), 0.0, near);
        for (const int b : near) {
          const int its = group_of(b);
          if (its == group || (its < 0 && stays) || (its >= 0 && (blocking & bit(its)) != 0)) continue;
          const auto met =
              geometry::closest(moving.placed, host_.scene.element(b).placed, movement, -geometry::slide_mm);
          if (!met.met || met.t == 0.0) continue;  // what runs into it where it stands is no matter of its way
          if (its < 0)
            stays = true;
          else
            blocking |= bit(its);
        }
      }
      (stays ? other : free).push_back(blocking);
    }
  known = free.empty() ? other : free;
  return *known;
}

std::optional<Removal::Order> Removal::shortest(const std::vector<Groups>& wanted) const {
  const auto reached = [&wanted](Groups out) -> std::optional<std::size_t> {
    for (std::size_t i = 0; i < wanted.size(); ++i)
      if ((wanted[i] & ~out) == 0) return i;
    return std::nullopt;
  };
  struct Taken {
    Groups before;
    int group;
  };
  std::map<Groups, Taken> seen = {{0, {0, -1}}};
  std::deque<Groups> waiting = {0};
  while (!waiting.empty()) {
    const Groups out = waiting.front();
    waiting.pop_front();
    if (const auto found = reached(out)) {
      Order order{{}, *found};
      for (Groups at = out; at != 0; at = seen[at].before) order.groups.push_back(seen[at].group);
      std::reverse(order.groups.begin(), order.groups.end());
      return order;
    }
    for (int group = 0; group < static_cast<int>(names_.size()); ++group) {
      if ((out & bit(group)) != 0 || seen.contains(out | bit(group))) continue;
      const auto& ways = hindrances(group);
      if (std::none_of(ways.begin(), ways.end(), [out](Groups blocking) { return (blocking & ~out) == 0; })) continue;
      seen[out | bit(group)] = {out, group};
      // Past the limit only one branch is followed: deeper first, so that it ends.
      if (seen.size() > most_sets) {
        waiting.clear();
        waiting.push_back(out | bit(group));
        break;
      }
      waiting.push_back(out | bit(group));
    }
  }
  return std::nullopt;
}

}  // namespace baywright::fit
