// `picture`: a whole file or none, of the size asked for, without a display.
#include "commands/run.h"

#include <doctest/doctest.h>

using namespace baywright;

namespace {

const std::string thin = test::source_path("models/builds/thin-desktop.build.toml");

/// Width and height as the header of a PNG file has them (W3C PNG specification, 11.2.2 IHDR); empty: it is none.
std::string size_of(const std::string& png) {
  if (png.size() < 33 || png.substr(0, 8) != "\x89PNG\r\n\x1a\n" || png.substr(12, 4) != "IHDR") return {};
  const auto number = [&](std::size_t at) {
    unsigned out = 0;
    for (std::size_t i = at; i < at + 4; ++i) out = out << 8U | static_cast<unsigned char>(png[i]);
    return std::to_string(out);
  };
  return number(16) + "x" + number(20);
}

}  // namespace

TEST_CASE("a picture is made without a display, and the command says which seating it shows") {
  const test::Folder folder;
  const std::vector<std::string> arguments = {"-u", "DISPLAY", "-u",    "WAYLAND_DISPLAY", BAYWRIGHT_PROGRAM, "picture",
                                              thin, "-o",      "y.png", "--size",          "320x200"};
  const test::Run run = folder.spawn("/usr/bin/env", arguments);
  CHECK(run.err == "");
  CHECK(run.status == 0);  // the picture was asked for, and is there; the worst of the three is shown
  CHECK(run.out == "drew card with tall fins in rear slot (does not fit): y.png\n");
  CHECK(folder.names() == std::vector<std::string>{"y.png"});
  CHECK(size_of(folder.read("y.png")) == "320x200");
  const std::string first = folder.read("y.png");
  CHECK(folder.spawn("/usr/bin/env", arguments).status == 0);
  CHECK((folder.read("y.png") == first));
}

TEST_CASE("each way of looking makes another picture") {
  const test::Folder folder;
  std::vector<std::string> seen;
  for (const std::vector<std::string>& options : {std::vector<std::string>{},
                                                  {"--section"},
                                                  {"--apart"},
                                                  {"--clearance-map", "tray"},
                                                  {"--dark"},
                                                  {"--view", "top"}}) {
    std::vector<std::string> arguments = {"picture", thin, "-o", "-", "--size", "160x120"};
    arguments.insert(arguments.end(), options.begin(), options.end());
    const test::Run run = folder.run(arguments);
    CHECK(run.status == 0);
    CHECK(run.err == "");
    CHECK(size_of(run.out) == "160x120");
    for (const std::string& other : seen) CHECK((other != run.out));
    seen.push_back(run.out);
  }
  const std::vector<std::string> light = {"picture", thin, "-o", "-", "--size", "160x120", "--light"};
  CHECK((folder.run(light).out == seen.front()));
}

TEST_CASE("a turntable is numbered from nought") {
  const test::Folder folder;
  const test::Run run = folder.run({"picture", thin, "-o", "t.png", "--turntable", "3", "--size", "96x64"});
  CHECK(run.status == 0);
  CHECK(folder.names() == std::vector<std::string>{"t-000.png", "t-001.png", "t-002.png"});
  CHECK((folder.read("t-000.png") != folder.read("t-001.png")));
}

TEST_CASE("every demonstration build has its picture") {
  const test::Folder folder;
  for (const char* const demo : {"carrier", "panel", "rack", "laptop", "mesh-heatsink"}) {
    CAPTURE(demo);
    const std::string file = test::source_path("models/builds/" + std::string(demo) + ".build.toml");
    for (const char* const way : {"--light", "--section", "--apart"}) {
      CAPTURE(way);
      const test::Run run = folder.run({"picture", file, "-o", "-", "--size", "128x96", way});
      CHECK(run.err == "");
      CHECK(run.status == 0);
      CHECK(size_of(run.out) == "128x96");
    }
  }
}

TEST_CASE("a picture that cannot be meant is refused before anything is written") {
  const test::Folder folder;
  const auto refused = [&](std::vector<std::string> options, const std::string& says) {
    CAPTURE(says);
    options.insert(options.begin(), {"picture", thin});
    test::check_refused(folder.run(options), 2, "baywright: ", says);
  };
  refused({"-o", "y.jpg"}, "ends in .png");
  refused({"-o", "y.png", "--size", "63x200"}, "64 to 8192");
  refused({"-o", "y.png", "--size", "200x8193"}, "64 to 8192");
  refused({"-o", "y.png", "--size", "200"}, "as 1280x800");
  refused({"-o", "y.png", "--size", "200x100px"}, "as 1280x800");
  refused({"-o", "y.png", "--view", "frnt"}, "did you mean `front`?");
  refused({"-o", "y.png", "--view", "isometric"}, "the views are");
  refused({"-o", "y.png", "--clearance-map", "trai"}, "did you mean `tray`?");
  refused({"-o", "y.png", "--turntable", "1"}, "2 to 999");
  refused({"-o", "-", "--turntable", "4"}, "name one with -o");
  CHECK(folder.names().empty());
}

TEST_CASE("without OpenGL the command says what to install, and that draw works all the same") {
  const test::Folder folder;
  const test::Run run = folder.spawn(
      "/usr/bin/env", {"__EGL_VENDOR_LIBRARY_FILENAMES=/dev/null", BAYWRIGHT_PROGRAM, "picture", thin, "-o", "y.png"});
  CHECK(run.status == 3);
  CHECK(run.out == "");
  CHECK(run.err.find("install") != std::string::npos);
  CHECK(run.err.find("draw") != std::string::npos);
  CHECK(folder.names().empty());
}
