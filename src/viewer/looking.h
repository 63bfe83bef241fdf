#pragma once
// What of a seating is looked at, beside the camera: sides, cuts, what is hidden. No toolkit.
#include "render/camera.h"
#include "render/model.h"
#include "viewer/glide.h"

#include <optional>
#include <set>
#include <string>

namespace baywright::viewer {

struct Looking {
  std::optional<render::Side> side = render::Side::whole;  // none: turned by hand
  bool cut = false;
  Glide apart{0.0};   // 0 together .. 1 apart
  Glide put_in{1.0};  // 0 before the way in .. 1 seated
  std::set<std::string> hidden;
  std::set<std::string> ghosted;
  std::optional<std::string> alone;     // the only part that is shown; what was hidden before is kept meanwhile
  std::optional<std::string> coloured;  // by its distance to everything else
  std::optional<int> chosen;            // element

  /// All that is not shown of the model: what is hidden, or all but the one that is alone.
  [[nodiscard]] std::set<std::string> not_shown(const render::Model& model) const;
  /// The part that the chosen element belongs to; empty: none.
  [[nodiscard]] std::string chosen_part(const render::Model& model) const;
  [[nodiscard]] bool as_it_is() const { return hidden.empty() && ghosted.empty() && !alone && !coloured; }

  void hide(const std::string& part);
  void isolate(const std::string& part);  // again: back to what was
  void glass(const std::string& part);    // again: back
  void colour(const std::string& part);   // again: back
  void show_all();
};

}  // namespace baywright::viewer
