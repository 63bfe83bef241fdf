#include "viewer/stack_layout.h"

#include <cmath>
#include <doctest/doctest.h>
#include <limits>
#include <string>

using namespace baywright;
using namespace baywright::viewer;
using output::StackColumn;

namespace {

StackColumn column_of(std::vector<double> open, std::vector<double> close) {
  StackColumn out;
  for (const double length : open) out.open.push_back({"open", "", length, 0.1, 0.1});
  for (const double length : close) out.close.push_back({"close", "", length, 0.1, 0.1});
  for (const double length : open) out.gap.nominal += length;
  for (const double length : close) out.gap.nominal -= length;
  return out;
}

LabelHeights labels(const StackColumn& column, float each) {
  return {std::vector<float>(column.open.size(), each), std::vector<float>(column.close.size(), each), 70.0F};
}

constexpr Rectangle area{20.0F, 130.0F, 292.0F, 470.0F};

}  // namespace

TEST_CASE("bands are to scale, join end to end, and what one bar lacks of the other is the gap") {
  const StackColumn column = column_of({9.1}, {0.05, 2.45, 0.8, 1.4, 0.7, 4.0});
  for (const bool down : {false, true}) {
    const StackLayout got = layout_of(column, area, 1.0F, down, labels(column, 37.0F), std::nullopt);
    float end = got.base;
    for (const StackBox& box : got.boxes) {
      const auto& band = (box.open ? column.open : column.close)[box.band];
      CHECK(std::abs(box.at.height - got.per_mm * static_cast<float>(band.length)) <= 1e-2F);
      if (box.open) continue;
      CHECK(std::abs((down ? box.at.y : box.at.y + box.at.height) - end) <= 1e-2F);
      end = box.end;
    }
    CHECK(std::abs(got.gap.height - got.per_mm * static_cast<float>(std::abs(column.gap.nominal))) <= 1e-2F);
    CHECK(got.gap.y >= area.y - 1e-2F);
    CHECK(got.gap.y + got.gap.height <= area.y + area.height + 1e-2F);
  }
}

TEST_CASE("labels of one side never overlap where there is room for them, and stay in the area") {
  const StackColumn column = column_of({9.1}, {0.05, 0.134, 2.3, 0.8, 1.4, 0.7, 4.0});
  const StackLayout got = layout_of(column, area, 1.0F, false, labels(column, 37.0F), std::nullopt);
  for (const StackBox& a : got.boxes) {
    CHECK(a.label >= area.y - 0.1F);
    CHECK(a.label + a.label_height <= area.y + area.height + 0.1F);
    if (a.open) continue;
    CHECK((a.label + a.label_height <= got.gap_label + 0.1F || got.gap_label + 70.0F <= a.label + 0.1F));
    for (const StackBox& b : got.boxes)
      if (!b.open && b.band != a.band)
        CHECK((a.label + a.label_height <= b.label + 0.1F || b.label + b.label_height <= a.label + 0.1F));
  }
}

TEST_CASE("while a band is held the scale stays, whatever the band becomes") {
  const StackColumn before = column_of({9.1}, {8.0});
  const StackLayout first = layout_of(before, area, 1.0F, false, labels(before, 37.0F), std::nullopt);
  const StackColumn after = column_of({19.1}, {8.0});
  const StackLayout held = layout_of(after, area, 1.0F, false, labels(after, 37.0F), first.per_mm);
  CHECK(held.per_mm == first.per_mm);
  CHECK(std::abs((first.open_end - held.open_end) - 10.0F * first.per_mm) <= 1e-2F);
}

TEST_CASE("columns of no length, of nothing, or in no room are laid out finite") {
  for (const StackColumn& column : {column_of({}, {}), column_of({1e-9}, {}), column_of({1e9}, {1e-9})})
    for (const Rectangle& room : {area, Rectangle{0.0F, 0.0F, 1.0F, 1.0F}, Rectangle{}}) {
      const StackLayout got = layout_of(column, room, 3.0F, false, labels(column, 100.0F), std::nullopt);
      CHECK(std::isfinite(got.gap.height));
      CHECK(std::isfinite(got.gap_label));
      for (const StackBox& box : got.boxes) CHECK(std::isfinite(box.at.height));
    }
}

TEST_CASE("the labels and bars of a column stand side by side within its width") {
  for (const float width : {200.0F, 292.0F, 900.0F})
    for (const float scale : {0.75F, 1.0F, 3.0F}) {
      const StackColumns got = columns_of({10.0F, 0.0F, width * scale, 500.0F}, scale);
      CHECK(got.left > 0.0F);
      CHECK(10.0F + got.left < got.narrow);
      CHECK(got.narrow + got.narrow_width < got.wide);
      CHECK(got.wide + got.wide_width < got.right);
      CHECK(got.right + got.right_width <= 10.0F + width * scale + 0.1F);
      CHECK(got.right_width >= got.left);
    }
}
