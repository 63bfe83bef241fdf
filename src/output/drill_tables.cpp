#include "output/drill_tables.h"

#include "output/lettering.h"
#include "standards/fasteners.h"
#include "tolerance/proportion.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace baywright::output {

using plans::DrillHole;
using plans::Drilling;
using plans::Placing;
using tolerance::in_words;
namespace fasteners = standards::fasteners;

namespace {

constexpr double margin = 10.0;
constexpr double text_size = 2.8;
constexpr double pitch = 4.0;

/// Lines from the top down, going on on a fresh sheet where one is full.
class Pages {
 public:
  Pages(std::string title, std::string under, const Vec2& size)
      : title_(std::move(title)), under_(std::move(under)), size_(size) {
    turn();
  }

  [[nodiscard]] double width() const { return size_.x - 2.0 * margin; }

  /// `lines`: of what follows, no fewer than so many on the same sheet.
  void heading(const std::string& words, int lines = 3) {
    want((1.0 + lines) * pitch);
    y_ += 3.0;
    line({{0.0, words}}, 3.6, true);
    y_ += 0.6;
  }

  void paragraph(const std::string& words, bool bold = false) {
    for (const std::string& each : broken(words, width(), text_size, 12, bold)) line({{0.0, each}}, text_size, bold);
    y_ += 0.8;
  }

  void rule() {
    sheets_.back().all.add(
        Line{{{margin, y_ - pitch + 1.4}, {size_.x - margin, y_ - pitch + 1.4}}, false, {thin_line, ink, false}});
    y_ += 0.8;
  }

  using Cells = std::vector<std::pair<double, std::string>>;  // mm from the left, words
  /// Each cell is cut short where the next begins.
  void line(const Cells& cells, double size = text_size, bool bold = false) {
    want(pitch);
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const double end = i + 1 < cells.size() ? cells[i + 1].first - 1.5 : width();
      sheets_.back().all.add(Text{{margin + cells[i].first, y_},
                                  shortened(cells[i].second, end - cells[i].first, size, bold),
                                  size,
                                  Anchor::start,
                                  bold,
                                  false,
                                  false,
                                  ink});
    }
    y_ += pitch;
  }

  [[nodiscard]] bool full(double height) const { return y_ + height > size_.y - margin; }
  [[nodiscard]] std::vector<Sheet> done() { return std::move(sheets_); }

 private:
  void want(double height) {
    if (full(height)) turn();
  }

  void turn() {
    Sheet sheet;
    sheet.width = size_.x;
    sheet.height = size_.y;
    sheet.title = title_;
    sheet.description = under_;
    sheet.all.name = "tables";
    sheets_.push_back(std::move(sheet));
    y_ = margin + 4.6;
    line({{0.0, title_}}, 5.0, true);
    y_ += 1.0;
    line({{0.0, under_}}, 3.0);
  }

  std::string title_;
  std::string under_;
  Vec2 size_;
  double y_ = 0.0;
  std::vector<Sheet> sheets_;
};

/// "99.4 to 99.7 %", outward to a tenth: never surer than so many drawings allow.
std::string share_of(const Placing& placing) {
  if (placing.drawn == 0) return "not drawn";
  const tolerance::Interval sure = tolerance::sure_to_95(placing.entered, placing.drawn);
  std::array<char, 48> text{};
  std::snprintf(text.data(), text.size(), "%.1f to %.1f %%", 0.1 * std::floor(1000.0 * sure.low),
                0.1 * std::ceil(1000.0 * sure.high));
  return text.data();
}

/// To a hundredth, upward.
std::string at_least(double mm) {
  return in_words(0.01 * std::ceil(100.0 * mm - 1e-6));
}

