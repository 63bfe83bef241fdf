#include "build/reader.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <utility>

namespace baywright::build {

using parts::Fields;
namespace links = standards::links;
namespace m2 = standards::m2;

namespace {

M2Socket m2_socket_of(Fields& fields, const std::string& text) {
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
  return {key->letter, height_class};
}

std::variant<M2Socket, CardSlot, MiniSocket, Bay> socket_of(Fields& fields) {
  const std::string text = fields.text("socket");
  if (text.starts_with("m2/")) return m2_socket_of(fields, text);
  static const std::map<std::string, CardSlot> cards = {
      {"pcie/x1", {1, false, Bracket::full, {}}},     {"pcie/x4", {4, false, Bracket::full, {}}},
      {"pcie/x8", {8, false, Bracket::full, {}}},     {"pcie/x16", {16, false, Bracket::full, {}}},
      {"pcie/x1-open", {1, true, Bracket::full, {}}}, {"pcie/x4-open", {4, true, Bracket::full, {}}},
      {"pcie/x8-open", {8, true, Bracket::full, {}}}};
  static const std::map<std::string, MiniSocket> minis = {
      {"mini card/full", {false, true}}, {"mini card/half", {true, false}}, {"mini card/both", {true, true}}};
  if (const auto card = cards.find(text); card != cards.end()) return card->second;
  if (const auto mini = minis.find(text); mini != minis.end()) return mini->second;
  if (text.starts_with("msata"))
    fields.stop("socket", "`" + text + "` names a card", "its socket is `mini card/full` or `mini card/half`");
  std::vector<std::string> known = {"m2/M/H4.2"};
  for (const auto& [name, card] : cards) known.push_back(name);
  for (const auto& [name, mini] : minis) known.push_back(name);
  fields.stop("socket", "`" + text + "` names no socket", "did you mean " + parts::nearest_few(text, known) + "?");
}

/// Which face of the part carries the place, and which way the drive lies on it.
void read_face_of(Fields& on, Place& place) {
  struct Face {
    int axis;
    bool low;
  };
  static const std::map<std::string, Face> faces = {{"top", {2, false}}, {"back", {2, true}}, {"+x", {0, false}},
                                                    {"-x", {0, true}},   {"+y", {1, false}},  {"-y", {1, true}}};
  const std::string face = on.maybe_text("face").value_or("top");
  const auto found = faces.find(face);
  if (found == faces.end())
    on.stop("face", "`face = \"" + face + "\"` is no face of a part", "it must be top, back, +x, -x, +y or -y");
  place.axis = found->second.axis;
  place.back = found->second.low;
  const std::string toward = on.text("toward");
  std::vector<std::string> known;
  for (int axis = 0; axis < 3; ++axis)
    for (const char sign : {'+', '-'}) {
      if (axis == place.axis) continue;
      known.push_back(sign + std::string(1, "xyz"[axis]));
      if (known.back() != toward) continue;
      place.toward = geometry::Vec3(0.0);
      place.toward[axis] = sign == '+' ? 1.0 : -1.0;
    }
  if (std::find(known.begin(), known.end(), toward) == known.end())
    on.stop("toward", "`toward = \"" + toward + "\"` is no direction along that face",
            "it must be " + parts::any_of(known));
}

}  // namespace

std::vector<links::Link> links_of(Fields& fields, std::string_view key) {
  std::vector<links::Link> out;
  for (const std::string& text : fields.texts(key)) {
    const auto link = links::read_link(text);
    if (const auto* refused = std::get_if<std::string>(&link)) fields.stop(key, *refused);
    out.push_back(std::get<links::Link>(link));
  }
  if (out.empty())
    fields.stop(key, '`' + std::string(key) + "` is empty",
                "name what is wired to the place, as in [\"pcie 4.0 x4\"] or [\"sata 6\"]");
  return out;
}

std::string one_of(Fields& fields, std::string_view key, const std::vector<std::string>& known,
                   const std::string& otherwise) {
  std::string value = fields.maybe_text(key).value_or(otherwise);
  if (std::find(known.begin(), known.end(), value) == known.end())
    fields.stop(key, '`' + std::string(key) + " = \"" + value + "\"` is not known",
                "it must be " + parts::any_of(known));
  return value;
}

Bracket bracket_of(Fields& fields) {
  const std::string bracket = one_of(fields, "bracket", {"full", "low", "none"}, "full");
  return bracket == "full" ? Bracket::full : bracket == "low" ? Bracket::low : Bracket::none;
}

standards::connectors::Plug plug_of(Fields& fields) {
  const std::string text = fields.text("plug");
  const auto plug = standards::connectors::read_plug(text);
  if (!plug) fields.stop("plug", "`" + text + "` is no plug", "it must be sata, sas, u2 or u3");
  return *plug;
}

void check_on_face(const Reader& reader, Fields& fields, std::string_view key, const Place& place, double across,
                   double along, const std::string& what) {
  const parts::Part& part = reader.build.parts[static_cast<std::size_t>(place.part)].part;
  const std::vector<double> values = parts::nominal_values(part);
  const geometry::Vec3 side = glm::cross(place.toward, place.outward());
  int given = 0;
  for (int axis = 0; axis < 3; ++axis) {
    if (axis == place.axis) continue;
    const double at = place.at[static_cast<std::size_t>(given++)] + along * place.toward[axis] + across * side[axis];
    const double low = parts::outer_face(part, axis, false).at(values);
    const double high = parts::outer_face(part, axis, true).at(values);
    if (at < low || at > high)
      fields.stop(key, what + "xyz"[axis] + " lies off its part, at " + tolerance::in_words(at),
                  "it must lie from " + tolerance::in_words(low) + " to " + tolerance::in_words(high));
  }
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

void read_on(Reader& reader, Fields& fields, const std::map<std::string, int>& by_name, Place& place) {
  Fields on = fields.table("on", "`on`");
  on.knows({"part", "face", "at", "toward"});
  place.part = index_of(by_name, on.text("part"), on, "part");
  read_face_of(on, place);
  const std::vector<double> at = on.numbers("at", 2);
  place.at = {at[0], at[1]};
  check_on_face(reader, on, "at", place, 0.0, 0.0, "the place's ");
  on.finish();
}

void read_cover(Reader& reader, Fields& fields, Place& place) {
  auto table = fields.maybe_table("cover", "`cover`");
  if (!table) return;
  table->knows({"above", "thickness", "length", "width"});
  Cover cover;
  cover.above = reader.measured(*table, "above", place.name + " cover over the board");
  cover.thickness = reader.measured(*table, "thickness", place.name + " cover thickness");
  cover.length = table->number("length");
  cover.width = table->maybe_number("width").value_or(22.0);
  for (const auto& [key, value] : {std::pair("length", cover.length), std::pair("width", cover.width)})
    if (!(value > 0.0)) table->stop(key, '`' + std::string(key) + "` is not more than nothing", "give it in mm");
  table->finish();
  place.cover = std::move(cover);
}

void read_m2_keys(Reader& reader, Fields& fields, Place& place) {
  place.sizes = sizes_of(fields, "lengths");
  if (place.sizes.empty())
    fields.stop("lengths", "`lengths` is empty", "list where stand-offs can be, as in [2242, 2280]");
  for (const int size : place.sizes)
    check_on_face(reader, fields, "lengths", place, 0.0, length_code(size),
                  "the stand-off for " + std::to_string(size) + ": its ");
  if (fields.has("soldered")) place.soldered = sizes_of(fields, "soldered");
  for (const int size : place.soldered)
    if (std::find(place.sizes.begin(), place.sizes.end(), size) == place.sizes.end())
      fields.stop("soldered", std::to_string(size) + " is not among `lengths`",
                  "add it there, since a soldered stand-off is offered too");
  place.standoff = reader.maybe_measured(fields, "standoff", "stand-off height");
  read_cover(reader, fields, place);
}

void read_card_keys(Fields& fields, CardSlot& slot) {
  slot.bracket = bracket_of(fields);
  if (!fields.has("splits")) return;
  slot.splits = fields.integers("splits");
  int lanes = 0;
  for (const int each : slot.splits) {
    if (each != 1 && each != 2 && each != 4 && each != 8)
      fields.stop("splits", "a link has no " + std::to_string(each) + " lanes", "list links of 1, 2, 4 or 8 lanes");
    lanes += each;
  }
  if (lanes > slot.lanes)
    fields.stop("splits",
                "the links have " + std::to_string(lanes) + " lanes together, the slot's body has " +
                    std::to_string(slot.lanes),
                "list no more lanes than that, as in splits = [4, 4]");
}

void refuse_keys(Fields& fields, std::initializer_list<std::string_view> keys, const std::string& what) {
  for (const std::string_view key : keys)
    if (fields.has(key)) fields.stop(key, what + " has no `" + std::string(key) + '`', "take it out");
}

void read_socket(Reader& reader, Fields& fields, Place& place) {
  fields.knows({"name", "on", "socket", "bus", "lengths", "soldered", "standoff", "bracket", "splits", "cover", "holds",
                "shares"});
  place.socket = socket_of(fields);
  place.bus = links_of(fields);
  if (std::holds_alternative<M2Socket>(place.socket)) {
    refuse_keys(fields, {"bracket", "splits"}, "an M.2 slot");
    read_m2_keys(reader, fields, place);
  } else if (auto* card = std::get_if<CardSlot>(&place.socket)) {
    refuse_keys(fields, {"lengths", "soldered", "standoff", "cover"}, "a PCIe slot");
    read_card_keys(fields, *card);
  } else {
    refuse_keys(fields, {"lengths", "soldered", "bracket", "splits", "cover"}, "a mini card socket");
    if (!fields.has("standoff"))
      fields.stop_here("`" + place.name + "` has no `standoff`",
                       "give the height of the card's underside over the board: no table of it could be read");
    place.standoff = reader.measured(fields, "standoff", "mini card over the board");
  }
}

/// What a place shares, beside where the file says so: the other place may stand farther down.
struct Sharing {
  std::size_t place = 0;
  std::size_t share = 0;
  Fields fields;
};

void read_shares(Fields& fields, std::size_t index, Place& place, std::vector<Sharing>& sharing) {
  for (Fields& share : fields.tables("shares", "what a place shares")) {
    share.knows({"with", "leaves"});
    Share out;
    out.with = share.text("with");
    for (const Share& before : place.shares)
      if (before.with == out.with) share.stop("with", "`" + out.with + "` is listed twice", "keep one of the two");
    const bool nothing =
        !share.has("leaves") || (share.texts("leaves").size() == 1 && share.texts("leaves")[0] == "nothing");
    if (!nothing) out.leaves = links_of(share, "leaves");
    share.finish();
    sharing.push_back({index, place.shares.size(), share});
    place.shares.push_back(std::move(out));
  }
}

/// The size that an M.2 place sees: an extender makes a card longer.
int size_at_place(const Drive& drive) {
  return drive.worn ? size_of({22, drive.worn->adapter->length, "", ""}) : size_of(drive.card);
}

/// What sits at a place already was put there, so it is of the place's form and size; else the file errs about one of
/// the two, and there would be nothing to draw.
void check_held(Fields& held, const Place& place, const Drive& drive) {
  const auto refuse = [&held](const std::string& what, const std::string& right) { held.stop("use", what, right); };
  const std::string takes = parts::form_name(form_of(place));
  if (drive.outer() != form_of(place))
    refuse("the place takes " + parts::article(takes) + ' ' + takes + " and cannot hold " +
               parts::article(drive.title) + ' ' + drive.title,
           "name what sits there");
  if (parts::cased(drive.outer()) && !drive.cased.whole())
    refuse("how high `" + drive.name + "` is was not said", "name its height, or give `height` as measured");
  if (std::holds_alternative<M2Socket>(place.socket)) {
    const int size = size_at_place(drive);
    if (std::find(place.sizes.begin(), place.sizes.end(), size) == place.sizes.end())
      refuse("the place has no stand-off for a " + std::to_string(size), "add that size to `lengths`");
  }
  const auto* slot = std::get_if<CardSlot>(&place.socket);
  if (slot != nullptr && drive.card_lanes > slot->lanes && !slot->open_ended)
    refuse("an x" + std::to_string(drive.card_lanes) + " card does not go into an x" + std::to_string(slot->lanes) +
               " slot that is closed at its end",
           "check `use` and `socket`");
  const auto* mini = std::get_if<MiniSocket>(&place.socket);
  if (mini != nullptr && !(drive.half ? mini->half : mini->full))
    refuse(std::string("the socket has no posts for a ") + (drive.half ? "half" : "full") + " card",
           "check `use` and `socket`");
}

void read_place(Reader& reader, Fields& fields, const std::map<std::string, int>& by_name, std::string_view kind,
                std::vector<Sharing>& sharing) {
  Place place;
  place.line = fields.line();
  place.name = reader.fresh_name(fields);
  read_on(reader, fields, by_name, place);
  if (kind == "slot")
    read_socket(reader, fields, place);
  else
    read_bay(reader, fields, place, kind == "panel");
  read_shares(fields, reader.build.places.size(), place, sharing);
  if (auto held = fields.maybe_table("holds", "what a place holds")) {
    place.holds = static_cast<int>(reader.build.held.size());
    Drive drive = drive_of(reader, *held, true);
    check_held(*held, place, drive);
    reader.build.held.push_back(std::move(drive));
  }
  fields.finish();
  reader.build.places.push_back(std::move(place));
}

/// Names of other places, once all are read.
void resolve_shares(Reader& reader, const std::vector<Sharing>& sharing) {
  std::vector<Place>& places = reader.build.places;
  for (const Sharing& each : sharing) {
    Place& place = places[each.place];
    Share& share = place.shares[each.share];
    const auto found =
        std::find_if(places.begin(), places.end(), [&](const Place& other) { return other.name == share.with; });
    share.place = static_cast<int>(found - places.begin());
    if (found != places.end() && static_cast<std::size_t>(share.place) != each.place) continue;
    std::vector<std::string> known;
    for (const Place& other : places)
      if (other.name != place.name) known.push_back(other.name);
    each.fields.stop("with", "`" + place.name + "` shares with `" + share.with + "`, which is no other place",
                     known.empty() ? "it is the only one: take `shares` out"
                                   : "did you mean " + parts::nearest_few(share.with, known) + "?");
  }
}

}  // namespace

void read_places(Reader& reader, Fields& document) {
  std::map<std::string, int> by_name;
  for (std::size_t i = 0; i < reader.build.parts.size(); ++i) by_name[reader.build.parts[i].name] = static_cast<int>(i);
  std::vector<Sharing> sharing;
  for (const std::string_view kind : {"slot", "bay", "panel"})
    for (Fields& fields : document.tables(kind, "a " + std::string(kind)))
      read_place(reader, fields, by_name, kind, sharing);
  if (reader.build.places.empty())
    document.stop_here("this build has no place for a drive", "add a [[slot]], a [[bay]] or a [[panel]]");
  resolve_shares(reader, sharing);
}

}  // namespace baywright::build
