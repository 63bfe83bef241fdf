#pragma once
// Adapters: parts that let a drive go where another form goes. No standard gives one; these are generic, their sizes
// common practice, and a measured one replaces them. A passive adapter changes no protocol.
#include "parts/addin_card.h"
#include "parts/cased_drive.h"
#include "parts/form.h"
#include "parts/m2_card.h"
#include "standards/connectors.h"
#include "standards/links.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace baywright::parts {

/// Which question it turns from no to yes.
enum class Turns { form_factor, form_factor_and_interface, length };

struct Adapter {
  std::string_view id;  // "adapter/2.5in-in-3.5in"
  std::string_view title;
  Form takes;
  Form becomes;
  Turns turns;
  int drives = 1;                                       // how many it carries
  int lanes = 0;                                        // becomes an add-in card: of its edge
  int length = 0;                                       // becomes a longer M.2 card: its length code
  int card_length = 0;                                  // takes only 22 wide M.2 cards of this length code; 0: any
  bool flush = false;                                   // holds the drive at the edge y = 0; else in the middle
  std::optional<standards::links::Protocol> carries{};  // the one protocol that it passes on; none: whatever comes
  std::string adds;                                     // what it adds in height and length, in words
  std::string cannot;                                   // what it cannot do, in words
};
[[nodiscard]] std::span<const Adapter> adapters();
[[nodiscard]] const Adapter* adapter(std::string_view id);  // null: no such adapter

/// Its own sizes.
[[nodiscard]] Part adapter_part(const Adapter& adapter);

/// A cased drive in an adapter that is screwed in like a larger one. `position`: which of its drives, from 1; `raised`:
/// the drive's base over the adapter's, where it was measured.
[[nodiscard]] CasedDrive in_adapter(const Adapter& adapter, const CasedDrive& drive, int position,
                                    const std::optional<tolerance::Dimension>& raised);

/// A card in a shell of the size of a 2.5-inch drive of 7 mm.
[[nodiscard]] CasedDrive in_shell(const Adapter& adapter);

/// A card carried out to a longer place: its own solids, the strip, and the hole at the strip's end.
[[nodiscard]] M2Card extended(const Adapter& adapter, M2Card card);

/// A carrier's board with a bracket; and where its sockets are, card frame: seating plane crossed with the card's
/// centre line, the cards toward -x.
[[nodiscard]] AddInCard carrier(const Adapter& adapter, Bracket bracket);
struct CarrierSocket {
  double x = 0.0, y = 0.0;  // mm
};
[[nodiscard]] CarrierSocket carrier_socket(const Adapter& adapter, int position);

}  // namespace baywright::parts
