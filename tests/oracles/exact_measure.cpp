#include "exact_measure.h"

#include <CGAL/Exact_predicates_exact_constructions_kernel.h>
#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace baywright::oracle {

namespace {

using Kernel = CGAL::Exact_predicates_exact_constructions_kernel;
using Number = Kernel::FT;
using Point = Kernel::Point_3;
using Vector = Kernel::Vector_3;

constexpr double margin = 1e-11;  // of a separation in doubles; ten times what rounding can do
constexpr double close_enough = 5e-11;
constexpr double endless = std::numeric_limits<double>::infinity();

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

/// A body in the world, in doubles and, once asked for, exactly.
class Stand {
 public:
  Stand(const Body& body, const Pose& pose, const Vec3& moved) : body_(body), pose_(pose), moved_(moved) {
    for (const Vec3& c : body.corners) corners_.push_back(pose.point(c) + moved);
    exact_.resize(corners_.size());
    for (const Part& part : body.parts) {
      geometry::Bounds box = geometry::Bounds::empty();
      for (const int i : part.corners) box.add(corners_[at(i)]);
      boxes_.push_back(box);
    }
  }

  [[nodiscard]] const std::vector<Part>& parts() const { return body_.parts; }
  [[nodiscard]] const geometry::Bounds& box(std::size_t part) const { return boxes_[part]; }
  [[nodiscard]] const Vec3& corner(int i) const { return corners_[at(i)]; }

  [[nodiscard]] const Point& point(int i) {
    std::optional<Point>& known = exact_[at(i)];
    if (!known) {
      const Vec3& c = body_.corners[at(i)];
      std::array<Number, 3> world;
      for (int k = 0; k < 3; ++k) {
        world[at(k)] = Number(pose_.turn[0][k]) * Number(c.x) + Number(pose_.turn[1][k]) * Number(c.y) +
                       Number(pose_.turn[2][k]) * Number(c.z) + Number(pose_.shift[k]) + Number(moved_[k]);
      }
      known = Point(world[0], world[1], world[2]);
    }
    return *known;
  }

 private:
  const Body& body_;
  const Pose& pose_;
  Vec3 moved_;
  std::vector<Vec3> corners_;
  std::vector<std::optional<Point>> exact_;
  std::vector<geometry::Bounds> boxes_;
};

/// Least of b less most of a along n, as computed: right to a fraction of `margin`, whatever unit vector n is.
double separation(const Stand& a, const Part& of_a, const Stand& b, const Part& of_b, const Vec3& n) {
  double most = -endless;
  double least = endless;
  for (const int i : of_a.corners) most = std::max(most, glm::dot(n, a.corner(i)));
  for (const int i : of_b.corners) least = std::min(least, glm::dot(n, b.corner(i)));
  return least - most;
}

/// Calls with each candidate for a separating axis, both ways being the caller's business.
template <typename Get, typename Cross, typename Use>
void for_each_axis(const Part& of_a, const Part& of_b, const Get& get, const Cross& cross, const Use& use) {
  const auto faces = [&](bool first, const Part& part) {
    for (const auto& p : part.planes) {
      use(cross(get(first, p[1]) - get(first, p[0]), get(first, p[2]) - get(first, p[0])));
    }
  };
  faces(true, of_a);
  faces(false, of_b);
  for (const auto& e : of_a.ways) {
    const auto way = get(true, e[1]) - get(true, e[0]);
    for (const auto& f : of_b.ways) use(cross(way, get(false, f[1]) - get(false, f[0])));
  }
}

/// The largest separation over the axes, in doubles: a certified lower bound less `margin`, but not the largest for
/// sure.
double separation(const Stand& a, const Part& of_a, const Stand& b, const Part& of_b) {
  double best = -endless;
  for_each_axis(
      of_a, of_b, [&](bool first, int i) { return first ? a.corner(i) : b.corner(i); },
      [](const Vec3& u, const Vec3& v) { return glm::cross(u, v); },
      [&](const Vec3& axis) {
        const double length = glm::length(axis);
        if (!(length > 1e-12)) return;
        const Vec3 n = axis / length;
        best = std::max({best, separation(a, of_a, b, of_b, n), separation(a, of_a, b, of_b, -n)});
      });
  return best;
}

struct Exact {
  int sign = 0;
  double low = 0.0;  // overlapping: between these lies the shortest way out, mm; all but equal
  double high = 0.0;
};

/// How far a part reaches along a vector: bounds from the intervals that every exact number carries, which mostly
/// decide, and the exact figures when they do not. (Comparing corner by corner would ask for exact figures on every
/// face that is square to the vector, where corners tie.)
class Reach {
 public:
  Reach(Stand& stand, const Part& part, const Vector& n) {
    for (const int i : part.corners) {
      values_.push_back(n * (stand.point(i) - CGAL::ORIGIN));
      const auto [low, high] = CGAL::to_interval(values_.back());
      most_ = {std::max(most_.first, low), std::max(most_.second, high)};
      least_ = {std::min(least_.first, low), std::min(least_.second, high)};
    }
  }
  using Bounds = std::pair<double, double>;
  [[nodiscard]] const Bounds& most() const { return most_; }
  [[nodiscard]] const Bounds& least() const { return least_; }
  [[nodiscard]] Number exact_most() const {
    std::optional<Number> found;
    for (const Number& value : values_) {
      if (CGAL::to_interval(value).second >= most_.first && (!found || value > *found)) found = value;
    }
    return *found;
  }
  [[nodiscard]] Number exact_least() const {
    std::optional<Number> found;
    for (const Number& value : values_) {
      if (CGAL::to_interval(value).first <= least_.second && (!found || value < *found)) found = value;
    }
    return *found;
  }

