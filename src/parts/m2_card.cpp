#include "parts/m2_card.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace baywright::parts {

namespace m2 = standards::m2;
using geometry::Outline;
using geometry::Vec2;

namespace {

constexpr int round_steps = 16;  // corners of a half circle; on the circle, so that the void is never drawn too large

/// Appends the lower half of a circle about `centre`, from its +x end to its -x end.
void half_circle(Outline& outline, const Vec2& centre, double radius) {
  for (int i = 0; i <= round_steps; ++i) {
    const double turn = std::numbers::pi * i / round_steps;
    outline.emplace_back(centre.x + radius * std::cos(turn), centre.y - radius * std::sin(turn));
  }
}

/// A rectangle from (left, from) to (right, to) with a round cut of `radius` in its far side at x = 0, its centre
/// `inset` inside the side.
Outline with_cut(double left, double right, double from, double to, double radius, double inset) {
  Outline outline = {{left, from}, {right, from}, {right, to}};
  if (inset > 0.0) outline.emplace_back(radius, to);
  half_circle(outline, {0.0, to - inset}, radius);
  if (inset > 0.0) outline.emplace_back(-radius, to);
  outline.emplace_back(left, to);
  return outline;
}

/// The edge with a notch for each key, from the leading edge to the shoulder.
Outline edge_outline(double left, double right, double to, const std::string& keys) {
  Outline outline = {{left, 0.0}};
  std::string from_left(keys.rbegin(), keys.rend());  // keys run from pin 1 at +x, so the last letter is leftmost
  for (const char letter : from_left) {
    const m2::Key* key = m2::key(letter);
    if (key == nullptr) continue;
    const double centre = m2::key_centre(*key);
    const double r = 0.5 * m2::notch_width().nominal;
    const double end = m2::notch_depth().nominal - r;
    outline.emplace_back(centre - r, 0.0);
    for (int i = 0; i <= round_steps; ++i) {
      const double turn = std::numbers::pi * (1.0 - static_cast<double>(i) / round_steps);
      outline.emplace_back(centre + r * std::cos(turn), end + r * std::sin(turn));
    }
    outline.emplace_back(centre + r, 0.0);
  }
  outline.insert(outline.end(), {{right, 0.0}, {right, to}, {left, to}});
  return outline;
}

Body flat_body(std::string name, Outline outline, Coordinates low, Coordinates high) {
  Body body = box_body(std::move(name), std::move(low), std::move(high));
  body.form = Body::Form::prism;
  body.outline = std::move(outline);
  return body;
}

template <typename Row>
const Row& row_of(std::span<const Row> rows, int code) {
  for (const Row& row : rows)
    if (row.code == code) return row;
  return rows.front();  // read_card_name has refused codes that are not there
}

}  // namespace

