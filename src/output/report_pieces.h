#pragma once
// Pieces of the page for a customer (report.h). Internal.
#include "output/report.h"

#include <string>
#include <string_view>
#include <vector>

namespace baywright::output {

/// Text as it stands between tags: escaped, names set apart so that their direction of writing ends with them.
[[nodiscard]] std::string html(std::string_view text);
/// The same in an attribute, or in SVG, where marks of direction do it.
[[nodiscard]] std::string bare(std::string_view text);       // not escaped yet
[[nodiscard]] std::string attribute(std::string_view text);  // escaped

/// "<p class=\"lead\">" and so on round what is HTML already. `attributes` with a blank before them.
[[nodiscard]] std::string element(std::string_view tag, std::string_view attributes, std::string_view inner);
/// A table that may be wider than a phone: it is moved by itself then, by the keyboard too. `name`: what it is called.
[[nodiscard]] std::string wide(std::string_view name, std::string_view table);
/// With a heading of its own, which names it.
[[nodiscard]] std::string section(std::string_view id, const std::string& heading, std::string_view inner);
/// A capital in front and a stop behind.
[[nodiscard]] std::string sentence(std::string text);

/// The verdict's mark (ISO 286-1's kinds of fit as squares apart, touching, overlapping), hidden from who reads aloud.
[[nodiscard]] std::string verdict_mark(fit::Verdict verdict);

struct Spoken {
  fit::Verdict verdict = fit::Verdict::undecided;  // whose mark it is
  std::string word;                                // "does not fit as it is"
  std::string changed;                             // "fits with a change"; empty: there is none, or it fits
  fit::Verdict then = fit::Verdict::fits;          // whose mark `changed` has
  std::vector<std::string> sentences;              // two
  std::vector<std::string> notes;                  // what stands below in small
};
[[nodiscard]] Spoken spoken(const Report& report);  // report_answer.cpp

/// What a plan changes and that it fits then, with what has to be looked at first where nothing checks it.
[[nodiscard]] std::string fits_with(Language language, const plans::Plan& plan);

/// Columns of the list that say nothing here, as a sentence.
[[nodiscard]] std::string unused_columns(Language language, const plans::Buying& list);

/// "1.65 mm (at worst 1.14 mm)", the latter where limits are worst case and it is known.
[[nodiscard]] std::string air(Language language, const fit::GapFigures& gap, tolerance::Method method);
/// The clearance that decides a seating; null where nothing is near.
[[nodiscard]] const fit::Finding* nearest(const fit::Seating& seating);

[[nodiscard]] std::string drives_section(const Report& report);    // report_drives.cpp
[[nodiscard]] std::string plan_section(const Report& report);      // report_making.cpp
[[nodiscard]] std::string shopping_section(const Report& report);  // report_making.cpp
[[nodiscard]] std::string steps_section(const Report& report);     // report_making.cpp
[[nodiscard]] std::string figures_section(const Report& report);   // report_figures.cpp
/// The list of words that `page` uses, and `page` with the first use of each linked to it.
[[nodiscard]] std::string words_section(Language language, std::string& page);  // report_terms.cpp

}  // namespace baywright::output
