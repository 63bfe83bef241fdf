#pragma once
// A short list of what can be opened: recent files, and those of a folder.
#include "viewer/session.h"
#include "viewer/ui.h"

#include <filesystem>
#include <string>
#include <vector>

namespace baywright::viewer {

class OpenPane {
 public:
  void draw(Ui& ui, Session& session, const Rectangle& screen);
  void closed() { open_ = false; }  // the lists are read anew when it is opened

 private:
  void enter(const Session& session, const std::filesystem::path& folder);

  bool open_ = false;
  std::filesystem::path folder_;
  std::vector<std::string> recent_;
  std::vector<std::string> here_;
  std::size_t first_ = 0;
};

}  // namespace baywright::viewer
