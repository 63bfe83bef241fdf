#include "plans/buying.h"

#include "build/drive_list.h"
#include "build/edit.h"
#include "fit/seat.h"
#include "parts/naming.h"

#include <algorithm>
#include <array>

namespace baywright::plans {

namespace links = standards::links;
using parts::Fault;

namespace {

value::Standing standing_of(fit::Verdict verdict) {
  switch (verdict) {
    case fit::Verdict::fits:
      return value::Standing::goes;
    case fit::Verdict::marginal:
      return value::Standing::may_go;
    case fit::Verdict::undecided:
      return value::Standing::not_known;
    case fit::Verdict::does_not_fit:
      return value::Standing::goes_not;
  }
  return value::Standing::not_known;
}

/// What the drive is called in the machine: findings must not take it for one of its parts.
std::string name_in(const build::Build& build, std::string name) {
  while (std::any_of(build.parts.begin(), build.parts.end(),
                     [&](const build::HostPart& part) { return part.name == name; }))
    name += '\'';
  return name;
}

/// The machine that offers are tried in.
class Trying {
 public:
  [[nodiscard]] static std::variant<Trying, Fault> in(const Machine& machine, const Wanted& wanted) {
    const std::string file = machine.file.string();
    auto read = build::read_machine_text(machine.text, machine.file);
    if (const auto* fault = std::get_if<Fault>(&read)) return *fault;
    auto& build = std::get<build::Build>(read);
    if (build.asked)
      return Fault{file, 1, 0, '`' + build.asked->name + "` is \"?\", a question of its own",
                   "a ranking needs the length"};
    std::vector<int> places;
    std::vector<std::string> names;
    for (std::size_t i = 0; i < build.places.size(); ++i) {
      names.push_back(build.places[i].name);
      if (wanted.place.empty() || names.back() == wanted.place) places.push_back(static_cast<int>(i));
    }
    if (places.empty()) {
      const std::string meant = parts::nearest(wanted.place, names);
      return Fault{file, 0, 0, "there is no place `" + wanted.place + '`',
                   meant.empty() ? "it has " + parts::any_of(names) : "did you mean `" + meant + "`?"};
    }
    return Trying(machine, std::move(build), std::move(places), wanted);
  }

  [[nodiscard]] const build::Build& build() const { return build_; }
  /// What is wired where all of them go; empty where that differs.
  [[nodiscard]] std::vector<links::Link> only_slot() const {
    return places_.size() == 1 ? slot(places_.front()) : std::vector<links::Link>{};
  }
  [[nodiscard]] std::vector<links::Link> slot(int place) const {
    return build_.places[static_cast<std::size_t>(place)].bus;
  }

  struct Best {
    Tried tried;
    int place = 0;
  };
  /// The offer at the place that suits it best; a fault where its keys make no drive.
  [[nodiscard]] std::variant<Best, Fault> best_place(const value::Shortlist& list, std::size_t i) const {
    const value::Offer& offer = list.offers[i];
    const auto read =
        build::read_listed(build::listed_row(list.table, i), name_in(build_, offer.name), build_.measured_with);
    if (const auto* fault = std::get_if<Fault>(&read)) return *fault;
    const auto& drive = std::get<build::Drive>(read);
    std::optional<Best> best;
    for (const int place : places_) {
      fit::Seating seating = fit::check_seating(host_, build_, drive, place, {});
      if (!best || fit::suits_better(seating, best->tried.seating)) best = Best{{std::move(seating), {}, {}}, place};
    }
    const bool seats = fit::seats(drive, best->tried.seating.questions);
    const fit::Seated seated =
        seats ? fit::seat(host_, build_, drive, best->place) : fit::Seated{fit::Scene(&host_.scene)};
    best->tried.heat =
        thermal::heat_of(drive, build_.places[static_cast<std::size_t>(best->place)], seated, best->tried.seating,
                         {offer.watts, offer.warning, offer.critical}, wanted_.around);
    best->tried.plan = plan_for(list, i, best->tried.seating);
    return *std::move(best);
  }

 private:
  Trying(const Machine& machine, build::Build build, std::vector<int> places, const Wanted& wanted)
      : machine_(machine),
        build_(std::move(build)),
        host_(fit::compile(build_)),
        places_(std::move(places)),
        wanted_(wanted) {}

