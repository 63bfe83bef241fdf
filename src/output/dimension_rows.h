#pragma once
// Dimensions on a terminal, each with its limits, where it comes from and how that is known; at most 100 columns.
#include "tolerance/dimension.h"

#include <span>
#include <string>

namespace baywright::output {

/// What a dimension's limits come from: "SFF-8201, Table 3-1", or that no source was given. That no tolerance is
/// published is not part of it: see `remark`.
[[nodiscard]] std::string source_name(const tolerance::Dimension& dimension);

/// With how it is known: "SFF-8201, Table 3-1 (read)".
[[nodiscard]] std::string source_in_words(const tolerance::Dimension& dimension);

/// "no tolerance published" where its source says so; else empty.
[[nodiscard]] std::string remark(const tolerance::Dimension& dimension);

/// Each source once, in the order of its first dimension, with its dimensions below it.
[[nodiscard]] std::string rows_under_sources(std::span<const tolerance::Dimension> dimensions, std::size_t indent);

/// Each document once (a source up to its first comma), and below it a row a dimension with the place in it.
[[nodiscard]] std::string rows_under_documents(std::span<const tolerance::Dimension> dimensions, std::size_t indent);

/// One row a dimension, its source at its end.
[[nodiscard]] std::string rows_with_sources(std::span<const tolerance::Dimension> dimensions, std::size_t indent);

}  // namespace baywright::output
