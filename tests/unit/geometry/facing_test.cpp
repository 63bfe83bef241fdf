#include "geometry/facing.h"

#include "support/check_mm.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <random>

using namespace baywright::geometry;
using baywright::test::check_mm;

namespace {

Piece box(double x, double y, double z) {
  return std::get<Solid>(Solid::box({x, y, z})).pieces().front();
}

Piece disc(double diameter, double height) {
  return std::get<Solid>(Solid::cylinder(diameter, 0, height)).pieces().front();
}

Pose at(double x, double y, double z) {
  return {Mat3(1.0), {x, y, z}};
}

/// Each of the places is among those found, once.
void check_has_on_a(std::vector<Facing> found, const std::vector<Vec3>& want, double allowed) {
  REQUIRE(found.size() >= want.size());
  for (const Vec3& w : want) {
    const auto nearest = std::min_element(found.begin(), found.end(), [&](const Facing& p, const Facing& q) {
      return glm::distance(p.on_a, w) < glm::distance(q.on_a, w);
    });
    check_mm(nearest->on_a, w, allowed);
    found.erase(nearest);
  }
}

/// The same places in any order, and no other.
void check_on_a(const std::vector<Facing>& found, const std::vector<Vec3>& want, double allowed) {
  CHECK(found.size() == want.size());
  check_has_on_a(found, want, allowed);
}

/// Where the line over (x, y) along +z runs inside the piece, by cutting it with each pair of faces; low > high:
/// nowhere.
std::pair<double, double> along_z(const Piece& piece, const Pose& pose, double x, double y) {
  const Vec3 start = pose.inverse().point({x, y, 0});
  const Vec3 way = pose.inverse().direction({0, 0, 1});
  double low = -1e9;
  double high = 1e9;
  const auto cut = [&](double one, double other) {
    low = std::max(low, std::min(one, other));
    high = std::min(high, std::max(one, other));
  };
  cut(-start.z / way.z, (piece.height - start.z) / way.z);
  if (piece.radius > 0) {
    const double a = way.x * way.x + way.y * way.y;
    const double b = start.x * way.x + start.y * way.y;
    const double c = start.x * start.x + start.y * start.y - piece.radius * piece.radius;
    if (b * b < a * c) return {1, 0};
    cut((-b - std::sqrt(b * b - a * c)) / a, (-b + std::sqrt(b * b - a * c)) / a);
  } else {
    cut(-start.x / way.x, (piece.corners[2].x - start.x) / way.x);
    cut(-start.y / way.y, (piece.corners[2].y - start.y) / way.y);
  }
  return {low, high};
}

}  // namespace

TEST_CASE("parallel plates face each other at the corners of their common area") {
  // 40 x 30 x 2 under a 40 x 30 x 2 that is moved by (25, 10): common area 15 x 20, gap 3.
  const auto found = facing(box(40, 30, 2), at(0, 0, 0), box(40, 30, 2), at(25, 10, 5), {0, 0, 1}, 0.0);
  check_on_a(found, {{25, 10, 2}, {40, 10, 2}, {40, 30, 2}, {25, 30, 2}}, 1e-9);
  for (const Facing& f : found) {
    check_mm(f.on_b, f.on_a + Vec3{0, 0, 3}, 1e-9);
    check_mm(f.gap, 3.0, 1e-9);
  }
}

TEST_CASE("overlapping plates have a negative gap") {
  const auto found = facing(box(10, 10, 2), at(0, 0, 0), box(10, 10, 2), at(0, 0, 1.5), {0, 0, 1}, 0.0);
  REQUIRE(found.size() == 4);
  for (const Facing& f : found) check_mm(f.gap, -0.5, 1e-9);
}

TEST_CASE("sides that are parallel to the direction but for rounding do not let the corners slide down") {
  std::mt19937_64 random(20240510);
  std::normal_distribution<double> normal;
  std::uniform_real_distribution<double> angle(0, 360);
  for (int round = 0; round < 200; ++round) {
    const Vec3 axis = glm::normalize(Vec3{normal(random), normal(random), normal(random)});
    const Pose scene{rotation(axis, angle(random)), 500.0 * axis};
    // Plates 2 thick and 3 apart: with a common area, and 5e-10 mm short of one. Bands reach into the sides.
    for (const double aside : {25.0, 40.0 + 5e-10}) {
      for (const double band : {0.0, 1.0, 9.0}) {
        const auto found = facing(box(40, 30, 2), scene, box(40, 30, 2), scene.after(at(aside, 10, 5)),
                                  scene.direction({0, 0, 1}), band);
        CHECK(found.size() == (aside < 40 ? 4 : 2));
        for (const Facing& f : found) check_mm(f.gap, 3.0, 1e-9);
      }
    }
  }
}