 private:
  std::vector<Number> values_;
  Bounds most_{-endless, -endless};
  Bounds least_{endless, endless};
};

/// All separating axes, without a wrong sign.
class Axes {
 public:
  Axes(Stand& a, const Part& of_a, Stand& b, const Part& of_b) : a_(a), b_(b), of_a_(of_a), of_b_(of_b) {}

  [[nodiscard]] Exact run() {
    for_each_axis(
        of_a_, of_b_, [&](bool first, int i) { return first ? a_.point(i) : b_.point(i); },
        [](const Vector& u, const Vector& v) { return CGAL::cross_product(u, v); },
        [&](const Vector& n) {
          if (apart_ || n == CGAL::NULL_VECTOR) return;
          const Reach reach_a(a_, of_a_, n);
          const Reach reach_b(b_, of_b_, n);
          take(n, reach_a, reach_b);
          take(n, reach_b, reach_a);
        });
    if (apart_) return {1, 0.0, 0.0};
    if (!shared_) return {0, 0.0, 0.0};
    return {-1, low_, high_};
  }

 private:
  /// The overlap of one's far end with the other's near end.
  void take(const Vector& n, const Reach& one, const Reach& other) {
    const CGAL::Interval_nt<> bounds = CGAL::Interval_nt<>(one.most().first, one.most().second) -
                                       CGAL::Interval_nt<>(other.least().first, other.least().second);
    std::optional<Number> exact;
    if (!(bounds.inf() > 0.0) && !(bounds.sup() < 0.0)) exact = one.exact_most() - other.exact_least();
    const auto sign = exact ? CGAL::sign(*exact) : bounds.inf() > 0.0 ? CGAL::POSITIVE : CGAL::NEGATIVE;
    apart_ = apart_ || sign == CGAL::NEGATIVE;
    shared_ = shared_ && sign == CGAL::POSITIVE;
    if (!shared_) return;
    auto depth = CGAL::sqrt(CGAL::square(bounds) / CGAL::Interval_nt<>(CGAL::to_interval(n.squared_length())));
    if (depth.inf() > high_) return;
    if (!(depth.sup() - depth.inf() <= margin)) {
      if (!exact) exact = one.exact_most() - other.exact_least();
      const Number square = *exact * *exact / n.squared_length();
      square.exact();
      depth = CGAL::sqrt(CGAL::Interval_nt<>(CGAL::to_interval(square)));
    }
    low_ = std::min(low_, depth.inf());
    high_ = std::min(high_, depth.sup());
  }

