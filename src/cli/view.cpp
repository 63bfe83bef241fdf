#include "cli/commands.h"
#include "cli/session.h"
#include "value/shortlist.h"
#include "viewer/window.h"

#include <charconv>
#include <cstdio>
#include <iostream>

namespace baywright::cli {

namespace {

/// "1280x800" into the two; false for anything else, or out of range.
bool read_size(const std::string& text, int& width, int& height) {
  const char* const end = text.data() + text.size();
  const auto first = std::from_chars(text.data(), end, width);
  if (first.ec != std::errc() || first.ptr == end || *first.ptr != 'x') return false;
  const auto second = std::from_chars(first.ptr + 1, end, height);
  const auto in_range = [](int side) { return side >= 64 && side <= 8192; };
  return second.ec == std::errc() && second.ptr == end && in_range(width) && in_range(height);
}

}  // namespace

int view_command(const Arguments& arguments) {
  viewer::WindowOptions options;
  if (!arguments.size.empty() && !read_size(arguments.size, options.width, options.height)) {
    std::cerr << "baywright: --size takes width and height, each from 64 to 8192, as 1280x800\n";
    return input_at_fault;
  }
  // A fault of the file is said where the command was given, as every command does.
  if (!arguments.file.empty() && !read_build(arguments)) return input_at_fault;
  if (!arguments.shortlist.empty()) {
    const auto list = value::read_shortlist(arguments.shortlist);
    if (const auto* fault = std::get_if<parts::Fault>(&list)) {
      std::cerr << fault->text() << '\n';
      return input_at_fault;
    }
    options.shortlist = arguments.shortlist;
    options.wanted.place = arguments.place;
  }
  options.file = arguments.file;
  options.fit = options_of(arguments);
  options.fit.progress = {};  // the terminal is not where one looks
  if (arguments.trace)
    options.drawn = [](int frame, double seconds, bool working, const std::string& title) {
      std::fprintf(stderr, "frame %d, %.3f s%s: %s\n", frame, seconds, working ? ", working" : "", title.c_str());
    };
  if (const auto fault = viewer::show_window(options)) {
    std::cerr << "baywright: " << *fault << '\n';
    return could_not_finish;
  }
  return all_fit;  // it was looked at, whatever it shows
}

}  // namespace baywright::cli
