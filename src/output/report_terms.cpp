// The words of the trade on the page: the first use of each leads to what it means.
#include "output/report_pieces.h"

#include <array>
#include <cctype>

namespace baywright::output {

namespace {

struct Term {
  std::string_view key;      // "word KEY" in the table
  std::string_view id;       // of the page
  std::string_view english;  // as it stands in text; other spellings behind a bar
  std::string_view german;
};

constexpr std::array terms{
    Term{"TBW", "word-tbw", "TBW", "TBW"},
    Term{"DWPD", "word-dwpd", "DWPD", "DWPD"},
    Term{"SATA", "word-sata", "SATA", "SATA"},
    Term{"PCIe", "word-pcie", "PCIe", "PCIe"},
    Term{"NVMe", "word-nvme", "NVMe", "NVMe"},
    Term{"M.2", "word-m2", "M.2", "M.2"},
    Term{"DRAM", "word-dram", "DRAM", "DRAM"},
    Term{"HMB", "word-hmb", "HMB", "HMB"},
    Term{"QLC", "word-qlc", "QLC", "QLC"},
    Term{"MB/s", "word-mbs", "MB/s", "MB/s"},
    Term{"heatsink", "word-heatsink", "heatsink", "Kühlkörper"},
    Term{"pad", "word-pad", "pad", "Wärmeleitpad|Pad"},
    Term{"stand-off", "word-standoff", "stand-off|stand-offs", "Abstandhalter|stand-off"},
    Term{"form factor", "word-form", "form factor", "form factor"},
    Term{"worst case", "word-worst", "worst case", "worst case"},
    Term{"clearance", "word-clearance", "clearance", "clearance"},
    Term{"marginal", "word-marginal", "marginal", "marginal"},
};

bool of_word(char c) {
  const auto code = static_cast<unsigned char>(c);
  return std::isalnum(code) != 0 || code >= 0x80;
}

/// Where `what` stands as a word of its own in what is read: not within tags, nor in links, names, drawings, headings
/// of tables that sort, or what is no text. npos: nowhere.
std::size_t first_use(const std::string& page, std::string_view what) {
  constexpr std::array<std::string_view, 8> passed = {"bdi", "a", "svg", "script", "style", "h1", "summary", "thead"};
  std::size_t at = 0;
  while (at < page.size()) {
    if (page[at] == '<') {
      const std::size_t end = page.find('>', at);
      if (end == std::string::npos) return end;
      std::size_t next = end + 1;
      for (const std::string_view tag : passed)
        if (page.compare(at + 1, tag.size(), tag) == 0 && !of_word(page[at + 1 + tag.size()])) {
          const std::size_t close = page.find("</" + std::string(tag) + '>', end);
          if (close == std::string::npos) return close;
          next = close;
        }
      at = next;
      continue;
    }
    const bool begins = at == 0 || !of_word(page[at - 1]);
    if (begins && page.compare(at, what.size(), what) == 0 &&
        (at + what.size() >= page.size() || !of_word(page[at + what.size()])))
      return at;
    ++at;
  }
  return std::string::npos;
}

}  // namespace

std::string words_section(Language language, std::string& page) {
  std::string list;
  for (const Term& term : terms) {
    const std::size_t figures = page.find("<section id=\"figures\"");
    std::string_view spellings = language == Language::german ? term.german : term.english;
    std::size_t at = std::string::npos;
    std::string_view found;
    while (!spellings.empty()) {
      const std::size_t bar = spellings.find('|');
      const std::string_view one = spellings.substr(0, bar);
      spellings = bar == std::string_view::npos ? std::string_view() : spellings.substr(bar + 1);
      const std::size_t here = first_use(page, one);
      if (here < at) at = here, found = one;
    }
    if (at == std::string::npos) continue;
    const std::string id(term.id);
    page.replace(at, found.size(), "<a class=\"term\" href=\"#" + id + "\">" + std::string(found) + "</a>");
    const std::string words = phrase(language, "word " + std::string(term.key));
    const std::size_t colon = words.find(':');
    const std::string kind = at < figures ? "" : " class=\"on-screen\"";  // nobody reads that word on paper
    list += element("dt", kind + " id=\"" + id + '"', element("dfn", "", html(words.substr(0, colon)))) +
            element("dd", kind, html(sentence(words.substr(colon + 2))));
  }
  return list.empty() ? list : section("words", phrase(language, "words head"), element("dl", "", list));
}

}  // namespace baywright::output
