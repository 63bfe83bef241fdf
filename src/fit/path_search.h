#pragma once
// A way for a rigid body with two freedoms, p and q, from (0, 0) to somewhere that counts as out. Internal.
#include "geometry/vectors.h"

#include <functional>
#include <optional>
#include <vector>

namespace baywright::fit {

struct Freedoms {
  double p_most = 0.0;  // p runs from 0 to p_most, q from 0 to q_most
  double q_most = 0.0;
  /// No point of the body moves farther, mm, when p changes by up to dp and q by up to dq.
  std::function<double(double dp, double dq)> reach;
  /// Whether the body may change from one node to the next at all, whatever stands round it.
  std::function<bool(const geometry::Vec2& from, const geometry::Vec2& to)> allowed;
  /// The least signed gap of the body at (p, q) to all that is in its way, mm, or `enough` where it is more.
  std::function<double(double p, double q, double enough)> gap;
};

/// What the search asks of the one who knows the solids.
struct PathJudge {
  /// Whether the body may go straight from one node to the next (they differ in p or in q only). Exact.
  std::function<bool(const geometry::Vec2& from, const geometry::Vec2& to)> free;
  /// Whether the body gets out from there.
  std::function<bool(const geometry::Vec2& at)> out;
};

/// Corners of a path, first (0, 0), each step along p or q only. The plane is cut into cells; a cell is free where the
/// gap at its middle is more than the body can move within it, closed where the overlap is deeper than that, and else
/// unsure. Cheapest path over cells that are not closed (Dijkstra; unsure cells and turns cost more), its steps then
/// held to `free`; a step that fails closes its cell and the search goes on. None: there is no path, unless through a
/// passage narrower than a cell's reach that lies off the middles of the cells.
[[nodiscard]] std::optional<std::vector<geometry::Vec2>> find_path(const Freedoms& freedoms, const PathJudge& judge);

}  // namespace baywright::fit
