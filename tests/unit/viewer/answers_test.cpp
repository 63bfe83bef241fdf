// What the window shows is what `check` says, while a length is dragged too.
#include "viewer/answers.h"

#include "build/build.h"
#include "fit/check.h"
#include "output/stack_column.h"
#include "support/check_mm.h"
#include "viewer/document.h"
#include "viewer/handles.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <doctest/doctest.h>
#include <filesystem>
#include <limits>
#include <memory>
#include <string>
#include <thread>

using namespace baywright;
using test::check_mm;
using viewer::Choice;
using viewer::Document;
using viewer::Handle;

namespace {

const std::string demos = BAYWRIGHT_SOURCE "/models/builds/";

Document open(const std::string& name) {
  auto opened = Document::open(demos + name);
  if (const auto* fault = std::get_if<parts::Fault>(&opened)) FAIL(fault->text());
  return std::get<Document>(std::move(opened));
}

const Handle& called(const std::vector<Handle>& handles, const std::string& label) {
  const auto found =
      std::find_if(handles.begin(), handles.end(), [&](const Handle& each) { return each.label == label; });
  if (found == handles.end()) FAIL("no handle " << label);
  return *found;
}

template <typename Ready>
viewer::Rest wait_for(const viewer::Background& background, Ready ready) {
  for (int i = 0; i < 6000 && !ready(background.latest()); ++i)
    std::this_thread::sleep_for(std::chrono::milliseconds(10));
  return background.latest();
}

}  // namespace

TEST_CASE("every seating of every demo is shown as it is checked") {
  int seatings = 0;
  for (const auto& item : std::filesystem::directory_iterator(demos)) {
    if (!item.path().string().ends_with(".build.toml")) continue;
    CAPTURE(item.path().string());
    const Document document = open(item.path().filename().string());
    fit::Options options;
    options.quick = true;  // the same question of both, sooner
    const fit::Check check = fit::check(*document.build(), options);
    for (const fit::Seating& wanted : check.seatings) {
      const auto shown = viewer::show(*document.build(), {wanted.drive, wanted.place}, options);
      CHECK(shown->choice == Choice{wanted.drive, wanted.place});
      CHECK(shown->seating.verdict == wanted.verdict);
      REQUIRE(shown->seating.findings.size() == wanted.findings.size());
      REQUIRE(shown->seating.deciding == wanted.deciding);
      if (wanted.deciding)
        check_mm(shown->seating.findings[*wanted.deciding].gap->min, wanted.findings[*wanted.deciding].gap->min, 0.0);
      CHECK(shown->seated.scene.below == &shown->host.scene);
      CHECK_FALSE(shown->model.things.empty());
      ++seatings;
    }
    const fit::Seating& least = check.seatings[fit::worst(check)];
    CHECK(viewer::likely_worst(*document.build(), options) == Choice{least.drive, least.place});
  }
  CHECK(seatings > 30);
}

TEST_CASE("a choice that is not there any more is the first") {
  const Document document = open("thin-desktop.build.toml");
  CHECK(viewer::show(*document.build(), {"gone", "gone"}, {})->choice ==
        Choice{"card with flat spreader", "rear slot"});
}

TEST_CASE("the tray is dragged until the verdict turns where check says it turns") {
  Document document = open("thin-desktop.build.toml");
  const std::string before = document.text();
  const Choice choice = {"card with low fins", "rear slot"};
  const auto start = viewer::show(*document.build(), choice, {});
  REQUIRE(start->seating.verdict == fit::Verdict::marginal);
  const auto handles = viewer::handles(document.text(), *start);
  const Handle& tray = called(handles, "tray under board");
  CHECK(handles.front().label == tray.label);  // the largest share of what decides
  check_mm(tray.nominal, 9.1, 0.0);
  check_mm(tray.minus, 0.2, 1e-12);
  CHECK(tray.path.size() == 5);
  const auto column = output::stack_column(start->seating.findings[*start->seating.deciding], start->seated);
  CHECK(std::any_of(column.open.begin(), column.open.end(),
                    [&](const output::Band& band) { return band.name == tray.band; }));
  // 3.00 of heatsink and 5.40 below it, 0.50 asked, limits 0.578359: see tests/unit/plans/solve_test.cpp
  const double turns = 2.45 + 0.05 + 0.80 + 1.40 + 0.70 + 3.00 + 0.50 + 0.578359375;
  double last = 0.0;
  for (int i = 1; i <= 40; ++i) {
    const double value = 9.1 + 0.02 * i;
    const std::array edits = {viewer::drag(tray, value)};
    REQUIRE_FALSE(document.drag(viewer::drag_label(tray, value), edits));
    const auto shown = viewer::show(*document.build(), choice, {});
    CHECK((shown->seating.verdict == fit::Verdict::fits) == (value >= turns));
    last = value;
  }
  document.commit();
  CHECK(*document.undoes() == "tray under board 9.1 to 9.9");
  check_mm(last, 9.9, 1e-9);
  CHECK(document.text().find("length = \"9.9 ±0.2\", source = \"caliper, three places, tray screwed down\"") !=
        std::string::npos);
  document.undo();
  CHECK(document.text() == before);
}

