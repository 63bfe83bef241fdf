#include "build/reader.h"
#include "parts/library.h"

#include <algorithm>
#include <utility>

namespace baywright::build {

using parts::Fault;
using parts::Fields;
using parts::Stop;

void Reader::note_exact(const tolerance::Dimension& dimension) {
  if (parts::is_taken_as_exact(dimension)) build.exact.push_back(dimension.name);
}

std::string Reader::fresh_name(Fields& fields) {
  std::string name = fields.text("name");
  if (!names.insert(name).second)
    fields.stop("name", "the name `" + name + "` is taken", "give each part, place and drive its own name");
  return name;
}

GivenLength Reader::measured(Fields& fields, std::string_view key, const std::string& name, double least) {
  GivenLength given = fields.length(key, name, measuring, least);
  if (given.solve)
    fields.stop(key, '`' + std::string(key) + "` is \"?\"", "only a distance (`by = \"?\"`) can be solved for");
  note_exact(given.dimension);
  return given;
}

std::optional<GivenLength> Reader::maybe_measured(Fields& fields, std::string_view key, const std::string& name,
                                                  double least) {
  if (!fields.has(key)) return std::nullopt;
  return measured(fields, key, name, least);
}

/// What a person reads off an instrument: common practice, no source.
parts::Measuring measuring_of(Fields& document) {
  const auto tool = document.maybe_text("measured_with");
  if (!tool) return {};
  if (*tool == "caliper") return {0.1, "caliper, ±0.1 by common practice"};
  if (*tool == "rule") return {0.5, "rule, ±0.5 by common practice"};
  document.stop("measured_with", "`" + *tool + "` is not known", "it must be \"caliper\" or \"rule\"");
}

namespace {

tolerance::Method method_of(Fields& document) {
  const std::string method = document.maybe_text("method").value_or("worst");
  if (method == "worst") return tolerance::Method::worst;
  if (method == "rss") return tolerance::Method::rss;
  if (method == "sampled") return tolerance::Method::sampled;
  document.stop("method", "`method = \"" + method + "\"` is not known", "it must be \"worst\", \"rss\" or \"sampled\"");
}

double clearance_of(Fields& fields) {
  const double clearance = fields.number("clearance");
  if (clearance < 0.0) fields.stop("clearance", "`clearance` is negative", "it must be 0 or more");
  return clearance;
}

/// What a finding can be between, as output names it.
std::set<std::string> names_in_findings(const Build& build) {
  std::set<std::string> names = {"screw", "stand-off", "cable plug"};
  for (const HostPart& part : build.parts) names.insert(part.name);
  for (const Place& place : build.places) {
    if (std::holds_alternative<Bay>(place.socket))
      names.insert(place.name);
    else
      names.insert(place.name + " socket");
    if (place.cover) names.insert(place.name + " cover");
    for (const int size : place.soldered) names.insert(place.name + " stand-off " + std::to_string(size));
  }
  for (const std::vector<Drive>* list : {&build.drives, &build.held})
    for (const Drive& drive : *list) {
      names.insert(drive.name);
      if (drive.worn) names.insert(drive.worn->name);
      for (const Wear& wear : drive.wears) names.insert(std::visit([](const auto& worn) { return worn.name; }, wear));
    }
  return names;
}

void read_apart(Reader& reader, Fields& document) {
  const std::set<std::string> names = names_in_findings(reader.build);
  const std::vector<std::string> known(names.begin(), names.end());
  for (Fields& fields : document.tables("apart", "[[apart]]")) {
    fields.knows({"between", "clearance"});
    const std::vector<std::string> between = fields.texts("between");
    if (between.size() != 2)
      fields.stop("between", "`between` does not name two parts", "write between = [\"A\", \"B\"]");
    for (const std::string& name : between) {
      if (names.contains(name)) continue;
      const std::string meant = parts::nearest(name, known);
      if (reader.names.contains(name))
        fields.stop("between", '`' + name + "` is a place, not a part", "name its board, or `" + name + " socket`");
      fields.stop("between", "there is no part `" + name + '`',
                  meant.empty() ? "the names are " + parts::any_of(known) : "did you mean `" + meant + "`?");
    }
    reader.build.apart.push_back({{between[0], between[1]}, clearance_of(fields)});
    fields.finish();
  }
}

Build read_build(std::string_view text, const std::filesystem::path& file, bool without_drives) {
  const toml::table document = parts::parse_document(text, file.string());
  Fields fields(document, file.string(), "a build file");
  fields.knows(
      {"title", "clearance", "method", "measured_with", "part", "slot", "bay", "panel", "drive", "apart", "tool"});
  Reader reader;
  reader.folders = parts::part_folders(file);
  reader.build.file = file.string();
  reader.build.title = fields.text("title");
  if (fields.has("clearance")) reader.build.clearance = clearance_of(fields);
  reader.build.method = method_of(fields);
  reader.measuring = measuring_of(fields);
  reader.build.measured_with = fields.maybe_text("measured_with").value_or("");
  fields.finish();  // a misspelt table before what it leaves missing
  read_parts(reader, fields);
  read_places(reader, fields);
  if (!without_drives || fields.has("drive")) read_drives(reader, fields);
  read_apart(reader, fields);
  read_tools(reader, fields);
  return std::move(reader.build);
}

}  // namespace

std::variant<Build, Fault> read_text(std::string_view text, const std::filesystem::path& file) {
  try {
    return read_build(text, file, false);
  } catch (const Stop& stop) {
    return stop.fault;
  }
}

std::variant<Build, Fault> read(const std::filesystem::path& file) {
  try {
    return read_build(parts::read_text_file(file), file, false);
  } catch (const Stop& stop) {
    return stop.fault;
  }
}

std::variant<Build, Fault> read_machine(const std::filesystem::path& file) {
  try {
    return read_build(parts::read_text_file(file), file, true);
  } catch (const Stop& stop) {
    return stop.fault;
  }
}

geometry::Vec3 Place::outward() const {
  geometry::Vec3 out(0.0);
  out[axis] = back ? -1.0 : 1.0;
  return out;
}

int stands_on(const Build& build, int part) {
  const Position& at = build.parts[static_cast<std::size_t>(part)].position;
  return at.kind == Position::Kind::against && at.seated ? at.target : -1;
}

int comes_out_with(const Build& build, int part) {
  for (; part >= 0; part = stands_on(build, part))
    if (build.parts[static_cast<std::size_t>(part)].removable) return part;
  return -1;
}

Form form_of(const Place& place) {
  if (std::holds_alternative<M2Socket>(place.socket)) return Form::m2;
  if (std::holds_alternative<MiniSocket>(place.socket)) return Form::mini_card;
  if (const auto* bay = std::get_if<Bay>(&place.socket)) return bay->form;
  return Form::add_in_card;
}

int size_of(const standards::m2::CardName& card) {
  return card.length >= 100 ? card.width * 1000 + card.length : card.width * 100 + card.length;
}
int width_code(int size) {
  return size > 9999 ? size / 1000 : size / 100;
}
int length_code(int size) {
  return size > 9999 ? size % 1000 : size % 100;
}

}  // namespace baywright::build
