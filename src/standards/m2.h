#pragma once
// M.2 cards, sockets and stand-offs, as published. Every figure is a row with limits, source, table and how it is known;
// frames: `card` x across toward pin 1, y from the leading edge to the screw, z up from the component face; `host` the
// same directions, y = 0 at the seating plane in the socket, z = 0 at the board's face.
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "tolerance/dimension.h"

namespace baywright::standards::m2 {

using tolerance::Dimension;

struct Width {
  int code;  // as in a type name: 12 16 22 25 30
  Dimension across;
};
struct Length {
  int code;  // 16 26 30 38 42 60 80 110
  Dimension along;  // leading edge to screw end; its hole sits at `along.nominal`, basic
};
[[nodiscard]] std::span<const Width> widths();
[[nodiscard]] std::span<const Length> lengths();

/// What stands above and below the bare card.
struct HeightCode {
  std::string_view code;  // S1..S3, D1..D5
  Dimension top;          // above the component face, nominal with limits (1.25 ±0.10); its high limit is the code's maximum
  std::optional<Dimension> bottom;  // below the other face; none on S codes
};
[[nodiscard]] std::span<const HeightCode> height_codes();
[[nodiscard]] const HeightCode* height_code(std::string_view code);  // null: no such code

// The card (m2.md 2 and 3)
[[nodiscard]] const Dimension& card_thickness();      // 0.80 ±0.08
[[nodiscard]] const Dimension& tab_width();           // 19.85 ±0.10
[[nodiscard]] const Dimension& shoulder();            // y 4.00 ±0.15: full width starts
[[nodiscard]] const Dimension& top_parts_start();     // y, at least 4.0
[[nodiscard]] const Dimension& bottom_parts_start();  // y, at least 5.2
[[nodiscard]] const Dimension& notch_width();         // 1.20 ±0.05
[[nodiscard]] const Dimension& notch_depth();         // 3.50 ±0.15
[[nodiscard]] const Dimension& screw_hole();          // half hole diameter 3.50 ±0.08
[[nodiscard]] const Dimension& top_pad();             // diameter 5.50 ±0.10, concentric with the hole, free of components
[[nodiscard]] const Dimension& bottom_pad();          // diameter 6.00 ±0.10, centre `bottom_pad_inset` inside the edge
[[nodiscard]] const Dimension& bottom_pad_inset();    // 1.00 ±0.10
[[nodiscard]] const Dimension& screw_head_height();   // at most 1.20 above the card's top
[[nodiscard]] const Dimension& screw_head_diameter(); // at most 5.20

/// A key of the edge. `letter` A B C D E F G H J K L M.
struct Key {
  char letter;
  int first_pin;  // removes first_pin .. first_pin + 7
  std::string_view assignment;
};
[[nodiscard]] std::span<const Key> keys();
[[nodiscard]] const Key* key(char letter);
[[nodiscard]] double pin_x(int pin);              // 9.25 - 0.25 (n - 1), pin 1..75
[[nodiscard]] double key_centre(const Key& key);  // x of the notch centre

/// The centre-to-centre spans of a key (m2.md 4), both faces.
struct KeySpans {
  double r, s, t, u;
};
[[nodiscard]] KeySpans key_spans(const Key& key);
[[nodiscard]] int contacts(std::string_view card_keys, bool top);  // "M", "BM", "AE": contacts of that face

/// A card mates with a socket when it has a notch at the socket's key.
[[nodiscard]] bool mates(char socket_key, std::string_view card_keys);

/// The most a socket may carry to a card that mates, by the standard; the board's own wiring may be less.
struct Carries {
  int pcie_lanes;  // 0: none
  bool sata;
  bool storage;    // is a storage socket at all in the standard
};
[[nodiscard]] Carries may_carry(char socket_key, std::string_view card_keys);

/// A height class of sockets (m2.md 5.1, 5.4).
struct SocketClass {
  std::string_view name;  // "H2.3" ... "H4.2"
  Dimension height;       // of the connector above the board, a maximum
  Dimension ledge;        // under the card above the board, a maximum
  Dimension standoff;     // L1 ±0.03
  std::vector<std::string_view> accepts;  // height codes
};
[[nodiscard]] std::span<const SocketClass> socket_classes();
[[nodiscard]] const SocketClass* socket_class(std::string_view name);
[[nodiscard]] const Dimension& solder();  // 0.05 under a stand-off

// Socket outline, host frame (m2.md 5.3)
[[nodiscard]] const Dimension& socket_across();  // 22 max
[[nodiscard]] const Dimension& socket_rear();    // y -4.30 max: lands
[[nodiscard]] const Dimension& socket_front();   // y +4.80 max: lands
[[nodiscard]] const Dimension& cover_front();    // y about +3.2, low confidence
[[nodiscard]] const Dimension& slot_width();     // 20.15 ±0.05

// Stand-off and what it lets move (m2.md 6, check cases 94, 95)
[[nodiscard]] const Dimension& standoff_flange();  // diameter 5.50 ±0.10
[[nodiscard]] const Dimension& tab_play();         // 0 ±0.225: sideways at the socket, either way, derived
[[nodiscard]] const Dimension& screw_play();       // 0 ±0.305: any way at the screw, derived

/// A type name: "2280-D2-M", "2242-S2-B+M", "22110-D5-BM"; the height code may be "?" for a card that must be measured.
struct CardName {
  int width;   // code
  int length;  // code
  std::string height;  // "D2"
  std::string keys;    // "M", "BM", "AE"
};
/// The refusal says what is wrong and what would be right.
[[nodiscard]] std::variant<CardName, std::string> read_card_name(std::string_view text);

/// The key combinations and lengths that the standard lists for a socket (Table 1). 2230 with key M is common practice
/// and not in the table.
[[nodiscard]] bool listed_type(const CardName& name);

}  // namespace baywright::standards::m2
