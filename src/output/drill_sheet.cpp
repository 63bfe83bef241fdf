#include "output/drill_sheet.h"

#include "output/drill_tables.h"
#include "output/lettering.h"
#include "parts/naming.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

namespace baywright::output {

using plans::DrillHole;
using plans::Drilling;
using plans::Tile;

namespace {

constexpr double margin = 10.0;
constexpr double head = 21.0;
constexpr double foot = 29.0;
constexpr double left_labels = 16.0;   // room for distances from the lower edge, beside the template
constexpr double under_labels = 15.0;  // for distances from the left edge, below it
constexpr double right_mark = 8.0;     // for the letter of the datum edge, where it is on the right
constexpr double overlap = 20.0;
constexpr std::size_t most_sheets = 60;
constexpr double label_step = 3.4;

Text words(Vec2 at, std::string text, double size = smallest_text, Anchor anchor = Anchor::start, bool bold = false) {
  return {at, std::move(text), size, anchor, bold, false, false, ink};
}

Box grown(const Box& box, double by) {
  return {box.low - Vec2(by), box.high + Vec2(by)};
}

bool within(const Box& outer, const Box& inner) {
  return inner.low.x >= outer.low.x && inner.low.y >= outer.low.y && inner.high.x <= outer.high.x &&
         inner.high.y <= outer.high.y;
}

bool holds(const Box& box, const Vec2& p) {
  return p.x >= box.low.x && p.x <= box.high.x && p.y >= box.low.y && p.y <= box.high.y;
}

/// From the panel to the paper: `corner` is where `low` of the panel, as it lies there, comes to stand.
struct Print {
  const Drilling& drilling;
  bool mirrored;
  Vec2 low;
  Vec2 corner;

