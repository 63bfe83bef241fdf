// Which directions can be the shortest way out, and why the list is complete.
//
// The ways out are the vectors from the origin to the boundary of the difference D = b - a, which holds the origin. At
// the shortest one, s long, a ball of radius s about the origin touches the boundary of D from within. So the boundary
// has a tangent plane there (a corner or a sharp edge of D admits no ball from within), and no principal radius of
// curvature is less than s: none is zero. D is the sum of two flat bases (polygon or disc) and two segments (the
// heights). Its boundary is made of patches, one for each pair of features of a and b with a common normal d:
//   - face and anything: flat. d is a face normal of a or b (caps included).
//   - edge and edge: flat. d is square to both. The side lines of a cylinder count as edges along its axis.
//   - side of a cylinder and a corner: curved one way, flat along the axis. d is square to the axis, through the
//   corner.
//   - rim and edge, rim and side line: curved one way, flat along the edge. d is square to the edge: see rim.h.
//   - rim and rim: curved both ways.
//   - corner and corner, corner and edge, corner and rim: a radius of curvature is zero. Never the shortest.
// Every patch of the list is tried; the value taken is the true separation along d, so that a direction whose patch is
// hidden behind another costs time and nothing else. The separating axes of boxes: Gottschalk, Lin, Manocha (SIGGRAPH
// 1996); the curved patches are worked out here and in rim.cpp.
//
// Two rims are the one case without a closed form or a bracket: there the sphere of directions is searched with bounds.
#include "geometry/penetration.h"

#include "geometry/polish.h"
#include "geometry/rim.h"

#include <algorithm>
#include <array>
#include <limits>
#include <vector>

namespace baywright::geometry {

namespace {

/// Edges that are parallel to this sine have no common normal of their own: between them they span a strip that is
/// thinner than rounding.
constexpr double parallel = 1e-15;

/// How far a direction may be on the wrong side of an edge's two faces before its patch is given up.
constexpr double hidden = 1e-9;

class Search {
 public:
  explicit Search(const Pair& pair) : pair_(pair), best_{-std::numeric_limits<double>::infinity(), pair.a.w} {}

  [[nodiscard]] const WayOut& best() const { return best_; }

  void offer(const Vec3& d) {
    const double separation = pair_.separation(d);
    // Earlier offers win ties: face normals come first and make the steadier direction.
    if (better(separation)) best_ = {separation, d};
  }
  void offer_both(const Vec3& d) {
    offer(d);
    offer(-d);
  }
  [[nodiscard]] bool better(double separation) const { return separation > best_.separation + margin(); }
  /// A patch whose own value is known and never below the true separation.
  void offer(const Vec3& d, double patch) {
    if (better(patch)) offer(d);
  }

 private:
  [[nodiscard]] double margin() const { return 0.01 * pair_.rounding; }

