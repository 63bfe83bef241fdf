#include "output/plot.h"

#include "output/html.h"
#include "output/lettering.h"
#include "output/sheet.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <optional>

namespace baywright::output {

using value::Standing;

namespace {

constexpr double letters = 14.0;  // pixels an em
constexpr double small_letters = 12.0;
constexpr double radius = 6.0;  // of a mark

std::string number(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.1f", value);
  return text;
}

std::string attribute(const char* name, double value) {
  return std::string(" ") + name + "=\"" + number(value) + '"';
}

/// 1, 2 or 5 times a power of ten: about `most` steps up to `high`.
double step_to(double high, double most) {
  if (!(high > 0.0)) return 1.0;
  const double power = std::pow(10.0, std::floor(std::log10(high / most)));
  for (const double times : {1.0, 2.0, 5.0})
    if (high / (power * times) <= most) return power * times;
  return 10.0 * power;
}

bool meet(const Box& a, const Box& b) {
  return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

/// So that a name's direction of writing ends with it. Its width is measured without the marks.
std::string isolated(const std::string& name) {
  return "\u2068" + name + "\u2069";
}

const char* class_of(Standing standing) {
  switch (standing) {
    case Standing::goes:
      return "goes";
    case Standing::may_go:
      return "may-go";
    case Standing::not_known:
      return "not-known";
    case Standing::goes_not:
      return "goes-not";
  }
  return "not-known";
}

/// Filled disc, half disc, ring, cross.
std::string mark(Standing standing, double x, double y) {
  const double r = radius;
  const std::string begin = std::string("<g class=\"mark ") + class_of(standing) + "\">";
  const std::string disc = attribute("cx", x) + attribute("cy", y) + attribute("r", r);
  switch (standing) {
    case Standing::goes:
      return begin + "<circle class=\"full\"" + disc + "/></g>";
    case Standing::may_go:
      return begin + "<circle" + disc + "/><path class=\"full\" d=\"M" + number(x - r) + ' ' + number(y) + 'A' +
             number(r) + ' ' + number(r) + " 0 0 0 " + number(x + r) + ' ' + number(y) + "Z\"/></g>";
    case Standing::not_known:
      return begin + "<circle" + disc + "/></g>";
    case Standing::goes_not: {
      const double d = 0.8 * r;
      return begin + "<path d=\"M" + number(x - d) + ' ' + number(y - d) + 'L' + number(x + d) + ' ' + number(y + d) +
             'M' + number(x - d) + ' ' + number(y + d) + 'L' + number(x + d) + ' ' + number(y - d) + "\"/></g>";
    }
  }
  return {};
}

class Drawing {
 public:
  Drawing(const Plot& plot, double width, double height) : plot_(plot), width_(width), height_(height) {
    double wide = 0.0;
    for (const PlotPoint& point : plot.points) {
      high_.x = std::max(high_.x, point.x);
      high_.y = std::max(high_.y, point.y);
    }
    step_ = {step_to(high_.x, 5.0), step_to(high_.y, 5.0)};
    high_ = {(std::floor(high_.x / step_.x) + 1.0) * step_.x, (std::floor(high_.y / step_.y) + 1.0) * step_.y};
    for (double y = 0.0; y <= high_.y * 1.0001; y += step_.y)
      wide = std::max(wide, text_width(plot.up_words(y), letters));
    area_ = {{wide + 14.0, 30.0}, {width - 14.0, height - 52.0}};
  }

  [[nodiscard]] DrawnPlot run() {
    DrawnPlot out;
    std::string& svg = out.svg;
    const std::string title = escaped_html(plot_.id + "-title");
    const std::string words = escaped_html(plot_.id + "-words");
    svg = "<svg class=\"plot\" role=\"img\" aria-labelledby=\"" + title + ' ' + words + "\" viewBox=\"0 0 " +
          number(width_) + ' ' + number(height_) + "\"><title id=\"" + title + "\">" + escaped_html(plot_.title) +
          "</title><desc id=\"" + words + "\">" + escaped_html(plot_.description) + "</desc>";
    svg += axes();
    for (const PlotPoint& point : plot_.points) {
      const Vec2 at = place(point);
      const double r = point.taken ? 2.0 * radius : 1.3 * radius;
      taken_.push_back({at - Vec2(r), at + Vec2(r)});
    }
    std::string names;
    for (std::size_t i = 0; i < plot_.points.size(); ++i) {
      const std::string name = named(i);
      out.all_named = out.all_named && !name.empty();
      names += name;
    }
    for (auto point = plot_.points.rbegin(); point != plot_.points.rend(); ++point) {  // what matters most on top
      const Vec2 at = place(*point);
      svg += "<g><title>" + escaped_html(point->words) + "</title>";
      if (point->taken)
        svg += "<circle class=\"ring\"" + attribute("cx", at.x) + attribute("cy", at.y) + attribute("r", 1.8 * radius) +
               "/>";
      svg += mark(point->standing, at.x, at.y) + "</g>";
    }
    svg += names + "</svg>";
    return out;
  }

 private:
  [[nodiscard]] Vec2 place(const PlotPoint& point) const { return place(point.x, point.y); }
  [[nodiscard]] Vec2 place(double x, double y) const {
    return {area_.low.x + area_.width() * x / high_.x, area_.high.y - area_.height() * y / high_.y};
  }

  static std::string text(const Vec2& at, const std::string& words, const char* anchor, const char* kind = "quiet") {
    return std::string("<text class=\"") + kind + "\" text-anchor=\"" + anchor + '"' + attribute("x", at.x) +
           attribute("y", at.y) + '>' + escaped_html(words) + "</text>";
  }

  [[nodiscard]] std::string axes() const {
    std::string out = "<g class=\"axes\">";
    for (double y = 0.0; y <= high_.y * 1.0001; y += step_.y) {
      const Vec2 at = place(0.0, y);
      out += "<line" + attribute("x1", area_.low.x) + attribute("x2", area_.high.x) + attribute("y1", at.y) +
             attribute("y2", at.y) + "/>";
      out += text({at.x - 8.0, at.y + 0.35 * letters}, plot_.up_words(y), "end");
    }
    double free = -1e9;  // tick labels must not run into each other
    for (double x = 0.0; x <= high_.x * 1.0001; x += step_.x) {
      const Vec2 at = place(x, 0.0);
      out += "<line" + attribute("x1", at.x) + attribute("x2", at.x) + attribute("y1", at.y) +
             attribute("y2", at.y + 5.0) + "/>";
      const std::string words = plot_.across_words(x);
      const double half = 0.5 * text_width(words, letters);
      const double middle = std::min(at.x, width_ - half - 2.0);
      if (middle - half < free) continue;
      out += text({middle, at.y + 8.0 + letters}, words, "middle");
      free = middle + half + 8.0;
    }
    out += text({area_.high.x, height_ - 8.0}, plot_.across + " \u2192", "end", "axis");
    out += text({2.0, letters}, "\u2191 " + plot_.up, "start", "axis");
    return out + "</g>";
  }

  /// The point's name where there is room for it, with a line to the point where it stands off; empty where there is
  /// none.
  [[nodiscard]] std::string named(std::size_t i) {
    const PlotPoint& point = plot_.points[i];
    const Vec2 at = place(point);
    const std::string words = shortened(point.name, 0.62 * width_, letters, point.taken);
    const double tagged = point.tag.empty() ? 0.0 : 1.2 * small_letters;
    const Vec2 size(std::max(text_width(words, letters, point.taken), text_width(point.tag, small_letters)),
                    1.25 * letters + tagged);
    const double near = point.taken ? 2.4 * radius : 1.8 * radius;
    std::vector<Vec2> offers;  // the box's upper left corner from the point, best first
    for (const double off : {0.0, 22.0, 44.0, 66.0}) {
      const double gap = near + off;
      const double middle = -0.5 * size.y;
      offers.insert(offers.end(), {{gap, middle},
                                   {-gap - size.x, middle},
                                   {-0.5 * size.x, -gap - size.y},
                                   {-0.5 * size.x, gap},
                                   {gap * 0.7, -gap * 0.7 - size.y},
                                   {gap * 0.7, gap * 0.7},
                                   {-gap * 0.7 - size.x, -gap * 0.7 - size.y},
                                   {-gap * 0.7 - size.x, gap * 0.7}});
    }
    for (std::size_t k = 0; k < offers.size(); ++k) {
      const Box box{at + offers[k], at + offers[k] + size};
      if (box.low.x < area_.low.x + 2.0 || box.high.x > width_ - 2.0 || box.low.y < letters + 6.0 ||
          box.high.y > area_.high.y - 1.0)
        continue;
      bool free = true;
      for (std::size_t j = 0; j < taken_.size(); ++j) free = free && (j == i || !meet(box, taken_[j]));
      const Vec2 foot = glm::max(box.low, glm::min(at, box.high));
      const bool led = k >= 8;
      if (!free || (led && crosses(at, foot, i))) continue;
      taken_.push_back(box);
      std::string out;
      if (led) {
        out = "<line class=\"leader\"" + attribute("x1", at.x) + attribute("y1", at.y) + attribute("x2", foot.x) +
              attribute("y2", foot.y) + "/>";
      }
      out +=
          text({box.low.x, box.low.y + 0.95 * letters}, isolated(words), "start", point.taken ? "name taken" : "name");
      if (point.tag.empty()) return out;
      return out + text({box.low.x, box.high.y - 0.3 * small_letters}, point.tag, "start", "tag");
    }
    return {};
  }

  /// Whether a line from point `i` runs over another point or a name.
  [[nodiscard]] bool crosses(const Vec2& from, const Vec2& to, std::size_t i) const {
    constexpr int steps = 24;
    for (int k = 0; k <= steps; ++k) {
      const Vec2 p = from + (to - from) * (static_cast<double>(k) / steps);
      for (std::size_t j = 0; j < taken_.size(); ++j)
        if (j != i && meet({p, p}, taken_[j])) return true;
    }
    return false;
  }

  const Plot& plot_;
  double width_;
  double height_;
  Vec2 high_{0.0};  // the axes' ends
  Vec2 step_{1.0};
  Box area_;
  std::vector<Box> taken_;  // points, then names
};

}  // namespace

DrawnPlot plot_svg(const Plot& plot, double width, double height) {
  return Drawing(plot, width, height).run();
}

std::string plot_mark(Standing standing) {
  const double half = radius + 2.0;
  return "<svg class=\"plot-mark\" aria-hidden=\"true\" viewBox=\"0 0 " + number(2.0 * half) + ' ' +
         number(2.0 * half) + "\">" + mark(standing, half, half) + "</svg>";
}

}  // namespace baywright::output
