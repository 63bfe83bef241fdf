// Codes of the rooms below as sentences of the page, by the table of report_words.cpp.
#include "output/answer_words.h"
#include "output/more_words.h"
#include "output/report_words.h"
#include "output/value_words.h"
#include "output/words.h"
#include "parts/adapter.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace baywright::output {

using fit::Code;
using fit::Kind;
using plans::Change;

namespace {

/// "SATA" of "SATA 6 Gb/s", each once; as it is where that would not tell the two apart.
std::string family(const std::string& links, const std::string& other) {
  const auto families = [](const std::string& text) {
    std::string out;
    for (const char* const each : {"SATA", "PCIe", "SAS"})
      if (text.find(each) != std::string::npos) out += (out.empty() ? "" : "/") + std::string(each);
    return out;
  };
  const std::string short_one = families(links);
  return short_one.empty() || short_one == families(other) ? named(links) : short_one;
}

std::string share_words(Language language, double share) {
  const std::string text = localized(language, percent(share));
  if (language == Language::german && text.starts_with("fewer than ")) return "weniger als " + text.substr(11);
  return text;
}

/// Which part, with its solid where that has a word of its own in English; in German the part alone.
std::string part_words(Language language, const fit::Finding& finding, std::size_t which) {
  return among(language, language == Language::english ? subject(finding, which) : finding.between[which]);
}

/// "a 2.5-inch drive": its form, where it has a word of its own here.
std::string form_words(Language language, const std::string& form) {
  const std::string key = "form " + form;
  const auto known = phrases();
  const bool said = std::any_of(known.begin(), known.end(), [&](const Phrase& each) { return each.key == key; });
  return said ? phrase(language, key) : named(form);
}

/// A length that is chosen or sold, without zeros behind it: "8 mm".
std::string size_words(Language language, double mm) {
  return figure(language, mm, 2) + " mm";
}

std::string why_gap(Language language, const fit::Finding& finding) {
  const std::string a = part_words(language, finding, 0);
  const std::string b = part_words(language, finding, 1);
  const fit::GapFigures& gap = *finding.gap;
  if (clears_at_worst(finding))
    return phrase(language, "why marginal near",
                  {{"a", a},
                   {"b", b},
                   {"gap", localized(language, down_to_hundredths(gap.min)) + " mm"},
                   {"asked", millimetres(language, gap.asked)}});
  if (finding.verdict == fit::Verdict::marginal) return phrase(language, "why marginal", {{"a", a}, {"b", b}});
  if (gap.nominal < 0.0)
    return phrase(language, "why overlap", {{"a", a}, {"b", b}, {"gap", millimetres(language, -gap.nominal)}});
  return phrase(
      language, "why near",
      {{"a", a}, {"b", b}, {"gap", millimetres(language, gap.nominal)}, {"asked", millimetres(language, gap.asked)}});
}

std::string_view key_of(Code code) {
  switch (code) {
    case Code::adapter_passes_not:
      return "why adapter passes not";
    case Code::bus_not_split:
      return "why split";
    case Code::width_not_held:
    case Code::half_card:
    case Code::full_card:
      return "why size";
    case Code::key_meets_not:
      return "why key";
    case Code::slot_too_short:
    case Code::plug_enters_not:
    case Code::plug_dead:
    case Code::connector_differs:
      return "why plug";
    case Code::soldered:
      return "why soldered";
    case Code::class_refuses:
      return "why class";
    case Code::thread_differs:
      return "why thread";
    case Code::screw_long:
      return "why screw long";
    case Code::screw_short:
      return "why screw short";
    case Code::height_unknown:
      return "why height";
    default:
      return {};
  }
}

std::string_view key_of(Kind kind) {
  switch (kind) {
    case Kind::holes:
      return "why holes";
    case Kind::screw:
      return "why screw";
    case Kind::connector:
      return "why connector";
    case Kind::bracket:
      return "why bracket";
    case Kind::access:
      return "why driver";
    case Kind::insertion:
      return "why way plain";
    default:
      return "why other";
  }
}

}  // namespace

