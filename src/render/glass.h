#pragma once
// Which parts of the machine stand between the eye and the drive.
#include "render/camera.h"
#include "render/model.h"

#include <set>
#include <string>

namespace baywright::render {

/// Names of parts, by the boxes about their things: those that hide a tenth of the drive or more. Sockets never count:
/// a drive is meant to stand in them.
[[nodiscard]] std::set<std::string> hiding(const Model& model, const Camera& camera);

}  // namespace baywright::render
