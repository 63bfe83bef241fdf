#include "parts/flat_words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

namespace baywright::parts {

using geometry::Vec2;

namespace {

/// x' = a x + c y + e, y' = b x + d y + f, as SVG writes it.
struct Affine {
  double a = 1.0, b = 0.0, c = 0.0, d = 1.0, e = 0.0, f = 0.0;

  [[nodiscard]] Vec2 at(const Vec2& p) const { return {a * p.x + c * p.y + e, b * p.x + d * p.y + f}; }
  [[nodiscard]] Affine after(const Affine& o) const {  // `o` first
    return {a * o.a + c * o.b, b * o.a + d * o.b,     a * o.c + c * o.d,
            b * o.c + d * o.d, a * o.e + c * o.f + e, b * o.e + d * o.f + f};
  }
  /// A turn, a mirror image and one scale: circles stay circles.
  [[nodiscard]] bool keeps_circles() const {
    return std::abs(a * a + b * b - c * c - d * d) < 1e-9 * (a * a + b * b) &&
           std::abs(a * c + b * d) < 1e-9 * (a * a + b * b);
  }
  [[nodiscard]] double scale() const { return std::sqrt(std::abs(a * d - b * c)); }
  [[nodiscard]] bool mirrors() const { return a * d - b * c < 0.0; }
};

struct Tag {
  std::string name;
  bool closes = false;  // </name>
  bool empty = false;   // <name ... />
  int line = 0;
  std::vector<std::pair<std::string, std::string_view>> attributes;

  [[nodiscard]] std::optional<std::string_view> maybe(std::string_view key) const {
    for (const auto& [name_of, value] : attributes)
      if (name_of == key) return value;
    return std::nullopt;
  }
};

/// The tags of an XML text, one after the other; what stands between them is passed over.
class Tags {
 public:
  Tags(std::string_view text, const std::string& file) : text_(text), file_(file) {}

  std::optional<Tag> next() {
    for (;;) {
      const std::size_t open = text_.find('<', at_);
      if (open == std::string_view::npos) return std::nullopt;
      go(open);
      if (skip("<!--", "-->") || skip("<![CDATA[", "]]>") || skip("<?", "?>") || skip_doctype()) continue;
      return tag();
    }
  }

 private:
  [[noreturn]] void stop_here(const std::string& what) const {
    stop_flat(file_, line_, what, "it must be a whole SVG file, as a drawing program writes it");
  }

  void go(std::size_t to) {
    line_ += static_cast<int>(std::count(text_.begin() + static_cast<std::ptrdiff_t>(at_),
                                         text_.begin() + static_cast<std::ptrdiff_t>(to), '\n'));
    at_ = to;
  }

  bool skip(std::string_view from, std::string_view until) {
    if (!text_.substr(at_).starts_with(from)) return false;
    const std::size_t end = text_.find(until, at_ + from.size());
    if (end == std::string_view::npos) stop_here("`" + std::string(from) + "` does not end");
    go(end + until.size());
    return true;
  }

  bool skip_doctype() {
    if (!text_.substr(at_).starts_with("<!")) return false;
    int depth = 0;
    for (std::size_t i = at_; i < text_.size(); ++i) {
      if (text_[i] == '<') ++depth;
      if (text_[i] == '>' && --depth == 0) {
        go(i + 1);
        return true;
      }
    }
    stop_here("`<!` does not end");
  }

  [[nodiscard]] static bool blank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

  std::string_view word(std::string_view ends) {
    const std::size_t end = std::min(text_.find_first_of(ends, at_), text_.size());
    const std::string_view out = text_.substr(at_, end - at_);
    go(end);
    return out;
  }

  void skip_blanks() {
    std::size_t i = at_;
    while (i < text_.size() && blank(text_[i])) ++i;
    go(i);
  }

  char peek() {
    if (at_ >= text_.size()) stop_here("the file ends inside a tag");
    return text_[at_];
  }

  Tag tag() {
    Tag out;
    out.line = line_;
    go(at_ + 1);
    if (peek() == '/') {
      out.closes = true;
      go(at_ + 1);
    }
    out.name = word(" \t\r\n/>");
    if (const std::size_t colon = out.name.rfind(':'); colon != std::string::npos) out.name.erase(0, colon + 1);
    if (out.name.empty()) stop_here("a tag has no name");
    for (;;) {
      skip_blanks();
      if (peek() == '>') break;
      if (peek() == '/') {
        out.empty = true;
        go(at_ + 1);
        if (peek() != '>') stop_here("a tag does not end after its `/`");
        break;
      }
      attribute(out);
    }
    go(at_ + 1);
    return out;
  }

