#include "parts/adapter.h"

#include "standards/adapters.h"
#include "standards/addin_cards.h"
#include "standards/m2.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <array>
#include <utility>

namespace baywright::parts {

namespace drives = standards::drives;
namespace generic = standards::adapters;
namespace links = standards::links;
namespace m2 = standards::m2;
using tolerance::Dimension;

namespace {

constexpr int extended_to = 80;  // length code of the card that the library's extenders make

const m2::Length& length_row(int code) {
  const auto rows = m2::lengths();
  return *std::find_if(rows.begin(), rows.end(), [&](const m2::Length& row) { return row.code == code; });
}

const m2::Width& width_row(int code) {
  const auto rows = m2::widths();
  return *std::find_if(rows.begin(), rows.end(), [&](const m2::Width& row) { return row.code == code; });
}

const drives::Family& family_of(Form form) {
  return *drives::family(form == Form::drive_3_5 ? "3.5in" : "2.5in");
}

std::string mm(const Dimension& row) {
  return tolerance::in_words(row.nominal);
}

/// What an extender for a card of that length code adds, mm.
std::string longer_by(int code) {
  return tolerance::in_words(length_row(extended_to).along.nominal - length_row(code).along.nominal);
}

/// Between the connectors of a drive in the middle of a larger place and of a drive of that place's own form, mm.
std::string beside_connector() {
  return tolerance::in_words(family_of(Form::drive_3_5).tongue.offset.nominal -
                             family_of(Form::drive_2_5).tongue.offset.nominal);
}

std::string beside_on_rails() {
  return tolerance::in_words(0.5 * (drives::device_5_25().width.nominal - family_of(Form::drive_3_5).width.nominal));
}

}  // namespace

std::span<const Adapter> adapters() {
  static const std::array rows{
      Adapter{.id = "adapter/m2-on-x4",
              .title = "carrier: one M.2 card on a PCIe x4 card",
              .takes = Form::m2,
              .becomes = Form::add_in_card,
              .turns = Turns::form_factor_and_interface,
              .lanes = 4,
              .carries = links::Protocol::pcie,
              .adds = "a card one slot wide, with its own bracket",
              .cannot = "It passes PCIe on and nothing else: an M.2 card that speaks SATA stays dead on it."},
      Adapter{.id = "adapter/m2-on-x8",
              .title = "carrier: two M.2 cards on a PCIe x8 card",
              .takes = Form::m2,
              .becomes = Form::add_in_card,
              .turns = Turns::form_factor_and_interface,
              .drives = 2,
              .lanes = 8,
              .carries = links::Protocol::pcie,
              .adds = "a card one slot wide, with its own bracket",
              .cannot = "It splits nothing itself: the host must make two links of the slot (`splits`), or only the "
                        "first card is seen."},
      Adapter{.id = "adapter/m2-on-x16",
              .title = "carrier: four M.2 cards on a PCIe x16 card",
              .takes = Form::m2,
              .becomes = Form::add_in_card,
              .turns = Turns::form_factor_and_interface,
              .drives = 4,
              .lanes = 16,
              .carries = links::Protocol::pcie,
              .adds = "a card one slot wide, with its own bracket",
              .cannot = "It splits nothing itself: the host must make four links of the slot (`splits`), or only the "
                        "first card is seen."},
      Adapter{.id = "adapter/m2-2242-to-2280",
              .title = "length extender: a 2242 card where a 2280 goes",
              .takes = Form::m2,
              .becomes = Form::m2,
              .turns = Turns::length,
              .length = extended_to,
              .card_length = 42,
              .adds = longer_by(42) + " mm of length, and a strip as thick as the card",
              .cannot = "It changes neither key nor bus."},
      Adapter{.id = "adapter/m2-2230-to-2280",
              .title = "length extender: a 2230 card where a 2280 goes",
              .takes = Form::m2,
              .becomes = Form::m2,
              .turns = Turns::length,
              .length = extended_to,
              .card_length = 30,
              .adds = longer_by(30) + " mm of length, and a strip as thick as the card",
              .cannot = "It changes neither key nor bus."},
      Adapter{.id = "adapter/m2-sata-in-2.5in",
              .title = "shell: an M.2 SATA card in a 2.5-inch case, 7 mm",
              .takes = Form::m2,
              .becomes = Form::drive_2_5,
              .turns = Turns::form_factor_and_interface,
              .carries = links::Protocol::sata,
              .adds = "the size of a 2.5-inch drive of 7 mm",
              .cannot = "It changes no protocol: an M.2 card that speaks PCIe stays dead in it."},
      Adapter{.id = "adapter/msata-in-2.5in",
              .title = "shell: an mSATA card in a 2.5-inch case, 7 mm",
              .takes = Form::mini_card,
              .becomes = Form::drive_2_5,
              .turns = Turns::form_factor_and_interface,
              .carries = links::Protocol::sata,
              .adds = "the size of a 2.5-inch drive of 7 mm",
              .cannot = "It changes no protocol: a mini card that speaks PCIe stays dead in it."},
      Adapter{.id = "adapter/2.5in-in-3.5in",
              .title = "bracket: a 2.5-inch drive in the middle of a 3.5-inch place",
              .takes = Form::drive_2_5,
              .becomes = Form::drive_3_5,
              .turns = Turns::form_factor,
              .adds = mm(generic::tray_sheet()) + " mm under the drive, and the width of a 3.5-inch drive",
              .cannot = "Its connector stands " + beside_connector() +
                        " mm beside that of a 3.5-inch drive: a cable reaches it, a backplane does not."},
      Adapter{.id = "adapter/2.5in-in-3.5in-flush",
              .title = "carrier: a 2.5-inch drive at the edge of a 3.5-inch place",
              .takes = Form::drive_2_5,
              .becomes = Form::drive_3_5,
              .turns = Turns::form_factor,
              .flush = true,
              .adds = "the width of a 3.5-inch drive",
              .cannot = "It changes no protocol and no plug."},
      Adapter{.id = "adapter/two-2.5in-in-3.5in",
              .title = "bracket: two 2.5-inch drives, one over the other, in a 3.5-inch place",
              .takes = Form::drive_2_5,
              .becomes = Form::drive_3_5,
              .turns = Turns::form_factor,
              .drives = 2,
              .adds = mm(generic::tray_sheet()) + " mm under the drive; the second stands about " +
                      mm(generic::second_drive()) + " mm over the base",
              .cannot = "Each drive needs its own cable."},
      Adapter{.id = "adapter/3.5in-in-5.25in",
              .title = "rails: a 3.5-inch drive in a 5.25-inch bay",
              .takes = Form::drive_3_5,
              .becomes = Form::device_5_25,
              .turns = Turns::form_factor,
              .adds = beside_on_rails() + " mm on each side",
              .cannot = "It changes no protocol and no plug."},
      Adapter{.id = "adapter/u2-on-m2",
              .title = "cable: a U.2 drive from an M.2 socket",
              .takes = Form::drive_2_5,
              .becomes = Form::m2,
              .turns = Turns::form_factor_and_interface,
              .length = extended_to,
              .carries = links::Protocol::pcie,
              .adds = "a plug board of the size of a 2280 card in the socket; the drive lies elsewhere",
              .cannot = "It holds no drive: that needs a 2.5-inch place of its own. Many feed it 12 V from the power "
                        "supply."},
  };
  return rows;
}

const Adapter* adapter(std::string_view id) {
  const auto rows = adapters();
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const Adapter& row) { return row.id == id; });
  return found == rows.end() ? nullptr : &*found;
}

