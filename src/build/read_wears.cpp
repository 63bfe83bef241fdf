#include "build/reader.h"
#include "parts/library.h"
#include "parts/pad_range.h"
#include "parts/part_file.h"
#include "tolerance/reading.h"

#include <utility>

namespace baywright::build {

using parts::Fault;
using parts::Fields;
using parts::Stop;

namespace {

constexpr int most_drives = 16;  // in one adapter: more than any has, so that the message can say how many this one has

double share_of(Fields& wear) {
  if (!wear.has("compress")) return 0.0;
  const std::string right = "it must be from 0 to 90 %, as in compress = \"30 %\"";
  if (!wear.is_text("compress")) wear.stop("compress", "`compress` is text in quotes, with its sign", right);
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
  pad.free_thickness = wear.length("pad", pad.name + " thickness", {0.0, {}, reader.measuring.question}, some);
  tolerance::Dimension& thickness = pad.free_thickness.dimension;
  if (parts::is_taken_as_exact(thickness)) {
    thickness.minus = thickness.plus = parts::pad_limit * thickness.nominal;
    thickness.source = "pad makers' usual ±10 %";
    thickness.known = tolerance::Known::secondary;
  }
  pad.compress = share_of(wear);
  pad.length = reader.maybe_measured(wear, "length", pad.name + " length");
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

/// Takes the form that the adapter gives: what the drive is outside from then on.
void put_into(Fields& wear, const Worn& worn, Drive& drive) {
  const parts::Adapter& adapter = *worn.adapter;
  std::optional<tolerance::Dimension> raised;
  if (worn.raised) raised = worn.raised->dimension;
  if (parts::cased(adapter.becomes)) {
    constexpr int longest = 80;  // in the case of a 2.5-inch drive
    if (drive.form == Form::m2 && drive.card.length > longest)
      wear.stop("adapter", '`' + std::string(adapter.id) + "` has no room for a " + std::to_string(size_of(drive.card)),
                "cards up to 2280 go into it");
    drive.cased = parts::cased(adapter.takes) ? parts::in_adapter(adapter, drive.cased, worn.position, raised)
                                              : parts::in_shell(adapter);
  } else if (adapter.becomes == Form::add_in_card) {
    drive.card_lanes = adapter.lanes;
    drive.board = parts::carrier(adapter, drive.bracket);
  } else if (adapter.takes == Form::m2) {
    const std::string fitting = std::to_string(drive.card.width) + std::to_string(drive.card.length);
    if (drive.card.width != 22 || drive.card.length != adapter.card_length)
      wear.stop("adapter", '`' + std::string(adapter.id) + "` takes another card than a " + fitting,
                "the library's extenders are for 2242 and 2230 cards");
    drive.m2 = parts::extended(adapter, drive.m2);
  } else {  // a cable from an M.2 socket: what sits in the socket is its plug board
    drive.card = {22, adapter.length, "S1", "M"};
    drive.m2 = parts::m2_card(drive.card, {});
  }
}

void read_adapter(Reader& reader, Fields& wear, Drive& drive) {
  for (const std::string_view key : {"pad", "heatsink", "compress", "length", "from"})
    if (wear.has(key)) wear.stop(key, "an adapter has no `" + std::string(key) + '`', "list it by itself");
  if (drive.worn) wear.stop("adapter", "the drive wears two adapters", "one at a time is understood");
  const std::string id = wear.text("adapter");
  Worn worn;
  worn.adapter = parts::adapter(id);
  if (worn.adapter == nullptr) {
    std::vector<std::string> known;
    for (const parts::Adapter& each : parts::adapters()) known.emplace_back(each.id);
    wear.stop("adapter", "there is no adapter `" + id + '`', "did you mean " + parts::nearest_few(id, known) + "?");
  }
  if (worn.adapter->takes != drive.form)
    wear.stop("adapter",
              '`' + id + "` takes " + parts::article(parts::form_name(worn.adapter->takes)) + ' ' +
                  parts::form_name(worn.adapter->takes) + ", and this is " +
                  parts::article(parts::form_name(drive.form)) + ' ' + parts::form_name(drive.form),
              "`baywright parts adapter` lists them");
  worn.name = wear.maybe_text("name").value_or("adapter of " + drive.name);
  if (wear.has("position")) worn.position = wear.count("position", 1, most_drives);
  const int drives = worn.adapter->drives;
  if (worn.position > drives)
    wear.stop("position", '`' + id + "` holds " + (drives == 1 ? "one drive" : std::to_string(drives) + " drives"),
              "count them from 1");
  if (wear.has("raised") && !(parts::cased(worn.adapter->takes) && parts::cased(worn.adapter->becomes)))
    wear.stop("raised", '`' + id + "` does not raise its drive", "take `raised` out");
  worn.raised = reader.maybe_measured(wear, "raised", drive.name + " over its adapter's base", 0.0);
  worn.entry = static_cast<int>(drive.wears.size());
  put_into(wear, worn, drive);
  drive.worn = std::move(worn);
}

}  // namespace

void read_wears(Reader& reader, Fields& fields, Drive& drive) {
  for (Fields& wear : fields.tables("wears", "what a drive wears")) {
    wear.knows({"pad", "heatsink", "adapter", "name", "compress", "length", "from", "position", "raised"});
    wear.finish();
    if (wear.has("adapter")) {
      read_adapter(reader, wear, drive);
      continue;
    }
    for (const std::string_view key : {"position", "raised"})
      if (wear.has(key)) wear.stop(key, "only an adapter has `" + std::string(key) + '`', "take it out");
    const bool pad = wear.has("pad");
    if (pad == wear.has("heatsink"))
      wear.stop_here("this is neither a pad nor a heatsink nor an adapter, or both",
                     "write { pad = \"1.0\" } and { heatsink = \"ID\" } one after the other, or { adapter = \"ID\" }");
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
    fields.stop("wears", "`" + drive.name + "` is no M.2 card", "only M.2 cards wear pads and heatsinks");
  if (!drive.wears.empty() && drive.worn && parts::cased(drive.outer()))
    fields.stop("wears", "in a shell `" + drive.name + "` wears nothing else", "take pad and heatsink out");
}

}  // namespace baywright::build
