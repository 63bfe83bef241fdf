#include "output/words.h"

#include "output/more_words.h"
#include "parts/form.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <limits>

namespace baywright::output {

using fit::Code;
using fit::Finding;
using fit::Kind;
using fit::Reason;
using fit::Verdict;

std::string capital(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

std::string in_hundredths(double mm) {
  return tolerance::in_words(std::round(mm * 100.0) / 100.0);
}

std::string down_to_hundredths(double mm) {
  return tolerance::in_words(std::floor(mm * 100.0 + 1e-6) / 100.0);
}

std::string up_to_hundredths(double mm) {
  return tolerance::in_words(std::ceil(mm * 100.0 - 1e-6) / 100.0);
}

std::string in_words(const build::Screw& screw) {
  const double rounded = std::round(screw.length);
  return screw.thread + " x " +
         (std::abs(screw.length - rounded) < 1e-9 ? std::to_string(std::lround(rounded))
                                                  : tolerance::in_words(screw.length));
}

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
  return up_to_hundredths(value);
}

/// Room that is promised is rounded down.
std::string mm_down(double value) {
  return down_to_hundredths(std::max(0.0, value));
}

/// "6", "4.76": a length as shops name it.
std::string whole_or_not(double value) {
  const double rounded = std::round(value);
  return std::abs(value - rounded) < 1e-9 ? std::to_string(std::lround(rounded)) : mm(value);
}

std::string whole(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.0f", value);
  return text;
}

/// "100,000".
std::string count_in_words(std::int64_t count) {
  std::string text = std::to_string(count);
  for (std::size_t at = text.size(); at > 3; at -= 3) text.insert(at - 3, ",");
  return text;
}

std::string with_limits(tolerance::Method method) {
  switch (method) {
    case tolerance::Method::worst:
      return "in the worst case";
    case tolerance::Method::rss:
      return "by root sum square";
    case tolerance::Method::sampled:
      break;
  }
  return "once in 740 builds";  // the 0.135 % point
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
      return text + "; " + (finding.share.value_or(0.0) > 0.0 ? "hardly any" : "no") + " build clears " +
             (gap.asked > none ? "the " + mm(gap.asked) + " asked." : "it.");
    return text + (gap.asked > none ? ", yet some builds clear it by the " + mm(gap.asked) + " asked."
                                    : ", yet some builds clear it.");
  }
  const std::string least = open             ? left_open
                            : gap.min < none ? std::string(verbs.stand).substr(1) + deep(gap.min) + " into it " + limits
                                             : std::string(verbs.come) + " as near as " + near(gap.min) + " " + limits;
  if (*finding.verdict == Verdict::marginal)
    return a + verbs.clear + b + " by " + near(gap.nominal) + " mm, but " + least + "; " + asked + ".";
  return a + verbs.clear + b + " by only " + near(gap.nominal) + " mm and " +
         (finding.share.value_or(0.0) > 0.0 ? "hardly ever" : "never") + " by the " + mm(gap.asked) + " asked; " +
         (open                                ? ""
          : verbs.come == std::string("come") ? "they "
                                              : "it ") +
         least + ".";
}

/// As a sentence of its own: a capital in front and a stop behind.
std::string sentence(const std::string& text) {
  return capital(text) + (text.ends_with('.') ? "" : ".");
}

/// The first few, and how many more.
/// All facts of that name, in their order.
std::string list(const Reason& why, std::string_view name) {
  constexpr std::size_t most = 6;
  std::string out;
  std::size_t count = 0;
  for (const auto& [each, word] : why.words)
    if (each == name && ++count <= most) out += (count == 1 ? "" : ", ") + word;
  if (count > most) out += " and " + std::to_string(count - most) + " more";
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
    case Kind::holes:
      return "holes";
    case Kind::screw:
      return "screw";
    case Kind::connector:
      return "connector";
    case Kind::bracket:
      return "bracket";
    case Kind::occupied:
      return "occupied";
    case Kind::cover:
      return "cover";
    case Kind::insertion:
      return "insertion";
    case Kind::access:
      return "access";
    case Kind::mesh:
      return "mesh";
    case Kind::drawing:
      return "drawing";
    case Kind::insulation:
      return "insulation";
    case Kind::sheet:
      return "sheet";
    case Kind::standoff:
      return "stand-off";
  }
  return {};
}

