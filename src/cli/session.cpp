#include "cli/session.h"

#include "parts/naming.h"

#include <cerrno>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <iostream>
#include <system_error>
#include <unistd.h>
#include <vector>

namespace baywright::cli {

namespace {

bool named(const std::string& asked, const char* option, const std::vector<std::string>& known,
           const std::string& file) {
  if (asked.empty()) return true;
  for (const std::string& name : known)
    if (name == asked) return true;
  const std::string meant = parts::nearest(asked, known);
  std::cerr << file << ": there is no " << option << " `" << asked << "`; "
            << (meant.empty() ? "it has " + parts::any_of(known) : "did you mean `" + meant + "`?") << '\n';
  return false;
}

bool failed(const std::string& path, const std::string& doing) {
  std::cerr << "baywright: " << path << ": " << doing << " failed: " << std::strerror(errno) << '\n';
  return false;
}

/// One line on the terminal that is written over, and wiped in the end.
class Progress {
 public:
  void operator()(std::int64_t done, std::int64_t of) {
    const auto now = Clock::now();
    if (done < last_ || last_ == 0) started_ = now;  // the next seating
    last_ = done;
    if (done < of && now - started_ > std::chrono::seconds(1) && now - shown_ > std::chrono::milliseconds(250)) {
      const double seconds = std::chrono::duration<double>(now - started_).count();
      const double left = seconds * static_cast<double>(of - done) / static_cast<double>(done);
      std::fprintf(stderr, "\r%3.0f %% of %lld builds drawn, %.0f s left ",
                   100.0 * static_cast<double>(done) / static_cast<double>(of), static_cast<long long>(of),
                   std::ceil(left));
      shown_ = now;
      written_ = true;
    }
    if (done == of && written_) {
      std::fputs("\r\x1b[K", stderr);
      written_ = false;
      last_ = 0;
    }
  }

 private:
  using Clock = std::chrono::steady_clock;
  Clock::time_point started_{};
  Clock::time_point shown_{};
  std::int64_t last_ = 0;
  bool written_ = false;
};

}  // namespace

std::optional<build::Build> read_build(const Arguments& arguments) {
  auto read = build::read(arguments.file);
  if (const auto* fault = std::get_if<parts::Fault>(&read)) {
    std::cerr << fault->text() << '\n';
    return std::nullopt;
  }
  build::Build build = std::get<build::Build>(std::move(read));
  std::vector<std::string> drives;
  std::vector<std::string> places;
  for (const build::Drive& drive : build.drives) drives.push_back(drive.name);
  for (const build::Place& slot : build.places) places.push_back(slot.name);
  if (!named(arguments.drive, "drive", drives, arguments.file)) return std::nullopt;
  if (!named(arguments.place, "place", places, arguments.file)) return std::nullopt;
  return build;
}

fit::Options options_of(const Arguments& arguments) {
  fit::Options options;
  options.clearance = arguments.clearance;
  if (arguments.method == "worst") options.method = tolerance::Method::worst;
  if (arguments.method == "rss") options.method = tolerance::Method::rss;
  if (arguments.method == "sampled") options.method = tolerance::Method::sampled;
  if (arguments.builds) options.sampling.builds = *arguments.builds;
  if (arguments.seed) options.sampling.seed = static_cast<std::uint64_t>(*arguments.seed);
  if (arguments.threads) options.threads = *arguments.threads;
  if (::isatty(2) == 1) options.progress = Progress();
  options.drive = arguments.drive;
  options.place = arguments.place;
  return options;
}

bool print(const std::string& text) {
  std::fwrite(text.data(), 1, text.size(), stdout);
  if (std::fflush(stdout) == 0 && std::ferror(stdout) == 0) return true;
  return failed("standard output", "writing");
}

bool write_whole(const std::string& path, const std::string& content) {
  if (path == "-") return print(content);
  const std::filesystem::path target(path);
  if (std::filesystem::is_directory(target)) {
    std::cerr << "baywright: " << path << ": this is a folder; name a file in it\n";
    return false;
  }
  const std::string temporary = path + ".part" + std::to_string(::getpid());
  std::FILE* file = std::fopen(temporary.c_str(), "wb");
  if (file == nullptr) return failed(path, "opening for writing");
  const bool written = std::fwrite(content.data(), 1, content.size(), file) == content.size() &&
                       std::fflush(file) == 0 && ::fsync(::fileno(file)) == 0;
  const int why = errno;
  const bool closed = std::fclose(file) == 0;
  std::error_code error;
  if (written && closed) std::filesystem::rename(temporary, target, error);
  if (written && closed && !error) return true;
  if (!written) errno = why;
  if (error) errno = error.value();
  failed(path, "writing");
  std::filesystem::remove(temporary, error);
  return false;
}

}  // namespace baywright::cli
