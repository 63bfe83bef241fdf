// How tall a heatsink may be: against sums by hand, and against halving an interval over whole checks of edited texts.
#include "plans/solve.h"

#include "build/edit.h"
#include "fit/largest.h"
#include "support/check_mm.h"

#include <cmath>
#include <doctest/doctest.h>
#include <string>

using namespace baywright;
using test::check_mm;

namespace {

build::Build read(const std::string& text) {
  auto got = build::read_text(text, BAYWRIGHT_SOURCE "/models/builds/x.build.toml");
  if (const auto* fault = std::get_if<parts::Fault>(&got)) FAIL(fault->text());
  return std::get<build::Build>(std::move(got));
}

/// A board with a card under whatever `parts` hang there; the heatsink 70 x 22 with its height as asked.
std::string machine(const std::string& parts, const std::string& height, const std::string& slot = {}) {
  return "title = \"t\"\nclearance = 0.5\n[[part]]\nname = \"board\"\nuse = \"board/mini-itx\"\n" + parts +
         "[[slot]]\nname = \"slot\"\non = { part = \"board\", face = \"back\", at = [45.0, -70.0], toward = \"+x\" }\n"
         "socket = \"m2/M/H4.2\"\nlengths = [2280]\nbus = \"pcie 4.0 x4\"\n" +
         slot +
         "[[drive]]\nname = \"card\"\nuse = \"m2/2280-S3-M\"\nbus = \"pcie 4.0 x4\"\nwears = [{ pad = \"1.0 ±0.1\", "
         "compress = \"30 %\" }, { heatsink = { length = \"70 ±0\", width = \"22 ±0\", height = " +
         height + " } }]\n";
}

const std::string tray =
    "[[part]]\nname = \"tray\"\nsolid = { plate = [150, 120, 1.2] }\nunder = { part = \"board\", by = \"9.1 ±0.2\" }\n"
    "removable = true\n";

std::optional<plans::Tallest> tallest(const std::string& text, const fit::Options& options = {}) {
  const build::Build build = read(text);
  return plans::tallest_heatsink(build, build.drives[0], 0, options);
}

/// The tallest by halving, a whole check each time.
double by_halving(const std::string& parts, const std::string& slot, const std::string& limits) {
  double low = 0.2;
  double high = 20.0;
  while (high - low > 1e-7) {
    const double middle = 0.5 * (low + high);
    const auto check = fit::check(read(machine(parts, "\"" + std::to_string(middle) + limits + "\"", slot)), {});
    (check.seatings[0].verdict == fit::Verdict::fits ? low : high) = middle;
  }
  return low;
}

}  // namespace

TEST_CASE("thin desktop: the tallest heatsink is what the sum by hand leaves") {
  // Distances over the board's back, mm, of models/builds/thin-desktop.build.toml:
  //   tray under board                                                       9.10 ±0.20
  //   stand-off, PCI-SIG M.2 Rev 1.0, Table 14                               2.45 ±0.03
  //   solder under it, Figures 67 to 71                                      0.05
  //   card, Table 2 and Figure 15                                            0.80 ±0.08
  //   chips, Figure 3                                                        1.40 ±0.10
  //   pad 1.00 ±0.10 pressed by 30 %                                         0.70 ±0.07
  //   asked for                                                              0.50
  // leave 3.20 for the heatsink, itself ±0.10. The card turns about its socket, 80 from the stand-off; the heatsink
  // lies centred over the chips (4.00 to 77.25 from the edge), so its ends are 5.625 and 75.625 from the socket and
  // move by 5.625 / 80 and 75.625 / 80 of what the stand-off does.
  const double left = 9.10 - 2.45 - 0.05 - 0.80 - 1.40 - 0.70 - 0.50;
  const double others = 0.20 + 0.08 + 0.10 + 0.07 + 0.10;
  const double far_end = 0.03 * 75.625 / 80.0;
  const double near_end = 0.03 * 5.625 / 80.0;
  const auto got = build::read(BAYWRIGHT_SOURCE "/models/builds/thin-desktop.build.toml");
  REQUIRE(std::holds_alternative<build::Build>(got));
  const build::Build& build = std::get<build::Build>(got);
  for (std::size_t drive = 1; drive < 3; ++drive) {
    CAPTURE(drive);
    const auto found = plans::tallest_heatsink(build, build.drives[drive], 0, {});
    REQUIRE(found);
    check_mm(found->height, left - others - far_end, 2e-6);
    check_mm(found->marginal, left + others + near_end, 2e-6);
    check_mm(found->now, drive == 1 ? 3.0 : 4.0, 1e-12);
    CHECK(found->against == "tray");
  }
  // root sum square: the same chain, its limits squared
  fit::Options rss;
  rss.method = tolerance::Method::rss;
  const double spread = std::sqrt(0.2 * 0.2 + 0.08 * 0.08 + 0.1 * 0.1 + 0.07 * 0.07 + 0.1 * 0.1 + far_end * far_end);
  const auto found = plans::tallest_heatsink(build, build.drives[1], 0, rss);
  REQUIRE(found);
  check_mm(found->height, left - spread, 2e-6);
}

