#include "render/exchange.h"

#include "output/mark.h"
#include "render/glass.h"
#include "render/look.h"
#include "render/palette.h"
#include "render/picture.h"
#include "render/put_in.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <glm/gtc/quaternion.hpp>
#include <utility>

namespace baywright::render {

using geometry::Bounds;
using geometry::Pose;
using geometry::Vec3;
using output::Keyframe;
using output::Paint;
using output::Scene3d;
using output::SceneNode;

namespace {

constexpr double aspect = 1.5;       // of the views, as output/gltf.h has it
constexpr double off_way_mm = 0.05;  // between two keyframes, nothing is seen farther from where it should be
constexpr double least_step = 1.0 / 2048;

Vec3 wide(const std::array<float, 3>& p) {
  return {static_cast<double>(p[0]), static_cast<double>(p[1]), static_cast<double>(p[2])};
}

std::array<float, 3> narrow(const Vec3& p) {
  return {static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(p.z)};
}

/// As readers of glTF go from one keyframe to the next: the middle straight, the turn even.
Pose between(const Pose& a, const Pose& b, double share, const Vec3& middle) {
  const Pose turn{glm::mat3_cast(glm::slerp(glm::quat_cast(a.turn), glm::quat_cast(b.turn), share)), Vec3(0.0)};
  return {turn.turn, glm::mix(a.point(middle), b.point(middle), share) - turn.turn * middle};
}

/// Moments at which a motion has to be known so that what lies between them follows.
class Sampler {
 public:
  Sampler(std::function<Pose(double)> pose_at, const Bounds& box) : pose_at_(std::move(pose_at)), box_(box) {}

  std::vector<Keyframe> keyframes() {
    keys_.push_back({0.0, pose_at_(0.0)});
    add_up_to({1.0, pose_at_(1.0)});
    const bool moves =
        std::any_of(keys_.begin(), keys_.end(), [&](const Keyframe& key) { return apart(key.pose, Pose{}) > 0.0; });
    return moves ? std::move(keys_) : std::vector<Keyframe>{};
  }

 private:
  /// How far the box's corners are from each other in two poses, at most.
  [[nodiscard]] double apart(const Pose& a, const Pose& b) const {
    double out = 0.0;
    for (int i = 0; i < 8; ++i) out = std::max(out, glm::distance(a.point(box_.corner(i)), b.point(box_.corner(i))));
    return out;
  }

  void add_up_to(const Keyframe& last) {
    const Keyframe first = keys_.back();
    const Vec3 middle = 0.5 * (box_.low + box_.high);
    double off = 0.0;
    for (const double share : {0.25, 0.5, 0.75})
      off = std::max(
          off, apart(pose_at_(first.at + share * (last.at - first.at)), between(first.pose, last.pose, share, middle)));
    if (off > off_way_mm && last.at - first.at > least_step) {
      const double half = 0.5 * (first.at + last.at);
      add_up_to({half, pose_at_(half)});
      add_up_to(last);
    } else {
      keys_.push_back(last);
    }
  }

  std::function<Pose(double)> pose_at_;
  Bounds box_;
  std::vector<Keyframe> keys_;
};

class Maker {
 public:
  Maker(const Model& model, const Camera& camera)
      : model_(model),
        frame_{model.place.turn, 0.5 * (model.drive.low + model.drive.high)},
        to_local_(frame_.inverse()),
        glass_(hiding(model, camera)) {}

