#include "standards/drives.h"

#include "standards/drive_families.h"

#include <algorithm>
#include <array>
#include <numeric>

namespace baywright::standards::drives {

namespace {

bool thin(const Family& family, const Height& height) {
  return family.thin && !(height.height.nominal > family.thin->up_to);
}

void add(std::vector<Dimension>& rows, const std::optional<Dimension>& row) {
  if (row) rows.push_back(*row);
}

void add(std::vector<Dimension>& rows, const Depth& depth) {
  rows.push_back(depth.thread);
  rows.push_back(depth.most);
  add(rows, depth.warned);
}

void add(std::vector<Dimension>& rows, const Tongue& tongue) {
  rows.insert(rows.end(), {tongue.length, tongue.from_edge, tongue.offset, tongue.position, tongue.height,
                           tongue.up_from_side, tongue.recess});
  add(rows, tongue.recess_from_side);
  rows.insert(rows.end(), {tongue.depth, tongue.beyond, tongue.body_width, tongue.body_height, tongue.clear_length,
                           tongue.clear_height, tongue.clear_ends});
}

void add(std::vector<Dimension>& rows, const Family& family) {
  for (const Height& height : family.heights) rows.push_back(height.height);
  rows.push_back(family.width);
  add(rows, family.flat);
  rows.push_back(family.length);
  add(rows, family.obsolete_length);
  for (const auto* const holes : {&family.bottom_rows, &family.side_rows}) {
    for (const HoleRow& row : *holes) rows.push_back(row.along.back());  // what it is measured from stands before
  }
  rows.insert(rows.end(), {family.bottom_from_edge, family.bottom_across, family.side_up});
  add(rows, family.bottom_screw);
  add(rows, family.side_screw);
  if (family.thin) add(rows, family.thin->side_screw);
  add(rows, family.tongue);
}

void add(std::vector<Dimension>& rows, const Device& device) {
  rows.insert(rows.end(), {device.width, device.height, device.bezel_height, device.bezel_width, device.bezel_thickness,
                           device.length, device.button, device.first_hole, device.second_hole, device.bottom_from_edge,
                           device.bottom_across, device.side_low, device.side_high, device.least_engagement});
}

/// Forms share rows: E1.S of 9.5, 15 and 25 mm is one outline.
void add_once(std::vector<Dimension>& rows, const Dimension& row) {
  const bool there = std::any_of(rows.begin(), rows.end(), [&](const Dimension& one) { return one.name == row.name; });
  if (!there) rows.push_back(row);
}

}  // namespace

double HoleRow::x() const {
  return std::accumulate(along.begin(), along.end(), 0.0,
                         [](double sum, const Dimension& part) { return sum + part.nominal; });
}

std::span<const Family> families() {
  static const std::array rows{drive_2_5(), drive_3_5()};
  return rows;
}

const Family* family(std::string_view id) {
  const auto rows = families();
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const Family& row) { return row.id == id; });
  return found == rows.end() ? nullptr : &*found;
}

const Height* height(const Family& family, std::string_view code) {
  const auto found =
      std::find_if(family.heights.begin(), family.heights.end(), [&](const Height& row) { return row.code == code; });
  return found == family.heights.end() ? nullptr : &*found;
}

bool bottom_holes_promised(const Family& family, const Height& height) {
  return !thin(family, height);
}

Depth bottom_depth(const Family& family, const Height&) {
  return family.bottom_screw;  // the same at every height of both families
}

Depth side_depth(const Family& family, const Height& height) {
  return thin(family, height) ? family.thin->side_screw : family.side_screw;
}

std::vector<Dimension> rows() {
  std::vector<Dimension> rows;
  for (const Family& family : families()) add(rows, family);
  add(rows, device_5_25());
  for (const Dimension& row : full_height_disk()) rows.push_back(row);
  for (const Edsff& form : edsff()) {
    for (const Dimension* const row : {&form.width, &form.length, &form.thickness}) add_once(rows, *row);
  }
  return rows;
}

}  // namespace baywright::standards::drives
