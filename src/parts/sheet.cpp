#include "parts/sheet.h"

namespace baywright::parts {

double size_along(const Part& part, int axis) {
  const std::vector<double> values = nominal_values(part);
  return outer_face(part, axis, true).at(values) - outer_face(part, axis, false).at(values);
}

bool is_sheet(const Part& part, int axis) {
  const bool flat = part.bodies.size() == 1 && part.bodies.front().form != Body::Form::mesh &&
                    part.bodies.front().form != Body::Form::cylinder;
  return flat && part.kind == "part" && size_along(part, axis) <= thickest_sheet;
}

}  // namespace baywright::parts
