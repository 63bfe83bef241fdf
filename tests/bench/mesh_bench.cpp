// Distance of meshes, ours and FCL's in one run: two spheres near each other, a flat plate over a bumpy one, both at
// random poses; then what it takes to get ready, to tell inside from outside, and how all of it grows. Everything that
// can be made before the clock starts is. Ours checks a mesh as well (edges, winding, crossings) when it makes it; the
// tree alone is timed beside it. FCL has no containment of a point in a mesh.
// Errors are against all pairs of triangles in extended precision, which knows nothing of either method.
// Run with --benchmark_min_time=0.05 for a quick look.
#include "geometry/gap.h"
#include "geometry/mesh_data.h"
#include "support/fcl_place.h"
#include "support/random_turn.h"

#include <algorithm>
#include <array>
#include <benchmark/benchmark.h>
#include <cmath>
#include <cstdio>
#include <fcl/geometry/bvh/BVH_model.h>
#include <fcl/narrowphase/distance.h>
#include <functional>
#include <limits>
#include <map>
#include <memory>
#include <numbers>
#include <random>
#include <string>
#include <vector>

namespace {

using namespace baywright::geometry;
using baywright::test::any_turn;
using baywright::test::fcl_place;
using baywright::test::Random;
using baywright::test::uniform;
using FclMesh = fcl::BVHModel<fcl::OBBRSS<double>>;

struct Surface {
  std::vector<Vec3> vertices;
  std::vector<Mesh::Triangle> triangles;
};

/// Of meridians and circles: 4 n (n - 1) triangles.
Surface sphere(int n, double radius) {
  Surface made;
  const int around = 2 * n;
  made.vertices.emplace_back(0, 0, radius);
  for (int i = 1; i < n; ++i) {
    for (int j = 0; j < around; ++j) {
      const double t = std::numbers::pi * i / n;
      const double u = 2 * std::numbers::pi * j / around;
      made.vertices.emplace_back(radius * std::sin(t) * std::cos(u), radius * std::sin(t) * std::sin(u),
                                 radius * std::cos(t));
    }
  }
  made.vertices.emplace_back(0, 0, -radius);
  const auto at = [&](int i, int j) {
    if (i == 0) return 0;
    if (i == n) return 1 + (n - 1) * around;
    return 1 + (i - 1) * around + j % around;
  };
  for (int i = 0; i < n; ++i) {
    for (int j = 0; j < around; ++j) {
      if (i > 0) made.triangles.push_back({at(i, j), at(i + 1, j), at(i, j + 1)});
      if (i + 1 < n) made.triangles.push_back({at(i, j + 1), at(i + 1, j), at(i + 1, j + 1)});
    }
  }
  return made;
}

/// A square sheet of 100 mm with n by n cells, its corners up to `bump` mm high at random.
Surface plate(int n, double bump) {
  Surface made;
  Random random(2);
  for (int i = 0; i <= n; ++i) {
    for (int j = 0; j <= n; ++j) {
      made.vertices.emplace_back(100.0 * i / n - 50, 100.0 * j / n - 50, bump * uniform(random, 0, 1));
    }
  }
  for (int i = 0; i < n; ++i) {
    for (int j = 0; j < n; ++j) {
      const int a = i * (n + 1) + j;
      made.triangles.push_back({a, a + n + 1, a + n + 2});
      made.triangles.push_back({a, a + n + 2, a + 1});
    }
  }
  return made;
}

Mesh mesh_of(const Surface& surface) {
  return std::get<Mesh>(Mesh::make(surface.vertices, surface.triangles));
}

std::shared_ptr<FclMesh> fcl_of(const Surface& surface) {
  auto model = std::make_shared<FclMesh>();
  std::vector<fcl::Vector3d> points;
  std::vector<fcl::Triangle> triangles;
  for (const Vec3& v : surface.vertices) points.emplace_back(v.x, v.y, v.z);
  for (const Mesh::Triangle& t : surface.triangles) {
    triangles.emplace_back(static_cast<std::size_t>(t[0]), static_cast<std::size_t>(t[1]),
                           static_cast<std::size_t>(t[2]));
  }
  model->beginModel();
  model->addSubModel(points, triangles);
  model->endModel();
  return model;
}

struct Scene {
  Placed a;
  Placed b;
  std::shared_ptr<fcl::CollisionObjectd> fcl_a;
  std::shared_ptr<fcl::CollisionObjectd> fcl_b;
};

double ours(const Scene& scene) {
  return gap(scene.a, scene.b).mm;
}

double theirs(const Scene& scene) {
  const fcl::DistanceRequestd request(true);
  fcl::DistanceResultd result;
  return fcl::distance(scene.fcl_a.get(), scene.fcl_b.get(), request, result);
}

struct Family {
  std::string name;
  std::vector<Scene> scenes;
};

Scene placed(const Solid& a, const Pose& pose_a, const Solid& b, const Pose& pose_b,
             const std::shared_ptr<FclMesh>& fcl_a, const std::shared_ptr<FclMesh>& fcl_b) {
  return {{a, pose_a},
          {b, pose_b},
          std::make_shared<fcl::CollisionObjectd>(fcl_a, fcl_place(pose_a.shift, pose_a.turn)),
          std::make_shared<fcl::CollisionObjectd>(fcl_b, fcl_place(pose_b.shift, pose_b.turn))};
}

Pose any_pose(Random& random) {
  const Mat3 turn = any_turn(random);
  return {turn, {uniform(random, -50, 50), uniform(random, -50, 50), uniform(random, -50, 50)}};
}

/// Spheres of 10 mm, 0.1 to 2 mm apart.
Family spheres(const std::string& name, int n) {
  const Surface surface = sphere(n, 10);
  const Solid solid = Solid::mesh(mesh_of(surface));
  const auto model = fcl_of(surface);
  Family family{name, {}};
  Random random(7);
  for (int i = 0; i < 32; ++i) {
    const Pose a = any_pose(random);
    const Vec3 away = any_turn(random)[0] * uniform(random, 20.1, 22);
    family.scenes.push_back(placed(solid, a, solid, {any_turn(random), a.shift + away}, model, model));
  }
  return family;
}

/// A flat plate under a bumpy one that is turned, leans by up to 3 degrees and hangs clear of it.
Family plates(const std::string& name, int n) {
  const Surface flat = plate(n, 0);
  const Surface bumpy = plate(n, 3);
  const Solid under = Solid::mesh(mesh_of(flat));
  const Solid over = Solid::mesh(mesh_of(bumpy));
  const auto model_under = fcl_of(flat);
  const auto model_over = fcl_of(bumpy);
  Family family{name, {}};
  Random random(8);
  for (int i = 0; i < 32; ++i) {
    const Pose world = any_pose(random);
    const Mat3 lean = rotation({1, 0, 0}, uniform(random, -3, 3));
    const Mat3 turn = rotation({0, 0, 1}, uniform(random, 0, 360)) * lean;
    const Vec3 shift{uniform(random, -20, 20), uniform(random, -20, 20), uniform(random, 5, 8)};
    family.scenes.push_back(placed(under, world, over, world.after({turn, shift}), model_under, model_over));
  }
  return family;
}

// ---- reference: all pairs whose boxes come near enough, in extended precision ----

using Real = long double;
using Vec = std::array<Real, 3>;
using Three = std::array<Vec, 3>;

Vec operator-(const Vec& p, const Vec& q) {
  return {p[0] - q[0], p[1] - q[1], p[2] - q[2]};
}
Vec along(const Vec& p, const Vec& e, Real t) {
  return {p[0] + e[0] * t, p[1] + e[1] * t, p[2] + e[2] * t};
}
Real dot(const Vec& p, const Vec& q) {
  return p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
}
Vec times(const Vec& p, const Vec& q) {
  return {p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]};
}

