#include "output/plan_words.h"

#include "output/more_words.h"
#include "output/words.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <cmath>

namespace baywright::output {

using plans::Caution;
using plans::Change;
using plans::Kind;
using plans::Price;

namespace {

std::string mm(double value) {
  return tolerance::in_words(value);
}

std::string say_pad(const Change& change) {
  const std::string pressed = "pressed by " + percent(change.pressed);
  if (change.value == change.from) return change.what + " (" + mm(change.from) + ") " + pressed;
  return "a pad of " + mm(change.value) + " mm, " + pressed + ", in place of " + change.what + " (" + mm(change.from) +
         ")";
}

std::string say_spacer(const Change& change) {
  if (change.to == "spacers under the drive") {
    std::string text = "spacers of " + mm(change.value) + " mm under " + change.what;
    if (change.from > 0.0) text += " in place of " + mm(change.from);
    return text + (change.screw > 0.0 ? ", with screws " + mm(change.screw) + " mm long" : "");
  }
  if (change.to.ends_with("screw head"))
    return change.to + " of " + change.what + " (" + mm(change.value - change.from) + " mm in all)";
  std::string what = change.to == "spacers" ? "spacers of " + mm(change.spacer) + " mm"
                                            : change.to + " (" + mm(change.spacer) + " mm)";
  if (change.spacer_now > 0.0) what += ", in place of those of " + mm(change.spacer_now) + " mm,";
  return what + " at each screw of " + change.what + ", which is then " + mm(change.value) + " away, not " +
         mm(change.from) + (change.screw > 0.0 ? ", with screws " + mm(change.screw) + " mm long" : "");
}

std::string say_opening(const Change& change) {
  const auto [x0, y0, x1, y1] = change.cut;
  return "an opening of " + mm(x1 - x0) + " x " + mm(y1 - y0) + " mm in " + change.what + ": remove x " + mm(x0) +
         " to " + mm(x1) + ", y " + mm(y0) + " to " + mm(y1) + " from its low corner";
}

/// What reaches out of the machine where it is cut.
std::string say_out(const plans::Plan& plan) {
  std::string out;
  for (const Change& change : plan.changes) {
    if (change.through.empty()) continue;
    const std::string most =
        std::isfinite(change.out_most) ? up_to_hundredths(change.out_most) : std::string("an unknown length");
    out += (out.empty() ? "" : " ") + capital(change.through) + " then stands out of " + change.what + " by " +
           up_to_hundredths(change.out) + " mm, by " + most + " in the worst case" +
           (plan.changes.size() > 1 ? ", without what else changes" : "") +
           ": see what is there, and that nothing can touch it.";
  }
  return out;
}

std::string say_turned(const Change& change) {
  if (change.what == "plug")
    return "a plug that needs at most " + mm(change.value) + " mm with its bend, not " + mm(change.from) +
           ": an angled one";
  return change.what + " turned " + (change.to == "end for end" ? "end for end" : "to stand " + change.to);
}

}  // namespace

std::string say(const Change& change) {
  switch (change.kind) {
    case Kind::other_heatsink:
      return "heatsink " + change.to + " (" + mm(change.value) + " mm high) in place of " + change.what + " (" +
             mm(change.from) + ")";
    case Kind::lower_heatsink:
      return "a heatsink at most " + mm(change.value) + " mm high in place of " + change.what + " (" + mm(change.from) +
             ")";
    case Kind::no_heatsink:
      return "no heatsink: " + change.what + " (" + mm(change.from) + ") left off, with its pad";
    case Kind::other_pad:
      return say_pad(change);
    case Kind::single_sided:
      return "a single-sided card (" + change.to + ") in place of " + change.what;
    case Kind::other_standoff:
      if (!change.to.empty()) return "a stand-off at the " + change.to + " hole of " + change.what;
      return "a stand-off " + mm(change.value) + " mm high in " + change.what + ", not " + mm(change.from);
    case Kind::spacer:
      return say_spacer(change);
    case Kind::other_screw:
      return "screws " + change.what + ", " + mm(change.value) + " mm long, in place of " + mm(change.from);
    case Kind::other_place:
      return change.what + " in " + change.to;
    case Kind::adapter:
      return change.what + " in " + change.to;
    case Kind::turned:
      return say_turned(change);
    case Kind::opening:
      return say_opening(change);
    case Kind::other_drive:
      return change.to + " in place of " + change.what;
  }
  return {};
}

std::string say(const plans::Plan& plan) {
  std::string out;
  for (const Change& change : plan.changes) out += (out.empty() ? "" : "; and ") + say(change);
  return out;
}

std::string in_words(Price price) {
  switch (price) {
    case Price::warmer:
      return "runs warmer";
    case Price::slower:
      return "runs slower";
    case Price::warranty:
      return "may end the warranty";
    case Price::metal_work:
      return "metal work";
    case Price::screws:
      return "a few small parts";
    case Price::less_capacity:
      return "perhaps less capacity";
    case Price::undone_hardly:
      return "cannot be undone";
  }
  return {};
}

std::string say(const plans::Plan& plan, Caution caution) {
  switch (caution) {
    case Caution::screws_longer:
      return "How it is then held is not known (`screws` says it): take screws that are longer by as much, so that as "
             "many turns hold.";
    case Caution::no_screw_suits:
      return "No usual screw length suits then: each would go into its thread by less than one diameter, or deeper "
             "than those of now do. See how deep that is, and take screws that go in so far.";
    case Caution::opening_moves:
      return "The file does not describe the machine's rear opening (`rear_opening`): a raised board's connectors move "
             "in it, and cables and risers must still reach.";
    case Caution::brackets_move:
      return "Cards in this board rise with it: see that their brackets still reach the rail.";
    case Caution::hole_there:
      return "Only if the board has a hole or a nut there: look before you buy.";
    case Caution::sheet_only:
      return "Only if it is plain sheet and nothing behind it is live: how far to keep off copper is yours to judge.";
    case Caution::stands_out:
      return say_out(plan);
    case Caution::chips_differ:
      return "A pad pressed so far evens out less: see that it touches every chip that it should, and bends no card.";
    case Caution::sizes_of_adapter:
      return "Adapters have no standard: measure the one that you buy against `baywright parts`.";
    case Caution::money_unknown:
      return "What it costs is not known here.";
    case Caution::data_moves:
      return "What the machine needs from the drive that is not taken has to be copied first.";
  }
  return {};
}

std::string say_result(const plans::Plan& plan, tolerance::Method method) {
  const fit::Seating& after = plan.after;
  if (!after.deciding) return word(after.verdict) + "; nothing is near";
  const fit::Finding& finding = after.findings[*after.deciding];
  const fit::GapFigures& gap = *finding.gap;
  const std::string limits = method == tolerance::Method::worst ? "worst" : in_words(method);
  const std::string least =
      std::isfinite(gap.min) ? limits + ' ' + down_to_hundredths(gap.min) : "its least is not known";
  const std::string of =
      finding.kind == fit::Kind::clearance ? " clear of " + subject(finding, 1) : " of room for " + word(finding.kind);
  return word(after.verdict) + ": " + down_to_hundredths(gap.nominal) + of + ", " + least + "; " + mm(gap.asked) +
         " asked";
}

std::string say(const plans::Contradiction& contradiction) {
  std::string out = contradiction.second.empty() ? ""
                                                 : capital(contradiction.first) + " and " + contradiction.second +
                                                       " cannot be had together here.";
  if (contradiction.dimension.empty())
    return out + (out.empty() ? "" : " ") + "No single length was found that would mend it.";
  return out + (out.empty() ? "" : " ") + "The smallest single change that would: " + contradiction.dimension +
         ", from " + mm(contradiction.from) + " to " + mm(contradiction.value) + " mm, its limits as they are.";
}

}  // namespace baywright::output
