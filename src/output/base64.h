#pragma once
// Bytes as text: RFC 4648, 4.
#include <string>
#include <string_view>

namespace baywright::output {

/// Padded, without line ends.
[[nodiscard]] std::string base64(std::string_view bytes);

}  // namespace baywright::output
