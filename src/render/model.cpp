#include "render/model.h"

#include "output/answer_words.h"
#include "output/stack_column.h"
#include "output/views.h"
#include "output/words.h"
#include "render/apart.h"
#include "render/clearance_map.h"
#include "render/overlap_region.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <cmath>

namespace baywright::render {

using build::Build;
using fit::Finding;
using fit::Seated;
using fit::Seating;
using geometry::Bounds;
using geometry::Vec3;

namespace {

template <typename Named>
const Named* called(const std::vector<Named>& list, const std::string& name) {
  const auto found = std::find_if(list.begin(), list.end(), [&](const Named& each) { return each.name == name; });
  return found == list.end() ? nullptr : &*found;
}

/// What the drive wears by that name; null: nothing.
const build::Wear* worn(const build::Drive* drive, const std::string& name) {
  if (drive == nullptr) return nullptr;
  for (const build::Wear& wear : drive->wears)
    if (std::visit([&](const auto& each) { return each.name == name; }, wear)) return &wear;
  return nullptr;
}

Material material_by_body(const std::string& body) {
  if (body == "card" || body == "edge" || body == "board" || body == "tongue") return Material::card;
  if (body.starts_with("chips") || body == "components" || body == "solder side") return Material::chips;
  return Material::metal;  // a case, a bracket, a tray
}

Material material_of(const Build& build, const build::Drive* drive, const fit::Element& element, bool own) {
  const std::string& part = element.part;
  if (part.ends_with(" socket") || element.body == "plug") return Material::socket;
  if (part == "screw" || part == "stand-off" || part == "washer" || part == "nut") return Material::screw;
  if (const build::Wear* wear = own ? worn(drive, part) : nullptr)
    return std::holds_alternative<build::Pad>(*wear) ? Material::pad : Material::heatsink;
  if (own || called(build.held, part) != nullptr) return material_by_body(element.body);
  const build::HostPart* host = called(build.parts, part);
  if (host != nullptr && host->part.kind == "board") return Material::board;
  if (host != nullptr && host->part.kind == "heatsink") return Material::heatsink;
  return Material::case_part;
}

/// Where something else sits already the drive is not shown: two cannot be there.
bool shows_drive(const Build& build, const Seated& seated, const Seating& seating) {
  const build::Place* place = called(build.places, seating.place);
  return !seated.scene.elements.empty() && (place == nullptr || place->holds < 0);
}

/// The place's frame where nothing is seated: its axes as the build has them, at the middle of the socket or of the
/// part that carries it.
geometry::Pose frame_of_place(const Build& build, const Seating& seating, const Model& model) {
  const build::Place* place = called(build.places, seating.place);
  if (place == nullptr) return {};
  const std::string& carrier = build.parts[static_cast<std::size_t>(place->part)].name;
  const std::string socket = place->name + " socket";
  Bounds box = Bounds::empty();
  for (const std::string& part : {socket, carrier}) {
    if (box.low.x <= box.high.x) break;
    for (const Thing& thing : model.things)
      if (thing.part == part) box.add(thing.bounds);
  }
  const Vec3 z = place->outward();
  const Vec3 y = place->toward;
  const Vec3 at = box.low.x <= box.high.x ? 0.5 * (box.low + box.high) : Vec3(0.0);
  return {geometry::Mat3(glm::cross(y, z), y, z), at};
}

Bounds bounds_of_drive(const Build& build, const Seating& seating, const Model& model) {
  const build::Place* place = called(build.places, seating.place);
  Bounds out = Bounds::empty();
  for (const Thing& thing : model.things)
    if (thing.drive || thing.part == seating.place + " socket") out.add(thing.bounds);
  if (place != nullptr && place->holds >= 0)  // what sits there
    for (const Thing& thing : model.things)
      if (thing.part == build.held[static_cast<std::size_t>(place->holds)].name) out.add(thing.bounds);
  if (out.low.x <= out.high.x) return out;
  if (place == nullptr) return model.bounds;
  for (const Thing& thing : model.things)
    if (thing.part == build.parts[static_cast<std::size_t>(place->part)].name) out.add(thing.bounds);
  return out;
}

/// Clearances between two named solids: a gap on the way in is met elsewhere, and a hole's play has no solids.
bool between_solids(const Finding& finding) {
  return finding.kind == fit::Kind::clearance && finding.gap && std::isfinite(finding.gap->nominal) &&
         !finding.bodies[0].empty() && !finding.bodies[1].empty() && glm::length(finding.toward) > 0.5;
}

Measured measured(const Finding& finding, std::size_t index) {
  const fit::GapFigures& gap = *finding.gap;
  const auto words = [&](double value) { return output::over_or_clear(value, gap.asked, finding.why.code); };
  Measured out;
  out.finding = index;
  out.from = finding.at + 0.5 * gap.nominal * finding.toward;  // `toward` is the way that the first would move to gain
  out.to = finding.at - 0.5 * gap.nominal * finding.toward;
  out.verdict = finding.verdict.value_or(fit::Verdict::undecided);
  out.between = output::subject(finding, 0) + ", " + output::subject(finding, 1);
  out.figure = words(gap.nominal);
  out.limits = "at worst " + words(gap.min) + ", at best " + words(gap.max);
  if (gap.asked > 0.0) out.asked = "asked " + tolerance::in_words(gap.asked);
  return out;
}

/// What the verdict comes from, where that is no gap between solids but is somewhere.
std::optional<Measured> reason(const Seating& seating) {
  const Finding* finding = output::answering(seating);
  if (finding == nullptr || seating.verdict == fit::Verdict::fits || between_solids(*finding)) return std::nullopt;
  if (!(glm::length(finding->at) > 0.0)) return std::nullopt;
  Measured out;
  out.finding = static_cast<std::size_t>(finding - seating.findings.data());
  out.from = out.to = finding->at;
  out.verdict = seating.verdict;
  out.figure = output::word(finding->kind);
  out.between = finding->between[0] + (finding->between[1].empty() ? "" : ", " + finding->between[1]);
  return out;
}

void add_gaps(Model& out, const Seating& seating) {
  for (std::size_t i = 0; i < seating.findings.size(); ++i)
    if (between_solids(seating.findings[i])) out.gaps.push_back(measured(seating.findings[i], i));
  std::stable_partition(out.gaps.begin(), out.gaps.end(),
                        [&](const Measured& each) { return each.finding == seating.deciding; });
  if (auto why = reason(seating)) out.gaps.insert(out.gaps.begin(), std::move(*why));
}

void add_overlaps(Model& out, const Seated& seated, const Seating& seating) {
  for (std::size_t i = 0; i < seating.findings.size(); ++i) {
    const Finding& finding = seating.findings[i];
    if (!between_solids(finding) || !finding.shared) continue;
    for (const int a : output::alike(seated.scene, finding.between[0], finding.bodies[0]))
      for (const int b : output::alike(seated.scene, finding.between[1], finding.bodies[1])) {
        SharedRoom room = shared_room(seated.scene.element(a).placed, seated.scene.element(b).placed);
        if (room.mesh != nullptr)
          out.overlaps.push_back(
              {i, {a, b}, *finding.verdict, std::move(room.mesh), std::move(room.edges), room.volume});
      }
  }
}

}  // namespace

Model model_of(const Build& build, const Seated& seated, const Seating& seating) {
  Model out;
  out.maps = std::make_shared<KeptMaps>();
  out.bounds = Bounds::empty();
  const bool shown = shows_drive(build, seated, seating);
  const build::Drive* drive = called(build.drives, seating.drive);
  const int count = shown ? seated.scene.element_count() : seated.scene.first_element();
  for (int i = 0; i < count; ++i) {
    const fit::Element& element = seated.scene.element(i);
    const bool own = seated.brings(i);
    Thing thing{i,
                element.part,
                element.body,
                material_of(build, drive, element, own),
                own,
                false,
                false,
                element.placed,
                element.bounds,
                shape_of(element.placed),
                Vec3(0.0)};
    thing.late = own && seated.fixed_after.contains(i);
    thing.out_first = !own && (element.body == "cover" || std::find(seating.out_first.begin(), seating.out_first.end(),
                                                                    element.part) != seating.out_first.end());
    out.bounds.add(thing.bounds);
    out.things.push_back(std::move(thing));
  }
  out.place = shown ? seated.slot.pose : frame_of_place(build, seating, out);
  out.drive = bounds_of_drive(build, seating, out);
  if (!shown) return out;
  out.face = seated.card.pose.turn[2];
  out.way_in = seating.way_out;
  add_gaps(out, seating);
  add_overlaps(out, seated, seating);
  take_apart(out, seated, seating);
  return out;
}

}  // namespace baywright::render