  [[nodiscard]] SceneNode node(const Thing& thing) const {
    SceneNode out;
    out.name = thing.body.empty() || thing.body == thing.part ? thing.part : thing.part + ", " + thing.body;
    add_surface(out, *thing.shape.mesh);
    add_edges(out, *thing.shape.edges);
    const auto paint = [](const auto& colour_in) { return Paint{hex(colour_in(false)), hex(colour_in(true))}; };
    out.paint = paint([&](bool dark) { return colour_of(thing.material, dark); });
    out.edge_paint =
        paint([&](bool dark) { return colour_of(thing.drive ? palette(dark).drive_edge : palette(dark).edge); });
    out.glass = glass_.contains(thing.part);
    out.closed = thing.placed.solid.mesh() == nullptr || thing.placed.solid.mesh()->closed();
    out.drive = thing.drive;
    out.apart = keyframes(thing, [&](double share) { return stands_at(model_, thing, share, 1.0); });
    out.put_in = keyframes(thing, [&](double share) { return stands_at(model_, thing, 0.0, share); });
    return out;
  }

  [[nodiscard]] SceneNode node(const Overlap& overlap, const std::string& name) const {
    SceneNode out;
    out.name = name;
    add_surface(out, *overlap.mesh);
    add_edges(out, *overlap.edges);
    out.paint = out.edge_paint = {output::colour(overlap.verdict), output::colour(overlap.verdict, true)};
    out.clash = true;
    return out;
  }

  [[nodiscard]] Vec3 local(const Vec3& world) const { return to_local_.point(world); }
  [[nodiscard]] Vec3 local_direction(const Vec3& world) const { return to_local_.direction(world); }

 private:
  void add_surface(SceneNode& out, const Mesh& mesh) const {
    for (const auto& p : mesh.at) out.at.push_back(narrow(local(wide(p))));
    for (const auto& n : mesh.normal) out.normal.push_back(narrow(local_direction(wide(n))));
  }

  void add_edges(SceneNode& out, const Strokes& strokes) const {
    constexpr std::array<float, 3> always{};
    for (std::size_t i = 0; i + 1 < strokes.at.size(); i += 2) {
      if (!strokes.faces.empty() && (strokes.faces[i] != always || strokes.faces[i + 1] != always)) continue;
      for (const std::size_t end : {i, i + 1}) out.edges.push_back(narrow(local(wide(strokes.at[end]))));
    }
  }

  [[nodiscard]] std::vector<Keyframe> keyframes(const Thing& thing, const std::function<Pose(double)>& in_world) const {
    Bounds box = Bounds::empty();
    for (int i = 0; i < 8; ++i) box.add(local(thing.bounds.corner(i)));
    return Sampler([&](double share) { return to_local_.after(in_world(share)).after(frame_); }, box).keyframes();
  }

  const Model& model_;
  Pose frame_;  // of the scene, in the world
  Pose to_local_;
  std::set<std::string> glass_;
};

}  // namespace

output::Scene3d exchange(const Model& model, const fit::Seating& seating, std::string title) {
  const Camera camera = look_at(model, seating, {}, aspect).camera;
  const Maker maker(model, camera);
  Scene3d out;
  out.title = std::move(title);
  for (const Thing& thing : model.things) out.nodes.push_back(maker.node(thing));
  for (const Overlap& overlap : model.overlaps) {
    const auto& between = seating.findings[overlap.finding].between;
    out.nodes.push_back(maker.node(overlap, between[0] + " in " + between[1]));
  }

  out.toward = maker.local_direction(camera.toward);
  const auto view = [&](const Camera& of) { return Scene3d::View{maker.local(of.target), of.height}; };
  Wish apart;
  apart.apart = true;
  out.rest = view(camera);
  out.apart = view(look_at(model, seating, apart, aspect).camera);
  out.put_in = view(facing(Side::whole, model.place, grown(model.drive, model, 0.0, 0.0), aspect));
  out.put_in.height = std::max(out.put_in.height, out.rest.height);

  if (!seating.deciding) return out;  // no gap decides: nothing is to be shown by a cut
  const geometry::View cut = cut_through(model, seating, std::nullopt);
  const Vec3 normal = glm::abs(maker.local_direction(cut.normal()));
  const int axis = normal.x > normal.y && normal.x > normal.z ? 0 : normal.y > normal.z ? 1 : 2;
  out.cut = {axis, maker.local(cut.point)[axis]};
  return out;
}

}  // namespace baywright::render
