#include "build/reader.h"
#include "standards/drives.h"
#include "standards/fasteners.h"
#include "standards/general_tolerances.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace baywright::build {

using parts::Fields;
namespace drives = standards::drives;
namespace fasteners = standards::fasteners;
namespace general = standards::general_tolerances;

namespace {

Form takes_of(Fields& fields) {
  static const std::map<std::string, Form> known = {
      {"2.5in", Form::drive_2_5}, {"3.5in", Form::drive_3_5}, {"5.25in", Form::device_5_25},
      {"e1s", Form::e1_s},        {"e1l", Form::e1_l},        {"e3s", Form::e3_s},
      {"e3l", Form::e3_l}};
  const std::string text = fields.text("takes");
  const auto found = known.find(text);
  if (found != known.end()) return found->second;
  std::vector<std::string> names;
  for (const auto& [name, form] : known) names.push_back(name);
  fields.stop("takes", "there is no bay for `" + text + '`', "did you mean " + parts::nearest_few(text, names) + "?");
}

/// How wide a drive of that form is: what a bay's own measures are held against.
std::optional<double> width_of(Form form) {
  if (form == Form::drive_2_5 || form == Form::drive_3_5)
    return drives::family(form == Form::drive_2_5 ? "2.5in" : "3.5in")->width.nominal;
  if (form == Form::device_5_25) return drives::device_5_25().width.nominal;
  return std::nullopt;
}

void read_inside(Reader& reader, Fields& fields, const Place& place, Bay& bay) {
  auto inside = fields.maybe_table("inside", "`inside`");
  if (!inside) return;
  inside->knows({"width", "height", "depth", "behind"});
  bay.width = reader.maybe_measured(*inside, "width", place.name + " inner width");
  bay.height = reader.maybe_measured(*inside, "height", place.name + " inner height");
  bay.depth = reader.maybe_measured(*inside, "depth", place.name + " inner depth");
  bay.behind = reader.maybe_measured(*inside, "behind", place.name + " room behind");
  inside->finish();
}

std::string thread_of(Fields& fixing) {
  if (!fixing.has("screw")) return {};
  const std::string text = fixing.text("screw");
  const fasteners::Thread* thread = fasteners::thread(text);
  if (thread != nullptr) return std::string(thread->id);
  std::vector<std::string> known;
  for (const fasteners::Thread& each : fasteners::threads()) known.emplace_back(each.id);
  fixing.stop("screw", "there is no thread `" + text + '`', "the threads are " + parts::any_of(known));
}

/// How far off their places drilled holes lie: the process that made them, or what is written beside it.
std::optional<tolerance::Dimension> placing_of(Fields& fixing) {
  if (!fixing.has("drilled")) return std::nullopt;
  const std::string text = fixing.text("drilled");
  const general::Process* process = general::process(text);
  if (process == nullptr || !process->position) {
    std::vector<std::string> known;
    for (const general::Process& each : general::processes())
      if (each.position) known.emplace_back(each.id);
    fixing.stop("drilled", "`drilled = \"" + text + "\"` is no way of making holes",
                "it must be " + parts::any_of(known));
  }
  tolerance::Dimension placed = *process->position;
  placed.name = "place of a hole (" + text + ")";
  return placed;
}

/// The screws go through these holes into the drive.
void check_passes(Fields& table, const Fixing& fixing) {
  if (fixing.thread.empty()) return;
  const double major = fasteners::thread(fixing.thread)->major.nominal;
  const double diameter = fixing.diameter.dimension.nominal;
  if (!(diameter > major))
    table.stop("diameter",
               "a screw " + fixing.thread + ", " + tolerance::in_words(std::round(major * 100.0) / 100.0) +
                   " thick, does not pass a hole of " + tolerance::in_words(diameter),
               "the holes are clearance holes: the thread is in the drive");
}

/// Holes must lie within the bay that has them; whether a panel has sheet there a check finds.
void check_holes(const Fields& fields, const Bay& bay) {
  const Fixing& fixing = *bay.fixing;
  const double diameter = fixing.diameter.dimension.nominal;
  const double half = 0.5 * diameter;
  for (std::size_t i = 0; i < fixing.holes.size(); ++i) {
    const auto& [along, other] = fixing.holes[i];
    const std::string which = "hole " + std::to_string(i + 1);
    const auto stop = [&](const std::string& what, const std::string& right) {
      throw parts::Stop{{fields.file(), fixing.line, fixing.column, which + ' ' + what, right}};
    };
    for (std::size_t j = 0; j < i; ++j)
      if (std::hypot(along - fixing.holes[j][0], other - fixing.holes[j][1]) < diameter)
        stop("runs into hole " + std::to_string(j + 1), "list each hole once");
    if (along - half < 0.0)
      stop("lies before the drive's end, at " + tolerance::in_words(along),
           "the first figure is measured from that end into the bay");
    if (bay.depth && along + half > bay.depth->dimension.nominal)
      stop("lies beyond the bay's depth of " + tolerance::in_words(bay.depth->dimension.nominal),
           "a hole must lie within the bay");
    if (!fixing.side && bay.width && 2.0 * (std::abs(other) + half) > bay.width->dimension.nominal)
      stop("lies outside the bay's width of " + tolerance::in_words(bay.width->dimension.nominal),
           "a hole must lie within the bay");
    const double floor = bay.raised ? bay.raised->dimension.nominal : 0.0;
    if (fixing.side && floor + other - half < 0.0)
      stop("lies under the bay's floor, at " + tolerance::in_words(other),
           "the second figure is measured upward from the drive's base");
    if (fixing.side && bay.height && floor + other + half > bay.height->dimension.nominal)
      stop("lies over the bay's height of " + tolerance::in_words(bay.height->dimension.nominal),
           "a hole must lie within the bay");
  }
}

/// Through a panel that is one plate the screws pass that plate. What stands on it or in it, a boss or a rim, would be
/// a body more, and nobody can tell which of them has the hole; under a tray the sheet is the tray's.
void check_sheet(const Reader& reader, Fields& fixing_keys, const Place& place, const Bay& bay, const Fixing& fixing) {
  constexpr double rounded = 0.1;  // mm: 1.57 may be written as 1.5
  const parts::Part& part = reader.build.parts[static_cast<std::size_t>(place.part)].part;
  const bool on_tray = bay.raised && !bay.spacers && !bay.standoffs;
  if (!bay.panel || on_tray || part.bodies.size() != 1) return;
  const parts::Body::Form form = part.bodies.front().form;
  const bool plate =
      form == parts::Body::Form::box || (form == parts::Body::Form::prism && part.bodies[0].axis == place.axis);
  const tolerance::Dimension& sheet = fixing.sheet.dimension;
  if (!plate || sheet.open() || sheet.asked) return;
  const parts::Coordinate thickness =
      parts::outer_face(part, place.axis, true) - parts::outer_face(part, place.axis, false);
  double limits = std::max({sheet.minus, sheet.plus, rounded});
  for (const auto& share : thickness.shares) {
    const tolerance::Dimension& d = part.dimensions[static_cast<std::size_t>(share.dimension)];
    if (d.open() || d.asked) return;
    limits += std::abs(share.factor) * std::max(d.minus, d.plus);
  }
  const std::vector<double> values = parts::nominal_values(part);
  const double thick = thickness.at(values);
  for (int axis = 0; axis < 3; ++axis)  // seen on its edge it is no sheet
    if (!(parts::outer_face(part, axis, true).at(values) - parts::outer_face(part, axis, false).at(values) >= thick))
      return;
  if (!(std::abs(thick - sheet.nominal) <= limits + 1e-9))
    fixing_keys.stop("sheet",
                     "`sheet` is " + tolerance::in_words(sheet.nominal) + " and the panel `" +
                         reader.build.parts[static_cast<std::size_t>(place.part)].name + "` is " +
                         tolerance::in_words(thick) + " thick there, more apart than their limits",
                     "the screws pass the panel: write its thickness, measured where the holes are");
}

void read_fixing(Reader& reader, Fields& fields, const Place& place, Bay& bay) {
  auto table = fields.maybe_table("fixing", "`fixing`");
  if (!table) {
    if (!bay.panel) return;
    fields.finish();  // a misspelt key is the better message
    fields.stop_here("a panel has no `fixing`",
                     "add fixing = { holes = [[14.0, -30.86], [90.6, 30.86]], diameter = 3.4, sheet = 1.0 }");
  }
  if (parts::of_edsff(bay.form)) fields.stop("fixing", "no holes of EDSFF drives are known here", "take `fixing` out");
  table->knows({"through", "holes", "diameter", "drilled", "screw", "length", "outside", "sheet", "nut"});
  Fixing fixing;
  fixing.line = table->line();
  fixing.column = table->column();
  fixing.side = one_of(*table, "through", {"floor", "sides"}, "floor") == "sides";
  if (fixing.side && bay.panel) table->stop("through", "a panel has no sides", "take `through` out");
  if (fixing.side && bay.on_edge)
    table->stop("through", "a drive on its edge is screwed through the floor at its side holes", "write \"floor\"");
  for (const geometry::Vec2& point : table->pairs("holes")) fixing.holes.push_back({point.x, point.y});
  if (fixing.holes.empty())
    table->stop("holes", "`holes` is empty", "list them, as in [[14.0, -30.86], [90.6, 30.86]]");
  fixing.diameter = reader.measured(*table, "diameter", place.name + " hole diameter");
  fixing.placed = placing_of(*table);
  fixing.thread = thread_of(*table);
  fixing.length = reader.maybe_measured(*table, "length", "screw length");
  if (fixing.length && fixing.thread.empty()) table->stop("length", "a screw has a thread", "add screw = \"M3\"");
  if (table->has("outside")) {
    fixing.outside = screw_of(*table, "outside");
    if (!bay.standoffs)
      table->stop("outside", "`outside` is the screw into a threaded stand-off, and this place has none",
                  "write `standoffs`, or leave `outside` out");
    if (fixing.thread.empty())
      table->stop("outside", "the stand-offs have no thread", "add `screw`, the thread of their studs");
    if (fixing.outside->thread != fixing.thread)
      table->stop("outside", "a screw " + fixing.outside->thread + " goes into no stand-off " + fixing.thread,
                  "stand-offs that are sold have one thread at both ends");
  }
  fixing.nut = table->flag("nut", false);
  if (fixing.nut && fixing.outside)
    table->stop("nut", "a nut and a screw hold the same stand-off", "keep one of `nut` and `outside`");
  if (fixing.nut && !bay.standoffs)
    table->stop("nut", "a nut outside the sheet holds a stand-off, and this place has none",
                "write `standoffs`, or leave `nut` out: the drive's own thread holds its screws");
  check_passes(*table, fixing);
  fixing.sheet = reader.measured(*table, "sheet", place.name + " sheet");
  check_sheet(reader, *table, place, bay, fixing);
  table->finish();
  fixing.there.resize(fixing.holes.size());
  bay.fixing = std::move(fixing);
  check_holes(fields, bay);
}

void read_connector(Reader& reader, Fields& fields, const std::vector<standards::links::Link>& bus, Bay& bay) {
  using standards::connectors::Plug;
  using standards::links::Protocol;
  const bool edsff = parts::of_edsff(bay.form);
  const auto all = [&](Protocol protocol) {
    return std::all_of(bus.begin(), bus.end(), [&](const auto& link) { return link.protocol == protocol; });
  };
  bay.receptacle = all(Protocol::pcie) ? Plug::u2 : all(Protocol::sas) ? Plug::sas : Plug::sata;
  if (fields.has("plug")) {
    if (edsff) fields.stop("plug", "an EDSFF bay has one connector", "take `plug` out");
    bay.receptacle = plug_of(fields);
  }
  bay.backplane = fields.flag("backplane", edsff);
  if (bay.backplane && fields.has("cable"))
    fields.stop("cable", "a bay with a backplane has no cable", "keep one of `backplane` and `cable`");
  bay.plug = reader.maybe_measured(fields, "cable", "cable plug with its bend");
}

void check_measures(Fields& fields, const Bay& bay) {
  const auto nominal = [](const std::optional<GivenLength>& given) { return given ? given->dimension.nominal : 0.0; };
  if (bay.height && nominal(bay.raised) >= nominal(bay.height))
    fields.stop("inside",
                "the bay is " + tolerance::in_words(nominal(bay.height)) + " high and its drive stands " +
                    tolerance::in_words(nominal(bay.raised)) + " over the floor",
                "height is measured from the face that carries the bay: it must be more than `raised`");
  const auto widest = width_of(bay.form);
  if (bay.width && widest && !bay.on_edge && nominal(bay.width) < 0.5 * *widest)
    fields.stop("inside",
                "the bay is " + tolerance::in_words(nominal(bay.width)) + " wide, less than half of its drive",
                "such a drive is " + tolerance::in_words(*widest) + " wide: check `takes` and `width`");
  if (bay.form == Form::device_5_25 && bay.behind)
    fields.stop("inside", "a 5.25-inch bay begins at the bezel", "write `depth` for what is behind the device");
  if (bay.backplane && bay.behind) fields.stop("inside", "a backplane leaves no room behind", "take `behind` out");
}

}  // namespace

