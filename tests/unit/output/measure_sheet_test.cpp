// The sheet to measure by: what lies on the paper, and that the faces it points at are as far apart as the dimension
// says.
#include "output/measure_sheet.h"

#include "output/measure_words.h"
#include "output/measured_faces.h"
#include "output/views.h"
#include "support/check_mm.h"
#include "unit/output/demos.h"
#include "unit/output/sheet_checks.h"

#include <doctest/doctest.h>
#include <string>

using namespace baywright;
using namespace baywright::output;
using test::check_mm;

namespace {

std::string all_words(const Sheet& sheet) {
  std::vector<Text> texts;
  collect(sheet.all, texts);
  std::string out;
  for (const Text& text : texts) out += text.text + '\n';
  return out;
}

std::vector<plans::Reading> readings_of(const Demo& demo) {
  return plans::worth_measuring(demo.seating, tolerance::Method::worst);
}

}  // namespace

TEST_CASE("measuring sheets of the demos: readable, on the paper, with the caution and boxes") {
  int sheets = 0;
  for (const char* name : {"thin-desktop", "seven-mm-bay", "tower-bay", "panel"})
    for (const Demo& demo : demos(name)) {
      CAPTURE(demo.seating.drive);
      CAPTURE(demo.seating.place);
      const auto readings = readings_of(demo);
      const Sheet sheet = draw_measure_sheet(*demo.build, demo.seated, demo.seating, readings);
      check_texts(sheet, 3);
      CHECK(points_off(sheet, sheet.all) == 0);
      const std::string words = all_words(sheet);
      CHECK(words.find("power off") != std::string::npos);
      CHECK(words.find("Zero the caliper") != std::string::npos);
      if (!readings.empty()) CHECK(words.find("3rd") != std::string::npos);
      ++sheets;
    }
  CHECK(sheets > 20);
}

TEST_CASE("the faces that are numbered are as far apart as their dimension") {
  const std::vector<Demo> thin = demos("thin-desktop");
  REQUIRE(thin.size() == 3);
  const Demo& demo = thin[2];
  const SectionView section = section_view(demo.seated, Stance::m2, nullptr);
  const std::vector<Seen> seen = cut_scene(demo.seated.scene, section.view, section.window, 1.0, true);
  struct Want {
    const char* name;
    double mm;  // between the faces: the pad is pressed by 30 %
  };
  int found = 0;
  for (const Want& want : {Want{"tray under board", 9.1}, Want{"heatsink height", 4.0}, Want{"pad thickness", 0.7},
                           Want{"card thickness", 0.8}}) {
    CAPTURE(want.name);
    for (const plans::Reading& reading : readings_of(demo)) {
      if (reading.dimension.name != want.name) continue;
      const auto faces = measured_faces(demo.seated.scene, section.view, seen, reading.dimension);
      REQUIRE(faces.has_value());
      CHECK(faces->axis == 1);
      CHECK(faces->to > faces->from);
      check_mm(faces->high - faces->low, want.mm, 0.01);
      ++found;
    }
  }
  CHECK(found == 4);
}

TEST_CASE("what a reading tells is rounded away from a promise") {
  plans::Reading reading;
  reading.to = 0.14;
  reading.fits = 7.9912;
  reading.fails = 7.2988;
  CHECK(say_thresholds(reading) == "fits from 8.00 up; does not at 7.29 or less");
  reading.more_is_room = false;
  CHECK(say_thresholds(reading) == "fits up to 7.99; does not at 7.30 or more");
  reading.fits.reset();
  reading.fails.reset();
  CHECK(say_thresholds(reading).empty());
}
