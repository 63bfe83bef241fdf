#include "viewer/stack_layout.h"

#include "output/lettering.h"

#include <algorithm>
#include <cmath>

namespace baywright::viewer {

namespace {

double total(const std::vector<output::Band>& bands) {
  double sum = 0.0;
  for (const output::Band& band : bands) sum += band.length;
  return sum;
}

/// Upper edges of labels that keep off each other, each as near to its wish as the others allow.
void spread_labels(std::vector<float*> labels, const std::vector<float>& heights, float low, float high) {
  std::vector<std::size_t> order(labels.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return *labels[a] < *labels[b]; });
  std::vector<double> wanted;
  std::vector<double> halves;
  for (const std::size_t i : order) {
    wanted.push_back(static_cast<double>(*labels[i]));
    halves.push_back(0.5 * static_cast<double>(heights[i]));
  }
  const auto middles = output::spread(wanted, halves, static_cast<double>(low), static_cast<double>(high));
  for (std::size_t i = 0; i < order.size(); ++i) *labels[order[i]] = static_cast<float>(middles[i] - halves[i]);
}

}  // namespace

StackColumns columns_of(const Rectangle& area, float scale) {
  StackColumns out;
  const float gap = 5.0F * scale;
  out.narrow_width = 14.0F * scale;
  out.wide_width = std::clamp(0.2F * area.width, 44.0F * scale, 90.0F * scale);
  const float labels = std::max(area.width - out.narrow_width - out.wide_width - 4.0F * gap, 2.0F);
  out.left = 0.36F * labels;
  out.right_width = labels - out.left;
  out.narrow = area.x + out.left + gap;
  out.wide = out.narrow + out.narrow_width + gap;
  out.right = out.wide + out.wide_width + 2.0F * gap;
  return out;
}

StackLayout layout_of(const output::StackColumn& column, const Rectangle& area, float scale, bool down,
                      const LabelHeights& labels, std::optional<float> hold) {
  StackLayout out;
  out.down = down;
  const double opened = total(column.open);
  const double closed = total(column.close);
  const double longest = std::max({opened, closed, 1e-3});
  // At the open end the gap's label has its room.
  const float room = std::max(area.height - 0.5F * labels.gap - 8.0F * scale, 1.0F);
  out.per_mm = hold.value_or(static_cast<float>(static_cast<double>(room) / longest));
  out.base = down ? area.y : area.y + area.height;
  const auto y = [&](double mm) {
    return out.base + (down ? 1.0F : -1.0F) * out.per_mm * static_cast<float>(std::clamp(mm, -1e6, 1e6));
  };
  const StackColumns columns = columns_of(area, scale);
  const auto stand = [&](const std::vector<output::Band>& bands, bool open, const std::vector<float>& heights) {
    double from = 0.0;
    for (std::size_t i = 0; i < bands.size(); ++i) {
      const float a = y(from);
      const float b = y(from += bands[i].length);
      const Rectangle at{open ? columns.narrow : columns.wide, std::min(a, b),
                         open ? columns.narrow_width : columns.wide_width, std::abs(b - a)};
      out.boxes.push_back({i, open, at, b, 0.5F * (a + b), i < heights.size() ? heights[i] : 0.0F});
    }
  };
  stand(column.open, true, labels.open);
  stand(column.close, false, labels.close);
  out.open_end = y(opened);
  out.asked = y(opened - column.gap.asked);
  const float end = y(closed);
  out.gap = {columns.wide, std::min(end, out.open_end), columns.wide_width, std::abs(end - out.open_end)};
  // Beside the gap where it is wide, else beyond the end, so that the bands keep their names close by.
  out.gap_label = 0.5F * (end + out.open_end);
  if (out.gap.height < labels.gap) out.gap_label += (down ? 0.35F : -0.35F) * labels.gap;
  for (const bool open : {true, false}) {
    std::vector<float*> wanted;
    std::vector<float> heights;
    for (StackBox& box : out.boxes)
      if (box.open == open) {
        wanted.push_back(&box.label);
        heights.push_back(box.label_height);
      }
    if (!open) {
      wanted.push_back(&out.gap_label);
      heights.push_back(labels.gap);
    }
    spread_labels(std::move(wanted), heights, area.y, area.y + area.height);
  }
  return out;
}

}  // namespace baywright::viewer
