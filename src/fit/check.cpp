#include "fit/check.h"

#include "fit/access.h"
#include "fit/asked_length.h"
#include "fit/clearance.h"
#include "fit/connect.h"
#include "fit/drawing_notes.h"
#include "fit/fixing.h"
#include "fit/host_overlaps.h"
#include "fit/insertion.h"
#include "fit/insulation.h"
#include "fit/mesh_notes.h"
#include "fit/panel_holes.h"
#include "fit/part_screws.h"
#include "fit/sampled_findings.h"
#include "fit/seat.h"
#include "geometry/limits.h"
#include "parts/pad_range.h"
#include "standards/addin_cards.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace baywright::fit {

using parts::pad_least;
using parts::pad_most;

namespace {

Finding note(Kind kind, std::array<std::string, 2> between, Reason why) {
  Finding finding;
  finding.kind = kind;
  finding.between = std::move(between);
  finding.why = std::move(why);
  return finding;
}

Finding refusal(Kind kind, const build::Drive& drive, const build::Place& place, Reason why) {
  Finding finding = note(kind, {drive.name, place.name}, std::move(why));
  finding.verdict = Verdict::does_not_fit;
  finding.share = 0.0;
  return finding;
}

void add_questions(Seating& seating, const build::Drive& drive, const build::Place& place) {
  const Questions& q = seating.questions;
  const Code form = q.form_factor.why.code;
  const bool other_form = form == Code::other_form || form == Code::soldered || form == Code::adapter_needed;
  if (q.form_factor.answer != Answer::yes)
    seating.findings.push_back(refusal(other_form ? Kind::form_factor : Kind::length, drive, place, q.form_factor.why));
  if (form == Code::other_form || form == Code::soldered) return;  // that connector and bus are missing follows from it
  if (q.interface.answer != Answer::yes && q.interface.why.code != Code::adapter_needed)
    seating.findings.push_back(refusal(Kind::interface, drive, place, q.interface.why));
  if (q.bus.answer != Answer::yes) seating.findings.push_back(refusal(Kind::bus, drive, place, q.bus.why));
  if (q.bus.why.code == Code::bus_slower)
    seating.findings.push_back(note(Kind::link, {drive.name, place.name}, q.bus.why));
}

void add_pad_notes(Seating& seating, const build::Drive& drive) {
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
}

/// The height codes that a socket's class takes: what stands under the card has no room over the board else.
void add_height_class(Seating& seating, const build::Drive& drive, const build::Place& place) {
  const auto* socket = std::get_if<build::M2Socket>(&place.socket);
  if (socket == nullptr || drive.top || drive.bottom) return;
  const auto& accepts = socket->height_class->accepts;
  if (std::find(accepts.begin(), accepts.end(), drive.card.height) == accepts.end())
    seating.findings.push_back(refusal(
        Kind::height_class, drive, place,
        {Code::class_refuses, {{"class", std::string(socket->height_class->name)}, {"code", drive.card.height}}, {}}));
}

/// A card's bracket must be the one that the machine's rear wall is made for.
void add_bracket(Seating& seating, const build::Drive& drive, const build::Place& place) {
  using build::Bracket;
  namespace cards = standards::addin_cards;
  const auto* slot = std::get_if<build::CardSlot>(&place.socket);
  if (slot == nullptr || slot->bracket == Bracket::none) return;
  if (drive.bracket == Bracket::none) {
    seating.findings.push_back(note(Kind::bracket, {drive.name, place.name}, {Code::bracket_missing, {}, {}}));
    return;
  }
  if (drive.bracket == slot->bracket) return;
  const auto word = [](Bracket bracket) {
    return std::string(bracket == Bracket::full ? "full-height" : "low-profile");
  };
  const double floor = cards::slot_floor().nominal;
  const auto tab = [&](Bracket bracket) {
    return floor + (bracket == Bracket::full ? cards::tab_full() : cards::tab_low()).nominal;
  };
  seating.findings.push_back(refusal(Kind::bracket, drive, place,
                                     {Code::bracket_differs,
                                      {{"drive", word(drive.bracket)}, {"place", word(slot->bracket)}},
                                      {{"tab", tab(drive.bracket)}, {"rail", tab(slot->bracket)}}}));
}

void add_notes(Seating& seating, const build::Drive& drive, const build::Place& place) {
  if (drive.cache_module)
    seating.findings.push_back(note(Kind::role, {drive.name, place.name}, {Code::cache_module, {}, {}}));
  if (drive.worn)
    seating.findings.push_back(note(Kind::role, {drive.worn->name, place.name},
                                    {Code::adapter_worn,
                                     {{"adapter", std::string(drive.worn->adapter->title)},
                                      {"adds", drive.worn->adapter->adds},
                                      {"cannot", drive.worn->adapter->cannot}},
                                     {}}));
  add_pad_notes(seating, drive);
  add_height_class(seating, drive, place);
  add_bracket(seating, drive, place);
}

/// The board's own cover over the slot comes off with its screws: in the way of what the drive wears it stays off, and
/// that is no fault of the drive.
void settle_cover(Seating& seating, const build::Place& place) {
  if (!place.cover) return;
  const std::string cover = place.name + " cover";
  const Finding* nearest = nullptr;
  for (const Finding& finding : seating.findings)
    if (finding.between[1] == cover && finding.gap && (nearest == nullptr || finding.gap->min < nearest->gap->min))
      nearest = &finding;
  Reason why{Code::cover_stays, {}, {}};
  if (nearest != nullptr) {
    const bool off = nearest->gap->min < -geometry::touch_mm;
    why.code = off ? Code::cover_off : Code::cover_stays;
    why.words.emplace_back("what", nearest->between[0]);
    why.figures = {{"least", nearest->gap->min}, {"most", nearest->gap->max}};
  }
  std::erase_if(seating.findings, [&](const Finding& finding) { return finding.between[1] == cover; });
  seating.findings.push_back(note(Kind::cover, {seating.drive, cover}, std::move(why)));
}

int severity(const Finding& finding) {
  return finding.verdict ? static_cast<int>(*finding.verdict) : -1;
}

double spare(const Finding& finding) {
  constexpr double none = std::numeric_limits<double>::infinity();
  if (finding.gap) return finding.gap->min - finding.gap->asked;
  return finding.verdict == Verdict::fits ? none : -none;  // what is as it should be comes last
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
    const bool seated = finding.kind != Kind::insertion && finding.kind != Kind::access &&
                        finding.kind != Kind::sheet && finding.kind != Kind::standoff;  // where the drive sits
    if (finding.gap && seated && !seating.deciding) seating.deciding = i;
    if (finding.share)
      missing += 1.0 - *finding.share;
    else
      known = false;
  }
  // Whatever the dependence between the gaps, no more builds can fail than fail one by one.
  if (known) seating.share = std::max(0.0, 1.0 - missing);
}

}  // namespace