  void attribute(Tag& out) {
    std::string key(word("= \t\r\n/>"));
    skip_blanks();
    if (key.empty() || peek() != '=') stop_here("an attribute of `" + out.name + "` has no value");
    go(at_ + 1);
    skip_blanks();
    const char quote = peek();
    if (quote != '"' && quote != '\'') stop_here("a value of `" + out.name + "` stands without quotes");
    go(at_ + 1);
    const std::string_view value = word(std::string_view(&quote, 1));
    peek();  // the closing quote
    go(at_ + 1);
    out.attributes.emplace_back(std::move(key), value);
  }

  std::string_view text_;
  const std::string& file_;
  std::size_t at_ = 0;
  int line_ = 1;
};

/// Figures and letters of a path, a list of points or a transform.
class Tokens {
 public:
  Tokens(std::string_view text, const std::string& file, int line) : text_(text), file_(file), line_(line) {}

  /// The next letter, if there is one before the next figure.
  std::optional<char> letter() {
    skip();
    if (at_ >= text_.size()) return std::nullopt;
    const char c = text_[at_];
    if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z')) {
      ++at_;
      return c;
    }
    return std::nullopt;
  }
  [[nodiscard]] bool done() {
    skip();
    return at_ >= text_.size();
  }
  double figure() {
    skip();
    std::size_t end = at_;
    bool dot = false;
    bool power = false;
    const auto digit = [](char c) { return c >= '0' && c <= '9'; };
    while (end < text_.size()) {
      const char c = text_[end];
      const bool sign = c == '+' || c == '-';
      if (digit(c) || (sign && (end == at_ || text_[end - 1] == 'e' || text_[end - 1] == 'E'))) {
        ++end;
      } else if (c == '.' && !dot && !power) {
        dot = true;
        ++end;
      } else if ((c == 'e' || c == 'E') && !power && end > at_) {
        power = true;
        ++end;
      } else {
        break;
      }
    }
    const auto value = flat_figure(text_.substr(at_, end - at_));
    if (!value)
      stop_flat(file_, line_, "a figure is wanted before `" + std::string(text_.substr(at_, 12)) + '`',
                "figures have a decimal point and no unit, within a million");
    at_ = end;
    return *value;
  }
  /// 0 or 1, which may stand without a space before what follows.
  bool flag() {
    skip();
    if (at_ >= text_.size() || (text_[at_] != '0' && text_[at_] != '1'))
      stop_flat(file_, line_, "an arc's flag is neither 0 nor 1", "save the drawing again");
    return text_[at_++] == '1';
  }
  Vec2 point() {
    const double x = figure();
    return {x, figure()};
  }

 private:
  void skip() {
    while (at_ < text_.size() &&
           (text_[at_] == ' ' || text_[at_] == ',' || text_[at_] == '\t' || text_[at_] == '\n' || text_[at_] == '\r'))
      ++at_;
  }

  std::string_view text_;
  const std::string& file_;
  int line_;
  std::size_t at_ = 0;
};

class SvgReader {
 public:
  SvgReader(std::string_view text, const std::string& file) : tags_(text, file), file_(file) {}

  FlatDrawing read() {
    struct Open {
      std::string name;
      Affine to;
      bool hidden;
    };
    std::vector<Open> open;
    bool whole = false;
    while (auto tag = tags_.next()) {
      if (tag->closes) {
        if (open.empty() || open.back().name != tag->name)
          stop_flat(file_, tag->line, "`</" + tag->name + ">` closes what is not open", "save the drawing again");
        open.pop_back();
        whole = open.empty();
        continue;
      }
      if (open.empty() && (tag->name != "svg" || whole))
        stop_flat(file_, tag->line, "the file does not begin with `<svg>`", "give a drawing that was saved as SVG");
      to_ = open.empty() ? root(*tag) : open.back().to;
      bool hidden = !open.empty() && open.back().hidden;
      if (!hidden) hidden = !element(*tag, open.empty());
      if (!tag->empty)
        open.push_back({tag->name, to_, hidden});
      else
        whole = open.empty();
    }
    if (!whole) stop_flat(file_, 0, "the file ends before `</svg>`", "it must be whole: save it again");
    return std::move(out_);
  }

