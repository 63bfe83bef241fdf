#include "build/edit.h"

#include "build/spans.h"
#include "parts/document.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <utility>

namespace baywright::build {

using parts::Fault;
using parts::Stop;

namespace {

constexpr std::string_view blanks = " \t";

bool is_table(const Node& node) {
  return node.kind == Node::Kind::table || node.kind == Node::Kind::inline_table;
}

bool is_list(const Node& node) {
  return node.kind == Node::Kind::list || node.kind == Node::Kind::table_list;
}

std::string_view kind_of(const Node& node) {
  if (is_table(node)) return "a table";
  return is_list(node) ? "a list" : "a single value";
}

std::string word(const Key& key) {
  if (const int* number = std::get_if<int>(&key)) return "entry " + std::to_string(*number);
  return '`' + std::get<std::string>(key) + '`';
}

std::string words(const Path& path, std::size_t count) {
  std::string out;
  for (std::size_t i = 0; i < count; ++i) out += (i == 0 ? "" : ", ") + word(path[i]);
  return out.empty() ? "the file" : out;
}

const Node* find(const Node& in, const Key& key) {
  if (const int* number = std::get_if<int>(&key)) {
    const bool there = is_list(in) && *number >= 0 && static_cast<std::size_t>(*number) < in.children.size();
    return there ? &in.children[static_cast<std::size_t>(*number)] : nullptr;
  }
  const std::string& name = std::get<std::string>(key);
  const auto called = [&](const Node& entry) {
    return std::any_of(entry.children.begin(), entry.children.end(),
                       [&](const Node& each) { return each.key == "name" && each.text == name; });
  };
  const auto found = std::find_if(in.children.begin(), in.children.end(), [&](const Node& each) {
    return is_table(in) ? each.key == name : is_list(in) && is_table(each) && called(each);
  });
  return found == in.children.end() ? nullptr : &*found;
}

bool bare(const std::string& key) {
  return !key.empty() && std::all_of(key.begin(), key.end(), [](unsigned char c) {
    return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_' || c == '-';
  });
}

std::string as_key(const std::string& key) {
  return bare(key) ? key : build::quoted(key);
}

/// A text on its way: one edit after the other.
class Editing {
 public:
  Editing(std::string text, std::string file) : text_(std::move(text)), file_(std::move(file)) { read(); }

  void make(const Edit& edit) {
    if (!scanned_) scan();
    if (edit.path.empty()) stop(root_, "an edit names no value", "give the keys that lead to it");
    switch (edit.what) {
      case Edit::What::set:
        set(edit);
        break;
      case Edit::What::remove:
        remove(lead(edit.path, edit.path.size()));
        break;
      case Edit::What::append:
        append(edit);
        break;
    }
    read();
  }

  [[nodiscard]] std::string text() && { return std::move(text_); }

 private:
  void read() {
    (void)parts::parse_document(text_, file_);
    scanned_ = false;
  }

  void scan() {
    auto scanned = spans(text_);
    if (!scanned) throw Stop{{file_, 0, 0, "the file is not understood well enough to be edited", "edit it by hand"}};
    root_ = std::move(*scanned);
    scanned_ = true;
  }

  [[noreturn]] void stop(const Node& at, const std::string& what, const std::string& right) const {
    const std::size_t begin = at.entry.end > 0 ? at.entry.begin : at.value.end > 0 ? at.value.begin : at.last.begin;
    const auto line = std::count(text_.begin(), text_.begin() + static_cast<std::ptrdiff_t>(begin), '\n') + 1;
    const std::size_t from = line_begin(text_, begin);
    const auto column =
        std::count_if(text_.begin() + static_cast<std::ptrdiff_t>(from),
                      text_.begin() + static_cast<std::ptrdiff_t>(begin), [](char c) { return (c & 0xC0) != 0x80; }) +
        1;
    throw Stop{{file_, static_cast<int>(line), static_cast<int>(column), what, right}};
  }

  const Node& lead(const Path& path, std::size_t count) const {
    const Node* at = &root_;
    for (std::size_t i = 0; i < count; ++i) {
      const Node* next = find(*at, path[i]);
      if (next == nullptr)
        stop(*at, "there is no " + word(path[i]) + " in " + words(path, i) + ", which is " + std::string(kind_of(*at)),
             "name a value that is there");
      at = next;
    }
    return *at;
  }

