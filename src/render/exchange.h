#pragma once
// A model as a scene to exchange (glTF): what a customer turns on the page, and any reader of glTF shows.
#include "fit/seating.h"
#include "output/gltf.h"
#include "render/model.h"

#include <string>

namespace baywright::render {

/// Things with their edges as pictures show them, in the axes of the place about the middle of the drive, with both
/// motions of those that move, and what hides the drive as glass; the rooms that two things both take up, in the colour
/// of their verdict. The outline of a round side, which hangs on where one looks from, is left out.
[[nodiscard]] output::Scene3d exchange(const Model& model, const fit::Seating& seating, std::string title);

}  // namespace baywright::render
