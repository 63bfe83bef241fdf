// What is written over a picture (render/look.h).
#include "output/lettering.h"
#include "output/mark.h"
#include "render/clearance_map.h"
#include "render/look.h"
#include "render/palette.h"
#include "render/rounding.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <limits>

namespace baywright::render {

using geometry::Vec2;
using geometry::Vec3;
using output::Anchor;
using output::Area;
using output::Box;
using output::Group;
using output::Line;
using output::Text;

namespace {

constexpr double letters = 13.0;  // pixels at scale 1: the least
constexpr double figure = 19.0;

bool meet(const Box& a, const Box& b) {
  return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

double shared(const Box& a, const Box& b) {
  if (!meet(a, b)) return 0.0;
  return (std::min(a.high.x, b.high.x) - std::max(a.low.x, b.low.x)) *
         (std::min(a.high.y, b.high.y) - std::max(a.low.y, b.low.y));
}

/// "20", "0.5": a round figure.
std::string round_words(double value) {
  char out[32];
  std::snprintf(out, sizeof out, "%g", value);
  return out;
}

output::Outline rectangle(const Box& box) {
  return {box.low, {box.high.x, box.low.y}, box.high, {box.low.x, box.high.y}};
}

class Writer {
 public:
  Writer(const Model& model, const Look& look, int width, int height)
      : model_(model),
        look_(look),
        width_(width),
        height_(height),
        pixels_{width, height},
        colours_(palette(look.dark)) {
    group_.name = "notes";
  }

  Group written() {
    write_scale_bar();
    if (look_.clearance_of) write_map_scale(*look_.clearance_of);
    if (const Measured* gap = focused(model_, look_)) write_gap(*gap);
    return std::move(group_);
  }

 private:
  [[nodiscard]] double px(double at_scale_1) const { return look_.scale * at_scale_1; }

  [[nodiscard]] Text text(const Vec2& at, std::string words, double size, bool bold = false,
                          Anchor anchor = Anchor::start) const {
    return {at, std::move(words), px(size), anchor, bold, false, false, bold ? colours_.ink : colours_.quiet};
  }

  /// A plate of the background, so that words are read over anything.
  void add_plate(const Box& box) {
    Area plate;
    plate.outlines = {rectangle(box)};
    plate.colour = colours_.background;
    group_.add(std::move(plate));
    taken_.push_back(box);
  }

  void write_scale_bar() {
    if (look_.camera.perspective || !(look_.camera.height > 0.0)) return;
    const double a_mm = height_ / look_.camera.height;  // pixels
    const double length = rounded_down(0.18 * width_ / a_mm);
    const Vec2 left(px(24.0), height_ - px(20.0));
    const Vec2 right = left + Vec2(length * a_mm, 0.0);
    const std::string words = round_words(length) + " mm";
    const double half = 0.5 * std::max(right.x - left.x, output::text_width(words, px(letters), true));
    const double middle = 0.5 * (left.x + right.x);
    add_plate({{middle - half - px(8.0), left.y - px(26.0)}, {middle + half + px(8.0), left.y + px(10.0)}});
    const output::Pen pen{px(1.6), colours_.ink, false};
    group_.add(Line{{left, right}, false, pen});
    for (const Vec2& end : {left, right})
      group_.add(Line{{end - Vec2(0.0, px(4.0)), end + Vec2(0.0, px(4.0))}, false, pen});
    group_.add(text({middle, left.y - px(9.0)}, words, letters, true, Anchor::middle));
  }

  void write_map_scale(const std::string& part) {
    const ClearanceMap& map = clearance_map(model_, part);
    if (!(map.top > 0.0)) return;
    const double room = width_ - px(48.0);
    const double length = std::min(px(260.0), room);
    const std::string title = output::shortened("From " + part + " to what is nearest, mm", room, px(letters), true);
    const double wide = std::max(length, output::text_width(title, px(letters), true));
    const Vec2 low(width_ - px(24.0) - wide, height_ - px(36.0));
    add_plate({{low.x - px(10.0), low.y - px(28.0)}, {width_ - px(14.0), height_ - px(6.0)}});
    group_.add(text({low.x, low.y - px(10.0)}, title, letters, true));
    constexpr int steps = 40;
    for (int i = 0; i < steps; ++i) {
      Area step;
      const double x = low.x + length * i / steps;
      step.outlines = {
          rectangle({{x, low.y}, {low.x + length * (i + 1) / steps + (i + 1 < steps ? 0.5 : 0.0), low.y + px(10.0)}})};
      step.colour = hex(clearance_colour((i + 0.5) / steps));
      group_.add(std::move(step));
    }
    group_.add(Line{rectangle({low, low + Vec2(length, px(10.0))}), true, {px(1.0), colours_.ink, false}});
    const double y = low.y + px(24.0);
    group_.add(text({low.x, y}, "0", letters, true));
    group_.add(text({low.x + 0.5 * length, y}, round_words(0.5 * map.top), letters, true, Anchor::middle));
    group_.add(text({low.x + length, y}, round_words(map.top) + " or more", letters, true, Anchor::end));
  }

  [[nodiscard]] Vec2 on_screen(const Vec3& p) const { return Vec2(look_.camera.pixel(p, pixels_[0], pixels_[1])); }

  static void add(Box& box, const Box& other) {
    box.low = glm::min(box.low, other.low);
    box.high = glm::max(box.high, other.high);
  }
  static Box nothing() {
    return {Vec2(std::numeric_limits<double>::infinity()), Vec2(-std::numeric_limits<double>::infinity())};
  }
  [[nodiscard]] Box on_screen(const geometry::Bounds& bounds) const {
    Box out = nothing();
    for (int i = 0; i < 8; ++i) {
      const Vec2 p = on_screen(bounds.corner(i));
      add(out, {p, p});
    }
    return out;
  }

  /// The rectangle about the drive in the picture, and those about what else is no background.
  struct Silhouette {
    Box drive;
    std::vector<Box> others;
  };
  [[nodiscard]] Silhouette silhouette() const {
    Silhouette out{nothing(), {}};
    for (const Thing& thing : model_.things) {
      if (look_.hidden.contains(thing.part)) continue;
      const Box box = on_screen(thing.bounds);
      if (thing.drive) add(out.drive, box);
      const bool background = shared(box, {Vec2(0.0), Vec2(width_, height_)}) > 0.4 * width_ * height_;
      if (!thing.drive && !background) out.others.push_back(box);
    }
    return out;
  }

  /// Where a label of that size goes: outside of the drive, near what it belongs to, over no other label.
  [[nodiscard]] Box place(const Vec2& anchor, const Vec2& size) const {
    const double margin = px(16.0);
    const double off = px(28.0);
    const auto [drive, others] = silhouette();
    const Vec2 most(width_ - margin - size.x, height_ - margin - size.y);
    const auto held = [&](Vec2 low) {
      low = glm::max(Vec2(margin), glm::min(low, most));
      return Box{low, low + size};
    };
    const double x = anchor.x - 0.5 * size.x;
    const double y = anchor.y - 0.5 * size.y;
    std::vector<Box> wishes = {held({drive.high.x + off, y - off}), held({drive.low.x - off - size.x, y - off}),
                               held({x + off, drive.low.y - off - size.y}), held({x + off, drive.high.y + off})};
    for (const Vec2& corner : {Vec2(most.x, margin), Vec2(margin, margin), most, Vec2(margin, most.y)})
      wishes.push_back(held(corner));
    const auto cost = [&](const Box& box) {
      double out = 0.25 * glm::distance(anchor, 0.5 * (box.low + box.high));
      for (const Box& other : taken_)
        if (meet(box, other)) out += 1e6;
      for (const Box& other : others) out += shared(box, other) / 150.0;
      const double covers = shared(box, drive);
      return out + (covers > 0.0 ? 200.0 + covers / 50.0 : 0.0);
    };
    return *std::min_element(wishes.begin(), wishes.end(),
                             [&](const Box& a, const Box& b) { return cost(a) < cost(b); });
  }

  void write_gap(const Measured& gap) {
    const Vec2 from = on_screen(gap.from);
    const Vec2 to = on_screen(gap.to);
    const Vec2 middle = 0.5 * (from + to);
    const bool seen = std::isfinite(middle.x) && std::isfinite(middle.y) && middle.x >= 0.0 && middle.y >= 0.0 &&
                      middle.x <= width_ && middle.y <= height_;
    const double room = std::max(px(120.0), width_ - px(60.0));
    const double mark = px(18.0);
    std::vector<Text> lines = {text({mark + px(8.0), 0.0}, gap.figure, figure, true),
                               text({}, output::shortened(gap.between, room, px(letters)), letters)};
    if (!gap.limits.empty()) lines.push_back(text({}, output::shortened(gap.limits, room, px(letters)), letters));
    if (!gap.asked.empty()) lines.push_back(text({}, gap.asked, letters));
    const Vec2 pad(px(10.0), px(8.0));
    Vec2 size(0.0);
    double y = 0.0;
    for (Text& line : lines) {
      y += line.bold ? px(figure) : px(letters + 5.0);
      line.at.y = y;
      size.x = std::max(size.x, line.at.x + output::text_width(line.text, line.size, line.bold));
    }
    size = Vec2(size.x, y + px(3.0)) + 2.0 * pad;
    const Box box = place(seen ? middle : Vec2(width_, 0.0), size);
    const std::string own = output::colour(gap.verdict, look_.dark);
    if (seen) write_leader(from, to, box, own);
    add_plate(box);
    group_.add(Line{rectangle(box), true, {px(1.2), own, false}});
    const Vec2 at = box.low + pad;
    output::draw_mark(group_, gap.verdict, at + Vec2(0.0, px(2.0)), mark, look_.dark);
    for (Text& line : lines) {
      line.at += at;
      group_.add(std::move(line));
    }
  }

  /// A line of the colour with a rim of the background.
  void add_rimmed(const std::vector<Vec2>& points, double width, const std::string& colour) {
    group_.add(Line{points, false, {px(width + 2.4), colours_.background, false}});
    group_.add(Line{points, false, {px(width), colour, false}});
  }

  /// The dimension line between the two faces with its ticks, and the line from there to the label.
  void write_leader(const Vec2& from, const Vec2& to, const Box& box, const std::string& colour) {
    const Vec2 middle = 0.5 * (from + to);
    const Vec2 foot = glm::max(box.low, glm::min(middle, box.high));
    const double length = glm::distance(from, to);
    add_rimmed({middle, foot}, 1.4, colour);
    if (length < px(4.0)) {  // too near for ticks
      output::Disc dot;
      dot.centre = middle;
      dot.radius = px(4.0);
      dot.colour = colour;
      dot.pen = output::Pen{px(1.4), colours_.background, false};
      group_.add(std::move(dot));
      return;
    }
    const Vec2 along = (to - from) / length;
    const Vec2 tick = px(6.0) * Vec2(-along.y, along.x);
    add_rimmed({from, to}, 2.0, colour);
    for (const Vec2& end : {from, to}) add_rimmed({end - tick, end + tick}, 2.0, colour);
  }

  const Model& model_;
  const Look& look_;
  double width_;
  double height_;
  std::array<int, 2> pixels_;
  const Palette& colours_;
  Group group_;
  std::vector<Box> taken_;
};

}  // namespace

Group notes_on(const Model& model, const Look& look, int width, int height) {
  return Writer(model, look, width, height).written();
}

}  // namespace baywright::render
