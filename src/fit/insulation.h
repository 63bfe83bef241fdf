#pragma once
// Where the bare underside of a card or board comes near something that may be metal: a film between them. Notes.
#include "fit/host.h"
#include "fit/seated.h"
#include "fit/seating.h"

#include <vector>

namespace baywright::fit {

/// Nearer than this a film is put between solder and metal, mm: common practice, no source.
inline constexpr double bare_near_mm = 1.0;

/// Of a seating's clearances, those of a card's underside to a [[part]] that is no board; by the least that they can
/// be.
[[nodiscard]] std::vector<Finding> insulation(const std::vector<Finding>& findings, const build::Build& build,
                                              const Seated& seated);

/// The same of the machine's own boards, at nominal: what lies within that distance of a board's back.
[[nodiscard]] std::vector<Finding> board_insulation(const Host& host, const build::Build& build);

}  // namespace baywright::fit
