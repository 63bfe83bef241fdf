#pragma once
// Whether somebody can drive the screws of a seating: a driver on the axis of each, from where the screw is started
// until it is home, the head on its way down, and a hand at a nut.
#include "fit/check.h"
#include "fit/seated.h"

#include <string>
#include <vector>

namespace baywright::fit {

/// One finding for all screws that share an outcome; none where there are no screws, or where they are driven outside
/// the machine (through a tray or rails that come out with the drive). `out_first`: names of parts that are out while
/// the screws are driven, with what stands on them. The build's own tools are tried before the common ones.
[[nodiscard]] std::vector<Finding> access(const Host& host, const build::Build& build, const Seated& seated,
                                          const build::Drive& drive, const build::Place& place,
                                          const std::vector<std::string>& out_first, const Options& options);

}  // namespace baywright::fit