M2Card m2_card(const m2::CardName& name, const MeasuredHeights& measured) {
  M2Card card;
  Part& part = card.part;
  part.id = "m2/" + std::to_string(name.width) + std::to_string(name.length);
  part.kind = "card";
  const m2::Width& width_row = row_of(m2::widths(), name.width);
  const m2::Length& length_row = row_of(m2::lengths(), name.length);
  const m2::HeightCode* code = m2::height_code(name.height);
  const double length = length_row.along.nominal;
  // Every card is symmetric about x = 0 but 16.5 wide ones, which are cut down on the pin 75 side and keep the pin 1
  // edge of a 22 wide card (PCI-SIG M.2 Rev 1.0, Figure 7).
  const double right =
      name.width == 16 ? 0.5 * row_of(m2::widths(), 22).across.nominal : 0.5 * width_row.across.nominal;
  const double left = right - width_row.across.nominal;
  const double tab_right = 0.5 * m2::tab_width().nominal;
  const double tab_left = std::max(-tab_right, left);

  const Coordinate thickness = Coordinate::of(part.add(measured.thickness.value_or(m2::card_thickness())));
  const Coordinate half = Coordinate::of(part.add(width_row.across), 0.5);
  const Coordinate low = Coordinate(0.5 * (left + right)) - half;
  const Coordinate high = Coordinate(0.5 * (left + right)) + half;
  const Coordinate shoulder = Coordinate::of(part.add(m2::shoulder()));
  const Coordinate end = Coordinate::of(part.add(length_row.along));
  const Coordinate under = -1.0 * thickness;

  part.bodies.push_back(flat_body("edge", edge_outline(tab_left, tab_right, m2::shoulder().nominal, name.keys),
                                  {tab_left, 0.0, under}, {tab_right, shoulder, 0.0}));
  part.bodies.push_back(
      flat_body("card", with_cut(left, right, m2::shoulder().nominal, length, 0.5 * m2::screw_hole().nominal, 0.0),
                {low, shoulder, under}, {high, end, 0.0}));
  card.underside = under;
  card.hole_y = length;
  card.screw_end = end;
  card.chips_to = length - 0.5 * m2::top_pad().nominal;
  card.chips_from = Coordinate(m2::top_parts_start().nominal);

  const auto top = measured.top ? measured.top : code != nullptr ? std::optional(code->top) : std::nullopt;
  const auto bottom = measured.bottom ? measured.bottom : code != nullptr ? code->bottom : std::nullopt;
  if (top) {
    card.chips_top = Coordinate::of(part.add(*top));
    part.bodies.push_back(flat_body(
        "chips", with_cut(left, right, m2::top_parts_start().nominal, length, 0.5 * m2::top_pad().nominal, 0.0),
        {low, card.chips_from, 0.0}, {high, end, card.chips_top}));
  }
  if (bottom) {
    const Coordinate depth = Coordinate::of(part.add(*bottom));
    part.bodies.push_back(flat_body("chips underneath",
                                    with_cut(left, right, m2::bottom_parts_start().nominal, length,
                                             0.5 * m2::bottom_pad().nominal, m2::bottom_pad_inset().nominal),
                                    {low, m2::bottom_parts_start().nominal, under - depth}, {high, end, under}));
  }
  part.holes.push_back({"screw", 0.0, length, m2::screw_hole().nominal});
  make_ready(part);
  return card;
}

Part m2_screw() {
  Part part;
  part.id = "m2/screw";
  part.kind = "screw";
  const Coordinate across = Coordinate::of(part.add(m2::screw_head_diameter()));
  const Coordinate height = Coordinate::of(part.add(m2::screw_head_height()));
  part.bodies.push_back(round_body("head", 0.0, 0.0, across, 0.0, height));
  return part;
}

Part m2_socket(const m2::SocketClass& height_class) {
  Part part;
  part.id = "m2/socket/" + std::string(height_class.name);
  part.kind = "socket";
  const Coordinate side = Coordinate::of(part.add(m2::socket_across()), 0.5);
  const Coordinate rear = Coordinate::of(part.add(m2::socket_rear()));
  const Coordinate cover = Coordinate::of(part.add(m2::cover_front()));
  const Coordinate front = Coordinate::of(part.add(m2::socket_front()));
  const Coordinate height = Coordinate::of(part.add(height_class.height));
  const Coordinate ledge = Coordinate::of(part.add(height_class.ledge));
  part.bodies.push_back(box_body("socket", {-1.0 * side, rear, 0.0}, {side, cover, height}));
  part.bodies.push_back(box_body("ledge", {-1.0 * side, cover, 0.0}, {side, front, ledge}));
  return part;
}

Part m2_standoff(const Coordinate& diameter, const Coordinate& height) {
  Part part;
  part.id = "m2/standoff";
  part.kind = "standoff";
  part.bodies.push_back(round_body("standoff", 0.0, 0.0, diameter, 0.0, height + Coordinate(m2::solder().nominal)));
  return part;
}

}  // namespace baywright::parts
