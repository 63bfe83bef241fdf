#include "parts/library.h"

#include "parts/part_file.h"
#include "standards/boards.h"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <system_error>
#include <utility>

namespace baywright::parts {

namespace {

constexpr std::string_view ending = ".part.toml";

std::vector<std::string> all_ids(const std::vector<std::filesystem::path>& folders) {
  std::vector<std::string> ids;
  for (const Entry& entry : entries(folders)) ids.push_back(entry.id);
  return ids;
}

}  // namespace

std::vector<std::filesystem::path> part_folders(const std::filesystem::path& build_file) {
  std::vector<std::filesystem::path> folders;
  const std::filesystem::path beside = build_file.parent_path();
  folders.push_back(beside.empty() ? std::filesystem::path(".") : beside);
  if (const char* models = std::getenv("BAYWRIGHT_MODELS"); models != nullptr && *models != '\0')
    folders.push_back(std::filesystem::path(models) / "parts");
  folders.emplace_back(BAYWRIGHT_MODELS_FOLDER "/parts");
  return folders;
}

std::vector<Entry> entries(const std::vector<std::filesystem::path>& folders) {
  std::map<std::string, Entry> found;
  for (const standards::boards::Board& board : standards::boards::all()) {
    const std::string id = "board/" + std::string(board.id);
    found[id] = {id, {}, {}};
  }
  for (const std::filesystem::path& folder : folders) {
    std::error_code failed;
    for (const auto& item : std::filesystem::directory_iterator(folder, failed)) {
      const std::string name = item.path().filename().string();
      if (name.size() <= ending.size() || !name.ends_with(ending)) continue;
      const std::string id = name.substr(0, name.size() - ending.size());
      found.try_emplace(id, Entry{id, {}, item.path()});  // the first folder wins
    }
  }
  std::vector<Entry> out;
  for (auto& [id, entry] : found) out.push_back(std::move(entry));
  return out;
}

Part board_part(const std::string& standard_id) {
  const standards::boards::Board& board = *standards::boards::find(standard_id);
  Part part;
  part.id = "board/" + standard_id;
  part.title = board.along_x.name.substr(0, board.along_x.name.find(','));  // "ATX board"
  part.kind = "board";
  const Coordinate x = Coordinate::of(part.add(board.along_x));
  const Coordinate y = Coordinate::of(part.add(board.across_y));
  const Coordinate thickness = Coordinate::of(part.add(standards::boards::thickness()));
  part.bodies.push_back(box_body("board", {0.0, -1.0 * y, -1.0 * thickness}, {x, 0.0, 0.0}));
  for (const standards::boards::Hole& hole : board.holes)
    part.holes.push_back({std::string(1, hole.letter), hole.x, hole.y, standards::boards::hole_diameter().nominal});
  return part;
}

std::variant<Part, Fault> find_part(const std::string& id, const std::vector<std::filesystem::path>& folders) {
  if (id.starts_with("board/") && standards::boards::find(id.substr(6)) != nullptr) return board_part(id.substr(6));
  for (const Entry& entry : entries(folders)) {
    if (entry.id != id || entry.file.empty()) continue;
    try {
      return read_part_file(entry.file);
    } catch (const Stop& stop) {
      return stop.fault;
    }
  }
  const std::vector<std::string> ids = all_ids(folders);
  const std::string meant = nearest(id, ids);
  return Fault{{},
               0,
               0,
               "the library has no part `" + id + '`',
               meant.empty() ? "`baywright parts` lists what it has" : "did you mean `" + meant + "`?"};
}

}  // namespace baywright::parts
