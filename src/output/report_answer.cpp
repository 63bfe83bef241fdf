// The answer: two sentences for who asked, and what qualifies them.
#include "output/answer_words.h"
#include "output/more_words.h"
#include "output/report_pieces.h"
#include "output/value_words.h"
#include "output/words.h"
#include "value/capacity.h"

#include <algorithm>
#include <cmath>

namespace baywright::output {

using fit::Verdict;
using value::Column;

namespace {

/// What somebody has to look at before the plan is known to hold; empty: nothing.
std::string provisos(Language language, const plans::Plan& plan) {
  std::string out;
  for (const plans::Caution each : plan.cautions)
    if (plans::unchecked(each)) out += (out.empty() ? "" : " ") + say(language, plan, each);
  return out;
}

/// Whether nothing is changed but the place.
bool moves_only(const plans::Plan& plan) {
  return plan.changes.size() == 1 && plan.changes.front().kind == plans::Kind::other_place;
}

/// The words over the answer where nothing fits as it is.
void head(Language language, const fit::Seating& seating, const std::optional<plans::Plan>& plan, Spoken& out) {
  out.verdict = seating.verdict;
  out.word = word(language, seating.verdict);
  if (!plan) return;
  if (seating.verdict == Verdict::does_not_fit) out.word = phrase(language, "fits not yet");
  const bool sure = provisos(language, *plan).empty();
  out.then = sure ? Verdict::fits : Verdict::marginal;
  out.changed = phrase(language, !sure ? "may fit changed" : moves_only(*plan) ? "fits elsewhere" : "fits changed");
}

/// Of one drive at one place.
Spoken of_seating(Language language, const fit::Seating& seating, const std::optional<plans::Plan>& plan,
                  tolerance::Method method) {
  Spoken out;
  head(language, seating, plan, out);
  const std::string drive = named(seating.drive);
  const std::string place = quoted(language, seating.place);
  if (seating.verdict == Verdict::fits) {
    if (const fit::Finding* near = nearest(seating))
      out.sentences.push_back(phrase(language, "it fits gap",
                                     {{"drive", drive},
                                      {"place", place},
                                      {"a", among(language, near->between[0])},
                                      {"b", among(language, near->between[1])},
                                      {"aside", near->provided ? std::string() : phrase(language, "own aside")},
                                      {"gap", air(language, *near->gap, method)}}));
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
                          : plan                                  ? "fits not now"
                                                                  : "fits not";
  out.sentences.push_back(
      phrase(language, key, {{"drive", drive}, {"place", place}, {"why", why_not(language, seating)}}));
  out.sentences.push_back(
      plan ? fits_with(language, *plan)
           : phrase(language, seating.verdict == Verdict::does_not_fit ? "no plan" : "measure first"));
  return out;
}

class OfList {
 public:
  explicit OfList(const Report& report) : report_(report), list_(*report.buying), language_(report.language) {}

  [[nodiscard]] Spoken run() const {
    Spoken out = list_.choice.taken ? taken_one() : none();
    const bool priced = std::any_of(list_.offers.begin(), list_.offers.end(),
                                    [](const value::Offer& offer) { return offer.price.has_value(); });
    if (!priced && !list_.unused.empty()) out.notes.push_back(unused_columns(language_, list_));
    return out;
  }

 private:
  [[nodiscard]] Spoken taken_one() const {
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
    if (const std::string dense = heavy_writing(taken); !dense.empty()) out.notes.push_back(dense);
    if (list_.daily && of.lasts != true) out.notes.push_back(phrase(language_, "none lasts", {{"daily", daily()}}));
    if (const std::string passed = passed_over(); !passed.empty()) out.notes.push_back(passed);
    return out;
  }

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
                    {{"drive", name(i)}, {"why", why_not(language_, seating)}});
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
      const fit::Seating& seating = list_.tried[i]->seating;
      for (const fit::Finding* finding : grounds(seating))
        if (finding->why.code == fit::Code::bus_absent)
          return phrase(language_, "fastest absent", {{"drive", name(i)}, {"why", why_not(language_, seating)}});
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

  /// What dense cells mean for who writes much, and which drive has none.
  [[nodiscard]] std::string heavy_writing(std::size_t taken) const {
    const value::Remark* remark = value::dense_cells(list_.appraisals[taken]);
    if (remark == nullptr) return {};
    std::string out =
        phrase(language_, "dense of", {{"drive", name(taken)}, {"remark", say(language_, *remark, list_.currency)}});
    const auto other = value::with_fewer_bits(list_.offers, list_.appraisals, list_.standings, list_.order, taken);
    if (!other) return out;
    const auto& here = list_.offers[taken].price;
    const auto& there = list_.offers[*other].price;
    const double more = here && there ? *there - *here : 0.0;
    const char* const key = !here || !there ? "dense other unpriced"
                            : more > 0.0    ? "dense other"
                                            : "dense other no dearer";
    return out + ' ' +
           phrase(language_, key,
                  {{"other", name(*other)},
                   {"cells", std::string(value::word(*list_.offers[*other].cells))},
                   {"more", amount(language_, more, list_.currency, 2)}});
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
    const auto& shown = report_.offer ? list_.tried[*report_.offer] : std::optional<plans::Tried>();
    if (shown && list_.offers.size() == 1) return of_seating(language_, shown->seating, shown->plan, list_.method);
    Spoken out;
    out.verdict = Verdict::does_not_fit;
    out.word = word(language_, out.verdict);
    if (shown) head(language_, shown->seating, shown->plan, out);
    const bool some_may =
        std::find(list_.standings.begin(), list_.standings.end(), value::Standing::may_go) != list_.standings.end();
    const std::size_t count = list_.offers.size();
    const char* const key = count == 1 ? "one goes not"
                            : some_may ? (count == 2 ? "neither sure" : "none sure")
                                       : (count == 2 ? "neither goes" : "none goes");
    out.sentences.push_back(phrase(language_, key, {{"count", std::to_string(count)}, {"drive", name(0)}}));
    if (!shown) return out;
    out.sentences.push_back(phrase(language_, shown->plan ? "nearest changed" : "nearest",
                                   {{"drive", name(*report_.offer)}, {"why", why_not(language_, shown->seating)}}));
    if (shown->plan) out.sentences.push_back(fits_with(language_, *shown->plan));
    return out;
  }

  const Report& report_;
  const plans::Buying& list_;
  Language language_;
};

}  // namespace

std::string fits_with(Language language, const plans::Plan& plan) {
  if (moves_only(plan)) return phrase(language, "fits there", {{"place", quoted(language, plan.place)}});
  std::string changes;
  for (const plans::Change& change : plan.changes) changes += (changes.empty() ? "" : "; ") + say(language, change);
  const std::string caution = provisos(language, plan);
  return phrase(language, caution.empty() ? "with plan" : "may with plan", {{"plan", changes}, {"caution", caution}});
}

std::string air(Language language, const fit::GapFigures& gap, tolerance::Method method) {
  const std::string usual = millimetres(language, gap.nominal);
  if (method != tolerance::Method::worst || !(gap.min >= 0.0) || !std::isfinite(gap.min)) return usual;
  return phrase(language, "at worst",
                {{"gap", usual}, {"least", localized(language, down_to_hundredths(gap.min)) + " mm"}});
}

const fit::Finding* nearest(const fit::Seating& seating) {
  if (!seating.deciding || *seating.deciding >= seating.findings.size()) return nullptr;
  const fit::Finding& finding = seating.findings[*seating.deciding];
  return finding.gap && finding.kind == fit::Kind::clearance && finding.why.code == fit::Code::gap ? &finding : nullptr;
}

Spoken spoken(const Report& report) {
  return report.buying != nullptr
             ? OfList(report).run()
             : of_seating(report.language, report.shown->seating, report.shown->plan, report.method);
}

}  // namespace baywright::output
