#pragma once
// The mounting order of one seating, read off what its check found: what comes out, what goes in, what is screwed with
// which driver, what goes back.
#include "fit/check.h"
#include "fit/seated.h"

#include <optional>
#include <string>
#include <vector>

namespace baywright::plans {

enum class Action {
  back_up,      // of what is on a drive that is there already
  power_off,    // and unplugged, battery disconnected
  touch_metal,  // against static
  drill,        // the holes of the place
  take_out,     // a part of the machine, or a drive that sits elsewhere
  put_in_adapter,
  screw_standoffs,  // into the drive
  set_spacers,      // plain ones, between the drive and its place; without a count, under a part of the machine
  peel,             // the films off a pad
  lay_pad,
  set_heatsink,
  put_in,  // the drive to its place
  screw,
  screw_outside,  // through the sheet into threaded stand-offs
  hold_nuts,
  plug,  // a cable
  look,  // whether all sits as it should
  put_back,
  start_up,
  // of a plan (plan_steps.h)
  take_off,      // a heatsink with its pad, off the drive
  set_standoff,  // of a card, at the hole `what`, or `length` high in place of the one there
  cut,           // an opening
};
[[nodiscard]] std::string_view word(Action action);  // "take out", as in JSON

/// What a step can do to people, the machine or what is stored.
enum class Hazard {
  loss_of_data,
  mains,
  battery,
  power_supply,
  static_charge,
  sharp_edges,
  swarf,
  eyes,
  torn_chips,
  drive_warranty
};
[[nodiscard]] std::string_view word(Hazard hazard);  // "static", as in JSON

struct Step {
  Action action = Action::put_in;
  std::string what{};   // the part, pad, heatsink or drive, as people call it; a screw's thread
  std::string where{};  // the place, or the part that it goes on
  int count = 0;        // of screws, nuts, stand-offs
  double length = 0.0;  // mm, of a screw under its head or of a spacer, put_back's too; 0 where it is not known
  fit::Reason how{};    // put_in: its way; screw, hold_nuts: what reaches them; as the findings say it; take_out: its
                        // driver
  std::optional<build::Screw> screws{};  // take_out, put_back, spacers under a part: that hold it
  std::vector<Hazard> hazards{};
  int washers_each = 0;       // put_back, spacers under a part: that come to `length` at each screw; 0: spacers do
  double longer_screw = 0.0;  // mm, there: the shortest that goes in far enough; 0: `screws` do
  bool washers = false;       // screw, screw_outside: one under each head, as washers.h wants them
  bool no_washers = false;    // there: the holes call for them, and no usual length holds with one
};

struct Mounting {
  std::string drive;
  std::string place;
  fit::Verdict verdict = fit::Verdict::undecided;
  std::vector<Step> steps;         // empty where it does not fit or is undecided: there is nothing to mount
  std::vector<std::string> tools;  // "PH0 driver"
};

/// `seated` and `seating` are of this build, drive and place.
[[nodiscard]] Mounting mounting(const build::Build& build, const fit::Seated& seated, const fit::Seating& seating);

}  // namespace baywright::plans
