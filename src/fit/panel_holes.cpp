#include "fit/panel_holes.h"

#include "fit/measured.h"
#include "fit/sheet_holes.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace baywright::fit {

using build::Bay;
using build::Place;
using geometry::Vec2;

namespace {

const Bay* panel_of(const Place& place) {
  const auto* bay = std::get_if<Bay>(&place.socket);
  return bay != nullptr && bay->panel && bay->fixing ? bay : nullptr;
}

/// All holes on one face of a panel's part, this place's first.
struct Sheet {
  HoleSheet laid;
  std::vector<std::string> of;      // by SheetHole::given: the place, or empty of the part's own
  std::vector<std::size_t> number;  // likewise: from 1, within its place
};

Sheet sheet_of(const build::Build& build, const Place& place) {
  const parts::Part& part = build.parts[static_cast<std::size_t>(place.part)].part;
  const PartFace face = face_of(part, place.axis, place.back);
  Sheet out;
  std::vector<SheetHole> holes;
  const auto add = [&](const Place& from) {
    const Bay* bay = panel_of(from);
    if (bay == nullptr || from.part != place.part || from.axis != place.axis || from.back != place.back) return;
    for (std::size_t i = 0; i < bay->fixing->holes.size(); ++i) {
      const tolerance::Dimension& wide = bay->fixing->diameter.dimension;
      holes.push_back({.at = on_face(from, face, bay->fixing->holes[i][0], bay->fixing->holes[i][1]),
                       .diameter = wide.nominal,
                       .least = wide.low()});
      out.of.push_back(from.name);
      out.number.push_back(i + 1);
    }
  };
  add(place);
  for (const Place& other : build.places)
    if (&other != &place) add(other);
  for (SheetHole& own : own_holes(part, face)) {
    holes.push_back(std::move(own));
    out.of.emplace_back();
    out.number.push_back(out.number.size() + 1);
  }
  out.laid = lay_out(part, face, std::move(holes));
  return out;
}

/// Faults of one place, the worst hole of each.
class Faults {
 public:
  Faults(const build::Build& build, const build::Drive& drive, const Place& place, const Frame& frame,
         tolerance::Method method)
      : drive_(drive),
        place_(place),
        part_(build.parts[static_cast<std::size_t>(place.part)].name),
        fixing_(*std::get<Bay>(place.socket).fixing),
        frame_(frame),
        method_(method),
        sheet_(sheet_of(build, place)) {}

  std::vector<Finding> find() {
    for (const SheetHole& hole : sheet_.laid.holes) {
      if (sheet_.of[hole.given] != place_.name) continue;
      if (hole.on != SheetHole::On::sheet) {
        off_sheet(hole);
        continue;
      }
      edge(hole);
      web(hole);
      bend(hole);
    }
    std::vector<Finding> out;
    for (auto& [finding, count] : found_) {
      finding.why.figures.emplace_back("count", count);
      out.push_back(std::move(finding));
    }
    return out;
  }

 private:
  [[nodiscard]] Finding about(const SheetHole& hole, Code code) const {
    Finding out;
    out.kind = Kind::sheet;
    out.between = {drive_.name, place_.name};
    const std::size_t number = sheet_.number[hole.given];
    out.why = {code, {{"part", part_}}, {{"hole", static_cast<double>(number)}}};
    const auto& [along, other] = fixing_.holes[number - 1];
    out.at = frame_.pose.point({other, along, 0.0});
    return out;
  }

  /// The chain of a distance from the hole's edge along `way`.
  [[nodiscard]] std::vector<ChainLink> chain(const Vec2& way) const {
    std::vector<ChainLink> out = {{fixing_.diameter.dimension, -0.5}};
    if (!fixing_.placed) return out;
    const double length = glm::length(way);
    for (const int axis : {0, 1}) {
      tolerance::Dimension placed = *fixing_.placed;
      placed.name += axis == 0 ? ", one way" : ", the other way";
      const double share = length > 0.0 ? std::abs(way[axis]) / length : 1.0;
      if (share > 1e-9) out.push_back({placed, -share});
    }
    return out;
  }