Real corner_to_face(const Vec& p, const Three& t) {
  const Vec n = times(t[1] - t[0], t[2] - t[0]);
  for (std::size_t i = 0; i < 3; ++i) {
    if (dot(times(t[(i + 1) % 3] - t[i], p - t[i]), n) < 0) return std::numeric_limits<Real>::infinity();
  }
  return std::abs(dot(p - t[0], n)) / std::sqrt(dot(n, n));
}

Real edge_to_edge(const Vec& p, const Vec& e, const Vec& q, const Vec& f) {
  const auto part = [](Real x) { return std::clamp<Real>(x, 0, 1); };
  const auto length = [](const Vec& v) { return std::sqrt(dot(v, v)); };
  Real best = std::numeric_limits<Real>::infinity();
  for (const Real s : {Real{0}, Real{1}}) {
    const Vec at = along(p, e, s);
    best = std::min(best, length(along(q, f, part(dot(at - q, f) / dot(f, f))) - at));
    const Vec on = along(q, f, s);
    best = std::min(best, length(along(p, e, part(dot(on - p, e) / dot(e, e))) - on));
  }
  const Vec n = times(e, f);
  const Real nn = dot(n, n);
  if (nn > 0) {
    const Real s = dot(times(q - p, f), n) / nn;
    const Real t = dot(times(q - p, e), n) / nn;
    if (s >= 0 && s <= 1 && t >= 0 && t <= 1) best = std::min(best, std::abs(dot(q - p, n)) / std::sqrt(nn));
  }
  return best;
}

