// Steps:
//   1. The nearest triangles, or triangle and piece. Farther than a touch: they overlap only if one holds the other,
//   and
//      one point of each connected surface tells.
//   2. Triangles that cross by more than a touch make a sure overlap.
//   3. Where all that meets only touches, solids can still overlap: faces in one plane, edges on edges. Then lines are
//      sent inward from the touching triangles; a point that lies deeper than a touch in both is a sure overlap. None
//      found: they touch.
#include "geometry/mesh_meeting.h"

#include "geometry/convex.h"
#include "geometry/limits.h"
#include "geometry/mesh_inside.h"
#include "geometry/mesh_near.h"
#include "geometry/sheet.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace baywright::geometry {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr std::size_t most_contacts = 4096;  // looked at; each costs a microsecond or two
constexpr std::size_t most_on_ring = 128;    // the same for a ring, where each may cost a millisecond
constexpr std::size_t most_crossing = 64;    // kept
constexpr std::size_t most_lines = 64;       // triangles that lines are sent from

Vec3 middle_of(const Piece& piece) {
  if (piece.base == Piece::Base::ring) return {0.5 * (piece.bore + piece.radius), 0.0, 0.5 * piece.height};
  Vec2 sum{0.0};
  for (const Vec2& corner : piece.corners) sum += corner;
  if (!piece.corners.empty()) sum /= static_cast<double>(piece.corners.size());
  return {sum, 0.5 * piece.height};
}

/// A mesh against one piece: walks down the tree, the nearer child first.
class PieceSearch {
 public:
  PieceSearch(const Placed& mesh, const Piece& piece, const Pose& pose, int name)
      : mesh_(mesh),
        tree_(mesh.solid.mesh()->data().tree),
        piece_(piece),
        pose_(pose),
        name_(name),
        from_mesh_(pose.inverse().after(mesh.pose)),
        spread_(sizes(from_mesh_.turn)) {
    set(bounds(piece, mesh.pose.inverse().after(pose)), middle_, half_);
    set(bounds(piece, Pose{}), own_middle_, own_half_);
    slack_ =
        1e-14 * (glm::length(mesh.pose.shift) + glm::length(pose.shift) + glm::length(middle_) + tree_.node(0).size);
  }

  /// Betters `best`; stops at an overlap.
  void nearest(Gap& best) {
    best_ = &best;
    if (apart(0) < best.mm) walk(0);
  }

  /// Adds what comes within `reach`.
  void within(double reach, std::vector<Gap>& found) {
    reach_ = reach + slack_;
    if (piece_.base == Piece::Base::ring) most_ = found.size() + most_on_ring;
    found_ = &found;
    if (apart(0) <= reach_) walk_within(0);
  }

 private:
  static void set(const Bounds& box, Vec3& middle, Vec3& half) {
    middle = 0.5 * (box.low + box.high);
    half = 0.5 * (box.high - box.low);
  }
  [[nodiscard]] double apart(int i) const {
    const TriangleTree::Node& node = tree_.node(i);
    const double along_mesh = square_apart(node.middle, node.half, middle_, half_);
    const Seen box = seen(node, from_mesh_, spread_);
    const double along_piece = square_apart(box.middle, box.half, own_middle_, own_half_);
    const double apart = std::sqrt(std::max(along_mesh, along_piece));
    if (piece_.base != Piece::Base::ring) return apart - slack_;
    // In the bore the boxes tell nothing.
    const Vec3 far = glm::abs(box.middle) + box.half;
    return std::max(apart, piece_.bore - std::hypot(far.x, far.y)) - slack_;
  }
  /// Whether the whole triangle lies in the bore of a ring, farther than `reach` from it.
  [[nodiscard]] bool in_bore(int i, double reach) const {
    if (piece_.base != Piece::Base::ring) return false;
    double far = 0.0;
    for (const Vec3& corner : tree_.at(i)) {
      const Vec3 p = from_mesh_.point(corner);
      far = std::max(far, std::hypot(p.x, p.y));
    }
    return piece_.bore - far - slack_ > reach;
  }
  [[nodiscard]] Corners placed(int i) const {
    const Corners& c = tree_.at(i);
    return {mesh_.pose.point(c[0]), mesh_.pose.point(c[1]), mesh_.pose.point(c[2])};
  }
  [[nodiscard]] Gap measured(const Corners& corners, int i) const {
    const Sheet one = sheet(corners);
    Gap found = gap(one.piece, one.pose, piece_, pose_);
    found.piece_a = tree_.name(i);
    found.piece_b = name_;
    return found;
  }

