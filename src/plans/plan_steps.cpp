#include "plans/plan_steps.h"

#include <algorithm>
#include <optional>

namespace baywright::plans {

namespace {

/// None: the change is made by what the changed build asks for anyway.
std::optional<Step> work(const Plan& plan, const Change& change) {
  switch (change.kind) {
    case Kind::no_heatsink:
    case Kind::other_heatsink:
    case Kind::lower_heatsink:
      return Step{.action = Action::take_off,
                  .what = change.what,
                  .where = plan.drive,
                  .hazards = {Hazard::torn_chips, Hazard::drive_warranty}};
    case Kind::other_standoff:
      return Step{.action = Action::set_standoff, .what = change.to, .where = change.what, .length = change.value};
    case Kind::opening:
      return Step{
          .action = Action::cut, .where = change.what, .hazards = {Hazard::eyes, Hazard::swarf, Hazard::sharp_edges}};
    default:
      return std::nullopt;
  }
}

bool clears(const Step& step) {
  switch (step.action) {
    case Action::back_up:
    case Action::power_off:
    case Action::touch_metal:
    case Action::drill:
    case Action::take_out:
      return true;
    default:
      return false;
  }
}

}  // namespace

void add_work(const Plan& plan, Mounting& mounting) {
  if (mounting.steps.empty()) return;
  auto at = std::find_if_not(mounting.steps.begin(), mounting.steps.end(), clears);
  for (const Change& change : plan.changes)
    if (auto step = work(plan, change)) at = mounting.steps.insert(at, *std::move(step)) + 1;
}

void add_work(const Plan& plan, std::vector<Item>& items) {
  const bool put_in = std::any_of(plan.changes.begin(), plan.changes.end(),
                                  [](const Change& change) { return change.kind == Kind::other_standoff; });
  for (Item& item : items) {
    if (!put_in || item.kind != ItemKind::standoff || !item.in_build) continue;
    item.in_build = false;
    std::replace(item.remarks.begin(), item.remarks.end(), Remark::stands_there, Remark::with_the_board);
  }
}

}  // namespace baywright::plans
