#include "viewer/scene_pane.h"

#include "output/answer_words.h"
#include "render/put_in.h"
#include "viewer/group_painter.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace baywright::viewer {

namespace {

constexpr double seconds_of_flight = 0.45;
constexpr double degrees_a_pixel = 0.4;  // at scale 1
constexpr double degrees_a_key = 10.0;
constexpr float strip = 40.0F;  // pixels at scale 1, of the words above and below

bool same(const render::Camera& a, const render::Camera& b) {
  return a.target == b.target && a.toward == b.toward && a.up == b.up && a.height == b.height &&
         a.perspective == b.perspective && a.field == b.field;
}

bool same(const std::optional<geometry::View>& a, const std::optional<geometry::View>& b) {
  if (a.has_value() != b.has_value()) return false;
  return !a || (a->point == b->point && a->right == b->right && a->up == b->up);
}

bool same(const render::Look& a, const render::Look& b) {
  return same(a.camera, b.camera) && a.dark == b.dark && a.scale == b.scale && same(a.cut, b.cut) &&
         a.apart == b.apart && a.put_in == b.put_in && a.finding == b.finding && a.clearance_of == b.clearance_of &&
         a.hidden == b.hidden && a.ghosted == b.ghosted && a.chosen == b.chosen;
}

double aspect(const Rectangle& at) {
  return static_cast<double>(at.width / std::max(at.height, 1.0F));
}

/// The drive with what is round it, not the whole of a large case: so much that one sees where it is.
geometry::Bounds surroundings(const render::Model& model) {
  const geometry::Bounds& all = model.bounds;
  const geometry::Bounds& drive = model.drive;
  const double size = glm::length(drive.high - drive.low);
  if (!(3.5 * size < glm::length(all.high - all.low))) return all;
  const geometry::Vec3 more(0.5 * size);
  return {glm::max(all.low, drive.low - more), glm::min(all.high, drive.high + more)};
}

/// Straight at a cut, true to scale.
render::Camera before(const geometry::View& cut, const render::Model& model, double wide) {
  render::Camera out;
  out.toward = cut.normal();
  out.up = cut.up;
  out.perspective = false;
  const geometry::Bounds room = surroundings(model);
  const geometry::Vec3 half = 0.5 * (room.high - room.low);
  const auto extent = [&](const geometry::Vec3& along) { return glm::dot(glm::abs(along), half); };
  out.target = 0.5 * (room.low + room.high);
  out.height = 2.3 * std::max({extent(cut.up), extent(cut.right) / std::max(wide, 0.1), 1.0});
  return out;
}

/// The same with all that moves while things are apart, or while the drive is put in.
geometry::Bounds surroundings(const render::Model& model, const Looking& looking, double now) {
  geometry::Bounds out = surroundings(model);
  if (looking.apart.goal() > 0.0) out = render::grown(out, model, 1.0, 1.0);
  if (looking.put_in.at(now) < 1.0)
    for (const double share : {0.0, 0.25, 0.5, 0.75}) out = render::grown(out, model, 0.0, share);
  return out;
}

/// Looking the same way, so that all of `room` is seen.
render::Camera fitted(render::Camera camera, const geometry::Bounds& room, double wide) {
  geometry::Vec2 low(1e300);
  geometry::Vec2 high(-1e300);
  for (int i = 0; i < 8; ++i) {
    const geometry::Vec2 flat{glm::dot(room.corner(i), camera.right()), glm::dot(room.corner(i), camera.up)};
    low = glm::min(low, flat);
    high = glm::max(high, flat);
  }
  const geometry::Vec2 middle = 0.5 * (low + high);
  const double depth = glm::dot(0.5 * (room.low + room.high), camera.toward);
  camera.target = camera.right() * middle.x + camera.up * middle.y + camera.toward * depth;
  const double margin = camera.perspective ? 1.3 : 1.15;  // what is nearer the eye is larger
  camera.height = margin * std::max({high.y - low.y, (high.x - low.x) / std::max(wide, 0.1), 1.0});
  return camera;
}

}  // namespace