  [[nodiscard]] Vec2 turned(const Vec2& p) const { return {mirrored ? drilling.size.x - p.x : p.x, p.y}; }
  [[nodiscard]] Vec2 at(const Vec2& p) const {
    const Vec2 q = turned(p) - low;
    return {corner.x + q.x, corner.y - q.y};
  }
  [[nodiscard]] Outline at(Outline outline) const {
    for (Vec2& p : outline) p = at(p);
    return outline;
  }
  /// Paper x of the datum edge that is upright.
  [[nodiscard]] double datum_x() const { return at(Vec2(0.0)).x; }
};

void add_outline(const Print& print, Group& all) {
  Group out;
  out.name = "outline";
  for (const Outline& outline : print.drilling.outline)
    out.add(Line{print.at(outline), true, {thick_line, ink, false}});
  all.add(std::move(out));
}

/// Where the sheet is bent; in DXF on the layer BEND, from which outlines are read again.
void add_bends(const Print& print, Group& all) {
  if (print.drilling.bends.empty()) return;
  Group out;
  out.name = "bend";
  for (const auto& [from, to] : print.drilling.bends)
    out.add(Line{{print.at(from), print.at(to)}, false, {thin_line, ink, true}});
  all.add(std::move(out));
}

/// Which lines are bends: beside the middle of each, as far as the box shows it.
void add_bend_labels(const Print& print, const Box& box, Group& all) {
  Group out;
  out.name = "notes";
  for (const auto& [from, to] : print.drilling.bends) {
    const Vec2 way = print.at(to) - print.at(from);
    const bool upright = std::abs(way.y) > std::abs(way.x);
    // At the middle of what this sheet shows of it, or a little beside, where that is free of its border.
    double first = 1.0;
    double last = 0.0;
    for (int i = 0; i <= 100; ++i) {
      const double t = 0.01 * i;
      if (holds(box, print.at(from) + t * way)) first = std::min(first, t), last = std::max(last, t);
    }
    if (!(first <= last)) continue;
    const Vec2 middle = print.at(from) + 0.5 * (first + last) * way;
    for (const double side : {-1.0, 3.2}) {
      Text label = words(middle + (upright ? Vec2(side, 0.0) : Vec2(0.0, side)), "bend", smallest_text, Anchor::middle);
      label.upward = upright;
      label.haloed = true;
      if (!within(box, box_of(label))) continue;
      out.add(label);
      break;
    }
  }
  all.add(std::move(out));
}

void add_holes(const Print& print, Group& all) {
  Group holes;
  holes.name = "holes";
  Group centres;
  centres.name = "centres";
  for (const DrillHole& hole : print.drilling.holes) {
    const Vec2 at = print.at(hole.at);
    const double radius = 0.5 * hole.diameter.nominal;
    holes.add(Disc{at, radius, "", Pen{thick_line, ink, false}});
    const double arm = radius + 3.0;
    centres.add(Line{{at - Vec2(arm, 0.0), at + Vec2(arm, 0.0)}, false, {}});
    centres.add(Line{{at - Vec2(0.0, arm), at + Vec2(0.0, arm)}, false, {}});
  }
  all.add(std::move(holes));
  all.add(std::move(centres));
}

std::string hole_label(const Drilling& drilling, std::size_t i) {
  const DrillHole& hole = drilling.holes[i];
  return std::to_string(i + 1) + (hole.there || (hole.own && !drilling.patterns.empty()) ? "  there already"
                                  : hole.there_wide > 0.0
                                      ? "  there: drill up to Ø" + tolerance::in_words(hole.diameter.nominal)
                                      : "  Ø" + tolerance::in_words(hole.diameter.nominal));
}

double distance(const Box& box, const Vec2& p) {
  return glm::distance(glm::clamp(p, box.low, box.high), p);
}

bool meet(const Box& a, const Box& b) {
  return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

/// Where labels of holes may stand on one sheet, so that each is read as its own hole's and hides no other.
class Labels {
 public:
  Labels(const Print& print, const Box& box, const std::vector<Vec2>& crosses, const Group& drawn)
      : box_(box), crosses_(crosses) {
    for (const DrillHole& hole : print.drilling.holes)
      holes_.push_back({print.at(hole.at), 0.5 * hole.diameter.nominal});
    for (std::size_t i = 1; i < print.drilling.outline.size(); ++i) take_opening(print.at(print.drilling.outline[i]));
    take_texts(drawn);
  }

  /// Beside the hole, else farther off with a leader line.
  void add(std::size_t hole, const std::string& says, Group& out) {
    const Vec2 at = holes_[hole].at;
    const double radius = holes_[hole].radius;
    if (!holds(box_, at)) return;  // the sheet that shows it says what it is
    for (const bool off_distances : {true, false})
      for (const Vec2 way : {Vec2(1, -1), Vec2(-1, -1), Vec2(1, 1), Vec2(-1, 1)}) {
        const Vec2 low = at + Vec2(way.x * (radius + 1.0), way.y < 0.0 ? -radius - 1.0 : radius + 3.2);
        const Text label = label_at(low, says, way.x > 0.0 ? Anchor::start : Anchor::end);
        if (may_stand(label, hole, off_distances, true)) return put(label, out);
      }
    for (const int asked : {2, 1, 0})  // off the lines of the distances and nearest to its own; nearest; with the line
      for (double off = 5.0; off <= 60.0; off += 2.5)
        for (int turn = 0; turn < 24; ++turn) {
          const double angle = std::numbers::pi * turn / 12.0;
          const Vec2 way(std::cos(angle), -std::sin(angle));
          const Anchor anchor = way.x > 0.3 ? Anchor::start : way.x < -0.3 ? Anchor::end : Anchor::middle;
          const Text label = label_at(at + (radius + off) * way + Vec2(0.0, 1.1), says, anchor);
          if (!may_stand(label, hole, asked == 2, asked > 0)) continue;
          const Box taken = box_of(label);
          const Outline leader = {at + radius * way, glm::clamp(at, taken.low, taken.high)};
          if (!may_lead(leader, hole)) continue;
          out.add(Line{leader, false, {thin_line, ink, false}});
          return put(label, out);
        }
  }

 private:
  struct Round {
    Vec2 at;
    double radius;
  };

  static Text label_at(const Vec2& at, const std::string& says, Anchor anchor) {
    Text label = words(at, says, 3.0, anchor, true);
    label.haloed = true;
    return label;
  }

  /// Its rim as points; nothing of one that is a hole with a label.
  void take_opening(const Outline& rim) {
    constexpr double apart = 0.5;
    Opening out{{Vec2(infinity), Vec2(-infinity)}, {}};
    for (std::size_t i = 0; i < rim.size(); ++i) {
      const Vec2& from = rim[i];
      const Vec2 way = rim[(i + 1) % rim.size()] - from;
      const int steps = std::max(1, static_cast<int>(std::min(1e4, std::ceil(glm::length(way) / apart))));
      for (int k = 0; k < steps; ++k) out.rim.push_back(from + way * (static_cast<double>(k) / steps));
      out.around = {glm::min(out.around.low, from), glm::max(out.around.high, from)};
    }
    const Vec2 middle = 0.5 * (out.around.low + out.around.high);
    const double half = 0.5 * (out.around.high.x - out.around.low.x);
    const bool labelled = std::any_of(holes_.begin(), holes_.end(), [&](const Round& hole) {
      return glm::distance(hole.at, middle) + half <= hole.radius + 0.1;
    });
    if (!labelled) openings_.push_back(std::move(out));
  }

  /// Whether it keeps so far off each opening.
  [[nodiscard]] bool off_openings(const Box& taken, double by) const {
    for (const Opening& opening : openings_)
      if (meet(grown(taken, by), opening.around))
        for (const Vec2& p : opening.rim)
          if (distance(taken, p) < by) return false;
    return true;
  }

  void take_texts(const Group& group) {
    for (const Item& item : group.items) {
      if (const auto* inner = std::get_if<Group>(&item.drawn)) take_texts(*inner);
      if (const auto* text = std::get_if<Text>(&item.drawn)) taken_.push_back(box_of(*text));
    }
  }

  void put(const Text& label, Group& out) {
    taken_.push_back(box_of(label));
    out.add(label);
  }

  [[nodiscard]] bool may_stand(const Text& label, std::size_t own, bool off_distances, bool nearest) const {
    const Box taken = box_of(label);
    if (!within(box_, taken)) return false;
    for (const Vec2& each : crosses_)
      if (holds(grown(taken, 4.5), each)) return false;
    for (const Box& other : taken_)
      if (meet(grown(taken, 0.4), other)) return false;
    const Round& mine = holes_[own];
    const double away = distance(taken, mine.at);
    if (!off_openings(taken, nearest ? std::max(0.5, away - mine.radius) : 0.5)) return false;
    for (std::size_t i = 0; i < holes_.size(); ++i) {
      const auto& [at, radius] = holes_[i];
      const double arm = radius + 3.0;
      const Box level = grown({at - Vec2(arm, 0.0), at + Vec2(arm, 0.0)}, 0.3);
      const Box upright = grown({at - Vec2(0.0, arm), at + Vec2(0.0, arm)}, 0.3);
      if (distance(taken, at) < radius + 0.5 || meet(taken, level) || meet(taken, upright)) return false;
      if (off_distances &&
          (meet(taken, grown({at, {at.x, box_.high.y}}, 0.3)) || meet(taken, grown({{box_.low.x, at.y}, at}, 0.3))))
        return false;
      // From middle to label and from rim to label: of a large hole and a small one either may mislead.
      if (nearest && i != own && (distance(taken, at) <= away || distance(taken, at) - radius <= away - mine.radius))
        return false;
    }
    return true;
  }

  /// Through no other hole and no words.
  [[nodiscard]] bool may_lead(const Outline& leader, std::size_t own) const {
    constexpr int points = 80;
    for (int i = 0; i <= points; ++i) {
      const Vec2 p = leader[0] + (leader[1] - leader[0]) * (static_cast<double>(i) / points);
      for (const Box& each : taken_)
        if (holds(each, p)) return false;
      for (std::size_t k = 0; k < holes_.size(); ++k)
        if (k != own && glm::distance(holes_[k].at, p) < holes_[k].radius + 0.3) return false;
    }
    return true;
  }

  struct Opening {
    Box around;
    Outline rim;
  };
  static constexpr double infinity = std::numeric_limits<double>::infinity();

  Box box_;
  std::vector<Opening> openings_;
  std::vector<Vec2> crosses_;
  std::vector<Round> holes_;
  std::vector<Box> taken_;
};

/// What each hole is, beside it; nothing where no place within 60 mm is free: the tables have every hole.
void add_numbers(const Print& print, const Box& box, const std::vector<Vec2>& crosses, Group& all) {
  Group out;
  out.name = "notes";
  Labels labels(print, box, crosses, all);
  for (std::size_t i = 0; i < print.drilling.holes.size(); ++i) labels.add(i, hole_label(print.drilling, i), out);
  all.add(std::move(out));
}

/// Where each drive lies, as far as the box shows it.
void add_drives(const Print& print, const Box& box, Group& all) {
  Group out;
  out.name = "drives";
  for (const plans::Pattern& pattern : print.drilling.patterns) {
    if (pattern.drive_outline.empty()) continue;
    const Outline outline = print.at(pattern.drive_outline);
    out.add(Line{outline, true, {thin_line, grey, true}});
    const Vec2 middle = 0.5 * (outline[0] + outline[2]);
    const std::array<std::string, 2> lines = {pattern.place, "for " + parts::any_of(pattern.drives)};
    for (std::size_t i = 0; i < lines.size(); ++i) {
      const Text label = words(middle + Vec2(0.0, 3.8 * static_cast<double>(i)), shortened(lines[i], 66.0, 3.0, i == 0),
                               3.0, Anchor::middle, i == 0);
      if (within(box, box_of(label))) out.add(label);
    }
    const Vec2 end = print.at(pattern.connector);
    const Vec2 way = middle - end;
    const bool level = std::abs(way.x) > std::abs(way.y);
    Text label = words(end + (level ? Vec2(way.x > 0.0 ? 3.4 : -1.4, 0.0) : Vec2(0.0, way.y > 0.0 ? 3.4 : -1.4)),
                       "connector end", smallest_text, Anchor::middle);
    label.upward = level;
    if (within(box, box_of(label))) out.add(label);
  }
  all.add(std::move(out));
}

/// The first place from `from` on, in steps toward `to`, that keeps off every level; the freest where none does.
double clear_of(const std::vector<double>& levels, double from, double to) {
  constexpr double room = 9.0;
  constexpr int steps = 24;
  double best = from;
  double most = -1.0;
  for (int i = 0; i <= steps && most < room; ++i) {
    const double at = from + (to - from) * i / steps;
    double free = room;
    for (const double level : levels) free = std::min(free, std::abs(level - at));
    if (free > most) best = at, most = free;
  }
  return best;
}

/// The two datum edges, each with its letter in a box on a filled triangle, after ISO 5459.
void add_datum(const Print& print, const Box& box, Group& all) {
  Group out;
  out.name = "datum";
  std::vector<double> across;
  std::vector<double> up;
  for (const DrillHole& hole : print.drilling.holes) {
    const Vec2 at = print.at(hole.at);
    if (!holds(box, at)) continue;
    across.push_back(at.x);
    up.push_back(at.y);
  }
  const double away = print.mirrored ? 1.0 : -1.0;
  const auto mark = [&](const Vec2& tip, const Vec2& outward, const char* letter) {
    const Vec2 side(-outward.y, outward.x);
    const Vec2 back = tip + 2.4 * outward;
    out.add(Area{{{tip, back + 1.4 * side, back - 1.4 * side}}, ink, Pattern::none, 0.0, 1.0, {}});
    const Vec2 middle = tip + 5.0 * outward;
    const Box frame = {middle - Vec2(2.2), middle + Vec2(2.2)};
    out.add(Line{{back, tip + 2.8 * outward}, false, {}});
    out.add(Line{{frame.low, {frame.high.x, frame.low.y}, frame.high, {frame.low.x, frame.high.y}}, true, {}});
    out.add(words(middle + Vec2(0.0, 1.1), letter, 3.0, Anchor::middle, true));
  };
  const double lower = print.at(Vec2(0.0)).y;
  if (print.datum_x() >= box.low.x - 0.01 && print.datum_x() <= box.high.x + 0.01)
    mark({print.datum_x(), clear_of(up, box.low.y + 4.0, box.high.y - 4.0)}, {away, 0.0}, "A");
  if (lower <= box.high.y + 0.01) {
    const double near_a = print.mirrored ? box.high.x - 4.0 : box.low.x + 4.0;
    const double far = print.mirrored ? box.low.x + 4.0 : box.high.x - 4.0;
    mark({clear_of(across, far, near_a), lower}, {0.0, 1.0}, "B");
  }
  all.add(std::move(out));
}

/// Distances from the datum edges: each once, on the line of its holes, led to the sheet's left and lower side.
void add_distances(const Print& print, const Box& box, Group& all) {
  Group out;
  out.name = "distances";
  for (const bool across : {true, false}) {
    struct Level {
      double from, at, nearest;  // mm from the datum edge; on paper along the side; on paper across, nearest hole
    };
    std::vector<Level> levels;
    for (const DrillHole& hole : print.drilling.holes) {
      const Vec2 at = print.at(hole.at);
      if (!holds(box, at)) continue;
      const Level fresh = across ? Level{hole.at.x, at.x, at.y} : Level{hole.at.y, at.y, at.x};
      const double reach = 0.5 * hole.diameter.nominal + 3.4;
      const double nearest = across ? fresh.nearest + reach : fresh.nearest - reach;
      const auto same = std::find_if(levels.begin(), levels.end(),
                                     [&](const Level& each) { return std::abs(each.from - fresh.from) < 0.005; });
      if (same == levels.end())
        levels.push_back({fresh.from, fresh.at, nearest});
      else
        same->nearest = across ? std::max(same->nearest, nearest) : std::min(same->nearest, nearest);
    }
    std::sort(levels.begin(), levels.end(), [](const Level& a, const Level& b) { return a.at < b.at; });
    std::vector<double> wanted;
    for (const Level& level : levels) wanted.push_back(level.at);
    const std::vector<double> halves(levels.size(), 0.5 * label_step);
    const std::vector<double> places = across ? spread(wanted, halves, box.low.x - 4.0, box.high.x + 4.0)
                                              : spread(wanted, halves, box.low.y - 2.0, box.high.y + 4.0);
    for (std::size_t i = 0; i < levels.size(); ++i) {
      const Level& level = levels[i];
      const Pen pen{thin_line, grey, false};
      const std::string figures = tolerance::in_words(level.from);
      if (across) {
        const double edge = box.high.y;
        out.add(Line{{{level.at, level.nearest}, {level.at, edge + 1.5}, {places[i], edge + 4.0}}, false, pen});
        Text label = words({places[i] + 0.9, edge + 4.6}, figures, smallest_text, Anchor::end);
        label.upward = true;
        out.add(label);
      } else {
        const double edge = box.low.x;
        out.add(Line{{{level.nearest, level.at}, {edge - 1.5, level.at}, {edge - 4.0, places[i]}}, false, pen});
        out.add(words({edge - 4.6, places[i] + 0.9}, figures, smallest_text, Anchor::end));
      }
    }
  }
  all.add(std::move(out));
}

void add_bar(Group& all, const Vec2& at, double length, int parts, const std::string& name) {
  Group bar;
  bar.name = "scale check bar";
  bar.add(Line{{at, at + Vec2(length, 0.0)}, false, {thick_line, ink, false}});
  for (int i = 0; i <= parts; ++i) {
    const double x = at.x + length * i / parts;
    const double tall = i == 0 || i == parts ? 3.0 : 1.6;
    bar.add(Line{{{x, at.y - tall}, {x, at.y}}, false, {thin_line, ink, false}});
  }
  bar.add(words({at.x + length + 2.0, at.y}, name, 3.0, Anchor::start, true));
  all.add(std::move(bar));
}

void add_foot(const Sheet& sheet, Group& all) {
  const double top = sheet.height - margin - foot;
  Group foot_text;
  foot_text.name = "cautions";
  foot_text.add(words({margin, top + 4.0}, "MEASURE BOTH BARS BEFORE DRILLING.", 3.4, Anchor::start, true));
  foot_text.add(words({margin + 126.0, top + 9.6}, "Not as long as they say:", 3.0));
  foot_text.add(words({margin + 126.0, top + 14.0}, "print again at 100 %, actual size.", 3.0));
  add_bar(all, {margin, top + 10.0}, 100.0, 10, "100 mm");
  add_bar(all, {margin, top + 16.0}, 4.0 * 25.4, 4, "4 in");
  double y = top + 21.4;
  for (const char* line :
       {"Power off and unplugged; boards, drives and power supply out, or the panel off. Clamp it on wood.",
        "Eye protection. Centre-punch, pilot, then size. Deburr; every chip out before anything goes "
        "back in."}) {
    foot_text.add(words({margin, y}, line, 2.8, Anchor::start, true));
    y += 3.9;
  }
  all.add(std::move(foot_text));
}

/// The panel in small with its sheets, this one filled.
void add_map(const std::vector<Tile>& tiles, std::size_t own, const Vec2& size, const Box& room, Group& all) {
  if (tiles.size() < 2) return;
  Group out;
  out.name = "sheet map";
  const double scale = std::min(room.width() / size.x, room.height() / size.y);
  const auto box = [&](const Tile& tile) {
    const Vec2 low(room.high.x - scale * (size.x - tile.low.x), room.low.y + scale * (size.y - tile.high.y));
    return Outline{low, low + Vec2(scale * (tile.high.x - tile.low.x), 0.0), low + scale * (tile.high - tile.low),
                   low + Vec2(0.0, scale * (tile.high.y - tile.low.y))};
  };
  out.add(Area{{box(tiles[own])}, "#D5D9DE", Pattern::none, 0.0, 1.0, {}});
  for (const Tile& tile : tiles) out.add(Line{box(tile), true, {}});
  all.add(std::move(out));
}

/// The tiles on which holes are: the others are not printed.
std::vector<std::size_t> drills(const Drilling& drilling, const std::vector<Tile>& tiles, bool mirrored) {
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < tiles.size(); ++i)
    if (std::any_of(drilling.holes.begin(), drilling.holes.end(), [&](const DrillHole& hole) {
          const Vec2 at(mirrored ? drilling.size.x - hole.at.x : hole.at.x, hole.at.y);
          return holds({tiles[i].low, tiles[i].high}, at);
        }))
      out.push_back(i);
  return out;
}

/// The line on which two sheets meet, in the middle of what both show, with crosses at the same places of the panel.
/// Returns where the crosses are.
std::vector<Vec2> add_joints(const Print& print, const std::vector<Tile>& tiles, std::size_t own, const Box& box,
                             Group& all) {
  std::vector<Vec2> made;
  Group out;
  out.name = "joints";
  const std::vector<std::size_t> printed = drills(print.drilling, tiles, print.mirrored);
  const Tile& tile = tiles[own];
  const auto paper_at = [&](const Vec2& p) {
    return Vec2(print.corner.x + p.x - print.low.x, print.corner.y - (p.y - print.low.y));
  };
  for (std::size_t other = 0; other < tiles.size(); ++other) {
    const Tile& next = tiles[other];
    const int columns = next.column - tile.column;
    const int rows = next.row - tile.row;
    if (std::abs(columns) + std::abs(rows) != 1) continue;
    if (std::find(printed.begin(), printed.end(), other) == printed.end()) continue;
    const Vec2 low = glm::max(tile.low, next.low);
    const Vec2 high = glm::min(tile.high, next.high);
    const bool upright = columns != 0;
    const double level = upright ? 0.5 * (low.x + high.x) : 0.5 * (low.y + high.y);
    const Vec2 from = paper_at(upright ? Vec2(level, low.y) : Vec2(low.x, level));
    const Vec2 to = paper_at(upright ? Vec2(level, high.y) : Vec2(high.x, level));
    out.add(Line{{from, to}, false, {thin_line, grey, true}});
    const double length = glm::distance(from, to);
    const Vec2 way = (to - from) / length;
    const Outline crosses = {from + 0.15 * length * way, 0.5 * (from + to), from + 0.85 * length * way};
    for (const Vec2& at : crosses) {  // no circles, which somebody would drill
      out.add(Line{{at - Vec2(4.0, 4.0), at + Vec2(4.0, 4.0)}, false, {}});
      out.add(Line{{at - Vec2(4.0, -4.0), at + Vec2(4.0, -4.0)}, false, {}});
      made.push_back(at);
    }
    Text label = words(from + 0.325 * length * way, "sheet " + std::to_string(other + 1) + ": X on X", smallest_text,
                       Anchor::middle);
    label.upward = upright;
    label.haloed = true;
    // On the side of the line that is this sheet's own.
    if (upright)
      label.at.x += columns > 0 ? -1.2 : 3.2;
    else
      label.at.y += rows > 0 ? 3.2 : -1.2;
    if (within(box, box_of(label))) out.add(label);
  }
  all.add(std::move(out));
  return made;
}

Sheet template_sheet(const Drilling& drilling, const std::string& title, bool mirrored, const std::vector<Tile>& tiles,
                     std::size_t own, const Vec2& paper_size) {
  Sheet sheet;
  sheet.width = paper_size.x;
  sheet.height = paper_size.y;
  sheet.title = "Drilling template, 1:1: " + drilling.part;
  sheet.description = title;
  const double right = sheet.width - margin;
  Group heading;
  heading.name = "title";
  const double room = right - margin - 26.0;
  const std::string bent = bent_words(drilling);
  heading.add(words({margin, margin + 4.6}, shortened("Holes of " + drilling.part + ", 1:1", room, 5.0, true), 5.0,
                    Anchor::start, true));
  heading.add(words({margin, margin + 9.8}, shortened(bent.empty() ? title : bent, room, 3.0, !bent.empty()), 3.0,
                    Anchor::start, !bent.empty()));
  const std::string edges =
      mirrored ? " A is the right edge, B the lower one." : " A is the left edge, B the lower one.";
  const std::string face = drilling.patterns.empty() ? (mirrored ? "the underside." : "the top.")
                           : mirrored                ? "the side away from the drives."
                                                     : "the side of the drives.";
  const std::string side = (mirrored ? "MIRRORED: lay it on " : "Lay it on ") + face + edges;
  heading.add(words({margin, margin + 14.4}, side, 3.0, Anchor::start, mirrored));
  heading.add(words({margin, margin + 18.6},
                    "sheet " + std::to_string(own + 1) + " of " + std::to_string(tiles.size()) + "; panel " +
                        tolerance::in_words(drilling.size.x) + " x " + tolerance::in_words(drilling.size.y) +
                        " mm; figures are mm from edges A and B" +
                        (drills(drilling, tiles, mirrored).size() < tiles.size() ? "; no sheet where no hole is" : ""),
                    3.0));
  sheet.all.add(std::move(heading));
  add_map(tiles, own, drilling.size, {{right - 24.0, margin}, {right, margin + head - 3.0}}, sheet.all);

  const Tile& tile = tiles[own];
  const Vec2 extent = tile.high - tile.low;
  const Vec2 corner(margin + left_labels, margin + head + extent.y);
  const Box box{{corner.x, corner.y - extent.y}, {corner.x + extent.x, corner.y}};
  const Print print{drilling, mirrored, tile.low, corner};
  Group shown;
  shown.name = "template";
  shown.clip = grown(box, 0.3);
  add_drives(print, box, shown);
  add_outline(print, shown);
  add_bends(print, shown);
  add_bend_labels(print, box, shown);
  add_holes(print, shown);
  const std::vector<Vec2> crosses = add_joints(print, tiles, own, box, shown);
  add_numbers(print, box, crosses, shown);
  add_distances(print, box, sheet.all);  // first: where one meets a label, the label's halo parts the line
  sheet.all.add(std::move(shown));
  add_datum(print, box, sheet.all);
  add_foot(sheet, sheet.all);
  return sheet;
}

/// As far from A and B as there are holes, with room for what stands beside them.
Vec2 reach_of(const Drilling& drilling) {
  constexpr double beside = 18.0;
  Vec2 out(0.0);
  for (const DrillHole& hole : drilling.holes)
    out = glm::max(out, hole.at + Vec2(0.5 * hole.diameter.nominal + beside));
  return glm::min(out, drilling.size);
}

/// Tiles of that much of the panel from its datum edges on, as it lies there.
std::vector<Tile> tiles_of(const Drilling& drilling, const Vec2& reach, const Vec2& room, bool mirrored) {
  const double left = mirrored ? drilling.size.x - reach.x : 0.0;  // A is on the right then
  std::vector<plans::Kept> kept;
  for (const DrillHole& hole : drilling.holes)
    kept.push_back({{mirrored ? reach.x - hole.at.x : hole.at.x, hole.at.y}, 0.5 * hole.diameter.nominal});
  std::vector<Tile> out = plans::tiles(reach, room, overlap, kept);
  for (Tile& tile : out) tile.low.x += left, tile.high.x += left;
  return out;
}

}  // namespace

std::variant<std::vector<Sheet>, std::string> drill_sheets(const Drilling& drilling, const std::string& title,
                                                           const DrillPaper& paper_size, bool mirrored) {
  // Upright or on its side, whichever wants fewer sheets.
  Vec2 size(0.0);
  std::vector<Tile> shared;
  for (const Vec2& turned : {Vec2(paper_size.width, paper_size.height), Vec2(paper_size.height, paper_size.width)}) {
    const Vec2 room(turned.x - 2.0 * margin - left_labels - (mirrored ? right_mark : 1.0),
                    turned.y - 2.0 * margin - head - foot - under_labels);
    // The whole panel, or from A and B to the last hole where that takes fewer sheets.
    for (const bool whole : {true, false}) {
      std::vector<Tile> found = tiles_of(drilling, whole ? drilling.size : reach_of(drilling), room, mirrored);
      if (!shared.empty() && shared.size() <= found.size()) continue;
      size = turned;
      shared = std::move(found);
    }
  }
  if (shared.size() > most_sheets)
    return "a template of this panel takes " + std::to_string(shared.size()) + " sheets of paper, more than " +
           std::to_string(most_sheets) + ": write DXF and let a shop drill it";
  std::vector<Sheet> out;
  for (const std::size_t i : drills(drilling, shared, mirrored))
    out.push_back(template_sheet(drilling, title, mirrored, shared, i, size));
  for (Sheet& table : drill_tables(drilling, title, {paper_size.width, paper_size.height}))
    out.push_back(std::move(table));
  return out;
}

Sheet drill_cut(const Drilling& drilling, const std::string& title, bool mirrored) {
  Sheet sheet;
  sheet.width = drilling.size.x;
  sheet.height = drilling.size.y;
  sheet.title = "Holes of " + drilling.part + (mirrored ? ", mirrored: " : ": ") + title;
  sheet.description = title;
  const Print print{drilling, mirrored, Vec2(0.0), {0.0, sheet.height}};
  add_outline(print, sheet.all);
  add_bends(print, sheet.all);
  add_holes(print, sheet.all);
  Group datum;
  datum.name = "datum";
  const double x = print.datum_x();
  datum.add(Line{{{x, 0.0}, {x, sheet.height}}, false, {}});
  datum.add(Line{{{0.0, sheet.height}, {sheet.width, sheet.height}}, false, {}});
  sheet.all.add(std::move(datum));
  add_numbers(print, {Vec2(0.0), {sheet.width, sheet.height}}, {}, sheet.all);
  return sheet;
}

}  // namespace baywright::output
