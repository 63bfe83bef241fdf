#include "output/section_drawing.h"

#include "output/cut_drawing.h"
#include "output/mark.h"
#include "output/stack_column.h"
#include "output/words.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace baywright::output {

using fit::Finding;
using fit::Scene;
using geometry::View;

namespace {

/// Mark and figure over the section, led to the place.
void draw_callout(Group& group, const Finding& finding, const Vec2& at, double base_line, double left, double right) {
  const fit::Verdict verdict = finding.verdict.value_or(fit::Verdict::undecided);
  constexpr double size = 4.2;
  const std::string figure = over_or_clear(finding.gap->nominal, finding.gap->asked);
  const std::string words = word(verdict);
  const double width = 5.0 + text_width(figure, size, true) + 2.0 + text_width(words, 3.0);
  const double x = std::max(left, std::min(at.x - 0.5 * width, right - width));
  const Vec2 foot(std::max(x + 2.0, std::min(at.x, x + width - 2.0)), base_line + 1.4);
  group.add(Line{{foot, at}, false, {thin_line + 0.7, paper, false}});
  group.add(Line{{foot, at}, false, {0.25, colour(verdict), false}});
  draw_mark(group, verdict, {x, base_line - 3.6}, 4.0);
  group.add(text({x + 5.0, base_line}, figure, size, Anchor::start, true));
  group.add(text({x + 7.0 + text_width(figure, size, true), base_line}, words, 3.0));
}

/// Names of the machine's parts to the left of the section, led to them.
void draw_host_names(const Subject& s, Group& group, const std::vector<Seen>& seen, const Placement& placement,
                     const Box& box) {
  struct Name {
    std::string words;
    Vec2 to;
  };
  std::vector<Name> names;
  for (const Seen& each : seen) {
    if (!each.cut || s.own(each.element) || each.outlines.empty()) continue;
    const std::string& part = s.seated.scene.element(each.element).part;
    if (std::any_of(names.begin(), names.end(), [&](const Name& name) { return name.words == part; })) continue;
    Window extent{each.outlines.front().front(), each.outlines.front().front()};
    for (const Vec2& p : each.outlines.front()) extent = {glm::min(extent.low, p), glm::max(extent.high, p)};
    const Vec2 middle = 0.5 * (extent.low + extent.high);
    const double in = std::min(1.5 / placement.scale, middle.x - extent.low.x);
    names.push_back({part, placement.at({extent.low.x + in, middle.y})});
  }
  std::stable_sort(names.begin(), names.end(), [](const Name& a, const Name& b) { return a.to.y < b.to.y; });
  std::vector<double> wanted;
  std::vector<double> halves;
  std::vector<std::vector<std::string>> labels;
  for (const Name& name : names) {
    labels.push_back(broken(name.words, names_width, smallest_text, 2));
    wanted.push_back(name.to.y);
    halves.push_back(0.5 * (3.0 * static_cast<double>(labels.back().size()) + 0.8));
  }
  const std::vector<double> middles = spread(wanted, halves, body_top + 6.0, box.high.y + 4.0);
  const double x = inside.low.x + names_width;
  for (std::size_t i = 0; i < names.size(); ++i) {
    double y = middles[i] - halves[i] + 0.4 + 2.3;
    for (std::string& line : labels[i]) {
      group.add(text({x, y}, std::move(line), smallest_text, Anchor::end));
      y += 3.0;
    }
    group.add(Line{{{x + 0.6, middles[i]}, {x + 1.6, middles[i]}, names[i].to}, false, {thin_line, grey, false}});
    group.add(Disc{names[i].to, 0.35, ink, std::nullopt});
  }
}

}  // namespace

double draw_section(const Subject& s, const SectionView& section, const Layout& layout, Group& all) {
  Group out;
  out.name = "section";
  const Box& box = layout.section_box;
  const std::vector<Seen> seen = cut_scene(s.seated.scene, section.view, section.window, layout.scale, true);
  out.add(text({inside.low.x, body_top + 3.0}, section.title + ", " + scale_in_words(layout.scale), title_size,
               Anchor::start, true));
  Group parts;
  parts.name = "parts";
  parts.clip = Box{box.low - Vec2(0.5), box.high + Vec2(0.5)};
  draw_seen(s, parts, seen, section.view, layout.section);
  out.add(std::move(parts));
  draw_host_names(s, out, seen, layout.section, box);
  std::vector<Height> heights = heights_in(s.seated, s.seating.drive, s.drawn, section, seen, layout.section);
  const double room = heights_room(heights, box.high.x, views_right);
  const double top = box.low.y - 1.0;
  const double below =
      draw_heights(out, std::move(heights), box.high.x, views_right, top, std::max(box.high.y + 1.0, top + room));
  if (s.drawn != nullptr) {
    const Spot spot = spot_in(s.seated, *s.drawn, section.view);
    draw_overlap(out, spot, *s.drawn, layout.section);
    draw_callout(out, *s.drawn, layout.section.at(0.5 * (spot.on_drive + spot.on_other)), body_top + 11.0, window_left,
                 views_right);
  }
  all.add(std::move(out));
  return std::max(below, box.high.y);
}

