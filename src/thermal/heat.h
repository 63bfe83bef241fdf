#pragma once
// A drive seated at a place, as its heat sees it: what the rooms above made of it, in the terms of this one.
#include "build/build.h"
#include "fit/seated.h"
#include "fit/seating.h"
#include "thermal/budget.h"
#include "thermal/card.h"
#include "thermal/pad.h"

#include <optional>

namespace baywright::thermal {

/// What a drive's sheet or its own log says of its heat. Missing stays missing.
struct Stated {
  std::optional<double> watts;     // while it writes
  std::optional<double> warning;   // K, WCTEMP: overheating begins, and with it slowing down
  std::optional<double> critical;  // K, CCTEMP
};

struct Surroundings {
  Interval air{298.15, 318.15};  // K, in the machine: common practice, no source
  bool air_stated = false;
  double speed = 0.0;  // m/s of air along the card; 0: no stream
};

enum class Outlook {
  stays_below,       // the whole interval lies below the limit
  may_throttle,      // the limit lies within it
  likely_throttles,  // the whole interval lies above
  no_limit           // none is stated
};

/// `limit` is the warning temperature, or the critical one where that alone is stated.
[[nodiscard]] Outlook outlook(const Interval& kelvin, const Stated& stated);

/// Why no temperature is given.
enum class Unknown { none, not_seated, no_power, no_law, too_hot };

struct Heat {
  std::optional<Warmth> warmth;
  Unknown unknown = Unknown::none;  // where there is no `warmth`
  Outlook outlook = Outlook::no_limit;
  Stated stated;
  Surroundings around;
  std::optional<Budget> budget;    // of the place
  std::optional<Draw> draw;        // of the drive alone, where there is a budget
  int sharing = 1;                 // drives that its adapter holds, which draw from that budget together
  std::optional<Draw> shared;      // of so many such drives, where there are several
  bool greased = false;            // a heatsink without a pad: grease is taken to be under it
  std::optional<Contact> contact;  // of a pad between the drive and its heatsink
};

/// `seated` is that of `seating`. Only M.2 cards have a law here; all else has a budget at most. Of a drive that does
/// not fit at the place, or does not seat there at all, nothing is said: not even its power.
[[nodiscard]] Heat heat_of(const build::Drive& drive, const build::Place& place, const fit::Seated& seated,
                           const fit::Seating& seating, const Stated& stated, const Surroundings& around = {});

/// Reported temperatures as tools show them: NVMe counts whole kelvin, and tools take 273 off (nvme-cli; practice).
[[nodiscard]] constexpr int celsius_of_log(int kelvin) {
  return kelvin - 273;
}

}  // namespace baywright::thermal
