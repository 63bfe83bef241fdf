#include "plans/drilling.h"

#include "fit/fixing.h"
#include "fit/hole_zones.h"
#include "fit/sheet_holes.h"
#include "parts/naming.h"
#include "plans/washers.h"
#include "standards/fasteners.h"
#include "standards/general_tolerances.h"
#include "tolerance/draw.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace baywright::plans {

using build::Bay;
using build::Build;
using build::Place;
using geometry::Vec3;
using tolerance::Dimension;
namespace fasteners = standards::fasteners;
namespace general = standards::general_tolerances;

namespace {

constexpr double least_side = 10.0;  // mm: a smaller part is hidden by the sheet's own marks
constexpr std::int64_t drillings = 10'000;
constexpr std::uint64_t seed = 1;
constexpr double drill_step = 0.1;  // of the twist drills that are sold

Outline rectangle(const Vec2& low, const Vec2& high) {
  return {low, {high.x, low.y}, high, {low.x, high.y}};
}

const Bay* drilled_bay(const Place& place) {
  const auto* bay = std::get_if<Bay>(&place.socket);
  return bay != nullptr && bay->fixing && !bay->fixing->holes.empty() ? bay : nullptr;
}

/// The drive of the build with the most holes there.
struct Held {
  const build::Drive* drive = nullptr;
  std::vector<fit::UsedHole> used;
  std::vector<std::string> as_good;  // drives with as many, that one first
};

Held held_by(const Build& build, const Bay& bay) {
  Held best;
  for (const build::Drive& drive : build.drives) {
    if (drive.outer() != bay.form) continue;
    std::vector<fit::UsedHole> used = fit::used_holes(drive, bay);
    if (used.size() > best.used.size())
      best = {&drive, std::move(used), {drive.name}};
    else if (best.drive != nullptr && used.size() == best.used.size())
      best.as_good.push_back(drive.name);
  }
  return best;
}

/// Draws builds: the holes' places and sizes, and the drive's own.
void draw(const fit::HoleMatch& match, double screw, Placing& placing) {
  const std::size_t n = match.at.size();
  std::vector<Vec2> off(n);
  std::vector<double> play(n);
  std::vector<double> moved(match.dimensions.size());
  for (std::int64_t build = 0; build < drillings; ++build) {
    std::uint32_t pair = 0;
    const auto chance = [&] { return tolerance::chances(seed, static_cast<std::uint64_t>(build), pair++); };
    for (std::size_t i = 0; i < moved.size(); ++i)
      moved[i] = tolerance::drawn(match.dimensions[i], chance()[0]) - match.dimensions[i].nominal;
    for (std::size_t i = 0; i < n; ++i) {
      const auto [first, second] = chance();
      off[i] =
          match.off[i] + Vec2(tolerance::drawn(placing.position, first), tolerance::drawn(placing.position, second));
      for (const int k : match.along[i]) off[i].x -= moved[static_cast<std::size_t>(k)];
      for (const int k : match.across[i]) off[i].y -= moved[static_cast<std::size_t>(k)];
      play[i] = 0.5 * (tolerance::drawn(match.wide[i], chance()[0]) - screw);
    }
    if (all_enter(match.at, off, play)) ++placing.entered;
  }
  placing.drawn = drillings;
}

Cover cover_of(const std::string& thread, double hole) {
  const fasteners::Head* head = fasteners::head(fasteners::Shape::pan, thread);
  if (head == nullptr) return Cover::unknown;
  const bool covers = head->diameter.low() > hole;
  if (covers && !wide_for(thread, hole)) return Cover::head;
  for (const fasteners::Washer& washer : fasteners::washers())
    if (washer.thread == thread && washer.outside.low() > hole) return Cover::washer;
  return covers ? Cover::head : Cover::nothing;
}

/// `stood_on`: spacers or stand-offs stand on the sheet round each hole.
std::vector<Placing> placings(const build::Fixing& fixing, const fit::HoleMatch& match, bool stood_on) {
  const fasteners::Thread& thread = *fasteners::thread(fixing.thread);
  std::vector<Placing> out;
  const auto own = [&](std::string_view process) {
    return fixing.placed && fixing.placed->name.find('(' + std::string(process) + ')') != std::string::npos;
  };
  const auto add = [&](const general::Process& process) {
    Placing made{.process = std::string(process.id), .position = *process.position};
    const Dimension& position = made.position;
    made.zone = fit::position_zone(position);
    // The build's own holes have the limits that it gives, others those of their process.
    const double under = own(made.process)  ? fixing.diameter.dimension.minus
                         : process.diameter ? std::max(0.0, -process.diameter->low())
                                            : 0.0;
    made.least_hole = fit::sure_hole(match, thread.major.nominal, position, under);
    made.drill = drill_step * std::ceil(made.least_hole / drill_step - 1e-9);
    made.cover = cover_of(fixing.thread, made.drill + (process.diameter ? process.diameter->high() : 0.0));
    made.washer_under = stood_on && wants_wide_spacer(fixing.thread, made.drill);
    if (!fixing.diameter.dimension.open()) draw(match, thread.major.nominal, made);
    out.push_back(std::move(made));
  };
  for (const general::Process& process : general::processes())
    if (process.position && (process.id != "print" || own(process.id))) add(process);
  std::stable_partition(out.begin(), out.end(), [&](const Placing& each) { return own(each.process); });
  return out;
}

Pattern pattern_of(const Place& place, const Bay& bay, const build::PartFace& face, const Held& held, bool ways) {
  const build::Fixing& fixing = *bay.fixing;
  Pattern out{.place = place.name,
              .drive = {},
              .drives = {},
              .thread = fixing.thread,
              .diameter = fixing.diameter.dimension,
              .sheet = fixing.sheet.dimension,
              .length = {},
              .raised = {},
              .placed = fixing.placed,
              .placings = {},
              .drive_outline = {}};
  if (fixing.length) out.length = fixing.length->dimension;
  if (bay.raised) out.raised = bay.raised->dimension;
  out.stand = bay.spacers     ? Pattern::Stand::spacers
              : bay.standoffs ? Pattern::Stand::standoffs
              : bay.raised    ? Pattern::Stand::other
                              : Pattern::Stand::sheet;
  if (held.drive == nullptr || held.used.size() < 2) return out;
  out.drive = held.drive->name;
  out.drives = held.as_good;
  const parts::CasedDrive& cased = held.drive->cased;
  const std::vector<double> values = parts::nominal_values(cased.part);
  if (cased.whole()) {
    const double half = 0.5 * (bay.on_edge ? cased.height : cased.width).at(values);
    const double end = cased.end.at(values);
    for (const Vec2& corner : rectangle({0.0, -half}, {end, half}))
      out.drive_outline.push_back(build::on_face(place, face, corner.x, corner.y));
    out.connector = build::on_face(place, face, 0.0, 0.0);
  }
  if (fixing.thread.empty()) return out;
  out.zones_allowed = zones_allowed(fixing.diameter.dimension.low(), fasteners::thread(fixing.thread)->major.nominal);
  const fit::HoleMatch match = fit::hole_match(*held.drive, bay, held.used);
  out.drive_zone = fit::drive_zone(match);
  out.asked_cover = cover_of(fixing.thread, fixing.diameter.dimension.high());
  const bool stood_on = bay.spacers || bay.standoffs;
  out.asked_under = stood_on && wants_wide_spacer(fixing.thread, fixing.diameter.dimension.nominal);
  if (ways) out.placings = placings(fixing, match, stood_on);
  return out;
}

/// Lays the holes on the part, measured; those of its own that are a place's go. Says which is not on its sheet.
std::optional<std::string> lay_out(const build::HostPart& host, const build::PartFace& face, Drilling& out) {
  std::vector<fit::SheetHole> asked;
  for (const DrillHole& hole : out.holes)
    asked.push_back({.at = hole.at, .diameter = hole.diameter.nominal, .there = hole.there_wide, .own = hole.own});
  const fit::HoleSheet sheet = fit::lay_out(host.part, face, std::move(asked));
  out.outline = sheet.outline;
  for (const parts::Bend& bend : sheet.bends) out.bends.push_back({bend.from, bend.to});
  std::vector<DrillHole> holes;
  for (const fit::SheetHole& laid : sheet.holes) {
    DrillHole hole = out.holes[laid.given];
    if (laid.on != fit::SheetHole::On::sheet)
      return "hole " + std::to_string(holes.size() + 1) + " (" + hole.place +
             (laid.on == fit::SheetHole::On::opening && !hole.own ? ") lies in an opening of `" : ") lies off part `") +
             host.name + "`, at " + tolerance::in_words(hole.at.x) + " and " + tolerance::in_words(hole.at.y) +
             " from its left and lower edge";
    hole.edge = laid.edge;
    hole.web = laid.web;
    hole.bend = laid.bend;
    if (!hole.own) {
      const auto pattern = std::find_if(out.patterns.begin(), out.patterns.end(),
                                        [&](const Pattern& each) { return each.place == hole.place; });
      const double thickness = pattern->sheet.nominal;
      hole.edge_asked = fit::edge_asked(hole.diameter.nominal);
      hole.web_asked = fit::web_asked(thickness);
      hole.bend_asked = fit::bend_asked(thickness, laid.inside);
    }
    holes.push_back(std::move(hole));
  }
  out.holes = std::move(holes);
  return std::nullopt;
}

/// Whether a bend lies between a datum edge and a hole.
bool crosses(const Vec2& from, const Vec2& to, const std::array<Vec2, 2>& bend) {
  const auto beside = [](const Vec2& a, const Vec2& b, const Vec2& p) {
    return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) > 0.0;
  };
  return beside(from, to, bend[0]) != beside(from, to, bend[1]) &&
         beside(bend[0], bend[1], from) != beside(bend[0], bend[1], to);
}

