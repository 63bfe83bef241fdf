#pragma once
// Every drive at every place: seatings, their findings, their verdicts.
#include "fit/host.h"
#include "fit/seating.h"

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace baywright::fit {

struct Options {
  std::optional<double> clearance;  // replaces the build's
  std::optional<tolerance::Method> method;
  std::string drive;  // empty: all
  std::string place;
  bool quick = false;  // ways in are tried straight only, of a card at the usual and the least angle: what those do
                       // not settle is undecided
  Sampling sampling;
  int threads = 0;                                                     // that draw builds; 0: one for each core
  std::function<void(std::int64_t done, std::int64_t of)> progress{};  // of one seating's builds; one call at a time
};

[[nodiscard]] Check check(const build::Build& build, const Options& options);

/// One seating. `host` is compiled from `build` at nominal values.
[[nodiscard]] Seating check_seating(const Host& host, const build::Build& build, const build::Drive& drive, int slot,
                                    const Options& options);

/// Whether a drive is better off at `a` than at `b`: by its verdict, then by its link.
[[nodiscard]] bool suits_better(const Seating& a, const Seating& b);

/// Indices of the seatings of each drive at the place that suits it best, in the order of their drives.
[[nodiscard]] std::vector<std::size_t> best_places(const Check& check);

/// Index of the seating that most needs looking at. Each drive counts at the place that suits it best: nobody means to
/// put it where it is worst off. Of these the one with the worst verdict, among equals one with a gap that decides,
/// then the least room, then the first. Wants at least one seating.
[[nodiscard]] std::size_t worst(const Check& check);

}  // namespace baywright::fit
