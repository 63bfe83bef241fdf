#include "viewer/settings.h"

#include <cstdlib>
#include <doctest/doctest.h>
#include <filesystem>
#include <string>

using namespace baywright::viewer;

TEST_CASE("settings come back as they were written") {
  Settings settings;
  settings.scale = 1.75;
  settings.dark = true;
  settings.motion = false;
  settings.fractions = {0.4F, 0.25F};
  settings.recent = {"/home/a b/machine \"one\".build.toml", "/tmp/zwei.build.toml"};
  const Settings got = settings_in(to_json(settings));
  CHECK(got.scale == 1.75);
  CHECK(got.dark);
  CHECK(!got.motion);
  CHECK(got.fractions.column == 0.4F);
  CHECK(got.fractions.foot == 0.25F);
  CHECK(got.recent == settings.recent);
}

TEST_CASE("a settings file that is none gives the usual values, never a fault") {
  for (const char* text :
       {"", "{", "[]", "null", "{\"scale\": \"big\", \"dark\": 7, \"recent\": 3}", "{\"scale\": 1e9}",
        "{\"scale\": -1}", "{\"column\": null, \"foot\": 12}", "{\"recent\": [1, null]}"}) {
    CAPTURE(text);
    const Settings got = settings_in(text);
    CHECK(got.scale == 1.0);
    CHECK(!got.dark);
    CHECK(got.fractions.column == Fractions{}.column);
    CHECK(got.fractions.foot == Fractions{}.foot);
    CHECK(got.recent.empty());
  }
}

TEST_CASE("a file name that is no UTF-8 does not keep the settings from being written") {
  Settings settings;
  settings.recent = {std::string("/tmp/\xFF\xFE.build.toml")};
  CHECK(settings_in(to_json(settings)).recent.size() == 1);
}

TEST_CASE("the last opened file stands first, once, and only so many are kept") {
  Settings settings;
  for (int i = 0; i < 12; ++i) remember(settings, "/tmp/" + std::to_string(i) + ".build.toml");
  CHECK(settings.recent.size() == most_recent);
  CHECK(settings.recent.front() == "/tmp/11.build.toml");
  remember(settings, "/tmp/x/../9.build.toml");
  CHECK(settings.recent.size() == most_recent);
  CHECK(settings.recent.front() == "/tmp/9.build.toml");
}

TEST_CASE("scale goes through its steps and stops at 0.75 and 3") {
  CHECK(next_scale(1.0, 1) == 1.125);
  CHECK(next_scale(1.0, -1) == 0.875);
  CHECK(next_scale(3.0, 1) == 3.0);
  CHECK(next_scale(0.75, -1) == 0.75);
  double scale = 0.75;
  int steps = 0;
  while (scale < 3.0 && steps < 100) scale = next_scale(scale, 1), ++steps;
  CHECK(scale == 3.0);
  while (scale > 0.75 && steps < 100) scale = next_scale(scale, -1), ++steps;
  CHECK(scale == 0.75);
}

TEST_CASE("settings live where XDG_CONFIG_HOME says, or below HOME") {
  // XDG Base Directory Specification 0.8: $HOME/.config where XDG_CONFIG_HOME is empty; relative paths are ignored.
  ::setenv("HOME", "/home/somebody", 1);
  ::setenv("XDG_CONFIG_HOME", "/etc/mine", 1);
  CHECK(settings_file() == std::filesystem::path("/etc/mine/baywright/settings.json"));
  ::setenv("XDG_CONFIG_HOME", "relative", 1);
  CHECK(settings_file() == std::filesystem::path("/home/somebody/.config/baywright/settings.json"));
  ::unsetenv("XDG_CONFIG_HOME");
  ::unsetenv("HOME");
  CHECK(!settings_file());
}
