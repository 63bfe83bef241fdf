#include "viewer/openable.h"

#include <algorithm>
#include <system_error>

namespace baywright::viewer {

namespace {

bool openable(const std::string& name) {
  return name.ends_with(".csv") || (name.ends_with(".toml") && !name.ends_with(".part.toml"));
}

}  // namespace

std::vector<std::string> openable_in(const std::filesystem::path& folder) {
  constexpr std::size_t most = 200;
  std::vector<std::string> folders;
  std::vector<std::string> files;
  std::error_code error;
  std::filesystem::directory_iterator at(folder, error);
  for (; !error && at != std::filesystem::directory_iterator() && folders.size() + files.size() < 10 * most;
       at.increment(error)) {
    std::error_code unreadable;
    const std::string name = at->path().filename().string();
    if (name.starts_with('.')) continue;
    if (at->is_directory(unreadable))
      folders.push_back(name + '/');
    else if (openable(name) && at->is_regular_file(unreadable))
      files.push_back(name);
  }
  std::sort(files.begin(), files.end());
  std::sort(folders.begin(), folders.end());
  files.emplace_back("..");
  files.insert(files.end(), folders.begin(), folders.end());
  if (files.size() > most) files.resize(most);
  return files;
}

std::vector<std::string> still_there(const std::vector<std::string>& files) {
  std::vector<std::string> out;
  std::error_code error;
  for (const std::string& file : files)
    if (std::filesystem::is_regular_file(file, error)) out.push_back(file);
  return out;
}

}  // namespace baywright::viewer
