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
#include "geometry/rims.h"
#include "geometry/search.h"

#include <cmath>

namespace baywright::geometry {

namespace {

/// How far a direction may be on the wrong side of an edge's two faces before its patch is given up.
constexpr double hidden = 1e-9;

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
  offer_if_any(search, square_to_both(a.w, b.w));
  for (int j = 0; j < b.count; ++j) offer_if_any(search, square_to_both(a.w, side_of(b, j).edge));
  for (int i = 0; i < a.count; ++i) {
    const Side of_a = side_of(a, i);
    const Vec3 at_a = a.flat(a.corner(i));
    offer_if_any(search, square_to_both(of_a.edge, b.w));
    for (int j = 0; j < b.count; ++j) {
      const Side of_b = side_of(b, j);
      Vec3 d = square_to_both(of_a.edge, of_b.edge);
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
  offer_if_any(search, square_to_both(disc.w, prism.w));
  for (int j = 0; j < prism.count; ++j) offer_if_any(search, square_to_both(disc.w, side_of(prism, j).edge));
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

void disc_against_disc(Search& search, const Pair& pair) {
  const Body& a = pair.a;
  const Body& b = pair.b;
  const Vec3 normal = square_to_both(a.w, b.w);
  offer_if_any(search, normal);
  rims_against_side(search, b, pair.apart, a, Vec3{0.0}, -1.0);
  rims_against_side(search, a, Vec3{0.0}, b, pair.apart, 1.0);
  if (normal == Vec3{0.0}) return;  // parallel: two rims curve one way only
  rims_against_rims(pair, search);
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

}  // namespace baywright::geometry
