// Along the line, the ways out of the half plane and the ways into it alternate, each way out with the area beyond it
// up to the next way in. So the i-th way out belongs to the i-th way in, and sorting the two kinds apart keeps the
// pairs right where rounding makes a way out and a way in change places.
#include "geometry/cut.h"

#include <algorithm>
#include <numeric>

namespace baywright::geometry {
namespace {

/// z by weights, so that it is exactly 0 where `side` is z or -z, however steep the plane is.
Vec3 crossing(const Vec3& p, double p_side, const Vec3& q, double q_side) {
  Vec3 at = p + p_side / (p_side - q_side) * (q - p);
  at.z = (p_side * q.z - q_side * p.z) / (p_side - q_side);
  return at;
}

void add_ring(const Ring& ring, const std::function<double(const Vec3&)>& side, Cut& cut) {
  const std::size_t n = ring.size();
  std::vector<double> sides(n);
  std::transform(ring.begin(), ring.end(), sides.begin(), side);
  std::size_t first = 0;  // a corner outside
  while (first < n && sides[first] >= 0.0) ++first;
  if (first == n) {
    cut.whole.push_back(ring);
    return;
  }
  for (std::size_t step = 0; step < n; ++step) {
    const std::size_t i = (first + step) % n;
    const std::size_t next = (i + 1) % n;
    const bool inside = sides[i] >= 0.0;
    const bool inside_next = sides[next] >= 0.0;
    if (inside) cut.chains.back().push_back(ring[i]);
    if (inside == inside_next) continue;
    if (!inside) cut.chains.emplace_back();
    cut.chains.back().push_back(crossing(ring[i], sides[i], ring[next], sides[next]));
  }
}

}  // namespace

Cut cut(const std::vector<Ring>& rings, const std::function<double(const Vec3&)>& side, const Vec2& along) {
  Cut made;
  for (const Ring& ring : rings) add_ring(ring, side, made);
  made.out.resize(made.chains.size());
  std::iota(made.out.begin(), made.out.end(), std::size_t{0});
  made.in = made.out;
  const auto place = [&along](const Vec3& p) { return glm::dot(along, Vec2{p}); };
  std::stable_sort(made.out.begin(), made.out.end(), [&](std::size_t a, std::size_t b) {
    return place(made.chains[a].back()) < place(made.chains[b].back());
  });
  std::stable_sort(made.in.begin(), made.in.end(), [&](std::size_t a, std::size_t b) {
    return place(made.chains[a].front()) < place(made.chains[b].front());
  });
  return made;
}

std::vector<Ring> Cut::closed() const {
  std::vector<std::size_t> next(chains.size());
  for (std::size_t i = 0; i < chains.size(); ++i) next[out[i]] = in[i];
  std::vector<Ring> rings = whole;
  std::vector<bool> done(chains.size(), false);
  for (std::size_t start = 0; start < chains.size(); ++start) {
    if (done[start]) continue;
    Ring ring;
    for (std::size_t i = start; !done[i]; i = next[i]) {
      done[i] = true;
      ring.insert(ring.end(), chains[i].begin(), chains[i].end());
    }
    rings.push_back(std::move(ring));
  }
  return rings;
}

}  // namespace baywright::geometry
