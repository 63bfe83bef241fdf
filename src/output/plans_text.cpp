#include "output/plans_text.h"

#include "output/answer_words.h"
#include "output/more_words.h"
#include "output/plan_words.h"
#include "output/text.h"
#include "output/words.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace baywright::output {

using fit::Verdict;
using plans::Plan;
using plans::Search;

namespace {

std::string mm(double value) {
  return tolerance::in_words(value);
}

std::string plans_in_words(std::size_t count) {
  return std::to_string(count) + (count == 1 ? " plan" : " plans");
}

/// The first line: what is wrong and how many plans there are.
std::string answer(const Search& search) {
  const std::string head = search.drive + " in " + search.place + ": " + word(search.before.verdict);
  const std::string by =
      search.method == tolerance::Method::worst ? "" : " (limits by " + in_words(search.method) + ")";
  if (search.before.verdict == Verdict::fits) return head + " already" + by + ".";
  const auto fitting = static_cast<std::size_t>(std::count_if(
      search.plans.begin(), search.plans.end(), [](const Plan& plan) { return plan.after.verdict == Verdict::fits; }));
  const std::string stopped = search.whole ? "" : " so far: the search was stopped before all was tried";
  if (fitting > 0)
    return head + by + "; " + plans_in_words(fitting) + (fitting == 1 ? " makes" : " make") + " it fit" + stopped + ".";
  if (!search.plans.empty())
    return head + by + "; no plan makes it fit for sure, " + plans_in_words(search.plans.size()) + " for some builds" +
           stopped + ".";
  return head + by + ", and no plan was found that makes it fit" + stopped + ".";
}

void add_line(std::string& out, const std::string& label, const std::string& text) {
  constexpr std::size_t indent = 13;
  out += padded("    " + label, indent) + wrapped(text, indent) + '\n';
}

void add_plan(std::string& out, const Search& search, const Plan& plan, std::size_t number, bool colour) {
  std::string marks;
  for (const plans::Change& change : plan.changes)
    marks += (marks.empty() ? "" : " + ") + std::string(plans::word(change.kind));
  const std::string lead = padded(std::to_string(number) + ".", 4);
  out += '\n' + lead + (colour ? "\x1b[1m" + marks + "\x1b[0m" : marks) + '\n';
  add_line(out, "do", capital(say(plan)) + '.');
  const bool moved = plan.drive != search.drive || plan.place != search.place;
  add_line(out, "result",
           (moved ? plan.drive + " in " + plan.place + ' ' : "") + say_result(plan, search.method) + '.');
  std::string price;
  std::set<std::string> said;
  for (const plans::Change& change : plan.changes)
    for (const plans::Price each : change.prices)
      if (said.insert(in_words(each)).second) price += (price.empty() ? "" : ", ") + in_words(each);
  const bool money =
      std::find(plan.cautions.begin(), plan.cautions.end(), plans::Caution::money_unknown) != plan.cautions.end();
  if (money) price += (price.empty() ? "" : "; ") + std::string("money not known");
  add_line(out, "price", price.empty() ? "nothing." : price + '.');
  for (const plans::Caution caution : plan.cautions)
    if (caution != plans::Caution::money_unknown) add_line(out, "see to", say(plan, caution));
}

std::string say_tallest(const plans::Tallest& tallest) {
  std::string out = "The tallest heatsink with the same foot that fits is " + down_to_hundredths(tallest.height) +
                    " mm high (now " + mm(tallest.now) + ")";
  if (!tallest.against.empty()) out += ": above, it meets " + tallest.against;
  return out + '.';
}

std::string say_room(const fit::Seating& seating) {
  if (!seating.deciding) return "Nothing of the machine is near.";
  const fit::GapFigures& gap = *seating.findings[*seating.deciding].gap;
  return "Room left beyond what is asked: " + down_to_hundredths(gap.min - gap.asked) + " mm to " +
         subject(seating.findings[*seating.deciding], 1) + ".";
}

}  // namespace

std::string plans_text(const Search& search, const std::optional<plans::Tallest>& tallest, const std::string& file,
                       bool colour) {
  std::string out = wrapped(answer(search), 0) + '\n';
  if (search.before.verdict == Verdict::fits) {
    out += wrapped(say_room(search.before), 0) + '\n';
    if (tallest) out += wrapped(say_tallest(*tallest), 0) + '\n';
  } else if (!search.before.findings.empty()) {
    out += wrapped(answer_of(search.before, search.method).sentence, 0) + '\n';
  }
  for (std::size_t i = 0; i < search.plans.size(); ++i) add_plan(out, search, search.plans[i], i + 1, colour);
  if (search.contradiction) out += '\n' + wrapped(say(*search.contradiction), 0) + '\n';
  out += '\n';
  out += wrapped("Limits: " + in_words(search.method) + ". Clearance asked for: " + mm(search.clearance) +
                     " mm. Each plan was made in the file's text and checked whole: place, way in, tools, neighbours.",
                 0) +
         '\n';
  if (!search.plans.empty())
    out += wrapped("To write one as a new file: baywright plans " + file + " --apply 1 -o NEW.build.toml", 0) + '\n';
  if (search.before.verdict != fit::Verdict::fits)
    out +=
        wrapped("Before you buy, a sheet to measure by: baywright draw " + file + " --measure -o sheet.pdf", 0) + '\n';
  const bool metal = std::any_of(search.plans.begin(), search.plans.end(), [](const Plan& plan) {
    return std::any_of(plan.changes.begin(), plan.changes.end(),
                       [](const plans::Change& change) { return change.kind == plans::Kind::opening; });
  });
  for (const std::string& caution : cautions(false, metal)) out += wrapped(caution, 0) + '\n';
  return out;
}

}  // namespace baywright::output
