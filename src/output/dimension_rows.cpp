#include "output/dimension_rows.h"

#include "output/text.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <string_view>
#include <utility>
#include <vector>

namespace baywright::output {

using tolerance::Dimension;

namespace {

constexpr std::string_view unlimited = "no tolerance published";  // as standards/row.h ends a source
constexpr std::size_t widest_name = 44;                           // columns; what is wider pushes its own value on

struct Widths {
  std::size_t name = 0;
  std::size_t value = 0;
};

Widths widths_of(std::span<const Dimension> dimensions) {
  Widths out;
  for (const Dimension& d : dimensions) {
    out.name = std::max(out.name, std::min(columns(d.name), widest_name));
    out.value = std::max(out.value, columns(tolerance::in_words(d)));
  }
  return out;
}

std::string blanks(std::size_t count) {
  return std::string(count, ' ');
}

/// The row's name and value, and what is behind them, which may take several lines.
std::string row(const Dimension& d, const Widths& widths, std::size_t indent, const std::string& behind) {
  const std::string value = tolerance::in_words(d) + " mm";
  std::string head = blanks(indent) + padded(d.name, widths.name) + "  ";
  if (columns(d.name) > widths.name)
    head = blanks(indent) + wrapped(d.name, indent) + '\n' + blanks(indent + widths.name + 2);
  std::string out = head + (behind.empty() ? value : padded(value, widths.value + 3)) + (behind.empty() ? "" : "  ");
  out += wrapped(behind, indent + widths.name + widths.value + 7) + '\n';
  if (!d.elsewhere.empty()) out += blanks(indent + 2) + wrapped("another source: " + d.elsewhere, indent + 4) + '\n';
  return out;
}

}  // namespace

std::string source_name(const Dimension& d) {
  std::string source = d.source;
  if (source.ends_with(unlimited)) source.erase(source.size() - unlimited.size());
  while (!source.empty() && (source.back() == ' ' || source.back() == ';')) source.pop_back();
  return source.empty() ? "no source given" : source;
}

std::string source_in_words(const Dimension& d) {
  return source_name(d) + " (" + std::string(tolerance::word(d.known)) + ")";
}

std::string remark(const Dimension& d) {
  return d.source.ends_with(unlimited) ? std::string(unlimited) : std::string();
}

namespace {

std::string source_and_remark(const Dimension& d) {
  const std::string more = remark(d);
  return source_in_words(d) + (more.empty() ? "" : "; " + more);
}

struct Headed {
  std::string heading;
  std::vector<const Dimension*> dimensions;
};

/// In the order in which each heading comes first.
template <typename HeadingOf>
std::vector<Headed> headed(std::span<const Dimension> dimensions, const HeadingOf& heading_of) {
  std::vector<Headed> out;
  for (const Dimension& d : dimensions) {
    std::string heading = heading_of(d);
    auto known = std::find_if(out.begin(), out.end(), [&](const Headed& each) { return each.heading == heading; });
    if (known == out.end()) known = out.insert(out.end(), Headed{std::move(heading), {}});
    known->dimensions.push_back(&d);
  }
  return out;
}

std::string document_of(const Dimension& d) {
  const std::string source = source_in_words(d);
  return source.substr(0, source.find(", "));
}

}  // namespace

std::string rows_under_sources(std::span<const Dimension> dimensions, std::size_t indent) {
  const Widths widths = widths_of(dimensions);
  std::string out;
  for (const Headed& source : headed(dimensions, source_in_words)) {
    out += blanks(indent) + wrapped(source.heading, indent + 4) + '\n';
    for (const Dimension* d : source.dimensions) out += row(*d, widths, indent + 2, remark(*d));
  }
  return out;
}

std::string rows_under_documents(std::span<const Dimension> dimensions, std::size_t indent) {
  const Widths widths = widths_of(dimensions);
  std::string out;
  for (const Headed& document : headed(dimensions, document_of)) {
    out += blanks(indent) + wrapped(document.heading, indent + 4) + '\n';
    for (const Dimension* d : document.dimensions) {
      const std::string place = source_and_remark(*d);
      out += row(*d, widths, indent + 2, place.substr(std::min(place.size(), document.heading.size() + 2)));
    }
  }
  return out;
}

std::string rows_with_sources(std::span<const Dimension> dimensions, std::size_t indent) {
  const Widths widths = widths_of(dimensions);
  std::string out;
  for (const Dimension& d : dimensions) out += row(d, widths, indent, source_and_remark(d));
  return out;
}

}  // namespace baywright::output
