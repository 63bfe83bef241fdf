// Whatever the text: a build, or one fault of one line with a place. Never an exception, a crash, or half a build.
#include "build/build.h"

#include <array>
#include <cstring>
#include <doctest/doctest.h>
#include <fstream>
#include <memory>
#include <random>
#include <sstream>
#include <string>
#include <vector>

using namespace baywright;

namespace {

/// Demonstration builds, and those of the command tests in which every key stands.
const std::vector<std::string> demos = {"models/builds/thin-desktop", "models/builds/laptop", "models/builds/tower",
                                        "tests/commands/data/everything", "tests/commands/data/bays"};

std::string demo_path(const std::string& demo) {
  return std::string(BAYWRIGHT_SOURCE) + '/' + demo + ".build.toml";
}

std::string demo_text(const std::string& demo) {
  std::ifstream in(demo_path(demo), std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  REQUIRE(text.str().size() > 1000);
  return text.str();
}

/// In a buffer of exactly that size, so that a sanitizer sees one byte too far.
std::variant<build::Build, parts::Fault> read_exact(const std::string& text, const std::string& file) {
  const auto buffer = std::make_unique<char[]>(text.size());
  std::memcpy(buffer.get(), text.data(), text.size());
  return build::read_text({buffer.get(), text.size()}, file);
}

/// Whether it is a build; checks the fault otherwise.
bool check_answer(const std::variant<build::Build, parts::Fault>& got) {
  if (const auto* read = std::get_if<build::Build>(&got)) {
    CHECK(!read->parts.empty());
    CHECK(!read->places.empty());
    CHECK(!read->drives.empty());
    return true;
  }
  const parts::Fault& fault = std::get<parts::Fault>(got);
  CHECK(fault.line >= 1);
  CHECK(!fault.what.empty());
  CHECK(fault.text().find_first_of("\n\r\x1b") == std::string::npos);
  return false;
}

}  // namespace

TEST_CASE("every prefix of the demonstration builds is a build or a fault") {
  constexpr std::size_t step = 3;
  for (const std::string& demo : demos) {
    CAPTURE(demo);
    const std::string text = demo_text(demo);
    int builds = 0;
    int faults = 0;
    for (std::size_t size = 0; size < text.size(); size += step) {
      CAPTURE(size);
      ++(check_answer(read_exact(text.substr(0, size), demo_path(demo))) ? builds : faults);
    }
    CHECK(faults > 100);
    CHECK(builds > 0);  // the last drives of a file may be cut off as a whole
    CHECK(check_answer(read_exact(text, demo_path(demo))));
  }
}

TEST_CASE("demonstration builds with tokens lost, doubled and exchanged are a build or a fault") {
  constexpr std::array<const char*, 61> dictionary = {"nan",
                                                      "-inf",
                                                      "1e308",
                                                      "-1",
                                                      "0",
                                                      "1e-300",
                                                      "99999999999999999999",
                                                      "\"?\"",
                                                      "\"\"",
                                                      "\"max 1\"",
                                                      "\"min 0\"",
                                                      "\"1/0 in\"",
                                                      "\"9,1\"",
                                                      "\"\\u0000\"",
                                                      "\"\\u001b[2J\"",
                                                      "'a\tb'",
                                                      "true",
                                                      "[]",
                                                      "{}",
                                                      "[[]]",
                                                      "{ a = { a = 1 } }",
                                                      "1979-05-27",
                                                      "\"board\"",
                                                      "\"tray\"",
                                                      "\"+x\"",
                                                      "[[part]]",
                                                      "[[slot]]",
                                                      "[[drive]]",
                                                      "[apart]",
                                                      "[[apart]]",
                                                      "name",
                                                      "use",
                                                      "solid",
                                                      "=",
                                                      "#",
                                                      "\"\"\"",
                                                      "\xff",
                                                      "\xef\xbb\xbf",
                                                      "\r",
                                                      "\"m2/22110-D5-BM\"",
                                                      "[[bay]]",
                                                      "[[panel]]",
                                                      "\"2.5in\"",
                                                      "\"2.5in/7\"",
                                                      "\"3.5in/42\"",
                                                      "\"5.25in\"",
                                                      "\"e1s/25\"",
                                                      "\"e3l\"",
                                                      "\"msata/half\"",
                                                      "\"add-in card/x16\"",
                                                      "\"soldered\"",
                                                      "\"adapter/u2-on-m2\"",
                                                      "\"adapter/m2-on-x16\"",
                                                      "\"adapter/2.5in-in-3.5in\"",
                                                      "\"on edge\"",
                                                      "\"sides\"",
                                                      "\"+z\"",
                                                      "[[0, 0]]",
                                                      "[[14.0, -30.86], [90.6, 30.86]]",
                                                      "holds",
                                                      "fixing"};
  std::mt19937_64 random(20240611);
  const auto below = [&random](std::size_t n) { return static_cast<std::size_t>(random() % n); };
  int builds = 0;
  int faults = 0;
  for (int round = 0; round < 3000; ++round) {
    const std::string& demo = demos[below(demos.size())];
    std::vector<std::string> tokens;  // words and the space between them, in turn
    for (const char c : demo_text(demo)) {
      const bool space = c == ' ' || c == '\n';
      const bool was_space = !tokens.empty() && (tokens.back().back() == ' ' || tokens.back().back() == '\n');
      if (tokens.empty() || space != was_space) tokens.emplace_back();
      tokens.back() += c;
    }
    const std::size_t slips = 1 + below(3);
    for (std::size_t slip = 0; slip < slips; ++slip) {
      const std::size_t at = below(tokens.size());
      switch (below(4)) {
        case 0:
          tokens.erase(tokens.begin() + static_cast<std::ptrdiff_t>(at));
          break;
        case 1:
          tokens.insert(tokens.begin() + static_cast<std::ptrdiff_t>(at), tokens[at]);
          break;
        case 2:
          tokens[at] = dictionary[below(dictionary.size())];
          break;
        default:
          std::swap(tokens[at], tokens[below(tokens.size())]);
          break;
      }
    }
    std::string text;
    for (const std::string& token : tokens) text += token;
    CAPTURE(round);
    ++(check_answer(read_exact(text, demo_path(demo))) ? builds : faults);
  }
  // Slips in comments and spaces leave a build, most others do not: both have to come up, or the test says nothing.
  CHECK(builds > 200);
  CHECK(faults > 800);
}
