#include "build/reader.h"
#include "parts/library.h"
#include "parts/part_file.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <utility>

namespace baywright::build {

using parts::Fault;
using parts::Fields;
using parts::Stop;
namespace links = standards::links;
namespace m2 = standards::m2;

namespace {

void read_use(Fields& fields, Drive& drive) {
  const std::string use = fields.text("use");
  static const std::map<std::string, std::pair<Form, int>> others = {{"2.5in", {Form::drive_2_5, 0}},
                                                                     {"3.5in", {Form::drive_3_5, 0}},
                                                                     {"add-in card/x1", {Form::add_in_card, 1}},
                                                                     {"add-in card/x4", {Form::add_in_card, 4}},
                                                                     {"add-in card/x8", {Form::add_in_card, 8}},
                                                                     {"add-in card/x16", {Form::add_in_card, 16}},
                                                                     {"msata", {Form::msata, 0}},
                                                                     {"soldered", {Form::soldered, 0}}};
  if (const auto other = others.find(use); other != others.end()) {
    drive.form = other->second.first;
    drive.card_lanes = other->second.second;
    return;
  }
  if (!use.starts_with("m2/")) {
    std::vector<std::string> known = {"m2/2280-D2-M"};
    for (const auto& [id, form] : others) known.push_back(id);
    const std::string meant = parts::nearest(use, known);
    fields.stop("use", "there is no drive `" + use + '`',
                meant.empty() ? "it must be " + parts::any_of(known) : "did you mean `" + meant + "`?");
  }
  const auto name = m2::read_card_name(use.substr(3));
  if (const auto* refused = std::get_if<std::string>(&name)) fields.stop("use", "`" + use + "`: " + *refused);
  drive.card = std::get<m2::CardName>(name);
}

double share_of(Fields& wear) {
  if (!wear.has("compress")) return 0.0;
  const std::string right = "it must be from 0 to 90 %, as in compress = \"30 %\"";
  std::string text = wear.text("compress");
  while (!text.empty() && (text.back() == '%' || text.back() == ' ')) text.pop_back();
  const auto reading = tolerance::read_length(text);
  const auto* length = std::get_if<tolerance::Length>(&reading);
  if (length == nullptr || length->limits_given || !(length->nominal >= 0.0 && length->nominal <= 90.0))
    wear.stop("compress", "`compress` is no share of the pad's thickness", right);
  return length->nominal / 100.0;
}

Pad pad_of(Reader& reader, Fields& wear) {
  Pad pad;
  pad.name = wear.maybe_text("name").value_or("pad");
  // A bare pad thickness is what its packet says, not what a caliper read: packets mean ±10 %.
  pad.free_thickness = wear.length("pad", pad.name + " thickness", {}, some);
  tolerance::Dimension& thickness = pad.free_thickness.dimension;
  if (pad.free_thickness.solve) wear.stop("pad", "`pad` is \"?\"", "only a distance (`by = \"?\"`) can be solved for");
  if (parts::is_taken_as_exact(thickness)) {
    thickness.minus = thickness.plus = 0.1 * thickness.nominal;
    thickness.source = "pad makers' usual ±10 %";
    thickness.known = tolerance::Known::secondary;
  }
  pad.compress = share_of(wear);
  pad.length = wear.maybe_length("length", pad.name + " length", reader.measuring, some);
  if (pad.length && pad.length->solve)
    wear.stop("length", "`length` is \"?\"", "only a distance (`by = \"?\"`) can be solved for");
  return pad;
}

Heatsink heatsink_of(Reader& reader, Fields& wear) {
  Heatsink heatsink;
  heatsink.name = wear.maybe_text("name").value_or("heatsink");
  if (wear.is_table("heatsink")) {
    heatsink.part = parts::heatsink_part(wear.table("heatsink", "a heatsink"), "inline", reader.measuring);
  } else {
    auto found = parts::find_part(wear.text("heatsink"), reader.folders);
    if (auto* fault = std::get_if<Fault>(&found)) {
      if (fault->file.empty()) wear.stop("heatsink", fault->what, fault->right);
      throw Stop{*fault};
    }
    heatsink.part = std::get<parts::Part>(std::move(found));
    if (heatsink.part.kind != "heatsink")
      wear.stop("heatsink", "`" + heatsink.part.id + "` is a " + heatsink.part.kind, "name a heatsink");
  }
  heatsink.from = wear.maybe_number("from");
  return heatsink;
}

void read_wears(Reader& reader, Fields& fields, Drive& drive) {
  for (Fields& wear : fields.tables("wears", "what a drive wears")) {
    wear.knows({"pad", "heatsink", "name", "compress", "length", "from"});
    wear.finish();
    const bool pad = wear.has("pad");
    if (pad == wear.has("heatsink"))
      wear.stop_here("this is neither a pad nor a heatsink, or both",
                     "write { pad = \"1.0\" } and { heatsink = \"ID\" } one after the other");
    if (pad) {
      if (!drive.wears.empty() && std::holds_alternative<Heatsink>(drive.wears.back()))
        wear.stop("pad", "a pad lies on the heatsink",
                  "list what a drive wears from the card outward: pad, then heatsink");
      if (wear.has("from")) wear.stop("from", "a pad has no `from`", "it lies under the heatsink, which has one");
      drive.wears.emplace_back(pad_of(reader, wear));
    } else {
      for (const std::string_view key : {"compress", "length"})
        if (wear.has(key))
          wear.stop(key, "a heatsink has no `" + std::string(key) + "` here", "that belongs to the pad");
      drive.wears.emplace_back(heatsink_of(reader, wear));
    }
  }
  if (!drive.wears.empty() && drive.form != Form::m2)
    fields.stop("wears", "`" + drive.name + "` is no M.2 card", "only M.2 cards wear pads and heatsinks so far");
}

std::optional<tolerance::Dimension> measured(const std::optional<GivenLength>& given, const char* name) {
  if (!given) return std::nullopt;
  tolerance::Dimension dimension = given->dimension;
  dimension.name = name;
  return dimension;
}

void read_heights(Reader& reader, Fields& fields, Drive& drive) {
  drive.top = fields.maybe_length("top", drive.name + " chips", reader.measuring, some);
  drive.bottom = fields.maybe_length("bottom", drive.name + " chips underneath", reader.measuring, some);
  for (const auto& [key, given] : {std::pair("top", &drive.top), std::pair("bottom", &drive.bottom)}) {
    if (!*given) continue;
    if (drive.form != Form::m2) fields.stop(key, "`" + drive.name + "` is no M.2 card", "take `top` and `bottom` out");
    if ((*given)->solve)
      fields.stop(key, "a measured height is \"?\"", "only a distance (`by = \"?\"`) can be solved for");
    reader.note_exact((*given)->dimension);
  }
  if (drive.form == Form::m2 && drive.card.height == "?" && !drive.top)
    fields.stop("use", "`" + drive.name + "` has no height code",
                "give `top` (and `bottom`), measured from the bare card, or a code such as S2 or D2");
}

}  // namespace

void read_drives(Reader& reader, Fields& document) {
  for (Fields& fields : document.tables("drive", "a drive")) {
    Drive drive;
    fields.knows({"name", "use", "bus", "is", "top", "bottom", "wears"});
    drive.line = fields.line();
    drive.name = reader.fresh_name(fields);
    read_use(fields, drive);
    const std::vector<links::Link> bus = links_of(fields);
    if (bus.size() != 1) fields.stop("bus", "a drive speaks one bus", "name one, as in \"pcie 4.0 x4\" or \"sata 6\"");
    drive.bus = bus.front();
    const bool sata_only = drive.form == Form::drive_2_5 || drive.form == Form::drive_3_5;
    if (sata_only && drive.bus.protocol != links::Protocol::sata)
      fields.stop("bus", "a 2.5in or 3.5in drive with this bus is not in the library yet",
                  "so far those are SATA drives: \"sata 6\"");
    if (drive.form == Form::add_in_card && drive.bus.protocol != links::Protocol::pcie)
      fields.stop("bus", "an add-in card speaks PCIe", "write \"pcie 4.0 x4\" or the like");
    const std::string is = fields.maybe_text("is").value_or("drive");
    if (is != "drive" && is != "cache module")
      fields.stop("is", "`is = \"" + is + "\"` is not known", "it must be \"drive\" or \"cache module\"");
    drive.cache_module = is == "cache module";
    read_heights(reader, fields, drive);
    if (drive.form == Form::m2)
      drive.m2 =
          parts::m2_card(drive.card, {measured(drive.top, "chips on top"), measured(drive.bottom, "chips underneath")});
    read_wears(reader, fields, drive);
    fields.finish();
    reader.build.drives.push_back(std::move(drive));
  }
  if (reader.build.drives.empty()) document.stop_here("this build has no drive", "add a [[drive]]");
}

}  // namespace baywright::build
