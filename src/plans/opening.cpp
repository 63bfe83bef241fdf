// An opening in a sheet that stands in the way: a window, or a notch in its edge, over what comes too near.
#include "fit/host.h"
#include "fit/seat.h"
#include "parts/sheet.h"
#include "plans/catalogue.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace baywright::plans {

namespace {

constexpr double web = 3.0;  // mm of sheet that has to be left beside a window; common practice, no source

using Rectangle = std::array<double, 4>;  // low x, low y, high x, high y, mm

/// The part of the sheet that the drive's solids come too near to, in the sheet's own coordinates, whole millimetres.
std::optional<Rectangle> too_near(const fit::Host& host, const fit::Seated& seated, int part, double asked) {
  const fit::PlacedPart& placed = host.parts[static_cast<std::size_t>(part)];
  const fit::Element& plate = host.scene.element(placed.first);
  const geometry::Bounds reach = fit::swept(plate);
  std::optional<Rectangle> out;
  for (int i = seated.scene.first_element(); i < seated.scene.element_count(); ++i) {
    if (!seated.brings(i)) continue;
    const fit::Element& element = seated.scene.element(i);
    const geometry::Bounds box = fit::swept(element);
    bool near = true;
    for (int axis = 0; axis < 3; ++axis)
      near = near && box.low[axis] < reach.high[axis] + asked && box.high[axis] > reach.low[axis] - asked;
    if (!near) continue;
    // Both may move within their limits; `swept` has the drive's way in it already.
    const geometry::Vec3 shift = placed.frame.pose.shift;
    const Rectangle one = {std::floor(box.low.x - shift.x - asked - plate.swing.x),
                           std::floor(box.low.y - shift.y - asked - plate.swing.y),
                           std::ceil(box.high.x - shift.x + asked + plate.swing.x),
                           std::ceil(box.high.y - shift.y + asked + plate.swing.y)};
    if (!out) out = one;
    for (std::size_t k : {0U, 1U}) {
      (*out)[k] = std::min((*out)[k], one[k]);
      (*out)[k + 2] = std::max((*out)[k + 2], one[k + 2]);
    }
  }
  return out;
}

using Corners = std::vector<std::array<double, 2>>;

std::string text_of(const Corners& corners) {
  std::string out;
  for (const auto& [x, y] : corners) {
    std::string point;
    for (const double value : {x, y}) {
      std::string text = build::length_text(value, 0.0, 0.0);
      std::erase(text, '"');
      point += (point.empty() ? "[" : ", ") + text;
    }
    out += (out.empty() ? "[" : ", ") + point + "]";
  }
  return out + "]";
}

/// The sheet less the rectangle, as outline and holes. None where nothing would hold the rest together.
std::optional<std::string> cut_out(double along, double across, Rectangle& cut) {
  std::array<bool, 4> open{};  // at -x, -y, +x, +y
  const std::array<double, 4> edge = {0.0, 0.0, along, across};
  for (std::size_t side = 0; side < 4; ++side) {
    const double left = side < 2 ? cut[side] - edge[side] : edge[side] - cut[side];
    open[side] = left < web;
    if (open[side]) cut[side] = edge[side];
  }
  if (!(cut[0] < cut[2] && cut[1] < cut[3]) || (open[0] && open[2]) || (open[1] && open[3])) return std::nullopt;
  const auto [x0, y0, x1, y1] = cut;
  Corners outline;
  // Counter-clockwise from the low corner; at each corner or edge that the cut opens, go round it.
  if (open[0] && open[1])
    outline.insert(outline.end(), {{x1, 0.0}});
  else
    outline.push_back({0.0, 0.0});
  if (open[1] && !open[0] && !open[2]) outline.insert(outline.end(), {{x0, 0.0}, {x0, y1}, {x1, y1}, {x1, 0.0}});
  if (open[1] && open[2])
    outline.insert(outline.end(), {{x0, 0.0}, {x0, y1}, {along, y1}});
  else
    outline.push_back({along, 0.0});
  if (open[2] && !open[1] && !open[3]) outline.insert(outline.end(), {{along, y0}, {x0, y0}, {x0, y1}, {along, y1}});
  if (open[2] && open[3])
    outline.insert(outline.end(), {{along, y0}, {x0, y0}, {x0, across}});
  else
    outline.push_back({along, across});
  if (open[3] && !open[2] && !open[0]) outline.insert(outline.end(), {{x1, across}, {x1, y0}, {x0, y0}, {x0, across}});
  if (open[3] && open[0])
    outline.insert(outline.end(), {{x1, across}, {x1, y0}, {0.0, y0}});
  else
    outline.push_back({0.0, across});
  if (open[0] && !open[3] && !open[1]) outline.insert(outline.end(), {{0.0, y1}, {x1, y1}, {x1, y0}, {0.0, y0}});
  if (open[0] && open[1]) outline.insert(outline.end(), {{0.0, y1}, {x1, y1}});
  const bool window = std::none_of(open.begin(), open.end(), [](bool side) { return side; });
  const Corners hole = {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}};
  return "outline = " + text_of(outline) + ", holes = [" + (window ? text_of(hole) : "") + "]";
}