  [[nodiscard]] std::string line_break() const {
    const std::size_t first = text_.find('\n');
    return first != std::string::npos && first > 0 && text_[first - 1] == '\r' ? "\r\n" : "\n";
  }

  [[nodiscard]] std::string indent_of(std::size_t at) const {
    const std::size_t begin = line_begin(text_, at);
    const std::size_t end = std::min(text_.find_first_not_of(blanks, begin), at);
    return text_.substr(begin, end - begin);
  }

  /// The value without white space about it. Refused: anything but exactly one value.
  [[nodiscard]] std::string one_value(const Edit& edit) const {
    const std::string_view all = edit.value;
    const std::size_t begin = all.find_first_not_of(" \t\r\n");
    std::string value(begin == std::string_view::npos ? ""
                                                      : all.substr(begin, all.find_last_not_of(" \t\r\n") + 1 - begin));
    const std::string line = "value = " + value;
    bool good = false;
    try {
      (void)parts::parse_document(line, file_);
      const auto scanned = spans(line);
      good = scanned && scanned->children.size() == 1 && scanned->children[0].value.end == line.size();
    } catch (const Stop&) {
      good = false;
    }
    if (!good)
      stop(root_, "the new value of " + words(edit.path, edit.path.size()) + " is no TOML value",
           "it must be one figure, text in quotes, list or table");
    return value;
  }

  void set(const Edit& edit) {
    const Node& in = lead(edit.path, edit.path.size() - 1);
    const Node* old = find(in, edit.path.back());
    if (old != nullptr && old->kind == Node::Kind::table_list)
      stop(*old, words(edit.path, edit.path.size()) + " is a list of tables", "set what is in them one by one");
    const std::string value = one_value(edit);
    if (old != nullptr && old->kind == Node::Kind::table) {
      replace_lines(edit, *old, value);
      return;
    }
    if (old != nullptr) {
      text_.replace(old->value.begin, old->value.end - old->value.begin, value);
      return;
    }
    const auto* key = std::get_if<std::string>(&edit.path.back());
    if (!is_table(in) || key == nullptr) (void)lead(edit.path, edit.path.size());  // says that it is not there
    add(in, *key, value);
  }

  /// A table whose keys have lines of their own becomes one value among the keys of its parent.
  void replace_lines(const Edit& edit, const Node& old, const std::string& value) {
    const std::string key = old.key;
    const std::string comments = in_line(old) ? "" : comments_of(old);
    remove(old);
    read();
    scan();
    add(lead(edit.path, edit.path.size() - 1), key, value);
    if (comments.empty()) return;
    read();
    scan();
    text_.insert(line_begin(text_, lead(edit.path, edit.path.size()).entry.begin), comments);
  }

  /// The comment lines that `remove` would take along.
  [[nodiscard]] std::string comments_of(const Node& node) const {
    std::string out;
    std::vector<Span> cuts = line_cuts(node);
    std::sort(cuts.begin(), cuts.end(), [](const Span& a, const Span& b) { return a.begin < b.begin; });
    for (const Span& each : cuts)
      for (std::size_t line = each.begin; line < each.end; line = behind_break(line_end(text_, line)))
        if (text_[std::min(text_.find_first_not_of(blanks, line), each.end - 1)] == '#')
          out += text_.substr(line, line_end(text_, line) - line) + line_break();
    return out;
  }

  void add(const Node& table, const std::string& key, const std::string& value) {
    const std::string line = table.prefix + as_key(key) + " = " + value;
    const bool any = table.last.end > 0;
    if (table.kind == Node::Kind::inline_table) {
      if (any)
        text_.insert(table.last.end, ", " + line);
      else
        text_.replace(table.value.begin, table.value.end - table.value.begin, "{ " + line + " }");
    } else if (any && table.in_line) {
      text_.insert(table.last.end, ", " + line);
    } else if (any) {
      text_.insert(line_end(text_, table.last.end),
                   line_break() + indent_of(table.last.begin) + aligned(table, key) + value);
    } else if (table.section && table.value.end > 0) {
      text_.insert(table.section->end, line_break() + indent_of(table.value.begin) + line);
    } else if (table.section) {  // the document, before its first heading
      text_.insert(table.section->begin, line + line_break());
    } else {
      stop(table, "there is no room for " + word(key) + ": this table has no heading of its own",
           "write [the heading]");
    }
  }

