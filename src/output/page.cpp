#include "output/page.h"

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
  Subject out{build, seated, seating, nullptr, nullptr, build.method};
  if (seating.deciding && *seating.deciding < seating.findings.size()) {
    const Finding& finding = seating.findings[*seating.deciding];
    if (finding.gap && std::isfinite(finding.gap->nominal)) out.drawn = &finding;
  }
  for (const Finding& finding : seating.findings)
    if (finding.verdict == seating.verdict && out.answer == nullptr) out.answer = &finding;
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

Layout lay_out(const Window& section, const Window& plan) {
  constexpr double labels_width = 42.0;  // of heights, right of the section, at least
  constexpr double section_head = 16.0;  // title and callout
  constexpr double plan_head = 16.0;     // title and names
  constexpr std::array<double, 5> scales = {1.0, 0.5, 0.2, 0.1, 0.05};
  const double room_x = views_right - labels_width - window_left;
  const double room_y = body_bottom - body_top - section_head - plan_head - plan_foot;
  Layout out;
  for (const double scale : scales) {
    out.scale = scale;
    const double width = std::max(section.high.x - section.low.x, plan.high.x - plan.low.x);
    const double height = section.high.y - section.low.y + plan.high.y - plan.low.y;
    if (scale * width <= room_x && scale * height <= room_y) break;
  }
  out.section = placed(section, {window_left, body_top + section_head}, out.scale);
  out.section_box = out.section.box(section);
  // What room is left goes between the views first, then below them.
  const double spare =
      body_bottom - out.section_box.high.y - plan_head - plan_foot - out.scale * (plan.high.y - plan.low.y);
  const double head = plan_head + std::max(0.0, std::min(8.0, 0.5 * (spare - 24.0)));
  out.plan = placed(plan, {window_left, out.section_box.high.y + head}, out.scale);
  out.plan_box = out.plan.box(plan);
  return out;
}

std::string answer_sentence(const Subject& s) {
  if (s.answer != nullptr) return say(*s.answer, s.method);
  return "Nothing stands within reach of the drive.";
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
  foot.add(fitted({x + 66.0, y},
                  "Before you fit anything: power off and unplugged, battery disconnected, touch bare metal first.",
                  inside.high.x - x - 66.0, 3.4, smallest_text, true));
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
  constexpr double size = 2.6;
  double y = top + 3.0;
  bool first = true;
  for (const Finding& finding : s.seating.findings) {
    if (&finding == s.drawn || &finding == s.answer) continue;  // said above
    if (y + (first ? pitch : 0.0) > body_bottom - 1.0) break;
    if (first) {
      out.add(text({inside.low.x, y}, "Also checked", title_size, Anchor::start, true));
      y += pitch + 0.4;
      first = false;
    }
    if (finding.verdict) draw_mark(out, *finding.verdict, {inside.low.x, y - 2.4}, 2.8);
    std::string words =
        finding.verdict && *finding.verdict != fit::Verdict::fits ? word(*finding.verdict) + ": " : std::string();
    words += say(finding, s.method);
    out.add(text({inside.low.x + 4.4, y}, shortened(words, right - inside.low.x - 4.4, size), size));
    y += pitch;
  }
  if (!first) all.add(std::move(out));
}

}  // namespace baywright::output
