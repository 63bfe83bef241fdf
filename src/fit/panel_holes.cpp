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
  std::vector<std::string> own;     // likewise: of the part's own its name, as a template's table has it
};

Sheet sheet_of(const build::Build& build, const Place& place) {
  const parts::Part& part = build.parts[static_cast<std::size_t>(place.part)].part;
  const build::PartFace face = build::face_of(part, place.axis, place.back);
  Sheet out;
  std::vector<SheetHole> holes;
  const auto add = [&](const Place& from) {
    const Bay* bay = panel_of(from);
    if (bay == nullptr || from.part != place.part || from.axis != place.axis || from.back != place.back) return;
    for (std::size_t i = 0; i < bay->fixing->holes.size(); ++i) {
      const build::Fixing& fixing = *bay->fixing;
      const auto [along, other] = fixing.middle(i);
      holes.push_back({.at = build::on_face(from, face, along, other),
                       .diameter = fixing.width(i).nominal,
                       .there = fixing.there[i] ? fixing.there[i]->diameter : 0.0});
      out.of.push_back(from.name);
      out.number.push_back(i + 1);
    }
  };
  add(place);
  for (const Place& other : build.places)
    if (&other != &place) add(other);
  std::size_t own_count = 0;
  for (SheetHole& own : own_holes(part, face)) {
    holes.push_back(std::move(own));
    out.of.emplace_back();
    out.number.push_back(out.number.size() + 1);
    out.own.resize(out.of.size() - 1);
    out.own.push_back(part.holes[own_count++].name);
  }
  out.own.resize(out.of.size());
  out.laid = lay_out(part, face, std::move(holes));
  return out;
}

/// Whether it is there as it will be.
bool stands(const SheetHole& hole) {
  return hole.own || hole.there == hole.diameter;
}

/// Faults of one place, the worst hole of each.
class Faults {
 public:
  Faults(const build::Build& build, const build::Drive& drive, const Place& place, const Frame& frame,
         tolerance::Method method)
      : drive_(drive),
        place_(place),
        part_(build.parts[static_cast<std::size_t>(place.part)].name),
        build_part_(build.parts[static_cast<std::size_t>(place.part)].part),
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
      drilled_up(hole);
      edge(hole);
      web(hole);
      bend(hole);
    }
    sheet(build_part_);
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
    const auto [along, other] = fixing_.middle(number - 1);
    out.at = frame_.pose.point({other, along, 0.0});
    return out;
  }

  /// The chain of a distance from the hole's edge along `way`. Nothing moves one of the part's own.
  [[nodiscard]] std::vector<ChainLink> chain(const SheetHole& hole, const Vec2& way) const {
    std::vector<ChainLink> out;
    if (hole.own) return out;
    out.push_back({fixing_.diameter.dimension, -0.5});
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

  /// Of a part of several bodies, where a boss or a rim may have the holes; one body's sheet the reader asks for.
  void sheet(const parts::Part& part) {
    const auto& bay = std::get<Bay>(place_.socket);
    if (part.bodies.size() < 2 || (bay.raised && !bay.spacers && !bay.standoffs)) return;
    const std::vector<double> values = parts::nominal_values(part);
    const auto size = [&](const parts::Body& body, int axis) {
      const auto i = static_cast<std::size_t>(axis);
      return body.high[i].at(values) - body.low[i].at(values);
    };
    const auto area = [&](const parts::Body& body) {
      return size(body, (place_.axis + 1) % 3) * size(body, (place_.axis + 2) % 3);
    };
    const auto largest = std::max_element(part.bodies.begin(), part.bodies.end(),
                                          [&](const auto& a, const auto& b) { return area(a) < area(b); });
    const double thickness = size(*largest, place_.axis);
    const tolerance::Dimension& said = fixing_.sheet.dimension;
    if (std::abs(thickness - said.nominal) <= std::max(said.minus, said.plus) + 1e-9) return;
    Finding note;
    note.kind = Kind::sheet;
    note.between = {drive_.name, place_.name};
    note.why = {Code::sheet_differs, {{"part", part_}}, {{"sheet", said.nominal}, {"thickness", thickness}}};
    add(std::move(note));
  }

  void drilled_up(const SheetHole& hole) {
    if (!(hole.there > 0.0) || stands(hole)) return;
    Finding out = about(hole, Code::hole_drilled_up);
    out.why.figures.insert(out.why.figures.end(), {{"there", hole.there}, {"asked", hole.diameter}});
    add(std::move(out));
  }

  void edge(const SheetHole& hole) {
    const double asked = edge_asked(hole.diameter);
    Finding out = measured(about(hole, Code::hole_breaks_out), hole.edge - 0.5 * hole.diameter,
                           chain(hole, hole.edge_at - hole.at), 0.0, method_);
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
    std::vector<ChainLink> links = chain(hole, other.at - hole.at);
    for (ChainLink& link : chain(other, other.at - hole.at)) {  // it is drilled by itself
      link.dimension.name += " of the other";
      links.push_back(std::move(link));
    }
    Finding out = measured(about(hole, Code::holes_meet), hole.web, links, 0.0, method_);
    out.why.words.emplace_back("of", sheet_.of[other.given]);
    out.why.words.emplace_back("own", sheet_.own[other.given]);
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
    Finding out = measured(about(hole, Code::hole_near_bend), hole.bend, chain(hole, hole.bend_at - hole.at),
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
  const parts::Part& build_part_;
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
