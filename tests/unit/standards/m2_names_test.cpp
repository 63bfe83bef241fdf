#include "standards/m2.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <memory>
#include <string>
#include <vector>

using namespace baywright::standards;

namespace {

struct Read {
  std::string_view text;
  int width, length;
  std::string_view height, keys;
};

const std::vector<Read>& samples() {
  static const std::vector<Read> table{
      {"2280-D2-M", 22, 80, "D2", "M"},    {"2242-S3-B+M", 22, 42, "S3", "BM"}, {"2242-S3-BM", 22, 42, "S3", "BM"},
      {"2242-s3-m+b", 22, 42, "S3", "BM"}, {"22110-D5-M", 22, 110, "D5", "M"},  {"2230-S1-A+E", 22, 30, "S1", "AE"},
      {"1630-D4-e", 16, 30, "D4", "E"},    {"3042-D3-B", 30, 42, "D3", "B"},    {"2280-?-M", 22, 80, "?", "M"},
      {" 2280-D2-M ", 22, 80, "D2", "M"},
  };
  return table;
}

std::string refusal(std::string_view text) {
  const auto got = m2::read_card_name(text);
  const auto* const wrong = std::get_if<std::string>(&got);
  return wrong == nullptr ? "accepted" : *wrong;
}

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("type names of cards") {
  for (const Read& sample : samples()) {
    CAPTURE(sample.text);
    const auto got = m2::read_card_name(sample.text);
    REQUIRE(std::holds_alternative<m2::CardName>(got));
    const m2::CardName& name = std::get<m2::CardName>(got);
    CHECK(name.width == sample.width);
    CHECK(name.length == sample.length);
    CHECK(name.height == sample.height);
    CHECK(name.keys == sample.keys);
  }
}

TEST_CASE("a wrong part of a type name is named, with the known ones") {
  CHECK(says(refusal("2480-D2-M"), "width 24; widths are 12 16 for 16.50 mm 22 30 25"));
  CHECK(says(refusal("2281-D2-M"), "length 81; lengths are 16 26 30 38 42 60 80 110"));
  CHECK(says(refusal("2280-D6-M"), "codes are S1 S2 S3 D1 D2 D3 D4 D5 or ?"));  // D6 is not published with figures
  CHECK(says(refusal("2280-S4-M"), "codes are S1 S2 S3 D1 D2 D3 D4 D5 or ?"));
  CHECK(says(refusal("2280-D2-I"), "keys are A B C D E F G H J K L M A+E B+M"));  // there is no key I
  CHECK(says(refusal("2280-D2-A+M"), "keys are"));
  CHECK(says(refusal("2280-D2-M+M"), "keys are"));
  CHECK(says(refusal("2280-D2-+M"), "keys are"));
  CHECK(says(refusal("2280-D2-"), "keys are"));
  CHECK(says(refusal("2280-D2-M-X"), "keys are"));
  CHECK(says(refusal("2280"), "as 2280-D2-M"));
  CHECK(says(refusal("2280-M"), "as 2280-D2-M"));
  CHECK(says(refusal("M2-D2-M"), "two digits of width"));
  CHECK(says(refusal("228-D2-M"), "two digits of width"));
  CHECK(says(refusal("-D2-M"), "two digits of width"));
  CHECK(says(refusal(""), "as 2280-D2-M"));
}

TEST_CASE("every prefix of a type name is answered") {
  for (const Read& sample : samples()) {
    for (std::size_t size = 0; size < sample.text.size(); ++size) {
      const std::unique_ptr<char[]> bytes(new char[size]);
      std::copy_n(sample.text.begin(), size, bytes.get());
      const std::string_view prefix(bytes.get(), size);
      const bool whole_name = prefix == "2242-S3-B" || prefix == " 2280-D2-M" || prefix == "2230-S1-A" ||
                              prefix == "2242-s3-m";  // cut before the second key
      CAPTURE(std::string(prefix));
      CHECK(std::holds_alternative<m2::CardName>(m2::read_card_name(prefix)) == whole_name);
    }
  }
}

TEST_CASE("unknown names find no row") {
  CHECK(m2::height_code("D8") == nullptr);
  CHECK(m2::height_code("") == nullptr);
  CHECK(m2::key('I') == nullptr);
  CHECK(m2::key('+') == nullptr);
  CHECK(m2::socket_class("H5.8") == nullptr);  // spoken of, no figures found
  CHECK(!m2::mates('+', "B+M"));
  CHECK(!m2::mates('I', "I"));
}
