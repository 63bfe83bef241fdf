#include "output/sources_text.h"

#include "output/dimension_rows.h"

#include <array>
#include <cstddef>

namespace baywright::output {

using tolerance::Dimension;
using tolerance::Known;

std::string sources_text(std::span<const standards::Rows> families) {
  constexpr std::array<Known, 6> kinds = {Known::read,   Known::secondary, Known::practice,
                                          Known::memory, Known::measured,  Known::derived};
  std::array<std::size_t, kinds.size()> counts{};
  std::size_t all = 0;
  std::string out;
  for (const standards::Rows& family : families) {
    out += std::string(family.family) + " (" + std::to_string(family.rows.size()) + ")\n" +
           rows_under_sources(family.rows, 2) + '\n';
    all += family.rows.size();
    for (const Dimension& d : family.rows)
      for (std::size_t i = 0; i < kinds.size(); ++i) counts[i] += d.known == kinds[i] ? 1U : 0U;
  }
  out += std::to_string(all) + " dimensions:";
  for (std::size_t i = 0; i < kinds.size(); ++i)
    out += (i == 0 ? " " : ", ") + std::to_string(counts[i]) + ' ' + std::string(tolerance::word(kinds[i]));
  return out + '\n';
}

}  // namespace baywright::output
