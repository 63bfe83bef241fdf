#pragma once
// Small builds at random in which a drive may or may not fit: what plans are tested on.
#include <random>
#include <string>

namespace baywright::test {

class RandomBuilds {
 public:
  explicit RandomBuilds(unsigned seed) : random_(seed) {}

  /// A card, maybe with chips underneath, over or under a sheet that may come off, maybe with a shelf beyond it and a
  /// second slot.
  std::string under_tray() {
    const bool second = chance(0.4);
    std::string text = head() + plate("board", "160, 140", "1.6");
    const double distance = between(4.2, 5.6);
    const double thick = chance(0.5) ? 1.2 : 4.0;
    text += plate("tray", "150, 130", mm(thick)) + "under = { part = \"board\", by = " + limited(distance, 0.2) +
            " }\n" + (chance(0.9) ? "removable = true\n" : "");
    if (chance(0.5))
      text += plate("shelf", "150, 130", "2") + "at = [5, 5, " + mm(-distance - thick - between(2.3, 6.0)) + "]\n";
    text += slot("slot", 35) + (second ? slot("other slot", 100) : "");
    text += card("card", chance(0.6) ? "D2" : "S3");
    if (chance(0.4)) text += card("other card", chance(0.5) ? "D3" : "S2");
    return text;
  }

  /// A card with a heatsink under a cover that stays.
  std::string under_cover() {
    std::string text = head() + plate("board", "160, 140", "1.6") + plate("cover", "150, 130", "4");
    text += "under = { part = \"board\", by = " + limited(between(6.4, 9.0), 0.3) + " }\nremovable = true\n";
    text += slot("slot", 70) + card("card", chance(0.3) ? "D2" : "S3");
    const double high = between(3.0, 8.0);
    text += "wears = [" + std::string(chance(0.3) ? "{ pad = \"1.0\", compress = \"20 %\" }, " : "") +
            "{ heatsink = { length = 60, width = 22, height = " + limited(high, 0.1) + " } }]\n";
    return text;
  }

  /// A cased drive in one of two bays, screwed at its sides, with a cable behind it.
  std::string in_bays() {
    std::string text = head() + plate("floor", "320, 240", "1");
    for (const char* name : {"bay", "other bay"}) {
      const bool first = std::string(name) == "bay";
      if (!first && chance(0.6)) continue;
      text += "[[bay]]\nname = \"" + std::string(name) + "\"\non = { part = \"floor\", at = [100, " +
              (first ? "60" : "170") + "], toward = \"+x\" }\ntakes = \"" + (chance(0.9) ? "2.5in" : "3.5in") +
              "\"\ncable = " + limited(between(18.0, 40.0), 1.0) + "\nbus = \"" +
              (chance(0.9) ? "sata 6" : "pcie 4.0 x4") +
              "\"\ninside = { width = 104, height = " + limited(between(7.0, 20.0), 0.1) +
              ", depth = 160, behind = " + limited(between(24.0, 44.0), 0.5) + " }\n";
      if (chance(0.5))
        text +=
            "fixing = { through = \"sides\", holes = [[14.0, 3.0], [90.6, 3.0]], diameter = 3.6, screw = \"M3\", "
            "length = " +
            limited(4.0 + static_cast<int>(between(0.0, 4.0)), 0.1) + ", sheet = " + limited(between(0.8, 3.0), 0.05) +
            " }\n";
    }
    text += drive("drive", chance(0.5) ? "2.5in/7" : "2.5in/15");
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
