// The answer: two sentences for who asked, and what qualifies them.
#include "output/answer_words.h"
#include "output/report_pieces.h"
#include "output/value_words.h"
#include "output/words.h"
#include "value/capacity.h"

#include <algorithm>

namespace baywright::output {

using fit::Verdict;
using value::Column;

namespace {

/// Why a seating is not a fit, as what follows a colon.
std::string why(Language language, const fit::Seating& seating) {
  const fit::Finding* finding = answering(seating);
  return finding != nullptr ? why_not(language, *finding) : phrase(language, "why other");
}

/// All changes of a plan.
std::string changes(Language language, const plans::Plan& plan) {
  std::string out;
  for (const plans::Change& change : plan.changes) out += (out.empty() ? "" : "; ") + say(language, change);
  return out;
}

class OfList {
 public:
  explicit OfList(const Report& report) : report_(report), list_(*report.buying), language_(report.language) {}

  [[nodiscard]] Spoken run() const {
    if (!list_.choice.taken) return none();
    const std::size_t taken = *list_.choice.taken;
    Spoken out;
    out.verdict = list_.tried[taken] ? list_.tried[taken]->seating.verdict : Verdict::undecided;
    out.word = list_.tried[taken] ? word(language_, out.verdict) : phrase(language_, "not tried");
    out.sentences.push_back(take(taken));
    if (const std::string more = fastest(taken); !more.empty()) out.sentences.push_back(more);
    const value::Appraisal& of = list_.appraisals[taken];
    if (of.upgrade && list_.now != nullptr)
      if (std::string line = say(language_, *of.upgrade, *list_.now); !line.empty())
        out.notes.push_back(std::move(line));
    if (list_.daily && of.lasts != true) out.notes.push_back(phrase(language_, "none lasts", {{"daily", daily()}}));
    if (const std::string passed = passed_over(); !passed.empty()) out.notes.push_back(passed);
    return out;
  }

 private:
  [[nodiscard]] std::string name(std::size_t i) const { return named(list_.offers[i].name); }
  [[nodiscard]] std::string daily() const { return figure(language_, list_.daily->gigabytes, 1); }

  [[nodiscard]] std::string take(std::size_t i) const {
    const std::string words = ground(i);
    const auto& tried = list_.tried[i];
    std::string among;
    if (!words.empty()) {
      const bool endure = !list_.choice.passed_over.empty();
      const char* const key = tried ? (endure ? "of those made for" : "of those that fit")
                                    : (endure ? "of the list made for" : "of the list");
      among = phrase(language_, key, {{"ground", words}, {"daily", endure ? daily() : std::string()}});
      among = phrase(language_, tried ? "and" : "because",
                     {{"ground", tried || language_ == Language::english ? among : sentence(among)}});
    }
    if (among.ends_with("..")) among.pop_back();
    if (!tried) {
      if (among.ends_with('.')) among.pop_back();
      return phrase(language_, "take unchecked", {{"drive", name(i)}, {"ground", among}});
    }
    return phrase(language_, "take",
                  {{"drive", name(i)}, {"place", quoted(language_, tried->seating.place)}, {"ground", among}});
  }

  /// By what the list is in order, in plain words; empty where it is by nothing that counts.
  [[nodiscard]] std::string ground(std::size_t i) const {
    const auto said = [&](const char* key, const std::string& words) {
      return phrase(language_, key, {{"figure", words}});
    };
    if (!list_.by.column && !list_.by.weights.empty())
      return list_.scores[i] ? said("ground score", figure(language_, *list_.scores[i], 2)) : std::string();
    const Column column = list_.by.column.value_or(Column::per_gigabyte);
    const auto value = value::figure_of(column, list_.offers[i], list_.appraisals[i]);
    if (!value) return {};
    const std::string plain_figure = figure(language_, *value, 2);
    switch (column) {
      case Column::price:
        return said("ground price", amount(language_, *value, list_.currency, 2));
      case Column::per_gigabyte:
        return said("ground gigabyte", amount(language_, *value, list_.currency, 3));
      case Column::per_tbw:
        return said("ground per tbw", amount(language_, *value, list_.currency, 2));
      case Column::capacity:
        return said("ground capacity", capacity(language_, *value));
      case Column::read:
      case Column::write: {
        const bool read = column == Column::read;
        const auto alike = value::held_alike(list_.offers, list_.appraisals, list_.standings, list_.order, i, read);
        return said(alike.size() > 1 ? "ground alike"
                    : read           ? "ground read"
                                     : "ground write",
                    figure(language_, *value, 0) + " MB/s");
      }
      case Column::tbw:
        return said("ground tbw", plain_figure + " TB");
      case Column::dwpd:
        return said("ground dwpd", plain_figure);
      case Column::years:
        return said("ground years", plain_figure);
      case Column::warranty:
        return said("ground warranty", years(language_, *value));
      case Column::name:
        break;
    }
    return {};
  }

