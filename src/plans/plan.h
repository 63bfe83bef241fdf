#pragma once
// What would make a drive fit: changes to a build, each of them checked again by the code that found the fault.
#include "build/edit.h"
#include "fit/check.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace baywright::plans {

/// The closed list of changes.
enum class Kind {
  other_heatsink,   // another one of the library
  lower_heatsink,   // the same foot, at most so high
  no_heatsink,
  other_pad,        // another thickness, or pressed more within its range
  single_sided,     // a card of the same length with chips on one side only
  other_standoff,   // another hole, or a stand-off moved to another size
  spacer,           // under a removable part or a stand-off: the next length that is sold
  other_place,
  adapter,          // or an extender, a carrier
  turned,           // the drive or an angled plug
  opening,          // metal filed or cut away
  other_drive,      // another of the build's own drives
};
[[nodiscard]] std::string_view word(Kind kind);  // "other heatsink", as in JSON

/// What it costs the user besides money.
enum class Price { warmer, slower, warranty, metal_work, screws, less_capacity, undone_hardly };

struct Change {
  Kind kind = Kind::other_heatsink;
  std::string what;   // the part, drive or place that is changed, as people call it
  std::string to;     // what it becomes: a name of the library, a place; empty where it is a length
  double from = 0.0;  // mm; 0 where it is no length
  double value = 0.0;
  std::vector<Price> prices;
  bool reversible = true;
};

struct Plan {
  std::vector<Change> changes;
  std::vector<build::Edit> edits;  // that make them in the file, in order
  std::string drive;               // which drive at which place it is about afterwards
  std::string place;
  fit::Seating after;
  double room = 0.0;  // mm: least gap less what is asked, of the finding that decides; may be below 0 where marginal
};

/// Where nothing helps.
struct Contradiction {
  std::string first;   // the two parts that cannot share the space
  std::string second;
  std::string dimension;  // the smallest change of any one length that would do; empty: none would
  double from = 0.0;      // mm
  double value = 0.0;
};

struct Search {
  std::string drive;  // the seating that it started from
  std::string place;
  fit::Seating before;
  std::vector<Plan> plans;  // best first, none of them worse than another in every way
  std::optional<Contradiction> contradiction;  // only where no plan fits
  bool whole = true;        // false: stopped before all was tried
  int tried = 0;
};

struct Options {
  fit::Options fit;  // its `drive` and `place` name the seating; empty: the worst that the build asks about
  int most_changes = 2;
  double seconds = 10.0;                         // stops there with what it has
  std::function<bool(int done, int of)> progress{};  // false: stop
};

/// `text` is the build file's, `file` what it is called. A fault where it cannot be read.
[[nodiscard]] std::variant<Search, parts::Fault> search(std::string_view text, const std::filesystem::path& file,
                                                        const Options& options);

}  // namespace baywright::plans
