// For the curious, in English whatever the page's language: the figures with their sources.
#include "output/heat_words.h"
#include "output/plan_words.h"
#include "output/report_pieces.h"
#include "output/text.h"
#include "output/value_words.h"
#include "output/words.h"
#include "tolerance/reading.h"
#include "tolerance/stack.h"

#include <algorithm>
#include <cmath>

namespace baywright::output {

namespace {

std::string paragraph(const std::string& words) {
  return element("p", "", html(words));
}

std::string limit(double value) {
  return std::isfinite(value) ? tolerance::in_words(value) : std::string("open");
}

std::string questions(const fit::Seating& seating) {
  std::string rows;
  const std::pair<const char*, const fit::Question*> asked[] = {{"form factor", &seating.questions.form_factor},
                                                                {"interface", &seating.questions.interface},
                                                                {"bus", &seating.questions.bus}};
  for (const auto& [name, question] : asked)
    rows += element("tr", "",
                    element("th", " scope=\"row\"", name) + element("td", "", html(word(question->answer))) +
                        element("td", "", html(named(say(question->why)))));
  return wide(
      "The three questions",
      element("table", "",
              element("caption", "", "The three questions of the drive at its place") +
                  element("thead", "",
                          element("tr", "",
                                  "<th scope=\"col\">Question</th><th scope=\"col\">Answer</th><th scope=\"col\">Why"
                                  "</th>")) +
                  element("tbody", "", rows)));
}

std::string chain(const fit::Finding& finding, tolerance::Method method) {
  std::string rows;
  double whole = 0.0;
  for (const fit::ChainLink& link : finding.chain) whole += weight(link, method);
  for (const fit::ChainLink& link : finding.chain) {
    char times[16];
    std::snprintf(times, sizeof times, "%+.3f", link.sensitivity);
    const tolerance::Dimension& d = link.dimension;
    rows += element("tr", "",
                    element("th", " scope=\"row\"", html(named(d.name))) +
                        element("td", " class=\"number\"", html(tolerance::in_words(d))) +
                        element("td", " class=\"number\"", times) +
                        element("td", " class=\"number\"",
                                whole > 0.0 ? html(percent(weight(link, method) / whole)) : std::string("-")) +
                        element("td", "", html(named(d.source.empty() ? "no source given" : d.source))) +
                        element("td", "", html(std::string(tolerance::word(d.known)))));
  }
  if (rows.empty()) return {};
  return wide(
      "The chain of the gap",
      element("table", "",
              element("caption", "",
                      "The dimensions that make this gap, largest share of its variation first (mm; how often each "
                      "counts in the gap)") +
                  element("thead", "",
                          element("tr", "",
                                  "<th scope=\"col\">Dimension</th><th scope=\"col\">Value and limits</th><th "
                                  "scope=\"col\">Times</th><th scope=\"col\">Share of variation</th><th "
                                  "scope=\"col\">Source</th><th scope=\"col\">How it is "
                                  "known</th>")) +
                  element("tbody", "", rows)));
}

std::string findings(const Report& report, const fit::Seating& seating) {
  std::string list;
  for (const fit::Finding& finding : seating.findings) {
    const std::string said = say(finding, report.method);
    if (said.empty()) continue;
    list += element("li", "",
                    html((finding.verdict ? word(*finding.verdict) : std::string("note")) + " (" + word(finding.kind) +
                         "): " + named(said)));
  }
  std::string out = list.empty() ? "" : element("h4", "", "All that was found") + element("ul", "", list);
  if (!seating.deciding) return out;
  const fit::Finding& finding = seating.findings[*seating.deciding];
  const fit::GapFigures& gap = *finding.gap;
  out += element("h4", "", "The gap that decides");
  out += paragraph(named(say(finding, report.method)));
  out += paragraph("Gap " + tolerance::in_words(gap.nominal) + " mm, limits " + limit(gap.min) + " to " +
                   limit(gap.max) + " (" + in_words(tolerance::chain_method(report.method)) + "), clearance asked " +
                   tolerance::in_words(gap.asked) + ".");
  return out + chain(finding, report.method);
}

std::string value_figures(const plans::Buying& list) {
  std::string out = element("h3", "", "What the drives are worth");
  out += paragraph(
      "A gigabyte is the price by the capacity on the label, a TBW the price by the terabytes that may be written; "
      "drive "
      "writes a day (DWPD) are TBW by capacity and days of warranty, a year having 365. Capacities are decimal. Read "
      "is "
      "held to the raw rate of the link between drive and slot after line code; headers of packets take a further 5 to "
      "20 % (common practice, no source). The warranty ends by time or with the TBW, whichever is earlier.");
  if (list.daily && list.daily->usage != nullptr)
    out += paragraph(plain(list.daily->gigabytes, 0) + " GB a day: " + std::string(list.daily->usage->what) +
                     " (common practice, no source).");
  if (list.now != nullptr)
    out += paragraph("What is there now: " + std::string(list.now->title) + ", reckoned with " +
                     plain(list.now->read, 0) + " MB/s (" + std::string(list.now->source) + ").");
  std::string rows;
  for (const std::size_t i : list.order) {
    const value::Appraisal& of = list.appraisals[i];
    const auto or_dash = [](const std::optional<double>& value, int decimals) {
      return value ? plain(*value, decimals) : std::string("-");
    };
    rows += element(
        "tr", "",
        element("th", " scope=\"row\"", html(named(list.offers[i].name))) +
            element("td", " class=\"number\"", or_dash(of.tbw, 1) + (of.tbw_derived ? " (from DWPD)" : "")) +
            element("td", " class=\"number\"", or_dash(of.dwpd, 2)) +
            element("td", " class=\"number\"", or_dash(of.per_tbw, 2)) +
            element("td", " class=\"number\"", or_dash(of.years, 1)) +
            element("td", "", html(word(list.offers[i].map))) + element("td", "", list.unbeaten[i] ? "yes" : "no"));
  }
  out += wide(
      "Endurance",
      element(
          "table", "",
          element("caption", "",
                  "Endurance; years are those until the TBW is written at what is written a day, which is no lifespan. "
                  "Unbeaten: it may go there, and no other that may is at least as good in price, capacity, speed, "
                  "warranty and, within a "
                  "capacity, TBW, and better in one of them.") +
              element(
                  "thead", "",
                  element("tr", "",
                          "<th scope=\"col\">Drive</th><th scope=\"col\">TBW, TB</th><th scope=\"col\">DWPD</th><th "
                          "scope=\"col\">Price of a TBW</th><th scope=\"col\">Years</th><th scope=\"col\">DRAM</th><th "
                          "scope=\"col\">Unbeaten</th>")) +
              element("tbody", "", rows)));
  return out;
}

std::string heat_figures(const thermal::Heat& heat) {
  std::string out;
  for (const std::string& line : say(heat)) out += paragraph(named(line));
  if (heat.warmth) {
    std::string basis = heat_basis(heat.around);
    constexpr std::string_view option = "; --air has yours";  // nobody types on a page
    if (const std::size_t at = basis.find(option); at != std::string::npos) basis.erase(at, option.size());
    out += paragraph(basis);
  }
  return out.empty() ? out : element("h3", "", "How warm it becomes") + out;
}

}  // namespace

std::string figures_section(const Report& report) {
  const Language language = report.language;
  std::string inner;
  if (report.shown) {
    const fit::Seating& seating = report.shown->seating;
    inner +=
        element("h3", "", html(named(seating.drive) + " in " + named(seating.place) + ": " + word(seating.verdict)));
    inner += questions(seating) + findings(report, seating);
    if (report.shown->plan) {
      const plans::Plan& plan = *report.shown->plan;
      inner += element("h3", "", "With the change made: " + html(named(say(plan))));
      inner += paragraph(named(say_result(plan, report.method)));
      inner += findings(report, plan.after);
    }
  }
  if (report.buying != nullptr) {
    if (report.offer && report.buying->tried[*report.offer])
      inner += heat_figures(report.buying->tried[*report.offer]->heat);
    inner += value_figures(*report.buying);
  }
  inner += element("h3", "", "What holds for all of this");
  if (!report.build.empty() && report.shown)
    inner += paragraph(
        "Limits: " + in_words(report.method) + ". Clearance asked for: " + tolerance::in_words(report.clearance) +
        " mm. Marginal: some builds fit and some do not. How a figure is known: read in the source itself, "
        "secondary (quoted by another), practice (common practice, no source), memory (unconfirmed), "
        "measured (by the user), derived (arithmetic on others).");
  inner += paragraph(
      "What is marked common practice has no source: how much is written a day, the air in the machine, what a hard "
      "disk "
      "reads, the smallest drive that is no cache module, adapters and usual tools.");
  const bool english = language == Language::english;
  const std::string lead = english ? "" : element("p", " class=\"small\"", html(phrase(language, "figures english")));
  return element("section", " id=\"figures\" aria-labelledby=\"figures-head\"",
                 element("details", "",
                         element("summary", "",
                                 element("h2", " id=\"figures-head\"", html(phrase(language, "figures head")))) +
                             lead + element("div", english ? "" : " lang=\"en\"", inner))) +
         element("p", " class=\"printed small\"", html(phrase(language, "figures printed")));
}

}  // namespace baywright::output
