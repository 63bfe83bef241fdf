// Our gap and FCL's signed distance on the same scenes in one run: boxes and cylinders, apart and overlapping, with all
// poses and shapes made ready before the clock starts on both sides. After the usual table: how many times faster we
// are, and how far each is off a certified value (apart, ours: both bounds meet within 1e-9; overlapping: the largest
// separation over a dense set of directions, refined, which knows nothing of either method).
// FCL is asked for the signed distance with nearest points (its default solver and tolerance), since a gap says both.
// Run with --benchmark_min_time=0.05 for a quick look.
#include "geometry/gap.h"
#include "support/fcl_place.h"
#include "support/random_turn.h"

#include <algorithm>
#include <benchmark/benchmark.h>
#include <cmath>
#include <cstdio>
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
using baywright::test::fcl_place;
using baywright::test::Random;
using baywright::test::uniform;

struct Side {
  Piece piece;
  Pose pose;
  std::shared_ptr<fcl::CollisionObjectd> object;
};

Side any_side(Random& random, bool round, bool aligned) {
  const Vec3 size{uniform(random, 5, 50), uniform(random, 5, 50), uniform(random, 5, 50)};
  const Vec3 centre{uniform(random, -40, 40), uniform(random, -40, 40), uniform(random, -40, 40)};
  const Mat3 turn = aligned ? Mat3{1.0} : any_turn(random);
  Side side;
  side.piece.height = size.z;
  std::shared_ptr<fcl::CollisionGeometryd> shape;
  if (round) {
    side.piece.base = Piece::Base::disc;
    side.piece.radius = 0.5 * size.x;
    shape = std::make_shared<fcl::Cylinderd>(0.5 * size.x, size.z);
    side.pose = {turn, centre - turn * Vec3{0, 0, 0.5 * size.z}};
  } else {
    side.piece.corners = {{0, 0}, {size.x, 0}, {size.x, size.y}, {0, size.y}};
    shape = std::make_shared<fcl::Boxd>(size.x, size.y, size.z);
    side.pose = {turn, centre - turn * (0.5 * size)};
  }
  side.object = std::make_shared<fcl::CollisionObjectd>(shape, fcl_place(centre, turn));
  return side;
}

struct Scene {
  Side a;
  Side b;
};

double ours(const Scene& scene) {
  return gap(scene.a.piece, scene.a.pose, scene.b.piece, scene.b.pose).mm;
}

double theirs(const Scene& scene) {
  fcl::DistanceRequestd request(true, true);
  fcl::DistanceResultd result;
  try {
    return fcl::distance(scene.a.object.get(), scene.b.object.get(), request, result);
  } catch (const std::exception&) {
    return std::nan("");
  }
}

std::vector<Scene> scenes(bool round_a, bool round_b, bool apart, bool aligned) {
  Random random(5);
  std::vector<Scene> found;
  while (found.size() < 256) {
    Scene scene{any_side(random, round_a, aligned), any_side(random, round_b, aligned)};
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
  static std::vector<Family> all{{"box-box apart", scenes(false, false, true, false)},
                                 {"box-box overlapping", scenes(false, false, false, false)},
                                 {"aligned boxes apart", scenes(false, false, true, true)},
                                 {"aligned boxes overlapping", scenes(false, false, false, true)},
                                 {"box-cylinder apart", scenes(false, true, true, false)},
                                 {"box-cylinder overlapping", scenes(false, true, false, false)},
                                 {"upright cylinder apart", scenes(false, true, true, true)},
                                 {"upright cylinder overlapping", scenes(false, true, false, true)},
                                 {"cylinder-cylinder apart", scenes(true, true, true, false)},
                                 {"cylinder-cylinder overlapping", scenes(true, true, false, false)}};
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
    std::printf("\n%-32s %10s %10s %8s %14s %14s\n", "scenes (256 each)", "ours ns", "FCL ns", "ratio", "ours off, mm",
                "FCL off, mm");
    for (const Family& family : families()) {
      const auto mine = time_.find(family.name + "/ours");
      const auto other = time_.find(family.name + "/FCL");
      if (mine == time_.end() || other == time_.end()) continue;
      double off_ours = 0.0;
      double off_theirs = 0.0;
      int failed = 0;
      for (std::size_t i = 0; i < family.scenes.size(); i += 8) {
        const Scene& scene = family.scenes[i];
        const double want = certified(scene);
        off_ours = std::max(off_ours, std::abs(ours(scene) - want));
        const double said = theirs(scene);
        if (std::isnan(said)) {
          ++failed;
        } else {
          off_theirs = std::max(off_theirs, std::abs(said - want));
        }
      }
      std::printf("%-32s %10.0f %10.0f %8.1f %14.1e %14.1e", family.name.c_str(), mine->second, other->second,
                  other->second / mine->second, off_ours, off_theirs);
      failed > 0 ? std::printf("  (FCL gave no answer on %d of 32)\n", failed) : std::printf("\n");
    }
  }

 private:
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
    benchmark::RegisterBenchmark((family.name + "/FCL").c_str(), run<theirs>, &family.scenes);
  }
  Table table;
  benchmark::RunSpecifiedBenchmarks(&table);
  table.print();
  return 0;
}
