// What the README shows is what the program says.
#include "commands/run.h"

#include <doctest/doctest.h>

using namespace baywright;

namespace {

/// Checks that the README has each line that the program prints, as far as the first `lines` of them that say
/// something.
void check_shown(const std::string& arguments, int least, int most) {
  const std::string readme = test::source_text("README.md");
  const test::Folder folder;
  const std::string script = "cd '" BAYWRIGHT_SOURCE "' && exec '" BAYWRIGHT_PROGRAM "' " + arguments;
  CAPTURE(arguments);
  int shown = 0;
  for (const std::string& line : test::lines(folder.spawn("/bin/sh", {"-c", script}).out)) {
    if (line.empty()) continue;
    if (++shown > most) break;
    CAPTURE(line);
    const bool there = readme.find("    " + line + "\n") != std::string::npos;
    CHECK(there);
  }
  CHECK(shown >= least);
}

}  // namespace

TEST_CASE("the output in the README is the real one, line by line") {
  check_shown("check models/builds/thin-desktop.build.toml", 15, 1000);
  check_shown("check models/builds/tower-bay.build.toml", 8, 8);  // the README leaves off behind the first seating
  check_shown("check models/builds/carrier.build.toml --together", 5, 1000);
  check_shown("parts 3.5in/26.1", 10, 1000);
  check_shown("plans models/builds/thin-desktop.build.toml", 15, 18);
  check_shown("steps models/builds/thin-desktop.build.toml --drive 'card with flat spreader'", 10, 14);
  check_shown(
      "check models/builds/way-in.build.toml | grep --no-group-separator -E -A1 '^The drive|^flat card "
      "in|insertion|does not fit' | grep -v "
      "-e form -e closest",
      9, 1000);
  check_shown("check models/builds/under-the-cooler.build.toml --place 'middle slot'", 8, 1000);
}

TEST_CASE("the drawing in the README is the real one") {
  const test::Folder folder;
  const std::string build = test::source_path("models/builds/thin-desktop.build.toml").string();
  const bool same = folder.run({"draw", build, "-o", "-"}).out == test::source_text("models/builds/thin-desktop.svg");
  CHECK(same);
}
