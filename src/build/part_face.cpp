#include "build/part_face.h"

namespace baywright::build {

using geometry::Vec2;
using geometry::Vec3;

namespace {

/// Along y the two others, x and z, are a left-handed pair seen from outside.
bool mirrored(const PartFace& face) {
  return (face.axis == 1) != face.back;
}

}  // namespace

Vec2 others(const Vec3& v, int axis) {
  return axis == 0 ? Vec2(v.y, v.z) : axis == 1 ? Vec2(v.x, v.z) : Vec2(v.x, v.y);
}

Vec2 PartFace::flat(const Vec2& p) const {
  return {mirrored(*this) ? low.x + size.x - p.x : p.x - low.x, p.y - low.y};
}

Vec2 PartFace::across_axes(const Vec2& flat) const {
  return {mirrored(*this) ? low.x + size.x - flat.x : flat.x + low.x, flat.y + low.y};
}

PartFace face_of(const parts::Part& part, int axis, bool back) {
  const std::vector<double> values = parts::nominal_values(part);
  Vec3 low(0.0);
  Vec3 high(0.0);
  for (int i = 0; i < 3; ++i) {
    low[i] = parts::outer_face(part, i, false).at(values);
    high[i] = parts::outer_face(part, i, true).at(values);
  }
  return {axis, back, others(low, axis), others(high - low, axis)};
}

Vec2 on_face(const Place& place, const PartFace& face, double along, double right) {
  const Vec3 side = glm::cross(place.toward, place.outward());
  return face.flat(Vec2(place.at[0], place.at[1]) + others(along * place.toward + right * side, face.axis));
}

Vec2 from_place(const Place& place, const PartFace& face, const Vec2& flat) {
  const Vec2 away = face.across_axes(flat) - Vec2(place.at[0], place.at[1]);
  const Vec3 side = glm::cross(place.toward, place.outward());
  return {glm::dot(away, others(place.toward, face.axis)), glm::dot(away, others(side, face.axis))};
}

}  // namespace baywright::build
