// Editing a build file in place: only the named bytes change. What a text says before and after is asked of toml++
// (TOML 1.0), not of the code that edits.
#include "build/edit.h"

#include "build/build.h"
#include "build/spans.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <toml++/toml.h>

using namespace baywright;
using build::Edit;
using build::Path;

namespace {

std::string edited(const std::string& text, const std::vector<Edit>& edits) {
  const auto got = build::edited(text, edits, "x.build.toml");
  if (const auto* fault = std::get_if<parts::Fault>(&got)) FAIL(fault->text());
  return std::get<std::string>(got);
}

std::string set(const std::string& text, const Path& path, const std::string& value) {
  return edited(text, {{Edit::What::set, path, value}});
}
std::string removed(const std::string& text, const Path& path) {
  return edited(text, {{Edit::What::remove, path}});
}
std::string appended(const std::string& text, const Path& path, const std::string& value) {
  return edited(text, {{Edit::What::append, path, value}});
}

std::string refused(const std::string& text, const Edit& edit) {
  const auto got = build::edited(text, std::vector<Edit>{edit}, "x.build.toml");
  const auto* fault = std::get_if<parts::Fault>(&got);
  return fault == nullptr ? "was made" : fault->text();
}

std::string content(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::stringstream all;
  all << in.rdbuf();
  return all.str();
}

std::vector<std::filesystem::path> demos() {
  std::vector<std::filesystem::path> files;
  for (const char* folder : {"/models/builds", "/models/parts"})
    for (const auto& item : std::filesystem::directory_iterator(BAYWRIGHT_SOURCE + std::string(folder)))
      if (item.path().extension() == ".toml") files.push_back(item.path());
  std::sort(files.begin(), files.end());
  return files;
}

std::vector<std::string> comments(const std::string& text) {
  std::vector<std::string> out;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);)
    if (const auto at = line.find('#'); at != std::string::npos) out.push_back(line.substr(at));
  return out;
}

/// Every value in the document that is neither table nor list, with its path.
void leaves(const toml::node& node, Path& path, std::vector<std::pair<Path, const toml::node*>>& out) {
  if (const auto* table = node.as_table()) {
    for (const auto& [key, each] : *table) {
      path.emplace_back(std::string(key.str()));
      leaves(each, path, out);
      path.pop_back();
    }
  } else if (const auto* list = node.as_array()) {
    for (std::size_t i = 0; i < list->size(); ++i) {
      path.emplace_back(static_cast<int>(i));
      leaves(*list->get(i), path, out);
      path.pop_back();
    }
  } else {
    out.emplace_back(path, &node);
  }
}

toml::node* at(toml::table& document, const Path& path) {
  toml::node* node = &document;
  for (const build::Key& key : path)
    node = std::holds_alternative<int>(key) ? node->as_array()->get(static_cast<std::size_t>(std::get<int>(key)))
                                            : node->as_table()->get(std::get<std::string>(key));
  return node;
}

}  // namespace

TEST_CASE("every figure and text of every demo file changes alone") {
  int changed = 0;
  REQUIRE(demos().size() >= 15);
  for (const auto& file : demos()) {
    CAPTURE(file.string());
    const std::string text = content(file);
    const toml::table before = toml::parse(text);
    const auto tree = build::spans(text);
    REQUIRE(tree);
    Path path;
    std::vector<std::pair<Path, const toml::node*>> all;
    leaves(before, path, all);
    for (const auto& [where, node] : all) {
      const bool figure = node->is_number();
      const std::string after = set(text, where, figure ? "12.375" : "\"changed ±\"");
      toml::table wanted = before;
      toml::node* place = at(wanted, where);
      if (!place->is_number() && !place->is_string()) continue;
      // the same document, this one value apart
      Path parent(where.begin(), where.end() - 1);
      toml::node* in = at(wanted, parent);
      const auto put = [&](auto value) {
        if (auto* table = in->as_table())
          table->insert_or_assign(std::get<std::string>(where.back()), value);
        else
          in->as_array()->replace(in->as_array()->cbegin() + std::get<int>(where.back()), value);
      };
      if (figure)
        put(12.375);
      else
        put(std::string("changed ±"));
      CHECK(toml::parse(after) == wanted);
      CHECK(comments(after) == comments(text));
      // and back: not a byte is lost
      const auto& region = node->source();
      std::istringstream lines(text);
      std::string line;
      for (toml::source_index i = 0; i < region.begin.line; ++i) std::getline(lines, line);
      if (region.begin.line == region.end.line && line.find("±") == std::string::npos) {
        const std::string old = line.substr(region.begin.column - 1, region.end.column - region.begin.column);
        CHECK(set(after, where, old) == text);
      }
      const auto found =
          build::path_at(*tree, text, static_cast<int>(region.begin.line), static_cast<int>(region.begin.column));
      REQUIRE(found);
      CHECK(*found == where);
      REQUIRE(build::node_at(*tree, where) != nullptr);
      CHECK(build::node_at(*tree, where)->text == node->value_or(std::string()));
      ++changed;
    }
  }
  CHECK(changed > 500);
}

