#include "output/drawing.h"

#include "output/page.h"
#include "output/plan_drawing.h"
#include "output/section_drawing.h"
#include "output/stack_column.h"
#include "output/views.h"
#include "output/words.h"

#include <algorithm>

namespace baywright::output {

using build::Build;
using fit::Seated;
using fit::Seating;
using geometry::View;

namespace {

void draw_placed(const Subject& s, Sheet& sheet) {
  const SectionView section = section_view(s.seated, s.drawn);
  const View plan = plan_view(s.seated);
  Window plan_window = window_round(s.seated, plan, 5.0);
  if (section.along) plan_window.low.x = section.window.low.x, plan_window.high.x = section.window.high.x;
  const Layout layout = lay_out(section.window, plan_window);
  const double below = draw_section(s, section, layout, sheet.all);
  const double detail = s.drawn != nullptr ? draw_detail(s, section, layout, below + 5.0, sheet.all) : 0.0;
  draw_plan(s, plan, plan_window, layout, detail != 0.0, sheet.all);
  draw_others(s, layout.plan_box.high.y + plan_foot + 2.0,
              std::max({layout.section_box.high.x, layout.plan_box.high.x, pointers_right}), sheet.all);

  const StackColumn column =
      s.drawn != nullptr ? stack_column(*s.drawn, s.seated)
                         : StackColumn{"No gap decides here, so there is no stack to draw.", {}, {}, {}, {}, {}, {}};
  const Box box{{column_left, body_top}, {inside.high.x, body_bottom}};
  const bool down = glm::dot(column.away, section.view.up) < -0.5;
  draw(column, box, down, (down ? "downward: " : "upward: ") + direction_in_slot(s.seated, column.away), sheet.all);
  sheet.all.add(Line{{{column_left - 2.5, body_top}, {column_left - 2.5, body_bottom}}, false, {}});
  const double asked = s.drawn != nullptr ? s.drawn->gap->asked : s.build.clearance;
  draw_foot(s, scale_in_words(layout.scale) + (detail != 0.0 ? "; A " + scale_in_words(detail) : ""), asked, sheet.all);
}

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) out += (i == 0 ? "" : ", ") + words[i];
  return out;
}

double draw_paragraph(Group& group, const std::string& heading, const std::vector<std::string>& lines, Vec2 at,
                      double width) {
  group.add(text(at, heading, 4.6, Anchor::start, true));
  at.y += 8.0;
  for (const std::string& each : lines) {
    for (std::string& line : broken(each, width, 4.0, 3)) {
      group.add(text(at, std::move(line), 4.0));
      at.y += 5.6;
    }
    at.y += 2.0;
  }
  return at.y + 6.0;
}

std::vector<std::string> offered(const Build& build, const build::Slot& slot) {
  std::vector<std::string> out;
  if (const auto* m2 = std::get_if<build::M2Socket>(&slot.socket)) {
    out.push_back(std::string("An M.2 socket with key ") + m2->key + ", class " + std::string(m2->height_class->name) +
                  ".");
  } else {
    const auto& card = std::get<build::CardSlot>(slot.socket);
    out.push_back("A slot for add-in cards of " + std::to_string(card.lanes) + " lanes" +
                  (card.open_ended ? ", open at its end." : "."));
  }
  std::vector<std::string> sizes;
  for (const int size : slot.sizes) sizes.push_back(std::to_string(size));
  if (!sizes.empty()) out.push_back("Stand-offs for " + joined(sizes) + ".");
  std::vector<std::string> buses;
  for (const auto& link : slot.bus) buses.push_back(standards::links::in_words(link));
  if (!buses.empty()) out.push_back("Wired for " + joined(buses) + ".");
  out.push_back("It is on the " + std::string(slot.back ? "back" : "top") + " of " +
                build.parts[static_cast<std::size_t>(slot.part)].name + ".");
  return out;
}

void draw_refused(const Subject& s, Sheet& sheet) {
  Group out;
  out.name = "questions";
  constexpr double gutter = 12.0;
  const double middle = 0.5 * (inside.low.x + inside.high.x);
  double y = body_top + 6.0;
  const auto question = [&](const char* name, const fit::Question& asked) {
    y = draw_paragraph(out, std::string(name) + ": " + word(asked.answer), {say(asked.why)}, {inside.low.x, y},
                       middle - gutter - inside.low.x);
  };
  question("form factor", s.seating.questions.form_factor);
  question("interface", s.seating.questions.interface);
  question("bus", s.seating.questions.bus);
  const auto slot = std::find_if(s.build.slots.begin(), s.build.slots.end(),
                                 [&](const auto& each) { return each.name == s.seating.place; });
  if (slot != s.build.slots.end())
    draw_paragraph(out, "What " + shortened(slot->name, 60.0, 4.6, true) + " offers", offered(s.build, *slot),
                   {middle, body_top + 6.0}, inside.high.x - middle);
  const std::string why = s.seating.verdict == fit::Verdict::undecided
                              ? "Nothing is drawn to scale here: where this drive stands in the machine is not known."
                              : "Nothing is drawn to scale here: the drive cannot be put at this place, so it has no "
                                "position in the machine.";
  out.add(fitted({inside.low.x, body_bottom - 4.0}, why, inside.width(), 3.2, smallest_text));
  sheet.all.add(std::move(out));
  draw_foot(s, "none", s.build.clearance, sheet.all);
}

}  // namespace

Sheet draw_seating(const Build& build, const Seated& seated, const Seating& seating) {
  const Subject s = subject_of(build, seated, seating);
  Sheet sheet;
  sheet.title = word(seating.verdict) + ": " + seating.drive + " in " + seating.place;
  sheet.description =
      answer_sentence(s) +
      (s.placed() ? " A section, a detail of the place that decides, a plan, and the stack of dimensions behind it."
                  : " The three questions and what the place offers.");
  draw_answer(s, sheet.all);
  if (s.placed())
    draw_placed(s, sheet);
  else
    draw_refused(s, sheet);
  return sheet;
}

}  // namespace baywright::output