  void walk(int i) {
    const TriangleTree::Node& node = tree_.node(i);
    if (node.count == 0) {
      int near = node.first;
      int far = node.first + 1;
      double to_near = apart(near);
      double to_far = apart(far);
      if (to_far < to_near) {
        std::swap(near, far);
        std::swap(to_near, to_far);
      }
      if (to_near < std::max(best_->mm, 0.0)) walk(near);
      if (to_far < std::max(best_->mm, 0.0)) walk(far);
      return;
    }
    for (int k = node.first; k < node.first + node.count; ++k) {
      const Corners corners = placed(k);
      if (parted(corners) || in_bore(k, std::max(best_->mm, 0.0))) continue;
      const Gap found = measured(corners, k);
      if (!(found.mm < best_->mm)) continue;
      *best_ = found;
      known_ = found.mm > 0.0;
      if (known_) least_ = glm::dot(farthest(piece_, pose_, -found.direction), found.direction);
    }
  }

  /// As far from the piece as the best along the direction of the best.
  [[nodiscard]] bool parted(const Corners& c) const {
    if (!known_) return false;
    const Vec3& d = best_->direction;
    return least_ - std::max({glm::dot(c[0], d), glm::dot(c[1], d), glm::dot(c[2], d)}) > best_->mm;
  }

  void walk_within(int i) {
    if (found_->size() >= most_ || crossing_ >= most_crossing) return;
    const TriangleTree::Node& node = tree_.node(i);
    if (node.count == 0) {
      for (const int child : {node.first, node.first + 1}) {
        if (apart(child) <= reach_) walk_within(child);
      }
      return;
    }
    for (int k = node.first; k < node.first + node.count; ++k) {
      if (in_bore(k, reach_) || found_->size() >= most_) continue;
      const Gap found = measured(placed(k), k);
      if (found.relation == Relation::overlapping) ++crossing_;
      if (found.mm <= reach_) found_->push_back(found);
    }
  }

  const Placed& mesh_;
  const TriangleTree& tree_;
  const Piece& piece_;
  const Pose& pose_;
  int name_;
  Pose from_mesh_;
  Mat3 spread_;
  Vec3 middle_;
  Vec3 half_;
  Vec3 own_middle_;
  Vec3 own_half_;
  double slack_ = 0.0;
  double reach_ = 0.0;
  std::size_t most_ = most_contacts;
  std::size_t crossing_ = 0;
  bool known_ = false;
  double least_ = 0.0;
  Gap* best_ = nullptr;
  std::vector<Gap>* found_ = nullptr;
};

class Meet {
 public:
  Meet(const Placed& a, const Placed& b, bool first)
      : a_(a), b_(b), first_(first), mesh_b_(b.solid.mesh() != nullptr) {}

  Meeting run() {
    measure();
    if (found_.surfaces.mm - found_.surfaces.error <= touch_mm) contacts();
    if (!found_.overlapping) held();
    if (!found_.overlapping && !contacts_.empty()) send_lines();
    return std::move(found_);
  }

 private:
  void measure() {
    Gap& best = found_.surfaces;
    best.mm = infinity;
    if (mesh_b_) {
      measure_meshes();
    } else {
      const auto pieces = b_.solid.pieces();
      for (std::size_t j = 0; j < pieces.size(); ++j) {
        PieceSearch(a_, pieces[j], b_.pose, static_cast<int>(j)).nearest(best);
      }
    }
    if (!std::isfinite(best.mm)) {  // figures that are no numbers
      best = Gap{};
      best.error = infinity;
    }
  }

  void measure_meshes() {
    Gap& best = found_.surfaces;
    const SurfaceNear near = nearest(a_, b_, infinity);
    best.mm = near.mm;
    best.error = near.error;
    best.on_a = near.on_a;
    best.on_b = near.on_b;
    best.piece_a = near.a;
    best.piece_b = near.b;
    best.relation = relation(best.mm, best.error, Bound::exact);
    if (!std::isfinite(near.mm)) return;
    const Vec3 link = near.on_b - near.on_a;
    const double length = glm::length(near.normal);
    const Vec3 outward = sheet(a_, near.a).pose.turn[2];
    // The link of points that nearly touch is mostly rounding; what they lie on tells the direction better.
    if (length > 0.0) {
      best.direction = near.normal / length;
      const double sense =
          near.mm > 16.0 * near.error ? glm::dot(best.direction, link) : glm::dot(best.direction, outward);
      if (sense < 0.0) best.direction = -best.direction;
    } else {
      best.direction = glm::length(link) > 0.0 ? glm::normalize(link) : outward;
    }
  }

