#include "standards/tools.h"

#include "standards/fasteners.h"
#include "standards/row.h"

#include <algorithm>
#include <array>
#include <string>

namespace baywright::standards::tools {

namespace {

constexpr const char* habit = "common practice, no source; measure yours";
constexpr const char* trade_page = "a fastener dealer's web page on screwdrivers, which says roughly";

Dimension usual(std::string name, double nominal) {
  return untoleranced(std::move(name), nominal, habit, Known::practice);
}

struct Sizes {
  std::string_view recess;
  double shaft;             // of that trade page
  double ordinary, stubby;  // blade lengths, ISO 8764-2 from memory; its short series has none for PH0
  double long_one;
  double handle, handle_length, stubby_handle, stubby_handle_length;
};
constexpr std::array<Sizes, 3> sizes{{
    {"PH0", 3.0, 60, 25, 100, 20, 85, 20, 45},
    {"PH1", 5.0, 80, 25, 150, 27, 95, 27, 50},
    {"PH2", 6.0, 100, 25, 200, 33, 105, 33, 55},
}};

Dimension blade(const std::string& name, double length, bool in_standard) {
  if (!in_standard) return usual(name, length);
  return untoleranced(name, length, "ISO 8764-2, lengths of blades, from memory", Known::memory);
}

Driver straight(const Sizes& row, std::string_view kind, double length, bool in_standard, double handle,
                double handle_length) {
  const std::string name = std::string(kind) + ' ' + std::string(row.recess) + " driver";
  return {.kind = kind,
          .recess = row.recess,
          .shaft = untoleranced(name + ", shaft across", row.shaft, trade_page, Known::secondary),
          .shaft_length = blade(name + ", shaft length", length, in_standard),
          .handle = usual(name + ", handle across", handle),
          .handle_length = usual(name + ", handle length", handle_length),
          .lever = std::nullopt};
}

/// A 25 mm bit with a hexagon of 1/4 in, most of it out of the ratchet's head.
Driver low(const Sizes& row) {
  const std::string name = std::string(row.recess) + " bit in a low ratchet";
  return {.kind = "low",
          .recess = row.recess,
          .shaft = usual(name + ", bit across corners", 7.3),
          .shaft_length = usual(name + ", bit out of the head", 18.0),
          .handle = usual(name + ", head across", 22.0),
          .handle_length = usual(name + ", head height", 12.0),
          .lever = usual(name + ", lever from the axis", 95.0)};
}

std::vector<Driver> all_drivers() {
  std::vector<Driver> made;
  for (const Sizes& row : sizes) {
    made.push_back(straight(row, "ordinary", row.ordinary, true, row.handle, row.handle_length));
    made.push_back(straight(row, "long", row.long_one, false, row.handle, row.handle_length));
    made.push_back(
        straight(row, "stubby", row.stubby, row.recess != "PH0", row.stubby_handle, row.stubby_handle_length));
    made.push_back(low(row));
  }
  return made;
}

}  // namespace

std::span<const Driver> drivers() {
  static const std::vector<Driver> rows = all_drivers();
  return rows;
}

std::string_view recess(std::string_view thread) {
  const fasteners::Thread* known = fasteners::thread(thread);
  if (known == nullptr) return {};
  // A public chart of recess sizes (wood and machine screws by number): 2 to 4 have 1, 5 to 9 have 2.
  if (known->id == "4-40") return "PH1";
  if (known->id == "6-32") return "PH2";
  const fasteners::Head* head = fasteners::head(fasteners::Shape::pan, thread);
  return head == nullptr ? std::string_view{} : head->driver.substr(0, head->driver.find(' '));
}

std::span<const Holder> holders() {
  static const std::array<Holder, 2> rows{{
      {"fingers", usual("fingers at a nut, across", 30.0), usual("fingers at a nut, from its seat", 25.0),
       std::nullopt},
      {"flat spanner", usual("flat spanner, head across", 16.0), usual("flat spanner, thickness", 3.5),
       usual("flat spanner, from the nut's axis to its end", 80.0)},
  }};
  return rows;
}

const Dimension& lever_width() {
  static const Dimension row = usual("lever of a low ratchet or spanner, width", 10.0);
  return row;
}

double lever_swing() {
  return 15.0;  // common practice, no source: one tooth of 24; finer ones need less
}

std::vector<Dimension> rows() {
  std::vector<Dimension> list;
  for (const Driver& row : drivers()) {
    list.insert(list.end(), {row.shaft, row.shaft_length, row.handle, row.handle_length});
    if (row.lever) list.push_back(*row.lever);
  }
  for (const Holder& row : holders()) {
    list.insert(list.end(), {row.across, row.height});
    if (row.grip) list.push_back(*row.grip);
  }
  list.push_back(lever_width());
  return list;
}

}  // namespace baywright::standards::tools
