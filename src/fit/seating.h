#pragma once
// What a check says: seatings with their findings and verdicts.
#include "fit/finding.h"
#include "geometry/sweep.h"
#include "standards/links.h"
#include "tolerance/proportion.h"
#include "tolerance/stack.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace baywright::fit {

/// Gaps that are sure to be enough are reported up to this far beyond what is asked, mm: near enough to interest, far
/// enough to name what is over the drive.
inline constexpr double shown_beyond_mm = 6.0;

struct Seating {
  std::string drive;
  std::string place;
  Verdict verdict = Verdict::undecided;
  std::optional<double> share;  // of builds that fit; none where an open side that matters leaves it unknown
  std::optional<tolerance::Interval> sure;  // sampled: the share's 95 % interval; both ends 1 or 0 by the worst case
  Questions questions;
  std::optional<standards::links::Link> link;
  std::vector<Finding> findings;  // worst first
  std::vector<geometry::Movement>
      way_out;                          // the drive's, from its seat until it is clear; empty: none was found or asked
  std::vector<std::string> out_first;   // parts of the machine that come out before, in order
  std::optional<std::size_t> deciding;  // index of the gap that decides, in findings: least room beyond what is asked
};

/// How many builds are drawn, and from which seed: the same seed draws the same builds.
struct Sampling {
  std::int64_t builds = 100'000;  // 1 .. most_builds
  std::uint64_t seed = 1;
};
inline constexpr std::int64_t most_builds = 100'000'000;
/// With fewer builds the 0.135 % point is missed more than once in forty tries; then limits stay worst case.
inline constexpr std::int64_t fewest_for_limits = 2'732;

struct Check {
  std::string title;
  std::string file;
  tolerance::Method method = tolerance::Method::worst;
  Sampling sampling;  // where `method` samples
  double clearance = 0.0;
  std::vector<Seating> seatings;  // by drive, then place, as the file lists them
  std::vector<Finding> notes;     // of the build as a whole
  bool drills = false;            // somebody drills holes for it
};

/// One drive at its place while the others are at theirs.
struct Assigned {
  std::string drive;
  std::string place;
  Verdict verdict = Verdict::fits;             // beside the others
  std::optional<standards::links::Link> link;  // what the two settle on once the others are in
};

/// What keeps a drive from a place where it fits alone.
struct InTheWay {
  std::string place;
  std::string drive;               // that is in its way; empty: none alone is
  std::string at;                  // where that one is
  std::optional<Finding> between;  // of the two, or of what they wear; none: the place is taken, or its link
};

/// Why a drive found no place.
struct Left {
  std::string drive;
  std::vector<std::string> fits_alone;      // places where it would fit if it were the only one; empty: nowhere
  std::vector<std::string> with_adapter;    // places where it would go with an adapter of the library
  std::vector<std::string> marginal_alone;  // places where some builds would fit, where those do not count
  std::vector<InTheWay> in_the_way;         // one a place of `fits_alone`
};

/// What a used place takes from another one.
struct Cost {
  std::string place;
  std::string with;
  std::vector<standards::links::Link> leaves;  // empty: nothing
};

/// Several drives at once: one place for each, in which all fit beside each other.
struct Together {
  std::vector<Assigned> assigned;  // as the file lists the drives
  std::vector<Left> left;
  std::vector<Cost> costs;
  bool whole = true;  // false: the search was cut short, and a better assignment may exist
};

}  // namespace baywright::fit
