#pragma once
// The file that a survey writes: whole lines only, carried on where it was left.
#include <cstdio>
#include <fstream>
#include <memory>
#include <string>

namespace baywright::cli {

class SurveyFile {
 public:
  /// "": nothing is kept; "-": standard output. Else the file is made, or carried on: a last line without an end is cut
  /// off. Prints what went wrong; none then.
  [[nodiscard]] static std::unique_ptr<SurveyFile> open(const std::string& path);
  ~SurveyFile();
  SurveyFile(const SurveyFile&) = delete;
  SurveyFile& operator=(const SurveyFile&) = delete;

  /// The next line that was there already, without its end; false when there is none left.
  [[nodiscard]] bool next_old(std::string& line);
  [[nodiscard]] long lines_read() const { return lines_; }

  /// Lines with their ends, in one go. Prints what went wrong and returns false.
  [[nodiscard]] bool add(const std::string& lines);

 private:
  SurveyFile() = default;
  std::string path_;
  int file_ = -1;
  std::ifstream old_;
  long lines_ = 0;
};

}  // namespace baywright::cli