std::string word(tolerance::Method method) {
  switch (method) {
    case tolerance::Method::worst:
      return "worst";
    case tolerance::Method::rss:
      return "rss";
    case tolerance::Method::sampled:
      break;
  }
  return "sampled";
}

std::string in_words(tolerance::Method method) {
  switch (method) {
    case tolerance::Method::worst:
      return "worst case";
    case tolerance::Method::rss:
      return "root sum square";
    case tolerance::Method::sampled:
      break;
  }
  return "sampled";
}

std::string in_words(const fit::Sampling& sampling) {
  return "sampled: " + count_in_words(sampling.builds) + (sampling.builds == 1 ? " build" : " builds") + ", seed " +
         std::to_string(sampling.seed);
}

std::string share_in_words(const fit::Seating& seating, const fit::Sampling& sampling) {
  constexpr double almost_all = 0.9999;  // some builds do not fit, however few: rounding must not say otherwise
  if (!seating.share) return {};
  const double share = *seating.share;
  if (!seating.sure)
    return seating.verdict == Verdict::marginal ? percent(std::min(share, almost_all)) + " of builds fit" : "";
  const auto [low, high] = *seating.sure;
  if (low == 1.0) return "even in the worst case";
  if (high == 0.0) return {};
  // As many decimals as the interval is worth; it is rounded outward.
  const int decimals = std::clamp(static_cast<int>(std::ceil(-std::log10(100.0 * (high - low)))), 1, 6);
  const double unit = std::pow(10.0, decimals);
  const auto figure = [decimals](double percents) {
    char text[32];
    std::snprintf(text, sizeof text, "%.*f", decimals, percents);
    return std::string(text);
  };
  const std::string from = figure(std::floor(100.0 * low * unit) / unit);
  const std::string to = figure(std::ceil(100.0 * high * unit) / unit);
  const std::string drawn = count_in_words(sampling.builds) + " drawn";
  if (share == 1.0) return "all of " + drawn + " fit (at least " + from + " % of builds do, 95 % sure)";
  if (share == 0.0) return "none of " + drawn + " fits (at most " + to + " % of builds do, 95 % sure)";
  const double shown = std::clamp(std::round(100.0 * share * unit) / unit, 1.0 / unit, 100.0 - 1.0 / unit);
  return figure(shown) + " % of builds fit (" + from + " to " + to + " %, 95 % sure)";
}

std::string subject(const Finding& finding, std::size_t which) {
  const std::string& part = finding.between[which];
  const std::string& body = finding.bodies[which];
  if (body == "chips" || body == "chips underneath" || body == "edge") return "the " + body + " of " + part;
  static const std::array<std::string_view, 10> said = {
      "ledge", "left wall", "right wall", "roof",       "end",
      "rear",  "bracket",   "tab",        "components", "tongue past the slot"};
  if (std::find(said.begin(), said.end(), body) != said.end()) return "the " + body + " of " + part;
  return part;
}

