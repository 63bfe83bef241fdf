#include "output/answer_words.h"

#include "output/more_words.h"
#include "output/words.h"
#include "parts/form.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <cmath>

namespace baywright::output {

using fit::Code;
using fit::Finding;
using fit::Seating;
using fit::Verdict;

namespace {

std::string in_mm(double gap) {
  return tolerance::in_words(std::round(std::abs(gap) * 100.0) / 100.0) + " mm";
}

/// A clearance between two solids: the only finding that can be told in one figure.
bool is_gap(const Finding* finding) {
  return finding != nullptr && finding->kind == fit::Kind::clearance && finding->gap &&
         finding->why.code == fit::Code::gap;
}

/// What a solid is to somebody who never built a machine.
std::string plain_subject(const Finding& finding, std::size_t which) {
  const std::string& part = finding.between[which];
  const std::string& body = finding.bodies[which];
  if (part == "stand-off") return "the post that the card is screwed to";
  if (part == "screw") return "the head of the screw";
  if (body == "edge" || body == "tongue past the slot") return "the connector end of " + part;
  if (body == "chips underneath" || body == "solder side") return "the underside of " + part;
  if (body == "components") return "the parts on " + part;
  if (body == "ledge") return "the rim of " + part;
  if (body == "tab" || body == "bracket") return "the metal bracket of " + part;
  return subject(finding, which);
}

/// A reason for people who do not know the trade's words: what is wrong, and what hangs on how exactly things are made
/// where only some builds fit. Empty: the trade's own sentence has to do.
struct PlainReason {
  std::string wrong;
  std::string whether;
};

/// Which kind of drive the place takes, and which this is.
std::string kinds(const fit::Reason& why) {
  const auto a = [](const std::string& word) { return parts::article(word) + ' ' + word; };
  const std::string worn = why.word("worn");
  return "The place takes " + a(why.word("place")) + "; " +
         (worn.empty() ? "this is " : "in " + worn + " this is as large as ") + a(why.word("drive"));
}

PlainReason plain_question(const fit::Reason& why) {
  switch (why.code) {
    case Code::other_form:
      return {kinds(why) + '.', {}};
    case Code::adapter_needed:
      return {kinds(why) + ". An adapter would hold it there.", {}};
    case Code::adapter_passes_not:
      return {"The adapter that it would need does not work with this drive.", {}};
    case Code::size_too_long:
    case Code::full_card:
      return {"The card is too long for the place.", {}};
    case Code::size_too_short:
    case Code::half_card:
      return {"The card is too short for the place: it would need a piece that makes it longer, to be screwed down.",
              {}};
    case Code::width_not_held:
      return {"The card is not as wide as the place asks.", {}};
    case Code::soldered:
      return {"It is part of the board that it came on and cannot be moved.", {}};
    case Code::key_meets_not:
      return {
          "The notch in the card's connector is not where the machine's socket has its rib: it cannot be pushed in.",
          {}};
    case Code::slot_too_short:
      return {"The card's connector is longer than the machine's, which is closed at its end.", {}};
    case Code::plug_enters_not:
    case Code::connector_differs:
      return {"The plug of the drive does not go into the machine's connector.", {}};
    case Code::plug_dead:
      return {"The plug goes in, but the machine would not see the drive.", {}};
    case Code::bus_absent:
    case Code::bus_not_split:
    case Code::bus_with_interface:
      return {"The machine would not see the drive there: the two are not made to talk to each other.", {}};
    default:
      return {};
  }
}

PlainReason plain_fixing(const fit::Reason& why) {
  switch (why.code) {
    case Code::hole_reach:
    case Code::holes_differ:
    case Code::holes_one_row:
    case Code::holes_optional:
      return {"The holes of the place and those of the drive do not meet, so its screws cannot hold it.",
              "its screws meet the holes"};
    case Code::thread_differs:
      return {"The screws at hand are of another kind than the drive takes.", {}};
    case Code::screw_long:
    case Code::screw_near:
      return {"The screws at hand are too long and could damage the drive; shorter ones would do.",
              "the screws are short enough not to damage the drive"};
    case Code::screw_short:
    case Code::outer_screw_short:
      return {"The screws at hand are too short to hold; longer ones would do.", "the screws are long enough to hold"};
    case Code::outer_screw_long:
      return {"The screws at hand are too long to be tightened; shorter ones would do.",
              "the screws are short enough to be tightened"};
    case Code::head_through:
      return {"The heads of the screws would slip through the holes; a washer under each would do.",
              "the heads of the screws are held"};
    case Code::hole_off_sheet:
    case Code::hole_breaks_out:
    case Code::holes_meet:
      return {"One of the screw holes has no sound metal round it.", "the screw holes have metal enough round them"};
    case Code::connector_off:
      return {"The drive's connector does not stand where the machine's is.",
              "the drive's connector meets the machine's"};
    case Code::bracket_differs:
      return {"The card's metal bracket is of another height than the machine's opening; some makers supply the other.",
              {}};
    default:
      return {};
  }
}

PlainReason plain_reason(const fit::Reason& why) {
  const std::string by = why.word("by");
  switch (why.code) {
    case Code::class_refuses:
      return {"The socket leaves no room for the chips on the card's underside.", {}};
    case Code::occupied:
      return {"The place is taken by " + by + '.', {}};
    case Code::way_blocked:
    case Code::way_unsure:
      return {"It would have room, but cannot be brought there: " + by + " is in the way.",
              "it passes " + by + " on its way in"};
    case Code::tool_blocked:
    case Code::tool_marginal:
    case Code::tool_unsure:
      return {by.empty() ? "Its screws cannot be reached."
                         : "It would have room, but its screws cannot be reached: " + by + " is in the way.",
              by.empty() ? "its screws can be reached" : "its screws can be reached past " + by};
    default:
      break;
  }
  PlainReason out = plain_question(why);
  return out.wrong.empty() ? plain_fixing(why) : out;
}

std::string plain_words(const Seating& seating, const std::string& sentence) {
  if (seating.verdict == Verdict::fits) {
    const Finding* nearest = seating.deciding && *seating.deciding < seating.findings.size()
                                 ? &seating.findings[*seating.deciding]
                                 : nullptr;
    if (!is_gap(nearest)) return "It fits.";
    return "It fits: " + in_mm(nearest->gap->nominal) + " of air is left between " + plain_subject(*nearest, 0) +
           " and " + plain_subject(*nearest, 1) + ".";
  }
  const std::vector<const Finding*> why = grounds(seating);
  const Finding* finding = why.empty() ? nullptr : why.front();
  PlainReason plain = finding != nullptr ? plain_reason(finding->why) : PlainReason{};
  for (std::size_t i = 1; i < why.size() && !plain.wrong.empty(); ++i) {
    const std::string more = plain_reason(why[i]->why).wrong;
    plain.wrong = more.empty() ? "" : plain.wrong + ' ' + more;  // the trade's own sentences then
  }
  if (is_gap(finding) && clears_at_worst(*finding))
    return "It may not keep the air asked for: between " + plain_subject(*finding, 0) + " and " +
           plain_subject(*finding, 1) + " as little as " + down_to_hundredths(finding->gap->min) + " mm may be left.";
  if (is_gap(finding)) {
    plain.whether = plain_subject(*finding, 0) + " stays clear of " + plain_subject(*finding, 1);
    plain.wrong.clear();
  }
  if (seating.verdict == Verdict::undecided)
    return "It could not be settled whether it fits. " +
           (plain.whether.empty() ? sentence : "What is known does not tell whether " + plain.whether + '.');
  if (seating.verdict == Verdict::marginal)
    return plain.whether.empty()
               ? "It may not fit. " + (plain.wrong.empty() ? sentence : plain.wrong)
               : "It may not fit: whether " + plain.whether + " depends on how exactly the parts are made.";
  const std::string begin = "It does not fit";
  if (!is_gap(finding)) return begin + ". " + (plain.wrong.empty() ? sentence : plain.wrong);
  const std::string a = plain_subject(*finding, 0);
  const std::string b = plain_subject(*finding, 1);
  if (finding->gap->nominal < 0.0)
    return begin + ": between " + a + " and " + b + " " + in_mm(finding->gap->nominal) + " of room is missing.";
  return begin + " with the air asked for: between " + a + " and " + b + " only " + in_mm(finding->gap->nominal) +
         " is left.";
}

}  // namespace

const Finding* answering(const Seating& seating) {
  const auto found = std::find_if(seating.findings.begin(), seating.findings.end(),
                                  [&](const Finding& finding) { return finding.verdict == seating.verdict; });
  return found == seating.findings.end() ? nullptr : &*found;
}

std::vector<const Finding*> grounds(const Seating& seating) {
  using fit::Kind;
  std::vector<const Finding*> out;
  if (seating.verdict == Verdict::does_not_fit)
    for (const Finding& finding : seating.findings) {
      const Kind kind = finding.kind;
      const bool asked =
          kind == Kind::form_factor || kind == Kind::length || kind == Kind::interface || kind == Kind::bus;
      if (asked && finding.verdict == seating.verdict && finding.why.code != Code::bus_with_interface)
        out.push_back(&finding);
    }
  if (out.empty())
    if (const Finding* finding = answering(seating)) out.push_back(finding);
  return out;
}

bool clears_at_worst(const Finding& finding) {
  return finding.gap && finding.verdict == Verdict::marginal && finding.gap->min >= 0.01;
}

Answer answer_of(const Seating& seating, tolerance::Method method) {
  Answer out{seating.verdict, word(seating.verdict), seating.drive + " in " + seating.place, {}, {}};
  const std::vector<const Finding*> why = grounds(seating);
  for (const Finding* finding : why) out.sentence += (out.sentence.empty() ? "" : " ") + say(*finding, method);
  if (why.empty()) out.sentence = "Nothing stands within reach of the drive.";
  out.plain = plain_words(seating, out.sentence);
  return out;
}

}  // namespace baywright::output
