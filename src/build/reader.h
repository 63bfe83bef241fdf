#pragma once
// Inside the build room: what the readers of parts, slots and drives share.
#include "build/build.h"
#include "parts/document.h"

#include <filesystem>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace baywright::build {

/// The least length of something that must have one, mm.
inline constexpr double some = 1e-6;

/// A build on its way in. Every function throws parts::Stop on the first fault.
struct Reader {
  std::vector<std::filesystem::path> folders;  // where part files are looked for
  parts::Measuring measuring;
  Build build;
  std::set<std::string> names;  // parts, slots and drives share one list, since findings name them side by side

  void note_exact(const tolerance::Dimension& dimension);
  std::string fresh_name(parts::Fields& fields);
};

void read_parts(Reader& reader, parts::Fields& document);
void read_slots(Reader& reader, parts::Fields& document);
void read_drives(Reader& reader, parts::Fields& document);

/// The index of the part called `name`; refuses others at `key`, naming the nearest.
[[nodiscard]] int index_of(const std::map<std::string, int>& by_name, const std::string& name,
                           const parts::Fields& fields, std::string_view key);
/// `face = "top"` or "back" (default top). True for back.
[[nodiscard]] bool read_face(parts::Fields& held, const std::string& what);
/// The links under `bus`: a text or a list of them, at least one.
[[nodiscard]] std::vector<standards::links::Link> links_of(parts::Fields& fields);

}  // namespace baywright::build
