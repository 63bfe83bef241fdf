// The cut. 1. Every vertex lies behind the plane or in front of it; what lies in the plane counts as in front, as if
// the plane stood a hair farther back, so that no vertex is ever on it. 2. Each triangle with both kinds has one
// segment, from the side that goes back to the side that comes forward, which keeps the inside on its left for the
// viewer. Its ends are known by the mesh edge that they lie on, or by the vertex in the plane, not by coordinates: so
// segments always join to loops. 3. Segments of no length are dropped, and pairs that run to and fro: there nothing is
// cut, or the same solid goes on. 4. A loop that comes by a place twice is parted there.
//
// The shadow. The triangles that face the viewer, taken as a sum of areas, have as their boundary the edges that belong
// to one of them only. Those edges form loops, and a point is in shadow where the loops run round it: how often is the
// number of triangles over it. So only the silhouette goes to the polygon library, a few hundred edges instead of ten
// thousand triangles, and which triangles a rounded sign takes for facing the viewer hardly matters.
#include "geometry/section_mesh.h"

#include "geometry/limits.h"
#include "geometry/mesh_edges.h"
#include "geometry/section_areas.h"
#include "geometry/section_loops.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <unordered_map>

namespace baywright::geometry {
namespace {

/// Where a loop passes: on an edge between two vertices, or (both the same) at one.
using Place = std::pair<int, int>;

struct Segment {
  Place from;
  Place to;
};

/// The vertices as the view sees them.
struct Flattened {
  std::vector<Vec2> at;
  std::vector<double> depth;  // toward the viewer; exactly 0 within `touch_mm` of the plane

  Flattened(const Mesh& mesh, const Pose& pose, const View& view) {
    for (const Vec3& v : mesh.vertices()) {
      const Vec3 p = pose.point(v);
      const double d = view.depth(p);
      at.push_back(view.flat(p));
      depth.push_back(std::abs(d) <= touch_mm ? 0.0 : d);
    }
  }

  [[nodiscard]] bool behind(int vertex) const { return depth[static_cast<std::size_t>(vertex)] < 0.0; }

  [[nodiscard]] Place place(int front, int back) const {
    if (depth[static_cast<std::size_t>(front)] == 0.0) return {front, front};
    return std::minmax(front, back);
  }

