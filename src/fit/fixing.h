#pragma once
// How a cased drive is screwed to its bay: which hole meets which, whether the screws reach and hold, and whether its
// connector meets a receptacle that is fixed to the machine.
#include "build/build.h"
#include "fit/finding.h"
#include "fit/scene.h"
#include "tolerance/stack.h"

#include <vector>

namespace baywright::fit {

/// A hole of the bay that meets one of the drive's.
struct UsedHole {
  double along = 0.0;  // mm, as build::Fixing::middle
  double other = 0.0;
  const parts::MountHole* drive_hole = nullptr;
  std::size_t index = 0;  // in build::Fixing::holes
};

/// The bay's holes that come near a hole of the drive, nominal, in their order.
[[nodiscard]] std::vector<UsedHole> used_holes(const build::Drive& drive, const build::Bay& bay);

/// A hole of the drive that the bay's screws could reach, nominal, in the same terms.
struct OfferedHole {
  double along = 0.0;
  double other = 0.0;
  const parts::MountHole* drive_hole = nullptr;
};
/// Those in the face that the screws come through. Wants a bay with `fixing`.
[[nodiscard]] std::vector<OfferedHole> offered_holes(const build::Drive& drive, const build::Bay& bay);

/// Findings about holes, screws and the connector's place. `frame` is the place's, for where they are.
[[nodiscard]] std::vector<Finding> fixings(const build::Drive& drive, const build::Place& place, const Frame& frame,
                                           tolerance::Method method);

}  // namespace baywright::fit
