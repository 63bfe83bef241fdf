#include "output/sources_text.h"

#include "output/dimension_rows.h"
#include "output/text.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <sstream>

using namespace baywright;
using namespace baywright::output;
using tolerance::Dimension;
using tolerance::Known;

namespace {

std::size_t widest(const std::string& text) {
  std::size_t out = 0;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) out = std::max(out, columns(line));
  return out;
}

std::size_t count(const std::string& text, const std::string& what) {
  std::size_t out = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++out;
  return out;
}

}  // namespace

TEST_CASE("sources stand once with their dimensions, and are counted by how they are known") {
  const std::vector<standards::Rows> families = {
      {"drives",
       {{"width", 69.85, 0.25, 0.25, "one standard, Table 1", Known::read},
        {"depth", 100.45, tolerance::open_side, 0.0, "another source", Known::secondary},
        {"height", 7.0, 0.2, 0.2, "one standard, Table 1", Known::read, false, "7.00 ±0.25, by a drawing"}}},
      {"screws", {{"head", 5.5, 0.0, 0.0, "habit; no tolerance published", Known::practice}}}};
  CHECK(sources_text(families) ==
        "drives (3)\n"
        "  one standard, Table 1 (read)\n"
        "    width   69.85 ±0.25 mm\n"
        "    height  7.00 ±0.20 mm\n"
        "      another source: 7.00 ±0.25, by a drawing\n"
        "  another source (secondary)\n"
        "    depth   at most 100.45 mm\n"
        "\n"
        "screws (1)\n"
        "  habit (practice)\n"
        "    head  5.50 mm  no tolerance published\n"
        "\n"
        "4 dimensions: 2 read, 1 secondary, 1 practice, 0 memory, 0 measured, 0 derived\n");
}

TEST_CASE("every published row is listed, each known in one way, within 100 columns") {
  const auto families = standards::all_rows();
  const std::string text = sources_text(families);
  CHECK(widest(text) <= 100);
  std::size_t rows = 0;
  for (const auto& family : families)
    for (const Dimension& d : family.rows) {
      ++rows;
      CAPTURE(d.name);
      CHECK(columns(d.name) <= 90);
      CHECK(count(text, d.name) > 0);
    }
  CHECK(rows > 400);
  std::istringstream last(text.substr(text.rfind('\n', text.size() - 2) + 1));
  std::size_t all = 0;
  std::string word;
  last >> all >> word;
  CHECK(word == "dimensions:");
  CHECK(all == rows);
  std::size_t sum = 0;
  for (std::size_t each = 0; last >> each >> word;) sum += each;
  CHECK(sum == rows);
}

TEST_CASE("a part's rows fit 100 columns however long their names and sources") {
  const std::vector<Dimension> rows = {
      {"a name that goes on for rather longer than the column of names would ever want to be, with a tail", 1.0, 0.1,
       0.1, "a document, with a place in it that is told at such length that one line could not hold it at all",
       Known::read},
      {"b", 2.0, 0.0, 0.0, "", Known::measured}};
  for (const std::string& text :
       {rows_under_sources(rows, 2), rows_under_documents(rows, 2), rows_with_sources(rows, 2)}) {
    CHECK(widest(text) <= 100);
    CHECK(text.find("no source") != std::string::npos);
    CHECK(text.find("1.00 ±0.10 mm") != std::string::npos);
  }
}