Real reference(const Scene& scene, double near) {
  const auto all = [](const Placed& placed) {
    std::vector<Three> found;
    const Mesh& mesh = *placed.solid.mesh();
    for (const Mesh::Triangle& t : mesh.triangles()) {
      Three corners;
      for (std::size_t k = 0; k < 3; ++k) {
        const Vec3 v = mesh.vertices()[static_cast<std::size_t>(t[k])];
        for (int i = 0; i < 3; ++i) {
          Real sum = placed.pose.shift[i];
          for (int j = 0; j < 3; ++j) sum += Real{placed.pose.turn[j][i]} * Real{v[j]};
          corners[k][static_cast<std::size_t>(i)] = sum;
        }
      }
      found.push_back(corners);
    }
    return found;
  };
  const auto box = [](const Three& t) {
    Bounds found = Bounds::empty();
    for (const Vec& p : t) {
      found.add(Vec3{static_cast<double>(p[0]), static_cast<double>(p[1]), static_cast<double>(p[2])});
    }
    return found;
  };
  const std::vector<Three> of_a = all(scene.a);
  const std::vector<Three> of_b = all(scene.b);
  std::vector<Bounds> boxes_b;
  for (const Three& t : of_b) boxes_b.push_back(box(t));
  Real best = std::numeric_limits<Real>::infinity();
  for (const Three& a : of_a) {
    const Bounds box_a = box(a);
    for (std::size_t j = 0; j < of_b.size(); ++j) {
      if (box_a.distance(boxes_b[j]) > near) continue;
      const Three& b = of_b[j];
      for (std::size_t k = 0; k < 3; ++k) {
        best = std::min({best, corner_to_face(a[k], b), corner_to_face(b[k], a)});
        for (std::size_t l = 0; l < 3; ++l) {
          best = std::min(best, edge_to_edge(a[k], a[(k + 1) % 3] - a[k], b[l], b[(l + 1) % 3] - b[l]));
        }
      }
    }
  }
  return best;
}

/// Keeps the time of each run for the table at the end.
class Table : public benchmark::ConsoleReporter {
 public:
  void ReportRuns(const std::vector<Run>& runs) override {
    ConsoleReporter::ReportRuns(runs);
    for (const Run& run : runs) {
      if (!run.error_occurred) time_[run.run_name.function_name] = run.GetAdjustedCPUTime();
    }
  }
  [[nodiscard]] const double* time(const std::string& name) const {
    const auto found = time_.find(name);
    return found == time_.end() ? nullptr : &found->second;
  }
  void row(const std::string& name, const std::string& errors) const {
    const double* mine = time(name + "/ours");
    const double* other = time(name + "/FCL");
    if (mine == nullptr) return;
    if (other == nullptr) {
      std::printf("%-34s %12.1f %12s %8s  %s\n", name.c_str(), *mine, "-", "-", errors.c_str());
    } else {
      std::printf("%-34s %12.1f %12.1f %8.1f  %s\n", name.c_str(), *mine, *other, *other / *mine, errors.c_str());
    }
  }

