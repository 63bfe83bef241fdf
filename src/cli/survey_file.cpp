#include "cli/survey_file.h"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <filesystem>
#include <iostream>
#include <sys/file.h>
#include <system_error>
#include <unistd.h>

namespace baywright::cli {

namespace {

std::unique_ptr<SurveyFile> failed(const std::string& path, const std::string& what) {
  std::cerr << "baywright: " << path << ": " << what << '\n';
  return nullptr;
}

/// Where the last whole line ends.
std::uintmax_t whole_lines(const std::string& path, std::uintmax_t size) {
  std::ifstream in(path, std::ios::binary);
  constexpr std::uintmax_t step = 65536;
  std::string piece;
  for (std::uintmax_t end = size; end > 0;) {
    const std::uintmax_t begin = end > step ? end - step : 0;
    piece.resize(static_cast<std::size_t>(end - begin));
    in.seekg(static_cast<std::streamoff>(begin));
    in.read(piece.data(), static_cast<std::streamsize>(piece.size()));
    const std::size_t at = piece.rfind('\n');
    if (at != std::string::npos) return begin + at + 1;
    end = begin;
  }
  return 0;
}

}  // namespace

std::unique_ptr<SurveyFile> SurveyFile::open(const std::string& path) {
  std::unique_ptr<SurveyFile> out(new SurveyFile);
  out->path_ = path;
  if (path.empty()) return out;
  if (path == "-") {
    out->file_ = STDOUT_FILENO;
    return out;
  }
  std::error_code error;
  if (std::filesystem::is_directory(path, error)) return failed(path, "this is a folder; name a file in it");
  out->file_ = ::open(path.c_str(), O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0666);
  if (out->file_ < 0) return failed(path, std::string("opening for writing failed: ") + std::strerror(errno));
  if (::flock(out->file_, LOCK_EX | LOCK_NB) != 0)
    return failed(path, "another survey is writing this file; give each --shard a file of its own");
  const std::uintmax_t size = std::filesystem::file_size(path, error);
  if (error || size == 0) return out;
  const std::uintmax_t whole = whole_lines(path, size);
  if (whole < size && ::ftruncate(out->file_, static_cast<off_t>(whole)) != 0)
    return failed(path, std::string("cutting off the torn last line failed: ") + std::strerror(errno));
  out->old_.open(path, std::ios::binary);
  return out;
}

SurveyFile::~SurveyFile() {
  if (file_ > STDERR_FILENO) ::close(file_);
}

bool SurveyFile::next_old(std::string& line) {
  if (!old_.is_open()) return false;
  if (std::getline(old_, line)) {
    ++lines_;
    return true;
  }
  old_.close();
  return false;
}

bool SurveyFile::add(const std::string& lines) {
  if (file_ < 0) return true;
  for (std::size_t done = 0; done < lines.size();) {
    const auto wrote = ::write(file_, lines.data() + done, lines.size() - done);
    if (wrote < 0 && errno == EINTR) continue;  // an interrupt waits until the lines are whole
    if (wrote < 0) {
      std::cerr << "baywright: " << (path_ == "-" ? "standard output" : path_)
                << ": writing failed: " << std::strerror(errno) << '\n';
      return false;
    }
    done += static_cast<std::size_t>(wrote);
  }
  return true;
}

}  // namespace baywright::cli
