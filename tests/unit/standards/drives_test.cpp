#include "standards/drives.h"

#include <doctest/doctest.h>

using namespace baywright::standards;

TEST_CASE("drives by name") {
  CHECK(drives::families().size() == 2);
  for (const drives::Family& family : drives::families()) {
    CHECK(drives::family(family.id) == &family);
    for (const drives::Height& height : family.heights) CHECK(drives::height(family, height.code) == &height);
  }
  for (const drives::Edsff& form : drives::edsff()) CHECK(drives::edsff(form.id) == &form);
  CHECK(drives::family("2.5") == nullptr);
  CHECK(drives::family("") == nullptr);
  CHECK(drives::height(drives::families()[0], "26.1") == nullptr);  // of the other family
  CHECK(drives::height(drives::families()[0], "") == nullptr);
  CHECK(drives::edsff("e2") == nullptr);
}

TEST_CASE("holes and connector lie on their drive") {
  for (const drives::Family& family : drives::families()) {
    CAPTURE(family.id);
    for (const auto& rows : {family.bottom_rows, family.side_rows}) {
      double before = 0.0;
      for (const drives::HoleRow& row : rows) {
        CAPTURE(row.name);
        CHECK(!row.along.empty());
        CHECK(row.x() > before);  // in order from the connector end
        CHECK(row.x() < family.length.high());
        before = row.x();
      }
    }
    CHECK(family.bottom_from_edge.high() + family.bottom_across.high() < family.width.low());
    CHECK(family.tongue.from_edge.nominal + family.tongue.length.nominal < family.width.low());
    for (const drives::Height& height : family.heights) CHECK(family.side_up.high() < height.height.high());
  }
}

TEST_CASE("a screw may always reach as deep as the promised thread") {
  for (const drives::Family& family : drives::families()) {
    for (const drives::Height& height : family.heights) {
      for (const drives::Depth& depth : {drives::bottom_depth(family, height), drives::side_depth(family, height)}) {
        CHECK(depth.most.high() >= depth.thread.low());
        if (depth.warned) {
          CHECK(depth.warned->high() < depth.most.high());
          CHECK(depth.warned->high() >= depth.thread.low());
        }
      }
    }
  }
}
