// Devices for a 5.25-inch bay: SFF-8551, and the full-height disk of SFF-8501.
#include "standards/drive_families.h"
#include "standards/fasteners.h"
#include "standards/row.h"

namespace baywright::standards::drives {

namespace {

constexpr std::string_view table = "SFF-8551, Table 5-1, as transcribed in two public files";
constexpr std::string_view disk_table = "SFF-8501 rev 1.1, as transcribed in a public file";

constexpr double side_high = 21.84;  // of both standards

Dimension row(std::string_view what, double nominal) {
  return untoleranced("5.25-inch device " + std::string(what), nominal, std::string(table), Known::secondary);
}

Dimension disk(std::string_view what, double nominal) {
  return untoleranced("5.25-inch full-height disk " + std::string(what), nominal, std::string(disk_table),
                      Known::secondary);
}

}  // namespace

const Device& device_5_25() {
  constexpr std::string_view thread = "M3";
  static const Device made{
      .width = row("width", width_5_25),
      .height = at_most("5.25-inch device height behind the bezel", 41.53, std::string(table) + ", 1.635 in",
                        Known::secondary),
      .bezel_height = but(row("bezel height", 42.30), "42.50 in the same transcriber's model, against its own table"),
      .bezel_width = row("bezel width", 148.00),
      .bezel_thickness = row("bezel thickness", 5.00),
      .length = but(at_most("5.25-inch device length behind the bezel", 202.80, std::string(table), Known::secondary),
                    "about 170 on devices in the trade"),
      .button = row("button before the bezel's rear face", 6.50),
      .first_hole = row("first hole behind the bezel", 47.40),
      .second_hole = row("second hole from the first", 79.25),
      .bottom_from_edge = row("bottom column from the edge", 3.18),
      .bottom_across = row("bottom columns apart", 139.70),
      .side_low = row("lower side hole above the base", 10.00),
      .side_high = row("upper side hole above the base", side_high),
      .thread = thread,
      .least_engagement =
          at_least("5.25-inch device, engagement of a screw", 2.0 * fasteners::thread(thread)->pitch.nominal,
                   "SFF-8551, Figure 5-1, note: two threads; the pitch of M3", Known::derived)};
  return made;
}

const std::vector<Dimension>& full_height_disk() {
  static const std::vector<Dimension> made{
      at_most("5.25-inch full-height disk height", 82.55, std::string(disk_table), Known::secondary),
      disk("width", width_5_25),
      but(disk("length", 204.72), "202.72 in the same transcriber's model; 8.060 in is 204.72"),
      disk("second hole from the first", 79.24),
      disk("lower side hole above the base", 9.91),
      disk("upper side hole above the base", side_high)};
  return made;
}

}  // namespace baywright::standards::drives
