#include "build/reader.h"
#include "parts/library.h"
#include "standards/fasteners.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <cmath>

namespace baywright::build {

using parts::Fields;
namespace fasteners = standards::fasteners;

namespace {

void refuse_empty(const Fields& shelf, std::string_view key, bool empty) {
  if (empty)
    shelf.stop(key, '`' + std::string(key) + "` is empty: plans would have none to use",
               "list what is at hand, or leave the key out for all that is sold");
}

void read_spacers(Fields& shelf, Shelf& out) {
  std::vector<double> spacers = shelf.numbers("spacers");
  refuse_empty(shelf, "spacers", spacers.empty());
  for (const double each : spacers)
    if (!(each > 0.0 && each <= 1000.0))
      shelf.stop("spacers", "a spacer of " + tolerance::in_words(each) + " is none", "it must be more than 0, to 1000");
  std::sort(spacers.begin(), spacers.end());
  const auto twice = std::adjacent_find(spacers.begin(), spacers.end());
  if (twice != spacers.end())
    shelf.stop("spacers", "spacers of " + tolerance::in_words(*twice) + " are listed twice", "list each length once");
  out.spacers = std::move(spacers);
}

void read_screw_list(Fields& shelf, Shelf& out) {
  std::vector<Screw> screws;
  for (const std::string& text : shelf.texts("screws")) {
    const Screw screw = screw_from(shelf, "screws", text);
    for (const Screw& before : screws)
      if (before.thread == screw.thread && before.length == screw.length)
        shelf.stop("screws", '`' + text + "` is listed twice", "list each screw once");
    screws.push_back(screw);
  }
  refuse_empty(shelf, "screws", screws.empty());
  out.screws = std::move(screws);
}

void read_heatsinks(const Reader& reader, Fields& shelf, Shelf& out) {
  std::vector<std::string> names = shelf.texts("heatsinks");
  refuse_empty(shelf, "heatsinks", names.empty());
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (std::find(names.begin(), names.begin() + static_cast<std::ptrdiff_t>(i), names[i]) !=
        names.begin() + static_cast<std::ptrdiff_t>(i))
      shelf.stop("heatsinks", '`' + names[i] + "` is listed twice", "list each heatsink once");
    auto found = parts::find_part(names[i], reader.folders);
    if (auto* fault = std::get_if<parts::Fault>(&found)) {
      if (fault->file.empty()) shelf.stop("heatsinks", fault->what, fault->right);
      throw parts::Stop{*fault};
    }
    if (std::get<parts::Part>(found).kind != "heatsink")
      shelf.stop("heatsinks", '`' + names[i] + "` is no heatsink", "baywright parts lists them");
  }
  out.heatsinks = std::move(names);
}

std::string trimmed(const std::string& text) {
  const std::size_t first = text.find_first_not_of(" \t");
  if (first == std::string::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

/// Where the length begins that stands behind a thread: "M3 x 6", "M3x6", "6-32 x 3/16 in". npos: nowhere.
std::size_t length_in(const std::string& text) {
  const std::size_t cross = text.find('x');
  return cross == std::string::npos || cross == 0 ? std::string::npos : cross + 1;
}

/// "4 x M3 x 6": how many there are stands in no file.
bool counted(const std::string& text, std::string& rest) {
  const std::size_t cross = text.find('x');
  if (cross == std::string::npos || text.find('x', cross + 1) == std::string::npos) return false;
  rest = trimmed(text.substr(cross + 1));
  const std::string count = trimmed(text.substr(0, cross));
  return !count.empty() && count.find_first_not_of("0123456789") == std::string::npos;
}

}  // namespace

Screw screw_from(const Fields& fields, std::string_view key, const std::string& text) {
  const std::string right = "write thread and length under the head, as in \"M3 x 6\"";
  if (std::string rest; counted(text, rest))
    fields.stop(key, '`' + text + "` counts its screws", "leave the count out: \"" + rest + '"');
  const std::size_t behind = length_in(text);
  if (behind == std::string::npos) fields.stop(key, '`' + text + "` names no screw", right);
  const std::string name = trimmed(text.substr(0, behind - 1));
  const std::string figure = trimmed(text.substr(behind));
  const fasteners::Thread* thread = fasteners::thread(name);
  if (thread == nullptr) {
    std::vector<std::string> known;
    for (const fasteners::Thread& each : fasteners::threads()) known.emplace_back(each.id);
    fields.stop(key, "there is no thread `" + name + '`', "the threads are " + parts::any_of(known));
  }
  const auto length = tolerance::read_length(figure);
  const auto* known = std::get_if<tolerance::Length>(&length);
  if (known == nullptr || known->limits_given || !(known->nominal > 0.0 && known->nominal <= 1000.0))
    fields.stop(key, '`' + figure + "` is no length of a screw", right);
  return {std::string(thread->id), known->nominal};
}

Screw screw_of(Fields& fields, std::string_view key) {
  const std::string text = fields.text(key);
  return screw_from(fields, key, text);
}

void read_shelf(Reader& reader, Fields& document) {
  auto shelf = document.maybe_table("shelf", "[shelf]");
  if (!shelf) return;
  shelf->knows({"spacers", "screws", "heatsinks"});
  Shelf out;
  if (shelf->has("spacers")) read_spacers(*shelf, out);
  if (shelf->has("screws")) read_screw_list(*shelf, out);
  if (shelf->has("heatsinks")) read_heatsinks(reader, *shelf, out);
  shelf->finish();
  reader.build.shelf = std::move(out);
}

}  // namespace baywright::build
