// Solids of several pieces. Apart, the gap is the least of the pieces' gaps. Overlapping, every pair of pieces has to
// be freed by one shift: along a direction each pair overlaps over one stretch of shifts (cast.h), and the way out is
// the first shift that lies in none of the stretches. The directions tried are the face normals of all pieces and the
// ways out of the pairs. The result is sure; it is the shortest if it is no longer than what the deepest pair needs
// alone.
#include "geometry/gap.h"

#include "geometry/body.h"
#include "geometry/cast.h"
#include "geometry/convex.h"
#include "geometry/limits.h"
#include "geometry/mesh_gap.h"
#include "geometry/ring.h"

#include <algorithm>
#include <limits>
#include <vector>

namespace baywright::geometry {

namespace {

struct PiecePair {
  int a;
  int b;
  Gap gap;
};

Gap named(Gap gap, int piece_a, int piece_b) {
  gap.piece_a = piece_a;
  gap.piece_b = piece_b;
  return gap;
}

/// More than any outline that is drawn by hand comes to.
constexpr std::size_t many_pieces = 48;

class Union {
 public:
  Union(const Placed& a, const Placed& b) : a_(a), b_(b) {}

  [[nodiscard]] Gap run() {
    measure();
    if (overlapping_.empty()) return nearest_;
    return way_out();
  }

 private:
  void measure() {
    const auto pieces_a = a_.solid.pieces();
    const auto pieces_b = b_.solid.pieces();
    std::vector<Bounds> boxes_b;
    for (const Piece& piece : pieces_b) boxes_b.push_back(bounds(piece, b_.pose));
    nearest_.mm = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < pieces_a.size(); ++i) {
      const Bounds box = bounds(pieces_a[i], a_.pose);
      for (std::size_t j = 0; j < pieces_b.size(); ++j) {
        if (box.distance(boxes_b[j]) > nearest_.mm + touch_mm) continue;
        const Gap found = gap(pieces_a[i], a_.pose, pieces_b[j], b_.pose);
        if (found.relation == Relation::overlapping) {
          overlapping_.push_back({static_cast<int>(i), static_cast<int>(j), found});
        }
        if (found.mm < nearest_.mm) nearest_ = named(found, static_cast<int>(i), static_cast<int>(j));
      }
    }
  }

  [[nodiscard]] std::vector<Vec3> directions() const {
    std::vector<Vec3> found;
    const auto add = [&found](const Vec3& d) {
      const bool known =
          std::any_of(found.begin(), found.end(), [&](const Vec3& f) { return glm::dot(f - d, f - d) < 1e-18; });
      if (!known) found.push_back(d);
    };
    const auto add_faces = [&](const Placed& placed, std::size_t piece) {
      for (const Vec3& normal : face_normals(placed.solid.pieces()[piece], placed.pose)) {
        add(normal);
        add(-normal);
      }
    };
    for (const PiecePair& pair : overlapping_) add(pair.gap.direction);
    // Of a solid with many pieces, a sheet full of round holes, only those that overlap: each direction asks all
    // pieces, and a way out along the faces of a far one is hardly ever the shorter.
    for (const PiecePair& pair : overlapping_) {
      add_faces(a_, static_cast<std::size_t>(pair.a));
      add_faces(b_, static_cast<std::size_t>(pair.b));
    }
    for (const Placed* placed : {&a_, &b_})
      if (const std::size_t count = placed->solid.pieces().size(); count <= many_pieces)
        for (std::size_t piece = 0; piece < count; ++piece) add_faces(*placed, piece);
    return found;
  }

  struct Exit {
    double shift = std::numeric_limits<double>::infinity();
    double error = 0.0;
    Touch touch;
    int a = 0;
    int b = 0;
  };