/// By size, so that a drill is changed once; within a size to the nearest hole that is left.
std::vector<std::size_t> order_of(const std::vector<DrillHole>& holes) {
  const bool all_own = std::all_of(holes.begin(), holes.end(), [](const DrillHole& each) { return each.own; });
  std::vector<std::size_t> left;
  for (std::size_t i = 0; i < holes.size(); ++i)
    if (all_own || (!holes[i].own && !holes[i].there)) left.push_back(i);
  std::vector<std::size_t> out;
  Vec2 at(0.0);
  while (!left.empty()) {
    const auto next = std::min_element(left.begin(), left.end(), [&](std::size_t a, std::size_t b) {
      if (holes[a].diameter.nominal != holes[b].diameter.nominal)
        return holes[a].diameter.nominal < holes[b].diameter.nominal;
      return glm::distance(at, holes[a].at) < glm::distance(at, holes[b].at);
    });
    out.push_back(*next);
    at = holes[*next].at;
    left.erase(next);
  }
  return out;
}

void add_place(const Build& build, const Place& place, const Bay& bay, const build::PartFace& face, bool ways,
               Drilling& out) {
  const build::Fixing& fixing = *bay.fixing;
  const Held held = held_by(build, bay);
  out.patterns.push_back(pattern_of(place, bay, face, held, ways));
  for (std::size_t i = 0; i < fixing.holes.size(); ++i) {
    DrillHole hole;
    const auto [along, other] = fixing.middle(i);
    hole.at = build::on_face(place, face, along, other);
    hole.place = place.name;
    hole.diameter = fixing.width(i);
    hole.there = fixing.as_it_is(i);
    if (fixing.there[i]) {
      hole.there_off = std::hypot(along - fixing.holes[i][0], other - fixing.holes[i][1]);
      hole.there_wide = fixing.there[i]->diameter;
    }
    for (const fit::UsedHole& used : held.used)
      if (used.index == i) hole.meets = used.drive_hole->name;
    out.holes.push_back(std::move(hole));
  }
}

