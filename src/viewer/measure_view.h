#pragma once
// Measuring in the scene: what would be picked lies under the mouse, what was picked stays drawn, each distance stands
// there with its number and figure; the words stand in the lower part of the column.
#include "viewer/measurements.h"
#include "viewer/scene_tool.h"

#include <memory>
#include <string>
#include <vector>

namespace baywright::viewer {

class MeasureView : public SceneTool {
 public:
  void paint(Ui& ui, Session& session, const SceneView& view) override;
  bool clicked(Session& session, const SceneView& view) override;
  /// The words, from the top of `at` down; each measurement can be cleared there.
  void draw_words(Ui& ui, const Session& session, const Rectangle& at);
  /// How high the words want to be, pixels.
  [[nodiscard]] float height(const Ui& ui) const;
  /// Nothing is picked any more.
  void leave();

 private:
  void look(const Session& session);
  [[nodiscard]] std::optional<Picked> under(const Session& session, const SceneView& view) const;
  void draw_pick(Ui& ui, const SceneView& view, const Picked& picked, bool sure) const;
  /// `taken`: where figures stand already; that of this one is added.
  void draw_dimension(Ui& ui, const SceneView& view, const KeptMeasurement& kept, std::vector<Rectangle>& taken) const;

  std::shared_ptr<const Shown> of_;
  std::vector<HoleAxis> holes_;
  Measurements measurements_;
};

}  // namespace baywright::viewer
