#include "render/look.h"

#include "geometry/overlap.h"
#include "output/mark.h"
#include "render/caps.h"
#include "render/clearance_map.h"
#include "render/glass.h"
#include "render/palette.h"
#include "render/put_in.h"
#include "render/rounding.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace baywright::render {

using geometry::Bounds;
using geometry::Placed;
using geometry::Pose;
using geometry::Region;
using geometry::Vec3;
using geometry::View;

namespace {

bool turns(const Pose& pose) {
  return pose.turn != geometry::Mat3(1.0);
}

std::array<float, 3> floats(const Vec3& p) {
  return {static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(p.z)};
}

Vec3 as_vector(const std::array<float, 3>& p) {
  return {static_cast<double>(p[0]), static_cast<double>(p[1]), static_cast<double>(p[2])};
}

std::shared_ptr<const Mesh> moved(const std::shared_ptr<const Mesh>& mesh, const Pose& pose) {
  Mesh out = *mesh;
  for (auto& p : out.at) p = floats(pose.point(as_vector(p)));
  for (auto& n : out.normal) n = floats(pose.direction(as_vector(n)));
  return std::make_shared<const Mesh>(std::move(out));
}

std::shared_ptr<const Strokes> moved(const std::shared_ptr<const Strokes>& strokes, const Pose& pose) {
  Strokes out = *strokes;
  for (auto& p : out.at) p = floats(pose.point(as_vector(p)));
  for (auto& n : out.faces) n = floats(pose.direction(as_vector(n)));
  return std::make_shared<const Strokes>(std::move(out));
}

Strokes line(const Vec3& from, const Vec3& to) {
  Strokes out;
  out.at = {floats(from), floats(to)};
  return out;
}

/// One frame as it is put together.
class Maker {
 public:
  Maker(const Model& model, const Look& look) : model_(model), look_(look), colours_(palette(look.dark)) {
    frame_.camera = look.camera;
    frame_.background = colour_of(colours_.background);
    frame_.scale = static_cast<float>(look.scale);
    frame_.room = Bounds::empty();
    frame_.shadow = colour_of(colours_.shadow, 0.35F);
    if (look.cut) frame_.plane = Plane{look.cut->point, look.cut->normal()};
    // A cut opens the view by itself.
    glass_ = look.cut ? std::set<std::string>{} : hiding(model, look.camera);
    for (const Thing& thing : model.things)
      if (look.chosen == thing.element || look.clearance_of == thing.part) glass_.erase(thing.part);
    glass_.insert(look.ghosted.begin(), look.ghosted.end());
  }

  Frame made() {
    for (const Thing& thing : model_.things)
      if (!look_.hidden.contains(thing.part)) add(thing);
    if (look_.cut) add_caps();
    if (look_.apart > 0.0) add_ways();
    if (seated()) add_overlaps(), add_gap();
    if (look_.camera.perspective && frame_.room.low.x <= frame_.room.high.x) add_ground();
    return std::move(frame_);
  }

 private:
  [[nodiscard]] bool seated() const { return !(look_.apart > 0.0) && !(look_.put_in < 1.0); }
  [[nodiscard]] bool is_glass(const Thing& thing) const { return glass_.contains(thing.part); }
  [[nodiscard]] Pose pose_of(const Thing& thing) const { return stands_at(model_, thing, look_.apart, look_.put_in); }
  [[nodiscard]] Placed placed(const Thing& thing) const {
    return {thing.placed.solid, pose_of(thing).after(thing.placed.pose)};
  }

  void add(const Thing& thing) {
    const Pose pose = pose_of(thing);
    const bool turned = turns(pose);
    const Vec3 shift = turned ? Vec3(0.0) : pose.shift;
    const bool glass = is_glass(thing);
    frame_.room.add(geometry::bounds(placed(thing)));

    Surface surface;
    surface.mesh = thing.shape.mesh;
    if (look_.clearance_of == thing.part) {
      const ClearanceMap& map = clearance_map(model_, thing.part);
      if (const auto found = map.of.find(thing.element); found != map.of.end()) surface.mesh = found->second;
    }
    if (turned) surface.mesh = moved(surface.mesh, pose);
    surface.shift = shift;
    surface.id = glass ? 0 : static_cast<std::uint32_t>(thing.element + 1);  // what is seen through is not meant
    surface.colour = colour_of(thing.material, look_.dark);
    surface.colour.cover = glass ? 0.12F : 1.0F;
    surface.shades = !glass;
    frame_.surfaces.push_back(std::move(surface));

    Edges edges;
    edges.strokes = turned ? moved(thing.shape.edges, pose) : thing.shape.edges;
    edges.shift = shift;
    edges.colour = colour_of(thing.drive ? colours_.drive_edge : colours_.edge);
    edges.width = glass || thing.drive ? 1.1F : 0.9F;
    edges.dashed = glass;
    if (look_.chosen == thing.element) {
      Edges outline = edges;
      outline.colour = colour_of(colours_.ink);
      outline.width = 2.5F;
      outline.over = true;
      outline.dashed = false;
      frame_.edges.push_back(std::move(outline));
    }
    // What the cut took away is hinted at, unless it would only lie over what is cut.
    if (look_.cut && std::abs(glm::dot(look_.cut->normal(), look_.camera.toward)) < 0.98) {
      Edges hint = edges;
      hint.colour.cover = 0.18F;
      hint.cut = false;
      frame_.edges.push_back(std::move(hint));
    }
    frame_.edges.push_back(std::move(edges));
  }

