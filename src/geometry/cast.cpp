// Along a line the signed gap of convex bodies is a convex function of the shift: it is the largest of s(d) + t d.n
// over all d. Each direction gives a line below it, so Newton from outside comes to the first zero without passing it
// (conservative advancement; Mirtich, PhD thesis, Berkeley 1996, here with the slope of the supporting plane).
#include "geometry/cast.h"

#include "geometry/body.h"
#include "geometry/convex.h"
#include "geometry/limits.h"
#include "geometry/sector.h"

#include <algorithm>
#include <cmath>
#include <queue>

namespace baywright::geometry {

namespace {

constexpr int most_steps = 80;

/// The gap as a function of how far b is shifted along n.
class Line {
 public:
  Line(const Piece& a, const Pose& pose_a, const Piece& b, const Pose& pose_b, const Vec3& n)
      : swap_(!in_order(a, pose_a, b, pose_b)),
        pair_(swap_ ? Pair(b, pose_b, a, pose_a) : Pair(a, pose_a, b, pose_b)),
        start_(pair_.apart),
        n_(swap_ ? -n : n) {}

  /// Outside these shifts the two lie in different slabs square to n.
  [[nodiscard]] double first() const { return -glm::dot(start_, n_) - pair_.b.extent(n_) - pair_.a.extent(-n_); }
  [[nodiscard]] double last() const { return -glm::dot(start_, n_) + pair_.a.extent(n_) + pair_.b.extent(-n_); }
  [[nodiscard]] double rounding() const { return pair_.rounding; }
  /// Spheres about the two pass each other.
  [[nodiscard]] bool misses() const {
    return glm::length(start_ - n_ * glm::dot(start_, n_)) > pair_.a.reach + pair_.b.reach;
  }

  /// From a to b as the caller named them; the points on both are where they are at the shift.
  [[nodiscard]] Gap at(double shift) {
    pair_.apart = start_ + n_ * shift;
    const Gap found = convex_gap(pair_);
    if (!swap_) return found;
    // The pair is measured about its own a, which is what moves here.
    Gap back = swapped(found);
    back.on_a += n_ * -shift;
    back.on_b += n_ * -shift;
    return back;
  }

 private:
  bool swap_;
  Pair pair_;
  Vec3 start_;
  Vec3 n_;
};

struct End {
  bool found = false;
  double shift = 0.0;
  double error = 0.0;
  Gap gap;
};

/// From `from` along `sense` (+1 or -1) to the first touch; nothing when the slab's far end comes first.
End first_touch(Line& line, const Vec3& n, double from, double to, double sense) {
  End end;
  end.shift = from;
  for (int i = 0; i < most_steps; ++i) {
    end.gap = line.at(end.shift);
    const double approach = -glm::dot(end.gap.direction, n) * sense;
    if (!(approach > 0.0)) {
      // The gap only opens from here on; at a touch the slope of the next moment is not known, so the caller looks.
      end.found = end.gap.mm - end.gap.error <= touch_mm;
      end.error = touch_mm;
      return end;
    }
    const double step = end.gap.mm / approach;
    end.error = (std::abs(end.gap.mm) + end.gap.error) / approach + line.rounding();
    end.found = true;
    if (std::abs(end.gap.mm) <= 1e-12 || end.gap.mm <= end.gap.error) break;
    end.shift += step * sense;
    if ((end.shift - to) * sense > 0.0) {
      end.found = false;
      return end;
    }
  }
  return end;
}

}  // namespace

Stay stay(const Piece& a, const Pose& pose_a, const Piece& b, const Pose& pose_b, const Vec3& n) {
  Line line(a, pose_a, b, pose_b, n);
  Stay found;
  if (line.misses()) return found;
  const double first = line.first();
  const double last = line.last();
  const End in = first_touch(line, n, first, last, 1.0);
  if (!in.found) return found;
  const End out = first_touch(line, n, last, first, -1.0);
  if (!out.found || !(in.shift < out.shift)) return found;
  // The gap is convex along the line, so half way between its zeros it is at least half as deep as anywhere.
  const Gap middle = line.at(0.5 * (in.shift + out.shift));
  if (!(middle.mm + middle.error < -touch_mm)) return found;
  found.meets = true;
  found.in = in.shift;
  found.out = out.shift;
  found.error = std::max(in.error, out.error);
  found.at_in = {in.gap.on_a, in.gap.on_b - n * in.shift};
  found.at_out = {out.gap.on_a, out.gap.on_b - n * out.shift};
  return found;
}

namespace {

constexpr int most_sectors = 400;
constexpr double closed_mm = 1e-10;

struct Item {
  Stay stay;
  Stretches at;
  friend bool operator<(const Item& p, const Item& q) { return p.stay.in > q.stay.in; }  // first to meet first
};

bool along(const Vec3& axis, const Vec3& n) {
  return glm::length(glm::cross(axis, n)) <= 1e-14;
}

}  // namespace

Stay ring_stay(const Piece& a, const Pose& pose_a, const Piece& b, const Pose& pose_b, const Vec3& n) {
  const Stay around = stay(a, pose_a, b, pose_b, n);
  if (!around.meets) return {};
  if (along(pose_a.turn[2], n) && along(pose_b.turn[2], n)) {
    // Both of one section along the line: free at every shift or blocked at the first.
    const Pose middle{pose_b.turn, pose_b.shift + n * (0.5 * (around.in + around.out))};
    return gap(a, pose_a, b, middle).relation == Relation::overlapping ? around : Stay{};
  }
  // Most often the outer discs touch on material, and that is the answer.
  const Gap touch = gap(a, pose_a, b, {pose_b.turn, pose_b.shift + n * around.in});
  if (touch.mm <= closed_mm + touch.error) {
    Stay met = around;
    met.at_in = {touch.on_a, touch.on_b - n * around.in};
    return met;
  }
  std::priority_queue<Item> queue;
  Stay first;  // of the parts that are surely material
  int work = 0;
  const auto add = [&](const Stretches& at) {
    ++work;
    const Stay wide = stay(hull(a, at.a), pose_a, hull(b, at.b), pose_b, n);
    if (!wide.meets || (first.meets && wide.in > first.in)) return;
    queue.push({wide, at});
    const auto core_a = core(a, at.a);
    const auto core_b = core(b, at.b);
    if (!core_a || !core_b) return;
    const Stay sure = stay(*core_a, pose_a, *core_b, pose_b, n);
    if (sure.meets && (!first.meets || sure.in < first.in)) first = sure;
  };
  for (const Stretch& of_a : stretches(a)) {
    for (const Stretch& of_b : stretches(b)) add({of_a, of_b});
  }
  while (!queue.empty() && work < most_sectors) {
    const Item item = queue.top();
    if (first.meets && first.in - item.stay.in <= closed_mm) break;
    queue.pop();
    for (const Stretches& half : halved(item.at)) add(half);
  }
  if (!first.meets) return {};  // if anything is met, it is thinner than what hull and core differ by
  const double low = queue.empty() ? first.in : std::min(first.in, queue.top().stay.in);
  first.error += 0.5 * (first.in - low);
  first.in = 0.5 * (first.in + low);
  return first;
}

}  // namespace baywright::geometry
