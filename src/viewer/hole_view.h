#pragma once
// The plan of holes and stand-offs over the scene: rulers from the part's edges, marks with their numbers, lines
// through what a dragged one came to rest at.
#include "viewer/placing.h"
#include "viewer/scene_tool.h"

namespace baywright::viewer {

class HoleView : public SceneTool {
 public:
  explicit HoleView(Placing& placing) : placing_(&placing) {}

  void adapt(render::Look& look, const Shown& shown) const override;
  [[nodiscard]] bool holds_view() const override { return true; }
  void take(Ui& ui, Session& session, const SceneView& view) override;
  void paint(Ui& ui, Session& session, const SceneView& view) override;
  bool clicked(Session& session, const SceneView& view) override;

 private:
  struct Hand {
    Vec2 from{0.0};  // of the plan, under the mouse where it went down
    Vec2 mark{0.0};  // where the mark was
    float x = 0.0F;
    float y = 0.0F;
    bool moved = false;
  };
  [[nodiscard]] Vec2 pixel(const SceneView& view, const Vec2& flat) const;
  [[nodiscard]] Vec2 flat(const SceneView& view, float x, float y) const;
  void take_arrows(Ui& ui, Session& session);
  void draw_rulers(Ui& ui, const SceneView& view) const;
  void draw_ruler(Ui& ui, const SceneView& view, bool level) const;
  void draw_mark(Ui& ui, const SceneView& view, std::size_t index) const;

  Placing* placing_;
  std::optional<Hand> hand_;
};

}  // namespace baywright::viewer
