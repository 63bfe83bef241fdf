// Keys of the M.2 edge: where they sit, what mates, and what the standard lets a mated pair carry.
#include "standards/m2.h"
#include "standards/m2_source.h"
#include "standards/row.h"

#include <algorithm>
#include <array>

namespace baywright::standards::m2 {

namespace {

constexpr int pins_in_key = 8;
constexpr int last_pin = 75;
constexpr int middle_pin = 38;  // stands on the card's centre line

constexpr std::array<Key, 12> key_rows{{
    {'A', 8, "two PCIe x1, USB 2.0, I2C, DisplayPort x4"},
    {'B', 12, "PCIe x2, SATA, USB 2.0 and 3.0, audio, UIM, HSIC, SSIC, I2C"},
    {'C', 16, "reserved"},
    {'D', 20, "reserved"},
    {'E', 24, "two PCIe x1, USB 2.0, I2C, SDIO, UART, PCM"},
    {'F', 28, "future memory interface"},
    {'G', 39, "custom, not M.2"},
    {'H', 43, "reserved"},
    {'J', 47, "reserved"},
    {'K', 51, "reserved"},
    {'L', 55, "reserved"},
    {'M', 59, "PCIe x4, SATA"},
}};

int last_of(const Key& key) {
  return key.first_pin + pins_in_key - 1;
}

bool removed(std::string_view card_keys, int pin) {
  return std::any_of(card_keys.begin(), card_keys.end(), [&](char letter) {
    const Key* const one = key(letter);
    return one != nullptr && pin >= one->first_pin && pin <= last_of(*one);
  });
}

/// The last pin below `pin` and the first pin above it, on the face where `parity` is odd (1) or even (0).
int last_below(int pin, int parity) {
  return (pin - 1) % 2 == parity ? pin - 1 : pin - 2;
}
int first_above(int pin, int parity) {
  return (pin + 1) % 2 == parity ? pin + 1 : pin + 2;
}

}  // namespace

std::span<const Key> keys() {
  return key_rows;
}

const Key* key(char letter) {
  const auto* const found =
      std::find_if(key_rows.begin(), key_rows.end(), [&](const Key& row) { return row.letter == letter; });
  return found == key_rows.end() ? nullptr : found;
}

const Dimension& row_pitch() {
  static const Dimension row =
      plus_minus("contact pitch in a row", 0.50, 0.0, rev1("section 2.4.2 and Figure 16, basic"));
  return row;
}

double pin_x(int pin) {
  return (middle_pin - pin) * (row_pitch().nominal / 2.0);
}

double key_centre(const Key& key) {
  return (pin_x(key.first_pin) + pin_x(last_of(key))) / 2.0;
}

KeySpans key_spans(const Key& key) {
  const int before = key.first_pin;
  const int behind = last_of(key);
  return {
      .r = pin_x(1) - pin_x(last_below(before, 1)),
      .s = pin_x(first_above(behind, 1)) - pin_x(last_pin),
      .t = pin_x(2) - pin_x(last_below(before, 0)),
      .u = pin_x(first_above(behind, 0)) - pin_x(last_pin - 1),
  };
}

int contacts(std::string_view card_keys, bool top) {
  int count = 0;
  for (int pin = top ? 1 : 2; pin <= last_pin; pin += 2) {
    if (!removed(card_keys, pin)) ++count;
  }
  return count;
}

bool mates(char socket_key, std::string_view card_keys) {
  return key(socket_key) != nullptr && card_keys.find(socket_key) != std::string_view::npos;
}

Carries may_carry(char socket_key, std::string_view card_keys) {
  const bool storage = socket_key == 'B' || socket_key == 'M';
  Carries none{.pcie_lanes = 0, .sata = false, .storage = storage};
  if (!mates(socket_key, card_keys)) return none;
  if (socket_key == 'A' || socket_key == 'E') return {.pcie_lanes = 1, .sata = false, .storage = false};
  if (!storage) return none;
  // Lanes 2 and 3 use pins 5 to 25, and a B notch takes 12 to 19 away; a B socket has two lanes itself.
  const bool four = socket_key == 'M' && card_keys.find('B') == std::string_view::npos;
  return {.pcie_lanes = four ? 4 : 2, .sata = true, .storage = true};
}

}  // namespace baywright::standards::m2