  /// The best plan that keeps this drive: which of the others to take is what the ranking says.
  [[nodiscard]] std::optional<Plan> plan_for(const value::Shortlist& list, std::size_t i,
                                             const fit::Seating& seating) const {
    if (!(wanted_.seconds_a_plan > 0.0) || seating.verdict == fit::Verdict::fits) return std::nullopt;
    const auto with = with_offer(machine_, list, i);
    if (!std::holds_alternative<WithOffer>(with)) return std::nullopt;
    const auto& [text, name] = std::get<WithOffer>(with);
    Options options;
    options.seconds = wanted_.seconds_a_plan;
    if (wanted_.progress) options.progress = [&](int, int) { return wanted_.progress(i, list.offers.size()); };
    options.fit.drive = name;
    options.fit.place = seating.place;
    auto found = search(text, machine_.file, options);
    auto* done = std::get_if<Search>(&found);
    if (done == nullptr) return std::nullopt;
    for (Plan& plan : done->plans)
      if (plan.after.verdict == fit::Verdict::fits && plan.drive == name) return std::move(plan);
    return std::nullopt;
  }

  Machine machine_;
  build::Build build_;
  fit::Host host_;
  std::vector<int> places_;
  const Wanted& wanted_;
};

/// Tries the offers that say what they are, and says what is wired where each goes.
std::optional<Fault> try_all(const value::Shortlist& list, const Machine& machine, const Wanted& wanted, Buying& out,
                             std::vector<std::vector<links::Link>>& slots) {
  auto there = Trying::in(machine, wanted);
  if (const auto* fault = std::get_if<Fault>(&there)) return *fault;
  const auto& trying = std::get<Trying>(there);
  out.build = trying.build().title;
  out.method = trying.build().method;
  for (std::size_t i = 0; i < list.offers.size(); ++i) {
    const value::Offer& offer = list.offers[i];
    if (offer.use.empty() || !offer.bus) {
      slots[i] = trying.only_slot();
      continue;
    }
    if (wanted.progress && !wanted.progress(i, list.offers.size())) break;
    auto best = trying.best_place(list, i);
    if (auto* fault = std::get_if<Fault>(&best)) return *std::move(fault);
    auto& found = std::get<Trying::Best>(best);
    slots[i] = trying.slot(found.place);
    out.standings[i] = standing_of(found.tried.seating.verdict);
    out.tried[i] = std::move(found.tried);
  }
  return std::nullopt;
}

}  // namespace

std::variant<Buying, Fault> buying(const value::Shortlist& list, const std::string& list_file,
                                   const std::optional<Machine>& machine, const Wanted& wanted) {
  const std::size_t count = list.offers.size();
  Buying out;
  out.file = list_file;
  out.currency = list.currency;
  out.offers = list.offers;
  out.unused = list.unused;
  out.daily = wanted.daily;
  out.now = wanted.now;
  out.by = wanted.by;
  out.standings.assign(count, value::Standing::not_known);
  out.tried.resize(count);
  std::vector<std::vector<links::Link>> slots(count, wanted.bus);
  if (machine)
    if (auto fault = try_all(list, *machine, wanted, out, slots)) return *std::move(fault);
  std::vector<value::Wishes> wishes;
  for (const auto& slot : slots)
    wishes.push_back({out.daily ? std::optional(out.daily->gigabytes) : std::nullopt, out.now, slot});
  out.appraisals = value::appraise(out.offers, wishes);
  for (std::size_t i = 0; i < count; ++i)
    if (const auto& ceiling = out.appraisals[i].ceiling; ceiling && !ceiling->link)
      out.standings[i] = value::Standing::goes_not;
  if (!out.by.weights.empty()) out.scores = value::scores(out.offers, out.appraisals, out.by.weights);
  out.unbeaten = value::unbeaten(out.offers, out.appraisals, out.standings);
  out.order = value::ranked(out.offers, out.appraisals, out.standings, out.by);
  out.choice = value::choice(out.offers, out.appraisals, out.standings, out.order, machine.has_value());
  return out;
}

std::variant<WithOffer, Fault> with_offer(const Machine& machine, const value::Shortlist& list, std::size_t i) {
  const auto read = build::read_machine_text(machine.text, machine.file);
  if (const auto* fault = std::get_if<Fault>(&read)) return *fault;
  const auto& build = std::get<build::Build>(read);
  const std::string name = name_in(build, list.offers[i].name);
  const auto listed = build::listed_row(list.table, i);
  std::vector<build::Edit> edits;
  if (std::any_of(build.drives.begin(), build.drives.end(),
                  [&](const build::Drive& drive) { return drive.name == name; }))
    edits.push_back({build::Edit::What::remove, {std::string("drive"), name}});
  edits.push_back(
      {build::Edit::What::append, {std::string("drive")}, "name = " + build::quoted(name) + '\n' + listed.keys});
  auto text = build::edited(machine.text, edits, machine.file);
  if (auto* fault = std::get_if<Fault>(&text)) return *std::move(fault);
  return WithOffer{std::get<std::string>(std::move(text)), name};
}

}  // namespace baywright::plans
