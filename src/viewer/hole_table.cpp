#include "viewer/hole_table.h"

#include "output/drill_tables.h"
#include "output/words.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace baywright::viewer {

namespace {

constexpr const char* none = "none";

std::string figure(double mm) {
  return tolerance::in_words(std::round(mm * 1e3) / 1e3);
}

std::string in_hundredths(double mm) {
  return tolerance::in_words(std::round(mm * 1e2) / 1e2);
}

/// The template's hole of a mark; null: it has none.
const plans::DrillHole* drilled(const HolePlan& plan, const HoleMark& mark) {
  if (!plan.drilling || mark.number < 1 || static_cast<std::size_t>(mark.number) > plan.drilling->holes.size())
    return nullptr;
  return &plan.drilling->holes[static_cast<std::size_t>(mark.number) - 1];
}

const plans::Pattern* pattern_of(const HolePlan& plan, const std::string& place) {
  if (!plan.drilling) return nullptr;
  const auto& patterns = plan.drilling->patterns;
  const auto found =
      std::find_if(patterns.begin(), patterns.end(), [&](const plans::Pattern& each) { return each.place == place; });
  return found == patterns.end() ? nullptr : &*found;
}

/// Which hole of the drive is behind it.
std::string meets(const HolePlan& plan, const HoleMark& mark, const plans::DrillHole& hole, const Shown& shown) {
  if (mark.kind != HoleMark::Kind::hole) return {};
  if (mark.chosen && mark.index < shown.seated.meets.size()) {
    const std::string& name = shown.seated.meets[mark.index];
    return name.empty() ? none : name;
  }
  if (!hole.meets.empty()) return hole.meets;
  const plans::Pattern* pattern = pattern_of(plan, mark.place);
  return pattern != nullptr && !pattern->drive.empty() ? none : "";
}

std::string short_of(const plans::DrillHole& hole) {
  std::string out;
  if (hole.edge < hole.edge_asked)
    out = in_hundredths(hole.edge) + " to an edge, " + in_hundredths(hole.edge_asked) + " asked (two diameters)";
  if (hole.web < hole.web_asked)
    out +=
        (out.empty() ? "" : "; ") + (hole.web < 0.0 ? "runs " + in_hundredths(-hole.web) + " into the next hole"
                                                    : in_hundredths(hole.web) + " of sheet to the next hole, " +
                                                          in_hundredths(hole.web_asked) + " asked (two thicknesses)");
  return out;
}

bool of_screws(fit::Kind kind) {
  return kind == fit::Kind::holes || kind == fit::Kind::screw || kind == fit::Kind::access;
}

/// Does not fit first, as a seating's own verdict is found.
int rank(fit::Verdict verdict) {
  switch (verdict) {
    case fit::Verdict::does_not_fit:
      return 0;
    case fit::Verdict::undecided:
      return 1;
    case fit::Verdict::marginal:
      return 2;
    case fit::Verdict::fits:
      break;
  }
  return 3;
}

}  // namespace

std::vector<HoleRow> hole_rows(const HolePlan& plan, const Shown& shown) {
  std::vector<HoleRow> out;
  for (std::size_t i = 0; i < plan.marks.size(); ++i) {
    const HoleMark& mark = plan.marks[i];
    HoleRow row;
    row.mark = i;
    row.at = {figure(mark.at.x), figure(mark.at.y)};
    if (mark.number > 0) row.number = std::to_string(mark.number);
    if (mark.diameter > 0.0) row.size = figure(mark.diameter);
    if (mark.kind == HoleMark::Kind::standoff) {
      row.size = "M2";  // common practice, as fit/seat_m2.cpp has it
      row.meets = "card " + mark.name.substr(mark.name.rfind(' ') + 1);
    }
    if (mark.kind == HoleMark::Kind::own) row.meets = "its own";
    if (const plans::DrillHole* hole = drilled(plan, mark)) {
      const plans::Pattern* pattern = pattern_of(plan, mark.place);
      if (pattern != nullptr && !pattern->thread.empty()) row.size += " " + pattern->thread;
      if (!hole->own) row.meets = meets(plan, mark, *hole, shown);
      row.meets_none = row.meets == none;
      row.edge = in_hundredths(hole->edge);
      row.short_of = short_of(*hole);
    }
    out.push_back(std::move(row));
  }
  return out;
}

std::vector<HoleWord> hole_words(const HolePlan& plan, const Shown& shown) {
  std::vector<HoleWord> out;
  for (const HoleRow& row : hole_rows(plan, shown)) {
    if (row.meets_none)
      out.push_back({fit::Verdict::marginal, "Hole " + row.number + " meets no hole of the drive" +
                                                 (plan.marks[row.mark].there ? "." : ": look before you drill it.")});
    if (!row.short_of.empty())
      out.push_back({fit::Verdict::marginal, "Hole " + row.number + ": " + row.short_of + "."});
  }
  bool agree = false;  // of many pairs of holes that agree one sentence is enough; each that does not is told
  for (const fit::Finding& finding : shown.seating.findings) {
    if (!of_screws(finding.kind)) continue;
    const fit::Verdict verdict = finding.verdict.value_or(fit::Verdict::fits);
    const bool agrees = finding.why.code == fit::Code::hole_reach && verdict == fit::Verdict::fits;
    if (agrees && std::exchange(agree, true)) continue;
    out.push_back({verdict, output::say(finding, shown.build.method)});
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const HoleWord& a, const HoleWord& b) { return rank(a.verdict) < rank(b.verdict); });
  return out;
}

std::string order_words(const HolePlan& plan) {
  if (!plan.drilling) return {};
  std::string out;
  double size = -1.0;
  for (const std::size_t i : plan.drilling->order) {
    const plans::DrillHole& hole = plan.drilling->holes[i];
    if (hole.own) continue;
    if (hole.diameter.nominal != size) {
      size = hole.diameter.nominal;
      out += (out.empty() ? "" : "; then ") + ("drill " + figure(size)) + ": ";
    } else {
      out += ", ";
    }
    out += std::to_string(i + 1);
  }
  return out;
}

}  // namespace baywright::viewer