void add_hole_table(const Drilling& drilling, Pages& pages) {
  const std::array<double, 8> at = {0.0, 9.0, 19.0, 58.0, 75.0, 92.0, 122.0, 155.0};
  const auto row = [&](const std::array<std::string, 8>& words, bool bold) {
    Pages::Cells cells;
    for (std::size_t i = 0; i < at.size(); ++i) cells.emplace_back(at[i], words[i]);
    pages.line(cells, text_size, bold);
  };
  const std::array<std::string, 8> names = {"hole", "turn", "of", "from A", "from B", "diameter", "position", "meets"};
  pages.heading("Holes", 5);
  row(names, true);
  pages.rule();
  for (std::size_t i = 0; i < drilling.holes.size(); ++i) {
    if (pages.full(pitch)) row(names, true);  // on a fresh sheet
    const DrillHole& hole = drilling.holes[i];
    const auto turn = std::find(drilling.order.begin(), drilling.order.end(), i) - drilling.order.begin();
    const auto pattern = std::find_if(drilling.patterns.begin(), drilling.patterns.end(),
                                      [&](const plans::Pattern& each) { return each.place == hole.place; });
    const bool placed = pattern != drilling.patterns.end() && pattern->placed;
    const bool drilled = turn < static_cast<std::ptrdiff_t>(drilling.order.size());
    row({std::to_string(i + 1), drilled ? std::to_string(turn + 1) : "-", hole.place, in_words(hole.at.x),
         in_words(hole.at.y), in_words(hole.diameter),
         hole.own                ? "its own"
         : hole.there            ? "there already"
         : hole.there_wide > 0.0 ? in_words(hole.there_wide) + " there: drill up"
         : placed                ? "±" + in_words(pattern->placed->plus) + " each way"
                                 : "limits not said",
         pattern == drilling.patterns.end() ? ""
         : hole.meets.empty()               ? "NOTHING"
                                            : hole.meets},
        false);
  }
  pages.paragraph(
      "All in mm. A and B are the datum edges of the template. Turn: the order of drilling, small holes "
      "first, then the shortest way on; -: there already, not drilled. A hole that is there stands where the part has "
      "it.");
}

/// What goes into the holes of each place, a line each.
void add_screws(const Drilling& drilling, Pages& pages) {
  if (drilling.patterns.empty()) return;
  pages.heading("What goes into them");
  for (const plans::Pattern& pattern : drilling.patterns) {
    using Stand = plans::Pattern::Stand;
    const bool studs = pattern.stand == Stand::standoffs;
    std::string words = pattern.place + ": ";
    words += pattern.thread.empty() ? "no screw is named" : (studs ? "stud " : "screw ") + pattern.thread;
    if (!pattern.thread.empty()) words += pattern.length ? " x " + in_words(*pattern.length) : ", length not said";
    if (!pattern.placings.empty()) {
      const plans::Cover cover = pattern.asked_cover;
      words += cover == plans::Cover::head      ? "; no washer needed"
               : cover == plans::Cover::washer  ? "; washer under the head"
               : cover == plans::Cover::nothing ? "; no washer covers the hole"
                                                : "; head not known, measure it";
    }
    words += pattern.stand == Stand::spacers ? "; spacer " : studs ? "; stand-off " : pattern.raised ? "; raised " : "";
    if (pattern.raised) words += in_words(*pattern.raised);
    if (pattern.asked_under && !pattern.placings.empty()) words += ", wider than usual";
    words += "; sheet " + (pattern.sheet.open() ? std::string("thickness not said") : in_words(pattern.sheet));
    pages.paragraph(words);
  }
  pages.paragraph(
      "For holes as asked for. A washer under heads over holes wider than the medium series of ISO 273: it takes "
      "thread, and baywright steps --shopping says which screw still holds with it.");
  if (std::any_of(drilling.patterns.begin(), drilling.patterns.end(), [](const plans::Pattern& each) {
        return !each.placings.empty() &&
               (each.asked_under || std::any_of(each.placings.begin(), each.placings.end(),
                                                [](const Placing& made) { return made.washer_under; }));
      }))
    pages.paragraph(
        "Wider than usual: the hole leaves a spacer or stand-off of two screw diameters less than 1 mm of seat round "
        "it (common practice, no source). Take a wider one, or a washer under it and write the file's height with it.");
}

