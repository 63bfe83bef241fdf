#include "cli/shortlist.h"

#include "build/edit.h"
#include "output/rank_text.h"
#include "parts/naming.h"

#include <iostream>

namespace baywright::cli {

namespace {

/// Plans are looked for no longer than this for each drive that does not fit.
constexpr double seconds_a_plan = 3.0;

std::nullopt_t stop(const std::string& what) {
  std::cerr << "baywright: " << what << '\n';
  return std::nullopt;
}

std::nullopt_t stop(const parts::Fault& fault) {
  std::cerr << fault.text() << '\n';
  return std::nullopt;
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

}  // namespace

std::optional<plans::Wanted> wanted_of(const Arguments& arguments) {
  plans::Wanted out;
  out.place = arguments.place;
  out.around = surroundings(arguments);
  out.seconds_a_plan = seconds_a_plan;
  if (!arguments.daily.empty()) {
    const auto daily = value::read_daily(arguments.daily);
    if (const auto* why = std::get_if<std::string>(&daily)) return stop("--daily " + *why);
    out.daily = std::get<value::Daily>(daily);
  }
  if (!arguments.now.empty()) {
    out.now = value::present(arguments.now);
    std::vector<std::string> names;
    for (const value::Present& each : value::presents()) names.emplace_back(each.name);
    if (out.now == nullptr) return stop("--now `" + arguments.now + "` is not known; write " + parts::any_of(names));
  }
  if (!arguments.sort.empty()) {
    const auto column = value::read_column(arguments.sort);
    if (const auto* why = std::get_if<std::string>(&column)) return stop("--sort: " + *why);
    out.by.column = std::get<value::Column>(column);
    if (out.by.column == value::Column::years && !out.daily)
      return stop("--sort years wants --daily: how long a drive lasts depends on how much is written");
  }
  if (!arguments.weigh.empty()) {
    auto weights = value::read_weights(arguments.weigh);
    if (const auto* why = std::get_if<std::string>(&weights)) return stop("--weigh: " + *why);
    out.by.weights = std::get<std::vector<value::Weight>>(std::move(weights));
  }
  if (!arguments.bus.empty()) {
    const auto link = standards::links::read_link(arguments.bus);
    if (const auto* why = std::get_if<std::string>(&link)) return stop("--bus `" + arguments.bus + "`: " + *why);
    out.bus = {std::get<standards::links::Link>(link)};
  }
  return out;
}

std::optional<Ranked> rank_shortlist(const Arguments& arguments, const std::string& list_file,
                                     const std::string& build_file) {
  if (list_file.ends_with(".build.toml"))
    return stop(list_file + ": this looks like a build file, and a list of drives is wanted here; the build goes " +
                (arguments.shortlist.empty() ? "behind --build" : "before --shortlist"));
  if (build_file.ends_with(".csv"))
    return stop(build_file + ": this looks like a list of drives, and a build file is wanted here; the list goes " +
                (arguments.shortlist.empty() ? "first" : "behind --shortlist"));
  const auto asked = wanted_of(arguments);
  if (!asked) return std::nullopt;
  auto list = value::read_shortlist(list_file);
  if (const auto* fault = std::get_if<parts::Fault>(&list)) return stop(*fault);
  std::optional<plans::Machine> machine;
  std::variant<std::string, parts::Fault> text;
  if (!build_file.empty()) {
    text = build::file_text(build_file);
    if (const auto* fault = std::get_if<parts::Fault>(&text)) return stop(*fault);
    machine = plans::Machine{std::get<std::string>(text), build_file};
  }
  auto found = plans::buying(std::get<value::Shortlist>(list), list_file, machine, *asked);
  if (const auto* fault = std::get_if<parts::Fault>(&found)) return stop(*fault);
  return Ranked{std::get<value::Shortlist>(std::move(list)), std::get<plans::Buying>(std::move(found))};
}

void print_unused(const plans::Buying& rank) {
  if (!rank.unused.empty()) std::cerr << rank.file << ": " << output::unused_columns(rank) << '\n';
}

}  // namespace baywright::cli
