#include "plans/adapter_plate.h"

#include "fit/sheet_holes.h"
#include "plans/part_words.h"
#include "standards/fasteners.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <array>

namespace baywright::plans {

using standards::general_tolerances::Process;
using tolerance::in_words;
namespace drives = standards::drives;
namespace fasteners = standards::fasteners;
namespace general = standards::general_tolerances;

namespace {

// Common practice, no source.
constexpr double usual_thickness = 3.0;
constexpr double thinnest = 1.0;
constexpr double thickest = 10.0;
constexpr double widest = 140.0;
constexpr std::string_view usual_screw = "M3";  // with a nut: holes for 6-32 would leave no wall
constexpr std::array<std::string_view, 4> keys{"thickness", "width", "screw", "insert"};

struct Outer {
  double diameter = 0.0;
  double wall = 0.0;
};

std::variant<Outer, std::string> outer_hole(const PartWords& words, double thickness) {
  const bool melted = words.values.contains("insert");
  if (melted && words.values.contains("screw")) return "`screw` and `insert` exclude each other";
  const auto given = words.values.find(melted ? "insert" : "screw");
  const std::string name = given == words.values.end() ? std::string(usual_screw) : given->second;
  const fasteners::Thread* thread = fasteners::thread(name);
  if (thread == nullptr) return no_thread(name);
  if (!melted) return Outer{thread->hole.coarse.nominal, general::printed_wall().nominal};
  const fasteners::PressIn* insert = heat_set_insert(*thread);
  if (insert == nullptr) return "no size of a heat-set insert for " + std::string(thread->id) + " is known";
  if (!(thickness >= insert->height->nominal))
    return "a heat-set insert for " + std::string(thread->id) + " is " + in_words(insert->height->nominal) +
           " long: `thickness` must be that or more";
  return Outer{insert->hole.nominal, general::insert_wall().nominal};
}

/// In two columns about y = 0.
void add_holes(const drives::Family& family, double diameter, const Process& process, Printable& out) {
  for (const drives::HoleRow& row : family.bottom_rows)
    for (const double side : {-0.5, 0.5})
      out.holes.push_back(hole({row.x(), side * family.bottom_across.nominal}, diameter, process));
}

}  // namespace

Made adapter_plate(const std::string& asked, const Process& process) {
  const auto fault = [&](const std::string& why) { return "`adapter " + asked + "`: " + why; };
  const auto read = part_words(asked, keys);
  if (const auto* why = std::get_if<std::string>(&read)) return fault(*why);
  const PartWords& words = std::get<PartWords>(read);
  if (words.name != "2.5in in 3.5in")
    return fault("what can be made is `adapter 2.5in in 3.5in`, and behind it thickness, width, screw or insert");
  const drives::Family& inner = *drives::family("2.5in");
  const drives::Family& outer = *drives::family("3.5in");

  Printable out;
  out.kind = Printable::Kind::adapter;
  out.name = "adapter " + words.name;
  out.drive = &inner;
  out.process = &process;
  const auto thickness = length_of(words, "thickness", usual_thickness, thinnest, thickest);
  if (const auto* why = std::get_if<std::string>(&thickness)) return fault(*why);
  out.height = std::get<double>(thickness);
  const auto rim = outer_hole(words, out.height);
  if (const auto* why = std::get_if<std::string>(&rim)) return fault(*why);
  const auto [diameter, wall] = std::get<Outer>(rim);
  if (const auto insert = words.values.find("insert"); insert != words.values.end())
    out.insert = fasteners::thread(insert->second)->id;
  const double middle = outer.bottom_across.nominal;
  const double least = middle + hole({}, diameter, process).drawn + 2.0 * wall;
  const auto width = length_of(words, "width", outer.width.nominal, least, widest);
  if (const auto* why = std::get_if<std::string>(&width)) return fault(*why);
  const double across = std::get<double>(width);
  if (!(across >= least - 1e-9))
    return fault("holes of " + in_words(diameter) + " leave a wall of less than " + in_words(wall) +
                 " beside them in a plate " + in_words(across) + " wide; `width " + in_words(least) +
                 "` or more, where the place has room for it, or a smaller screw");

  const double bore = fasteners::thread(inner.thread)->hole.coarse.nominal;
  add_holes(inner, bore, process, out);
  add_holes(outer, diameter, process, out);
  const double end = fit::edge_asked(std::max(bore, diameter));
  double low = out.holes[0].at.x;
  double high = low;
  for (const PrintedHole& each : out.holes) low = std::min(low, each.at.x), high = std::max(high, each.at.x);
  for (PrintedHole& each : out.holes) each.at += Vec2(end - low, 0.5 * across);
  const Vec2 far(high - low + 2.0 * end, across);
  out.outline = {{0.0, 0.0}, {far.x, 0.0}, far, {0.0, far.y}};
  const double edge = 0.5 * (across - middle);
  if (!out.insert.empty())
    out.uncut = "heat-set inserts are for plastic";
  else if (!(edge >= fit::edge_asked(diameter) - 1e-9))
    out.uncut = "holes are " + in_words(edge) + " from its edge to their middle, and sheet wants " +
                in_words(fit::edge_asked(diameter)) + " (twice their diameter): `width " +
                in_words(middle + 2.0 * fit::edge_asked(diameter)) + "` or more, where the place has room for it";
  return out;
}

}  // namespace baywright::plans
