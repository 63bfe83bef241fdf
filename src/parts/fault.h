#pragma once
// What is wrong with an input file, and where: FILE:LINE:COL: what; what would be right.
#include <string>

namespace baywright::parts {

struct Fault {
  std::string file;
  int line = 0;    // from 1; 0: the file as a whole
  int column = 0;  // from 1, in characters; 0: the whole line
  std::string what;
  std::string right;  // what would be right; may be empty where `what` says it all

  [[nodiscard]] std::string text() const;
};

}  // namespace baywright::parts
