// Stand-offs and spacers that are sold: market sizes of the FastenersWB data, no standard.
#include "standards/fasteners.h"
#include "standards/row.h"

#include <array>

namespace baywright::standards::fasteners {

namespace {

/// Every whole length between the two, then the others.
std::vector<double> each_from(int first, int last, std::initializer_list<double> then) {
  std::vector<double> lengths;
  for (int length = first; length <= last; ++length) lengths.push_back(length);
  lengths.insert(lengths.end(), then);
  return lengths;
}

Standoff with_stud(std::string_view thread, double across_flats, double stud, std::vector<double> lengths) {
  return {
      .thread = thread, .across_flats = across_flats, .stud = true, .stud_length = stud, .lengths = std::move(lengths)};
}

Standoff tapped_through(std::string_view thread, double across_flats, std::vector<double> lengths) {
  return {
      .thread = thread, .across_flats = across_flats, .stud = false, .stud_length = 0.0, .lengths = std::move(lengths)};
}

}  // namespace

std::span<const Standoff> standoffs() {
  static const std::array rows{
      with_stud("M2.5", 5.0, 6.0, {5, 6, 7, 8, 9, 10, 12, 15, 17, 18, 20, 25, 30}),
      with_stud("M3", 5.0, 6.0, {10, 15, 20, 25}),
      with_stud("M3", 5.5, 6.0, each_from(5, 20, {22, 23, 25, 27, 28, 30, 35, 40, 45, 50, 55, 60})),
      with_stud("M3", 6.0, 6.0, {8, 10, 12, 15, 20, 25, 30, 35, 40}),
      with_stud("M4", 7.0, 8.0, {5, 6, 8, 10, 12, 15, 20, 25, 30, 35, 40}),
      tapped_through("M2.5", 5.0, {5, 10, 11, 12, 15, 17, 18, 20, 22}),
      tapped_through("M3", 5.0, {5, 10, 15, 20}),
      tapped_through("M3", 5.5, each_from(5, 23, {25, 27, 30, 35, 40})),
      tapped_through("M4", 7.0, {5, 8, 10, 12, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80}),
  };
  return rows;
}

std::span<const double> spacer_lengths() {
  static constexpr std::array<double, 13> sold{1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20};  // practice
  return sold;
}

const Dimension& standoff_length_limit() {
  static const Dimension row =
      plus_minus("length of a brass hex stand-off", 0.0, 0.1, "common practice, no source", Known::practice);
  return row;
}

const Dimension& spacer_length_limit() {
  static const Dimension row = plus_minus("length of a moulded nylon spacer", 0.0, 0.25,
                                          "common practice, no source; low confidence", Known::practice);
  return row;
}

}  // namespace baywright::standards::fasteners
