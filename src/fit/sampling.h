#pragma once
// The share of builds that fit, by drawing them: each build draws every dimension, puts what hangs on it anew, and
// measures the true gaps. No linear chain is between.
#include "fit/check.h"
#include "fit/scene.h"

#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

namespace baywright::fit {

/// Two elements that may come near each other, with their worst-case limits, mm.
struct Near {
  int a = -1;
  int b = -1;
  double asked = 0.0;
  double min = 0.0;
  double max = 0.0;
  bool open = false;  // hangs on a dimension that cannot be drawn
};

/// A gap that is a sum of dimensions and no distance between solids: base + sum of each term, less |off + sum of
/// those|. A term is an index in `Trial::dimensions` and mm per mm off its nominal value.
struct Sum {
  double base = 0.0;
  std::vector<std::pair<int, double>> terms;
  double off = 0.0;
  std::vector<std::pair<int, double>> off_terms;
};

/// One gap that is asked for: between solids that of the pairs with the least room beyond what is asked, else a sum,
/// which is asked to be 0.
struct AskedGap {
  std::vector<Near> pairs;
  std::optional<Sum> sum;
};

/// What is drawn and what has to be enough.
struct Trial {
  const Scene* scene = nullptr;                  // of the pairs; null: sums only
  std::vector<tolerance::Dimension> dimensions;  // the scene's first, then those of sums alone
  std::vector<AskedGap> gaps;
};

/// Over all builds drawn.
struct SampledGap {
  double low = 0.0;   // room beyond what is asked, mm: its 0.135 % point, which is minus three sigma of a normal one
  double high = 0.0;  // and its 99.865 % point
  std::int64_t enough = 0;     // builds in which it surely is
  std::int64_t unsettled = 0;  // builds in which that could not be settled
};
struct Sampled {
  std::int64_t builds = 0;
  std::int64_t fit = 0;        // builds in which every gap surely is enough
  std::int64_t unsettled = 0;  // of the others, those in which none surely is not
  std::vector<SampledGap> gaps;
};

/// The same for the same trial, builds and seed, whatever the number of threads. Dimensions without limits and with an
/// open side stay at their nominal values. Throws only what memory and threads throw.
[[nodiscard]] Sampled sample(const Trial& trial, const Options& options);

}  // namespace baywright::fit
