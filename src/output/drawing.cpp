#include "output/drawing.h"

#include "output/hole_table.h"
#include "output/page.h"
#include "output/plan_drawing.h"
#include "output/screw_drawing.h"
#include "output/section_drawing.h"
#include "output/stack_column.h"
#include "output/views.h"
#include "output/words.h"
#include "parts/form.h"
#include "standards/connectors.h"
#include "tolerance/reading.h"

#include <algorithm>

namespace baywright::output {

using build::Build;
using fit::Seated;
using fit::Seating;

namespace {

/// The room that the views leave: for the detail, the table of holes, and what else was checked.
struct Rest {
  Box detail;
  Vec2 table{0.0};
  double table_width = 0.0;
  double others_top = 0.0;
  double others_right = 0.0;
};

Rest rest_of(const Subject& s, const Layout& layout, double below_section) {
  Rest out;
  if (layout.beside) {  // side by side, below both views
    constexpr double others_width = 78.0;
    out.others_top = std::max(below_section, layout.outer_box.high.y + outer_foot) + 2.0;
    out.others_right = inside.low.x + others_width;
    out.detail = {{out.others_right + 6.0, out.others_top}, {views_right, body_bottom}};
    return out;
  }
  const double right = std::max({layout.section_box.high.x, layout.outer_box.high.x, pointers_right});
  out.detail = {{right + 6.0, layout.narrow ? body_top - 0.6 : below_section + 5.0}, {views_right, body_bottom}};
  const double table = hole_table_height(s);
  out.detail.high.y -= table;
  out.table = {out.detail.low.x, out.detail.high.y + 1.0};
  out.table_width = views_right - out.table.x;
  out.others_top = layout.outer_box.high.y + outer_foot + 2.0;
  out.others_right = right;
  return out;
}

void draw_placed(const Subject& s, Sheet& sheet) {
  const SectionView section = section_view(s.seated, s.stance, s.drawn);
  const bool holes = s.bay() != nullptr && s.bay()->fixing;
  const OuterView outer = outer_view(s.seated, s.stance, section, holes);
  std::optional<Vec2> spot;
  if (s.drawn != nullptr) spot = spot_of(s, section.view).on_drive;
  const Layout layout = lay_out(section.window, outer, spot);
  const double below = draw_section(s, section, layout, outer.heights, sheet.all);
  const Rest rest = rest_of(s, layout, below);
  const double detail =
      s.drawn != nullptr ? draw_detail(s, section, layout, rest.detail, layout.beside, sheet.all) : 0.0;
  draw_outer(s, outer, layout, detail != 0.0, sheet.all);
  if (hole_table_height(s) > 0.0) draw_hole_table(s, rest.table, rest.table_width, sheet.all);
  draw_others(s, rest.others_top, rest.others_right, sheet.all);

  const StackColumn column =
      s.drawn != nullptr ? stack_column(*s.drawn, s.seated)
                         : StackColumn{"No gap decides here, so there is no stack to draw.", {}, {}, {}, {}, {}, {}};
  const Box box{{column_left, body_top}, {inside.high.x, body_bottom}};
  const bool down = glm::dot(column.away, section.view.up) < -0.5;
  draw(column, box, down, (down ? "downward: " : "upward: ") + direction_in_slot(s.seated, s.stance, column.away),
       sheet.all);
  sheet.all.add(Line{{{column_left - 2.5, body_top}, {column_left - 2.5, body_bottom}}, false, {}});
  const bool asks = s.drawn != nullptr && s.drawn->kind == fit::Kind::clearance;
  const double asked = asks ? s.drawn->gap->asked : s.build.clearance;
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

std::string limits_of(const build::GivenLength& given) {
  return tolerance::in_words(given.dimension);
}

/// "inside 102.40 ±0.30 wide, 28.00 ±0.30 high"; empty where nothing was given.
std::string inside_of(const build::Bay& bay) {
  std::vector<std::string> sizes;
  for (const auto& [given, what] : {std::pair(&bay.width, " wide"), std::pair(&bay.height, " high"),
                                    std::pair(&bay.depth, " deep"), std::pair(&bay.behind, " behind it")})
    if (*given) sizes.push_back(limits_of(**given) + what);
  return sizes.empty() ? std::string() : "Inside: " + joined(sizes) + '.';
}

std::string fixing_in_words(const build::Bay& bay) {
  const build::Fixing& fixing = *bay.fixing;
  std::string out = fixing.thread.empty() ? "Holes" : "Screwed with " + fixing.thread;
  if (fixing.length) out += ", " + limits_of(*fixing.length) + " long";
  out += fixing.side ? ", through both sides" : bay.panel ? ", through the panel" : ", through the floor";
  return out + " at " + std::to_string(fixing.holes.size()) + (fixing.side ? " holes each of " : " holes of ") +
         limits_of(fixing.diameter) + '.';
}

void add_bay(std::vector<std::string>& out, const build::Bay& bay) {
  const std::string form = parts::form_name(bay.form);
  out.push_back((bay.panel ? "A panel with holes for " : "A bay for ") + parts::article(form) + ' ' + form +
                (bay.on_edge ? ", standing on its edge." : "."));
  if (const std::string sizes = inside_of(bay); !sizes.empty()) out.push_back(sizes);
  if (bay.raised)
    out.push_back((bay.spacers     ? "On spacers, "
                   : bay.standoffs ? "On stand-offs, "
                                   : "Raised, ") +
                  limits_of(*bay.raised) + " over its face.");
  const bool plugs = bay.form == build::Form::drive_2_5 || bay.form == build::Form::drive_3_5;
  const std::string plug = std::string(standards::connectors::receptacle_in_words(bay.receptacle));
  if (plugs) out.push_back("Receptacle: " + plug + (bay.backplane ? ", fixed to the machine." : ", on a cable."));
  if (bay.fixing) out.push_back(fixing_in_words(bay));
}

std::vector<std::string> offered(const Build& build, const build::Place& place) {
  std::vector<std::string> out;
  if (const auto* m2 = std::get_if<build::M2Socket>(&place.socket)) {
    out.push_back(std::string("An M.2 socket with key ") + m2->key + ", class " + std::string(m2->height_class->name) +
                  ".");
  } else if (const auto* card = std::get_if<build::CardSlot>(&place.socket)) {
    out.push_back("A slot for add-in cards of " + std::to_string(card->lanes) + " lanes" +
                  (card->open_ended ? ", open at its end." : "."));
    if (card->bracket != build::Bracket::none)
      out.push_back(std::string("The machine's rail takes ") +
                    (card->bracket == build::Bracket::full ? "full-height" : "low-profile") + " brackets.");
  } else if (const auto* mini = std::get_if<build::MiniSocket>(&place.socket)) {
    out.push_back(std::string("A socket for mini cards, with posts for ") + (mini->full && mini->half
                                                                                 ? "full and half ones."
                                                                             : mini->full ? "full ones."
                                                                                          : "half ones."));
  } else {
    add_bay(out, std::get<build::Bay>(place.socket));
  }
  if (place.standoff) out.push_back("Stand-offs " + limits_of(*place.standoff) + " high.");
  std::vector<std::string> sizes;
  for (const int size : place.sizes) sizes.push_back(std::to_string(size));
  if (!sizes.empty()) out.push_back("Stand-offs for " + joined(sizes) + ".");
  if (place.holds >= 0)
    out.push_back("It holds " + build.held[static_cast<std::size_t>(place.holds)].name + " already.");
  std::vector<std::string> buses;
  for (const auto& link : place.bus) buses.push_back(standards::links::in_words(link));
  if (!buses.empty()) out.push_back("Wired for " + joined(buses) + ".");
  out.push_back("It is on the " + std::string(place.back ? "back" : "top") + " of " +
                build.parts[static_cast<std::size_t>(place.part)].name + ".");
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
  if (s.place != nullptr)
    draw_paragraph(out, "What " + shortened(s.place->name, 60.0, 4.6, true) + " offers", offered(s.build, *s.place),
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
      answer_sentence(s) + (s.placed() ? std::string(" A section, a detail of the place that decides, ") +
                                             (upright(s.stance) ? "a plan or an elevation" : "a plan") +
                                             ", and the stack of dimensions behind it."
                                       : " The three questions and what the place offers.");
  draw_answer(s, sheet.all);
  if (s.placed())
    draw_placed(s, sheet);
  else
    draw_refused(s, sheet);
  return sheet;
}

}  // namespace baywright::output