void add_distances(Pages& pages) {
  pages.paragraph(
      "Asked of every hole: its middle two diameters or more from each edge, and two sheet thicknesses or "
      "more to the next hole, where the thickness is known (common practice, no source).");
}

std::string cover_words(plans::Cover cover) {
  return cover == plans::Cover::head      ? "no washer"
         : cover == plans::Cover::washer  ? "washer"
         : cover == plans::Cover::nothing ? "no washer covers it"
                                          : "measure the head";
}

/// Whether the table of one is the table of the other.
bool same_ways(const plans::Pattern& a, const plans::Pattern& b) {
  return a.drive == b.drive && a.thread == b.thread && a.diameter.low() == b.diameter.low() &&
         a.diameter.high() == b.diameter.high() && a.placings.front().process == b.placings.front().process &&
         a.stand == b.stand && a.placings.front().entered == b.placings.front().entered;
}

void add_way(const plans::Pattern& pattern, const std::string& places, Pages& pages) {
  pages.heading("Will every screw enter: " + places, 2 + static_cast<int>(pattern.placings.size()));
  pages.line({{0.0, "made by"},
              {20.0, "position"},
              {36.0, "a hole that is sure"},
              {70.0, "drill"},
              {82.0, "and then"},
              {136.0, "all enter, holes as asked for"}},
             text_size, true);
  pages.rule();
  for (const Placing& placing : pattern.placings)
    pages.line({{0.0, placing.process},
                {20.0, "±" + in_words(placing.position.plus)},
                {36.0, at_least(placing.least_hole) + " or more"},
                {70.0, in_words(placing.drill)},
                {82.0, cover_words(placing.cover) + (placing.washer_under ? ", wider seat" : "")},
                {136.0, share_of(placing)}});
  pages.paragraph("Asked for: " + in_words(pattern.diameter) + " for " + pattern.thread +
                  ": room for position zones of " + in_words(pattern.zones_allowed) + " in all; the holes of " +
                  pattern.drive + " alone take " + at_least(pattern.drive_zone) + '.');
}

void add_ways(const Drilling& drilling, Pages& pages) {
  std::vector<const plans::Pattern*> left;
  for (const plans::Pattern& pattern : drilling.patterns)
    if (!pattern.placings.empty()) left.push_back(&pattern);
  while (!left.empty()) {
    const plans::Pattern& first = *left.front();
    std::string places;
    for (const plans::Pattern* each : left)
      if (same_ways(first, *each)) places += (places.empty() ? "" : ", ") + each->place;
    add_way(first, places, pages);
    std::erase_if(left, [&](const plans::Pattern* each) { return same_ways(first, *each); });
  }
  const auto drawn = std::find_if(drilling.patterns.begin(), drilling.patterns.end(),
                                  [](const plans::Pattern& each) { return !each.placings.empty(); });
  if (drawn == drilling.patterns.end()) return;
  pages.paragraph(
      "A hole that is sure: screw and both zones, the fixed fastener of ASME Y14.5 (from memory), with the "
      "circle round the ± limits as zone, and what a hole may come out under its size: it holds for a hole that is off "
      "along both axes at once, and baywright check "
      "names it too. All enter: of " +
      std::to_string(drawn->placings.front().drawn) +
      " drillings drawn at random, limits at three sigma, the drive free to be pushed and turned; the "
      "interval holds the share with 95 %. How far off holes come out is common practice, a laser's a "
      "shop's chart.");
}

