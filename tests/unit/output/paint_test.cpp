#include "output/paint.h"

#include "support/check_mm.h"

#include <array>
#include <cmath>
#include <cstdio>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <limits>
#include <numbers>
#include <unistd.h>

using namespace baywright::output;
using baywright::test::check_mm;

namespace {

constexpr int side = 64;

/// A white picture with the group drawn over it.
std::vector<std::uint8_t> painted(const Group& group) {
  std::vector<std::uint8_t> rgba(std::size_t{4} * side * side, 255);
  CHECK(paint_over(rgba, side, side, group) == std::nullopt);
  return rgba;
}

int red(const std::vector<std::uint8_t>& rgba, int x, int y) {
  return rgba[4 * (static_cast<std::size_t>(y) * side + static_cast<std::size_t>(x))];
}

/// How much ink a picture holds, in whole pixels of black, and about which point.
struct Inked {
  double amount = 0.0;
  Vec2 centre{0.0};
};

Inked inked(const std::vector<std::uint8_t>& rgba) {
  Inked sum;
  for (int y = 0; y < side; ++y)
    for (int x = 0; x < side; ++x) {
      const double dark = 1.0 - red(rgba, x, y) / 255.0;
      sum.amount += dark;
      sum.centre += dark * Vec2(x + 0.5, y + 0.5);
    }
  sum.centre /= sum.amount;
  return sum;
}

Outline square(double from, double to) {
  return {{from, from}, {to, from}, {to, to}, {from, to}};
}

template <typename Drawn>
Group only(Drawn drawn) {
  Group group;
  group.add(std::move(drawn));
  return group;
}

const std::string black = "#000000";

/// What a program prints.
std::string said(const std::string& command) {
  std::FILE* pipe = popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::string out;
  for (int c = std::fgetc(pipe); c != EOF; c = std::fgetc(pipe)) out += static_cast<char>(c);
  CHECK(pclose(pipe) == 0);
  return out;
}

/// A file of these bytes, gone with its owner.
struct Scratch {
  std::string path = (std::filesystem::temp_directory_path() / ("paint" + std::to_string(getpid()) + ".pdf")).string();
  explicit Scratch(const std::string& bytes) { std::ofstream(path, std::ios::binary) << bytes; }
  ~Scratch() { std::filesystem::remove(path); }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;
};

Sheet ruler() {
  Sheet sheet;
  sheet.title = "a ruler \xFF\x01";
  sheet.all.add(Line{{{20, 30}, {120, 30}}, false, {thick_line, ink, false}});
  sheet.all.add(Text{{20, 40}, "Ø3.40 ±0.10 ≥ ünder\x02\xC3", 4.0, Anchor::start, false, false, true, ink});
  return sheet;
}

}  // namespace

TEST_CASE("areas of ink are those of geometry") {
  const Inked disc = inked(painted(only(Disc{{30, 34}, 20.0, black, {}})));
  check_mm(disc.amount, std::numbers::pi * 400.0, 3.0);  // a grey step in 255 for each pixel of the rim
  check_mm(disc.centre.x, 30.0, 0.01);
  check_mm(disc.centre.y, 34.0, 0.01);
  // Holes: even and odd.
  const Area ring{{square(10, 50), square(20, 40)}, black, Pattern::none, 0.0, 1.2, {}};
  CHECK(inked(painted(only(ring))).amount == 40 * 40 - 20 * 20);
  CHECK(red(painted(only(ring)), 30, 30) == 255);
  // A closed line has mitred corners: 36² - 28².
  CHECK(inked(painted(only(Line{square(16, 48), true, {4.0, black, false}}))).amount == 36 * 36 - 28 * 28);
}

TEST_CASE("a group draws nothing outside its clip and what comes later lies on top") {
  Group clipped = only(Area{{square(0, 64)}, black, Pattern::none, 0.0, 1.2, {}});
  clipped.clip = Box{{8, 16}, {24, 48}};
  Group all;
  all.add(clipped);
  all.add(Disc{{40, 10}, 2.0, black, {}});  // the clip ends with its group
  const auto rgba = painted(all);
  CHECK(red(rgba, 8, 16) == 0);
  CHECK(red(rgba, 7, 16) == 255);
  CHECK(red(rgba, 23, 47) == 0);
  CHECK(red(rgba, 24, 47) == 255);
  CHECK(red(rgba, 40, 10) == 0);
  all.add(Area{{square(0, 64)}, paper, Pattern::none, 0.0, 1.2, {}});
  CHECK(painted(all) == std::vector<std::uint8_t>(std::size_t{4} * side * side, 255));
}

TEST_CASE("dashes and patterns leave what they should") {
  const Pen broad{4.0, black, true};  // dashes of 12, spaces of 5: four dashes in 64
  CHECK(inked(painted(only(Line{{{0, 30}, {64, 30}}, false, broad}))).amount == 4 * 12 * 4);
  Area dotted{{square(0, 64)}, "", Pattern::dots, 0.0, 8.0, {2.0, black, false}};
  check_mm(inked(painted(only(dotted))).amount, 49 * 4 * std::numbers::pi + 15 * 2 * std::numbers::pi, 12.0);
}

