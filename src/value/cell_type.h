#pragma once
// Memory cells by how many bits each holds.
#include <optional>
#include <string_view>

namespace baywright::value {

enum class CellType { slc, mlc, tlc, qlc, plc };

/// "SLC", "TLC", capitals or not; "3-bit MLC", as some labels have it, is TLC. None for any other text. A bare "MLC" is
/// taken at its word, two bits, though some labels mean more by it.
[[nodiscard]] std::optional<CellType> read_cell_type(std::string_view text);

[[nodiscard]] int bits(CellType type);
/// Levels that a cell is told apart by: 2 to the power of its bits.
[[nodiscard]] int states(CellType type);
[[nodiscard]] std::string_view word(CellType type);  // "TLC"

}  // namespace baywright::value
