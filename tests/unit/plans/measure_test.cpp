// Which measurement settles a marginal seating: against the sums by hand, and against checks of the file with the
// limits that it asks for.
#include "plans/measure.h"

#include "support/check_mm.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <string>

namespace {

using namespace baywright;
using fit::Verdict;
using test::check_mm;

struct Case {
  std::string lid = "8.75 ±0.3";
  std::string top = "2.0 ±0.1";
  std::string clearance = "3.2";
  std::string method = "worst";
  std::string use = "m2/2280-?-M";  // else its own code says how high its parts are
};

fit::Seating seating(const Case& c) {
  auto made = build::read_text(
      "title = \"t\"\nmethod = \"" + c.method + "\"\nclearance = " + c.clearance +
          "\n[[part]]\nname = \"board\"\nsolid = { plate = [\"300 ±0\", \"300 ±0\", \"1.5 ±0\"] }\n[[part]]\nname = "
          "\"lid\"\nsolid = { plate = [\"300 ±0\", \"300 ±0\", \"1 ±0\"] }\nremovable = true\nabove = { part = "
          "\"board\", "
          "by = \"" +
          c.lid +
          "\" }\n[[slot]]\nname = \"slot\"\non = { part = \"board\", at = [150, 150], toward = \"+x\" }\nsocket = "
          "\"m2/M/H4.2\"\nlengths = [2280]\nbus = \"pcie 4.0 x4\"\n[[drive]]\nname = \"card\"\nuse = "
          "\"" +
          c.use + "\"\nbus = \"pcie 4.0 x4\"\n" +
          (c.use.find('?') == std::string::npos ? "" : "top = \"" + c.top + "\"\n"),
      "case.build.toml");
  if (const auto* fault = std::get_if<parts::Fault>(&made)) FAIL(fault->text());
  return fit::check(std::get<build::Build>(made), {}).seatings.at(0);
}

}  // namespace

// The gap: lid 8.75 less stand-off 2.45 ±0.03, solder 0.05, card 0.80 ±0.08, chips 2.0 ±0.1: 3.45.

TEST_CASE("the reading that is asked for makes the check sure, and one a little coarser does not") {
  Case c;
  c.clearance = "3.1";  // 0.35 over, of which the others take 0.21
  const auto got = plans::what_settles(seating(c), tolerance::Method::worst);
  REQUIRE(got.has_value());
  REQUIRE(got->readings.size() == 1);
  const plans::Reading lid = got->readings.front();
  CHECK(lid.dimension.name == "lid above board");
  check_mm(lid.to, 0.14, 1e-9);
  c.lid = "8.75 ±0.14";
  CHECK(seating(c).verdict == Verdict::fits);
  c.lid = "8.75 ±0.15";
  CHECK(seating(c).verdict == Verdict::marginal);
  REQUIRE(lid.fits.has_value());
  REQUIRE(lid.fails.has_value());
  check_mm(*lid.fits, 3.1 + 5.30 + 0.21 + 0.14, 1e-9);
  c.lid = std::to_string(*lid.fits + 1e-6) + " ±0.14";
  CHECK(seating(c).verdict == Verdict::fits);
  c.lid = std::to_string(*lid.fits - 0.01) + " ±0.14";
  CHECK(seating(c).verdict == Verdict::marginal);
  c.lid = std::to_string(*lid.fails - 1e-6) + " ±0.14";
  CHECK(seating(c).verdict == Verdict::does_not_fit);
  c.lid = std::to_string(*lid.fails + 0.01) + " ±0.14";
  CHECK(seating(c).verdict == Verdict::marginal);
}

TEST_CASE("on the other side of the edge it settles that it does not fit") {
  Case c;
  c.clearance = "3.75";  // 0.30 short
  const auto got = plans::what_settles(seating(c), tolerance::Method::worst);
  REQUIRE(got.has_value());
  CHECK(got->then == Verdict::does_not_fit);
  REQUIRE(got->readings.size() == 1);
  // 0.30 less card 0.08 and chips 0.1; at its socket end, where it is highest in the best case, the stand-off hardly
  // counts
  check_mm(got->readings.front().to, 0.11, 1e-9);
  c.lid = "8.75 ±0.11";
  CHECK(seating(c).verdict == Verdict::does_not_fit);
  c.lid = "8.75 ±0.12";
  CHECK(seating(c).verdict == Verdict::marginal);
}

TEST_CASE("two measurements where one does not do") {
  Case c;
  c.top = "2.0 ±0.3";
  c.clearance = "3.15";  // 0.30 over; lid and chips take 0.3 each, the rest 0.11
  const auto got = plans::what_settles(seating(c), tolerance::Method::worst);
  REQUIRE(got.has_value());
  REQUIRE(got->readings.size() == 2);
  check_mm(got->readings[0].to, 0.09, 1e-9);  // (0.30 - 0.11) / 2, to hundredths
  check_mm(got->readings[1].to, 0.09, 1e-9);
  CHECK_FALSE(got->readings[0].fits);  // hangs on the other
  c.lid = "8.75 ±0.09";
  c.top = "2.0 ±0.09";
  CHECK(seating(c).verdict == Verdict::fits);
}

