#include "build/reader.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <utility>

namespace baywright::build {

using parts::Fields;
namespace links = standards::links;
namespace m2 = standards::m2;

namespace {

std::variant<M2Socket, CardSlot> socket_of(Fields& fields) {
  const std::string text = fields.text("socket");
  if (text.starts_with("m2/")) {
    const std::string rest = text.substr(3);
    std::vector<std::string> classes;
    for (const m2::SocketClass& each : m2::socket_classes()) classes.emplace_back(each.name);
    if (rest.size() < 3 || rest[1] != '/')
      fields.stop("socket", "`" + text + "` names no socket", "write m2/KEY/CLASS, as in m2/M/H4.2");
    const m2::Key* key = m2::key(rest[0]);
    if (key == nullptr)
      fields.stop("socket", std::string("there is no key ") + rest[0], "sockets for drives have key B or M");
    const m2::SocketClass* height_class = m2::socket_class(rest.substr(2));
    if (height_class == nullptr)
      fields.stop("socket", "there is no socket class `" + rest.substr(2) + '`',
                  "the classes are " + parts::any_of(classes));
    return M2Socket{key->letter, height_class};
  }
  static const std::map<std::string, CardSlot> cards = {
      {"pcie/x1", {1, false}},     {"pcie/x4", {4, false}},     {"pcie/x8", {8, false}},    {"pcie/x16", {16, false}},
      {"pcie/x1-open", {1, true}}, {"pcie/x4-open", {4, true}}, {"pcie/x8-open", {8, true}}};
  const auto card = cards.find(text);
  if (card == cards.end()) fields.stop("socket", "`" + text + "` names no socket", "write m2/M/H4.2 or pcie/x4");
  return card->second;
}

geometry::Vec3 toward_of(Fields& on) {
  const std::string toward = on.text("toward");
  static const std::map<std::string, geometry::Vec3> known = {
      {"+x", {1, 0, 0}}, {"-x", {-1, 0, 0}}, {"+y", {0, 1, 0}}, {"-y", {0, -1, 0}}};
  const auto found = known.find(toward);
  if (found == known.end())
    on.stop("toward", "`toward = \"" + toward + "\"` is no direction", "it must be +x, -x, +y or -y");
  return found->second;
}

}  // namespace

std::vector<links::Link> links_of(Fields& fields) {
  std::vector<links::Link> out;
  for (const std::string& text : fields.texts("bus")) {
    const auto link = links::read_link(text);
    if (const auto* refused = std::get_if<std::string>(&link)) fields.stop("bus", *refused);
    out.push_back(std::get<links::Link>(link));
  }
  if (out.empty())
    fields.stop("bus", "`bus` is empty", "name what is wired to the slot, as in [\"pcie 4.0 x4\"] or [\"sata 6\"]");
  return out;
}

namespace {

/// Sizes such as 2280: a published width with a published length.
std::vector<int> sizes_of(Fields& fields, std::string_view key) {
  std::vector<int> out = fields.integers(key);
  std::vector<std::string> known;
  for (const m2::Width& width : m2::widths())
    for (const m2::Length& length : m2::lengths())
      if (width.code == 22) known.push_back(std::to_string(width.code) + std::to_string(length.code));
  for (const int size : out) {
    const auto width = m2::widths();
    const auto length = m2::lengths();
    const bool there = std::any_of(width.begin(), width.end(), [&](const m2::Width& w) {
      return std::any_of(length.begin(), length.end(), [&](const m2::Length& l) {
        return std::to_string(w.code) + std::to_string(l.code) == std::to_string(size);
      });
    });
    if (!there)
      fields.stop(key, "there is no card size " + std::to_string(size), "common ones are " + parts::any_of(known));
  }
  return out;
}

/// The seat of the socket and every stand-off must stand on the part that carries the slot.
void check_on_face(const Reader& reader, Fields& fields, std::string_view key, const Slot& slot, double along,
                   const std::string& what) {
  const parts::Part& part = reader.build.parts[static_cast<std::size_t>(slot.part)].part;
  const std::vector<double> values = parts::nominal_values(part);
  for (int axis = 0; axis < 2; ++axis) {
    const double at = (axis == 0 ? slot.x : slot.y) + along * slot.toward[axis];
    const double low = parts::outer_face(part, axis, false).at(values);
    const double high = parts::outer_face(part, axis, true).at(values);
    if (at < low || at > high)
      fields.stop(key, what + (axis == 0 ? 'x' : 'y') + " lies off its part, at " + tolerance::in_words(at),
                  "it must lie from " + tolerance::in_words(low) + " to " + tolerance::in_words(high));
  }
}

}  // namespace

void read_slots(Reader& reader, Fields& document) {
  std::map<std::string, int> by_name;
  for (std::size_t i = 0; i < reader.build.parts.size(); ++i) by_name[reader.build.parts[i].name] = static_cast<int>(i);
  for (Fields& fields : document.tables("slot", "a slot")) {
    Slot slot;
    fields.knows({"name", "on", "socket", "bus", "lengths", "soldered", "standoff"});
    slot.line = fields.line();
    slot.name = reader.fresh_name(fields);
    Fields on = fields.table("on", "`on`");
    on.knows({"part", "face", "at", "toward"});
    slot.part = index_of(by_name, on.text("part"), on, "part");
    slot.back = read_face(on, "a board");
    const std::vector<double> at = on.numbers("at", 2);
    slot.x = at[0];
    slot.y = at[1];
    slot.toward = toward_of(on);
    check_on_face(reader, on, "at", slot, 0.0, "the slot's ");
    on.finish();
    slot.socket = socket_of(fields);
    slot.bus = links_of(fields);
    if (std::holds_alternative<M2Socket>(slot.socket)) {
      slot.sizes = sizes_of(fields, "lengths");
      if (slot.sizes.empty())
        fields.stop("lengths", "`lengths` is empty", "list where stand-offs can be, as in [2242, 2280]");
      for (const int size : slot.sizes)
        check_on_face(reader, fields, "lengths", slot, size > 9999 ? size % 1000 : size % 100,
                      "the stand-off for " + std::to_string(size) + ": its ");
      if (fields.has("soldered")) slot.soldered = sizes_of(fields, "soldered");
      for (const int size : slot.soldered)
        if (std::find(slot.sizes.begin(), slot.sizes.end(), size) == slot.sizes.end())
          fields.stop("soldered", std::to_string(size) + " is not among `lengths`",
                      "add it there, since a soldered stand-off is offered too");
      slot.standoff = fields.maybe_length("standoff", "stand-off height", reader.measuring, some);
      if (slot.standoff) reader.note_exact(slot.standoff->dimension);
      if (slot.standoff && slot.standoff->solve)
        fields.stop("standoff", "`standoff` is \"?\"", "only a distance (`by = \"?\"`) can be solved for");
    }
    for (const std::string_view key : {"lengths", "soldered", "standoff"})
      if (std::holds_alternative<CardSlot>(slot.socket) && fields.has(key))
        fields.stop(key, "a PCIe slot has no `" + std::string(key) + '`', "take it out");
    fields.finish();
    reader.build.slots.push_back(std::move(slot));
  }
  if (reader.build.slots.empty()) document.stop_here("this build has no place for a drive", "add a [[slot]]");
}

}  // namespace baywright::build
