#include "render/camera.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <glm/common.hpp>
#include <glm/gtc/quaternion.hpp>
#include <glm/trigonometric.hpp>
#include <limits>

namespace baywright::render {

using geometry::Bounds;
using geometry::Mat3;
using geometry::Vec3;

namespace {

constexpr std::array<std::string_view, 7> words = {"whole", "front", "back", "left", "right", "top", "bottom"};

constexpr double filled = 0.88;       // share of the picture's height or width that `facing` fills
constexpr double least_height = 1.0;  // mm: a point is seen with this around it
constexpr double narrowest = 0.1;     // degrees: a narrower field is as good as true to scale

/// Columns: right, up, toward.
Mat3 frame(const Camera& camera) {
  return {camera.right(), camera.up, camera.toward};
}

void set_frame(Camera& camera, const Vec3& up, const Vec3& toward) {
  camera.toward = glm::normalize(toward);
  camera.up = glm::normalize(up - glm::dot(up, camera.toward) * camera.toward);
}

/// Right, up and toward of a point as the camera sees it, mm from the target.
Vec3 seen(const Camera& camera, const Vec3& world) {
  return glm::transpose(frame(camera)) * (world - camera.target);
}

double half_tangent(double field) {
  return std::tan(glm::radians(field) / 2.0);
}

bool usable(const Bounds& room) {
  for (int i = 0; i < 3; ++i)
    if (!(room.low[i] <= room.high[i]) || !std::isfinite(room.low[i]) || !std::isfinite(room.high[i])) return false;
  return true;
}

/// Toward and up of a side in the place's frame.
std::array<Vec3, 2> stand(Side side) {
  switch (side) {
    case Side::front:
      return {Vec3{0, -1, 0}, Vec3{0, 0, 1}};
    case Side::back:
      return {Vec3{0, 1, 0}, Vec3{0, 0, 1}};
    case Side::left:
      return {Vec3{-1, 0, 0}, Vec3{0, 0, 1}};
    case Side::right:
      return {Vec3{1, 0, 0}, Vec3{0, 0, 1}};
    case Side::top:
      return {Vec3{0, 0, 1}, Vec3{0, 1, 0}};
    case Side::bottom:
      return {Vec3{0, 0, -1}, Vec3{0, 1, 0}};
    case Side::whole:
      break;
  }
  return {Vec3{0.68, 0.56, 0.47}, Vec3{0, 0, 1}};
}

/// The least and greatest of x + slant * z and of x - slant * z: what a picture whose sides lean in by `slant` for each
/// mm of depth (0: true to scale) must hold.
struct Span {
  double high = -std::numeric_limits<double>::infinity();
  double low = std::numeric_limits<double>::infinity();

