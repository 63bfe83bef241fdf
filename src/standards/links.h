#pragma once
// Link rates of SATA, SAS and PCIe 1 to 5, after line code, one direction. MB = 10^6 bytes.
#include "tolerance/dimension.h"

#include <optional>
#include <string>
#include <string_view>
#include <variant>

namespace baywright::standards::links {

enum class Protocol { sata, pcie, sas };

/// "pcie 4.0 x4", "sata 6", "sas 12".
struct Link {
  Protocol protocol = Protocol::pcie;
  int generation = 0;  // pcie 1..5; sata 1..3 (1.5, 3, 6 Gb/s); sas 1..3 (3, 6, 12 Gb/s)
  int lanes = 1;       // pcie 1 2 4 8 16; else 1
};

/// Accepts "pcie 4.0 x4", "pcie 3 x2", "PCIe 4.0 x4", "sata 6", "sata 3", "sas 12". The refusal says what is wrong and what would
/// be right.
[[nodiscard]] std::variant<Link, std::string> read_link(std::string_view text);
[[nodiscard]] std::string in_words(const Link& link);  // "PCIe 4.0 x4", "SATA 6 Gb/s"

[[nodiscard]] double gigatransfers(const Link& link);  // per second and lane
[[nodiscard]] double megabytes(const Link& link);      // per second, derived from rate, code and lanes
[[nodiscard]] std::string_view source(const Link& link);
[[nodiscard]] tolerance::Known known(const Link& link);

/// What two ends settle on: the lower generation, the largest of 1 2 4 8 16 lanes that both have. None across
/// protocols, but for a SATA drive at a SAS host, which speaks SATA to it.
[[nodiscard]] std::optional<Link> settle(const Link& drive, const Link& host);

}  // namespace baywright::standards::links
