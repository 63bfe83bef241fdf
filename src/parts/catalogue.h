#pragma once
// The library as one list to look through: part files, boards, cards, drives, sockets, adapters, fasteners.
#include "parts/fault.h"
#include "parts/part.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace baywright::parts {

struct Item {
  std::string id;     // as a build file names it; a family has capitals for what varies: "m2/SIZE-HEIGHT-KEYS"
  std::string title;  // one line for people
  std::string
      group{};  // what stands for the many of its kind where all are listed: "standoff/THREADxLENGTH"; else empty
};

/// Everything, sorted by id.
[[nodiscard]] std::vector<Item> catalogue(const std::vector<std::filesystem::path>& folders);

/// The part of that id with its dimensions: a library part, "m2/2280-D2-M", "m2/M/H4.2", "2.5in/7", "screw/M3x6". None:
/// no such id, or a fault in its file, which is then in `fault`.
[[nodiscard]] std::optional<Part> look_up(const std::string& id, const std::vector<std::filesystem::path>& folders,
                                          std::optional<Fault>& fault);

}  // namespace baywright::parts
