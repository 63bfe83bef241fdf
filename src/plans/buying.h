#pragma once
// The drives of a shortlist side by side: what each is worth, how it does in a machine, and what would make it fit.
#include "plans/plan.h"
#include "thermal/heat.h"
#include "value/ranking.h"
#include "value/shortlist.h"
#include "value/usage.h"

#include <cstddef>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace baywright::plans {

/// A drive at the place that suits it best.
struct Tried {
  fit::Seating seating;
  thermal::Heat heat;
  std::optional<Plan> plan;  // the best that makes it fit there, with this drive; none: it fits, nothing helps, or
                             // plans were not asked for
};

struct Buying {
  std::string file;  // the shortlist's
  std::string currency;
  std::vector<value::Offer> offers;
  std::vector<value::Appraisal> appraisals;  // one an offer
  std::vector<value::Standing> standings;    // likewise
  std::vector<std::optional<Tried>> tried;   // likewise; none: there is no build, or the offer names no `use` and `bus`
  std::vector<std::optional<double>> scores;  // likewise; empty without weights
  std::vector<bool> unbeaten;                 // one an offer
  std::vector<std::size_t> order;             // best first
  value::Choice choice;                       // the offer to take; none where none goes
  value::Order by;
  std::optional<value::Daily> daily;
  const value::Present* now = nullptr;
  std::string build;  // title; empty: none was given
  tolerance::Method method = tolerance::Method::worst;
  std::vector<std::string> unused;  // columns that say nothing here
};

/// A build file: what it says, and what messages call it.
struct Machine {
  std::string_view text;
  std::filesystem::path file;
};

struct Wanted {
  std::optional<value::Daily> daily;
  const value::Present* now = nullptr;  // null: not said
  value::Order by;
  std::vector<standards::links::Link> bus;  // wired where the drives shall go, where there is no machine
  std::string place;                        // of the machine; empty: any
  thermal::Surroundings around;
  double seconds_a_plan = 0.0;  // for each drive that does not fit; 0: no plans are looked for
  std::function<bool(std::size_t done, std::size_t of)> progress{};  // false: stop; what was not tried has no `tried`
};

/// Faults: those of the build file, a place that it does not have, an offer whose keys make no drive.
[[nodiscard]] std::variant<Buying, parts::Fault> buying(const value::Shortlist& list, const std::string& list_file,
                                                        const std::optional<Machine>& machine, const Wanted& wanted);

/// The build file's text with offer `i` as a drive of its own, which replaces a drive of the same name. `name`: what it
/// is called there, the offer's name unless a part has it. Wants an offer that names `use` and `bus`.
struct WithOffer {
  std::string text;
  std::string name;
};
[[nodiscard]] std::variant<WithOffer, parts::Fault> with_offer(const Machine& machine, const value::Shortlist& list,
                                                               std::size_t i);

}  // namespace baywright::plans