namespace {

/// Large enough to be read, small enough that the gap and what is beside it have room.
double detail_scale(const Finding& finding, const Box& box, double main_scale) {
  constexpr std::array<double, 4> usual = {20.0, 10.0, 5.0, 2.0};
  const double size = std::abs(finding.gap->nominal);
  const double room = 0.45 * std::min(box.width(), box.height());
  for (const double scale : usual) {
    if (scale == usual.front() && size > 0.15) continue;
    if (scale > main_scale && scale * size <= room) return scale;
  }
  return 0.0;
}

void name_part(const Subject& s, Group& group, const std::vector<Seen>& seen, const Placement& placement,
               const Box& box, const std::string& part, const std::string& words) {
  // The largest of the part's areas, at the end that has room.
  Box best{{0.0, 0.0}, {0.0, 0.0}};
  for (const Seen& each : seen) {
    if (!each.cut || s.seated.scene.element(each.element).part != part) continue;
    for (const Outline& outline : on_paper(each.outlines, placement)) {
      Box extent{outline.front(), outline.front()};
      for (const Vec2& p : outline) extent = {glm::min(extent.low, p), glm::max(extent.high, p)};
      extent = {glm::max(extent.low, box.low), glm::min(extent.high, box.high)};
      if (extent.width() * extent.height() > best.width() * best.height()) best = extent;
    }
  }
  if (best.height() < 3.6) return;
  const std::string shown = shortened(words, best.width() - 3.0, smallest_text);
  if (shown.size() < 4 || best.width() < 8.0) return;
  for (const double share : {0.5, 0.8, 0.2})
    for (const bool left : {true, false}) {
      Text label = text({left ? best.low.x + 1.5 : best.high.x - 1.5, best.low.y + share * best.height() + 0.9}, shown,
                        smallest_text, left ? Anchor::start : Anchor::end);
      label.haloed = true;
      const Box room = box_of(label);
      if (room.low.y < best.low.y || room.high.y > best.high.y || !has_room(group, room)) continue;
      group.add(label);
      return;
    }
}

/// The figure at the nearest place where nothing is drawn, led to the spot.
/// `arrows`: where the gap's arrows stand; `asked`: the dashed line, if there is one.
void draw_figure(Group& group, const std::vector<Seen>& seen, const Placement& placement, const Box& box,
                 const Box& arrows, const std::optional<Box>& asked, const std::string& figure) {
  const Vec2 spot = 0.5 * (arrows.low + arrows.high);
  constexpr double size = 4.2;
  constexpr double step = 1.0;
  const Vec2 half(0.5 * text_width(figure, size, true) + 1.2, 0.5 * size + 0.6);
  std::vector<Box> taken;
  std::vector<Box> behind;  // taken too, unless there is no other room
  for (const Seen& each : seen)
    for (const Outline& outline : on_paper(each.outlines, placement)) {
      Box extent{outline.front(), outline.front()};
      for (const Vec2& p : outline) extent = {glm::min(extent.low, p), glm::max(extent.high, p)};
      (each.cut ? taken : behind).push_back(extent);
    }
  taken.push_back(arrows);
  if (asked) behind.push_back(*asked);
  const auto nearest = [&](bool over_behind) {
    std::optional<Vec2> best;
    for (double y = box.low.y + half.y + 0.5; y < box.high.y - half.y; y += step)
      for (double x = box.low.x + half.x + 0.5; x < box.high.x - half.x; x += step) {
        const Vec2 at(x, y);
        const auto in_the_way = [&](const Box& other) { return meet({at - half, at + half}, other); };
        if (std::any_of(taken.begin(), taken.end(), in_the_way)) continue;
        if (!over_behind && std::any_of(behind.begin(), behind.end(), in_the_way)) continue;
        if (!best || glm::distance(at, spot) < glm::distance(*best, spot) - 1e-9) best = at;
      }
    return best;
  };
  std::optional<Vec2> best = nearest(false);
  if (!best) best = nearest(true);
  if (best) {
    const Vec2 from(std::max(best->x - half.x, std::min(spot.x, best->x + half.x)),
                    std::max(best->y - half.y, std::min(spot.y, best->y + half.y)));
    group.add(Line{{from, spot}, false, {thin_line + 0.7, paper, false}});
    group.add(Line{{from, spot}, false, {}});
    group.add(text({best->x, best->y + 0.36 * size}, figure, size, Anchor::middle, true));
    return;
  }
  // All is drawn over: beside the spot, on a rim of paper.
  const double wanted = spot.x + 4.0 + 2.0 * half.x > box.high.x ? spot.x - 3.0 - half.x : spot.x + 3.0 + half.x;
  const double x = std::max(box.low.x + half.x, std::min(wanted, box.high.x - half.x));
  Text label = text({x, spot.y + (x == wanted ? 0.36 * size : -2.0)}, figure, size, Anchor::middle, true);
  label.haloed = true;
  group.add(label);
}

}  // namespace

