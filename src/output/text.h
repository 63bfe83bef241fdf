#pragma once
// Answers for people at a terminal: at most 100 columns, the first line answers the question, no colour alone.
#include "fit/seating.h"
#include "plans/measure.h"

#include <optional>
#include <string>
#include <vector>

namespace baywright::output {

/// How a check turned out as a whole: what the exit status says.
struct Tally {
  bool every = false;  // every place of every drive was asked about
  bool accept_marginal = false;
  [[nodiscard]] bool good(const fit::Seating& seating) const;
  /// Whether each drive fits at one place (or, with `every`, at all of them).
  [[nodiscard]] bool holds(const fit::Check& check) const;
};

/// What would settle each seating that is marginal; one a seating, or none at all.
using Settlings = std::vector<std::optional<plans::Settling>>;

/// `colour`: the verdict word is set in bold and colour as well.
[[nodiscard]] std::string check_text(const fit::Check& check, const Tally& tally, bool colour,
                                     const Settlings& settlings);

/// The chain behind each finding of each seating, largest share first. Of the gaps that fit only the closest, unless
/// `all`.
[[nodiscard]] std::string explain_text(const fit::Check& check, bool all, const Settlings& settlings);

/// How much of a gap's variation comes from one dimension of its chain, beside the others of that chain.
[[nodiscard]] double weight(const fit::ChainLink& link, tolerance::Method method);

/// The last lines of an answer: how limits add up, where to look for `more`, notes on the build, cautions.
[[nodiscard]] std::string closing(const fit::Check& check, const std::string& more);

/// Breaks `text` at spaces so that no line is longer than `width`; lines after the first begin with `indent` spaces.
[[nodiscard]] std::string wrapped(const std::string& text, std::size_t indent, std::size_t width = 100);

/// `text` with spaces behind it up to `width` columns; wider text stays as it is.
[[nodiscard]] std::string padded(std::string text, std::size_t width);

/// Width in columns of UTF-8 text.
[[nodiscard]] std::size_t columns(std::string_view text);

}  // namespace baywright::output
