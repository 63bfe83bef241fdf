#pragma once
// What is worth measuring: of a marginal seating the few lengths that, known closely enough, settle it; of any
// seating the lengths that matter, in the order in which they do.
#include "fit/check.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace baywright::plans {

/// Nobody reads closer than this with a caliper in a machine, mm: common practice, no source.
inline constexpr double finest_mm = 0.05;

/// No card's parts are lower over all, mm: common practice, no source.
inline constexpr double lowest_parts_mm = 0.5;

/// A length to be read again, or for the first time.
struct Reading {
  tolerance::Dimension dimension;  // as it is known now
  double to = 0.0;                 // mm, to hundredths: ± to which it has to be known
  // Read at `fits` or beyond, the seating is sure to fit; at `fails` or beyond on the other side, sure not to. Between
  // the two it stays marginal. None where that depends on another reading too, or where what somebody published would
  // have to lie outside its own limits; the parts of a card may be lower than a standard allows, to `lowest_parts_mm`.
  std::optional<double> fits{};
  std::optional<double> fails{};
  bool more_is_room = true;  // the larger it reads the better
  std::string_view key{};    // of the build file, where it is written down and its name does not say so; else empty
};

struct Settling {
  std::vector<Reading> readings;  // empty: measuring cannot settle it
  fit::Verdict then =
      fit::Verdict::marginal;  // if they read as they are now; marginal: not known, their nominal is a limit
  std::string first;           // the two parts of the gap that is nearest to the edge
  std::string second;
  double room = 0.0;    // mm: how far that gap at nominal is from what is asked, >= 0
  double remain = 0.0;  // mm: how far it varies toward that with all that can be read known to `finest_mm`
};

/// One length, or two where one does not do, or more, greatest share of the variation first, with how closely they have
/// to be known so that the gaps that are marginal no longer reach from one side of what is asked to the other, all
/// other lengths where they are. Nothing makes that sure before it is read: a reading may land on the edge. None where
/// the seating is not marginal, or where something else than a gap with a chain makes it so.
[[nodiscard]] std::optional<Settling> what_settles(const fit::Seating& seating, tolerance::Method method);

/// One for each seating of the check.
[[nodiscard]] std::vector<std::optional<Settling>> what_settles(const fit::Check& check);

/// The lengths that a caliper reads closer than they are known and a build file can hold, behind the gap that decides
/// and those that are not sure: first what settles a marginal seating, then by their share of the variation of the gap
/// that has least room, and so on. `to`: what settles it, else as close as is usual. `fits` and `fails`: if that one
/// alone is read.
[[nodiscard]] std::vector<Reading> worth_measuring(const fit::Seating& seating, tolerance::Method method);

}  // namespace baywright::plans
