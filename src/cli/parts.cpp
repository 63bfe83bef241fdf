#include "cli/commands.h"
#include "cli/session.h"
#include "output/parts_text.h"
#include "parts/catalogue.h"
#include "parts/library.h"
#include "parts/naming.h"
#include "standards/m2.h"

#include <algorithm>
#include <cctype>
#include <iostream>

namespace baywright::cli {

namespace {

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

bool has_all(const parts::Item& item, const std::vector<std::string>& words) {
  const std::string text = lower(item.id + ' ' + item.title);
  return std::all_of(words.begin(), words.end(),
                     [&](const std::string& word) { return text.find(lower(word)) != std::string::npos; });
}

}  // namespace

int parts_command(const Arguments& arguments) {
  const auto folders = parts::part_folders("here");
  std::string joined;
  for (const std::string& word : arguments.words) joined += (joined.empty() ? "" : " ") + word;
  std::optional<parts::Fault> fault;
  if (!joined.empty())
    if (const auto part = parts::look_up(joined, folders, fault))
      return print(output::part_text(*part)) ? all_fit : could_not_finish;
  std::vector<parts::Item> items = parts::catalogue(folders);
  std::vector<std::string> ids;
  for (const parts::Item& item : items) ids.push_back(item.id);
  std::erase_if(items, [&](const parts::Item& item) { return !has_all(item, arguments.words); });
  if (items.size() == 1)
    if (const auto part = parts::look_up(items.front().id, folders, fault))
      return print(output::part_text(*part)) ? all_fit : could_not_finish;
  if (fault) {
    std::cerr << fault->text() << '\n';
    return input_at_fault;
  }
  if (!items.empty()) return print(output::list_text(items)) ? all_fit : could_not_finish;
  if (joined.starts_with("m2/"))
    if (const auto name = standards::m2::read_card_name(joined.substr(3)); std::holds_alternative<std::string>(name)) {
      std::cerr << "baywright: `" << joined << "`: " << std::get<std::string>(name) << '\n';
      return input_at_fault;
    }
  const std::string meant = parts::nearest(joined, ids);
  std::cerr << "baywright: the library has nothing for `" << joined << "`; "
            << (meant.empty() ? "`baywright parts` lists what it has" : "did you mean `" + meant + "`?") << '\n';
  return input_at_fault;
}

}  // namespace baywright::cli
