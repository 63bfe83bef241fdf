#include "cli/commands.h"
#include "cli/session.h"
#include "output/part_drawing.h"
#include "output/parts_text.h"
#include "output/sources_text.h"
#include "output/svg.h"
#include "parts/catalogue.h"
#include "parts/has_word.h"
#include "parts/library.h"
#include "parts/naming.h"
#include "standards/all_rows.h"
#include "standards/m2.h"

#include <algorithm>
#include <filesystem>
#include <iostream>

namespace baywright::cli {

namespace {

using Folders = std::vector<std::filesystem::path>;

bool has_all(const parts::Item& item, const std::vector<std::string>& words) {
  const std::string text = item.id + ' ' + item.title;
  return std::all_of(words.begin(), words.end(), [&](const std::string& word) { return parts::has_word(text, word); });
}

std::vector<std::string> ids_of(const std::vector<parts::Item>& items) {
  std::vector<std::string> ids;
  for (const parts::Item& item : items) ids.push_back(item.id);
  return ids;
}

int show(const Arguments& arguments, const parts::Part& part) {
  if (arguments.drawing.empty()) return print(output::part_text(part)) ? all_fit : could_not_finish;
  const auto sheet = output::draw_part(part);
  if (const auto* refused = std::get_if<geometry::Refusal>(&sheet)) {
    std::cerr << "baywright: `" << part.id << "` cannot be drawn: " << refused->reason << '\n';
    return input_at_fault;
  }
  if (!write_whole(arguments.drawing, output::to_svg(std::get<output::Sheet>(sheet)))) return could_not_finish;
  if (arguments.drawing != "-") std::cout << "drew " << part.id << ": " << arguments.drawing << '\n';
  return all_fit;
}

/// Several were found, or one that stands for a family.
int list(const Arguments& arguments, const std::vector<parts::Item>& items, const std::string& asked) {
  if (arguments.drawing.empty()) return print(output::list_text(items)) ? all_fit : could_not_finish;
  constexpr std::size_t most = 5;
  std::vector<std::string> ids = ids_of(items);
  const std::string more = ids.size() > most ? "; `baywright parts " + asked + "` lists them" : "";
  ids.resize(std::min(most, ids.size()));
  for (std::string& id : ids) id = '`' + id + '`';
  if (items.size() == 1)
    std::cerr << "baywright: " << ids.front() << " stands for many parts; name one: " << items.front().title << '\n';
  else
    std::cerr << "baywright: `" << asked << "` finds " << items.size() << " parts; a drawing shows one: name "
              << parts::any_of(ids) << more << '\n';
  return input_at_fault;
}

int nothing(const std::string& asked, const std::vector<parts::Item>& all) {
  if (asked.starts_with("m2/"))
    if (const auto name = standards::m2::read_card_name(asked.substr(3)); std::holds_alternative<std::string>(name)) {
      std::cerr << "baywright: `" << asked << "`: " << std::get<std::string>(name) << '\n';
      return input_at_fault;
    }
  const std::string meant = parts::nearest(asked, ids_of(all));
  std::cerr << "baywright: the library has nothing for `" << asked << "`; "
            << (meant.empty() ? "`baywright parts` lists what it has" : "did you mean `" + meant + "`?") << '\n';
  return input_at_fault;
}

/// The published rows, and the part files that come with the program; not those of whoever runs it.
int sources() {
  Folders folders = parts::part_folders("here");
  folders.erase(folders.begin());
  std::vector<standards::Rows> families = standards::all_rows();
  standards::Rows files{"part files", {}};
  for (const parts::Entry& entry : parts::entries(folders)) {
    if (entry.file.empty()) continue;
    std::optional<parts::Fault> fault;
    const auto part = parts::look_up(entry.id, folders, fault);
    if (!part) {
      std::cerr << (fault ? fault->text() : "baywright: `" + entry.id + "` cannot be read") << '\n';
      return input_at_fault;
    }
    for (tolerance::Dimension d : part->dimensions) {
      d.name = entry.id + ": " + d.name;
      files.rows.push_back(std::move(d));
    }
  }
  families.push_back(std::move(files));
  return print(output::sources_text(families)) ? all_fit : could_not_finish;
}

}  // namespace

int parts_command(const Arguments& arguments) {
  if (arguments.sources) return sources();
  if (!arguments.drawing.empty() && arguments.drawing != "-" && !arguments.drawing.ends_with(".svg"))
    return at_fault(arguments.drawing + ": drawings are written as SVG; name a file that ends in .svg");
  const Folders folders = parts::part_folders("here");
  std::string asked;
  for (const std::string& word : arguments.words) asked += (asked.empty() ? "" : " ") + word;
  std::optional<parts::Fault> fault;
  if (!asked.empty())
    if (const auto part = parts::look_up(asked, folders, fault)) return show(arguments, *part);
  const std::vector<parts::Item> all = parts::catalogue(folders);
  const std::vector<std::string> words = parts::search_words(arguments.words);
  std::vector<parts::Item> items = all;
  std::erase_if(items, [&](const parts::Item& item) { return !has_all(item, words); });
  if (items.size() == 1)
    if (const auto part = parts::look_up(items.front().id, folders, fault)) return show(arguments, *part);
  if (fault) {
    std::cerr << fault->text() << '\n';
    return input_at_fault;
  }
  return items.empty() ? nothing(asked, all) : list(arguments, items, asked);
}

}  // namespace baywright::cli
