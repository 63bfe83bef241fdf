// EDSFF forms. The standards (SFF-TA-1006, 1007, 1008) were not read: sizes come from pages that quote them.
#include "standards/drives.h"
#include "standards/row.h"

#include <algorithm>
#include <array>
#include <utility>

namespace baywright::standards::drives {

namespace {

constexpr std::string_view e1_source = "a drive maker's page of EDSFF E1 sizes, after SFF-TA-1006 and SFF-TA-1007";
constexpr std::string_view list_source = "the form factors of NVMe-MI, as a public manual page lists them";

struct Outline {
  Dimension width, length;
};

Outline e1(std::string_view of, double width, double length) {
  return {untoleranced(std::string(of) + " width", width, std::string(e1_source), Known::secondary),
          untoleranced(std::string(of) + " length", length, std::string(e1_source), Known::secondary)};
}

/// The enclosed E1.S forms are all of one outline.
Outline e1s_enclosed() {
  Outline made = e1("E1.S, enclosed,", 33.75, 118.75);
  made.width.elsewhere = "31.5 in a storage course's table, for every thickness";
  made.length.elsewhere = "111.5 in a storage course's table, for every thickness";
  return made;
}

Outline e3(std::string_view form, double length) {
  return {untoleranced("E3 width", 76.0, "a storage course's table", Known::secondary),
          untoleranced(std::string(form) + " length", length,
                       "the form factors of DMTF Redfish, which call it approximate", Known::secondary)};
}

Edsff made(std::string_view id, std::string_view form, std::string_view title, const Outline& outline,
           Dimension thickness, double watts) {
  return {id, form, title, outline.width, outline.length, std::move(thickness), watts};
}

Dimension thickness(std::string_view of, double nominal) {
  return untoleranced(std::string(of) + " thickness", nominal, std::string(list_source), Known::secondary);
}

}  // namespace

std::span<const Edsff> edsff() {
  static const auto rows = [] {
    const Outline bare = e1("E1.S, bare,", 31.50, 111.49);
    const Outline enclosed = e1s_enclosed();
    const Outline ruler = e1("E1.L", 38.40, 318.75);
    const Outline e3s = e3("E3.S", 112.75);
    const Outline e3l = e3("E3.L", 142.2);
    const Dimension one = thickness("E3 1T", 7.5);
    const Dimension two = thickness("E3 2T", 16.8);
    const Dimension spreader =
        but(untoleranced("E1.S with heat spreader thickness", 8.01, std::string(e1_source), Known::secondary),
            "8 in " + std::string(list_source));
    return std::array{
        made("e1s/5.9", "E1.S", "E1.S, bare", bare, thickness("E1.S, bare,", 5.9), 12.0),
        made("e1s/8", "E1.S", "E1.S with heat spreader", bare, spreader, 16.0),
        made("e1s/9.5", "E1.S", "E1.S, enclosed", enclosed, thickness("E1.S of 9.5 mm", 9.5), 20.0),
        made("e1s/15", "E1.S", "E1.S with heatsink, 15 mm", enclosed, thickness("E1.S of 15 mm", 15.0), 25.0),
        made("e1s/25", "E1.S", "E1.S with heatsink, 25 mm", enclosed, thickness("E1.S of 25 mm", 25.0), 25.0),
        made("e1l/9.5", "E1.L", "E1.L, 9.5 mm", ruler, thickness("E1.L of 9.5 mm", 9.5), 25.0),
        made("e1l/18", "E1.L", "E1.L, 18 mm", ruler, thickness("E1.L of 18 mm", 18.0), 40.0),
        made("e3s/1t", "E3.S", "E3.S 1T", e3s, one, 25.0),
        made("e3s/2t", "E3.S", "E3.S 2T", e3s, two, 40.0),
        made("e3l/1t", "E3.L", "E3.L 1T", e3l, one, 40.0),
        made("e3l/2t", "E3.L", "E3.L 2T", e3l, two, 70.0),
    };
  }();
  return rows;
}

const Edsff* edsff(std::string_view id) {
  const auto rows = edsff();
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const Edsff& row) { return row.id == id; });
  return found == rows.end() ? nullptr : &*found;
}

}  // namespace baywright::standards::drives
