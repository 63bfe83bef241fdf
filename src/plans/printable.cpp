#include "plans/printable.h"

#include "build/part_face.h"
#include "parts/naming.h"
#include "plans/adapter_plate.h"
#include "plans/bracket.h"
#include "plans/drilling.h"
#include "plans/part_words.h"
#include "plans/printed_mark.h"
#include "standards/fasteners.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace baywright::plans {

using build::Bay;
using build::Build;
using build::HostPart;
using build::Place;
using standards::general_tolerances::Process;
using tolerance::in_words;
namespace fasteners = standards::fasteners;
namespace general = standards::general_tolerances;

namespace {

using Kind = Printable::Kind;

// Common practice, no source: as thick as guides a bit, as broad as fingers hold.
constexpr double guide_thickness = 3.0;
constexpr double guide_margin = 10.0;  // mm of guide beyond its outermost holes
constexpr double guide_corner = 3.0;   // cut off where the datum edges meet: says how it lies
constexpr double known_to = 100.0;     // mm, as far as the figures of printing go
constexpr double same_hole_mm = 0.5;   // two holes nearer than this are one, given twice

/// What is asked for by words.
struct Sort {
  std::string_view word;
  Kind kind;
  double shortest, longest;
};
constexpr std::array<Sort, 3> sorts{{{"spacer", Kind::spacer, 1.0, known_to},
                                     {"shim", Kind::shim, 0.1, 3.0},
                                     {"stand-off", Kind::standoff, 0.1, known_to}}};
constexpr std::string_view guide_word = "guide";

Made with_a_solid(Printable made) {
  const auto solid = printed(made);
  if (const auto* why = std::get_if<geometry::Refusal>(&solid)) return made.name + " cannot be made: " + why->reason;
  return made;
}

const Bay* drilled_bay(const Place& place) {
  const auto* bay = std::get_if<Bay>(&place.socket);
  return bay != nullptr && bay->fixing && !bay->fixing->side && !bay->fixing->holes.empty() ? bay : nullptr;
}

const Bay* bay_on_spacers(const Place& place) {
  const auto* bay = std::get_if<Bay>(&place.socket);
  return bay != nullptr && bay->spacers && bay->raised ? bay : nullptr;
}

const parts::Body* only_body(const parts::Part& part) {
  const parts::Body* found = nullptr;
  for (const parts::Body& body : part.bodies) {
    if (body.drawn_only) continue;
    if (found != nullptr) return nullptr;
    found = &body;
  }
  const bool plain =
      found != nullptr && (found->form == parts::Body::Form::box || found->form == parts::Body::Form::prism);
  return plain && part.kind != "board" ? found : nullptr;
}

// ---- round ones

Made round_one(const Sort& sort, const std::string& thread_name, double length, const Process& process) {
  const fasteners::Thread* thread = fasteners::thread(thread_name);
  if (thread == nullptr) return no_thread(thread_name);
  double shortest = sort.shortest;
  double diameter = thread->hole.medium.nominal;
  double wall = general::printed_wall().nominal;
  if (sort.kind == Kind::standoff) {
    const fasteners::PressIn* insert = heat_set_insert(*thread);
    if (insert == nullptr)
      return "no size of a heat-set insert for " + std::string(thread->id) + " is known; ask for a spacer";
    shortest = insert->height->nominal;
    diameter = insert->hole.nominal;
    wall = general::insert_wall().nominal;
  }
  if (!(length >= shortest && length <= sort.longest))
    return "a " + std::string(sort.word) + " for " + std::string(thread->id) + " is " + in_words(shortest) + " to " +
           in_words(sort.longest) + " mm long, not " + in_words(length);
  Printable out;
  out.kind = sort.kind;
  out.name = std::string(sort.word) + ' ' + std::string(thread->id);
  out.holes = {hole(Vec2(0.0), diameter, process)};
  out.outside = std::max(2.0 * thread->major.nominal, out.holes[0].drawn + 2.0 * wall);
  out.height = length;
  out.process = &process;
  if (sort.kind != Kind::shim) out.uncut = "it is not flat";
  return with_a_solid(std::move(out));
}

Made for_place(const Sort& sort, const Place& place, const Process& process) {
  const Bay* bay = bay_on_spacers(place);
  const std::string name = std::string(sort.word) + ' ' + place.name;
  if (bay == nullptr) return "`" + name + "`: the drives of place `" + place.name + "` do not stand on `spacers`";
  const tolerance::Dimension& raised = bay->raised->dimension;
  if (raised.asked) return "`" + name + "`: its length is still asked for (`?`); name one, as spacer M3 8";
  if (raised.open()) return "`" + name + "`: only one limit of its length is known, " + in_words(raised);
  if (!bay->fixing || bay->fixing->thread.empty())
    return "`" + name + "`: the build names no `screw` for it; name one, as spacer M3 " + in_words(raised.nominal);
  Made made = round_one(sort, bay->fixing->thread, raised.nominal, process);
  if (auto* part = std::get_if<Printable>(&made)) part->needed = raised;
  return made;
}

/// "M3 8"
Made by_words(const Sort& sort, const std::string& rest, const Process& process) {
  const std::string example = std::string(sort.word) + (sort.kind == Kind::shim ? " M3 0.5" : " M3 8");
  const std::size_t space = rest.find(' ');
  if (space == std::string::npos)
    return "a " + std::string(sort.word) + " wants a thread and a length, as `" + example + '`';
  const auto length = tolerance::read_length(std::string_view(rest).substr(space + 1));
  if (const auto* wrong = std::get_if<tolerance::Misread>(&length))
    return "the length of `" + std::string(sort.word) + ' ' + rest + "`: " + wrong->what + "; write it as `" + example +
           '`';
  if (std::get<tolerance::Length>(length).limits_given)
    return "the length of `" + std::string(sort.word) + ' ' + rest +
           "` has limits, and printing has its own; write it as `" + example + '`';
  return round_one(sort, rest.substr(0, space), std::get<tolerance::Length>(length).nominal, process);
}

// ---- flat ones

Made guide_for(const Build& build, const Place& place, const Process& process) {
  const Bay* bay = drilled_bay(place);
  if (bay == nullptr) return "place `" + place.name + "` has no holes to drill in the part that carries it";
  const build::PartFace face =
      build::face_of(build.parts[static_cast<std::size_t>(place.part)].part, place.axis, place.back);
  Printable out;
  out.kind = Kind::guide;
  out.name = "guide for " + place.name;
  out.height = guide_thickness;
  out.process = &process;
  Vec2 far(0.0);
  for (std::size_t i = 0; i < bay->fixing->holes.size(); ++i) {
    const auto [along, right] = bay->fixing->middle(i);
    const Vec2 at = build::on_face(place, face, along, right);
    out.holes.push_back(hole(at, general::pilot_drill().high(), process));
    const double room = 0.5 * out.holes.back().drawn + general::printed_wall().nominal;
    if (!(at.x >= room && at.y >= room && at.x + at.y >= guide_corner + 1.5 * room))
      return out.name + " cannot be made: a hole " + in_words(at.x) + " and " + in_words(at.y) +
             " from the panel's left and lower edge leaves too little of it";
    far = glm::max(far, at + guide_margin);
  }
  const auto laid = drilling(build, place.name, {}, false);
  if (const auto* there = std::get_if<Drilling>(&laid)) out.bend_between = there->bend_from_a || there->bend_from_b;
  out.outline = {{guide_corner, 0.0}, {far.x, 0.0}, far, {0.0, far.y}, {0.0, guide_corner}};
  return with_a_solid(std::move(out));
}

/// Whether an opening of a drawn outline is that round hole.
bool is_round_hole(const Outline& opening, const parts::Hole& round) {
  return std::all_of(opening.begin(), opening.end(), [&](const Vec2& corner) {
    return std::abs(glm::distance(corner, Vec2(round.x, round.y)) - 0.5 * round.diameter) < 0.01;
  });
}

/// The part's outline and openings as its faces show them, lying on its largest face, without round holes.
void lay_flat(const parts::Part& part, const parts::Body& body, Printable& out) {
  const std::vector<double> values = parts::nominal_values(part);
  std::array<double, 3> low{};
  std::array<double, 3> size{};
  for (std::size_t i = 0; i < 3; ++i) {
    low[i] = body.low[i].at(values);
    size[i] = body.high[i].at(values) - low[i];
  }
  if (body.form == parts::Body::Form::prism) {
    out.outline = body.outline;
    out.openings = body.holes;
    out.height = size[static_cast<std::size_t>(body.axis)];
    return;
  }
  // Holes are along z; without any, the thinnest side is.
  const std::size_t up =
      part.holes.empty() ? static_cast<std::size_t>(std::min_element(size.begin(), size.end()) - size.begin()) : 2;
  const std::size_t across = (up + 1) % 3;
  const std::size_t along = (up + 2) % 3;
  const Vec2 corner(low[across], low[along]);
  const Vec2 far = corner + Vec2(size[across], size[along]);
  out.outline = {corner, {far.x, corner.y}, far, {corner.x, far.y}};
  out.height = size[up];
}

/// Turned to be seen from the face with the drives, with the holes of the places there. Why not, in words.
std::optional<std::string> add_drilled(const Build& build, int index, const parts::Body& body, const Process& process,
                                       Printable& out) {
  const HostPart& host = build.parts[static_cast<std::size_t>(index)];
  std::optional<build::PartFace> face;
  std::vector<PrintedHole> holes;
  for (const Place& place : build.places) {
    const Bay* bay = drilled_bay(place);
    if (place.part != index || bay == nullptr) continue;
    if (!face) face = build::face_of(host.part, place.axis, place.back);
    if (face->axis != place.axis || face->back != place.back)
      return "part `" + host.name + "` has holes on several faces: it cannot be made flat";
    if (bay->fixing->diameter.dimension.asked)
      return "the diameter of the holes of place `" + place.name + "` is still asked for (`?`)";
    for (std::size_t i = 0; i < bay->fixing->holes.size(); ++i) {
      const auto [along, right] = bay->fixing->middle(i);
      holes.push_back(hole(build::on_face(place, *face, along, right), bay->fixing->width(i).nominal, process));
    }
  }
  if (!face) return std::nullopt;
  const bool drawn = body.form == parts::Body::Form::prism || !host.part.holes.empty();
  if (drawn && face->axis != 2)
    return "part `" + host.name + "` has holes in a face that its outline does not draw: it cannot be made flat";
  if (!drawn) {
    const std::vector<double> values = parts::nominal_values(host.part);
    const auto axis = static_cast<std::size_t>(face->axis);
    out.height = body.high[axis].at(values) - body.low[axis].at(values);
    out.outline = {{0.0, 0.0}, {face->size.x, 0.0}, face->size, {0.0, face->size.y}};
  } else {
    for (Vec2& p : out.outline) p = face->flat(p);
    for (Outline& opening : out.openings)
      for (Vec2& p : opening) p = face->flat(p);
    for (PrintedHole& own : out.holes) own.at = face->flat(own.at);
    for (auto& bend : out.bends)
      for (Vec2& p : bend) p = face->flat(p);
  }
  for (const PrintedHole& own : out.holes)  // one that a place's hole is given again for is that hole
    if (std::none_of(holes.begin(), holes.end(),
                     [&](const PrintedHole& made) { return glm::distance(made.at, own.at) < same_hole_mm; }))
      holes.push_back(own);
  out.holes = std::move(holes);
  return std::nullopt;
}

Made plate_of(const Build& build, int index, const Process& process) {
  const HostPart& host = build.parts[static_cast<std::size_t>(index)];
  const parts::Body* body = only_body(host.part);
  if (body == nullptr)
    return "part `" + host.name + "` cannot be made: only a plate, a box or one extruded outline can, and no board";
  for (const tolerance::Dimension& d : host.part.dimensions)
    if (d.asked || d.open())
      return "part `" + host.name + "` cannot be made: " + d.name + " is " +
             (d.asked ? "still asked for" : in_words(d));
  Printable out;
  out.kind = Kind::plate;
  out.name = host.name;
  out.process = &process;
  lay_flat(host.part, *body, out);
  if (!host.part.holes.empty() && body->axis != 2)
    return "part `" + host.name + "` has holes in a face that its outline does not draw: it cannot be made flat";
  for (const parts::Hole& each : host.part.holes) {
    out.holes.push_back(hole({each.x, each.y}, each.diameter, process));
    std::erase_if(out.openings, [&](const Outline& opening) { return is_round_hole(opening, each); });
  }
  if (body->form == parts::Body::Form::prism && body->axis == 2)
    for (const parts::Bend& bend : host.part.bends) out.bends.push_back({bend.from, bend.to});
  if (auto why = add_drilled(build, index, *body, process, out)) return *why;
  return with_a_solid(std::move(out));
}

std::vector<std::string> names_of(const Build& build) {
  std::vector<std::string> out;
  for (const HostPart& part : build.parts)
    if (only_body(part.part) != nullptr) out.push_back(part.name);
  for (const Place& place : build.places) {
    if (bay_on_spacers(place) != nullptr) out.push_back("spacer " + place.name);
    if (drilled_bay(place) != nullptr) out.push_back(std::string(guide_word) + ' ' + place.name);
  }
  return out;
}

/// What follows the word; none: another word.
std::optional<std::string> behind(const std::string& asked, std::string_view word) {
  if (asked == word) return "";
  if (!asked.starts_with(std::string(word) + ' ')) return std::nullopt;
  return asked.substr(word.size() + 1);
}

std::string unknown(const Build& build, const std::string& asked) {
  std::vector<std::string> known = names_of(build);
  std::string meant = parts::nearest(asked, known);
  if (meant.empty()) {
    std::vector<std::string> words;
    for (const Sort& sort : sorts) words.emplace_back(sort.word);
    words.insert(words.end(), {std::string(guide_word), std::string(bracket_word), std::string(adapter_word)});
    meant = parts::nearest(asked.substr(0, asked.find(' ')), words);
  }
  known.insert(known.end(),
               {"spacer M3 8", "shim M3 0.5", "stand-off M3 10", "bracket 2.5in", "adapter 2.5in in 3.5in"});
  return "nothing that can be made is called `" + asked + "`; " +
         (meant.empty() ? "it can be " : "did you mean `" + meant + "`? It can be ") + parts::any_of(known);
}

}  // namespace

