#include "output/stack_column.h"

#include "output/lettering.h"
#include "output/mark.h"
#include "standards/m2.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace baywright::output {

using fit::ChainLink;
using fit::Finding;
using fit::Scene;
using fit::Seated;

namespace {

// A dimension is a band when the gap takes a good part of it; less is the tilt or turn of something elsewhere, which as
// a band would be taken for a thing that lies in the stack.
constexpr double least_sensitivity = 0.3;
constexpr double thinnest_band = 1e-6;  // mm: what is left of a sum by rounding is no band
constexpr double along_axis = 0.9999;   // of a unit vector, as for `direction_words`

/// Where the dimension stands in the scene, host first; past the end where it is not of this scene.
int index_in(const Scene& scene, const tolerance::Dimension& wanted) {
  const int count = static_cast<int>(scene.values.size());
  for (int i = 0; i < count; ++i) {
    const tolerance::Dimension& d = scene.dimension(i);
    if (d.name == wanted.name && d.nominal == wanted.nominal && d.minus == wanted.minus && d.plus == wanted.plus)
      return i;
  }
  return count;
}

bool of_host(const Scene& scene, int index) {
  return scene.below != nullptr && index < static_cast<int>(scene.below->values.size());
}

/// What a dimension counts in the gap, where that is not its whole length.
std::string counts(double share) {
  if (std::abs(share - 1.0) <= 0.0005) return {};
  if (share < 0.01) return ", counts less than 0.01";
  return ", counts " + tolerance::in_words(std::round(share * 100.0) / 100.0);
}

Band band_of(const ChainLink& link) {
  const double share = std::abs(link.sensitivity);
  return {link.dimension.name, tolerance::in_words(link.dimension) + counts(share), share * link.dimension.nominal,
          share * link.dimension.minus, share * link.dimension.plus};
}

std::string in_line(const ChainLink& link) {
  return link.dimension.name + ' ' + tolerance::in_words(link.dimension) + counts(std::abs(link.sensitivity));
}

/// The rest of the nominal gap, which no dimension with limits makes. On a card's socket it is the solder below the
/// stand-off, and the share of the height that the socket's own seat carries.
std::vector<Band> rest_of(double rest, const std::vector<ChainLink>& chain, const char* named) {
  const double size = std::abs(rest);
  if (size <= thinnest_band) return {};
  if (named != nullptr) return {Band{named, tolerance::in_words(size), size, 0.0, 0.0}};
  const double solder = standards::m2::solder().nominal;
  const auto fixed = [](const char* name, double length) {
    return Band{name, tolerance::in_words(length), length, 0.0, 0.0};
  };
  if (std::abs(size - solder) <= thinnest_band) return {{"solder", tolerance::in_words(solder), size, 0.0, 0.0}};
  for (const ChainLink& link : chain) {
    const double share = std::abs(link.sensitivity);
    const double seat = (1.0 - share) * link.dimension.nominal;
    if (share < 1.0 && (link.sensitivity < 0.0) == (rest < 0.0) && std::abs(size - solder - seat) <= thinnest_band)
      return {{"solder", tolerance::in_words(solder), solder, 0.0, 0.0}, fixed("socket's seat", size - solder)};
  }
  return {fixed("fixed", size)};
}

/// What the rest is of a finding that says it; null: it is to be found.
const char* rest_name(const Finding& finding) {
  if (finding.why.code == fit::Code::screw_long) return "thread in the drive";
  if (finding.why.code == fit::Code::screw_short) return "two threads";
  return nullptr;
}

double total(const std::vector<Band>& bands) {
  return std::accumulate(bands.begin(), bands.end(), 0.0,
                         [](double sum, const Band& band) { return sum + band.length; });
}

bool is_along_axis(const geometry::Vec3& v, const geometry::Mat3& axes) {
  for (int i = 0; i < 3; ++i)
    if (std::abs(glm::dot(v, axes[i])) > along_axis) return true;
  return false;
}

}  // namespace

