#include "parts/stray_character.h"

#include <algorithm>
#include <cstdio>
#include <utility>

namespace baywright::parts {

namespace {

bool beyond_ascii(char c) {
  return (static_cast<unsigned char>(c) & 0x80U) != 0;
}
bool continues(char c) {
  return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}
bool is_space(char c) {
  return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

struct Decoded {
  char32_t code = 0;
  std::size_t size = 0;  // bytes; 0: not UTF-8
};

Decoded decode(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text.front());
  const std::size_t size = lead >= 0xF0U ? 4 : lead >= 0xE0U ? 3 : 2;
  if (lead < 0xC2U || lead > 0xF4U || text.size() < size) return {};
  char32_t code = lead & (0xFFU >> (size + 1));
  for (std::size_t i = 1; i < size; ++i) {
    if (!continues(text[i])) return {};
    code = (code << 6U) | (static_cast<unsigned char>(text[i]) & 0x3FU);
  }
  const char32_t least = size == 4 ? 0x10000 : size == 3 ? 0x800 : 0x80;
  const bool surrogate = code >= 0xD800 && code <= 0xDFFF;
  if (code < least || code > 0x10FFFF || surrogate) return {};
  return {code, size};
}

StrayCharacter slip(std::string_view text, std::size_t at, std::string what, std::string right) {
  const std::string_view before = text.substr(0, at);
  const std::size_t newline = before.rfind('\n');
  const std::string_view line = newline == std::string_view::npos ? before : before.substr(newline + 1);
  return {1 + static_cast<int>(std::count(before.begin(), before.end(), '\n')),
          1 + static_cast<int>(std::count_if(line.begin(), line.end(), [](char c) { return !continues(c); })),
          std::move(what), std::move(right)};
}

std::optional<StrayCharacter> found(std::string_view text, std::size_t at) {
  const Decoded got = decode(text.substr(at));
  if (got.size == 0) return std::nullopt;
  char code[16];
  std::snprintf(code, sizeof code, "U+%04X", static_cast<unsigned>(got.code));
  return slip(text, at,
              "the character `" + std::string(text.substr(at, got.size)) + "` (" + code + ") stands outside quotes",
              "put a text or a length with limits in straight quotes, as in \"9.1 ±0.2\"");
}

/// Whether only blanks stand before `at` in its line.
bool begins_line(std::string_view text, std::size_t at) {
  while (at > 0 && (text[at - 1] == ' ' || text[at - 1] == '\t')) --at;
  return at == 0 || text[at - 1] == '\n';
}

/// Behind the brackets of a table header: what stands where its name should begin, unless that is a name or a bracket,
/// of which the parser itself takes care.
std::optional<std::size_t> unnamed_table(std::string_view text, std::size_t at) {
  at += text.substr(at).starts_with("[[") ? 2U : 1U;
  while (at < text.size() && (text[at] == ' ' || text[at] == '\t')) ++at;
  if (at == text.size()) return std::nullopt;
  const char c = text[at];
  const bool name = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' ||
                    c == '-' || c == '"' || c == '\'' || c == '[' || c == ']' || beyond_ascii(c);
  return name ? std::nullopt : std::optional(at);
}

/// Where the quotes end that open at `at`: the byte behind them; or the stray character in them.
struct Quoted {
  std::size_t behind = 0;
  std::optional<std::size_t> stray;
};

Quoted quoted(std::string_view text, std::size_t at) {
  const char quote = text[at];
  const std::string three(3, quote);
  const bool several_lines = text.substr(at).starts_with(three);
  const std::string closing = several_lines ? three : std::string(1, quote);
  for (std::size_t i = at + closing.size(); i < text.size(); ++i) {
    if (!several_lines && text[i] == '\n') return {i, {}};  // never closed: the parser says so
    if (text[i] == '\\' && quote == '"') {
      std::size_t next = i + 1;
      while (several_lines && next < text.size() && is_space(text[next])) ++next;
      if (next < text.size() && beyond_ascii(text[next])) return {next, next};
      if (next < text.size() && text[next] == '\n') return {next, {}};
      i = next == i + 1 ? next : next - 1;
    } else if (text.substr(i).starts_with(closing)) {
      i += closing.size();
      // Up to two quotes may stand before the three that close.
      for (int more = 0; several_lines && more < 2 && i < text.size() && text[i] == quote; ++more) ++i;
      return {i, {}};
    }
  }
  return {text.size(), {}};
}

}  // namespace

std::optional<StrayCharacter> stray_character(std::string_view text) {
  std::string open;  // brackets and braces that are not closed yet
  std::size_t i = text.starts_with("\xEF\xBB\xBF") ? 3 : 0;
  while (i < text.size()) {
    const char c = text[i];
    if (beyond_ascii(c)) return found(text, i);
    if (c == '#') {
      i = std::min(text.find('\n', i), text.size());
    } else if (c == '"' || c == '\'') {
      const Quoted got = quoted(text, i);
      if (got.stray) return found(text, *got.stray);
      i = got.behind;
    } else {
      if (c == '[' && open.empty() && begins_line(text, i))
        if (const auto at = unnamed_table(text, i))
          return slip(text, *at, "a table header has no name here", "write a name in the brackets, as in [[part]]");
      if (c == '[' || c == '{') open += c;
      if ((c == ']' || c == '}') && !open.empty()) {
        if (c == '}' && open.back() == '[')
          return slip(text, i, "a list that begins with [ ends with }", "write ], or { in front");
        open.pop_back();
      }
      ++i;
    }
  }
  return std::nullopt;
}

}  // namespace baywright::parts