  [[nodiscard]] Vec2 point(const Place& place) const {
    const auto a = static_cast<std::size_t>(place.first);
    const auto b = static_cast<std::size_t>(place.second);
    if (a == b) return at[a];
    return (at[a] * depth[b] - at[b] * depth[a]) / (depth[b] - depth[a]);
  }
};

std::vector<Segment> segments(const Mesh& mesh, const Flattened& seen) {
  std::vector<Segment> found;
  for (const Mesh::Triangle& t : mesh.triangles()) {
    const int count = seen.behind(t[0]) + seen.behind(t[1]) + seen.behind(t[2]);
    if (count == 0 || count == 3) continue;
    Segment segment;
    for (std::size_t i = 0; i < 3; ++i) {
      const int p = t[i];
      const int q = t[(i + 1) % 3];
      if (!seen.behind(p) && seen.behind(q)) segment.from = seen.place(p, q);
      if (seen.behind(p) && !seen.behind(q)) segment.to = seen.place(q, p);
    }
    if (segment.from != segment.to) found.push_back(segment);
  }
  return found;
}

struct PlaceHash {
  std::size_t operator()(const Place& place) const {
    return std::hash<long long>{}((static_cast<long long>(place.first) << 32) ^ place.second);
  }
};

/// Takes out a segment for each that runs the other way between the same places: of several between the same two, only
/// what one way has more than the other stays.
std::vector<Segment> without_returns(const std::vector<Segment>& all) {
  std::map<std::pair<Place, Place>, int> net;
  for (const Segment& s : all) {
    if (s.from < s.to) {
      ++net[{s.from, s.to}];
    } else {
      --net[{s.to, s.from}];
    }
  }
  std::vector<Segment> kept;
  for (const auto& [ends, count] : net) {
    const Segment segment = count > 0 ? Segment{ends.first, ends.second} : Segment{ends.second, ends.first};
    kept.insert(kept.end(), static_cast<std::size_t>(std::abs(count)), segment);
  }
  return kept;
}

/// The segments joined to loops that pass no place twice. As many segments lead into each place as out of it; where
/// they do not (the surface is open), what hangs loose is dropped.
std::vector<std::vector<Place>> loops(const std::vector<Segment>& segments) {
  std::unordered_map<Place, std::vector<Place>, PlaceHash> ways;
  for (const Segment& s : segments) ways[s.from].push_back(s.to);
  std::vector<std::vector<Place>> found;
  std::unordered_map<Place, std::size_t, PlaceHash> passed;  // where on the path
  std::vector<Place> path;
  for (const Segment& start : segments) {
    for (Place at = start.from;;) {
      if (const auto seen = passed.find(at); seen != passed.end()) {
        const auto first = path.begin() + static_cast<std::ptrdiff_t>(seen->second);
        found.emplace_back(first, path.end());
        for (auto place = first; place != path.end(); ++place) passed.erase(*place);
        path.erase(first, path.end());
      }
      auto& out = ways[at];
      if (out.empty()) break;
      passed.emplace(at, path.size());
      path.push_back(at);
      at = out.back();
      out.pop_back();
    }
    path.clear();
    passed.clear();
  }
  return found;
}

}  // namespace

std::vector<Region> mesh_section(const Mesh& mesh, const Pose& pose, const View& view) {
  if (!mesh.closed()) return {};
  const Flattened seen(mesh, pose, view);
  std::vector<Outline> outlines;
  for (const std::vector<Place>& loop : loops(without_returns(segments(mesh, seen)))) {
    Outline outline;
    for (const Place& place : loop) outline.push_back(seen.point(place));
    outline = without_straight_corners(without_repeats(outline));
    if (!is_empty(outline, touch_mm)) outlines.push_back(std::move(outline));
  }
  return nested(std::move(outlines));
}

std::vector<std::pair<Vec2, Vec2>> mesh_cut_lines(const Mesh& mesh, const Pose& pose, const View& view) {
  const Flattened seen(mesh, pose, view);
  std::vector<std::pair<Vec2, Vec2>> lines;
  for (const Segment& segment : without_returns(segments(mesh, seen)))
    lines.emplace_back(seen.point(segment.from), seen.point(segment.to));
  return lines;
}

std::vector<Region> mesh_shadow(const Mesh& mesh, const Pose& pose, const View& view) {
  const Flattened seen(mesh, pose, view);
  const auto turn = [&](const Mesh::Triangle& t) {  // as the view sees it
    const Vec2 a = seen.at[static_cast<std::size_t>(t[0])];
    const Vec2 b = seen.at[static_cast<std::size_t>(t[1])] - a;
    const Vec2 c = seen.at[static_cast<std::size_t>(t[2])] - a;
    return b.x * c.y - b.y * c.x;
  };
  std::vector<Mesh::Triangle> facing;
  for (const Mesh::Triangle& t : mesh.triangles()) {
    if (turn(t) > 0.0) facing.push_back(t);
    if (turn(t) < 0.0 && !mesh.closed()) facing.push_back({t[0], t[2], t[1]});
  }
  std::vector<Segment> rim;
  each_edge(edges_of(facing, mesh.vertices().size()), [&](std::span<const MeshEdge> sides) {
    int net = 0;
    for (const MeshEdge& side : sides) net += side.rising ? 1 : -1;
    const Place low{sides.front().low, sides.front().low};
    const Place high{sides.front().high, sides.front().high};
    rim.insert(rim.end(), static_cast<std::size_t>(std::abs(net)), net > 0 ? Segment{low, high} : Segment{high, low});
  });
  std::vector<Outline> outlines;
  for (const std::vector<Place>& loop : loops(rim)) {
    Outline outline;
    for (const Place& place : loop) outline.push_back(seen.point(place));
    outlines.push_back(std::move(outline));
  }
  return joined(outlines);
}

}  // namespace baywright::geometry
