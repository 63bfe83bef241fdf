#include "output/words.h"

#include "tolerance/reading.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <limits>

namespace baywright::output {

using fit::Code;
using fit::Finding;
using fit::Kind;
using fit::Reason;
using fit::Verdict;

namespace {

std::string mm(double value) {
  return tolerance::in_words(value);
}

/// A figure beside what is asked: hundredths, unless those would hide on which side of it the figure lies.
std::string beside(double value, double asked) {
  const double shown = std::round(value * 100.0) / 100.0;
  const bool hides =
      (value < asked - 1e-9) != (shown < asked - 1e-9) || (value > asked + 1e-9) != (shown > asked + 1e-9);
  return hides ? mm(value) : mm(shown);
}

/// Rounded away from a promise: a need upward, so that what is written is enough.
std::string mm_up(double value) {
  return mm(std::ceil(value * 100.0 - 1e-6) / 100.0);
}

/// Room that is promised is rounded down.
std::string mm_down(double value) {
  return mm(std::max(0.0, std::floor(value * 100.0 + 1e-6) / 100.0));
}

std::string whole(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.0f", value);
  return text;
}

std::string capital(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

std::string with_limits(tolerance::Method method) {
  return method == tolerance::Method::worst ? "in the worst case" : "by root sum square";
}

/// Verbs after a subject: chips are many.
struct Verbs {
  const char* clear;
  const char* stand;
  const char* come;
};
Verbs verbs_of(const Finding& finding) {
  const bool many = finding.bodies[0].starts_with("chips");
  return many ? Verbs{" clear ", " stand ", "come"} : Verbs{" clears ", " stands ", "comes"};
}

std::string say_gap(const Finding& finding, tolerance::Method method) {
  const fit::GapFigures& gap = *finding.gap;
  const std::string a = capital(subject(finding, 0));
  const std::string b = subject(finding, 1);
  const std::string limits = with_limits(method);
  const Verbs verbs = verbs_of(finding);
  const std::string asked = mm(gap.asked) + " asked";
  const double none = 0.0;
  const auto near = [&gap](double value) { return beside(value, gap.asked); };
  const auto deep = [](double value) { return beside(-value, 0.0); };
  if (!finding.verdict || *finding.verdict == Verdict::fits)
    return a + verbs.clear + b + " by " + near(gap.nominal) + " mm, " + near(gap.min) + " " + limits + "; " + asked +
           ", " + mm_down(gap.min - gap.asked) + " to spare.";
  if (*finding.verdict == Verdict::undecided)
    return "It could not be settled whether " + subject(finding, 0) + verbs.clear + b + " (about " + near(gap.nominal) +
           " mm).";
  const bool open = !std::isfinite(gap.min);
  const std::string left_open = "how near at worst is left open by a length known on one side only";
  if (gap.nominal < none) {
    // Where no distance is known to mend it, say which way the figure is measured: it is the shortest way out.
    const std::string along = direction_words(finding.toward);
    const bool say_way = finding.why.word("needs").empty() && along.size() == 2;
    const std::string way = say_way ? " (along " + along.substr(1) + ", the shortest way out)" : "";
    std::string text = a + verbs.stand + deep(gap.nominal) + " mm into " + b + way + ", " +
                       (open ? left_open : deep(gap.min) + " " + limits);
    if (*finding.verdict == Verdict::does_not_fit)
      return text + (gap.asked > none ? "; no build clears the " + mm(gap.asked) + " asked." : "; no build clears it.");
    return text + (gap.asked > none ? ", yet some builds clear it by the " + mm(gap.asked) + " asked."
                                    : ", yet some builds clear it.");
  }
  const std::string least = open             ? left_open
                            : gap.min < none ? std::string(verbs.stand).substr(1) + deep(gap.min) + " into it " + limits
                                             : std::string(verbs.come) + " as near as " + near(gap.min) + " " + limits;
  if (*finding.verdict == Verdict::marginal)
    return a + verbs.clear + b + " by " + near(gap.nominal) + " mm, but " + least + "; " + asked + ".";
  return a + verbs.clear + b + " by only " + near(gap.nominal) + " mm and never by the " + mm(gap.asked) + " asked; " +
         (open                                ? ""
          : verbs.come == std::string("come") ? "they "
                                              : "it ") +
         least + ".";
}

/// The first few, and how many more.
std::string list(const Reason& why) {
  constexpr std::size_t most = 6;
  std::string out;
  for (std::size_t i = 0; i < std::min(most, why.words.size()); ++i) out += (i == 0 ? "" : ", ") + why.words[i].second;
  if (why.words.size() > most) out += " and " + std::to_string(why.words.size() - most) + " more";
  return out;
}

}  // namespace

std::string word(Verdict verdict) {
  switch (verdict) {
    case Verdict::fits:
      return "fits";
    case Verdict::marginal:
      return "marginal";
    case Verdict::undecided:
      return "undecided";
    case Verdict::does_not_fit:
      return "does not fit";
  }
  return {};
}

std::string word(fit::Answer answer) {
  switch (answer) {
    case fit::Answer::yes:
      return "yes";
    case fit::Answer::with_adapter:
      return "with adapter";
    case fit::Answer::no:
      return "no";
  }
  return {};
}

std::string word(Kind kind) {
  switch (kind) {
    case Kind::form_factor:
      return "form factor";
    case Kind::interface:
      return "interface";
    case Kind::bus:
      return "bus";
    case Kind::length:
      return "length";
    case Kind::height_class:
      return "height class";
    case Kind::clearance:
      return "clearance";
    case Kind::link:
      return "link";
    case Kind::compression:
      return "compression";
    case Kind::role:
      return "role";
    case Kind::exact:
      return "exact";
    case Kind::needs:
      return "needs";
    case Kind::seating:
      return "seating";
    case Kind::host:
      return "host";
  }
  return {};
}

std::string word(tolerance::Method method) {
  return method == tolerance::Method::worst ? "worst" : "rss";
}

std::string in_words(tolerance::Method method) {
  return method == tolerance::Method::worst ? "worst case" : "root sum square";
}

std::string subject(const Finding& finding, std::size_t which) {
  const std::string& part = finding.between[which];
  const std::string& body = finding.bodies[which];
  if (body == "chips" || body == "chips underneath" || body == "edge") return "the " + body + " of " + part;
  if (body == "ledge") return "the ledge of " + part;
  return part;
}

std::string say(const Reason& why) {
  const auto w = [&why](const char* name) { return why.word(name); };
  const auto f = [&why](const char* name) { return why.figure(name); };
  switch (why.code) {
    case Code::same_form:
      return "The place takes an " + w("form") + ".";
    case Code::other_form:
      return "This is a " + w("drive") + "; the place takes an " + w("place") + ".";
    case Code::size_offered:
      return "The slot has a stand-off for a " + w("size") + " card.";
    case Code::size_too_long:
      return "The card is a " + w("size") + ", longer than the slot holds: it offers " + w("offered") + ".";
    case Code::size_too_short:
      return "The card is a " + w("size") + "; the slot offers " + w("offered") +
             ", so it needs a length extender to reach a stand-off.";
    case Code::width_not_held:
      return "The card is a " + w("size") + ", of another width than the slot holds: it offers " + w("offered") + ".";
    case Code::soldered:
      return "It is soldered to the board that it came on and cannot be moved.";
    case Code::key_meets:
      return "The card's edge, key " + w("card keys") + ", has the notch for the socket's key " + w("key") + ".";
    case Code::key_meets_not:
      return "The socket's key " + w("key") + " meets no notch: the card's edge has key " + w("card keys") + ".";
    case Code::slot_takes_card:
      return "An " + w("card") + " card goes into the " + w("body") + " slot.";
    case Code::slot_too_short:
      return "An " + w("card") + " card does not go into the " + w("body") + " slot, which is closed at its end.";
    case Code::slot_open:
      return "An " + w("card") + " card goes into the " + w("body") + " slot, which is open at its end.";
    case Code::connector_differs:
      return "The plug of a " + w("drive") + " does not go into the connector for an " + w("place") + ".";
    case Code::bus_full:
      return "The slot carries " + w("link") + " (" + whole(f("link rate")) + " MB/s), all that the drive can use.";
    case Code::bus_slower:
      return "It runs at " + w("link") + ": " + percent(f("share")) + " of what the drive's own " + w("drive") +
             " could carry (" + whole(f("link rate")) + " of " + whole(f("drive rate")) + " MB/s).";
    case Code::bus_absent:
      return "The drive speaks " + w("drive") + "; the slot is wired for " + w("wired") + " only.";
    case Code::bus_with_interface:
      return "For a " + w("drive") + " the plug is the bus too: one answer to both.";
    case Code::class_refuses:
      return "A socket of class " + w("class") + " does not take a card of height " + w("code") +
             ": its underside has no room.";
    case Code::pad_loose:
      return "The pad is pressed by " + percent(f("compressed")) + ", less than the usual " + percent(f("least")) +
             ": it may not touch everywhere.";
    case Code::pad_tight:
      return "The pad is pressed by " + percent(f("compressed")) + ", more than the usual " + percent(f("most")) +
             ": silicone pads bleed oil there.";
    case Code::cache_module:
      return "This is a cache module: it speeds another drive up and is no place for files of its own.";
    case Code::taken_as_exact:
      return "Taken as exact, since no limits and no tool were given: " + list(why) + ".";
    case Code::needs_distance:
      return capital(w("dimension")) + " needs at least " + mm_up(f("distance")) + " mm, at its own lower limit.";
    case Code::not_modelled:
      return "How an " + w("form") + " stands in its slot is not modelled yet; only the three questions are answered.";
    case Code::parts_overlap:
      return "In this build " + w("a") + " and " + w("b") + " run " + mm(f("depth")) +
             " mm into each other: check the measures.";
    case Code::gap:
      return {};
  }
  return {};
}

std::string say(const Finding& finding, tolerance::Method method) {
  return finding.gap ? say_gap(finding, method) : say(finding.why);
}

std::string say_need(const Finding& finding) {
  std::string out;
  const std::string part = finding.why.word("needs");
  if (!part.empty())
    out = "For a sure fit " + part + " must be at least " + mm_up(finding.why.figure("needs")) +
          " mm, its limits as they are.";
  const std::string measure = finding.why.word("settle");
  if (!measure.empty())
    out += (out.empty() ? "" : " ") + std::string("Knowing ") + measure + " to ±" +
           mm(std::floor(finding.why.figure("settle") * 100.0) / 100.0) + " would settle it, if it stays as it is.";
  return out;
}

std::string percent(double share) {
  double shown = 100.0 * share;
  if (share < 1.0) shown = std::min(shown, 99.9);
  if (share > 0.0) shown = std::max(shown, 0.1);
  char text[32];
  std::snprintf(text, sizeof text, std::abs(shown - std::round(shown)) < 0.05 ? "%.0f %%" : "%.1f %%", shown);
  return text;
}

std::string direction_words(const geometry::Vec3& toward) {
  static const char* const names[3][2] = {{"-x", "+x"}, {"-y", "+y"}, {"-z", "+z"}};
  for (int axis = 0; axis < 3; ++axis)
    if (std::abs(toward[axis]) > 0.9999) return names[axis][toward[axis] > 0.0 ? 1 : 0];
  return "(" + mm(toward.x) + ", " + mm(toward.y) + ", " + mm(toward.z) + ")";
}

}  // namespace baywright::output
