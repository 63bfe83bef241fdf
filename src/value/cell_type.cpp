#include "value/cell_type.h"

#include <array>
#include <string>

namespace baywright::value {

namespace {

constexpr std::array<std::string_view, 5> words{"SLC", "MLC", "TLC", "QLC", "PLC"};

}  // namespace

std::optional<CellType> read_cell_type(std::string_view text) {
  std::string plain;
  for (const char c : text) {
    if (c == ' ' || c == '-') continue;
    plain += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  }
  for (std::size_t i = 0; i < words.size(); ++i)
    if (plain == words[i] || plain == std::to_string(i + 1) + "BITMLC") return static_cast<CellType>(i);
  return std::nullopt;
}

int bits(CellType type) {
  return static_cast<int>(type) + 1;
}

int states(CellType type) {
  return 1 << bits(type);
}

std::string_view word(CellType type) {
  return words[static_cast<std::size_t>(type)];
}

}  // namespace baywright::value
