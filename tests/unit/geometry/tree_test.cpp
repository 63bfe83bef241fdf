#include "geometry/tree.h"

#include <doctest/doctest.h>
#include <numeric>
#include <random>

using namespace baywright::geometry;

namespace {

std::vector<Bounds> random_boxes(int count, double room, std::mt19937_64& random) {
  std::uniform_real_distribution<double> place(0, room);
  std::uniform_real_distribution<double> size(0, 4);
  std::vector<Bounds> boxes;
  for (int i = 0; i < count; ++i) {
    const Vec3 low{place(random), place(random), place(random)};
    boxes.push_back({low, low + Vec3{size(random), size(random), size(random)}});
  }
  return boxes;
}

}  // namespace

TEST_CASE("the tree finds what comparing with every box finds") {
  std::mt19937_64 random(20240504);
  std::uniform_real_distribution<double> reach(0, 20);
  std::uniform_int_distribution<int> counts(1, 120);
  long asked_pairs = 0;
  long hits = 0;
  for (int scene = 0; scene < 200; ++scene) {
    const std::vector<Bounds> boxes = random_boxes(counts(random), 20, random);
    const Tree tree(boxes);
    for (const Bounds& asked : random_boxes(20, 20, random)) {
      const double within = reach(random);
      std::vector<int> want;
      for (std::size_t i = 0; i < boxes.size(); ++i) {
        if (boxes[i].distance(asked) <= within) want.push_back(static_cast<int>(i));
      }
      std::vector<int> found{-5};  // what was there before goes
      tree.near(asked, within, found);
      CHECK(found == want);
      asked_pairs += static_cast<long>(boxes.size());
      hits += static_cast<long>(want.size());
    }
  }
  const double share = static_cast<double>(hits) / static_cast<double>(asked_pairs);
  CAPTURE(share);
  CHECK(share > 0.3);
  CHECK(share < 0.7);
}

TEST_CASE("touching boxes are near at reach zero") {
  const std::vector<Bounds> boxes{{{0, 0, 0}, {1, 1, 1}}, {{3, 0, 0}, {4, 1, 1}}};
  std::vector<int> found;
  Tree(boxes).near({{1, 0, 0}, {2, 1, 1}}, 0.0, found);
  CHECK(found == std::vector<int>{0});
  Tree(boxes).near({{1, 0, 0}, {2, 1, 1}}, 1.0, found);
  CHECK(found == std::vector<int>{0, 1});
}

TEST_CASE("an empty scene, equal boxes, and bounds that hold nothing") {
  std::vector<int> found{3};
  const Bounds unit{{0, 0, 0}, {1, 1, 1}};
  Tree().near(unit, 1e9, found);
  CHECK(found.empty());
  Tree(std::span<const Bounds>{}).near(unit, 1e9, found);
  CHECK(found.empty());
  const std::vector<Bounds> equal(100000, unit);
  Tree(equal).near(unit, 0.0, found);
  CHECK(found.size() == 100000);
  std::vector<Bounds> some(50, unit);
  some[20] = Bounds::empty();
  Tree(some).near(unit, 5.0, found);
  CHECK(found.size() == 49);
}
