#pragma once
// The three kinds of fit of ISO 286-1 (clearance, transition, interference), applied to a gap less the clearance asked.
#include <optional>

namespace baywright::fit {

/// From best to worst; a seating is its worst finding.
enum class Verdict { fits, marginal, undecided, does_not_fit };

/// fits when low >= asked; else does not fit when high <= asked; else marginal. Figures in mm, compared at 1e-9 mm, so
/// that faces which are made to touch count as ISO 286-1 has it. An open side is infinite. NaN is undecided.
[[nodiscard]] Verdict verdict_of(double low, double high, double asked);

[[nodiscard]] Verdict worse(Verdict a, Verdict b);

}  // namespace baywright::fit