  void add(double x, double z, double slant) {
    high = std::max(high, x + slant * z);
    low = std::min(low, x - slant * z);
  }
  [[nodiscard]] double middle() const { return (high + low) / 2.0; }
  [[nodiscard]] double half() const { return (high - low) / 2.0; }
};

/// Brings the picture of the room into the middle, where one direction leaves more margin than the other. How much a
/// corner's depth counts hangs on where it is, so in steps, each of which leaves a fraction of what was off.
void centre(Camera& camera, const Bounds& room) {
  for (int step = 0; step < 12; ++step) {
    Bounds flat = Bounds::empty();
    for (int i = 0; i < 8; ++i) {
      const Vec3 p = seen(camera, room.corner(i));
      const double eye = camera.distance();
      flat.add(Vec3{p.x * eye / (eye - p.z), p.y * eye / (eye - p.z), 0.0});
    }
    const Vec3 off = (flat.low + flat.high) / 2.0;
    camera.target += camera.right() * off.x + camera.up * off.y;
  }
}

}  // namespace

std::string_view word(Side side) {
  return words[static_cast<std::size_t>(side)];
}

std::optional<Side> side_called(std::string_view word) {
  for (std::size_t i = 0; i < words.size(); ++i)
    if (words[i] == word) return static_cast<Side>(i);
  return std::nullopt;
}

double Camera::distance() const {
  return perspective ? height / 2.0 / half_tangent(field) : std::numeric_limits<double>::infinity();
}

glm::dmat4 Camera::clip(double aspect, const Bounds& room) const {
  double near = height;  // mm toward the eye: the planes that everything lies between
  double far = -height;
  if (usable(room)) {
    near = -std::numeric_limits<double>::infinity();
    far = -near;
    for (int i = 0; i < 8; ++i) {
      const double depth = seen(*this, room.corner(i)).z;
      near = std::max(near, depth);
      far = std::min(far, depth);
    }
  }
  const double slack = 0.01 * (near - far) + 1e-3 * height;  // what lies in the room's sides is kept
  near += slack;
  far -= slack;

  const double y = 2.0 / height;
  const double x = y / (aspect > 0.0 ? aspect : 1.0);
  const Mat3 turn = frame(*this);
  glm::dmat4 from_world(1.0);
  for (int column = 0; column < 3; ++column)
    for (int row = 0; row < 3; ++row) from_world[column][row] = turn[row][column];
  from_world[3] = glm::dvec4(-(glm::transpose(turn) * target), 1.0);

  glm::dmat4 project(0.0);
  if (perspective) {
    const double eye = distance();
    const double to_near = std::max(eye - near, eye * 0.02);
    const double to_far = std::max(eye - far, to_near * 1.01);
    // w = eye - z; clip z is linear in z and -w at the near plane, w at the far one.
    const double stretch = (to_far + to_near) / (to_far - to_near);
    project[0][0] = x * eye;
    project[1][1] = y * eye;
    project[2][2] = -stretch;
    project[3][2] = stretch * eye - 2.0 * to_far * to_near / (to_far - to_near);
    project[2][3] = -1.0;
    project[3][3] = eye;
  } else {
    project[0][0] = x;
    project[1][1] = y;
    project[2][2] = -2.0 / (near - far);
    project[3][2] = (near + far) / (near - far);
    project[3][3] = 1.0;
  }
  return project * from_world;
}

Vec3 Camera::pixel(const Vec3& world, int width, int pixels_high) const {
  const Vec3 p = seen(*this, world);
  double scale = pixels_high / height;  // pixels a mm
  if (perspective) {
    const double eye = distance();
    scale = p.z < eye ? scale * eye / (eye - p.z) : std::numeric_limits<double>::quiet_NaN();
  }
  return {width / 2.0 + p.x * scale, pixels_high / 2.0 - p.y * scale, p.z};
}

Camera::Ray Camera::ray(double x, double y, int width, int pixels_high) const {
  const double scale = height / pixels_high;  // mm a pixel
  const Vec3 off = right() * ((x - width / 2.0) * scale) + up * ((pixels_high / 2.0 - y) * scale);
  return {target + off, perspective ? glm::normalize(off - toward * distance()) : -toward};
}

Camera facing(Side side, const geometry::Pose& place, const Bounds& room, double aspect) {
  Camera camera;
  const auto [toward, up] = stand(side);
  set_frame(camera, place.direction(up), place.direction(toward));
  camera.perspective = side == Side::whole;
  const Bounds held = usable(room) ? room : Bounds{place.shift, place.shift};
  const double wide = aspect > 0.0 && std::isfinite(aspect) ? aspect : 1.0;

  camera.target = (held.low + held.high) / 2.0;
  const double slope = half_tangent(camera.field) * filled;
  const double slant_y = camera.perspective ? slope : 0.0;
  const double slant_x = slant_y * wide;
  Span across;
  Span over;
  for (int i = 0; i < 8; ++i) {
    const Vec3 p = seen(camera, held.corner(i));
    across.add(p.x, p.z, slant_x);
    over.add(p.y, p.z, slant_y);
  }
  camera.target += camera.right() * across.middle() + camera.up * over.middle();
  camera.height = std::max({2.0 * over.half() / filled, 2.0 * across.half() / filled / wide, least_height});
  if (camera.perspective) centre(camera, held);
  return camera;
}

Camera turned(const Camera& camera, const Vec3& axis, double across, double over) {
  if (!std::isfinite(across) || !std::isfinite(over)) return camera;
  Camera out = camera;
  const Mat3 round = geometry::rotation(axis, across);
  Vec3 up = round * camera.up;
  Vec3 toward = round * camera.toward;
  // Turning by `over` takes up to up cos + toward sin, whose part along the axis must keep its sign.
  const Vec3 pole = glm::dot(up, axis) < -1e-9 ? -axis : axis;  // beyond: a camera that hangs upside down
  const double lean = glm::degrees(std::atan2(glm::dot(toward, pole), glm::dot(up, pole)));
  const double allowed = std::clamp(over, lean - 90.0, lean + 90.0);
  const Mat3 tilt = geometry::rotation(glm::normalize(glm::cross(up, toward)), allowed);
  set_frame(out, tilt * up, tilt * toward);
  return out;
}

Camera between(const Camera& first, const Camera& second, double share) {
  if (!(share > 0.0)) return first;
  if (share >= 1.0) return second;
  Camera out;
  const Mat3 turn = glm::mat3_cast(glm::slerp(glm::quat_cast(frame(first)), glm::quat_cast(frame(second)), share));
  set_frame(out, turn[1], turn[2]);
  out.target = glm::mix(first.target, second.target, share);
  out.height = first.height * std::pow(second.height / first.height, share);
  const auto field = [](const Camera& camera) { return camera.perspective ? camera.field : 0.0; };
  out.field = glm::mix(field(first), field(second), share);
  out.perspective = out.field >= narrowest;
  if (!out.perspective) out.field = first.perspective ? first.field : second.field;
  return out;
}

}  // namespace baywright::render