CasedDrive in_adapter(const Adapter& adapter, const CasedDrive& drive, int position,
                      const std::optional<Dimension>& raised) {
  CasedDrive out =
      adapter.becomes == Form::device_5_25 ? device_5_25({}) : cased_drive(family_of(adapter.becomes), nullptr, {});
  const bool flush = adapter.flush;
  const bool rails = adapter.becomes == Form::device_5_25;
  const auto inner = static_cast<int>(out.part.dimensions.size());
  out.part.bodies.clear();
  for (const Dimension& each : drive.part.dimensions) out.part.add(each);
  const Coordinate wide = drive.width.shifted(inner);
  const Coordinate beside = flush ? Coordinate(0.0) : 0.5 * (out.width - wide);
  Coordinate up(0.0);
  Coordinate sheet(0.0);
  if (!flush && !rails) {
    sheet = Coordinate::of(out.part.add(generic::tray_sheet()));
    up = position > 1 ? Coordinate::of(out.part.add(generic::second_drive())) : sheet;
  }
  if (raised) up = Coordinate::of(out.part.add(*raised));
  const Coordinate high = drive.height.shifted(inner);
  const Coordinate end = drive.end.shifted(inner);
  if (!drive.part.bodies.empty())
    out.part.bodies.push_back(box_body("case", {0.0, -1.0 * (beside + wide), up}, {end, -1.0 * beside, up + high}));
  // A bracket has its holes where a larger drive has them, so it is as long as one; rails end with the drive.
  const Coordinate whole = rails ? end : out.end;
  if (rails || flush) {
    const Coordinate tall = up + high;
    if (!flush) out.part.bodies.push_back(box_body("rail", {0.0, -1.0 * beside, 0.0}, {whole, 0.0, tall}));
    out.part.bodies.push_back(
        box_body("far rail", {0.0, -1.0 * out.width, 0.0}, {whole, -1.0 * (beside + wide), tall}));
  } else {
    out.part.bodies.push_back(box_body("tray", {0.0, -1.0 * out.width, 0.0}, {whole, 0.0, sheet}));
  }
  out.part.id = std::string(adapter.id);
  out.end = whole;
  out.height = up + high;
  out.from_bezel = rails;
  if (!drive.tongue) return out;
  out.tongue = drive.tongue;
  out.tongue_y = drive.tongue_y.shifted(inner) - beside;
  const std::vector<double> values = nominal_values(out.part);
  out.tongue_z = up.at(values);
  if (rails) {
    out.tongue_y = -1.0 * out.width - out.tongue_y;  // the connector looks the other way
  } else {
    out.tongue_aside = out.tongue_y.at(values) - (family_of(adapter.becomes).tongue.offset.nominal -
                                                  0.5 * family_of(adapter.becomes).width.nominal);
  }
  return out;
}

