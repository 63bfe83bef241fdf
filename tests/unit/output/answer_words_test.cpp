// The answer in a few words: what every picture, drawing and window says of a seating.
#include "output/answer_words.h"

#include "output/words.h"

#include <doctest/doctest.h>
#include <limits>

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
