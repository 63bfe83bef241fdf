#pragma once
// What mates with what: the SATA, SAS and SFF-8639 family.
#include "tolerance/dimension.h"

#include <optional>
#include <string_view>

namespace baywright::standards::connectors {

/// On the drive: "sata" "sas" "u2" "u3". On the host, besides: "sas" is SFF-8482 or SFF-8680; "u2" and "u3" are
/// SFF-8639 wired for the one or the other.
enum class Plug { sata, sas, u2, u3 };
/// Capitals or not, "u.2" as well as "u2"; none for any other text, spaces included.
[[nodiscard]] std::optional<Plug> read_plug(std::string_view text);
[[nodiscard]] std::string_view word(Plug plug);                 // "sata"
[[nodiscard]] std::string_view in_words(Plug plug);             // "SATA", "U.2"
[[nodiscard]] std::string_view receptacle_in_words(Plug plug);  // "SAS (SFF-8482 or SFF-8680)"

/// Two questions that have different answers: a plug may enter and the drive stay dead.
struct Mating {
  bool enters = false;   // mechanically
  bool works = false;    // can carry the drive's protocol, if the host wires it; never without `enters`
  std::string_view why;  // a clause: the condition on which it works, or what stands against it
  std::string_view source;
  tolerance::Known known = tolerance::Known::secondary;
};
[[nodiscard]] Mating mate(Plug drive, Plug receptacle);

}  // namespace baywright::standards::connectors
