#include "output/text.h"

#include "output/measure_words.h"
#include "output/words.h"
#include "tolerance/draw.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <cmath>
#include <sstream>

namespace baywright::output {

using fit::Check;
using fit::Finding;
using fit::Seating;
using fit::Verdict;

std::size_t columns(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

std::string padded(std::string text, std::size_t width) {
  const std::size_t have = columns(text);
  return have < width ? text + std::string(width - have, ' ') : text;
}

std::string wrapped(const std::string& text, std::size_t indent, std::size_t width) {
  std::string out;
  std::size_t column = indent;
  bool first = true;
  std::istringstream in(text);
  for (std::string word; in >> word;) {
    const std::size_t size = columns(word);
    if (!first && column + 1 + size > width) {
      out += '\n' + std::string(indent, ' ') + word;
      column = indent + size;
    } else {
      if (!first) out += ' ';
      column += size + (first ? 0 : 1);
      out += word;
    }
    first = false;
  }
  return out;
}

bool Tally::good(const Seating& seating) const {
  return seating.verdict == Verdict::fits || (accept_marginal && seating.verdict == Verdict::marginal);
}

bool Tally::holds(const Check& check) const {
  std::vector<std::pair<std::string, bool>> drives;
  for (const Seating& seating : check.seatings) {
    auto known = std::find_if(drives.begin(), drives.end(), [&](const auto& d) { return d.first == seating.drive; });
    if (known == drives.end()) known = drives.insert(drives.end(), {seating.drive, every});
    known->second = every ? known->second && good(seating) : known->second || good(seating);
  }
  return !drives.empty() && std::all_of(drives.begin(), drives.end(), [](const auto& d) { return d.second; });
}

namespace {

/// Colour of the verdict word on a terminal; the word says it, colour only helps the eye.
std::string painted(Verdict verdict, bool colour) {
  const std::string text = word(verdict);
  if (!colour) return text;
  const char* code = verdict == Verdict::fits        ? "1;34"
                     : verdict == Verdict::marginal  ? "1;33"
                     : verdict == Verdict::undecided ? "1;37"
                                                     : "1;31";
  return "\x1b[" + std::string(code) + 'm' + text + "\x1b[0m";
}

std::vector<std::string> drives_of(const Check& check) {
  std::vector<std::string> out;
  for (const Seating& seating : check.seatings)
    if (std::find(out.begin(), out.end(), seating.drive) == out.end()) out.push_back(seating.drive);
  return out;
}

/// The first line: the answer.
std::string answer(const Check& check, const Tally& tally) {
  const std::vector<std::string> drives = drives_of(check);
  const std::string by = check.method == tolerance::Method::worst     ? ""
                         : check.method == tolerance::Method::sampled ? " (" + in_words(check.sampling) + ")"
                                                                      : " (limits by " + in_words(check.method) + ")";
  if (check.seatings.size() == 1) {
    const Seating& only = check.seatings.front();
    return only.drive + " in " + only.place + ": " + word(only.verdict) + by + ".";
  }
  std::string fitting;
  std::size_t count = 0;
  for (const std::string& drive : drives) {
    std::string places;
    bool everywhere = true;
    for (const Seating& seating : check.seatings) {
      if (seating.drive != drive) continue;
      if (tally.good(seating))
        places += (places.empty() ? "" : " and ") + seating.place;
      else
        everywhere = false;
    }
    if (places.empty() || (tally.every && !everywhere)) continue;
    ++count;
    fitting += (fitting.empty() ? "" : "; ") + drive + " in " + places;
  }
  const std::string where = tally.every ? " at every place" : "";
  if (count == 0 && drives.size() == 1)
    return drives.front() + (tally.every ? " does not fit at every place" : " fits nowhere here") + by + ".";
  if (count == 0) return "None of the " + std::to_string(drives.size()) + " drives fits" + where + by + ".";
  const std::string all = count == drives.size()
                              ? (drives.size() == 1   ? "The drive"
                                 : drives.size() == 2 ? "Both drives"
                                                      : "All " + std::to_string(count) + " drives")
                              : std::to_string(count) + " of " + std::to_string(drives.size()) + " drives";
  return all + (count == 1 ? " fits" : " fit") + where + by + ": " + fitting + ".";
}

void add_line(std::string& out, const std::string& label, const std::string& text) {
  constexpr std::size_t indent = 15;
  std::string head = "  " + label;
  head.resize(std::max(indent, head.size() + 1), ' ');
  out += head + wrapped(text, head.size()) + '\n';
}

/// What else of the drive does not clear the same part of the machine.
std::string others_at(const Seating& seating, const Finding& first) {
  std::vector<std::string> others;
  for (const Finding& finding : seating.findings) {
    const bool closing = finding.kind == fit::Kind::clearance && finding.verdict && finding.verdict != Verdict::fits;
    if (closing && finding.between[1] == first.between[1] && &finding != &first) others.push_back(subject(finding, 0));
  }
  if (others.empty()) return {};
  std::string out = " So " + std::string(others.size() == 1 ? "does" : "do");
  for (std::size_t i = 0; i < others.size(); ++i)
    out += (i == 0 ? " " : i + 1 == others.size() ? " and " : ", ") + others[i];
  return out + " (baywright explain has the figures).";
}

void add_seating(std::string& out, const Seating& seating, const Check& check, bool colour) {
  out += '\n' + seating.drive + " in " + seating.place + ": " + painted(seating.verdict, colour);
  const std::string share = share_in_words(seating, check.sampling);
  if (!share.empty()) out += ", " + share;
  out += '\n';
  const std::pair<const char*, const fit::Question*> questions[] = {{"form factor", &seating.questions.form_factor},
                                                                    {"interface", &seating.questions.interface},
                                                                    {"bus", &seating.questions.bus}};
  const bool other = seating.questions.form_factor.why.code == fit::Code::other_form;
  for (const auto& [name, question] : questions) {
    if (other && question != &seating.questions.form_factor) break;  // the others follow from it
    add_line(out, name,
             (question->answer == fit::Answer::yes ? "yes. " : word(question->answer) + ". ") + say(question->why));
  }
  std::size_t clear = 0;
  std::vector<std::string> met;  // parts of the machine that a line is about already
  for (const Finding& finding : seating.findings) {
    const bool question = finding.kind == fit::Kind::form_factor || finding.kind == fit::Kind::interface ||
                          finding.kind == fit::Kind::bus || finding.kind == fit::Kind::length ||
                          finding.kind == fit::Kind::link;
    if (question) continue;  // said above
    const bool clearance = finding.kind == fit::Kind::clearance;
    if (clearance && finding.verdict == Verdict::fits && ++clear > 1) continue;  // the closest is enough
    // A screw is neither too long nor too short: one line says it.
    if (finding.verdict == Verdict::fits &&
        (finding.why.code == fit::Code::screw_short || finding.why.code == fit::Code::outer_screw_short))
      continue;
    const bool closing = clearance && finding.verdict && finding.verdict != Verdict::fits;
    if (closing && std::find(met.begin(), met.end(), finding.between[1]) != met.end()) continue;  // said with the first
    if (closing) met.push_back(finding.between[1]);
    const std::string need = say_need(finding) + (closing ? others_at(seating, finding) : "");
    add_line(out,
             !finding.verdict                    ? "note"
             : *finding.verdict != Verdict::fits ? word(*finding.verdict)
             : clearance                         ? "closest"
                                                 : word(finding.kind),
             say(finding, check.method) + (need.empty() ? "" : " " + need));
  }
  if (seating.verdict == Verdict::fits && clear == 0)
    add_line(out, "closest",
             "Nothing comes nearer than what is asked and " + tolerance::in_words(fit::shown_beyond_mm) + " mm more.");
}

}  // namespace

namespace {

std::string limits_in_words(const Check& check) {
  if (check.method != tolerance::Method::sampled) return in_words(check.method);
  if (check.sampling.builds < fit::fewest_for_limits)
    return "worst case; " + in_words(check.sampling) + ", too few for limits";
  return in_words(check.sampling) + "; one build in 740 lies beyond each, so what fits may fail that rarely";
}

}  // namespace

std::string closing(const Check& check, const std::string& more) {
  std::string out = '\n' +
                    wrapped("Limits: " + limits_in_words(check) +
                                ". Clearance asked for: " + tolerance::in_words(check.clearance) + " mm. " + more,
                            0) +
                    '\n';
  for (const Finding& note : check.notes) out += wrapped("Note: " + say(note, check.method), 0) + '\n';
  for (const std::string& caution : cautions(check.drills, false)) out += wrapped(caution, 0) + '\n';
  return out;
}

std::string check_text(const Check& check, const Tally& tally, bool colour, const Settlings& settlings) {
  std::string out = wrapped(answer(check, tally), 0) + '\n';
  for (std::size_t i = 0; i < check.seatings.size(); ++i) {
    add_seating(out, check.seatings[i], check, colour);
    if (i < settlings.size() && settlings[i]) add_line(out, "to settle it", say(*settlings[i]));
  }
  const bool several = drives_of(check).size() > 1;
  out += closing(check, (several ? "Each drive is tried alone: --together has all at once. " : "") +
                            ("The chain behind each figure: baywright explain " + check.file));
  return out;
}

double weight(const fit::ChainLink& link, tolerance::Method method) {
  const tolerance::Dimension& d = link.dimension;
  const double half = d.open() ? std::min(d.minus, d.plus) : 0.5 * (d.minus + d.plus);
  const double part = std::abs(link.sensitivity) * half;
  if (method == tolerance::Method::sampled && !d.open())
    return link.sensitivity * link.sensitivity * tolerance::variance(d);
  return method == tolerance::Method::worst ? part : part * part;
}

namespace {

void add_chain(std::string& out, const Finding& finding, tolerance::Method method) {
  double whole = 0.0;
  std::size_t name_width = 9;
  std::size_t value_width = 5;
  double constant = finding.gap->nominal;
  for (const fit::ChainLink& link : finding.chain) {
    whole += weight(link, method);
    name_width = std::max(name_width, columns(link.dimension.name));
    value_width = std::max(value_width, columns(tolerance::in_words(link.dimension)));
    constant -= link.sensitivity * link.dimension.nominal;
  }
  name_width = std::min<std::size_t>(name_width, 34);
  out += "    " + padded("dimension", name_width) + "  " + padded("value", value_width) +
         "   times  share of variation, source\n";
  for (const fit::ChainLink& link : finding.chain) {
    char times[16];
    std::snprintf(times, sizeof times, "%+7.3f", link.sensitivity);
    char share[16];
    std::snprintf(share, sizeof share, "%5.1f %%", whole > 0.0 ? 100.0 * weight(link, method) / whole : 0.0);
    const std::string head = "    " + padded(link.dimension.name, name_width) + "  " +
                             padded(tolerance::in_words(link.dimension), value_width) + "  " + times + "  " + share +
                             "  ";
    const std::string source = (link.dimension.source.empty() ? "no source given" : link.dimension.source) + " (" +
                               std::string(tolerance::word(link.dimension.known)) + ")";
    const bool wide = columns(head) > 66;  // no room beside it
    out += wide ? head + "\n        " + wrapped(source, 8) + '\n' : head + wrapped(source, columns(head)) + '\n';
  }
  if (std::abs(constant) > 5e-5)
    out += "    " + padded("fixed lengths", name_width) + "  " + tolerance::in_words(constant) + '\n';
}

std::string say_shared(const geometry::Bounds& box) {
  std::string out = "at nominal both take up a room of " + size_words(box) + ":";
  for (int axis = 0; axis < 3; ++axis) {
    const auto at = [](double mm) { return tolerance::in_words(std::round(mm * 100.0) / 100.0); };
    out += axis == 0 ? " " : ", ";
    out += std::string(1, "xyz"[axis]) + ' ' + at(box.low[axis]) + " .. " + at(box.high[axis]);
  }
  return out;
}

}  // namespace

std::string explain_text(const Check& check, bool all, const Settlings& settlings) {
  std::string out;
  for (std::size_t i = 0; i < check.seatings.size(); ++i) {
    const Seating& seating = check.seatings[i];
    out += (out.empty() ? "" : "\n") + seating.drive + " in " + seating.place + ": " + word(seating.verdict);
    if (const std::string share = share_in_words(seating, check.sampling); seating.sure && !share.empty())
      out += ", " + share;
    out += '\n';
    if (i < settlings.size() && settlings[i]) out += "  " + wrapped("To settle it: " + say(*settlings[i]), 2) + '\n';
    std::size_t clear = 0;
    std::size_t left = 0;
    for (const Finding& finding : seating.findings) {
      if (finding.gap && finding.verdict == Verdict::fits && ++clear > 1 && !all) {
        ++left;
        continue;
      }
      const std::string label = finding.verdict ? word(*finding.verdict) : "note";
      out += "\n  " + wrapped(label + ": " + say(finding, check.method), 2) + '\n';
      if (!finding.gap) continue;
      const auto limit = [](double value) {
        return std::isfinite(value) ? tolerance::in_words(value) : std::string("open");
      };
      std::string figures =
          "gap " + tolerance::in_words(finding.gap->nominal) + ", limits " + limit(finding.gap->min) + " .. " +
          limit(finding.gap->max) + " (" +
          (finding.drawn ? in_words(check.sampling) : in_words(tolerance::chain_method(check.method))) + "), asked " +
          tolerance::in_words(finding.gap->asked);
      if (finding.share) figures += ", enough in " + percent(*finding.share) + " of builds";
      const bool aside = finding.kind == fit::Kind::holes || finding.kind == fit::Kind::screw;  // no way makes room
      if (!aside && glm::length(finding.toward) > 0.5)
        figures += "; room is gained by moving " + subject(finding, 0) + " toward " + direction_words(finding.toward);
      out += "    " + wrapped(figures, 4) + '\n';
      if (finding.shared) {
        out += "    " + wrapped(say_shared(*finding.shared), 4) + '\n';
        out += "    " + wrapped(cautions(false, true).front(), 4) + '\n';
      }
      add_chain(out, finding, check.method);
      const std::string need = say_need(finding);
      if (!need.empty()) out += "    " + wrapped(need, 4) + '\n';
    }
    if (left > 0)
      out += "\n  " + std::to_string(left) + (left == 1 ? " wider gap fits" : " wider gaps fit") +
             " too (--all shows the chains)\n";
  }
  return out;
}

}  // namespace baywright::output
