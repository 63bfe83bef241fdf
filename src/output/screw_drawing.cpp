#include "output/screw_drawing.h"

#include "standards/fasteners.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <cmath>

namespace baywright::output {

using fit::Finding;
using geometry::Vec3;
using geometry::View;

namespace {

const Finding* screw_finding(const Subject& s) {
  for (const Finding& finding : s.seating.findings)
    if (finding.kind == fit::Kind::screw && finding.why.figure("length") > 0.0) return &finding;
  return nullptr;
}

/// Where screws enter the drive, as the findings have it: they lie at the first hole.
std::optional<Vec3> entry_of(const Subject& s) {
  for (const Finding& finding : s.seating.findings)
    if ((finding.kind == fit::Kind::screw || finding.kind == fit::Kind::holes) && finding.gap &&
        glm::length(finding.toward) > 0.5)
      return finding.at;
  return std::nullopt;
}

/// From the head of that element into the drive.
Vec3 inward(const Subject& s, const Vec3& head) {
  const geometry::Pose& slot = s.seated.slot.pose;
  if (!s.bay()->fixing->side) return slot.turn[2];
  return glm::dot(head - slot.shift, slot.turn[0]) > 0.0 ? -slot.turn[0] : slot.turn[0];
}

/// From the drive's middle, or the face that carries it, out to a point along a screw's axis.
double outward(const Subject& s, const Vec3& in, const Vec3& point) {
  return -glm::dot(point - s.seated.slot.pose.shift, in);
}

bool is_about_screw(const Subject& s) {
  return s.drawn != nullptr && (s.drawn->kind == fit::Kind::screw || s.drawn->kind == fit::Kind::holes);
}

}  // namespace

std::vector<ShownScrew> screws_in(const Subject& s, const View& view) {
  constexpr double in_plane = 0.1;  // mm
  std::vector<ShownScrew> out;
  const build::Bay* bay = s.bay();
  if (bay == nullptr || !bay->fixing || bay->fixing->thread.empty()) return out;
  const auto* thread = standards::fasteners::thread(bay->fixing->thread);
  const auto entry = entry_of(s);
  if (thread == nullptr || !entry) return out;
  const Finding* finding = screw_finding(s);
  const Vec3 first = bay->fixing->side ? -s.seated.slot.pose.turn[0] : s.seated.slot.pose.turn[2];
  const double drive = outward(s, first, *entry);  // the side holes' `at` is to the right
  for (int i = s.seated.scene.first_element(); i < s.seated.scene.element_count(); ++i) {
    const fit::Element& element = s.seated.scene.element(i);
    if (element.part != "screw" || element.body != "head") continue;
    const Vec3 middle = 0.5 * (element.bounds.low + element.bounds.high);
    const Vec3 in = inward(s, middle);
    const Vec2 flat(glm::dot(in, view.right), glm::dot(in, view.up));
    if (!(glm::length(flat) > 0.999) || !(std::abs(view.depth(middle)) < in_plane)) continue;
    ShownScrew screw;
    screw.in = flat;
    screw.high = glm::dot(glm::abs(in), element.bounds.high - element.bounds.low);
    const Vec3 under = middle + in * (0.5 * screw.high);
    screw.head = view.flat(under);
    screw.before = outward(s, in, under) - drive;
    screw.sheet = bay->fixing->sheet.dimension.nominal;
    const double length = bay->fixing->length ? bay->fixing->length->dimension.nominal : 0.0;
    // Without a finding about its depth it is drawn as long as it is.
    screw.deep =
        std::max(0.0, finding != nullptr ? finding->why.figure("in") : length - (bay->standoffs ? 0.0 : screw.before));
    screw.radius = 0.5 * thread->major.nominal;
    screw.hole = 0.5 * bay->fixing->diameter.dimension.nominal;
    screw.stud = bay->standoffs;
    out.push_back(screw);
  }
  return out;
}

void draw_screws(Group& group, const std::vector<ShownScrew>& screws, const Placement& placement) {
  for (const ShownScrew& screw : screws) {
    const Vec2 side(-screw.in.y, screw.in.x);
    const auto at = [&](double along, double aside) {
      return placement.at(screw.head + screw.in * along + side * aside);
    };
    const auto box = [&](double from, double to, double half) {
      return Outline{at(from, -half), at(to, -half), at(to, half), at(from, half)};
    };
    group.add(Area{{box(0.0, screw.sheet, screw.hole)}, paper, Pattern::none, 0.0, 1.0, {}});
    for (const double edge : {-screw.hole, screw.hole})
      group.add(Line{{at(0.0, edge), at(screw.sheet, edge)}, false, {thick_line, ink, false}});
    const double end = screw.before + screw.deep;
    if (screw.deep > 0.0) {
      const double from = screw.stud ? screw.before : 0.0;
      group.add(Area{{box(from, end, screw.radius)}, paper, Pattern::none, 0.0, 1.0, {}});
      group.add(Line{box(from, end, screw.radius), true, {thick_line, ink, false}});
      constexpr double root = 0.82;  // of the radius: the thread's inner line, as ISO 6410-1 draws it
      for (const double edge : {-root * screw.radius, root * screw.radius})
        group.add(Line{{at(from, edge), at(end, edge)}, false, {}});
    }
    const double past = 1.5 / placement.scale;
    group.add(Line{{at(-screw.high - past, 0.0), at(end + past, 0.0)}, false, {thin_line, grey, true}});
  }
}

std::optional<ShownScrew> deciding_screw(const Subject& s, const View& view) {
  if (!is_about_screw(s)) return std::nullopt;
  const Vec2 at = view.flat(s.drawn->at);
  const std::vector<ShownScrew> all = screws_in(s, view);
  const auto away = [&](const ShownScrew& screw) { return glm::distance(screw.entry(), at); };
  const auto found =
      std::min_element(all.begin(), all.end(), [&](const auto& a, const auto& b) { return away(a) < away(b); });
  if (found == all.end()) return std::nullopt;
  return *found;
}

Spot spot_of(const Subject& s, const View& view) {
  const auto screw = deciding_screw(s, view);
  if (!screw) return spot_in(s.seated, *s.drawn, view);
  const Vec2 side(-screw->in.y, screw->in.x);
  const double gap = s.drawn->gap->nominal;
  Spot spot;
  double half = screw->radius;  // of the area that is too much or missing, square to `along`
  Vec2 across = side;
  if (s.drawn->kind == fit::Kind::screw) {
    const bool deep = s.drawn->why.code == fit::Code::screw_long;
    spot.along = deep ? screw->in : -screw->in;
    spot.on_drive = screw->tip();
    spot.on_other = screw->entry() + screw->in * s.drawn->why.figure(deep ? "most" : "least");
  } else {
    spot.along = side;
    half = 0.5 * screw->sheet;
    across = screw->in;
    spot.on_other = screw->head + screw->in * half + side * screw->hole;
    spot.on_drive = spot.on_other - side * gap;
  }
  if (gap < 0.0) {
    const Vec2& a = spot.on_drive;
    const Vec2& b = spot.on_other;
    spot.overlap.push_back({{a - across * half, b - across * half, b + across * half, a + across * half}, {}});
  }
  return spot;
}

void draw_depths(const Subject& s, Group& group, const ShownScrew& screw, const Placement& placement) {
  if (s.drawn == nullptr || s.drawn->kind != fit::Kind::screw) return;
  const bool deep = s.drawn->why.code == fit::Code::screw_long;
  const double wanted = s.drawn->why.figure(deep ? "most" : "least");
  const Vec2 side(-screw.in.y, screw.in.x);
  const auto dimension = [&](double to, double way, const std::string& words) {
    const Vec2 aside = side * (way * (screw.radius + 4.5 / placement.scale));
    const Vec2 from = screw.entry();
    const Vec2 end = screw.entry() + screw.in * to;
    const double beyond = way * 1.0 / placement.scale;
    for (const Vec2& level : {from, end})
      group.add(Line{
          {placement.at(level + side * (way * screw.radius)), placement.at(level + aside + side * beyond)}, false, {}});
    const Vec2 a = placement.at(from + aside);
    const Vec2 b = placement.at(end + aside);
    const bool level = std::abs(screw.in.x) > 0.5;
    draw_dimension(group, a, b, level ? words : "");
    if (level) return;
    const bool right = a.x > placement.at(from).x;
    Text label =
        text(0.5 * (a + b) + Vec2(right ? 1.2 : -1.2, 0.9), words, smallest_text, right ? Anchor::start : Anchor::end);
    label.haloed = true;
    group.add(label);
  };
  const auto figure = [](double mm) { return tolerance::in_words(std::round(mm * 100.0) / 100.0); };
  dimension(screw.deep, 1.0, figure(screw.deep) + " in");
  dimension(wanted, -1.0, figure(wanted) + (deep ? " allowed" : " holds"));
}

}  // namespace baywright::output
