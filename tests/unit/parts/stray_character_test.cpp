// TOML v1.0.0: characters beyond ASCII stand in strings and comments only; keys without quotes are ASCII.
#include "parts/stray_character.h"

#include <doctest/doctest.h>
#include <string>

using namespace baywright::parts;

namespace {

std::string place(const std::string& text) {
  const auto got = stray_character(text);
  if (!got) return "none";
  const std::size_t from = got->what.find('`');
  const std::size_t to = got->what.find(')');
  CHECK(!got->right.empty());
  return std::to_string(got->line) + ':' + std::to_string(got->column) + ' ' +
         (to < got->what.size() ? got->what.substr(from, to + 1 - from) : got->what);
}

}  // namespace

TEST_CASE("outside quotes they are found, by character") {
  CHECK(place("by = 9.1 ±0.2") == "1:10 `±` (U+00B1)");
  CHECK(place("a = \"±\"  # ±\nb = 1±") == "2:6 `±` (U+00B1)");
  CHECK(place("a = [ \"±\", ± ]") == "1:12 `±` (U+00B1)");
  CHECK(place("title = “x”") == "1:9 `“` (U+201C)");
  CHECK(place("länge = 1") == "1:2 `ä` (U+00E4)");
  CHECK(place("a\u00A0= 1") == "1:2 `\u00A0` (U+00A0)");
  CHECK(place("a = \U0001F4BE") == "1:5 `\U0001F4BE` (U+1F4BE)");
  CHECK(place("a = \"x\" \uFEFF") == "1:9 `\uFEFF` (U+FEFF)");
}

TEST_CASE("in quotes, comments and a mark at the start they are not") {
  for (const std::string text :
       {"a = \"±\"", "a = '±'", "a = \"\"\"\n±\n\"\"\"", "a = '''\n±\n'''", "# ±", "\xEF\xBB\xBFtitle = 1", "",
        "a = \"\\\"±\"", "a = '\\' # ±", "a = \"\" # ±", "a = \"\"\"\"±\"\"\"\"\" # ±", "a = \"never closed ±"}) {
    CAPTURE(text);
    CHECK(place(text) == "none");
  }
}

TEST_CASE("behind a backslash they are found, also where a line goes on") {
  CHECK(place("a = \"\\±\"") == "1:7 `±` (U+00B1)");
  CHECK(place("a = \"\"\"x\\\n  ±\"\"\"") == "2:3 `±` (U+00B1)");
  CHECK(place("a = \"\"\"x\\\n  y±\"\"\"") == "none");
}

TEST_CASE("quotes end where TOML ends them") {
  CHECK(place("a = \"x\n±") == "2:1 `±` (U+00B1)");  // never closed: the line ends it
  CHECK(place("a = '\\' ±") == "1:9 `±` (U+00B1)");  // no escapes in single quotes
  CHECK(place("a = \"\"\"x\"\"\"\"\" ±") == "1:15 `±` (U+00B1)");
}

TEST_CASE("bytes that are no UTF-8 are left to the parser") {
  for (const std::string text : {"a = \xff", "a = \xc0\xaf", "a = \xed\xa0\x80", "a = \xc2", "a = \xf5\x80\x80\x80"}) {
    CHECK(place(text) == "none");
  }
}

TEST_CASE("a list that ends with a brace is found, other brackets are left to the parser") {
  CHECK(place("a = [ 1, { b = 2 }\nc = 3 }") == "2:7 a list that begins with [ ends with }");
  CHECK(place("a = [ }") == "1:7 a list that begins with [ ends with }");
  for (const std::string text :
       {"[[part]]\na = { b = [1, { c = [] }] }", "a = }", "a = ]]", "a = \"[\" }", "a = { ]", "# [\n}"}) {
    CAPTURE(text);
    CHECK(place(text) == "none");
  }
}

TEST_CASE("a table header without a name is found") {
  CHECK(place("a = 1\n  [[ = ]]") == "2:6 a table header has no name here");
  CHECK(place("[#]") == "1:2 a table header has no name here");
  for (const std::string text :
       {"[]", "[[]]", "[", "[[", "[[[a]]]", "[ \"a\" ]", "['a']", "[a]\nb = [\n[ , ]]", "x = [ = ]"}) {
    CAPTURE(text);
    CHECK(place(text) == "none");
  }
}
