#pragma once
// All panes of the window, each in its place.
#include "viewer/findings_pane.h"
#include "viewer/foot_pane.h"
#include "viewer/help_pane.h"
#include "viewer/hole_column.h"
#include "viewer/hole_view.h"
#include "viewer/measure_view.h"
#include "viewer/mounting_pane.h"
#include "viewer/open_pane.h"
#include "viewer/scene_pane.h"
#include "viewer/session.h"
#include "viewer/shortlist_pane.h"
#include "viewer/stack_pane.h"
#include "viewer/ui.h"

#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace baywright::viewer {

class Screen {
 public:
  /// Wants a current context of OpenGL and of Dear ImGui. Refused, in words, where OpenGL 3.3 is missing.
  [[nodiscard]] static std::variant<std::unique_ptr<Screen>, std::string> make(Settings settings, fit::Options options);

  [[nodiscard]] Session& session() { return session_; }
  /// Letters and sizes anew. What went wrong, in words.
  std::optional<std::string> set_scale(float scale, float dense);
  void draw(std::vector<Chord> chords, double now);
  [[nodiscard]] bool moving() const { return session_.moving() || (session_.customer ? before_ : scene_).moving(now_); }

 private:
  Screen(Settings settings, fit::Options options, render::Canvas scene, render::Canvas before, render::Canvas after)
      : session_(std::move(settings), std::move(options)),
        scene_(std::move(scene)),
        before_(std::move(before)),
        after_(std::move(after)) {}

  void draw_panes(const Rectangle& all, double now);
  SceneTool* tool();  // of the session's mode; null: none
  void draw_column(const Rectangle& at);
  void draw_page(const Rectangle& all);
  void draw_notice(const Rectangle& all);
  void split(const Layout& layout, const Rectangle& all);
  void dispatch();

  Session session_;
  Ui ui_;
  float dense_ = 1.0F;
  double now_ = 0.0;
  ScenePane scene_;
  ScenePane before_;  // for a customer: so that the view one had is there again afterwards
  ScenePane after_;
  StackPane stack_;
  FootPane foot_;
  Placing placing_;
  HoleView hole_view_{placing_};
  HoleColumn hole_column_;
  MeasureView measure_view_;
  FindingsPane findings_;
  OpenPane open_;
  HelpPane help_;
  MountingPane mounting_;
  ShortlistPane shortlist_;
};

}  // namespace baywright::viewer