namespace {

/// "an M.2 card".
std::string with_article(const std::string& word) {
  return parts::article(word) + ' ' + word;
}

std::string say_question(const Reason& why) {
  const auto w = [&why](const char* name) { return why.word(name); };
  const auto f = [&why](const char* name) { return why.figure(name); };
  switch (why.code) {
    case Code::same_form:
      return "The place takes " + with_article(w("form")) + ".";
    case Code::other_form:
      if (!w("worn").empty())
        return "In " + w("worn") + " it is as large as " + with_article(w("drive")) + "; the place takes " +
               with_article(w("place")) + ".";
      return "This is " + with_article(w("drive")) + "; the place takes " + with_article(w("place")) + ".";
    case Code::adapter_needed:
      return "This is " + with_article(w("drive")) + "; the place takes " + with_article(w("place")) +
             ". It would go in with " + w("adapter") + ".";
    case Code::adapter_passes_not:
      return "The drive speaks " + w("drive") + ", and " + w("adapter") + " does not pass that on. " + w("cannot");
    case Code::size_offered:
      return "The slot has a stand-off for " + with_article(w("size")) + " card.";
    case Code::size_too_long:
      return "The card is a " + w("size") + ", longer than the slot holds: it offers " + w("offered") + ".";
    case Code::size_too_short:
      return "The card is a " + w("size") + "; the slot offers " + w("offered") +
             ", so it needs a length extender to reach a stand-off.";
    case Code::width_not_held:
      return "The card is a " + w("size") + ", of another width than the slot holds: it offers " + w("offered") + ".";
    case Code::half_card:
      return "The card is of half length and the socket has posts for full ones only: it needs a bracket that carries "
             "its holes " +
             mm(f("farther")) + " mm farther.";
    case Code::full_card:
      return "The card is of full length; the socket has posts for half ones only.";
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
    case Code::one_connector:
      return "All of this form have one connector.";
    case Code::plug_enters:
      if (w("plug") == w("receptacle")) return "The drive's " + w("plug") + " plug goes into the receptacle.";
      return "The drive's " + w("plug") + " plug goes into the receptacle, " + w("receptacle") + ". " +
             sentence(w("why"));
    case Code::plug_enters_not:
      return "The drive's " + w("plug") + " plug does not go into the receptacle, " + w("receptacle") + ". " +
             sentence(w("why"));
    case Code::plug_dead:
      return "The drive's " + w("plug") + " plug stays dead in the receptacle, " + w("receptacle") + ". " +
             sentence(w("why"));
    case Code::connector_differs:
      return "The plug of " + with_article(w("drive")) + " does not go into the connector for " +
             with_article(w("place")) + ".";
    case Code::bus_full:
      return "The place carries " + w("link") + " (" + whole(f("link rate")) + " MB/s), all that the drive can use.";
    case Code::bus_slower:
      return "It runs at " + w("link") + ": " + percent(f("share")) + " of what the drive's own " + w("drive") +
             " could carry (" + whole(f("link rate")) + " of " + whole(f("drive rate")) + " MB/s).";
    case Code::bus_absent:
      return "The drive speaks " + w("drive") + "; the place is wired for " + w("wired") + " only.";
    case Code::bus_not_split:
      return "This is card " + whole(f("position")) +
             " of its carrier, and the host does not split the slot so far (`splits`): it stays unseen.";
    case Code::bus_with_interface:
      return "Where the plug does not go in, nothing is carried.";
    default:
      return {};
  }
}

/// A length as shops sell it: inch screws by fractions.
std::string sold(const std::string& thread, double length) {
  if (thread.starts_with('M')) return in_hundredths(length) + " mm";
  const auto sixteenths = static_cast<int>(std::lround(length / 25.4 * 16.0));
  int above = sixteenths;
  int below = 16;
  while (above % 2 == 0 && below > 1) above /= 2, below /= 2;
  return std::to_string(above) + (below > 1 ? "/" + std::to_string(below) : "") + " in (" + in_hundredths(length) +
         " mm)";
}

/// `verdict`: of the finding, none for a note. `worst`: the gap's lower limit.
std::string say_screw(const Reason& why, const std::optional<Verdict>& verdict, double worst,
                      tolerance::Method method) {
  const auto w = [&why](const char* name) { return why.word(name); };
  const auto f = [&why](const char* name) { return why.figure(name); };
  const std::string in = capital(w("what")) + ' ' + w("thread") + ", " + in_hundredths(f("length")) +
                         " long, reaches " + in_hundredths(std::max(0.0, f("in"))) + " mm into " + w("into");
  std::string buy;
  const bool same = std::abs(f("buy") - f("length")) < 0.05;  // it is the sheet that is not known well enough
  if (w("what") == "screw" && !same)
    buy = f("buy") > 0.0 ? " Buy " + sold(w("thread"), f("buy")) + "."
                         : " None of the usual lengths is right here: another sheet or a washer between would help.";
  if (w("what") == "stud") buy = " Spacers with a screw through them would do, or a shorter stud.";
  const bool fits = verdict == Verdict::fits;
  const std::string some =
      verdict == Verdict::marginal ? ", and " + with_limits(method) + " it is " + in_hundredths(-worst) + " wrong" : "";
  switch (why.code) {
    case Code::screw_long:
      if (fits) return in + "; " + in_hundredths(f("most")) + " is the most.";
      return in +
             (f("in") > f("most") ? ", " + in_hundredths(f("in") - f("most")) + " more than the " : ", near the ") +
             in_hundredths(f("most")) + " that its thread is sure to have" + some + "." + buy;
    case Code::screw_short:
      if (fits) return in + ", at least the two threads (" + in_hundredths(f("least")) + " mm) that hold.";
      return in + (f("in") < f("least") ? ", less than" : ", near") + " the two threads (" + in_hundredths(f("least")) +
             " mm) that hold" + some + "." + buy;
    case Code::screw_near:
      return in + ": one maker allows " + in_hundredths(f("warned")) + " only, the standard more.";
    default:
      return {};
  }
}

/// A hole of a panel and the sheet round it.
std::string say_sheet(const Reason& why) {
  const auto w = [&why](const char* name) { return why.word(name); };
  const auto f = [&why](const char* name) { return why.figure(name); };
  const std::string more =
      f("count") > 1.0 ? " So it is with " + whole(f("count") - 1.0) + " more of the place's holes." : "";
  const std::string hole = "Hole " + whole(f("hole"));
  const std::string other = w("of").empty() ? '`' + w("own") + "` that " + w("part") + " has"
                                            : "hole " + whole(f("other")) + " of " + w("of");
  switch (why.code) {
    case Code::hole_off_sheet:
      return hole + " lies " + w("where") + ' ' + w("part") + ": there is no sheet for its screw." + more;
    case Code::sheet_differs:
      return "The file has " + in_hundredths(f("sheet")) + " mm of sheet at the holes, and " + w("part") + " is " +
             in_hundredths(f("thickness")) + " mm thick, but for what stands on it: measure there.";
    case Code::hole_drilled_up:
      return hole + " is there already, " + in_hundredths(f("there")) + " mm across: drill it up to " +
             in_hundredths(f("asked")) + '.' + more;
    case Code::hole_breaks_out:
      return hole + " is " + in_hundredths(f("edge")) + " mm from an edge of " + w("part") +
             (f("left") < 0.0 ? " and breaks out of it" : " and may break out of it") + "; two diameters, " +
             in_hundredths(f("asked")) + ", are the rule (common practice)." + more;
    case Code::hole_near_edge:
      return hole + " is " + in_hundredths(f("edge")) + " mm from an edge of " + w("part") +
             ", less than two diameters (" + in_hundredths(f("asked")) +
             "; common practice): the sheet may tear or bulge there." + more;
    case Code::holes_meet:
      return hole + " and " + other +
             (f("web") < 0.0 ? " overlap by " + in_hundredths(-f("web"))
                             : " leave " + in_hundredths(f("web")) + " of sheet and may run into each other") +
             " mm; two thicknesses between them, " + in_hundredths(f("asked")) + ", are the rule (common practice)." +
             more;
    case Code::holes_near:
      return hole + " leaves " + in_hundredths(f("web")) + " mm of sheet to " + other +
             ", less than two thicknesses (" + in_hundredths(f("asked")) + "; common practice)." + more;
    default:
      return {};
  }
}

/// A hole near a bend.
std::string say_bend(const Finding& finding, tolerance::Method method) {
  const Reason& why = finding.why;
  const fit::GapFigures& gap = *finding.gap;
  const double count = why.figure("count");
  return "Hole " + whole(why.figure("hole")) +
         (gap.nominal < 0.0 ? " runs " + in_hundredths(-gap.nominal) + " mm into a bend of "
                            : " is " + in_hundredths(gap.nominal) + " mm from a bend of ") +
         why.word("part") +
         (gap.min < gap.nominal - 1e-9 ? ", " + in_hundredths(gap.min) + ' ' + with_limits(method) : "") +
         "; the rule is two thicknesses and the radius inside, " + in_hundredths(gap.asked) +
         " from the hole's edge (common practice" +
         (why.word("inside") == "taken" ? "; radius not said, taken as one thickness" : "") +
         "): it is drawn out of round when the sheet is bent." +
         (count > 1.0 ? " So it is with " + whole(count - 1.0) + " more of the place's holes." : "");
}

/// The screw from outside into a threaded stand-off. `worst`: the gap's lower limit.
std::string say_outer(const Reason& why, const std::optional<Verdict>& verdict, double worst,
                      tolerance::Method method) {
  const auto f = [&why](const char* name) { return why.figure(name); };
  if (why.code == Code::outer_screw_unsaid)
    return "The screw " + why.word("thread") +
           " from outside into each stand-off was not checked: give it as `outside`.";
  const std::string in = "The screw " + why.word("thread") + " x " + whole_or_not(f("length")) + " from outside goes " +
                         in_hundredths(std::max(0.0, f("in"))) + " mm into its stand-off";
  const bool deep = why.code == Code::outer_screw_long;
  const std::string asked = deep ? in_hundredths(f("most")) + ", where its stud begins at the latest"
                                 : "the two threads (" + in_hundredths(f("least")) + " mm) that hold";
  if (verdict == Verdict::fits) return in + (deep ? "; less than " : ", at least ") + asked + ".";
  return in +
         (verdict == Verdict::marginal ? ", near "
          : deep                       ? ", more than "
                                       : ", less than ") +
         asked +
         (verdict == Verdict::marginal ? ", and " + with_limits(method) + " it is " + in_hundredths(-worst) + " wrong"
                                       : "") +
         "." +
         (f("buy") > 0.0 ? " Buy " + in_hundredths(f("buy")) + " mm." : " None of the usual lengths is right here.");
}

std::string say_fixing(const Reason& why) {
  const auto w = [&why](const char* name) { return why.word(name); };
  const auto f = [&why](const char* name) { return why.figure(name); };
  switch (why.code) {
    case Code::holes_differ:
      return "The holes do not meet: " + whole(f("met")) + " of the place's " + whole(f("asked")) + " have a " +
             w("kind") + " hole of " + w("drive") + " behind them" +
             (f("nearest") > 0.0 ? "; the nearest is " + in_hundredths(f("nearest")) + " mm off." : ".");
    case Code::holes_optional:
      return "The place uses " + w("kind") + " holes that not every such drive has (" + w("rows") +
             "): look at the drive, and list what it has under `rows`.";
    case Code::holes_unused:
      return whole(f("met")) + " of the place's " + whole(f("asked")) + " holes meet one of the drive's.";
    case Code::holes_one_row:
      return "Only " + whole(f("met")) + " of the place's " + whole(f("asked")) +
             " holes meet one of the drive's, all in " + w("row") + ": on one row of screws it can swing.";
    case Code::thread_differs:
      return "The screw is " + w("screw") + " and the drive's holes are " + w("drive") +
             ": it strips the thread or does not enter it.";
    case Code::screw_unjudged:
      return "How deep a screw may go into " + w("into") +
             " is in no table that could be read: its length is not judged.";
    case Code::screw_unsaid:
      return "How deep the " + w("what") + " " + w("thread") +
             " goes was not checked, since its length is not said: give it as `length`.";
    case Code::head_through:
      return "The head of a " + w("thread") + " screw is " + in_hundredths(f("head")) + " across and the hole " +
             in_hundredths(f("hole")) + ": put a washer under it, or drill smaller.";
    case Code::connector_off:
      return "The connector stands " + in_hundredths(f("off")) + " mm " + w("axis") +
             " where the receptacle is, which is fixed to the machine; it may be " + in_hundredths(f("allowed")) +
             " off.";
    case Code::bracket_differs:
      return "The card has a " + w("drive") + " bracket, whose tab is " + in_hundredths(f("tab")) +
             " mm over the board; the machine's "
             "rail for " +
             w("place") + " brackets is at " + in_hundredths(f("rail")) +
             ". Change the bracket, if its maker gives one.";
    case Code::bracket_missing:
      return "Without a bracket nothing holds the card but its slot.";
    default:
      return say_screw(why, std::nullopt, 0.0, tolerance::Method::worst);
  }
}

}  // namespace

