#pragma once
// Measuring in the scene: what would be picked lies under the mouse, what was picked stays drawn, the distance between
// the two stands there with its figure; the words stand in the lower part of the column.
#include "viewer/measuring.h"
#include "viewer/scene_tool.h"

#include <memory>
#include <string>
#include <vector>

namespace baywright::viewer {

class MeasureView : public SceneTool {
 public:
  void paint(Ui& ui, Session& session, const SceneView& view) override;
  bool clicked(Session& session, const SceneView& view) override;
  /// The words, from the top of `at` down.
  void draw_words(Ui& ui, const Session& session, const Rectangle& at);
  /// Nothing is picked any more.
  void leave();

 private:
  void look(const Session& session);
  [[nodiscard]] std::optional<Picked> under(const Session& session, const SceneView& view) const;
  void draw_pick(Ui& ui, const SceneView& view, const Picked& picked, bool sure) const;
  void draw_dimension(Ui& ui, const SceneView& view) const;

  std::shared_ptr<const Shown> of_;
  std::vector<HoleAxis> holes_;
  std::vector<Picked> picked_;  // none, one or two
  std::vector<std::string> names_;
  std::optional<Measurement> measurement_;
};

}  // namespace baywright::viewer
