#include "build/spans.h"

#include <algorithm>
#include <toml++/toml.h>
#include <utility>

namespace baywright::build {

namespace {

constexpr std::string_view mark = "\xEF\xBB\xBF";  // byte order mark

/// What is in quotes, decoded.
std::string decoded(std::string_view quoted) {
  const std::string_view inner = quoted.substr(1, quoted.size() - 2);
  const bool plain = !quoted.starts_with("'''") && !quoted.starts_with("\"\"\"") &&
                     (quoted.front() == '\'' || inner.find('\\') == std::string_view::npos);
  if (plain) return std::string(inner);
  try {
    const toml::table read = toml::parse("text = " + std::string(quoted));
    return read["text"].value_or(std::string());
  } catch (const toml::parse_error&) {
    return {};
  }
}

class Scanner {
 public:
  explicit Scanner(std::string_view text) : text_(text) {
    if (text_.starts_with(mark)) at_ = mark.size();
  }

  std::optional<Node> document() {
    Node root;
    root.kind = Node::Kind::table;
    root.section = Span{at_, at_};
    Node* table = &root;
    for (skip_all(); good_ && at_ < text_.size(); skip_all()) {
      if (peek() == '[')
        table = heading(root);
      else
        entry(*table, false);
    }
    if (!good_) return std::nullopt;
    return root;
  }

 private:
  struct KeyPart {
    std::string key;
    Span span;
  };

  [[nodiscard]] char peek(std::size_t ahead = 0) const {
    return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\0';
  }
  void skip_blanks() {
    while (peek() == ' ' || peek() == '\t') ++at_;
  }
  void skip_all() {  // line breaks and comments too
    for (;;) {
      skip_blanks();
      if (peek() == '#')
        at_ = line_end(text_, at_);
      else if (peek() == '\n' || peek() == '\r')
        ++at_;
      else
        return;
    }
  }
  bool take(char c) {
    if (peek() == c) return ++at_, true;
    return good_ = false;
  }

  Span quoted() {
    const std::size_t begin = at_;
    const char quote = peek();
    const bool several = peek(1) == quote && peek(2) == quote;
    at_ += several ? 3 : 1;
    while (at_ < text_.size()) {
      if (quote == '"' && peek() == '\\') {
        at_ += 2;
      } else if (peek() != quote) {
        ++at_;
      } else if (!several) {
        return {begin, ++at_};
      } else if (peek(1) == quote && peek(2) == quote) {
        at_ += 3;
        for (int more = 0; more < 2 && peek() == quote; ++more) ++at_;  // quotes of the text itself before its end
        return {begin, at_};
      } else {
        ++at_;
      }
    }
    good_ = false;
    at_ = text_.size();
    return {begin, at_};
  }

  std::vector<KeyPart> key() {
    std::vector<KeyPart> parts;
    do {
      skip_blanks();
      if (peek() == '"' || peek() == '\'') {
        const Span span = quoted();
        if (good_) parts.push_back({decoded(text_.substr(span.begin, span.end - span.begin)), span});
      } else {
        const std::size_t begin = at_;
        while (at_ < text_.size() && std::string_view(" \t.=]\r\n").find(peek()) == std::string_view::npos) ++at_;
        if (at_ == begin) good_ = false;
        parts.push_back({std::string(text_.substr(begin, at_ - begin)), {begin, at_}});
      }
      skip_blanks();
    } while (good_ && peek() == '.' && ++at_ > 0);
    return parts;
  }

  Node value() {
    Node node;
    node.value.begin = at_;
    const char first = peek();
    if (first == '"' || first == '\'') {
      node.value = quoted();
      if (good_) node.text = decoded(text_.substr(node.value.begin, node.value.end - node.value.begin));
    } else if (first == '[') {
      list(node);
    } else if (first == '{') {
      inline_table(node);
    } else {
      while (at_ < text_.size() && std::string_view(",]}#\r\n").find(peek()) == std::string_view::npos) ++at_;
      node.value.end = at_;
      while (node.value.end > node.value.begin &&
             std::string_view(" \t").find(text_[node.value.end - 1]) != std::string_view::npos)
        --node.value.end;
      if (node.value.end == node.value.begin) good_ = false;
    }
    return node;
  }