std::string over_or_clear(double gap, double asked) {
  if (!std::isfinite(gap)) return "not known";
  double shown = std::round(gap * 100.0) / 100.0;
  constexpr double touch = 1e-9;
  for (const double edge : {0.0, asked})
    if ((gap < edge - touch) != (shown < edge - touch) || (gap > edge + touch) != (shown > edge + touch)) shown = gap;
  return tolerance::in_words(std::abs(shown)) + (shown < -touch ? " over" : " clear");
}

std::string over_or_clear(double gap, double asked, fit::Code about) {
  std::string words = over_or_clear(gap, asked);
  if (about != fit::Code::screw_long && about != fit::Code::screw_short) return words;
  const std::size_t space = words.find(' ');
  if (words.ends_with(" over"))
    return words.substr(0, space) + (about == fit::Code::screw_long ? " too long" : " too short");
  return words.ends_with(" clear") ? words.substr(0, space) + " to spare" : words;
}

std::string scale_in_words(double scale) {
  const auto whole = [](double value) { return std::to_string(std::lround(value)); };
  return scale >= 1.0 ? whole(scale) + ":1" : "1:" + whole(1.0 / scale);
}

StackColumn stack_column(const Finding& finding, const Seated& seated) {
  StackColumn column;
  if (!finding.gap) {
    column.refused = "No gap decides here, so there is no stack to draw.";
    return column;
  }
  column.gap = *finding.gap;
  column.about = finding.why.code;
  if (finding.verdict) column.verdict = *finding.verdict;
  if (!is_along_axis(finding.toward, seated.slot.pose.turn)) {
    column.refused =
        "The parts come closest along a slanting line, so their dimensions do not stack up on one another.";
    for (const ChainLink& link : finding.chain) column.aside.push_back(in_line(link));
    return column;
  }
  std::vector<std::pair<int, ChainLink>> links;
  for (const ChainLink& link : finding.chain) links.emplace_back(index_in(seated.scene, link.dimension), link);
  std::stable_sort(links.begin(), links.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  double rest = column.gap.nominal;
  double host_side = 0.0;  // > 0: the bands that open the gap reach from the base to the host
  bool parted = true;      // the host opens it and the drive closes it
  std::vector<ChainLink> drawn;
  for (const auto& [index, link] : links) {
    const double share = std::abs(link.sensitivity);
    if (share < least_sensitivity || !(link.dimension.nominal > thinnest_band)) {
      column.aside.push_back(in_line(link));
      continue;
    }
    drawn.push_back(link);
    rest -= link.sensitivity * link.dimension.nominal;
    const bool host = of_host(seated.scene, index);
    host_side += link.sensitivity * link.dimension.nominal * (host ? 1.0 : -1.0);
    parted = parted && host == (link.sensitivity > 0.0);
    (link.sensitivity > 0.0 ? column.open : column.close).push_back(band_of(link));
  }
  if (drawn.empty()) {
    column.refused = finding.chain.empty()
                         ? "No dimension with limits moves these two parts: the gap is exact."
                         : "Only plays and small shares move these two parts; no length stacks up between them.";
    return column;
  }
  std::vector<Band>& fixed = rest > 0.0 ? column.open : column.close;
  const std::vector<Band> more = rest_of(rest, drawn, rest_name(finding));
  fixed.insert(fixed.begin(), more.begin(), more.end());
  // Heights stack up from the board that carries the drive, except what hangs from the card alone.
  const bool upright = std::abs(glm::dot(finding.toward, seated.slot.pose.turn[2])) > along_axis;
  column.away = upright && !parted ? seated.slot.pose.turn[2] : host_side < 0.0 ? finding.toward : -finding.toward;
  return column;
}

double column_scale(const StackColumn& column, double room) {
  constexpr std::array<double, 12> usual = {20, 10, 8, 5, 4, 2, 1, 0.5, 0.2, 0.1, 0.05, 0.02};
  const double length = std::max(total(column.open), total(column.close));
  for (const double scale : usual)
    if (scale * length <= room) return scale;
  return usual.back();
}

namespace {

constexpr double name_size = 2.6;
constexpr double label_gap = 1.0;
constexpr double mark_size = 4.0;
constexpr double mark_room = 5.6;  // with the space behind it

/// Where things stand on the sheet: lengths of the stack run from the base along `step`.
struct Layout {
  Box box;
  double scale;
  double base;  // y
  double step;  // -1: up the sheet, 1: down
  Box narrow;   // x range of the bar that opens
  Box wide;     // x range of the bar that closes

  [[nodiscard]] double at(double length) const { return base + step * scale * length; }
};

Outline bar(const Layout& layout, const Box& across, double from, double to) {
  const double a = layout.at(from);
  const double b = layout.at(to);
  return {{across.low.x, a}, {across.high.x, a}, {across.high.x, b}, {across.low.x, b}};
}

void draw_whisker(Group& group, const Layout& layout, double x, double end, const Band& band) {
  if (band.minus == 0.0 && band.plus == 0.0) return;
  const auto cap = [&](double length) {
    group.add(Line{{{x - 0.7, layout.at(length)}, {x + 0.7, layout.at(length)}}, false, {}});
  };
  // An open side is dashed and has no cap, and no longer than shows it.
  const double shown = 3.0 / layout.scale;
  const double low = end - (std::isfinite(band.minus) ? band.minus : shown);
  const double high = end + (std::isfinite(band.plus) ? band.plus : shown);
  group.add(Line{{{x, layout.at(low)}, {x, layout.at(end)}}, false, {thin_line, ink, !std::isfinite(band.minus)}});
  group.add(Line{{{x, layout.at(end)}, {x, layout.at(high)}}, false, {thin_line, ink, !std::isfinite(band.plus)}});
  if (std::isfinite(band.minus)) cap(low);
  if (std::isfinite(band.plus)) cap(high);
}

struct Label {
  std::vector<Text> lines;  // x and y of each are set when it is placed
  double height = 0.0;
  double wanted = 0.0;  // y of its middle
  double from_x = 0.0;  // its leader starts here, at `from_y`
  double from_y = 0.0;
  bool leader = true;
  std::optional<fit::Verdict> mark;  // beside its first line
};

void add_line(Label& label, std::string text, double size, bool bold) {
  label.height += 1.28 * size;
  label.lines.push_back(
      {{0.0, label.height - 0.32 * size}, std::move(text), size, Anchor::start, bold, false, false, ink});
}

Label label_of(const Band& band, double width) {
  Label label;
  for (std::string& line : broken(band.name, width, name_size, 5, true))
    add_line(label, std::move(line), name_size, true);
  for (std::string& line : broken(band.value, width, smallest_text, 2))
    add_line(label, std::move(line), smallest_text, false);
  return label;
}

void place(Group& group, std::vector<Label> labels, double x, double low, double high, bool right_aligned) {
  std::stable_sort(labels.begin(), labels.end(), [](const Label& a, const Label& b) { return a.wanted < b.wanted; });
  std::vector<double> wanted;
  std::vector<double> halves;
  for (const Label& label : labels) {
    wanted.push_back(label.wanted);
    halves.push_back(0.5 * (label.height + label_gap));
  }
  const std::vector<double> middles = spread(wanted, halves, low, high);
  for (std::size_t i = 0; i < labels.size(); ++i) {
    Label& label = labels[i];
    for (Text& line : label.lines) {
      line.at += Vec2(x, middles[i] - 0.5 * label.height);
      if (right_aligned) line.anchor = Anchor::end;
      group.add(line);
    }
    if (label.mark) draw_mark(group, *label.mark, {x, middles[i] - 0.5 * label.height + 1.1}, mark_size);
    if (!label.leader) continue;
    const double to = right_aligned ? x + 0.8 : x - 0.8;
    const double elbow = right_aligned ? to + 1.0 : to - 1.6;
    group.add(
        Line{{{label.from_x, label.from_y}, {elbow, middles[i]}, {to, middles[i]}}, false, {thin_line, grey, false}});
  }
}

std::vector<Label> draw_bar(Group& group, const Layout& layout, const Box& across, const std::vector<Band>& bands,
                            double label_width, bool labels_left) {
  constexpr std::array<const char*, 2> shades = {"#E9ECEF", "#D3D7DC"};  // neighbours apart, also in grey print
  std::vector<Label> labels;
  double end = 0.0;
  for (std::size_t i = 0; i < bands.size(); ++i) {
    const double from = end;
    end += bands[i].length;
    const Outline outline = bar(layout, across, from, end);
    group.add(Area{{outline}, shades[i % 2], Pattern::none, 0.0, 1.0, {}});
    group.add(Line{outline, true, {}});
    Label label = label_of(bands[i], label_width);
    label.wanted = label.from_y = 0.5 * (layout.at(from) + layout.at(end));
    label.from_x = labels_left ? across.low.x : across.high.x;
    labels.push_back(std::move(label));
  }
  end = 0.0;
  const double x = labels_left ? 0.5 * (across.low.x + across.high.x) : across.low.x + 3.0;
  for (const Band& band : bands) draw_whisker(group, layout, x, end += band.length, band);
  return labels;
}

Label gap_label(const StackColumn& column, double width) {
  Label label;
  label.mark = column.verdict;
  const std::string figure = over_or_clear(column.gap.nominal, column.gap.asked, column.about);
  double size = 5.0;
  while (size > 3.2 && text_width(figure, size, true) > width - mark_room) size -= 0.1;
  add_line(label, figure, size, true);
  add_line(label, "at worst " + over_or_clear(column.gap.min, column.gap.asked, column.about), smallest_text, false);
  add_line(label, "at best " + over_or_clear(column.gap.max, column.gap.asked, column.about), smallest_text, false);
  add_line(label, "asked " + tolerance::in_words(column.gap.asked), smallest_text, false);
  label.lines.front().at.x = mark_room;
  for (Text& line : label.lines) line.text = shortened(line.text, width - line.at.x, line.size, line.bold);
  return label;
}

void draw_refusal(const StackColumn& column, const Box& box, Group& group) {
  constexpr double size = 2.8;
  group.add(Text{{box.low.x, box.low.y + 3.0}, "The stack", 3.2, Anchor::start, true, false, false, ink});
  double y = box.low.y + 9.0;
  for (std::string& line : broken(column.refused, box.width(), size, 6)) {
    group.add(Text{{box.low.x, y}, std::move(line), size, Anchor::start, false, false, false, ink});
    y += 3.8;
  }
  if (column.away == geometry::Vec3(0.0) && column.gap.nominal == 0.0 && column.gap.max == 0.0) return;
  Label figure = gap_label(column, box.width());
  figure.leader = false;
  figure.wanted = y + 4.0 + 0.5 * figure.height;
  y += 4.0 + figure.height + 8.0;
  place(group, {std::move(figure)}, box.low.x, box.low.y, box.high.y, false);
  for (std::size_t i = 0; i < column.aside.size() && i < 10; ++i) {
    if (i == 0) group.add(Text{{box.low.x, y}, "It depends on:", size, Anchor::start, true, false, false, ink});
    for (std::string& line : broken(column.aside[i], box.width(), smallest_text, 2)) {
      y += 3.4;
      group.add(Text{{box.low.x, y + 0.8}, std::move(line), smallest_text, Anchor::start, false, false, false, ink});
    }
    y += 1.0;
  }
}

}  // namespace

void draw(const StackColumn& column, const Box& box, bool down, const std::string& direction, Group& group) {
  constexpr double heading = 12.0;
  constexpr double line_height = 3.3;
  Group out;
  out.name = "stack";
  const double foot = box.high.y - line_height *
                                       static_cast<double>(std::min<std::size_t>(column.aside.size() + 1, 5)) *
                                       (column.aside.empty() ? 0.0 : 1.0);
  const double room = foot - box.low.y - heading - 6.0;
  const double scale = column_scale(column, room);
  if (!column.refused.empty()) {
    draw_refusal(column, box, out);
    return group.add(std::move(out));
  }
  out.add(Text{{box.low.x, box.low.y + 3.0},
               "The stack, " + scale_in_words(scale),
               3.2,
               Anchor::start,
               true,
               false,
               false,
               ink});
  out.add(Text{{box.low.x, box.low.y + 7.0},
               shortened(direction, box.width(), smallest_text),
               smallest_text,
               Anchor::start,
               false,
               false,
               false,
               ink});

  const double length = scale * std::max(total(column.open), total(column.close));
  Layout layout;
  layout.box = {{box.low.x, box.low.y + heading}, {box.high.x, foot}};
  layout.scale = scale;
  layout.step = down ? 1.0 : -1.0;
  const double spare = 0.5 * (layout.box.height() - length);
  layout.base = down ? layout.box.low.y + spare : layout.box.high.y - spare;
  constexpr double left_labels = 19.0;
  layout.narrow = {{box.low.x + left_labels + 1.5, 0.0}, {box.low.x + left_labels + 5.5, 0.0}};
  layout.wide = {{layout.narrow.high.x + 1.5, 0.0}, {layout.narrow.high.x + 14.5, 0.0}};
  const double label_x = layout.wide.high.x + 4.5;
  const double label_width = box.high.x - label_x;

  std::vector<Label> left = draw_bar(out, layout, layout.narrow, column.open, left_labels, true);
  std::vector<Label> right = draw_bar(out, layout, layout.wide, column.close, label_width, false);
  const double opened = total(column.open);
  const double closed = total(column.close);
  draw_verdict_area(out, column.verdict, column.gap.nominal < 0.0,
                    {bar(layout, layout.wide, std::min(opened, closed), std::max(opened, closed))});
  const auto across = [&](double at, double width, const std::string& colour, bool dashed) {
    out.add(Line{{{layout.narrow.low.x, layout.at(at)}, {layout.wide.high.x + 2.0, layout.at(at)}},
                 false,
                 {width, colour, dashed}});
  };
  across(0.0, thick_line, ink, false);
  across(opened, thick_line, colour(column.verdict), false);
  if (column.gap.asked > 0.0) across(opened - column.gap.asked, thin_line, ink, true);
  Label figure = gap_label(column, label_width);
  figure.wanted = figure.from_y = layout.at(0.5 * (opened + closed));
  // Beside the gap where it is wide, else beyond the end, so that the bands keep their names close by.
  if (scale * std::abs(opened - closed) < figure.height) figure.wanted += layout.step * 0.35 * figure.height;
  figure.from_x = layout.wide.high.x;
  right.push_back(std::move(figure));
  place(out, std::move(right), label_x, layout.box.low.y - 2.0, layout.box.high.y, false);
  place(out, std::move(left), box.low.x + left_labels - 0.8, layout.box.low.y, layout.box.high.y, true);

  double y = foot + 3.0;
  for (std::size_t i = 0; i < column.aside.size() && i < 4; ++i, y += line_height) {
    if (i == 0) {
      out.add(Text{{box.low.x, y}, "and, not drawn:", smallest_text, Anchor::start, true, false, false, ink});
      y += line_height;
    }
    const bool more = i == 3 && column.aside.size() > 4;
    const std::string line = more ? std::to_string(column.aside.size() - 3) + " more" : column.aside[i];
    out.add(Text{{box.low.x, y},
                 shortened(line, box.width(), smallest_text),
                 smallest_text,
                 Anchor::start,
                 false,
                 false,
                 false,
                 ink});
  }
  group.add(std::move(out));
}

}  // namespace baywright::output
