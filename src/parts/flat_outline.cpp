#include "parts/document.h"
#include "parts/flat_words.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace baywright::parts {

using geometry::Outline;
using geometry::Vec2;

namespace {

struct Loop {
  Outline corners;
  std::optional<Hole> round;  // it is a circle
  int line = 0;
};

std::string point_in_words(const Vec2& p) {
  const auto word = [](double mm) { return tolerance::in_words(std::round(mm * 100.0) / 100.0); };
  return '(' + word(p.x) + ", " + word(p.y) + ") mm";
}

double area(const Outline& outline) {
  double sum = 0.0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Vec2& a = outline[i];
    const Vec2& b = outline[(i + 1) % outline.size()];
    sum += a.x * b.y - b.x * a.y;
  }
  return 0.5 * sum;
}

/// The corners of an arc but its last one, on it, so that no chord leaves it by more than `off`, mm.
void add_corners(Outline& out, const Stroke& stroke, double off) {
  out.push_back(stroke.from);
  if (!stroke.arc) return;
  const Arc& arc = *stroke.arc;
  const double step = 2.0 * std::acos(std::clamp(1.0 - off / arc.radius, 0.5, 1.0));
  const int count = std::clamp(static_cast<int>(std::ceil(std::abs(arc.sweep) / std::max(step, 1e-3))), 1, 7000);
  for (int i = 1; i < count; ++i) {
    const double angle = arc.start + arc.sweep * i / count;
    out.push_back(arc.centre + arc.radius * Vec2(std::cos(angle), std::sin(angle)));
  }
}

/// Joins strokes end to end. Each end has to meet just one other.
class Joiner {
 public:
  Joiner(std::vector<Stroke> strokes, const std::string& file) : strokes_(std::move(strokes)), file_(file) {
    std::erase_if(strokes_, [](const Stroke& s) { return !s.arc && glm::distance(s.from, s.to) < 1e-6; });
    used_.assign(strokes_.size(), false);
  }

  std::vector<Loop> loops() {
    std::vector<Loop> out;
    for (std::size_t i = 0; i < strokes_.size(); ++i)
      if (!used_[i]) out.push_back(loop_from(i));
    return out;
  }

 private:
  static Stroke reversed(Stroke stroke) {
    std::swap(stroke.from, stroke.to);
    if (stroke.arc) {
      stroke.arc->start += stroke.arc->sweep;
      stroke.arc->sweep = -stroke.arc->sweep;
    }
    return stroke;
  }

  Loop loop_from(std::size_t first) {
    std::vector<Stroke> chain = {strokes_[first]};
    used_[first] = true;
    while (glm::distance(chain.back().to, chain.front().from) > joined_mm) chain.push_back(next_of(chain.back()));
    if (chain.size() == 1 && !chain.front().arc) return {};  // a dot
    Loop out;
    out.line = chain.front().line;
    for (const Stroke& stroke : chain) add_corners(out.corners, stroke, curved_mm);
    constexpr double same = 1e-5;  // mm: corners of one place
    Outline kept;
    for (const Vec2& p : out.corners)
      if (kept.empty() || glm::distance(kept.back(), p) > same) kept.push_back(p);
    while (kept.size() > 1 && glm::distance(kept.back(), kept.front()) <= same) kept.pop_back();
    out.corners = std::move(kept);
    out.round = circle_of(chain);
    return out;
  }

  Stroke next_of(const Stroke& last) {
    std::optional<std::size_t> found;
    bool turned = false;
    double nearest = 1e30;
    for (std::size_t i = 0; i < strokes_.size(); ++i) {
      if (used_[i]) continue;
      for (const bool back : {false, true}) {
        const double off = glm::distance(last.to, back ? strokes_[i].to : strokes_[i].from);
        nearest = std::min(nearest, off);
        if (off > joined_mm) continue;
        if (found && *found != i)
          stop_flat(file_, strokes_[i].line, "more than two lines meet at " + point_in_words(last.to),
                    "outlines must not branch or touch; a line that is drawn twice does so too");
        found = i;
        turned = back;
      }
    }
    if (!found)
      stop_flat(file_, last.line, "the outline is open at " + point_in_words(last.to) + gap_in_words(nearest),
                "each line must end where another begins, within 0.01 mm");
    used_[*found] = true;
    return turned ? reversed(strokes_[*found]) : strokes_[*found];
  }

  static std::string gap_in_words(double nearest) {
    if (!(nearest < 10.0)) return {};
    return "; the nearest other end is " + tolerance::in_words(std::ceil(nearest * 1000.0) / 1000.0) + " away";
  }

