#pragma once
// Putting a drive at a place.
#include "fit/finding.h"
#include "fit/host.h"
#include "fit/seated.h"

#include <span>

namespace baywright::fit {

/// Whether the answers let the drive be put there at all, so that its geometry means something: an M.2 card whose size
/// and key the slot takes. What the bus carries does not matter to that.
[[nodiscard]] bool seats(const build::Drive& drive, const Questions& questions);

/// An M.2 card in a socket, held at its stand-off, wearing what the drive wears. The caller has seen that the form
/// factor and the key allow it. `values` replace nominal ones by index, as in `Seated::scene.dimensions`; the host must
/// have been compiled with the same.
[[nodiscard]] Seated seat_m2(const Host& host, const build::Build& build, const build::Drive& drive, int slot,
                             std::span<const double> values = {});

}  // namespace baywright::fit
