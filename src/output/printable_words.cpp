#include "output/printable_words.h"

#include "output/text.h"
#include "tolerance/reading.h"

#include <algorithm>

namespace baywright::output {

namespace {

using plans::Printable;
using plans::PrintedHole;
using tolerance::Dimension;
using tolerance::in_words;
using Kind = Printable::Kind;

Box box_of(const Printable& part) {
  if (part.outside > 0.0) return {Vec2(-0.5 * part.outside), Vec2(0.5 * part.outside)};
  Box out{part.outline.front(), part.outline.front()};
  for (const Vec2& p : part.outline) out = {glm::min(out.low, p), glm::max(out.high, p)};
  return out;
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
  if (part.outside > 0.0)
    return out + in_words(part.height) + " mm: hole " + hole_words(part.holes[0], cut) + ", " + in_words(part.outside) +
           " across: " + file;
  const Box box = box_of(part);
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
  if (std::max({box.width(), box.height(), part.height}) > 100.0)
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

void say_guide(std::vector<std::string>& out) {
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
      say_guide(said);
      break;
    case Kind::plate:
      say_plate(cut, said);
      break;
  }
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
  if (part.outside > 0.0)
    outline.add(Disc{at(Vec2(0.0)), 0.5 * part.outside, "", pen});
  else
    add(outline, part.outline);
  Group holes;
  holes.name = "holes";
  for (const Outline& opening : part.openings) add(holes, opening);
  for (const PrintedHole& each : part.holes) holes.add(Disc{at(each.at), 0.5 * each.asked, "", pen});
  sheet.all.add(std::move(outline));
  sheet.all.add(std::move(holes));
  return sheet;
}

}  // namespace baywright::output
