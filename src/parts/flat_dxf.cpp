#include "parts/flat_words.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numbers>

namespace baywright::parts {

using geometry::Vec2;

namespace {

constexpr std::size_t most_bends = 1000;

struct Pair {
  int code = 0;
  std::string_view value;
  int line = 0;  // of the value
};

/// Group codes and values, two lines each.
class Pairs {
 public:
  Pairs(std::string_view text, const std::string& file) : text_(text), file_(file) {}

  Pair next() {
    std::string_view code;
    std::string_view value;
    if (!line(code)) stop_flat(file_, line_, "the file ends before its EOF", "it must be whole: save it again");
    const auto figure = flat_figure(code);
    if (!figure || *figure != std::trunc(*figure) || *figure < 0.0 || *figure > 1071.0)
      stop_flat(file_, line_, "this line is no group code", "it must be a DXF file in text form (ASCII), not binary");
    if (!line(value)) stop_flat(file_, line_, "the file ends before its EOF", "it must be whole: save it again");
    return {static_cast<int>(*figure), trimmed(value), line_};
  }

 private:
  bool line(std::string_view& out) {
    if (at_ >= text_.size()) return false;
    const std::size_t end = std::min(text_.find('\n', at_), text_.size());
    out = text_.substr(at_, end - at_);
    at_ = end + 1;
    ++line_;
    return true;
  }

  std::string_view text_;
  const std::string& file_;
  std::size_t at_ = 0;
  int line_ = 0;
};

/// One entity with its figures as they came.
struct Entity {
  std::string name;
  int line = 0;
  std::vector<Pair> pairs;
};

class DxfReader {
 public:
  DxfReader(std::string_view text, const std::string& file) : pairs_(text, file), file_(file) {}

  FlatDrawing read() {
    Pair pair = pairs_.next();
    while (!(pair.code == 0 && pair.value == "EOF")) {
      if (pair.code == 0 && pair.value == "SECTION") {
        pair = pairs_.next();
        if (pair.code == 2 && pair.value == "HEADER") {
          pair = header();
          continue;
        }
        if (pair.code == 2 && pair.value == "ENTITIES") {
          pair = entities();
          continue;
        }
      }
      pair = pairs_.next();
    }
    return std::move(out_);
  }

 private:
  double figure(const Pair& pair) const {
    const auto value = flat_figure(pair.value);
    if (!value)
      stop_flat(file_, pair.line, '`' + std::string(pair.value.substr(0, 20)) + "` is no usable figure",
                "it must be a number within a million, with a decimal point");
    return *value;
  }

  Pair header() {
    Pair pair = pairs_.next();
    bool units = false;
    while (pair.code != 0) {
      if (pair.code == 9) units = pair.value == "$INSUNITS";
      if (units && pair.code == 70) out_.unit_mm = mm_of(static_cast<int>(figure(pair)));
      pair = pairs_.next();
    }
    return pair;
  }

  /// $INSUNITS as the format lists it; none for what is no length of a workshop, or 0, which says nothing.
  static std::optional<double> mm_of(int unit) {
    switch (unit) {
      case 1:
        return 25.4;
      case 2:
        return 304.8;
      case 4:
        return 1.0;
      case 5:
        return 10.0;
      case 6:
        return 1000.0;
      case 9:
        return 0.0254;
      case 13:
        return 0.001;
      case 14:
        return 100.0;
      default:
        return std::nullopt;
    }
  }

  Pair entities() {
    Pair pair = pairs_.next();
    while (!(pair.code == 0 && (pair.value == "ENDSEC" || pair.value == "EOF"))) {
      if (pair.code != 0) {
        pair = pairs_.next();
        continue;
      }
      Entity entity{std::string(pair.value), pair.line, {}};
      for (pair = pairs_.next(); pair.code != 0; pair = pairs_.next()) entity.pairs.push_back(pair);
      add(entity);
    }
    return pair;
  }

  std::optional<double> maybe(const Entity& entity, int code) const {
    for (const Pair& pair : entity.pairs)
      if (pair.code == code) return figure(pair);
    return std::nullopt;
  }

  double need(const Entity& entity, int code) const {
    const auto value = maybe(entity, code);
    if (!value)
      stop_flat(file_, entity.line, "this " + entity.name + " has no group " + std::to_string(code),
                "save the drawing again, or draw it anew");
    return *value;
  }

  int flags(const Entity& entity) const { return static_cast<int>(maybe(entity, 70).value_or(0.0)); }

  /// Shapes of an entity whose own z axis points away are mirrored, and were mostly turned over by mistake.
  void check_front(const Entity& entity) const {
    if (maybe(entity, 230).value_or(1.0) < 0.99 || std::abs(maybe(entity, 210).value_or(0.0)) > 0.01 ||
        std::abs(maybe(entity, 220).value_or(0.0)) > 0.01)
      stop_flat(file_, entity.line, "this " + entity.name + " is drawn from behind or out of the plane",
                "mirror it back and flatten the drawing");
  }

  static bool on_bend_layer(const Entity& entity) {
    return std::any_of(entity.pairs.begin(), entity.pairs.end(), [](const Pair& pair) {
      constexpr std::string_view layer = "BEND";
      return pair.code == 8 && pair.value.size() == layer.size() &&
             std::equal(layer.begin(), layer.end(), pair.value.begin(),
                        [](char a, char b) { return a == b || a - 'A' + 'a' == b; });
    });
  }

