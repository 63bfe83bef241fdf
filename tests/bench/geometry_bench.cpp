// Our gap, FCL's signed distance and Bullet's on the same scenes in one run: boxes, cylinders and convex prisms, apart
// and overlapping, with all poses and shapes made ready before the clock starts on each side. After the usual table:
// how many times faster we are, and how far each is off a certified value (apart, ours: both bounds meet within 1e-9;
// overlapping: the largest separation over a dense set of directions, refined, which knows nothing of any method). FCL
// is asked for the signed distance with nearest points (its default solver and tolerance), since a gap says both.
// Bullet (double precision, no margins) is asked by its pair detector with the expanding polytope for depths.
// Run with --benchmark_min_time=0.05 for a quick look.
#include "geometry/gap.h"
#include "support/bullet_place.h"
#include "support/fcl_place.h"
#include "support/random_turn.h"

#include <BulletCollision/CollisionShapes/btBoxShape.h>
#include <BulletCollision/CollisionShapes/btConvexHullShape.h>
#include <BulletCollision/CollisionShapes/btCylinderShape.h>
#include <algorithm>
#include <benchmark/benchmark.h>
#include <cmath>
#include <cstdio>
#include <fcl/geometry/shape/convex.h>
#include <fcl/narrowphase/distance.h>
#include <map>
#include <memory>
#include <numbers>
#include <random>
#include <string>
#include <vector>