std::string say(const Reason& why) {
  const auto w = [&why](const char* name) { return why.word(name); };
  const auto f = [&why](const char* name) { return why.figure(name); };
  switch (why.code) {
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
      return "Taken as exact, since no limits and no tool were given: " + list(why, "length") + ".";
    case Code::passed_over:
      return "The outline of " + w("part") + ", " + w("file") + ", also holds " + list(why, "what") +
             ": not understood and left out. See whether it belongs to the part.";
    case Code::bare_near:
      return "The underside of " + w("what") + " comes within " + mm(std::round(f("gap") * 100.0) / 100.0) + " mm of " +
             w("metal") + ": if that is metal, put an insulating film between them (under " + mm(f("least")) +
             " mm: common practice, no source).";
    case Code::needs_length:
    case Code::needs_nothing:
    case Code::needs_none:
      return say_length(why);
    case Code::height_unknown:
      return "How high this " + w("form") + " is was not said: name its height, or measure it and give `height`.";
    case Code::parts_overlap:
      return "In this build " + w("a") + " and " + w("b") + " run " + mm(f("depth")) + " mm into each other" +
             (f("worst") > f("depth") + 1e-9 ? ", " + mm_up(f("worst")) + " at the limits" : "") +
             ": check the measures.";
    case Code::parts_may_meet:
      return "In this build " + w("a") + " and " + w("b") +
             (f("depth") < 0.0 ? " are " + in_hundredths(-f("depth")) + " mm apart" : " touch") + ", and run up to " +
             mm_up(f("worst")) + " mm into each other at the limits: measure them closer, or fit one to the other.";
    case Code::part_screw_short:
      return "A screw " + w("thread") + " x " + whole_or_not(f("length")) + " passes " + w("part") +
             (f("spacers") > 0.0 ? " and its spacers of " + mm(f("spacers")) + " mm and" : " and") + " goes " +
             in_hundredths(std::max(0.0, f("in"))) + " mm into its thread, less than one diameter (" +
             in_hundredths(f("least")) + " mm), which rules of thumb ask of steel.";
    case Code::occupied:
      return "The place is taken by " + w("by") + ".";
    case Code::cover_stays:
      if (w("what").empty()) return "The slot's own cover goes back on: nothing of the drive comes near it.";
      return "The slot's own cover goes back on: between it and " + w("what") + " are " + in_hundredths(f("least")) +
             " to " + in_hundredths(f("most")) + " mm, for a pad of its own.";
    case Code::cover_off:
      return "The slot's own cover stays off: " + w("what") + " stands up to " + in_hundredths(-f("least")) +
             " mm in its way.";
    case Code::adapter_worn:
      return capital(w("adapter")) + ". It adds " + w("adds") + ". " + w("cannot");
    case Code::gap:
      return {};
    default:
      break;
  }
  if (why.code == Code::outer_screw_unsaid) return say_outer(why, std::nullopt, 0.0, tolerance::Method::worst);
  for (const auto& words : {say_question, say_way, say_access, say_mesh, say_sheet})
    if (std::string said = words(why); !said.empty()) return said;
  return say_fixing(why);
}

