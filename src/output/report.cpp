#include "output/report.h"

#include "output/embedded.h"
#include "output/html.h"
#include "output/model_figure.h"
#include "output/more_words.h"
#include "output/report_pieces.h"
#include "value/capacity.h"

#include <algorithm>
#include <cmath>

namespace baywright::output {

// ---- text

std::string html(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    const std::size_t next = text.find_first_of(std::string_view("\x01\x02", 2));
    out += escaped_html(text.substr(0, next));
    if (next == std::string_view::npos) break;
    out += text[next] == name_begins ? "<bdi>" : "</bdi>";
    text.remove_prefix(next + 1);
  }
  return out;
}

std::string bare(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == name_begins)
      out += "\u2068";  // first strong isolate
    else if (c == name_ends)
      out += "\u2069";
    else
      out += c;
  }
  return out;
}

std::string attribute(std::string_view text) {
  return escaped_html(bare(text));
}

std::string element(std::string_view tag, std::string_view attributes, std::string_view inner) {
  std::string out = "<";
  out.append(tag).append(attributes).append(">").append(inner).append("</").append(tag).append(">\n");
  if (tag == "span" || tag == "strong" || tag == "dfn") out.pop_back();
  return out;
}

std::string wide(std::string_view name, std::string_view table) {
  return element("div", " class=\"wide\" role=\"group\" tabindex=\"0\" aria-label=\"" + attribute(name) + '"', table);
}

std::string section(std::string_view id, const std::string& heading, std::string_view inner) {
  const std::string name(id);
  return element("section", " id=\"" + name + "\" aria-labelledby=\"" + name + "-head\"",
                 element("h2", " id=\"" + name + "-head\"", html(heading)) + std::string(inner));
}

std::string sentence(std::string text) {
  if (text.empty()) return text;
  const std::size_t first = text.front() == name_begins ? 1 : 0;
  text = text.substr(0, first) + capital(text.substr(first));
  const bool stopped = text.ends_with('.') || text.ends_with(std::string(".") + name_ends);
  return stopped ? text : text + '.';
}

std::string verdict_mark(fit::Verdict verdict) {
  const auto square = [](double from, double to) {
    const std::string low = std::to_string(static_cast<int>(from));
    const std::string side = std::to_string(static_cast<int>(to - from));
    return "<rect x=\"" + low + "\" y=\"" + low + "\" width=\"" + side + "\" height=\"" + side + "\"";
  };
  std::string inner;
  const char* kind = "fits";
  switch (verdict) {
    case fit::Verdict::fits:
      inner = square(1, 7) + " class=\"full\"/>" + square(11, 17) + " class=\"full\"/>";
      break;
    case fit::Verdict::marginal:
      kind = "marginal";
      inner = square(1, 9) + " class=\"full\"/>" + square(9, 17) + "/>";
      break;
    case fit::Verdict::does_not_fit:
      kind = "does-not-fit";
      inner = square(1, 12) + "/>" + square(6, 17) + "/>" + square(6, 12) + " class=\"full\"/>";
      break;
    case fit::Verdict::undecided:
      kind = "undecided";
      inner = square(2, 16) + " stroke-dasharray=\"3 2\"/>";
      break;
  }
  return "<svg class=\"verdict " + std::string(kind) + "\" aria-hidden=\"true\" viewBox=\"0 0 18 18\">" + inner +
         "</svg>";
}

namespace {

constexpr const char* caution_class = " class=\"caution\"";

class Page {
 public:
  explicit Page(const Report& report) : report_(report), language_(report.language), spoken_(spoken(report)) {}

  [[nodiscard]] std::string run() const {
    std::string main = answer() + pictures() + model() + drives_section(report_) + plan_section(report_) +
                       shopping_section(report_) + steps_section(report_) + cautions();
    const std::string figures = figures_section(report_);
    const std::string limits = section("limits", say("limits head"), element("p", "", html(say("limits"))));
    std::string read = main + figures;
    const std::string words = words_section(language_, read);
    const std::string title =
        phrase(language_, "title", {{"drive", bare(drive_name())}, {"build", bare(build_name())}});
    std::string style(embedded::page_css);
    std::string script(embedded::page_js);
    if (has_model()) {
      style += model_style();
      script += model_script();
    }
    return "<!DOCTYPE html>\n<html lang=\"" + std::string(tag(language_)) +
           "\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, "
           "initial-scale=1\">\n<meta name=\"color-scheme\" content=\"light dark\">\n<title>" +
           escaped_html(title) + "</title>\n<style>\n" + style + "</style>\n</head>\n<body>\n" +
           element("a", " class=\"skip\" href=\"#answer\"", html(say("skip"))) + header() +
           element("main", "", read + words + limits) + "<script>\n" + script + "</script>\n</body>\n</html>\n";
  }

