#pragma once
// Putting a drive at a place.
#include "fit/finding.h"
#include "fit/host.h"
#include "fit/seated.h"

#include <span>

namespace baywright::fit {

/// Whether the answers let the drive be put there at all, so that its geometry means something: its form is the
/// place's, its connector goes in, and its size is known. What the bus carries does not matter to that.
[[nodiscard]] bool seats(const build::Drive& drive, const Questions& questions);

/// The drive at the place, with what it wears and brings. The caller has seen that it `seats`. `values` replace nominal
/// ones by index, as in `Seated::scene.dimensions`; the host must have been compiled with the same.
[[nodiscard]] Seated seat(const Host& host, const build::Build& build, const build::Drive& drive, int place,
                          std::span<const double> values = {});

}  // namespace baywright::fit