 private:
  [[noreturn]] void stop(const Tag& tag, const std::string& what, const std::string& right) const {
    stop_flat(file_, tag.line, what, right);
  }

  /// "120mm" as mm; none for other units and for figures without one.
  static std::optional<double> length_mm(std::string_view text) {
    constexpr std::array<std::pair<std::string_view, double>, 3> units = {{{"mm", 1.0}, {"cm", 10.0}, {"in", 25.4}}};
    text = trimmed(text);
    for (const auto& [unit, mm] : units)
      if (text.ends_with(unit))
        if (const auto value = flat_figure(text.substr(0, text.size() - unit.size()))) return *value * mm;
    return std::nullopt;
  }

  /// y is turned up, from the lower edge of the drawing.
  Affine root(const Tag& tag) {
    const auto width = length_mm(tag.maybe("width").value_or(""));
    const auto height = length_mm(tag.maybe("height").value_or(""));
    double left = 0.0;
    double low = 0.0;
    if (const auto box = tag.maybe("viewBox")) {
      Tokens tokens(*box, file_, tag.line);
      const Vec2 corner = tokens.point();
      const Vec2 size = tokens.point();
      if (!(size.x > 0.0 && size.y > 0.0)) stop(tag, "the viewBox has no size", "save the drawing again");
      left = corner.x;
      low = corner.y + size.y;
      if (width) out_.unit_mm = *width / size.x;
      if (width && height && std::abs(*width / size.x - *height / size.y) > 1e-4 * *width / size.x)
        stop(tag, "width and height have different scales to the viewBox", "a drawing must not be stretched");
    } else if (width) {
      stop(tag, "the drawing has a width and no viewBox", "add one, or take `width` out and write `unit` in the build");
    }
    return {1.0, 0.0, 0.0, -1.0, -left, low};
  }

  double need(const Tag& tag, std::string_view key) const {
    const auto value = figure(tag, key);
    if (!value) stop(tag, "this " + tag.name + " has no `" + std::string(key) + '`', "save the drawing again");
    return *value;
  }
  std::optional<double> figure(const Tag& tag, std::string_view key) const {
    const auto text = tag.maybe(key);
    if (!text) return std::nullopt;
    const auto value = flat_figure(*text);
    if (!value)
      stop(tag, '`' + std::string(key) + "` is `" + std::string(text->substr(0, 20)) + '`',
           "figures here are in the drawing's own unit, without one of their own");
    return value;
  }

  void add_transform(const Tag& tag) {
    const auto text = tag.maybe("transform");
    if (!text) return;
    std::string_view rest = trimmed(*text);
    while (!rest.empty()) {
      const std::size_t open = rest.find('(');
      const std::size_t close = rest.find(')');
      if (open == std::string_view::npos || close == std::string_view::npos || close < open)
        stop(tag, "this `transform` is not understood", "write translate, scale, rotate or matrix with figures in ( )");
      const std::string name(trimmed(rest.substr(0, open)));
      Tokens tokens(rest.substr(open + 1, close - open - 1), file_, tag.line);
      std::vector<double> v;
      while (!tokens.done() && v.size() < 7) v.push_back(tokens.figure());
      to_ = to_.after(affine(tag, name, v));
      rest.remove_prefix(close + 1);
      while (!rest.empty() && (rest.front() == ',' || trimmed(rest.substr(0, 1)).empty())) rest.remove_prefix(1);
    }
  }

  Affine affine(const Tag& tag, const std::string& name, const std::vector<double>& v) const {
    if (name == "matrix" && v.size() == 6) return {v[0], v[1], v[2], v[3], v[4], v[5]};
    if (name == "translate" && (v.size() == 1 || v.size() == 2))
      return {1.0, 0.0, 0.0, 1.0, v[0], v.size() == 2 ? v[1] : 0.0};
    if (name == "scale" && (v.size() == 1 || v.size() == 2)) return {v[0], 0.0, 0.0, v.back(), 0.0, 0.0};
    if (name == "rotate" && (v.size() == 1 || v.size() == 3)) {
      const double angle = v[0] * std::numbers::pi / 180.0;
      const Affine turn{std::cos(angle), std::sin(angle), -std::sin(angle), std::cos(angle), 0.0, 0.0};
      if (v.size() == 1) return turn;
      return Affine{1.0, 0.0, 0.0, 1.0, v[1], v[2]}.after(turn).after({1.0, 0.0, 0.0, 1.0, -v[1], -v[2]});
    }
    stop(tag, "`transform = " + name.substr(0, 20) + "` is not understood",
         "write translate, scale, rotate or matrix, or apply it before saving");
  }

