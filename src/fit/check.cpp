#include "fit/check.h"

#include "fit/clearance.h"
#include "fit/connect.h"
#include "fit/seat.h"
#include "geometry/travel.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace baywright::fit {

namespace m2 = standards::m2;

namespace {

// Compression range of gap-filling pads as a share of the free thickness: rule of thumb of pad makers' tutorials
// (secondary). Below, the pad may not touch everywhere; above, silicone pads bleed oil.
constexpr double pad_least = 0.20;
constexpr double pad_most = 0.45;

Finding note(Kind kind, std::array<std::string, 2> between, Reason why) {
  Finding finding;
  finding.kind = kind;
  finding.between = std::move(between);
  finding.why = std::move(why);
  return finding;
}

Finding refusal(Kind kind, const build::Drive& drive, const build::Slot& slot, Reason why) {
  Finding finding = note(kind, {drive.name, slot.name}, std::move(why));
  finding.verdict = Verdict::does_not_fit;
  finding.share = 0.0;
  return finding;
}

void add_questions(Seating& seating, const build::Drive& drive, const build::Slot& slot) {
  const Questions& q = seating.questions;
  const bool other_form = q.form_factor.why.code == Code::other_form || q.form_factor.why.code == Code::soldered;
  if (q.form_factor.answer != Answer::yes)
    seating.findings.push_back(refusal(other_form ? Kind::form_factor : Kind::length, drive, slot, q.form_factor.why));
  if (other_form) return;  // that a connector and a bus are missing too follows from it
  if (q.interface.answer != Answer::yes)
    seating.findings.push_back(refusal(Kind::interface, drive, slot, q.interface.why));
  if (q.bus.answer != Answer::yes) seating.findings.push_back(refusal(Kind::bus, drive, slot, q.bus.why));
  if (q.bus.why.code == Code::bus_slower)
    seating.findings.push_back(note(Kind::link, {drive.name, slot.name}, q.bus.why));
}

void add_card_notes(Seating& seating, const build::Drive& drive, const build::Slot& slot) {
  if (drive.cache_module)
    seating.findings.push_back(note(Kind::role, {drive.name, slot.name}, {Code::cache_module, {}, {}}));
  for (const build::Wear& wear : drive.wears) {
    const auto* pad = std::get_if<build::Pad>(&wear);
    if (pad == nullptr) continue;
    if (pad->compress < pad_least)
      seating.findings.push_back(note(Kind::compression, {pad->name, drive.name},
                                      {Code::pad_loose, {}, {{"compressed", pad->compress}, {"least", pad_least}}}));
    if (pad->compress > pad_most)
      seating.findings.push_back(note(Kind::compression, {pad->name, drive.name},
                                      {Code::pad_tight, {}, {{"compressed", pad->compress}, {"most", pad_most}}}));
  }
  const auto& accepts = std::get<build::M2Socket>(slot.socket).height_class->accepts;
  const bool measured = drive.top.has_value() || drive.bottom.has_value();
  if (!measured && std::find(accepts.begin(), accepts.end(), drive.card.height) == accepts.end())
    seating.findings.push_back(
        refusal(Kind::height_class, drive, slot,
                {Code::class_refuses,
                 {{"class", std::string(std::get<build::M2Socket>(slot.socket).height_class->name)},
                  {"code", drive.card.height}},
                 {}}));
}

int severity(const Finding& finding) {
  return finding.verdict ? static_cast<int>(*finding.verdict) : -1;
}

double spare(const Finding& finding) {
  return finding.gap ? finding.gap->min - finding.gap->asked : -std::numeric_limits<double>::infinity();
}

void conclude(Seating& seating) {
  std::stable_sort(seating.findings.begin(), seating.findings.end(), [](const Finding& a, const Finding& b) {
    if (severity(a) != severity(b)) return severity(a) > severity(b);
    if (a.provided != b.provided) return b.provided;  // what the user measured is of more interest
    return spare(a) < spare(b);
  });
  seating.verdict = Verdict::fits;
  double missing = 0.0;
  bool known = true;
  for (std::size_t i = 0; i < seating.findings.size(); ++i) {
    const Finding& finding = seating.findings[i];
    if (!finding.verdict) continue;
    seating.verdict = worse(seating.verdict, *finding.verdict);
    if (finding.gap && !seating.deciding) seating.deciding = i;
    if (finding.share)
      missing += 1.0 - *finding.share;
    else
      known = false;
  }
  // Whatever the dependence between the gaps, no more builds can fail than fail one by one.
  if (known) seating.share = std::max(0.0, 1.0 - missing);
}

bool solvable(const build::HostPart& part) {
  return part.position.kind == build::Position::Kind::against && part.position.by.solve;
}

/// The nominal distance at which a part meets the drive along its own axis; none when it never does.
std::optional<double> touching_distance(const build::Build& build, const build::Drive& drive, int slot,
                                        std::size_t part) {
  const Host host = compile(build);
  const Seated seated = seat_m2(host, build, drive, slot);
  const HostPlace& place = host.parts[part];
  const build::Position& at = build.parts[part].position;
  std::vector<geometry::Placed> moving;
  std::vector<geometry::Placed> fixed;
  for (int i = place.first; i < place.first + place.count; ++i) moving.push_back(host.scene.element(i).placed);
  for (const Element& element : seated.scene.elements) fixed.push_back(element.placed);
  geometry::Vec3 toward(0.0);
  toward[at.axis] = at.up ? -1.0 : 1.0;
  const geometry::Travel way = geometry::travel(moving, fixed, toward);
  if (!way.meets) return std::nullopt;
  return at.by.dimension.nominal - way.mm;
}

}  // namespace

