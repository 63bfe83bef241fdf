// Threads, and the holes that are drilled for them.
#include "standards/fasteners.h"
#include "standards/fasteners_names.h"
#include "standards/general_tolerances.h"
#include "standards/row.h"

#include <algorithm>
#include <array>
#include <numbers>

namespace baywright::standards::fasteners {

namespace {

constexpr double inch = 25.4;

constexpr std::string_view pitch_source = "ISO 261 as two thread charts and the FastenersWB data give it, basic";
constexpr std::string_view drill_source = "two thread charts and the FastenersWB data";
constexpr std::string_view screw_source = "ISO 965 class 6g as a public chart of limiting dimensions gives it";
constexpr std::string_view iso_273 = "ISO 273 as an engineering reference page and an encyclopaedia page give it";
constexpr std::string_view unc_source = "ASME B1.1 as two thread charts and the FastenersWB data give it, basic";
constexpr std::string_view b18_2_8 = "ASME B18.2.8 drills as the Machinery's Handbook 31, Table 3a, gives them";

struct Metric {
  std::string_view id;
  double d, pitch, most_6g, least_6g, drill, fine, medium, coarse;
};
constexpr std::array<Metric, 6> metric_rows{{
    {"M1.6", 1.6, 0.35, 1.581, 1.496, 1.25, 1.7, 1.8, 2.0},
    {"M2", 2.0, 0.40, 1.981, 1.886, 1.60, 2.2, 2.4, 2.6},
    {"M2.5", 2.5, 0.45, 2.480, 2.380, 2.05, 2.7, 2.9, 3.1},
    {"M3", 3.0, 0.50, 2.980, 2.874, 2.50, 3.2, 3.4, 3.6},
    {"M3.5", 3.5, 0.60, 3.479, 3.354, 2.90, 3.7, 3.9, 4.2},
    {"M4", 4.0, 0.70, 3.978, 3.838, 3.30, 4.3, 4.5, 4.8},
}};

Dimension basic(std::string name, double value, std::string_view source) {
  return plus_minus(std::move(name), value, 0.0, std::string(source), Known::secondary);
}

/// A hole of the H zone: its nominal is its least.
Dimension iso_hole(std::string_view thread, std::string_view which, double least, int it) {
  const double width = general_tolerances::grade(it, least).value_or(tolerance::open_side);
  return {of(thread, "clearance hole, ") + std::string(which),
          least,
          0.0,
          width,
          std::string(iso_273) + ", H" + std::to_string(it) + " of ISO 286-1",
          Known::secondary};
}

Thread metric(const Metric& row) {
  return {.id = row.id,
          .major = basic(of(row.id, "major diameter"), row.d, pitch_source),
          .screw = Dimension{of(row.id, "screw, major diameter as made"), row.most_6g, row.most_6g - row.least_6g, 0.0,
                             std::string(screw_source), Known::secondary},
          .pitch = basic(of(row.id, "pitch"), row.pitch, pitch_source),
          .tap_drill = untoleranced(of(row.id, "tap drill"), row.drill, std::string(drill_source), Known::secondary),
          .hole = {iso_hole(row.id, "fine", row.fine, 12), iso_hole(row.id, "medium", row.medium, 13),
                   iso_hole(row.id, "coarse", row.coarse, 14)}};
}

Dimension inch_hole(std::string_view thread, std::string_view which, double drill, std::string elsewhere,
                    std::string_view note = {}) {
  return but(untoleranced(of(thread, "clearance hole, ") + std::string(which), drill,
                          std::string(b18_2_8) + std::string(note), Known::secondary),
             std::move(elsewhere));
}

/// d of a numbered thread is 0.060 + 0.013 n inch.
Dimension inch_major(std::string_view thread, int number) {
  return basic(of(thread, "major diameter"), (0.060 + 0.013 * number) * inch, unc_source);
}

constexpr std::string_view run_together = " (columns run together in the copy read: low confidence)";

Thread no_4() {
  constexpr std::string_view id = "4-40";
  return {.id = id,
          .major = inch_major(id, 4),
          .screw = std::nullopt,
          .pitch = basic(of(id, "pitch"), inch / 40.0, unc_source),
          .tap_drill = but(untoleranced(of(id, "tap drill"), 2.261, "a chart of a machining shop, No. 43, 75 % thread",
                                        Known::secondary),
                           "No. 41, 2.438, for 50 % thread in the same chart; 2.3 in the FastenersWB data"),
          .hole = {inch_hole(id, "close", 3.0, "No. 32, 2.946, in a chart of a machining shop", run_together),
                   inch_hole(id, "normal", 3.3, ""),
                   inch_hole(id, "loose", 3.7, "No. 30, 3.264, as the free fit in a chart of a machining shop",
                             run_together)}};
}

Thread no_6() {
  constexpr std::string_view id = "6-32";
  return {.id = id,
          .major = inch_major(id, 6),
          .screw = std::nullopt,
          .pitch = basic(of(id, "pitch"), inch / 32.0, unc_source),
          .tap_drill = but(untoleranced(of(id, "tap drill"), 2.705, "a chart of a machining shop, No. 36, 75 % thread",
                                        Known::secondary),
                           "No. 32, 2.946, for 50 % thread in the same chart; 2.7 in the FastenersWB data"),
          .hole = {inch_hole(id, "close", 3.6, "No. 27, 3.658, in a chart of a machining shop", run_together),
                   inch_hole(id, "normal", 3.9, ""),
                   inch_hole(id, "loose", 4.4, "No. 25, 3.797, as the free fit in a chart of a machining shop",
                             run_together)}};
}

std::vector<Thread> all_threads() {
  std::vector<Thread> made;
  for (const Metric& row : metric_rows) made.push_back(metric(row));
  made.push_back(no_4());
  made.push_back(no_6());
  return made;
}

double less_pitches(const Thread& thread, double pitches) {
  return thread.major.nominal - pitches * thread.pitch.nominal;
}

struct Rule {
  std::string_view material;
  double diameters;
};
constexpr std::array<Rule, 6> engagement_rules{
    {{"steel", 1.0}, {"cast iron", 1.5}, {"brass", 1.5}, {"aluminium", 2.0}, {"zinc", 2.5}, {"plastic", 2.5}}};

}  // namespace

std::span<const Thread> threads() {
  static const std::vector<Thread> rows = all_threads();
  return rows;
}

const Thread* thread(std::string_view id) {
  const auto rows = threads();
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const Thread& row) { return same_thread(row.id, id); });
  return found == rows.end() ? nullptr : &*found;
}

double pitch_diameter(const Thread& thread) {
  return less_pitches(thread, 0.649519);
}

double minor_diameter(const Thread& thread) {
  return less_pitches(thread, 1.082532);
}

double core_diameter(const Thread& thread) {
  return less_pitches(thread, 1.226869);
}

double stress_area(const Thread& thread) {
  const bool is_metric = thread.id.starts_with('M');
  const double across = less_pitches(thread, is_metric ? 0.938194 : 0.9743);
  return std::numbers::pi / 4.0 * across * across;
}

double equal_strength_engagement(const Thread& thread) {
  return 4.0 * stress_area(thread) / (std::numbers::pi * pitch_diameter(thread));
}

double engagement_in_diameters(std::string_view material) {
  const auto* const found = std::find_if(engagement_rules.begin(), engagement_rules.end(),
                                         [&](const Rule& rule) { return rule.material == material; });
  return found == engagement_rules.end() ? 0.0 : found->diameters;
}

}  // namespace baywright::standards::fasteners