TEST_CASE("every handle of every demo changes its own figure, and the build can be read") {
  int tried = 0;
  int in_chains = 0;
  for (const auto& item : std::filesystem::directory_iterator(demos)) {
    if (!item.path().string().ends_with(".build.toml")) continue;
    CAPTURE(item.path().string());
    Document document = open(item.path().filename().string());
    const std::string before = document.text();
    for (const build::Drive& drive : document.build()->drives)
      for (const build::Place& place : document.build()->places) {
        fit::Options options;
        options.quick = true;
        const auto shown = viewer::show(*document.build(), {drive.name, place.name}, options);
        for (const Handle& handle : viewer::handles(before, *shown)) {
          CAPTURE(handle.label);
          CHECK(handle.nominal >= handle.least);
          CHECK(handle.nominal <= handle.most);
          CHECK(handle.step > 0.0);
          in_chains += handle.findings.empty() ? 0 : 1;
          for (const std::size_t i : handle.findings) REQUIRE(i < shown->seating.findings.size());
          // a little off: what may refuse it is another figure of the file, never the text
          const std::array edits = {viewer::drag(handle, handle.nominal + 0.1)};
          const auto after = build::edited(before, edits, document.path());
          REQUIRE(std::holds_alternative<std::string>(after));
          CHECK(std::get<std::string>(after) != before);
          // and to where it is: nothing that the check sees
          const std::array back = {viewer::drag(handle, handle.nominal)};
          const auto same = build::edited(before, back, document.path());
          const auto read = build::read_text(std::get<std::string>(same), document.path());
          REQUIRE(std::holds_alternative<build::Build>(read));
          const auto again = viewer::show(std::get<build::Build>(read), shown->choice, options);
          if (shown->seating.deciding)
            check_mm(again->seating.findings[*again->seating.deciding].gap->min,
                     shown->seating.findings[*shown->seating.deciding].gap->min, 2e-3);
          ++tried;
          if (tried % 7 != 0) break;  // each seating's first, now and then more: the rest differs in its path only
        }
      }
  }
  CHECK(tried > 30);
  CHECK(in_chains > 20);
}

TEST_CASE("limits stay as they were written, and values in their range") {
  Handle handle;
  handle.label = "gap";
  handle.path = {"x"};
  handle.nominal = 2.0;
  handle.least = 0.5;
  handle.most = 4.0;
  handle.bare = true;
  CHECK(viewer::drag(handle, 2.34567).value == "2.346");
  CHECK(viewer::drag(handle, -1.0).value == "0.5");
  CHECK(viewer::drag(handle, 1e9).value == "4");
  CHECK(viewer::drag(handle, std::numeric_limits<double>::quiet_NaN()).value == "2");
  handle.bare = false;
  CHECK(viewer::drag(handle, 2.5).value == "\"2.5\"");
  handle.limits_written = true;
  CHECK(viewer::drag(handle, 2.5).value == "\"2.5 ±0\"");
  handle.plus = 0.3;
  CHECK(viewer::drag(handle, 2.5).value == "\"2.5 +0.3 -0\"");
  handle.plus = 0.0;
  handle.minus = tolerance::open_side;
  CHECK(viewer::drag(handle, 2.5).value == "\"max 2.5\"");
  CHECK(viewer::drag_label(handle, 2.5) == "gap 2 to 2.5");
}

