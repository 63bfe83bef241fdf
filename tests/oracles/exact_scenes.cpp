// Rotations come from small whole quaternions: rational matrices, rounded to doubles. Among them are all rotations that
// take the axes to the axes, which are exact, and so touching can be exact too.
#include "exact_scenes.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

namespace baywright::oracle {

namespace {

Mat3 from_quaternion(long double w, long double x, long double y, long double z) {
  const long double whole = w * w + x * x + y * y + z * z;
  const auto entry = [&](long double value) { return static_cast<double>(value / whole); };
  const long double ww = w * w - x * x - y * y - z * z;
  return {Vec3{entry(ww + 2 * x * x), entry(2 * (x * y + w * z)), entry(2 * (x * z - w * y))},
          Vec3{entry(2 * (x * y - w * z)), entry(ww + 2 * y * y), entry(2 * (y * z + w * x))},
          Vec3{entry(2 * (x * z + w * y)), entry(2 * (y * z - w * x)), entry(ww + 2 * z * z)}};
}

int whole(Random& random, int most) {
  return static_cast<int>(random() % static_cast<unsigned>(2 * most + 1)) - most;
}

Mat3 rational_turn(Random& random, int most) {
  for (;;) {
    const int w = whole(random, most);
    const int x = whole(random, most);
    const int y = whole(random, most);
    const int z = whole(random, most);
    if (w != 0 || x != 0 || y != 0 || z != 0) return from_quaternion(w, x, y, z);
  }
}

/// By about 10^-k, k from 1 to 13.
Mat3 slight_turn(Random& random) {
  const long double w = std::pow(10.0L, static_cast<long double>(1 + random() % 13));
  const int x = whole(random, 2);
  const int y = whole(random, 2);
  const int z = whole(random, 2);
  return from_quaternion(w, x, y, z);
}

/// One of the rotations that take axes to axes, without rounding.
Mat3 square_turn(Random& random) {
  for (;;) {
    const Mat3 turn = rational_turn(random, 1);
    const auto exact = [](double v) { return v == 0.0 || v == 1.0 || v == -1.0; };
    bool good = true;
    for (int i = 0; i < 3; ++i) good = good && exact(turn[i].x) && exact(turn[i].y) && exact(turn[i].z);
    if (good) return turn;
  }
}

Vec3 corner_of(const Body& body, int i) {
  return body.corners[static_cast<std::size_t>(i)];
}

const std::array<int, 3>& any_triangle(Random& random, const Body& body) {
  return body.surface[random() % body.surface.size()];
}

Vec3 normal(const Body& body, const Mat3& turn, const std::array<int, 3>& t) {
  const Vec3 u = turn * (corner_of(body, t[1]) - corner_of(body, t[0]));
  const Vec3 v = turn * (corner_of(body, t[2]) - corner_of(body, t[0]));
  return glm::normalize(glm::cross(u, v));
}

/// Inside the triangle, on an edge, or a corner.
Vec3 point_on(Random& random, const Body& body, const std::array<int, 3>& t) {
  double s = uniform(random, 0.0, 1.0);
  double r = uniform(random, 0.0, 1.0);
  const auto kind = random() % 4;
  if (kind == 0) r = s = 0.0;
  if (kind == 1) r = 0.0;
  if (s + r > 1.0) {
    s = 1.0 - s;
    r = 1.0 - r;
  }
  return corner_of(body, t[0]) + s * (corner_of(body, t[1]) - corner_of(body, t[0])) +
         r * (corner_of(body, t[2]) - corner_of(body, t[0]));
}

/// 1e-12 to 1 mm of either sign, sometimes nothing.
double small_gap(Random& random) {
  if (random() % 32 == 0) return 0.0;
  const double size = std::pow(10.0, uniform(random, -12.0, 0.0));
  return random() % 2 == 0 ? size : -size;
}

/// The rotation that takes the unit vector u to v (to the opposite of what it must not be divided by: then any half
/// turn).
Mat3 bring(const Vec3& u, const Vec3& v) {
  const Vec3 axis = glm::cross(u, v);
  const double c = glm::dot(u, v);
  if (c < -0.999) {
    const Vec3 side = geometry::square_to(u);
    return Mat3{2.0 * side * side.x, 2.0 * side * side.y, 2.0 * side * side.z} - Mat3{1.0};
  }
  const Mat3 cross{Vec3{0, axis.z, -axis.y}, Vec3{-axis.z, 0, axis.x}, Vec3{axis.y, -axis.x, 0}};
  return Mat3{1.0} + cross + cross * cross * (1.0 / (1.0 + c));
}

class Maker {
 public:
  Maker(Random& random, const Family& family)
      : random_(random), scene_{make(family.a, uniform(random, 8.0, 60.0)), {}, make(family.b, second_size()), {}} {
    scene_.pose_a.turn = random_() % 4 == 0 ? square_turn(random_) : rational_turn(random_, 4);
    for (int i = 0; i < 3; ++i) scene_.pose_a.shift[i] = std::round(uniform(random_, -80.0, 80.0)) / 8.0;
    scene_.pose_b.turn = beside();
  }