  /// The first shift along d at which nothing overlaps; infinite if that is not below `enough`.
  [[nodiscard]] Exit exit_along(const Vec3& d, double enough) const {
    struct Stretch {
      Stay stay;
      int a;
      int b;
    };
    std::vector<Stretch> stretches;
    const auto pieces_a = a_.solid.pieces();
    const auto pieces_b = b_.solid.pieces();
    const auto add = [&](int i, int j) {
      const Piece& of_a = pieces_a[static_cast<std::size_t>(i)];
      const Piece& of_b = pieces_b[static_cast<std::size_t>(j)];
      // Already past each other along d, or far ahead: not on the way.
      const double past = separation(of_a, a_.pose, of_b, b_.pose, d);
      const double ahead = separation(of_a, a_.pose, of_b, b_.pose, -d);
      if (past >= 0.0 || ahead > enough) return;
      const Stay found = stay(of_a, a_.pose, of_b, b_.pose, d);
      if (found.meets && found.out > 0.0) stretches.push_back({found, i, j});
    };
    Exit exit;
    // The overlapping pairs alone often rule the direction out.
    for (const PiecePair& pair : overlapping_) {
      add(pair.a, pair.b);
      if (!stretches.empty() && stretches.back().stay.in < 0.0 && stretches.back().stay.out >= enough) return exit;
    }
    for (int i = 0; i < static_cast<int>(pieces_a.size()); ++i) {
      for (int j = 0; j < static_cast<int>(pieces_b.size()); ++j) {
        const bool known = std::any_of(overlapping_.begin(), overlapping_.end(),
                                       [&](const PiecePair& pair) { return pair.a == i && pair.b == j; });
        if (!known) add(i, j);
      }
    }
    std::sort(stretches.begin(), stretches.end(),
              [](const Stretch& p, const Stretch& q) { return p.stay.in < q.stay.in; });
    double shift = 0.0;
    for (const Stretch& stretch : stretches) {
      // A stretch that begins where the last one ended is touched, not entered.
      if (stretch.stay.in >= (shift > 0.0 ? shift - touch_mm : shift)) break;
      if (stretch.stay.out <= shift) continue;
      shift = stretch.stay.out;
      exit = {shift, stretch.stay.error, stretch.stay.at_out, stretch.a, stretch.b};
      if (shift >= enough) return {};
    }
    return exit;
  }

  [[nodiscard]] Gap way_out() const {
    double deepest = 0.0;
    double error = 0.0;
    for (const PiecePair& pair : overlapping_) {
      if (pair.gap.bound == Bound::exact) deepest = std::max(deepest, -pair.gap.mm);
      error = std::max(error, pair.gap.error);
    }
    Exit best;
    Gap found;
    for (const Vec3& d : directions()) {
      const Exit exit = exit_along(d, best.shift);
      if (!(exit.shift < best.shift)) continue;
      best = exit;
      found.direction = d;
      if (best.shift <= deepest + touch_mm) break;
    }
    if (!(best.shift < std::numeric_limits<double>::infinity())) return nearest_;  // cannot be: any normal frees all
    found.mm = -best.shift;
    found.error = std::max(error, best.error);
    found.bound = best.shift <= deepest + touch_mm ? Bound::exact : Bound::at_least;
    found.relation = Relation::overlapping;
    found.on_a = best.touch.on_a;
    found.on_b = best.touch.on_b;
    return named(found, best.a, best.b);
  }

  const Placed& a_;
  const Placed& b_;
  Gap nearest_;
  std::vector<PiecePair> overlapping_;
};

}  // namespace

Gap gap(const Piece& a, const Pose& pose_a, const Piece& b, const Pose& pose_b) {
  if (a.base == Piece::Base::ring) return ring_gap(a, pose_a, b, pose_b);
  if (b.base == Piece::Base::ring) return swapped(ring_gap(b, pose_b, a, pose_a));
  return convex_gap(a, pose_a, b, pose_b);
}

Gap gap(const Placed& a, const Placed& b) {
  if (a.solid.mesh() != nullptr || b.solid.mesh() != nullptr) return mesh_gap(a, b);
  const auto pieces_a = a.solid.pieces();
  const auto pieces_b = b.solid.pieces();
  if (pieces_a.size() == 1 && pieces_b.size() == 1) return gap(pieces_a[0], a.pose, pieces_b[0], b.pose);
  return Union(a, b).run();
}

double separation(const Piece& a, const Pose& pose_a, const Piece& b, const Pose& pose_b, const Vec3& n) {
  return Pair(a, pose_a, b, pose_b).separation(n);
}

}  // namespace baywright::geometry