void ScenePane::fly(const render::Camera& to, const Session& session, double now) {
  from_ = camera_;
  to_ = to;
  flight_.jump(0.0);
  flight_.go(1.0, now, session.settings.motion ? seconds_of_flight : 0.0);
  if (!session.settings.motion) camera_ = to;
}

void ScenePane::take_wishes(Session& session, const Shown& shown, const Rectangle& at, double now) {
  if (of_ == nullptr || of_->choice != shown.choice) {
    const render::Camera to = render::facing(session.looking.side.value_or(render::Side::whole), shown.model.place,
                                             surroundings(shown.model), aspect(at));
    if (of_ == nullptr)
      camera_ = to_ = to;  // the first one: there is nothing to fly from
    else
      fly(to, session, now);
    session.fly_to.reset();
  }
  if (const auto side = std::exchange(session.fly_to, std::nullopt))
    fly(render::facing(*side, shown.model.place, surroundings(shown.model, session.looking, now), aspect(at)), session,
        now);
  if (std::exchange(session.refit, false))
    fly(fitted(flight_.moving(now) ? to_ : camera_, surroundings(shown.model, session.looking, now), aspect(at)),
        session, now);
  if (std::exchange(session.fly_to_cut, false))
    fly(before(render::cut_through(shown.model, shown.seating, session.finding()), shown.model, aspect(at)), session,
        now);
  if (const auto finding = std::exchange(session.fly_to_finding, std::nullopt);
      finding && *finding < shown.seating.findings.size()) {
    render::Camera to = camera_;
    to.target = shown.seating.findings[*finding].at;
    to.height = std::min(to.height, std::max(20.0, 0.8 * glm::length(shown.model.drive.high - shown.model.drive.low)));
    fly(to, session, now);
  }
  if (const auto face = std::exchange(session.fly_to_face, std::nullopt))
    fly(render::facing(render::Side::top, face->first, face->second, aspect(at)), session, now);
  if (const double zoom = std::exchange(session.zoom, 1.0); zoom != 1.0) {
    render::Camera to = flight_.moving(now) ? to_ : camera_;
    to.height = std::clamp(to.height / zoom, 0.5, 1e5);
    fly(to, session, now);
  }
}

void ScenePane::steer(Ui& ui, Session& session, const Shown& shown, const Rectangle& at, const char* name,
                      bool holds_view) {
  const ImGuiIO& io = ImGui::GetIO();
  const Touch touched = touch(ui, name, at);
  const bool over = touched.pointed || touched.held;
  const double per_pixel = camera_.height / static_cast<double>(std::max(at.height, 1.0F));
  const auto by_hand = [&] {
    session.looking.side.reset();
    flight_.jump(1.0);
  };
  const auto orbit = [&](double across, double over_it) {
    camera_ = render::turned(camera_, shown.model.place.turn * geometry::Vec3(0.0, 0.0, 1.0), across, over_it);
    camera_.perspective = true;
    by_hand();
  };
  const auto pan = [&](double dx, double dy) {
    camera_.target += camera_.up * (dy * per_pixel) - camera_.right() * (dx * per_pixel);
    flight_.jump(1.0);
  };
  if (ImGui::IsItemClicked()) {
    pressed_x_ = io.MousePos.x;
    pressed_y_ = io.MousePos.y;
    turned_ = false;
  }
  const ImVec2 by = io.MouseDelta;
  if (touched.held && (by.x != 0.0F || by.y != 0.0F)) {
    if (std::hypot(io.MousePos.x - pressed_x_, io.MousePos.y - pressed_y_) > ui.px(4.0F)) turned_ = true;
    const double turn = degrees_a_pixel / static_cast<double>(ui.scale);
    if (turned_ && (io.KeyShift || holds_view))
      pan(static_cast<double>(by.x), static_cast<double>(by.y));
    else if (turned_)
      orbit(-turn * static_cast<double>(by.x), -turn * static_cast<double>(by.y));
  }
  for (const int button : {ImGuiMouseButton_Right, ImGuiMouseButton_Middle})
    if (over && ImGui::IsMouseDragging(button, 0.0F)) pan(static_cast<double>(by.x), static_cast<double>(by.y));
  if (touched.pointed && io.MouseWheel != 0.0F) {
    // What is under the pointer stays there.
    const double factor = std::pow(1.15, static_cast<double>(io.MouseWheel));
    const double dx = static_cast<double>(io.MousePos.x - at.x) - 0.5 * static_cast<double>(at.width);
    const double dy = static_cast<double>(io.MousePos.y - at.y) - 0.5 * static_cast<double>(at.height);
    const double now_height = std::clamp(camera_.height / factor, 0.5, 1e5);
    const double share = (1.0 - now_height / camera_.height) * per_pixel;
    camera_.target += camera_.right() * (dx * share) - camera_.up * (dy * share);
    camera_.height = now_height;
    flight_.jump(1.0);
  }
  if (!touched.stood_on && !ui.stops.at().empty()) return;  // arrows are another's
  for (const auto& [key, across, over_it] : {std::tuple{"Left", -1.0, 0.0}, std::tuple{"Right", 1.0, 0.0},
                                             std::tuple{"Up", 0.0, -1.0}, std::tuple{"Down", 0.0, 1.0}}) {
    if (!holds_view && ui.took({key})) orbit(degrees_a_key * across, degrees_a_key * over_it);
    if (ui.took({key, false, true})) pan(-40.0 * across, 40.0 * over_it);
  }
}