  void add_caps() {
    const View& view = *look_.cut;
    std::vector<Cap> caps;
    std::vector<std::string> parts;
    for (std::size_t i = 0; i < model_.things.size(); ++i) {
      const Thing& thing = model_.things[i];
      if (look_.hidden.contains(thing.part)) continue;
      const Placed at = placed(thing);
      Cap cap{i, geometry::section(at, view), geometry::cut_lines(at, view)};
      if (cap.regions.empty() && cap.lines.empty()) continue;
      caps.push_back(std::move(cap));
      // A card and the chips on it are told apart.
      parts.push_back(thing.part + (thing.material == Material::chips ? "\nchips" : ""));
    }
    const std::vector<Hatch> laid = hatches(caps, parts);
    // In steps, so that the lines stand still while one zooms a little.
    const double pitch = rounded_up(look_.camera.height * look_.scale / 150.0);
    const Vec3 lift = view.normal() * (look_.camera.height * 2e-4);  // lines lie on their area, not in it
    for (std::size_t i = 0; i < caps.size(); ++i) {
      const Thing& thing = model_.things[caps[i].thing];
      if (caps[i].regions.empty()) {
        Strokes lines;
        for (const auto& [p, q] : caps[i].lines)
          for (const auto& end : {p, q}) lines.at.push_back(floats(view.point + view.right * end.x + view.up * end.y));
        add_edges(std::move(lines), colours_.ink, 1.5F, lift, false);
        continue;
      }
      Surface area = flat(area_mesh(caps[i].regions, view), cut_colour_of(thing.material, look_.dark));
      area.id = static_cast<std::uint32_t>(thing.element + 1);
      frame_.surfaces.push_back(std::move(area));
      add_edges(hatch_strokes(caps[i].regions, view, laid[i], pitch), colours_.hatch, 0.8F, lift, false);
      add_edges(outline_strokes(caps[i].regions, view), colours_.ink, 1.6F, 1.5 * lift, false);
    }
  }

  /// Dashed lines from where things stand apart to where they belong.
  void add_ways() {
    std::set<std::string> done;
    for (const Thing& thing : model_.things) {
      if (glm::length(thing.apart) == 0.0 || look_.hidden.contains(thing.part)) continue;
      const bool each = thing.material == Material::screw;  // every screw has its own hole
      if (!each && !done.insert(thing.part).second) continue;
      Bounds box = Bounds::empty();
      for (const Thing& other : model_.things)
        if (each ? other.element == thing.element : other.part == thing.part) box.add(other.bounds);
      const Vec3 home = 0.5 * (box.low + box.high);
      Edges edges;
      edges.strokes = std::make_shared<const Strokes>(line(home, home + look_.apart * thing.apart));
      edges.colour = colour_of(colours_.ink);
      edges.width = 1.2F;
      edges.dashed = true;
      edges.cut = false;
      frame_.edges.push_back(std::move(edges));
    }
  }

  void add_overlaps() {
    for (const Overlap& overlap : model_.overlaps) {
      if (look_.finding && *look_.finding != overlap.finding) continue;
      add_verdict_surface(overlap.mesh, overlap.verdict, true);
      add_rimmed(*overlap.edges, overlap.verdict, 2.2F, true);
      if (!look_.cut) continue;
      const auto solid = [&](int element) {
        return std::find_if(model_.things.begin(), model_.things.end(),
                            [&](const Thing& thing) { return thing.element == element; })
            ->placed;
      };
      const std::vector<Region> shared =
          geometry::overlap(solid(overlap.elements[0]), solid(overlap.elements[1]), *look_.cut);
      if (shared.empty()) continue;
      add_verdict_surface(std::make_shared<const Mesh>(area_mesh(shared, *look_.cut)), overlap.verdict, false);
      add_rimmed(outline_strokes(shared, *look_.cut), overlap.verdict, 2.2F, false);
    }
  }

  void add_gap() {
    const Measured* gap = focused(model_, look_);
    if (gap == nullptr || glm::distance(gap->from, gap->to) == 0.0) return;
    add_rimmed(line(gap->from, gap->to), gap->verdict, 2.5F, false);
  }

