#include "standards/connectors.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstddef>

namespace baywright::standards::connectors {

namespace {

using tolerance::Known;

struct Name {
  std::string_view word, plug, receptacle;
};
constexpr std::array<Name, 4> names{{
    {"sata", "SATA", "SATA"},
    {"sas", "SAS", "SAS (SFF-8482 or SFF-8680)"},
    {"u2", "U.2", "SFF-8639 wired for U.2"},
    {"u3", "U.3", "SFF-8639 wired for U.3 (SFF-TA-1001)"},
}};

const Name& name(Plug plug) {
  return names[static_cast<std::size_t>(plug)];
}

constexpr std::string_view sas_source = "three public pages on SAS and drive connectors, which agree";
constexpr std::string_view u3_source = "three public pages on SFF-8639 and SFF-TA-1001, which agree";
constexpr std::string_view multi_source = "public pages on SFF-8639, which carries SATA, SAS and PCIe";
constexpr std::string_view bridged_source = "public pages on the U.2 plug, which fills the gap as the SAS plug does";
constexpr std::string_view from_memory = "from memory; no page was found that says whether it enters";

constexpr std::string_view keyed = "keyed: the plug's bridge between signal and power meets the receptacle's wall";

using Row = std::array<Mating, 4>;  // receptacles in the order of Plug

constexpr Row sata_drive{{
    {true, true, "a SATA drive in a SATA receptacle", "the SATA plug and its own receptacle", Known::secondary},
    {true, true, "SAS hosts speak to SATA drives", sas_source, Known::secondary},
    {true, true, "works where the host wires SATA", multi_source, Known::secondary},
    {true, true, "works on a tri-mode host", u3_source, Known::secondary},
}};
constexpr Row sas_drive{{
    {false, false, keyed, sas_source, Known::secondary},
    {true, true, "a SAS drive in a SAS receptacle", sas_source, Known::secondary},
    {true, true, "works where the host wires SAS", multi_source, Known::secondary},
    {true, true, "works on a tri-mode host", u3_source, Known::secondary},
}};
constexpr Row u2_drive{{
    {false, false, keyed, bridged_source, Known::secondary},
    {true, false, "the envelope is the same, but the receptacle carries no PCIe", from_memory, Known::memory},
    {true, true, "a U.2 drive on a U.2 host", u3_source, Known::secondary},
    {true, false, "the plug enters, but a host wired only for U.3 has no PCIe on the drive's contacts", u3_source,
     Known::secondary},
}};
constexpr Row u3_drive{{
    {false, false, keyed, bridged_source, Known::secondary},
    {true, false,
     "the envelope is the same, but the receptacle carries no PCIe; only a drive that also speaks SAS works",
     from_memory, Known::memory},
    {true, true, "U.3 drives have to support U.2 hosts", u3_source, Known::secondary},
    {true, true, "a U.3 drive on a U.3 host", u3_source, Known::secondary},
}};

constexpr std::array<Row, 4> table{sata_drive, sas_drive, u2_drive, u3_drive};

char lower(char letter) {
  return static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
}

bool same(std::string_view a, std::string_view b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](char x, char y) { return lower(x) == lower(y); });
}

}  // namespace

std::optional<Plug> read_plug(std::string_view text) {
  for (const Plug plug : {Plug::sata, Plug::sas, Plug::u2, Plug::u3}) {
    if (same(text, word(plug)) || same(text, in_words(plug))) return plug;
  }
  return std::nullopt;
}

std::string_view word(Plug plug) {
  return name(plug).word;
}

std::string_view in_words(Plug plug) {
  return name(plug).plug;
}

std::string_view receptacle_in_words(Plug plug) {
  return name(plug).receptacle;
}

Mating mate(Plug drive, Plug receptacle) {
  return table[static_cast<std::size_t>(drive)][static_cast<std::size_t>(receptacle)];
}

}  // namespace baywright::standards::connectors
