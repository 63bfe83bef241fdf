// What is wrong about tools and nuts is said once, at its place, with what would be right.
#include "commands/run.h"
#include "commands/slips.h"

#include <doctest/doctest.h>

using namespace baywright;
using test::check_slips;

namespace {

constexpr const char* bench = "tools.build.toml";

}  // namespace

TEST_CASE("the bench of tools itself is taken") {
  const test::Run run = test::checked(test::source_text("tests/commands/data/tools.build.toml"));
  CHECK(run.err == "");
  CHECK(run.status == 0);
}

TEST_CASE("a tool that lacks a measure or has one too many") {
  check_slips(
      bench,
      {
          {"handle = { diameter = 15, length = 90 }", "", "20:1", "`thin driver` has neither `handle` nor `head`; add"},
          {"handle = { diameter = 15, length = 90 }",
           "handle = { diameter = 15, length = 90 }\nhead   = { diameter = 15, height = 9 }", "24:10",
           "`thin driver` has both `handle` and `head`; keep one of them"},
          {"shaft  = { diameter = 3, length = 75 }", "", "20:1", "[[tool]] has no `shaft`"},
          {"length = 75", "lenght = 75", "22:26", "did you mean `length`?"},
          {"length = 75", "length = 0", "22:35", "the length `thin driver shaft length` is 0.00 mm"},
          {"length = 75", "length = \"?\"", "22:35", "only a measured length of a build can be asked for"},
          {"length = 75", "length = \"max 75\"", "22:35", "`length` is known on one side only; measure the tool"},
          {"height = 12", "length = 12", "28:26", "known keys: diameter, height or lever"},
          {"height = 12", "height = 12, lever = 9", "28:47", "the lever ends within the head"},
          {"\"low ratchet\"", "\"thin driver\"", "26:9", "the name `thin driver` is taken"},
      });
}

TEST_CASE("a nut where nothing but the drive's own thread holds") {
  check_slips(bench, {{"standoffs = 5", "spacers = 5", "13:131", "a nut outside the sheet holds a stand-off"}});
}
