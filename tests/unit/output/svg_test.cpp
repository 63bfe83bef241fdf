#include "output/svg.h"

#include "unit/output/svg_reading.h"

#include <doctest/doctest.h>

using namespace baywright::output;

namespace {

std::size_t count(const std::string& text, const std::string& what) {
  std::size_t n = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++n;
  return n;
}

Sheet sample() {
  Sheet sheet;
  sheet.title = "fits: \"a\" & <b>";
  sheet.description = "one\ntwo";
  Group inner;
  inner.name = "parts";
  inner.clip = Box{{1, 2}, {30, 40}};
  inner.add(Line{{{1.23456, 2.0}, {-0.0001, 7.5}}, false, {thin_line, ink, true}});
  inner.add(Area{{{{0, 0}, {10, 0}, {10, 5}, {0, 5}}}, paper, Pattern::grid, 0.0, 1.2, {}});
  inner.add(Disc{{3, 4}, 1.5, "", Pen{}});
  sheet.all.add(inner);
  sheet.all.add(Text{{5, 6}, "<script>&\x01 ±0.2", 3.0, Anchor::end, true, true, true, ink});
  return sheet;
}

}  // namespace

TEST_CASE("names from a file cannot break out of the text that they stand in") {
  const std::string svg = to_svg(sample());
  CHECK(reading_fault(svg) == "");
  CHECK(svg.find("<script") == std::string::npos);
  CHECK(svg.find("&lt;script&gt;&amp;") != std::string::npos);
  CHECK(svg.find('\x01') == std::string::npos);
  CHECK(svg.find("±0.2") != std::string::npos);
  CHECK(svg.find("<title id=\"title\">fits: &quot;a&quot; &amp; &lt;b&gt;</title>") != std::string::npos);
}

TEST_CASE("a user unit is a millimetre on paper") {
  const std::string svg = to_svg(sample());
  CHECK(svg.find("width=\"297mm\" height=\"210mm\" viewBox=\"0 0 297 210\"") != std::string::npos);
  CHECK(svg.find("M1.235 2L0 7.5") != std::string::npos);  // a thousandth, and no minus before nothing
  CHECK(svg.find("<rect x=\"1\" y=\"2\" width=\"29\" height=\"38\"/>") != std::string::npos);
}

TEST_CASE("the same sheet gives the same bytes, and clips are numbered within the sheet") {
  const std::string svg = to_svg(sample());
  CHECK(svg == to_svg(sample()));
  CHECK(count(svg, "id=\"clip1\"") == 1);
  CHECK(count(svg, "url(#clip1)") == 1);
}

TEST_CASE("the reader of these tests finds faults") {
  CHECK(reading_fault("<a><b></a></b>") != "");
  CHECK(reading_fault("<a>") != "");
  CHECK(reading_fault("<a x=1/>") != "");
  CHECK(reading_fault("<a>&</a>") != "");
  CHECK(reading_fault("<a x=\"1\" x=\"2\"/>") != "");
  CHECK(reading_fault("<?xml version=\"1.0\"?>\n<a x=\"1\"><b/>&amp;</a>\n") == "");
}
