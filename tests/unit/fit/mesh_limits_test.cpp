// A box as a mesh must have the limits that it has as a solid; those are held against brute force in limits_test.cpp.
// Fixed seeds; every outcome is counted.
#include "build/build.h"
#include "fit/check.h"
#include "fit/limits.h"
#include "fit/mesh_notes.h"
#include "fit/seat.h"
#include "geometry/gap.h"
#include "support/check_mm.h"
#include "support/random_turn.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <doctest/doctest.h>
#include <fstream>
#include <limits>
#include <map>
#include <sstream>

using namespace baywright;
using geometry::Mesh;
using geometry::Vec3;
using test::check_mm;
using test::Random;
using test::uniform;

namespace {

/// The surface of a box from the origin, each face in a grid of so many squares, each of two triangles.
Mesh box_mesh(const Vec3& size, int squares, bool without_lid = false) {
  std::vector<Vec3> vertices;
  std::vector<Mesh::Triangle> triangles;
  for (int axis = 0; axis < 3; ++axis)
    for (const bool high : {false, true}) {
      if (without_lid && axis == 2 && high) continue;
      const int u = (axis + 1) % 3;
      const int v = (axis + 2) % 3;
      const auto corner = [&](int i, int j) {
        Vec3 p(0.0);
        p[u] = size[u] * i / squares;
        p[v] = size[v] * j / squares;
        p[axis] = high ? size[axis] : 0.0;
        vertices.push_back(p);
        return static_cast<int>(vertices.size()) - 1;
      };
      for (int i = 0; i < squares; ++i)
        for (int j = 0; j < squares; ++j) {
          const int a = corner(i, j);
          const int b = corner(i + 1, j);
          const int c = corner(i + 1, j + 1);
          const int d = corner(i, j + 1);
          triangles.push_back(high ? Mesh::Triangle{a, b, c} : Mesh::Triangle{a, c, b});
          triangles.push_back(high ? Mesh::Triangle{a, c, d} : Mesh::Triangle{a, d, c});
        }
    }
  auto made = Mesh::make(std::move(vertices), std::move(triangles));
  REQUIRE(std::holds_alternative<Mesh>(made));
  return std::get<Mesh>(made);
}

parts::Part box_part(const Vec3& size, int squares, bool without_lid = false) {
  parts::Part part;
  part.bodies.push_back(parts::box_body("box", {0.0, 0.0, 0.0}, {size.x, size.y, size.z}));
  if (squares > 0) {
    part.bodies[0].form = parts::Body::Form::mesh;
    part.bodies[0].mesh = box_mesh(size, squares, without_lid);
  }
  return part;
}

/// Two boxes whose second hangs on three lengths: one shifts it, two turn it a little as well.
struct Chain {
  Vec3 size_a{0.0};
  Vec3 size_b{0.0};
  geometry::Pose pose_b{};
  std::array<tolerance::Dimension, 3> dimensions{};
  std::array<Vec3, 3> shifts{};
  std::array<Vec3, 3> rates{};
  Vec3 pivot{0.0};

  /// `squares` 0: as a solid.
  [[nodiscard]] fit::GapLimits limits(int squares_a, int squares_b, tolerance::Method method) const {
    fit::Scene scene;
    fit::Frame frame;
    for (std::size_t i = 0; i < 3; ++i)
      frame.motions.push_back(fit::rigid(scene.add(dimensions[i]), shifts[i], rates[i], pivot));
    fit::put(scene, {}, box_part(size_a, squares_a), 0, "a");
    frame.pose = pose_b;
    fit::put(scene, frame, box_part(size_b, squares_b), 0, "b");
    return fit::limits(scene, scene.element(0), scene.element(1), method);
  }

