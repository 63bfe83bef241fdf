#include "parts/part_file.h"

#include "parts/flat_drawing.h"
#include "parts/model.h"
#include "tolerance/reading.h"

#include <utility>

namespace baywright::parts {

namespace {

constexpr double some = 1e-6;  // lengths that must be more than nothing

Coordinate add_length(Part& part, GivenLength given) {
  return Coordinate::of(part.add(std::move(given.dimension)));
}

void add_box(Part& part, Fields& solid, std::string_view key, const std::string& name, const Measuring& measuring) {
  const bool plate = key == "plate";
  auto sizes = solid.lengths(key, {name + " length", name + " width", name + (plate ? " thickness" : " height")},
                             measuring, some);
  const Coordinate x = add_length(part, sizes[0]);
  const Coordinate y = add_length(part, sizes[1]);
  const Coordinate z = add_length(part, sizes[2]);
  part.bodies.push_back(box_body(name, {0.0, 0.0, 0.0}, {x, y, z}));
}

void add_cylinder(Part& part, Fields& solid, const std::string& name, const Measuring& measuring) {
  Fields round = solid.table("cylinder", "a cylinder");
  round.knows({"diameter", "height", "bore"});
  const Coordinate diameter = add_length(part, round.length("diameter", name + " diameter", measuring, some));
  const Coordinate height = add_length(part, round.length("height", name + " height", measuring, some));
  Body body = round_body(name, 0.0, 0.0, diameter, 0.0, height);
  if (auto bore = round.maybe_length("bore", name + " bore", measuring, some)) body.bore = add_length(part, *bore);
  round.finish();
  part.bodies.push_back(std::move(body));
}

/// `outline` names a drawing.
void add_drawn(Part& part, Body& body, Fields& prism) {
  const std::string named = prism.text("outline");
  if (prism.has("holes")) prism.stop("holes", "the holes are those of the drawing", "draw them there");
  std::optional<double> unit;
  if (const auto given = prism.maybe_text("unit")) {
    unit = unit_in_mm(*given);
    if (*unit == 0.0)
      prism.stop("unit", "`unit = \"" + *given + "\"` is not known", "it must be \"mm\", \"cm\", \"m\" or \"in\"");
  }
  const std::filesystem::path path = std::filesystem::path(prism.file()).parent_path() / named;
  std::error_code failed;
  if (!std::filesystem::exists(path, failed))
    prism.stop("outline", "there is no file `" + path.string() + '`', "give its path as seen from this file's folder");
  FlatOutline drawn = read_outline_file(path, unit);
  body.outline = std::move(drawn.outline);
  body.holes = std::move(drawn.holes);
  part.holes = std::move(drawn.round);
  part.bends = std::move(drawn.bends);
  part.drawings.push_back({named, std::move(drawn.passed_over)});
}

void add_prism(Part& part, Fields& solid, const std::string& name, const Measuring& measuring) {
  Fields prism = solid.table("prism", "a prism");
  prism.knows({"outline", "holes", "height", "unit"});
  Body body;
  body.name = name;
  body.form = Body::Form::prism;
  if (prism.is_text("outline")) {
    add_drawn(part, body, prism);
  } else {
    body.outline = prism.points("outline");
    if (prism.has("holes")) body.holes = prism.point_lists("holes");
    if (prism.has("unit")) prism.stop("unit", "only a drawing has `unit`: these corners are mm", "take it out");
  }
  const Coordinate height = add_length(part, prism.length("height", name + " height", measuring, some));
  prism.finish();
  geometry::Vec2 low = body.outline.front();
  geometry::Vec2 high = low;
  for (const geometry::Vec2& p : body.outline) {
    low = glm::min(low, p);
    high = glm::max(high, p);
  }
  if (!(low.x < high.x && low.y < high.y))
    prism.stop("outline", "the outline lies on one line", "it must go round an area");
  body.low = {low.x, low.y, 0.0};
  body.high = {high.x, high.y, height};
  part.bodies.push_back(std::move(body));
}

}  // namespace

void add_solid(Part& part, Fields solid, const std::string& name, const Measuring& measuring) {
  int forms = 0;
  for (const std::string_view form : {"plate", "box", "cylinder", "prism"})
    if (solid.has(form) && ++forms > 1) solid.stop(form, "this solid has two forms", "keep one of them");
  if (solid.has("plate"))
    add_box(part, solid, "plate", name, measuring);
  else if (solid.has("box"))
    add_box(part, solid, "box", name, measuring);
  else if (solid.has("cylinder"))
    add_cylinder(part, solid, name, measuring);
  else if (solid.has("prism"))
    add_prism(part, solid, name, measuring);
  else {
    solid.finish();
    solid.stop_here("this solid has no form",
                    "write plate = [x, y, t], box = [x, y, z], cylinder = { ... } or prism = { ... }");
  }
  solid.finish();
  require_solid(part, solid);
}

Part heatsink_part(Fields heatsink, const std::string& id, const Measuring& measuring) {
  Part part;
  part.id = id;
  part.kind = "heatsink";
  heatsink.knows({"length", "width", "base", "fins", "height"});
  const Coordinate length = add_length(part, heatsink.length("length", "heatsink length", measuring, some));
  const Coordinate half = 0.5 * add_length(part, heatsink.length("width", "heatsink width", measuring, some));
  const Coordinate height = add_length(part, heatsink.length("height", "heatsink height", measuring, some));
  const int fins = heatsink.has("fins") ? heatsink.count("fins", 0, 60) : 0;
  if (fins == 0) {
    if (heatsink.has("base"))
      heatsink.stop("base", "a heatsink without fins has no base", "give its `height` over all, or `fins` too");
    part.bodies.push_back(box_body("plate", {-1.0 * half, 0.0, 0.0}, {half, length, height}));
    heatsink.finish();
    require_solid(part, heatsink);
    return part;
  }
  const Coordinate base = add_length(part, heatsink.length("base", "heatsink base", measuring, some));
  part.bodies.push_back(box_body("base", {-1.0 * half, 0.0, 0.0}, {half, length, base}));
  heatsink.finish();
  // Fins and gaps share the width, the gaps half as wide again as the fins: the outer fins stand flush with the sides.
  const double fin = 1.0 / (fins + 1.5 * (fins - 1));
  for (int i = 0; i < fins; ++i) {
    const double from = fins == 1 ? -0.25 : -1.0 + 2.0 * 2.5 * fin * i;
    const double to = fins == 1 ? 0.25 : from + 2.0 * fin;
    part.bodies.push_back(
        box_body("fin " + std::to_string(i + 1), {from * half, 0.0, base}, {to * half, length, height}));
  }
  require_solid(part, heatsink);
  return part;
}

void require_solid(const Part& part, const Fields& fields) {
  for (const double end : {0.0, -1.0, 1.0}) {
    std::vector<double> values;
    for (const tolerance::Dimension& d : part.dimensions)
      values.push_back(d.open() || end == 0.0 ? d.nominal : end < 0.0 ? d.low() : d.high());
    for (const Body& body : part.bodies) {
      if (body.form == Body::Form::prism && body.outline.size() < 3) continue;
      const auto made = shape(body, values);
      if (const auto* refused = std::get_if<geometry::Refusal>(&made))
        fields.stop_here("`" + body.name + "` is no solid: " + refused->reason, "mend its sizes");
    }
  }
}

namespace {

/// A model where the file says (`at`, its low corner), else where its kind has its origin: a heatsink's lies under the
/// middle of its near end.
void place_model(Part& part, Fields& fields, const std::string& id) {
  part.id = id;
  part.kind = fields.maybe_text("kind").value_or("part");
  add_model(part, fields, part.kind);
  Body& body = part.bodies.back();
  geometry::Vec3 at(0.0);
  if (part.kind == "heatsink") at.x = -0.5 * part.models.back().size.x;
  if (fields.has("at")) {
    const std::vector<double> given = fields.numbers("at", 3);
    at = {given[0], given[1], given[2]};
  }
  for (std::size_t axis = 0; axis < 3; ++axis)
    for (Coordinates* side : {&body.low, &body.high}) (*side)[axis] += at[static_cast<int>(axis)];
}

}  // namespace

Part read_part_file(const std::filesystem::path& path) {
  const std::string text = read_text_file(path);
  const toml::table document = parse_document(text, path.string());
  Fields fields(document, path.string(), "a part file");
  Measuring measuring;
  std::string id = path.filename().string();
  id.erase(id.size() - std::string(".part.toml").size());
  fields.knows({"title", "source", "kind", "solid", "heatsink", "model", "unit", "up", "at"});
  const std::string title = fields.text("title");
  if (auto source = fields.maybe_text("source")) measuring.source = *source;
  Part part;
  if (!fields.has("model"))
    for (const std::string_view key : {"unit", "up", "at"})
      if (fields.has(key)) fields.stop(key, "only a model has `" + std::string(key) + '`', "take it out");
  if (auto heatsink = fields.maybe_table("heatsink", "a heatsink")) {
    for (const std::string_view key : {"solid", "model", "kind"})
      if (fields.has(key)) fields.stop(key, "a heatsink has no `" + std::string(key) + '`', "keep one of them");
    part = heatsink_part(*heatsink, id, measuring);
  } else if (fields.has("model")) {
    if (fields.has("solid")) fields.stop("solid", "this part has both `model` and `solid`", "keep one of them");
    place_model(part, fields, id);
  } else {
    part.id = id;
    part.kind = fields.maybe_text("kind").value_or("part");
    if (fields.has("solid"))
      add_solid(part, fields.table("solid", "a solid"), part.kind, measuring);
    else {
      fields.finish();
      fields.stop_here("this part has no solid",
                       "add `solid = { box = [x, y, z] }`, `heatsink = { ... }` or `model = \"FILE.obj\"`");
    }
  }
  part.title = title;
  fields.finish();
  for (tolerance::Dimension& d : part.dimensions)
    if (d.source.empty()) d.source = measuring.source;
  return part;
}

}  // namespace baywright::parts
