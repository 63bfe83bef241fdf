#include "standards/general_tolerances.h"

#include "standards/row.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <array>
#include <numbers>
#include <string>

namespace baywright::standards::general_tolerances {

namespace {

constexpr double dash = -1.0;  // no tolerance in this cell

/// One row of a table of ISO 2768-1: sizes above that of the row before, up to and including `to`.
struct Row {
  double to;
  std::array<double, 4> by_class;  // f m c v
};

constexpr double least_size = 0.5;  // included; smaller sizes carry their tolerance with them
constexpr std::array<Row, 8> linear_rows{{
    {3.0, {0.05, 0.1, 0.2, dash}},
    {6.0, {0.05, 0.1, 0.3, 0.5}},
    {30.0, {0.1, 0.2, 0.5, 1.0}},
    {120.0, {0.15, 0.3, 0.8, 1.5}},
    {400.0, {0.2, 0.5, 1.2, 2.5}},
    {1000.0, {0.3, 0.8, 2.0, 4.0}},
    {2000.0, {0.5, 1.2, 3.0, 6.0}},
    {4000.0, {dash, 2.0, 4.0, 8.0}},
}};
constexpr std::array<Row, 3> edge_rows{{
    {3.0, {0.2, 0.2, 0.4, 0.4}},
    {6.0, {0.5, 0.5, 1.0, 1.0}},
    {tolerance::open_side, {1.0, 1.0, 2.0, 2.0}},
}};
constexpr double minutes(double count) {
  return count / 60.0;
}
constexpr std::array<Row, 5> angle_rows{{
    {10.0, {1.0, 1.0, minutes(90), 3.0}},
    {50.0, {minutes(30), minutes(30), 1.0, 2.0}},
    {120.0, {minutes(20), minutes(20), minutes(30), 1.0}},
    {400.0, {minutes(10), minutes(10), minutes(15), minutes(30)}},
    {tolerance::open_side, {minutes(5), minutes(5), minutes(10), minutes(20)}},
}};

template <std::size_t n>
std::optional<double> look_up(const std::array<Row, n>& rows, Class tolerance_class, double size) {
  const auto row = std::find_if(rows.begin(), rows.end(), [&](const Row& one) { return size <= one.to; });
  if (row == rows.end()) return std::nullopt;
  const double value = row->by_class[static_cast<std::size_t>(tolerance_class)];
  if (value == dash) return std::nullopt;
  return value;
}

constexpr int lowest_grade = 5;
constexpr std::size_t grade_count = 12;

/// ISO 286-1, µm: sizes above that of the row before, up to and including `to`.
struct GradeRow {
  double to;
  std::array<double, grade_count> micrometres;  // IT5 to IT16
};
constexpr std::array<GradeRow, 9> grade_rows{{
    {3.0, {4, 6, 10, 14, 25, 40, 60, 100, 140, 250, 400, 600}},
    {6.0, {5, 8, 12, 18, 30, 48, 75, 120, 180, 300, 480, 750}},
    {10.0, {6, 9, 15, 22, 36, 58, 90, 150, 220, 360, 580, 900}},
    {18.0, {8, 11, 18, 27, 43, 70, 110, 180, 270, 430, 700, 1100}},
    {30.0, {9, 13, 21, 33, 52, 84, 130, 210, 330, 520, 840, 1300}},
    {50.0, {11, 16, 25, 39, 62, 100, 160, 250, 390, 620, 1000, 1600}},
    {80.0, {13, 19, 30, 46, 74, 120, 190, 300, 460, 740, 1200, 1900}},
    {120.0, {15, 22, 35, 54, 87, 140, 220, 350, 540, 870, 1400, 2200}},
    {180.0, {18, 25, 40, 63, 100, 160, 250, 400, 630, 1000, 1600, 2500}},
}};

constexpr std::string_view shop = "a sheet metal shop's tolerance chart";

Dimension drilled(std::string_view process) {
  return plus_minus("hole over the drill's size, " + std::string(process), 0.125, 0.075,
                    "common practice, no source: 0.05 to 0.2 over", Known::practice);
}

Process hand_drill() {
  return {.id = "hand drill",
          .title = "hand drill, hole centre-punched, small pilot first",
          .position = plus_minus("hole position, hand drill", 0.0, 0.5, "common practice, no source", Known::practice),
          .diameter = drilled("hand drill"),
          .size = std::nullopt};
}

Process drill_press() {
  return {.id = "drill press",
          .title = "drill press, template glued on",
          .position = plus_minus("hole position, drill press", 0.0, 0.25, "common practice, no source; low confidence",
                                 Known::practice),
          .diameter = drilled("drill press"),
          .size = std::nullopt};
}

Process laser() {
  return {.id = "laser",
          .title = "laser-cut sheet up to 3 mm",
          .position = plus_minus("hole position, laser", 0.0, 0.15, std::string(shop), Known::secondary),
          .diameter = but(plus_minus("hole over its drawing, laser", 0.0, 0.10, std::string(shop), Known::secondary),
                          "±0.08 by another shop"),
          .size = but(plus_minus("cut length, laser", 0.0, 0.20, "a second sheet metal shop's tolerance page",
                                 Known::secondary),
                      "±0.10 up to 3 mm of sheet by the first shop's chart")};
}

Process saw() {
  return {.id = "saw",
          .title = "hand saw to a line marked with a steel rule, filed",
          .position = std::nullopt,
          .diameter = std::nullopt,
          .size = plus_minus("cut length, hand saw", 0.0, 1.0, "common practice, no source; low confidence",
                             Known::practice)};
}

Process print() {
  constexpr std::string_view guide = "a print shop's guide to FDM tolerances";
  return {.id = "print",
          .title = "FDM print, up to 100 mm",
          .position = plus_minus("hole position, FDM print", 0.0, 0.3, std::string(guide) + ": any length to 100",
                                 Known::secondary),
          .diameter = plus_minus("hole over its drawing, FDM print", -0.2, 0.1,
                                 std::string(guide) + ": 0.1 to 0.3 under", Known::secondary),
          .size = but(plus_minus("length, FDM print", 0.0, 0.3, std::string(guide), Known::secondary),
                      "±0.2 by another shop, ±0.5 by a book chapter")};
}

/// The guide has a figure for lengths only: a hole comes out between its own limits, under or over.
Process other_print(std::string_view id, std::string_view name, double half) {
  const std::string guide = "a print shop's guide to printing tolerances: any length to 100";
  return {.id = id,
          .title = name,
          .position = plus_minus("hole position, " + std::string(name), 0.0, half, guide, Known::secondary),
          .diameter = plus_minus("hole over its drawing, " + std::string(name), 0.0, half,
                                 guide + ", no figure for holes", Known::secondary),
          .size = plus_minus("length, " + std::string(name), 0.0, half, guide, Known::secondary)};
}

std::string range(double over, double to) {
  return ", over " + tolerance::in_words(over) + " up to " + tolerance::in_words(to);
}

void add_linear(std::vector<Dimension>& list) {
  constexpr std::array<std::string_view, 4> letters{"f", "m", "c", "v"};
  double over = least_size;
  for (const Row& row : linear_rows) {
    for (std::size_t i = 0; i < letters.size(); ++i) {
      if (row.by_class[i] == dash) continue;
      list.push_back(plus_minus("general tolerance, class " + std::string(letters[i]) + range(over, row.to), 0.0,
                                row.by_class[i], "ISO 2768-1:1989, Table 1, as four copies give it", Known::secondary));
    }
    over = row.to;
  }
}

constexpr std::size_t first_of_one_table = 7;  // IT12 to IT14
constexpr std::size_t first_from_memory = 10;  // IT15 and IT16: ten times IT10 and IT11

std::string grade_source(std::size_t column) {
  if (column >= first_from_memory) return "ISO 286-1, from memory";
  return column >= first_of_one_table ? "ISO 286-1 as one table gives it" : "ISO 286-1 as two tables give it";
}

void add_grades(std::vector<Dimension>& list) {
  double over = 0.0;
  for (const GradeRow& row : grade_rows) {
    for (std::size_t i = 0; i < grade_count; ++i) {
      list.push_back({"H hole of IT" + std::to_string(lowest_grade + static_cast<int>(i)) + range(over, row.to), 0.0,
                      0.0, row.micrometres[i] / 1000.0, grade_source(i),
                      i >= first_from_memory ? Known::memory : Known::secondary});
    }
    over = row.to;
  }
}

void add(std::vector<Dimension>& list, const std::optional<Dimension>& row) {
  if (row) list.push_back(*row);
}

}  // namespace

std::optional<double> linear(Class tolerance_class, double size) {
  if (!(size >= least_size)) return std::nullopt;
  return look_up(linear_rows, tolerance_class, size);
}

std::optional<double> broken_edge(Class tolerance_class, double size) {
  if (!(size >= least_size)) return std::nullopt;
  return look_up(edge_rows, tolerance_class, size);
}

std::optional<double> angle(Class tolerance_class, double shorter_leg) {
  if (!(shorter_leg > 0.0)) return std::nullopt;
  return look_up(angle_rows, tolerance_class, shorter_leg);
}

std::optional<double> grade(int it, double size) {
  constexpr int first_coarse = 14;
  if (it < lowest_grade || it >= lowest_grade + static_cast<int>(grade_count) || !(size > 0.0)) return std::nullopt;
  if (it >= first_coarse && size <= 1.0) return std::nullopt;
  const auto* const row =
      std::find_if(grade_rows.begin(), grade_rows.end(), [&](const GradeRow& one) { return size <= one.to; });
  if (row == grade_rows.end()) return std::nullopt;
  return row->micrometres[static_cast<std::size_t>(it - lowest_grade)] / 1000.0;
}

std::span<const Process> processes() {
  static const std::array rows{hand_drill(), drill_press(), laser(), saw(), print()};
  return rows;
}

const Process* process(std::string_view id) {
  const auto rows = processes();
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const Process& row) { return row.id == id; });
  return found == rows.end() ? nullptr : &*found;
}