  static std::optional<Hole> circle_of(const std::vector<Stroke>& chain) {
    if (!chain.front().arc) return std::nullopt;
    const Arc& first = *chain.front().arc;
    for (const Stroke& stroke : chain)
      if (!stroke.arc || glm::distance(stroke.arc->centre, first.centre) > joined_mm ||
          std::abs(stroke.arc->radius - first.radius) > joined_mm)
        return std::nullopt;
    return Hole{{}, first.centre.x, first.centre.y, 2.0 * first.radius};
  }

  std::vector<Stroke> strokes_;
  const std::string& file_;
  std::vector<bool> used_;
};

FlatDrawing in_mm(const FlatDrawing& drawing, double mm) {
  FlatDrawing out = drawing;
  for (Stroke& stroke : out.strokes) {
    stroke.from *= mm;
    stroke.to *= mm;
    if (stroke.arc) stroke.arc->centre *= mm, stroke.arc->radius *= mm;
  }
  for (Stroke& bend : out.bends) bend.from *= mm, bend.to *= mm;
  for (DrawnCircle& circle : out.circles) circle.centre *= mm, circle.radius *= mm;
  return out;
}

Loop loop_of(const DrawnCircle& circle) {
  constexpr double whole = 2.0 * std::numbers::pi;
  const Vec2 start = circle.centre + Vec2(circle.radius, 0.0);
  Loop out;
  out.line = circle.line;
  add_corners(out.corners, {start, start, Arc{circle.centre, circle.radius, 0.0, whole}, circle.line}, hole_mm);
  out.round = Hole{{}, circle.centre.x, circle.centre.y, 2.0 * circle.radius};
  return out;
}

/// Says at which loop the solid is refused.
void check_solid(const std::vector<Loop>& loops, const std::string& file) {
  const auto refused = [&](std::size_t count) -> std::optional<std::string> {
    std::vector<Outline> holes;
    for (std::size_t i = 1; i < count; ++i) holes.push_back(loops[i].corners);
    const auto made = geometry::Solid::prism(loops.front().corners, std::move(holes), 1.0);
    const auto* refusal = std::get_if<geometry::Refusal>(&made);
    return refusal == nullptr ? std::nullopt : std::optional(refusal->reason);
  };
  if (!refused(loops.size())) return;
  for (std::size_t count = 1; count <= loops.size(); ++count)
    if (const auto reason = refused(count))
      stop_flat(file, loops[count - 1].line, *reason, "lines must not cross or touch, and holes lie in the outline");
}

}  // namespace

FlatOutline outline_of(const FlatDrawing& drawing, const std::string& file, std::optional<double> unit_mm) {
  if (!unit_mm) unit_mm = drawing.unit_mm;
  if (!unit_mm)
    stop_flat(file, 0, "the drawing does not say its unit", "add `unit = \"mm\"` (or cm, m, in) beside `outline`");
  const FlatDrawing flat = in_mm(drawing, *unit_mm);
  std::vector<Loop> loops = Joiner(flat.strokes, file).loops();
  for (const DrawnCircle& circle : flat.circles) loops.push_back(loop_of(circle));
  std::erase_if(loops, [](const Loop& loop) { return loop.corners.empty(); });
  if (loops.empty())
    stop_flat(file, 0, "nothing is drawn here that an outline could be made of",
              "draw it with lines, arcs, circles or polylines");
  std::stable_sort(loops.begin(), loops.end(),
                   [](const Loop& a, const Loop& b) { return std::abs(area(a.corners)) > std::abs(area(b.corners)); });
  for (const Loop& loop : loops)
    if (loop.corners.size() < 3) stop_flat(file, loop.line, "this goes round no area", "take it out, or close it");
  check_solid(loops, file);
  FlatOutline out;
  out.passed_over = flat.passed_over;
  for (const Stroke& bend : flat.bends) out.bends.push_back({bend.from, bend.to});
  out.outline = std::move(loops.front().corners);
  if (area(out.outline) < 0.0) std::reverse(out.outline.begin(), out.outline.end());
  for (std::size_t i = 1; i < loops.size(); ++i) {
    out.holes.push_back(std::move(loops[i].corners));
    if (!loops[i].round) continue;
    out.round.push_back(*loops[i].round);
    out.round.back().name = "hole " + std::to_string(out.round.size());
  }
  return out;
}

FlatOutline read_outline_file(const std::filesystem::path& path, std::optional<double> unit_mm) {
  const std::string file = path.string();
  std::string ending = path.extension().string();
  for (char& c : ending)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  if (ending != ".dxf" && ending != ".svg")
    stop_flat(file, 0, "the name ends in neither .dxf nor .svg", "outlines are read from these two");
  const std::string text = read_text_file(path);
  return outline_of(ending == ".dxf" ? read_flat_dxf(text, file) : read_flat_svg(text, file), file, unit_mm);
}

}  // namespace baywright::parts