bool in_the_way(const fit::Seating& now, const std::string& part) {
  return std::any_of(now.findings.begin(), now.findings.end(), [&](const fit::Finding& finding) {
    return finding.gap && finding.verdict && *finding.verdict != fit::Verdict::fits && finding.between[1] == part;
  });
}

/// What then reaches beyond the sheet's other side, the farthest, at nominal and at the limits.
void add_out(Change& change, const fit::Host& host, const fit::Seated& seated, const fit::Seating& now,
             const Spot& spot, std::size_t part, double thinner) {
  const geometry::Bounds& sheet = host.scene.element(host.parts[part].first).bounds;
  const auto carrier = static_cast<std::size_t>(spot.at().part);
  const geometry::Bounds& stands_on = host.scene.element(host.parts[carrier].first).bounds;
  const bool below = sheet.low.z + sheet.high.z < stands_on.low.z + stands_on.high.z;
  for (const fit::Finding& finding : now.findings) {
    if (!finding.gap || finding.between[1] != change.what) continue;
    for (int i = seated.scene.first_element(); i < seated.scene.element_count(); ++i) {
      const fit::Element& element = seated.scene.element(i);
      if (!seated.brings(i) || element.part != finding.between[0]) continue;
      const double out = below ? sheet.low.z - element.bounds.low.z : element.bounds.high.z - sheet.high.z;
      const double most = out + finding.gap->nominal - finding.gap->min + thinner;
      if (!(most > change.out_most)) continue;
      change.through = element.part;
      change.out = std::max(out, 0.0);
      change.out_most = most;
    }
  }
}

}  // namespace

void add_openings(std::vector<Option>& out, const Spot& spot, const fit::Seating& now) {
  if (!fit::seats(spot.drive, now.questions)) return;
  const build::Build& build = spot.build;
  std::optional<fit::Host> host;
  std::optional<fit::Seated> seated;
  for (std::size_t i = 1; i < build.parts.size(); ++i) {
    const build::HostPart& part = build.parts[i];
    if (!in_the_way(now, part.name) || !parts::is_sheet(part.part, 2) || part.part.id != "inline") continue;
    if (part.part.bodies.front().form != parts::Body::Form::box) continue;
    const std::vector<double> values = parts::nominal_values(part.part);
    const bool as_written = parts::outer_face(part.part, 0, false).at(values) == 0.0 &&
                            parts::outer_face(part.part, 1, false).at(values) == 0.0;  // not turned
    const bool carries = std::any_of(build.places.begin(), build.places.end(),
                                     [&](const build::Place& place) { return place.part == static_cast<int>(i); });
    if (!as_written || carries) continue;
    if (!host) {
      host = fit::compile(build);
      seated = fit::seat(*host, build, spot.drive, spot.place);
    }
    double asked = 0.0;
    for (const fit::Finding& finding : now.findings)
      if (finding.gap && finding.between[1] == part.name) asked = std::max(asked, finding.gap->asked);
    auto cut = too_near(*host, *seated, static_cast<int>(i), asked);
    if (!cut) continue;
    const auto rest = cut_out(parts::size_along(part.part, 0), parts::size_along(part.part, 1), *cut);
    if (!rest) continue;
    const parts::Coordinate top = parts::outer_face(part.part, 2, true);
    tolerance::Dimension thickness = part.part.dimensions[static_cast<std::size_t>(top.shares.front().dimension)];
    Option option;
    option.change = {.kind = Kind::opening,
                     .what = part.name,
                     .cut = *cut,
                     .prices = {Price::metal_work, Price::warranty, Price::undone_hardly},
                     .reversible = false};
    option.variants = {{{{.path = {"part", part.name, "solid"},
                          .value = "{ prism = { " + *rest + ", height = " + limited(thickness) + " } }"}}}};
    option.holds = {"sheet " + part.name};
    option.mends = {fit::Kind::clearance};
    option.part = part.name;
    option.key = "opening " + part.name;
    option.amount = ((*cut)[2] - (*cut)[0]) * ((*cut)[3] - (*cut)[1]);
    option.cautions = {Caution::sheet_only};
    add_out(option.change, *host, *seated, now, spot, i, thickness.minus);
    if (!option.change.through.empty()) option.cautions.push_back(Caution::stands_out);
    out.push_back(std::move(option));
  }
}

}  // namespace baywright::plans