render::Look ScenePane::look_of(const Session& session, const Shown& shown, double now) const {
  render::Look look;
  look.camera = camera_;
  look.dark = session.settings.dark;
  if (session.seen().get() == &shown) look.finding = session.finding();  // else it counts another's findings
  look.apart = session.looking.apart.at(now);
  look.put_in = session.looking.put_in.at(now);
  if (session.looking.cut) look.cut = render::cut_through(shown.model, shown.seating, look.finding);
  look.clearance_of = session.looking.coloured;
  look.hidden = session.looking.not_shown(shown.model);
  look.ghosted = session.looking.ghosted;
  if (shown.ghost)
    for (const render::Thing& thing : shown.model.things)
      if (thing.drive) look.ghosted.insert(thing.part);
  look.chosen = session.looking.chosen;
  return look;
}

void ScenePane::render(const render::Look& look, const Shown& shown, const Rectangle& at, float dense) {
  const int width = static_cast<int>(std::lround(at.width * dense));
  const int height = static_cast<int>(std::lround(at.height * dense));
  if (of_.get() == &shown && width == width_ && height == height_ && same(look, drawn_)) return;
  render::Look in_pixels = look;
  in_pixels.scale = look.scale * static_cast<double>(dense);
  canvas_.draw(render::frame_of(shown.model, in_pixels), width, height);
  drawn_ = look;
  width_ = width;
  height_ = height;
  ids_ = {};
}

const render::Thing* ScenePane::under_pointer(const Shown& shown, const Rectangle& at, float dense) {
  if (ids_.id.empty()) ids_ = canvas_.read_ids();
  const ImVec2 mouse = ImGui::GetIO().MousePos;
  const int x = static_cast<int>((mouse.x - at.x) * dense);
  const int y = static_cast<int>((mouse.y - at.y) * dense);
  if (x < 0 || y < 0 || x >= ids_.width || y >= ids_.height) return nullptr;
  const std::uint32_t id =
      ids_.id[static_cast<std::size_t>(y) * static_cast<std::size_t>(ids_.width) + static_cast<std::size_t>(x)];
  const auto found =
      std::find_if(shown.model.things.begin(), shown.model.things.end(),
                   [&](const render::Thing& thing) { return id != 0 && thing.element + 1 == static_cast<int>(id); });
  return found == shown.model.things.end() ? nullptr : &*found;
}

