#include "fit/largest.h"

#include <algorithm>

namespace baywright::fit {

std::optional<double> largest(const Within& within, const std::function<Probe(double)>& probe) {
  double holds = within.least;
  double fails = within.most;
  if (!probe(holds).holds) return std::nullopt;
  if (probe(fails).holds) return fails;
  double next = std::clamp(within.start, holds, fails);
  // Each round but the few that follow an edge at least halves what is between: 60 are more than any length needs.
  constexpr int rounds = 60;
  for (int round = 0; round < rounds && fails - holds > edge_mm; ++round) {
    if (!(next > holds && next < fails)) next = 0.5 * (holds + fails);
    const Probe found = probe(next);
    (found.holds ? holds : fails) = next;
    if (fails - holds <= edge_mm) break;
    const double middle = 0.5 * (holds + fails);
    next = middle;
    if (!found.edge || round % 2 == 1) continue;
    // Both sides of the edge, so that two probes settle it.
    const double below = *found.edge - 0.25 * edge_mm;
    const double above = *found.edge + 0.5 * edge_mm;
    for (const double side : {below, above})
      if (side > holds && side < fails) (probe(side).holds ? holds : fails) = side;
  }
  return holds;
}

}  // namespace baywright::fit