std::string among(Language language, const std::string& text) {
  if (language == Language::english) return named(text);
  if (text == "heatsink" || text == "pad") return phrase(language, "kind " + text);  // which were given no name
  return quoted(language, text);
}

std::string word(Language language, fit::Verdict verdict) {
  return phrase(language, word(verdict));
}

std::string why_not(Language language, const fit::Finding& finding) {
  const fit::Reason& why = finding.why;
  const auto w = [&why](const char* fact) { return named(why.word(fact)); };
  if (finding.gap && why.code == Code::gap && finding.verdict != fit::Verdict::undecided)
    return why_gap(language, finding);
  switch (why.code) {
    case Code::bus_absent:
      return phrase(language, "why absent",
                    {{"wired", family(why.word("wired"), why.word("drive"))},
                     {"own", family(why.word("drive"), why.word("wired"))}});
    case Code::other_form:
      return phrase(
          language, "why form",
          {{"drive", form_words(language, why.word("drive"))}, {"place", form_words(language, why.word("place"))}});
    case Code::adapter_needed:
      return phrase(language, "why adapter", {{"adapter", w("adapter")}});
    case Code::size_too_long:
      return phrase(language, "why long", {{"size", w("size")}, {"offered", w("offered")}});
    case Code::size_too_short:
      return phrase(language, "why short", {{"size", w("size")}, {"offered", w("offered")}});
    case Code::occupied:
      return phrase(language, "why occupied", {{"by", among(language, why.word("by"))}});
    case Code::way_blocked:
      return phrase(language, "why way", {{"by", among(language, why.word("by"))}});
    default:
      break;
  }
  const std::string_view key = key_of(why.code);
  return phrase(language, key.empty() ? key_of(finding.kind) : key);
}

std::string why_not(Language language, const fit::Seating& seating) {
  std::string out;
  for (const fit::Finding* finding : grounds(seating)) {
    const std::string each = why_not(language, *finding);
    out = out.empty() ? each : phrase(language, "why both", {{"first", out}, {"second", each}});
  }
  return out.empty() ? phrase(language, "why other") : out;
}

std::string say(Language language, const value::Remark& remark, const std::string& currency) {
  using value::Code;
  const auto f = [&](const char* fact) { return remark.figure(fact); };
  const std::string other = named(remark.word("other"));
  const std::string size = capacity(language, f("gigabytes"));
  std::string key = word(remark.code);
  switch (remark.code) {
    case Code::tbw_ends_first:
      if (!(f("warranty") > 0.0)) key = "TBW ends";
      return phrase(language, key,
                    {{"years", years(language, f("years"))}, {"warranty", years(language, f("warranty"))}});
    case Code::writes_beyond:
      return phrase(language, key, {{"figure", figure(language, f("dwpd"), 2)}});
    case Code::small_for_a_drive:
      return phrase(language, key, {{"figure", size}});
    case Code::dense_cells:
      return phrase(language, key,
                    {{"bits", figure(language, f("bits"), 0)},
                     {"cells", remark.word("cells")},
                     {"day", figure(language, f("day"), 1)},
                     {"share", share_words(language, f("share"))}});
    case Code::bus_not_carried:
      return phrase(language, key,
                    {{"slot", family(remark.word("slot"), remark.word("own"))},
                     {"own", family(remark.word("own"), remark.word("slot"))}});
    case Code::slower_here:
      return phrase(language, key,
                    {{"figure", figure(language, f("megabytes"), 0)}, {"share", share_words(language, f("share"))}});
    case Code::costs_more_a_gigabyte:
      return phrase(language, key,
                    {{"here", amount(language, f("here"), currency, 3)},
                     {"there", amount(language, f("there"), currency, 3)},
                     {"other", other}});
    case Code::larger_sibling:
      key = !(f("priced") > 0.0) ? "larger" : f("more") > 0.0 ? "larger dearer" : "larger no dearer";
      return phrase(language, key,
                    {{"other", other}, {"figure", size}, {"more", amount(language, f("more"), currency, 2)}});
    default:
      return phrase(language, key);
  }
}