 private:
  std::map<std::string, double> time_;
};

std::string errors(const Family& family) {
  Real off_ours = 0;
  Real off_theirs = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    const Scene& scene = family.scenes[i];
    const double mine = ours(scene);
    const Real want = reference(scene, mine + 1e-6);
    off_ours = std::max(off_ours, std::abs(mine - want));
    off_theirs = std::max(off_theirs, std::abs(theirs(scene) - want));
  }
  char text[80];
  std::snprintf(text, sizeof text, "%12.1e %12.1e", static_cast<double>(off_ours), static_cast<double>(off_theirs));
  return text;
}

void add(const std::string& name, const std::function<void()>& work) {
  benchmark::RegisterBenchmark(name.c_str(), [work](benchmark::State& state) {
    for (auto _ : state) work();
  })->Unit(benchmark::kMicrosecond);
}

void add_distance(const Family& family) {
  for (const auto& [who, measure] : {std::pair{"/ours", &ours}, std::pair{"/FCL", &theirs}}) {
    auto i = std::make_shared<std::size_t>(0);
    add(family.name + who, [&family, measure, i] {
      benchmark::DoNotOptimize(measure(family.scenes[*i]));
      *i = (*i + 1) % family.scenes.size();
    });
  }
}

void add_making(const std::string& name, const Surface& surface) {
  auto shared = std::make_shared<Surface>(surface);
  std::vector<Corners> corners;
  for (const Mesh::Triangle& t : surface.triangles) {
    corners.push_back({surface.vertices[static_cast<std::size_t>(t[0])],
                       surface.vertices[static_cast<std::size_t>(t[1])],
                       surface.vertices[static_cast<std::size_t>(t[2])]});
  }
  add("tree of " + name + "/ours", [corners] { benchmark::DoNotOptimize(TriangleTree(corners)); });
  add("tree of " + name + "/FCL", [shared] { benchmark::DoNotOptimize(fcl_of(*shared)); });
  add("checked mesh of " + name + "/ours", [shared] { benchmark::DoNotOptimize(mesh_of(*shared)); });
}

void add_containment(const std::string& name, const Surface& surface) {
  auto mesh = std::make_shared<Mesh>(mesh_of(surface));
  auto random = std::make_shared<Random>(9);
  add(name + "/ours", [mesh, random] {
    const Vec3 p{uniform(*random, -11, 11), uniform(*random, -11, 11), uniform(*random, -11, 11)};
    benchmark::DoNotOptimize(mesh->contains(p));
  });
}

}  // namespace

int main(int count, char** words) {
  benchmark::Initialize(&count, words);
  if (benchmark::ReportUnrecognizedArguments(count, words)) return 2;
  const std::vector<int> circles{2, 6, 16, 50, 158};  // 8, 120, 960, 9800, 99224 triangles
  std::vector<Family> families;
  families.push_back(plates("plates, 9800 triangles each", 70));
  std::vector<std::string> names;
  for (const int n : circles) {
    names.push_back(std::to_string(4 * n * (n - 1)) + " triangles");
    families.push_back(spheres("spheres, " + names.back() + " each", n));
  }
  for (const Family& family : families) add_distance(family);
  for (std::size_t i = 0; i < circles.size(); ++i) {
    const Surface surface = sphere(circles[i], 10);
    add_making(names[i], surface);
    add_containment("point in " + names[i], surface);
  }
  Table table;
  benchmark::RunSpecifiedBenchmarks(&table);
  std::printf("\n%-34s %12s %12s %8s  %12s %12s\n", "", "ours us", "FCL us", "ratio", "ours off, mm", "FCL off, mm");
  for (const Family& family : families) {
    const bool small = family.scenes[0].a.solid.mesh()->triangles().size() < 20000;
    table.row(family.name, small ? errors(family) : "           -            -");
  }
  for (const std::string& name : names) table.row("tree of " + name, "");
  for (const std::string& name : names) table.row("checked mesh of " + name, "");
  for (const std::string& name : names) table.row("point in " + name, "");
  return 0;
}
