// Our gap against the Flexible Collision Library (FCL 0.7, libccd 2.1) on random pairs of boxes and cylinders.
//
// Where FCL is sound, and how the rest is filtered:
//   - Apart, its distance is an iteration that stops at a relative step of `distance_tolerance`; we ask for 1e-9. On
//   flat
//     faces it then agrees with us to `flat_allowed`. On curved sides it creeps up to the nearest point and stops
//     short: its distance is never too small, and too large by no more than `curved_allowed`.
//   - Where it cannot refine a simplex it throws or, in its debug build, aborts: a throw is counted and skipped.
//   - Apart, it may stop at once and report no distance (-1, its "overlap"). This is told from a real sign error by our
//     certificate: the separation along our direction is computed here from the corners and rims alone.
//   - Overlapping, its depth of boxes from `collide` prefers face axes by a factor of 1.05, so it is at least the true
//     depth and at most 1.05 of it. Its depth of cylinders is an expanding polytope with no bound that we know of, and
//     is not compared; that they overlap is.
// Usage: fcl_oracle [PAIRS]. Ends with 0 if all agree. Each disagreement is printed with its scene.
#include "geometry/gap.h"
#include "support/fcl_place.h"
#include "support/random_turn.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fcl/narrowphase/collision.h>
#include <fcl/narrowphase/distance.h>
#include <memory>
#include <random>
#include <tuple>

namespace {

using baywright::geometry::Gap;
using baywright::geometry::Mat3;
using baywright::geometry::Piece;
using baywright::geometry::Pose;
using baywright::geometry::Relation;
using baywright::geometry::Vec2;
using baywright::geometry::Vec3;

constexpr double flat_allowed = 1e-8;
constexpr double curved_allowed = 1e-4;
constexpr double certified = 1e-9;

struct Body {
  bool round;
  Vec3 size;  // sides, or (radius, radius, height)
  Vec3 centre;
  Mat3 turn;
};

using baywright::test::any_turn;
using baywright::test::fcl_place;
using baywright::test::Random;
using baywright::test::uniform;

Body any_body(Random& random, bool round, bool aligned) {
  Body body;
  body.round = round;
  const double first = uniform(random, 0.5, 50.0);
  const double second = uniform(random, 0.5, 50.0);
  const double third = uniform(random, 0.5, 50.0);
  body.size = round ? Vec3{0.5 * first, 0.5 * first, third} : Vec3{first, second, third};
  for (int i = 0; i < 3; ++i) body.centre[i] = uniform(random, -30.0, 30.0);
  body.turn = aligned ? Mat3{1.0} : any_turn(random);
  return body;
}

Piece piece(const Body& body) {
  Piece made;
  made.height = body.size.z;
  if (body.round) {
    made.base = Piece::Base::disc;
    made.radius = body.size.x;
  } else {
    const Vec2 half{0.5 * body.size.x, 0.5 * body.size.y};
    made.corners = {{-half.x, -half.y}, {half.x, -half.y}, {half.x, half.y}, {-half.x, half.y}};
  }
  return made;
}

Pose pose(const Body& body) {
  return {body.turn, body.centre - body.turn[2] * (0.5 * body.size.z)};
}

fcl::CollisionObjectd object(const Body& body) {
  std::shared_ptr<fcl::CollisionGeometryd> shape;
  if (body.round) {
    shape = std::make_shared<fcl::Cylinderd>(body.size.x, body.size.z);
  } else {
    shape = std::make_shared<fcl::Boxd>(body.size.x, body.size.y, body.size.z);
  }
  return fcl::CollisionObjectd(shape, fcl_place(body.centre, body.turn));
}

/// Half the body's width along d, from its definition.
double half_width(const Body& body, const Vec3& d) {
  const Vec3 q = glm::transpose(body.turn) * d;
  if (body.round) return body.size.x * std::hypot(q.x, q.y) + 0.5 * body.size.z * std::abs(q.z);
  return 0.5 * (body.size.x * std::abs(q.x) + body.size.y * std::abs(q.y) + body.size.z * std::abs(q.z));
}

/// 0 inside.
double outside(const Body& body, const Vec3& world) {
  const Vec3 p = glm::transpose(body.turn) * (world - body.centre);
  double out = std::abs(p.z) - 0.5 * body.size.z;
  if (body.round) return std::max({0.0, out, std::hypot(p.x, p.y) - body.size.x});
  return std::max({0.0, out, std::abs(p.x) - 0.5 * body.size.x, std::abs(p.y) - 0.5 * body.size.y});
}

void print(const char* name, const Body& body) {
  std::printf("  %s %s size %.17g %.17g %.17g centre %.17g %.17g %.17g turn", name, body.round ? "cylinder" : "box",
              body.size.x, body.size.y, body.size.z, body.centre.x, body.centre.y, body.centre.z);
  for (int i = 0; i < 3; ++i) std::printf(" %.17g %.17g %.17g", body.turn[i].x, body.turn[i].y, body.turn[i].z);
  std::printf("\n");
}

struct Tally {
  int apart = 0;
  int overlapping = 0;
  int undecided = 0;
  int thrown = 0;
  int no_distance = 0;  // theirs, on a pair whose distance we can prove
  int faults = 0;
  double worst = 0.0;        // theirs less ours, apart
  double worst_error = 0.0;  // our own certified error
};

class Comparison {
 public:
  Comparison(const Body& a, const Body& b, Tally& tally)
      : a_(a), b_(b), ours_(gap(piece(a), pose(a), piece(b), pose(b))), tally_(tally) {}

