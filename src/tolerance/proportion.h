#pragma once
// How well a share is known after so many trials.
#include <cstdint>

namespace baywright::tolerance {

struct Interval {
  double low = 0.0;
  double high = 1.0;
};

/// The 95 % interval for the share behind `hits` of `of` independent trials (Clopper and Pearson, "The use of
/// confidence or fiducial limits illustrated in the case of the binomial", Biometrika 26, 1934): it holds the true
/// share at least that often, whatever the share is, so nothing looks surer than it is. 0 <= hits <= of; of = 0:
/// nothing is known.
[[nodiscard]] Interval sure_to_95(std::int64_t hits, std::int64_t of);

}  // namespace baywright::tolerance