TEST_CASE("a plate under a tilted plate: the low edge, and more with a wider band") {
  // The upper plate is 20 x 10 and turned about its edge x = 0 so that it rises by 3 on 4: slope 3/4.
  const Pose tilt{Mat3({0.8, 0, 0.6}, {0, 1, 0}, {-0.6, 0, 0.8}), {5, 0, 1}};
  const Piece under = box(30, 10, 1);
  check_has_on_a(facing(under, at(0, 0, 0), box(20, 10, 1), tilt, {0, 0, 1}, 0.0), {{5, 0, 1}, {5, 10, 1}}, 1e-9);
  // Within 6 mm of the low edge the slope reaches x = 5 + 8; the plate's end face starts at the same edge and leans
  // back to x = 5 - 0.6, 0.8 higher.
  const auto found = facing(under, at(0, 0, 0), box(20, 10, 1), tilt, {0, 0, 1}, 6.0);
  check_has_on_a(found, {{4.4, 0, 1}, {4.4, 10, 1}, {13, 0, 1}, {13, 10, 1}}, 1e-9);
  for (const Facing& f : found) check_mm(f.gap, f.on_a.x > 5 ? 0.75 * (f.on_a.x - 5) : (5 - f.on_a.x) * 4 / 3, 1e-9);
}

TEST_CASE("a cylinder lying on a plate touches along a line") {
  const Pose lying{rotation({0, 1, 0}, 90), {3, 5, 4}};  // its axis along +x from x = 3, 4 above the origin
  const auto found = facing(box(30, 10, 1), at(0, 0, 0), disc(4, 20), lying, {0, 0, 1}, 0.0);
  check_has_on_a(found, {{3, 5, 1}, {23, 5, 1}}, 1e-9);
  for (const Facing& f : found) check_mm(f.gap, 1.0, 1e-9);
  // With a band of 0.4 mm the strip reaches sqrt(2^2 - 1.6^2) = 1.2 mm to both sides, 0.4 mm up.
  const auto strip = facing(box(30, 10, 1), at(0, 0, 0), disc(4, 20), lying, {0, 0, 1}, 0.4);
  check_has_on_a(strip, {{3, 3.8, 1}, {23, 3.8, 1}, {3, 6.2, 1}, {23, 6.2, 1}}, 1e-9);
  for (const Facing& f : strip) check_mm(f.gap, 3.0 - std::sqrt(4.0 - (f.on_a.y - 5) * (f.on_a.y - 5)), 1e-8);
}

TEST_CASE("a standing cylinder faces a plate with its rim") {
  const auto found = facing(box(30, 30, 1), at(-15, -15, 0), disc(10, 5), at(0, 0, 1.5), {0, 0, 1}, 0.0);
  CHECK(found.size() >= 32);
  double right = 0.0;
  for (const Facing& f : found) {
    check_mm(std::hypot(f.on_b.x, f.on_b.y), 5.0, 1e-9);
    check_mm(f.gap, 0.5, 1e-9);
    right = std::max(right, f.on_a.x);
  }
  check_mm(right, 5.0, 1e-9);
}

TEST_CASE("a corner, two crossing edges, a tilted rim: one point each") {
  // A cube of 2 standing on its corner: the body diagonal is 2 sqrt(3).
  const Mat3 on_corner = rotation(glm::normalize(Vec3{1, -1, 0}), 54.735610317245346);
  const auto corner = facing(box(20, 20, 1), at(-10, -10, 0), box(2, 2, 2), {on_corner, {0, 0, 1.25}}, {0, 0, 1}, 0.0);
  REQUIRE(corner.size() == 1);
  check_mm(corner.front().on_b, {0, 0, 1.25}, 1e-9);
  // Two square bars on edge, square to each other.
  const Pose low{rotation({1, 0, 0}, 45), {-10, 0, 0}};
  const Pose high{rotation({0, 1, 0}, 45), {0, -10, 5}};
  const auto edges = facing(box(20, 2, 2), low, box(2, 20, 2), high, {0, 0, 1}, 0.0);
  REQUIRE(edges.size() == 1);
  // The low bar's upper edge is at y = 0, z = 2 sqrt(2); the high bar's lower edge at x = sqrt(2), z = 5 - sqrt(2).
  const double root = std::sqrt(2.0);
  check_mm(edges.front().on_a, {root, 0, 2 * root}, 1e-9);
  check_mm(edges.front().on_b, {root, 0, 5 - root}, 1e-9);
  check_mm(edges.front().gap, 5 - 3 * root, 1e-9);
  // A disc of radius 5, turned by 30 degrees about y, is lowest at (-5 cos 30, 0, -5 sin 30) or its mirror image.
  const auto rim =
      facing(box(20, 20, 1), at(-10, -10, 0), disc(10, 3), {rotation({0, 1, 0}, 30), {0, 0, 4}}, {0, 0, 1}, 0.0);
  REQUIRE(rim.size() == 1);
  check_mm(rim.front().on_b, {5 * std::sqrt(0.75), 0, 1.5}, 1e-9);
  check_mm(rim.front().gap, 0.5, 1e-9);
}

