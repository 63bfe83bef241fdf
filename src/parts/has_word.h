#pragma once
// Looking through names and titles by words.
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace baywright::parts {

/// What was typed as single words: split at blanks, but a figure and the mm behind it are one.
[[nodiscard]] std::vector<std::string> search_words(std::span<const std::string> typed);

/// Whether the text holds the word, capitals or not. Letters may stand anywhere; a figure counts by its value and as a
/// whole: "7mm" is in "7 mm" and "7.00 mm", "6" neither in "60" nor in "2.6", and "M3" not in "M3.5".
[[nodiscard]] bool has_word(std::string_view text, std::string_view word);

}  // namespace baywright::parts
