// What is changed, bought and done, where there is something to do.
#include "output/report_pieces.h"

#include <algorithm>

namespace baywright::output {

namespace {

std::string caution(Language language, const std::string& words) {
  return element("p", " class=\"caution\"",
                 element("strong", "", html(phrase(language, "caution"))) + ' ' + html(words));
}

std::string paragraph(const std::string& words) {
  return element("p", "", html(words));
}

std::string item_row(Language language, const plans::Item& item) {
  std::string notes;
  const auto note = [&](const std::string& words) { notes += element("li", "", html(words)); };
  for (const plans::Remark remark : item.remarks) note(say(language, remark, item));
  for (const plans::Exchange& exchange : item.exchanges)
    note(sentence(
        phrase(language, never(exchange.condition) ? "buy never" : "buy or",
               {{"what", named(part_name(language, exchange.designation))}, {"when", say(language, exchange)}})));
  const auto label = [&](const char* key) { return " data-label=\"" + attribute(phrase(language, key)) + '"'; };
  return element(
      "tr", "",
      element("th", " scope=\"row\"", html(word(language, item.kind))) +
          element("td", label("buy count") + " class=\"number\"", std::to_string(item.count)) +
          element("td", label("buy what"), html(designation(language, item))) +
          element("td", label("buy notes") + " class=\"notes\"", notes.empty() ? "" : element("ul", "", notes)));
}

}  // namespace

std::string plan_section(const Report& report) {
  if (!report.shown || !report.shown->plan) return {};
  const Language language = report.language;
  const plans::Plan& plan = *report.shown->plan;
  std::string changes;
  std::vector<plans::Price> prices;
  for (const plans::Change& change : plan.changes) {
    changes += element("li", "", html(sentence(say(language, change))));
    for (const plans::Price price : change.prices)
      if (std::find(prices.begin(), prices.end(), price) == prices.end()) prices.push_back(price);
  }
  std::string inner = element("ul", " class=\"changes\"", changes);
  if (const fit::Finding* near = nearest(plan.after))
    inner += paragraph(phrase(language, "plan result",
                              {{"gap", air(language, *near->gap, report.method)},
                               {"a", among(language, near->between[0])},
                               {"b", among(language, near->between[1])},
                               {"aside", near->provided ? std::string() : phrase(language, "own aside")}}));
  if (!prices.empty()) {
    std::string words;
    for (const plans::Price price : prices) words += (words.empty() ? "" : ", ") + word(language, price);
    inner += paragraph(phrase(language, "plan price", {{"prices", words}}));
  }
  if (!plan.cautions.empty()) {
    std::string see;
    for (const plans::Caution each : plan.cautions) see += element("li", "", html(say(language, plan, each)));
    inner += element("p", " class=\"see\"", element("strong", "", html(phrase(language, "plan see")))) +
             element("ul", "", see);
  }
  if (report.shown->cuts) inner += caution(language, phrase(language, "caution file"));
  inner += element("p", " class=\"small\"", html(phrase(language, "plan checked")));
  return section("plan", phrase(language, "plan head"), inner);
}

std::string shopping_section(const Report& report) {
  if (!report.shown || report.shown->mounting.steps.empty()) return {};
  const Language language = report.language;
  std::string rows;
  bool fastens = false;
  for (const plans::Item& item : report.shown->shopping) {
    fastens = fastens || item.kind == plans::ItemKind::screw || item.kind == plans::ItemKind::nut;
    // What is changed is bought, though the description names it now.
    const bool changed =
        report.shown->plan && item.kind != plans::ItemKind::drive && item.kind != plans::ItemKind::standoff;
    if (!item.in_build || changed) rows += item_row(language, item);
  }
  std::string inner;
  if (!rows.empty()) {
    std::string heads;
    for (const char* const key : {"buy part", "buy count", "buy what", "buy notes"})
      heads += element("th", " scope=\"col\"", html(phrase(language, key)));
    inner = wide(phrase(language, "buy caption"),
                 element("table", " class=\"buy\"",
                         element("caption", "", html(phrase(language, "buy caption"))) +
                             element("thead", "", element("tr", "", heads)) + element("tbody", "", rows)));
  } else {
    inner = paragraph(phrase(language, "buy none"));
  }
  if (!fastens) inner += element("p", " class=\"small\"", html(phrase(language, "buy no screws")));
  return section("buy", phrase(language, "buy head"), inner);
}

std::string steps_section(const Report& report) {
  if (!report.shown) return {};
  const Language language = report.language;
  const plans::Mounting& mounting = report.shown->mounting;
  std::string inner;
  if (mounting.steps.empty()) {
    inner = paragraph(phrase(language, "steps none"));
    return section("steps", phrase(language, "steps head"), inner);
  }
  if (report.shown->plan) inner += paragraph(phrase(language, "steps changed"));
  if (mounting.verdict == fit::Verdict::marginal) inner += caution(language, phrase(language, "steps marginal"));
  if (!mounting.tools.empty()) {
    std::string tools;
    for (const std::string& each : mounting.tools) tools += (tools.empty() ? "" : ", ") + tool(language, each);
    inner += paragraph(phrase(language, "steps tools", {{"tools", tools}}));
  }
  std::string steps;
  for (const plans::Step& step : mounting.steps) {
    std::string words = html(say(language, step));
    for (const plans::Hazard hazard : step.hazards) words += caution(language, say(language, hazard));
    steps += element("li", "", words);
  }
  return section("steps", phrase(language, "steps head"), inner + element("ol", "", steps));
}

}  // namespace baywright::output