std::string say(Language language, const value::Upgrade& upgrade, const value::Present& now) {
  constexpr std::array keys{"up plainly", "up faster", "up little", "up none"};
  if (upgrade.worth == value::Worth::not_known) return {};
  std::string key = keys[static_cast<std::size_t>(upgrade.worth)];
  if (upgrade.worth == value::Worth::plainly && upgrade.ratio > 0.0) key += " ratio";
  return phrase(
      language, key,
      {{"now", phrase(language, "now " + std::string(now.name))}, {"ratio", figure(language, upgrade.ratio, 1)}});
}

std::vector<std::string> say(Language language, const thermal::Heat& heat) {
  std::vector<std::string> out;
  if (heat.warmth) {
    const thermal::Interval kelvin = heat.warmth->composite();
    const std::string low = figure(language, std::floor(kelvin.low - thermal::ice_point), 0);
    const std::string range =
        std::isfinite(kelvin.high)
            ? phrase(language, "range",
                     {{"low", low}, {"high", figure(language, std::ceil(kelvin.high - thermal::ice_point), 0)}})
            : phrase(language, "range open", {{"low", low}});
    constexpr std::array keys{"heat below", "heat may", "heat likely", "heat no limit"};
    const double limit = heat.stated.warning.value_or(heat.stated.critical.value_or(0.0));
    out.push_back(phrase(language, keys[static_cast<std::size_t>(heat.outlook)],
                         {{"range", range}, {"limit", figure(language, limit - thermal::ice_point, 0)}}));
  } else if (heat.unknown == thermal::Unknown::no_power) {
    out.push_back(phrase(language, "heat no power"));
  } else if (heat.unknown == thermal::Unknown::too_hot) {
    out.push_back(phrase(language, "heat too hot", {{"watts", figure(language, heat.stated.watts.value_or(0.0), 2)}}));
  }
  if (heat.budget && heat.draw && heat.draw->over)
    out.push_back(
        phrase(language, "heat over",
               {{"known", figure(language, heat.draw->known, 2)}, {"watts", figure(language, heat.budget->watts, 2)}}));
  if (heat.contact && heat.contact->too_loose) out.push_back(phrase(language, "heat pad loose"));
  if (heat.contact && heat.contact->too_tight) out.push_back(phrase(language, "heat pad tight"));
  return out;
}

// ---- plans

namespace {

/// What it is; its name where none of the library is called so.
std::string adapter_words(Language language, const std::string& id) {
  return parts::adapter(id) != nullptr ? phrase(language, id) : among(language, id);
}

std::string say_spacer(Language language, const Change& change) {
  const std::string what = among(language, change.what);
  const std::string value = size_words(language, change.value);
  if (change.to == "spacers under the drive") {
    const std::string under = phrase(language, "spacers under drive", {{"value", value}, {"what", what}});
    if (!(change.screw > 0.0)) return under;
    return phrase(language, "with screws", {{"change", under}, {"screw", size_words(language, change.screw)}});
  }
  const bool at_part = change.spacer > 0.0;
  const std::string length = size_words(language, at_part ? change.spacer : change.value - change.from);
  const std::string from = size_words(language, change.from);
  const std::string count = phrase(language, change.to.starts_with("two") ? "two washers" : "a washer");
  const char* const key = change.to.ends_with("screw head") ? "washers under heads"
                          : change.to == "spacers"          ? "spacers at screws"
                                                            : "washers at screws";
  const std::string instead = change.spacer_now > 0.0 ? phrase(language, "in place of those",
                                                               {{"length", size_words(language, change.spacer_now)}})
                                                      : std::string();
  const std::string raised = phrase(
      language, key,
      {{"count", count}, {"what", what}, {"length", length}, {"instead", instead}, {"value", value}, {"from", from}});
  if (!(change.screw > 0.0)) return raised;
  return phrase(language, "with screws", {{"change", raised}, {"screw", size_words(language, change.screw)}});
}

}  // namespace

