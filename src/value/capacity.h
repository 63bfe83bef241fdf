#pragma once
// What a label's gigabytes are elsewhere.
#include <cstdint>
#include <optional>

namespace baywright::value {

/// Labels count 10^9 bytes to the GB; some operating systems count 2^30 or 2^40 and call that GB or TB as well.
[[nodiscard]] double gibibytes(double gigabytes);
[[nodiscard]] double tebibytes(double gigabytes);

/// Blocks of 512 bytes that a drive of this label has (IDEMA LBA1-03, from memory): 97,696,368 + 1,953,504 (GB - 50).
/// None below 50 GB, above 100 PB, or for a label with a fraction.
[[nodiscard]] std::optional<std::int64_t> blocks(double gigabytes);

}  // namespace baywright::value