TEST_CASE("letters stand where their anchor says and read upward from the right edge") {
  const auto letters = [](Anchor anchor, bool upward) {
    return inked(painted(only(Text{{32, 32}, "HHH", 12.0, anchor, true, upward, false, black}))).centre;
  };
  CHECK(letters(Anchor::start, false).x > 40.0);
  check_mm(letters(Anchor::middle, false).x, 32.0, 0.2);
  CHECK(letters(Anchor::end, false).x < 24.0);
  check_mm(letters(Anchor::start, false).y, 32.0 - 0.5 * 0.727 * 12.0, 0.3);  // Inter's capitals: 0.727 of the em
  CHECK(letters(Anchor::start, true).y < 24.0);
  check_mm(letters(Anchor::middle, true).y, 32.0, 0.2);
}

TEST_CASE("a halo keeps lines off the letters") {
  Group group = only(Area{{square(0, 64)}, black, Pattern::none, 0.0, 1.2, {}});
  group.add(Text{{32, 40}, "I", 30.0, Anchor::middle, false, false, true, black});
  const Inked with = inked(painted(group));
  CHECK(with.amount < side * side - 100.0);
  CHECK(with.amount > side * side - 1000.0);
}

TEST_CASE("what cannot be drawn is left out and the rest is drawn") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const double huge = std::numeric_limits<double>::infinity();
  Group group = only(Line{{{nan, 3}, {5, 5}}, false, {2.0, black, false}});
  group.add(Line{{{3, 3}, {1e300, 5}}, false, {2.0, black, false}});
  group.add(Disc{{10, huge}, 3.0, black, {}});
  group.add(Disc{{10, 10}, nan, black, {}});
  group.add(Text{{nan, 1}, "x", 12.0});
  group.add(Text{{10, 10}, "x", nan});
  group.add(Line{{}, true, {}});
  group.add(Text{{80, 80}, "\xFF\xC0\x80\xED\xA0\x80", 12.0});
  CHECK(painted(group) == std::vector<std::uint8_t>(std::size_t{4} * side * side, 255));
  group.add(Disc{{32, 32}, 10.0, black, {}});
  check_mm(inked(painted(group)).amount, 100.0 * std::numbers::pi, 2.0);
}

TEST_CASE("a picture of another size than its bytes is refused") {
  std::vector<std::uint8_t> rgba(16, 255);
  CHECK(paint_over(rgba, 2, 2, {}) == std::nullopt);
  CHECK(paint_over(rgba, 3, 2, {}) != std::nullopt);
  CHECK(paint_over(rgba, -2, -2, {}) != std::nullopt);
  CHECK(to_png(rgba, 1, 2).empty());
  CHECK(to_png(Sheet{}, 1e9).empty());
  CHECK(to_png(Sheet{}, 0.0).empty());
  CHECK(to_pdf({}).empty());
}

TEST_CASE("a sheet as PNG is its group on white paper, at the pixels that were asked for") {
  Sheet sheet;
  sheet.width = sheet.height = side;
  sheet.all = only(Disc{{20, 20}, 9.5, "#3070A0", Pen{1.0, ink, false}});
  CHECK(to_png(sheet, 1.0) == to_png(painted(sheet.all), side, side));
  const std::string png = to_png(ruler(), 300.0 / 25.4);
  REQUIRE(png.size() > 24);
  CHECK(png.substr(0, 8) == "\x89PNG\r\n\x1A\n");
  const auto word = [&png](std::size_t at) {
    unsigned value = 0;
    for (std::size_t i = 0; i < 4; ++i) value = value << 8U | static_cast<unsigned char>(png[at + i]);
    return value;
  };
  CHECK(word(16) == 3508);  // A4 at 300 dots an inch
  CHECK(word(20) == 2480);
}

TEST_CASE("a PDF is true to scale, holds its letters and has the same bytes each time") {
  Sheet upright = ruler();
  std::swap(upright.width, upright.height);
  const std::string pdf = to_pdf({ruler(), upright});
  CHECK(pdf == to_pdf({ruler(), upright}));
  const Scratch file(pdf);
  const std::string info = said("pdfinfo -f 1 -l 2 " + file.path);
  CHECK(info.find("Pages:           2\n") != std::string::npos);
  CHECK(info.find("Page    1 size:  841.89 x 595.276 pts (A4)") != std::string::npos);
  CHECK(info.find("Page    2 size:  595.276 x 841.89 pts (A4)") != std::string::npos);
  CHECK(info.find("Title:           a ruler") != std::string::npos);
  CHECK(info.find("2000") != std::string::npos);
  CHECK(said("pdffonts " + file.path).find("Inter") != std::string::npos);
  CHECK(said("pdftotext " + file.path + " -").find("Ø3.40 ±0.10 ≥ ünder") != std::string::npos);
}
