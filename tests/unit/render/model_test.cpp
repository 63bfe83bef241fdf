// A seating as things to look at: what they are, what they share, and where they go.
#include "geometry/gap.h"
#include "render/look.h"
#include "render/put_in.h"
#include "support/check_mm.h"
#include "support/shown_build.h"

#include <cmath>
#include <doctest/doctest.h>

using namespace baywright;
using geometry::Vec3;

namespace {

struct Thin {
  std::unique_ptr<test::ShownBuild> shown = test::shown_build("thin-desktop", "card with tall fins");
  render::Model model = render::model_of(shown->build, shown->seated, shown->seating);

  [[nodiscard]] const render::Thing& thing(const std::string& part, const std::string& body) const {
    const auto found = std::find_if(model.things.begin(), model.things.end(),
                                    [&](const auto& each) { return each.part == part && each.body == body; });
    REQUIRE(found != model.things.end());
    return *found;
  }
};

}  // namespace

TEST_CASE("every solid of the machine and the drive is a thing of its material") {
  const Thin thin;
  REQUIRE(thin.model.things.size() == static_cast<std::size_t>(thin.shown->seated.scene.element_count()));
  using enum render::Material;
  const struct {
    const char* part;
    const char* body;
    render::Material material;
    bool drive;
    bool late;
  } rows[] = {{"board", "board", board, false, false},
              {"tray", "tray", case_part, false, false},
              {"rear slot socket", "socket", socket, false, false},
              {"card with tall fins", "edge", card, true, false},
              {"card with tall fins", "chips", chips, true, false},
              {"pad", "pad", pad, true, false},
              {"tall fin heatsink", "fin 3", heatsink, true, false},
              {"screw", "head", screw, true, true},
              {"stand-off", "standoff", screw, true, true}};
  for (const auto& row : rows) {
    CAPTURE(row.part);
    CAPTURE(row.body);
    const render::Thing& thing = thin.thing(row.part, row.body);
    CHECK(thing.material == row.material);
    CHECK(thing.drive == row.drive);
    CHECK(thing.late == row.late);
  }
  CHECK(thin.thing("tray", "tray").out_first);
  CHECK(!thin.thing("board", "board").out_first);
}

TEST_CASE("each fin's overlap with the tray has the volume of a box") {
  const Thin thin;
  REQUIRE(thin.model.overlaps.size() == 9);  // one a fin, though the finding names the first
  for (const render::Overlap& overlap : thin.model.overlaps) {
    const geometry::Bounds fin = thin.shown->seated.scene.element(overlap.elements[0]).bounds;
    const geometry::Bounds tray = thin.shown->seated.scene.element(overlap.elements[1]).bounds;
    const Vec3 shared = glm::min(fin.high, tray.high) - glm::max(fin.low, tray.low);
    CHECK(std::abs(overlap.volume - shared.x * shared.y * shared.z) < 1e-3);
    CHECK(overlap.verdict == fit::Verdict::does_not_fit);
  }
}

TEST_CASE("a gap is dimensioned where and as long as the solids say") {
  const Thin thin;
  REQUIRE(!thin.model.gaps.empty());
  CHECK(thin.model.gaps.front().finding == thin.shown->seating.deciding);
  CHECK(thin.model.gaps.front().figure == "0.30 over");
  CHECK(thin.model.gaps.front().asked == "asked 0.50");
  int equal = 0;
  int askew = 0;  // solids that stand beside each other are farther apart than along one direction
  for (const render::Measured& gap : thin.model.gaps) {
    const fit::Finding& finding = thin.shown->seating.findings[gap.finding];
    CAPTURE(gap.between);
    const auto measured = geometry::gap(thin.thing(finding.between[0], finding.bodies[0]).placed,
                                        thin.thing(finding.between[1], finding.bodies[1]).placed);
    test::check_mm(glm::dot(gap.to - gap.from, -finding.toward), finding.gap->nominal, 1e-9);
    CHECK(measured.mm >= finding.gap->nominal - 0.02);  // a figure is the room along its direction: never more
    ++(std::abs(measured.mm - finding.gap->nominal) < 0.02 ? equal : askew);
  }
  CHECK(equal >= 8);
  CHECK(askew <= 2);
}

TEST_CASE("apart, what lies outward goes farther, and the tray that comes out first lies beyond it all") {
  const Thin thin;
  const Vec3 out = thin.model.place.turn[2];
  const auto height = [&](const char* part, const char* body) { return glm::dot(thin.thing(part, body).apart, out); };
  const double standoff = height("stand-off", "standoff");
  const double card = height("card with tall fins", "card");
  const double pad = height("pad", "pad");
  const double heatsink = height("tall fin heatsink", "base");
  const double tray = height("tray", "tray");
  CHECK(standoff > 3.0);
  CHECK(card > standoff + 3.0);
  CHECK(pad > card + 3.0);
  CHECK(heatsink > pad + 3.0);
  CHECK(tray > heatsink + 3.0);
  CHECK(height("screw", "head") > card + 3.0);
  CHECK(glm::length(thin.thing("board", "board").apart) == 0.0);
  CHECK(glm::length(thin.thing("rear slot socket", "socket").apart) == 0.0);
}

TEST_CASE("on its way in the drive turns at its socket and the tray is out") {
  const Thin thin;
  const render::Thing& card = thin.thing("card with tall fins", "card");
  const render::Thing& tray = thin.thing("tray", "tray");
  const auto stands = [&](const render::Thing& thing, double put_in) {
    return render::stands_at(thin.model, thing, 0.0, put_in);
  };
  CHECK(stands(card, 1.0).shift == Vec3(0.0));
  CHECK(stands(card, 0.9).shift == Vec3(0.0));  // the tray is on its way out
  CHECK(glm::length(stands(tray, 0.9).shift) > 0.0);
  for (const double share : {0.75, 0.5, 0.2, 0.0}) {
    CAPTURE(share);
    CHECK(glm::length(stands(tray, share).shift - tray.apart) < 1e-9);
    CHECK(stands(thin.thing("board", "board"), share).shift == Vec3(0.0));
  }
  // At the end of the way the card is held at the angle of the first leg, 20 degrees.
  const double cosine = glm::dot(stands(card, 0.0).turn[2], Vec3(0.0, 0.0, 1.0));
  CHECK(std::abs(cosine - std::cos(20.0 * 3.14159265358979 / 180.0)) < 1e-9);
}
