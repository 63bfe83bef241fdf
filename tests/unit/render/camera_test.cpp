#include "render/camera.h"

#include "support/check_mm.h"
#include "support/random_turn.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <limits>

using namespace baywright::render;
using baywright::geometry::Bounds;
using baywright::geometry::Pose;
using baywright::geometry::Vec3;
using baywright::test::any_turn;
using baywright::test::check_mm;
using baywright::test::Random;
using baywright::test::uniform;

namespace {

constexpr int width = 1280;
constexpr int height = 800;
const Bounds room{{-30, -20, -5}, {30, 90, 15}};
const Pose turned_place{baywright::geometry::rotation({0, 0, 1}, 90) * baywright::geometry::rotation({1, 0, 0}, 180),
                        {10, -4, 2}};

Camera any_camera(Random& random, bool perspective) {
  const auto turn = any_turn(random);
  return {.target = {uniform(random, -50, 50), uniform(random, -50, 50), uniform(random, -50, 50)},
          .toward = turn[2],
          .up = turn[1],
          .height = uniform(random, 20, 300),
          .perspective = perspective};
}

void check_square(const Camera& camera) {
  check_mm(glm::length(camera.toward), 1.0, 1e-12);
  check_mm(glm::length(camera.up), 1.0, 1e-12);
  check_mm(glm::dot(camera.up, camera.toward), 0.0, 1e-12);
}

}  // namespace

TEST_CASE("a pixel's ray passes through the points that are seen at the pixel") {
  Random random(71);
  for (int i = 0; i < 200; ++i) {
    const Camera camera = any_camera(random, i % 2 == 0);
    const double x = uniform(random, 0, width);
    const double y = uniform(random, 0, height);
    const auto ray = camera.ray(x, y, width, height);
    check_mm(glm::length(ray.along), 1.0, 1e-12);
    for (const double t : {-20.0, 0.0, 35.0})
      check_mm(Vec3(glm::dvec2(camera.pixel(ray.from + t * ray.along, width, height)), 0), Vec3(x, y, 0), 1e-8);
    check_mm(camera.pixel(ray.from, width, height).z, 0.0, 1e-9);
    CHECK(glm::dot(ray.along, camera.toward) < 0.0);
  }
}

TEST_CASE("what OpenGL is told and what pixel says are one and the same") {
  Random random(72);
  for (int i = 0; i < 200; ++i) {
    Camera camera = any_camera(random, i % 2 == 0);
    camera.target = (room.low + room.high) / 2.0;
    camera.height = uniform(random, 200, 300);
    for (int k = 0; k < 8; ++k) {
      const glm::dvec4 clip = camera.clip(double{width} / height, room) * glm::dvec4(room.corner(k), 1.0);
      const Vec3 pixel = camera.pixel(room.corner(k), width, height);
      check_mm((clip.x / clip.w + 1.0) * width / 2.0, pixel.x, 1e-8);
      check_mm((1.0 - clip.y / clip.w) * height / 2.0, pixel.y, 1e-8);
      CHECK(std::abs(clip.z) < clip.w);  // between the near and the far plane
    }
  }
}

TEST_CASE("depth grows away from the eye, and the near plane stays before an eye within the room") {
  for (const bool perspective : {false, true}) {
    const Camera camera{.target = {0, 0, 0}, .height = 10, .perspective = perspective};  // looks down z
    const glm::dmat4 clip = camera.clip(1.0, room);
    double before = -1.0;
    for (const double z : {14.0, 10.0, 0.0, -4.0}) {
      const glm::dvec4 p = clip * glm::dvec4(0, 0, z, 1);
      CHECK(p.w > 0.0);
      CHECK(p.z / p.w > before);
      before = p.z / p.w;
    }
    CHECK(before < 1.0);
  }
  CHECK(std::isnan(Camera{.height = 10}.pixel({0, 0, 1000}, width, height).x));  // behind the eye
}

TEST_CASE("a true view shows a millimetre with as many pixels in every depth") {
  const Camera camera = facing(Side::front, Pose{}, room, double{width} / height);
  const double scale = height / camera.height;
  for (const double y : {-20.0, 90.0}) {
    const Vec3 off = camera.pixel({10, y, 3}, width, height) - camera.pixel({0, y, 0}, width, height);
    check_mm(off, Vec3(10 * scale, -3 * scale, 0), 1e-9);
  }
}