TEST_CASE("too near the edge: measuring cannot settle it, and it says what would remain") {
  Case c;
  c.clearance = "3.4";  // 0.05 over
  const auto got = plans::what_settles(seating(c), tolerance::Method::worst);
  REQUIRE(got.has_value());
  CHECK(got->readings.empty());
  check_mm(got->room, 0.05, 1e-9);
  check_mm(got->remain, 0.03 + 0.05 + 0.05 + 0.05, 1e-9);  // the card's thickness is read too
}

TEST_CASE("three readings where two do not do: it does not say that measuring cannot settle it") {
  Case c;
  c.top = "2.0 ±0.3";
  c.clearance = "3.25";  // 0.20 over: stand-off 0.03 and three at 0.05 take 0.18, with the card's ±0.08 0.21
  const auto got = plans::what_settles(seating(c), tolerance::Method::worst);
  REQUIRE(got.has_value());
  REQUIRE(got->readings.size() == 3);
  CHECK(got->then == Verdict::fits);
  for (const plans::Reading& each : got->readings) check_mm(each.to, 0.05, 1e-9);
  CHECK(std::any_of(got->readings.begin(), got->readings.end(), [](const auto& each) { return each.key == "top"; }));
  CHECK(got->readings[2].dimension.name == "card thickness");
  CHECK(got->readings[2].key == "thickness");
  c.lid = "8.75 ±0.05";
  c.top = "2.0 ±0.05\"\nthickness = \"0.80 ±0.05";
  CHECK(seating(c).verdict == Verdict::fits);
}

TEST_CASE(
    "a card's own parts may be lower than its envelope: what they would have to read is said, and nothing silly") {
  const auto top_of = [](const std::string& clearance) {
    Case c;
    c.use = "m2/2280-S3-M";  // parts above the card 1.40 ±0.10
    c.lid = "8.75 ±0.1";
    c.clearance = clearance;
    for (const plans::Reading& each : plans::worth_measuring(seating(c), tolerance::Method::worst))
      if (each.dimension.name == "parts above the card") return std::optional(each);
    return std::optional<plans::Reading>();
  };
  // Lid 8.75 - 0.1 less 2.45 + 0.03, 0.05, 0.80 + 0.08: 5.24 over the bare card; read to ±0.05.
  const auto low = top_of("3.95");
  REQUIRE(low.has_value());
  CHECK(low->key == "top");
  REQUIRE(low->fits.has_value());
  check_mm(*low->fits, 5.24 - 3.95 - 0.05, 1e-9);
  const auto silly = top_of("4.75");
  REQUIRE(silly.has_value());
  CHECK_FALSE(silly->fits.has_value());  // 0.44
}

TEST_CASE("a length that is known as a limit only is to be read, and what it has to read") {
  Case c;
  c.lid = "min 8.25";
  c.clearance = "3.1";
  const fit::Seating open = seating(c);
  REQUIRE(open.verdict == Verdict::marginal);
  const auto got = plans::what_settles(open, tolerance::Method::worst);
  REQUIRE(got.has_value());
  REQUIRE(got->readings.size() == 1);
  CHECK(got->then == Verdict::marginal);
  REQUIRE(got->readings.front().fits.has_value());
  check_mm(*got->readings.front().fits, 3.1 + 5.30 + 0.21 + 0.1, 1e-9);
}

TEST_CASE("by root sum square the others leave more") {
  Case c;
  c.clearance = "3.2";  // 0.25 over; the others by root sum square 0.1315
  c.method = "rss";
  const auto got = plans::what_settles(seating(c), tolerance::Method::rss);
  REQUIRE(got.has_value());
  REQUIRE(got->readings.size() == 1);
  check_mm(got->readings.front().to, 0.21, 1e-9);  // sqrt(0.25² - 0.0173) = 0.2126
}

TEST_CASE("worth measuring: the largest share first, plays and what is read close enough not at all") {
  Case c;
  c.clearance = "3.1";
  const auto list = plans::worth_measuring(seating(c), tolerance::Method::worst);
  REQUIRE(list.size() >= 2);
  CHECK(list[0].dimension.name == "lid above board");
  CHECK(list[1].dimension.name == "chips on top");
  for (const plans::Reading& each : list) {
    CHECK(each.dimension.nominal > 0.0);
    CHECK(each.dimension.name != "stand-off height");  // ±0.03
  }
  c.lid = "12 ±0.3";
  CHECK_FALSE(plans::what_settles(seating(c), tolerance::Method::worst).has_value());  // fits
}
