#pragma once
// The scene: what is there, true to scale, with the gap in question. Turned, moved and come near to with a mouse or a
// trackpad; what lies under the pointer is named, and chosen by a click.
#include "render/canvas.h"
#include "render/look.h"
#include "viewer/scene_tool.h"
#include "viewer/session.h"
#include "viewer/ui.h"

#include <memory>
#include <optional>
#include <string>

namespace baywright::viewer {

class ScenePane {
 public:
  explicit ScenePane(render::Canvas canvas) : canvas_(std::move(canvas)) {}

  /// `name`: of its window, unique. `words`: the views that can be chosen stand at the upper right. `tool`: what the
  /// hand does beside; null: it only looks.
  void draw(Ui& ui, Session& session, const std::shared_ptr<const Shown>& shown, const Rectangle& at, float dense,
            double now, const char* name, bool words, SceneTool* tool = nullptr);
  /// Looks from where the other one looks, so that two can be compared.
  void follow(const ScenePane& other) { camera_ = other.camera_, flight_.jump(1.0), flying_ = false; }
  [[nodiscard]] bool moving(double now) const { return flight_.moving(now); }

 private:
  void steer(Ui& ui, Session& session, const Shown& shown, const Rectangle& at, const char* name, bool holds_view);
  void take_wishes(Session& session, const Shown& shown, const Rectangle& at, double now);
  void fly(const render::Camera& to, const Session& session, double now);
  [[nodiscard]] render::Look look_of(const Session& session, const Shown& shown, double now) const;
  void render(const render::Look& look, const Shown& shown, const Rectangle& at, float dense);
  [[nodiscard]] const render::Thing* under_pointer(const Shown& shown, const Rectangle& at, float dense);
  /// Returns the width that is free at the left of the lower words.
  float draw_words(Ui& ui, Session& session, const Rectangle& at);
  static void draw_refusal(const Ui& ui, const Shown& shown, const Rectangle& at);
  void draw_name(Ui& ui, Session& session, const Shown& shown, const render::Thing* pointed, const Rectangle& at,
                 float room);

  render::Canvas canvas_;
  std::shared_ptr<const Shown> of_;
  render::Camera camera_;
  render::Camera from_;  // of a flight
  render::Camera to_;
  Glide flight_{1.0};
  bool flying_ = false;
  render::Look drawn_;  // what the canvas shows, so that nothing is drawn twice
  int width_ = 0;
  int height_ = 0;
  render::Ids ids_;  // of what is drawn; empty until somebody points
  float pressed_x_ = 0.0F;
  float pressed_y_ = 0.0F;
  bool turned_ = false;  // since the button went down: no click
};

}  // namespace baywright::viewer
