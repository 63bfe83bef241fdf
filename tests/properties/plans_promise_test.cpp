// What a plan promises is what the check says of the file that it makes.
#include "plans/plan.h"
#include "properties/random_builds.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <sstream>

using namespace baywright;

namespace {

/// How many plans of the build were held to their word.
int hold(const std::string& text, const std::filesystem::path& file, const std::string& drive,
         const std::string& place) {
  plans::Options options;
  options.seconds = 2.0;
  options.fit.drive = drive;
  options.fit.place = place;
  const auto searched = plans::search(text, file, options);
  REQUIRE(std::holds_alternative<plans::Search>(searched));
  const auto& search = std::get<plans::Search>(searched);
  for (const plans::Plan& plan : search.plans) {
    const auto changed = build::edited(text, plan.edits, file);
    REQUIRE(std::holds_alternative<std::string>(changed));
    CAPTURE(std::get<std::string>(changed));
    const auto read = build::read_text(std::get<std::string>(changed), file);
    REQUIRE(std::holds_alternative<build::Build>(read));
    fit::Options one;
    one.drive = plan.drive;
    one.place = plan.place;
    const fit::Check check = fit::check(std::get<build::Build>(read), one);
    REQUIRE(check.seatings.size() == 1);
    const fit::Seating& seating = check.seatings.front();
    CHECK(seating.verdict == plan.after.verdict);
    CHECK((seating.verdict == fit::Verdict::fits || seating.verdict == fit::Verdict::marginal));
    if (seating.deciding) {
      const fit::GapFigures& gap = *seating.findings[*seating.deciding].gap;
      CHECK(gap.min - gap.asked == plan.room);
    }
  }
  return static_cast<int>(search.plans.size());
}

std::string content(const std::filesystem::path& file) {
  std::ostringstream out;
  out << std::ifstream(file).rdbuf();
  return out.str();
}

}  // namespace

TEST_CASE("each plan of each seating of the demos keeps its promise") {
  int plans = 0;
  for (const auto& entry : std::filesystem::directory_iterator(BAYWRIGHT_SOURCE "/models/builds")) {
    const std::string name = entry.path().filename().string();
    // Searches there take long: ways in that are sought, not straight; outlines of hundreds of corners.
    if (!name.ends_with(".build.toml") || name == "way-in.build.toml" || name == "drawn-panel.build.toml") continue;
    CAPTURE(name);
    const std::string text = content(entry.path());
    const auto read = build::read_text(text, entry.path());
    REQUIRE(std::holds_alternative<build::Build>(read));
    plans += hold(text, entry.path(), {}, {});
    const build::Build& build = std::get<build::Build>(read);
    plans += hold(text, entry.path(), build.drives.front().name, build.places.back().name);
  }
  CHECK(plans > 30);
}

TEST_CASE("each plan of random builds keeps its promise") {
  test::RandomBuilds random(21);
  int plans = 0;
  for (int i = 0; i < 5; ++i)
    for (const std::string& text :
         {random.under_tray(), random.under_cover(), random.in_bays(), random.in_bays(), random.in_bays()})
      plans += hold(text, BAYWRIGHT_SOURCE "/tests/properties/parts/random.build.toml", {}, {});
  CHECK(plans > 15);
}
