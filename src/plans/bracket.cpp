#include "plans/bracket.h"

#include "fit/sheet_holes.h"
#include "parts/naming.h"
#include "plans/part_words.h"
#include "standards/fasteners.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace baywright::plans {

using geometry::FlatFaces;
using geometry::Vec3;
using standards::general_tolerances::Process;
using tolerance::in_words;
namespace drives = standards::drives;
namespace fasteners = standards::fasteners;
namespace general = standards::general_tolerances;

namespace {

// Common practice, no source.
constexpr double usual_thickness = 2.0;
constexpr double thinnest = 1.0;
constexpr double thickest = 10.0;
constexpr double thickest_bent = 3.0;  // as far as the figures of cutting go, and what is bent at a bench
constexpr double longest = 100.0;      // of a leg, as far as the figures of printing go
constexpr double round_to = 0.5;       // lengths that are not given
constexpr double nothing = 1e-9;       // mm: what rounding may take from a figure
constexpr std::array<std::string_view, 5> keys{"thickness", "raised", "foot", "screw", "insert"};

double rounded_up(double mm) {
  return std::ceil(mm / round_to - nothing) * round_to;
}

/// Half of what a screw's head covers: a pan head, else twice the thread across (common practice, no source).
double head_radius(const fasteners::Thread& thread) {
  const auto* pan = fasteners::head(fasteners::Shape::pan, thread.id);
  return pan == nullptr ? thread.major.nominal : 0.5 * pan->diameter.high();
}

const build::Bay* bay_of(const build::Place& place) {
  return std::get_if<build::Bay>(&place.socket);
}

/// What is carried, and how high where the build says so.
struct Carried {
  const drives::Family* family = nullptr;
  std::optional<double> raised;
};

std::variant<Carried, std::string> carried(const build::Build& build, const std::string& name) {
  if (const drives::Family* family = drives::family(name)) return Carried{family, {}};
  const auto place =
      std::find_if(build.places.begin(), build.places.end(), [&](const auto& each) { return each.name == name; });
  if (place == build.places.end()) {
    std::vector<std::string> known{"2.5in", "3.5in"};
    for (const build::Place& each : build.places)
      if (bay_of(each) != nullptr) known.push_back(each.name);
    for (const std::string& each : known)
      if (name.starts_with(each + ' '))
        return "behind `" + each + "` may stand " + parts::any_of({keys.begin(), keys.end()}) +
               ", each with its value, not `" + name.substr(each.size() + 1) + '`';
    const std::string meant = parts::nearest(name, known);
    return "there is no place and no cased drive `" + name + "`; it can be " + parts::any_of(known) +
           (meant.empty() ? "" : "; did you mean `" + meant + "`?");
  }
  const build::Bay* bay = bay_of(*place);
  const drives::Family* family = nullptr;
  if (bay != nullptr && bay->form == parts::Form::drive_2_5) family = drives::family("2.5in");
  if (bay != nullptr && bay->form == parts::Form::drive_3_5) family = drives::family("3.5in");
  if (family == nullptr || bay->on_edge)
    return "place `" + name + "` takes no 2.5-inch or 3.5-inch drive that lies flat";
  if (!bay->raised) return Carried{family, {}};
  const tolerance::Dimension& raised = bay->raised->dimension;
  if (raised.asked || raised.open())
    return "how high place `" + name + "` raises its drives is " +
           (raised.asked ? "still asked for (`?`)" : in_words(raised)) + "; say it, as `raised 8`";
  return Carried{family, raised.nominal};
}

/// A leg's hole: how near it may come to the bend and to the edge, from its middle.
struct Room {
  double diameter = 0.0;
  double from_bend = 0.0;        // from the outer face of the other leg, to print
  double from_bend_sheet = 0.0;  // the same of sheet that is bent
  double from_edge = 0.0;
};

Room screw_room(const fasteners::Thread& thread, double thickness, double radius) {
  const double diameter = thread.hole.coarse.nominal;  // it has to meet holes that others place
  return {.diameter = diameter,
          .from_bend = thickness + radius + std::max(head_radius(thread), 0.5 * diameter),
          .from_bend_sheet = thickness + fit::bend_asked(thickness, radius) + 0.5 * diameter,
          .from_edge = fit::edge_asked(diameter)};
}

/// The foot's holes, or why there can be none.
std::variant<Room, std::string> foot_room(const PartWords& words, const drives::Family& family, double thickness,
                                          double radius, const Process& process) {
  const bool melted = words.values.contains("insert");
  if (melted && words.values.contains("screw")) return "`screw` and `insert` exclude each other: the foot has one hole";
  const auto given = words.values.find(melted ? "insert" : "screw");
  const std::string name = given == words.values.end() ? std::string(family.thread) : given->second;
  const fasteners::Thread* thread = fasteners::thread(name);
  if (thread == nullptr) return no_thread(name);
  if (!melted) return screw_room(*thread, thickness, radius);
  const fasteners::PressIn* insert = heat_set_insert(*thread);
  if (insert == nullptr) return "no size of a heat-set insert for " + std::string(thread->id) + " is known";
  if (!(thickness >= insert->height->nominal))
    return "a heat-set insert for " + std::string(thread->id) + " is " + in_words(insert->height->nominal) +
           " long: `thickness` must be that or more";
  const double room = 0.5 * hole({}, insert->hole.nominal, process).drawn + general::insert_wall().nominal;
  const double from_bend = thickness + radius + room;
  return Room{
      .diameter = insert->hole.nominal, .from_bend = from_bend, .from_bend_sheet = from_bend, .from_edge = room};
}

/// The flat blank with its holes, `up` the height of the side's over the panel.
void lay_blank(const Room& side, const Room& foot, double up, const Process& process, Printable& out) {
  Bent& bent = *out.bent;
  const auto neutral = general::neutral_line();
  const auto allowance = [&](double k) { return general::bend_allowance(90.0, bent.radius, out.height, k); };
  bent.allowance = allowance(0.5 * (neutral.least + neutral.most));
  bent.least_allowance = allowance(neutral.least);
  bent.most_allowance = allowance(neutral.most);
  const std::vector<drives::HoleRow>& rows = out.drive->side_rows;
  const double end = std::max(side.from_edge, foot.from_edge);
  const double first = rows.front().x();
  const double bent_up = bent.flat_foot(out.height) + bent.allowance - out.height - bent.radius;
  for (const drives::HoleRow& row : rows) {
    out.holes.push_back(hole({row.x() - first + end, bent.foot - bent.foot_hole}, foot.diameter, process));
    out.holes.push_back(hole({row.x() - first + end, bent_up + up}, side.diameter, process));
  }
  const Vec2 far(rows.back().x() - first + 2.0 * end, bent_up + bent.upright);
  out.outline = {{0.0, 0.0}, {far.x, 0.0}, far, {0.0, far.y}};
}

/// Whether sheet can be bent so; where not, why.
std::string why_uncut(const Printable& part, const Room& side, const Room& foot, double up) {
  if (!part.insert.empty()) return "heat-set inserts are for plastic";
  if (part.height > thickest_bent) return "sheet to be bent is at most " + in_words(thickest_bent) + " thick here";
  const auto too_near = [&](const char* leg, double at, const Room& room, const std::string& remedy) {
    return std::string("a hole's edge in the ") + leg + " comes within " +
           in_words(at - 0.5 * room.diameter - part.height) +
           " of the other leg's inner face, and sheet that is bent wants " +
           in_words(fit::bend_asked(part.height, part.bent->radius)) +
           " (twice its thickness and the radius): " + remedy;
  };
  if (!(up >= side.from_bend_sheet - nothing))
    return too_near(
        "upright", up, side,
        "`raised " + in_words(part.bent->raised + side.from_bend_sheet - up) + "` or more, or thinner sheet");
  if (!(part.bent->foot_hole >= foot.from_bend_sheet - nothing))
    return too_near("foot", part.bent->foot_hole, foot,
                    "`foot " + in_words(foot.from_bend_sheet + foot.from_edge) + "` or more, or thinner sheet");
  return "";
}

/// Seen from its end, counter-clockwise from the foot's underside on.
Outline profile_of(const Bent& bent, double t) {
  const double inner = t + bent.radius;
  Outline profile{{inner, 0.0}, {bent.foot, 0.0}, {bent.foot, t}, {inner, t}};
  const int steps = sides_of(inner) / 4 + 1;
  const auto arc = [&](double radius, int from, int to, int step) {
    for (int i = from; i != to; i += step) {
      const double angle = std::numbers::pi / 2.0 * i / steps;
      profile.push_back(Vec2(inner) - radius * Vec2(std::sin(angle), std::cos(angle)));
    }
  };
  arc(bent.radius, 1, steps, 1);
  profile.insert(profile.end(), {{t, inner}, {t, bent.upright}, {0.0, bent.upright}, {0.0, inner}});
  arc(inner, steps - 1, 0, -1);
  return profile;
}

}  // namespace

