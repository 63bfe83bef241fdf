#pragma once
// What else than turning it the hand can do in the scene: place holes, measure. Drawn over the picture.
#include "render/look.h"
#include "viewer/session.h"
#include "viewer/ui.h"

#include <algorithm>
#include <optional>

namespace baywright::viewer {

/// How the scene stands on the screen in this frame.
struct SceneView {
  Rectangle at;  // of the picture
  render::Camera camera;
  const Shown& shown;
  bool over = false;             // the mouse is on the picture, and holds nothing
  std::optional<int> pointed{};  // the element under it

  [[nodiscard]] geometry::Vec2 pixel(const geometry::Vec3& world) const {
    const geometry::Vec3 p = camera.pixel(world, static_cast<int>(at.width), static_cast<int>(at.height));
    return {static_cast<double>(at.x) + p.x, static_cast<double>(at.y) + p.y};
  }
  [[nodiscard]] render::Camera::Ray ray(float x, float y) const {
    return camera.ray(static_cast<double>(x - at.x), static_cast<double>(y - at.y), static_cast<int>(at.width),
                      static_cast<int>(at.height));
  }
  /// mm that a pixel shows at the camera's target.
  [[nodiscard]] double per_pixel() const { return camera.height / static_cast<double>(std::max(at.height, 1.0F)); }
};

class SceneTool {
 public:
  SceneTool() = default;
  SceneTool(const SceneTool&) = default;
  SceneTool& operator=(const SceneTool&) = default;
  virtual ~SceneTool() = default;

  /// How the scene is shown meanwhile.
  virtual void adapt(render::Look&, const Shown&) const {}
  /// Whether the scene keeps its view: then dragging it only moves it.
  [[nodiscard]] virtual bool holds_view() const { return false; }
  /// Before the scene's own hand: what is touched here does not turn it.
  virtual void take(Ui&, Session&, const SceneView&) {}
  /// Over the picture.
  virtual void paint(Ui& ui, Session& session, const SceneView& view) = 0;
  /// A click that turned nothing; true: it is used up.
  virtual bool clicked(Session&, const SceneView&) { return false; }
};

}  // namespace baywright::viewer
