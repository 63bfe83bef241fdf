#pragma once
// A shortlist put in order, side by side with what each drive does in the machine.
#include "fit/seating.h"
#include "thermal/heat.h"
#include "value/ranking.h"
#include "value/usage.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace baywright::output {

/// A drive at the place that suits it best.
struct Tried {
  fit::Seating seating;
  thermal::Heat heat;
};

struct Rank {
  std::string file;
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

/// The first line says which drive, and why.
[[nodiscard]] std::string rank_text(const Rank& rank);

/// One sentence about columns that say nothing here; empty where there are none.
[[nodiscard]] std::string unused_columns(const Rank& rank);

}  // namespace baywright::output