/// The part's own holes, on its top and its back: nobody drills them, so no rule is asked of them.
void add_own(const parts::Part& part, const build::PartFace& face, Drilling& out) {
  if (face.axis != 2) return;
  for (const parts::Hole& own : part.holes) {
    DrillHole hole;
    hole.at = face.flat({own.x, own.y});
    hole.place = own.name;
    hole.diameter = {"hole " + own.name, own.diameter, 0.0, 0.0, "the part", tolerance::Known::secondary};
    hole.own = true;
    out.holes.push_back(std::move(hole));
  }
}

/// Which part is meant; or why none is.
std::variant<int, std::string> part_asked(const Build& build, const std::string& place, const std::string& part) {
  std::vector<std::string> names;
  for (const build::HostPart& each : build.parts) names.push_back(each.name);
  if (!part.empty()) {
    const auto found = std::find(names.begin(), names.end(), part);
    if (found != names.end()) return static_cast<int>(found - names.begin());
    const std::string meant = parts::nearest(part, names);
    return "there is no part `" + part + "`; " +
           (meant.empty() ? "it has " + parts::any_of(names) : "did you mean `" + meant + "`?");
  }
  if (!place.empty()) {
    for (const Place& each : build.places)
      if (each.name == place) return each.part;
    return "there is no place `" + place + '`';
  }
  std::vector<std::string> carriers;
  int carrier = -1;
  for (const Place& each : build.places) {
    const Bay* bay = drilled_bay(each);
    if (bay == nullptr || bay->fixing->side || carrier == each.part) continue;
    const std::string& name = names[static_cast<std::size_t>(each.part)];
    if (std::find(carriers.begin(), carriers.end(), name) == carriers.end()) carriers.push_back(name);
    carrier = each.part;
  }
  if (carriers.size() == 1) return carrier;
  if (carriers.empty()) return std::string("no part of this build has holes to drill; add a [[panel]] with `fixing`");
  return "several parts have holes to drill: name one with --part, " + parts::any_of(carriers);
}