void add_drills(const Drilling& drilling, Pages& pages) {
  std::vector<std::string> threads;
  for (const plans::Pattern& pattern : drilling.patterns)
    if (!pattern.thread.empty() && std::find(threads.begin(), threads.end(), pattern.thread) == threads.end())
      threads.push_back(pattern.thread);
  if (threads.empty()) return;
  pages.heading("Drills");
  pages.line({{0.0, "screw"},
              {18.0, "clearance: fine, medium, coarse"},
              {76.0, "tap drill"},
              {96.0, "pan head"},
              {116.0, "flat head, 90°: countersink to, height"}},
             text_size, true);
  pages.rule();
  for (const std::string& name : threads) {
    const fasteners::Thread& thread = *fasteners::thread(name);
    const auto* pan = fasteners::head(fasteners::Shape::pan, name);
    const auto* flat = fasteners::head(fasteners::Shape::flat, name);
    pages.line({{0.0, name},
                {18.0, in_words(thread.hole.fine.nominal) + "   " + in_words(thread.hole.medium.nominal) + "   " +
                           in_words(thread.hole.coarse.nominal)},
                {76.0, in_words(thread.tap_drill.nominal)},
                {96.0, pan != nullptr ? in_words(pan->diameter.nominal) : "not known"},
                {116.0, flat != nullptr ? in_words(flat->diameter.nominal) + ", " + in_words(flat->height.nominal)
                                        : "not known"}});
  }
  std::string thin;
  for (const plans::Pattern& pattern : drilling.patterns) {
    const auto* flat = fasteners::head(fasteners::Shape::flat, pattern.thread);
    if (flat != nullptr && !(pattern.sheet.low() >= flat->height.nominal))
      thin += (thin.empty() ? "" : ", ") + pattern.place;
  }
  if (!thin.empty()) pages.paragraph("No countersink, the sheet is thinner than a flat head is high: " + thin + '.');
  pages.paragraph(
      "Clearance holes after ISO 273 or ASME B18.2.8, heads after ISO 7045 and 7046, all as others quote them: "
      "baywright parts --sources names each. The tap drill is for a thread in the sheet itself; a drive's "
      "threads are in the drive. A twist drill cuts 0.05 to 0.20 over its size (common practice).");
}

void add_order(Pages& pages) {
  pages.heading("Order");
  for (const char* step :
       {"1. Power off and unplugged, battery out. Take the panel off, or take boards, drives and power supply out of "
        "the "
        "case: one chip of swarf shorts a board. Look at what is behind the panel. Never open a power supply.",
        "2. Measure both bars of each template sheet. Cut the sheets, lay them cross on cross, tape them to the panel "
        "with A and B on its edges, and measure two holes from the edges with a rule.",
        "3. Centre-punch every cross but those of holes that are there already. Take the template off, or glue it on "
        "for a drill press.",
        "4. Clamp the panel on a back-up board of wood. Eye protection; no gloves and no loose sleeves at a drill "
        "press.",
        "5. Pilot of 1.5 to 2 first, slowly. Then the size of the table, in its turns. Ease off where the drill breaks "
        "through: it grabs there.",
        "6. After the first two holes of a drive, far apart, hold the drive behind them and look through.",
        "7. Deburr both sides: edges cut. Brush and wipe off every chip, also with tape, before anything goes back in.",
        "8. Try every screw by hand before one is tightened. Too long a screw goes into the drive's works: baywright "
        "check says which length."})
    pages.paragraph(step);
  pages.paragraph("Order and drilling habits are common practice, no source. Mind local codes.");
}

}  // namespace

std::string bent_words(const Drilling& drilling) {
  if (!drilling.bend_from_a && !drilling.bend_from_b) return {};
  const std::string edge = !drilling.bend_from_b ? "A" : drilling.bend_from_a ? "A and B" : "B";
  return "A bend runs between " + edge + " and the holes: drill flat, before bending, or measure from the bend.";
}

