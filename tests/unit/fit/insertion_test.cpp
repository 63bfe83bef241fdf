// Whether a drive that fits where it sits can be brought there. Arithmetic by hand: a point y along a card and h above
// its underside rises to y sin a + h cos a when the card is turned up by a about its lower leading edge.
#include "fit/insertion.h"

#include "fit/seat.h"
#include "geometry/gap.h"
#include "support/whole_build.h"

#include <cmath>
#include <numbers>

using namespace baywright;
using test::check_mm;
using test::seating;

namespace {

/// A board 1.57 thick with a socket whose card lies along +x from (20, 60); `parts` stand round it. The seating plane
/// of an H4.2 card is 2.45 + 0.05 above the board, which is z = 1.57.
std::string board(const std::string& parts, const std::string& wears = {}) {
  return "[[part]]\nname = \"board\"\nsolid = { plate = [200, 120, 1.57] }\n" + parts +
         "[[slot]]\nname = \"slot\"\non = { part = \"board\", at = [20, 60], toward = \"+x\" }\nsocket = "
         "\"m2/M/H4.2\"\n"
         "lengths = [2280]\nbus = \"pcie 4.0 x4\"\n" +
         test::drive("m2/2280-S3-M", "pcie 4.0 x4", wears);
}

std::string bar(double under, const std::string& more = {}, const std::string& name = "bar") {
  return "[[part]]\nname = \"" + name + "\"\nsolid = { box = [10, 100, 5] }\nat = [60, 10, " + std::to_string(under) +
         "]\n" + more + "\n";
}

const fit::Finding& way(const fit::Seating& seating) {
  const auto found = std::find_if(seating.findings.begin(), seating.findings.end(),
                                  [](const fit::Finding& finding) { return finding.kind == fit::Kind::insertion; });
  REQUIRE(found != seating.findings.end());
  return *found;
}

constexpr double seat = 1.57 + 2.45 + 0.05;  // PCI-SIG M.2 Rev 1.0, Table 14, and the solder of its Figure 40

}  // namespace

TEST_CASE("a card on an open board goes in at the angle that the standard draws") {
  const fit::Seating open = seating(board(""));
  CHECK(way(open).why.code == fit::Code::way_plain);
  CHECK(way(open).why.word("way") == "tilted");
  check_mm(way(open).why.figure("angle"), 20.0, 0.0);  // PCI-SIG M.2 Rev 1.0, Figure 36
  CHECK(open.way_out.size() == 3);
  CHECK(open.out_first.empty());
}

TEST_CASE("a bar over the card refuses the usual angle, and lets a flatter one pass under it") {
  // Over the card's middle the bar leaves 8 mm above the seat: at 20 degrees the chips under it, 2.35 above the
  // underside, are at 50 sin 20 = 17 mm. The card fits where it sits, and drawn out along itself it never rises to it
  // at 5 degrees: the screw end, at 80 sin 5 + 2.35, comes to 9.3 but lies beyond the bar until it is drawn back.
  const fit::Seating found = seating(board(bar(seat + 12.0)));
  CHECK(found.verdict == fit::Verdict::fits);
  CHECK(way(found).why.code == fit::Code::way_other);
  CHECK(way(found).why.word("by") == "bar");
  CHECK_FALSE(found.way_out.empty());
}

TEST_CASE("a card that fits in place and cannot be tilted in does not fit") {
  // A plate over all of the card and far round it, 4 mm above the seat; the card with its chips is 2.35 high. At the
  // least angle of 5 degrees its end would be at 80 sin 5 = 6.97.
  const std::string roof = "[[part]]\nname = \"roof\"\nsolid = { plate = [600, 400, 2] }\nat = [-200, -100, " +
                           std::to_string(seat + 4.0) + "]\n";
  const fit::Seating found = seating(board(roof));
  CHECK(test::gap(found, "drive", "roof").verdict == fit::Verdict::fits);
  CHECK(found.verdict == fit::Verdict::does_not_fit);
  CHECK(way(found).why.code == fit::Code::way_blocked);
  CHECK(way(found).between[1] == "roof");
  CHECK(way(found).gap->nominal < -1.0);
  CHECK(found.way_out.empty());
  SUBCASE("unless the plate comes out first") {
    const fit::Seating after = seating(board(roof + "removable = true\n"));
    CHECK(after.verdict == fit::Verdict::fits);
    CHECK(way(after).why.code == fit::Code::way_after);
    REQUIRE(after.out_first.size() == 1);
    CHECK(after.out_first[0] == "roof");
  }
}

