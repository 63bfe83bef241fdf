#include "output/mark.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace baywright::output {

using fit::Verdict;

namespace {

Outline square(const Vec2& at, double from, double to) {
  return {at + Vec2(from, from), at + Vec2(to, from), at + Vec2(to, to), at + Vec2(from, to)};
}

/// Places where the level line y = `level` enters and leaves the outlines, ascending. A corner on the line counts with
/// the side above it only, so that a line through a corner crosses once.
std::vector<double> crossings(const std::vector<Outline>& outlines, double level) {
  std::vector<double> found;
  for (const Outline& outline : outlines)
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const Vec2& p = outline[i];
      const Vec2& q = outline[(i + 1) % outline.size()];
      if ((p.y > level) == (q.y > level)) continue;
      found.push_back(p.x + (q.x - p.x) * (level - p.y) / (q.y - p.y));
    }
  std::sort(found.begin(), found.end());
  return found;
}

void rule(const Area& area, double degrees, std::vector<std::pair<Vec2, Vec2>>& lines) {
  const double angle = degrees * std::numbers::pi / 180.0;
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  std::vector<Outline> turned = area.outlines;
  double low = std::numeric_limits<double>::infinity();
  double high = -low;
  for (Outline& outline : turned)
    for (Vec2& p : outline) {
      p = {c * p.x + s * p.y, c * p.y - s * p.x};
      low = std::min(low, p.y);
      high = std::max(high, p.y);
    }
  for (double k = std::ceil(low / area.pitch); k * area.pitch < high; ++k) {
    const double level = k * area.pitch;
    const std::vector<double> ends = crossings(turned, level);
    for (std::size_t i = 0; i + 1 < ends.size(); i += 2)
      lines.push_back({{c * ends[i] - s * level, s * ends[i] + c * level},
                       {c * ends[i + 1] - s * level, s * ends[i + 1] + c * level}});
  }
}

void dot(const Area& area, std::vector<Vec2>& dots) {
  double low = std::numeric_limits<double>::infinity();
  double high = -low;
  for (const Outline& outline : area.outlines)
    for (const Vec2& p : outline) {
      low = std::min(low, p.y);
      high = std::max(high, p.y);
    }
  for (double k = std::ceil(low / area.pitch); k * area.pitch < high; ++k) {
    const std::vector<double> ends = crossings(area.outlines, k * area.pitch);
    for (std::size_t i = 0; i + 1 < ends.size(); i += 2)
      for (double j = std::ceil(ends[i] / area.pitch); j * area.pitch < ends[i + 1]; ++j)
        dots.emplace_back(j * area.pitch, k * area.pitch);
  }
}

}  // namespace

std::string colour(Verdict verdict, bool dark) {
  switch (verdict) {
    case Verdict::fits:
      return dark ? "#56B4E9" : "#0B63A5";
    case Verdict::marginal:
      return dark ? "#FFE066" : "#9E8200";
    case Verdict::does_not_fit:
      return dark ? "#D4667A" : "#6F0A1C";
    case Verdict::undecided:
      return dark ? "#9AA1AB" : "#7F8388";
  }
  return {};
}

void draw_mark(Group& group, Verdict verdict, const Vec2& at, double size, bool dark) {
  const double unit = size / 16.0;
  const double half = 0.85;  // of the stroke of 1.7 units, which stays inside its square
  const Pen pen{1.7 * unit, colour(verdict, dark), false};
  const auto filled = [&](double from, double to) {
    group.add(Area{{square(at, unit * from, unit * to)}, pen.colour, Pattern::none, 0.0, 1.0, pen});
  };
  const auto outlined = [&](double from, double to) {
    group.add(Line{square(at, unit * (from + half), unit * (to - half)), true, pen});
  };
  switch (verdict) {
    case Verdict::fits:
      filled(0, 6), filled(10, 16);
      break;
    case Verdict::marginal:
      filled(0, 8), outlined(8, 16);
      break;
    case Verdict::does_not_fit:
      outlined(0, 11), outlined(5, 16), filled(5, 11);
      break;
    case Verdict::undecided: {
      Pen dashed = pen;
      dashed.dashed = true;
      group.add(Line{square(at, unit * half, unit * (16 - half)), true, dashed});
    }
  }
}

void draw_verdict_area(Group& group, Verdict verdict, bool overlap, const std::vector<Outline>& outlines) {
  const std::string own = colour(verdict);
  Area area{outlines, paper, Pattern::none, 0.0, 1.2, {0.3, own, false}};
  if (verdict == Verdict::does_not_fit && overlap) area.pattern = Pattern::grid;
  if (verdict == Verdict::marginal) area.pattern = Pattern::dots;
  for (const Outline& outline : outlines) group.add(Line{outline, true, {thick_line + 0.3, paper, false}});
  group.add(area);
  for (const Outline& outline : outlines) group.add(Line{outline, true, {thick_line, own, false}});
}

Strokes strokes(const Area& area) {
  Strokes out;
  if (area.pattern == Pattern::hatch) rule(area, area.degrees, out.lines);
  if (area.pattern == Pattern::grid) rule(area, 0.0, out.lines), rule(area, 90.0, out.lines);
  if (area.pattern == Pattern::dots) dot(area, out.dots);
  return out;
}

}  // namespace baywright::output