  void list(Node& node) {
    node.kind = Node::Kind::list;
    ++at_;
    for (skip_all(); good_ && at_ < text_.size() && peek() != ']'; skip_all()) {
      node.children.push_back(value());
      skip_all();
      if (peek() == ',')
        node.children.back().comma = at_++;
      else if (peek() != ']')
        good_ = false;
    }
    take(']');
    node.value.end = at_;
  }

  void inline_table(Node& node) {
    node.kind = Node::Kind::inline_table;
    ++at_;
    for (skip_all(); good_ && at_ < text_.size() && peek() != '}'; skip_all()) {
      entry(node, true);
      skip_all();
      if (peek() == ',')
        ++at_;
      else if (peek() != '}')
        good_ = false;
    }
    take('}');
    node.value.end = at_;
  }

  static Node& child(Node& table, const std::string& key) {
    const auto found =
        std::find_if(table.children.begin(), table.children.end(), [&](const Node& each) { return each.key == key; });
    if (found != table.children.end()) return *found;
    table.children.emplace_back();
    table.children.back().key = key;
    return table.children.back();
  }

  /// `key = value`, or `a.b = value`, of a table.
  void entry(Node& table, bool in_line) {
    const std::vector<KeyPart> parts = key();
    const std::size_t equals = at_;
    if (!take('=')) return;
    skip_blanks();
    Node found = value();
    if (!good_) return;
    const Span whole{parts.front().span.begin, found.value.end};
    Node* at = &table;
    for (std::size_t i = 0; i + 1 < parts.size(); ++i) {
      at->last = whole, at->last_equals = equals;
      at = &child(*at, parts[i].key);
      at->kind = Node::Kind::table;
      at->in_line = in_line;
      at->prefix = text_.substr(whole.begin, parts[i + 1].span.begin - whole.begin);
    }
    at->last = whole, at->last_equals = equals;
    found.key = parts.back().key;
    found.entry = whole;
    found.equals = equals;
    at->children.push_back(std::move(found));
    if (table.section) table.section->end = line_end(text_, whole.end);
  }

  Node* heading(Node& root) {
    const Span line{at_, line_end(text_, at_)};
    const bool listed = peek(1) == '[';
    at_ += listed ? 2 : 1;
    const std::vector<KeyPart> parts = key();
    const bool closed = take(']') && (!listed || take(']'));
    Node* at = &root;
    for (std::size_t i = 0; closed && i < parts.size(); ++i) {
      const bool last = i + 1 == parts.size();
      at = &child(*at, parts[i].key);
      if (last && listed) {
        at->kind = Node::Kind::table_list;
        at->children.emplace_back();
        at = &at->children.back();
      } else if (at->kind == Node::Kind::table_list && !at->children.empty()) {
        at = &at->children.back();
      }
      at->kind = Node::Kind::table;
    }
    at->section = line;
    at->value = {line.begin, at_};
    return at;
  }

  std::string_view text_;
  std::size_t at_ = 0;
  bool good_ = true;
};

}  // namespace

std::optional<Node> spans(std::string_view text) {
  return Scanner(text).document();
}

std::size_t line_end(std::string_view text, std::size_t at) {
  std::size_t end = text.find('\n', at);
  if (end == std::string_view::npos) return text.size();
  if (end > at && text[end - 1] == '\r') --end;
  return end;
}

std::size_t line_begin(std::string_view text, std::size_t at) {
  if (at == 0) return 0;
  const std::size_t before = text.rfind('\n', at - 1);
  return before == std::string_view::npos ? (text.starts_with(mark) ? mark.size() : 0) : before + 1;
}

}  // namespace baywright::build
