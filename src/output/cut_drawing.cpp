#include "output/cut_drawing.h"

#include "output/mark.h"

#include <algorithm>
#include <array>
#include <map>

namespace baywright::output {

using fit::Finding;
using fit::Scene;
using geometry::View;

namespace {

constexpr const char* behind_fill = "#F7F8F9";

/// Hatches so that parts which lie side by side differ, in angle first and then in spacing; the two between which it
/// decides choose first.
std::map<std::string, std::size_t> hatches(const Subject& s, const View& view, const std::vector<Seen>& seen) {
  const Scene& scene = s.seated.scene;
  constexpr double beside = 1.0;  // mm
  std::map<std::string, Window> pieces;
  for (const Seen& each : seen) {
    if (!each.cut) continue;
    const Window box = bounds_in(view, scene.element(each.element));
    const auto [known, added] = pieces.emplace(piece(scene, each.element), box);
    if (added) continue;
    known->second.low = glm::min(known->second.low, box.low);
    known->second.high = glm::max(known->second.high, box.high);
  }
  std::map<std::string, std::size_t> out;
  const auto choose = [&](const std::string& name, const Window& box) {
    std::size_t choice = 0;
    const auto taken = [&](const auto& other) {
      const Window& theirs = pieces.at(other.first);
      return other.second == choice && box.low.x < theirs.high.x + beside && theirs.low.x < box.high.x + beside &&
             box.low.y < theirs.high.y + beside && theirs.low.y < box.high.y + beside;
    };
    while (std::any_of(out.begin(), out.end(), taken)) ++choice;
    out.emplace(name, choice);
  };
  if (s.drawn != nullptr)
    for (const std::size_t which : {std::size_t{0}, std::size_t{1}})
      for (const int element : alike(scene, s.drawn->between[which], s.drawn->bodies[which]))
        if (const auto found = pieces.find(piece(scene, element)); found != pieces.end() && !out.contains(found->first))
          choose(found->first, found->second);
  for (const auto& [name, box] : pieces)
    if (!out.contains(name)) choose(name, box);
  return out;
}

}  // namespace

void draw_edges(Group& group, const std::vector<std::vector<Vec2>>& edges, const Placement& placement, const Pen& pen) {
  for (const auto& edge : edges) {
    Line line{{}, false, pen};
    for (const Vec2& p : edge) line.points.push_back(placement.at(p));
    group.add(std::move(line));
  }
}

void draw_seen(const Subject& s, Group& group, const std::vector<Seen>& seen, const View& view,
               const Placement& placement) {
  struct Hatch {
    double degrees, pitch;
  };
  constexpr std::array<Hatch, 6> usual = {{{45, 1.4}, {135, 1.4}, {45, 0.9}, {135, 0.9}, {45, 2.2}, {135, 2.2}}};
  const auto choices = hatches(s, view, seen);
  for (const Seen& each : seen) {
    Area area{on_paper(each.outlines, placement),
              each.cut ? (s.own(each.element) ? drive_fill : paper) : behind_fill,
              Pattern::none,
              0.0,
              1.0,
              {0.13, grey, false}};
    if (each.cut) {
      const Hatch& hatch = usual[choices.at(piece(s.seated.scene, each.element)) % usual.size()];
      area.pattern = Pattern::hatch;
      area.degrees = hatch.degrees;
      area.pitch = hatch.pitch;
    }
    if (!each.outlines.empty()) group.add(std::move(area));
    draw_edges(group, each.breaks, placement, {thin_line, grey, false});
    if (!each.cut) draw_edges(group, each.edges, placement, {});
  }
  for (const Seen& each : seen)  // edges last, so that no part's fill hides its neighbour's
    if (each.cut) draw_edges(group, each.edges, placement, {thick_line, ink, false});
}

void draw_overlap(Group& group, const Spot& spot, const Finding& finding, const Placement& placement) {
  for (const geometry::Region& region : spot.overlap) {
    std::vector<Outline> outlines = region.holes;
    outlines.insert(outlines.begin(), region.outline);
    draw_verdict_area(group, finding.verdict.value_or(fit::Verdict::undecided), true, on_paper(outlines, placement));
  }
}

namespace {

void draw_gap_arrow(Group& group, const Vec2& tip, const Vec2& along, double tail, const std::string& colour) {
  group.add(Line{{tip, tip - along * tail}, false, {thick_line + 0.5, paper, false}});
  group.add(Line{{tip, tip - along * tail}, false, {thick_line, colour, false}});
  draw_arrow(group, tip, along, colour);
}

}  // namespace

void draw_spot(Group& group, const Spot& spot, const Finding& finding, const Placement& placement) {
  const fit::Verdict verdict = finding.verdict.value_or(fit::Verdict::undecided);
  draw_overlap(group, spot, finding, placement);
  const Vec2 a = placement.at(spot.on_drive);
  const Vec2 b = placement.at(spot.on_other);
  const Vec2 along(spot.along.x, -spot.along.y);
  const double shown = glm::dot(b - a, along);
  if (shown >= 6.0) {  // between the faces
    draw_gap_arrow(group, b, along, 0.5 * shown, colour(verdict));
    draw_gap_arrow(group, a, -along, 0.5 * shown, colour(verdict));
  } else {  // from outside, on the faces
    const bool apart = shown >= 0.0;
    draw_gap_arrow(group, apart ? a : b, along, 4.5, colour(verdict));
    draw_gap_arrow(group, apart ? b : a, -along, 4.5, colour(verdict));
  }
}

}  // namespace baywright::output
