#pragma once
// Where the keyboard stands: one of the things on the screen that can be chosen, in reading order. No toolkit.
#include <optional>
#include <string>
#include <vector>

namespace baywright::viewer {

/// Each frame: `begin`, `add` once for each thing in reading order, `end`. Moves take effect at `end`.
class Stops {
 public:
  void begin();
  /// Whether the keyboard stands on this one. Ids are unique in a frame.
  bool add(const std::string& id);
  void end();

  void move(int by) { moves_ += by; }  // forward or back, round at the ends; from nowhere: the first or the last
  void go(const std::string& id) { wanted_ = id; }
  void leave() { wanted_ = std::string(); }
  [[nodiscard]] const std::string& at() const { return at_; }  // empty: nowhere

 private:
  std::vector<std::string> seen_;
  std::string at_;
  std::optional<std::string> wanted_;
  int moves_ = 0;
};

}  // namespace baywright::viewer
