#include "tolerance/reading.h"

#include "support/check_mm.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <doctest/doctest.h>
#include <memory>
#include <random>
#include <string>
#include <vector>

using namespace baywright::tolerance;
using baywright::test::check_mm;

namespace {

constexpr double exactly = 1e-12;

struct Accepted {
  std::string_view text;
  double nominal, minus, plus;  // mm; 1 in = 25.4 mm (international inch, 1959)
  bool limits;
};

const std::vector<Accepted>& accepted() {
  static const std::vector<Accepted> table{
      {"6.35", 6.35, 0, 0, false},
      {"  6.35  ", 6.35, 0, 0, false},
      {"6.35mm", 6.35, 0, 0, false},
      {"6.35 MM", 6.35, 0, 0, false},
      {"0", 0, 0, 0, false},
      {".5", 0.5, 0, 0, false},
      {"-2.5", -2.5, 0, 0, false},
      {"\u22122.5", -2.5, 0, 0, false},  // the minus sign proper
      {"1.2 cm", 12, 0, 0, false},
      {"100000", 100000, 0, 0, false},
      {"1/4 in", 6.35, 0, 0, false},
      {"3/8in", 9.525, 0, 0, false},
      {"1 / 4 in", 6.35, 0, 0, false},
      {"1 1/2 in", 38.1, 0, 0, false},
      {"-1 1/2 in", -38.1, 0, 0, false},
      {"1/4\"", 6.35, 0, 0, false},
      {"1/4\u2033", 6.35, 0, 0, false},  // double prime
      {"3/4 mm", 0.75, 0, 0, false},
      {"6.35 ±0.1", 6.35, 0.1, 0.1, true},
      {"6.35±0.1mm", 6.35, 0.1, 0.1, true},
      {"6.35\u00A0±\u20090.1", 6.35, 0.1, 0.1, true},  // no-break and thin space
      {"6.35 +-0.1", 6.35, 0.1, 0.1, true},
      {"6.35 +/- 0.1", 6.35, 0.1, 0.1, true},
      {"-2 ±0.1", -2, 0.1, 0.1, true},
      {"6.35 +0.2 -0", 6.35, 0, 0.2, true},
      {"6.35 -0 +0.2", 6.35, 0, 0.2, true},
      {"6.35 +0 \u22120.2", 6.35, 0.2, 0, true},
      {"6.35+0.2-0.1", 6.35, 0.1, 0.2, true},
      {"0.25 in ±1/64 in", 6.35, 0.396875, 0.396875, true},
      {"0.25 ±0.01 in", 6.35, 0.254, 0.254, true},      // the last unit holds for all
      {"1 +0.1 -0.2 cm", 10, 2, 1, true},               // for three figures too
      {"1 cm +0.5 mm -0.02 in", 10, 0.508, 0.5, true},  // each its own
      {"1 in +0.1 -0.2 mm", 25.4, 0.2, 0.1, true},      // 0.1 names none, the last is mm
      {"6.2..6.5", 6.35, 0.15, 0.15, true},
      {"6.2 .. 6.5 mm", 6.35, 0.15, 0.15, true},
      {"1/4..3/8 in", 7.9375, 1.5875, 1.5875, true},
      {"-1..1", 0, 1, 1, true},
      {"5..5", 5, 0, 0, true},
      {"6..7", 6.5, 0.5, 0.5, true},
      {"max 1.35", 1.35, open_side, 0, true},
      {"Max1.35mm", 1.35, open_side, 0, true},
      {"max 1/4 in", 6.35, open_side, 0, true},
      {"min 3", 3, 0, open_side, true},
      {"min -3", -3, 0, open_side, true},
  };
  return table;
}

struct Refused {
  std::string_view text;
  std::size_t at;
  std::string_view what;
  std::string_view right;  // part of the remedy
};

const std::vector<Refused>& refused() {
  static const std::vector<Refused> table{
      {"", 0, "no figure", "6.35"},
      {"   ", 3, "no figure", "6.35"},
      {"mm", 0, "no figure", "6.35"},
      {"nan", 0, "no figure", "6.35"},
      {"inf", 0, "no figure", "6.35"},
      {"-infinity", 1, "no figure", "6.35"},
      {"+6.35", 0, "no figure", "6.35"},
      {"max", 3, "no figure", "6.35"},
      {"6.", 2, "no digit behind the point", "6.35"},
      {"6,35", 1, "a decimal comma", "decimal point"},
      {"6.35 ±0,1", 8, "a decimal comma", "decimal point"},  // ± is two bytes
      {"6.35 furlong", 5, "an unknown unit", "mm, cm, in or \""},
      {"6.35 µm", 5, "an unknown unit", "mm, cm, in or \""},
      {"6.35 m", 5, "an unknown unit", "mm, cm, in or \""},
      {"1e3", 1, "an unknown unit", "mm, cm, in or \""},
      {"1.35 max", 5, "\"max\" behind the figure", "max 1.35"},
      {"1/0 in", 2, "a denominator of zero", "1/4"},
      {"1/-4 in", 2, "a negative denominator", "-1/4"},
      {"1/ in", 3, "no denominator", "1/4"},
      {"1/2.5", 2, "a denominator that is not whole", "1/4"},
      {"1.5/2", 3, "a fraction of a decimal", "1/4"},
      {"6 35", 2, "two figures with nothing between them", "1 1/2"},
      {"6.35 0.1", 5, "text left over", "6.35 ±0.1"},
      {"6.35 mm ?", 8, "text left over", "6.35 ±0.1"},
      {"6.35 ±0.1 ±0.2", 11, "text left over", "6.35 ±0.1"},
      {"max 1.35 ±0.1", 9, "text left over", "6.35 ±0.1"},
      {"6.35 ±", 7, "no figure", "6.35"},
      {"6.35 ±-0.1", 7, "a limit with two signs", "±0.1"},
      {"6.35 + -0.1", 7, "a limit with two signs", "±0.1"},
      {"6.35 -0.2", 9, "one limit of two", "+0.2 -0"},
      {"6.2-6.5", 7, "one limit of two", "6.2..6.5"},
      {"6.35 +0.2 +0.1", 10, "two limits of one sign", "one + and one -"},
      {"6.35 -0.2 -0.1", 10, "two limits of one sign", "one + and one -"},
      {"6.5..6.2", 5, "a range that runs backwards", "smaller figure first"},
      {"0...7", 3, "three points", "6.2..6.5"},
      {"0.25 in ±0.01", 10, "a limit without a unit behind a length that is not in mm", "0.25 in ±0.01 in"},
      {"1 in +0.1 -0.2", 11, "a limit without a unit behind a length that is not in mm", "in"},
      {"7/16", 0, "a fraction without a unit", "7/16 in"},
      {"1 1/2 ±0.1", 0, "a fraction without a unit", "7/16 in"},
      {"6.2..", 5, "no figure", "6.35"},
      {"100000.1", 0, "a length beyond 100000 mm", "unit"},
      {"-100000.1", 0, "a length beyond 100000 mm", "unit"},
      {"4000 in", 0, "a length beyond 100000 mm", "unit"},
      {"1 ±100001", 4, "a length beyond 100000 mm", "unit"},
  };
  return table;
}

/// The text in a heap buffer of just its size, so that a sanitizer sees one byte too far.
struct Tight {
  explicit Tight(std::string_view text) : size(text.size()), bytes(new char[text.size()]) {
    std::copy(text.begin(), text.end(), bytes.get());
  }
  [[nodiscard]] std::string_view view() const { return {bytes.get(), size}; }
  std::size_t size;
  std::unique_ptr<char[]> bytes;
};

/// What holds of any answer to any text.
void check_sane(std::string_view text) {
  const Tight tight(text);
  const auto got = read_length(tight.view());
  if (const auto* misread = std::get_if<Misread>(&got)) {
    CHECK(misread->at <= text.size());
    CHECK(!misread->what.empty());
    CHECK(!misread->right.empty());
    return;
  }
  const Length& length = std::get<Length>(got);
  CHECK(std::abs(length.nominal) <= 1e5);
  CHECK(length.minus >= 0.0);
  CHECK(length.plus >= 0.0);
}

}  // namespace

