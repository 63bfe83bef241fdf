#pragma once
// Changes to a build file's text, in the spans that they name and nowhere else: the user's comments, order and layout
// stay as they are.
#include "parts/fault.h"

#include <filesystem>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace baywright::build {

/// Which value of a build file: keys from the top of the document. A list's entry is named by its place, from 0; an
/// entry of a table list ([[part]], [[slot]], [[drive]] ...) may be named by its `name` instead:
/// {"drive", "fast card", "wears", 1, "heatsink"}, {"part", "tray", "under", "by"}, {"clearance"}.
using Key = std::variant<std::string, int>;
using Path = std::vector<Key>;

struct Edit {
  enum class What {
    set,     // `value` replaces what is there, a table with a heading of its own too, whose comment lines stay; a key
             // that is not there yet is added at the end of its table
    remove,  // the key with its value, a list's entry, or the whole [[table]] with the comment lines right above it
    append,  // `value` becomes a list's last entry; on a table list (path {"drive"}) `value` is the lines of a new
             // table without its heading, or an inline table, put behind the last of its kind, else at the end of the
             // file
  };
  What what = What::set;
  Path path;
  std::string value{};  // TOML: "9.6", "\"9.6 ±0.2\"", "{ length = 9.6, source = \"caliper\" }"
};

/// The text with the edits made, in order. Refused, with nothing changed: text that is no TOML, a path that leads
/// nowhere (its fault says how far it led), a value that is no TOML. The new text is not read as a build: `read_text`
/// does that. `file` is what messages name.
[[nodiscard]] std::variant<std::string, parts::Fault> edited(std::string_view text, std::span<const Edit> edits,
                                                             const std::filesystem::path& file);

/// A file's text, to be edited and read with `read_text`. Faults as `read` has them.
[[nodiscard]] std::variant<std::string, parts::Fault> file_text(const std::filesystem::path& file);

/// The path of the value that begins at this place (as messages and `GivenLength` count it: from 1, in characters);
/// none: no value begins there. The entries of lists are named by number. `tree`: the spans of `text`.
struct Node;
[[nodiscard]] std::optional<Path> path_at(const Node& tree, std::string_view text, int line, int column);
/// What a path leads to; null: it leads nowhere.
[[nodiscard]] const Node* node_at(const Node& tree, const Path& path);

/// A length as a file would say it, to a thousandth (limits to a millionth): "9.6", "9.6 ±0.2", "9.6 +0.3 -0",
/// "max 1.35", "min 3". With its quotes. Both limits 0: none are written, and those of `measured_with` count.
[[nodiscard]] std::string length_text(double nominal, double minus, double plus);
/// Text in quotes, with what TOML wants escaped.
[[nodiscard]] std::string quoted(std::string_view text);

}  // namespace baywright::build