  /// False: what is inside is not drawn as it stands.
  bool element(const Tag& tag, bool outermost) {
    static constexpr std::array<std::string_view, 9> aside = {"defs",   "clipPath", "mask",      "symbol", "pattern",
                                                              "marker", "metadata", "namedview", "filter"};
    static constexpr std::array<std::string_view, 4> silent = {"title", "desc", "style", "a"};
    const std::string& name = tag.name;
    if (std::find(aside.begin(), aside.end(), name) != aside.end()) return false;
    if (const auto shown = tag.maybe("display"); shown && trimmed(*shown) == "none") return false;
    add_transform(tag);
    if (name == "svg" && !outermost) stop(tag, "a drawing inside a drawing is not understood", "take it out");
    if (name == "g" || name == "svg" || std::find(silent.begin(), silent.end(), name) != silent.end()) return true;
    if (name == "path")
      path(tag);
    else if (name == "rect")
      rect(tag);
    else if (name == "circle")
      circle(tag);
    else if (name == "line")
      polyline({{need(tag, "x1"), need(tag, "y1")}, {need(tag, "x2"), need(tag, "y2")}}, false, tag.line);
    else if (name == "polygon" || name == "polyline")
      polyline(points(tag), name == "polygon", tag.line);
    else
      ++out_.passed_over[name.substr(0, 20)];
    return true;
  }

  std::vector<Vec2> points(const Tag& tag) const {
    const auto text = tag.maybe("points");
    std::vector<Vec2> out;
    if (text) {
      Tokens tokens(*text, file_, tag.line);
      while (!tokens.done()) out.push_back(tokens.point());
    }
    if (out.size() < 2) stop(tag, "this " + tag.name + " has fewer than two points", "take it out");
    return out;
  }

  void straight(const Vec2& from, const Vec2& to, int line) {
    add_stroke(out_, {to_.at(from), to_.at(to), std::nullopt, line}, file_);
  }

  void polyline(const std::vector<Vec2>& corners, bool closed, int line) {
    for (std::size_t i = 0; i + (closed ? 0 : 1) < corners.size(); ++i)
      straight(corners[i], corners[(i + 1) % corners.size()], line);
  }

  void rect(const Tag& tag) {
    const double x = figure(tag, "x").value_or(0.0);
    const double y = figure(tag, "y").value_or(0.0);
    const double w = need(tag, "width");
    const double h = need(tag, "height");
    if (!(w > 0.0 && h > 0.0)) stop(tag, "this rect has no size", "take it out");
    const auto rx = figure(tag, "rx");
    const auto ry = figure(tag, "ry");
    const double r = std::min({rx.value_or(ry.value_or(0.0)), 0.5 * w, 0.5 * h});
    if (rx && ry && *rx != *ry)
      stop(tag, "this rect has corners that are no quarters of a circle", "draw them as a path");
    if (!(r > 0.0)) return polyline({{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}}, true, tag.line);
    const std::array<Vec2, 8> p = {Vec2{x + r, y},         Vec2{x + w - r, y},     Vec2{x + w, y + r},
                                   Vec2{x + w, y + h - r}, Vec2{x + w - r, y + h}, Vec2{x + r, y + h},
                                   Vec2{x, y + h - r},     Vec2{x, y + r}};
    for (std::size_t i = 0; i < 8; i += 2) {
      straight(p[i], p[i + 1], tag.line);
      turn(p[i + 1], p[(i + 2) % 8], 0.5 * std::numbers::pi, tag.line);
    }
  }

  /// An arc of a circle, `sweep` in the drawing's own sense, in which y points down.
  void turn(const Vec2& from, const Vec2& to, double sweep, int line) {
    if (to_.keeps_circles()) {
      add_stroke(out_, arc_between(to_.at(from), to_.at(to), to_.mirrors() ? -sweep : sweep, line), file_);
      return;
    }
    const Stroke arc = arc_between(from, to, sweep, line);
    if (!arc.arc) return straight(from, to, line);
    flatten(
        [&](double t) {
          const double angle = arc.arc->start + t * arc.arc->sweep;
          return arc.arc->centre + arc.arc->radius * Vec2(std::cos(angle), std::sin(angle));
        },
        to, line);
  }