TEST_CASE("lengths as people write them") {
  for (const Accepted& sample : accepted()) {
    CAPTURE(sample.text);
    const auto got = read_length(Tight(sample.text).view());
    REQUIRE(std::holds_alternative<Length>(got));
    const Length& length = std::get<Length>(got);
    check_mm(length.nominal, sample.nominal, exactly);
    if (sample.minus == open_side) {
      CHECK(length.minus == open_side);
    } else {
      check_mm(length.minus, sample.minus, exactly);
    }
    if (sample.plus == open_side) {
      CHECK(length.plus == open_side);
    } else {
      check_mm(length.plus, sample.plus, exactly);
    }
    CHECK(length.limits_given == sample.limits);
  }
}

TEST_CASE("what is no length is refused at its byte, with what would be right") {
  for (const Refused& sample : refused()) {
    CAPTURE(sample.text);
    const auto got = read_length(Tight(sample.text).view());
    REQUIRE(std::holds_alternative<Misread>(got));
    const Misread& misread = std::get<Misread>(got);
    CHECK(misread.at == sample.at);
    CHECK(misread.what == sample.what);
    CHECK(misread.right.find(sample.right) != std::string::npos);
  }
}

TEST_CASE("hundreds of digits are a length too large, or nothing") {
  const std::string many(400, '9');
  const auto huge = read_length(many);
  REQUIRE(std::holds_alternative<Misread>(huge));
  CHECK(std::get<Misread>(huge).what == "a length beyond 100000 mm");
  const auto tiny = read_length("0." + std::string(400, '0') + "1");
  REQUIRE(std::holds_alternative<Length>(tiny));
  check_mm(std::get<Length>(tiny).nominal, 0.0, 0.0);
  CHECK(std::holds_alternative<Misread>(read_length(many + "/" + many)));
  check_sane(many + " " + many + "/" + many);
}