  /// The key with its =, which stands below the = of the entry before where there is room.
  [[nodiscard]] std::string aligned(const Node& table, const std::string& key) const {
    std::string out = table.prefix + as_key(key);
    const std::size_t width = table.last_equals - table.last.begin;
    const std::size_t written = text_.find_last_not_of(blanks, table.last_equals - 1) + 1 - table.last.begin;
    if (width > written + 1 && out.size() < width) out.append(width - 1 - out.size(), ' ');
    return out + (width > written ? " = " : "=");
  }

  void cut(std::vector<Span> cuts) {
    std::sort(cuts.begin(), cuts.end(), [](const Span& a, const Span& b) { return a.begin > b.begin; });
    for (const Span& each : cuts) text_.erase(each.begin, each.end - each.begin);
  }

  void remove(const Node& node) {
    if (const Node* in = parent_of(root_, node); in->kind == Node::Kind::list)
      cut({list_cut(*in, node)});
    else if (in->kind == Node::Kind::inline_table || (in->kind == Node::Kind::table && in_line(node)))
      cut_in_line(node);
    else
      cut(line_cuts(node));
  }

  static const Node* parent_of(const Node& in, const Node& node) {
    for (const Node& each : in.children) {
      if (&each == &node) return &in;
      if (const Node* found = parent_of(each, node)) return found;
    }
    return nullptr;
  }

  /// Whether its entries are in an inline table.
  [[nodiscard]] bool in_line(const Node& node) const {
    if (node.kind == Node::Kind::table) return node.in_line;
    const Node* in = parent_of(root_, node);
    return in->kind == Node::Kind::inline_table || (in->kind == Node::Kind::table && in->in_line);
  }

  void cut_in_line(const Node& node) {
    // One by one from the back, as every cut takes a comma along with it.
    std::vector<Span> entries;
    collect_entries(node, entries);
    std::sort(entries.begin(), entries.end(), [](const Span& a, const Span& b) { return a.begin > b.begin; });
    for (const Span& entry : entries) {
      const std::size_t after = text_.find_first_not_of(blanks, entry.end);
      const std::size_t before = text_.find_last_not_of(blanks, entry.begin - 1);
      if (text_[before] == ',')
        text_.erase(before, entry.end - before);
      else if (text_[after] == ',')
        text_.erase(entry.begin, text_.find_first_not_of(blanks, after + 1) - entry.begin);
      else
        text_.erase(entry.begin, after - entry.begin);
    }
  }

  static void collect_entries(const Node& node, std::vector<Span>& out) {
    if (node.kind != Node::Kind::table) {
      if (node.entry.end > 0) out.push_back(node.entry);
      return;
    }
    for (const Node& each : node.children) collect_entries(each, out);
  }

  [[nodiscard]] Span list_cut(const Node& list, const Node& node) const {
    const std::size_t begin = node.value.begin;
    const std::size_t end = node.comma ? *node.comma + 1 : node.value.end;
    const std::size_t line = line_begin(text_, begin);
    const bool first_of_line = text_.find_first_not_of(blanks, line) == begin && line > list.value.begin;
    const std::size_t after = std::min(text_.find_first_not_of(blanks, end), text_.size());
    const std::size_t last = line_end(text_, end);
    if (first_of_line && (after >= last || text_[after] == '#')) return {line, behind_break(last)};
    if (node.comma) {  // with the blank behind it
      const bool breaks = after >= last || text_[after] == '#';
      return {begin, breaks ? end : after};
    }
    const auto index = static_cast<std::size_t>(&node - list.children.data());
    if (index == 0) return {begin, end};
    const std::size_t previous = list.children[index - 1].value.end;
    const bool close = text_.find_first_of("#\n", previous) >= begin;  // a comment between them stays
    return {close ? previous : begin, end};
  }

  [[nodiscard]] std::size_t behind_break(std::size_t end) const {
    if (end < text_.size() && text_[end] == '\r') ++end;
    return end < text_.size() ? end + 1 : end;
  }