Seating check_seating(const Host& host, const build::Build& build, const build::Drive& drive, int place,
                      const Options& options) {
  const build::Place& at = build.places[static_cast<std::size_t>(place)];
  Seating seating;
  seating.drive = drive.name;
  seating.place = at.name;
  Connection connection = connect(drive, at);
  seating.questions = std::move(connection.questions);
  seating.link = connection.link;
  add_questions(seating, drive, at);
  const Questions& q = seating.questions;
  std::optional<JointShare> joint;
  if (at.holds >= 0) {
    const build::Drive& there = build.held[static_cast<std::size_t>(at.holds)];
    seating.findings.push_back(refusal(Kind::occupied, drive, at, {Code::occupied, {{"by", there.name}}, {}}));
  } else if (seats(drive, q)) {
    add_notes(seating, drive, at);
    const tolerance::Method method = options.method.value_or(build.method);
    const Frame& frame = host.places[static_cast<std::size_t>(place)].frame;
    for (Finding& finding : fixings(drive, at, frame, tolerance::chain_method(method)))
      seating.findings.push_back(std::move(finding));
    for (Finding& finding : panel_holes(build, drive, place, frame, tolerance::chain_method(method)))
      seating.findings.push_back(std::move(finding));
    const Seated seated = seat(host, build, drive, place);
    std::vector<Near> near;
    for (Finding& finding : clearances(host, build, seated, drive, options, &near))
      seating.findings.push_back(std::move(finding));
    for (Finding& finding : insulation(seating.findings, build, seated)) seating.findings.push_back(std::move(finding));
    settle_cover(seating, at);
    Insertion way = insertion(host, build, seated, drive, at, options);
    if (way.way) seating.way_out = std::move(way.way->legs);
    seating.out_first = std::move(way.out_first);
    seating.findings.push_back(std::move(way.finding));
    for (Finding& finding : access(host, build, seated, drive, at, seating.out_first, options))
      seating.findings.push_back(std::move(finding));
    if (method == tolerance::Method::sampled)
      joint = sample_findings(seating.findings, seated, drive, at, near, options);
  } else if (q.form_factor.answer == Answer::yes && q.interface.answer == Answer::yes) {
    Finding finding = note(Kind::seating, {drive.name, at.name},
                           {Code::height_unknown, {{"form", parts::form_name(drive.form)}}, {}});
    finding.verdict = Verdict::undecided;
    seating.findings.push_back(std::move(finding));
  }
  conclude(seating);
  if (joint) seating.share = joint->share, seating.sure = joint->sure;
  return seating;
}

