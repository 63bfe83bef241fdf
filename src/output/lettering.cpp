#include "output/lettering.h"

#include <algorithm>
#include <array>
#include <cstdint>

namespace baywright::output {

namespace {

// Thousandths of an em for the characters from space to tilde, read from the fonts' own metrics tables.
constexpr std::array<int, 95> regular = {
    318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361,  318, 337, 636, 636, 636,
    636, 636, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632,
    575, 775, 752, 295, 295, 656, 557, 863, 748, 787, 603, 787, 695, 635,  611, 732, 684, 989, 685,
    611, 685, 390, 337, 390, 838, 500, 500, 613, 635, 550, 635, 615, 352,  635, 634, 278, 278, 579,
    278, 974, 634, 612, 635, 635, 411, 521, 392, 634, 592, 818, 592, 592,  525, 636, 337, 636, 838};
constexpr std::array<int, 95> heavy = {
    348, 456,  521, 838, 696, 1002, 872, 306, 457, 457, 523, 838, 380, 415,  380, 365, 696, 696,  696,
    696, 696,  696, 696, 696, 696,  696, 400, 400, 838, 838, 838, 580, 1000, 774, 762, 734, 830,  683,
    683, 821,  837, 372, 372, 775,  637, 995, 837, 850, 733, 850, 770, 720,  682, 812, 774, 1103, 771,
    724, 725,  457, 365, 457, 838,  500, 500, 675, 716, 593, 716, 678, 435,  716, 712, 343, 343,  665,
    343, 1042, 712, 687, 716, 716,  493, 595, 478, 712, 652, 924, 645, 652,  582, 712, 365, 712,  838};
constexpr int other = 838;    // signs such as ±; accented letters are narrower, so the error is on the safe side
constexpr int widest = 1000;  // the ellipsis, and scripts whose letters fill an em
constexpr std::string_view ellipsis = "…";

bool continues(char byte) {
  return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U;
}

/// How many bytes the character has that the text begins with; 0: it is a control character or no UTF-8.
std::size_t character(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text.front());
  if (lead < 0x80U) return lead >= 0x20U && lead != 0x7FU ? 1 : 0;
  const std::size_t length = lead >= 0xF0U ? 4 : lead >= 0xE0U ? 3 : 2;
  if (lead < 0xC2U || lead > 0xF4U || text.size() < length) return 0;
  if (!std::all_of(text.begin() + 1, text.begin() + static_cast<std::ptrdiff_t>(length), continues)) return 0;
  const auto second = static_cast<unsigned char>(text[1]);
  // U+0080 to U+009F are control characters; then: longer than need be, halves of pairs, beyond the last character.
  const bool bad = (lead == 0xC2U && second < 0xA0U) || (lead == 0xE0U && second < 0xA0U) ||
                   (lead == 0xEDU && second >= 0xA0U) || (lead == 0xF0U && second < 0x90U) ||
                   (lead == 0xF4U && second >= 0x90U);
  return bad ? 0 : length;
}

int advance(std::string_view text, std::size_t at, bool bold) {
  const auto byte = static_cast<unsigned char>(text[at]);
  if (byte >= 0x20U && byte < 0x7FU) return (bold ? heavy : regular)[byte - 0x20U];
  if (byte < 0x20U || continues(text[at])) return 0;
  return byte < 0xE0U ? other : widest;
}

}  // namespace

std::string printable(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t length = character(text.substr(i));
    if (length > 0)
      out += text.substr(i, length);
    else
      out += ' ';
    i += std::max<std::size_t>(length, 1);
  }
  return out;
}

double text_width(std::string_view text, double size, bool bold) {
  int sum = 0;
  for (std::size_t i = 0; i < text.size(); ++i) sum += advance(text, i, bold);
  return 0.001 * sum * size;
}

std::string shortened(std::string_view text, double width, double size, bool bold) {
  if (text_width(text, size, bold) <= width) return std::string(text);
  const double room = width - text_width(ellipsis, size, bold);
  std::size_t end = text.size();
  do {
    do --end;
    while (end > 0 && continues(text[end]));
  } while (end > 0 && (text_width(text.substr(0, end), size, bold) > room || text[end - 1] == ' '));
  return std::string(text.substr(0, end)) + std::string(ellipsis);
}

std::vector<std::string> broken(std::string_view text, double width, double size, std::size_t most, bool bold) {
  std::vector<std::string> lines;
  while (!text.empty() && lines.size() < most) {
    std::size_t end = text.size();
    if (text_width(text, size, bold) > width && lines.size() + 1 < most) {
      end = 0;
      for (std::size_t space = text.find(' '); space != std::string_view::npos; space = text.find(' ', space + 1)) {
        if (text_width(text.substr(0, space), size, bold) > width) break;
        end = space;
      }
      if (end == 0) end = std::min(text.find(' '), text.size());  // one word that is too long
    }
    lines.push_back(shortened(text.substr(0, end), width, size, bold));
    text.remove_prefix(std::min(text.size(), end + 1));
  }
  return lines;
}

std::vector<double> spread(std::vector<double> wanted, const std::vector<double>& half_sizes, double low, double high) {
  // Items that would collide become one block, which stands where its items' wishes average; blocks merge until none
  // collides (pool adjacent violators). Offsets are counted from the first item's centre.
  struct Block {
    std::size_t first, count;
    double sum_of_starts;  // of the first centre that each item wishes for
    double start, length;  // from first to last centre
  };
  std::vector<Block> blocks;
  const auto settle = [&](Block& block) {
    const double from = low + half_sizes[block.first];
    const double to = high - half_sizes[block.first + block.count - 1] - block.length;
    block.start = std::max(from, std::min(to, block.sum_of_starts / static_cast<double>(block.count)));
  };
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    blocks.push_back({i, 1, wanted[i], wanted[i], 0.0});
    settle(blocks.back());
    while (blocks.size() > 1) {
      Block& one = blocks[blocks.size() - 2];
      const Block& next = blocks.back();
      const double step = half_sizes[next.first - 1] + half_sizes[next.first];
      if (one.start + one.length + step <= next.start) break;
      one.sum_of_starts += next.sum_of_starts - static_cast<double>(next.count) * (one.length + step);
      one.length += step + next.length;
      one.count += next.count;
      blocks.pop_back();
      settle(blocks.back());
    }
  }
  for (const Block& block : blocks) {
    double at = block.start;
    for (std::size_t i = block.first; i < block.first + block.count; ++i) {
      if (i > block.first) at += half_sizes[i - 1] + half_sizes[i];
      wanted[i] = at;
    }
  }
  return wanted;
}

}  // namespace baywright::output