std::string say(Language language, const Change& change) {
  using plans::Kind;
  const std::string what = among(language, change.what);
  const std::string to = among(language, change.to);
  const std::string from = size_words(language, change.from);
  const std::string value = size_words(language, change.value);
  std::string key(word(change.kind));
  switch (change.kind) {
    case Kind::spacer:
      return say_spacer(language, change);
    case Kind::other_pad:
      if (change.value == change.from) key = "same pad";
      break;
    case Kind::single_sided:
      key = "single-sided";
      break;
    case Kind::other_standoff:
      key = change.to.empty() ? "stand-off height" : "stand-off hole";
      break;
    case Kind::turned:
      key = change.what == "plug" ? "turned plug" : change.to == "end for end" ? "turned end" : "turned";
      break;
    default:
      break;
  }
  const bool size = change.kind == Kind::other_standoff || change.kind == Kind::other_screw;
  const auto [x0, y0, x1, y1] = change.cut;
  return phrase(language, key,
                {{"what", change.kind == Kind::other_screw ? named(change.what) : what},
                 {"to", size                           ? named(change.to)
                        : change.kind == Kind::adapter ? adapter_words(language, change.to)
                                                       : to},
                 {"from", from},
                 {"value", value},
                 {"share", share_words(language, change.pressed)},
                 {"width", size_words(language, x1 - x0)},
                 {"height", size_words(language, y1 - y0)}});
}

std::string word(Language language, plans::Price price) {
  constexpr std::array keys{"runs warmer", "runs slower",   "warranty",        "metal work",
                            "screws",      "less capacity", "cannot be undone"};
  return phrase(language, keys[static_cast<std::size_t>(price)]);
}

std::string say(Language language, const plans::Plan& plan, plans::Caution caution) {
  if (caution != plans::Caution::stands_out) return phrase(language, plans::word(caution));
  const auto up = [&](double mm) {
    return std::isfinite(mm) ? size_words(language, std::ceil(mm * 100.0 - 1e-6) / 100.0)
                             : phrase(language, "unknown length");
  };
  std::string out;
  for (const Change& change : plan.changes)
    if (!change.through.empty())
      out += (out.empty() ? "" : " ") + phrase(language, plan.changes.size() > 1 ? "stands out alone" : "stands out",
                                               {{"what", among(language, change.through)},
                                                {"of", among(language, change.what)},
                                                {"by", up(change.out)},
                                                {"most", up(change.out_most)}});
  return out;
}

// ---- shopping

std::string word(Language language, plans::ItemKind kind) {
  return phrase(language, "kind " + std::string(plans::word(kind)));
}

namespace {

bool digit(char c) {
  return c >= '0' && c <= '9';
}

}  // namespace

std::string part_name(Language language, std::string text) {
  if (language == Language::english) return text;
  // Names of standards and sizes stay; these are the words that stand beside them.
  constexpr std::array<std::pair<std::string_view, std::string_view>, 21> words{
      {{"thermal paste", "Wärmeleitpaste"},
       {" with a low head, for M.2 cards", " mit flachem Kopf, für M.2-Karten"},
       {"small plain washer", "kleine Unterlegscheibe"},
       {"plain washer", "Unterlegscheibe"},
       {"spacer round", "Abstandhülse, rund"},
       {", bore ", ", Bohrung "},
       {"M.2 stand-off", "M.2-Abstandhalter"},
       {"hex stand-off", "Sechskant-Abstandhalter"},
       {", studs at both ends", ", Gewindebolzen an beiden Enden"},
       {", stud ", ", Gewindebolzen "},
       {"hexagon nut", "Sechskantmutter"},
       {"thermal pad", "Wärmeleitpad"},
       {" for its screws", " für die Schrauben"},
       {"at least", "mindestens"},
       {" thick", " dick"},
       {", soft enough for", ", weich genug für"},
       {" of compression", " Pressung"},
       {" pan head", " Flachkopf"},
       {" high", " hoch"},
       {" long", " lang"},
       {"heatsink", "Kühlkörper"}}};
  for (const auto& [english, german] : words)
    if (const std::size_t at = text.find(english); at != std::string::npos) text.replace(at, english.size(), german);
  for (std::size_t i = 1; i + 1 < text.size(); ++i)
    if (text[i] == '.' && digit(text[i - 1]) && digit(text[i + 1])) text[i] = ',';
  return text;
}

