// Every published row, for open_data.py: family, name, nominal, minus and plus, with tabs between, mm. Infinity is
// "inf". Last come the contacts of an M.2 edge with key E, which have no limits of their own.
#include "standards/all_rows.h"
#include "standards/m2.h"

#include <cstdio>
#include <string>

namespace {

void print(std::string_view family, std::string_view name, double nominal, double minus, double plus) {
  std::printf("%s\t%s\t%.9g\t%.9g\t%.9g\n", std::string(family).c_str(), std::string(name).c_str(), nominal, minus,
              plus);
}

void print_contacts(char letter) {
  using namespace baywright::standards;
  constexpr int last_pin = 75;
  constexpr int pins_in_key = 8;
  const m2::Key* const key = m2::key(letter);
  if (key == nullptr) return;
  const std::string family = std::string("M.2 contacts, key ") + letter;
  for (int pin = 1; pin <= last_pin; ++pin) {
    const bool removed = pin >= key->first_pin && pin < key->first_pin + pins_in_key;
    if (!removed) print(family, "pin " + std::to_string(pin), m2::pin_x(pin), 0.0, 0.0);
  }
  print(family, "notch", m2::key_centre(*key), 0.0, 0.0);
}

}  // namespace

int main() {
  for (const auto& [family, rows] : baywright::standards::all_rows()) {
    for (const auto& row : rows) print(family, row.name, row.nominal, row.minus, row.plus);
  }
  print_contacts('E');
  return 0;
}