std::span<const Process> prints() {
  static const std::array rows{print(), other_print("sla", "SLA print", 0.1), other_print("sls", "SLS print", 0.2)};
  return rows;
}

const Process* printing(std::string_view way) {
  for (const Process& row : prints())
    if (row.id == (way == "fdm" ? "print" : way)) return &row;
  return nullptr;
}

const Dimension& printed_wall() {
  static const Dimension row =
      at_least("wall round a printed hole", 1.2, "common practice, no source: three lines of 0.4", Known::practice);
  return row;
}

const Dimension& insert_wall() {
  static const Dimension row =
      at_least("wall round a heat-set insert", 2.0, "common practice, no source: about 1.5 to 2", Known::practice);
  return row;
}

const Dimension& pilot_drill() {
  static const Dimension row =
      plus_minus("pilot drill", 1.75, 0.25, "common practice, no source: 1.5 to 2", Known::practice);
  return row;
}

double edge_distance_in_diameters() {
  return 2.0;
}

double web_in_thicknesses() {
  return 2.0;
}

NeutralLine neutral_line() {
  return {0.33, 0.45};
}

double bend_allowance(double degrees, double inside_radius, double thickness, double neutral) {
  return std::numbers::pi / 180.0 * degrees * (inside_radius + neutral * thickness);
}

double bend_distance_in_thicknesses() {
  return 2.0;
}

std::vector<Dimension> rows() {
  std::vector<Dimension> list;
  add_linear(list);
  add_grades(list);
  for (const Process& row : processes()) {
    add(list, row.position);
    add(list, row.diameter);
    add(list, row.size);
  }
  for (const Process& row : prints().subspan(1)) {  // the first is a process above
    add(list, row.position);
    add(list, row.diameter);
    add(list, row.size);
  }
  list.insert(list.end(), {printed_wall(), insert_wall(), pilot_drill()});
  return list;
}

}  // namespace baywright::standards::general_tolerances
