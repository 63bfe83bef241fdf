#include "build/reader.h"
#include "standards/addin_cards.h"
#include "standards/row.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <array>
#include <utility>

namespace baywright::build {

using parts::Fields;
namespace drives = standards::drives;
namespace links = standards::links;
namespace m2 = standards::m2;

namespace {

using Sizes = std::optional<tolerance::Dimension>;

std::vector<std::string> known_uses() {
  std::vector<std::string> known = {"m2/2280-D2-M",   "2.5in",          "3.5in",          "5.25in",
                                    "mini card/full", "mini card/half", "msata",          "msata/half",
                                    "add-in card/x1", "add-in card/x4", "add-in card/x8", "add-in card/x16",
                                    "soldered"};
  for (const drives::Family& family : drives::families())
    for (const drives::Height& height : family.heights)
      known.push_back(std::string(family.id) + '/' + std::string(height.code));
  for (const drives::Edsff& form : drives::edsff()) known.emplace_back(form.id);
  return known;
}

[[noreturn]] void stop_use(Fields& fields, const std::string& use) {
  fields.stop("use", "there is no drive `" + use + '`', "did you mean " + parts::nearest_few(use, known_uses()) + "?");
}

Form edsff_form(std::string_view form) {
  return form == "E1.S" ? Form::e1_s : form == "E1.L" ? Form::e1_l : form == "E3.S" ? Form::e3_s : Form::e3_l;
}

/// A measured size of a drive, under its own name.
Sizes size_of(Reader& reader, Fields& fields, std::string_view key, const std::string& name) {
  const auto given = reader.maybe_measured(fields, key, name);
  return given ? Sizes(given->dimension) : std::nullopt;
}

void read_family(Reader& reader, Fields& fields, const std::string& use, const drives::Family& family, Drive& drive) {
  drive.form = family.id == "2.5in" ? Form::drive_2_5 : Form::drive_3_5;
  const drives::Height* height = nullptr;
  if (use.size() > family.id.size()) {
    const std::string code = use.substr(family.id.size() + 1);
    height = drives::height(family, code);
    if (height == nullptr) {
      std::vector<std::string> known;
      for (const drives::Height& each : family.heights) known.emplace_back(each.code);
      fields.stop("use", "the standard lists no height `" + code + "` for a " + std::string(family.title),
                  "it lists " + parts::any_of(known) + "; or write `" + std::string(family.id) +
                      "` and give `height` as measured");
    }
  }
  if (fields.has("old") && fields.has("length"))
    fields.stop("old", "the drive's length is given twice", "keep one of `old` and `length`");
  drive.cased =
      parts::cased_drive(family, height,
                         {size_of(reader, fields, "height", drive.name + " height"),
                          size_of(reader, fields, "length", drive.name + " length"), fields.flag("old", false)});
  drive.title = std::string(family.title) + (height != nullptr ? ", " + std::string(height->code) + " mm" : "");
}

void read_edsff(Reader& reader, Fields& fields, const drives::Edsff& form, Drive& drive) {
  drive.form = edsff_form(form.form);
  drive.cased = parts::edsff_drive(form, {size_of(reader, fields, "height", drive.name + " height"),
                                          size_of(reader, fields, "length", drive.name + " length"), false});
  drive.title = std::string(form.title);
}

void read_card(Reader& reader, Fields& fields, int lanes, Drive& drive) {
  drive.form = Form::add_in_card;
  drive.card_lanes = lanes;
  parts::MeasuredCard sizes{size_of(reader, fields, "length", drive.name + " length"),
                            size_of(reader, fields, "height", drive.name + " height"),
                            size_of(reader, fields, "top", drive.name + " component side"),
                            size_of(reader, fields, "bottom", drive.name + " solder side")};
  if (fields.has("slots")) {
    const double slots = fields.number("slots");
    if (!(slots >= 1.0 && slots <= 6.0) || slots * 4.0 != static_cast<int>(slots * 4.0))
      fields.stop("slots", "a card is not " + tolerance::in_words(slots) + " slots wide", "write 1, 2, 2.5 or 3");
    if (sizes.top) fields.stop("slots", "the card's width is given twice", "keep one of `slots` and `top`");
    namespace cards = standards::addin_cards;
    // Up to so many slots; with half a slot less it would be called less.
    sizes.top = tolerance::Dimension{drive.name + " component side, " + tolerance::in_words(slots) + " slots",
                                     cards::component_side().nominal + (slots - 1.0) * cards::slot_pitch().nominal,
                                     0.5 * cards::slot_pitch().nominal,
                                     0.0,
                                     "component envelope of one slot and the slot pitch; half a slot of it may be air",
                                     tolerance::Known::derived};
  }
  drive.board = parts::addin_card(lanes, drive.bracket, sizes);
  drive.title = "add-in card, x" + std::to_string(lanes);
}

void read_mini(Reader& reader, Fields& fields, const std::string& use, Drive& drive) {
  drive.form = Form::mini_card;
  drive.half = use.ends_with("/half");
  drive.mini = parts::mini_card(drive.half, {size_of(reader, fields, "top", drive.name + " chips"),
                                             size_of(reader, fields, "bottom", drive.name + " chips underneath")});
  drive.title =
      std::string(use.starts_with("msata") ? "mSATA card" : "mini card") + (drive.half ? ", half length" : "");
}

void read_m2(Reader& reader, Fields& fields, const std::string& use, Drive& drive) {
  const auto name = m2::read_card_name(use.substr(3));
  if (const auto* refused = std::get_if<std::string>(&name)) fields.stop("use", "`" + use + "`: " + *refused);
  drive.card = std::get<m2::CardName>(name);
  drive.title = "M.2 card";
  drive.top = reader.maybe_measured(fields, "top", drive.name + " chips");
  drive.bottom = reader.maybe_measured(fields, "bottom", drive.name + " chips underneath");
  const auto thickness = reader.maybe_measured(fields, "thickness", drive.name + " thickness");
  if (drive.card.height == "?" && !drive.top)
    fields.stop("use", "`" + drive.name + "` has no height code",
                "give `top` (and `bottom`), measured from the bare card, or a code such as S2 or D2");
  const auto called = [](const std::optional<GivenLength>& given, const char* row) {
    Sizes size;
    if (given) {
      size = given->dimension;
      size->name = row;
    }
    return size;
  };
  drive.m2 = parts::m2_card(drive.card, {called(drive.top, "chips on top"), called(drive.bottom, "chips underneath"),
                                         called(thickness, "card thickness")});
}

void read_use(Reader& reader, Fields& fields, Drive& drive) {
  static const std::map<std::string, int> cards = {
      {"add-in card/x1", 1}, {"add-in card/x4", 4}, {"add-in card/x8", 8}, {"add-in card/x16", 16}};
  static const std::array minis = {"mini card/full", "mini card/half", "msata", "msata/full", "msata/half"};
  const std::string use = fields.text("use");
  if (use.starts_with("m2/")) return read_m2(reader, fields, use, drive);
  if (const auto card = cards.find(use); card != cards.end()) return read_card(reader, fields, card->second, drive);
  if (std::find(minis.begin(), minis.end(), use) != minis.end()) return read_mini(reader, fields, use, drive);
  if (const drives::Edsff* form = drives::edsff(use)) return read_edsff(reader, fields, *form, drive);
  for (const drives::Family& family : drives::families())
    if (use == family.id || use.starts_with(std::string(family.id) + '/'))
      return read_family(reader, fields, use, family, drive);
  if (use == "5.25in") {
    drive.form = Form::device_5_25;
    drive.title = "5.25-inch device";
    drive.cased = parts::device_5_25({size_of(reader, fields, "height", drive.name + " height"),
                                      size_of(reader, fields, "length", drive.name + " length"), false});
    return;
  }
  if (use != "soldered") stop_use(fields, use);
  drive.form = Form::soldered;
  drive.title = "soldered chip";
}

/// Keys that only some forms have.
void refuse_other_keys(Fields& fields, const Drive& drive) {
  struct Key {
    std::string_view key;
    bool there;
  };
  const bool case_of_family = drive.form == Form::drive_2_5 || drive.form == Form::drive_3_5;
  const bool card = drive.form == Form::add_in_card;
  const bool sided = card || drive.form == Form::m2 || drive.form == Form::mini_card;
  const Key keys[] = {{"top", sided},
                      {"bottom", sided},
                      {"thickness", drive.form == Form::m2},
                      {"height", card || parts::cased(drive.form)},
                      {"length", card || parts::cased(drive.form)},
                      {"old", drive.form == Form::drive_2_5},
                      {"rows", case_of_family},
                      {"plug", case_of_family},
                      {"slots", card},
                      {"bracket", card || drive.form == Form::m2}};
  for (const Key& each : keys)
    if (!each.there && fields.has(each.key))
      fields.stop(each.key,
                  parts::article(parts::form_name(drive.form)) + ' ' + parts::form_name(drive.form) + " has no `" +
                      std::string(each.key) + '`',
                  "take it out");
}

void read_rows(Fields& fields, Drive& drive) {
  if (!fields.has("rows")) return;
  std::vector<std::string> known;
  for (const parts::MountHole& hole : drive.cased.holes)
    if (std::find(known.begin(), known.end(), hole.name) == known.end()) known.push_back(hole.name);
  drive.rows = fields.texts("rows");
  for (const std::string& row : drive.rows)
    if (std::find(known.begin(), known.end(), row) == known.end())
      fields.stop("rows", "there is no `" + row + "` on " + parts::article(drive.title) + ' ' + drive.title,
                  "its rows are " + parts::any_of(known));
}

void read_plug(Fields& fields, Drive& drive) {
  using links::Protocol;
  using standards::connectors::Plug;
  const Protocol speaks = drive.bus.protocol;
  drive.plug = speaks == Protocol::sata ? Plug::sata : speaks == Protocol::sas ? Plug::sas : Plug::u2;
  if (!fields.has("plug")) return;
  const Plug plug = plug_of(fields);
  const bool agrees = speaks == Protocol::pcie ? plug == Plug::u2 || plug == Plug::u3
                                               : (plug == Plug::sas) == (speaks == Protocol::sas) && plug <= Plug::sas;
  if (!agrees)
    fields.stop("plug", "a drive with this plug does not speak " + links::in_words(drive.bus),
                "sata speaks SATA, sas SAS, u2 and u3 PCIe");
  drive.plug = plug;
}

void read_bus(Fields& fields, Drive& drive) {
  const std::vector<links::Link> bus = links_of(fields);
  if (bus.size() != 1) fields.stop("bus", "a drive speaks one bus", "name one, as in \"pcie 4.0 x4\" or \"sata 6\"");
  drive.bus = bus.front();
  if ((parts::of_edsff(drive.form) || drive.form == Form::add_in_card) && drive.bus.protocol != links::Protocol::pcie)
    fields.stop("bus",
                parts::article(parts::form_name(drive.form)) + ' ' + parts::form_name(drive.form) + " speaks PCIe",
                "write \"pcie 4.0 x4\" or the like");
  if (drive.form == Form::drive_3_5 && drive.bus.protocol == links::Protocol::pcie)
    fields.stop("bus", "a 3.5-inch drive does not speak PCIe", "write \"sata 6\" or \"sas 12\"");
}

}  // namespace

Drive drive_of(Reader& reader, Fields& fields, bool held) {
  Drive drive;
  fields.knows({"name", "use", "bus", "is", "top", "bottom", "thickness", "height", "length", "old", "rows", "plug",
                "bracket", "slots", "wears"});
  drive.line = fields.line();
  drive.name = reader.fresh_name(fields);
  drive.bracket = bracket_of(fields);
  read_use(reader, fields, drive);
  refuse_other_keys(fields, drive);
  if (!held || fields.has("bus")) {
    read_bus(fields, drive);
    if (drive.form == Form::drive_2_5 || drive.form == Form::drive_3_5) read_plug(fields, drive);
  } else if (fields.has("plug")) {
    fields.stop("plug", "a plug whose `bus` is not said", "add `bus`, or take `plug` out");
  }
  read_rows(fields, drive);
  drive.cache_module = one_of(fields, "is", {"drive", "cache module"}, "drive") == "cache module";
  read_wears(reader, fields, drive);
  if (fields.has("bracket") && drive.outer() != Form::add_in_card)
    fields.stop("bracket", "an M.2 card has no bracket", "take it out, or let it wear a carrier");
  fields.finish();
  return drive;
}

void read_drives(Reader& reader, Fields& document) {
  for (Fields& fields : document.tables("drive", "a drive"))
    reader.build.drives.push_back(drive_of(reader, fields, false));
  if (reader.build.drives.empty()) document.stop_here("this build has no drive", "add a [[drive]]");
}

}  // namespace baywright::build
