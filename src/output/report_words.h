#pragma once
// Every word of the page for a customer, in English and German, as one table; and what is said by codes elsewhere
// (steps, plans, remarks, heat, the shopping list) in the page's language. Plain words: no term of the trade that the
// page's list of words does not explain.
#include "fit/seating.h"
#include "plans/mounting.h"
#include "plans/plan.h"
#include "plans/shopping.h"
#include "thermal/heat.h"
#include "value/appraisal.h"

#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace baywright::output {

enum class Language { english, german };
[[nodiscard]] std::string_view tag(Language language);  // "en", as in HTML's lang
/// "en" or "de"; none for any other.
[[nodiscard]] std::optional<Language> language_called(std::string_view word);

/// A name or a text that somebody else wrote, marked so that the page sets it apart from what is around it. Names in
/// what the functions below take are marked by them.
[[nodiscard]] std::string named(std::string_view text);
/// The same in quotation marks, for places, whose names read like any words of a sentence.
[[nodiscard]] std::string quoted(Language language, std::string_view text);
/// A part or place among words of the page's language: in German in quotation marks, as the names seldom are German.
[[nodiscard]] std::string among(Language language, const std::string& text);
inline constexpr char name_begins = '\x01';
inline constexpr char name_ends = '\x02';

struct Phrase {
  std::string_view key;
  std::string_view english;
  std::string_view german;
};
[[nodiscard]] std::span<const Phrase> phrases();

/// The phrase of that key with each "{name}" replaced. A key that is not in the table gives "[key]".
using Fills = std::initializer_list<std::pair<std::string_view, std::string>>;
[[nodiscard]] std::string phrase(Language language, std::string_view key, Fills fills = {});

// ---- figures: a point or a comma before decimals

[[nodiscard]] std::string localized(Language language, std::string figure);
[[nodiscard]] std::string amount(Language language, double money, const std::string& currency, int decimals);
[[nodiscard]] std::string figure(Language language, double value, int decimals);
[[nodiscard]] std::string capacity(Language language, double gigabytes);
[[nodiscard]] std::string years(Language language, double value);
[[nodiscard]] std::string millimetres(Language language, double mm);  // "1.65 mm"

[[nodiscard]] std::string date_words(Language language, int year, int month, int day);  // month 1..12

// ---- sentences

[[nodiscard]] std::string word(Language language, fit::Verdict verdict);
/// Why a seating is what it is, as what follows a colon; empty where nothing was found.
[[nodiscard]] std::string why_not(Language language, const fit::Finding& finding);
/// The same of all that keeps a drive from its place.
[[nodiscard]] std::string why_not(Language language, const fit::Seating& seating);
[[nodiscard]] std::string say(Language language, const value::Remark& remark, const std::string& currency);
/// Empty where it is not known.
[[nodiscard]] std::string say(Language language, const value::Upgrade& upgrade, const value::Present& now);
[[nodiscard]] std::vector<std::string> say(Language language, const thermal::Heat& heat);
[[nodiscard]] std::string say(Language language, const plans::Step& step);
[[nodiscard]] std::string say(Language language, plans::Hazard hazard);
[[nodiscard]] std::string tool(Language language, const std::string& name);  // of `Mounting::tools`
/// What is changed, for lists and joining: no sentence.
[[nodiscard]] std::string say(Language language, const plans::Change& change);
[[nodiscard]] std::string word(Language language, plans::Price price);
[[nodiscard]] std::string say(Language language, const plans::Plan& plan, plans::Caution caution);
[[nodiscard]] std::string word(Language language, plans::ItemKind kind);
[[nodiscard]] std::string part_name(Language language,
                                    std::string text);  // of what is bought: "M2 x 3 with a low head"
[[nodiscard]] std::string designation(Language language, const plans::Item& item);
[[nodiscard]] std::string say(Language language, const plans::Exchange& exchange);
[[nodiscard]] std::string say(Language language, plans::Remark remark, const plans::Item& item);

}  // namespace baywright::output
