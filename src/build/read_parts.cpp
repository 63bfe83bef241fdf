#include "build/reader.h"
#include "parts/library.h"
#include "parts/model.h"
#include "parts/part_file.h"
#include "parts/sheet.h"

#include <algorithm>
#include <utility>

namespace baywright::build {

using parts::Fault;
using parts::Fields;
using parts::Stop;

namespace {

parts::Part part_of(Reader& reader, Fields& fields, const std::string& name) {
  const bool by_id = fields.has("use");
  const bool modelled = fields.has("model");
  for (const auto& [one, other] : {std::pair("use", "solid"), std::pair("use", "model"), std::pair("solid", "model")})
    if (fields.has(one) && fields.has(other))
      fields.stop(other, "`" + name + "` has both `" + one + "` and `" + other + '`', "keep one of them");
  if (!modelled)
    for (const std::string_view key : {"unit", "up"})
      if (fields.has(key)) fields.stop(key, "only a part with `model` has `" + std::string(key) + '`', "take it out");
  if (by_id) {
    const std::string id = fields.text("use");
    auto found = parts::find_part(id, reader.folders);
    if (auto* fault = std::get_if<Fault>(&found)) {
      if (fault->file.empty()) fields.stop("use", fault->what, fault->right);
      throw Stop{*fault};
    }
    return std::get<parts::Part>(std::move(found));
  }
  if (!modelled && !fields.has("solid")) {
    fields.finish();
    fields.stop_here("`" + name + "` has neither `use` nor `solid` nor `model`",
                     "add `use = \"board/mini-itx\"`, `solid = { box = [x, y, z] }` or `model = \"FILE.obj\"`");
  }
  parts::Part part;
  part.id = "inline";
  part.kind = "part";
  if (modelled) {
    parts::add_model(part, fields, name);
    return part;
  }
  parts::add_solid(part, fields.table("solid", "a solid"), name, reader.measuring);
  for (const tolerance::Dimension& dimension : part.dimensions) reader.note_exact(dimension);
  return part;
}

}  // namespace

int index_of(const std::map<std::string, int>& by_name, const std::string& name, const Fields& fields,
             std::string_view key) {
  const auto found = by_name.find(name);
  if (found != by_name.end()) return found->second;
  std::vector<std::string> known;
  for (const auto& [each, index] : by_name) known.push_back(each);
  const std::string meant = parts::nearest(name, known);
  fields.stop(key, "there is no part `" + name + '`',
              meant.empty() ? "the parts are " + parts::any_of(known) : "did you mean `" + meant + "`?");
}

namespace {

struct Against {
  std::string_view key;
  bool asks_side;
};
constexpr Against against_keys[] = {{"under", false}, {"above", false}, {"beside", true}, {"on", false}};

void read_side(Fields& held, Position& position) {
  const std::string side = held.text("side");
  static const std::vector<std::string> known = {"+x", "-x", "+y", "-y"};
  if (std::find(known.begin(), known.end(), side) == known.end())
    held.stop("side", "`side = \"" + side + "\"` is no side", "it must be " + parts::any_of(known));
  position.axis = side[1] == 'x' ? 0 : 1;
  position.up = side[0] == '+';
}

}  // namespace

bool read_face(Fields& held, const std::string& what) {  // true: back
  const std::string face = held.maybe_text("face").value_or("top");
  if (face != "top" && face != "back")
    held.stop("face", "`face = \"" + face + "\"` is no face of " + what, "it must be top or back");
  return face == "back";
}

namespace {

void read_against(Reader& reader, Fields& part, const Against& how, const std::string& name,
                  const std::map<std::string, int>& by_name, Position& position) {
  Fields held = part.table(how.key, '`' + std::string(how.key) + '`');
  held.knows({"part", "at"});
  if (how.key == "on")
    held.knows({"face"});
  else
    held.knows({"by"});
  if (how.asks_side) held.knows({"side"});
  position.kind = Position::Kind::against;
  const std::string target = held.text("part");
  position.target = index_of(by_name, target, held, "part");
  position.up = how.key == "above";
  if (how.asks_side) read_side(held, position);
  if (how.key == "on") {
    position.seated = true;
    position.up = !read_face(held, "a part");
  } else {
    const std::string distance = name + ' ' + std::string(how.key) + ' ' + target;
    position.by = held.length("by", distance, reader.measuring, 0.0);
    reader.note_exact(position.by.dimension);
  }
  if (held.has("at")) {
    const std::vector<double> corner = held.numbers("at", 2);
    position.corner = {corner[0], corner[1]};
  }
  held.finish();
}

void read_position(Reader& reader, Fields& part, const std::string& name, const std::map<std::string, int>& by_name,
                   bool first, Position& position) {
  int given = part.has("at") ? 1 : 0;
  for (const Against& how : against_keys) {
    if (!part.has(how.key)) continue;
    if (++given > 1)
      part.stop(how.key, '`' + name + "` is placed twice", "keep one of at, under, above, beside and on");
    if (first)
      part.stop(how.key, "the first part is the world and is not placed", "put the board first, or take this out");
    read_against(reader, part, how, name, by_name, position);
  }
  if (part.has("at")) {
    const std::vector<double> at = part.numbers("at", 3);
    position.at = {at[0], at[1], at[2]};
    if (first && position.at != geometry::Vec3(0.0))
      part.stop("at", "the first part is the world and stands at its origin", "take `at` out");
  }
  if (!first && given == 0) {
    part.finish();
    part.stop_here('`' + name + "` has no place",
                   "add `under = { part = \"board\", by = \"9.1 ±0.2\" }`, or above, beside, on or at");
  }
}

int quarter_turns(Fields& part) {
  if (!part.has("turn")) return 0;
  const double degrees = part.number("turn");
  const double quarters = degrees / 90.0;
  if (quarters != static_cast<double>(static_cast<int>(quarters)))
    part.stop("turn", "`turn` is not a multiple of 90", "it must be 0, 90, 180 or 270 degrees about z");
  return static_cast<int>(quarters);
}

/// `bends`: lines of a sheet as drawn, before it is turned.
void read_bends(Fields& fields, parts::Part& part) {
  const bool flat =
      part.bodies.size() == 1 && part.kind == "part" &&
      (part.bodies.front().form == parts::Body::Form::box || part.bodies.front().form == parts::Body::Form::prism);
  if (fields.has("bends") && !flat)
    fields.stop("bends", "only a plate, a box or an outline is bent", "take `bends` out");
  for (Fields& table : fields.tables("bends", "a bend")) {
    table.knows({"from", "to", "inside"});
    const std::vector<double> from = table.numbers("from", 2);
    const std::vector<double> to = table.numbers("to", 2);
    parts::Bend bend{{from[0], from[1]}, {to[0], to[1]}, table.maybe_number("inside")};
    if (!(glm::distance(bend.from, bend.to) > some))
      table.stop("to", "the bend has no length", "give both ends of its line, as the part's outline is drawn");
    if (bend.inside && !(*bend.inside >= 0.0))
      table.stop("inside", "a radius below nothing", "it must be 0 or more, in mm");
    table.finish();
    part.bends.push_back(bend);
  }
}

/// Spacers, washers or shims at each screw of a part. How long they are is not asked for with "?".
void read_spacers(Reader& reader, Fields& fields, HostPart& part) {
  if (!fields.has("spacers")) return;
  if (part.position.kind != Position::Kind::against || part.position.seated)
    fields.stop("spacers", '`' + part.name + "` is not placed by a distance that spacers could be a part of",
                "only what stands under, above or beside another part has `spacers`");
  parts::Measuring measuring = reader.measuring;
  measuring.question = nullptr;
  part.spacers = fields.length("spacers", part.name + " spacers", measuring, some);
  if (part.spacers->dimension.open())
    fields.stop("spacers", "`spacers` have no limit on one side", "write them as in \"3 ±0.25\"");
  reader.note_exact(part.spacers->dimension);
}

void read_screws(Fields& fields, HostPart& part) {
  if (!fields.has("screws")) return;
  part.screws = screw_of(fields, "screws");
  if (!part.removable)
    fields.stop("screws", "`screws` hold what comes out", "add `removable = true`, or take `screws` out");
  if (!parts::is_sheet(part.part, part.position.axis))
    fields.stop("screws", '`' + part.name + "` is no sheet, so how far its screws go in does not follow",
                "only a plate, box or outline up to 3 mm thick has `screws`");
}

void read_rear_opening(Reader& reader, Fields& fields, HostPart& part) {
  auto table = fields.maybe_table("rear_opening", "`rear_opening`");
  if (!table) return;
  if (part.part.kind != "board")
    fields.stop("rear_opening", "only a board has connectors in the rear opening", "take `rear_opening` out");
  table->knows({"up", "down"});
  RearOpening room;
  room.up = reader.measured(*table, "up", part.name + " connectors up in the opening", 0.0);
  room.down = reader.measured(*table, "down", part.name + " connectors down in the opening", 0.0);
  table->finish();
  part.rear_opening = std::move(room);
}

/// Puts each part behind the one it is held against. A circle has no such order. Without recursion, since a file may
/// hang any number of parts on each other.
void order_parts(std::vector<HostPart>& host, const std::vector<Fields>& fields) {
  std::vector<bool> placed(host.size(), false);
  std::vector<bool> on_way(host.size(), false);
  std::vector<int> order;
  for (std::size_t i = 0; i < host.size(); ++i) {
    std::vector<int> way;  // from this part down to one that is placed or stands by itself
    for (int next = static_cast<int>(i); next >= 0 && !placed[static_cast<std::size_t>(next)];
         next = host[static_cast<std::size_t>(next)].position.target) {
      const auto at = static_cast<std::size_t>(next);
      if (on_way[at])
        fields[at].stop_here('`' + host[at].name + "` hangs on itself in a circle",
                             "one part of the circle must hang on another");
      on_way[at] = true;
      way.push_back(next);
    }
    for (auto part = way.rbegin(); part != way.rend(); ++part) {
      placed[static_cast<std::size_t>(*part)] = true;
      order.push_back(*part);
    }
  }
  std::vector<int> place(host.size());
  for (std::size_t k = 0; k < order.size(); ++k) place[static_cast<std::size_t>(order[k])] = static_cast<int>(k);
  std::vector<HostPart> sorted;
  for (const int i : order) {
    sorted.push_back(std::move(host[static_cast<std::size_t>(i)]));
    if (sorted.back().position.target >= 0)
      sorted.back().position.target = place[static_cast<std::size_t>(sorted.back().position.target)];
  }
  host = std::move(sorted);
}

}  // namespace

void read_parts(Reader& reader, Fields& document) {
  std::vector<Fields> tables = document.tables("part", "a part");
  if (tables.empty())
    document.stop_here("this build has no part", "begin with [[part]], the board that the slot is on");
  std::map<std::string, int> by_name;
  for (std::size_t i = 0; i < tables.size(); ++i) {
    tables[i].knows({"name", "use", "solid", "model", "unit", "up", "removable", "screws", "spacers", "rear_opening",
                     "bends", "turn", "at", "under", "above", "beside", "on"});
    by_name[reader.fresh_name(tables[i])] = static_cast<int>(i);
  }
  std::vector<HostPart>& host = reader.build.parts;
  for (std::size_t i = 0; i < tables.size(); ++i) {
    Fields& fields = tables[i];
    HostPart part;
    part.name = fields.text("name");
    part.line = fields.line();
    part.part = part_of(reader, fields, part.name);
    read_bends(fields, part.part);
    part.part = parts::turned(std::move(part.part), quarter_turns(fields));
    part.removable = fields.flag("removable", false);
    read_rear_opening(reader, fields, part);
    read_position(reader, fields, part.name, by_name, i == 0, part.position);
    read_spacers(reader, fields, part);
    read_screws(fields, part);
    fields.finish();
    host.push_back(std::move(part));
  }
  order_parts(host, tables);
}

}  // namespace baywright::build