double draw_detail(const Subject& s, const SectionView& section, const Layout& layout, double top, Group& all) {
  constexpr double title = 6.0;
  constexpr double caption = 16.5;
  const double left = std::max({layout.section_box.high.x, layout.plan_box.high.x, pointers_right}) + 6.0;
  const Box box{{left, top + title}, {views_right, std::min(body_bottom - caption, top + title + 62.0)}};
  if (box.width() < 25.0 || box.height() < 18.0) return 0.0;
  const double scale = detail_scale(*s.drawn, box, layout.scale);
  if (scale == 0.0) return 0.0;
  const Spot spot = spot_in(s.seated, *s.drawn, section.view);
  const Vec2 middle = 0.5 * (spot.on_drive + spot.on_other);
  const Vec2 half(0.5 * box.width() / scale, 0.5 * box.height() / scale);
  const Window window{middle - half, middle + half};
  const Placement placement = placed(window, box.low, scale);
  const Vec2 beyond(1.0 / scale);  // so that break lines fall outside: the frame is the end here
  const std::vector<Seen> seen =
      cut_scene(s.seated.scene, section.view, {window.low - beyond, window.high + beyond}, scale, true);

  Group out;
  out.name = "detail";
  out.add(text({left, top + 3.6}, "Detail A, " + scale_in_words(scale), title_size, Anchor::start, true));
  Group parts;
  parts.clip = box;
  draw_seen(s, parts, seen, section.view, placement);
  const std::string shade = colour(s.drawn->verdict.value_or(fit::Verdict::undecided));
  const bool square = spot.in_plane && std::min(std::abs(spot.along.x), std::abs(spot.along.y)) < 0.01;
  const bool dashed = s.drawn->gap->asked > 0.0 && square;
  std::optional<Box> asked_line;
  if (dashed) {
    const Vec2 side(-spot.along.y, spot.along.x);
    const Vec2 from = spot.on_other - spot.along * s.drawn->gap->asked;
    parts.add(Line{{placement.at(from - side * 100.0), placement.at(from + side * 100.0)}, false, {0.25, shade, true}});
    const Vec2 one = placement.at(from - side * 100.0);
    const Vec2 other = placement.at(from + side * 100.0);
    asked_line = Box{glm::min(one, other) - Vec2(0.3), glm::max(one, other) + Vec2(0.3)};
  }
  const Vec2 a = placement.at(spot.on_drive);
  const Vec2 b = placement.at(spot.on_other);
  const Vec2 tails = Vec2(2.0) + 5.0 * glm::abs(spot.along);  // arrows from outside reach that far beyond the faces
  draw_figure(parts, seen, placement, box, {glm::min(a, b) - tails, glm::max(a, b) + tails}, asked_line,
              over_or_clear(s.drawn->gap->nominal, s.drawn->gap->asked));
  draw_spot(parts, spot, *s.drawn, placement);
  for (const std::size_t which : {std::size_t{0}, std::size_t{1}})
    name_part(s, parts, seen, placement, box, s.drawn->between[which], s.drawn->between[which]);
  out.add(std::move(parts));
  out.add(Line{{box.low, {box.high.x, box.low.y}, box.high, {box.low.x, box.high.y}}, true, {}});

  const double y = box.high.y + 4.0;
  const fit::GapFigures& gap = *s.drawn->gap;
  std::vector<std::string> captions = {"nominal " + over_or_clear(gap.nominal, gap.asked),
                                       "at worst " + over_or_clear(gap.min, gap.asked),
                                       "at best " + over_or_clear(gap.max, gap.asked)};
  if (dashed) captions.push_back("dashed: " + tolerance::in_words(gap.asked) + " asked");
  for (std::size_t i = 0; i < captions.size(); ++i)
    out.add(text({left, y + line_height * static_cast<double>(i)}, shortened(captions[i], box.width(), smallest_text)));

  // Where it is in the section.
  const Window shown{glm::max(window.low, section.window.low), glm::min(window.high, section.window.high)};
  const Box spot_box = layout.section.box(shown);
  out.add(Line{{spot_box.low, {spot_box.high.x, spot_box.low.y}, spot_box.high, {spot_box.low.x, spot_box.high.y}},
               true,
               {thin_line, ink, true}});
  for (const Vec2& at :
       {Vec2(spot_box.high.x + 0.8, spot_box.low.y - 0.6), Vec2(spot_box.low.x - 3.2, spot_box.low.y - 0.6),
        Vec2(spot_box.high.x + 0.8, spot_box.high.y + 3.0)}) {
    Text letter = text(at, "A", title_size, Anchor::start, true);
    letter.haloed = true;
    if (!has_room(all, box_of(letter)) || !has_room(out, box_of(letter))) continue;
    out.add(letter);
    break;
  }
  all.add(std::move(out));
  return scale;
}

}  // namespace baywright::output