TEST_CASE("the rest is worked out behind the window's back, and the newest question counts") {
  const Document document = open("thin-desktop.build.toml");
  const Choice low = {"card with low fins", "rear slot"};
  const Choice tall = {"card with tall fins", "rear slot"};
  viewer::Background background;
  CHECK_FALSE(background.busy());
  background.ask(7, document.build(), document.text(), low, {});
  background.ask(8, document.build(), document.text(), tall, {});  // before the first is done
  const auto rest = wait_for(
      background, [](const viewer::Rest& now) { return now.version == 8 && now.grid && now.tallest && now.plans; });
  CHECK(rest.version == 8);
  REQUIRE(rest.grid);
  REQUIRE(rest.grid->size() == 3);
  const fit::Check check = fit::check(*document.build(), {});
  for (std::size_t i = 0; i < 3; ++i) CHECK((*rest.grid)[i].verdict == check.seatings[i].verdict);
  CHECK((*rest.grid)[2].figure == "0.30 over");
  REQUIRE(rest.tallest);
  REQUIRE(*rest.tallest);
  check_mm((*rest.tallest)->now, 4.0, 1e-12);
  check_mm((*rest.tallest)->height, 2.621640625, 2e-6);  // by hand: see tests/unit/plans/solve_test.cpp
  REQUIRE(rest.plans);
  REQUIRE(std::holds_alternative<plans::Search>(*rest.plans));
  CHECK(std::get<plans::Search>(*rest.plans).drive == tall.drive);
  CHECK_FALSE(wait_for(background, [&](const viewer::Rest&) { return !background.busy(); }).grid == nullptr);
}

TEST_CASE("a window that closes in the middle of it leaves nothing running") {
  const Document document = open("laptop.build.toml");
  std::weak_ptr<const build::Build> build;
  {
    viewer::Background background;
    auto own = std::make_shared<const build::Build>(*document.build());
    build = own;
    for (std::uint64_t i = 1; i < 20; ++i) background.ask(i, own, document.text(), {"", ""}, {});
    CHECK(background.busy());
    CHECK(background.latest().version == 19);
  }
  CHECK(build.expired());  // the thread is gone, and with it what it worked on
}

TEST_CASE("a card that is refused for its size or its notch is there to be looked at, and nothing holds it") {
  const Document document = open("laptop.build.toml");
  const auto drives = [](const viewer::Shown& shown) {
    return std::count_if(shown.model.things.begin(), shown.model.things.end(),
                         [](const render::Thing& thing) { return thing.drive; });
  };
  for (const Choice& choice : {Choice{"fast long card", "small slot"}, Choice{"short SATA card", "main slot"}}) {
    const auto shown = viewer::show(*document.build(), choice, {});
    CAPTURE(choice.drive);
    CHECK(shown->seating.verdict == fit::Verdict::does_not_fit);
    CHECK(shown->seated.scene.elements.empty());  // it is not seated, whatever is drawn
    CHECK(shown->ghost.has_value());
    CHECK(drives(*shown) > 0);
    CHECK(std::none_of(shown->model.things.begin(), shown->model.things.end(),
                       [](const render::Thing& thing) { return thing.late; }));
  }
  const auto own = viewer::show(*document.build(), {"fast long card", "main slot"}, {});
  CHECK_FALSE(own->ghost.has_value());
  // Of another kind altogether there is nothing to draw.
  const auto cased = viewer::show(*document.build(), {"cased drive", "main slot"}, {});
  CHECK_FALSE(cased->ghost.has_value());
  CHECK(drives(*cased) == 0);
}

TEST_CASE("every refused seating of the demos can be looked at") {
  std::size_t ghosts = 0;
  std::size_t refused = 0;
  for (const char* name : {"laptop", "mini-card", "rack", "carrier", "seven-mm-bay", "tower-bay"}) {
    const Document document = open(std::string(name) + ".build.toml");
    for (const build::Drive& drive : document.build()->drives)
      for (const build::Place& place : document.build()->places) {
        fit::Options options;
        options.quick = true;
        const auto shown = viewer::show(*document.build(), {drive.name, place.name}, options);
        if (!shown->seated.scene.elements.empty()) continue;
        ++refused;
        if (shown->ghost) ++ghosts;
        const geometry::Bounds& all = shown->model.bounds;
        CHECK(glm::all(glm::lessThan(all.low, all.high)));  // and no NaN
      }
  }
  CHECK(refused > 50);
  CHECK(ghosts > 5);
  CHECK(ghosts < refused);
}
