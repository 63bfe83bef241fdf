#include "parts/cased_drive.h"

#include <algorithm>
#include <utility>

namespace baywright::parts {

namespace drives = standards::drives;
using tolerance::Dimension;

namespace {

double sum(const std::vector<Dimension>& list) {
  double total = 0.0;
  for (const Dimension& each : list) total += each.nominal;
  return total;
}

/// The box and its three sizes.
void add_case(CasedDrive& drive, const Dimension& width, const Dimension& length,
              const std::optional<Dimension>& high) {
  drive.width = Coordinate::of(drive.part.add(width));
  drive.end = Coordinate::of(drive.part.add(length));
  if (!high) return;
  drive.height = Coordinate::of(drive.part.add(*high));
  drive.part.bodies.push_back(box_body("case", {0.0, -1.0 * drive.width, 0.0}, {drive.end, 0.0, drive.height}));
}

/// Both columns of a row of holes in the base, or both sides.
void add_row(CasedDrive& drive, const drives::HoleRow& row, bool side, const std::vector<Dimension>& near,
             const std::vector<Dimension>& far, bool promised) {
  for (const bool left : {true, false})
    drive.holes.push_back({std::string(row.name), side, left, row.along, left ? near : far, promised && row.required});
}

}  // namespace

double MountHole::x() const {
  return sum(along);
}
double MountHole::aside() const {
  return sum(across);
}

bool CasedDrive::whole() const {
  return std::any_of(part.bodies.begin(), part.bodies.end(), [](const Body& body) { return body.name == "case"; });
}

CasedDrive cased_drive(const drives::Family& family, const drives::Height* height, const MeasuredCase& measured) {
  CasedDrive drive;
  drive.part.id = std::string(family.id);
  drive.part.kind = "drive";
  drive.part.title = std::string(family.title);
  std::optional<Dimension> high = measured.height;
  if (!high && height != nullptr) high = height->height;
  const Dimension& length = measured.old && family.obsolete_length ? *family.obsolete_length : family.length;
  add_case(drive, family.width, measured.length ? *measured.length : length, high);
  drive.thread = std::string(family.thread);
  const drives::Height given{"", high.value_or(family.heights.back().height)};
  drive.bottom = drives::bottom_depth(family, given);
  drive.side = drives::side_depth(family, given);
  const bool bottom = high && drives::bottom_holes_promised(family, given);
  std::vector<Dimension> far = {family.bottom_from_edge, family.bottom_across};
  if (family.id == "2.5in") {
    // Both columns have their position zone from the edge; the distance between them has none of its own.
    const Dimension& near = family.bottom_from_edge;
    far = {{std::string(family.title) + " bottom far column from the edge", near.nominal + family.bottom_across.nominal,
            near.minus, near.plus, near.source, tolerance::Known::derived}};
  }
  for (const drives::HoleRow& row : family.bottom_rows)
    add_row(drive, row, false, {family.bottom_from_edge}, far, bottom);
  for (const drives::HoleRow& row : family.side_rows)
    add_row(drive, row, true, {family.side_up}, {family.side_up}, true);
  drive.tongue = family.tongue;
  drive.tongue_y = Coordinate(family.tongue.offset.nominal) - 0.5 * drive.width;
  return drive;
}

CasedDrive edsff_drive(const drives::Edsff& form, const MeasuredCase& measured) {
  CasedDrive drive;
  drive.part.id = std::string(form.id);
  drive.part.kind = "drive";
  drive.part.title = std::string(form.title);
  add_case(drive, form.width, measured.length.value_or(form.length), measured.height.value_or(form.thickness));
  return drive;
}

std::vector<MountHole> holes_5_25() {
  const drives::Device& row = drives::device_5_25();
  std::vector<MountHole> holes;
  const std::vector<Dimension> first = {row.first_hole};
  const std::vector<Dimension> second = {row.first_hole, row.second_hole};
  for (const auto& [name, along] : {std::pair("first", first), std::pair("second", second)})
    for (const bool left : {true, false}) {
      holes.push_back({std::string(name) + " bottom hole", false, left, along,
                       left ? std::vector{row.bottom_from_edge} : std::vector{row.bottom_from_edge, row.bottom_across},
                       true});
      holes.push_back({std::string(name) + " side hole", true, left, along, {row.side_low}, true});
      holes.push_back({std::string(name) + " upper side hole", true, left, along, {row.side_high}, false});
    }
  return holes;
}

CasedDrive device_5_25(const MeasuredCase& measured) {
  const drives::Device& row = drives::device_5_25();
  CasedDrive drive;
  drive.part.id = "5.25in";
  drive.part.kind = "drive";
  drive.part.title = "5.25-inch device";
  drive.from_bezel = true;
  add_case(drive, row.width, measured.length.value_or(row.length), measured.height.value_or(row.height));
  drive.thread = std::string(row.thread);
  drive.holes = holes_5_25();
  return drive;
}

}  // namespace baywright::parts
