#pragma once
// Files that pages bring along, put into the program by cmake/embedded.cmake: NAME.js is NAME_js. UTF-8, whole.
#include <string_view>

namespace baywright::output::embedded {

extern const std::string_view three_licence_txt;
extern const std::string_view three_min_js;
extern const std::string_view model_js;
extern const std::string_view model_css;
extern const std::string_view page_js;
extern const std::string_view page_css;

}  // namespace baywright::output::embedded
