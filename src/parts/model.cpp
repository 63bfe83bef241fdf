#include "parts/model.h"

#include "geometry/limits.h"
#include "parts/mesh_file.h"
#include "parts/model_memory.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <array>
#include <utility>

namespace baywright::parts {

using geometry::Mat3;
using geometry::Mesh;
using geometry::Vec3;

namespace {

struct Unit {
  std::string_view name;
  double mm;
};
constexpr std::array<Unit, 4> units = {{{"mm", 1.0}, {"cm", 10.0}, {"m", 1000.0}, {"in", 25.4}}};

struct Up {
  std::string_view name;
  std::array<Vec3, 3> rows;  // what becomes x, y and z of the part
};
// Each is a turn, no mirror image: about x for y, about y for x, half about x for -z.
const std::array<Up, 6> ups = {{
    {"+z", {Vec3{1, 0, 0}, Vec3{0, 1, 0}, Vec3{0, 0, 1}}},
    {"-z", {Vec3{1, 0, 0}, Vec3{0, -1, 0}, Vec3{0, 0, -1}}},
    {"+y", {Vec3{1, 0, 0}, Vec3{0, 0, -1}, Vec3{0, 1, 0}}},
    {"-y", {Vec3{1, 0, 0}, Vec3{0, 0, 1}, Vec3{0, -1, 0}}},
    {"+x", {Vec3{0, 0, -1}, Vec3{0, 1, 0}, Vec3{1, 0, 0}}},
    {"-x", {Vec3{0, 0, 1}, Vec3{0, 1, 0}, Vec3{-1, 0, 0}}},
}};

template <class List>
std::string names_of(const List& list) {
  std::vector<std::string> names;
  for (const auto& each : list) names.push_back('"' + std::string(each.name) + '"');
  return any_of(names);
}

const Up& up_of(Fields& fields, bool& guessed) {
  const auto given = fields.maybe_text("up");
  guessed = !given;
  const auto found = std::find_if(ups.begin(), ups.end(), [&](const Up& up) { return !given || up.name == *given; });
  if (found == ups.end())
    fields.stop("up", "`up = \"" + *given + "\"` is no axis of the file", "it must be " + names_of(ups));
  return *found;
}

std::string unit_of(Fields& fields, const Vec3& size, bool& guessed) {
  const auto given = fields.maybe_text("unit");
  guessed = !given;
  if (!given) return std::string(guess_unit(size).unit);
  if (unit_in_mm(*given) == 0.0)
    fields.stop("unit", "`unit = \"" + *given + "\"` is not known", "it must be " + names_of(units));
  return *given;
}

std::string sizes(const Vec3& size) {
  return tolerance::in_words(size.x) + " x " + tolerance::in_words(size.y) + " x " + tolerance::in_words(size.z) +
         " mm";
}

std::filesystem::path path_beside(const Fields& fields, const std::string& file) {
  std::filesystem::path path = std::filesystem::path(fields.file()).parent_path() / file;
  std::error_code failed;
  if (!std::filesystem::exists(path, failed))
    fields.stop("model", "there is no file `" + path.string() + '`', "give its path as seen from this file's folder");
  return path;
}

/// Turned upright, in mm, its low corner at the origin: x -> (up * x) * mm - low.
struct Placing {
  Mat3 up{1.0};
  double mm = 1.0;
  Vec3 low{0.0};

  [[nodiscard]] Vec3 to(const Vec3& p) const { return (up * p) * mm - low; }
  [[nodiscard]] Vec3 back(const Vec3& p) const { return glm::transpose(up) * ((p + low) / mm); }
};

geometry::Bounds extent(const std::vector<Vec3>& vertices) {
  geometry::Bounds box = geometry::Bounds::empty();
  for (const Vec3& v : vertices) box.add(v);
  return box;
}

ReadModel read_model(Fields& fields, const std::filesystem::path& path) {
  RawMesh raw = read_mesh_file(path);
  Model model;
  Placing placing;
  const Up& up = up_of(fields, model.up_guessed);
  for (std::size_t row = 0; row < 3; ++row)
    for (int column = 0; column < 3; ++column) placing.up[column][static_cast<int>(row)] = up.rows[row][column];
  model.up = up.name;
  const geometry::Bounds drawn = extent(raw.vertices);
  model.unit = unit_of(fields, drawn.high - drawn.low, model.unit_guessed);
  placing.mm = unit_in_mm(model.unit);
  for (Vec3& v : raw.vertices) v = placing.to(v);
  placing.low = extent(raw.vertices).low;
  for (Vec3& v : raw.vertices) v -= placing.low;

  const Vec3 size = extent(raw.vertices).high;
  const auto stop = [&](const std::string& what, const std::string& right) {
    throw Stop{{path.string(), 0, 0, what, right}};
  };
  for (int axis = 0; axis < 3; ++axis) {
    if (!(size[axis] >= geometry::thinnest_mm))
      stop("this surface has no thickness: " + sizes(size), "a model goes round a body");
    if (!(size[axis] <= geometry::largest_mm))
      stop("this model is " + sizes(size) + " as its unit is " + model.unit, "is `unit` right? 100000 mm is the most");
  }
  auto made = Mesh::make(std::move(raw.vertices), std::move(raw.triangles));
  if (const auto* refused = std::get_if<geometry::Refusal>(&made)) stop(refused->reason, "mend the model");

  // What has no area is left out, and with it what only that reached.
  const auto& mesh = std::get<Mesh>(made);
  model.size = mesh.bounds().high - mesh.bounds().low;
  Body body = box_body({}, {0.0, 0.0, 0.0}, {model.size.x, model.size.y, model.size.z});
  body.form = Body::Form::mesh;
  body.mesh = mesh;
  model.closed = body.mesh->closed();
  model.flaws = body.mesh->flaws();
  for (geometry::MeshFlaw& flaw : model.flaws) flaw.where = placing.back(flaw.where);
  return {std::move(body), std::move(model)};
}

}  // namespace

double unit_in_mm(std::string_view unit) {
  const auto found = std::find_if(units.begin(), units.end(), [&](const Unit& each) { return each.name == unit; });
  return found == units.end() ? 0.0 : found->mm;
}

UnitGuess guess_unit(const Vec3& size) {
  const double largest = std::max({size.x, size.y, size.z});
  if (largest >= 10.0) return {"mm", "in"};
  if (largest >= 1.0) return {"in", "mm"};
  return {"m", "mm"};
}

void add_model(Part& part, Fields& fields, const std::string& name) {
  const std::string file = fields.text("model");
  const std::filesystem::path path = path_beside(fields, file);
  auto key = model_key(path, fields.maybe_text("unit").value_or(""), fields.maybe_text("up").value_or(""));
  auto read = key ? remembered(*key) : std::nullopt;
  if (!read) {
    read = read_model(fields, path);
    if (key) remember(std::move(*key), *read);
  }
  read->model.file = file;
  read->model.body = read->body.name = name;
  part.bodies.push_back(std::move(read->body));
  part.models.push_back(std::move(read->model));
}

}  // namespace baywright::parts
