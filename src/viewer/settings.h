#pragma once
// What the user chose once and finds again: kept in $XDG_CONFIG_HOME/baywright/settings.json.
#include "viewer/layout.h"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace baywright::viewer {

inline constexpr double least_scale = 0.75;
inline constexpr double most_scale = 3.0;
inline constexpr std::size_t most_recent = 8;

struct Settings {
  std::vector<std::string> recent;  // build files, the last opened first; absolute
  double scale = 1.0;               // the user's, least_scale..most_scale; the screen's own comes on top
  bool dark = false;
  bool motion = true;  // false: the camera jumps, and nothing plays by itself
  Fractions fractions;
};

/// What is no settings file, or holds values out of range, gives the usual values in their place: settings never keep
/// the window from opening.
[[nodiscard]] Settings settings_in(std::string_view json);
[[nodiscard]] std::string to_json(const Settings& settings);

/// The next larger (+1) or smaller (-1) usual scale.
[[nodiscard]] double next_scale(double scale, int step);

/// Puts the file first among the recent ones.
void remember(Settings& settings, const std::filesystem::path& file);

/// None where neither XDG_CONFIG_HOME nor HOME says where.
[[nodiscard]] std::optional<std::filesystem::path> settings_file();
[[nodiscard]] Settings read_settings();
/// Written whole or not at all; a folder that cannot be written loses the settings, nothing else.
void write_settings(const Settings& settings);

}  // namespace baywright::viewer