TEST_CASE("each side looks where its name says, in the place's own frame") {
  for (const Pose& place : {Pose{}, turned_place}) {
    const auto seen = [&](Side side, const Vec3& direction) {  // right, down, toward the eye
      const Camera camera = facing(side, place, room, 1.6);
      const Vec3 from = camera.pixel(camera.target, width, height);
      return glm::sign(glm::round(camera.pixel(camera.target + place.direction(direction), width, height) - from));
    };
    const Vec3 across{1, 0, 0};
    const Vec3 along{0, 1, 0};
    const Vec3 out{0, 0, 1};
    CHECK(seen(Side::top, across) == Vec3(1, 0, 0));
    CHECK(seen(Side::top, along) == Vec3(0, -1, 0));
    CHECK(seen(Side::top, out) == Vec3(0, 0, 1));
    CHECK(seen(Side::bottom, out) == Vec3(0, 0, -1));
    CHECK(seen(Side::front, along) == Vec3(0, 0, -1));  // away: the connector's end is near
    CHECK(seen(Side::front, out) == Vec3(0, -1, 0));
    CHECK(seen(Side::back, along) == Vec3(0, 0, 1));
    CHECK(seen(Side::right, across) == Vec3(0, 0, 1));
    CHECK(seen(Side::left, across) == Vec3(0, 0, -1));
    for (const Vec3& shown : {across, along, out})
      CHECK(glm::dot(facing(Side::whole, place, room, 1.6).toward, place.direction(shown)) > 0.3);
  }
  CHECK(side_called("back") == Side::back);
  CHECK(word(Side::whole) == "whole");
  CHECK_FALSE(side_called("behind").has_value());
}

TEST_CASE("everything is in the picture, with a margin and no more than that") {
  for (const Side side : {Side::whole, Side::front, Side::back, Side::left, Side::right, Side::top, Side::bottom})
    for (const double aspect : {0.3, 1.0, 1.6, 4.0}) {
      const Camera camera = facing(side, turned_place, room, aspect);
      check_square(camera);
      Bounds seen = Bounds::empty();
      for (int i = 0; i < 8; ++i) {
        const Vec3 p = camera.pixel(room.corner(i), 1000, 1000);  // as if square: the picture is `aspect` as wide
        seen.add(Vec3((p.x - 500.0) / aspect / 500.0, (p.y - 500.0) / 500.0, 0));
      }
      const double reach = std::max({seen.high.x, -seen.low.x, seen.high.y, -seen.low.y});
      CHECK(reach > 0.85);
      CHECK(reach < 0.95);
      check_mm(seen.low + seen.high, Vec3(0.0), 1e-5);  // in the middle
    }
}

TEST_CASE("a room of nothing or without bounds is looked at all the same") {
  const double infinite = std::numeric_limits<double>::infinity();
  for (const Bounds& odd : {Bounds::empty(), Bounds{Vec3(-infinite), Vec3(infinite)}, Bounds{Vec3(NAN), Vec3(NAN)}}) {
    const Camera camera = facing(Side::whole, turned_place, odd, NAN);
    check_mm(camera.target, turned_place.shift, 1e-9);
    CHECK(camera.height >= 1.0);
    const glm::dvec4 p = camera.clip(1.0, odd) * glm::dvec4(camera.target, 1.0);
    CHECK(std::abs(p.z) < p.w);
  }
}

TEST_CASE("turning stops at the pole and keeps the camera upright") {
  const Vec3 axis{0, 0, 1};
  Random random(73);
  Camera camera = facing(Side::whole, Pose{}, room, 1.6);
  int at_pole = 0;
  for (int i = 0; i < 2000; ++i) {
    camera = turned(camera, axis, uniform(random, -90, 90), uniform(random, -60, 60));
    check_square(camera);
    CHECK(glm::dot(camera.up, axis) > -1e-9);
    if (std::abs(glm::dot(camera.toward, axis)) > 1 - 1e-12) ++at_pole;
  }
  CHECK(at_pole > 100);  // it was tried

  const Camera top = turned(facing(Side::front, Pose{}, room, 1.6), axis, 0, -500);
  check_mm(top.toward, axis, 1e-12);
  check_mm(top.up, Vec3(0, 1, 0), 1e-12);
  check_mm(turned(top, axis, 0, 30).toward, Vec3(0, -0.5, std::sqrt(0.75)), 1e-12);  // down again, on the near side
  check_mm(turned(top, axis, NAN, 0).toward, axis, 0.0);
}

TEST_CASE("turning about the axis leaves the height of the eye as it was") {
  const Camera camera = facing(Side::whole, Pose{}, room, 1.6);
  const Camera further = turned(camera, {0, 0, 1}, 90, 0);
  check_mm(further.toward, Vec3(-camera.toward.y, camera.toward.x, camera.toward.z), 1e-12);
}

TEST_CASE("on the way from one view to another nothing jumps") {
  const Camera first = facing(Side::whole, Pose{}, room, 1.6);
  for (const Side side : {Side::top, Side::front, Side::left, Side::whole}) {
    const Camera last = facing(side, turned_place, room, 1.6);
    CHECK(between(first, last, 0.0).perspective);
    check_mm(between(first, last, 0.0).toward, first.toward, 0.0);
    check_mm(between(first, last, 1.0).toward, last.toward, 0.0);
    check_mm(between(first, last, NAN).toward, first.toward, 0.0);
    constexpr int steps = 2000;
    double largest = 0.0;  // pixels that a corner moves in a step
    Camera before = first;
    for (int i = 1; i <= steps; ++i) {
      const Camera here = between(first, last, i / double{steps});
      check_square(here);
      for (int k = 0; k < 8; ++k)
        largest = std::max(largest, glm::distance(glm::dvec2(here.pixel(room.corner(k), width, height)),
                                                  glm::dvec2(before.pixel(room.corner(k), width, height))));
      before = here;
    }
    CHECK(largest < 3.0);
  }
}