Seating check_seating(const Host& host, const build::Build& build, const build::Drive& drive, int slot,
                      const Options& options) {
  const build::Slot& place = build.slots[static_cast<std::size_t>(slot)];
  Seating seating;
  seating.drive = drive.name;
  seating.place = place.name;
  Connection connection = connect(drive, place);
  seating.questions = std::move(connection.questions);
  seating.link = connection.link;
  add_questions(seating, drive, place);
  const Questions& q = seating.questions;
  if (seats(drive, q)) {
    add_card_notes(seating, drive, place);
    const Seated seated = seat_m2(host, build, drive, slot);
    for (Finding& finding : clearances(host, build, seated, drive, options))
      seating.findings.push_back(std::move(finding));
  } else if (q.form_factor.answer == Answer::yes && q.interface.answer == Answer::yes) {
    Finding finding =
        note(Kind::seating, {drive.name, place.name}, {Code::not_modelled, {{"form", form_name(drive.form)}}, {}});
    finding.verdict = Verdict::undecided;
    seating.findings.push_back(std::move(finding));
  }
  conclude(seating);
  return seating;
}

std::vector<Finding> solve_distances(build::Build& build, const build::Drive& drive, int slot, const Options& options) {
  constexpr double far_away = 1000.0;  // mm: beyond any machine
  constexpr int tries = 8;             // faces in line need two; the rest is for slanted contacts
  std::vector<Finding> out;
  for (std::size_t i = 0; i < build.parts.size(); ++i) {
    if (!solvable(build.parts[i])) continue;
    tolerance::Dimension& distance = build.parts[i].position.by.dimension;
    const std::string part = build.parts[i].name;
    distance.nominal = far_away;
    const auto touching = touching_distance(build, drive, slot, i);
    distance.nominal = std::max(0.0, touching.value_or(0.0));
    for (int step = 0; touching && step < tries; ++step) {
      const Host host = compile(build);
      double shortage = -std::numeric_limits<double>::infinity();
      const Seated seated = seat_m2(host, build, drive, slot);
      for (const Finding& finding : clearances(host, build, seated, drive, options))
        if (finding.between[1] == part && finding.gap)
          shortage = std::max(shortage, finding.gap->asked - finding.gap->min);
      if (!(std::abs(shortage) > 1e-9) || !std::isfinite(shortage)) break;
      distance.nominal = std::max(0.0, distance.nominal + shortage);
    }
    out.push_back(note(Kind::needs, {drive.name, part},
                       {Code::needs_distance, {{"dimension", distance.name}}, {{"distance", distance.nominal}}}));
  }
  return out;
}

Check check(const build::Build& build, const Options& options) {
  Check out;
  out.title = build.title;
  out.file = build.file;
  out.method = options.method.value_or(build.method);
  out.clearance = options.clearance.value_or(build.clearance);
  const bool open = std::any_of(build.parts.begin(), build.parts.end(), solvable);
  const Host host = compile(build);
  for (const build::Drive& drive : build.drives) {
    if (!options.drive.empty() && drive.name != options.drive) continue;
    for (std::size_t slot = 0; slot < build.slots.size(); ++slot) {
      if (!options.place.empty() && build.slots[slot].name != options.place) continue;
      const int at = static_cast<int>(slot);
      Seating seating = check_seating(host, build, drive, at, options);
      if (open && seats(drive, seating.questions)) {
        build::Build solved = build;
        std::vector<Finding> needs = solve_distances(solved, drive, at, options);
        const Host there = compile(solved);
        seating = check_seating(there, solved, drive, at, options);
        for (Finding& finding : needs) seating.findings.push_back(std::move(finding));
      }
      out.seatings.push_back(std::move(seating));
    }
  }
  if (!open) out.notes = host_overlaps(host, build);
  if (!build.exact.empty()) {
    Reason why{Code::taken_as_exact, {}, {}};
    for (const std::string& name : build.exact) why.words.emplace_back("length", name);
    out.notes.push_back(note(Kind::exact, {"", ""}, std::move(why)));
  }
  return out;
}

}  // namespace baywright::fit
