#pragma once
// Every change that can be made to one seating of a build: what `search` combines. Inside the room.
#include "plans/plan.h"

#include <filesystem>
#include <string>
#include <vector>

namespace baywright::plans {

/// One way to carry a change out.
struct Variant {
  std::vector<build::Edit> edits{};
  double value = 0.0;  // mm, as Change::value
  double screw = 0.0;  // mm, as Change::screw
};

/// A change. Its variants are tried in order, and the first that fits counts.
struct Option {
  Change change{};
  std::vector<Variant> variants;   // at least one
  bool monotone = false;           // where one variant fits, all behind it do
  std::vector<std::string> holds;  // what it takes hold of; two changes of a plan share nothing
  std::vector<fit::Kind> mends;    // findings where the drive sits that it can bear on; empty: any
  std::string part;                // a part of the machine that it changes alone: gaps to it, and to what hangs on it
  std::string key;                 // changes with one key differ only in how much they change
  double amount = 0.0;             // how much, against others with this key
  std::vector<Caution> cautions;
};

/// One drive at one place of a build.
struct Spot {
  const build::Build& build;
  const build::Drive& drive;
  int place;

  [[nodiscard]] const build::Place& at() const { return build.places[static_cast<std::size_t>(place)]; }
};

/// The heatsinks that a build of that file may name; none where no drive of it wears one.
[[nodiscard]] std::vector<parts::Part> heatsinks_of_library(const build::Build& build,
                                                            const std::filesystem::path& file);

/// All of them; of one key those that change less come first. `now` is the spot's seating.
[[nodiscard]] std::vector<Option> options(const Spot& spot, const fit::Seating& now,
                                          const std::vector<parts::Part>& heatsinks);

// By what they change; `options` is these one after the other.
void add_heatsinks(std::vector<Option>& out, const Spot& spot, const std::vector<parts::Part>& heatsinks);
void add_pads(std::vector<Option>& out, const Spot& spot);
void add_cards(std::vector<Option>& out, const Spot& spot);
void add_adapters(std::vector<Option>& out, const Spot& spot);
void add_raised_parts(std::vector<Option>& out, const Spot& spot);
void add_fixings(std::vector<Option>& out, const Spot& spot);
void add_standoffs(std::vector<Option>& out, const Spot& spot);
void add_turns(std::vector<Option>& out, const Spot& spot);
void add_openings(std::vector<Option>& out, const Spot& spot, const fit::Seating& now);

/// A length with its limits as a file says it; limits of 0 too, since a bare figure would get those of the tool.
[[nodiscard]] std::string limited(const tolerance::Dimension& dimension);
/// The same with its source, if it has one: { length = "9.6 ±0.2", source = "caliper" }.
[[nodiscard]] std::string sourced(const tolerance::Dimension& dimension);

/// Whether a change can bear on a finding about where the drive sits.
[[nodiscard]] bool bears_on(const build::Build& build, const Option& option, const fit::Finding& finding);

/// "slot", "bay" or "panel": the table that describes a place.
[[nodiscard]] std::string table_of(const build::Place& place);

}  // namespace baywright::plans
