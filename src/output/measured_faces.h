#pragma once
// Between which faces of a section a dimension runs, so that a drawing can show where to put the caliper.
#include "fit/seated.h"
#include "output/projection.h"

#include <optional>
#include <vector>

namespace baywright::output {

/// Two faces that the section cuts, square to one of its axes.
struct MeasuredFaces {
  int axis = 1;      // 0: level, they stand side by side; 1: upright, one over the other
  double low = 0.0;  // mm, view coordinates along that axis; low < high
  double high = 0.0;
  double from = 0.0;  // where both can be touched, along the other axis; from < to
  double to = 0.0;
};

/// The pair of faces whose distance that dimension alone decides, in full or in part (a pad that is pressed); the
/// upright one where there are several, then the one with most room for the jaws. None where the section shows none.
[[nodiscard]] std::optional<MeasuredFaces> measured_faces(const fit::Scene& scene, const geometry::View& view,
                                                          const std::vector<Seen>& seen,
                                                          const tolerance::Dimension& dimension);

}  // namespace baywright::output
