// Our gap against exact arithmetic (CGAL) on random scenes of polyhedra: boxes, prisms and meshes, most of them
// touching or nearly so. exact_measure.h says what the truth is; here is what is compared with it:
//   - Apart: we must not say so unless all parts are strictly apart, exactly. Our distance within `allowed` of the
//   truth.
//   - Overlapping: not unless the two share an inner point, exactly. Convex pairs: our depth within `allowed` of the
//     exact one, unless one is a mesh and we say "at least". Others: our way out is no shorter than what the deepest
//     pair of parts needs, and frees b: nothing is deeper than `left_over` afterwards. (The way out may end where
//     pieces still touch by `touch_mm`; where our pieces and the oracle's parts are cut differently, two such touches
//     make a little more.)
//   - Undecided: only where the exact distance, or the exact depth of a convex pair, is within `touching`, or where the
//     deepest pair of parts of other solids is within `left_over`, for the same reason.
// Usage: exact_oracle [SCENES [FIRST]]. Ends with 0 if all agree and each family had enough of each kind. A scene that
// disagrees is printed as C++ for a test. `exact_oracle 1 N` repeats scene N.
#include "exact_measure.h"
#include "exact_scenes.h"
#include "geometry/gap.h"
#include "geometry/limits.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <future>
#include <thread>

namespace {

using namespace baywright::oracle;
using baywright::geometry::Bound;
using baywright::geometry::Gap;
using baywright::geometry::gap;
using baywright::geometry::Relation;

constexpr double allowed = 1e-9;
constexpr double touching = baywright::geometry::touch_mm + 1e-11;  // and the rounding of coordinates
constexpr double left_over = 2.0 * baywright::geometry::touch_mm;
constexpr double near_mm = 1e-6;
constexpr int most_printed = 5;  // of each family and thread

struct Tally {
  long apart = 0;
  long overlapping = 0;
  long touching = 0;          // exactly
  long near_apart = 0;        // within near_mm
  long near_overlapping = 0;  // known for convex pairs only: elsewhere by the deepest pair of parts
  long undecided = 0;
  long exact = 0;  // scenes that doubles with a margin could not settle
  long wrong_sign = 0;
  long wrong_undecided = 0;
  long wrong_mm = 0;
  long beyond_own_error = 0;  // off by more than the answer says of itself
  double worst_mm = 0.0;      // apart, and convex overlapping
  double widest_undecided = 0.0;
  std::string shown;
  int printed = 0;

  void add(const Tally& other) {
    apart += other.apart;
    overlapping += other.overlapping;
    touching += other.touching;
    near_apart += other.near_apart;
    near_overlapping += other.near_overlapping;
    undecided += other.undecided;
    exact += other.exact;
    wrong_sign += other.wrong_sign;
    wrong_undecided += other.wrong_undecided;
    wrong_mm += other.wrong_mm;
    beyond_own_error += other.beyond_own_error;
    worst_mm = std::max(worst_mm, other.worst_mm);
    widest_undecided = std::max(widest_undecided, other.widest_undecided);
    shown += other.shown;
  }
  [[nodiscard]] long faults() const { return wrong_sign + wrong_undecided + wrong_mm + beyond_own_error; }
};

class Comparison {
 public:
  Comparison(const Scene& scene, std::uint64_t number, Tally& tally)
      : scene_(scene),
        number_(number),
        truth_(measure(scene.a, scene.pose_a, scene.b, scene.pose_b)),
        ours_(gap({scene.a.solid, scene.pose_a}, {scene.b.solid, scene.pose_b})),
        tally_(tally) {}

  void run() {
    count();
    if (ours_.relation == Relation::undecided) {
      tally_.widest_undecided = std::max(tally_.widest_undecided, truth_.low);
      if (!(truth_.low <= (truth_.sign < 0 && !known_convex() ? left_over : touching))) {
        return fault(tally_.wrong_undecided, "undecided");
      }
      const double sign = truth_.sign < 0 ? -1.0 : 1.0;
      const double wrong = off(sign * ours_.mm, truth_.low, truth_.high);
      if ((known_convex() || truth_.sign >= 0) && !(wrong <= allowed)) fault(tally_.wrong_mm, "mm");
      return;
    }
    if ((ours_.relation == Relation::apart ? 1 : -1) != truth_.sign) return fault(tally_.wrong_sign, "sign");
    truth_.sign > 0 ? check_distance() : check_depth();
  }

 private:
  void count() {
    ++(truth_.sign > 0 ? tally_.apart : truth_.sign < 0 ? tally_.overlapping : tally_.touching);
    if (truth_.sign > 0 && truth_.high < near_mm) ++tally_.near_apart;
    if (truth_.sign < 0 && truth_.low < near_mm) ++tally_.near_overlapping;
    if (truth_.exact) ++tally_.exact;
    if (ours_.relation == Relation::undecided) ++tally_.undecided;
  }

  /// A mesh may be convex without being known for it.
  [[nodiscard]] bool known_convex() const { return scene_.a.solid.convex() && scene_.b.solid.convex(); }

