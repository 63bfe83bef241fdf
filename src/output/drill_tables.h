#pragma once
// The sheets that go with a drilling template: hole table, ways of drilling, sizes, order, cautions.
#include "output/sheet.h"
#include "plans/drilling.h"

#include <string>
#include <vector>

namespace baywright::output {

/// What has to be known before any hole is drilled, a sentence each: how many drillings of each place take all screws,
/// holes that meet nothing, holes too near an edge or another hole.
[[nodiscard]] std::vector<std::string> drill_answers(const plans::Drilling& drilling);

/// What to do about a bend between a datum edge and the holes; empty: there is none.
[[nodiscard]] std::string bent_words(const plans::Drilling& drilling);

/// One sheet or more of that size, mm.
[[nodiscard]] std::vector<Sheet> drill_tables(const plans::Drilling& drilling, const std::string& title,
                                              const Vec2& paper_size);

}  // namespace baywright::output
