// Screw heads, and the lengths of screws.
#include "standards/fasteners.h"
#include "standards/fasteners_names.h"
#include "standards/row.h"

#include <algorithm>
#include <array>

namespace baywright::standards::fasteners {

namespace {

/// A size that the standard gives as its largest, with the smallest beside it.
Dimension between(std::string name, double least, double most, std::string source) {
  return {std::move(name), most, most - least, 0.0, std::move(source), Known::secondary};
}

struct Sizes {
  std::string_view thread;
  double most_across, least_across, most_high, least_high;
  std::string_view driver;
};

constexpr std::array<Sizes, 5> socket_caps{{
    {"M1.6", 3.0, 2.86, 1.6, 1.46, "1.5 mm hexagon"},
    {"M2", 3.8, 3.62, 2.0, 1.86, "1.5 mm hexagon"},
    {"M2.5", 4.5, 4.32, 2.5, 2.36, "2 mm hexagon"},
    {"M3", 5.5, 5.32, 3.0, 2.86, "2.5 mm hexagon"},
    {"M4", 7.0, 6.78, 4.0, 3.82, "3 mm hexagon"},
}};
constexpr std::array<std::string_view, 5> knurled{"3.14", "3.98", "4.68", "5.68", "7.22"};

constexpr std::array<Sizes, 6> pans{{
    {"M1.6", 3.2, 2.9, 1.3, 1.16, "PH0"},
    {"M2", 4.0, 3.7, 1.6, 1.46, "PH0 or T6"},
    {"M2.5", 5.0, 4.7, 2.1, 1.96, "PH1 or T8"},
    {"M3", 5.6, 5.3, 2.4, 2.26, "PH1 or T10"},
    {"M3.5", 7.0, 6.64, 2.6, 2.46, "PH2 or T15"},
    {"M4", 8.0, 7.64, 3.1, 2.92, "PH2 or T20"},
}};

struct Flat {
  std::string_view thread;
  double sharp, most, least, high;
  std::string_view driver;
};
constexpr std::array<Flat, 6> flats{{
    {"M1.6", 3.6, 3.0, 2.7, 1.0, "PH0"},
    {"M2", 4.4, 3.8, 3.5, 1.2, "PH0"},
    {"M2.5", 5.5, 4.7, 4.4, 1.5, "PH1"},
    {"M3", 6.3, 5.5, 5.2, 1.65, "PH1"},
    {"M3.5", 8.2, 7.3, 6.94, 2.35, "PH2"},
    {"M4", 9.4, 8.4, 8.04, 2.7, "PH2"},
}};

Head socket_cap(const Sizes& row, std::string_view knurled_across) {
  const std::string source = "ISO 4762 as the FastenersWB and BOLTS data and a table of a gear site give it";
  return {
      .shape = Shape::socket_cap,
      .thread = row.thread,
      .diameter = but(between(of(row.thread, "socket cap head diameter"), row.least_across, row.most_across, source),
                      "a knurled head may reach " + std::string(knurled_across) + " by the same table"),
      .height = between(of(row.thread, "socket cap head height"), row.least_high, row.most_high, source),
      .driver = row.driver,
      .made = std::nullopt};
}

Head pan(const Sizes& row) {
  const std::string source = "ISO 7045 as the FastenersWB data and a supplier's table give it";
  // Tables headed ISO 7045 that hold DIN 7985 are common: M3 6.0 x 2.52.
  return {.shape = Shape::pan,
          .thread = row.thread,
          .diameter = between(of(row.thread, "pan head diameter"), row.least_across, row.most_across, source),
          .height = between(of(row.thread, "pan head height"), row.least_high, row.most_high, source),
          .driver = row.driver,
          .made = std::nullopt};
}

Head flat(const Flat& row) {
  const std::string source = "ISO 7046 and 2009 as the FastenersWB data give it";
  // M1.6 is in neither of the two tables; the smaller limits of M3.5 and M4 are rounded there.
  const bool in_tables = row.thread != "M1.6";
  return {.shape = Shape::flat,
          .thread = row.thread,
          .diameter = at_most(of(row.thread, "flat head diameter, theoretical"), row.sharp, source, Known::secondary),
          .height = at_most(of(row.thread, "flat head height"), row.high, source, Known::secondary),
          .driver = row.driver,
          .made = Dimension{of(row.thread, "flat head diameter, as made"), row.most, row.most - row.least, 0.0,
                            in_tables ? "ISO 7046-2 as two suppliers' tables give it" : "ISO 7046-1, from memory",
                            in_tables ? Known::secondary : Known::memory}};
}

Head button(std::string_view thread, double across, double high, std::string_view driver) {
  const std::string source = "ISO 7380-1 as the FastenersWB data give it";
  return {.shape = Shape::button,
          .thread = thread,
          .diameter = at_most(of(thread, "button head diameter"), across, source, Known::secondary),
          .height = at_most(of(thread, "button head height"), high, source, Known::secondary),
          .driver = driver,
          .made = std::nullopt};
}

std::vector<Head> all_heads() {
  std::vector<Head> made;
  for (std::size_t i = 0; i < socket_caps.size(); ++i) made.push_back(socket_cap(socket_caps[i], knurled[i]));
  for (const Sizes& row : pans) made.push_back(pan(row));
  for (const Flat& row : flats) made.push_back(flat(row));
  made.push_back(button("M3", 5.7, 1.65, "2 mm hexagon"));  // keys of button heads: from memory
  made.push_back(button("M4", 7.6, 2.2, "2.5 mm hexagon"));
  return made;
}

// ISO 7045. What each thread is sold in, by the FastenersWB data: M1.6 to 16, M2 to 20, M2.5 to 25, M3 4 to 30; the
// range of M3.5 and M4 is not in what was read.
constexpr std::array<double, 11> metric_lengths{3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 30};
// Common practice, no source: 1/8, 3/16, 1/4, 5/16, 3/8 and 1/2 inch.
constexpr std::array<double, 6> inch_lengths{3.175, 4.7625, 6.35, 7.9375, 9.525, 12.7};

std::span<const double> metric_range(double shortest, double longest) {
  const auto* const from = std::lower_bound(metric_lengths.begin(), metric_lengths.end(), shortest);
  const auto* const to = std::upper_bound(metric_lengths.begin(), metric_lengths.end(), longest);
  return {from, to};
}

}  // namespace

std::span<const Head> heads() {
  static const std::vector<Head> rows = all_heads();
  return rows;
}

const Head* head(Shape shape, std::string_view thread) {
  const auto rows = heads();
  const auto found = std::find_if(
      rows.begin(), rows.end(), [&](const Head& row) { return row.shape == shape && same_thread(row.thread, thread); });
  return found == rows.end() ? nullptr : &*found;
}

std::span<const double> screw_lengths(std::string_view thread) {
  if (same_thread(thread, "M1.6")) return metric_range(3, 16);
  if (same_thread(thread, "M2")) return metric_range(3, 20);
  if (same_thread(thread, "M2.5")) return metric_range(3, 25);
  if (same_thread(thread, "M3")) return metric_range(4, 30);
  if (thread == "4-40" || thread == "6-32") return inch_lengths;
  return {};
}

}  // namespace baywright::standards::fasteners