Made printable(const Build& build, const std::string& asked, const Process& process) {
  for (std::size_t i = 0; i < build.parts.size(); ++i)
    if (build.parts[i].name == asked) return plate_of(build, static_cast<int>(i), process);
  const auto place_called = [&](const std::string& name) {
    const auto found =
        std::find_if(build.places.begin(), build.places.end(), [&](const Place& place) { return place.name == name; });
    return found == build.places.end() ? nullptr : &*found;
  };
  for (const Sort& sort : sorts) {
    const auto named = behind(asked, sort.word);
    if (!named) continue;
    const std::string& rest = *named;
    const Place* place = place_called(rest);
    if (place != nullptr && sort.kind != Kind::standoff) return for_place(sort, *place, process);
    if (fasteners::thread(rest.substr(0, rest.find(' '))) == nullptr) {
      const std::string meant = parts::nearest(asked, names_of(build));
      if (!meant.empty()) return unknown(build, asked);
    }
    return by_words(sort, rest, process);
  }
  if (const auto name = behind(asked, guide_word))
    if (const Place* place = place_called(*name)) return guide_for(build, *place, process);
  const auto solid = [](Made made) {
    auto* part = std::get_if<Printable>(&made);
    return part == nullptr ? made : with_a_solid(std::move(*part));
  };
  if (const auto words = behind(asked, bracket_word)) return solid(bracket(build, *words, process));
  if (const auto words = behind(asked, adapter_word)) return solid(adapter_plate(*words, process));
  return unknown(build, asked);
}

std::variant<geometry::Solid, geometry::Refusal> printed(const Printable& part) {
  for (const PrintedHole& each : part.holes)
    if (!(each.drawn > 0.0 && std::isfinite(each.drawn))) return geometry::Refusal{"a hole has no size"};
  if (part.bent || part.mark) {
    auto mesh = (part.bent ? bracket_faces(part) : marked_faces(part)).mesh();
    if (const auto* why = std::get_if<geometry::Refusal>(&mesh)) return *why;
    return geometry::Solid::mesh(std::get<geometry::Mesh>(std::move(mesh)));
  }
  const double radius = 0.5 * part.outside;
  const Outline outline = part.outside > 0.0 ? ring(Vec2(0.0), radius, sides_of(radius)) : part.outline;
  std::vector<Outline> holes = part.openings;
  for (const PrintedHole& each : part.holes) holes.push_back(round_a_hole(each));
  return geometry::Solid::prism(outline, std::move(holes), part.height);
}

}  // namespace baywright::plans
