#include "output/page.h"

#include "output/answer_words.h"
#include "output/mark.h"
#include "output/words.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace baywright::output {

using fit::Finding;

Text text(Vec2 at, std::string words, double size, Anchor anchor, bool bold) {
  return {at, std::move(words), size, anchor, bold, false, false, ink};
}

Text fitted(Vec2 at, const std::string& words, double width, double size, double least, bool bold) {
  while (size > least && text_width(words, size, bold) > width) size -= 0.1;
  return text(at, shortened(words, width, size, bold), size, Anchor::start, bold);
}

std::vector<std::string> wrapped(const std::string& words, double width, double size, std::size_t most, bool bold) {
  constexpr std::size_t any = 100;
  constexpr const char* left_out = " …";
  std::vector<std::string> lines = broken(words, width, size, any, bold);
  if (lines.size() <= most) return lines;
  lines.resize(most);
  std::string& last = lines.back();
  while (text_width(last + left_out, size, bold) > width && last.find(' ') != std::string::npos)
    last.resize(last.rfind(' '));
  last += left_out;
  return lines;
}

std::string name_of(const Subject& s, int element) {
  const fit::Element& own = s.seated.scene.element(element);
  const bool wall = s.seated.machine.contains(element) && own.body != "cover";
  return wall ? own.body + " of " + own.part : own.part;
}

