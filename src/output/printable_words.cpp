#include "output/printable_words.h"

#include "output/text.h"
#include "plans/printed_mark.h"
#include "tolerance/reading.h"

#include <algorithm>

namespace baywright::output {

namespace {

using plans::Printable;
using plans::PrintedHole;
using tolerance::Dimension;
using tolerance::in_words;
using Kind = Printable::Kind;

Box box_of(const Outline& outline) {
  Box out{outline.front(), outline.front()};
  for (const Vec2& p : outline) out = {glm::min(out.low, p), glm::max(out.high, p)};
  return out;
}

Box box_of(const Printable& part) {
  if (part.mark) return box_of(plans::marked_outline(part));
  if (part.outside > 0.0) return {Vec2(-0.5 * part.outside), Vec2(0.5 * part.outside)};
  return box_of(part.outline);
}

std::string from(const Dimension& row) {
  return '(' + row.source + "; " + std::string(word(row.known)) + ')';
}

bool one_size(const Printable& part) {
  return std::all_of(part.holes.begin(), part.holes.end(),
                     [&](const PrintedHole& each) { return each.asked == part.holes[0].asked; });
}

/// "3.60 (3.40 and 0.20 for what printing shrinks)"
std::string hole_words(const PrintedHole& hole, bool cut) {
  if (cut || hole.drawn == hole.asked) return in_words(hole.asked);
  return in_words(hole.drawn) + " (" + in_words(hole.asked) + " and " + in_words(hole.drawn - hole.asked) +
         " for what printing shrinks)";
}

std::string first_line(const Printable& part, const std::string& file, bool cut) {
  std::string out = "made " + part.name + ", ";
  const Box box = box_of(part);
  if (part.outside > 0.0)
    return out + in_words(part.height) + " mm: hole " + hole_words(part.holes[0], cut) + ", " + in_words(part.outside) +
           " across" + (part.mark ? ", " + in_words(box.width()) + " with its tab" : "") + ": " + file;
  if (part.bent && !cut)
    out += in_words(box.width()) + " mm long, foot " + in_words(part.bent->foot) + ", upright " +
           in_words(part.bent->upright) + ", " + in_words(part.height) + " thick";
  else
    out += in_words(box.width()) + " x " + in_words(box.height()) + " x " + in_words(part.height) + " mm";
  if (!part.holes.empty()) {
    const std::size_t count = part.holes.size();
    out += ": " + std::to_string(count) + (count == 1 ? " hole" : " holes") + " of ";
    if (one_size(part)) {
      out += hole_words(part.holes[0], cut);
    } else {
      out += "several sizes";
      const double more = part.holes[0].drawn - part.holes[0].asked;
      if (!cut && more > 0.0) out += ", each with " + in_words(more) + " for what printing shrinks";
    }
  }
  return out + ": " + file;
}

/// What the way of printing holds.
std::vector<std::string> limits(const Printable& part) {
  std::vector<std::string> out;
  const Dimension& hole = *part.process->diameter;
  const Dimension& size = *part.process->size;
  if (!part.holes.empty()) {
    const PrintedHole& first = part.holes[0];
    const double more = first.drawn - first.asked;
    out.push_back("Holes come out " +
                  (one_size(part) ? in_words(first.drawn + hole.low()) + " to " + in_words(first.drawn + hole.high())
                                  : in_words(-more - hole.low()) + " under to " + in_words(more + hole.high()) +
                                        " over what was asked for") +
                  ' ' + from(hole) + '.');
  }
  const Box box = box_of(part);
  std::string lengths = "Lengths come out ±" + in_words(size.plus) + ' ' + from(size) + '.';
  const double longest = part.bent ? std::max({box.width(), part.bent->foot, part.bent->upright})
                                   : std::max({box.width(), box.height(), part.height});
  if (longest > 100.0)
    lengths += " Beyond 100 mm it is more, and no figure is known here: print a strip first and measure it.";
  out.push_back(lengths);
  if (!part.openings.empty())
    out.emplace_back("Openings of the outline that are not round are as drawn: nothing is allowed on them.");
  return out;
}

std::string check_of_length(const Printable& part) {
  std::string out = "Check the length with a caliper before it goes in";
  if (part.needed)
    out += ": the build counts on " + in_words(*part.needed) + ". Print more than are needed, take those of one length";
  return out + '.';
}

void say_spacer(const Printable& part, bool cut, std::vector<std::string>& out) {
  out.push_back(check_of_length(part) + " See that " + in_words(part.outside) + " across have room where it stands.");
  if (cut) return;
  out.emplace_back(
      "A printed spacer creeps under its screw, most of all when warm: do not use it near heat, tighten by "
      "hand, and try the screw again after a week (common practice, no source).");
}

void say_standoff(const Printable& part, std::vector<std::string>& out) {
  out.push_back("The hole is for a heat-set insert of one maker's size: compare with yours before printing. " +
                check_of_length(part));
  out.emplace_back(
      "Melt the insert in straight, with an iron, away from the machine: hot metal and plastic burn, and the fumes "
      "want a window open. It loosens when warm: do not use it near heat (common practice, no source).");
}

void say_guide(const Printable& part, std::vector<std::string>& out) {
  if (part.bend_between)
    out.emplace_back(
        "A bend of the panel runs between a datum edge and these holes: drill flat, before bending; on a bent panel "
        "the guide does not lie.");
  out.emplace_back(
      "Lay the face that was on the print bed on the panel's face with the drives, the cut corner where the datum "
      "edges A and B meet, both edges flush (a steel block against each), and clamp it. Measure two holes from the "
      "edges before drilling.");
  out.emplace_back(
      "It is for the pilot drill only: open its holes with that drill, by hand; it wears, so watch for play. Then "
      "drill to size as the template says (baywright drill).");
  out.emplace_back(
      "Power off and unplugged, the panel off or the boards out, eye protection, every chip out before anything goes "
      "back in.");
}

void say_plate(bool cut, std::vector<std::string>& out) {
  out.emplace_back("Try it on the machine, power off and unplugged, before anything is screwed to it.");
  if (!cut)
    out.emplace_back(
        "Printed plastic creeps and does not conduct: no use near heat, nor where a screw earths a part (common "
        "practice, no source).");
}

/// A screw that is too long meets what is inside.
std::string screws_into(const standards::drives::Family& drive, const standards::drives::Depth& depth,
                        const std::optional<Dimension>& thin) {
  const Dimension& most = depth.warned ? *depth.warned : depth.most;
  return std::string(drive.thread) + " screws into the drive may reach " + in_words(most.nominal) + " mm" +
         (thin ? ", and into one of " + in_words(drive.thin->up_to) + " or less " + in_words(thin->nominal) : "") +
         " further than this part is thick: a longer one meets what is inside " + from(most) + '.';
}

/// Of holes that both a maker and a printer place.
std::string holes_meet(const Printable& part, const Dimension& theirs, bool cut) {
  return "Screw holes are coarse (ISO 273): the drive's own may be off by " + in_words(theirs.plus) +
         (cut ? "" : ", and printed ones by " + in_words(part.process->position->plus)) +
         " each. Where they do not meet, open them with a file; washers under the heads.";
}

std::string insert_words(const Printable& part) {
  return "Holes for " + part.insert +
         " heat-set inserts are of one maker's size: compare with yours before printing. "
         "Melt them in straight, with an iron, away from the machine: hot metal and plastic burn, and the fumes want a "
         "window open.";
}

void say_bend(const Printable& part, std::vector<std::string>& out) {
  const plans::Bent& bent = *part.bent;
  out.push_back(
      "Cut list: two of these, one for each side of the drive. Bend each by 90 degrees along the line on layer "
      "BEND, the burr inside, to " +
      in_words(bent.radius) + " inside: legs of " + in_words(bent.foot) + " with the foot's holes and of " +
      in_words(bent.upright) + ", measured over their outer faces.");
  const auto k = standards::general_tolerances::neutral_line();
  out.push_back("The bend takes up " + in_words(bent.allowance) + " of flat sheet, and between " +
                in_words(bent.least_allowance) + " and " + in_words(bent.most_allowance) +
                " by material and tools: pi/2 (r + K t) with K " + in_words(k.least) + " to " + in_words(k.most) +
                " (a bend calculator's page; secondary). Bend a strip first and measure both legs.");
}

void say_bracket(const Printable& part, bool cut, std::vector<std::string>& out) {
  const plans::Bent& bent = *part.bent;
  if (cut)
    say_bend(part, out);
  else
    out.emplace_back(
        "Print two, one for each side of the drive, standing on end as they are, with a brim: layers then run round "
        "the bend (common practice, no source).");
  out.push_back("The drive's base stands " + in_words(bent.raised) + " over the panel, the foot's holes " +
                in_words(bent.foot_hole) +
                " beside the drive and as far apart along it as those of its side. Measure "
                "yours before the panel is drilled. Whether the bracket has room in the machine is not checked.");
  const auto& drive = *part.drive;
  out.push_back(holes_meet(part, drive.side_rows.front().along.front(), cut));
  out.push_back(
      screws_into(drive, drive.side_screw, drive.thin ? std::optional(drive.thin->side_screw.most) : std::nullopt));
}

void say_adapter(const Printable& part, bool cut, std::vector<std::string>& out) {
  out.emplace_back(
      "The drive lies in the middle, its connector end flush with that of a larger drive: a cable reaches it, a "
      "backplane does not. The outer holes have no thread: a screw from below wants a nut on top or an insert.");
  out.emplace_back(
      "Heads of the drive's screws stand out below: lay the plate on washers or spacers, or where the place is open "
      "under them.");
  out.push_back(holes_meet(part, part.drive->bottom_rows.front().along.front(), cut));
  out.push_back(screws_into(*part.drive, part.drive->bottom_screw, std::nullopt));
  out.push_back("Drives of " + in_words(part.drive->thin->up_to) +
                " and less need not have holes in the base: turn yours over and look.");
}

void say_mark(const Printable& part, bool cut, std::vector<std::string>& out) {
  const plans::Mark& mark = *part.mark;
  const std::string what = part.kind == Kind::guide ? ", the diameter of its holes," : "";
  if (cut)
    out.push_back("The figures " + mark.text + what + " on layer MARK are to be engraved, not cut.");
  else
    out.push_back("The figures " + mark.text + what +
                  (mark.through ? " go right through" : " are sunk by " + in_words(mark.depth)) +
                  (part.outside > 0.0 ? " on a tab, whose room is to be seen to; cut it off where it is in the way."
                                      : " where nothing lies on them."));
}

}  // namespace

std::string printable_text(const Printable& part, const std::string& file, bool cut) {
  std::vector<std::string> said;
  if (cut)
    said.emplace_back(
        "To be cut: holes are as asked for, without what printing shrinks; the width of the cut is for the machine to "
        "allow. Deburr: cut edges are sharp.");
  else
    said = limits(part);
  switch (part.kind) {
    case Kind::spacer:
    case Kind::shim:
      say_spacer(part, cut, said);
      break;
    case Kind::standoff:
      say_standoff(part, said);
      break;
    case Kind::guide:
      say_guide(part, said);
      break;
    case Kind::plate:
      say_plate(cut, said);
      break;
    case Kind::bracket:
      say_bracket(part, cut, said);
      say_plate(cut, said);
      break;
    case Kind::adapter:
      say_adapter(part, cut, said);
      say_plate(cut, said);
      break;
  }
  if (!part.insert.empty()) said.push_back(insert_words(part));
  if (part.mark) say_mark(part, cut, said);
  std::string out = wrapped(first_line(part, file, cut), 2) + '\n';
  for (const std::string& each : said) out += wrapped(each, 0) + '\n';
  return out;
}

Sheet printable_cut(const Printable& part) {
  const Box box = box_of(part);
  Sheet sheet;
  sheet.width = box.width();
  sheet.height = box.height();
  sheet.title = part.name + ", " + in_words(part.height) + " mm thick";
  sheet.description = sheet.title;
  const auto at = [&](const Vec2& p) { return Vec2(p.x - box.low.x, box.high.y - p.y); };
  const Pen pen{thick_line, ink, false};
  const auto add = [&](Group& group, const Outline& outline) {
    std::vector<Vec2> points;
    for (const Vec2& p : outline) points.push_back(at(p));
    group.add(Line{points, true, pen});
  };
  Group outline;
  outline.name = "outline";
  if (part.outside > 0.0 && !part.mark)
    outline.add(Disc{at(Vec2(0.0)), 0.5 * part.outside, "", pen});
  else
    add(outline, part.mark ? plans::marked_outline(part) : part.outline);
  Group holes;
  holes.name = "holes";
  for (const Outline& opening : part.openings) add(holes, opening);
  for (const PrintedHole& each : part.holes) holes.add(Disc{at(each.at), 0.5 * each.asked, "", pen});
  sheet.all.add(std::move(outline));
  sheet.all.add(std::move(holes));
  if (!part.bends.empty()) {
    Group bends;
    bends.name = "bend";
    for (const auto& [from, to] : part.bends) bends.add(Line{{at(from), at(to)}, false, pen});
    sheet.all.add(std::move(bends));
  }
  if (part.bent) {
    Group bend;
    bend.name = "bend";
    const double line = part.bent->flat_foot(part.height) + 0.5 * part.bent->allowance;
    bend.add(Line{{at({box.low.x, line}), at({box.high.x, line})}, false, pen});
    sheet.all.add(std::move(bend));
  }
  if (part.mark) {
    Group mark;
    mark.name = "mark";
    for (const Outline& stroke : part.mark->strokes) add(mark, stroke);
    sheet.all.add(std::move(mark));
  }
  return sheet;
}

}  // namespace baywright::output