  /// Whole lines: of keys, and of tables with the comments right above their headings.
  [[nodiscard]] std::vector<Span> line_cuts(const Node& node) const {
    std::vector<Span> out;
    if (node.section) {
      std::size_t begin = line_begin(text_, node.section->begin);
      for (;;) {
        if (begin == 0) break;
        const std::size_t above = line_begin(text_, begin - 1);
        const std::size_t first = text_.find_first_not_of(blanks, above);
        if (above >= begin || first == std::string::npos || text_[first] != '#') break;
        begin = above;
      }
      out.push_back(with_blank_lines({begin, behind_break(node.section->end)}));
    } else if (node.kind != Node::Kind::table && node.kind != Node::Kind::table_list) {
      out.push_back({line_begin(text_, node.entry.begin), behind_break(line_end(text_, node.entry.end))});
      return out;
    }
    for (const Node& each : node.children)
      if (!node.section || each.section || each.kind == Node::Kind::table || each.kind == Node::Kind::table_list)
        for (const Span& more : line_cuts(each))
          if (!node.section || more.begin >= node.section->end) out.push_back(more);
    return out;
  }

  /// A table goes with the blank lines behind it; the last one with those before it.
  [[nodiscard]] Span with_blank_lines(Span span) const {
    const auto blank = [&](std::size_t begin) {
      return std::min(text_.find_first_not_of(" \t\r", begin), text_.size()) >= line_end(text_, begin);
    };
    while (span.end < text_.size() && blank(span.end)) span.end = behind_break(line_end(text_, span.end));
    if (span.end < text_.size()) return span;
    while (span.begin > 0) {
      const std::size_t above = line_begin(text_, span.begin - 1);
      if (above >= span.begin || !blank(above)) break;
      span.begin = above;
    }
    return span;
  }

  void append(const Edit& edit) {
    const Node& in = lead(edit.path, edit.path.size() - 1);
    const Node* list = find(in, edit.path.back());
    if (list != nullptr && list->kind == Node::Kind::list) {
      append_value(*list, one_value(edit));
    } else if (list != nullptr && list->kind == Node::Kind::table_list) {
      append_table(edit, line_end(text_, last_line(*list)), heading_of(*list));
    } else if (list == nullptr && edit.path.size() == 1 && std::holds_alternative<std::string>(edit.path[0])) {
      append_table(edit, text_.size(), "[[" + as_key(std::get<std::string>(edit.path[0])) + "]]");
    } else {
      (void)lead(edit.path, edit.path.size());
      stop(*list, words(edit.path, edit.path.size()) + " is " + std::string(kind_of(*list)), "name a list");
    }
  }

  void append_value(const Node& list, const std::string& value) {
    if (list.children.empty()) {
      text_.insert(list.value.end - 1, list.value.end - list.value.begin > 2 ? value + ' ' : value);
      return;
    }
    const Node& last = list.children.back();
    const std::size_t behind = last.comma ? *last.comma + 1 : last.value.end;
    const std::size_t line = line_begin(text_, last.value.begin);
    const bool own_line = line > list.value.begin && text_.find_first_not_of(blanks, line) == last.value.begin;
    if (!own_line) {
      text_.insert(behind, (last.comma ? " " : ", ") + value + (last.comma ? "," : ""));
      return;
    }
    const std::size_t after = text_.find_first_not_of(blanks, behind);
    const std::size_t end = line_end(text_, behind);
    const bool to_end = after >= end || text_[after] == '#';  // a comment behind the last entry stays with it
    text_.insert(to_end ? end : behind, line_break() + indent_of(last.value.begin) + value + (last.comma ? "," : ""));
    if (!last.comma) text_.insert(last.value.end, ",");
  }

  static std::size_t last_line(const Node& node) {
    std::size_t end = node.section ? node.section->end : 0;
    for (const Node& each : node.children) end = std::max(end, last_line(each));
    return end;
  }

  [[nodiscard]] std::string heading_of(const Node& list) const {
    const Span& heading = list.children.back().value;
    return indent_of(heading.begin) + text_.substr(heading.begin, heading.end - heading.begin);
  }

  /// The entries of an inline table on lines; any other text as it is.
  static std::string on_lines(const std::string& value) {
    const std::string line = "value = " + value;
    const auto scanned = value.starts_with('{') ? spans(line) : std::nullopt;
    if (!scanned || scanned->children.size() != 1) return value;
    std::vector<Span> entries;
    for (const Node& each : scanned->children[0].children) collect_entries(each, entries);
    std::string out;
    for (const Span& each : entries) out += line.substr(each.begin, each.end - each.begin) + '\n';
    return out;
  }