/// From and to of each tile along an axis.
std::vector<std::pair<double, double>> shares(double length, double room, double overlap, const std::vector<Kept>& kept,
                                              int axis) {
  constexpr double step = 1.0;
  constexpr double beside_edge = 1.0;
  constexpr double beside_crosses = 6.0;
  const int count = length <= room ? 1 : static_cast<int>(std::ceil((length - overlap) / (room - overlap) - 1e-9));
  const auto cuts = [&](double level, double clear) {
    return std::count_if(kept.begin(), kept.end(),
                         [&](const Kept& each) { return std::abs(each.at[axis] - level) < each.radius + clear; });
  };
  std::vector<std::pair<double, double>> out;
  double low = 0.0;
  for (int left = count; left > 1; --left) {
    // No shorter than leaves the others enough, the fullest first.
    const double shortest = length - (left - 1) * (room - overlap);
    double best = low + room;
    auto fewest = std::numeric_limits<std::ptrdiff_t>::max();
    for (double high = low + room; high >= shortest - 1e-9 && high > low + overlap && fewest > 0; high -= step) {
      // Crosses are laid on each other in the middle: there it is worst.
      const auto cut =
          4 * cuts(high - 0.5 * overlap, beside_crosses) + cuts(high, beside_edge) + cuts(high - overlap, beside_edge);
      if (cut < fewest) best = high, fewest = cut;
    }
    out.emplace_back(low, best);
    low = best - overlap;
  }
  out.emplace_back(low, length);
  return out;
}

}  // namespace