Made bracket(const build::Build& build, const std::string& asked, const Process& process) {
  const auto fault = [&](const std::string& why) { return "`bracket " + asked + "`: " + why; };
  const bool place =
      std::any_of(build.places.begin(), build.places.end(), [&](const auto& p) { return p.name == asked; });
  const auto read = place ? std::variant<PartWords, std::string>(PartWords{asked, {}}) : part_words(asked, keys);
  if (const auto* why = std::get_if<std::string>(&read)) return fault(*why);
  const PartWords& words = std::get<PartWords>(read);
  const auto what = carried(build, words.name);
  if (const auto* why = std::get_if<std::string>(&what)) return fault(*why);
  const drives::Family& family = *std::get<Carried>(what).family;

  Printable out;
  out.kind = Printable::Kind::bracket;
  out.name = "bracket for " + words.name;
  out.drive = &family;
  out.process = &process;
  const auto thickness = length_of(words, "thickness", usual_thickness, thinnest, thickest);
  if (const auto* why = std::get_if<std::string>(&thickness)) return fault(*why);
  out.height = std::get<double>(thickness);
  out.bent = Bent{.radius = std::min(out.height, thickest_bent)};  // as thick as the sheet: common practice, no source
  Bent& bent = *out.bent;

  const Room side = screw_room(*fasteners::thread(family.thread), out.height, bent.radius);
  const auto foot_or_not = foot_room(words, family, out.height, bent.radius, process);
  if (const auto* why = std::get_if<std::string>(&foot_or_not)) return fault(*why);
  const Room& foot = std::get<Room>(foot_or_not);
  if (const auto insert = words.values.find("insert"); insert != words.values.end())
    out.insert = fasteners::thread(insert->second)->id;

  const double side_up = family.side_up.nominal;
  const double least_raised = std::max(0.0, side.from_bend - side_up);
  const bool plastic = !out.insert.empty() || out.height > thickest_bent;
  const auto usual = [&](const Room& room) {
    return plastic ? room.from_bend : std::max(room.from_bend, room.from_bend_sheet);
  };
  const double usual_raised = rounded_up(std::max(0.0, usual(side) - side_up));
  const auto raised = length_of(words, "raised", std::get<Carried>(what).raised.value_or(usual_raised), 0.0, longest);
  if (const auto* why = std::get_if<std::string>(&raised)) return fault(*why);
  bent.raised = std::get<double>(raised);
  if (!(bent.raised >= least_raised - nothing))
    return fault("a drive raised by " + in_words(bent.raised) + " has its side holes in the bend; `raised " +
                 in_words(least_raised) + "` or more, or thinner");
  const double up = bent.raised + side_up;
  bent.upright = up + side.from_edge;
  const double usual_hole = rounded_up(usual(foot));
  const double least_foot = foot.from_bend + foot.from_edge;
  const auto length = length_of(words, "foot", usual_hole + foot.from_edge, least_foot, longest);
  if (const auto* why = std::get_if<std::string>(&length)) return fault(*why);
  bent.foot = std::get<double>(length);
  bent.foot_hole = std::min(usual_hole, bent.foot - foot.from_edge);
  if (!(std::max(bent.foot, bent.upright) <= longest)) return fault("a leg would be longer than " + in_words(longest));

  lay_blank(side, foot, up, process, out);
  out.uncut = why_uncut(out, side, foot, up);
  return out;
}

