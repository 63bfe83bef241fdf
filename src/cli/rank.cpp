// The buy: what each drive of a shortlist is worth, and how it does in the machine.
#include "build/drive_list.h"
#include "cli/commands.h"
#include "cli/session.h"
#include "fit/seat.h"
#include "output/rank_rows.h"
#include "output/rank_text.h"
#include "parts/naming.h"
#include "value/shortlist.h"

#include <algorithm>
#include <iostream>
#include <set>

namespace baywright::cli {

namespace links = standards::links;

namespace {

std::optional<output::Rank> stop(const std::string& what) {
  std::cerr << "baywright: " << what << '\n';
  return std::nullopt;
}

std::optional<output::Rank> stop(const parts::Fault& fault) {
  std::cerr << fault.text() << '\n';
  return std::nullopt;
}

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

/// Whether `a` is the better place of the two: by its verdict, then by its link.
bool better(const fit::Seating& a, const fit::Seating& b) {
  if (a.verdict != b.verdict) return a.verdict < b.verdict;
  const auto rate = [](const fit::Seating& seating) { return seating.link ? links::megabytes(*seating.link) : 0.0; };
  return rate(a) > rate(b);
}

/// The machine that drives are tried in.
struct Machine {
  build::Build build;
  fit::Host host;
  std::vector<int> places;  // that are asked about
};

std::variant<Machine, parts::Fault> machine_of(const Arguments& arguments) {
  auto read = build::read_machine(arguments.build_file);
  if (const auto* fault = std::get_if<parts::Fault>(&read)) return *fault;
  auto& build = std::get<build::Build>(read);
  if (build.asked)
    return parts::Fault{arguments.build_file, 1, 0, '`' + build.asked->name + "` is \"?\", a question of its own",
                        "a ranking needs the length"};
  std::vector<int> places;
  std::vector<std::string> names;
  for (std::size_t i = 0; i < build.places.size(); ++i) {
    names.push_back(build.places[i].name);
    if (arguments.place.empty() || names.back() == arguments.place) places.push_back(static_cast<int>(i));
  }
  if (places.empty()) {
    const std::string meant = parts::nearest(arguments.place, names);
    return parts::Fault{arguments.build_file, 0, 0, "there is no place `" + arguments.place + '`',
                        meant.empty() ? "it has " + parts::any_of(names) : "did you mean `" + meant + "`?"};
  }
  fit::Host host = fit::compile(build);
  return Machine{std::move(build), std::move(host), std::move(places)};
}

/// What the drive is called in the machine: findings must not take it for one of its parts.
std::string name_in(const build::Build& build, std::string name) {
  while (std::any_of(build.parts.begin(), build.parts.end(),
                     [&](const build::HostPart& part) { return part.name == name; }))
    name += '\'';
  return name;
}

/// The drive at the place that suits it best, and that place; a fault where its keys make no drive.
struct Best {
  output::Tried tried;
  int place = 0;
};
std::variant<Best, parts::Fault> best_place(const Machine& machine, const value::Shortlist& list, std::size_t i,
                                            const fit::Options& options, const thermal::Surroundings& around) {
  const value::Offer& offer = list.offers[i];
  const auto read = build::read_listed(build::listed_row(list.table, i), name_in(machine.build, offer.name),
                                       machine.build.measured_with);
  if (const auto* fault = std::get_if<parts::Fault>(&read)) return *fault;
  const auto& drive = std::get<build::Drive>(read);
  std::optional<Best> best;
  for (const int place : machine.places) {
    fit::Seating seating = fit::check_seating(machine.host, machine.build, drive, place, options);
    if (!best || better(seating, best->tried.seating)) best = Best{{std::move(seating), {}}, place};
  }
  const bool seats = fit::seats(drive, best->tried.seating.questions);
  const fit::Seated seated =
      seats ? fit::seat(machine.host, machine.build, drive, best->place) : fit::Seated{fit::Scene(&machine.host.scene)};
  best->tried.heat = thermal::heat_of(drive, machine.build.places[static_cast<std::size_t>(best->place)], seated,
                                      best->tried.seating, {offer.watts, offer.warning, offer.critical}, around);
  return *std::move(best);
}

thermal::Surroundings surroundings(const Arguments& arguments) {
  thermal::Surroundings out;
  if (arguments.air) {
    out.air = {*arguments.air + thermal::ice_point, *arguments.air + thermal::ice_point};
    out.air_stated = true;
  }
  out.speed = arguments.air_speed.value_or(0.0);
  return out;
}

/// What was asked for besides the list, or none, with what is wrong printed.
std::optional<output::Rank> asked(const Arguments& arguments) {
  output::Rank rank;
  rank.file = arguments.file;
  if (!arguments.daily.empty()) {
    const auto daily = value::read_daily(arguments.daily);
    if (const auto* why = std::get_if<std::string>(&daily)) return stop("--daily " + *why);
    rank.daily = std::get<value::Daily>(daily);
  }
  if (!arguments.now.empty()) {
    rank.now = value::present(arguments.now);
    std::vector<std::string> names;
    for (const value::Present& each : value::presents()) names.emplace_back(each.name);
    if (rank.now == nullptr) return stop("--now `" + arguments.now + "` is not known; write " + parts::any_of(names));
  }
  if (!arguments.sort.empty()) {
    const auto column = value::read_column(arguments.sort);
    if (const auto* why = std::get_if<std::string>(&column)) return stop("--sort: " + *why);
    rank.by.column = std::get<value::Column>(column);
    if (rank.by.column == value::Column::years && !rank.daily)
      return stop("--sort years wants --daily: how long a drive lasts depends on how much is written");
  }
  if (!arguments.weigh.empty()) {
    auto weights = value::read_weights(arguments.weigh);
    if (const auto* why = std::get_if<std::string>(&weights)) return stop("--weigh: " + *why);
    rank.by.weights = std::get<std::vector<value::Weight>>(std::move(weights));
  }
  return rank;
}

/// Tries the offers that say what they are, and says what is wired where each goes.
std::optional<parts::Fault> try_all(const Arguments& arguments, const value::Shortlist& list, output::Rank& rank,
                                    std::vector<std::vector<links::Link>>& slots) {
  auto read = machine_of(arguments);
  if (const auto* fault = std::get_if<parts::Fault>(&read)) return *fault;
  const auto& machine = std::get<Machine>(read);
  rank.build = machine.build.title;
  rank.method = machine.build.method;
  fit::Options options;
  const thermal::Surroundings around = surroundings(arguments);
  for (std::size_t i = 0; i < list.offers.size(); ++i) {
    const value::Offer& offer = list.offers[i];
    if (offer.use.empty() || !offer.bus) {
      if (machine.places.size() == 1)
        slots[i] = machine.build.places[static_cast<std::size_t>(machine.places.front())].bus;
      continue;
    }
    auto best = best_place(machine, list, i, options, around);
    if (auto* fault = std::get_if<parts::Fault>(&best)) return *std::move(fault);
    auto& found = std::get<Best>(best);
    slots[i] = machine.build.places[static_cast<std::size_t>(found.place)].bus;
    rank.standings[i] = standing_of(found.tried.seating.verdict);
    rank.tried[i] = std::move(found.tried);
  }
  return std::nullopt;
}

std::optional<output::Rank> ranked(const Arguments& arguments) {
  auto rank = asked(arguments);
  if (!rank) return std::nullopt;
  auto read = value::read_shortlist(arguments.file);
  if (const auto* fault = std::get_if<parts::Fault>(&read)) return stop(*fault);
  auto& list = std::get<value::Shortlist>(read);
  const std::size_t count = list.offers.size();
  rank->standings.assign(count, value::Standing::not_known);
  rank->tried.resize(count);
  std::vector<std::vector<links::Link>> slots(count);
  if (!arguments.bus.empty()) {
    const auto link = links::read_link(arguments.bus);
    if (const auto* why = std::get_if<std::string>(&link)) return stop("--bus `" + arguments.bus + "`: " + *why);
    slots.assign(count, {std::get<links::Link>(link)});
  }
  if (!arguments.build_file.empty())
    if (const auto fault = try_all(arguments, list, *rank, slots)) return stop(*fault);
  std::vector<value::Wishes> wishes;
  for (const auto& slot : slots)
    wishes.push_back({rank->daily ? std::optional(rank->daily->gigabytes) : std::nullopt, rank->now, slot});
  rank->appraisals = value::appraise(list.offers, wishes);
  for (std::size_t i = 0; i < count; ++i)
    if (const auto& ceiling = rank->appraisals[i].ceiling; ceiling && !ceiling->link)
      rank->standings[i] = value::Standing::goes_not;
  if (!rank->by.weights.empty()) rank->scores = value::scores(list.offers, rank->appraisals, rank->by.weights);
  rank->unbeaten = value::unbeaten(list.offers, rank->appraisals, rank->standings);
  rank->order = value::ranked(list.offers, rank->appraisals, rank->standings, rank->by);
  rank->choice =
      value::choice(list.offers, rank->appraisals, rank->standings, rank->order, !arguments.build_file.empty());
  rank->currency = list.currency;
  rank->unused = std::move(list.unused);
  rank->offers = std::move(list.offers);
  return rank;
}

}  // namespace

int rank_command(const Arguments& arguments) {
  const auto rank = ranked(arguments);
  if (!rank) return input_at_fault;
  const std::string text = arguments.json  ? output::rank_json(*rank)
                           : arguments.csv ? output::rank_csv(*rank)
                                           : output::rank_text(*rank);
  // Rows for other programs have no place for it.
  if ((arguments.json || arguments.csv) && !rank->unused.empty())
    std::cerr << rank->file << ": " << output::unused_columns(*rank) << '\n';
  if (!print(text)) return could_not_finish;
  return rank->choice.taken ? all_fit : not_all_fit;
}

}  // namespace baywright::cli
