#include "render/picture.h"

#include "cli/commands.h"
#include "cli/session.h"
#include "output/answer_words.h"
#include "output/paint.h"
#include "parts/naming.h"
#include "render/offscreen.h"

#include <charconv>
#include <cstdio>
#include <iostream>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace baywright::cli {

namespace {

constexpr int least_size = 64;
constexpr int largest_size = 8192;

struct Size {
  int width = 1280;
  int height = 800;
};

/// "1280x800"; none for anything else, or out of range.
std::optional<Size> size_of(const std::string& text) {
  Size size;
  const char* const end = text.data() + text.size();
  const auto width = std::from_chars(text.data(), end, size.width);
  if (width.ec != std::errc() || width.ptr == end || *width.ptr != 'x') return std::nullopt;
  const auto height = std::from_chars(width.ptr + 1, end, size.height);
  if (height.ec != std::errc() || height.ptr != end) return std::nullopt;
  const auto in_range = [](int side) { return side >= least_size && side <= largest_size; };
  return in_range(size.width) && in_range(size.height) ? std::optional(size) : std::nullopt;
}

/// Empty: nothing is wrong with the options.
std::string fault_of(const Arguments& arguments) {
  if (arguments.output != "-" && !arguments.output.ends_with(".png"))
    return arguments.output + ": pictures are written as PNG; name a file that ends in .png";
  if (!arguments.size.empty() && !size_of(arguments.size))
    return "--size takes width and height in pixels, each from 64 to 8192, as 1280x800";
  if (!arguments.side.empty() && !render::side_called(arguments.side)) {
    std::vector<std::string> known;
    for (const render::Side side : {render::Side::whole, render::Side::front, render::Side::back, render::Side::left,
                                    render::Side::right, render::Side::top, render::Side::bottom})
      known.emplace_back(render::word(side));
    const std::string meant = parts::nearest(arguments.side, known);
    return "there is no view `" + arguments.side + "`; " +
           (meant.empty() ? "the views are " + parts::any_of(known) : "did you mean `" + meant + "`?");
  }
  if (arguments.turntable && !(*arguments.turntable >= 2 && *arguments.turntable <= 999))
    return "--turntable must lie from 2 to 999 pictures";
  if (arguments.turntable && arguments.output == "-") return "--turntable writes several files; name one with -o";
  return {};
}

/// Empty: there is such a part, or none was named.
std::string part_fault(const std::string& part, const render::Model& model) {
  if (part.empty()) return {};
  std::vector<std::string> known;
  for (const render::Thing& thing : model.things) {
    if (thing.part == part) return {};
    if (known.empty() || known.back() != thing.part) known.push_back(thing.part);
  }
  const std::string meant = parts::nearest(part, known);
  return "there is no part `" + part + "` in this picture; " +
         (meant.empty() ? "it has " + parts::any_of(known) : "did you mean `" + meant + "`?");
}

/// "way.png" and 7: "way-007.png".
std::string numbered(const std::string& path, int number) {
  char digits[16];
  std::snprintf(digits, sizeof digits, "-%03d", number);
  return path.substr(0, path.size() - std::string_view(".png").size()) + digits + ".png";
}

std::string words_of(const Arguments& arguments) {
  std::string out;
  if (arguments.section) out += ", cut";
  if (arguments.apart) out += ", taken apart";
  if (!arguments.clearance_map.empty()) out += ", clearance of " + arguments.clearance_map;
  if (!arguments.side.empty()) out += ", " + arguments.side;
  return out;
}

int unfinished(const std::string& what) {
  std::cerr << "baywright: " << what << '\n';
  return could_not_finish;
}

}  // namespace

int picture_command(const Arguments& arguments) {
  if (const std::string fault = fault_of(arguments); !fault.empty()) return at_fault(fault);
  const auto shown = show_worst(arguments);
  if (!shown) return input_at_fault;
  const fit::Seating& seating = shown->seating;
  const render::Model model = render::model_of(shown->build, shown->seated, seating);
  if (const std::string fault = part_fault(arguments.clearance_map, model); !fault.empty()) return at_fault(fault);

  auto made = render::Offscreen::make();
  if (const auto* fault = std::get_if<std::string>(&made))
    return unfinished(*fault + "\nThe command draw makes a drawing (SVG) of the same seating without it.");
  render::Canvas& canvas = std::get<render::Offscreen>(made).canvas();

  const Size size = size_of(arguments.size).value_or(Size{});
  render::Wish wish;
  wish.side = render::side_called(arguments.side);
  wish.section = arguments.section;
  wish.apart = arguments.apart;
  if (!arguments.clearance_map.empty()) wish.clearance_of = arguments.clearance_map;
  wish.dark = arguments.dark;
  const double aspect = static_cast<double>(size.width) / (size.height - render::band_height(size.width, size.height));
  render::Look look = render::look_at(model, seating, wish, aspect);
  const output::Answer answer = output::answer_of(seating, shown->build.method);
  const int count = arguments.turntable.value_or(1);
  for (int i = 0; i < count; ++i) {
    const auto drawn = render::picture_of(canvas, model, look, answer, size.width, size.height);
    if (const auto* fault = std::get_if<std::string>(&drawn)) return unfinished(*fault);
    const auto& image = std::get<render::Image>(drawn);
    const std::string path = arguments.turntable ? numbered(arguments.output, i) : arguments.output;
    if (!write_whole(path, output::to_png(image.rgba, image.width, image.height))) return could_not_finish;
    look.camera = render::turned(look.camera, model.place.turn[2], 360.0 / count, 0.0);
  }
  if (arguments.output == "-") return all_fit;
  const std::string path = arguments.turntable
                               ? numbered(arguments.output, 0) + " and " + std::to_string(count - 1) + " more"
                               : arguments.output;
  const bool said = print("drew " + answer.what + " (" + answer.word + ')' + words_of(arguments) + ": " + path +
                          fits_elsewhere(*shown) + '\n');
  return said ? all_fit : could_not_finish;  // the picture was asked for, whatever it shows
}

}  // namespace baywright::cli
