#include "output/report_words.h"

#include "plans/mounting.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <set>
#include <string>

using namespace baywright;
using output::Language;

namespace {

std::set<std::string> places(std::string_view text) {
  std::set<std::string> out;
  for (std::size_t at = text.find('{'); at != std::string_view::npos; at = text.find('{', at + 1)) {
    const std::size_t end = text.find('}', at);
    REQUIRE(end != std::string_view::npos);
    out.insert(std::string(text.substr(at, end - at + 1)));
  }
  return out;
}

/// What is in the table has no bracket of its own, so one tells a key that is not there.
void check_said(const std::string& text) {
  CAPTURE(text);
  CHECK(!text.empty());
  CHECK(text.find('[') == std::string::npos);
  CHECK(text.find('{') == std::string::npos);
}

}  // namespace

TEST_CASE("every phrase is there in both languages with the same places to fill") {
  std::set<std::string_view> keys;
  for (const output::Phrase& phrase : output::phrases()) {
    CAPTURE(phrase.key);
    CHECK(keys.insert(phrase.key).second);
    CHECK(!phrase.english.empty());
    CHECK(!phrase.german.empty());
    CHECK(places(phrase.english) == places(phrase.german));
    CHECK(phrase.english.find('[') == std::string_view::npos);
    CHECK(phrase.german.find('[') == std::string_view::npos);
  }
  CHECK(keys.size() > 200);
}

TEST_CASE("what is filled into a phrase is not taken for a place to fill") {
  const std::string text = output::phrase(Language::english, "gap between", {{"a", "{b}"}, {"b", "x"}});
  CHECK(text == "{b}, x");
  CHECK(output::phrase(Language::german, "no such key") == "[no such key]");
}

TEST_CASE("every code of a step, hazard, change, price, caution and remark has words in both languages") {
  for (const Language language : {Language::english, Language::german}) {
    for (int i = 0; i <= static_cast<int>(plans::Action::cut); ++i)
      for (const int count : {0, 1, 4}) {
        const plans::Step step{
            .action = static_cast<plans::Action>(i), .what = "M3", .where = "tray", .count = count, .length = 8.0};
        check_said(output::say(language, step));
      }
    for (int i = 0; i <= static_cast<int>(plans::Hazard::drive_warranty); ++i)
      check_said(output::say(language, static_cast<plans::Hazard>(i)));
    for (int i = 0; i <= static_cast<int>(plans::Kind::other_drive); ++i)
      check_said(
          output::say(language, plans::Change{.kind = static_cast<plans::Kind>(i), .what = "tray", .to = "other"}));
    for (int i = 0; i <= static_cast<int>(plans::Price::undone_hardly); ++i)
      check_said(output::word(language, static_cast<plans::Price>(i)));
    plans::Plan plan;
    plan.changes = {{.kind = plans::Kind::opening, .what = "tray", .through = "fins", .out = 0.4, .out_most = 0.93}};
    for (int i = 0; i <= static_cast<int>(plans::Caution::data_moves); ++i)
      check_said(output::say(language, plan, static_cast<plans::Caution>(i)));
    for (int i = 0; i <= static_cast<int>(value::Code::larger_sibling); ++i) {
      value::Remark remark;
      remark.code = static_cast<value::Code>(i);
      check_said(output::say(language, remark, "EUR"));
    }
    for (int i = 0; i <= static_cast<int>(plans::ItemKind::drive); ++i)
      check_said(output::word(language, static_cast<plans::ItemKind>(i)));
    for (int i = 0; i <= static_cast<int>(plans::Condition::fills_no_gap); ++i)
      check_said(output::say(
          language, plans::Exchange{.designation = "x", .condition = static_cast<plans::Condition>(i), .source = {}}));
    for (int i = 0; i <= static_cast<int>(plans::Remark::own_screws); ++i)
      check_said(output::say(language, static_cast<plans::Remark>(i), plans::Item{}));
    for (int i = 0; i <= static_cast<int>(fit::Verdict::does_not_fit); ++i)
      check_said(output::word(language, static_cast<fit::Verdict>(i)));
    for (const value::Present& now : value::presents())
      for (const value::Worth worth :
           {value::Worth::plainly, value::Worth::faster, value::Worth::little, value::Worth::no_faster})
        check_said(output::say(language, value::Upgrade{worth, 2.0}, now));
    for (int month = 1; month <= 12; ++month) check_said(output::date_words(language, 2026, month, 1));
  }
}

TEST_CASE("figures have the decimals of the language") {
  CHECK(output::millimetres(Language::english, 1.65) == "1.65 mm");
  CHECK(output::millimetres(Language::german, 1.65) == "1,65 mm");
  CHECK(output::capacity(Language::german, 1920.0) == "1,92 TB");
  CHECK(output::years(Language::german, 1.0) == "1 Jahr");
  CHECK(output::years(Language::german, 2.5) == "2,5 Jahren");
  CHECK(output::amount(Language::german, 79.9, "", 2) == "79,90");
}
