// Edits of texts that were damaged at random: each is made, and the text can be edited again, or it is refused with a
// place. Nothing else, and never a crash.
#include "build/edit.h"
#include "build/spans.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>
#include <string>
#include <vector>

using namespace baywright;
using build::Edit;
using build::Node;
using build::Path;

namespace {

std::vector<std::string> demos() {
  std::vector<std::string> out;
  for (const auto& item : std::filesystem::directory_iterator(BAYWRIGHT_SOURCE "/models/builds"))
    if (item.path().extension() == ".toml") {
      std::ifstream in(item.path(), std::ios::binary);
      std::stringstream all;
      all << in.rdbuf();
      out.push_back(all.str());
    }
  return out;
}

void paths(const Node& node, Path& path, std::vector<Path>& out) {
  const bool list = node.kind == Node::Kind::list || node.kind == Node::Kind::table_list;
  for (std::size_t i = 0; i < node.children.size(); ++i) {
    path.push_back(list ? build::Key(static_cast<int>(i)) : build::Key(node.children[i].key));
    out.push_back(path);
    paths(node.children[i], path, out);
    path.pop_back();
  }
}

}  // namespace

TEST_CASE("edits of damaged texts are made whole or refused with a place") {
  std::mt19937_64 random(20260726);
  const auto below = [&](std::size_t n) { return static_cast<std::size_t>(random() % n); };
  const std::vector<std::string> texts = demos();
  const std::string pieces[] = {
      "\"", "'",  "\"\"\"", "'''",          "[", "]",         "{",     "}", ",",   "=", ".", "#", "\n", "\r\n", "\\",
      "±",  "[[", "]]",     "\xEF\xBB\xBF", " ", "a.b = 1\n", "[x]\n", "1", "\xFF"};
  const std::string values[] = {"1",   "\"±\"", "[1, 2]",       "{ a = 1 }", "\"\"\"x\ny\"\"\"",
                                "1 2", "",      "a = 1\nb = 2", "#"};
  REQUIRE(texts.size() > 10);
  int made = 0;
  int refused = 0;
  int undamaged = 0;
  for (int round = 0; round < 4000; ++round) {
    std::string text = texts[below(texts.size())];
    const std::size_t from = below(text.size());  // a stretch of whole lines, to be quick
    const std::size_t begin = build::line_begin(text, from);
    text = text.substr(begin, build::line_end(text, std::min(begin + 600, text.size())) - begin);
    for (std::size_t i = below(3); i > 0; --i) {
      const std::string& piece = pieces[below(std::size(pieces))];
      const std::size_t at = below(text.size() + 1);
      if (below(2) == 0)
        text.insert(at, piece);
      else
        text.replace(at, below(4), piece);
    }
    std::vector<Path> all = {{"part"}, {"new"}, {"part", 0, "new"}, {}};
    Path path;
    const auto tree = build::spans(text);  // of anything: it must not fail either
    if (tree) paths(*tree, path, all);
    const Edit edit{static_cast<Edit::What>(below(3)), all[below(all.size())], values[below(std::size(values))]};
    CAPTURE(text);
    const auto after = build::edited(text, std::vector{edit}, "x");
    const auto* done = std::get_if<std::string>(&after);
    if (done == nullptr) {
      CHECK(std::get<parts::Fault>(after).line >= 1);
      ++refused;
      continue;
    }
    ++made;
    // the text is one that can be edited: an edit that changes nothing gives it back
    const auto again = build::edited(*done, {}, "x");
    REQUIRE(std::holds_alternative<std::string>(again));
    CHECK(std::get<std::string>(again) == *done);
    // every comment line of a text that lost nothing is still there
    if (edit.what == Edit::What::remove) continue;
    ++undamaged;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);)
      if (line.starts_with("# ")) CHECK(done->find(line) != std::string::npos);
  }
  CHECK(made > 300);
  CHECK(refused > 300);
  CHECK(undamaged > 200);
}
