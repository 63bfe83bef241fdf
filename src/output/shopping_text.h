#pragma once
// The shopping list of a seating, for people and for a spreadsheet.
#include "fit/seating.h"
#include "plans/shopping.h"

#include <string>
#include <utility>
#include <vector>

namespace baywright::output {

/// When it may replace the item, or why it never does.
[[nodiscard]] std::string say(const plans::Exchange& exchange);
[[nodiscard]] std::string say(plans::Remark remark, const plans::Item& item);

/// What stands above the list, a sentence each: how much is to be bought, and what to beware of.
[[nodiscard]] std::vector<std::string> shopping_heading(const fit::Seating& seating,
                                                        const std::vector<plans::Item>& items);

struct ItemWords {
  std::string what;                                        // "medium pad: 1 mm"; its count and kind stand beside it
  std::vector<std::pair<std::string, std::string>> notes;  // "mm", "note", "or", "never", "source", with what each says
};
[[nodiscard]] ItemWords words_of(const plans::Item& item);

/// `items` are not empty.
[[nodiscard]] std::string shopping_text(const fit::Seating& seating, const std::vector<plans::Item>& items);

/// RFC 4180 with a heading; lines end with a line feed alone. A field that a spreadsheet would take for a formula gets
/// an apostrophe before it. No items: the heading.
[[nodiscard]] std::string shopping_csv(const std::vector<plans::Item>& items);

}  // namespace baywright::output
