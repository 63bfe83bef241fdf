#include "output/dimension_line.h"

#include "output/lettering.h"

#include <algorithm>
#include <cmath>

namespace baywright::output {

namespace {

constexpr double arrow_length = 2.0;
constexpr double outside = 3.5;  // of a line that is led on beyond its ends
constexpr double lane_step = 3.5;
constexpr double line_height = 3.3;  // of labels
constexpr double label_gap = 0.8;

}  // namespace

void draw_arrow(Group& group, const Vec2& tip, const Vec2& along, const std::string& colour) {
  const Vec2 side(-along.y, along.x);
  const Vec2 back = tip - along * arrow_length;
  group.add(Area{{{tip, back + side * 0.33, back - side * 0.33}}, colour, Pattern::none, 0.0, 1.0, {}});
}

void draw_dimension(Group& group, const Vec2& a, const Vec2& b, const std::string& figures) {
  const double length = glm::distance(a, b);
  const Vec2 along = (b - a) / length;
  const bool inside = length >= 3.0 * arrow_length;
  if (inside) {
    group.add(Line{{a, b}, false, {}});
    draw_arrow(group, a, -along, ink);
    draw_arrow(group, b, along, ink);
  } else {
    group.add(Line{{a - along * outside, b + along * outside}, false, {}});
    draw_arrow(group, a, along, ink);
    draw_arrow(group, b, -along, ink);
  }
  if (figures.empty()) return;
  const double width = text_width(figures, smallest_text);
  const bool upright = std::abs(along.y) > 0.5;
  Text text{0.5 * (a + b), figures, smallest_text, Anchor::middle, false, upright, true, ink};
  text.at += upright ? Vec2(-0.8, 0.0) : Vec2(0.0, -0.8);
  if (width > length) {  // it has no room between the ends
    text.anchor = (upright ? along.y < 0.0 : along.x > 0.0) ? Anchor::start : Anchor::end;
    const double beyond = inside ? 1.0 : outside + 0.5;
    text.at = b + along * beyond + (upright ? Vec2(0.9, 0.0) : Vec2(0.0, 0.9));
  }
  group.add(text);
}

namespace {

struct Lanes {
  std::vector<int> of;  // lane of each height
  int count = 0;
};

/// The first lane, from the view outward, in which the height overlaps no other; shorter heights first, so that longer
/// ones lie outside.
Lanes lanes(const std::vector<Height>& heights) {
  std::vector<std::size_t> order(heights.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  const auto length = [&](std::size_t i) { return heights[i].low - heights[i].high; };
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return length(a) < length(b) - 1e-9; });
  Lanes out{std::vector<int>(heights.size(), -1), 0};
  for (const std::size_t i : order) {
    int lane = 0;
    const auto taken = [&](std::size_t j) {
      return out.of[j] == lane && heights[j].high < heights[i].low - 1e-9 && heights[i].high < heights[j].low - 1e-9;
    };
    while (std::any_of(order.begin(), order.end(), taken)) ++lane;
    out.of[i] = lane;
    out.count = std::max(out.count, lane + 1);
  }
  return out;
}

double label_x(double left, int lane_count) {
  return left + 3.0 + lane_step * lane_count + 4.0;
}

std::vector<std::string> label(const Height& height, double width) {
  const std::string whole = height.name + ' ' + height.value;
  if (text_width(whole, smallest_text) <= width) return {whole};
  std::vector<std::string> lines = broken(height.name, width, smallest_text, 2);
  lines.push_back(shortened(height.value, width, smallest_text));
  return lines;
}

}  // namespace

double heights_room(const std::vector<Height>& heights, double left, double right) {
  const double width = right - label_x(left, lanes(heights).count);
  double room = 0.0;
  for (const Height& height : heights)
    room += line_height * static_cast<double>(label(height, width).size()) + label_gap;
  return room;
}

double draw_heights(Group& group, std::vector<Height> heights, double left, double right, double top, double bottom) {
  std::stable_sort(heights.begin(), heights.end(),
                   [](const Height& a, const Height& b) { return a.low + a.high < b.low + b.high; });
  const Lanes lane = lanes(heights);
  const double x = label_x(left, lane.count);
  std::vector<double> wanted;
  std::vector<double> halves;
  std::vector<std::vector<std::string>> labels;
  for (const Height& height : heights) {
    labels.push_back(label(height, right - x));
    wanted.push_back(0.5 * (height.low + height.high));
    halves.push_back(0.5 * (line_height * static_cast<double>(labels.back().size()) + label_gap));
  }
  const std::vector<double> middles = spread(wanted, halves, top, bottom);
  double end = top;
  for (std::size_t i = 0; i < heights.size(); ++i) {
    const Height& height = heights[i];
    const double at = left + 3.0 + lane_step * lane.of[i];
    group.add(Line{{{height.from, height.low}, {at + 1.0, height.low}}, false, {}});
    group.add(Line{{{height.from_high, height.high}, {at + 1.0, height.high}}, false, {}});
    group.add(Line{{{at, height.low}, {at, height.high}}, false, {}});
    if (height.low - height.high >= 2.5 * arrow_length) {
      draw_arrow(group, {at, height.low}, {0, 1}, ink);
      draw_arrow(group, {at, height.high}, {0, -1}, ink);
    } else {
      for (const double level : {height.low, height.high})  // no room for arrows: strokes, as ISO 129-1 allows
        group.add(Line{{{at - 0.6, level + 0.6}, {at + 0.6, level - 0.6}}, false, {thick_line, ink, false}});
    }
    const double elbow = left + 3.0 + lane_step * lane.count + 1.2;
    group.add(Line{{{at, wanted[i]}, {elbow, middles[i]}, {x - 0.8, middles[i]}}, false, {thin_line, grey, false}});
    double y = middles[i] - halves[i] + 0.5 * label_gap + 2.4;
    for (std::string& line : labels[i]) {
      group.add(Text{{x, y}, std::move(line), smallest_text, Anchor::start, false, false, false, ink});
      y += line_height;
    }
    end = std::max(end, middles[i] + halves[i]);
  }
  return end;
}

}  // namespace baywright::output
