#pragma once
// Text on a page (HTML).
#include <string>
#include <string_view>

namespace baywright::output {

/// Text that stays text, between tags and in an attribute in double or single quotes. Control characters other than tab
/// and line end are left out: HTML has no place for them.
[[nodiscard]] std::string escaped_html(std::string_view text);

}  // namespace baywright::output