TEST_CASE("what lies over a cover comes out before it") {
  const auto plate = [](const char* name, double z) {
    return "[[part]]\nname = \"" + std::string(name) + "\"\nsolid = { plate = [600, 400, 2] }\nat = [-200, -100, " +
           std::to_string(z) + "]\nremovable = true\n";
  };
  // A shaft of walls round both, so that the inner one has no way out but past the outer one.
  std::string walls;
  int i = 0;
  for (const char* wall : {"solid = { box = [2, 500, 300] }\nat = [-203, -150, -100]\n",
                           "solid = { box = [2, 500, 300] }\nat = [401, -150, -100]\n",
                           "solid = { box = [700, 2, 300] }\nat = [-250, -103, -100]\n",
                           "solid = { box = [700, 2, 300] }\nat = [-250, 301, -100]\n",
                           "solid = { plate = [700, 500, 2] }\nat = [-250, -150, -110]\n"})
    walls += "[[part]]\nname = \"wall " + std::to_string(++i) + "\"\n" + wall;
  const fit::Seating found = seating(board(plate("inner", seat + 4.0) + plate("outer", seat + 20.0) + walls));
  CHECK(found.verdict == fit::Verdict::fits);
  REQUIRE(found.out_first.size() == 2);
  CHECK(found.out_first[0] == "outer");
  CHECK(found.out_first[1] == "inner");
}

TEST_CASE("what stands on a removable part comes out with it") {
  const std::string tray = "[[part]]\nname = \"tray\"\nsolid = { plate = [600, 400, 2] }\nat = [-200, -100, " +
                           std::to_string(seat + 8.0) +
                           "]\nremovable = true\n[[part]]\nname = \"fan\"\nsolid = { box = [60, 60, 10] }\n"
                           "on = { part = \"tray\", at = [20, 40], face = \"back\" }\n";
  // The fan hangs 10 mm below the tray, into the card: in place it does not fit, but its way is that of the tray.
  const fit::Seating found = seating(board(tray));
  CHECK(way(found).why.code == fit::Code::way_after);
  REQUIRE(found.out_first.size() == 1);
  CHECK(found.out_first[0] == "tray");
}

TEST_CASE("a post one millimetre thick in the way is seen at any place of the way") {
  for (const double x : {108.0, 131.5, 163.2, 196.0}) {
    // A floor to ceiling sheet across the only way out of a tunnel round the card.
    const std::string tunnel =
        "[[part]]\nname = \"roof\"\nsolid = { plate = [600, 400, 2] }\nat = [-200, -100, " +
        std::to_string(seat + 12.0) + "]\n[[part]]\nname = \"sheet\"\nsolid = { box = [1, 400, 40] }\nat = [" +
        std::to_string(x) +
        ", -100, 1.57]\n[[part]]\nname = \"back\"\nsolid = { box = [1, 400, 40] }\nat = [10, -100, 1.57]\n"
        "[[part]]\nname = \"left\"\nsolid = { box = [300, 1, 40] }\nat = [5, 45, 1.57]\n"
        "[[part]]\nname = \"right\"\nsolid = { box = [300, 1, 40] }\nat = [5, 74, 1.57]\n";
    const fit::Seating found = seating(board(tunnel));
    CAPTURE(x);
    CHECK(way(found).verdict == fit::Verdict::does_not_fit);
  }
}