std::string designation(Language language, const plans::Item& item) {
  const bool own = !item.name.empty() && item.name != plans::word(item.kind);
  const auto library = parts::adapters();
  const auto adapter = std::find_if(library.begin(), library.end(),
                                    [&](const parts::Adapter& each) { return each.title == item.designation; });
  if (adapter != library.end()) return phrase(language, adapter->id);
  const bool theirs = (item.kind == plans::ItemKind::drive || item.kind == plans::ItemKind::heatsink) &&
                      item.designation != plans::word(item.kind);  // as the file has it
  const std::string text = theirs ? item.designation : part_name(language, item.designation);
  return own ? named(item.name) + ": " + named(text) : named(text);
}

std::string say(Language language, const plans::Exchange& exchange) {
  constexpr std::array keys{"or other driver", "or taller head", "or smaller washer",
                            "never thread",    "never head",     "never paste"};
  return phrase(language, keys[static_cast<std::size_t>(exchange.condition)],
                {{"mm", size_words(language, exchange.mm)}});
}

std::string say(Language language, plans::Remark remark, const plans::Item& item) {
  constexpr std::array keys{"note wrong length", "note wrong thread", "note length open", "note not sold",
                            "note with board",   "note measure",      "note wide holes",  "note no washer",
                            "note each screw",   "note short",        "note longer",      "note stands there",
                            "note own screws",   "note over washer",  "note wide spacer"};
  return phrase(language, keys[static_cast<std::size_t>(remark)],
                {{"mm", size_words(language, remark == plans::Remark::wide_spacer ? item.outside : item.named)},
                 {"part", among(language, item.part)}});
}

// ---- steps

namespace {

/// "long PH0 driver": how it is called, and its recess.
std::string tool_by(Language language, const std::string& name, const std::string& lead) {
  if (name == "fingers") return phrase(language, "tool fingers");
  std::string size;
  for (const std::string_view begin : {"ordinary ", "short ", "long ", "stubby "})
    if (name.starts_with(begin)) size = name.substr(begin.size());
  if (size.empty()) size = name;
  const bool bit = size.find(" bit") != std::string::npos;
  size = size.substr(0, size.find(bit ? " bit" : " driver"));
  const char* const key = bit                                                         ? "bit"
                          : name.starts_with("short ") || name.starts_with("stubby ") ? "short"
                          : name.starts_with("long ")                                 ? "long"
                                                                                      : "driver";
  return phrase(language, lead + key, {{"size", named(size)}});
}

std::string with_tool(Language language, const fit::Reason& how) {
  if (how.words.empty()) return {};
  const std::string own = how.word("own tool");
  const std::string name = how.word("tool");
  if (own.empty() && name.empty()) return {};
  return phrase(language, "with tool",
                {{"tool", own.empty() ? tool_by(language, name, "with ")
                                      : phrase(language, "with own", {{"tool", named(own)}})}});
}

/// What lies between a part and what it is screwed to.
std::string between(Language language, const plans::Step& step) {
  const char* const key = step.washers_each > 1 ? "washers" : step.washers_each > 0 ? "washer" : "spacer";
  return phrase(language, std::string("between ") + key, {{"length", size_words(language, step.length)}});
}

std::string fasteners(Language language, const plans::Step& step, const std::string& what) {
  std::string kind;
  if (!step.what.empty())
    kind = phrase(language, step.length > 0.0 ? "of thread long" : "of thread",
                  {{"thread", named(step.what)}, {"length", size_words(language, step.length)}});
  return phrase(language, (step.count == 1 ? "one " : "many ") + what + (step.count == 1 ? "" : "s"),
                {{"count", std::to_string(step.count)}, {"kind", kind}});
}

std::string way_words(Language language, const fit::Reason& how) {
  if (how.words.empty()) return {};
  const std::string way = how.word("way");
  if (way.empty()) return {};
  for (const char* const each : {"tilted", "searched", "up", "along", "back", "left", "right"})
    if (way == each)
      return phrase(language, "way " + way, {{"angle", figure(language, std::round(how.figure("angle")), 0)}});
  return phrase(language, "way bare", {{"angle", figure(language, std::round(how.figure("angle")), 0)}});
}

}  // namespace