  [[nodiscard]] Scene run() {
    const auto kind = random_() % 16;
    if (kind < 8) {
      lean_on_a_face();
    } else if (kind < 11) {
      edge_on_edge();
    } else if (kind == 11) {
      put_inside();
    } else if (kind == 12) {
      coincide();
    } else {
      put_anywhere();
    }
    return scene_;
  }

 private:
  Body make(const std::vector<Shape>& shapes, double size) {
    return any_body(random_, shapes[random_() % shapes.size()], size);
  }
  double second_size() { return random_() % 3 == 0 ? uniform(random_, 1.0, 6.0) : uniform(random_, 6.0, 60.0); }

  /// b's rotation: square to a, nearly so, a face against a face of a, or any.
  Mat3 beside() {
    const auto kind = random_() % 8;
    const Mat3& turn = scene_.pose_a.turn;
    if (kind < 3) return turn * square_turn(random_);
    if (kind == 3) return turn * square_turn(random_) * slight_turn(random_);
    if (kind > 5) return rational_turn(random_, 4);
    const Vec3 n = normal(scene_.a, turn, any_triangle(random_, scene_.a));
    const Mat3 spun = rational_turn(random_, 4);
    const Mat3 faced = bring(normal(scene_.b, spun, any_triangle(random_, scene_.b)), -n) * spun;
    return kind == 4 ? faced : faced * slight_turn(random_);
  }

  /// Puts b's lowest corner along n (or the middle of its lowest ones) at `to`, lifted by a small gap.
  void lean(const Vec3& to, const Vec3& n) {
    const Mat3& turn = scene_.pose_b.turn;
    double least = std::numeric_limits<double>::infinity();
    for (const Vec3& c : scene_.b.corners) least = std::min(least, glm::dot(n, turn * c));
    Vec3 middle{0.0};
    Vec3 first{0.0};
    int count = 0;
    for (const Vec3& c : scene_.b.corners) {
      if (glm::dot(n, turn * c) > least + 1e-9) continue;
      if (count == 0) first = turn * c;
      middle += turn * c;
      ++count;
    }
    const Vec3 foot = random_() % 2 == 0 ? first : middle / static_cast<double>(count);
    scene_.pose_b.shift = to - foot + n * small_gap(random_);
  }

  void lean_on_a_face() {
    const auto& t = any_triangle(random_, scene_.a);
    lean(scene_.pose_a.point(point_on(random_, scene_.a, t)), normal(scene_.a, scene_.pose_a.turn, t));
  }

  /// Crosses an edge of a with an edge of b. For convex bodies a few tries find edges that meet from outside.
  void edge_on_edge() {
    for (int i = 0; i < 30; ++i) {
      const auto& s = any_triangle(random_, scene_.a);
      const auto& t = any_triangle(random_, scene_.b);
      const Vec3 p = scene_.pose_a.point(corner_of(scene_.a, s[0]));
      const Vec3 u = scene_.pose_a.direction(corner_of(scene_.a, s[1]) - corner_of(scene_.a, s[0]));
      const Vec3 q = scene_.pose_b.direction(corner_of(scene_.b, t[0]));
      const Vec3 v = scene_.pose_b.direction(corner_of(scene_.b, t[1]) - corner_of(scene_.b, t[0]));
      Vec3 n = glm::cross(u, v);
      if (!(glm::length(n) > 1e-9)) continue;
      n = glm::normalize(n);
      if (glm::dot(n, normal(scene_.a, scene_.pose_a.turn, s)) < 0.0) n = -n;
      scene_.pose_b.shift =
          p + uniform(random_, 0.0, 1.0) * u - q - uniform(random_, 0.0, 1.0) * v + n * small_gap(random_);
      if (highest(scene_.a, scene_.pose_a, n) < glm::dot(n, p) + 1e-9 &&
          highest(scene_.b, scene_.pose_b, -n) < glm::dot(-n, q + scene_.pose_b.shift) + 1e-9) {
        return;
      }
    }
  }

