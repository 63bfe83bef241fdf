#include "plans/trial.h"

#include "plans/moved_parts.h"
#include "standards/links.h"

#include <algorithm>
#include <limits>

namespace baywright::plans {

namespace links = standards::links;

namespace {

double room_of(const fit::Seating& seating) {
  if (!seating.deciding) return std::numeric_limits<double>::infinity();
  const fit::GapFigures& gap = *seating.findings[*seating.deciding].gap;
  return gap.min - gap.asked;
}

/// How deep two parts of the machine run into each other at the limits, mm; 0 where they do not.
double overlap(const fit::Check& check, const std::array<std::string, 2>& between) {
  for (const fit::Finding& note : check.notes)
    if (note.kind == fit::Kind::host && note.between == between) return note.why.figure("worst");
  return 0.0;
}

fit::Options only(fit::Options options, const std::string& drive, const std::string& place) {
  options.drive = drive;
  options.place = place;
  options.progress = {};
  return options;
}

/// Whether an edit changes nothing but that drive.
bool of_drive(const build::Edit& edit, const std::string& drive) {
  return edit.path.size() > 1 && edit.path[0] == build::Key("drive") && edit.path[1] == build::Key(drive);
}

}  // namespace

Trials::Trials(std::string_view text, const std::filesystem::path& file, const build::Build& build,
               const fit::Check& check, const fit::Seating& before, const Options& options)
    : text_(text), file_(file), build_(build), check_(check), before_(before), options_(options) {
  // A limit beyond any sitting is none: the clock would overflow.
  const double seconds = std::clamp(options.seconds, 0.0, 1e6);
  end_ = std::chrono::steady_clock::now() +
         std::chrono::duration_cast<std::chrono::steady_clock::duration>(std::chrono::duration<double>(seconds));
  for (const fit::Seating& seating : check.seatings) learn(seating, {});
}

void add_once(std::vector<Caution>& out, Caution caution) {
  if (std::find(out.begin(), out.end(), caution) == out.end()) out.push_back(caution);
}

bool Trials::better(const fit::Seating& seating) const {
  return seating.verdict == fit::Verdict::fits ||
         (seating.verdict == fit::Verdict::marginal && before_.verdict > seating.verdict);
}

bool Trials::harms(const build::Build& changed, const fit::Check& there, const Plan& plan) const {
  constexpr double deeper = 1e-6;  // mm
  for (const fit::Finding& note : there.notes)
    if (note.kind == fit::Kind::host && note.why.figure("worst") > overlap(check_, note.between) + deeper) return true;
  if (std::all_of(plan.edits.begin(), plan.edits.end(),
                  [&](const build::Edit& edit) { return of_drive(edit, plan.drive); }))
    return false;
  if (crushes(build_, changed, check_.method)) return true;
  return std::any_of(check_.seatings.begin(), check_.seatings.end(), [&](const fit::Seating& other) {
    if (other.verdict != fit::Verdict::fits || other.drive == plan.drive || other.place == plan.place) return false;
    const fit::Check now = fit::check(changed, only(options_.fit, other.drive, other.place));
    return now.seatings.size() != 1 || now.seatings.front().verdict != fit::Verdict::fits;
  });
}

bool Trials::keeps_out(const fit::Finding& finding) const {
  if (finding.kind == fit::Kind::insertion || finding.kind == fit::Kind::access) return false;  // follow from all
  return finding.verdict == fit::Verdict::does_not_fit ||
         (finding.verdict == fit::Verdict::marginal && before_.verdict == fit::Verdict::marginal);
}

bool Trials::barred(const std::string& drive, const std::string& place, const std::vector<Choice>& choices) const {
  return std::any_of(bars_.begin(), bars_.end(), [&](const Bar& bar) {
    if (bar.drive != drive || bar.place != place) return false;
    const auto in = [](const std::vector<Choice>& list, const Choice& choice) {
      return std::find(list.begin(), list.end(), choice) != list.end();
    };
    return std::all_of(bar.with.begin(), bar.with.end(), [&](const Choice& each) { return in(choices, each); }) &&
           std::all_of(choices.begin(), choices.end(), [&](const Choice& each) {
             return in(bar.with, each) || !bears_on(build_, *each.first, bar.finding);
           });
  });
}

void Trials::learn(const fit::Seating& seating, const std::vector<Choice>& choices) {
  for (const fit::Finding& finding : seating.findings) {
    if (!keeps_out(finding)) continue;
    Bar bar{seating.drive, seating.place, {}, {}};
    bar.finding.kind = finding.kind;
    bar.finding.between = finding.between;
    for (const Choice& choice : choices)
      if (bears_on(build_, *choice.first, finding)) bar.with.push_back(choice);
    bars_.push_back(std::move(bar));
  }
}

std::optional<Plan> Trials::run_choices(const std::string& drive, const std::string& place,
                                        const std::vector<Choice>& choices) {
  if (barred(drive, place, choices)) return std::nullopt;
  std::vector<build::Edit> edits;
  for (const auto& [option, variant] : choices)
    edits.insert(edits.end(), option->variants[variant].edits.begin(), option->variants[variant].edits.end());
  if (std::chrono::steady_clock::now() > end_) stopped_ = true;
  if (stopped_) return std::nullopt;
  ++tried_;
  const auto changed = build::edited(text_, edits, file_);
  const auto* text = std::get_if<std::string>(&changed);
  // Left out where the file says it so that it cannot be edited: a table by headings whose parent has none.
  if (text == nullptr) return std::nullopt;
  const auto read = build::read_text(*text, file_);
  const auto* build = std::get_if<build::Build>(&read);
  if (build == nullptr) return std::nullopt;
  // Straight ways in are cheap, and mostly enough to say no.
  fit::Options options = only(options_.fit, drive, place);
  options.quick = true;
  fit::Check there = fit::check(*build, options);
  const auto settled = [&] { return there.seatings.size() == 1 && better(there.seatings.front()); };
  const bool unsettled = there.seatings.size() == 1 && there.seatings.front().verdict == fit::Verdict::undecided;
  if (!settled() && !unsettled) {
    if (!there.seatings.empty()) learn(there.seatings.front(), choices);
    return std::nullopt;
  }
  if (!options_.fit.quick) there = fit::check(*build, only(options_.fit, drive, place));
  if (!settled()) return std::nullopt;
  Plan plan;
  plan.edits = std::move(edits);
  plan.drive = drive;
  plan.place = place;
  plan.after = there.seatings.front();
  plan.room = room_of(plan.after);
  if (harms(*build, there, plan)) return std::nullopt;
  return plan;
}

std::optional<Plan> Trials::first_that_fits(const Make& make, std::vector<std::size_t>& chosen,
                                            std::span<const Option* const> options, std::size_t from) {
  if (from == options.size()) return make(chosen);
  const std::size_t count = options[from]->variants.size();
  const auto at = [&](std::size_t variant) {
    chosen[from] = variant;
    return first_that_fits(make, chosen, options, from + 1);
  };
  const auto fits = [](const std::optional<Plan>& plan) { return plan && plan->after.verdict == fit::Verdict::fits; };
  std::optional<Plan> best;
  std::vector<std::size_t> best_chosen;
  const auto keep = [&](std::optional<Plan> plan) {
    best = std::move(plan);
    best_chosen = chosen;
  };
  if (options[from]->monotone) {
    keep(at(count - 1));
    const bool sure = fits(best);
    std::size_t low = 0;  // the first that is as good as the last lies from here on
    std::size_t high = count - 1;
    while (best && low < high) {
      const std::size_t middle = low + (high - low) / 2;
      auto plan = at(middle);
      const bool good = sure ? fits(plan) : plan.has_value();
      if (good) keep(std::move(plan));
      (good ? high : low) = good ? middle : middle + 1;
    }
  } else {
    for (std::size_t i = 0; i < count && !fits(best); ++i)
      if (auto plan = at(i); plan && (!best || fits(plan))) keep(std::move(plan));
  }
  if (best) chosen = best_chosen;
  return best;
}

std::optional<Plan> Trials::as_it_is(const std::string& drive, const std::string& place) const {
  for (const fit::Seating& seating : check_.seatings) {
    if (seating.drive != drive || seating.place != place || !better(seating)) continue;
    Plan plan;
    plan.drive = drive;
    plan.place = place;
    plan.after = seating;
    plan.room = room_of(seating);
    return plan;
  }
  return std::nullopt;
}

void Trials::add_slower(Plan& plan) const {
  if (!plan.after.link) return;
  double before = before_.link ? links::megabytes(*before_.link) : 0.0;
  for (const build::Drive& drive : build_.drives)
    if (drive.name == plan.drive && before == 0.0) before = links::megabytes(drive.bus);
  if (links::megabytes(*plan.after.link) >= before) return;
  for (Change& change : plan.changes)
    if (change.kind == Kind::other_place || change.kind == Kind::adapter || change.kind == Kind::other_drive) {
      change.prices.push_back(Price::slower);
      return;
    }
}

std::optional<Plan> Trials::run(const std::string& drive, const std::string& place, std::span<const Change> moves,
                                std::span<const Option* const> options) {
  std::vector<std::size_t> chosen(options.size(), 0);
  const Make make = [&](const std::vector<std::size_t>& variants) {
    std::vector<Choice> choices;
    for (std::size_t i = 0; i < options.size(); ++i) choices.emplace_back(options[i], variants[i]);
    return run_choices(drive, place, choices);
  };
  std::optional<Plan> plan = options.empty() ? as_it_is(drive, place) : first_that_fits(make, chosen, options, 0);
  if (!plan) return std::nullopt;
  plan->changes.assign(moves.begin(), moves.end());
  for (const Change& move : moves)
    if (move.kind == Kind::other_drive) add_once(plan->cautions, Caution::data_moves);
  for (std::size_t i = 0; i < options.size(); ++i) {
    const Variant& variant = options[i]->variants[chosen[i]];
    Change change = options[i]->change;
    if (variant.value > 0.0) change.value = variant.value;
    change.screw = variant.screw;
    plan->changes.push_back(std::move(change));
    for (const Caution caution : options[i]->cautions) add_once(plan->cautions, caution);
  }
  add_slower(*plan);
  return plan;
}

}  // namespace baywright::plans