  void append_table(const Edit& edit, std::size_t at, const std::string& heading) {
    const std::string value = on_lines(edit.value);
    const auto scanned = [&]() -> std::optional<Node> {
      try {
        (void)parts::parse_document(value, file_);
        return spans(value);
      } catch (const Stop&) {
        return std::nullopt;
      }
    }();
    const auto headed = [](const Node& each) { return each.section || each.kind == Node::Kind::table_list; };
    if (!scanned || std::any_of(scanned->children.begin(), scanned->children.end(), headed))
      stop(root_, "the new " + words(edit.path, edit.path.size()) + " is not the lines of a table",
           "write `key = value` lines without a heading");
    const std::string brk = line_break();
    std::string lines;
    for (const char c : value.substr(0, value.find_last_not_of(" \t\r\n") + 1)) {
      if (c == '\r') continue;
      lines += c == '\n' ? brk : std::string(1, c);
    }
    std::string added = heading + brk + lines;
    if (at == 0 || text_.find_first_not_of(" \t\r\n") >= at) {
      text_.insert(at, added + brk);
    } else if (at < text_.size()) {
      text_.insert(at, brk + brk + added);
    } else {
      const bool ended = text_.back() == '\n';
      text_ += (ended ? brk : brk + brk) + added + brk;
    }
  }

  std::string text_;
  std::string file_;
  Node root_;  // of the text, where it is scanned
  bool scanned_ = false;
};

bool path_to(const Node& in, std::size_t at, Path& path) {
  for (std::size_t i = 0; i < in.children.size(); ++i) {
    const Node& each = in.children[i];
    path.push_back(is_list(in) ? Key(static_cast<int>(i)) : Key(each.key));
    const bool written = each.kind != Node::Kind::table && each.kind != Node::Kind::table_list;
    if ((written && each.value.begin == at) || path_to(each, at, path)) return true;
    path.pop_back();
  }
  return false;
}

/// To `decimals`, without zeros that say nothing.
std::string figure(double mm, int decimals) {
  std::array<char, 340> digits{};  // the largest double has 309 before the point
  const auto [end, fault] =
      std::to_chars(digits.data(), digits.data() + digits.size(), mm, std::chars_format::fixed, decimals);
  std::string text(digits.data(), end);
  if (text.find('.') != std::string::npos) {
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
  }
  return text == "-0" ? "0" : text;
}

}  // namespace

std::variant<std::string, Fault> edited(std::string_view text, std::span<const Edit> edits,
                                        const std::filesystem::path& file) {
  try {
    Editing editing(std::string(text), file.string());
    for (const Edit& edit : edits) editing.make(edit);
    return std::move(editing).text();
  } catch (const Stop& stop) {
    return stop.fault;
  }
}

std::variant<std::string, Fault> file_text(const std::filesystem::path& file) {
  try {
    return parts::read_text_file(file);
  } catch (const Stop& stop) {
    return stop.fault;
  }
}

std::optional<Path> path_at(const Node& tree, std::string_view text, int line, int column) {
  if (line < 1 || column < 1) return std::nullopt;
  std::size_t at = line_begin(text, 0);
  for (int i = 1; i < line; ++i) {
    at = text.find('\n', at);
    if (at == std::string_view::npos) return std::nullopt;
    ++at;
  }
  for (int i = 1; i < column && at < text.size(); ++i) do
      ++at;
    while (at < text.size() && (text[at] & 0xC0) == 0x80);
  Path path;
  if (!path_to(tree, at, path)) return std::nullopt;
  return path;
}

const Node* node_at(const Node& tree, const Path& path) {
  const Node* at = &tree;
  for (const Key& key : path)
    if (at != nullptr) at = find(*at, key);
  return at;
}

std::string length_text(double nominal, double minus, double plus) {
  const std::string middle = figure(nominal, 3);
  const std::string below = figure(minus, 6);
  const std::string above = figure(plus, 6);
  if (std::isinf(minus) && std::isinf(plus)) return '"' + middle + '"';
  if (std::isinf(minus)) return "\"max " + figure(nominal + plus, 3) + '"';
  if (std::isinf(plus)) return "\"min " + figure(nominal - minus, 3) + '"';
  if (minus == 0.0 && plus == 0.0) return '"' + middle + '"';
  if (below == above) return '"' + middle + " ±" + above + '"';
  return '"' + middle + " +" + above + " -" + below + '"';
}

std::string quoted(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (byte < 0x20 || byte == 0x7f) {
      constexpr std::string_view digits = "0123456789ABCDEF";
      out += "\\u00";
      out += digits[byte >> 4];
      out += digits[byte & 15];
    } else {
      out += c;
    }
  }
  return out + '"';
}

}  // namespace baywright::build
