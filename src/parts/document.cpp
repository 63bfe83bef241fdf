#include "parts/document.h"

#include "parts/stray_character.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <sstream>
#include <system_error>
#include <utility>

namespace baywright::parts {

namespace {

constexpr std::uintmax_t largest_file = 4u << 20;  // bytes; a build of a thousand parts is a tenth of it

[[noreturn]] void stop_file(const std::filesystem::path& path, const std::string& what, const std::string& right) {
  throw Stop{{path.string(), 0, 0, what, right}};
}

std::string in_quotes(std::string_view text) {
  std::string shown(text.substr(0, 60));
  if (text.size() > 60) shown += "...";
  return '"' + shown + '"';
}

/// Characters, not bytes: a UTF-8 continuation byte is no place of its own.
int characters(const std::string& text) {
  return static_cast<int>(std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

bool is_control(char c) {
  return static_cast<unsigned char>(c) < 0x20 || c == 0x7f;
}

std::string_view kind_of(const toml::node& node) {
  switch (node.type()) {
    case toml::node_type::table:
      return "a table";
    case toml::node_type::array:
      return "a list";
    case toml::node_type::string:
      return "text";
    case toml::node_type::integer:
      return "a whole number";
    case toml::node_type::floating_point:
      return "a number";
    case toml::node_type::boolean:
      return "true or false";
    default:
      return "a date or time";
  }
}

}  // namespace

std::string Fault::text() const {
  std::string out = file;
  if (line > 0) out += ':' + std::to_string(line);
  if (line > 0 && column > 0) out += ':' + std::to_string(column);
  out += ": " + what;
  if (!right.empty()) out += "; " + right;
  // What a file holds is quoted here: it must not break the line, nor reach the terminal as a command.
  std::replace_if(out.begin(), out.end(), is_control, ' ');
  return out;
}

std::string read_text_file(const std::filesystem::path& path) {
  std::error_code failed;
  const auto status = std::filesystem::status(path, failed);
  if (!std::filesystem::exists(status)) stop_file(path, "there is no such file", "give the path of an existing file");
  if (std::filesystem::is_directory(status)) stop_file(path, "this is a folder", "give a file inside it");
  const bool regular = std::filesystem::is_regular_file(status);
  const auto size = regular ? std::filesystem::file_size(path, failed) : 0;
  const auto too_large = [&](std::uintmax_t bytes) {
    stop_file(path, "the file has " + std::to_string(bytes >> 20) + " MB or more",
              "a build file has a few kB, 4 MB at the most");
  };
  if (size > largest_file) too_large(size);
  std::ifstream in(path, std::ios::binary);
  if (!in) stop_file(path, "the file cannot be read", "check its permissions");
  std::string text;
  char chunk[65536];
  while (in.read(chunk, sizeof chunk) || in.gcount() > 0) {
    text.append(chunk, static_cast<std::size_t>(in.gcount()));
    if (text.size() > largest_file) too_large(text.size());
  }
  if (text.find_first_not_of(" \t\r\n") == std::string::npos)
    stop_file(path, "the file is empty",
              path.extension() == ".csv"
                  ? "the first line of a list names its columns: name,use,bus,price (EUR),capacity"
                  : "`baywright new under-tray -o FILE` writes one to start from");
  if (text.find('\0') != std::string::npos)
    stop_file(path, "this is not text: it holds a NUL byte", "give a TOML file");
  return text;
}

toml::table parse_document(std::string_view text, const std::string& file) {
  if (const auto stray = stray_character(text))
    throw Stop{{file, stray->line, stray->column, stray->what, stray->right}};
  try {
    return toml::parse(text, file);
  } catch (const toml::parse_error& error) {
    const auto& at = error.source().begin;
    const std::string what(error.description());
    const bool comma = what.find("','") != std::string::npos;
    throw Stop{{file, static_cast<int>(at.line), static_cast<int>(at.column), what,
                comma ? "the file must be valid TOML: a decimal point, not a comma, and quotes around all but a figure"
                      : "the file must be valid TOML"}};
  }
}

Fields::Fields(const toml::table& table, std::string file, std::string what_it_is)
    : table_(&table),
      file_(std::move(file)),
      what_(std::move(what_it_is)),
      line_(static_cast<int>(table.source().begin.line)),
      column_(static_cast<int>(table.source().begin.column)) {}

const toml::node* Fields::find(std::string_view key) {
  known_.insert(std::string(key));
  return table_->get(key);
}

const toml::node& Fields::need(std::string_view key) {
  const toml::node* node = find(key);
  if (node == nullptr) {
    finish();  // a misspelt key is the better message
    stop_here(what_ + " has no `" + std::string(key) + '`', "add `" + std::string(key) + " = ...`");
  }
  return *node;
}

void Fields::knows(std::initializer_list<std::string_view> keys) {
  for (const std::string_view key : keys) known_.insert(std::string(key));
}

bool Fields::has(std::string_view key) {
  return find(key) != nullptr;
}

bool Fields::is_table(std::string_view key) {
  const toml::node* node = find(key);
  return node != nullptr && node->is_table();
}

bool Fields::is_text(std::string_view key) {
  const toml::node* node = find(key);
  return node != nullptr && node->is_string();
}

std::optional<std::string> Fields::one_line(const toml::node& node, std::string_view key) const {
  const auto* value = node.as_string();
  if (value == nullptr) return std::nullopt;
  const std::string& text = value->get();
  if (text.find_first_not_of(" \t\r\n") == std::string::npos)
    stop_at(node, '`' + std::string(key) + "` is empty", "it must have a text");
  if (std::any_of(text.begin(), text.end(), is_control))
    stop_at(node, '`' + std::string(key) + "` holds a line break or another control character",
            "it must be one line of plain text");
  return text;
}

std::string Fields::text(std::string_view key) {
  const toml::node& node = need(key);
  auto text = one_line(node, key);
  if (!text) stop_at(node, '`' + std::string(key) + "` is " + std::string(kind_of(node)), "it must be text in quotes");
  return std::move(*text);
}

std::optional<std::string> Fields::maybe_text(std::string_view key) {
  if (!has(key)) return std::nullopt;
  return text(key);
}

bool Fields::flag(std::string_view key, bool otherwise) {
  const toml::node* node = find(key);
  if (node == nullptr) return otherwise;
  const auto* value = node->as_boolean();
  if (value == nullptr)
    stop_at(*node, '`' + std::string(key) + "` is " + std::string(kind_of(*node)), "it must be true or false");
  return value->get();
}

double Fields::finite(const toml::node& node, std::string_view key) const {
  const auto value = node.value<double>();
  if (!node.is_number() || !value)
    stop_at(node, '`' + std::string(key) + "` holds " + std::string(kind_of(node)), "it must be a number");
  if (!(std::abs(*value) <= 1e5))  // NaN too
    stop_at(node, '`' + std::string(key) + "` is not a usable figure",
            "a figure must lie within -100000 and 100000 mm");
  return *value;
}

double Fields::number(std::string_view key) {
  return finite(need(key), key);
}

std::optional<double> Fields::maybe_number(std::string_view key) {
  if (!has(key)) return std::nullopt;
  return number(key);
}

int Fields::count(std::string_view key, int least, int most) {
  const toml::node& node = need(key);
  const auto* value = node.as_integer();
  const std::string right = "it must be a whole number from " + std::to_string(least) + " to " + std::to_string(most);
  if (value == nullptr) stop_at(node, '`' + std::string(key) + "` is " + std::string(kind_of(node)), right);
  if (value->get() < least || value->get() > most)
    stop_at(node, '`' + std::string(key) + "` is " + std::to_string(value->get()), right);
  return static_cast<int>(value->get());
}

std::string Fields::owner(const std::string& name) const {
  const auto* given = table_->get("name");
  const auto* text = given == nullptr ? nullptr : given->as_string();
  if (text == nullptr || text->get().empty() || name.find(text->get()) != std::string::npos) return {};
  return " of `" + text->get() + '`';
}

double Fields::answer_to(const toml::node& node, const std::string& name, Question* question) const {
  if (question == nullptr)
    stop_at(node, '`' + name + "` is \"?\"", "only a measured length of a build can be asked for: give this one");
  if (!question->name.empty())
    stop_at(node,
            '`' + name + '`' + owner(name) + " is a second \"?\", beside `" + question->name + '`' + question->owner,
            "one length at a time has an answer: give the other one as measured");
  question->name = name;
  question->owner = owner(name) + " in line " + std::to_string(node.source().begin.line);
  return question->answer;
}

GivenLength Fields::length_of(const toml::node& node, const std::string& name, const Measuring& measuring,
                              double least) const {
  GivenLength given;
  given.line = static_cast<int>(node.source().begin.line);
  given.column = static_cast<int>(node.source().begin.column);
  given.dimension.name = name;
  given.dimension.known = tolerance::Known::measured;
  bool limits_given = false;
  if (const auto* nested = node.as_table()) {
    Fields fields(*nested, file_, "this length");
    fields.knows({"length", "source", "known", "uniform"});
    const toml::node& inner = fields.need("length");
    if (inner.is_table()) stop_at(inner, "a length inside a length", "write a number or a text");
    given = length_of(inner, name, measuring, least);
    if (auto source = fields.maybe_text("source")) {
      const bool exact = is_taken_as_exact(given.dimension);  // whoever measured it gave no limits
      given.dimension.source = exact ? *source + ", " + std::string(taken_as_exact) : *source;
    }
    given.dimension.uniform = fields.flag("uniform", false);
    if (auto known = fields.maybe_text("known")) {
      using tolerance::Known;
      const std::vector<Known> kinds = {Known::read,   Known::secondary, Known::practice,
                                        Known::memory, Known::measured,  Known::derived};
      const auto found =
          std::find_if(kinds.begin(), kinds.end(), [&](Known k) { return tolerance::word(k) == *known; });
      if (found == kinds.end())
        fields.stop("known", "`known = " + in_quotes(*known) + "` is no way of knowing",
                    "it must be read, secondary, practice, memory, measured or derived");
      given.dimension.known = *found;
    }
    fields.finish();
    return given;
  }
  if (const auto* written = node.as_string()) {
    if (written->get() == "?") {
      given.dimension.asked = true;
      given.dimension.nominal = answer_to(node, name, measuring.question);
    } else {
      const auto reading = tolerance::read_length(written->get());
      if (const auto* misread = std::get_if<tolerance::Misread>(&reading)) {
        // + 1 for the quote mark in front of the text
        throw Stop{{file_, given.line, given.column + 1 + characters(written->get().substr(0, misread->at)),
                    "the length " + in_quotes(written->get()) + ": " + misread->what, misread->right}};
      }
      const auto& length = std::get<tolerance::Length>(reading);
      given.dimension.nominal = length.nominal;
      given.dimension.minus = length.minus;
      given.dimension.plus = length.plus;
      limits_given = length.limits_given;
    }
  } else if (node.is_number()) {
    given.dimension.nominal = finite(node, name);
  } else {
    stop_at(node, "the length `" + name + "` is " + std::string(kind_of(node)),
            "write a number in mm, or a text such as \"9.1 ±0.2\", \"3/8 in\" or \"max 1.5\"");
  }
  if (!(given.dimension.nominal >= least))
    stop_at(node, "the length `" + name + "` is " + tolerance::in_words(given.dimension.nominal) + " mm",
            least > 0.0 ? "it must be more than nothing" : "it must not be negative");
  // A size that some build could have at zero or below is no solid there; an open lower side says nothing of it.
  if (least > 0.0 && given.dimension.minus != tolerance::open_side && !(given.dimension.low() > 0.0))
    stop_at(node, "the length `" + name + "` may come out at " + tolerance::in_words(given.dimension.low()) + " mm",
            "its lower limit must be more than nothing");
  if (!limits_given) {
    given.dimension.minus = given.dimension.plus =
        least > 0.0 ? std::min(measuring.limit, 0.5 * given.dimension.nominal) : measuring.limit;
    const bool exact = measuring.limit == 0.0 && measuring.source.empty();
    given.dimension.source = exact ? std::string(taken_as_exact) : measuring.source;
  }
  return given;
}

GivenLength Fields::length(std::string_view key, const std::string& name, const Measuring& measuring, double least) {
  return length_of(need(key), name, measuring, least);
}

std::optional<GivenLength> Fields::maybe_length(std::string_view key, const std::string& name,
                                                const Measuring& measuring, double least) {
  if (!has(key)) return std::nullopt;
  return length(key, name, measuring, least);
}

const toml::array& Fields::list(std::string_view key) {
  const toml::node& node = need(key);
  const auto* array = node.as_array();
  if (array == nullptr)
    stop_at(node, '`' + std::string(key) + "` is " + std::string(kind_of(node)), "it must be a list in [ ]");
  return *array;
}

std::vector<GivenLength> Fields::lengths(std::string_view key, const std::vector<std::string>& names,
                                         const Measuring& measuring, double least) {
  const toml::array& array = list(key);
  if (array.size() != names.size())
    stop_at(array, '`' + std::string(key) + "` has " + std::to_string(array.size()) + " figures",
            "it must have " + std::to_string(names.size()));
  std::vector<GivenLength> out;
  for (std::size_t i = 0; i < names.size(); ++i) out.push_back(length_of(*array.get(i), names[i], measuring, least));
  return out;
}

std::vector<double> Fields::numbers(std::string_view key, std::size_t size) {
  const toml::array& array = list(key);
  if (array.size() != size)
    stop_at(array, '`' + std::string(key) + "` has " + std::to_string(array.size()) + " figures",
            "it must have " + std::to_string(size));
  std::vector<double> out;
  for (const toml::node& node : array) out.push_back(finite(node, key));
  return out;
}

std::vector<double> Fields::numbers(std::string_view key) {
  std::vector<double> out;
  for (const toml::node& node : list(key)) out.push_back(finite(node, key));
  return out;
}

std::vector<int> Fields::integers(std::string_view key) {
  std::vector<int> out;
  for (const toml::node& node : list(key)) {
    const auto* value = node.as_integer();
    if (value == nullptr || value->get() < 0 || value->get() > 1'000'000)
      stop_at(node, '`' + std::string(key) + "` holds " + std::string(kind_of(node)), "it must list whole numbers");
    out.push_back(static_cast<int>(value->get()));
  }
  return out;
}

std::vector<std::string> Fields::texts(std::string_view key) {
  const toml::node& node = need(key);
  if (node.is_string()) return {text(key)};
  std::vector<std::string> out;
  for (const toml::node& item : list(key)) {
    auto text = one_line(item, key);
    if (!text)
      stop_at(item, '`' + std::string(key) + "` holds " + std::string(kind_of(item)), "it must list texts in quotes");
    out.push_back(std::move(*text));
  }
  return out;
}

namespace {

/// `what` they are: "an outline", with the least number of points it has.
std::vector<geometry::Vec2> points_of(const toml::node& node, const std::string& file, const std::string& what,
                                      std::size_t least, const std::string& right) {
  const auto refuse = [&](const toml::node& at, const std::string& fault) {
    throw Stop{
        {file, static_cast<int>(at.source().begin.line), static_cast<int>(at.source().begin.column), fault, right}};
  };
  const auto* array = node.as_array();
  if (array == nullptr) refuse(node, what + " is " + std::string(kind_of(node)));
  std::vector<geometry::Vec2> out;
  for (const toml::node& item : *array) {
    const auto* point = item.as_array();
    if (point == nullptr || point->size() != 2) {
      refuse(item, "a point of " + what + " is not a pair");
    } else {
      const auto x = point->get(0)->value<double>();
      const auto y = point->get(1)->value<double>();
      if (!x || !y || !(std::abs(*x) <= 1e5) || !(std::abs(*y) <= 1e5))
        refuse(item, "a point of " + what + " is not a usable pair of figures");
      out.emplace_back(x.value_or(0.0), y.value_or(0.0));
    }
  }
  if (out.size() < least) refuse(node, what + " has " + std::to_string(out.size()) + " points");
  return out;
}

geometry::Outline outline_of(const toml::node& node, const std::string& file) {
  return points_of(node, file, "an outline", 3, "an outline is a list of at least three points [x, y] in mm");
}

}  // namespace

std::vector<geometry::Vec2> Fields::points(std::string_view key) {
  return outline_of(list(key), file_);
}

std::vector<geometry::Vec2> Fields::pairs(std::string_view key) {
  return points_of(list(key), file_, "this list", 0, "it must list pairs [a, b] in mm");
}

std::vector<std::vector<geometry::Vec2>> Fields::point_lists(std::string_view key) {
  std::vector<std::vector<geometry::Vec2>> out;
  for (const toml::node& node : list(key)) out.push_back(outline_of(node, file_));
  return out;
}

Fields Fields::table(std::string_view key, const std::string& what_it_is) {
  const toml::node& node = need(key);
  const auto* nested = node.as_table();
  if (nested == nullptr)
    stop_at(node, '`' + std::string(key) + "` is " + std::string(kind_of(node)), "it must be a table { ... }");
  return {*nested, file_, what_it_is};
}

std::optional<Fields> Fields::maybe_table(std::string_view key, const std::string& what_it_is) {
  if (!has(key)) return std::nullopt;
  return table(key, what_it_is);
}

std::vector<Fields> Fields::tables(std::string_view key, const std::string& what_it_is) {
  std::vector<Fields> out;
  if (!has(key)) return out;
  if (is_table(key))
    stop(key, '`' + std::string(key) + "` is one table",
         "write [[" + std::string(key) + "]], with two brackets each side");
  for (const toml::node& node : list(key)) {
    const auto* nested = node.as_table();
    if (nested == nullptr)
      stop_at(node, '`' + std::string(key) + "` holds " + std::string(kind_of(node)),
              "each entry must be a table, as after [[" + std::string(key) + "]]");
    out.emplace_back(*nested, file_, what_it_is);
  }
  return out;
}

void Fields::finish() const {
  for (const auto& [key, node] : *table_) {
    if (known_.contains(key.str())) continue;
    const std::vector<std::string> known(known_.begin(), known_.end());
    const std::string meant = nearest(key.str(), known);
    throw Stop{{file_, static_cast<int>(key.source().begin.line), static_cast<int>(key.source().begin.column),
                what_ + " knows no key `" + std::string(key.str()) + '`',
                meant.empty() ? "known keys: " + any_of(known) : "did you mean `" + meant + "`?"}};
  }
}

int Fields::line(std::string_view key) const {
  const toml::node* node = table_->get(key);
  return node == nullptr ? line_ : static_cast<int>(node->source().begin.line);
}

void Fields::stop_at(const toml::node& node, const std::string& what, const std::string& right) const {
  throw Stop{
      {file_, static_cast<int>(node.source().begin.line), static_cast<int>(node.source().begin.column), what, right}};
}

void Fields::stop(std::string_view key, const std::string& what, const std::string& right) const {
  const toml::node* node = table_->get(key);
  if (node == nullptr) stop_here(what, right);
  stop_at(*node, what, right);
}

void Fields::stop_here(const std::string& what, const std::string& right) const {
  throw Stop{{file_, line_, column_, what, right}};
}

}  // namespace baywright::parts
