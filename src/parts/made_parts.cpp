#include "parts/made_parts.h"

#include "parts/adapter.h"
#include "parts/addin_card.h"
#include "parts/cased_drive.h"
#include "parts/mini_card.h"
#include "standards/addin_cards.h"
#include "standards/fasteners.h"
#include "standards/row.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace baywright::parts {

namespace drives = standards::drives;
namespace fasteners = standards::fasteners;
using tolerance::Dimension;
using tolerance::Known;

namespace {

std::string figure(double value) {
  std::string text = tolerance::in_words(value);
  while (text.find('.') != std::string::npos && (text.back() == '0' || text.back() == '.')) {
    const bool point = text.back() == '.';
    text.pop_back();
    if (point) break;
  }
  return text;
}

void add_once(Part& part, const Dimension& dimension) {
  const bool there = std::any_of(part.dimensions.begin(), part.dimensions.end(),
                                 [&](const Dimension& each) { return each.name == dimension.name; });
  if (!there) part.add(dimension);
}

/// A drive as the library shows it: with its holes, what they take, and its connector.
Part shown(CasedDrive drive, const drives::Family* family) {
  Part& part = drive.part;
  if (family != nullptr) add_once(part, family->bottom_across);
  for (const MountHole& hole : drive.holes) {
    if (!hole.side)
      part.holes.push_back({hole.name, hole.x(), -hole.aside(), fasteners::thread(drive.thread)->major.nominal});
    for (const std::vector<Dimension>* rows : {&hole.along, &hole.across})
      for (const Dimension& row : *rows) add_once(part, row);
  }
  for (const auto& depth : {drive.bottom, drive.side}) {
    if (!depth) continue;
    add_once(part, depth->thread);
    add_once(part, depth->most);
    if (depth->warned) add_once(part, *depth->warned);
  }
  if (drive.tongue)
    for (const Dimension& row : {drive.tongue->from_edge, drive.tongue->length, drive.tongue->height})
      add_once(part, row);
  return std::move(part);
}

void add_drives(std::vector<Made>& out) {
  for (const drives::Family& family : drives::families())
    for (const drives::Height& height : family.heights) {
      const std::string code(height.code);
      out.push_back({std::string(family.id) + '/' + code,
                     std::string(family.title) + ", " + code + " mm high (SATA; " +
                         (family.id == "2.5in" ? "U.2, U.3 and SAS" : "SAS") + " too)",
                     "", [&family, &height] { return shown(cased_drive(family, &height, {}), &family); }});
    }
  out.push_back({"5.25in", "device for a 5.25-inch bay", "", [] { return shown(device_5_25({}), nullptr); }});
  for (const drives::Edsff& form : drives::edsff())
    out.push_back({std::string(form.id), std::string(form.title), "", [&form] { return edsff_drive(form, {}).part; }});
}

void add_cards(std::vector<Made>& out) {
  for (const int lanes : standards::addin_cards::lane_counts()) {
    const std::string x = "x" + std::to_string(lanes);
    out.push_back({"add-in card/" + x, "drive or other card for a PCIe " + x + " slot", "",
                   [lanes] { return addin_card(lanes, Bracket::full, {}).part; }});
    out.push_back({"pcie/" + x, "PCIe slot with a body for " + x + " cards", "", [lanes] { return card_slot(lanes); }});
  }
  for (const bool half : {false, true}) {
    const std::string length = half ? "half" : "full";
    out.push_back({"mini card/" + length, "PCI Express mini card of " + length + " length", "",
                   [half] { return mini_card(half, {}).part; }});
    out.push_back(
        {"msata/" + length, "mSATA card of " + length + " length", "", [half] { return mini_card(half, {}).part; }});
  }
  for (const Adapter& each : adapters())
    out.push_back({std::string(each.id), std::string(each.title), "", [&each] { return adapter_part(each); }});
}

std::string head_name(fasteners::Shape shape) {
  switch (shape) {
    case fasteners::Shape::socket_cap:
      return "socket cap head, ISO 4762";
    case fasteners::Shape::pan:
      return "pan head, ISO 7045";
    case fasteners::Shape::flat:
      return "flat head, ISO 7046-1";
    case fasteners::Shape::button:
      return "button head, ISO 7380-1";
  }
  return {};
}

/// A screw with a pan head where one is published, its shank from z = 0 down.
Part screw(const fasteners::Thread& thread, double length) {
  Part part;
  part.kind = "screw";
  const Coordinate major = Coordinate::of(part.add(thread.major));
  const Coordinate long_ = Coordinate::of(part.add(
      standards::untoleranced("screw length", length, "lengths sold; ISO 7045 for metric ones", Known::practice)));
  part.add(thread.pitch);
  part.add(thread.tap_drill);
  for (const Dimension& hole : {thread.hole.fine, thread.hole.medium, thread.hole.coarse}) part.add(hole);
  part.bodies.push_back(round_body("shank", 0.0, 0.0, major, -1.0 * long_, 0.0));
  if (const auto* head = fasteners::head(fasteners::Shape::pan, thread.id)) {
    const Coordinate across = Coordinate::of(part.add(head->diameter));
    const Coordinate high = Coordinate::of(part.add(head->height));
    part.bodies.push_back(round_body("head", 0.0, 0.0, across, 0.0, high));
  }
  return part;
}

Part standoff(const fasteners::Standoff& row, double length) {
  Part part;
  part.kind = "stand-off";
  const std::string market = "sizes sold, a public fastener data set";
  const Coordinate across =
      Coordinate::of(part.add(standards::untoleranced("across flats", row.across_flats, market, Known::secondary)));
  Dimension high = fasteners::standoff_length_limit();
  high.name = "length";
  high.nominal = length;
  const Coordinate top = Coordinate::of(part.add(std::move(high)));
  Body body;
  body.name = "hexagon";
  body.form = Body::Form::prism;
  const double corner = 1.0 / std::sqrt(3.0);  // radius at the corners, of one across flats
  for (int i = 0; i < 6; ++i) {
    const double turn = M_PI / 3.0 * i;
    body.outline.emplace_back(corner * std::sin(turn), corner * std::cos(turn));
  }
  body.low = {-0.5 * across, -corner * across, 0.0};
  body.high = {0.5 * across, corner * across, top};
  part.bodies.push_back(std::move(body));
  if (row.stud) {
    const Coordinate major = Coordinate::of(part.add(fasteners::thread(row.thread)->major));
    const Coordinate stud =
        Coordinate::of(part.add(standards::untoleranced("stud", row.stud_length, market, Known::secondary)));
    part.bodies.push_back(round_body("stud", 0.0, 0.0, major, top, top + stud));
  }
  return part;
}

Part washer(const fasteners::Washer& row) {
  Part part;
  part.kind = "washer";
  const Coordinate bore = Coordinate::of(part.add(row.bore));
  const Coordinate outside = Coordinate::of(part.add(row.outside));
  Body ring = round_body("washer", 0.0, 0.0, outside, 0.0, Coordinate::of(part.add(row.thickness)));
  ring.bore = bore;
  part.bodies.push_back(std::move(ring));
  return part;
}

Part nut(const fasteners::Nut& row) {
  Part part;
  part.kind = "nut";
  const Coordinate across = Coordinate::of(part.add(row.across_flats));
  Body ring = round_body("nut", 0.0, 0.0, across, 0.0, Coordinate::of(part.add(row.height)));
  ring.bore = Coordinate::of(part.add(fasteners::thread(row.thread)->major));
  part.bodies.push_back(std::move(ring));
  return part;
}

Part head(const fasteners::Head& row) {
  Part part;
  part.kind = "screw head";
  const Coordinate across = Coordinate::of(part.add(row.diameter));
  part.bodies.push_back(round_body("head", 0.0, 0.0, across, 0.0, Coordinate::of(part.add(row.height))));
  return part;
}

void add_fasteners(std::vector<Made>& out) {
  for (const fasteners::Thread& thread : fasteners::threads())
    for (const double length : fasteners::screw_lengths(thread.id)) {
      const std::string size = std::string(thread.id) + 'x' + figure(std::round(length * 100.0) / 100.0);
      out.push_back(
          {"screw/" + size,
           "screw " + std::string(thread.id) + ", " + figure(std::round(length * 100.0) / 100.0) + " mm under its head",
           "screw/THREADxLENGTH", [&thread, length] { return screw(thread, length); }});
    }
  for (const fasteners::Standoff& row : fasteners::standoffs())
    for (const double length : row.lengths) {
      const std::string thread(row.thread);
      const std::string ends = row.stud ? "stud and thread" : "thread at both ends";
      out.push_back(
          {"standoff/" + thread + 'x' + figure(length) + (row.stud ? "-stud" : "") + "-s" + figure(row.across_flats),
           "stand-off " + thread + ", " + figure(length) + " mm, hexagon s" + figure(row.across_flats) + ", " + ends,
           "standoff/THREADxLENGTH", [&row, length] { return standoff(row, length); }});
    }
  for (const fasteners::Washer& row : fasteners::washers())
    out.push_back({"washer/" + std::string(row.thread) + '/' + std::string(row.standard),
                   "washer " + std::string(row.thread) + ", " + std::string(row.standard), "washer/THREAD",
                   [&row] { return washer(row); }});
  for (const fasteners::Nut& row : fasteners::nuts())
    out.push_back({"nut/" + std::string(row.thread), "hexagon nut " + std::string(row.thread) + ", ISO 4032",
                   "nut/THREAD", [&row] { return nut(row); }});
  for (const fasteners::Head& row : fasteners::heads()) {
    const std::string thread(row.thread);
    const std::string name = head_name(row.shape);
    out.push_back({"head/" + thread + '/' + name.substr(0, name.find(' ')),
                   name + ", " + thread + ", driver " + std::string(row.driver), "head/THREAD",
                   [&row] { return head(row); }});
  }
}

}  // namespace

const std::vector<Made>& made_parts() {
  static const std::vector<Made> all = [] {
    std::vector<Made> out;
    add_drives(out);
    add_cards(out);
    add_fasteners(out);
    return out;
  }();
  return all;
}

}  // namespace baywright::parts
