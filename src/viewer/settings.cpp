#include "viewer/settings.h"

#include "output/file.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <system_error>

namespace baywright::viewer {

namespace {

/// The number of that name where there is one within the range; written so that NaN leaves `out` as it is.
template <typename Number>
void take(const nlohmann::json& from, const char* name, double low, double high, Number& out) {
  const auto found = from.find(name);
  if (found == from.end() || !found->is_number()) return;
  const double value = found->get<double>();
  if (value >= low && value <= high) out = static_cast<Number>(value);
}

void take(const nlohmann::json& from, const char* name, bool& out) {
  const auto found = from.find(name);
  if (found != from.end() && found->is_boolean()) out = found->get<bool>();
}

}  // namespace

Settings settings_in(std::string_view json) {
  Settings out;
  const nlohmann::json read = nlohmann::json::parse(json, nullptr, false);
  if (!read.is_object()) return out;
  take(read, "scale", least_scale, most_scale, out.scale);
  take(read, "dark", out.dark);
  take(read, "motion", out.motion);
  take(read, "column", 0.05, 0.9, out.fractions.column);
  take(read, "foot", 0.05, 0.9, out.fractions.foot);
  const auto recent = read.find("recent");
  if (recent != read.end() && recent->is_array())
    for (const nlohmann::json& file : *recent)
      if (file.is_string() && out.recent.size() < most_recent) out.recent.push_back(file.get<std::string>());
  return out;
}

std::string to_json(const Settings& settings) {
  const nlohmann::json out = {{"scale", settings.scale},         {"dark", settings.dark},
                              {"motion", settings.motion},       {"column", settings.fractions.column},
                              {"foot", settings.fractions.foot}, {"recent", settings.recent}};
  // A file name need not be UTF-8: what is not is replaced, never thrown at.
  return out.dump(2, ' ', false, nlohmann::json::error_handler_t::replace) + '\n';
}

double next_scale(double scale, int step) {
  constexpr std::array usual = {0.75, 0.875, 1.0, 1.125, 1.25, 1.5, 1.75, 2.0, 2.5, 3.0};
  if (step > 0) {
    const auto* next = std::find_if(usual.begin(), usual.end(), [&](double each) { return each > scale + 1e-6; });
    return next == usual.end() ? usual.back() : *next;
  }
  double smaller = usual.front();
  for (const double each : usual)
    if (each < scale - 1e-6) smaller = each;
  return smaller;
}

void remember(Settings& settings, const std::filesystem::path& file) {
  std::error_code error;
  const std::filesystem::path whole = std::filesystem::absolute(file, error);
  const std::string name = error ? file.string() : whole.lexically_normal().string();
  std::erase(settings.recent, name);
  settings.recent.insert(settings.recent.begin(), name);
  if (settings.recent.size() > most_recent) settings.recent.resize(most_recent);
}

std::optional<std::filesystem::path> settings_file() {
  const char* config = std::getenv("XDG_CONFIG_HOME");
  const char* home = std::getenv("HOME");
  std::filesystem::path folder;
  if (config != nullptr && *config == '/')  // the XDG base directory rule: relative ones are ignored
    folder = config;
  else if (home != nullptr && *home != '\0')
    folder = std::filesystem::path(home) / ".config";
  else
    return std::nullopt;
  return folder / "baywright" / "settings.json";
}

Settings read_settings() {
  const auto file = settings_file();
  if (!file) return {};
  std::ifstream in(*file, std::ios::binary);
  const std::string text{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
  return settings_in(text);
}

void write_settings(const Settings& settings) {
  const auto file = settings_file();
  if (!file) return;
  std::error_code error;
  std::filesystem::create_directories(file->parent_path(), error);
  if (!error) (void)output::write_file(file->string(), to_json(settings));
}

}  // namespace baywright::viewer