  /// What of the fastest, or of who asks for it.
  [[nodiscard]] std::string fastest(std::size_t taken) const {
    const auto found = value::fastest(list_.offers);
    if (!found) return {};
    const std::size_t i = *found;
    const value::Appraisal& of = list_.appraisals[i];
    const auto alike = value::held_alike(list_.offers, list_.appraisals, list_.standings, list_.order, i, true);
    if (i == taken) return alike.size() > 1 ? std::string() : phrase(language_, "fastest is it");
    if (const std::string absent = not_found(i); !absent.empty()) return absent;
    if (list_.tried[i] && list_.tried[i]->seating.verdict != Verdict::fits) {
      const fit::Seating& seating = list_.tried[i]->seating;
      const bool sure = seating.verdict == Verdict::does_not_fit;
      return phrase(language_, sure ? "fastest fits not" : "fastest unsure",
                    {{"drive", name(i)}, {"why", why(language_, seating)}});
    }
    const std::string rate = of.ceiling ? figure(language_, of.ceiling->megabytes, 0) : std::string();
    if (alike.size() > 1)
      return phrase(language_, "fastest alike",
                    {{"drive", name(i)}, {"figure", rate}, {"count", std::to_string(alike.size())}});
    for (const value::Remark& remark : of.remarks)
      if (remark.code == value::Code::slower_here)
        return phrase(
            language_, "fastest slower",
            {{"drive", name(i)}, {"figure", rate}, {"share", localized(language_, percent(remark.figure("share")))}});
    const auto read = value::figure_of(Column::read, list_.offers[i], of);
    const auto own = value::figure_of(Column::read, list_.offers[taken], list_.appraisals[taken]);
    const auto here = of.per_gigabyte;
    const auto there = list_.appraisals[taken].per_gigabyte;
    if (!read || !own || !(*read > *own) || !here || !there || !(*here > *there)) return {};
    return phrase(language_, "fastest dearer",
                  {{"drive", name(i)},
                   {"figure", figure(language_, *read, 0)},
                   {"own", figure(language_, *own, 0)},
                   {"price", amount(language_, *here, list_.currency, 3)},
                   {"own price", amount(language_, *there, list_.currency, 3)}});
  }

  /// Of a drive whose bus is not wired there.
  [[nodiscard]] std::string not_found(std::size_t i) const {
    if (list_.tried[i]) {
      const fit::Finding* finding = answering(list_.tried[i]->seating);
      if (finding != nullptr && finding->why.code == fit::Code::bus_absent)
        return phrase(language_, "fastest absent", {{"drive", name(i)}, {"why", why_not(language_, *finding)}});
      return {};
    }
    for (const value::Remark& remark : list_.appraisals[i].remarks)
      if (remark.code == value::Code::bus_not_carried) {
        fit::Finding said;
        said.why = {fit::Code::bus_absent, {{"wired", remark.word("slot")}, {"drive", remark.word("own")}}, {}};
        return phrase(language_, "fastest absent", {{"drive", name(i)}, {"why", why_not(language_, said)}});
      }
    return {};
  }