TEST_CASE("shadows that do not meet") {
  CHECK(facing(box(1, 1, 1), at(0, 0, 0), box(1, 1, 1), at(1.001, 0, 2), {0, 0, 1}, 0.0).empty());
  CHECK(facing(disc(2, 1), at(0, 0, 0), disc(2, 1), at(1.42, 1.42, 2), {0, 0, 1}, 0.5).empty());
  // Boxes that share an edge of their shadows face each other at its ends.
  check_on_a(facing(box(1, 1, 1), at(0, 0, 0), box(1, 1, 1), at(1, 0, 2), {0, 0, 1}, 0.0), {{1, 0, 1}, {1, 1, 1}},
             1e-9);
}

TEST_CASE("a rim that only just reaches over is not missed between its sampled directions") {
  // The corner of the box pokes 0.01 mm into a disc of radius 5 at 39 degrees; the inscribed chord there is 0.024
  // short.
  const double angle = 39.0 * 3.141592653589793 / 180.0;
  const Vec3 corner = 4.99 * Vec3{std::cos(angle), std::sin(angle), 0};
  const auto found = facing(box(9, 9, 1), {Mat3(1.0), corner}, disc(10, 5), at(0, 0, 1.5), {0, 0, 1}, 0.0);
  REQUIRE(found.size() >= 1);
  const bool has_corner = std::any_of(found.begin(), found.end(), [&](const Facing& f) {
    return glm::distance(f.on_a, corner + Vec3{0, 0, 1}) < 1e-9;
  });
  CHECK(has_corner);
  // Two discs whose rims overlap by 0.001 mm on a line at 39 degrees.
  CHECK_FALSE(facing(disc(10, 1), at(0, 0, 0), disc(10, 1),
                     {Mat3(1.0), 9.999 * Vec3{std::cos(angle), std::sin(angle), 0} + Vec3{0, 0, 2}}, {0, 0, 1}, 0.0)
                  .empty());
}

TEST_CASE("points lie on both pieces, on one line along the direction, and turn with the scene") {
  std::mt19937_64 random(20240505);
  std::normal_distribution<double> normal;
  std::uniform_real_distribution<double> angle(0, 360);
  std::uniform_real_distribution<double> band(0, 8);
  int met = 0;
  for (int round = 0; round < 400; ++round) {
    const Piece a = round % 3 == 0 ? disc(20, 6) : box(20, 14, 6);
    const Piece b = round % 2 == 0 ? disc(9, 12) : box(9, 12, 15);
    const auto turn = [&] {
      return rotation(glm::normalize(Vec3{normal(random), normal(random), normal(random)}), angle(random));
    };
    const Pose pose_a{turn(), {0, 0, 0}};
    const Pose pose_b{turn(), 2.0 * Vec3{normal(random), normal(random), normal(random)} + Vec3{0, 0, 30}};
    const double deep = band(random);
    const auto found = facing(a, pose_a, b, pose_b, {0, 0, 1}, deep);
    if (!found.empty()) ++met;
    const double most = farthest(a, pose_a, {0, 0, 1}).z;
    const double least = farthest(b, pose_b, {0, 0, -1}).z;
    for (const Facing& f : found) {
      CHECK(f.on_a.z <= most + 1e-9);
      CHECK(f.on_a.z >= most - deep - 1e-8);
      CHECK(f.on_b.z >= least - 1e-9);
      CHECK(f.on_b.z <= least + deep + 1e-8);
      check_mm(f.on_a.x, f.on_b.x, 1e-9);
      check_mm(f.on_a.y, f.on_b.y, 1e-9);
      check_mm(f.gap, f.on_b.z - f.on_a.z, 1e-9);
    }
    // The whole scene moved: the same gaps. Polygons only, as the rims start their directions elsewhere.
    if (a.radius > 0 || b.radius > 0) continue;
    const Pose move{turn(), 100.0 * Vec3{normal(random), normal(random), normal(random)}};
    const auto moved = facing(a, move.after(pose_a), b, move.after(pose_b), move.direction({0, 0, 1}), deep);
    REQUIRE(moved.size() == found.size());
    std::vector<Vec3> want;
    for (const Facing& f : found) want.push_back(move.point(f.on_a));
    check_on_a(moved, want, 1e-8);
  }
  CAPTURE(met);
  CHECK(met > 120);
  CHECK(met < 280);
}