TEST_CASE("an entry is named by its name, and a length in a table by its key") {
  const std::string text = content(BAYWRIGHT_SOURCE "/models/builds/thin-desktop.build.toml");
  const std::string after = set(text, {"part", "tray", "under", "by", "length"}, "\"9.6 ±0.2\"");
  std::string wanted = text;
  wanted.replace(wanted.find("9.1 ±0.2"), std::string("9.1 ±0.2").size(), "9.6 ±0.2");
  CHECK(after == wanted);
  const std::string pad =
      set(text, {"drive", "card with low fins", "wears", "low fin heatsink", "heatsink"}, "\"fin-heatsink-4\"");
  CHECK(toml::parse(pad)["drive"][1]["wears"][1]["heatsink"].value_or(std::string()) == "fin-heatsink-4");
  CHECK(std::holds_alternative<build::Build>(build::read_text(after, "x.build.toml")));
}

TEST_CASE("a missing key comes at the end of its table, as its neighbours are written") {
  // under headings: before blank lines and comments that lead to the next one, the = in line
  CHECK(set("[[part]]\nname  = \"a\"  # one\n\n# about b\n[[part]]\nname = \"b\"", {"part", 0, "turn"}, "90") ==
        "[[part]]\nname  = \"a\"  # one\nturn  = 90\n\n# about b\n[[part]]\nname = \"b\"");
  CHECK(set("[[part]]\nname=\"a\"", {"part", 0, "turn"}, "90") == "[[part]]\nname=\"a\"\nturn=90");
  CHECK(set("[[part]]\n  name = \"a\"\n", {"part", 0, "removable"}, "true") ==
        "[[part]]\n  name = \"a\"\n  removable = true\n");
  CHECK(set("[x]  # of x\n[y]\n", {"x", "a"}, "1") == "[x]  # of x\na = 1\n[y]\n");
  CHECK(set("title = \"t\"\r\n\r\n[x]\r\n", {"clearance"}, "1") == "title = \"t\"\r\nclearance = 1\r\n\r\n[x]\r\n");
  CHECK(set("# nothing yet\n[x]\n", {"a"}, "1") == "a = 1\n# nothing yet\n[x]\n");
  CHECK(set("[x]\nlong = [ # first\n  1,\n]  # end\n", {"x", "b"}, "2") ==
        "[x]\nlong = [ # first\n  1,\n]  # end\nb = 2\n");
  // inline
  CHECK(set("under = { part = \"board\" }", {"under", "by"}, "\"9.1 ±0.2\"") ==
        "under = { part = \"board\", by = \"9.1 ±0.2\" }");
  CHECK(set("a = {}", {"a", "b c"}, "1") == "a = { \"b c\" = 1 }");
  // dotted keys
  CHECK(set("[[part]]\nunder.part = \"b\"\nname = \"a\"\n", {"part", 0, "under", "by"}, "3") ==
        "[[part]]\nunder.part = \"b\"\nunder.by = 3\nname = \"a\"\n");
  CHECK(set("x = { a.b = 1, c = 2 }", {"x", "a", "d"}, "3") == "x = { a.b = 1, a.d = 3, c = 2 }");
  CHECK(set("a . \"b\" = 1", {"a", "b"}, "2") == "a . \"b\" = 2");
}

