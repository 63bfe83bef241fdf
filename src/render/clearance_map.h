#pragma once
// The surface of a part, coloured by how far each place of it is from everything else.
#include "render/model.h"

#include <map>

namespace baywright::render {

struct ClearanceMap {
  std::map<int, std::shared_ptr<const Mesh>> of;  // by element: its surface in finer triangles, with colours
  double top = 0.0;  // mm: where the scale ends; farther is coloured like this. 0: there is nothing else
};

struct KeptMaps {
  std::map<std::string, ClearanceMap> of;  // by part
};

/// The part's things against all that are not of that part. Corners are no farther apart than 2 mm, or as many as
/// `most_corners` allow. Kept in `model.maps`, so asked for twice it is the same. Not for two threads at once.
[[nodiscard]] const ClearanceMap& clearance_map(const Model& model, const std::string& part);

/// The colour at a distance, 0 the near end .. 1 the far end of the scale. Lightness rises all along, for every
/// kind of colour vision.
[[nodiscard]] Colour clearance_colour(double share);

inline constexpr std::size_t most_corners = 12000;

}  // namespace baywright::render
