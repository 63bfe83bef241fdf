#include "output/svg.h"

#include "output/mark.h"

#include <array>
#include <charconv>
#include <cmath>

namespace baywright::output {

namespace {

std::string number(double value) {
  std::array<char, 352> digits{};
  const double rounded = std::round(value * 1000.0) / 1000.0;
  const auto [end, fault] = std::to_chars(digits.data(), digits.data() + digits.size(), rounded == 0.0 ? 0.0 : rounded,
                                          std::chars_format::fixed, 3);
  std::string text(digits.data(), end);
  if (text.find('.') == std::string::npos) return text;
  while (text.back() == '0') text.pop_back();
  if (text.back() == '.') text.pop_back();
  return text;
}

/// Control characters have no place in XML, not even escaped.
std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '&')
      out += "&amp;";
    else if (c == '<')
      out += "&lt;";
    else if (c == '>')
      out += "&gt;";
    else if (c == '"')
      out += "&quot;";
    else if (static_cast<unsigned char>(c) >= 0x20U)
      out += c;
    else
      out += ' ';
  }
  return out;
}

std::string point(const Vec2& p) {
  return number(p.x) + ' ' + number(p.y);
}

class Writer {
 public:
  std::string text;

  void write(const Group& group) {
    text += "<g";
    if (!group.name.empty()) text += " data-shows=\"" + escaped(group.name) + '"';
    if (group.clip) {
      const std::string id = "clip" + std::to_string(++clips_);
      const Box& box = *group.clip;
      text += " clip-path=\"url(#" + id + ")\">\n<clipPath id=\"" + id + "\"><rect x=\"" + number(box.low.x) +
              "\" y=\"" + number(box.low.y) + "\" width=\"" + number(box.width()) + "\" height=\"" +
              number(box.height()) + "\"/></clipPath>\n";
    } else {
      text += ">\n";
    }
    for (const Item& item : group.items) std::visit([this](const auto& drawn) { write(drawn); }, item.drawn);
    text += "</g>\n";
  }

 private:
  static std::string pen(const Pen& pen) {
    std::string out = " stroke=\"" + escaped(pen.colour) + "\" stroke-width=\"" + number(pen.width) + '"';
    const Dash dash = dash_of(pen);
    if (pen.dashed) out += " stroke-dasharray=\"" + number(dash.length) + ' ' + number(dash.space) + '"';
    return out;
  }

  static std::string path(const std::vector<Vec2>& points, bool closed) {
    std::string out;
    for (std::size_t i = 0; i < points.size(); ++i) out += (i == 0 ? "M" : "L") + point(points[i]);
    return closed ? out + 'Z' : out;
  }

  void write(const Line& line) {
    text += "<path d=\"" + path(line.points, line.closed) + "\" fill=\"none\" stroke-linejoin=\"" +
            (line.closed ? "miter" : "round") + '"' + pen(line.pen) + "/>\n";
  }

  void write(const Area& area) {
    std::string outlines;
    for (const Outline& outline : area.outlines) outlines += path(outline, true);
    if (!area.colour.empty())
      text += "<path d=\"" + outlines + "\" fill=\"" + escaped(area.colour) + "\" fill-rule=\"evenodd\"/>\n";
    const Strokes pattern = strokes(area);
    std::string drawn;
    for (const auto& [from, to] : pattern.lines) drawn += 'M' + point(from) + 'L' + point(to);
    if (!drawn.empty())
      text += "<path data-pattern=\"" + std::string(area.pattern == Pattern::grid ? "grid" : "hatch") + "\" d=\"" +
              drawn + "\" fill=\"none\"" + pen(area.pen) + "/>\n";
    if (pattern.dots.empty()) return;
    const std::string r = number(area.pen.width);
    for (const Vec2& dot : pattern.dots)
      drawn += 'M' + number(dot.x - area.pen.width) + ' ' + number(dot.y) + 'a' + r + ' ' + r + " 0 1 0 " +
               number(2.0 * area.pen.width) + " 0a" + r + ' ' + r + " 0 1 0 " + number(-2.0 * area.pen.width) + " 0Z";
    text += "<path data-pattern=\"dots\" d=\"" + drawn + "\" fill=\"" + escaped(area.pen.colour) + "\"/>\n";
  }

  void write(const Disc& disc) {
    text += "<circle cx=\"" + number(disc.centre.x) + "\" cy=\"" + number(disc.centre.y) + "\" r=\"" +
            number(disc.radius) + "\" fill=\"" + (disc.colour.empty() ? "none" : escaped(disc.colour)) + '"' +
            (disc.pen ? pen(*disc.pen) : "") + "/>\n";
  }

  void write(const Text& label) {
    text += "<text x=\"" + number(label.at.x) + "\" y=\"" + number(label.at.y) + "\" font-size=\"" +
            number(label.size) + '"';
    if (label.anchor != Anchor::start)
      text += label.anchor == Anchor::middle ? " text-anchor=\"middle\"" : " text-anchor=\"end\"";
    if (label.bold) text += " font-weight=\"bold\"";
    if (label.upward) text += " transform=\"rotate(-90 " + point(label.at) + ")\"";
    if (label.haloed)
      text += std::string(" paint-order=\"stroke\" stroke=\"") + paper + "\" stroke-width=\"" + number(halo_of(label)) +
              "\" stroke-linejoin=\"round\"";
    text += " fill=\"" + escaped(label.colour) + "\">" + escaped(label.text) + "</text>\n";
  }

  int clips_ = 0;
};

}  // namespace

std::string to_svg(const Sheet& sheet) {
  const std::string width = number(sheet.width);
  const std::string height = number(sheet.height);
  Writer writer;
  writer.text =
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + width +
      "mm\" height=\"" + height + "mm\" viewBox=\"0 0 " + width + ' ' + height +
      "\" role=\"img\" aria-labelledby=\"title description\" xml:lang=\"en\" font-family=\"Inter, Helvetica, Arial, "
      "sans-serif\">\n<title id=\"title\">" +
      escaped(sheet.title) + "</title>\n<desc id=\"description\">" + escaped(sheet.description) +
      "</desc>\n<rect width=\"" + width + "\" height=\"" + height + "\" fill=\"" + paper + "\"/>\n";
  writer.write(sheet.all);
  writer.text += "</svg>\n";
  return writer.text;
}

}  // namespace baywright::output
