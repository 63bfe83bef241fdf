#include "commands/run.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <doctest/doctest.h>
#include <fcntl.h>
#include <fstream>
#include <spawn.h>
#include <sstream>
#include <stdexcept>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace baywright::test {

namespace {

std::string text_of(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

int wait_for(pid_t child) {
  const auto deadline = std::chrono::steady_clock::now() + std::chrono::seconds(60);
  int how = 0;
  while (::waitpid(child, &how, WNOHANG) == 0) {
    if (std::chrono::steady_clock::now() > deadline) {
      ::kill(child, SIGKILL);
      ::waitpid(child, &how, 0);
      return -2;
    }
    std::this_thread::sleep_for(std::chrono::milliseconds(2));
  }
  return WIFEXITED(how) ? WEXITSTATUS(how) : -1;
}

}  // namespace

Folder::Folder() {
  std::string name = (std::filesystem::temp_directory_path() / "baywright-test-XXXXXX").string();
  if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("no folder for the test: " + name);
  path_ = name;
}

Folder::~Folder() {
  std::error_code failed;
  std::filesystem::remove_all(path_, failed);
}

void Folder::write(const std::string& name, const std::string& content) const {
  std::ofstream(path_ / name, std::ios::binary) << content;
}

std::string Folder::read(const std::string& name) const {
  return text_of(path_ / name);
}

std::vector<std::string> Folder::names() const {
  std::vector<std::string> out;
  for (const auto& entry : std::filesystem::directory_iterator(path_)) out.push_back(entry.path().filename().string());
  std::sort(out.begin(), out.end());
  return out;
}

Run Folder::spawn(const std::string& program, const std::vector<std::string>& arguments, const std::string& out) const {
  const Folder streams;
  const std::string out_file = out.empty() ? (streams.path() / "out").string() : out;
  const std::string err_file = (streams.path() / "err").string();
  posix_spawn_file_actions_t actions;
  ::posix_spawn_file_actions_init(&actions);
  ::posix_spawn_file_actions_addopen(&actions, 0, "/dev/null", O_RDONLY, 0);
  ::posix_spawn_file_actions_addopen(&actions, 1, out_file.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
  ::posix_spawn_file_actions_addopen(&actions, 2, err_file.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
  ::posix_spawn_file_actions_addchdir_np(&actions, path_.c_str());
  std::vector<std::string> all = {program};
  all.insert(all.end(), arguments.begin(), arguments.end());
  std::vector<char*> values;
  for (std::string& each : all) values.push_back(each.data());
  values.push_back(nullptr);
  pid_t child = 0;
  Run run;
  if (::posix_spawn(&child, program.c_str(), &actions, nullptr, values.data(), environ) == 0)
    run.status = wait_for(child);
  ::posix_spawn_file_actions_destroy(&actions);
  if (out.empty()) run.out = text_of(out_file);
  run.err = text_of(err_file);
  return run;
}

Run Folder::run(const std::vector<std::string>& arguments, const std::string& out) const {
  return spawn(BAYWRIGHT_PROGRAM, arguments, out);
}

std::filesystem::path source_path(const std::string& name) {
  return std::filesystem::path(BAYWRIGHT_SOURCE) / name;
}

std::string source_text(const std::string& name) {
  std::string text = text_of(source_path(name));
  REQUIRE_MESSAGE(!text.empty(), name << " is missing or empty");
  return text;
}

std::string with(std::string text, const std::string& old, const std::string& fresh) {
  const std::size_t at = text.find(old);
  REQUIRE_MESSAGE(at != std::string::npos, "not in the text: " << old);
  REQUIRE_MESSAGE(text.find(old, at + 1) == std::string::npos, "more than once in the text: " << old);
  return text.replace(at, old.size(), fresh);
}

std::vector<std::string> lines(const std::string& text) {
  std::vector<std::string> out;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) out.push_back(line);
  return out;
}

void check_refused(const Run& run, int status, const std::string& place, const std::string& says) {
  CAPTURE(run.err);
  CHECK(run.status == status);
  CHECK(run.out == "");
  CHECK(lines(run.err).size() == 1);
  CHECK(run.err.starts_with(place));
  CHECK(run.err.find(says) != std::string::npos);
}

}  // namespace baywright::test
