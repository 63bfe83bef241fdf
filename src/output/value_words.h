#pragma once
// Every word that people read about what a drive is worth, in English.
#include "value/ranking.h"

#include <optional>
#include <string>

namespace baywright::output {

/// One sentence, with its figures; money in `currency`, which may be empty.
[[nodiscard]] std::string say(const value::Remark& remark, const std::string& currency);

/// What the drive would change over what is there now. Empty where that is not known.
[[nodiscard]] std::string say(const value::Upgrade& upgrade, const value::Present& now);

[[nodiscard]] std::string word(value::MapMemory map);      // "DRAM", "HMB", "none", "unknown"
[[nodiscard]] std::string word(value::Code code);          // as in models/rank.schema.json: "no TBW"
[[nodiscard]] std::string word(value::Standing standing);  // "goes", "may go", "not known", "goes not"

/// "79.90 EUR", "0.080 EUR": so many decimals, whatever the locale.
[[nodiscard]] std::string money(double amount, const std::string& currency, int decimals);
/// "600", "12.5": at most so many decimals, none of them a zero at the end.
[[nodiscard]] std::string plain(double figure, int decimals);
/// "1 year", "0.3 years", "less than 0.1 years".
[[nodiscard]] std::string years(double figure);
/// What the slot's link leaves of a drive's speed, and what that figure leaves out.
[[nodiscard]] std::string held_to(double megabytes);
/// "500 GB", "2 TB", "1.92 TB".
[[nodiscard]] std::string capacity(double gigabytes);

}  // namespace baywright::output
