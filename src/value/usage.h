#pragma once
// How much somebody writes in a day.
#include "tolerance/dimension.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>

namespace baywright::value {

struct Usage {
  std::string_view name;  // "office"
  double gigabytes_a_day = 0.0;
  std::string_view what;  // "mail, texts, the web"
  tolerance::Known known = tolerance::Known::practice;
};

/// Typical ones, the least first.
[[nodiscard]] std::span<const Usage> usages();

/// "30", "30 GB", "2.5" or the name of a usage. The refusal says what would be right.
struct Daily {
  double gigabytes = 0.0;
  const Usage* usage = nullptr;  // null: the user's own figure
};
[[nodiscard]] std::variant<Daily, std::string> read_daily(std::string_view text);

}  // namespace baywright::value