  /// The gap of the solids with the lengths at these ends of their limits, truly turned.
  [[nodiscard]] double gap_at(unsigned ends) const {
    geometry::Pose pose = pose_b;
    for (std::size_t i = 0; i < 3; ++i) {
      const double by = (ends >> i & 1u) != 0 ? dimensions[i].plus : -dimensions[i].minus;
      const double angle = glm::length(rates[i]) * by;
      const geometry::Mat3 turn =
          angle == 0.0 ? geometry::Mat3(1.0)
                       : geometry::rotation(glm::normalize(rates[i]), angle * 180.0 / 3.14159265358979323846);
      pose.shift = pivot + turn * (pose.shift - pivot) + shifts[i] * by;
      pose.turn = turn * pose.turn;
    }
    const auto a = std::get<geometry::Solid>(geometry::Solid::box(size_a));
    const auto b = std::get<geometry::Solid>(geometry::Solid::box(size_b));
    return geometry::gap({a, {}}, {b, pose}).mm;
  }
};

enum class Meeting { face_to_face, overlapping, diagonal };

Chain any_chain(Random& random, Meeting meeting, bool tilted) {
  Chain chain;
  for (int axis = 0; axis < 3; ++axis) {
    chain.size_a[axis] = uniform(random, 20.0, 60.0);
    chain.size_b[axis] = uniform(random, 20.0, 60.0);
  }
  const int along = static_cast<int>(random() % 3);
  const double gap = meeting == Meeting::overlapping ? uniform(random, -3.0, -0.2) : uniform(random, 0.2, 3.0);
  Vec3 at(0.0);
  for (int axis = 0; axis < 3; ++axis) {
    // Across, the two share at least 8 mm, so that the gap is the one along; diagonally they share none.
    at[axis] = axis == along || (meeting == Meeting::diagonal && axis == (along + 1) % 3)
                   ? chain.size_a[axis] + gap
                   : uniform(random, 8.0 - chain.size_b[axis], chain.size_a[axis] - 8.0);
  }
  chain.pose_b.shift = at;
  if (tilted) {
    Vec3 axis(0.0);
    axis[(along + 1 + static_cast<int>(random() % 2)) % 3] = 1.0;
    chain.pose_b.turn = geometry::rotation(axis, uniform(random, -0.3, 0.3));
  }
  chain.pivot = at + Vec3(uniform(random, -40.0, 40.0), uniform(random, -40.0, 40.0), uniform(random, -40.0, 40.0));
  for (std::size_t i = 0; i < 3; ++i) {
    tolerance::Dimension& d = chain.dimensions[i];
    d.name = "length";
    d.nominal = 10.0;
    d.minus = uniform(random, 0.0, 0.2);
    d.plus = uniform(random, 0.0, 0.2);
    for (int axis = 0; axis < 3; ++axis) {
      chain.shifts[i][axis] = uniform(random, -1.0, 1.0);
      if (i > 0) chain.rates[i][axis] = uniform(random, -0.01, 0.01);
    }
  }
  return chain;
}

constexpr std::array<std::array<int, 2>, 4> as_meshes = {{{1, 0}, {0, 2}, {3, 2}, {6, 0}}};

void check_alike(Meeting meeting, unsigned seed) {
  Random random(seed);
  int deciding = 0;  // limits differ from the nominal gap by more than a tenth
  for (int round = 0; round < 60; ++round) {
    const Chain chain = any_chain(random, meeting, false);
    for (const tolerance::Method method : {tolerance::Method::worst, tolerance::Method::rss}) {
      const fit::GapLimits solid = chain.limits(0, 0, method);
      for (const auto& [squares_a, squares_b] : as_meshes) {
        CAPTURE(round);
        CAPTURE(squares_a);
        CAPTURE(squares_b);
        const fit::GapLimits mesh = chain.limits(squares_a, squares_b, method);
        check_mm(mesh.nominal, solid.nominal, 1e-6);
        check_mm(mesh.min, solid.min, 1e-6);
        // The largest gap is bounded by the points that face each other. Finer faces have more, and triangles that
        // are passed over may hold a corner of the other box that bounds it closer.
        CHECK(mesh.max <= solid.max + 0.01);
        if (method == tolerance::Method::worst) CHECK(mesh.max >= solid.nominal - 1e-6);
        CHECK(!mesh.surface);
        deciding += solid.nominal - solid.min > 0.1 ? 1 : 0;
      }
    }
  }
  CHECK(deciding > 200);
}

}  // namespace

TEST_CASE("a box as a mesh has the limits of the solid: face to face") {
  check_alike(Meeting::face_to_face, 31);
}

TEST_CASE("a box as a mesh has the limits of the solid: overlapping") {
  check_alike(Meeting::overlapping, 33);
}

namespace {

/// Where no two faces are parallel the triangles of one box are measured along several directions and the solid along
/// one: every one gives a sure figure, but not the same. So these are held against brute force: every end of every
/// length, truly turned. `sharp`: how far the least may be from what the solid's would be.
void check_sure(Meeting meeting, bool tilted, double sharp, unsigned seed) {
  Random random(seed);
  constexpr double second_order = 2e-3;  // mm: 60 mm turned by 0.004, squared, and the product of two such turns
  int alike = 0;
  for (int round = 0; round < 60; ++round) {
    const Chain chain = any_chain(random, meeting, tilted);
    double least = std::numeric_limits<double>::infinity();
    double most = -least;
    for (unsigned ends = 0; ends < 8; ++ends) {
      least = std::min(least, chain.gap_at(ends));
      most = std::max(most, chain.gap_at(ends));
    }
    const fit::GapLimits solid = chain.limits(0, 0, tolerance::Method::worst);
    for (const auto& [squares_a, squares_b] : as_meshes) {
      const fit::GapLimits mesh = chain.limits(squares_a, squares_b, tolerance::Method::worst);
      CHECK(mesh.min <= least + second_order);
      CHECK(mesh.max >= most - second_order);
      CHECK(mesh.min >= solid.min - sharp);
      alike += std::abs(mesh.min - solid.min) <= 1e-6 ? 1 : 0;
    }
  }
  CHECK(alike > 100);  // of 240
}

}  // namespace

TEST_CASE("a tilted box as a mesh has limits that no values within them break") {
  // Tilted by 0.3 degrees at the most: 0.005 of the way that two lengths shift it across.
  check_sure(Meeting::face_to_face, true, 0.02, 32);
}