  Stand& a_;
  Stand& b_;
  const Part& of_a_;
  const Part& of_b_;
  bool apart_ = false;
  bool shared_ = true;
  double low_ = endless;
  double high_ = endless;
};

Exact by_axes(Stand& a, const Part& of_a, Stand& b, const Part& of_b) {
  return Axes(a, of_a, b, of_b).run();
}

struct Nearest {
  double mm = endless;
  Vec3 from{0.0};
  Vec3 to{0.0};
  void offer(const Vec3& p, const Vec3& q) {
    const double length = glm::length(q - p);
    if (length < mm) *this = {length, p, q};
  }
};

double share_of(double part, double whole) {
  return whole > 0.0 ? std::clamp(part / whole, 0.0, 1.0) : 0.0;
}

/// Some near points of two segments; the nearest unless they are nearly parallel. They lie on the segments in any case.
void edge_to_edge(const Vec3& p, const Vec3& u, const Vec3& q, const Vec3& v, Nearest& nearest) {
  const Vec3 r = q - p;
  const double uu = glm::dot(u, u);
  const double vv = glm::dot(v, v);
  const double uv = glm::dot(u, v);
  double s = share_of(glm::dot(u, r) * vv - glm::dot(v, r) * uv, uu * vv - uv * uv);
  const double t = share_of(s * uv - glm::dot(v, r), vv);
  s = share_of(t * uv + glm::dot(u, r), uu);
  nearest.offer(p + s * u, q + t * v);
}

/// The foot of p on the triangle's plane, if it lies inside. Its edges are met elsewhere.
std::optional<Vec3> foot(const Vec3& p, const Vec3& a, const Vec3& b, const Vec3& c) {
  const Vec3 u = b - a;
  const Vec3 v = c - a;
  const Vec3 n = glm::cross(u, v);
  const double nn = glm::dot(n, n);
  const double t = glm::dot(glm::cross(u, p - a), n) / nn;
  const double s = glm::dot(glm::cross(p - a, v), n) / nn;
  if (!(s >= 0.0 && t >= 0.0 && s + t <= 1.0)) return std::nullopt;
  return a + s * u + t * v;
}

/// The nearest points by doubles: an upper bound, and nearly always the truth.
Nearest by_doubles(const Stand& a, const Part& of_a, const Stand& b, const Part& of_b) {
  Nearest nearest;
  for (const auto& e : of_a.edges) {
    const Vec3 u = a.corner(e[1]) - a.corner(e[0]);
    for (const auto& f : of_b.edges) {
      edge_to_edge(a.corner(e[0]), u, b.corner(f[0]), b.corner(f[1]) - b.corner(f[0]), nearest);
    }
  }
  for (const int i : of_a.corners) {
    for (const auto& t : of_b.triangles) {
      if (const auto found = foot(a.corner(i), b.corner(t[0]), b.corner(t[1]), b.corner(t[2]))) {
        nearest.offer(a.corner(i), *found);
      }
    }
  }
  for (const int i : of_b.corners) {
    for (const auto& t : of_a.triangles) {
      if (const auto found = foot(b.corner(i), a.corner(t[0]), a.corner(t[1]), a.corner(t[2]))) {
        nearest.offer(*found, b.corner(i));
      }
    }
  }
  return nearest;
}

template <std::size_t size>
geometry::Bounds box_of(const Stand& stand, const std::array<int, size>& corners) {
  geometry::Bounds box = geometry::Bounds::empty();
  for (const int i : corners) box.add(stand.corner(i));
  return box;
}

/// The squared distance of two parts that share no inner point, from all features nearer than `high` by their boxes.
double by_features(Stand& a, const Part& of_a, Stand& b, const Part& of_b, double high) {
  std::optional<Number> least;
  const auto offer = [&](const Number& square) {
    if (!least || square < *least) least = square;
  };
  const auto near = [&](const geometry::Bounds& p, const geometry::Bounds& q) {
    return p.distance(q) <= high + margin;
  };
  for (const auto& e : of_a.edges) {
    const Kernel::Segment_3 edge(a.point(e[0]), a.point(e[1]));
    for (const auto& f : of_b.edges) {
      if (!near(box_of(a, e), box_of(b, f))) continue;
      offer(CGAL::squared_distance(edge, Kernel::Segment_3(b.point(f[0]), b.point(f[1]))));
    }
  }
  const auto corners_to = [&](Stand& from, const Part& points, Stand& to, const Part& faces) {
    for (const auto& t : faces.triangles) {
      const Kernel::Triangle_3 face(to.point(t[0]), to.point(t[1]), to.point(t[2]));
      for (const int i : points.corners) {
        if (!near(box_of(from, std::array{i}), box_of(to, t))) continue;
        offer(CGAL::squared_distance(from.point(i), face));
      }
    }
  };
  corners_to(a, of_a, b, of_b);
  corners_to(b, of_b, a, of_a);
  least->exact();
  return std::sqrt(CGAL::to_double(*least));
}

class Measurement {
 public:
  Measurement(Stand& a, Stand& b) : a_(a), b_(b) {}

