// A model as a scene to exchange, against the model itself.
#include "render/exchange.h"

#include "render/put_in.h"
#include "support/check_mm.h"
#include "support/shown_build.h"

#include <cmath>
#include <doctest/doctest.h>
#include <glm/gtc/quaternion.hpp>

using namespace baywright;
using geometry::Pose;
using geometry::Vec3;

namespace {

/// Where a reader of glTF 2.0 (appendix C: linear, spherical linear) has a node at a moment.
Pose shown_at(const std::vector<output::Keyframe>& keys, double moment, const Vec3& middle) {
  std::size_t next = 1;
  while (next + 1 < keys.size() && keys[next].at < moment) ++next;
  const output::Keyframe& a = keys[next - 1];
  const output::Keyframe& b = keys[next];
  const double share = (moment - a.at) / (b.at - a.at);
  const glm::dmat3 turn = glm::mat3_cast(glm::slerp(glm::quat_cast(a.pose.turn), glm::quat_cast(b.pose.turn), share));
  return {turn, glm::mix(a.pose.point(middle), b.pose.point(middle), share) - turn * middle};
}

Vec3 wide(const std::array<float, 3>& p) {
  return {static_cast<double>(p[0]), static_cast<double>(p[1]), static_cast<double>(p[2])};
}

double enclosed(const std::vector<std::array<float, 3>>& at) {
  double out = 0.0;
  for (std::size_t i = 0; i + 2 < at.size(); i += 3)
    out += glm::dot(wide(at[i]), glm::cross(wide(at[i + 1]), wide(at[i + 2]))) / 6.0;
  return out;
}

}  // namespace

TEST_CASE("things of a scene to exchange go where pictures have them, at every moment") {
  const auto shown = test::shown_build("thin-desktop", "card with flat spreader");
  const render::Model model = render::model_of(shown->build, shown->seated, shown->seating);
  const output::Scene3d scene = render::exchange(model, shown->seating, "title");
  CHECK(scene.title == "title");
  REQUIRE(scene.nodes.size() == model.things.size());  // it fits: nothing is shared
  const Pose frame{model.place.turn, 0.5 * (model.drive.low + model.drive.high)};
  int moving = 0;
  int turning = 0;
  for (std::size_t i = 0; i < scene.nodes.size(); ++i) {
    const render::Thing& thing = model.things[i];
    const output::SceneNode& node = scene.nodes[i];
    CHECK(node.drive == thing.drive);
    CHECK(node.closed);
    geometry::Bounds box = geometry::Bounds::empty();
    for (std::size_t k = 0; k < node.at.size(); ++k) {
      const Vec3 at = wide(node.at[k]);
      box.add(at);
      if (k % 7 == 0) test::check_mm(glm::distance(frame.point(at), wide(thing.shape.mesh->at[k])), 0.0, 1e-4);
    }
    const Vec3 middle = 0.5 * (box.low + box.high);
    for (const bool apart : {true, false}) {
      const std::vector<output::Keyframe>& keys = apart ? node.apart : node.put_in;
      const auto truly = [&](double moment) {
        return apart ? render::stands_at(model, thing, moment, 1.0) : render::stands_at(model, thing, 0.0, moment);
      };
      moving += keys.empty() ? 0 : 1;
      if (keys.empty()) CHECK(truly(0.5).shift == Vec3(0.0));
      for (int step = 0; step <= 1000 && !keys.empty(); step += 7) {
        const double moment = step / 1000.0;
        const Pose got = shown_at(keys, moment, middle);
        const Pose want = truly(moment);
        if (want.turn != geometry::Mat3(1.0)) ++turning;
        for (int corner = 0; corner < 8; ++corner) {
          const Vec3 p = box.corner(corner);
          test::check_mm(glm::distance(frame.point(got.point(p)), want.point(frame.point(p))), 0.0, 0.1);
        }
      }
    }
  }
  CHECK(moving > 8);
  CHECK(turning > 100);  // an M.2 card comes in turned: the hard case is met
}

TEST_CASE("what two things both take up is a node of its own, closed, in the colour of its verdict") {
  const auto shown = test::shown_build("thin-desktop", "card with tall fins");
  REQUIRE(shown->seating.verdict == fit::Verdict::does_not_fit);
  const render::Model model = render::model_of(shown->build, shown->seated, shown->seating);
  REQUIRE(!model.overlaps.empty());
  const output::Scene3d scene = render::exchange(model, shown->seating, "");
  REQUIRE(scene.nodes.size() == model.things.size() + model.overlaps.size());
  const output::SceneNode& node = scene.nodes[model.things.size()];
  CHECK(node.clash);
  CHECK(node.name.find(" in ") != std::string::npos);
  CHECK(node.paint.light != node.paint.dark);
  CHECK(std::abs(enclosed(node.at) - model.overlaps.front().volume) < 0.01 * model.overlaps.front().volume);
  CHECK(std::any_of(scene.nodes.begin(), scene.nodes.end(), [](const auto& each) { return each.glass; }));  // the tray
  // The plane that shows why goes through what is shared.
  REQUIRE(scene.cut);
  geometry::Bounds box = geometry::Bounds::empty();
  for (std::size_t i = model.things.size(); i < scene.nodes.size(); ++i)
    for (const auto& p : scene.nodes[i].at) box.add(wide(p));
  CHECK(box.low[scene.cut->axis] < scene.cut->at);
  CHECK(scene.cut->at < box.high[scene.cut->axis]);
  fit::Seating undecided = shown->seating;
  undecided.deciding.reset();
  CHECK(!render::exchange(model, undecided, "").cut);
}

TEST_CASE("edges of a scene to exchange are those that are seen from everywhere") {
  const auto shown = test::shown_build("thin-desktop", "card with flat spreader");
  const render::Model model = render::model_of(shown->build, shown->seated, shown->seating);
  const output::Scene3d scene = render::exchange(model, shown->seating, "");
  int round = 0;
  for (std::size_t i = 0; i < scene.nodes.size(); ++i) {
    if (!(model.things[i].placed.solid.diameter() > 0.0)) continue;
    ++round;
    // Two rims and, where it has a bore, two more; no line along its side.
    for (std::size_t k = 0; k + 1 < scene.nodes[i].edges.size(); k += 2)
      CHECK(glm::distance(wide(scene.nodes[i].edges[k]), wide(scene.nodes[i].edges[k + 1])) <
            0.3 * model.things[i].placed.solid.diameter());
    CHECK(!scene.nodes[i].edges.empty());
  }
  CHECK(round > 0);
}
