#pragma once
// Part files (NAME.part.toml) and the solids that build files write inline. Shared by both readers.
#include "parts/document.h"
#include "parts/part.h"

#include <filesystem>

namespace baywright::parts {

/// Reads a part file; throws Stop.
[[nodiscard]] Part read_part_file(const std::filesystem::path& path);

/// One solid as written: { plate = [x, y, t] }, { box = [x, y, z] }, { cylinder = { diameter, height, bore } } or
/// { prism = { outline, holes, height } }. Its low corner is at the origin (a cylinder's axis on the z axis). Throws
/// Stop. Adds its dimensions to `part`.
void add_solid(Part& part, Fields solid, const std::string& name, const Measuring& measuring);

/// { length, width, base, fins, height }: a base plate with `fins` upright fins along its length, `height` over all.
/// Its underside is at z = 0, centred on x = 0, from y = 0 along +y. Throws Stop.
[[nodiscard]] Part heatsink_part(Fields heatsink, const std::string& id, const Measuring& measuring);

/// Throws Stop at `fields` when a body is no solid at nominal values or at the limits of its own dimensions.
void require_solid(const Part& part, const Fields& fields);

}  // namespace baywright::parts