namespace {

/// Whether two holes of the place meet two of the drive, and which hole would be wide enough.
std::string say_reach(const Finding& finding, tolerance::Method method) {
  const fit::GapFigures& gap = *finding.gap;
  const double play = finding.why.figure("play");
  const double off = finding.why.figure("off");
  const std::string axis = finding.why.word("axis");
  const std::string head = (axis == "in height" ? "In height" : capital(axis) + " the drive") + " the holes are " +
                           (off < 0.005 ? "where its own are" : in_hundredths(off) + " mm off its own") +
                           "; the screws have " + in_hundredths(play) + " mm of play";
  const bool pairs = finding.why.figure("pairs") > 0.0;
  const double sure = finding.why.figure("sure");
  if (*finding.verdict == Verdict::fits)
    return head + ", and " + mm_down(gap.min) + " is left " + with_limits(method) +
           (pairs && finding.why.figure("hole") < sure - 1e-9
                ? ", each axis by itself; where both may be off at once, a hole of " + mm_up(sure) + " mm is sure."
                : ".");
  const std::string wider = " Holes of " + mm_up(sure) + " mm with washers, or slots, would be sure" +
                            (pairs ? ", off along both axes at once too." : ".");
  if (*finding.verdict == Verdict::does_not_fit) return head + ", too little." + wider;
  return head + ", " + in_hundredths(-gap.min) + " too little " + with_limits(method) + "." + wider;
}

}  // namespace