  void add(Finding finding) {
    const auto room = [](const Finding& each) { return each.gap ? each.gap->min - each.gap->asked : 0.0; };
    for (auto& [there, count] : found_) {
      if (there.why.code != finding.why.code || there.verdict.has_value() != finding.verdict.has_value()) continue;
      count += 1.0;
      if (room(finding) < room(there)) there = std::move(finding);
      return;
    }
    found_.emplace_back(std::move(finding), 1.0);
  }

  void off_sheet(const SheetHole& hole) {
    Finding out = about(hole, Code::hole_off_sheet);
    out.verdict = Verdict::does_not_fit;
    out.share = 0.0;
    out.why.words.emplace_back("where", hole.on == SheetHole::On::opening ? "in an opening of" : "off");
    add(std::move(out));
  }

  void edge(const SheetHole& hole) {
    const double asked = edge_asked(hole.diameter);
    Finding out = measured(about(hole, Code::hole_breaks_out), hole.edge - 0.5 * hole.diameter,
                           chain(hole.edge_at - hole.at), 0.0, method_);
    out.why.figures.insert(out.why.figures.end(), {{"edge", hole.edge}, {"asked", asked}, {"left", out.gap->nominal}});
    if (*out.verdict != Verdict::fits) {
      add(std::move(out));
    } else if (hole.edge < asked - 1e-9) {
      Finding note = about(hole, Code::hole_near_edge);
      note.why.figures = std::move(out.why.figures);
      add(std::move(note));
    }
  }

  void web(const SheetHole& hole) {
    if (!std::isfinite(hole.web)) return;
    const SheetHole& other = sheet_.laid.holes[hole.other];
    const double asked = web_asked(fixing_.sheet.dimension.nominal);
    std::vector<ChainLink> links = chain(other.at - hole.at);
    // The other is drilled by itself; of one that is there already only this one's place is open.
    if (!other.own) {
      const std::size_t own = links.size();
      for (std::size_t i = 0; i < own; ++i) {
        links.push_back(links[i]);
        links.back().dimension.name += " of the other";
      }
    }
    Finding out = measured(about(hole, Code::holes_meet), hole.web, links, 0.0, method_);
    out.why.words.emplace_back("of", sheet_.of[other.given]);
    out.why.figures.insert(
        out.why.figures.end(),
        {{"other", static_cast<double>(sheet_.number[other.given])}, {"web", hole.web}, {"asked", asked}});
    if (*out.verdict != Verdict::fits) {
      add(std::move(out));
    } else if (hole.web < asked - 1e-9) {
      Finding note = about(hole, Code::holes_near);
      note.why = {Code::holes_near, out.why.words, out.why.figures};
      add(std::move(note));
    }
  }

  void bend(const SheetHole& hole) {
    if (!std::isfinite(hole.bend)) return;
    const double thickness = fixing_.sheet.dimension.nominal;
    Finding out = measured(about(hole, Code::hole_near_bend), hole.bend, chain(hole.bend_at - hole.at),
                           bend_asked(thickness, hole.inside), method_);
    if (*out.verdict == Verdict::fits) return;
    out.why.words.emplace_back("inside", hole.inside ? "" : "taken");
    out.why.figures.insert(out.why.figures.end(),
                           {{"thickness", thickness}, {"inside", hole.inside.value_or(thickness)}});
    add(std::move(out));
  }

  const build::Drive& drive_;
  const Place& place_;
  const std::string& part_;
  const build::Fixing& fixing_;
  const Frame& frame_;
  tolerance::Method method_;
  Sheet sheet_;
  std::vector<std::pair<Finding, double>> found_;
};

}  // namespace

std::vector<Finding> panel_holes(const build::Build& build, const build::Drive& drive, int place, const Frame& frame,
                                 tolerance::Method method) {
  const Place& at = build.places[static_cast<std::size_t>(place)];
  if (panel_of(at) == nullptr) return {};
  return Faults(build, drive, at, frame, method).find();
}

}  // namespace baywright::fit
