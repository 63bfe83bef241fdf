#pragma once
// What TOML takes nowhere but in quotes and comments: characters beyond ASCII. Looked for before the parser runs, since
// `by = 9.1 ±0.2` without quotes is a likely slip, and since toml++ 3.3 has undefined behaviour on some of them where
// it expects white space (its is_non_ascii_horizontal_whitespace).
#include <optional>
#include <string>
#include <string_view>

namespace baywright::parts {

struct StrayCharacter {
  int line = 0;       // from 1
  int column = 0;     // from 1, in characters
  std::string words;  // "`±` (U+00B1)"
};

/// The first one outside quotes and comments, or behind a backslash and what white space follows that. None in text
/// that is not UTF-8 up to there: the parser says so itself. A byte order mark at the very start is none.
[[nodiscard]] std::optional<StrayCharacter> stray_character(std::string_view text);

}  // namespace baywright::parts
