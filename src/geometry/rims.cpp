#include "geometry/rims.h"

#include "geometry/polish.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace baywright::geometry {

namespace {

/// Two rims by bisection of the sphere. In a cell about d, no direction has more separation than the support point x of
/// d allows: s(d') <= x . d'. Cells that could hold a better direction than the best are halved down to `smallest`;
/// from those that are left, uphill.
class RimsBySphere {
 public:
  RimsBySphere(Search& search, const Pair& pair)
      : search_(search), pair_(pair), turn_(glm::length(glm::cross(pair.a.w, pair.b.w))) {}

  void run() {
    static constexpr std::array<double, 2> signs{1.0, -1.0};
    for (const double x : signs) {
      for (const double y : signs) {
        for (const double z : signs) divide({x, 0.0, 0.0}, {0.0, y, 0.0}, {0.0, 0.0, z}, 2);
      }
    }
    std::sort(left_.begin(), left_.end(), [](const Cell& p, const Cell& q) { return p.most > q.most; });
    std::vector<Vec3> tops;
    for (const Cell& cell : left_) {
      if (tops.size() >= most_tops || !search_.better(cell.most)) break;
      const bool climbed = std::any_of(tops.begin(), tops.end(), [&](const Vec3& top) {
        return glm::dot(top - cell.middle, top - cell.middle) < 36.0 * smallest * smallest;
      });
      if (climbed) continue;
      tops.push_back(cell.middle);
      tops.push_back(climb(cell.middle));
    }
  }

 private:
  struct Cell {
    Vec3 middle;
    double most;
  };
  static constexpr double smallest = 0.01;       // radians; tops closer than that on one slope are taken for one
  static constexpr std::size_t most_tops = 256;  // 60 were seen in 50,000 random pairs
  static constexpr int most_cells = 20000;       // 4200 were seen; a bound on time, not on trust

  void divide(const Vec3& p, const Vec3& q, const Vec3& r, int coarse) {
    const Vec3 pq = glm::normalize(p + q);
    const Vec3 qr = glm::normalize(q + r);
    const Vec3 rp = glm::normalize(r + p);
    for (const auto& [i, j, k] : {std::array<Vec3, 3>{p, pq, rp}, {q, qr, pq}, {r, rp, qr}, {pq, qr, rp}}) {
      if (coarse > 1) {
        divide(i, j, k, coarse - 1);
      } else {
        visit(i, j, k);
      }
    }
  }

  void visit(const Vec3& p, const Vec3& q, const Vec3& r) {
    const Vec3 middle = glm::normalize(p + q + r);
    const double cosine = std::min({1.0, glm::dot(middle, p), glm::dot(middle, q), glm::dot(middle, r)});
    const double sine = std::sqrt(std::max(0.0, 1.0 - cosine * cosine));
    // Cylinders are symmetric about their centres, so a direction against `apart` never beats its opposite.
    if (glm::dot(middle, pair_.apart) < -sine * glm::length(pair_.apart)) return;
    if (++cells_ > most_cells) return;
    const Vec3 x = pair_.apart + (pair_.b.farthest(-middle) - pair_.a.farthest(middle));
    const double separation = glm::dot(x, middle);
    search_.offer(middle, separation);
    const double across = glm::length(x - middle * separation);
    const double most = separation * cosine + across * sine;
    if (!search_.better(most) || !curved_enough(middle, sine, most)) return;
    if (sine > smallest) {
      divide(p, q, r, 1);
    } else {
      left_.push_back({middle, most});
    }
  }

  /// The boundary curves along the tangent t of each rim with radius r / |d across the axis|. Across one tangent only
  /// the other curves, by the square of the sine between them, which is |d . wa x wb| over both |d across the axis|.
  /// The ball that touches from within is no larger than that: nearly parallel axes leave little to look through.
  [[nodiscard]] bool curved_enough(const Vec3& middle, double sine, double most) const {
    if (most >= 0.0) return true;
    const auto across = [&](const Vec3& axis) { return glm::length(middle - axis * glm::dot(middle, axis)) - sine; };
    const double of_a = across(pair_.a.w);
    const double of_b = across(pair_.b.w);
    if (!(of_a > 0.0) || !(of_b > 0.0)) return true;
    const double turn = std::min(1.0, turn_ / (of_a * of_b));
    return -most <= std::min(pair_.a.radius / of_a, pair_.b.radius / of_b) * turn * turn;
  }

  Vec3 climb(Vec3 d) {
    double value = pair_.separation(d);
    for (int i = 0; i < 8; ++i) {
      const double before = value;
      const Solutions solutions(pair_, d, 2.0 * smallest);
      Directions near;
      solutions.add_flat(near);
      solutions.add_curved(near);
      solutions.add_rims(near);
      for (const Vec3& next : near) {
        const double reached = pair_.separation(next);
        if (!(reached > value)) continue;
        value = reached;
        d = next;
      }
      if (!(value > before)) break;
    }
    search_.offer(d, value);
    return d;
  }

  Search& search_;
  const Pair& pair_;
  double turn_;  // sine between the axes
  std::vector<Cell> left_;
  int cells_ = 0;
};

}  // namespace

void rims_against_rims(const Pair& pair, Search& search) {
  RimsBySphere(search, pair).run();
}

}  // namespace baywright::geometry