  static double highest(const Body& body, const Pose& pose, const Vec3& n) {
    double most = -std::numeric_limits<double>::infinity();
    for (const Vec3& c : body.corners) most = std::max(most, glm::dot(n, pose.point(c)));
    return most;
  }

  /// The middle of b in the middle of a part of a, or leaning on a face of a from within.
  void put_inside() {
    if (random_() % 2 == 0) {
      const auto& t = any_triangle(random_, scene_.a);
      lean(scene_.pose_a.point(point_on(random_, scene_.a, t)), -normal(scene_.a, scene_.pose_a.turn, t));
      return;
    }
    const Part& part = scene_.a.parts[random_() % scene_.a.parts.size()];
    Vec3 middle{0.0};
    for (const int i : part.corners) middle += corner_of(scene_.a, i) / static_cast<double>(part.corners.size());
    scene_.pose_b.shift = scene_.pose_a.point(middle) - scene_.pose_b.direction(middle_of(scene_.b));
  }

  static Vec3 middle_of(const Body& body) {
    Vec3 middle{0.0};
    for (const Vec3& c : body.corners) middle += c / static_cast<double>(body.corners.size());
    return middle;
  }

  /// b is a copy of a in the same place, shifted along an edge, across a face, or not at all.
  void coincide() {
    scene_.b = scene_.a;
    scene_.pose_b = scene_.pose_a;
    const auto kind = random_() % 3;
    if (kind == 0) return;
    const auto& t = any_triangle(random_, scene_.a);
    Vec3 way = normal(scene_.a, scene_.pose_a.turn, t);
    if (kind == 1) way = scene_.pose_a.direction(corner_of(scene_.a, t[1]) - corner_of(scene_.a, t[0]));
    scene_.pose_b.shift += way * (kind == 1 ? 1.0 : small_gap(random_));
  }

  void put_anywhere() {
    scene_.pose_b.shift = scene_.pose_a.point(middle_of(scene_.a)) - scene_.pose_b.direction(middle_of(scene_.b));
    const double far = random_() % 4 == 0 ? 200.0 : 40.0;
    for (int i = 0; i < 3; ++i) scene_.pose_b.shift[i] += uniform(random_, -far, far);
  }

  Random& random_;
  Scene scene_;
};

std::string code(const Pose& pose) {
  return "{{" + text(pose.turn[0]) + ", " + text(pose.turn[1]) + ", " + text(pose.turn[2]) + "}, " + text(pose.shift) +
         "}";
}

}  // namespace

const std::vector<Family>& families() {
  static const std::vector<Family> all{
      {"box and box", {Shape::box}, {Shape::box}},
      {"convex prisms", {Shape::convex_prism}, {Shape::convex_prism, Shape::box}},
      {"L, U and star prisms", {Shape::bent_prism}, {Shape::bent_prism, Shape::convex_prism, Shape::box}},
      {"prisms with a hole", {Shape::framed_prism}, {Shape::framed_prism, Shape::bent_prism, Shape::box}},
      {"mesh and box", {Shape::mesh}, {Shape::box}},
      {"box and mesh", {Shape::box, Shape::framed_prism}, {Shape::mesh}},
      {"mesh and mesh", {Shape::mesh}, {Shape::mesh}}};
  return all;
}

Scene any_scene(const Family& family, std::uint64_t number) {
  Random random(number);
  return Maker(random, family).run();
}

std::string code(const Scene& scene) {
  return "  const Placed a{" + scene.a.code + ",\n                 " + code(scene.pose_a) + "};\n  const Placed b{" +
         scene.b.code + ",\n                 " + code(scene.pose_b) + "};\n";
}

}  // namespace baywright::oracle