  [[nodiscard]] Truth run() {
    truth_.sign = 1;
    truth_.low = endless;
    truth_.high = endless;
    rank();
    for (const Pairing& pair : pairs_) {
      if (pair.low > truth_.high || (truth_.sign < 0 && pair.low > 0.0)) break;
      settle(pair);
    }
    if (truth_.sign < 0) {
      truth_.low = deepest_.low;
      truth_.high = a_.parts().size() * b_.parts().size() == 1 ? deepest_.high : endless;
    }
    return truth_;
  }

 private:
  struct Pairing {
    double low;  // certified less `margin`: the distance is at least this
    std::size_t a;
    std::size_t b;
  };

  /// All pairs of parts that may matter, deepest or nearest first.
  void rank() {
    for (std::size_t i = 0; i < a_.parts().size(); ++i) {
      for (std::size_t j = 0; j < b_.parts().size(); ++j) {
        double low = a_.box(i).distance(b_.box(j));
        if (low <= 0.0) low = separation(a_, a_.parts()[i], b_, b_.parts()[j]);
        pairs_.push_back({low - margin, i, j});
      }
    }
    std::sort(pairs_.begin(), pairs_.end(), [](const Pairing& p, const Pairing& q) { return p.low < q.low; });
  }

  void settle(const Pairing& pair) {
    const Part& of_a = a_.parts()[pair.a];
    const Part& of_b = b_.parts()[pair.b];
    if (pair.low <= 1e-10) {
      // One pair that overlaps settles the sign; they come deepest first.
      if (truth_.sign < 0) return;
      const Exact exact = by_axes(a_, of_a, b_, of_b);
      truth_.exact = true;
      truth_.sign = std::min(truth_.sign, exact.sign);
      if (exact.sign < 0) deepest_ = exact;
      if (exact.sign == 0) truth_.low = truth_.high = 0.0;
      if (exact.sign <= 0) return;
    }
    const Nearest nearest = by_doubles(a_, of_a, b_, of_b);
    double high = nearest.mm + margin;
    double low = std::max(pair.low, separation(a_, of_a, b_, of_b) - margin);
    if (nearest.mm > 0.0) {
      low = std::max(low, separation(a_, of_a, b_, of_b, (nearest.to - nearest.from) / nearest.mm) - margin);
    }
    if (low > truth_.high) return;
    if (!(high - low <= close_enough)) {
      low = high = by_features(a_, of_a, b_, of_b, high);
      truth_.exact = true;
    }
    truth_.low = std::min(truth_.low, low);
    truth_.high = std::min(truth_.high, high);
  }

  Stand& a_;
  Stand& b_;
  Truth truth_;
  Exact deepest_;  // the first pair found to overlap
  std::vector<Pairing> pairs_;
};

}  // namespace

Truth measure(const Body& a, const Pose& pose_a, const Body& b, const Pose& pose_b) {
  Stand stand_a(a, pose_a, Vec3{0.0});
  Stand stand_b(b, pose_b, Vec3{0.0});
  return Measurement(stand_a, stand_b).run();
}

bool frees(const Body& a, const Pose& pose_a, const Body& b, const Pose& pose_b, const Vec3& way, double allowed) {
  Stand stand_a(a, pose_a, Vec3{0.0});
  Stand stand_b(b, pose_b, way);
  for (std::size_t i = 0; i < a.parts.size(); ++i) {
    for (std::size_t j = 0; j < b.parts.size(); ++j) {
      if (stand_a.box(i).distance(stand_b.box(j)) > 0.0) continue;
      // For any axis, minus the separation along it bounds the depth from above.
      if (separation(stand_a, a.parts[i], stand_b, b.parts[j]) >= margin - allowed) continue;
      if (by_axes(stand_a, a.parts[i], stand_b, b.parts[j]).high > allowed) return false;
    }
  }
  return true;
}

}  // namespace baywright::oracle
