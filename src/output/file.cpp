#include "output/file.h"

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <system_error>
#include <unistd.h>

namespace baywright::output {

namespace {

std::string failed(const std::string& path, const std::string& doing, int why) {
  return path + ": " + doing + " failed: " + std::strerror(why);
}

}  // namespace

std::optional<std::string> write_file(const std::string& path, const std::string& content) {
  const std::filesystem::path target(path);
  std::error_code error;
  if (std::filesystem::is_directory(target, error)) return path + ": this is a folder; name a file in it";
  const std::string temporary = path + ".part" + std::to_string(::getpid());
  std::FILE* file = std::fopen(temporary.c_str(), "wb");
  if (file == nullptr) return failed(path, "opening for writing", errno);
  const bool written = std::fwrite(content.data(), 1, content.size(), file) == content.size() &&
                       std::fflush(file) == 0 && ::fsync(::fileno(file)) == 0;
  int why = errno;
  const bool closed = std::fclose(file) == 0;
  if (written && !closed) why = errno;
  error.clear();
  if (written && closed) std::filesystem::rename(temporary, target, error);
  if (written && closed && !error) return std::nullopt;
  if (error) why = error.value();
  std::filesystem::remove(temporary, error);
  return failed(path, "writing", why);
}

}  // namespace baywright::output
