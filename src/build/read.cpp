#include "build/reader.h"
#include "build/there_holes.h"
#include "parts/library.h"

#include <algorithm>
#include <utility>

namespace baywright::build {

using parts::Fault;
using parts::Fields;
using parts::Stop;

void Reader::note_exact(const tolerance::Dimension& dimension) {
  if (parts::is_taken_as_exact(dimension) && !dimension.asked) build.exact.push_back(dimension.name);
}

std::string Reader::fresh_name(Fields& fields) {
  std::string name = fields.text("name");
  if (!names.insert(name).second)
    fields.stop("name", "the name `" + name + "` is taken", "give each part, place and drive its own name");
  return name;
}

GivenLength Reader::measured(Fields& fields, std::string_view key, const std::string& name, double least) {
  GivenLength given = fields.length(key, name, measuring, least);
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

Build read_build(std::string_view text, const std::filesystem::path& file, bool without_drives, double answer) {
  const toml::table document = parts::parse_document(text, file.string());
  Fields fields(document, file.string(), "a build file");
  fields.knows({"title", "clearance", "method", "measured_with", "part", "slot", "bay", "panel", "drive", "apart",
                "tool", "shelf"});
  Reader reader;
  reader.folders = parts::part_folders(file);
  reader.build.file = file.string();
  reader.build.title = fields.text("title");
  if (fields.has("clearance")) reader.build.clearance = clearance_of(fields);
  reader.build.method = method_of(fields);
  reader.question.answer = answer;
  reader.measuring = measuring_of(fields);
  reader.measuring.question = &reader.question;
  reader.build.measured_with = fields.maybe_text("measured_with").value_or("");
  fields.finish();  // a misspelt table before what it leaves missing
  read_parts(reader, fields);
  read_places(reader, fields);
  find_there(reader.build);
  if (!without_drives || fields.has("drive")) read_drives(reader, fields);
  read_apart(reader, fields);
  read_tools(reader, fields);
  read_shelf(reader, fields);
  if (!reader.question.name.empty())
    reader.build.asked = Asked{reader.question.name, std::make_shared<const std::string>(text)};
  return std::move(reader.build);
}

std::variant<Build, Fault> read_with(std::string_view text, const std::filesystem::path& file, bool without_drives,
                                     double answer) {
  try {
    return read_build(text, file, without_drives, answer);
  } catch (const Stop& stop) {
    return stop.fault;
  }
}

/// A "?" may be a wall's thickness or a room of 400: it is read at the first of these, mm, that suits the file. What is
/// wrong at all of them is wrong with the file.
std::variant<Build, Fault> read_open(std::string_view text, const std::filesystem::path& file, bool without_drives) {
  auto first = read_with(text, file, without_drives, 5.0);
  const bool asks = text.find("\"?\"") != std::string_view::npos || text.find("'?'") != std::string_view::npos;
  if (!asks || std::holds_alternative<Build>(first)) return first;
  for (const double answer : {20.0, 100.0, 400.0, 1.0, 0.2}) {
    auto next = read_with(text, file, without_drives, answer);
    if (std::holds_alternative<Build>(next)) return next;
  }
  return first;
}

std::variant<Build, Fault> read_file(const std::filesystem::path& file, bool without_drives) {
  std::string text;
  try {
    text = parts::read_text_file(file);
  } catch (const Stop& stop) {
    return stop.fault;
  }
  return read_open(text, file, without_drives);
}

}  // namespace

std::variant<Build, Fault> read_text(std::string_view text, const std::filesystem::path& file) {
  return read_open(text, file, false);
}

std::variant<Build, Fault> read_machine_text(std::string_view text, const std::filesystem::path& file) {
  return read_open(text, file, true);
}

std::variant<Build, Fault> read(const std::filesystem::path& file) {
  return read_file(file, false);
}

std::variant<Build, Fault> read_machine(const std::filesystem::path& file) {
  return read_file(file, true);
}

std::variant<Build, Fault> answered(const Build& build, double mm) {
  auto read = read_with(*build.asked->text, build.file, build.drives.empty(), mm);
  if (auto* there = std::get_if<Build>(&read)) {
    there->method = build.method;
    there->clearance = build.clearance;
  }
  return read;
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
