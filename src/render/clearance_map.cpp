#include "render/clearance_map.h"

#include "geometry/gap.h"
#include "geometry/limits.h"
#include "render/rounding.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace baywright::render {

using geometry::Bounds;
using geometry::Placed;
using geometry::Solid;
using geometry::Vec3;

namespace {

constexpr double finest = 2.0;   // mm between corners
constexpr double widest = 20.0;  // mm: air beyond this is nobody's worry

using Corner = std::array<float, 3>;

Vec3 as_vector(const Corner& p) {
  return {static_cast<double>(p[0]), static_cast<double>(p[1]), static_cast<double>(p[2])};
}

double longest_side(const std::array<Vec3, 3>& t) {
  return std::max({glm::distance(t[0], t[1]), glm::distance(t[1], t[2]), glm::distance(t[2], t[0])});
}

int parts_of(const std::array<Vec3, 3>& t, double side) {
  return std::max(1, static_cast<int>(std::ceil(longest_side(t) / side)));
}

std::array<Vec3, 3> triangle(const Mesh& mesh, std::size_t first) {
  return {as_vector(mesh.at[first]), as_vector(mesh.at[first + 1]), as_vector(mesh.at[first + 2])};
}

/// How many corners the meshes get when their triangles are cut into parts no longer than `side`.
double corners(const std::vector<const Thing*>& things, double side) {
  double out = 0.0;
  for (const Thing* thing : things)
    for (std::size_t i = 0; i + 2 < thing->shape.mesh->at.size(); i += 3) {
      const double n = parts_of(triangle(*thing->shape.mesh, i), side);
      out += 3.0 * n * n;
    }
  return out;
}

/// Each triangle as n x n of its shape.
Mesh finer(const Mesh& mesh, double side) {
  Mesh out;
  for (std::size_t first = 0; first + 2 < mesh.at.size(); first += 3) {
    const std::array<Vec3, 3> t = triangle(mesh, first);
    const std::array<Vec3, 3> normals{as_vector(mesh.normal[first]), as_vector(mesh.normal[first + 1]),
                                      as_vector(mesh.normal[first + 2])};
    const int n = parts_of(t, side);
    const auto add = [&](int i, int j) {
      const double u = static_cast<double>(i) / n;
      const double v = static_cast<double>(j) / n;
      const Vec3 p = t[0] + (t[1] - t[0]) * u + (t[2] - t[0]) * v;
      const Vec3 across = normals[0] + (normals[1] - normals[0]) * u + (normals[2] - normals[0]) * v;
      const double length = glm::length(across);
      const Vec3 normal = length > 0.0 ? across / length : normals[0];
      out.at.push_back({static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(p.z)});
      out.normal.push_back({static_cast<float>(normal.x), static_cast<float>(normal.y), static_cast<float>(normal.z)});
    };
    for (int i = 0; i < n; ++i)
      for (int j = 0; i + j < n; ++j) {
        add(i, j), add(i + 1, j), add(i, j + 1);
        if (i + j + 1 < n) add(i + 1, j), add(i + 1, j + 1), add(i, j + 1);
      }
  }
  return out;
}

/// The distance of a point to the nearest of the others, mm; 0 within one. Looked for up to `widest`.
class Nearest {
 public:
  explicit Nearest(std::vector<const Thing*> others) : others_(std::move(others)) {}

  [[nodiscard]] double at(const Vec3& p) const {
    const Placed point{speck(), {geometry::Mat3(1.0), p - Vec3(0.5 * geometry::thinnest_mm)}};
    const Bounds here{p, p};
    double best = widest;
    for (const Thing* other : others_) {
      if (!(other->bounds.distance(here) < best)) continue;
      best = std::min(best, geometry::gap(point, other->placed).mm);
    }
    return std::max(0.0, best);
  }

 private:
  static const Solid& speck() {
    static const Solid made = std::get<Solid>(Solid::box(Vec3(geometry::thinnest_mm)));
    return made;
  }
  std::vector<const Thing*> others_;
};

ClearanceMap made(const Model& model, const std::string& part) {
  ClearanceMap out;
  std::vector<const Thing*> own;
  std::vector<const Thing*> others;
  for (const Thing& thing : model.things) (thing.part == part ? own : others).push_back(&thing);
  if (own.empty() || others.empty()) return out;
  double side = finest;
  while (corners(own, side) > static_cast<double>(most_corners) && side < geometry::largest_mm) side *= 1.25;
  const Nearest nearest(std::move(others));
  std::map<int, std::pair<Mesh, std::vector<double>>> measured;
  double most = 0.0;
  for (const Thing* thing : own) {
    auto& [mesh, distances] = measured[thing->element];
    mesh = finer(*thing->shape.mesh, side);
    std::map<Corner, double> known;  // corners are shared by triangles
    for (const Corner& corner : mesh.at) {
      const auto [found, fresh] = known.try_emplace(corner, 0.0);
      if (fresh) found->second = nearest.at(as_vector(corner));
      distances.push_back(found->second);
      most = std::max(most, found->second);
    }
  }
  out.top = rounded_up(std::clamp(0.8 * most, 1.0, widest));  // so that a little beyond a round figure costs no scale
  for (auto& [element, each] : measured) {
    for (const double distance : each.second) each.first.colour.push_back(clearance_colour(distance / out.top));
    out.of[element] = std::make_shared<const Mesh>(std::move(each.first));
  }
  return out;
}

}  // namespace

Colour clearance_colour(double share) {
  // Violet-black over red-brown and orange to pale yellow: lightness 15 to 93 in nearly even steps, and blue falls
  // where red rises, so that no kind of colour vision folds the scale.
  constexpr std::array<std::array<double, 3>, 6> stops = {{{0.16, 0.09, 0.33},
                                                           {0.33, 0.18, 0.46},
                                                           {0.55, 0.28, 0.47},
                                                           {0.78, 0.42, 0.40},
                                                           {0.93, 0.63, 0.38},
                                                           {0.99, 0.91, 0.60}}};
  const double at = std::clamp(std::isfinite(share) ? share : 1.0, 0.0, 1.0) * (stops.size() - 1);
  const auto low = std::min(static_cast<std::size_t>(at), stops.size() - 2);
  const double part = at - static_cast<double>(low);
  const auto mixed = [&](std::size_t i) {
    return static_cast<float>(stops[low][i] + (stops[low + 1][i] - stops[low][i]) * part);
  };
  return {mixed(0), mixed(1), mixed(2), 1.0F};
}

const ClearanceMap& clearance_map(const Model& model, const std::string& part) {
  const auto found = model.maps->of.find(part);
  if (found != model.maps->of.end()) return found->second;
  return model.maps->of.emplace(part, made(model, part)).first->second;
}

}  // namespace baywright::render
