#include "fit/mesh_notes.h"

#include "parts/model.h"

#include <set>
#include <utility>

namespace baywright::fit {

namespace {

using geometry::MeshFlaw;
using geometry::Vec3;

std::string name_of(MeshFlaw::Kind kind) {
  switch (kind) {
    case MeshFlaw::Kind::split_vertices:
      return "split vertices";
    case MeshFlaw::Kind::degenerate:
      return "degenerate";
    case MeshFlaw::Kind::duplicate:
      return "duplicate";
    case MeshFlaw::Kind::turned:
      return "turned";
    case MeshFlaw::Kind::inside_out:
      return "inside out";
    case MeshFlaw::Kind::open_edge:
      return "open edge";
    case MeshFlaw::Kind::crowded_edge:
      return "crowded edge";
    case MeshFlaw::Kind::one_sided:
      return "one-sided";
    case MeshFlaw::Kind::crossing:
      return "crossing";
  }
  return {};
}

Finding note(const std::string& part, const parts::Model& model, Code code) {
  Finding finding;
  finding.kind = Kind::mesh;
  finding.between = {part, ""};
  finding.why = {code, {{"part", part}, {"file", model.file}}, {}};
  return finding;
}

void add_size(Finding& finding, const Vec3& size, const std::string& before) {
  finding.why.figures.emplace_back(before + "x", size.x);
  finding.why.figures.emplace_back(before + "y", size.y);
  finding.why.figures.emplace_back(before + "z", size.z);
}

Finding guesses(const std::string& part, const parts::Model& model) {
  Finding finding = note(part, model, Code::unit_guessed);
  if (model.unit_guessed) {
    const double mm = parts::unit_in_mm(model.unit);
    const std::string other(parts::guess_unit(model.size / mm).other);
    finding.why.words.emplace_back("unit", model.unit);
    finding.why.words.emplace_back("other", other);
    add_size(finding, model.size, "");
    add_size(finding, model.size / mm * parts::unit_in_mm(other), "other ");
  }
  if (model.up_guessed) finding.why.words.emplace_back("up", model.up);
  return finding;
}

/// Flaws of one sort, mended or not. None: no finding. Points that a format always gives more than once are no flaw.
void add_flaws(std::vector<Finding>& out, const std::string& part, const parts::Model& model, bool mended) {
  Finding finding = note(part, model, mended ? Code::mesh_mended : Code::mesh_surface);
  for (const MeshFlaw& flaw : model.flaws) {
    if (flaw.mended != mended || flaw.kind == MeshFlaw::Kind::split_vertices) continue;
    const std::string what = name_of(flaw.kind);
    finding.why.words.emplace_back("what", what);
    finding.why.figures.emplace_back(what, flaw.count);
    add_size(finding, flaw.where, what + ' ');
  }
  if (!finding.why.figures.empty() || (!mended && !model.closed)) out.push_back(std::move(finding));
}

}  // namespace

std::vector<Finding> mesh_notes(const build::Build& build) {
  std::vector<Finding> out;
  std::set<std::pair<std::string, std::string>> told;  // name and library id
  const auto tell = [&](const std::string& name, const parts::Part& part) {
    if (!part.models.empty() && !told.insert({name, part.id}).second) return;
    for (const parts::Model& model : part.models) {
      if (model.unit_guessed || model.up_guessed) out.push_back(guesses(name, model));
      add_flaws(out, name, model, true);
      add_flaws(out, name, model, false);
    }
  };
  for (const build::HostPart& part : build.parts) tell(part.name, part.part);
  for (const std::vector<build::Drive>* list : {&build.drives, &build.held})
    for (const build::Drive& drive : *list)
      for (const build::Wear& wear : drive.wears)
        if (const auto* heatsink = std::get_if<build::Heatsink>(&wear)) tell(heatsink->name, heatsink->part);
  return out;
}

}  // namespace baywright::fit
