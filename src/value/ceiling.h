#pragma once
// What a link lets through, and what is left of a drive's speed behind it.
#include "standards/links.h"
#include "tolerance/dimension.h"
#include "value/offer.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace baywright::value {

/// MB/s, one direction, after line code; headers of packets take a further 5 to 20 % (common practice, no source).
struct Ceiling {
  std::optional<standards::links::Link> link;  // what drive and slot settle on; none: the slot does not carry the drive
  double megabytes = 0.0;                      // of that link; 0 where there is none
  double own = 0.0;                            // of the drive's own link
  std::optional<double> read;                  // what is left of the stated figures
  std::optional<double> write;
  double lost = 0.0;  // share of the faster stated figure (without one: of its own link)
};

/// `slot` is what is wired to it; the best for the drive counts. None where the drive's bus or the slot's is not known.
[[nodiscard]] std::optional<Ceiling> ceiling(const Offer& offer, std::span<const standards::links::Link> slot);

/// Whether the slot holds this stated figure down to its link's rate.
[[nodiscard]] bool held(const std::optional<double>& stated, const std::optional<Ceiling>& here);

/// What the user has now.
struct Present {
  std::string_view name;   // "emmc"
  std::string_view title;  // "soldered eMMC"
  double ceiling = 0.0;    // MB/s of its link
  double read = 0.0;       // MB/s that it does; its ceiling where nothing better is known
  bool moves = false;      // heads have to move: what is small and scattered takes most of the time
  bool soldered = false;
  std::string_view source;  // of `read`
  tolerance::Known known = tolerance::Known::practice;
};
[[nodiscard]] std::span<const Present> presents();
/// Null where there is none of that name.
[[nodiscard]] const Present* present(std::string_view name);

/// What a drive would change.
enum class Worth {
  plainly,    // no heads move any more
  faster,     // `ratio` times as fast where much is read or written at once
  little,     // less than twice as fast, which few notice
  no_faster,  // only room is gained
  not_known   // speed here is not known
};
struct Upgrade {
  Worth worth = Worth::not_known;
  double ratio = 0.0;  // of speed here to what is there now; 0 where it is not known
};
[[nodiscard]] Upgrade upgrade(const Offer& offer, const std::optional<Ceiling>& here, const Present& now);

}  // namespace baywright::value
