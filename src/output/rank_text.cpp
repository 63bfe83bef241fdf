#include "output/rank_text.h"

#include "output/answer_words.h"
#include "output/heat_words.h"
#include "output/more_words.h"
#include "output/plan_words.h"
#include "output/text.h"
#include "output/value_words.h"
#include "output/words.h"
#include "value/capacity.h"

#include <algorithm>
#include <cmath>

namespace baywright::output {

using plans::Buying;
using value::Appraisal;
using value::Column;
using value::Offer;
using value::Standing;

namespace {

std::string or_dash(const std::optional<double>& figure, int decimals) {
  return figure ? plain(*figure, decimals) : "-";
}

/// Why one comes first: "a GB costs the least", "0.054 EUR".
struct Ground {
  std::string claim;  // empty: none
  std::string figure{};
  bool most = true;  // it says that no other has more, or less
};

/// Of a speed by which the list is in order: the slot may hold several to the same.
Ground fastest_words(const Buying& rank, std::size_t i, Column column, double figure) {
  const std::string what(value::word(column));
  const auto alike =
      value::held_alike(rank.offers, rank.appraisals, rank.standings, rank.order, i, column == Column::read);
  if (alike.empty()) return {"it has the fastest " + what, plain(figure, 0) + " MB/s"};
  if (alike.size() == 1) return {"it has the fastest " + what, held_to(figure)};
  const std::size_t others = alike.size() - 1;
  const bool priced = rank.appraisals[i].per_gigabyte.has_value();
  return {"its " + what + " is " + held_to(figure) + " as is that of " + std::to_string(others) +
              (others == 1 ? " other" : " others") + (priced ? ", and a GB of it costs the least of these" : ""),
          "", false};
}

/// By what the list is in order, as the ground for a choice.
Ground ground(const Buying& rank, std::size_t i) {
  if (!rank.by.column && !rank.by.weights.empty()) {
    if (!rank.scores[i]) return {};
    return {"it scores " + plain(*rank.scores[i], 2) + " of 1 by your weights", "", false};
  }
  const Column column = rank.by.column.value_or(Column::per_gigabyte);
  const auto figure = value::figure_of(column, rank.offers[i], rank.appraisals[i]);
  if (!figure) return {};
  switch (column) {
    case Column::price:
      return {"it costs the least", money(*figure, rank.currency, 2)};
    case Column::per_gigabyte:
      return {"a GB costs the least", money(*figure, rank.currency, 3)};
    case Column::per_tbw:
      return {"a TB written costs the least", money(*figure, rank.currency, 2)};
    case Column::capacity:
      return {"it holds the most", capacity(*figure)};
    case Column::read:
    case Column::write:
      return fastest_words(rank, i, column, *figure);
    case Column::tbw:
      return {"it has the highest TBW", plain(*figure, 2)};
    case Column::dwpd:
      return {"it has the most drive writes a day", plain(*figure, 2)};
    case Column::years:
      return {"its TBW takes the longest to be written"};
    case Column::warranty:
      return {"it has the longest warranty", years(*figure)};
    case Column::name:
      break;
  }
  return {};
}

std::string stands(const Buying& rank, std::size_t i) {
  if (!rank.tried[i]) return "";
  const fit::Seating& seating = rank.tried[i]->seating;
  return seating.verdict == fit::Verdict::fits ? "it fits " + seating.place
                                               : word(seating.verdict) + " in " + seating.place;
}

std::string a_day(const Buying& rank) {
  return "at " + plain(rank.daily->gigabytes, 1) + " GB a day";
}

/// When its warranty ends and when its TBW is written, the earlier first: the TBW alone would sound like a lifespan.
std::string life(const Buying& rank, std::size_t i) {
  if (!rank.daily) return "";
  const Appraisal& of = rank.appraisals[i];
  const auto& warranty = rank.offers[i].warranty;
  if (!of.years) return of.lasts ? "" : a_day(rank) + " how long it lasts is not known";
  const std::string written = "its TBW is written after " + years(*of.years);
  if (!warranty) return a_day(rank) + ' ' + written + " (no warranty is stated)";
  if (*of.years < *warranty)
    return a_day(rank) + ' ' + written + ", and its warranty of " + years(*warranty) + " ends then";
  return "its warranty ends after " + years(*warranty) + " (" + a_day(rank) + ' ' + written + ')';
}

/// The ground, and among which it holds where not among all.
std::string ground_among(const Buying& rank, std::size_t i) {
  const Ground found = ground(rank, i);
  if (found.claim.empty()) return {};
  std::string among;
  if (found.most && rank.tried[i] &&
      std::any_of(rank.standings.begin(), rank.standings.end(), [](Standing each) { return each != Standing::goes; }))
    among = "that fit";
  if (found.most && !rank.choice.passed_over.empty())
    among +=
        (among.empty() ? "known" : " and are known") + (" to endure " + plain(rank.daily->gigabytes, 1)) + " GB a day";
  return found.claim + (among.empty() ? "" : " of those " + among) + (found.figure.empty() ? "" : ", " + found.figure);
}

/// Who would have come first but for its endurance.
std::string passed_over(const Buying& rank) {
  std::string out;
  for (const std::size_t i : rank.choice.passed_over) {
    const Appraisal& of = rank.appraisals[i];
    out += (out.empty() ? "Passed over for their endurance, though first otherwise: " : "; ") + rank.offers[i].name;
    out += of.years ? " (its TBW is written after " + years(*of.years) +
                          (rank.offers[i].warranty ? ", before its warranty ends)" : ")")
           : of.lasts ? " (you write more than it is made for)"
                      : " (it states no TBW)";
  }
  return out.empty() ? out : out + '.';
}

/// What dense cells of the one that is taken mean for who writes much, and which drive has none.
std::string heavy_writing(const Buying& rank) {
  if (!rank.choice.taken) return "";
  const std::size_t taken = *rank.choice.taken;
  const value::Remark* remark = value::dense_cells(rank.appraisals[taken]);
  if (remark == nullptr) return "";
  const std::string out = rank.offers[taken].name + ": " + say(*remark, rank.currency);
  const auto found = value::with_fewer_bits(rank.offers, rank.appraisals, rank.standings, rank.order, taken);
  if (!found) return out;
  const Offer& other = rank.offers[*found];
  const auto& here = rank.offers[taken].price;
  const double more = here && other.price ? *other.price - *here : 0.0;
  return out + " Without that limit: " + other.name + " (" + std::string(value::word(*other.cells)) + ')' +
         (!here || !other.price ? "."
          : more > 0.0          ? ", which costs " + money(more, rank.currency, 2) + " more."
                                : ", which does not cost more.");
}

std::string answer(const Buying& rank) {
  const std::optional<std::size_t> choice = rank.choice.taken;
  if (!choice) {
    const bool tried =
        std::any_of(rank.tried.begin(), rank.tried.end(), [](const auto& each) { return each.has_value(); });
    const std::size_t count = rank.offers.size();
    if (std::find(rank.standings.begin(), rank.standings.end(), Standing::may_go) != rank.standings.end())
      return count == 1 ? "Whether " + rank.offers.front().name + " goes there is not sure."
                        : (count == 2 ? "Neither" : "None") + (" of the " + std::to_string(count)) +
                              " drives is sure to go there.";
    if (count == 1) return rank.offers.front().name + (tried ? " does not go there." : " cannot be taken.");
    if (count == 2) return tried ? "Neither of the 2 drives goes there." : "Neither of the 2 entries can be taken.";
    return tried ? "None of the " + std::to_string(count) + " drives goes there."
                 : "None of the " + std::to_string(count) + " entries can be taken.";
  }
  std::vector<std::string> why;
  for (std::string each : {stands(rank, *choice), ground_among(rank, *choice), life(rank, *choice)})
    if (!each.empty()) why.push_back(std::move(each));
  std::string out = "Take " + rank.offers[*choice].name;
  for (std::size_t i = 0; i < why.size(); ++i) out += (i == 0 ? ": " : i + 1 == why.size() ? ", and " : ", ") + why[i];
  out += '.';
  if (rank.daily && rank.appraisals[*choice].lasts != true)
    out += " No drive that may be taken is known to endure that.";
  return out;
}

/// The fastest of the list, where its speed would be lost.
std::string wasted(const Buying& rank) {
  const auto fastest = value::fastest(rank.offers);
  if (!fastest) return "";
  const std::string& name = rank.offers[*fastest].name;
  if (const auto& tried = rank.tried[*fastest]; tried && tried->seating.verdict != fit::Verdict::fits)
    return "The fastest, " + name + ": " + word(tried->seating.verdict) + " in " + tried->seating.place + ". " +
           answer_of(tried->seating, rank.method).sentence;
  const auto alike = value::held_alike(rank.offers, rank.appraisals, rank.standings, rank.order, *fastest, true);
  if (alike.size() > 1)
    return "The slot makes " + std::to_string(alike.size()) + " of these drives read equally fast: each is " +
           held_to(rank.appraisals[*fastest].ceiling->megabytes) + ". " + rank.offers[*fastest].name + ", with " +
           plain(*rank.offers[*fastest].read, 0) + " MB/s on its sheet, is no faster there.";
  for (const value::Remark& remark : rank.appraisals[*fastest].remarks)
    if (remark.code == value::Code::slower_here || remark.code == value::Code::bus_not_carried)
      return "The fastest, " + rank.offers[*fastest].name + ": " + say(remark, rank.currency);
  return "";
}

std::string fit_word(const Buying& rank, std::size_t i) {
  return rank.tried[i] ? word(rank.tried[i]->seating.verdict) : "-";
}

/// `*` nobody beats it; `!` the same, but its TBW is soon written.
std::string mark(const Buying& rank, std::size_t i) {
  if (!rank.unbeaten[i]) return "  ";
  return value::gone_within_a_year(rank.appraisals[i]) ? "! " : "* ";
}

/// The figures, in columns as wide as what stands in them.
std::string table(const Buying& rank) {
  std::vector<std::vector<std::string>> lines(1);
  for (const RankColumn& column : rank_columns(rank)) lines.front().push_back(column.heading);
  lines.front()[0] = "  " + lines.front()[0];
  for (const std::size_t i : rank.order) {
    lines.push_back(rank_cells(rank, i));
    lines.back()[0] = mark(rank, i) + lines.back()[0];
  }
  std::vector<std::size_t> width(lines.front().size());
  for (const auto& line : lines)
    for (std::size_t i = 0; i < line.size(); ++i) width[i] = std::max(width[i], columns(line[i]));
  std::size_t others = 0;
  for (std::size_t i = 1; i < width.size(); ++i) others += 2 + width[i];
  width[0] = std::min(width[0], std::max<std::size_t>(100, others + 10) - others);
  std::string out;
  for (const auto& line : lines) {
    std::string text = padded(line[0], width[0]);
    if (columns(line[0]) > width[0]) text += '\n' + std::string(width[0], ' ');
    for (std::size_t i = 1; i < line.size(); ++i)
      text += "  " + (i + 1 == line.size() ? line[i] : std::string(width[i] - columns(line[i]), ' ') + line[i]);
    out += text + '\n';
  }
  return out;
}

/// The gap that decides, or what keeps the drive out.
std::string deciding(const fit::Seating& seating, tolerance::Method method) {
  if (seating.verdict != fit::Verdict::fits && answering(seating) != nullptr)
    return answer_of(seating, method).sentence;
  return seating.deciding ? say(seating.findings[*seating.deciding], method) : "";
}

/// What the marks and columns of the table mean.
std::string legend(const Buying& rank) {
  std::string out;
  const auto line = [&](const std::string& text) { out += wrapped(text, 0) + '\n'; };
  line(
      "* it may go there, and no other that may is at least as good in price, capacity, speed, warranty and, within a "
      "capacity, TBW, and "
      "better in one of them. - is not known, and never counts as zero.");
  for (const std::size_t i : rank.order)
    if (mark(rank, i) == "! ") {
      line("! the same, but written to as you do its TBW is gone within a year.");
      break;
    }
  const bool behind_link = std::any_of(rank.appraisals.begin(), rank.appraisals.end(),
                                       [](const Appraisal& of) { return of.ceiling.has_value(); });
  line(
      "a GB and a TBW are the price of a GB and of a TB written; years are those until the warranty ends, by time or "
      "with "
      "the TBW, whichever is earlier / until the TBW is written, with --daily, which is no lifespan. TBW grows with "
      "the "
      "capacity: compare it between drives of one capacity only, else DWPD (drive writes a day over the warranty). "
      "read is MB/s" +
      std::string(behind_link
                      ? ", behind the slot's link; ≤ is held to it by the slot (raw link rate; less in practice)."
                      : ".") +
      " Capacities are decimal: an operating system may show 1 TB as " + plain(value::gibibytes(1000.0), 0) + " GB.");
  return out;
}

std::string closing_of(const Buying& rank) {
  std::string out;
  const auto line = [&](const std::string& text) { out += wrapped(text, 0) + '\n'; };
  if (rank.daily && rank.daily->usage != nullptr)
    line(plain(rank.daily->gigabytes, 0) + " GB a day: " + std::string(rank.daily->usage->what) +
         " (common practice, no source).");
  const auto warm =
      std::find_if(rank.tried.begin(), rank.tried.end(), [](const auto& tried) { return tried && tried->heat.warmth; });
  if (warm != rank.tried.end()) line(heat_basis((*warm)->heat.around));
  if (!rank.build.empty())
    for (const std::string& caution : cautions(false, false)) line(caution);
  return out;
}

}  // namespace

std::vector<RankColumn> rank_columns(const Buying& rank) {
  return {{"drive", Column::name},        {rank.currency.empty() ? "price" : "price " + rank.currency, Column::price},
          {"a GB", Column::per_gigabyte}, {"capacity", Column::capacity},
          {"read", Column::read},         {"TBW", Column::tbw},
          {"a TBW", Column::per_tbw},     {"DWPD", Column::dwpd},
          {"years", Column::warranty},    {"fit", std::nullopt}};
}

std::vector<std::string> rank_cells(const Buying& rank, std::size_t i) {
  const Offer& offer = rank.offers[i];
  const Appraisal& of = rank.appraisals[i];
  const auto read = value::figure_of(Column::read, offer, of);
  return {offer.name,
          offer.price ? money(*offer.price, "", 2) : "-",
          of.per_gigabyte ? money(*of.per_gigabyte, "", 3) : "-",
          offer.gigabytes ? capacity(*offer.gigabytes) : "-",
          (value::held(offer.read, of.ceiling) ? "≤" : "") + or_dash(read, 0),
          or_dash(of.tbw, 1),
          of.per_tbw ? money(*of.per_tbw, "", 2) : "-",
          or_dash(of.dwpd, 2),
          or_dash(of.warranty, 1) + '/' + or_dash(of.years, 1),
          fit_word(rank, i)};
}

std::vector<std::string> rank_details(const Buying& rank, std::size_t i) {
  const Appraisal& of = rank.appraisals[i];
  std::vector<std::string> out;
  if (rank.tried[i]) {
    const fit::Seating& seating = rank.tried[i]->seating;
    out.push_back(capital(word(seating.verdict)) + " in " + seating.place + ". " + deciding(seating, rank.method));
    if (const auto& plan = rank.tried[i]->plan) {
      std::string cautions;
      for (const plans::Caution each : plan->cautions)
        if (plans::unchecked(each)) cautions += ' ' + say(*plan, each);
      out.push_back((cautions.empty() ? "What would make it fit: " : "What might make it fit: ") + say(*plan) + " (" +
                    say_result(*plan, rank.method) + ")." + cautions);
    }
    for (std::string& line : say(rank.tried[i]->heat)) out.push_back(std::move(line));
  }
  if (of.upgrade && rank.now != nullptr) out.push_back(say(*of.upgrade, *rank.now));
  for (const value::Remark& remark : of.remarks)
    if (!rank.tried[i] || remark.code != value::Code::bus_not_carried)  // the fit said so
      out.push_back(say(remark, rank.currency));
  if (of.tbw_derived) out.emplace_back("Its TBW follows from the drive writes a day that are stated.");
  std::erase(out, std::string());
  return out;
}

std::vector<std::string> rank_answer(const Buying& rank) {
  std::vector<std::string> out = {answer(rank)};
  for (std::string each : {passed_over(rank), heavy_writing(rank), wasted(rank)})
    if (!each.empty()) out.push_back(std::move(each));
  return out;
}

std::string rank_text(const Buying& rank) {
  std::string out;
  for (const std::string& line : rank_answer(rank)) out += wrapped(line, 0) + '\n';
  if (const std::string line = unused_columns(rank); !line.empty()) out += wrapped(line, 0) + '\n';
  out += '\n' + table(rank) + legend(rank);
  for (const std::size_t i : rank.order) {
    out += '\n' + rank.offers[i].name + '\n';
    for (const std::string& line : rank_details(rank, i)) out += "  " + wrapped(line, 2) + '\n';
  }
  const std::string closing = closing_of(rank);
  return closing.empty() ? out : out + '\n' + closing;
}

std::string unused_columns(const Buying& rank) {
  std::string out;
  for (const std::string& name : rank.unused) out += (out.empty() ? "" : ", ") + ('`' + name + '`');
  if (out.empty()) return out;
  return (rank.unused.size() == 1 ? "The column " + out + " is" : "The columns " + out + " are") +
         " not known here and passed over.";
}

}  // namespace baywright::output