std::variant<Drilling, std::string> drilling(const Build& build, const std::string& place, const std::string& part,
                                             bool ways) {
  const auto asked = part_asked(build, place, part);
  if (const auto* fault = std::get_if<std::string>(&asked)) return *fault;
  const int carrier = std::get<int>(asked);
  const build::HostPart& host = build.parts[static_cast<std::size_t>(carrier)];
  std::optional<build::PartFace> face;
  Drilling out;
  out.part = host.name;
  for (const Place& each : build.places) {
    const bool named = !place.empty() && each.name == place;
    if (each.part != carrier || (!place.empty() && !named)) continue;
    const Bay* bay = drilled_bay(each);
    if (bay == nullptr && named) return "place `" + place + "` has no holes: its `fixing` lists none";
    if (bay == nullptr) continue;
    if (bay->fixing->side) {
      if (named) return "the holes of place `" + place + "` are in side walls, which no part describes";
      continue;
    }
    if (!face) face = build::face_of(host.part, each.axis, each.back);
    if (face->axis != each.axis || face->back != each.back)
      return "part `" + host.name + "` has holes on several faces: name one place with --place";
    add_place(build, each, *bay, *face, ways, out);
  }
  if (!face) face = build::face_of(host.part, 2, false);
  if (place.empty()) add_own(host.part, *face, out);
  if (out.holes.empty()) return "part `" + host.name + "` has no holes";
  out.size = face->size;
  if (!(out.size.x >= least_side && out.size.y >= least_side))
    return "part `" + host.name + "` measures " + tolerance::in_words(out.size.x) + " by " +
           tolerance::in_words(out.size.y) + ": a template wants " + tolerance::in_words(least_side) + " or more";
  if (auto fault = lay_out(host, *face, out)) return std::move(*fault);
  out.order = order_of(out.holes);
  for (const DrillHole& hole : out.holes)
    for (const auto& bend : out.bends) {
      if (crosses({0.0, hole.at.y}, hole.at, bend)) out.bend_from_a = true;
      if (crosses({hole.at.x, 0.0}, hole.at, bend)) out.bend_from_b = true;
    }
  return out;
}

double zones_allowed(double least_hole, double largest_screw) {
  return least_hole - largest_screw;
}

bool all_enter(std::span<const Vec2> at, std::span<const Vec2> off, std::span<const double> play) {
  // The least of the largest |rest|/play over a shift and a small turn, by Lawson's weights. At each step the weighted
  // mean of squares is a lower bound of its square, so both answers come with a proof.
  const std::size_t n = at.size();
  for (const double each : play)
    if (!(each > 0.0)) return false;
  std::vector<double> weight(n, 1.0 / static_cast<double>(n));
  for (int step = 0; step < 200; ++step) {
    double sum = 0.0;
    Vec2 middle_at(0.0);
    Vec2 middle_off(0.0);
    for (std::size_t i = 0; i < n; ++i) {
      const double w = weight[i] / (play[i] * play[i]);
      sum += w;
      middle_at += w * at[i];
      middle_off += w * off[i];
    }
    middle_at /= sum;
    middle_off /= sum;
    double moment = 0.0;
    double inertia = 0.0;
    for (std::size_t i = 0; i < n; ++i) {
      const double w = weight[i] / (play[i] * play[i]);
      const Vec2 arm = at[i] - middle_at;
      moment += w * (arm.x * (off[i] - middle_off).y - arm.y * (off[i] - middle_off).x);
      inertia += w * glm::dot(arm, arm);
    }
    const double turn = inertia > 0.0 ? moment / inertia : 0.0;
    double most = 0.0;
    double bound = 0.0;
    double total = 0.0;
    for (std::size_t i = 0; i < n; ++i) {
      const Vec2 arm = at[i] - middle_at;
      const Vec2 rest = off[i] - middle_off - turn * Vec2(-arm.y, arm.x);
      const double ratio = glm::length(rest) / play[i];
      most = std::max(most, ratio);
      bound += weight[i] * ratio * ratio;
      weight[i] *= ratio;
      total += weight[i];
    }
    if (most <= 1.0) return true;
    if (!(bound <= 1.0) || !(total > 0.0)) return false;
    for (double& each : weight) each /= total;
  }
  return false;
}

std::vector<Tile> tiles(const Vec2& size, const Vec2& room, double overlap, const std::vector<Kept>& kept) {
  const auto along_x = shares(size.x, room.x, overlap, kept, 0);
  const auto along_y = shares(size.y, room.y, overlap, kept, 1);
  std::vector<Tile> out;
  for (std::size_t row = 0; row < along_y.size(); ++row)
    for (std::size_t column = 0; column < along_x.size(); ++column)
      out.push_back({{along_x[column].first, along_y[row].first},
                     {along_x[column].second, along_y[row].second},
                     static_cast<int>(column),
                     static_cast<int>(row)});
  return out;
}

}  // namespace baywright::plans
