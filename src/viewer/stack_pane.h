#pragma once
// The stack column: the chain of the gap in question, to scale. A band is dragged, nudged or typed; chosen, it tells
// its source.
#include "viewer/session.h"
#include "viewer/stack_layout.h"
#include "viewer/text_field.h"
#include "viewer/ui.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace baywright::viewer {

class StackPane {
 public:
  void draw(Ui& ui, Session& session, const Rectangle& at);

 private:
  struct Hand {  // a drag with the mouse
    Handle handle;
    double sensitivity = 1.0;  // mm of the gap a mm of the length
    float from_y = 0.0F;
    float per_mm = 1.0F;
    bool moved = false;
  };
  struct Typing {
    Handle handle;
    TextField field;
  };

  struct Label {
    std::vector<std::string> name;
    std::vector<std::string> value;
  };

  void update(const Session& session);
  void draw_column(Ui& ui, Session& session, const Rectangle& at);
  void draw_refused(Ui& ui, Session& session, const Rectangle& at);
  void draw_questions(Ui& ui, const Session& session, const Rectangle& at);
  void draw_band(Ui& ui, Session& session, const StackLayout& layout, const StackBox& box, const StackColumns& columns,
                 const Label& label);
  void draw_gap(Ui& ui, const StackLayout& layout, const StackColumns& columns, bool short_label);
  float draw_foot(Ui& ui, Session& session, const Rectangle& at, bool measure_only);
  void draw_field(Ui& ui, Session& session, float x, float y, float room);
  void hold(Ui& ui, Session& session, const Touch& touched, const Handle& handle, double sensitivity, bool grows_down,
            float per_mm);
  /// A copy: a drag makes the session's handles anew.
  [[nodiscard]] std::optional<Handle> handle_of(const Session& session, const std::string& name) const;
  [[nodiscard]] const fit::ChainLink* link_of(const std::string& name) const;
  [[nodiscard]] bool types(const Handle& handle) const { return typing_ && typing_->handle.path == handle.path; }

  std::shared_ptr<const Shown> of_;  // what the rest was made of
  std::optional<std::size_t> finding_;
  output::StackColumn column_;
  bool down_ = false;
  std::string chosen_;  // a dimension, by its name
  std::optional<Hand> hand_;
  std::optional<Typing> typing_;
};

}  // namespace baywright::viewer