TEST_CASE("what is removed takes its comma, its line or its comments along, and nothing else") {
  CHECK(removed("a = 1\nb = 2  # two\n# three\nc = 3\n", {"b"}) == "a = 1\n# three\nc = 3\n");
  CHECK(removed("x = { a = 1, b = 2, c = 3 }", {"x", "a"}) == "x = { b = 2, c = 3 }");
  CHECK(removed("x = { a = 1, b = 2, c = 3 }", {"x", "c"}) == "x = { a = 1, b = 2 }");
  CHECK(removed("x = { a = 1 }", {"x", "a"}) == "x = { }");
  CHECK(removed("x = { a.b = 1, c = 2, a.d = 3 }", {"x", "a"}) == "x = { c = 2 }");
  CHECK(removed("x = [1, 2, 3]", {"x", 0}) == "x = [2, 3]");
  CHECK(removed("x = [1, 2, 3]", {"x", 1}) == "x = [1, 3]");
  CHECK(removed("x = [1, 2, 3]", {"x", 2}) == "x = [1, 2]");
  CHECK(removed("x = [1]", {"x", 0}) == "x = []");
  CHECK(removed("x = [\n  1,  # one\n  2,  # two\n]\n", {"x", 0}) == "x = [\n  2,  # two\n]\n");
  CHECK(removed("x = [\n  1,  # one\n  2   # two\n]\n", {"x", 1}) == "x = [\n  1,  # one\n]\n");
  CHECK(removed("x = [1, # one\n  2]", {"x", 1}) == "x = [1, # one\n  ]");
  const std::string three =
      "# all\n\n# a\n[[d]]\nname = \"a\"\n\n# b\n# more\n[[d]]\nname = \"b\"\n[d.sub]\nx = 1\n\n[e]\ny = 2\n";
  CHECK(removed(three, {"d", "a"}) == "# all\n\n# b\n# more\n[[d]]\nname = \"b\"\n[d.sub]\nx = 1\n\n[e]\ny = 2\n");
  CHECK(removed(three, {"d", 1}) == "# all\n\n# a\n[[d]]\nname = \"a\"\n\n[e]\ny = 2\n");
  CHECK(removed(three, {"e"}) == three.substr(0, three.find("\n[e]")));
  CHECK(removed(three, {"d"}) == "# all\n\n[e]\ny = 2\n");
  CHECK(removed("a.b = 1\nc = 2\na.d = 3\n", {"a"}) == "c = 2\n");
}

TEST_CASE("a table on lines of its own becomes one value, and its comment lines stay") {
  CHECK(
      set("[[part]]\nname = \"a\"\n\n# steel\n[part.solid]\n# by caliper\nplate = [1, 2, 3]  # mm\n\n[[part]]\nname = "
          "\"b\"\n",
          {"part", "a", "solid"}, "{ box = 1 }") ==
      "[[part]]\nname = \"a\"\n# steel\n# by caliper\nsolid = { box = 1 }\n\n[[part]]\nname = \"b\"\n");
  CHECK(set("[[part]]\nname = \"a\"\nsolid.plate = 1\n", {"part", "a", "solid"}, "2") ==
        "[[part]]\nname = \"a\"\nsolid = 2\n");
  CHECK(set("x = { a.b = 1, c = 2 }", {"x", "a"}, "3") == "x = { c = 2, a = 3 }");
}

TEST_CASE("what is appended stands behind the last of its kind") {
  CHECK(appended("[[d]]\n[[d.w]]\na = 1\n", {"d", 0, "w"}, "{ b = 2, c = 3 }") ==
        "[[d]]\n[[d.w]]\na = 1\n\n[[d.w]]\nb = 2\nc = 3\n");
  CHECK(appended("x = []", {"x"}, "1") == "x = [1]");
  CHECK(appended("x = [1, 2]", {"x"}, "3") == "x = [1, 2, 3]");
  CHECK(appended("x = [1, 2,]", {"x"}, "3") == "x = [1, 2, 3,]");
  CHECK(appended("x = [\n  1,\n  2,  # two\n]", {"x"}, "3") == "x = [\n  1,\n  2,  # two\n  3,\n]");
  CHECK(appended("x = [\n  1,\n  2  # two\n]", {"x"}, "3") == "x = [\n  1,\n  2,  # two\n  3\n]");
  CHECK(appended("x = [\n  1 ]", {"x"}, "3") == "x = [\n  1,\n  3 ]");
  const std::string text = "[[d]]\nname = \"a\"\n[d.sub]\nx = 1  # x\n\n# e\n[e]\n";
  CHECK(appended(text, {"d"}, "name = \"b\"\nuse = \"u\"\n") ==
        "[[d]]\nname = \"a\"\n[d.sub]\nx = 1  # x\n\n[[d]]\nname = \"b\"\nuse = \"u\"\n\n# e\n[e]\n");
  CHECK(appended("a = 1", {"d"}, "name = \"b\"") == "a = 1\n\n[[d]]\nname = \"b\"\n");
  CHECK(appended("a = 1\r\n", {"d"}, "x = 1\ny = 2") == "a = 1\r\n\r\n[[d]]\r\nx = 1\r\ny = 2\r\n");
}

