#include "fit/fixing.h"

#include "fit/hole_zones.h"
#include "fit/measured.h"
#include "standards/fasteners.h"
#include "standards/row.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

namespace baywright::fit {

using build::Bay;
using build::Drive;
using parts::MountHole;
using tolerance::Dimension;
using tolerance::Method;
namespace fasteners = standards::fasteners;

namespace {

constexpr double same_hole = 3.0;  // mm: farther apart, two holes are not meant for each other; about one screw

/// Whether the drive's hole faces the side through which the bay's screws come.
bool faces(const MountHole& hole, const Bay& bay) {
  if (bay.on_edge) return hole.side && hole.left;
  return hole.side == bay.fixing->side;
}

/// Where a hole of the drive stands in the bay's terms: from its connector end, and from the bay's centre line or above
/// the drive's base.
std::pair<double, double> stands(const MountHole& hole, const Drive& drive, const Bay& bay) {
  const std::vector<double> values = parts::nominal_values(drive.cased.part);
  if (bay.on_edge) return {hole.x(), 0.5 * drive.cased.height.at(values) - hole.aside()};
  if (hole.side) return {hole.x(), hole.aside()};
  return {hole.x(), hole.aside() - 0.5 * drive.cased.width.at(values)};
}

/// `rows` speaks of the drive's own holes, not of those of its adapter.
bool has(const Drive& drive, const MountHole& hole) {
  return drive.rows.empty() || drive.worn ||
         std::find(drive.rows.begin(), drive.rows.end(), hole.name) != drive.rows.end();
}

Finding finding(Kind kind, const Drive& drive, const build::Place& place, std::optional<Verdict> verdict, Reason why) {
  Finding out;
  out.kind = kind;
  out.verdict = verdict;
  out.between = {drive.name, place.name};
  out.why = std::move(why);
  if (verdict) out.share = *verdict == Verdict::fits ? 1.0 : 0.0;
  return out;
}

void add_term(std::vector<ChainLink>& chain, const Dimension& dimension, double sensitivity) {
  for (ChainLink& link : chain)
    if (link.dimension.name == dimension.name) {
      link.sensitivity += sensitivity;
      return;
    }
  chain.push_back({dimension, sensitivity});
}

/// How far two pairs of holes disagree along one axis, and what that leaves of the screws' play.
struct Pitch {
  double off = 0.0;  // mm, bay less drive
  std::vector<ChainLink> chain;
};

Pitch pitch(const UsedHole& a, const UsedHole& b, const Drive& drive, const Bay& bay, bool along) {
  Pitch out;
  const auto bay_at = [&](const UsedHole& hole) { return along ? hole.along : hole.other; };
  const auto drive_at = [&](const UsedHole& hole) {
    const auto [x, y] = stands(*hole.drive_hole, drive, bay);
    return along ? x : y;
  };
  out.off = (bay_at(a) - bay_at(b)) - (drive_at(a) - drive_at(b));
  const double way = out.off < 0.0 ? 1.0 : -1.0;  // the play less |off|
  for (const auto& [hole, sign] : {std::pair(&a, 1.0), std::pair(&b, -1.0)}) {
    const bool mirrored = !along && bay.on_edge;  // then the holes' height counts down from the label
    for (const Dimension& d : along ? hole->drive_hole->along : hole->drive_hole->across)
      add_term(out.chain, d, (mirrored ? sign : -sign) * way);
    if (bay.fixing->placed) {
      Dimension placed = *bay.fixing->placed;
      placed.name = (sign > 0.0 ? "first " : "second ") + placed.name;
      add_term(out.chain, placed, sign * way);
    }
  }
  std::erase_if(out.chain, [](const ChainLink& link) { return link.sensitivity == 0.0 || link.dimension.exact(); });
  return out;
}

/// A gap of the screws' play: which way the holes are off, how far, and the chain of what moves them.
Finding reach_of(const Drive& drive, const build::Place& place, const Bay& bay, const char* way, double play,
                 double off, std::vector<ChainLink> chain, Method method) {
  Finding out = finding(Kind::holes, drive, place, std::nullopt,
                        {Code::hole_reach, {{"axis", way}}, {{"off", std::abs(off)}, {"play", play}}});
  out = measured(std::move(out), play - std::abs(off), chain, 0.0, method);
  // Holes that agree leave no more than all the play, whatever the rest does.
  double loose = play;
  for (const ChainLink& link : chain)
    if (link.dimension.name == bay.fixing->diameter.dimension.name)
      loose += std::abs(link.sensitivity) * link.dimension.plus;
  out.gap->max = std::min(out.gap->max, loose);
  out.verdict = verdict_of(out.gap->min, out.gap->max, 0.0);
  if (out.verdict == Verdict::does_not_fit) out.share = 0.0;
  return out;
}

/// The pairs of holes, lengthwise and across: the screws' play has to make up for how far two pitches differ.
void add_pitches(std::vector<Finding>& out, const std::vector<UsedHole>& used, const Drive& drive,
                 const build::Place& place, const Bay& bay, Method method) {
  const Dimension& screw = fasteners::thread(bay.fixing->thread)->major;
  for (std::size_t i = 0; i < used.size(); ++i)
    for (std::size_t j = i + 1; j < used.size(); ++j)
      for (const bool along : {true, false}) {
        Pitch found = pitch(used[i], used[j], drive, bay, along);
        double play = -screw.nominal;
        for (const UsedHole* hole : {&used[i], &used[j]}) {
          const Dimension wide = bay.fixing->width(hole->index);
          add_term(found.chain, wide, 0.5);
          play += 0.5 * wide.nominal;
        }
        add_term(found.chain, screw, -1.0);
        out.push_back(
            reach_of(drive, place, bay, along ? "along" : "across", play, found.off, std::move(found.chain), method));
      }
}

/// Where the bay itself says where the drive stands (its floor, its walls, its backplane), each hole has to be there.
void add_stands(std::vector<Finding>& out, const std::vector<UsedHole>& used, const Drive& drive,
                const build::Place& place, const Bay& bay, Method method) {
  const Dimension& screw = fasteners::thread(bay.fixing->thread)->major;
  for (const UsedHole& each : used) {
    const Dimension hole = bay.fixing->width(each.index);
    const double half_play = 0.5 * (hole.nominal - screw.nominal);
    const auto [along, other] = stands(*each.drive_hole, drive, bay);
    const auto chain_of = [&](double off, const std::vector<Dimension>& rows) {
      std::vector<ChainLink> chain;
      const double way = off < 0.0 ? 1.0 : -1.0;
      for (const Dimension& d : rows)
        if (!d.exact()) add_term(chain, d, -way);
      if (bay.fixing->placed) add_term(chain, *bay.fixing->placed, way);
      add_term(chain, hole, 0.5);
      add_term(chain, screw, -0.5);
      return chain;
    };
    if (bay.backplane) {
      const double off = each.along - along;
      out.push_back(
          reach_of(drive, place, bay, "along", half_play, off, chain_of(off, each.drive_hole->along), method));
    }
    if (bay.fixing->side) {
      const double off = each.other - other;
      out.push_back(
          reach_of(drive, place, bay, "in height", half_play, off, chain_of(off, each.drive_hole->across), method));
    } else if (bay.width && !bay.on_edge) {
      const double off = each.other - other;
      const Dimension& wide =
          drive.cased.part.dimensions[static_cast<std::size_t>(drive.cased.width.shares[0].dimension)];
      std::vector<ChainLink> chain = chain_of(off, each.drive_hole->across);
      chain.push_back({bay.width->dimension, 0.5});
      chain.push_back({wide, -0.5});
      const double walls = 0.5 * (bay.width->dimension.nominal - wide.nominal);
      out.push_back(
          reach_of(drive, place, bay, "across", half_play + std::max(0.0, walls), off, std::move(chain), method));
    }
  }
}

/// Of all the ways in which holes may miss each other the worst.
std::optional<Finding> reach(const std::vector<UsedHole>& used, const Drive& drive, const build::Place& place,
                             const Bay& bay, Method method) {
  if (bay.fixing->thread.empty()) return std::nullopt;
  std::vector<Finding> all;
  add_pitches(all, used, drive, place, bay, method);
  const auto pairs_end = static_cast<std::ptrdiff_t>(all.size());
  add_stands(all, used, drive, place, bay, method);
  const auto worst = std::min_element(all.begin(), all.end(),
                                      [](const Finding& a, const Finding& b) { return a.gap->min < b.gap->min; });
  if (worst == all.end()) return std::nullopt;
  // Where the bay says where the drive stands, half of what a hole is larger counts.
  const bool pairs = worst - all.begin() < pairs_end;
  const tolerance::Dimension nowhere{};
  const double sure =
      pairs ? sure_hole(hole_match(drive, bay, used), fasteners::thread(bay.fixing->thread)->major.nominal,
                        bay.fixing->placed.value_or(nowhere), bay.fixing->diameter.dimension.minus)
            : bay.fixing->diameter.dimension.nominal - 2.0 * worst->gap->min;
  worst->why.figures.insert(
      worst->why.figures.end(),
      {{"sure", sure}, {"hole", bay.fixing->diameter.dimension.nominal}, {"pairs", pairs ? 1.0 : 0.0}});
  return std::move(*worst);
}

/// How far the place's hole that comes nearest to one of the drive's is off it, mm; negative: the drive has none there.
double nearest_hole(const Drive& drive, const Bay& bay) {
  double least = -1.0;
  for (std::size_t i = 0; i < bay.fixing->holes.size(); ++i) {
    const auto [along, other] = bay.fixing->middle(i);
    for (const MountHole& hole : drive.cased.holes) {
      if (!faces(hole, bay) || !has(drive, hole)) continue;
      const auto [x, y] = stands(hole, drive, bay);
      const double away = std::hypot(x - along, y - other);
      if (least < 0.0 || away < least) least = away;
    }
  }
  return least;
}

/// Holes that meet nothing, and holes that the drive need not have.
void add_pattern(std::vector<Finding>& out, const std::vector<UsedHole>& used, const Drive& drive,
                 const build::Place& place, const Bay& bay, Method method) {
  const std::size_t asked = bay.fixing->holes.size();
  const std::string kind = bay.fixing->side || bay.on_edge ? "side" : "bottom";
  if (used.size() < std::min<std::size_t>(asked, 2)) {
    out.push_back(finding(
        Kind::holes, drive, place, Verdict::does_not_fit,
        {Code::holes_differ,
         {{"kind", kind}, {"drive", drive.worn ? drive.worn->name : parts::article(drive.title) + ' ' + drive.title}},
         {{"met", static_cast<double>(used.size())},
          {"asked", static_cast<double>(asked)},
          {"nearest", nearest_hole(drive, bay)}}}));
    return;
  }
  std::set<std::string> doubtful;
  for (const UsedHole& hole : used)
    if (!hole.drive_hole->promised && drive.rows.empty() && !drive.worn) doubtful.insert(hole.drive_hole->name);
  if (!doubtful.empty()) {
    std::string rows;
    for (const std::string& row : doubtful) rows += (rows.empty() ? "" : ", ") + row;
    Finding may = finding(Kind::holes, drive, place, Verdict::marginal,
                          {Code::holes_optional, {{"rows", rows}, {"kind", kind}}, {}});
    may.share.reset();
    out.push_back(std::move(may));
  }
  std::set<std::string> rows;
  for (const UsedHole& hole : used) rows.insert(hole.drive_hole->name);
  if (used.size() < asked) {
    // On one row of screws a drive can swing: some would call that held.
    const bool one_row = rows.size() < 2;
    Finding some = finding(Kind::holes, drive, place, one_row ? std::optional(Verdict::marginal) : std::nullopt,
                           {one_row ? Code::holes_one_row : Code::holes_unused,
                            {{"row", *rows.begin()}},
                            {{"met", static_cast<double>(used.size())}, {"asked", static_cast<double>(asked)}}});
    some.share.reset();
    out.push_back(std::move(some));
  }
  if (auto found = reach(used, drive, place, bay, method)) out.push_back(std::move(*found));
}

/// The longest length that is sold and surely does, whatever the limits of what it passes before the drive; 0: none.
double length_to_buy(const std::string& thread, double most_before, double least_before, double least_in,
                     double most_in) {
  double best = 0.0;
  for (const double length : fasteners::screw_lengths(thread))
    if (length - most_before >= least_in - 1e-9 && length - least_before <= most_in + 1e-9)
      best = std::max(best, length);
  return best;
}

/// The head has to be wider than the hole that it lies on.
void add_head(std::vector<Finding>& out, const Drive& drive, const build::Place& place, const build::Fixing& fixing,
              Method method) {
  const auto* head = fasteners::head(fasteners::Shape::pan, fixing.thread);
  Dimension hole = fixing.diameter.dimension;
  for (std::size_t i = 0; i < fixing.holes.size(); ++i)
    if (const Dimension wide = fixing.width(i); wide.high() > hole.high()) hole = wide;
  const double across =
      head != nullptr ? head->diameter.nominal : 2.0 * fasteners::thread(fixing.thread)->major.nominal;
  std::vector<ChainLink> chain = {{hole, -1.0}};
  if (head != nullptr) chain.push_back({head->diameter, 1.0});
  Finding found =
      measured(finding(Kind::screw, drive, place, std::nullopt,
                       {Code::head_through, {{"thread", fixing.thread}}, {{"head", across}, {"hole", hole.nominal}}}),
               across - hole.nominal, chain, 0.0, method);
  if (*found.verdict != Verdict::fits) out.push_back(std::move(found));
}

void add_screw(std::vector<Finding>& out, const Drive& drive, const build::Place& place, const Bay& bay,
               Method method) {
  const build::Fixing& fixing = *bay.fixing;
  if (fixing.thread.empty()) return;
  if (!drive.cased.thread.empty() && drive.cased.thread != fixing.thread) {
    out.push_back(finding(Kind::screw, drive, place, Verdict::does_not_fit,
                          {Code::thread_differs, {{"screw", fixing.thread}, {"drive", drive.cased.thread}}, {}}));
    return;
  }
  add_head(out, drive, place, fixing, method);
  const bool side = fixing.side || bay.on_edge;
  const auto& depth = side ? drive.cased.side : drive.cased.bottom;
  if (fixing.length && !depth)
    out.push_back(finding(Kind::screw, drive, place, std::nullopt,
                          {Code::screw_unjudged, {{"into", drive.worn ? drive.worn->name : "the drive"}}, {}}));
  if (!fixing.length)
    out.push_back(
        finding(Kind::screw, drive, place, std::nullopt,
                {Code::screw_unsaid, {{"thread", fixing.thread}, {"what", bay.standoffs ? "stud" : "screw"}}, {}}));
  if (!fixing.length || !depth) return;
  const double turns = 2.0 * fasteners::thread(fixing.thread)->pitch.nominal;
  std::vector<ChainLink> chain = {{fixing.length->dimension, -1.0}};
  double before = 0.0;  // what the screw passes before it reaches the drive; a stand-off's stud passes nothing
  if (!bay.standoffs) {
    before = fixing.sheet.dimension.nominal;
    chain.push_back({fixing.sheet.dimension, 1.0});
    if (bay.spacers) {
      before += bay.raised->dimension.nominal;
      chain.push_back({bay.raised->dimension, 1.0});
    }
  }
  const double in = fixing.length->dimension.nominal - before;
  // A bought screw is as long as it says; what it passes has its limits.
  double thinner = fixing.sheet.dimension.minus;
  double thicker = fixing.sheet.dimension.plus;
  if (bay.spacers) thinner += bay.raised->dimension.minus, thicker += bay.raised->dimension.plus;
  const double buy = bay.standoffs
                         ? 0.0
                         : length_to_buy(fixing.thread, before + thicker, before - thinner, turns, depth->most.nominal);
  const std::vector<std::pair<std::string, double>> figures = {{"in", in},
                                                               {"most", depth->most.nominal},
                                                               {"least", turns},
                                                               {"buy", buy},
                                                               {"length", fixing.length->dimension.nominal}};
  const std::vector<std::pair<std::string, std::string>> words = {{"thread", fixing.thread},
                                                                  {"what", bay.standoffs ? "stud" : "screw"},
                                                                  {"into", drive.worn ? drive.worn->name : "the drive"},
                                                                  {"source", depth->most.source}};
  out.push_back(measured(finding(Kind::screw, drive, place, std::nullopt, {Code::screw_long, words, figures}),
                         depth->most.nominal - in, chain, 0.0, method));
  if (depth->warned && in > depth->warned->nominal && in <= depth->most.nominal)
    out.push_back(
        finding(Kind::screw, drive, place, std::nullopt,
                {Code::screw_near,
                 words,
                 {{"in", in}, {"warned", depth->warned->nominal}, {"length", fixing.length->dimension.nominal}}}));
  for (ChainLink& link : chain) link.sensitivity = -link.sensitivity;
  double holds = in;
  if (fixing.side && bay.width) {
    // Half of the bay's spare width stands between wall and drive, if the wall is too stiff to be drawn in.
    const tolerance::Dimension& wide =
        drive.cased.part.dimensions[static_cast<std::size_t>(drive.cased.width.shares[0].dimension)];
    chain.push_back({bay.width->dimension, -0.5});
    chain.push_back({wide, 0.5});
    holds -= 0.5 * (bay.width->dimension.nominal - wide.nominal);
  }
  Reason why{Code::screw_short, words, figures};
  why.figures.front().second = holds;
  out.push_back(
      measured(finding(Kind::screw, drive, place, std::nullopt, std::move(why)), holds - turns, chain, 0.0, method));
}

/// The screw from outside the sheet into a threaded stand-off: two threads in it, and clear of its stud, which begins
/// where the stand-off ends at the latest.
void add_outer_screw(std::vector<Finding>& out, const Drive& drive, const build::Place& place, const Bay& bay,
                     Method method) {
  const build::Fixing& fixing = *bay.fixing;
  if (!bay.standoffs || fixing.nut || fixing.thread.empty()) return;
  if (!fixing.outside) {
    out.push_back(finding(Kind::standoff, drive, place, std::nullopt,
                          {Code::outer_screw_unsaid, {{"thread", fixing.thread}}, {}}));
    return;
  }
  const Dimension& sheet = fixing.sheet.dimension;
  const Dimension& high = bay.raised->dimension;
  const double least = 2.0 * fasteners::thread(fixing.thread)->pitch.nominal;
  const double in = fixing.outside->length - sheet.nominal;
  const double buy = length_to_buy(fixing.thread, sheet.high(), sheet.low(), least, high.low());
  const std::vector<std::pair<std::string, std::string>> words = {{"thread", fixing.outside->thread}};
  const std::vector<std::pair<std::string, double>> figures = {
      {"length", fixing.outside->length}, {"in", in}, {"least", least}, {"most", high.nominal}, {"buy", buy}};
  out.push_back(measured(finding(Kind::standoff, drive, place, std::nullopt, {Code::outer_screw_long, words, figures}),
                         high.nominal - in, {{high, 1.0}, {sheet, 1.0}}, 0.0, method));
  out.push_back(measured(finding(Kind::standoff, drive, place, std::nullopt, {Code::outer_screw_short, words, figures}),
                         in - least, {{sheet, -1.0}}, 0.0, method));
}

/// A receptacle that is fixed to the machine meets a connector that stands where the form has it, and no other.
void add_connector(std::vector<Finding>& out, const Drive& drive, const build::Place& place, const Bay& bay,
                   const Frame& frame, Method method) {
  if (!bay.backplane || !drive.cased.tongue || !drive.worn) return;
  const parts::CasedDrive& cased = drive.cased;
  std::vector<ChainLink> raised;
  if (drive.worn->raised) raised.push_back({drive.worn->raised->dimension, cased.tongue_z < 0.0 ? 1.0 : -1.0});
  for (const auto& [off, allowed, axis, chain] :
       {std::tuple(cased.tongue_aside, cased.tongue->position.plus, 0, std::vector<ChainLink>{}),
        std::tuple(cased.tongue_z, cased.tongue->height.plus, 2, raised)}) {
    if (std::abs(off) < 1e-9) continue;
    Finding found = finding(Kind::connector, drive, place, std::nullopt,
                            {Code::connector_off,
                             {{"axis", axis == 0 ? "beside" : "over"}},
                             {{"off", std::abs(off)}, {"allowed", allowed}}});
    found = measured(std::move(found), allowed - std::abs(off), chain, 0.0, method);
    found.at = frame.pose.shift;
    // Toward y = 0 is to the left, seen from the connector.
    found.toward = frame.pose.turn[axis] * (axis == 0 ? (off > 0.0 ? 1.0 : -1.0) : (off > 0.0 ? -1.0 : 1.0));
    out.push_back(std::move(found));
  }
}

/// At the first hole that is used, where the screw enters the drive; room is gained by drawing it out.
void locate(Finding& finding, const std::vector<UsedHole>& used, const Drive& drive, const Bay& bay,
            const Frame& frame) {
  if (used.empty()) return;
  const double raised = bay.raised ? bay.raised->dimension.nominal : 0.0;
  const UsedHole& hole = used.front();
  geometry::Vec3 at(hole.other, hole.along, raised);
  geometry::Vec3 out(0.0, 0.0, -1.0);
  if (bay.fixing->side) {
    const double half = 0.5 * drive.cased.width.at(parts::nominal_values(drive.cased.part));
    at = {half, hole.along, raised + hole.other};
    out = {1.0, 0.0, 0.0};
  }
  finding.at = frame.pose.point(at);
  if (finding.gap) finding.toward = frame.pose.turn * out;
}

}  // namespace

std::vector<OfferedHole> offered_holes(const Drive& drive, const Bay& bay) {
  std::vector<OfferedHole> out;
  for (const MountHole& hole : drive.cased.holes) {
    if (!faces(hole, bay) || !has(drive, hole)) continue;
    const auto [along, other] = stands(hole, drive, bay);
    out.push_back({along, other, &hole});
  }
  return out;
}

std::vector<UsedHole> used_holes(const Drive& drive, const Bay& bay) {
  std::vector<UsedHole> out;
  if (!bay.fixing) return out;
  const std::vector<OfferedHole> offered = offered_holes(drive, bay);
  for (std::size_t i = 0; i < bay.fixing->holes.size(); ++i) {
    const auto [along, other] = bay.fixing->middle(i);
    double least = same_hole;
    const MountHole* nearest = nullptr;
    for (const OfferedHole& hole : offered) {
      const double away = std::hypot(hole.along - along, hole.other - other);
      if (!(away < least)) continue;
      least = away;
      nearest = hole.drive_hole;
    }
    if (nearest != nullptr) out.push_back({along, other, nearest, i});
  }
  return out;
}

std::vector<Finding> fixings(const Drive& drive, const build::Place& place, const Frame& frame, Method method) {
  std::vector<Finding> out;
  const auto* bay = std::get_if<Bay>(&place.socket);
  if (bay == nullptr) return out;
  if (bay->fixing) {
    const std::vector<UsedHole> used = used_holes(drive, *bay);
    add_pattern(out, used, drive, place, *bay, method);
    add_screw(out, drive, place, *bay, method);
    add_outer_screw(out, drive, place, *bay, method);
    for (Finding& each : out) locate(each, used, drive, *bay, frame);
  }
  add_connector(out, drive, place, *bay, frame, method);
  return out;
}

}  // namespace baywright::fit
