#include "render/apart.h"

#include "geometry/limits.h"
#include "geometry/sweep.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <map>

namespace baywright::render {

using geometry::Bounds;
using geometry::Vec3;

namespace {

Vec3 middle(const Bounds& box) {
  return 0.5 * (box.low + box.high);
}

double extent(const Bounds& box, const Vec3& along) {
  return glm::dot(glm::abs(along), box.high - box.low);
}

/// Things that go together: those of one part, and a socket with the part that carries it.
std::string group_of(const Thing& thing) {
  constexpr std::string_view socket = " socket";
  return thing.drive && thing.part.ends_with(socket) ? thing.part.substr(0, thing.part.size() - socket.size())
                                                     : thing.part;
}

struct Group {
  std::string name;
  Bounds box = Bounds::empty();
  std::vector<Thing*> things;
};

std::vector<Group> groups(Model& model, const std::function<bool(const Thing&)>& wanted) {
  std::vector<Group> out;
  for (Thing& thing : model.things) {
    if (!wanted(thing)) continue;
    const std::string name = group_of(thing);
    auto found = std::find_if(out.begin(), out.end(), [&](const Group& group) { return group.name == name; });
    if (found == out.end()) found = out.insert(out.end(), {name, Bounds::empty(), {}});
    found->box.add(thing.bounds);
    found->things.push_back(&thing);
  }
  return out;
}

/// The direction of the longest leg of the drive's way out; out of the place's face where no way is known.
Vec3 way_of(const Model& model) {
  Vec3 longest{0.0};
  for (const geometry::Movement& movement : model.way_in)
    if (glm::length(movement.shift) > glm::length(longest)) longest = movement.shift;
  const double length = glm::length(longest);
  return length > 0.0 ? longest / length : model.place.turn[2];
}

/// Which way a part of the machine comes out: the first of the place's outward direction, the others along the world's
/// axes, on which nothing that stays is in its way.
Vec3 way_out_of(const Model& model, const Group& group, double far) {
  std::vector<Vec3> ways{model.place.turn[2]};
  for (int axis = 2; axis >= 0; --axis)
    for (const double sign : {1.0, -1.0}) {
      Vec3 way(0.0);
      way[axis] = sign;
      if (glm::dot(way, ways.front()) < 0.99) ways.push_back(way);
    }
  const auto free = [&](const Vec3& way) {
    geometry::Movement movement;
    movement.shift = far * way;
    for (const Thing* moving : group.things)
      for (const Thing& other : model.things) {
        if (other.drive || other.out_first) continue;
        if (swept(moving->bounds, movement).distance(other.bounds) > 0.0) continue;
        if (!geometry::stays_clear(geometry::box_about(moving->placed), other.placed, movement, 0.0)) return false;
      }
    return true;
  };
  const auto found = std::find_if(ways.begin(), ways.end(), free);
  return found == ways.end() ? ways.front() : *found;
}

}  // namespace

void take_apart(Model& model, const fit::Seated& seated, const fit::Seating& seating) {
  std::vector<Group> own = groups(model, [](const Thing& thing) { return thing.drive && !thing.late; });
  if (own.empty()) return;
  Bounds drive = Bounds::empty();
  for (const Group& group : own) drive.add(group.box);
  const double step = std::clamp(0.12 * glm::length(drive.high - drive.low), 6.0, 20.0);  // mm
  const Vec3 way = way_of(model);
  const Vec3 out = model.place.turn[2];
  const Vec3 up = seated.card.pose.turn[2];  // of the drive itself, which an adapter may stand on its edge
  const double along =
      std::abs(glm::dot(way, out)) > 0.7 ? 2.0 * step : std::max(2.0 * step, extent(drive, way) + step);

  std::sort(own.begin(), own.end(),
            [&](const Group& a, const Group& b) { return glm::dot(middle(a.box) - middle(b.box), up) < 0.0; });
  double order = 0.0;
  for (const Group& group : own) {
    for (Thing* thing : group.things) thing->apart = along * way + order * step * up;
    ++order;
  }
  for (Thing& thing : model.things) {
    if (!thing.drive || !thing.late) continue;
    const auto screw = std::find_if(seated.screws.begin(), seated.screws.end(),
                                    [&](const fit::SeatedScrew& each) { return each.element == thing.element; });
    const bool plug = thing.body == "plug";
    if (screw != seated.screws.end())
      thing.apart = (2.0 * step + std::max(0.0, along * glm::dot(way, screw->axis))) * screw->axis;
    else if (thing.material == Material::screw && thing.body == "head")
      thing.apart = (2.0 * step + std::max(0.0, along * glm::dot(way, out))) * out;
    else
      thing.apart = plug ? -step * model.place.turn[1] : step * out;
  }
  std::vector<Group> parts = groups(model, [](const Thing& thing) { return thing.out_first; });
  const double far = 2.0 * glm::length(model.bounds.high - model.bounds.low);
  for (Group& group : parts) {
    const Vec3 direction = way_out_of(model, group, std::min(far, geometry::largest_mm));
    double beyond = 0.0;  // what of the drive goes that way too
    for (const Thing& thing : model.things)
      if (thing.drive) beyond = std::max(beyond, glm::dot(thing.apart, direction));
    const auto place = std::find(seating.out_first.begin(), seating.out_first.end(), group.name);
    const auto after = static_cast<double>(seating.out_first.end() - place);  // those that come out later lie nearer
    // Beside the drive it has to pass its full height.
    const bool beside =
        group.box.distance(drive) > 0.0 && glm::dot(middle(group.box) - middle(drive), direction) <= 0.0;
    const double clear = beside ? extent(group.box, direction) : 0.0;
    for (Thing* thing : group.things) thing->apart = (beyond + after * step + clear) * direction;
  }
}

}  // namespace baywright::render