float ScenePane::draw_words(Ui& ui, Session& session, const Rectangle& at) {
  const Standing standing = session.standing();
  const Looking& looking = session.looking;
  const auto on = [&](Action action) {
    switch (action) {
      case Action::whole:
        return looking.side == render::Side::whole;
      case Action::front:
        return looking.side == render::Side::front;
      case Action::side:
        return looking.side == render::Side::right;
      case Action::top:
        return looking.side == render::Side::top;
      case Action::cut:
        return looking.cut;
      case Action::apart:
        return looking.apart.goal() > 0.5;
      case Action::holes:
        return session.mode == Mode::holes;
      case Action::measure:
        return session.mode == Mode::measure;
      default:
        return false;
    }
  };
  const auto row_of = [&](std::vector<Action> wanted, float y) {
    std::erase_if(wanted, [&](Action action) { return !enabled(action, standing); });
    float width = 0.0F;
    for (const Action action : wanted)
      width += width_of(on(action) ? ui.fonts.small_bold : ui.fonts.small, row(action).name) + ui.px(14.0F);
    float x = at.x + at.width - ui.px(17.0F) - width;
    for (const Action action : wanted)
      if (word_button(ui, "do " + std::string(row(action).name), x, y, row(action).name, on(action)).chosen)
        session.act(action);
    return width;
  };
  row_of({Action::whole, Action::front, Action::side, Action::top, Action::cut, Action::apart, Action::put_in,
          Action::holes, Action::measure},
         at.y + 0.5F * (ui.px(strip) - ui.px(26.0F)));
  const float taken = row_of({Action::findings, Action::steps, Action::shortlist, Action::customer, Action::open,
                              Action::save, Action::undo, Action::redo, Action::help},
                             at.y + at.height - 0.5F * (ui.px(strip) + ui.px(26.0F)));
  return at.width - taken - ui.px(17.0F);
}

/// Why the drive is not there, or only as glass.
void ScenePane::draw_refusal(const Ui& ui, const Shown& shown, const Rectangle& at) {
  const auto& things = shown.model.things;
  const bool drawn = std::any_of(things.begin(), things.end(), [](const render::Thing& thing) { return thing.drive; });
  if (drawn && !shown.ghost) return;
  const std::string text = (drawn ? "As glass, since it does not go in: " : "The drive is not drawn: ") +
                           output::answer_of(shown.seating, shown.build.method).sentence;
  const float side = ui.px(12.0F);
  const auto lines = lines_of(ui.fonts.small, text, std::min(at.width - 4.0F * side, ui.px(560.0F)), 4);
  float wide = 0.0F;
  for (const std::string& line : lines) wide = std::max(wide, width_of(ui.fonts.small, line));
  const float high = line_of(ui.fonts.small) * static_cast<float>(lines.size());
  const ImVec2 low{at.x + side, at.y + side};
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.AddRectFilled(low, {low.x + wide + 2.0F * side, low.y + high + side}, colour(ui.palette->scene, 0.92F),
                     ui.px(4.0F));
  list.AddRect(low, {low.x + wide + 2.0F * side, low.y + high + side}, colour(ui.palette->bar_line), ui.px(4.0F));
  float y = low.y + 0.5F * side;
  for (const std::string& line : lines) {
    write(ui.fonts.small, low.x + side, y, ui.text(), line);
    y += line_of(ui.fonts.small);
  }
}

