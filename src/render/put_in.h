#pragma once
// The drive on its way to its place.
#include "render/model.h"

namespace baywright::render {

/// Where a thing stands when the seating is `apart` (0..1) and `put_in` (0 before the way in .. 1 seated), as a motion
/// from where it is seated. First the machine's parts that hinder come out and what is fixed later is lifted; then the
/// drive goes along its way, of which the far end beyond one and a half lengths of the drive is left away. Where no way
/// is known, the drive stays in its place.
[[nodiscard]] geometry::Pose stands_at(const Model& model, const Thing& thing, double apart, double put_in);

/// `room` and what moves then: the drive with what it wears, and of the machine's parts that come out what is over it.
[[nodiscard]] geometry::Bounds grown(const geometry::Bounds& room, const Model& model, double apart, double put_in);

}  // namespace baywright::render
