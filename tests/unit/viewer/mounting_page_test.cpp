// The page for the bench against what the commands write: one text, two ways to it.
#include "viewer/mounting_page.h"

#include "output/plan_words.h"
#include "output/shopping_text.h"
#include "output/steps_text.h"
#include "viewer/document.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <string>
#include <variant>

using namespace baywright;
using viewer::mounting_page;

namespace {

viewer::Document open(const std::string& name) {
  auto opened = viewer::Document::open(BAYWRIGHT_SOURCE "/models/builds/" + name);
  if (const auto* fault = std::get_if<parts::Fault>(&opened)) FAIL(fault->text());
  return std::get<viewer::Document>(std::move(opened));
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("the page has the steps and the shopping list word for word, with the mains before anything is touched") {
  const viewer::Document document = open("panel.build.toml");
  const auto shown = viewer::show(*document.build(), {"flat drive", "laser cut"}, {});
  const viewer::MountingPage page = mounting_page(*shown, nullptr, nullptr, nullptr);
  CHECK(page.heading.front().starts_with("flat drive in laser cut (fits): "));
  REQUIRE(page.mounting.steps.size() > 5);
  REQUIRE(!page.items.empty());
  CHECK(has(page.text, output::steps_list(page.mounting)));
  CHECK(has(page.text, output::shopping_text(shown->seating, page.items)));
  CHECK(page.shopping == output::shopping_heading(shown->seating, page.items));
  const auto at = [&](plans::Action action) {
    return std::find_if(page.mounting.steps.begin(), page.mounting.steps.end(),
                        [&](const plans::Step& step) { return step.action == action; });
  };
  const auto off = at(plans::Action::power_off);
  REQUIRE(off != page.mounting.steps.end());
  CHECK(off < at(plans::Action::put_in));
  CHECK(std::find(off->hazards.begin(), off->hazards.end(), plans::Hazard::mains) != off->hazards.end());
}

TEST_CASE("what does not fit has no steps, and the page says which change would help") {
  const viewer::Document document = open("thin-desktop.build.toml");
  const viewer::Choice tall = {"card with tall fins", "rear slot"};
  const auto shown = viewer::show(*document.build(), tall, {});
  const viewer::MountingPage early = mounting_page(*shown, nullptr, nullptr, nullptr);
  CHECK(early.mounting.steps.empty());
  CHECK(early.items.empty());
  CHECK(has(early.text, "does not fit"));
  CHECK(has(early.text, "still being looked for"));

  plans::Options options;
  options.fit.drive = tall.drive;
  options.fit.place = tall.place;
  const auto found = plans::search(document.text(), document.path(), options);
  REQUIRE(std::holds_alternative<plans::Search>(found));
  const auto& search = std::get<plans::Search>(found);
  const std::vector<viewer::Cell> grid = {{{"card with flat spreader", "rear slot"}, fit::Verdict::fits, ""},
                                          {{"card with low fins", "rear slot"}, fit::Verdict::marginal, ""}};
  const viewer::MountingPage page = mounting_page(*shown, nullptr, &search, &grid);
  REQUIRE(page.heading.size() == 3);
  const auto sure = std::find_if(search.plans.begin(), search.plans.end(),
                                 [](const plans::Plan& plan) { return plan.after.verdict == fit::Verdict::fits; });
  REQUIRE(sure != search.plans.end());
  CHECK(page.heading[1].starts_with("What would make it fit: " + output::say(*sure) + ". "));
  CHECK(page.heading[2].starts_with("These fit as they are: card with flat spreader in rear slot. "));

  // The steps of the change that is tried, and that it is not made.
  const auto text = build::edited(document.text(), sure->edits, document.path());
  REQUIRE(std::holds_alternative<std::string>(text));
  const auto changed = build::read_text(std::get<std::string>(text), document.path());
  REQUIRE(std::holds_alternative<build::Build>(changed));
  const auto then = viewer::show(std::get<build::Build>(changed), {sure->drive, sure->place}, {});
  const viewer::MountingPage tried = mounting_page(*then, &*sure, &search, &grid);
  CHECK(!tried.mounting.steps.empty());
  CHECK(has(tried.text, "not made yet"));
}