namespace {

using namespace baywright::geometry;
using baywright::test::any_turn;
using baywright::test::bullet_gap;
using baywright::test::bullet_place;
using baywright::test::fcl_place;
using baywright::test::Random;
using baywright::test::uniform;

enum class Form { box, cylinder, prism };

struct Side {
  Piece piece;
  Pose pose;
  std::shared_ptr<fcl::CollisionObjectd> object;
  std::shared_ptr<btConvexShape> bullet;
  btTransform bullet_at;
};

/// Regular-ish, with 5 to 8 corners, about the origin.
std::vector<Vec2> any_polygon(Random& random, double radius) {
  const auto count = 5 + random() % 4;
  std::vector<Vec2> corners;
  for (std::size_t i = 0; i < count; ++i) {
    const double angle =
        2.0 * std::numbers::pi * (static_cast<double>(i) + uniform(random, 0.0, 0.5)) / static_cast<double>(count);
    corners.push_back({radius * std::cos(angle), radius * std::sin(angle)});
  }
  return corners;
}

std::vector<Vec3> corners_about_middle(const Piece& piece) {
  std::vector<Vec3> corners;
  for (const double z : {-0.5 * piece.height, 0.5 * piece.height}) {
    for (const Vec2& p : piece.corners) corners.emplace_back(p, z);
  }
  return corners;
}

std::shared_ptr<fcl::CollisionGeometryd> fcl_hull(const Piece& piece) {
  auto vertices = std::make_shared<std::vector<fcl::Vector3d>>();
  for (const Vec3& c : corners_about_middle(piece)) vertices->emplace_back(c.x, c.y, c.z);
  auto faces = std::make_shared<std::vector<int>>();  // each: how many corners, then they, from outside
  const int n = static_cast<int>(piece.corners.size());
  faces->push_back(n);
  for (int i = n; i-- > 0;) faces->push_back(i);
  faces->push_back(n);
  for (int i = 0; i < n; ++i) faces->push_back(n + i);
  for (int i = 0; i < n; ++i) {
    const int j = (i + 1) % n;
    faces->insert(faces->end(), {4, i, j, n + j, n + i});
  }
  return std::make_shared<fcl::Convexd>(vertices, n + 2, faces);
}

std::shared_ptr<btConvexShape> bullet_hull(const Piece& piece) {
  auto hull = std::make_shared<btConvexHullShape>();
  for (const Vec3& c : corners_about_middle(piece)) hull->addPoint({c.x, c.y, c.z}, false);
  hull->recalcLocalAabb();
  return hull;
}

Side any_side(Random& random, Form form, bool aligned) {
  const Vec3 size{uniform(random, 5, 50), uniform(random, 5, 50), uniform(random, 5, 50)};
  const Vec3 centre{uniform(random, -40, 40), uniform(random, -40, 40), uniform(random, -40, 40)};
  const Mat3 turn = aligned ? Mat3{1.0} : any_turn(random);
  Side side;
  side.piece.height = size.z;
  side.pose = {turn, centre - turn * Vec3{0, 0, 0.5 * size.z}};
  std::shared_ptr<fcl::CollisionGeometryd> shape;
  const Vec3 half = 0.5 * size;
  if (form == Form::cylinder) {
    side.piece.base = Piece::Base::disc;
    side.piece.radius = half.x;
    shape = std::make_shared<fcl::Cylinderd>(half.x, size.z);
    side.bullet = std::make_shared<btCylinderShapeZ>(btVector3(half.x, half.x, half.z));
  } else if (form == Form::box) {
    side.piece.corners = {{-half.x, -half.y}, {half.x, -half.y}, {half.x, half.y}, {-half.x, half.y}};
    shape = std::make_shared<fcl::Boxd>(size.x, size.y, size.z);
    side.bullet = std::make_shared<btBoxShape>(btVector3(half.x, half.y, half.z));
  } else {
    side.piece.corners = any_polygon(random, half.x);
    shape = fcl_hull(side.piece);
    side.bullet = bullet_hull(side.piece);
  }
  side.bullet->setMargin(0.0);
  side.object = std::make_shared<fcl::CollisionObjectd>(shape, fcl_place(centre, turn));
  side.bullet_at = bullet_place({turn, centre});
  return side;
}

struct Scene {
  Side a;
  Side b;
};

double ours(const Scene& scene) {
  return gap(scene.a.piece, scene.a.pose, scene.b.piece, scene.b.pose).mm;
}

double bullets(const Scene& scene) {
  return bullet_gap(*scene.a.bullet, scene.a.bullet_at, *scene.b.bullet, scene.b.bullet_at).value_or(std::nan(""));
}

double fcls(const Scene& scene) {
  fcl::DistanceRequestd request(true, true);
  fcl::DistanceResultd result;
  try {
    return fcl::distance(scene.a.object.get(), scene.b.object.get(), request, result);
  } catch (const std::exception&) {
    return std::nan("");
  }
}

std::vector<Scene> scenes(Form a, Form b, bool apart, bool aligned) {
  Random random(5);
  std::vector<Scene> found;
  while (found.size() < 256) {
    Scene scene{any_side(random, a, aligned), any_side(random, b, aligned)};
    if ((ours(scene) > 0.0) == apart) found.push_back(scene);
  }
  return found;
}

double separation_of(const Scene& scene, const Vec3& d) {
  return separation(scene.a.piece, scene.a.pose, scene.b.piece, scene.b.pose, d);
}

double uphill(const Scene& scene, Vec3 d, double step) {
  double best = separation_of(scene, d);
  while (step > 1e-9) {
    const Vec3 right = square_to(d);
    const Vec3 up = glm::cross(d, right);
    bool better = false;
    for (int k = 0; k < 12 && !better; ++k) {
      const double angle = k * std::numbers::pi / 6.0;
      const Vec3 next = glm::normalize(d + (right * std::cos(angle) + up * std::sin(angle)) * step);
      const double value = separation_of(scene, next);
      better = value > best;
      if (better) {
        best = value;
        d = next;
      }
    }
    if (!better) step *= 0.5;
  }
  return best;
}

/// The largest separation over 20,000 directions and around the best of them.
double certified(const Scene& scene) {
  constexpr int lattice = 20000;
  std::vector<std::pair<double, Vec3>> seen;
  for (int i = 0; i < lattice; ++i) {
    const double z = 1.0 - (2.0 * i + 1.0) / lattice;
    const double turn = i * std::numbers::pi * (3.0 - std::sqrt(5.0));
    const Vec3 d{std::sqrt(1.0 - z * z) * std::cos(turn), std::sqrt(1.0 - z * z) * std::sin(turn), z};
    seen.emplace_back(separation_of(scene, d), d);
  }
  std::partial_sort(seen.begin(), seen.begin() + 30, seen.end(),
                    [](const auto& p, const auto& q) { return p.first > q.first; });
  const Gap found = gap(scene.a.piece, scene.a.pose, scene.b.piece, scene.b.pose);
  double best = uphill(scene, found.direction, 1e-3);
  for (std::size_t i = 0; i < 30; ++i) best = std::max(best, uphill(scene, seen[i].second, 0.02));
  return best;
}

struct Family {
  std::string name;
  std::vector<Scene> scenes;
};

std::vector<Family>& families() {
  using enum Form;
  static std::vector<Family> all{{"box-box apart", scenes(box, box, true, false)},
                                 {"box-box overlapping", scenes(box, box, false, false)},
                                 {"aligned boxes apart", scenes(box, box, true, true)},
                                 {"aligned boxes overlapping", scenes(box, box, false, true)},
                                 {"prism-prism apart", scenes(prism, prism, true, false)},
                                 {"prism-prism overlapping", scenes(prism, prism, false, false)},
                                 {"box-cylinder apart", scenes(box, cylinder, true, false)},
                                 {"box-cylinder overlapping", scenes(box, cylinder, false, false)},
                                 {"upright cylinder apart", scenes(box, cylinder, true, true)},
                                 {"upright cylinder overlapping", scenes(box, cylinder, false, true)},
                                 {"cylinder-cylinder apart", scenes(cylinder, cylinder, true, false)},
                                 {"cylinder-cylinder overlapping", scenes(cylinder, cylinder, false, false)}};
  return all;
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

  void print() const {
    std::printf("\n%-30s %9s %9s %9s %9s %9s %9s %9s %9s\n", "scenes (256 each)", "ours ns", "FCL ns", "Bullet ns",
                "FCL/ours", "Bul./ours", "ours off", "FCL off", "Bul. off");
    for (const Family& family : families()) {
      const double mine = time(family, "/ours");
      const double fcl = time(family, "/FCL");
      const double bullet = time(family, "/Bullet");
      if (std::isnan(mine) || std::isnan(fcl) || std::isnan(bullet)) continue;
      Off off_ours;
      Off off_fcl;
      Off off_bullet;
      for (std::size_t i = 0; i < family.scenes.size(); i += 8) {
        const Scene& scene = family.scenes[i];
        const double want = certified(scene);
        off_ours.take(ours(scene), want);
        off_fcl.take(fcls(scene), want);
        off_bullet.take(bullets(scene), want);
      }
      std::printf("%-30s %9.0f %9.0f %9.0f %9.1f %9.1f %9.0e %9.0e %9.0e", family.name.c_str(), mine, fcl, bullet,
                  fcl / mine, bullet / mine, off_ours.worst, off_fcl.worst, off_bullet.worst);
      if (off_fcl.failed > 0) std::printf("  (FCL gave no answer on %d of 32)", off_fcl.failed);
      if (off_bullet.failed > 0) std::printf("  (Bullet gave no answer on %d of 32)", off_bullet.failed);
      std::printf("\n");
    }
  }

 private:
  struct Off {
    double worst = 0.0;  // mm
    int failed = 0;
    void take(double said, double want) {
      if (std::isnan(said)) {
        ++failed;
      } else {
        worst = std::max(worst, std::abs(said - want));
      }
    }
  };

  [[nodiscard]] double time(const Family& family, const char* whose) const {
    const auto found = time_.find(family.name + whose);
    return found == time_.end() ? std::nan("") : found->second;
  }

  std::map<std::string, double> time_;
};

template <double (*measure)(const Scene&)>
void run(benchmark::State& state, const std::vector<Scene>* scenes) {
  std::size_t i = 0;
  for (auto _ : state) {
    benchmark::DoNotOptimize(measure((*scenes)[i]));
    i = (i + 1) % scenes->size();
  }
}

}  // namespace

int main(int count, char** words) {
  benchmark::Initialize(&count, words);
  if (benchmark::ReportUnrecognizedArguments(count, words)) return 2;
  for (const Family& family : families()) {
    benchmark::RegisterBenchmark((family.name + "/ours").c_str(), run<ours>, &family.scenes);
    benchmark::RegisterBenchmark((family.name + "/FCL").c_str(), run<fcls>, &family.scenes);
    benchmark::RegisterBenchmark((family.name + "/Bullet").c_str(), run<bullets>, &family.scenes);
  }
  Table table;
  benchmark::RunSpecifiedBenchmarks(&table);
  table.print();
  return 0;
}