  void add_ground() {
    const Vec3 up = model_.place.turn[2];
    double lowest = std::numeric_limits<double>::infinity();
    for (int i = 0; i < 8; ++i) lowest = std::min(lowest, glm::dot(frame_.room.corner(i), up));
    const double below = 0.01 * glm::length(frame_.room.high - frame_.room.low);
    frame_.ground = Plane{up * (lowest - below), up};
  }

  [[nodiscard]] static Surface flat(Mesh mesh, const Colour& colour) {
    Surface out;
    out.mesh = std::make_shared<const Mesh>(std::move(mesh));
    out.colour = colour;
    out.lit = out.cut = out.shades = false;
    return out;
  }

  void add_verdict_surface(std::shared_ptr<const Mesh> mesh, fit::Verdict verdict, bool cut) {
    Surface out;
    out.mesh = std::move(mesh);
    out.colour = frame_.background;
    out.colour.cover = 0.6F;
    out.lit = out.shades = false;
    out.cut = cut;
    out.over = true;
    out.pattern = verdict == fit::Verdict::does_not_fit ? Pattern::grid
                  : verdict == fit::Verdict::marginal   ? Pattern::dots
                                                        : Pattern::none;
    out.pattern_colour = colour_of(output::colour(verdict, look_.dark));
    frame_.surfaces.push_back(std::move(out));
  }

  /// In the verdict's colour, with a rim of the background so that it stands off from what lies under it.
  void add_rimmed(const Strokes& strokes, fit::Verdict verdict, float width, bool cut) {
    Edges edges;
    edges.strokes = std::make_shared<const Strokes>(strokes);
    edges.over = true;
    edges.cut = cut;
    edges.colour = frame_.background;
    edges.width = width + 2.0F;
    frame_.edges.push_back(edges);
    edges.colour = colour_of(output::colour(verdict, look_.dark));
    edges.width = width;
    frame_.edges.push_back(std::move(edges));
  }

  void add_edges(Strokes strokes, const std::string& colour, float width, const Vec3& shift, bool cut) {
    Edges edges;
    edges.strokes = std::make_shared<const Strokes>(std::move(strokes));
    edges.shift = shift;
    edges.colour = colour_of(colour);
    edges.width = width;
    edges.cut = cut;
    frame_.edges.push_back(std::move(edges));
  }

  const Model& model_;
  const Look& look_;
  const Palette& colours_;
  std::set<std::string> glass_;
  Frame frame_;
};

/// Whether the plane cuts both things of a gap, and where they overlap, the overlap.
bool shows(const Model& model, const fit::Finding& finding, const View& view) {
  const auto cut = [&](std::size_t which) {
    std::vector<const Thing*> out;
    for (const Thing& thing : model.things)
      if (thing.part == finding.between[which] && !geometry::section(thing.placed, view).empty()) out.push_back(&thing);
    return out;
  };
  const std::vector<const Thing*> first = cut(0);
  const std::vector<const Thing*> second = cut(1);
  if (!finding.shared) return !first.empty() && !second.empty();
  for (const Thing* a : first)
    for (const Thing* b : second)
      if (!geometry::overlap(a->placed, b->placed, view).empty()) return true;
  return false;
}

}  // namespace

const Measured* focused(const Model& model, const Look& look) {
  if (look.apart > 0.0 || look.put_in < 1.0 || model.gaps.empty()) return nullptr;
  if (!look.finding) return &model.gaps.front();
  const auto found = std::find_if(model.gaps.begin(), model.gaps.end(),
                                  [&](const Measured& each) { return each.finding == *look.finding; });
  return found == model.gaps.end() ? nullptr : &*found;
}

View cut_through(const Model& model, const fit::Seating& seating, std::optional<std::size_t> finding) {
  const Vec3 x = model.place.turn[0];
  const Vec3 y = model.place.turn[1];
  const Vec3 z = model.place.turn[2];
  View view{0.5 * (model.drive.low + model.drive.high), y, z};
  if (!finding) finding = seating.deciding;
  if (!finding || *finding >= seating.findings.size()) return view;
  const fit::Finding& gap = seating.findings[*finding];
  if (!gap.gap || !(glm::length(gap.toward) > 0.5)) return view;
  if (std::abs(glm::dot(gap.toward, x)) > 0.7) view = {view.point, -x, z};
  if (shows(model, gap, view)) return view;
  // The place of the gap may be at the very corner of a part, so it is tried a little to either side, too.
  const Vec3 middle = view.point;
  for (const double by : {0.0, 0.01, -0.01, 0.2, -0.2, 1.0, -1.0}) {
    view.point = middle + view.normal() * (glm::dot(gap.at - middle, view.normal()) + by);
    if (shows(model, gap, view)) return view;
  }
  view.point = middle;
  return view;
}

Frame frame_of(const Model& model, const Look& look) {
  return Maker(model, look).made();
}

}  // namespace baywright::render