 private:
  [[nodiscard]] std::string say(const char* key) const { return phrase(language_, key); }
  [[nodiscard]] bool has_model() const { return report_.shown && !report_.shown->glb.empty(); }

  [[nodiscard]] std::string drive_name() const {
    if (report_.offer) return named(report_.buying->offers[*report_.offer].name);
    if (report_.shown) return named(report_.shown->seating.drive);
    return say("drives head");
  }
  [[nodiscard]] std::string build_name() const {
    return named(!report_.build.empty() ? report_.build : report_.buying != nullptr ? report_.buying->file : "");
  }

  [[nodiscard]] std::string header() const {
    std::string lines;
    if (!report_.build.empty())
      lines += element("p", " class=\"machine\"", html(say("machine") + ' ' + named(report_.build)));
    lines += element("p", " class=\"date\"", html(phrase(language_, "made", {{"date", report_.date}})));
    return element("header", "", lines);
  }

  [[nodiscard]] std::string answer() const {
    std::string head = verdict_mark(spoken_.verdict) + element("span", " class=\"word\"", html(spoken_.word));
    if (!spoken_.changed.empty())
      head += element("span", " class=\"unseen\"", "; ") +
              element("span", " class=\"then\" aria-hidden=\"true\"", "\u2192") + verdict_mark(spoken_.then) +
              element("span", " class=\"word\"", html(spoken_.changed));
    std::string inner =
        element("h1", " id=\"answer-head\"", head + element("span", " class=\"what\"", html(drive_name())));
    std::string lead;
    for (const std::string& each : spoken_.sentences) lead += (lead.empty() ? "" : " ") + html(sentence(each));
    inner += element("p", " class=\"lead\"", lead);
    for (const std::string& note : spoken_.notes) inner += element("p", " class=\"note\"", html(note));
    inner += facts();
    return element("section", " id=\"answer\" tabindex=\"-1\" aria-labelledby=\"answer-head\"", inner);
  }

  /// Four figures of the drive that is taken.
  [[nodiscard]] std::string facts() const {
    if (report_.buying == nullptr || !report_.offer) return {};
    const plans::Buying& list = *report_.buying;
    const value::Offer& offer = list.offers[*report_.offer];
    const value::Appraisal& of = list.appraisals[*report_.offer];
    std::string out;
    const auto fact = [&](const char* key, const std::string& words, const std::string& note = {}) {
      out += element("div", "",
                     element("dt", "", html(say(key))) +
                         element("dd", "",
                                 element("strong", "", html(words)) +
                                     (note.empty() ? "" : element("span", " class=\"quiet\"", html(note)))));
    };
    if (offer.price) fact("fact price", amount(language_, *offer.price, list.currency, 2));
    if (offer.gigabytes)
      fact("fact capacity", capacity(language_, *offer.gigabytes),
           phrase(language_, "fact capacity note",
                  {{"figure", figure(language_, value::gibibytes(*offer.gigabytes), 0) + " GB"}}));
    if (const auto read = value::figure_of(value::Column::read, offer, of))
      fact(of.ceiling ? "fact read" : "fact read free", figure(language_, *read, 0) + " MB/s");
    if (of.warranty)
      fact("fact warranty", years(language_, *of.warranty),
           say(!offer.warranty     ? "fact warranty by writing"
               : of.tbw || of.dwpd ? "fact warranty note"
                                   : "fact warranty by time"));
    std::string below;
    if (list.daily)
      below = element(
          "p", " class=\"small\"",
          html(phrase(language_, "fact daily", {{"daily", figure(language_, list.daily->gigabytes, 1)}}) + '.'));
    return out.empty() ? below : element("dl", " class=\"facts\"", out) + below;
  }

  // ---- pictures

  [[nodiscard]] std::string caption(const ReportPicture& picture) const {
    const ShownDrive& shown = *report_.shown;
    const std::string drive = named(shown.seating.drive);
    const bool changed = picture.moment == Moment::changed && shown.plan;
    const fit::Seating& seating = changed ? shown.plan->after : shown.seating;
    const std::string place = quoted(language_, seating.place);
    const std::string why = why_not(language_, seating);
    const fit::Finding* near = nearest(seating);
    const std::string gap = near != nullptr ? millimetres(language_, near->gap->nominal) : std::string();
    std::string key;
    switch (picture.moment) {
      case Moment::empty:
        key = "picture empty";
        break;
      case Moment::occupied:
        key = "picture occupied";
        break;
      case Moment::misfit:
        key = "picture misfit";
        break;
      case Moment::kept_out:
        key = "picture place only";
        break;
      case Moment::seated:
        key = near != nullptr ? "picture seated gap" : "picture seated";
        break;
      case Moment::changed:
        key = near != nullptr ? "picture changed gap" : "picture changed";
        break;
    }
    std::string out =
        phrase(language_, key, {{"drive", named(seating.drive)}, {"place", place}, {"gap", gap}, {"why", why}});
    if (picture.moment == Moment::misfit) out += ' ' + sentence(why);
    return out;
  }

