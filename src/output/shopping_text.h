#pragma once
// The shopping list of a seating, for people and for a spreadsheet.
#include "fit/seating.h"
#include "plans/shopping.h"

#include <string>
#include <vector>

namespace baywright::output {

/// When it may replace the item, or why it never does.
[[nodiscard]] std::string say(const plans::Exchange& exchange);
[[nodiscard]] std::string say(plans::Remark remark, const plans::Item& item);

/// `items` are not empty.
[[nodiscard]] std::string shopping_text(const fit::Seating& seating, const std::vector<plans::Item>& items);

/// RFC 4180 with a heading; lines end with a line feed alone. A field that a spreadsheet would take for a formula gets
/// an apostrophe before it. No items: the heading.
[[nodiscard]] std::string shopping_csv(const std::vector<plans::Item>& items);

}  // namespace baywright::output
