#include "parts/catalogue.h"

#include "parts/library.h"
#include "parts/m2_card.h"
#include "parts/made_parts.h"
#include "parts/naming.h"

#include <algorithm>
#include <utility>

namespace baywright::parts {

namespace m2 = standards::m2;

std::vector<Item> catalogue(const std::vector<std::filesystem::path>& folders) {
  std::vector<Item> items;
  for (const Entry& entry : entries(folders)) {
    auto part = find_part(entry.id, folders);
    const Part* found = std::get_if<Part>(&part);
    items.push_back({entry.id, found == nullptr ? "(its file has a fault)" : found->title});
  }
  std::vector<std::string> codes;
  for (const m2::HeightCode& code : m2::height_codes()) codes.emplace_back(code.code);
  std::vector<std::string> lengths;
  for (const m2::Length& length : m2::lengths()) lengths.push_back(std::to_string(length.code));
  items.push_back({"m2/SIZE-HEIGHT-KEYS", "M.2 card, as m2/2280-D2-M: 22 wide, lengths " + any_of(lengths) +
                                              ", heights " + any_of(codes) + ", keys M, B or B+M"});
  for (const m2::SocketClass& each : m2::socket_classes())
    items.push_back(
        {"m2/M/" + std::string(each.name), "M.2 socket of class " + std::string(each.name) + ", key M (or B)"});
  for (const Made& made : made_parts()) items.push_back({made.id, made.title, made.group});
  std::sort(items.begin(), items.end(), [](const Item& a, const Item& b) { return a.id < b.id; });
  return items;
}

namespace {

std::optional<Part> m2_part(const std::string& id) {
  const std::string rest = id.substr(3);
  if (rest.size() > 2 && rest[1] == '/') {
    const m2::SocketClass* height_class = m2::socket_class(rest.substr(2));
    if (height_class == nullptr || m2::key(rest[0]) == nullptr) return std::nullopt;
    Part part = m2_socket(*height_class);
    part.add(height_class->standoff);
    part.add(m2::standoff_flange());
    part.add(m2::solder());
    part.title = "M.2 socket of class " + std::string(height_class->name) + " with its stand-off";
    return part;
  }
  const auto name = m2::read_card_name(rest);
  if (!std::holds_alternative<m2::CardName>(name)) return std::nullopt;
  Part part = m2_card(std::get<m2::CardName>(name), {}).part;
  for (const tolerance::Dimension& row : m2_screw().dimensions) part.add(row);
  part.title = "M.2 card with its screw";
  return part;
}

}  // namespace

std::optional<Part> look_up(const std::string& id, const std::vector<std::filesystem::path>& folders,
                            std::optional<Fault>& fault) {
  for (const Made& made : made_parts())
    if (made.id == id) {
      Part part = made.make();
      part.id = id;
      part.title = made.title;
      return part;
    }
  if (id.starts_with("m2/"))
    if (auto part = m2_part(id)) {
      part->id = id;
      return part;
    }
  auto found = find_part(id, folders);
  if (auto* part = std::get_if<Part>(&found)) return std::move(*part);
  fault = std::get<Fault>(std::move(found));
  if (fault->file.empty()) fault.reset();
  return std::nullopt;
}

}  // namespace baywright::parts
