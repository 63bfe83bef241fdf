#pragma once
// Slips of TOML that are looked for before the parser runs: a character beyond ASCII outside quotes and comments (and
// `by = 9.1 ±0.2` is a likely slip), a list that is closed with a brace, a table header without a name. toml++ 3.3
// takes for granted that they do not come up (is_non_ascii_horizontal_whitespace, parse_value, parse_key): undefined
// behaviour, or an abort, as it was built.
#include <optional>
#include <string>
#include <string_view>

namespace baywright::parts {

struct StrayCharacter {
  int line = 0;    // from 1
  int column = 0;  // from 1, in characters
  std::string what;
  std::string right;
};

/// The first one; among those beyond ASCII also one behind a backslash in quotes and what white space follows that.
/// None in text that is not UTF-8 up to there: the parser says so itself. A byte order mark at the very start is none.
[[nodiscard]] std::optional<StrayCharacter> stray_character(std::string_view text);

}  // namespace baywright::parts
