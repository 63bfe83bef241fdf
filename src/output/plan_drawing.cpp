#include "output/plan_drawing.h"

#include "output/cut_drawing.h"
#include "output/hole_table.h"
#include "output/mark.h"
#include "output/stack_column.h"
#include "output/views.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <map>

namespace baywright::output {

using fit::Finding;
using fit::Scene;
using geometry::View;

namespace {

struct Extent {
  std::vector<int> elements;
  Window window{Vec2(1e9), Vec2(-1e9)};

  void add(int element, const Window& more) {
    elements.push_back(element);
    window = {glm::min(window.low, more.low), glm::max(window.high, more.high)};
  }
};

/// Card, and the outermost of what it wears, as seen in the plan.
struct PlanParts {
  Extent card;
  Extent worn;
  std::string worn_name;
};

/// The name that the drive's outermost board or case has in the scene: a carrier's card bears the carrier's name.
const std::string& carrying_name(const Subject& s) {
  if (s.stance == Stance::card)
    for (const build::Drive& drive : s.build.drives)
      if (drive.name == s.seating.drive && drive.worn) return drive.worn->name;
  return s.seating.drive;
}

bool is_main(const Subject& s, const fit::Element& element) {
  if (element.part != carrying_name(s)) return false;
  return s.stance == Stance::card ? element.body == "board" : !element.body.starts_with("chips");
}

PlanParts plan_parts(const Subject& s, const View& view) {
  PlanParts out;
  const Scene& scene = s.seated.scene;
  for (int i = scene.first_element(); i < scene.element_count(); ++i) {
    const fit::Element& element = scene.element(i);
    if (!s.own(i) || element.part == "screw" || element.part == "stand-off") continue;
    const std::string& carrying = carrying_name(s);
    if (element.part == carrying) {
      if (is_main(s, element)) out.card.add(i, bounds_in(view, element));
    } else if (s.stance != Stance::card || (element.part == s.seating.drive && !element.body.starts_with("chips"))) {
      if (element.part != out.worn_name) out.worn = {};
      out.worn_name = element.part;
      out.worn.add(i, bounds_in(view, element));
    }
  }
  return out;
}

/// Left of the view, level, where the figures of an upright dimension have no room along it.
void draw_low_height(Group& group, double x, double low, double high, const std::string& figures) {
  constexpr double room = 16.0;
  draw_dimension(group, {x, low}, {x, high}, "");
  const std::vector<std::string> lines = broken(figures, room, smallest_text, 2);
  double y = 0.5 * (low + high) + 0.9 - 1.5 * static_cast<double>(lines.size() - 1);
  for (const std::string& line : lines) {
    group.add(text({x - 1.2, y}, line, smallest_text, Anchor::end));
    y += 3.0;
  }
}

void draw_plan_dimensions(const Subject& s, Group& group, const View& view, const PlanParts& parts,
                          const Placement& placement, const Box& box) {
  if (parts.card.elements.empty()) return;
  const Scene& scene = s.seated.scene;
  const double upper = box.high.y + 4.5;
  const double lower = box.high.y + 9.5;
  const auto x = [&](double u) { return placement.at({u, 0.0}).x; };
  const auto y = [&](double v) { return placement.at({0.0, v}).y; };
  const auto down_to = [&](double u, double from_v, double to) {
    group.add(Line{{{x(u), y(from_v) + 0.8}, {x(u), to + 1.0}}, false, {}});
  };
  const Window& card = parts.card.window;
  const double length = card.high.x - card.low.x;
  down_to(card.low.x, card.low.y, lower);
  down_to(card.high.x, card.low.y, lower);
  draw_dimension(group, {x(card.low.x), lower}, {x(card.high.x), lower},
                 figures_of(scene, parts.card.elements, view.right, length));
  const double left = box.low.x - 4.0;
  for (const double v : {card.low.y, card.high.y})
    group.add(Line{{{x(card.low.x) - 0.8, y(v)}, {left - 1.0, y(v)}}, false, {}});
  const std::string height = figures_of(scene, parts.card.elements, view.up, card.high.y - card.low.y);
  if (text_width(height, smallest_text) > y(card.low.y) - y(card.high.y))
    draw_low_height(group, left, y(card.low.y), y(card.high.y), height);
  else
    draw_dimension(group, {left, y(card.low.y)}, {left, y(card.high.y)}, height);
  if (parts.worn.elements.empty()) return;
  const Window& worn = parts.worn.window;
  const double inset = worn.low.x - card.low.x;
  down_to(worn.low.x, worn.low.y, upper);
  down_to(worn.high.x, worn.low.y, upper);
  draw_dimension(group, {x(worn.low.x), upper}, {x(worn.high.x), upper},
                 figures_of(scene, parts.worn.elements, view.right, worn.high.x - worn.low.x));
  if (inset > 0.5)
    draw_dimension(group, {x(worn.low.x), upper}, {x(card.low.x), upper},
                   tolerance::in_words(std::round(inset * 100.0) / 100.0));
}

/// A host part that covers the drive as seen from above.
bool over_drive(const Subject& s, const View& view, int element) {
  const double card = view.depth(s.seated.card.pose.shift);
  return !s.own(element) && depths_in(view, s.seated.scene.element(element)).low >= card - 0.01;
}

/// Whether something of the drive or its socket that is higher lies over it, in part at least.
bool hidden(const Subject& s, const View& view, const std::vector<Seen>& seen, const Seen& each) {
  const fit::Element& own = s.seated.scene.element(each.element);
  const Window room = bounds_in(view, own);
  if (!s.own(each.element) && !s.seated.joint_host.contains(each.element)) return false;
  return std::any_of(seen.begin(), seen.end(), [&](const Seen& other) {
    if (other.depth <= each.depth + 0.01 || over_drive(s, view, other.element) ||
        s.seated.scene.element(other.element).part == own.part)
      return false;
    const Window theirs = bounds_in(view, s.seated.scene.element(other.element));
    constexpr double more = 0.1;  // mm: what only touches hides nothing
    return theirs.low.x + more < room.high.x && room.low.x + more < theirs.high.x &&
           theirs.low.y + more < room.high.y && room.low.y + more < theirs.high.y;
  });
}

/// A point of a host part, near its upper edge if that can be, where no other part lies over it if there is such a one.
Vec2 pointed_at(const Subject& s, const View& view, const std::vector<Seen>& seen, const Seen& each,
                const Window& extent) {
  const double width = extent.high.x - extent.low.x;
  const double middle = 0.5 * (extent.low.x + extent.high.x);
  const double upper = extent.high.y - 1.5;
  const std::array<Vec2, 4> tries = {Vec2(width > 60.0 ? extent.low.x + 2.0 : middle, upper),
                                     Vec2(extent.high.x - 2.0, upper), Vec2(extent.low.x + 0.7 * width, upper),
                                     Vec2(middle, extent.low.y + 1.5)};
  for (const Vec2& at : tries) {
    const bool covered = std::any_of(seen.begin(), seen.end(), [&](const Seen& other) {
      if (other.depth <= each.depth + 0.01 || over_drive(s, view, other.element)) return false;
      const Window theirs = bounds_in(view, s.seated.scene.element(other.element));
      return theirs.low.x < at.x && at.x < theirs.high.x && theirs.low.y < at.y && at.y < theirs.high.y;
    });
    if (!covered) return at;
  }
  return tries.front();
}

struct Pointer {
  std::string words;
  Vec2 to;
  bool bold = false;
};

void draw_pointers(Group& group, std::vector<Pointer> pointers, double base_line, double left, double right) {
  std::stable_sort(pointers.begin(), pointers.end(),
                   [](const Pointer& a, const Pointer& b) { return a.to.x < b.to.x; });
  constexpr double between = 2.5;
  const auto width = [](const Pointer& pointer) {
    return text_width(pointer.words, smallest_text, pointer.bold) + between;
  };
  for (double most = right - left; most > 8.0; most -= 1.0) {  // the longest give way first
    double sum = 0.0;
    for (const Pointer& pointer : pointers) sum += width(pointer);
    if (sum <= right - left) break;
    for (Pointer& pointer : pointers) pointer.words = shortened(pointer.words, most, smallest_text, pointer.bold);
  }
  std::vector<double> wanted;
  std::vector<double> halves;
  for (const Pointer& pointer : pointers) {
    wanted.push_back(pointer.to.x);
    halves.push_back(0.5 * width(pointer));
  }
  const std::vector<double> middles = spread(wanted, halves, left, right);
  for (std::size_t i = 0; i < pointers.size(); ++i) {
    group.add(Line{{{middles[i], base_line + 0.9}, pointers[i].to}, false, {thin_line, grey, false}});
    group.add(Disc{pointers[i].to, 0.35, ink, std::nullopt});
    group.add(text({middles[i], base_line}, pointers[i].words, smallest_text, Anchor::middle, pointers[i].bold));
  }
}

}  // namespace

namespace {

/// One pointer to parts of one name, at the one that stands highest on the sheet: "screw, 4 of them".
void add_pointer(std::vector<Pointer>& pointers, const std::string& words, const std::vector<Vec2>& places) {
  if (places.empty()) return;
  const auto before = [](const Vec2& a, const Vec2& b) { return a.y < b.y - 0.5 || (a.y < b.y + 0.5 && a.x < b.x); };
  const Vec2 at = *std::min_element(places.begin(), places.end(), before);
  const std::string many = places.size() > 1 ? ", " + std::to_string(places.size()) + " of them" : "";
  pointers.push_back({words + many, at, false});
}

std::string screw_words(const Subject& s) {
  return s.stance == Stance::flat || s.stance == Stance::on_edge ? "screw" : "screw on stand-off";
}

/// What the drive brings: itself or what it wears, its screws, its plug.
void add_own_pointers(const Subject& s, const View& view, const PlanParts& own, const Placement& placement,
                      std::vector<Pointer>& pointers) {
  const Scene& scene = s.seated.scene;
  const auto over = [&](const Window& window) {
    return placement.at({window.low.x + 0.4 * (window.high.x - window.low.x), window.high.y - 1.5});
  };
  const bool plug = own.worn_name == "cable plug";
  const bool card = s.stance == Stance::card;
  if (!own.worn.elements.empty()) pointers.push_back({own.worn_name, over(own.worn.window), false});
  if (!own.card.elements.empty() && (own.worn.elements.empty() || plug || card))
    pointers.push_back({carrying_name(s), over(own.card.window), false});
  std::vector<Vec2> screws;
  std::map<std::string, Window> others;
  for (int i = scene.first_element(); i < scene.element_count(); ++i) {
    const fit::Element& element = scene.element(i);
    const Window window = bounds_in(view, element);
    if (element.part == "screw")
      screws.push_back(placement.at({0.5 * (window.low.x + window.high.x), window.high.y - 1.5}));
    else if (card && s.own(i) && element.part != own.worn_name && element.part != carrying_name(s))
      others.emplace(element.part, window);
  }
  add_pointer(pointers, screw_words(s), screws);
  for (const auto& [name, window] : others)
    if (name.find("heatsink") != std::string::npos || others.size() < 3)
      pointers.push_back({name, over(window), false});
}

}  // namespace

void draw_outer(const Subject& s, const OuterView& outer, const Layout& layout, bool detailed, Group& all) {
  Group out;
  out.name = outer.beside ? "elevation" : "plan";
  const View& view = outer.view;
  const Window& window = outer.window;
  const Box& box = layout.outer_box;
  const Placement& placement = layout.outer;
  const Scene& scene = s.seated.scene;
  const std::vector<Seen> seen = seen_from(scene, view, window, layout.scale);
  std::vector<std::string> left_out;
  Group parts;
  parts.name = "parts";
  parts.clip = Box{box.low - Vec2(0.5), box.high + Vec2(0.5)};
  std::map<std::string, Vec2> host_names;
  for (const Seen& each : seen) {
    if (over_drive(s, view, each.element)) continue;
    parts.add(Area{
        on_paper(each.outlines, placement), s.own(each.element) ? drive_fill : paper, Pattern::none, 0.0, 1.0, {}});
    draw_edges(parts, each.breaks, placement, {thin_line, grey, false});
    const std::string& body = scene.element(each.element).body;
    const bool fin = !body.empty() && std::isdigit(static_cast<unsigned char>(body.back())) != 0;  // one of many alike
    draw_edges(parts, each.edges, placement, {s.own(each.element) && !fin ? thick_line : thin_line, ink, false});
  }
  for (const Seen& each : seen) {
    const bool over = over_drive(s, view, each.element);
    const std::string& part = scene.element(each.element).part;
    if (over || hidden(s, view, seen, each)) draw_edges(parts, each.edges, placement, {thin_line, ink, true});
    if (s.own(each.element) || each.outlines.empty()) continue;
    if (outer.beside) continue;  // the section beside it has their names
    if (over && each.edges.empty()) {
      if (std::find(left_out.begin(), left_out.end(), part) == left_out.end()) left_out.push_back(part);
      continue;
    }
    Window extent{each.outlines.front().front(), each.outlines.front().front()};
    for (const Vec2& p : each.outlines.front()) extent = {glm::min(extent.low, p), glm::max(extent.high, p)};
    const bool wall = s.seated.machine.contains(each.element);
    const std::string& body = scene.element(each.element).body;
    if (wall && body == "roof") continue;  // it is over all of it
    host_names.emplace(wall && body != "cover" ? body : part, placement.at(pointed_at(s, view, seen, each, extent)));
  }
  out.add(std::move(parts));
  const PlanParts own = plan_parts(s, view);
  draw_plan_dimensions(s, out, view, own, placement, box);

  std::vector<Pointer> pointers;
  for (const auto& [name, at] : host_names) pointers.push_back({name, at, false});
  add_own_pointers(s, view, own, placement, pointers);
  if (!outer.beside) draw_holes(s, out, view, placement);
  if (s.drawn != nullptr) {
    const Vec2 at = placement.at(view.flat(s.drawn->at));
    const std::string shade = colour(s.drawn->verdict.value_or(fit::Verdict::undecided));
    out.add(Disc{at, 1.5, "", Pen{thick_line + 0.5, paper, false}});
    out.add(Disc{at, 1.5, "", Pen{thick_line, shade, false}});
    pointers.push_back({detailed ? "A" : "here", at, true});
  }
  draw_pointers(out, std::move(pointers), box.low.y - 5.0, layout.outer_left, layout.outer_right);
  std::string title = outer.title + ", " + scale_in_words(layout.scale);
  if (!left_out.empty()) title += ", without " + left_out.front();
  for (std::size_t i = 1; i < left_out.size(); ++i) title += ", " + left_out[i];
  const std::vector<std::string> lines = wrapped(title, layout.outer_right - layout.outer_left, title_size, 1, true);
  out.add(text({layout.outer_left, box.low.y - 11.0}, lines.front(), title_size, Anchor::start, true));
  all.add(std::move(out));
}

}  // namespace baywright::output
