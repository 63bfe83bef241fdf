#include "viewer/stops.h"

#include <doctest/doctest.h>
#include <initializer_list>

using baywright::viewer::Stops;

namespace {

void frame(Stops& stops, std::initializer_list<const char*> ids) {
  stops.begin();
  for (const char* id : ids) (void)stops.add(id);
  stops.end();
}

}  // namespace

TEST_CASE("Tab goes through all stops in reading order and round at the ends") {
  Stops stops;
  for (const char* want : {"a", "b", "c", "a"}) {
    stops.move(1);
    frame(stops, {"a", "b", "c"});
    CHECK(stops.at() == want);
  }
  stops.move(-1);
  frame(stops, {"a", "b", "c"});
  CHECK(stops.at() == "c");
  Stops back;
  back.move(-1);
  frame(back, {"a", "b", "c"});
  CHECK(back.at() == "c");
}

TEST_CASE("a stop that is gone is no longer stood on, and a stop can be gone to by name") {
  Stops stops;
  stops.go("b");
  frame(stops, {"a", "b"});
  CHECK(stops.at() == "b");
  frame(stops, {"a"});
  CHECK(stops.at().empty());
  stops.go("a");
  frame(stops, {"a"});
  stops.leave();
  frame(stops, {"a"});
  CHECK(stops.at().empty());
}

TEST_CASE("on a screen without stops Tab does nothing") {
  Stops stops;
  stops.move(1);
  frame(stops, {});
  CHECK(stops.at().empty());
}