FlatFaces bracket_faces(const Printable& part) {
  const Bent& bent = *part.bent;
  const double t = part.height;
  const double inner = t + bent.radius;  // where both legs begin to be flat
  const double width = part.outline[2].x;
  const Outline profile = profile_of(bent, t);

  FlatFaces out;
  FlatFaces::Loop top;
  FlatFaces::Loop base;
  for (const Vec2& p : profile) {
    top.emplace_back(p, width);
    base.emplace(base.begin(), p, 0.0);
  }
  out.add(top);
  out.add(base);
  // A hole runs from the outer face of its leg to the inner one.
  std::vector<FlatFaces::Loop> outer_foot;
  std::vector<FlatFaces::Loop> inner_foot;
  std::vector<FlatFaces::Loop> outer_upright;
  std::vector<FlatFaces::Loop> inner_upright;
  for (const PrintedHole& each : part.holes) {
    const Outline ring = round_a_hole(each);
    const bool foot = each.at.y < bent.flat_foot(t);
    FlatFaces::Loop outside;
    FlatFaces::Loop inside;
    for (const Vec2& p : ring) {
      const double along = foot ? bent.foot - p.y : p.y - bent.flat_foot(t) - bent.allowance + inner;
      outside.push_back(foot ? Vec3(along, 0.0, p.x) : Vec3(0.0, along, p.x));
      inside.push_back(foot ? Vec3(along, t, p.x) : Vec3(t, along, p.x));
    }
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const std::size_t k = (i + 1) % ring.size();
      // In the foot the blank is seen from below, in the upright from the drive's side: so both turn the same way.
      out.add({outside[i], outside[k], inside[k], inside[i]});
    }
    (foot ? outer_foot : outer_upright).push_back(std::move(outside));
    (foot ? inner_foot : inner_upright).push_back(std::move(inside));
  }
  for (std::size_t i = 0; i < profile.size(); ++i) {
    const Vec2& from = profile[i];
    const Vec2& to = profile[(i + 1) % profile.size()];
    const auto along = [&](double x0, double y0, double x1, double y1) {
      return from == Vec2(x0, y0) && to == Vec2(x1, y1);
    };
    std::vector<FlatFaces::Loop> holes;
    if (along(inner, 0.0, bent.foot, 0.0)) holes = outer_foot;
    if (along(bent.foot, t, inner, t)) holes = inner_foot;
    if (along(t, inner, t, bent.upright)) holes = inner_upright;
    if (along(0.0, bent.upright, 0.0, inner)) holes = outer_upright;
    out.add({Vec3(from, 0.0), Vec3(to, 0.0), Vec3(to, width), Vec3(from, width)}, holes);
  }
  return out;
}

}  // namespace baywright::plans
