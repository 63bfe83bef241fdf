#pragma once
// All that a key does, in one table: help, dispatch and tests read it. No toolkit.
#include "viewer/chord.h"

#include <optional>
#include <string_view>
#include <vector>

namespace baywright::viewer {

enum class Action {
  open,
  save,
  undo,
  redo,
  copy_answer,
  whole,
  front,
  side,
  top,
  cut,
  apart,
  put_in,
  closer,
  farther,
  hide,
  isolate,
  glass,
  distances,
  show_all,
  holes,
  measure,
  grid,
  findings,
  next_finding,
  steps,
  shortlist,
  try_plan,
  apply_plan,
  customer,
  help,
  theme,
  motion,
  larger,
  smaller,
  usual_size,
  next_stop,
  previous_stop,
  leave,
  quit,
};

/// What an action needs before it can be done.
enum class Needs {
  nothing,
  file,
  unsaved,
  to_undo,
  to_redo,
  part,
  hidden,
  several,
  finding,
  plan,
  tried,
  way_in,
  hole_plan,
  shortlist,
  to_copy
};

struct ActionRow {
  Action action = Action::open;
  std::string_view name;   // "whole": also the word on the screen
  std::string_view does;   // what it does, for help
  std::string_view group;  // heading in help
  Needs needs = Needs::nothing;
  std::vector<Chord> chords;  // any of them; help shows the first. No chord stands twice in the table
};
[[nodiscard]] const std::vector<ActionRow>& actions();
[[nodiscard]] const ActionRow& row(Action action);
[[nodiscard]] std::optional<Action> action_of(const Chord& chord);

/// How things stand, as far as actions care.
struct Standing {
  bool file = false;  // a build is open
  bool unsaved = false;
  bool to_undo = false;
  bool to_redo = false;
  bool part = false;       // one is chosen in the scene
  bool hidden = false;     // something is hidden, as glass, isolated or coloured
  bool several = false;    // more than one drive or place
  bool finding = false;    // the seating has one or more
  bool plan = false;       // something would make it fit
  bool tried = false;      // a plan is shown, not yet applied
  bool way_in = false;     // the drive can be put in
  bool hole_plan = false;  // the place has holes or stand-offs on the part that carries it
  bool shortlist = false;  // one is open
};
[[nodiscard]] bool enabled(Action action, const Standing& standing);

}  // namespace baywright::viewer
