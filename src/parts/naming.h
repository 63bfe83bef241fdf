#pragma once
// Naming what may have been meant.
#include <string>
#include <string_view>
#include <vector>

namespace baywright::parts {

/// The nearest of `known` to `asked` by edit distance, capitals or not; empty when none comes close enough to be meant.
[[nodiscard]] std::string nearest(std::string_view asked, const std::vector<std::string>& known);

/// The three nearest, however far, as "`a`, `b` or `c`"; empty where nothing is known.
[[nodiscard]] std::string nearest_few(std::string_view asked, std::vector<std::string> known);

/// "a, b or c".
[[nodiscard]] std::string any_of(const std::vector<std::string>& words);

}  // namespace baywright::parts