  void add_bend(const Entity& entity) {
    if (entity.name != "LINE")
      stop_flat(file_, entity.line, "this " + entity.name + " on layer BEND is no bend",
                "a sheet is bent along straight lines: draw a LINE there, or use another layer");
    const Vec2 from(need(entity, 10), need(entity, 20));
    const Vec2 to(need(entity, 11), need(entity, 21));
    if (!(glm::distance(from, to) > 0.0))
      stop_flat(file_, entity.line, "this LINE on layer BEND has no length", "take it out");
    if (out_.bends.size() >= most_bends)
      stop_flat(file_, entity.line, "more than " + std::to_string(most_bends) + " bends", "leave some out");
    out_.bends.push_back({from, to, {}, entity.line});
  }

  void add(const Entity& entity) {
    const std::string& name = entity.name;
    const bool continues = name == "VERTEX" || name == "SEQEND";
    if (open_ && !continues) stop_flat(file_, entity.line, "a POLYLINE has no SEQEND", "save the drawing again");
    if (maybe(entity, 67).value_or(0.0) == 1.0) return;  // on a sheet of paper beside the model: its frame and title
    if (on_bend_layer(entity)) {
      add_bend(entity);
    } else if (name == "LINE") {
      add_stroke(out_, {{need(entity, 10), need(entity, 20)}, {need(entity, 11), need(entity, 21)}, {}, entity.line},
                 file_);
    } else if (name == "ARC") {
      add_arc(entity);
    } else if (name == "CIRCLE") {
      check_front(entity);
      add_circle(entity);
    } else if (name == "LWPOLYLINE") {
      add_light_polyline(entity);
    } else if (name == "POLYLINE") {
      check_front(entity);
      if ((flags(entity) & ~(1 | 128)) != 0)
        stop_flat(file_, entity.line, "this POLYLINE is a curve fit, a mesh or not flat",
                  "explode it into lines and arcs");
      open_ = true;
      closed_ = (flags(entity) & 1) != 0;
      points_.clear();
      first_line_ = entity.line;
    } else if (continues && open_) {
      if (name == "VERTEX")
        points_.push_back({{need(entity, 10), need(entity, 20)}, maybe(entity, 42).value_or(0.0), entity.line});
      else
        finish_polyline();
    } else {
      ++out_.passed_over[name.substr(0, 20)];
    }
  }

  double radius_of(const Entity& entity) const {
    const double radius = need(entity, 40);
    if (!(radius > 0.0)) stop_flat(file_, entity.line, "this " + entity.name + " has no radius", "take it out");
    return radius;
  }

  void add_circle(const Entity& entity) {
    if (out_.circles.size() + out_.strokes.size() >= most_strokes) add_stroke(out_, {{}, {}, {}, entity.line}, file_);
    out_.circles.push_back({{need(entity, 10), need(entity, 20)}, radius_of(entity), entity.line});
  }

  void add_arc(const Entity& entity) {
    check_front(entity);
    constexpr double degree = std::numbers::pi / 180.0;
    Arc arc;
    arc.centre = {need(entity, 10), need(entity, 20)};
    arc.radius = radius_of(entity);
    arc.start = need(entity, 50) * degree;
    double sweep = std::fmod(need(entity, 51) - need(entity, 50), 360.0);
    if (sweep <= 0.0) sweep += 360.0;
    arc.sweep = sweep * degree;
    const auto at = [&](double angle) { return arc.centre + arc.radius * Vec2(std::cos(angle), std::sin(angle)); };
    add_stroke(out_, {at(arc.start), at(arc.start + arc.sweep), arc, entity.line}, file_);
  }

  struct Corner {
    Vec2 at;
    double bulge;  // of what follows: the tangent of a quarter of its angle
    int line;
  };

  void add_light_polyline(const Entity& entity) {
    check_front(entity);
    points_.clear();
    first_line_ = entity.line;
    closed_ = (flags(entity) & 1) != 0;
    double x = 0.0;
    for (const Pair& pair : entity.pairs) {
      if (pair.code == 10) x = figure(pair);
      if (pair.code == 20) points_.push_back({{x, figure(pair)}, 0.0, pair.line});
      if (pair.code == 42 && !points_.empty()) points_.back().bulge = figure(pair);
    }
    finish_polyline();
  }

  void finish_polyline() {
    open_ = false;
    if (points_.size() < 2) stop_flat(file_, first_line_, "this polyline has fewer than two corners", "take it out");
    const std::size_t count = points_.size();
    for (std::size_t i = 0; i + (closed_ ? 0 : 1) < count; ++i) {
      const Corner& from = points_[i];
      add_stroke(out_, arc_between(from.at, points_[(i + 1) % count].at, 4.0 * std::atan(from.bulge), from.line),
                 file_);
    }
  }

  Pairs pairs_;
  const std::string& file_;
  FlatDrawing out_;
  bool open_ = false;  // a POLYLINE, whose corners follow as entities of their own
  bool closed_ = false;
  std::vector<Corner> points_;
  int first_line_ = 0;
};

}  // namespace

FlatDrawing read_flat_dxf(std::string_view text, const std::string& file) {
  return DxfReader(text, file).read();
}

}  // namespace baywright::parts
