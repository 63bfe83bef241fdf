#pragma once
// The largest value of one length at which something still holds.
#include <functional>
#include <optional>

namespace baywright::fit {

struct Probe {
  bool holds = false;
  std::optional<double> edge{};  // mm: where it would turn if the chain stayed as it is at this value; none: not known
};

/// The bounds to search within, mm.
struct Within {
  double least = 0.0;
  double start = 0.0;  // tried first
  double most = 0.0;
};

/// How near to the edge the answer is sure to be, mm: it holds at the answer, and no longer this much above.
inline constexpr double edge_mm = 1e-6;

/// Follows the edges that the probes give and halves what is left where they lead nowhere; below a value that holds it
/// is taken to hold. None: not even at the least. `most` where it holds there too.
[[nodiscard]] std::optional<double> largest(const Within& within, const std::function<Probe(double)>& probe);

}  // namespace baywright::fit
