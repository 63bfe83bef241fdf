// Which drive connector enters which receptacle. SATA and SAS: three public pages that agree. U.2 and U.3: three public
// pages on SFF-8639 and SFF-TA-1001. A U.2 or U.3 plug in a SAS receptacle: memory.
#include "standards/connectors.h"

#include <array>
#include <doctest/doctest.h>
#include <string>

using namespace baywright::standards;
using baywright::tolerance::Known;
using connectors::Plug;

TEST_CASE("the sixteen pairs of plug and receptacle") {
  struct Pair {
    Plug drive, receptacle;
    bool enters, works;
    Known known;
  };
  constexpr std::array<Pair, 16> pairs{{
      {Plug::sata, Plug::sata, true, true, Known::secondary},
      {Plug::sata, Plug::sas, true, true, Known::secondary},
      {Plug::sata, Plug::u2, true, true, Known::secondary},     // if the host wires SATA
      {Plug::sata, Plug::u3, true, true, Known::secondary},     // tri-mode host
      {Plug::sas, Plug::sata, false, false, Known::secondary},  // keyed
      {Plug::sas, Plug::sas, true, true, Known::secondary},
      {Plug::sas, Plug::u2, true, true, Known::secondary},
      {Plug::sas, Plug::u3, true, true, Known::secondary},
      {Plug::u2, Plug::sata, false, false, Known::secondary},  // the plug fills the gap as the SAS plug does
      {Plug::u2, Plug::sas, true, false, Known::memory},
      {Plug::u2, Plug::u2, true, true, Known::secondary},
      {Plug::u2, Plug::u3, true, false, Known::secondary},  // U.2 drives do not work in U.3 hosts
      {Plug::u3, Plug::sata, false, false, Known::secondary},
      {Plug::u3, Plug::sas, true, false, Known::memory},
      {Plug::u3, Plug::u2, true, true, Known::secondary},  // U.3 drives have to support U.2 hosts
      {Plug::u3, Plug::u3, true, true, Known::secondary},
  }};
  for (const Pair& pair : pairs) {
    CAPTURE(std::string(connectors::in_words(pair.drive)));
    CAPTURE(std::string(connectors::receptacle_in_words(pair.receptacle)));
    const connectors::Mating mating = connectors::mate(pair.drive, pair.receptacle);
    CHECK(mating.enters == pair.enters);
    CHECK(mating.works == pair.works);
    CHECK(mating.known == pair.known);
    CHECK(!mating.why.empty());
    CHECK(mating.source.size() > 10);
  }
}

TEST_CASE("plugs as people write them") {
  for (const Plug plug : {Plug::sata, Plug::sas, Plug::u2, Plug::u3}) {
    CHECK(connectors::read_plug(connectors::word(plug)) == plug);
    CHECK(connectors::read_plug(connectors::in_words(plug)) == plug);
  }
  CHECK(connectors::read_plug("Sas") == Plug::sas);
  CHECK(connectors::read_plug("u.2") == Plug::u2);
  for (const char* const text : {"", "sat", "sata ", "u4", "u.", "nvme", "sff-8639"}) {
    CAPTURE(text);
    CHECK(!connectors::read_plug(text));
  }
}
