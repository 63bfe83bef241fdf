#pragma once
// The answer of one seating in a few words, as every picture, drawing and window gives it.
#include "fit/seating.h"

#include <string>
#include <vector>

namespace baywright::output {

struct Answer {
  fit::Verdict verdict = fit::Verdict::undecided;
  std::string word;      // "does not fit"
  std::string what;      // "card with tall fins in rear slot"
  std::string sentence;  // of the finding that the verdict comes from, with its figures
  std::string plain;     // for who asked a counter and knows no limits: one figure at most
};

[[nodiscard]] Answer answer_of(const fit::Seating& seating, tolerance::Method method);

/// The finding that the verdict comes from; null: nothing was found at all.
[[nodiscard]] const fit::Finding* answering(const fit::Seating& seating);
/// The same, but where several of the three questions say no, each of them: who mends one alone buys for nothing.
[[nodiscard]] std::vector<const fit::Finding*> grounds(const fit::Seating& seating);
/// Whether the gap is below what is asked at worst, though its parts still keep apart by a hundredth and more.
[[nodiscard]] bool clears_at_worst(const fit::Finding& finding);

}  // namespace baywright::output
