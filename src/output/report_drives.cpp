// The drives side by side: as a plot, and as a table that can be sorted.
#include "output/answer_words.h"
#include "output/plot.h"
#include "output/report_pieces.h"
#include "output/value_words.h"
#include "output/words.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace baywright::output {

using value::Column;
using value::Standing;

namespace {

class Drives {
 public:
  explicit Drives(const Report& report) : report_(report), list_(*report.buying), language_(report.language) {
    behind_link_ = std::any_of(list_.appraisals.begin(), list_.appraisals.end(),
                               [](const value::Appraisal& of) { return of.ceiling.has_value(); });
    for (const auto& tried : list_.tried)
      if (tried && std::find(places_.begin(), places_.end(), tried->seating.place) == places_.end())
        places_.push_back(tried->seating.place);
    tried_ = std::any_of(list_.tried.begin(), list_.tried.end(), [](const auto& tried) { return tried.has_value(); });
  }

  [[nodiscard]] std::string run() const {
    return section("drives", phrase(language_, "drives head"), plot() + table());
  }

 private:
  [[nodiscard]] bool taken(std::size_t i) const { return list_.choice.taken == i; }

  // ---- the plot

  [[nodiscard]] std::optional<double> read(std::size_t i) const {
    return value::figure_of(Column::read, list_.offers[i], list_.appraisals[i]);
  }

  /// By room, unless all that can be told apart is speed.
  [[nodiscard]] bool by_read() const {
    std::vector<double> room;
    std::size_t reads = 0;
    for (std::size_t i = 0; i < list_.offers.size(); ++i) {
      const auto& each = list_.offers[i].gigabytes;
      if (each && std::find(room.begin(), room.end(), *each) == room.end()) room.push_back(*each);
      if (read(i)) ++reads;
    }
    return room.size() < 2 && reads > 1;
  }

  [[nodiscard]] std::string words_of(std::size_t i) const {
    const value::Offer& offer = list_.offers[i];
    std::string out = named(offer.name) + ": " + phrase(language_, key_of(list_.standings[i]));
    if (offer.price) out += ", " + amount(language_, *offer.price, list_.currency, 2);
    if (offer.gigabytes) out += ", " + capacity(language_, *offer.gigabytes);
    if (const auto speed = read(i)) out += ", " + figure(language_, *speed, 0) + " MB/s";
    return bare(out);
  }

  [[nodiscard]] static const char* key_of(Standing standing) {
    constexpr std::array keys{"key goes", "key may go", "key not known", "key goes not"};
    return keys[static_cast<std::size_t>(standing)];
  }

  [[nodiscard]] Plot plotted(std::string& missing) const {
    const bool speed = by_read();
    Plot out;
    out.id = "plot";
    out.title = phrase(language_, speed ? "plot title read" : "plot title capacity");
    out.description = phrase(language_, speed ? "plot desc read" : "plot desc capacity");
    out.across = phrase(language_, speed ? "plot x read" : "plot x capacity");
    out.up = phrase(language_, "plot y") + (list_.currency.empty() ? "" : ", " + list_.currency);
    out.up_words = [this](double y) { return figure(language_, y, 2); };
    out.across_words = [this, speed](double x) {
      return speed || !(x > 0.0) ? figure(language_, x, 0) : capacity(language_, x);
    };
    for (const std::size_t i : list_.order) {
      const value::Offer& offer = list_.offers[i];
      const std::optional<double> x = speed ? read(i) : offer.gigabytes;
      if (!x || !offer.price) {
        missing += (missing.empty() ? "" : ", ") + named(offer.name);
        continue;
      }
      const std::string tag = taken(i)                                   ? phrase(language_, "plot taken")
                              : list_.standings[i] == Standing::goes_not ? phrase(language_, "key goes not")
                                                                         : std::string();
      out.points.push_back({offer.name, tag, words_of(i), *x, *offer.price, list_.standings[i], taken(i)});
    }
    std::stable_partition(out.points.begin(), out.points.end(), [](const PlotPoint& point) { return point.taken; });
    return out;
  }

