#pragma once
// Placing holes and stand-offs on the plan: which mark is chosen, and what the hand, the arrows and a typed figure do
// to it. No toolkit.
#include "viewer/session.h"
#include "viewer/snapping.h"

#include <memory>
#include <optional>
#include <string>

namespace baywright::viewer {

class Placing {
 public:
  /// Takes the plan of what the session shows. Call each frame in which the mode is `Mode::holes`, before anything
  /// else.
  void look(Session& session);
  /// The mode is over: nothing is chosen, and the scene flies to the plan when it is entered again.
  void leave();

  [[nodiscard]] const HolePlan* plan() const { return plan_ ? &*plan_ : nullptr; }
  [[nodiscard]] std::optional<std::size_t> chosen() const;  // index of `plan()->marks`
  void choose(std::optional<std::size_t> mark);

  /// Follows the hand: `to` in mm of the plan, `reach` mm to come to rest in. `fine`: a grid of 0.1 instead of 1, and
  /// little else holds it. What does not move stays, and `words` say why.
  void drag(Session& session, const Vec2& to, bool fine, double reach);
  void let_go(Session& session);
  /// A step by the keyboard, mm; those that follow soon are one change.
  void nudge(Session& session, const Vec2& by);
  /// A figure as typed, for x (0) or y (1); what would be right, in words, where it is refused.
  [[nodiscard]] std::optional<std::string> type(Session& session, int axis, const std::string& text);

  /// What it came to rest at, while it is dragged; words stay until something else is chosen.
  [[nodiscard]] const std::optional<Snapped>& rests() const { return rests_; }
  [[nodiscard]] const std::string& words() const { return words_; }
  [[nodiscard]] bool dragging() const { return held_.has_value(); }

 private:
  struct Held {
    HoleMark mark;  // as it was when the drag began
    SnapTargets targets;
    bool begun = false;
  };
  std::optional<std::string> move(Session& session, const HoleMark& mark, const Vec2& to, bool by_key, bool follows);

  std::shared_ptr<const Shown> of_;
  bool moving_ = false;  // `plan_` is of a frame of a drag
  std::optional<HolePlan> plan_;
  std::string flown_to_;  // place
  std::optional<std::size_t> chosen_;
  std::optional<Held> held_;
  std::size_t nudged_ = 0;  // the last one
  std::optional<Snapped> rests_;
  std::string words_;
};

}  // namespace baywright::viewer
