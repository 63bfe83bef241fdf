#pragma once
// Whether a drive can be brought to its place, by which way, and what comes out of the machine first.
#include "fit/check.h"
#include "fit/seated.h"
#include "fit/ways.h"

#include <optional>
#include <string>
#include <vector>

namespace baywright::fit {

struct Insertion {
  Finding finding;                     // kind insertion
  std::optional<Way> way;              // none where no way was found
  std::vector<std::string> out_first;  // parts of the machine, in the order in which they come out
};

/// Tries the plain way of that kind of place, then others, then what is free once removable parts are out, then a
/// search over angle and depth, then the bare card before what it wears. Every pair of solids is followed all along (no
/// pose is left out); where one comes nearer than it is when the drive is in, its gap there has limits like any other.
/// Between a card and its own socket, stand-off and board nothing is asked, as everywhere. Fits: a way is free at all
/// limits, perhaps after parts that the build calls removable (or drives that sit elsewhere) are out. Marginal: at some
/// limits. Does not fit: at none; then the finding names what is in the plain way.
[[nodiscard]] Insertion insertion(const Host& host, const build::Build& build, const Seated& seated,
                                  const build::Drive& drive, const build::Place& place, const Options& options);

}  // namespace baywright::fit