/// About half of the shortest drive of a form, mm: that much of a bay has to lie on the part that carries it.
double half_length(Form form) {
  switch (form) {
    case Form::drive_3_5:
    case Form::device_5_25:
    case Form::e3_l:
      return 70.0;
    case Form::e1_l:
      return 150.0;
    default:
      return 50.0;
  }
}

std::string read_opens(Fields& fields, bool panel) {
  if (!fields.has("opens")) return {};
  if (panel) fields.stop("opens", "a panel has no walls to open", "leave `opens` out");
  return one_of(fields, "opens", {"end", "rear", "roof", "left wall", "right wall"}, "end");
}

void read_bay(Reader& reader, Fields& fields, Place& place, bool panel) {
  fields.knows({"name", "on", "takes", "inside", "opens", "raised", "stands", "spacers", "standoffs", "plug", "cable",
                "backplane", "fixing", "bus", "holds", "shares"});
  Bay bay;
  bay.panel = panel;
  bay.form = takes_of(fields);
  if (panel && bay.form != Form::drive_2_5 && bay.form != Form::drive_3_5)
    fields.stop("takes", "only 2.5in and 3.5in drives are screwed to a panel", "use [[bay]] for others");
  bay.on_edge = one_of(fields, "stands", {"flat", "on edge"}, "flat") == "on edge";
  bay.opens = read_opens(fields, panel);
  int raises = 0;
  for (const std::string_view key : {"raised", "spacers", "standoffs"}) {
    if (!fields.has(key)) continue;
    if (++raises > 1) fields.stop(key, "the drive is raised twice", "keep one of raised, spacers and standoffs");
    bay.raised = reader.measured(fields, key, place.name + (key == "raised" ? " raised by" : ' ' + std::string(key)));
    bay.spacers = key == "spacers";
    bay.standoffs = key == "standoffs";
  }
  read_inside(reader, fields, place, bay);
  if (panel && (bay.width || bay.height || bay.depth))
    fields.stop("inside", "a panel has no inside", "list what stands over it as parts");
  place.bus = links_of(fields);
  read_connector(reader, fields, place.bus, bay);
  check_measures(fields, bay);
  read_fixing(reader, fields, place, bay);
  if ((bay.spacers || bay.standoffs) && !bay.fixing)
    fields.stop(bay.spacers ? "spacers" : "standoffs", "spacers and stand-offs stand at holes",
                "add `fixing`, or write `raised` for a tray or rails");
  check_on_face(reader, fields, "on", place, 0.0, half_length(bay.form), "the middle of its drive, along `toward`: ");
  place.socket = std::move(bay);
}

}  // namespace baywright::build
