#pragma once
// Runs the program as users do, from a folder of its own.
#include <filesystem>
#include <string>
#include <vector>

namespace baywright::test {

struct Run {
  int status = -1;  // exit status; -1: it was ended by a signal or did not start, -2: killed after 60 s
  std::string out;
  std::string err;
};

/// A folder that is there as long as this object.
class Folder {
 public:
  Folder();
  ~Folder();
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;

  [[nodiscard]] const std::filesystem::path& path() const { return path_; }
  void write(const std::string& name, const std::string& content) const;
  [[nodiscard]] std::string read(const std::string& name) const;
  [[nodiscard]] std::vector<std::string> names() const;  // what is in it, sorted

  /// `baywright` with these arguments, in this folder. `out`: a file or device that takes standard output instead.
  [[nodiscard]] Run run(const std::vector<std::string>& arguments, const std::string& out = {}) const;
  /// Any program, by its path.
  [[nodiscard]] Run spawn(const std::string& program, const std::vector<std::string>& arguments,
                          const std::string& out = {}) const;

 private:
  std::filesystem::path path_;
};

/// A file of the source folder, as "models/builds/tower.build.toml".
[[nodiscard]] std::filesystem::path source_path(const std::string& name);
[[nodiscard]] std::string source_text(const std::string& name);

/// `text` with `old` replaced, which must be in it once.
[[nodiscard]] std::string with(std::string text, const std::string& old, const std::string& fresh);

[[nodiscard]] std::vector<std::string> lines(const std::string& text);

/// What every refusal is: this exit status, one line on standard error that begins with `place` and holds `says`, and
/// nothing on standard output.
void check_refused(const Run& run, int status, const std::string& place, const std::string& says);

}  // namespace baywright::test