TEST_CASE("every prefix of every sample is answered") {
  for (const Accepted& sample : accepted()) {
    for (std::size_t size = 0; size <= sample.text.size(); ++size) check_sane(sample.text.substr(0, size));
  }
  for (const Refused& sample : refused()) {
    for (std::size_t size = 0; size <= sample.text.size(); ++size) check_sane(sample.text.substr(0, size));
  }
}

TEST_CASE("any mix of the pieces of a length is answered") {
  // Few pieces, so that texts that are nearly right come often; two are halves of ±.
  constexpr std::array<std::string_view, 22> pieces{"6", "1",    "0",    "35",     ".",      "..", "/",  "-",
                                                    "+", "±",    " ",    "mm",     "in",     "cm", "\"", "max",
                                                    ",", "\xC2", "\xB1", "\u2212", "\u2033", "x"};
  std::mt19937_64 random(20260101);
  int read = 0;
  constexpr int rounds = 50'000;
  for (int round = 0; round < rounds; ++round) {
    std::string text;
    const std::size_t count = 1 + random() % 6;
    for (std::size_t i = 0; i < count; ++i) text += pieces[random() % pieces.size()];
    const auto got = read_length(Tight(text).view());
    if (const auto* length = std::get_if<Length>(&got)) {
      ++read;
      const bool sane = std::abs(length->nominal) <= 1e5 && length->minus >= 0.0 && length->plus >= 0.0;
      if (!sane) FAIL_CHECK(text);
    } else {
      const Misread& misread = std::get<Misread>(got);
      const bool sane = misread.at <= text.size() && !misread.what.empty() && !misread.right.empty();
      if (!sane) FAIL_CHECK(text);
    }
  }
  // Both answers must have come often enough for the loop to mean anything.
  CHECK(read > rounds / 20);
  CHECK(read < rounds / 2);
}