TEST_CASE("no line that meets both pieces within the band reaches beyond the corners") {
  std::mt19937_64 random(20240506);
  std::normal_distribution<double> normal;
  std::uniform_real_distribution<double> angle(0, 360);
  std::uniform_real_distribution<double> unit(0, 1);
  int lines = 0;
  int missed = 0;
  for (int round = 0; round < 300; ++round) {
    const bool with_disc = round % 2 == 0;
    const Piece a = with_disc ? disc(20, 6) : box(20, 14, 6);
    const Piece b = box(9, 12, 15);
    const auto turn = [&] {
      return rotation(glm::normalize(Vec3{normal(random), normal(random), normal(random)}), angle(random));
    };
    const Pose pose_a{turn(), {0, 0, 0}};
    const Pose pose_b{turn(), 2.0 * Vec3{normal(random), normal(random), normal(random)} + Vec3{0, 0, 30}};
    const double band = 12.0 * unit(random);
    const auto found = facing(a, pose_a, b, pose_b, {0, 0, 1}, band);
    const double most = farthest(a, pose_a, {0, 0, 1}).z;
    const double least = farthest(b, pose_b, {0, 0, -1}).z;
    const Vec2 aside{normal(random), normal(random)};
    double corner = -1e9;
    for (const Facing& f : found) corner = std::max(corner, glm::dot(aside, Vec2{f.on_a}));
    for (int i = 0; i < 200; ++i) {
      const Vec2 p{24 * unit(random) - 12, 24 * unit(random) - 12};
      const auto [in_a, out_a] = along_z(a, pose_a, p.x, p.y);
      const auto [in_b, out_b] = along_z(b, pose_b, p.x, p.y);
      if (in_a > out_a || in_b > out_b || out_a < most - band || in_b > least + band) continue;
      ++lines;
      // A rim is inscribed: 0.0049 of its radius of 10.
      const double allowed = (with_disc ? 0.049 : 1e-9) * glm::length(aside);
      if (!(glm::dot(aside, p) <= corner + allowed)) ++missed;
    }
  }
  CAPTURE(lines);
  CHECK(lines > 3000);
  CHECK(missed == 0);
}

TEST_CASE("the closest line of two edges that pass diagonally was not among the corners of the band's shadow") {
  // Two boxes 10 long, edge to edge at 45 degrees, 3 apart along the diagonal. The band reaches 1 down both faces of each
  // edge, so the common shadow is a strip 2 wide: its corners see 3 + 1 + 1, its middle, the ridge, sees 3.
  const Vec3 n = glm::normalize(Vec3{1, 0, 1});
  const auto found = facing(box(10, 10, 10), at(-10, 0, -10), box(10, 10, 10), {Mat3(1.0), 3.0 * n}, n, 1.0);
  double least = 1e9;
  int ends = 0;
  for (const Facing& f : found) {
    least = std::min(least, f.gap);
    if (f.gap < 3.0 + 1e-9) ++ends;
  }
  check_mm(least, 3.0, 1e-9);
  CHECK(ends == 2);  // both ends of the line that they share
}

TEST_CASE("no line that meets both pieces within the band is shorter than the least of the points") {
  std::mt19937_64 random(77);
  std::normal_distribution<double> normal;
  std::uniform_real_distribution<double> unit(0, 1);
  std::uniform_real_distribution<double> angle(0, 360);
  int lines = 0;
  int shorter = 0;
  for (int round = 0; round < 300; ++round) {
    const Piece a = box(20, 14, 6);
    const Piece b = box(9, 12, 15);
    const auto turn = [&] {
      const Vec3 axis{normal(random), normal(random), normal(random)};
      return rotation(glm::normalize(axis), angle(random));
    };
    const Pose pose_a{turn(), {0, 0, 0}};
    const Pose pose_b{turn(), Vec3{2.0 * normal(random), 2.0 * normal(random), 30}};
    const double band = 8.0 * unit(random);
    const double most = farthest(a, pose_a, {0, 0, 1}).z;
    const double lowest = farthest(b, pose_b, {0, 0, -1}).z;
    double least = 1e9;
    for (const Facing& f : facing(a, pose_a, b, pose_b, {0, 0, 1}, band)) least = std::min(least, f.gap);
    for (int i = 0; i < 200; ++i) {
      const Vec2 p{24 * unit(random) - 12, 24 * unit(random) - 12};
      const auto [in_a, out_a] = along_z(a, pose_a, p.x, p.y);
      const auto [in_b, out_b] = along_z(b, pose_b, p.x, p.y);
      if (in_a > out_a || in_b > out_b || out_a < most - band || in_b > lowest + band) continue;
      ++lines;
      if (in_b - out_a < least - 1e-9) ++shorter;
    }
  }
  CHECK(lines > 1000);
  CHECK(shorter == 0);
}
