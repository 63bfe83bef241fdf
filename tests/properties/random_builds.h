#pragma once
// Small builds at random in which a drive may or may not fit: what plans are tested on.
#include <random>
#include <string>

namespace baywright::test {

class RandomBuilds {
 public:
  explicit RandomBuilds(unsigned seed) : random_(seed) {}

  /// A card, maybe with chips underneath and a coil below them, between a board and a sheet that may come off, maybe
  /// with a shelf beyond it and a second slot.
  std::string under_tray() {
    std::string text = head() + plate("board", "160, 140", "1.6");
    if (chance(0.6)) text += coil(35);
    text += tray(between(4.6, 5.6), chance(0.8), chance(0.7));
    text += slot("slot", 35) + (chance(0.2) ? slot("other slot", 100) : "");
    text += card("card", chance(0.7) ? "D2" : "S3");
    if (chance(0.2)) text += card("other card", chance(0.5) ? "D3" : "S2");
    return text;
  }

  /// A card with a heatsink between a board, maybe with a coil below the card, and a sheet that may come off.
  std::string under_cover() {
    std::string text = head() + plate("board", "160, 140", "1.6");
    if (chance(0.7)) text += coil(70);
    text += tray(between(4.4, 6.4), chance(0.5), true);
    text += slot("slot", 70) + card("card", chance(0.8) ? "D2" : "S3");
    const double high = between(0.9, 1.4);
    text += "wears = [" + std::string(chance(0.3) ? "{ pad = \"0.5\", compress = \"20 %\" }, " : "") +
            "{ heatsink = { length = 60, width = 22, height = " + limited(high, 0.1) + " } }]\n";
    return text;
  }

  /// A cased drive in one of two bays, maybe screwed at its sides, with a cable behind it.
  std::string in_bays() {
    std::string text = head() + plate("floor", "320, 240", "1") + bay("bay", "60");
    if (chance(0.3)) text += bay("other bay", "170");
    text += drive("drive", chance(0.8) ? "2.5in/7" : "2.5in/15");
    if (chance(0.3)) text += drive("other drive", "2.5in/9.5");
    return text;
  }

 private:
  double between(double low, double high) { return std::uniform_real_distribution(low, high)(random_); }
  bool chance(double share) { return between(0.0, 1.0) < share; }

  static std::string mm(double value) {
    std::string text = std::to_string(value);
    return text.substr(0, text.find('.') + 3);  // to hundredths, as a caliper has it
  }
  static std::string limited(double value, double limit) { return "\"" + mm(value) + " ±" + mm(limit) + "\""; }

  std::string head() { return "title = \"random\"\nclearance = " + std::string(chance(0.5) ? "0.5" : "0.2") + "\n"; }
  static std::string plate(const std::string& name, const std::string& size, const std::string& thick) {
    return "[[part]]\nname = \"" + name + "\"\nsolid = { plate = [" + size + ", " + thick + "] }\n";
  }
  /// A sheet below the board, and a shelf below that.
  std::string tray(double distance, bool removable, bool shelf) {
    const double thick = chance(0.5) ? 1.2 : 4.0;
    std::string text = plate("tray", "150, 130", mm(thick)) +
                       "under = { part = \"board\", by = " + limited(distance, 0.2) + " }\n" +
                       (removable ? "removable = true\n" : "");
    if (shelf)
      text += plate("shelf", "150, 130", "2") + "at = [5, 5, " + mm(-distance - thick - between(2.3, 4.0)) +
              "]\nremovable = true\n";
    return text;
  }
  /// On the board's back, below the card of a slot at that y.
  std::string coil(int y) {
    const double high = between(0.6, 1.4);
    return "[[part]]\nname = \"coil\"\nsolid = { box = [8, 8, " + mm(high) + "] }\nat = [70, " + std::to_string(y - 4) +
           ", " + mm(-high) + "]\n";
  }
  std::string bay(const std::string& name, const std::string& y) {
    const bool small = chance(0.85);
    std::string text = "[[bay]]\nname = \"" + name + "\"\non = { part = \"floor\", at = [100, " + y +
                       "], toward = \"+x\" }\ntakes = \"" + (small ? "2.5in" : "3.5in") +
                       "\"\ncable = " + limited(between(11.0, 15.0), 1.0) + "\nbus = \"" +
                       (chance(0.9) ? "sata 6" : "pcie 4.0 x4") + "\"\ninside = { width = " + (small ? "71" : "104") +
                       ", height = " + limited(between(7.5, 18.0), 0.1) +
                       ", depth = 160, behind = " + limited(between(11.0, 18.0), 0.5) + " }\n";
    if (small && chance(0.7))
      text +=
          "fixing = { through = \"sides\", holes = [[14.0, 3.0], [90.6, 3.0]], diameter = 3.6, screw = \"M3\", "
          "length = " +
          limited(4.0 + static_cast<int>(between(0.0, 2.0)), 0.1) + ", sheet = " + limited(between(1.4, 3.2), 0.05) +
          " }\n";
    return text;
  }
  static std::string slot(const std::string& name, int y) {
    return "[[slot]]\nname = \"" + name + "\"\non = { part = \"board\", face = \"back\", at = [40, " +
           std::to_string(y) +
           "], toward = \"+x\" }\nsocket = \"m2/M/H4.2\"\nlengths = [2280]\nbus = \"pcie 4.0 x4\"\n";
  }
  static std::string card(const std::string& name, const std::string& height) {
    return "[[drive]]\nname = \"" + name + "\"\nuse = \"m2/2280-" + height + "-M\"\nbus = \"pcie 4.0 x4\"\n";
  }
  static std::string drive(const std::string& name, const std::string& use) {
    return "[[drive]]\nname = \"" + name + "\"\nuse = \"" + use + "\"\nbus = \"sata 6\"\n";
  }

  std::mt19937 random_;
};

}  // namespace baywright::test
