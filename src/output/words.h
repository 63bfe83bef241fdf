#pragma once
// Every word that people read about findings, in English. Another language is another file with these functions.
#include "fit/seating.h"

#include <string>
#include <vector>

namespace baywright::output {

[[nodiscard]] std::string word(fit::Verdict verdict);               // "fits", "marginal", "does not fit", "undecided"
[[nodiscard]] std::string word(fit::Answer answer);                 // "yes", "with adapter", "no"
[[nodiscard]] std::string word(fit::Kind kind);                     // as in models/check.schema.json
[[nodiscard]] std::string word(tolerance::Method method);           // "worst", "rss", "sampled"
[[nodiscard]] std::string in_words(tolerance::Method method);       // "worst case", "root sum square", "sampled"
[[nodiscard]] std::string in_words(const fit::Sampling& sampling);  // "sampled: 100,000 builds, seed 1"

/// The share of builds that fit, with what is sure of it where they were drawn: "98.7 % of builds fit (98.6 to 98.8 %,
/// 95 % sure)". Empty where the verdict says it all.
[[nodiscard]] std::string share_in_words(const fit::Seating& seating, const fit::Sampling& sampling);

/// What a finding is about, with the solid named where the part has several: "tray", "chips of fast long card".
[[nodiscard]] std::string subject(const fit::Finding& finding, std::size_t which);

/// One sentence, with its figures. `method` says what the limits are.
[[nodiscard]] std::string say(const fit::Finding& finding, tolerance::Method method);
[[nodiscard]] std::string say(const fit::Reason& why);

/// What would have to be so for a gap to be enough; empty where nothing simple would do.
[[nodiscard]] std::string say_need(const fit::Finding& finding);

/// What to do first so that nobody and nothing is hurt: before fitting; with `drills` before drilling, with `files` before
/// filing or cutting what two parts share.
[[nodiscard]] std::vector<std::string> cautions(bool drills, bool files);

/// "96.1 %": never "100 %" for less than all; "fewer than 0.1 %" for hardly any.
[[nodiscard]] std::string percent(double share);

/// "away from the board", as "+z" and the like: the direction of a unit vector that is close to an axis, else its
/// figures.
[[nodiscard]] std::string direction_words(const geometry::Vec3& toward);

/// "0.30 x 22.00 x 58.20 mm": the sizes of a box, the least first.
[[nodiscard]] std::string size_words(const geometry::Bounds& box);

}  // namespace baywright::output
