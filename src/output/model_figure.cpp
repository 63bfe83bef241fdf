#include "output/model_figure.h"

#include "output/base64.h"
#include "output/embedded.h"
#include "output/html.h"

#include <string_view>

namespace baywright::output {

namespace {

/// A stroke on a square of 24.
std::string icon(std::string_view path) {
  return "<svg viewBox=\"0 0 24 24\" aria-hidden=\"true\"><path d=\"" + std::string(path) + "\"/></svg>";
}

std::string icon_button(std::string_view name, const std::string& words, std::string_view path) {
  return "<button type=\"button\" class=\"model-icon\" data-model=\"" + std::string(name) + "\" aria-label=\"" +
         escaped_html(words) + "\">" + icon(path) + "</button>\n";
}

std::string button(std::string_view name, const std::string& words, const std::string& more = "") {
  return "<button type=\"button\" data-model=\"" + std::string(name) + '"' + more + '>' + escaped_html(words) +
         "</button>\n";
}

std::string group(const std::string& words, const std::string& content) {
  const std::string name = escaped_html(words);
  return "<div class=\"model-buttons\" role=\"group\" aria-label=\"" + name + "\"><span aria-hidden=\"true\">" + name +
         "</span>\n" + content + "</div>\n";
}

/// A slider with its label, and what belongs to it.
std::string row(const std::string& id, std::string_view name, const std::string& words, int value,
                const std::string& beside) {
  const std::string own = id + '-' + std::string(name);
  return "<div class=\"model-row\"><label for=\"" + own + "\">" + escaped_html(words) +
         "</label>\n<input type=\"range\"" + " id=\"" + own + "\" data-model=\"" + std::string(name) +
         "\" min=\"0\" max=\"100\" step=\"0.5\" value=\"" + std::to_string(value) + "\">\n<div class=\"model-aside\">" +
         beside + "</div></div>\n";
}

std::string directions(const ModelWords& words) {
  std::string out = "<select data-model=\"direction\" aria-label=\"" + escaped_html(words.cut_direction) + "\">\n";
  int axis = 0;
  for (const std::string* each : {&words.from_side, &words.from_end, &words.from_above})
    out += "<option value=\"" + std::to_string(axis++) + "\">" + escaped_html(*each) + "</option>\n";
  return out + "</select>\n";
}

std::string controls(const std::string& id, const ModelWords& words) {
  const std::string turn =
      icon_button("left", words.turn_left, "M15 5l-7 7 7 7") + icon_button("right", words.turn_right, "M9 5l7 7-7 7") +
      icon_button("up", words.turn_up, "M5 15l7-7 7 7") + icon_button("down", words.turn_down, "M5 9l7 7 7-7");
  const std::string zoom =
      icon_button("farther", words.farther, "M5 12h14") + icon_button("nearer", words.nearer, "M5 12h14M12 5v14");
  const std::string play =
      button("play", words.play,
             " data-play=\"" + escaped_html(words.play) + "\" data-stop=\"" + escaped_html(words.stop) + '"');
  return "<div class=\"model-controls\" role=\"group\" aria-label=\"" + escaped_html(words.controls) +
         "\" hidden>\n<div class=\"model-head\">\n" + group(words.turn, turn) + group(words.zoom, zoom) +
         button("reset", words.reset) + "</div>\n" +
         row(id, "cut", words.cut, 0, directions(words) + button("why", words.show_why)) +
         row(id, "apart", words.apart, 0, "") + row(id, "put-in", words.put_in, 100, play) + "</div>\n";
}

}  // namespace

std::string model_figure(const std::string& id, const std::string& glb, const ModelPicture& picture,
                         const ModelWords& words) {
  return "<figure class=\"model\" id=\"" + escaped_html(id) + "\">\n<div class=\"model-view\">\n" +
         "<img class=\"model-picture\" src=\"" + escaped_html(picture.source) + "\" alt=\"" +
         escaped_html(picture.words) + "\" width=\"" + std::to_string(picture.width) + "\" height=\"" +
         std::to_string(picture.height) + "\">\n<canvas class=\"model-canvas\" tabindex=\"0\" role=\"application\" " +
         "aria-label=\"" + escaped_html(words.model) + "\" hidden></canvas>\n</div>\n" + controls(id, words) +
         "<script class=\"model-data\" type=\"model/gltf-binary\">" + base64(glb) + "</script>\n" +
         (words.caption.empty() ? "" : "<figcaption hidden>" + escaped_html(words.caption) + "</figcaption>\n") +
         "</figure>\n";
}

std::string model_style() {
  return std::string(embedded::model_css);
}

std::string model_script() {
  std::string out = "/*\n";
  out += embedded::three_licence_txt;
  out += "*/\n";
  out += embedded::three_min_js;
  out += '\n';
  out += embedded::model_js;
  return out;
}

}  // namespace baywright::output