  [[nodiscard]] std::string plot() const {
    std::string missing;
    Plot wide = plotted(missing);
    if (wide.points.size() < 2) return {};
    const DrawnPlot on_desk = plot_svg(wide, 760.0, 380.0);
    wide.id = "narrow-plot";
    const DrawnPlot on_phone = plot_svg(wide, 350.0, 400.0);
    std::string key;
    for (const Standing standing : {Standing::goes, Standing::may_go, Standing::not_known, Standing::goes_not})
      if (std::any_of(wide.points.begin(), wide.points.end(),
                      [&](const PlotPoint& point) { return point.standing == standing; }))
        key += element("span", " class=\"key\"", plot_mark(standing) + html(phrase(language_, key_of(standing))));
    std::string below = element("p", " class=\"keys\"", key);
    if (!on_desk.all_named || !on_phone.all_named) {
      const char* const where = on_desk.all_named ? " class=\"narrow\"" : "";
      below += element("p", where, html(phrase(language_, "plot some")));
    }
    if (!missing.empty()) below += element("p", "", html(phrase(language_, "plot missing", {{"names", missing}})));
    return element(
        "figure", " class=\"plot\"",
        element("div", " class=\"wide\"", on_desk.svg) + element("div", " class=\"narrow\"", on_phone.svg) +
            element("figcaption", "", element("strong", "", html(wide.title)) + ' ' + html(wide.description) + below));
  }

  // ---- the table

  /// A cell with what it is sorted by; without a figure it says so, and stays last. `more`: key of what stands below.
  [[nodiscard]] std::string cell(const std::string& label, const std::optional<double>& by, const std::string& words,
                                 const std::string& more = {}) const {
    std::string attributes = " role=\"cell\" data-label=\"" + attribute(label) + '"';
    if (by && std::isfinite(*by)) {
      std::array<char, 64> text{};
      const auto [end, fault] = std::to_chars(text.data(), text.data() + text.size(), *by);
      attributes += " data-by=\"" + std::string(text.data(), end) + '"';
    }
    const std::string key = more.empty() && !by ? "unknown" : more;
    return element(
        "td", attributes + (by ? " class=\"number\"" : ""),
        html(words) + (key.empty() ? "" : element("span", " class=\"quiet\"", html(phrase(language_, key)))));
  }

  [[nodiscard]] std::string fit_cell(std::size_t i) const {
    const std::string label = phrase(language_, "col fit");
    const auto& tried = list_.tried[i];
    std::string words;
    if (tried)
      words = verdict_mark(tried->seating.verdict) + html(word(language_, tried->seating.verdict)) +
              (places_.size() > 1 ? element("span", " class=\"place\"", html(named(tried->seating.place))) : "");
    else
      words =
          element("span", " class=\"quiet\"",
                  html(phrase(language_, list_.standings[i] == Standing::goes_not ? "not found there" : "not tried")));
    return element("td",
                   " role=\"cell\" class=\"fit\" data-label=\"" + attribute(label) + "\" data-by=\"" +
                       std::to_string(static_cast<int>(list_.standings[i])) + '"',
                   words);
  }

  [[nodiscard]] std::string read_cell(std::size_t i) const {
    const value::Appraisal& of = list_.appraisals[i];
    const auto speed = read(i);
    const bool held = value::held(list_.offers[i].read, of.ceiling);
    return cell(phrase(language_, read_key()), speed, speed ? figure(language_, *speed, 0) : std::string(),
                held                              ? "held"
                : of.ceiling && !of.ceiling->link ? "none here"
                                                  : "");
  }

  [[nodiscard]] std::vector<std::string> notes(std::size_t i) const {
    std::vector<std::string> out;
    const auto& tried = list_.tried[i];
    if (tried && tried->seating.verdict != fit::Verdict::fits) {
      out.push_back(sentence(why_not(language_, tried->seating)));
      if (tried->plan) out.push_back(fits_with(language_, *tried->plan));
    }
    if (tried)
      for (std::string& line : say(language_, tried->heat)) out.push_back(std::move(line));
    const value::Appraisal& of = list_.appraisals[i];
    for (const value::Remark& remark : of.remarks)
      if (!tried || remark.code != value::Code::bus_not_carried)  // the fit said so
        out.push_back(say(language_, remark, list_.currency));
    return out;
  }

