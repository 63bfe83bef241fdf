#include "output/section_drawing.h"

#include "output/cut_drawing.h"
#include "output/mark.h"
#include "output/screw_drawing.h"
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

/// Mark and figure over the section or below it, led to the place.
void draw_callout(Group& group, const Finding& finding, const Vec2& at, double base_line, double left, double right) {
  const fit::Verdict verdict = finding.verdict.value_or(fit::Verdict::undecided);
  constexpr double size = 4.2;
  const std::string figure = over_or_clear(finding.gap->nominal, finding.gap->asked, finding.why.code);
  const std::string words = word(verdict);
  const double width = 5.0 + text_width(figure, size, true) + 2.0 + text_width(words, 3.0);
  const double x = std::max(left, std::min(at.x - 0.5 * width, right - width));
  const double side = at.y > base_line ? base_line + 1.4 : base_line - 4.2;
  const Vec2 foot(std::max(x + 2.0, std::min(at.x, x + width - 2.0)), side);
  group.add(Line{{foot, at}, false, {thin_line + 0.7, paper, false}});
  group.add(Line{{foot, at}, false, {0.25, colour(verdict), false}});
  draw_mark(group, verdict, {x, base_line - 3.6}, 4.0);
  group.add(text({x + 5.0, base_line}, figure, size, Anchor::start, true));
  group.add(text({x + 7.0 + text_width(figure, size, true), base_line}, words, 3.0));
}

/// A wall or panel to the right of a drive: a leader from the left would run across it, and the plan names it.
bool far_wall(const Subject& s, const Seen& seen, const Window& window) {
  if (s.stance != Stance::flat && s.stance != Stance::on_edge) return false;
  const double middle = 0.5 * (window.low.x + window.high.x);
  const Outline& outline = seen.outlines.front();
  return std::all_of(outline.begin(), outline.end(), [&](const Vec2& p) { return p.x > middle; });
}

