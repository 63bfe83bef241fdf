// What the README shows is what the program says.
#include "commands/run.h"

#include <doctest/doctest.h>

using namespace baywright;

TEST_CASE("the output in the README is the real one, line by line") {
  const std::string readme = test::source_text("README.md");
  const test::Folder folder;
  const std::string script =
      "cd '" BAYWRIGHT_SOURCE "' && exec '" BAYWRIGHT_PROGRAM "' check models/builds/thin-desktop.build.toml";
  int shown = 0;
  for (const std::string& line : test::lines(folder.spawn("/bin/sh", {"-c", script}).out)) {
    if (line.empty()) continue;
    CAPTURE(line);
    const bool there = readme.find("    " + line + "\n") != std::string::npos;
    CHECK(there);
    ++shown;
  }
  CHECK(shown > 15);
}

TEST_CASE("the drawing in the README is the real one") {
  const test::Folder folder;
  const std::string build = test::source_path("models/builds/thin-desktop.build.toml").string();
  const bool same = folder.run({"draw", build, "-o", "-"}).out == test::source_text("models/builds/thin-desktop.svg");
  CHECK(same);
}
