#include "output/steps_text.h"

#include "output/more_words.h"
#include "output/text.h"
#include "output/words.h"
#include "parts/form.h"
#include "tolerance/reading.h"

#include <nlohmann/json.hpp>

namespace baywright::output {

using plans::Action;
using plans::Hazard;
using plans::Mounting;
using plans::Step;

namespace {

/// "one M2 screw", "4 M3 screws, 8 mm long,".
std::string fasteners(const Step& step, const std::string& what) {
  const std::string kind = step.what.empty() ? what : step.what + ' ' + what;
  const std::string length =
      step.length > 0.0 ? ", " + tolerance::in_words(step.length) + " mm long under the head," : "";
  return (step.count == 1 ? "the " + kind : "the " + std::to_string(step.count) + ' ' + kind + 's') + length;
}

std::string say_drive(const Step& step) {
  if (step.count == 0)
    return "Fasten it as " + step.where +
           " asks (a latch, rails, the bracket's screw): the build file names no screws.";
  std::string text = "Drive " + fasteners(step, "screw");
  if (step.washers) text += step.count == 1 ? " a washer under its head," : " a washer under each head,";
  if (step.no_washers) text += " no washer (the holes are wide, but no usual length holds with one),";
  if (!step.how.words.empty()) text += " with " + tool_in_words(step.how);
  text += step.count > 1 ? ", crosswise and hand-tight: start all of them before you tighten one. " : ", hand-tight. ";
  return text + "No source gives a torque for " + (step.count > 1 ? "them." : "it.");
}

/// "a spacer of 3.00 mm at each screw".
std::string at_each_screw(const Step& step) {
  const std::string length = tolerance::in_words(step.length) + " mm";
  if (step.washers_each > 1) return "a pair of washers (" + length + " in all) at each screw";
  return (step.washers_each > 0 ? "a washer of " : "a spacer of ") + length + " at each screw";
}

/// That the screws which the file names are too short over the spacers; empty: they are not.
std::string say_longer(const Step& step) {
  if (!(step.longer_screw > 0.0)) return {};
  return " Screws " + in_words(*step.screws) +
         " go into their thread by less than one diameter then: longer ones are needed, at least " +
         up_to_hundredths(step.longer_screw) + " mm; see first that the thread is as deep.";
}

std::string say_put_back(const Step& step) {
  const std::string put = "Put " + step.what + " back with ";
  const std::string screw = step.screws ? in_words(*step.screws) : "";
  if (!(step.length > 0.0)) return put + "its own screws" + (screw.empty() ? "" : ", " + screw) + '.';
  if (screw.empty())
    return put + at_each_screw(step) + ", and with screws that are longer by as much if its own hold no more.";
  if (step.longer_screw > 0.0) return put + at_each_screw(step) + '.' + say_longer(step);
  return put + "screws " + screw + " and " + at_each_screw(step) + "; screws that came out shorter are too short then.";
}

std::string listed(const std::vector<std::string>& names) {
  std::string out;
  for (std::size_t i = 0; i < names.size(); ++i) out += (i == 0 ? "" : "; ") + names[i];
  return out;
}

std::string line(const std::string& words, const std::string& lead = {}) {
  // Wrapping would drop the spaces of the lead, so its room is held by other letters.
  std::string text = wrapped(std::string(lead.size(), 'x') + words, lead.size());
  return lead + text.substr(lead.size()) + '\n';
}

}  // namespace

std::string say(const Step& step) {
  switch (step.action) {
    case Action::back_up:
      return "Copy what must not be lost off every drive that you will touch, onto another machine.";
    case Action::power_off:
      return "Shut down, switch off and pull the mains plug; in a laptop disconnect the battery before all else.";
    case Action::touch_metal:
      return "Touch bare metal of the case, and again whenever you come back to it.";
    case Action::drill:
      return "If the " + (step.count > 0 ? std::to_string(step.count) + ' ' : std::string()) + "holes of " +
             step.where +
             " are not there yet: take boards and drives out of the case, drill after the template that `baywright "
             "drill` "
             "draws, deburr, and clear every chip away.";
    case Action::take_out:
      if (step.screws)
        return "Undo the " + step.screws->thread + " screws of " + step.what +
               (step.how.words.empty() ? "" : " with " + tool_in_words(step.how)) +
               ", take it out, and keep its screws together.";
      return "Take out " + step.what + ", and keep its screws together.";
    case Action::put_in_adapter:
      return "Put " + step.what + " into " + step.where + " and fasten it there, hand-tight.";
    case Action::screw_standoffs:
      return "Screw " +
             (step.count == 1 ? "the " + step.what + " stand-off"
                              : "the " + std::to_string(step.count) + ' ' + step.what + " stand-offs") +
             (step.length > 0.0 ? ", stud " + tolerance::in_words(step.length) + " mm," : "") + " into " + step.where +
             ", hand-tight.";
    case Action::set_spacers:
      if (step.count == 0)
        return "See that under " + step.where + " there is " + at_each_screw(step) + '.' + say_longer(step);
      return "Set " + std::to_string(step.count) + " spacers" +
             (step.length > 0.0 ? " of " + tolerance::in_words(step.length) + " mm" : std::string()) +
             " over the holes of " + step.where + "; a dab of tape holds them.";
    case Action::peel:
      return "Peel the films off both faces of " + step.what + " and keep your fingers off them.";
    case Action::lay_pad:
      return "Lay " + step.what + " on the chips of " + step.where + ", flat and without a bubble.";
    case Action::set_heatsink:
      return "Set " + step.what + " on " + step.where + ", straight down; do not slide it.";
    case Action::put_in: {
      const std::string way = step.how.words.empty() ? std::string() : ": " + goes_in(step.how);
      return "Put " + step.what + " to its place, " + step.where + way +
             ". Its connector goes all the way in; never force it.";
    }
    case Action::screw:
      return say_drive(step);
    case Action::screw_outside:
      return say_drive(step) + (step.length > 0.0
                                    ? std::string(" They go through the sheet into the stand-offs.")
                                    : " They go through the sheet into the stand-offs, and the file does not say how "
                                      "long they are: take the "
                                      "sheet's thickness and at least two threads, and less than reaches the stud.");
    case Action::hold_nuts:
      return "Turn on " + fasteners(step, "nut") + " with " + tool_in_words(step.how) + ", hand-tight.";
    case Action::plug:
      return "Plug the cables into " + step.what + ", with no strain on them.";
    case Action::look:
      return "Look along " + step.what +
             " from the side, with a lamp behind it: it lies straight, its connector is all "
             "the way in, nothing is pinched, and no screw is left over.";
    case Action::put_back:
      return say_put_back(step);
    case Action::start_up:
      return "Connect battery and mains, start, and see that " + step.what +
             " is there with its full capacity. Keep the "
             "copy until it is.";
    case Action::take_off:
      return "If " + step.what + " is on " + step.where + " already, take it off, and its pad with it.";
    case Action::set_standoff:
      if (step.length > 0.0)
        return "Set a stand-off " + tolerance::in_words(step.length) + " mm high in " + step.where +
               " in place of the one there, hand-tight.";
      return "Set the stand-off at the " + step.what + " hole of " + step.where +
             ", hand-tight; if there is neither a hole nor a nut, stop here.";
    case Action::cut:
      return "Take boards and drives out of the case, mark the opening in " + step.where +
             " and cut or file it out; deburr its edges and clear every chip away.";
  }
  return {};
}

std::string say(Hazard hazard) {
  switch (hazard) {
    case Hazard::loss_of_data:
      return "A drive can fail when it is moved; a copy in the same machine is none.";
    case Hazard::mains:
      return "Mains voltage kills: no hand inside with the plug in. Local rules and licensed practice come first.";
    case Hazard::battery:
      return "A battery that is bent, pierced or shorted burns.";
    case Hazard::power_supply:
      return "Never open the power supply: it holds a dangerous voltage long after it was unplugged.";
    case Hazard::static_charge:
      return "Static kills boards and cards unseen: hold them by their edges.";
    case Hazard::sharp_edges:
      return "Cut and punched sheet edges are sharp.";
    case Hazard::swarf:
      return "One metal chip on a board is a short circuit: drill away from every board.";
    case Hazard::eyes:
      return "Eye protection on.";
    case Hazard::torn_chips:
      return "No force, and do not pry: warm it gently, then twist it slowly until the pad lets go; chips can come off "
             "with it (common practice, no source).";
    case Hazard::drive_warranty:
      return "Taking off what the maker put on may end the drive's warranty: ask first.";
  }
  return {};
}

std::vector<std::string> steps_heading(const Mounting& mounting) {
  const std::string what = mounting.drive + " in " + mounting.place;
  if (mounting.steps.empty())
    return {what + (mounting.verdict == fit::Verdict::undecided
                        ? ": whether it fits could not be settled, so there are no steps yet."
                        : ": does not fit, so there is nothing to mount yet.")};
  std::vector<std::string> out = {what + " (" + word(mounting.verdict) + "): " + std::to_string(mounting.steps.size()) +
                                  " steps" + (mounting.tools.empty() ? "" : "; tool: " + listed(mounting.tools)) + "."};
  if (mounting.verdict == fit::Verdict::marginal)
    out.emplace_back("Only some builds fit. Measure before you buy: baywright explain says what.");
  return out;
}

std::string steps_list(const Mounting& mounting) {
  std::string text;
  int number = 0;
  for (const Step& step : mounting.steps) {
    const std::string count = std::to_string(++number);
    text += line(say(step), std::string(count.size() < 2 ? " " : "") + count + "  ");
    for (const Hazard hazard : step.hazards) text += line(say(hazard), "    Caution: ");
  }
  return text;
}

std::string steps_text(const Mounting& mounting, const std::vector<std::string>& others) {
  std::string text;
  for (const std::string& each : steps_heading(mounting)) text += line(each);
  if (mounting.steps.empty()) {
    text += line("What would make it fit: baywright plans");
    if (!others.empty()) text += line("These fit, name one with --drive and --place: " + listed(others) + ".");
    return text;
  }
  return text + '\n' + steps_list(mounting) + '\n' + line("What to buy for it: baywright steps --shopping");
}

std::string steps_json(const Mounting& mounting) {
  using Json = nlohmann::ordered_json;
  Json out = {{"schema", 1},
              {"drive", mounting.drive},
              {"place", mounting.place},
              {"verdict", word(mounting.verdict)},
              {"tools", mounting.tools},
              {"steps", Json::array()}};
  for (const Step& step : mounting.steps) {
    Json each = {{"action", std::string(plans::word(step.action))},
                 {"what", step.what},
                 {"where", step.where},
                 {"say", say(step)},
                 {"cautions", Json::array()}};
    if (step.count > 0) each["count"] = step.count;
    if (step.length > 0.0) each["length"] = step.length;
    for (const Hazard hazard : step.hazards)
      each["cautions"].push_back({{"hazard", std::string(plans::word(hazard))}, {"say", say(hazard)}});
    out["steps"].push_back(std::move(each));
  }
  return out.dump(2) + '\n';
}

}  // namespace baywright::output