TEST_CASE("the tallest heatsink agrees with halving over whole checks") {
  const std::string bar =
      "[[part]]\nname = \"bar\"\nsolid = { box = [10, 60, 1] }\n"
      "under = { part = \"board\", by = \"8.4 ±0.1\", at = [60, -100] }\nremovable = true\n";
  struct Case {
    const char* what;
    std::string parts;
    std::string slot;
    std::string limits;
    std::string against;
  };
  const std::vector<Case> cases = {
      {"flat under a tray", tray, "", " ±0.1", "tray"},
      {"tilted toward the tray", tray, "standoff = \"2.75 ±0.05\"\n", " ±0.1", "tray"},
      {"tilted away from it", tray, "standoff = \"2.15 ±0.05\"\n", " +0.2 -0", "tray"},
      {"a bar nearer than the tray", tray + bar, "", " ±0.1", "bar"},
      {"the bar near the socket of a card that leans away", tray + bar, "standoff = \"3.6 ±0.05\"\n", " ±0.1", "tray"},
  };
  for (const Case& each : cases) {
    CAPTURE(each.what);
    const auto found = tallest(machine(each.parts, "\"1.5" + each.limits + "\"", each.slot));
    REQUIRE(found);
    check_mm(found->height, by_halving(each.parts, each.slot, each.limits), 2.5e-6);
    CHECK(found->against == each.against);
    CHECK(found->marginal > found->height);
  }
}

TEST_CASE("an open limit leaves open from where on it never fits") {
  const auto shorter = [](const std::string& height) {  // so that no driver is in its way
    std::string text = machine(tray, height);
    return tallest(text.replace(text.find("70 ±0"), 2, "40"));
  };
  const auto found = shorter("\"max 1.5\"");
  const auto closed = shorter("\"1.4 ±0.1\"");  // 1.5 at most: the same top
  REQUIRE(found);
  REQUIRE(closed);
  CHECK(std::isinf(found->marginal));
  CHECK(std::isfinite(closed->marginal));
  check_mm(found->height, closed->height + 0.1, 2e-6);
}

TEST_CASE("a heatsink beside the screw may be as tall as a driver passes") {
  const auto found = tallest(machine("", "\"1.5 ±0.1\""));
  REQUIRE(found);
  const auto verdict = [](double height) {
    return fit::check(read(machine("", "\"" + std::to_string(height) + " ±0.1\"")), {}).seatings[0].verdict;
  };
  CHECK(verdict(found->height - 1e-5) == fit::Verdict::fits);
  CHECK(verdict(found->height + 1e-5) != fit::Verdict::fits);
  CHECK(found->against == "screw");
}

TEST_CASE("no tallest heatsink where there is none, nothing limits it, or something else keeps the card out") {
  std::string shorter = machine("", "1.5");  // nothing over it, and no driver in its way
  shorter.replace(shorter.find("70 ±0"), 2, "40");
  CHECK_FALSE(tallest(shorter));
  std::string bare = machine(tray, "1.5");
  bare.erase(bare.find("wears"));
  CHECK_FALSE(tallest(bare));
  std::string low = tray;
  low.replace(low.find("9.1"), 3, "3.1");  // the tray lies in the card
  CHECK_FALSE(tallest(machine(low, "1.5")));
  const auto pins = build::read(BAYWRIGHT_SOURCE "/models/builds/mesh-heatsink.build.toml");
  const build::Build& build = std::get<build::Build>(pins);
  CHECK_FALSE(plans::tallest_heatsink(build, build.drives[0], 0, {}));  // a model's size is fixed
  CHECK(plans::tallest_heatsink(build, build.drives[1], 0, {}));
}

TEST_CASE("the largest value is found where edges help, mislead or are not given") {
  for (const double edge : {0.0, 1.0, 3.3, 9.999}) {
    for (const int guess : {0, 1, 2}) {
      CAPTURE(edge);
      CAPTURE(guess);
      int probes = 0;
      const auto found = fit::largest({0.0, 5.0, 10.0}, [&](double x) {
        ++probes;
        fit::Probe out{x <= edge};
        if (guess == 1) out.edge = edge;
        if (guess == 2) out.edge = -7.0;
        return out;
      });
      REQUIRE(found);
      CHECK(*found <= edge);
      CHECK(*found >= edge - fit::edge_mm);
      CHECK(probes <= (guess == 1 ? 6 : 30));
    }
  }
  CHECK_FALSE(fit::largest({0.0, 5.0, 10.0}, [](double) { return fit::Probe{}; }));
  check_mm(fit::largest({0.0, 5.0, 10.0}, [](double) { return fit::Probe{true}; }).value_or(0.0), 10.0, 0.0);
}