TEST_CASE("a bar whose height is not known well enough makes the way marginal") {
  // All round the board, so that every way passes under it; the plain way at 20 degrees rises past it only when it is
  // high.
  const auto roof = [](const std::string& by) {
    return "[[part]]\nname = \"roof\"\nsolid = { plate = [900, 900, 2] }\nabove = { part = \"board\", by = \"" + by +
           "\", at = [-350, -350] }\n";
  };
  // At the least angle the end's upper corner is 80 sin 5 + 2.3 cos 5 = 9.26 above the underside, 11.76 above the
  // board, less when the angle may not be less. Sure above 13, impossible below 9.
  CHECK(way(seating(board(roof("14.0 ±0.2")))).verdict == fit::Verdict::fits);
  CHECK(way(seating(board(roof("9.0 ±0.2")))).verdict == fit::Verdict::does_not_fit);
  const fit::Seating found = seating(board(roof("11.7 ±1.0")));
  CHECK(way(found).verdict == fit::Verdict::marginal);
  CHECK(way(found).gap->min < 0.0);
  CHECK(way(found).gap->max > 0.0);
}

TEST_CASE("a drive slides out of the side of its cage that is open") {
  const std::string inside = "inside = { width = 71, height = 12, depth = 105, behind = 40 }\n";
  const auto code = [&](const std::string& more) {
    return way(seating(test::bay("2.5in", inside + more) + test::drive("2.5in/7", "sata 6"))).why;
  };
  CHECK(code("").word("through") == "end");  // nobody said which wall opens: told, not judged
  CHECK(code("opens = \"end\"").word("way") == "along");
  CHECK(code("opens = \"rear\"").word("way") == "back");
  CHECK(code("opens = \"roof\"").word("way") == "up");
  CHECK(code("opens = \"roof\"").word("through").empty());
}

TEST_CASE("a drive that a wall locks into its cage does not fit") {
  const std::string walls = "inside = { width = 71, height = 12, depth = 105, behind = 40 }\nopens = \"end\"\n";
  const std::string post = "[[part]]\nname = \"pillar\"\nsolid = { box = [10, 10, 50] }\nat = [215, 145, 1]\n";
  const auto build = [&](const std::string& part) {
    std::string text = test::bay("2.5in", walls) + test::drive("2.5in/7", "sata 6");
    return seating(text.insert(text.find("[[bay]]"), part));
  };
  CHECK(build("").verdict == fit::Verdict::fits);
  const fit::Seating locked = build(post);
  CHECK(locked.verdict == fit::Verdict::does_not_fit);
  CHECK(way(locked).between[1] == "pillar");
  CHECK(build(post + "removable = true\n").out_first == std::vector<std::string>{"pillar"});
}

TEST_CASE("what stands into the seated drive is in its way all the same") {
  // The drive's far end is at most 100.45 from its connector (SFF-8201), so at x = 200.45; the pillar begins 2 before.
  const std::string walls = "inside = { width = 71, height = 12, depth = 105, behind = 40 }\nopens = \"end\"\n";
  std::string text = test::bay("2.5in", walls) + test::drive("2.5in/7", "sata 6");
  text.insert(text.find("[[bay]]"),
              "[[part]]\nname = \"pillar\"\nsolid = { box = [20, 20, 120] }\nat = [198.45, 140, 1]\n");
  const fit::Seating found = seating(text);
  CHECK(way(found).verdict == fit::Verdict::does_not_fit);
  CHECK(way(found).between[1] == "pillar");
}

TEST_CASE("a height known as a maximum lets no drive through a wall") {
  const std::string walls = "inside = { width = 103, height = 40, depth = 160, behind = 40 }\nopens = \"end\"\n";
  std::string text = test::bay("3.5in", walls) + test::drive("3.5in/26.1", "sata 6");
  text.insert(text.find("[[bay]]"),
              "[[part]]\nname = \"pillar\"\nsolid = { box = [12, 20, 120] }\nat = [265, 140, 1]\n");
  CHECK(way(seating(text)).verdict == fit::Verdict::does_not_fit);
}

