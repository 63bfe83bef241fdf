#pragma once
// The drives that somebody chooses between.
#include "parts/table_file.h"
#include "value/offer.h"

#include <filesystem>
#include <string>
#include <variant>
#include <vector>

namespace baywright::value {

struct Shortlist {
  parts::Table table;    // as read: its rows are the offers, in order
  std::string currency;  // of all prices, as written; empty: none was
  std::vector<Offer> offers;
  std::vector<std::string> unused;  // columns that say nothing here
};

/// A .csv file, or a .toml file with [[drive]] tables; models/README.md has the columns. One fault, the first: what
/// `read_table_file` refuses, a heading that is nearly one of ours or another name for one, no `name` or one that is
/// there twice, a figure that cannot be read or may be read two ways, prices in several currencies.
[[nodiscard]] std::variant<Shortlist, parts::Fault> read_shortlist(const std::filesystem::path& file);

}  // namespace baywright::value