  /// Who would have come first but for its endurance.
  [[nodiscard]] std::string passed_over() const {
    std::string out;
    for (const std::size_t i : list_.choice.passed_over) {
      const value::Appraisal& of = list_.appraisals[i];
      out += (out.empty() ? " " : "; ") +
             (of.years ? phrase(language_, "passed soon",
                                {{"drive", name(i)}, {"daily", daily()}, {"figure", years(language_, *of.years)}})
                       : phrase(language_, "passed unknown", {{"drive", name(i)}}));
    }
    return out.empty() ? out : phrase(language_, "passed over") + out + '.';
  }

  /// Where none is taken: the first that a change would help, else why the first does not go.
  [[nodiscard]] Spoken none() const {
    Spoken out;
    out.verdict = Verdict::does_not_fit;
    const std::string count = std::to_string(list_.offers.size());
    const auto& shown = report_.offer ? list_.tried[*report_.offer] : std::optional<plans::Tried>();
    if (shown && shown->plan) {
      out.word = phrase(language_, "fits not yet");
      out.changed = phrase(language_, "fits changed");
      out.sentences.push_back(
          phrase(language_, "none but changed",
                 {{"count", count}, {"drive", name(*report_.offer)}, {"plan", changes(language_, *shown->plan)}}));
    } else {
      out.word = word(language_, out.verdict);
      out.sentences.push_back(phrase(language_, "none goes", {{"count", count}}));
    }
    if (shown)
      out.sentences.push_back(
          phrase(language_, "nearest", {{"drive", name(*report_.offer)}, {"why", why(language_, shown->seating)}}));
    return out;
  }

  const Report& report_;
  const plans::Buying& list_;
  Language language_;
};

/// Of one drive of the build file.
Spoken of_build(const Report& report) {
  const Language language = report.language;
  const ShownDrive& shown = *report.shown;
  const fit::Seating& seating = shown.seating;
  Spoken out;
  out.verdict = seating.verdict;
  out.word = word(language, seating.verdict);
  const std::string drive = named(seating.drive);
  const std::string place = quoted(language, seating.place);
  if (seating.verdict == Verdict::fits) {
    if (const fit::Finding* near = nearest(seating))
      out.sentences.push_back(phrase(language, "it fits gap",
                                     {{"drive", drive},
                                      {"place", place},
                                      {"a", named(near->between[0])},
                                      {"b", named(near->between[1])},
                                      {"gap", millimetres(language, near->gap->nominal)}}));
    else
      out.sentences.push_back(phrase(language, "it fits", {{"drive", drive}, {"place", place}}));
    const fit::Reason& bus = seating.questions.bus.why;
    out.sentences.push_back(
        bus.code == fit::Code::bus_slower
            ? phrase(language, "slower link", {{"share", localized(language, percent(bus.figure("share")))}})
            : phrase(language, "nothing to change"));
    return out;
  }
  const char* const key = seating.verdict == Verdict::marginal    ? "may not fit"
                          : seating.verdict == Verdict::undecided ? "not settled"
                          : shown.plan                            ? "fits not now"
                                                                  : "fits not";
  out.sentences.push_back(phrase(language, key, {{"drive", drive}, {"place", place}, {"why", why(language, seating)}}));
  if (shown.plan) {
    if (seating.verdict == Verdict::does_not_fit) out.word = phrase(language, "fits not yet");
    out.changed = phrase(language, "fits changed");
    out.sentences.push_back(phrase(language, "with plan", {{"plan", changes(language, *shown.plan)}}));
  } else {
    out.sentences.push_back(phrase(language, seating.verdict == Verdict::does_not_fit ? "no plan" : "measure first"));
  }
  return out;
}

}  // namespace

const fit::Finding* nearest(const fit::Seating& seating) {
  if (!seating.deciding || *seating.deciding >= seating.findings.size()) return nullptr;
  const fit::Finding& finding = seating.findings[*seating.deciding];
  return finding.gap && finding.kind == fit::Kind::clearance && finding.why.code == fit::Code::gap ? &finding : nullptr;
}

Spoken spoken(const Report& report) {
  return report.buying != nullptr ? OfList(report).run() : of_build(report);
}

}  // namespace baywright::output
