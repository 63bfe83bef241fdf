#pragma once
// Inside the fit room: the room that a driver sweeps over a screw, and what it meets there.
#include "build/build.h"
#include "fit/limits.h"
#include "fit/scene.h"
#include "fit/verdict.h"

#include <functional>
#include <string_view>
#include <vector>

namespace baywright::fit {

/// An axis from which something is turned: a screw's head, or a nut.
struct Turned {
  geometry::Vec3 at{0.0};       // world, mm: where the tool begins
  geometry::Vec3 axis{0.0};     // unit: the tool extends that way
  std::vector<Motion> motions;  // rigid ones, of what the tool sits on
  double across = 0.0;          // mm, of the head that has to pass; 0: nothing has to
  double travel = 0.0;          // mm that the tool moves along the axis until the screw is home
};

/// What of a tool meets something.
enum class Where { head, shaft, handle, lever };  // head: the screw's own, on its way

struct Meeting {
  int element = -1;
  Where where = Where::shaft;
  Verdict verdict = Verdict::fits;  // of the gap between the two, with no clearance asked; only those that do not fit
  GapLimits found;
};

/// One tool at one axis. A lever needs only one of the directions in which it can point.
struct Tried {
  const build::Tool* tool = nullptr;
  double need = 0.0;  // mm over `Turned::at`
  std::vector<Meeting> met;
  std::vector<std::vector<Meeting>> lever;  // by direction; empty: no lever

  using Stays = std::function<bool(int element)>;
  /// The verdict against those elements that stay.
  [[nodiscard]] Verdict verdict(const Stays& stays) const;
  /// What is met of them; of a lever in the direction in which it meets least.
  [[nodiscard]] std::vector<Meeting> meets(const Stays& stays) const;
};

/// Measures tools against the elements near them.
class Reach {
 public:
  using Near = std::function<void(const geometry::Bounds& asked, std::vector<int>& found)>;
  /// `scene` holds the elements; `near` finds those that come within the bounds and could be in a tool's way.
  Reach(const Scene& scene, Near near, tolerance::Method method);

  [[nodiscard]] Tried try_tool(const Turned& turned, const build::Tool& tool);

  /// A cylinder on the axis from `low` to `high` mm over `at`, moving with it.
  [[nodiscard]] Element bar(const Turned& turned, double diameter, double low, double high);

  /// How far a tool gets along the axis from below before it meets one of the elements, mm over `at`; negative where
  /// that stands beside `at` or lower.
  [[nodiscard]] double room(const Turned& turned, const build::Tool& tool, const std::vector<Meeting>& met);

 private:
  [[nodiscard]] Element lever(const Turned& turned, const build::Tool& tool, int direction);
  void add_meetings(const Element& element, Where where, std::vector<Meeting>& met);
  [[nodiscard]] Element placed(const Turned& turned, const geometry::Vec3& across, parts::Body body);

  const Scene& scene_;
  Near near_;
  tolerance::Method method_;
  Scene scratch_;  // the same dimensions, for elements that are in no scene
  std::vector<int> found_;
};

/// What moves the outer face of a screw's head, as rigid motions: where the head's own height is open on one side, it
/// is as high as it may be.
[[nodiscard]] std::vector<Motion> motions_of_face(const Scene& scene, const Element& head, const geometry::Vec3& face);

}  // namespace baywright::fit
