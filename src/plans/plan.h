#pragma once
// What would make a drive fit: changes to a build, each of them checked again by the code that found the fault.
#include "build/edit.h"
#include "fit/check.h"

#include <array>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace baywright::plans {

/// The closed list of changes.
enum class Kind {
  other_heatsink,  // another one of the library
  lower_heatsink,  // the same foot, at most so high
  no_heatsink,
  other_pad,       // another thickness, or pressed more within its range
  single_sided,    // a card of the same length with chips on one side only
  other_standoff,  // another hole, or a stand-off moved to another size
  spacer,          // under a removable part or a drive: the next length that is sold
  other_screw,     // the next length that is sold
  other_place,
  adapter,      // or an extender, a carrier
  turned,       // the drive, or an angled plug
  opening,      // metal filed or cut away
  other_drive,  // another of the build's own drives
};
[[nodiscard]] std::string_view word(Kind kind);  // "other heatsink", as in JSON

/// What it costs the user besides money.
enum class Price { warmer, slower, warranty, metal_work, screws, less_capacity, undone_hardly };
[[nodiscard]] std::string_view word(Price price);  // "less capacity", as in JSON

/// What the file does not describe and the user has to see to.
enum class Caution {
  screws_longer,     // how a raised part is held, whose screws the file does not name
  no_screw_suits,    // how it is held where no length that is sold, or at hand, goes in far enough and no deeper
  opening_moves,     // a raised board's connectors in the machine's rear opening
  brackets_move,     // cards in a raised board
  hole_there,        // whether the board has a hole for that stand-off
  sheet_only,        // that nothing live is in what is cut, and how far copper is
  stands_out,        // of the opening, beyond the sheet: Change::out
  chips_differ,      // a thin pad over chips of different heights
  sizes_of_adapter,  // which are common practice, not those of the one that is bought
  money_unknown,     // what has to be bought
  data_moves,        // what is on the drive that is not taken
};
/// Whether it stands for a limit that nothing checks: the plan may not hold.
[[nodiscard]] bool unchecked(Caution caution);
[[nodiscard]] std::string_view word(Caution caution);  // "hole there", as in JSON

struct Change {
  Kind kind = Kind::other_heatsink;
  std::string what{};  // the part, drive or place that is changed, as people call it
  std::string to{};    // what it becomes: a name of the library, a place; empty where it is a length
  double from = 0.0;   // mm; 0 where it is no length
  double value = 0.0;
  double pressed = 0.0;         // other_pad: by how much, as a share of its free thickness
  double screw = 0.0;           // mm: the length that goes with a spacer; 0: as it is
  double spacer = 0.0;          // mm: of a spacer under a part, whose distance `from` and `value` are
  double spacer_now = 0.0;      // mm: in place of such a one; 0: none is there
  std::string through{};        // opening: what stands out of the sheet then; empty: nothing
  double out = 0.0;             // mm: how far at nominal, 0 or more
  double out_most = 0.0;        // and at the limits; infinite where a side of them is open
  std::array<double, 4> cut{};  // opening: low x, low y, high x, high y in the part's coordinates, mm
  std::vector<Price> prices{};
  bool reversible = true;
};

struct Plan {
  std::vector<Change> changes;
  std::vector<build::Edit> edits;  // that make them in the file, in order
  std::string drive;               // which drive at which place it is about afterwards
  std::string place;
  fit::Seating after;
  double room = 0.0;  // mm: least gap less what is asked, of the finding that decides; may be below 0 where marginal,
                      // and is infinite where nothing is near
  std::vector<Caution> cautions;
};

/// Where nothing helps.
struct Contradiction {
  std::string first;  // the two parts that cannot share the space
  std::string second;
  std::string dimension;  // the smallest change of any one length that would do; empty: none would
  double from = 0.0;      // mm
  double value = 0.0;
};

struct Search {
  std::string drive;  // the seating that it started from
  std::string place;
  fit::Seating before;
  std::string title;                                    // of the build
  tolerance::Method method = tolerance::Method::worst;  // how limits were added up
  fit::Sampling sampling;                               // where they were sampled
  double clearance = 0.0;                               // asked for
  std::vector<Plan> plans;  // best first, none of them worse than another in every way: those that fit, else marginal
  std::optional<Contradiction> contradiction;  // only where no plan fits
  bool whole = true;                           // false: stopped before all was tried
  int tried = 0;
};

struct Options {
  fit::Options fit;  // its `drive` and `place` name the seating; empty: the worst that the build asks about
  int most_changes = 2;
  double seconds = 10.0;                             // stops there with what it has
  std::function<bool(int done, int of)> progress{};  // false: stop
};

/// Changes and combinations of them, up to `most_changes` (1 to 3). What fits with one change is not shown with two; of
/// plans with the same changes only those that change least. `text` is the build file's, `file` what it is called. A
/// fault where it cannot be read.
[[nodiscard]] std::variant<Search, parts::Fault> search(std::string_view text, const std::filesystem::path& file,
                                                        const Options& options);

}  // namespace baywright::plans
