#pragma once
// A part's form from a mesh file: its unit, which way is up, where it stands.
#include "parts/document.h"
#include "parts/part.h"

#include <filesystem>
#include <string>
#include <string_view>

namespace baywright::parts {

/// mm in one "mm", "cm", "m" or "in"; 0 for any other text.
[[nodiscard]] double unit_in_mm(std::string_view unit);

/// What a size in an unnamed unit is read as, and the reading that is next most likely. By common practice, no source:
/// parts of machines are drawn in mm; one that would then be smaller than 10 mm is taken for inches, and below 1 for
/// metres.
struct UnitGuess {
  std::string_view unit;
  std::string_view other;
};
[[nodiscard]] UnitGuess guess_unit(const geometry::Vec3& size);

/// Reads `model` (a path beside the file that says it), `unit` and `up` of a part and adds the body with what was
/// learnt. Its low corner is then at the part's origin. Throws Stop.
void add_model(Part& part, Fields& fields, const std::string& name);

}  // namespace baywright::parts