std::string say(const Finding& finding, tolerance::Method method) {
  if (!finding.drawn) method = tolerance::chain_method(method);
  if (finding.gap && finding.why.code == Code::hole_near_bend) return say_bend(finding, method);
  if (finding.gap && finding.kind == Kind::standoff)
    return say_outer(finding.why, finding.verdict, finding.gap->min, method);
  if (finding.gap && finding.why.code == Code::hole_reach) return say_reach(finding, method);
  if (finding.gap && finding.kind == Kind::screw && finding.why.code != Code::head_through)
    return say_screw(finding.why, finding.verdict, finding.gap->min, method);
  return finding.gap && finding.why.code == Code::gap ? say_gap(finding, method) : say(finding.why);
}

std::string say_need(const Finding& finding) {
  std::string out;
  const std::string part = finding.why.word("needs");
  if (!part.empty())
    out = "For a sure fit " + part + " must be at least " + mm_up(finding.why.figure("needs")) +
          " mm, its limits as they are.";
  return out;
}

std::vector<std::string> cautions(bool drills, bool files) {
  std::vector<std::string> out;
  if (files)
    out.emplace_back(
        "Before you file or cut: boards and drives out of the case, eye protection on, keep off copper; leave no "
        "dust.");
  if (drills)
    out.emplace_back(
        "Before you drill: boards and drives out of the case, eye protection on; deburr, and leave no chips behind.");
  out.emplace_back("Before you fit anything: power off, unplug, disconnect the battery, touch bare metal first.");
  return out;
}

std::string percent(double share) {
  if (share > 0.0 && share < 0.001) return "fewer than 0.1 %";
  double shown = 100.0 * share;
  if (share < 1.0) shown = std::min(shown, 99.9);
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

std::string size_words(const geometry::Bounds& box) {
  const geometry::Vec3 size = box.high - box.low;
  std::array<double, 3> sides = {size.x, size.y, size.z};
  std::sort(sides.begin(), sides.end());
  std::string out;
  for (const double side : sides)
    out += (out.empty() ? "" : " x ") + tolerance::in_words(std::round(side * 100.0) / 100.0);
  return out + " mm";
}

}  // namespace baywright::output