TEST_CASE("a box as a mesh that passes diagonally has limits that no values within them break") {
  check_sure(Meeting::diagonal, false, 0.02, 34);
  check_sure(Meeting::diagonal, true, 0.02, 35);
}

// A tray 30 below a lid-less box of 40 x 30 x 20: nothing tells whether a block in the box's box is inside of it.
TEST_CASE("what stands in the box of a surface without an inside is undecided, what stands beside it is not") {
  const auto limits_at = [](const Vec3& at) {
    fit::Scene scene;
    fit::put(scene, {}, box_part({40, 30, 20}, 2, true), 0, "shell");
    fit::Frame frame;
    frame.pose.shift = at;
    fit::put(scene, frame, box_part({10, 10, 10}, 0), 0, "block");
    return fit::limits(scene, scene.element(0), scene.element(1), tolerance::Method::worst);
  };
  const fit::GapLimits within = limits_at({15, 10, 5});
  CHECK(within.surface);
  check_mm(within.nominal, 5.0, 1e-9);  // to the floor; the walls are 10 and more away
  const fit::GapLimits beside = limits_at({42, 10, 5});
  CHECK(!beside.surface);
  check_mm(beside.nominal, 2.0, 1e-9);
  const fit::GapLimits through = limits_at({35, 10, 5});
  CHECK(through.nominal < 0.0);  // it runs through the wall, whatever is inside
}

namespace {

std::string demo_text() {
  std::ifstream in(std::string(BAYWRIGHT_SOURCE) + "/models/builds/mesh-heatsink.build.toml");
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

fit::Check checked(const std::string& text, tolerance::Method method) {
  auto got = build::read_text(text, std::string(BAYWRIGHT_SOURCE) + "/models/builds/in-a-test.build.toml");
  if (const auto* fault = std::get_if<parts::Fault>(&got)) FAIL(fault->text());
  fit::Options options;
  options.method = method;
  return fit::check(std::get<build::Build>(got), options);
}

const fit::Finding* with_tray(const fit::Seating& seating) {
  for (const fit::Finding& finding : seating.findings)
    if (finding.gap && finding.between[1] == "tray" && finding.between[0] != seating.drive) return &finding;
  return nullptr;
}

}  // namespace

TEST_CASE("the demo's pin heatsink meets the tray as a block of its size does: clear, marginal and too deep") {
  const std::string demo = demo_text();
  std::map<fit::Verdict, int> verdicts;
  for (const char* distance : {"10.4 ±0.2", "10.1 ±0.2", "9.4 ±0.2", "9.0 ±0.2"})
    for (const tolerance::Method method : {tolerance::Method::worst, tolerance::Method::rss}) {
      CAPTURE(distance);
      std::string text = demo;
      text.replace(text.find("10.4 ±0.2"), std::string("10.4 ±0.2").size(), distance);
      const fit::Check got = checked(text, method);
      REQUIRE(got.seatings.size() == 2);
      const fit::Finding* pins = with_tray(got.seatings[0]);
      const fit::Finding* block = with_tray(got.seatings[1]);
      REQUIRE(pins != nullptr);
      REQUIRE(block != nullptr);
      check_mm(pins->gap->nominal, block->gap->nominal, 1e-6);
      // The outermost pins stand 0.475 from the block's sides (half a cell of 2.75 less the radius 0.9), 0.5 from its
      // ends (2.8), and the card tilts by 0.03 in 80 at the most.
      CHECK(pins->gap->min >= block->gap->min - 1e-9);
      check_mm(pins->gap->min, block->gap->min, 1e-3);
      check_mm(pins->gap->max, block->gap->max, 1e-3);
      CHECK(*pins->verdict == *block->verdict);
      ++verdicts[*pins->verdict];
      CHECK(got.notes.empty());  // its unit and axis are said, its surface is closed
    }
  CHECK(verdicts[fit::Verdict::fits] > 0);
  CHECK(verdicts[fit::Verdict::marginal] > 0);
  CHECK(verdicts[fit::Verdict::does_not_fit] > 0);
}

TEST_CASE("the demo's model is a closed body of the volume that its script gives it") {
  const auto got = build::read_text(demo_text(), std::string(BAYWRIGHT_SOURCE) + "/models/builds/in-a-test.build.toml");
  REQUIRE(std::holds_alternative<build::Build>(got));
  const auto& heatsink = std::get<build::Heatsink>(std::get<build::Build>(got).drives[0].wears.at(1));
  const Mesh& mesh = *heatsink.part.bodies.at(0).mesh;
  CHECK(mesh.closed());
  CHECK(mesh.triangles().size() == 13732);
  // The plate and 200 prisms of 16 sides: n/2 r² sin(2π/n). Its coordinates are rounded to 0.001.
  const double pin = 8.0 * 0.9 * 0.9 * std::sin(std::acos(-1.0) / 8.0) * 3.0;
  check_mm(mesh.volume(), 22.0 * 70.0 * 1.0 + 200.0 * pin, 2.0);
  check_mm(mesh.bounds().high, Vec3(22, 70, 4), 1e-9);
}
