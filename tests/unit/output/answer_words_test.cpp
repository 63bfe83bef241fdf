// The answer in a few words: what every picture, drawing and window says of a seating.
#include "output/answer_words.h"

#include "output/words.h"

#include <doctest/doctest.h>
#include <limits>
#include <string>
#include <vector>

using namespace baywright;

namespace {

fit::Finding gap(fit::Verdict verdict, double nominal, double min, double max) {
  fit::Finding out;
  out.verdict = verdict;
  out.between = {"fin heatsink", "tray"};
  out.bodies = {"fin 1", "tray"};
  out.gap = fit::GapFigures{nominal, min, max, 0.5};
  return out;
}

fit::Seating seating(fit::Finding finding) {
  fit::Seating out;
  out.drive = "card";
  out.place = "slot";
  out.verdict = *finding.verdict;
  out.findings = {std::move(finding)};
  out.deciding = 0;
  return out;
}

}  // namespace

TEST_CASE("an answer has the verdict's word, what is where, and the sentence that check prints") {
  const fit::Seating shown = seating(gap(fit::Verdict::does_not_fit, -0.4, -0.98, 0.18));
  const output::Answer answer = output::answer_of(shown, tolerance::Method::worst);
  CHECK(answer.word == "does not fit");
  CHECK(answer.what == "card in slot");
  CHECK(answer.sentence == output::say(shown.findings[0], tolerance::Method::worst));
  CHECK(answer.plain == "It does not fit: between fin heatsink and tray 0.40 mm of room is missing.");
}

TEST_CASE("the plain sentence keeps to one figure and never promises more than the verdict") {
  const auto plain = [](fit::Finding finding) {
    return output::answer_of(seating(std::move(finding)), tolerance::Method::worst).plain;
  };
  CHECK(plain(gap(fit::Verdict::fits, 1.6, 1.02, 2.2)) ==
        "It fits: 1.60 mm of air is left between fin heatsink and tray.");
  CHECK(plain(gap(fit::Verdict::marginal, 0.93, 0.38, 1.5)) ==
        "It may not keep the air asked for: between fin heatsink and tray as little as 0.38 mm may be left.");
  CHECK(plain(gap(fit::Verdict::marginal, 0.1, -0.38, 0.6)) ==
        "It may not fit: whether fin heatsink stays clear of tray depends on how exactly the parts are made.");
  CHECK(plain(gap(fit::Verdict::does_not_fit, 0.2, 0.1, 0.3)) ==
        "It does not fit with the air asked for: between fin heatsink and tray only 0.20 mm is left.");
  const double open = std::numeric_limits<double>::infinity();
  CHECK(plain(gap(fit::Verdict::undecided, 0.5, -open, open)).starts_with("It could not be settled whether it fits. "));
  fit::Finding other = gap(fit::Verdict::does_not_fit, -1.0, -1.0, -1.0);
  other.kind = fit::Kind::screw;  // no clearance: its own sentence says it
  const fit::Seating shown = seating(other);
  CHECK(output::answer_of(shown, tolerance::Method::worst).plain ==
        "It does not fit. " + output::say(shown.findings[0], tolerance::Method::worst));
}

TEST_CASE("a seating about which nothing was found has an answer too") {
  fit::Seating nothing;
  nothing.verdict = fit::Verdict::fits;
  CHECK(output::answering(nothing) == nullptr);
  const output::Answer answer = output::answer_of(nothing, tolerance::Method::worst);
  CHECK(answer.sentence == "Nothing stands within reach of the drive.");
  CHECK(answer.plain == "It fits.");
}

TEST_CASE("a customer reads no word of the trade, whatever keeps the drive out") {
  using fit::Code;
  const auto plain = [](fit::Verdict verdict, Code code) {
    fit::Finding finding;
    finding.verdict = verdict;
    finding.kind = fit::Kind::screw;  // any but a clearance
    finding.why = {code,
                   {{"drive", "M.2 card"},
                    {"place", "2.5-inch drive"},
                    {"size", "2230"},
                    {"offered", "2280"},
                    {"key", "M"},
                    {"card keys", "B"},
                    {"plug", "SAS"},
                    {"receptacle", "SATA"},
                    {"by", "air duct"},
                    {"tool", "PH0 driver"},
                    {"wired", "SATA 6 Gb/s"}},
                   {}};
    return output::answer_of(seating(std::move(finding)), tolerance::Method::worst).plain;
  };
  const std::vector<std::string> trade = {"stand-off", "edge", "key ", "receptacle", "SAS",  "PH0",
                                          "Gb/s",      "2230", "`",    "thread",     "stud", "bus"};
  const auto clean = [&](const std::string& text) {
    for (const std::string& word : trade)
      if (text.find(word) != std::string::npos) return false;
    return true;
  };
  for (const Code code :
       {Code::other_form,      Code::adapter_needed,    Code::adapter_passes_not, Code::size_too_long,
        Code::size_too_short,  Code::width_not_held,    Code::half_card,          Code::full_card,
        Code::soldered,        Code::key_meets_not,     Code::slot_too_short,     Code::plug_enters_not,
        Code::plug_dead,       Code::connector_differs, Code::bus_absent,         Code::bus_not_split,
        Code::class_refuses,   Code::hole_reach,        Code::holes_differ,       Code::thread_differs,
        Code::screw_long,      Code::screw_short,       Code::head_through,       Code::connector_off,
        Code::bracket_differs, Code::occupied,          Code::way_blocked,        Code::tool_blocked}) {
    const std::string text = plain(fit::Verdict::does_not_fit, code);
    CAPTURE(text);
    CHECK(text.starts_with("It does not fit. "));
    CHECK(text.size() > 40);
    CHECK(clean(text));
  }
  // What only some builds do is told as that, and what is not known as not known.
  for (const Code code : {Code::hole_reach, Code::screw_long, Code::screw_short, Code::tool_marginal}) {
    const std::string text = plain(fit::Verdict::marginal, code);
    CAPTURE(text);
    CHECK(text.starts_with("It may not fit: whether "));
    CHECK(text.ends_with(" depends on how exactly the parts are made."));
    CHECK(clean(text));
  }
  CHECK(
      plain(fit::Verdict::undecided, Code::way_unsure) ==
      "It could not be settled whether it fits. What is known does not tell whether it passes air duct on its way in.");
  CHECK(plain(fit::Verdict::does_not_fit, Code::other_form) ==
        "It does not fit. The place takes a 2.5-inch drive; this is an M.2 card.");
  // Solids too are called what somebody sees.
  fit::Finding post = gap(fit::Verdict::does_not_fit, -0.4, -0.6, -0.2);
  post.between[0] = post.bodies[0] = "stand-off";
  post.between[1] = "slot socket";
  post.bodies[1] = "edge";
  CHECK(output::answer_of(seating(post), tolerance::Method::worst).plain ==
        "It does not fit: between the post that the card is screwed to and the connector end of slot socket 0.40 mm of "
        "room is missing.");
}
