#include "geometry/solid.h"

#include "geometry/convex_parts.h"
#include "geometry/limits.h"
#include "geometry/outline.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <optional>
#include <utility>

namespace baywright::geometry {

struct Solid::Data {
  std::optional<Mesh> mesh;
  Outline outline;
  std::vector<Outline> holes;
  double diameter = 0.0;
  double bore = 0.0;
  double height = 0.0;
  double volume = 0.0;
  std::vector<Piece> pieces;
};

namespace {

/// Why `size` is no size, or nothing. NaN fails the first comparison and is told apart only for the words.
std::optional<std::string> size_fault(const char* what, double size) {
  if (size >= thinnest_mm && size <= largest_mm) return std::nullopt;
  const char* why = "is not a number";
  if (size > largest_mm) why = "is more than the 100000 mm that a solid may have";
  if (size < thinnest_mm) why = "is less than 0.000001 mm, which is no thickness";
  char text[160];
  std::snprintf(text, sizeof text, "the %s of %.6g mm %s", what, size, why);
  return text;
}

double perimeter(const Outline& outline) {
  double sum = 0.0;
  for (std::size_t i = 0; i < outline.size(); ++i) sum += glm::distance(outline[i], outline[(i + 1) % outline.size()]);
  return sum;
}

void drop_closing_point(Outline& outline) {
  if (outline.size() > 1 && outline.front() == outline.back()) outline.pop_back();
}

void turn_to(Outline& outline, bool counter_clockwise) {
  if ((signed_area(outline) > 0.0) != counter_clockwise) std::reverse(outline.begin(), outline.end());
}

/// Whether the parts make up the base: the last guard against a figure that the splitting could not cope with. What may
/// be missing is the rounding of corners, so less than `touch_mm` along the whole boundary.
bool make_up(const std::vector<Outline>& parts, double area, const Outline& outline,
             const std::vector<Outline>& holes) {
  double boundary = perimeter(outline);
  for (const Outline& hole : holes) boundary += perimeter(hole);
  for (const Outline& part : parts) area -= signed_area(part);
  return std::abs(area) <= touch_mm * boundary;
}

}  // namespace

std::variant<Solid, Refusal> Solid::box(const Vec3& size) {
  const char* names[] = {"size along x", "size along y", "size along z"};
  for (int axis = 0; axis < 3; ++axis) {
    if (auto why = size_fault(names[axis], size[axis])) return Refusal{*std::move(why)};
  }
  Data data;
  data.outline = {{0.0, 0.0}, {size.x, 0.0}, {size.x, size.y}, {0.0, size.y}};
  data.height = size.z;
  data.volume = size.x * size.y * size.z;
  data.pieces = {{Piece::Base::polygon, data.outline, 0.0, 0.0, size.z}};
  return Solid{std::make_shared<const Data>(std::move(data))};
}

std::variant<Solid, Refusal> Solid::prism(Outline outline, std::vector<Outline> holes, double height) {
  if (auto why = size_fault("height", height)) return Refusal{*std::move(why)};
  drop_closing_point(outline);
  for (Outline& hole : holes) drop_closing_point(hole);
  if (auto why = fault(outline, holes)) return Refusal{*std::move(why)};
  turn_to(outline, true);
  double base = signed_area(outline);
  for (Outline& hole : holes) {
    turn_to(hole, false);
    base += signed_area(hole);
  }
  std::vector<Outline> parts = convex_parts(outline, holes);
  if (!make_up(parts, base, outline, holes)) return Refusal{"the outline cannot be split into convex parts"};
  Data data;
  for (Outline& part : parts) {
    data.pieces.push_back({Piece::Base::polygon, std::move(part), 0.0, 0.0, height});
  }
  data.outline = std::move(outline);
  data.holes = std::move(holes);
  data.height = height;
  data.volume = base * height;
  return Solid{std::make_shared<const Data>(std::move(data))};
}

std::variant<Solid, Refusal> Solid::cylinder(double diameter, double bore, double height) {
  if (auto why = size_fault("diameter", diameter)) return Refusal{*std::move(why)};
  if (auto why = size_fault("height", height)) return Refusal{*std::move(why)};
  if (bore != 0.0) {
    if (auto why = size_fault("bore", bore)) return Refusal{*std::move(why)};
    if (!(diameter / 2.0 - bore / 2.0 >= thinnest_mm)) {
      char text[160];
      std::snprintf(text, sizeof text, "the bore of %.6g mm leaves no wall in a diameter of %.6g mm", bore, diameter);
      return Refusal{text};
    }
  }
  Data data;
  data.diameter = diameter;
  data.bore = bore;
  data.height = height;
  data.volume = std::numbers::pi / 4.0 * (diameter - bore) * (diameter + bore) * height;
  const auto base = bore > 0.0 ? Piece::Base::ring : Piece::Base::disc;
  data.pieces = {{base, {}, diameter / 2.0, bore / 2.0, height}};
  return Solid{std::make_shared<const Data>(std::move(data))};
}

Solid Solid::mesh(Mesh mesh) {
  Data data;
  data.volume = mesh.volume();
  data.mesh = std::move(mesh);
  return Solid{std::make_shared<const Data>(std::move(data))};
}

const Mesh* Solid::mesh() const {
  return data_->mesh ? &*data_->mesh : nullptr;
}
std::span<const Piece> Solid::pieces() const {
  return data_->pieces;
}
const Outline& Solid::outline() const {
  return data_->outline;
}
const std::vector<Outline>& Solid::holes() const {
  return data_->holes;
}
double Solid::diameter() const {
  return data_->diameter;
}
double Solid::bore() const {
  return data_->bore;
}
double Solid::height() const {
  return data_->height;
}
double Solid::volume() const {
  return data_->volume;
}
bool Solid::convex() const {
  return data_->pieces.size() == 1 && data_->pieces.front().base != Piece::Base::ring;
}

Bounds bounds(const Placed& placed) {
  if (const Mesh* mesh = placed.solid.mesh()) {
    Bounds box = Bounds::empty();
    for (const Vec3& vertex : mesh->vertices()) box.add(placed.pose.point(vertex));
    return box;
  }
  Bounds all = Bounds::empty();
  for (const Piece& piece : placed.solid.pieces()) all.add(bounds(piece, placed.pose));
  return all;
}

}  // namespace baywright::geometry
