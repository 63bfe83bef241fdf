// The figure of a model as text. tests/page looks at it in a browser.
#include "output/model_figure.h"

#include "output/html.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace baywright::output;

namespace {

std::size_t count(const std::string& text, const std::string& what) {
  std::size_t out = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++out;
  return out;
}

}  // namespace

TEST_CASE("text on a page stays text between tags and in attributes") {
  CHECK(escaped_html("<b> & \"a\" 'c'") == "&lt;b&gt; &amp; &quot;a&quot; &#39;c&#39;");
  CHECK(escaped_html("\xC3\xA4\t\n") == "\xC3\xA4\t\n");
  CHECK(escaped_html(std::string_view("a\0b\x1B\x7F", 5)) == "ab");
}

TEST_CASE("a figure holds its picture, its model and its words, none of which ends it") {
  const std::string hostile = "</script><script>alert(1)</script>\"'>";
  ModelWords words;
  for (std::string ModelWords::*each :
       {&ModelWords::model,      &ModelWords::caption,       &ModelWords::controls,  &ModelWords::turn,
        &ModelWords::turn_left,  &ModelWords::turn_right,    &ModelWords::turn_up,   &ModelWords::turn_down,
        &ModelWords::zoom,       &ModelWords::nearer,        &ModelWords::farther,   &ModelWords::reset,
        &ModelWords::cut,        &ModelWords::cut_direction, &ModelWords::from_side, &ModelWords::from_end,
        &ModelWords::from_above, &ModelWords::show_why,      &ModelWords::apart,     &ModelWords::put_in,
        &ModelWords::play,       &ModelWords::stop})
    words.*each = hostile;
  const std::string figure = model_figure("first", "foobar", {"data:image/png;base64,AA==", hostile, 960, 640}, words);
  CHECK(count(figure, "<script") == 1);
  CHECK(count(figure, "</script>") == 1);
  CHECK(count(figure, "alert(1)") >= 22);  // each word is there
  CHECK(count(figure, "<script class=\"model-data\" type=\"model/gltf-binary\">Zm9vYmFy</script>") == 1);
  CHECK(count(figure, "width=\"960\" height=\"640\"") == 1);
  CHECK(count(figure, " id=\"first") == 4);  // its own and those of three sliders
  CHECK(count(figure, " for=\"first-") == 3);
}

TEST_CASE("the script of models brings its licence and nothing that ends it") {
  std::string script = model_script();
  CHECK(script.starts_with("/*\nthree.js, release 111\n"));
  CHECK(count(script, "Permission is hereby granted, free of charge") == 1);
  CHECK(count(script, "\"111\"") == 1);  // REVISION: the licence names the release that is there
  CHECK(script.find("class Figure") != std::string::npos);
  std::transform(script.begin(), script.end(), script.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? c | 32 : c; });
  CHECK(count(script, "</script") == 0);
  CHECK(count(script, "<!--") == 0);
  CHECK(count(model_style(), "</style") == 0);
  CHECK(count(model_style(), ".model-canvas") > 0);
}