  const Pair& pair_;
  WayOut best_;
};

/// Unit and square to both unit edges; zero where they are parallel.
Vec3 across(const Vec3& e, const Vec3& f) {
  Vec3 d = glm::cross(e, f);
  const double sine = glm::length(d);
  if (!(sine > parallel)) return Vec3{0.0};
  d = d / sine;
  // Rounding of a small cross product leans d toward e: a lean of 1e-16 / sine along an edge of 1000 mm is what counts.
  d -= e * glm::dot(d, e);
  d -= f * glm::dot(d, f);
  d -= e * glm::dot(d, e);
  return glm::normalize(d);
}

struct Side {
  Vec3 edge;    // unit, along the corner's side
  Vec3 normal;  // unit, outward
};

Side side_of(const Body& body, int i) {
  const Vec2 step = body.corners[i + 1 < body.count ? i + 1 : 0] - body.corners[i];
  const double length = std::sqrt(step.x * step.x + step.y * step.y);
  const Vec2 along = length > 0.0 ? step / length : Vec2{1.0, 0.0};
  return {body.flat(along), body.flat({along.y, -along.x})};
}

/// `sense` is +1 for a, whose faces look along d, and -1 for b.
void offer_faces(Search& search, const Body& body, double sense) {
  search.offer_both(body.w);
  if (body.base == Body::Base::disc) return;
  for (int i = 0; i < body.count; ++i) search.offer(side_of(body, i).normal * sense);
}

void offer_if_any(Search& search, const Vec3& d) {
  if (d != Vec3{0.0}) search.offer_both(d);
}

void prism_against_prism(Search& search, const Pair& pair) {
  const Body& a = pair.a;
  const Body& b = pair.b;
  offer_if_any(search, across(a.w, b.w));
  for (int j = 0; j < b.count; ++j) offer_if_any(search, across(a.w, side_of(b, j).edge));
  for (int i = 0; i < a.count; ++i) {
    const Side of_a = side_of(a, i);
    const Vec3 at_a = a.flat(a.corner(i));
    offer_if_any(search, across(of_a.edge, b.w));
    for (int j = 0; j < b.count; ++j) {
      const Side of_b = side_of(b, j);
      Vec3 d = across(of_a.edge, of_b.edge);
      if (d == Vec3{0.0}) continue;
      if (glm::dot(d, of_a.normal) < 0.0) d = -d;
      if (glm::dot(d, of_b.normal) > hidden) {
        if (glm::dot(d, of_a.normal) > hidden) continue;
        d = -d;
      }
      const double patch = glm::dot(d, pair.apart + b.flat(b.corner(j)) - at_a) - a.half * std::abs(glm::dot(d, a.w)) -
                           b.half * std::abs(glm::dot(d, b.w));
      search.offer(d, patch);
    }
  }
}

/// The rim at one end of a cylinder, with its axis pointing outward.
Rim rim_of(const Body& disc, const Vec3& centre, double end) {
  const Vec3 out = disc.w * end;
  return {centre + out * disc.half, out, disc.radius};
}

double separation_from(const Rim& rim, const Vec3& point, const Vec3& d) {
  return glm::dot(point - rim.centre, d) - rim.radius * glm::length(d - rim.axis * glm::dot(d, rim.axis));
}

void side_against_corner(Search& search, const Body& disc, const Vec3& corner) {
  Vec3 d = corner - disc.w * glm::dot(corner, disc.w);
  const double length = glm::length(d);
  if (!(length > 0.0)) return;  // on the axis: every way is as long, and the flat patches beside it are tried
  d = d / length;
  d = glm::normalize(d - disc.w * glm::dot(d, disc.w));
  search.offer(d, length - disc.radius);
}

void rims_against_edge(Search& search, const Body& disc, const Vec3& point, const Vec3& edge) {
  for (const double end : {1.0, -1.0}) {
    const Rim rim = rim_of(disc, Vec3{0.0}, end);
    if (const auto d = rim_against_edge(rim, point, edge)) search.offer(*d, separation_from(rim, point, *d));
  }
}

/// Never the shortest way out, but the distance of bodies that are barely apart.
void rims_against_corner(Search& search, const Body& disc, const Vec3& corner) {
  for (const double end : {1.0, -1.0}) {
    const Rim rim = rim_of(disc, Vec3{0.0}, end);
    const Vec3 offset = corner - rim.centre;
    const double height = glm::dot(offset, rim.axis);
    const Vec3 across = offset - rim.axis * height;
    const double length = glm::length(across);
    if (!(height >= 0.0) || !(length > rim.radius)) continue;
    const Vec3 link = across * ((length - rim.radius) / length) + rim.axis * height;
    const double distance = glm::length(link);
    if (distance > 0.0) search.offer(link / distance, distance);
  }
}

void disc_against_prism(Search& search, const Pair& pair) {
  const Body& disc = pair.a;
  const Body& prism = pair.b;
  offer_if_any(search, across(disc.w, prism.w));
  for (int j = 0; j < prism.count; ++j) offer_if_any(search, across(disc.w, side_of(prism, j).edge));
  const Vec3 up = prism.w * prism.half;
  for (int j = 0; j < prism.count; ++j) {
    const Vec3 corner = pair.apart + prism.flat(prism.corner(j));
    const Vec3 edge = side_of(prism, j).edge;
    for (const Vec3& end : {corner + up, corner - up}) {
      side_against_corner(search, disc, end);
      rims_against_corner(search, disc, end);
      rims_against_edge(search, disc, end, edge);
    }
    rims_against_edge(search, disc, corner, prism.w);
  }
}

/// The rims of `disc`, which stands at `centre`, against the side of the other cylinder, whose axis runs through
/// `point`. `sense` turns a direction that leads away from the disc into one from a to b.
void rims_against_side(Search& search, const Body& disc, const Vec3& centre, const Body& other, const Vec3& point,
                       double sense) {
  for (const double end : {1.0, -1.0}) {
    const Rim rim = rim_of(disc, centre, end);
    if (const auto d = rim_against_edge(rim, point, other.w)) {
      search.offer(*d * sense, separation_from(rim, point, *d) - other.radius);
    }
  }
}

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
  static constexpr double smallest = 0.01;      // radians; tops closer than that on one slope are taken for one
  static constexpr std::size_t most_tops = 64;  // only rims about one axis have that many, and those are all alike
  static constexpr int most_cells = 6000;

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

void disc_against_disc(Search& search, const Pair& pair) {
  const Body& a = pair.a;
  const Body& b = pair.b;
  const Vec3 normal = across(a.w, b.w);
  offer_if_any(search, normal);
  rims_against_side(search, b, pair.apart, a, Vec3{0.0}, -1.0);
  rims_against_side(search, a, Vec3{0.0}, b, pair.apart, 1.0);
  if (normal == Vec3{0.0}) return;  // parallel: two rims curve one way only
  RimsBySphere(search, pair).run();
}

}  // namespace

WayOut way_out(const Pair& pair) {
  Search search(pair);
  offer_faces(search, pair.a, 1.0);
  offer_faces(search, pair.b, -1.0);
  if (pair.a.base != Body::Base::disc) {
    prism_against_prism(search, pair);
  } else if (pair.b.base != Body::Base::disc) {
    disc_against_prism(search, pair);
  } else {
    disc_against_disc(search, pair);
  }
  return search.best();
}

WayOut way_out_of_boxes(const Pair& pair) {
  const std::array<Vec3, 3> of_a{pair.a.u, pair.a.v, pair.a.w};
  const std::array<Vec3, 3> of_b{pair.b.u, pair.b.v, pair.b.w};
  const Vec3 half_a{pair.a.size, pair.a.half};
  const Vec3 half_b{pair.b.size, pair.b.half};
  std::array<std::array<double, 3>, 3> turn;  // turn[i][j]: axis i of a along axis j of b
  std::array<std::array<double, 3>, 3> size;  // its absolute values
  std::array<double, 3> from_a;               // the centre of b along the axes of a
  WayOut best{-std::numeric_limits<double>::infinity(), pair.a.w};
  const auto offer = [&best](double separation, double sign, const Vec3& axis) {
    if (separation > best.separation) best = {separation, sign < 0.0 ? -axis : axis};
  };
  for (std::size_t i = 0; i < 3; ++i) {
    double other = 0.0;
    for (std::size_t j = 0; j < 3; ++j) {
      turn[i][j] = glm::dot(of_a[i], of_b[j]);
      size[i][j] = std::abs(turn[i][j]);
      other += size[i][j] * half_b[static_cast<int>(j)];
    }
    from_a[i] = glm::dot(pair.apart, of_a[i]);
    offer(std::abs(from_a[i]) - half_a[static_cast<int>(i)] - other, from_a[i], of_a[i]);
  }
  for (std::size_t j = 0; j < 3; ++j) {
    const double from_b = glm::dot(pair.apart, of_b[j]);
    const double other = size[0][j] * half_a[0] + size[1][j] * half_a[1] + size[2][j] * half_a[2];
    offer(std::abs(from_b) - half_b[static_cast<int>(j)] - other, from_b, of_b[j]);
  }
  if (best.separation > 0.0) return best;
  for (std::size_t i = 0; i < 3; ++i) {
    const std::size_t i1 = (i + 1) % 3;
    const std::size_t i2 = (i + 2) % 3;
    for (std::size_t j = 0; j < 3; ++j) {
      const std::size_t j1 = (j + 1) % 3;
      const std::size_t j2 = (j + 2) % 3;
      const double square = turn[i1][j] * turn[i1][j] + turn[i2][j] * turn[i2][j];  // of the sine between the edges
      if (!(square > parallel * parallel)) continue;
      const double along = from_a[i2] * turn[i1][j] - from_a[i1] * turn[i2][j];  // of apart on of_a[i] x of_b[j]
      const double reach = half_a[static_cast<int>(i1)] * size[i2][j] + half_a[static_cast<int>(i2)] * size[i1][j] +
                           half_b[static_cast<int>(j1)] * size[i][j2] + half_b[static_cast<int>(j2)] * size[i][j1];
      const double over = std::abs(along) - reach;
      // Rounding of `along` and `reach` is divided by the sine, so the accurate value decides.
      const double sine = std::sqrt(square);
      if (!(over > best.separation * sine - pair.rounding)) continue;
      Vec3 d = across(of_a[i], of_b[j]);
      if (glm::dot(d, pair.apart) < 0.0) d = -d;
      const double exact = pair.separation(d);
      if (exact > best.separation + 0.01 * pair.rounding) best = {exact, d};
    }
  }
  return best;
}

}  // namespace baywright::geometry
