// What a drive wears: another heatsink, a lower one, none; another pad.
#include "parts/library.h"
#include "parts/pad_range.h"
#include "plans/catalogue.h"

#include <algorithm>
#include <cmath>

namespace baywright::plans {

namespace {

constexpr double step = 0.1;          // mm: in which a heatsink's height is sought
constexpr double least_height = 0.5;  // mm: a bare sheet; common practice, no source

/// The place in the file's list: an adapter among the wears counts there.
int entry_of(const build::Drive& drive, std::size_t wear) {
  const auto before = static_cast<int>(wear);
  return before + (drive.worn && drive.worn->entry <= before ? 1 : 0);
}

build::Path at(const build::Drive& drive, std::size_t wear, const char* key) {
  return {"drive", drive.name, "wears", entry_of(drive, wear), key};
}

tolerance::Dimension height_of(const parts::Part& part) {
  const parts::Coordinate top = parts::outer_face(part, 2, true);
  tolerance::Dimension out;
  out.nominal = top.at(parts::nominal_values(part));
  for (const parts::Share& share : top.shares) {
    const tolerance::Dimension& d = part.dimensions[static_cast<std::size_t>(share.dimension)];
    out.minus += share.factor * d.minus;
    out.plus += share.factor * d.plus;
  }
  return out;
}

/// A plain block of the heatsink's foot, so high: whatever of that foot is no higher keeps within it.
std::string block(const parts::Part& part, tolerance::Dimension height, double nominal) {
  const std::vector<double> values = parts::nominal_values(part);
  const auto side = [&](int axis, double factor) {
    const parts::Coordinate face = parts::outer_face(part, axis, true);
    tolerance::Dimension d;
    d.nominal = factor * face.at(values);
    for (const parts::Share& share : face.shares) {
      d.minus += factor * share.factor * part.dimensions[static_cast<std::size_t>(share.dimension)].minus;
      d.plus += factor * share.factor * part.dimensions[static_cast<std::size_t>(share.dimension)].plus;
    }
    return limited(d);
  };
  height.nominal = nominal;
  height.minus = std::min(height.minus, 0.5 * nominal);
  return "{ length = " + side(1, 1.0) + ", width = " + side(0, 2.0) + ", height = " + limited(height) + " }";
}

void add_lower(std::vector<Option>& out, const build::Drive& drive, std::size_t wear, const build::Heatsink& heatsink) {
  const tolerance::Dimension height = height_of(heatsink.part);
  Option option;
  option.change = {
      .kind = Kind::lower_heatsink, .what = heatsink.name, .from = height.nominal, .prices = {Price::warmer}};
  option.monotone = true;
  option.holds = {"heatsink"};
  option.mends = {fit::Kind::clearance};
  option.key = "lower heatsink";
  option.cautions = {Caution::money_unknown};
  const auto steps = static_cast<int>(std::ceil(height.nominal / step - 1e-6)) - 1;
  for (int i = steps; i * step >= least_height - 1e-9; --i) {
    const double nominal = std::round(i * step * 1000.0) / 1000.0;
    option.variants.push_back(
        {{{.path = at(drive, wear, "heatsink"), .value = block(heatsink.part, height, nominal)}}, nominal});
  }
  if (!option.variants.empty()) out.push_back(std::move(option));
}

void add_others(std::vector<Option>& out, const build::Drive& drive, std::size_t wear, const build::Heatsink& heatsink,
                const std::vector<parts::Part>& heatsinks) {
  const double now = height_of(heatsink.part).nominal;
  for (const parts::Part& part : heatsinks) {
    if (part.id == heatsink.part.id) continue;
    const double height = height_of(part).nominal;
    Option option;
    option.change = {.kind = Kind::other_heatsink, .what = heatsink.name, .to = part.id, .from = now, .value = height};
    if (height < now) option.change.prices = {Price::warmer};
    option.variants = {{{{.path = at(drive, wear, "heatsink"), .value = build::quoted(part.id)}}, height}};
    option.holds = {"heatsink"};
    option.mends = {fit::Kind::clearance};
    option.key = "other heatsink";
    option.amount = std::max(0.0, now - height);
    option.cautions = {Caution::money_unknown};
    out.push_back(std::move(option));
  }
}

void add_none(std::vector<Option>& out, const build::Drive& drive, const build::Heatsink& heatsink) {
  Option option;
  option.change = {.kind = Kind::no_heatsink,
                   .what = heatsink.name,
                   .from = height_of(heatsink.part).nominal,
                   .prices = {Price::warmer}};
  Variant bare;
  for (std::size_t i = drive.wears.size(); i-- > 0;)
    bare.edits.push_back({build::Edit::What::remove, {"drive", drive.name, "wears", entry_of(drive, i)}});
  option.variants = {bare};
  option.holds = {"heatsink", "pad"};
  option.mends = {fit::Kind::clearance};
  option.key = "no heatsink";
  out.push_back(std::move(option));
}

}  // namespace

std::vector<parts::Part> heatsinks_of_library(const build::Build& build, const std::filesystem::path& file) {
  std::vector<parts::Part> out;
  if (std::all_of(build.drives.begin(), build.drives.end(), [](const build::Drive& drive) {
        return std::none_of(drive.wears.begin(), drive.wears.end(),
                            [](const build::Wear& wear) { return std::holds_alternative<build::Heatsink>(wear); });
      }))
    return out;
  const auto folders = parts::part_folders(file);
  const auto& shelf = build.shelf.heatsinks;
  for (const parts::Entry& entry : parts::entries(folders)) {
    if (entry.file.empty() || (shelf && std::find(shelf->begin(), shelf->end(), entry.id) == shelf->end())) continue;
    auto found = parts::find_part(entry.id, folders);
    auto* part = std::get_if<parts::Part>(&found);
    if (part != nullptr && part->kind == "heatsink") out.push_back(std::move(*part));
  }
  return out;
}

void add_heatsinks(std::vector<Option>& out, const Spot& spot, const std::vector<parts::Part>& heatsinks) {
  const build::Drive& drive = spot.drive;
  if (drive.wears.empty()) return;
  const std::size_t last = drive.wears.size() - 1;
  const auto* heatsink = std::get_if<build::Heatsink>(&drive.wears[last]);
  if (heatsink == nullptr) return;
  add_others(out, drive, last, *heatsink, heatsinks);
  if (!spot.build.shelf.heatsinks) add_lower(out, drive, last, *heatsink);
  add_none(out, drive, *heatsink);
}

void add_pads(std::vector<Option>& out, const Spot& spot) {
  static constexpr double presses[] = {0.30, 0.40, parts::pad_most};
  const build::Drive& drive = spot.drive;
  for (std::size_t i = 0; i < drive.wears.size(); ++i) {
    const auto* pad = std::get_if<build::Pad>(&drive.wears[i]);
    if (pad == nullptr) continue;
    const tolerance::Dimension& now = pad->free_thickness.dimension;
    std::vector<double> sizes(parts::pad_thicknesses.begin(), parts::pad_thicknesses.end());
    if (std::find(sizes.begin(), sizes.end(), now.nominal) == sizes.end()) sizes.push_back(now.nominal);
    std::vector<double> shares(std::begin(presses), std::end(presses));
    if (pad->compress >= parts::pad_least && pad->compress <= parts::pad_most) shares.push_back(pad->compress);
    const double high = now.nominal * (1.0 - pad->compress);
    for (const double size : sizes)
      for (const double share : shares) {
        const double less = high - size * (1.0 - share);
        if (!(less > 1e-9) || size > now.nominal) continue;
        tolerance::Dimension thickness = now;
        thickness.nominal = size;
        if (size != now.nominal) thickness.minus = thickness.plus = parts::pad_limit * size;
        Option option;
        option.change = {
            .kind = Kind::other_pad, .what = pad->name, .from = now.nominal, .value = size, .pressed = share};
        Variant variant;
        variant.value = size;
        if (size != now.nominal) variant.edits.push_back({.path = at(drive, i, "pad"), .value = limited(thickness)});
        if (share != pad->compress) {
          const auto percent = static_cast<int>(std::lround(100.0 * share));
          if (std::abs(100.0 * share - percent) > 1e-9) continue;
          variant.edits.push_back(
              {.path = at(drive, i, "compress"), .value = build::quoted(std::to_string(percent) + " %")});
        }
        option.variants = {std::move(variant)};
        option.holds = {"pad"};
        option.mends = {fit::Kind::clearance};
        option.key = "pad " + std::to_string(i);
        option.amount = less;
        option.cautions = {Caution::chips_differ, Caution::money_unknown};
        if (size == now.nominal) option.cautions.pop_back();
        out.push_back(std::move(option));
      }
  }
}

}  // namespace baywright::plans