std::vector<std::string> drill_answers(const Drilling& drilling) {
  std::vector<std::string> out;
  if (std::string bent = bent_words(drilling); !bent.empty()) out.push_back(std::move(bent));
  for (const plans::Pattern& pattern : drilling.patterns) {
    if (pattern.drive.empty())
      out.push_back(pattern.place +
                    ": no drive of this build has two holes where these are, so nothing can be said of its "
                    "screws.");
    if (!pattern.placed || pattern.placings.empty()) continue;
    const Placing& own = pattern.placings.front();
    const auto holes = std::count_if(drilling.holes.begin(), drilling.holes.end(),
                                     [&](const DrillHole& each) { return !each.own && each.place == pattern.place; });
    const auto met = std::count_if(drilling.holes.begin(), drilling.holes.end(), [&](const DrillHole& each) {
      return !each.own && each.place == pattern.place && !each.meets.empty();
    });
    out.push_back(pattern.place + ", " + own.process + ": " +
                  (met == holes ? "all screws enter in "
                                : std::to_string(met) + " of " + std::to_string(holes) +
                                      " holes meet one of the drive's; with those all screws enter in ") +
                  share_of(own) + " of drillings; a hole that is sure, off along both axes at once too, has " +
                  at_least(own.least_hole) + " or more" +
                  (own.washer_under ? ": take a wider spacer or stand-off, or a washer under it." : "."));
  }
  if (std::any_of(drilling.holes.begin(), drilling.holes.end(), [](const DrillHole& each) { return each.own; }))
    out.push_back(drilling.part + " has holes of its own: " +
                  (drilling.patterns.empty() ? "they are the pattern for what it is fixed to. Never drill a board."
                                             : "they are there already. Never drill a board."));
  const auto there =
      std::count_if(drilling.holes.begin(), drilling.holes.end(), [](const DrillHole& each) { return each.there; });
  if (there > 0)
    out.push_back(std::to_string(there) + " of " + std::to_string(drilling.holes.size()) + " holes of " +
                  drilling.part + " are there already, as its outline has them: do not drill those.");
  for (std::size_t i = 0; i < drilling.holes.size(); ++i) {
    const DrillHole& hole = drilling.holes[i];
    const std::string name = "Hole " + std::to_string(i + 1);
    const auto pattern = std::find_if(drilling.patterns.begin(), drilling.patterns.end(),
                                      [&](const plans::Pattern& each) { return each.place == hole.place; });
    if (pattern != drilling.patterns.end() && !pattern->drive.empty() && hole.meets.empty())
      out.push_back(name + " meets no hole of " + pattern->drive + ": look before you drill it.");
    if (hole.there_wide > 0.0 && !hole.there)
      out.push_back(name + " is there already, " + in_words(hole.there_wide) + " wide: drill it up to " +
                    in_words(hole.diameter.nominal) + " where it is; no centre punch.");
    if (hole.there_off > 0.05)
      out.push_back(name + " is there already, " + in_words(hole.there_off) +
                    " from where the place has it: figures and screws are those of the hole that is there.");
    if (hole.edge < hole.edge_asked)
      out.push_back(name + " is " + in_words(hole.edge) + " from an edge, less than two diameters (" +
                    in_words(hole.edge_asked) + "): the sheet may tear or bulge there.");
    if (hole.bend < hole.bend_asked)
      out.push_back(name + (hole.bend < 0.0 ? " runs into a bend" : " is " + in_words(hole.bend) + " from a bend") +
                    ", and the rule is " + in_words(hole.bend_asked) +
                    ", two thicknesses and the radius inside (common practice): bend first and drill then, or move "
                    "it.");
    if (hole.web < hole.web_asked)
      out.push_back(name + " leaves " + in_words(hole.web) + " of sheet to the next hole, less than two thicknesses (" +
                    in_words(hole.web_asked) + ").");
  }
  return out;
}

std::vector<Sheet> drill_tables(const Drilling& drilling, const std::string& title, const Vec2& paper_size) {
  Pages pages("Holes of " + drilling.part, title, paper_size);
  add_hole_table(drilling, pages);
  for (const std::string& answer : drill_answers(drilling)) pages.paragraph(answer, true);
  add_screws(drilling, pages);
  add_distances(pages);
  add_order(pages);
  add_drills(drilling, pages);
  add_ways(drilling, pages);
  return pages.done();
}

}  // namespace baywright::output