std::string tool(Language language, const std::string& name) {
  return name.find(" driver") == std::string::npos && name.find(" bit") == std::string::npos && name != "fingers"
             ? named(name)
             : tool_by(language, name, "tool ");
}

std::string say(Language language, const plans::Step& step) {
  using plans::Action;
  std::string key = "step " + std::string(plans::word(step.action));
  std::string what_kind = "screw";
  switch (step.action) {
    case Action::set_spacers:
      if (step.count == 0)
        key += " under";
      else if (step.length > 0.0)
        key += " of";
      break;
    case Action::set_standoff:
      if (step.length > 0.0) key += " high";
      break;
    case Action::take_out:
      if (step.screws) key += " screwed";
      break;
    case Action::put_back:
      if (step.length > 0.0)
        key += !step.screws ? " over spacers" : step.longer_screw > 0.0 ? " over spacers only" : " over spacers with";
      else if (step.screws)
        key += " with";
      break;
    case Action::screw_standoffs:
      what_kind = "stand-off";
      break;
    case Action::hold_nuts:
      what_kind = "nut";
      break;
    case Action::screw:
    case Action::screw_outside:
      key = step.count == 0 ? "step fasten" : step.count == 1 ? "step screw" : "step screws";
      break;
    default:
      break;
  }
  const std::string with = with_tool(language, step.how);
  const bool led = step.length > 0.0 && !step.what.empty() && !with.empty();  // "8 mm long, with ..."
  std::string out =
      phrase(language, key,
             {{"what", among(language, step.what)},
              {"where", among(language, step.where)},
              {"count", std::to_string(step.count)},
              {"length", size_words(language, step.length)},
              {"between", between(language, step)},
              {"fasteners", step.count > 0 ? fasteners(language, step, what_kind) + (led ? "," : "") : std::string()},
              {"tool", with},
              {"screw", step.screws ? named(part_name(language, in_words(*step.screws))) : std::string()},
              {"thread", step.screws ? named(step.screws->thread) : std::string()},
              {"way", step.action == Action::put_in ? way_words(language, step.how) : std::string()}});
  if (step.longer_screw > 0.0)
    out += ' ' + phrase(language, "step longer screws",
                        {{"screw", named(part_name(language, in_words(*step.screws)))},
                         {"longer", size_words(language, std::ceil(step.longer_screw * 100.0 - 1e-6) / 100.0)}});
  if (step.action == Action::screw_outside) out += ' ' + phrase(language, "step outside");
  if ((step.action == Action::screw || step.action == Action::screw_outside) && step.count > 0)
    out += ' ' + phrase(language, "torque");
  return out;
}

std::string say(Language language, plans::Hazard hazard) {
  return phrase(language, "hazard " + std::string(plans::word(hazard)));
}

}  // namespace baywright::output