  void run() {
    check_certificate();
    if (ours_.relation == Relation::undecided) {
      ++tally_.undecided;
      return;
    }
    try {
      ours_.relation == Relation::apart ? compare_apart() : compare_overlapping();
    } catch (const std::exception&) {
      ++tally_.thrown;
    }
  }

 private:
  void fault(const char* what, double theirs) {
    ++tally_.faults;
    std::printf("%s: ours %.17g, theirs %.17g\n", what, ours_.mm, theirs);
    print("a", a_);
    print("b", b_);
  }

  void check_certificate() {
    const Vec3& d = ours_.direction;
    const double lower = glm::dot(b_.centre - a_.centre, d) - half_width(a_, d) - half_width(b_, d);
    const double upper = glm::length(ours_.on_b - ours_.on_a);
    tally_.worst_error = std::max(tally_.worst_error, std::abs(lower - ours_.mm));
    bool good = std::abs(lower - ours_.mm) <= certified && std::abs(glm::length(d) - 1.0) <= 1e-12;
    good = good && outside(a_, ours_.on_a) <= certified && outside(b_, ours_.on_b) <= certified;
    good = good && std::abs(upper - std::abs(ours_.mm)) <= certified;
    if (!good) fault("our bounds do not meet", lower);
  }

  void compare_apart() {
    ++tally_.apart;
    fcl::DistanceRequestd request(true);
    request.distance_tolerance = 1e-9;
    fcl::DistanceResultd result;
    const auto a = object(a_);
    const auto b = object(b_);
    const double theirs = fcl::distance(&a, &b, request, result);
    if (theirs <= 0.0) {
      ++tally_.no_distance;
      if (ours_.mm > 1e-3) fault("they see an overlap where our bounds prove a distance", theirs);
      return;
    }
    const bool curved = a_.round || b_.round;
    const double off = theirs - ours_.mm;
    tally_.worst = std::max(tally_.worst, std::abs(off));
    if (off < -flat_allowed || off > (curved ? curved_allowed : flat_allowed)) fault("distance", theirs);
  }

  void compare_overlapping() {
    ++tally_.overlapping;
    fcl::CollisionRequestd request(16, true);
    fcl::CollisionResultd result;
    const auto a = object(a_);
    const auto b = object(b_);
    fcl::collide(&a, &b, request, result);
    if (!result.isCollision()) {
      if (ours_.mm < -1e-6) fault("they see no overlap", 0.0);
      return;
    }
    if (a_.round || b_.round) return;
    double theirs = 0.0;
    for (std::size_t i = 0; i < result.numContacts(); ++i) {
      theirs = std::max(theirs, result.getContact(i).penetration_depth);
    }
    if (theirs < -ours_.mm - flat_allowed || theirs > -1.05 * ours_.mm + flat_allowed) fault("depth", -theirs);
  }

  const Body& a_;
  const Body& b_;
  Gap ours_;
  Tally& tally_;
};

}  // namespace

int main(int count, char** words) {
  const int pairs = count > 1 ? std::atoi(words[1]) : 100000;
  Random random(20240607);
  int faults = 0;
  for (const auto& [name, round_a, round_b] :
       {std::tuple{"box-box", false, false}, {"box-cylinder", false, true}, {"cylinder-cylinder", true, true}}) {
    Tally tally;
    for (int i = 0; i < pairs / 3; ++i) {
      const bool aligned = i % 10 == 0;
      const Body a = any_body(random, round_a, aligned);
      const Body b = any_body(random, round_b, aligned);
      Comparison(a, b, tally).run();
    }
    std::printf(
        "%-18s apart %d, overlapping %d, undecided %d; theirs less ours at most %.2g mm apart; our bounds meet "
        "within %.2g mm; they threw %d, gave no distance %d; faults %d\n",
        name, tally.apart, tally.overlapping, tally.undecided, tally.worst, tally.worst_error, tally.thrown,
        tally.no_distance, tally.faults);
    const double share = tally.overlapping / static_cast<double>(tally.apart + tally.overlapping);
    if (!(share > 0.2 && share < 0.8)) {
      std::printf("the mix is one-sided: %.2f overlap\n", share);
      ++faults;
    }
    faults += tally.faults;
  }
  return faults == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
