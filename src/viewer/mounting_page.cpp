#include "viewer/mounting_page.h"

#include "output/plan_words.h"
#include "output/shopping_text.h"
#include "output/steps_text.h"
#include "output/text.h"
#include "plans/plan_steps.h"
#include "viewer/actions.h"

#include <algorithm>

namespace baywright::viewer {

namespace {

std::string key(Action action) {
  return text(row(action).chords.front());
}

/// What would make it fit: the best plan that surely does, else the best there is.
std::string help(const plans::Search* search) {
  if (search == nullptr) return "What would make it fit is still being looked for.";
  if (search->plans.empty()) return "Nothing that was tried makes it fit.";
  const auto sure = std::find_if(search->plans.begin(), search->plans.end(),
                                 [](const plans::Plan& plan) { return plan.after.verdict == fit::Verdict::fits; });
  const plans::Plan& best = sure == search->plans.end() ? search->plans.front() : *sure;
  return "What would make it fit: " + output::say(best) + ". " + key(Action::try_plan) +
         " goes through all that would, each with its steps; " + key(Action::apply_plan) + " makes the change.";
}

/// What fits without any change.
std::string others(const std::vector<Cell>* grid) {
  std::string out;
  if (grid != nullptr)
    for (const Cell& cell : *grid)
      if (cell.verdict == fit::Verdict::fits)
        out += (out.empty() ? "" : "; ") + cell.choice.drive + " in " + cell.choice.place;
  return out.empty() ? out : "These fit as they are: " + out + ". " + key(Action::grid) + " shows them all.";
}

}  // namespace

MountingPage mounting_page(const Shown& shown, const plans::Plan* tried, const plans::Search* search,
                           const std::vector<Cell>* grid) {
  MountingPage out;
  out.mounting = plans::mounting(shown.build, shown.seated, shown.seating);
  out.items = plans::shopping(shown.build, shown.seated, shown.seating);
  if (tried != nullptr) {
    plans::add_work(*tried, out.mounting);
    plans::add_work(*tried, out.items);
  }
  out.heading = output::steps_heading(out.mounting);
  if (tried != nullptr)
    out.heading.push_back("With a change that is not made yet: " + output::say(*tried) + ". " +
                          key(Action::apply_plan) + " makes it.");
  if (out.mounting.steps.empty())
    for (std::string& each : std::vector{help(search), others(grid)})
      if (!each.empty()) out.heading.push_back(std::move(each));
  if (!out.items.empty()) out.shopping = output::shopping_heading(shown.seating, out.items);
  for (const std::string& each : out.heading) out.text += output::wrapped(each, 0) + '\n';
  if (!out.mounting.steps.empty()) out.text += '\n' + output::steps_list(out.mounting);
  if (!out.items.empty()) out.text += '\n' + output::shopping_text(shown.seating, out.items);
  return out;
}

}  // namespace baywright::viewer