  [[nodiscard]] std::string picture(const ReportPicture& each) const {
    const std::string size =
        " width=\"" + std::to_string(each.width) + "\" height=\"" + std::to_string(each.height) + '"';
    const std::string words = caption(each);
    const std::string image = "<img src=\"" + each.light + "\" alt=\"" + attribute(words) + '"' + size + '>';
    const std::string shown =
        each.dark.empty()
            ? image
            : element("picture", "",
                      "<source srcset=\"" + each.dark + "\" media=\"(prefers-color-scheme: dark)\">" + image);
    return element("figure", " class=\"picture\"", shown + element("figcaption", "", html(words)));
  }

  [[nodiscard]] std::string pictures() const {
    if (!report_.shown || report_.shown->pictures.empty()) return {};
    std::string inner;
    if (report_.shown->drawings) inner += element("p", " class=\"note\"", html(say("drawings")));
    std::string all;
    for (const ReportPicture& each : report_.shown->pictures) all += picture(each);
    inner += element("div", report_.shown->drawings ? " class=\"drawings\"" : " class=\"pictures\"", all);
    return section("pictures", say(report_.shown->pictures.size() > 1 ? "pictures head" : "picture head"), inner);
  }

  [[nodiscard]] std::string model() const {
    if (!has_model()) return {};
    const ShownDrive& shown = *report_.shown;
    const fit::Seating& seating = shown.plan ? shown.plan->after : shown.seating;
    const auto with_names = [&](const char* key) {
      return bare(
          phrase(language_, key, {{"drive", named(seating.drive)}, {"place", quoted(language_, seating.place)}}));
    };
    ModelWords words;
    words.model = with_names("model says");
    words.caption = say("model caption");
    const std::pair<std::string ModelWords::*, const char*> controls[] = {
        {&ModelWords::controls, "model controls"},
        {&ModelWords::turn, "model turn"},
        {&ModelWords::zoom, "model zoom"},
        {&ModelWords::turn_left, "model turn left"},
        {&ModelWords::turn_right, "model turn right"},
        {&ModelWords::turn_up, "model turn up"},
        {&ModelWords::turn_down, "model turn down"},
        {&ModelWords::nearer, "model nearer"},
        {&ModelWords::farther, "model farther"},
        {&ModelWords::reset, "model reset"},
        {&ModelWords::cut, "model cut"},
        {&ModelWords::cut_direction, "model direction"},
        {&ModelWords::from_side, "model across"},
        {&ModelWords::from_end, "model along"},
        {&ModelWords::from_above, "model level"},
        {&ModelWords::show_why, "model why"},
        {&ModelWords::apart, "model apart"},
        {&ModelWords::put_in, "model put in"},
        {&ModelWords::play, "model play"},
        {&ModelWords::stop, "model stop"}};
    for (const auto& [member, key] : controls) words.*member = say(key);
    const ReportPicture& last = shown.pictures.back();
    const ModelPicture instead{last.light, bare(caption(last)), last.width, last.height};
    return section("model", say("model head"), model_figure("model-figure", shown.glb, instead, words));
  }

  [[nodiscard]] std::string cautions() const {
    if (report_.build.empty()) return {};
    std::string inner;
    if (report_.shown && report_.shown->cuts) inner += element("p", caution_class, html(say("caution file")));
    if (report_.shown && report_.shown->drills) inner += element("p", caution_class, html(say("caution drill")));
    inner += element("p", caution_class, html(say("caution fit")));
    return section("cautions", say("caution head"), inner);
  }

  const Report& report_;
  Language language_;
  Spoken spoken_;
};

}  // namespace

GapWords gap_words(Language language, const fit::Finding& finding) {
  if (!finding.gap || finding.why.code != fit::Code::gap)
    return {word(language, finding.verdict.value_or(fit::Verdict::undecided)), finding.between[0]};
  const double gap = finding.gap->nominal;
  return {phrase(language, gap < 0.0 ? "gap over" : "gap clear", {{"gap", millimetres(language, std::abs(gap))}}),
          phrase(language, "gap between", {{"a", finding.between[0]}, {"b", finding.between[1]}})};
}

std::string report_html(const Report& report) {
  return Page(report).run();
}

}  // namespace baywright::output