CasedDrive in_shell(const Adapter& adapter) {
  const drives::Family& family = family_of(Form::drive_2_5);
  CasedDrive out = cased_drive(family, drives::height(family, "7"), {});
  out.part.id = std::string(adapter.id);
  return out;
}

M2Card extended(const Adapter& adapter, M2Card card) {
  const Coordinate thick = Coordinate::of(card.part.add(generic::extender_strip()));
  const Dimension& along = length_row(adapter.length).along;
  const Coordinate end = Coordinate::of(card.part.add(along));
  const double half = 0.5 * width_row(22).across.nominal;
  // The strip lies in the card's plane, from its screw end outward.
  card.part.bodies.push_back(
      box_body("strip", {-half, card.screw_end, card.underside}, {half, end, card.underside + thick}));
  card.screw_end = end;
  card.hole_y = along.nominal;
  card.part.holes.front().y = card.hole_y;
  card.part.id = std::string(adapter.id);
  make_ready(card.part);
  return card;
}

AddInCard carrier(const Adapter& adapter, Bracket bracket) {
  MeasuredCard sizes;
  sizes.height = standards::addin_cards::low_height();  // so that either bracket fits it
  if (adapter.drives > 2) sizes.length = generic::carrier_length();
  AddInCard board = addin_card(adapter.lanes, bracket, sizes);
  // The cards that it carries are placed as what they are: only its own parts near the edge stand on it.
  std::erase_if(board.part.bodies, [](const Body& body) { return body.name == "components"; });
  board.part.id = std::string(adapter.id);
  return board;
}

CarrierSocket carrier_socket(const Adapter& adapter, int position) {
  const double up = standards::addin_cards::lower_edge().nominal + generic::carrier_up().nominal;
  const int row = adapter.drives > 1 ? (position - 1) % 2 : 0;  // two over each other, then the next pair farther on
  const int column = (position - 1) / 2;
  return {generic::carrier_from().nominal + generic::carrier_column().nominal * column,
          up + generic::carrier_apart().nominal * row};
}

Part adapter_part(const Adapter& adapter) {
  Part part;
  if (adapter.becomes == Form::add_in_card) {
    part = carrier(adapter, Bracket::full).part;
    for (const Dimension& each : {generic::carrier_up(), generic::carrier_from(), generic::carrier_apart()})
      part.add(each);
  } else if (adapter.becomes == Form::m2) {
    const auto name = m2::CardName{22, adapter.card_length > 0 ? adapter.card_length : 80, "S1", "M"};
    part = adapter.takes == Form::m2 ? extended(adapter, m2_card(name, {})).part : m2_card(name, {}).part;
  } else if (adapter.takes == Form::m2 || adapter.takes == Form::mini_card) {
    part = in_shell(adapter).part;
  } else {
    const drives::Family& family = family_of(adapter.takes);
    const drives::Height* height = drives::height(family, adapter.takes == Form::drive_2_5 ? "7" : "26.1");
    part = in_adapter(adapter, cased_drive(family, height, {}), 1, std::nullopt).part;
    if (adapter.drives > 1) part.add(generic::second_drive());
  }
  part.id = std::string(adapter.id);
  part.title = std::string(adapter.title);
  part.kind = "adapter";
  return part;
}

}  // namespace baywright::parts