Check check(const build::Build& build, const Options& options) {
  Check out;
  out.title = build.title;
  out.file = build.file;
  out.method = options.method.value_or(build.method);
  out.sampling = options.sampling;
  out.clearance = options.clearance.value_or(build.clearance);
  out.drills = std::any_of(build.places.begin(), build.places.end(), [](const build::Place& place) {
    const auto* bay = std::get_if<build::Bay>(&place.socket);
    return bay != nullptr && bay->fixing && (bay->panel || bay->fixing->placed);
  });
  const Host host = compile(build);
  for (std::size_t drive = 0; drive < build.drives.size(); ++drive) {
    const build::Drive& each = build.drives[drive];
    if (!options.drive.empty() && each.name != options.drive) continue;
    for (std::size_t place = 0; place < build.places.size(); ++place) {
      const build::Place& at = build.places[place];
      if (!options.place.empty() && at.name != options.place) continue;
      const int slot = static_cast<int>(place);
      if (build.asked && seats(each, connect(each, at).questions)) {
        build::Build solved = build;
        auto needs = answer_asked(solved, drive, place, options);
        const Host there = compile(solved);
        out.seatings.push_back(check_seating(there, solved, solved.drives[drive], slot, options));
        if (needs) out.seatings.back().findings.push_back(std::move(*needs));
      } else {
        out.seatings.push_back(check_seating(host, build, each, slot, options));
      }
    }
  }
  if (!build.asked) out.notes = host_overlaps(host, build, out.method);
  for (auto* notes : {part_screws, mesh_notes, drawing_notes})
    for (Finding& finding : notes(build)) out.notes.push_back(std::move(finding));
  if (!build.asked)
    for (Finding& finding : board_insulation(host, build)) out.notes.push_back(std::move(finding));
  if (!build.exact.empty()) {
    Reason why{Code::taken_as_exact, {}, {}};
    for (const std::string& name : build.exact) why.words.emplace_back("length", name);
    out.notes.push_back(note(Kind::exact, {"", ""}, std::move(why)));
  }
  return out;
}

namespace {

/// Whether the first needs looking at more than the second.
bool more_pressing(const Seating& a, const Seating& b) {
  const auto room = [](const Seating& seating) {
    if (!seating.deciding) return 0.0;
    const GapFigures& gap = *seating.findings[*seating.deciding].gap;
    return gap.min - gap.asked;
  };
  if (a.verdict != b.verdict) return a.verdict > b.verdict;
  if (a.deciding.has_value() != b.deciding.has_value()) return a.deciding.has_value();  // one that can be drawn
  return room(a) < room(b);
}

}  // namespace

bool suits_better(const Seating& a, const Seating& b) {
  if (a.verdict != b.verdict) return a.verdict < b.verdict;
  const auto rate = [](const Seating& seating) {
    return seating.link ? standards::links::megabytes(*seating.link) : 0.0;
  };
  return rate(a) > rate(b);
}

std::vector<std::size_t> best_places(const Check& check) {
  const std::vector<Seating>& all = check.seatings;
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const auto same =
        std::find_if(out.begin(), out.end(), [&](std::size_t other) { return all[other].drive == all[i].drive; });
    if (same == out.end())
      out.push_back(i);
    else if (suits_better(all[i], all[*same]))
      *same = i;
  }
  return out;
}

std::size_t worst(const Check& check) {
  const std::vector<std::size_t> best = best_places(check);
  return *std::min_element(best.begin(), best.end(), [&](std::size_t a, std::size_t b) {
    return more_pressing(check.seatings[a], check.seatings[b]);
  });
}

}  // namespace baywright::fit
