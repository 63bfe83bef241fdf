#pragma once
// As much of an XML reader as the tests of drawings need.
#include <algorithm>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace baywright::output {

/// What is not well-formed; empty: nothing found. Knows elements, attributes in double quotes and the five entities.
inline std::string reading_fault(std::string_view xml) {
  std::vector<std::string> open;
  std::size_t at = 0;
  const auto entities_hold = [](std::string_view text) {
    for (std::size_t i = text.find('&'); i != std::string_view::npos; i = text.find('&', i + 1)) {
      const std::string_view name = text.substr(i, text.find(';', i) - i + 1);
      if (name != "&amp;" && name != "&lt;" && name != "&gt;" && name != "&quot;" && name != "&apos;") return false;
    }
    return true;
  };
  if (xml.starts_with("<?xml")) at = xml.find("?>") + 2;
  bool any = false;
  while (at < xml.size()) {
    const std::size_t tag = xml.find('<', at);
    if (!entities_hold(xml.substr(at, tag - at))) return "a bare & in text";
    if (tag == std::string_view::npos) break;
    const std::size_t end = xml.find('>', tag);
    if (end == std::string_view::npos) return "a tag without end";
    std::string_view inside = xml.substr(tag + 1, end - tag - 1);
    at = end + 1;
    if (inside.starts_with('/')) {
      if (open.empty() || open.back() != inside.substr(1)) return "a closing tag out of turn: " + std::string(inside);
      open.pop_back();
      continue;
    }
    const bool empty = inside.ends_with('/');
    if (empty) inside.remove_suffix(1);
    const std::size_t name_end = std::min(inside.find(' '), inside.size());
    if (open.empty() && any) return "a second root";
    any = true;
    if (!empty) open.emplace_back(inside.substr(0, name_end));
    std::set<std::string> names;
    std::size_t i = name_end;
    while (i < inside.size()) {
      while (i < inside.size() && inside[i] == ' ') ++i;
      if (i == inside.size()) break;
      const std::size_t equals = inside.find("=\"", i);
      if (equals == std::string_view::npos) return "an attribute without quotes in " + std::string(inside);
      if (!names.insert(std::string(inside.substr(i, equals - i))).second)
        return "an attribute twice in " + std::string(inside);
      const std::size_t close = inside.find('"', equals + 2);
      if (close == std::string_view::npos) return "an attribute without end in " + std::string(inside);
      if (!entities_hold(inside.substr(equals + 2, close - equals - 2))) return "a bare & in an attribute";
      i = close + 1;
    }
  }
  return open.empty() && any ? "" : "an element without end";
}

/// The SVG of the group that shows `name`, with all in it; empty: there is none.
inline std::string group_of(const std::string& svg, const std::string& name) {
  const std::size_t start = svg.find("<g data-shows=\"" + name + "\"");
  if (start == std::string::npos) return {};
  int depth = 0;
  std::size_t at = start;
  do {
    const std::size_t open = svg.find("<g", at);
    const std::size_t close = svg.find("</g>", at);
    if (open < close) {
      ++depth;
      at = open + 2;
    } else {
      --depth;
      at = close + 4;
    }
  } while (depth > 0);
  return svg.substr(start, at - start);
}

struct Path {
  std::vector<std::pair<double, double>> points;  // of M and L commands
  bool closed = false;
  double width = 0.0;  // of its stroke, 0: none
};

/// Every path of straight lines.
inline std::vector<Path> paths_of(const std::string& svg) {
  std::vector<Path> out;
  for (std::size_t at = svg.find("<path "); at != std::string::npos; at = svg.find("<path ", at + 1)) {
    const std::string tag = svg.substr(at, svg.find('>', at) - at);
    const std::size_t d = tag.find(" d=\"") + 4;
    const std::string data = tag.substr(d, tag.find('"', d) - d);
    Path path;
    for (std::size_t i = 0; i < data.size(); ++i) {
      if (data[i] == 'Z') path.closed = true;
      if (data[i] != 'M' && data[i] != 'L') continue;
      const std::size_t space = data.find(' ', i);
      path.points.emplace_back(std::stod(data.substr(i + 1)), std::stod(data.substr(space + 1)));
    }
    const std::size_t width = tag.find("stroke-width=\"");
    if (width != std::string::npos) path.width = std::stod(tag.substr(width + 14));
    out.push_back(std::move(path));
  }
  return out;
}

}  // namespace baywright::output