/// What is pointed at or chosen, with what can be done to it.
void ScenePane::draw_name(Ui& ui, Session& session, const Shown& shown, const render::Thing* pointed,
                          const Rectangle& at, float room) {
  const auto full = [](const render::Thing& thing) {
    return thing.body.empty() || thing.body == thing.part ? thing.part : thing.body + " of " + thing.part;
  };
  std::string name = pointed != nullptr ? full(*pointed) : std::string();
  for (const render::Thing& thing : shown.model.things)
    if (name.empty() && thing.element == session.looking.chosen) name = full(thing);
  std::vector<Action> wanted = {Action::hide, Action::isolate, Action::glass, Action::distances, Action::show_all};
  const Standing standing = session.standing();
  std::erase_if(wanted, [&](Action action) { return !enabled(action, standing); });
  float words = 0.0F;
  for (const Action action : wanted) words += width_of(ui.fonts.small, row(action).name) + ui.px(14.0F);
  float x = at.x + ui.px(20.0F);
  const float y = at.y + at.height - 0.5F * (ui.px(strip) + ui.px(26.0F));
  x += write(ui.fonts.small_bold, x, y + ui.px(5.0F), ui.text(), name, std::max(room - words - ui.px(40.0F), 0.0F));
  x += ui.px(name.empty() ? -7.0F : 8.0F);
  for (const Action action : wanted)
    if (word_button(ui, "do " + std::string(row(action).name), x, y, row(action).name, false).chosen)
      session.act(action);
}

void ScenePane::draw(Ui& ui, Session& session, const std::shared_ptr<const Shown>& shown, const Rectangle& pane,
                     float dense, double now, const char* name, bool words, SceneTool* tool) {
  pane_begin(name, pane, colour(ui.palette->scene));
  if (shown && pane.width >= 1.0F && pane.height >= 1.0F) {
    // Words stand above and below the picture, so that what is written in it never runs into them.
    const float off = words ? std::min(ui.px(strip), 0.25F * pane.height) : 0.0F;
    const Rectangle at{pane.x, pane.y + off, pane.width, pane.height - 2.0F * off};
    take_wishes(session, *shown, at, now);
    if (flight_.moving(now))
      camera_ = render::between(from_, to_, flight_.at(now));
    else if (flight_.goal() == 1.0 && flying_)
      camera_ = to_;
    flying_ = flight_.moving(now);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float room = words ? draw_words(ui, session, pane) : 0.0F;
    if (tool != nullptr) tool->take(ui, session, {at, camera_, *shown});
    steer(ui, session, *shown, at, name, tool != nullptr && tool->holds_view());
    const bool pointed_at = ImGui::IsItemHovered() && !ImGui::IsItemActive();
    const bool released = ImGui::IsItemDeactivated() && !turned_;
    render::Look look = look_of(session, *shown, now);
    look.scale = static_cast<double>(ui.scale);
    if (tool != nullptr) tool->adapt(look, *shown);
    render(look, *shown, at, dense);
    of_ = shown;
    list.AddImage(reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(canvas_.texture())), {at.x, at.y},
                  {at.x + at.width, at.y + at.height}, {0.0F, 1.0F}, {1.0F, 0.0F});
    if (words)
      for (const float y : {at.y, at.y + at.height})
        list.AddLine({at.x, y}, {at.x + at.width, y}, colour(ui.palette->raised));
    if (words && tool == nullptr)
      paint(render::notes_on(shown->model, look, static_cast<int>(at.width), static_cast<int>(at.height)), list,
            ui.fonts, at.x, at.y, colour(ui.palette->scene));
    if (words) draw_refusal(ui, *shown, at);
    const render::Thing* pointed = pointed_at || released ? under_pointer(*shown, at, dense) : nullptr;
    SceneView view{at, camera_, *shown, pointed_at || released,
                   pointed == nullptr ? std::nullopt : std::optional(pointed->element)};
    if (released && !(tool != nullptr && tool->clicked(session, view)))
      session.looking.chosen = pointed == nullptr ? std::nullopt : std::optional(pointed->element);
    if (tool != nullptr) tool->paint(ui, session, view);
    if (tool == nullptr && pointed != nullptr && ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left)) {
      render::Camera to = camera_;
      to.target = 0.5 * (pointed->bounds.low + pointed->bounds.high);
      to.height = std::max(10.0, 1.4 * glm::length(pointed->bounds.high - pointed->bounds.low));
      fly(to, session, now);
    }
    if (words) draw_name(ui, session, *shown, pointed, pane, room);
  }
  pane_end();
}

}  // namespace baywright::viewer