  [[nodiscard]] std::string row(std::size_t i) const {
    const value::Offer& offer = list_.offers[i];
    const value::Appraisal& of = list_.appraisals[i];
    const auto say_column = [&](const char* key) { return phrase(language_, key); };
    std::string name = html(named(offer.name));
    if (taken(i)) name += ' ' + element("span", " class=\"advice\"", html(phrase(language_, "advice")));
    std::string cells = element("th", " scope=\"row\" role=\"rowheader\"", name);
    if (tried_) cells += fit_cell(i);
    const auto priced = [&](const std::optional<double>& value, int decimals) {
      return value ? amount(language_, *value, "", decimals) : std::string();
    };
    cells += cell(say_column("col price"), offer.price, priced(offer.price, 2));
    cells += cell(say_column("col gigabyte"), of.per_gigabyte, priced(of.per_gigabyte, 3));
    cells +=
        cell(say_column("col capacity"), offer.gigabytes, offer.gigabytes ? capacity(language_, *offer.gigabytes) : "");
    cells += read_cell(i);
    cells += cell(say_column("col tbw"), of.tbw, of.tbw ? figure(language_, *of.tbw, 1) + " TB" : "");
    cells += cell(say_column("col warranty"), of.warranty, of.warranty ? years(language_, *of.warranty) : "");
    std::string said;
    for (const std::string& line : notes(i)) said += element("li", "", html(line));
    cells +=
        element("td", " role=\"cell\" class=\"notes\" data-label=\"" + attribute(phrase(language_, "col notes")) + '"',
                said.empty() ? "" : element("ul", "", said));
    return element("tr", std::string(" role=\"row\"") + (taken(i) ? " class=\"taken\"" : ""), cells);
  }

  [[nodiscard]] const char* read_key() const { return behind_link_ ? "col read" : "col read free"; }

  [[nodiscard]] std::string head(const std::string& words, const char* sorts) const {
    return element("th",
                   " scope=\"col\" role=\"columnheader\"" +
                       (*sorts != '\0' ? std::string(" data-sorts=\"") + sorts + '"' : std::string()),
                   html(words));
  }

  [[nodiscard]] std::string table() const {
    const auto words = [&](const char* key) { return phrase(language_, key); };
    std::string heads = head(words("col drive"), "text");
    if (tried_) heads += head(words("col fit"), "number");
    heads += head(list_.currency.empty() ? words("col price")
                                         : phrase(language_, "col price in", {{"currency", named(list_.currency)}}),
                  "number");
    for (const char* const key : {"col gigabyte", "col capacity", read_key(), "col tbw", "col warranty"})
      heads += head(words(key), "number");
    heads += head(words("col notes"), "");
    std::string rows;
    for (const std::size_t i : list_.order) rows += row(i);
    std::string out =
        element("table",
                std::string(" class=\"drives") + (tried_ ? "" : " untried") +
                    "\" role=\"table\" data-sortable data-sort-by=\"" + attribute(words("table sort")) +
                    "\" data-rising=\"" + attribute(words("table rising")) + "\" data-falling=\"" +
                    attribute(words("table falling")) + "\" data-sorted=\"" + attribute(words("table sorted")) + '"',
                element("caption", "", html(words("table caption"))) +
                    element("thead", " role=\"rowgroup\"", element("tr", " role=\"row\"", heads)) +
                    element("tbody", " role=\"rowgroup\"", rows));
    out += element("p", " class=\"sorted\" role=\"status\"", "");
    out += element("p", " class=\"small\"", html(words("table note")));
    if (!list_.unused.empty()) out += element("p", " class=\"small\"", html(unused_columns(language_, list_)));
    return out;
  }

  const Report& report_;
  const plans::Buying& list_;
  Language language_;
  bool behind_link_ = false;
  bool tried_ = false;
  std::vector<std::string> places_;  // at which they were tried
};

/// Without a shortlist: the build's own drives, where there are several.
std::string asked_section(const Report& report) {
  const Language language = report.language;
  std::string rows;
  for (const fit::Seating& seating : report.asked)
    rows += element(
        "tr", "",
        element("th", " scope=\"row\"", html(named(seating.drive))) + element("td", "", html(named(seating.place))) +
            element("td", " class=\"fit\"", verdict_mark(seating.verdict) + html(word(language, seating.verdict))));
  std::string heads;
  for (const char* const key : {"col drive", "col place", "col fit"})
    heads += element("th", " scope=\"col\"", html(phrase(language, key)));
  return section("drives", phrase(language, "asked head"),
                 wide(phrase(language, "asked head"),
                      element("table", " class=\"asked\"",
                              element("caption", "", html(phrase(language, "asked note"))) +
                                  element("thead", "", element("tr", "", heads)) + element("tbody", "", rows))));
}

}  // namespace

std::string unused_columns(Language language, const plans::Buying& list) {
  std::string columns;
  for (const std::string& each : list.unused) columns += (columns.empty() ? "" : ", ") + named(each);
  return phrase(language, "table unused", {{"columns", columns}});
}

std::string drives_section(const Report& report) {
  if (report.buying != nullptr) return Drives(report).run();
  return report.asked.size() > 1 ? asked_section(report) : std::string();
}

}  // namespace baywright::output