  /// Curves that are no circles, as so many straight lines.
  template <class Curve>
  void flatten(const Curve& curve, const Vec2& end, int line) {
    constexpr int pieces = 64;
    Vec2 from = curve(0.0);
    for (int i = 1; i <= pieces; ++i) {
      const Vec2 to = i == pieces ? end : curve(static_cast<double>(i) / pieces);
      straight(from, to, line);
      from = to;
    }
  }

  void circle(const Tag& tag) {
    const Vec2 centre(figure(tag, "cx").value_or(0.0), figure(tag, "cy").value_or(0.0));
    const double r = need(tag, "r");
    if (!(r > 0.0)) stop(tag, "this circle has no radius", "take it out");
    if (!to_.keeps_circles()) stop(tag, "this circle is stretched to an ellipse", "draw it as a path");
    if (out_.circles.size() + out_.strokes.size() >= most_strokes) straight(centre, centre, tag.line);
    out_.circles.push_back({to_.at(centre), r * to_.scale(), tag.line});
  }

  /// An elliptic arc as SVG writes it (SVG 1.1, F.6.5): only of circles.
  void elliptic(const Tag& tag, Tokens& tokens, const Vec2& from, const Vec2& offset) {
    const double rx = std::abs(tokens.figure());
    const double ry = std::abs(tokens.figure());
    tokens.figure();  // a circle has no rotation
    const bool large = tokens.flag();
    const bool positive = tokens.flag();
    const Vec2 to = offset + tokens.point();
    at_ = to;
    if (rx == 0.0 || ry == 0.0) return straight(from, to, tag.line);
    if (std::abs(rx - ry) > 1e-6 * rx)
      stop(tag, "this path has an arc of an ellipse", "draw it as a curve (C) or of circles");
    const double half = 0.5 * glm::distance(from, to);
    if (!(half > 0.0)) return;
    double angle = 2.0 * std::asin(std::min(1.0, half / rx));  // a radius that is too small is enlarged
    if (large) angle = 2.0 * std::numbers::pi - angle;
    turn(from, to, positive ? angle : -angle, tag.line);
  }

  void cubic(const Tag& tag, Tokens& tokens, const Vec2& from, const Vec2& offset) {
    const Vec2 one = offset + tokens.point();
    const Vec2 two = offset + tokens.point();
    const Vec2 to = offset + tokens.point();
    at_ = to;
    flatten(
        [&](double t) {
          const double u = 1.0 - t;
          return u * u * u * from + 3.0 * u * u * t * one + 3.0 * u * t * t * two + t * t * t * to;
        },
        to, tag.line);
  }

  void path(const Tag& tag) {
    Tokens tokens(tag.maybe("d").value_or(""), file_, tag.line);
    Vec2 start(0.0);
    at_ = Vec2(0.0);
    char command = 0;
    while (!tokens.done()) {
      if (const auto letter = tokens.letter())
        command = *letter;
      else if (command == 0 || command == 'Z' || command == 'z')
        stop(tag, "this path has figures without a command", "save the drawing again");
      const bool relative = command >= 'a';
      const Vec2 offset = relative ? at_ : Vec2(0.0);
      const Vec2 from = at_;
      switch (relative ? static_cast<char>(command - 'a' + 'A') : command) {
        case 'M':
          start = at_ = offset + tokens.point();
          command = relative ? 'l' : 'L';  // figures that follow are lines
          continue;
        case 'L':
          at_ = offset + tokens.point();
          break;
        case 'H':
          at_.x = offset.x + tokens.figure();
          break;
        case 'V':
          at_.y = offset.y + tokens.figure();
          break;
        case 'Z':
          at_ = start;
          break;
        case 'A':
          elliptic(tag, tokens, from, offset);
          continue;
        case 'C':
          cubic(tag, tokens, from, offset);
          continue;
        default:
          stop(tag, std::string("the path command `") + command + "` is not understood",
               "M L H V Z A and C are: convert the path to these");
      }
      if (from != at_) straight(from, at_, tag.line);
    }
  }

  Tags tags_;
  const std::string& file_;
  FlatDrawing out_;
  Affine to_;
  Vec2 at_{0.0};  // of a path, the drawing's own coordinates
};

}  // namespace

FlatDrawing read_flat_svg(std::string_view text, const std::string& file) {
  return SvgReader(text, file).read();
}

}  // namespace baywright::parts