bool meet(const Box& a, const Box& b) {
  return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

bool has_room(const Group& group, const Box& box) {
  return std::none_of(group.items.begin(), group.items.end(), [&](const Item& item) {
    if (const auto* inner = std::get_if<Group>(&item.drawn)) return !has_room(*inner, box);
    const auto* words = std::get_if<Text>(&item.drawn);
    return words != nullptr && meet(box_of(*words), box);
  });
}

Subject subject_of(const build::Build& build, const fit::Seated& seated, const fit::Seating& seating) {
  Subject out{build, seated, seating, nullptr, Stance::m2, nullptr, nullptr, build.method};
  for (const build::Place& place : build.places)
    if (place.name == seating.place) out.place = &place, out.stance = stance_of(place);
  if (seating.deciding && *seating.deciding < seating.findings.size()) {
    const Finding& finding = seating.findings[*seating.deciding];
    const bool somewhere = glm::length(finding.toward) > 0.5;  // a backplane's connector is not
    if (finding.gap && std::isfinite(finding.gap->nominal) && somewhere) out.drawn = &finding;
  }
  out.answer = answering(seating);
  return out;
}

std::vector<Outline> on_paper(const std::vector<Outline>& outlines, const Placement& placement) {
  std::vector<Outline> out = outlines;
  for (Outline& outline : out)
    for (Vec2& p : outline) p = placement.at(p);
  return out;
}

Placement placed(const Window& window, const Vec2& upper_left, double scale) {
  return {{upper_left.x - scale * window.low.x, upper_left.y + scale * window.high.y}, scale};
}

namespace {

constexpr double section_head = 16.0;  // title and callout
constexpr double callout_foot = 8.0;   // of that, the callout's where it stands below

/// The outer view to the right of the section, level with it; below both a detail has room.
void lay_out_beside(Layout& out, const Window& section, const Window& outer, bool heights) {
  const double labels = heights ? 38.0 : 8.0;      // between the two
  const double dimension = heights ? 20.0 : 13.0;  // left of the outer view
  constexpr double below = 34.0;                   // for the detail
  constexpr std::array<double, 5> scales = {1.0, 0.5, 0.2, 0.1, 0.05};
  const double room_x = views_right - labels - dimension - window_left;
  const double room_y = body_bottom - body_top - section_head - outer_foot - below;
  for (const double scale : scales) {
    out.scale = scale;
    if (scale * (section.high.x - section.low.x + outer.high.x - outer.low.x) <= room_x &&
        scale * (section.high.y - section.low.y) <= room_y)
      break;
  }
  const double top = body_top + section_head;
  out.section = placed(section, {window_left, top}, out.scale);
  out.section_box = out.section.box(section);
  out.labels_right = out.section_box.high.x + labels;
  out.outer_left = out.labels_right + 2.0;
  out.outer = placed(outer, {out.labels_right + dimension, top}, out.scale);
  out.outer_box = out.outer.box(outer);
  out.outer_right = views_right;
}

void lay_out_below(Layout& out, const Window& section, const Window& plan, bool callout_below) {
  constexpr double labels_width = 42.0;  // of heights, right of the section, at least
  constexpr double plan_head = 16.0;     // title and names
  constexpr std::array<double, 5> scales = {1.0, 0.5, 0.2, 0.1, 0.05};
  const double room_x = views_right - labels_width - window_left;
  const double room_y = body_bottom - body_top - section_head - plan_head - outer_foot;
  for (const double scale : scales) {
    out.scale = scale;
    const double width = std::max(section.high.x - section.low.x, plan.high.x - plan.low.x);
    const double height = section.high.y - section.low.y + plan.high.y - plan.low.y;
    if (scale * width <= room_x && scale * height <= room_y) break;
  }
  const double foot = callout_below ? callout_foot : 0.0;
  out.section = placed(section, {window_left, body_top + section_head - foot}, out.scale);
  out.section_box = out.section.box(section);
  out.labels_right = views_right;
  // What room is left goes between the views first, then below them.
  const double spare =
      body_bottom - out.section_box.high.y - foot - plan_head - outer_foot - out.scale * (plan.high.y - plan.low.y);
  const double head = foot + plan_head + std::max(0.0, std::min(8.0, 0.5 * (spare - 24.0)));
  out.outer = placed(plan, {window_left, out.section_box.high.y + head}, out.scale);
  out.outer_box = out.outer.box(plan);
  out.outer_left = inside.low.x;
  out.outer_right = std::max(out.outer_box.high.x, pointers_right);
  constexpr double beside_narrow = 50.0;  // a section so much narrower than the plan leaves the detail room beside it
  out.narrow = out.section_box.high.x + beside_narrow < out.outer_right;
  if (out.narrow) out.labels_right = out.outer_right;
}

}  // namespace

Layout lay_out(const Window& section, const OuterView& outer, const std::optional<Vec2>& spot) {
  constexpr double long_leader = 14.0;  // mm of paper: what a leader from above may cross more than one from below
  Layout out;
  out.beside = outer.beside;
  const auto stand = [&] {
    if (out.beside)
      lay_out_beside(out, section, outer.window, outer.heights);
    else
      lay_out_below(out, section, outer.window, out.callout_below);
  };
  stand();
  if (spot) {
    const double y = out.section.at(*spot).y;
    out.callout_below = (y - out.section_box.low.y) - (out.section_box.high.y - y) > long_leader;
    if (out.callout_below) stand();
  }
  return out;
}

std::string answer_sentence(const Subject& s) {
  return answer_of(s.seating, s.method).sentence;
}

void draw_answer(const Subject& s, Group& all) {
  Group out;
  out.name = "answer";
  constexpr double mark = 11.0;
  const double left = inside.low.x + mark + 4.0;
  const double width = inside.high.x - left;
  draw_mark(out, s.seating.verdict, inside.low, mark);
  const std::string verdict = word(s.seating.verdict);
  out.add(text({left, 15.6}, verdict, 6.5, Anchor::start, true));
  const double after = left + text_width(verdict, 6.5, true) + 4.0;
  out.add(fitted({after, 15.6}, s.seating.drive + " in " + s.seating.place, inside.high.x - after, 5.0, 3.5));
  const std::string sentence = answer_sentence(s);
  double y = 22.6;
  if (text_width(sentence, 4.4) <= width) {
    out.add(fitted({left, y}, sentence, width, 5.0, 4.4));
  } else {
    for (std::string& line : broken(sentence, width, 4.2, 2)) {
      out.add(text({left, y}, std::move(line), 4.2));
      y += 5.0;
    }
    y -= 5.0;
  }
  std::string more = s.answer != nullptr && s.answer->gap ? say_need(*s.answer) : std::string();
  const auto others = std::count_if(s.seating.findings.begin(), s.seating.findings.end(), [&](const Finding& finding) {
    return &finding != s.answer && finding.verdict && *finding.verdict != fit::Verdict::fits;
  });
  if (others > 0)
    more += (more.empty() ? "" : " ") + std::to_string(others) + (others == 1 ? " more finding" : " more findings") +
            " of this seating does not pass: see below.";
  if (others > 1) more.replace(more.find("does not pass"), 13, "do not pass");
  if (!more.empty()) out.add(fitted({left, y + 4.8}, more, width, 3.2, smallest_text));
  out.add(Line{{{inside.low.x, 34.0}, {inside.high.x, 34.0}}, false, {}});
  all.add(std::move(out));
}

void draw_foot(const Subject& s, const std::string& scales, double asked, Group& all) {
  Group bar;
  bar.name = "scale check bar";
  constexpr double y = 179.5;
  const double x = inside.low.x;
  bar.add(text({x, y - 3.6}, "print at 100 %; this bar measures 50 mm"));
  bar.add(Line{{{x, y}, {x + 50.0, y}}, false, {thick_line, ink, false}});
  for (int i = 0; i <= 5; ++i)
    bar.add(Line{{{x + 10.0 * i, y - 1.8}, {x + 10.0 * i, y}}, false, {thin_line, ink, false}});
  all.add(std::move(bar));
  Group foot;
  foot.name = "title block";
  const build::Bay* bay = s.bay();
  const bool drills = bay != nullptr && bay->fixing && (bay->panel || bay->fixing->placed);
  const std::vector<std::string> said = cautions(drills, s.drawn != nullptr && s.drawn->shared.has_value());
  double y_said = y - 4.6 * static_cast<double>(said.size() - 1);
  for (const std::string& caution : said) {
    foot.add(fitted({x + 66.0, y_said}, caution, inside.high.x - x - 66.0, 3.4, smallest_text, true));
    y_said += 4.6;
  }
  struct Cell {
    const char* name;
    std::string value;
    double width;
  };
  const std::array<Cell, 6> cells = {{{"build", s.build.title, 91.0},
                                      {"drive", s.seating.drive, 58.0},
                                      {"place", s.seating.place, 38.0},
                                      {"limits", in_words(s.method), 34.0},
                                      {"clearance asked", tolerance::in_words(asked) + " mm", 26.0},
                                      {"scale", scales, 30.0}}};
  constexpr double top = 184.0;
  double left = inside.low.x;
  foot.add(
      Line{{{left, top}, {inside.high.x, top}, inside.high, {left, inside.high.y}}, true, {thick_line, ink, false}});
  for (const Cell& cell : cells) {
    if (left > inside.low.x) foot.add(Line{{{left, top}, {left, inside.high.y}}, false, {}});
    foot.add(text({left + 1.5, top + 4.4}, cell.name));
    double y_value = top + 9.2;
    for (std::string& line : broken(cell.value, cell.width - 3.0, 3.0, 2)) {
      foot.add(text({left + 1.5, y_value}, std::move(line), 3.0));
      y_value += 4.2;
    }
    left += cell.width;
  }
  all.add(std::move(foot));
}

void draw_others(const Subject& s, double top, double right, Group& all) {
  Group out;
  out.name = "other findings";
  constexpr double pitch = 4.4;
  constexpr double line = 3.4;
  constexpr double size = 2.6;
  double y = top + 3.0;
  bool first = true;
  for (const Finding& finding : s.seating.findings) {
    if (&finding == s.drawn || &finding == s.answer) continue;  // said above
    std::string words =
        finding.verdict && *finding.verdict != fit::Verdict::fits ? word(*finding.verdict) + ": " : std::string();
    words += say(finding, s.method);
    const double head = first ? pitch + 0.4 : 0.0;
    const double room = body_bottom - 1.0 - y - head;
    if (room < 0.0) break;
    const auto most = static_cast<std::size_t>(1.0 + std::min(2.0, room / line));
    if (first) out.add(text({inside.low.x, y}, "Also checked", title_size, Anchor::start, true));
    first = false;
    y += head;
    if (finding.verdict) draw_mark(out, *finding.verdict, {inside.low.x, y - 2.4}, 2.8);
    for (std::string& part : wrapped(words, right - inside.low.x - 4.4, size, most)) {
      out.add(text({inside.low.x + 4.4, y}, std::move(part), size));
      y += line;
    }
    y += pitch - line;
  }
  if (!first) all.add(std::move(out));
}

}  // namespace baywright::output