TEST_CASE("strings that look like structure are left alone") {
  const std::string text =
      "\xEF\xBB\xBF"
      "a = \"] } # , = \\\" [x]\"  # \"c\"\nb = '''\n[[part]]\nname = 'x' '''\nc = \"\"\"q\"\"\"\"\"\nd = "
      "1979-05-27 07:32:00\ne = 'l'\n";
  const toml::table before = toml::parse(text);
  for (const char* key : {"a", "b", "c", "d", "e"}) {
    toml::table after = toml::parse(set(text, {key}, "7"));
    REQUIRE(after.size() == 5);
    CHECK(after[key].value_or(0) == 7);
    after.erase(key);
    toml::table rest = before;
    rest.erase(key);
    CHECK(after == rest);
  }
  CHECK(removed(set(text, {"f"}, "1"), {"f"}) == text);
}

TEST_CASE("what cannot be edited is refused, with its place, and nothing is changed") {
  using What = Edit::What;
  const std::string text = "title = \"±\"\npart = [{ name = \"é\", under = { by = 9.1 } }]\n";
  CHECK(
      refused(text, {What::set, {"part", "é", "over", "by"}, "1"}).starts_with("x.build.toml:2:9: there is no `over`"));
  CHECK(refused(text, {What::set, {"part", 0, "under", "by", "length"}, "1"})
            .starts_with("x.build.toml:2:33: there is no `length` in `part`, entry 0, `under`, `by`"));
  CHECK(refused(text, {What::set, {"part", 1}, "1"}).find("there is no entry 1") != std::string::npos);
  CHECK(refused(text, {What::set, {"part", -1}, "1"}).find("there is no entry -1") != std::string::npos);
  CHECK(refused(text, {What::remove, {"nothing"}}).find("there is no `nothing`") != std::string::npos);
  CHECK(refused(text, {What::append, {"title"}, "1"}).find("name a list") != std::string::npos);
  for (const char* value : {"", "1 2", "1\nx = 2", "1 # c", "\"open", "[1", "{", "1, y = 2", "1 }", "]", "±"}) {
    CAPTURE(value);
    CHECK(refused(text, {What::set, {"part", 0, "under", "by"}, value}).find("is no TOML value") != std::string::npos);
  }
  for (const char* lines : {"[x]\na = 1", "[[x]]", "a", "a = 1\na = 2"}) {
    CAPTURE(lines);
    CHECK(refused(text, {What::append, {"drive"}, lines}).find("is not the lines of a table") != std::string::npos);
  }
  CHECK(refused("[[a]]\nb = 1", {What::set, {"a"}, "1"}).starts_with("x.build.toml:1:1: `a` is a list of tables"));
  CHECK(refused("[a.b]\nc = 1", {What::set, {"a", "x"}, "1"}).find("no heading of its own") != std::string::npos);
  CHECK(refused(text, {What::set, {}, "1"}).find("names no value") != std::string::npos);
  for (const char* hostile :
       {"a = ", "a = [1", "a = {b = 1", "= 1", "a = 1\na = 2", "[", "[]", "\"", "a = \"\\", "a.b = 1\na = 2"})
    CHECK(refused(hostile, {What::set, {"a"}, "1"}).starts_with("x.build.toml:"));
  CHECK(refused("a = " + std::string(5000, '[') + std::string(5000, ']'), {What::set, {"a"}, "1"})
            .starts_with("x.build.toml:"));
  // one bad edit of several: none is made
  const std::vector<Edit> two = {{What::set, {"title"}, "\"x\""}, {What::remove, {"no"}}};
  CHECK(std::holds_alternative<parts::Fault>(build::edited(text, two, "x")));
}

TEST_CASE("lengths and texts are written so that they read the same") {
  CHECK(build::length_text(9.6, 0, 0) == "\"9.6\"");
  CHECK(build::length_text(9.6004, 0.2, 0.2) == "\"9.6 ±0.2\"");
  CHECK(build::length_text(9.6, 0, 0.3) == "\"9.6 +0.3 -0\"");
  CHECK(build::length_text(1.35, tolerance::open_side, 0) == "\"max 1.35\"");
  CHECK(build::length_text(3, 0, tolerance::open_side) == "\"min 3\"");
  CHECK(build::length_text(-0.0001, 0, 0) == "\"0\"");
  const std::string odd = "a \"b\" \\ \n\t\x7f ±";
  CHECK(toml::parse("x = " + build::quoted(odd))["x"].value_or(std::string()) == odd);
}