  /// How far `mm` is outside of low..high; infinite for no number.
  static double off(double mm, double low, double high) {
    if (!std::isfinite(mm)) return std::numeric_limits<double>::infinity();
    return std::max({0.0, low - mm, mm - high});
  }

  void hold(double wrong) {
    tally_.worst_mm = std::max(tally_.worst_mm, wrong);
    if (!(wrong <= allowed)) return fault(tally_.wrong_mm, "mm");
    // 1e-12: what rounding of the corners does to the truth's own bounds in doubles.
    if (!(wrong <= ours_.error + 1e-12)) fault(tally_.beyond_own_error, "beyond its own error");
  }

  void check_distance() {
    if (ours_.bound != Bound::exact) return fault(tally_.wrong_mm, "bound");
    hold(off(ours_.mm, truth_.low, truth_.high));
  }

  void check_depth() {
    if (known_convex() && ours_.bound != Bound::exact) return fault(tally_.wrong_mm, "bound");
    if (std::isfinite(truth_.high) && ours_.bound == Bound::exact) {
      return hold(off(-ours_.mm, truth_.low, truth_.high));
    }
    if (ours_.bound == Bound::surface) return fault(tally_.wrong_mm, "bound");
    if (!(-ours_.mm >= truth_.low - allowed)) return fault(tally_.wrong_mm, "depth below that of a pair of parts");
    const Vec3 way = ours_.direction * -ours_.mm;
    if (!frees(scene_.a, scene_.pose_a, scene_.b, scene_.pose_b, way, left_over)) {
      fault(tally_.wrong_mm, "way out does not free");
    }
  }

  void fault(long& counter, const char* what) {
    ++counter;
    if (++tally_.printed > most_printed) return;
    const char* relation = ours_.relation == Relation::apart         ? "apart"
                           : ours_.relation == Relation::overlapping ? "overlapping"
                                                                     : "undecided";
    tally_.shown += "scene " + std::to_string(number_) + ": " + what + ". Ours: " + relation + " " + text(ours_.mm) +
                    " +- " + text(ours_.error) + " bound " + std::to_string(static_cast<int>(ours_.bound)) +
                    "; exact: sign " + std::to_string(truth_.sign) + ", " + text(truth_.low) + " to " +
                    text(truth_.high) + "\n" + code(scene_);
  }

  const Scene& scene_;
  std::uint64_t number_;
  Truth truth_;
  Gap ours_;
  Tally& tally_;
};

/// Scene `number` is of family number % families: both threads get the same mix.
std::vector<Tally> run(std::uint64_t from, std::uint64_t to, std::uint64_t step) {
  std::vector<Tally> tallies(families().size());
  for (std::uint64_t number = from; number < to; number += step) {
    const std::size_t family = number % families().size();
    const Scene scene = any_scene(families()[family], number);
    Comparison(scene, number, tallies[family]).run();
  }
  return tallies;
}

/// A family that hardly ever overlaps or touches would prove little.
bool enough(const Tally& tally, long scenes) {
  return tally.apart * 5 >= scenes && tally.overlapping * 5 >= scenes && tally.near_apart * 20 >= scenes &&
         tally.near_overlapping * 50 >= scenes && tally.touching > 0 && tally.undecided * 50 >= scenes;
}

}  // namespace

int main(int count, char** words) {
  const std::uint64_t scenes = count > 1 ? std::strtoull(words[1], nullptr, 10) : 20000;
  const std::uint64_t first = count > 2 ? std::strtoull(words[2], nullptr, 10) : 0;
  const std::uint64_t threads = std::max(1U, std::thread::hardware_concurrency());
  std::vector<std::future<std::vector<Tally>>> running;
  for (std::uint64_t i = 0; i < threads; ++i) {
    running.push_back(std::async(std::launch::async, run, first + i, first + scenes, threads));
  }
  std::vector<Tally> total(families().size());
  for (auto& one : running) {
    const auto tallies = one.get();
    for (std::size_t i = 0; i < total.size(); ++i) total[i].add(tallies[i]);
  }
  bool good = true;
  std::printf("%-22s %8s %8s %8s %8s %8s %8s %8s %9s %9s %6s %6s %6s %6s\n", "family", "apart", "overlap", "touch",
              "near +", "near -", "undec.", "exact", "worst mm", "widest", "sign", "undec.", "mm", "error");
  for (std::size_t i = 0; i < total.size(); ++i) {
    const Tally& t = total[i];
    std::printf("%-22s %8ld %8ld %8ld %8ld %8ld %8ld %8ld %9.1e %9.1e %6ld %6ld %6ld %6ld\n", families()[i].name,
                t.apart, t.overlapping, t.touching, t.near_apart, t.near_overlapping, t.undecided, t.exact, t.worst_mm,
                t.widest_undecided, t.wrong_sign, t.wrong_undecided, t.wrong_mm, t.beyond_own_error);
    good = good && t.faults() == 0;
    const long here = t.apart + t.overlapping + t.touching;
    if (scenes >= 5000 && !enough(t, here)) {
      std::printf("too few of some kind in the family above\n");
      good = false;
    }
  }
  for (const Tally& t : total) std::fputs(t.shown.c_str(), stdout);
  return good ? EXIT_SUCCESS : EXIT_FAILURE;
}