  void contacts() {
    if (!mesh_b_) {
      if (first_) take(found_.surfaces);
      if (found_.overlapping) return;
      const auto pieces = b_.solid.pieces();
      for (std::size_t j = 0; j < pieces.size(); ++j) {
        PieceSearch(a_, pieces[j], b_.pose, static_cast<int>(j)).within(touch_mm, contacts_);
      }
      for (const Gap& contact : contacts_) take(contact);
    } else {
      // Most often the nearest pair tells it alone.
      if (first_) take(measured({found_.surfaces.piece_a, found_.surfaces.piece_b}));
      if (found_.overlapping) return;
      for (const TrianglePair& pair : pairs_within(a_, b_, touch_mm, most_contacts)) {
        contacts_.push_back(measured(pair));
        take(contacts_.back());
        if (found_.overlapping && (first_ || found_.crossing.size() >= most_crossing)) break;
      }
    }
    std::sort(found_.crossing.begin(), found_.crossing.end(), [](const Gap& p, const Gap& q) { return p.mm < q.mm; });
    if (found_.crossing.size() > most_crossing) found_.crossing.resize(most_crossing);
  }

  [[nodiscard]] Gap measured(const TrianglePair& pair) const {
    const Sheet one = sheet(a_, pair.a);
    const Sheet other = sheet(b_, pair.b);
    Gap contact = gap(one.piece, one.pose, other.piece, other.pose);
    contact.piece_a = pair.a;
    contact.piece_b = pair.b;
    return contact;
  }

  void take(const Gap& contact) {
    if (contact.relation != Relation::overlapping) return;
    found_.overlapping = true;
    found_.crossing.push_back(contact);
  }

  bool is_within_both(const Vec3& p) {
    const double least = std::min(depth(a_, p), depth(b_, p));
    if (!(least > touch_mm)) return false;
    found_.overlapping = found_.within = true;
    found_.point = p;
    found_.depth = least;
    return true;
  }

  /// Whether one of the connected surfaces of either lies in the other.
  void held() {
    const auto one_of = [this](const Placed& of, const Placed& in) {
      const Mesh* mesh = of.solid.mesh();
      if (mesh == nullptr) {
        for (const Piece& piece : of.solid.pieces()) {
          if (reaches(in, of.pose.point(middle_of(piece)))) return;
        }
        return;
      }
      for (const int triangle : mesh->data().shells) {
        if (reaches(in, of.pose.point(mesh->data().corners(triangle)[0]))) return;
      }
    };
    if (b_.solid.mesh() == nullptr || b_.solid.mesh()->closed()) one_of(a_, b_);
    if (!found_.overlapping && a_.solid.mesh()->closed()) one_of(b_, a_);
  }

  /// The point is of the one; whether it is well within the other.
  bool reaches(const Placed& other, const Vec3& p) {
    const double deep = depth(other, p);
    if (!(deep > touch_mm)) return false;
    found_.overlapping = found_.within = true;
    found_.point = p;
    found_.depth = deep;
    return true;
  }

  void send_lines() {
    const std::size_t step = contacts_.size() / most_lines + 1;
    for (std::size_t i = 0; i < contacts_.size(); i += step) {
      const Gap& contact = contacts_[i];
      if (send_from(a_, contact.piece_a, contact.on_a)) return;
      if (mesh_b_ && send_from(b_, contact.piece_b, contact.on_b)) return;
      if (mesh_b_) continue;
      const Vec3 middle = b_.pose.point(middle_of(b_.solid.pieces()[static_cast<std::size_t>(contact.piece_b)]));
      if (send(middle, sheet(a_, contact.piece_a).pose.turn[2])) return;
    }
  }

  /// From the middle of the triangle and from points nearer to the contact.
  bool send_from(const Placed& mesh, int triangle, const Vec3& contact) {
    const Sheet one = sheet(mesh, triangle);
    Vec2 middle{0.0};
    for (const Vec2& corner : one.piece.corners) middle += corner / 3.0;
    const Vec3 centre = one.pose.point(Vec3{middle, 0.0});
    for (const double part : {1.0, 0.1, 0.001}) {
      if (send(contact + (centre - contact) * part, -one.pose.turn[2])) return true;
    }
    return false;
  }

  bool send(const Vec3& p, const Vec3& d) {
    for (const Span& of_a : spans(a_, p, d)) {
      for (const Span& of_b : spans(b_, p, d)) {
        const double in = std::max(of_a.in, of_b.in);
        const double out = std::min(of_a.out, of_b.out);
        if (out - in > 2.0 * touch_mm && is_within_both(p + d * (0.5 * (in + out)))) return true;
      }
    }
    return false;
  }

  const Placed& a_;
  const Placed& b_;
  bool first_;
  bool mesh_b_;
  Meeting found_;
  std::vector<Gap> contacts_;
};

}  // namespace

Meeting meeting(const Placed& a, const Placed& b, bool first) {
  return Meet(a, b, first).run();
}

}  // namespace baywright::geometry