/// Names of the machine's parts to the left of the section, led to them.
void draw_host_names(const Subject& s, Group& group, const std::vector<Seen>& seen, const Placement& placement,
                     const Window& section_window) {
  const Box box = placement.box(section_window);
  struct Name {
    std::string words;
    Vec2 to;
  };
  std::vector<Name> names;
  for (const Seen& each : seen) {
    if (!each.cut || s.own(each.element) || each.outlines.empty()) continue;
    if (far_wall(s, each, section_window)) continue;
    const std::string part = name_of(s, each.element);
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

double draw_section(const Subject& s, const SectionView& section, const Layout& layout, bool with_heights, Group& all) {
  Group out;
  out.name = "section";
  const Box& box = layout.section_box;
  const std::vector<Seen> seen = cut_scene(s.seated.scene, section.view, section.window, layout.scale, true);
  const std::string title = section.title + ", " + scale_in_words(layout.scale);
  double y = body_top + 3.0;
  for (std::string& line :
       wrapped(title, layout.beside ? layout.labels_right - inside.low.x : inside.width(), title_size, 2, true)) {
    out.add(text({inside.low.x, y}, std::move(line), title_size, Anchor::start, true));
    y += line_height;
  }
  Group parts;
  parts.name = "parts";
  parts.clip = Box{box.low - Vec2(0.5), box.high + Vec2(0.5)};
  draw_seen(s, parts, seen, section.view, layout.section);
  draw_screws(parts, screws_in(s, section.view), layout.section);
  out.add(std::move(parts));
  draw_host_names(s, out, seen, layout.section, section.window);
  std::vector<Height> heights;
  if (with_heights) heights = heights_in(s.seated, s.stance, s.seating.drive, s.drawn, section, seen, layout.section);
  const double room = heights_room(heights, box.high.x, layout.labels_right);
  const double top = box.low.y - 1.0;
  double below = draw_heights(out, std::move(heights), box.high.x, layout.labels_right, top,
                              std::max(box.high.y + 1.0, top + room));
  below = std::max(below, box.high.y);
  if (s.drawn != nullptr) {
    const Spot spot = spot_of(s, section.view);
    draw_overlap(out, spot, *s.drawn, layout.section);
    const double base_line = layout.callout_below ? box.high.y + 6.5 : body_top + 11.0;
    constexpr double before_labels = 8.0;
    draw_callout(out, *s.drawn, layout.section.at(0.5 * (spot.on_drive + spot.on_other)), base_line, window_left,
                 layout.callout_below ? box.high.x + before_labels : layout.labels_right);
    if (layout.callout_below) below = std::max(below, base_line + 1.0);
  }
  all.add(std::move(out));
  return below;
}

namespace {

/// Large enough to be read, small enough that the gap and what is beside it have room.
double detail_scale(const Finding& finding, const std::optional<ShownScrew>& screw, const Box& box, double main_scale) {
  constexpr std::array<double, 4> usual = {20.0, 10.0, 5.0, 2.0};
  if (screw) {  // all of it
    const double length = screw->high + screw->before + screw->deep + 2.0;
    const double along = std::abs(screw->in.x) > 0.5 ? box.width() : box.height();
    for (const double scale : usual)
      if (scale > main_scale && scale < usual.front() && scale * length <= along) return scale;
    return 0.0;
  }
  const double size = std::abs(finding.gap->nominal);
  const double room = 0.45 * std::min(box.width(), box.height());
  for (const double scale : usual) {
    if (scale == usual.front() && size > 0.15) continue;
    if (scale > main_scale && scale * size <= room) return scale;
  }
  return 0.0;
}

/// Names the largest of the areas of some elements, at the end that has room: level, or upward where they are narrow,
/// by the first of the names that has room.
void name_elements(Group& group, const std::vector<Seen>& seen, const Placement& placement, const Box& box,
                   const std::vector<Box>& taken, const std::vector<int>& elements,
                   const std::vector<std::string>& names) {
  Box best{{0.0, 0.0}, {0.0, 0.0}};
  for (const Seen& each : seen) {
    if (!each.cut || std::find(elements.begin(), elements.end(), each.element) == elements.end()) continue;
    for (const Outline& outline : on_paper(each.outlines, placement)) {
      Box extent{outline.front(), outline.front()};
      for (const Vec2& p : outline) extent = {glm::min(extent.low, p), glm::max(extent.high, p)};
      extent = {glm::max(extent.low, box.low), glm::min(extent.high, box.high)};
      if (extent.width() * extent.height() > best.width() * best.height()) best = extent;
    }
  }
  constexpr double in = 1.5;
  for (const std::string& name : names)
    for (const bool upward : {false, true})
      for (const double share : {0.5, 0.8, 0.2})
        for (const bool start : {true, false}) {
          Text label = text({0.0, 0.0}, name, smallest_text, start ? Anchor::start : Anchor::end);
          label.upward = upward;
          label.haloed = true;
          label.at = upward
                         ? Vec2(best.low.x + share * best.width() + 0.9, start ? best.high.y - in : best.low.y + in)
                         : Vec2(start ? best.low.x + in : best.high.x - in, best.low.y + share * best.height() + 0.9);
          const Box room = box_of(label);
          if (room.low.x < best.low.x || room.high.x > best.high.x || room.low.y < best.low.y ||
              room.high.y > best.high.y || !has_room(group, room) ||
              std::any_of(taken.begin(), taken.end(), [&](const Box& other) { return meet(room, other); }))
            continue;
          group.add(label);
          return;
        }
  // Beside it, led to it.
  const double level = 0.5 * (best.low.y + best.high.y);
  const Box start{{best.high.x - 0.9, level - 0.1}, {best.high.x, level + 0.1}};
  if (std::any_of(taken.begin(), taken.end(), [&](const Box& other) { return meet(start, other); })) return;
  for (const std::string& name : names) {
    Text label = text({best.high.x + 4.0, level + 0.9}, name);
    label.haloed = true;
    const Box room = box_of(label);
    if (best.width() <= 0.0 || best.width() > 25.0 || room.high.x > box.high.x || !has_room(group, room)) continue;
    group.add(Line{{{best.high.x - 0.8, level}, {best.high.x + 3.4, level}}, false, {}});
    group.add(label);
    return;
  }
}

std::vector<int> of_part(const fit::Scene& scene, const std::string& part) {
  std::vector<int> out;
  for (int i = 0; i < scene.element_count(); ++i)
    if (scene.element(i).part == part) out.push_back(i);
  return out;
}

/// What the gap is between, and what else a screw goes through.
void name_all(const Subject& s, Group& group, const std::vector<Seen>& seen, const Placement& placement, const Box& box,
              const std::vector<Box>& taken, bool screw) {
  const fit::Scene& scene = s.seated.scene;
  const auto name = [&](const std::vector<int>& elements, const std::vector<std::string>& names) {
    name_elements(group, seen, placement, box, taken, elements, names);
  };
  if (!screw) {
    for (const std::size_t which : {std::size_t{0}, std::size_t{1}}) {
      const std::string& part = s.drawn->between[which];
      std::vector<int> elements = of_part(scene, part);
      const bool spacer = part == "stand-off" && s.bay() != nullptr && s.bay()->spacers;
      std::vector<std::string> names = {spacer ? "spacer" : part};
      const std::string& body = s.drawn->bodies[which];
      const int first = elements.empty() ? -1 : elements.front();
      if (first >= 0 && s.seated.machine.contains(first) && body != "cover") {
        elements = alike(scene, part, body);
        names = {body + " of " + part, body};
      }
      name(elements, names);
    }
    return;
  }
  name(of_part(scene, s.seating.drive), {s.seating.drive, "drive"});
  name(of_part(scene, "stand-off"), {s.bay()->spacers ? "spacer" : "stand-off"});
  std::vector<std::string> done;
  for (const Seen& each : seen) {
    const std::string part = name_of(s, each.element);
    if (!each.cut || s.own(each.element) || std::find(done.begin(), done.end(), part) != done.end()) continue;
    done.push_back(part);
    name({each.element}, {part, scene.element(each.element).body});
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

double draw_detail(const Subject& s, const SectionView& section, const Layout& layout, const Box& region,
                   bool figures_beside, Group& all) {
  constexpr double title = 6.0;
  const double caption = s.drawn->shared ? 16.5 + 2.0 * line_height : 16.5;
  constexpr double caption_width = 33.0;
  constexpr double most = 62.0;
  const double left = region.low.x;
  Box box{{left, region.low.y + title}, region.high};
  if (figures_beside)
    box.high.x -= caption_width;
  else
    box.high.y = std::min(box.high.y - caption, box.low.y + most);
  if (box.width() < 25.0 || box.height() < 18.0) return 0.0;
  const std::optional<ShownScrew> screw = deciding_screw(s, section.view);
  const double scale = detail_scale(*s.drawn, screw, box, layout.scale);
  if (scale == 0.0) return 0.0;
  const Spot spot = spot_of(s, section.view);
  const Vec2 middle =
      screw ? 0.5 * (screw->head - screw->in * screw->high + screw->tip()) : 0.5 * (spot.on_drive + spot.on_other);
  const Vec2 half(0.5 * box.width() / scale, 0.5 * box.height() / scale);
  const Window window{middle - half, middle + half};
  const Placement placement = placed(window, box.low, scale);
  const Vec2 beyond(1.0 / scale);  // so that break lines fall outside: the frame is the end here
  const std::vector<Seen> seen =
      cut_scene(s.seated.scene, section.view, {window.low - beyond, window.high + beyond}, scale, true);

  Group out;
  out.name = "detail";
  out.add(text({left, region.low.y + 3.6}, "Detail A, " + scale_in_words(scale), title_size, Anchor::start, true));
  Group parts;
  parts.clip = box;
  draw_seen(s, parts, seen, section.view, placement);
  draw_screws(parts, screws_in(s, section.view), placement);
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
  if (screw) {
    draw_overlap(parts, spot, *s.drawn, placement);
    draw_depths(s, parts, *screw, placement);
  } else {
    draw_figure(parts, seen, placement, box, {glm::min(a, b) - tails, glm::max(a, b) + tails}, asked_line,
                over_or_clear(s.drawn->gap->nominal, s.drawn->gap->asked, s.drawn->why.code));
    draw_spot(parts, spot, *s.drawn, placement);
  }
  std::vector<Box> taken;  // by what names must not lie on
  const auto take = [&](const std::vector<Vec2>& points) {
    Box box_round{placement.at(points.front()), placement.at(points.front())};
    for (const Vec2& p : points)
      box_round = {glm::min(box_round.low, placement.at(p)), glm::max(box_round.high, placement.at(p))};
    taken.push_back(box_round);
  };
  for (const geometry::Region& area : spot.overlap) take(area.outline);
  if (asked_line) taken.push_back(*asked_line);
  if (screw) {
    const Vec2 side = Vec2(-screw->in.y, screw->in.x) * screw->hole;
    take({screw->head + side, screw->head - side, screw->tip() + side, screw->tip() - side});
  }
  name_all(s, parts, seen, placement, box, taken, screw.has_value());
  out.add(std::move(parts));
  out.add(Line{{box.low, {box.high.x, box.low.y}, box.high, {box.low.x, box.high.y}}, true, {}});

  const fit::GapFigures& gap = *s.drawn->gap;
  std::vector<std::string> captions = {"nominal " + over_or_clear(gap.nominal, gap.asked, s.drawn->why.code),
                                       "at worst " + over_or_clear(gap.min, gap.asked, s.drawn->why.code),
                                       "at best " + over_or_clear(gap.max, gap.asked, s.drawn->why.code)};
  if (dashed) captions.push_back("dashed: " + tolerance::in_words(gap.asked) + " asked");
  if (screw && s.drawn->kind == fit::Kind::screw && s.bay()->fixing->side) {
    const double open = screw->before - screw->sheet;
    if (open > 0.005)
      captions.push_back("tight, the screw takes up " + tolerance::in_words(std::round(open * 100.0) / 100.0) +
                         " drawn open");
  }
  const double caption_left = figures_beside ? box.high.x + 2.0 : left;
  const double caption_room = figures_beside ? caption_width - 2.0 : box.width();
  double y = figures_beside ? box.low.y + 3.0 : box.high.y + 4.0;
  const auto write = [&](const std::string& words, std::size_t lines) {
    for (std::string& line : wrapped(words, caption_room, smallest_text, lines)) {
      out.add(text({caption_left, y}, std::move(line)));
      y += line_height;
    }
  };
  for (const std::string& each : captions) write(each, figures_beside ? 2 : 1);
  if (s.drawn->shared)
    write("overlap " + size_words(*s.drawn->shared) + " at nominal: what would have to go", figures_beside ? 4 : 2);

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
