#include "viewer/actions.h"

#include <algorithm>

namespace baywright::viewer {

namespace {

constexpr bool with_ctrl = true;
constexpr bool with_shift = true;

std::vector<ActionRow> table() {
  constexpr std::string_view file = "The build";
  constexpr std::string_view look = "Looking";
  constexpr std::string_view parts = "Parts";
  constexpr std::string_view answers = "Answers";
  constexpr std::string_view window = "The window";
  return {
      {Action::open,
       "open",
       "Open a build file or a shortlist: recent ones, and those beside this one.",
       file,
       Needs::nothing,
       {{"o", with_ctrl}}},
      {Action::save,
       "save",
       "Save it. Only what was changed changes in the file.",
       file,
       Needs::unsaved,
       {{"s", with_ctrl}}},
      {Action::undo, "undo", "Take the last change back.", file, Needs::to_undo, {{"z", with_ctrl}}},
      {Action::redo, "redo", "Make it again.", file, Needs::to_redo, {{"y", with_ctrl}, {"z", with_ctrl, with_shift}}},
      {Action::copy_answer,
       "copy",
       "Copy the answer as a sentence; on the page of steps or of the shortlist, that page.",
       file,
       Needs::to_copy,
       {{"c", with_ctrl}}},
      {Action::quit, "quit", "Close the window.", file, Needs::nothing, {{"q", with_ctrl}}},

      {Action::whole, "whole", "See all of it, oblique.", look, Needs::file, {{"w"}, {"Home"}}},
      {Action::front, "front", "From the drive's connector, true to scale.", look, Needs::file, {{"f"}}},
      {Action::side, "side", "From the side, true to scale.", look, Needs::file, {{"s"}}},
      {Action::top, "top", "From above the place, true to scale.", look, Needs::file, {{"t"}}},
      {Action::cut, "cut", "Cut open where the answer is decided.", look, Needs::file, {{"c"}}},
      {Action::apart, "apart", "Move the parts apart, and together again.", look, Needs::file, {{"a"}}},
      {Action::put_in, "put in", "Play how the drive goes in.", look, Needs::way_in, {{"p"}}},
      {Action::closer, "closer", "Zoom in.", look, Needs::file, {{"+"}, {"="}}},
      {Action::farther, "farther", "Zoom out.", look, Needs::file, {{"-"}}},

      {Action::holes,
       "holes",
       "The plan of holes and stand-offs: drag, type or nudge them; the drill template.",
       look,
       Needs::hole_plan,
       {{"o"}}},
      {Action::measure,
       "measure",
       "Between two faces, edges or holes: click one, then the other. Three are kept; Delete clears the newest.",
       look,
       Needs::file,
       {{"r"}}},

      {Action::hide, "hide", "Hide the chosen part.", parts, Needs::part, {{"h"}}},
      {Action::isolate, "alone", "Show the chosen part alone; again: all as before.", parts, Needs::part, {{"i"}}},
      {Action::glass, "glass", "Make the chosen part glass.", parts, Needs::part, {{"g"}}},
      {Action::distances,
       "distances",
       "Colour the chosen part by how far everything else is.",
       parts,
       Needs::part,
       {{"k"}}},
      {Action::show_all, "show all", "Show all parts as they are.", parts, Needs::hidden, {{"v"}}},

      {Action::grid, "drives and places", "Every drive at every place.", answers, Needs::several, {{"d"}}},
      {Action::findings, "findings", "All that was found of this drive here.", answers, Needs::finding, {{"l"}}},
      {Action::next_finding, "next", "The next finding.", answers, Needs::finding, {{"n"}}},
      {Action::steps,
       "steps",
       "The mounting order with cautions, and what to buy for it.",
       answers,
       Needs::file,
       {{"e"}}},
      {Action::shortlist,
       "shortlist",
       "The drives to choose between, side by side.",
       answers,
       Needs::shortlist,
       {{"b"}}},
      {Action::try_plan, "try", "Show what the next plan would change.", answers, Needs::plan, {{"m"}}},
      {Action::apply_plan,
       "apply",
       "Make the change that is shown. It can be undone.",
       answers,
       Needs::tried,
       {{"Enter", with_ctrl}}},
      {Action::customer, "customer", "For a customer: large, calm, one sentence.", answers, Needs::file, {{"F11"}}},

      {Action::next_stop,
       "next",
       "Go to the next thing that can be chosen; Enter chooses it.",
       window,
       Needs::nothing,
       {{"Tab"}}},
      {Action::previous_stop, "back", "Go to the one before.", window, Needs::nothing, {{"Tab", false, with_shift}}},
      {Action::leave, "leave", "Leave what is open; let go of what is chosen.", window, Needs::nothing, {{"Escape"}}},
      {Action::larger, "larger", "Everything larger.", window, Needs::nothing, {{"+", with_ctrl}, {"=", with_ctrl}}},
      {Action::smaller, "smaller", "Everything smaller.", window, Needs::nothing, {{"-", with_ctrl}}},
      {Action::usual_size,
       "usual size",
       "As large as the screen asks for.",
       window,
       Needs::nothing,
       {{"0", with_ctrl}}},
      {Action::theme, "light or dark", "Change between light and dark.", window, Needs::nothing, {{"t", with_ctrl}}},
      {Action::motion, "motion", "Without motion, and with it again.", window, Needs::nothing, {{"m", with_ctrl}}},
      {Action::help, "keys", "What each key does.", window, Needs::nothing, {{"F1"}, {"?"}}},
  };
}

}  // namespace

const std::vector<ActionRow>& actions() {
  static const std::vector<ActionRow> rows = table();
  return rows;
}

const ActionRow& row(Action action) {
  return *std::find_if(actions().begin(), actions().end(),
                       [&](const ActionRow& each) { return each.action == action; });
}

std::optional<Action> action_of(const Chord& chord) {
  for (const ActionRow& each : actions())
    if (std::find(each.chords.begin(), each.chords.end(), chord) != each.chords.end()) return each.action;
  return std::nullopt;
}

bool enabled(Action action, const Standing& standing) {
  switch (row(action).needs) {
    case Needs::nothing:
      return true;
    case Needs::file:
      return standing.file;
    case Needs::unsaved:
      return standing.unsaved;
    case Needs::to_undo:
      return standing.to_undo;
    case Needs::to_redo:
      return standing.to_redo;
    case Needs::part:
      return standing.part;
    case Needs::hidden:
      return standing.hidden;
    case Needs::several:
      return standing.several;
    case Needs::finding:
      return standing.finding;
    case Needs::plan:
      return standing.plan;
    case Needs::tried:
      return standing.tried;
    case Needs::way_in:
      return standing.way_in;
    case Needs::hole_plan:
      return standing.hole_plan;
    case Needs::shortlist:
      return standing.shortlist;
    case Needs::to_copy:
      return standing.file || standing.shortlist;
  }
  return false;
}

}  // namespace baywright::viewer