TEST_CASE("a place that comes out takes what stands on it along, and leaves the rest behind") {
  const std::string walls = "inside = { width = 71, height = 12, depth = 105, behind = 40 }\nopens = \"end\"\n";
  const auto build = [&](const std::string& pillar) {
    std::string text = test::bay("2.5in", walls) + test::drive("2.5in/7", "sata 6");
    text.insert(text.find("[[bay]]"),
                "removable = true\n[[part]]\nname = \"pillar\"\nsolid = { box = [10, 10, 50] }\n" + pillar);
    return way(seating(text));
  };
  CHECK(build("at = [215, 145, 1]\n").why.word("out") == "floor");
  CHECK(build("on = { part = \"floor\", at = [215, 145] }\n").verdict == fit::Verdict::does_not_fit);
}

TEST_CASE("a backplane's receptacle lets a drive leave along itself only") {
  const std::string bay =
      test::bay("e1s", "inside = { width = 12, height = 35, depth = 120 }\n", "bay", "\"pcie 4.0 x4\"");
  const fit::Seating found = seating(bay + test::drive("e1s/9.5", "pcie 4.0 x4"));
  CHECK(way(found).why.word("way") == "along");
}

TEST_CASE("an add-in card goes straight down into its slot") {
  const fit::Seating found =
      seating(test::slot("pcie/x16", "pcie 4.0 x16") + test::drive("add-in card/x4", "pcie 4.0 x4"));
  CHECK(way(found).why.code == fit::Code::way_plain);
  CHECK(way(found).why.word("way") == "up");
}

TEST_CASE("the way that a seating keeps is free at every one of ten thousand poses") {
  const std::string text = "title = \"way\"\n" + board(bar(seat + 12.0));
  const auto read = build::read_text(text, "way.build.toml");
  REQUIRE(std::holds_alternative<build::Build>(read));
  const auto& build = std::get<build::Build>(read);
  const fit::Host host = fit::compile(build);
  const fit::Seated seated = fit::seat(host, build, build.drives[0], 0);
  const fit::Seating found = fit::check(build, {}).seatings.at(0);
  REQUIRE_FALSE(found.way_out.empty());
  REQUIRE(host.parts[1].count == 1);
  const int bar_element = host.parts[1].first;
  double least = 1e9;
  int asked = 0;
  geometry::Pose before;
  for (const geometry::Movement& leg : found.way_out) {
    const int poses = 10000 / static_cast<int>(found.way_out.size());
    for (int i = 0; i <= poses; ++i) {
      const geometry::Pose pose = leg.at(static_cast<double>(i) / poses).after(before);
      for (int a = seated.scene.first_element(); a < seated.scene.element_count(); ++a) {
        if (!seated.brings(a) || seated.fixed_after.contains(a)) continue;
        const fit::Element& own = seated.scene.element(a);
        least = std::min(least, geometry::gap({own.placed.solid, pose.after(own.placed.pose)},
                                              seated.scene.element(bar_element).placed)
                                    .mm);
        ++asked;
      }
    }
    before = leg.at(1.0).after(before);
  }
  CHECK(asked >= 10000);
  CHECK(least >= -1e-6);
}

TEST_CASE("a board that comes out takes its own sockets along") {
  // A riser board lies over the card with a socket of its own hanging from it; nothing of it stays behind.
  const std::string riser = "[[part]]\nname = \"riser\"\nsolid = { plate = [600, 400, 2] }\nat = [-200, -100, " +
                            std::to_string(seat + 10.0) +
                            "]\nremovable = true\n[[slot]]\nname = \"other slot\"\non = { part = \"riser\", face = "
                            "\"back\", at = [230, 160], "
                            "toward = \"+x\" }\nsocket = \"m2/M/H4.2\"\nlengths = [2242]\nbus = \"pcie 4.0 x4\"\n";
  std::string text = board("");
  text.insert(text.find("[[slot]]"), riser);
  const std::string whole = "title = \"riser\"\n" + text;
  const auto read = build::read_text(whole, "riser.build.toml");
  REQUIRE(std::holds_alternative<build::Build>(read));
  for (const fit::Seating& found : fit::check(std::get<build::Build>(read), {}).seatings) {
    if (found.place != "slot") continue;
    CHECK(way(found).why.code == fit::Code::way_after);
    CHECK(found.out_first == std::vector<std::string>{"riser"});
  }
}
