#include "parts/naming.h"

#include <algorithm>
#include <utility>

namespace baywright::parts {

namespace {

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j < row.size(); ++j) row[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = diagonal + (lower(a[i - 1]) == lower(b[j - 1]) ? 0u : 1u);
      diagonal = row[j];
      row[j] = std::min({row[j] + 1, row[j - 1] + 1, change});
    }
  }
  return row.back();
}

/// How many of the words asked for, of three letters or digits on, a name has in it: "2280 NVMe" means a card, though
/// its letters are nearer to shorter names.
int words_shared(std::string_view asked, std::string_view name) {
  constexpr std::size_t shortest = 3;
  int count = 0;
  std::size_t begin = 0;
  while (begin < asked.size()) {
    const std::size_t end = std::min(asked.find_first_of(" /-_,", begin), asked.size());
    const std::string_view word = asked.substr(begin, end - begin);
    if (word.size() >= shortest && name.find(word) != std::string_view::npos) ++count;
    begin = end + 1;
  }
  return count;
}

}  // namespace

std::string nearest(std::string_view asked, const std::vector<std::string>& known) {
  std::string best;
  if (asked.size() > 80) return best;  // no name of anything
  // In a word of three letters, two changes leave nothing of what was meant.
  std::size_t least = asked.size() <= 3 ? 2 : std::max<std::size_t>(2, asked.size() / 3) + 1;
  for (const std::string& word : known) {
    const std::size_t distance = edit_distance(asked, word);
    if (distance < least) {
      least = distance;
      best = word;
    }
  }
  return best;
}

std::string nearest_few(std::string_view asked, std::vector<std::string> known) {
  constexpr std::size_t few = 3;
  if (asked.size() > 80 || known.empty()) return {};
  std::stable_sort(known.begin(), known.end(), [&](const std::string& a, const std::string& b) {
    return std::pair(-words_shared(asked, a), edit_distance(asked, a)) <
           std::pair(-words_shared(asked, b), edit_distance(asked, b));
  });
  known.resize(std::min(few, known.size()));
  for (std::string& word : known) word = '`' + word + '`';
  return any_of(known);
}

std::string any_of(const std::vector<std::string>& words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) out += i + 1 == words.size() ? " or " : ", ";
    out += words[i];
  }
  return out;
}

}  // namespace baywright::parts
