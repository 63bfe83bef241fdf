#include "output/dxf.h"

#include "output/lettering.h"
#include "output/mark.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdio>
#include <set>

namespace baywright::output {

namespace {

constexpr double capitals = 0.727;  // of the em: DXF measures letters by their capitals; Inter's

std::string number(double value) {
  std::array<char, 352> digits{};
  const double rounded = std::round(value * 1e9) / 1e9;
  const auto [end, fault] = std::to_chars(digits.data(), digits.data() + digits.size(), rounded == 0.0 ? 0.0 : rounded,
                                          std::chars_format::fixed, 9);
  std::string text(digits.data(), end);
  while (text.back() == '0' && text[text.size() - 2] != '.') text.pop_back();
  return text;
}

/// Characters beyond ASCII as \U+00D8; a caret would begin a control character.
std::string letters(const std::string& given) {
  std::string out;
  const std::string text = printable(given);
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto lead = static_cast<unsigned char>(text[i]);
    if (lead < 0x80U) {
      out += text[i] == '^' ? "^ " : std::string(1, text[i]);
      continue;
    }
    const std::size_t more = lead >= 0xF0U ? 3 : lead >= 0xE0U ? 2 : 1;
    unsigned code = lead & (0x3FU >> more);
    for (std::size_t k = 1; k <= more; ++k) code = code << 6U | (static_cast<unsigned char>(text[i + k]) & 0x3FU);
    i += more;
    std::array<char, 16> escaped{};
    std::snprintf(escaped.data(), escaped.size(), "\\U+%04X", code);
    out += code <= 0xFFFFU ? escaped.data() : "?";
  }
  return out;
}

/// Layer names take capitals, digits, _ and -.
std::string layer_name(const std::string& group) {
  std::string out;
  for (const char c : group) {
    const bool small = c >= 'a' && c <= 'z';
    const bool plain = (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-';
    out += small ? static_cast<char>(c - 'a' + 'A') : plain ? c : '_';
  }
  return out;
}

/// The part of the segment inside of the box (Liang and Barsky); none: outside.
std::optional<std::pair<Vec2, Vec2>> cut(const Box& box, const Vec2& a, const Vec2& b) {
  double from = 0.0;
  double to = 1.0;
  for (int axis = 0; axis < 2; ++axis) {
    const double way = b[axis] - a[axis];
    const double low = box.low[axis] - a[axis];
    const double high = box.high[axis] - a[axis];
    if (way == 0.0) {
      if (low > 0.0 || high < 0.0) return std::nullopt;
      continue;
    }
    from = std::max(from, std::min(low / way, high / way));
    to = std::min(to, std::max(low / way, high / way));
  }
  if (!(from < to)) return std::nullopt;
  return std::pair(a + from * (b - a), a + to * (b - a));
}

bool finite(const Vec2& p) {
  return std::isfinite(p.x) && std::isfinite(p.y);
}

class Writer {
 public:
  explicit Writer(double height) : height_(height) {}

  std::string entities;
  std::set<std::string> layers{"0", "SHEET"};

  void write(const Group& group) {
    const std::string outer_layer = layer_;
    const std::optional<Box> outer_clip = clip_;
    if (!group.name.empty()) layer_ = layer_name(group.name);
    layers.insert(layer_);
    if (group.clip) {
      clip_ = group.clip;
      if (outer_clip) clip_ = Box{glm::max(clip_->low, outer_clip->low), glm::min(clip_->high, outer_clip->high)};
    }
    for (const Item& item : group.items) std::visit([this](const auto& drawn) { write(drawn); }, item.drawn);
    layer_ = outer_layer;
    clip_ = outer_clip;
  }

  [[nodiscard]] std::string handle() {
    std::array<char, 16> digits{};
    std::snprintf(digits.data(), digits.size(), "%X", next_++);
    return digits.data();
  }

 private:
  void code(int group, const std::string& value) { entities += std::to_string(group) + '\n' + value + '\n'; }
  void point(int group, const Vec2& p) {
    code(group, number(p.x));
    code(group + 10, number(height_ - p.y));
  }
  void solid_point(int group, const Vec2& p) {
    point(group, p);
    code(group + 20, "0.0");
  }

  void begin(const char* kind, const char* marker, bool dashed = false) {
    code(0, kind);
    code(5, handle());
    code(330, "1F");  // the block record of the model
    code(100, "AcDbEntity");
    code(8, layer_);
    if (dashed) code(6, "DASHED");
    code(100, marker);
  }

  [[nodiscard]] bool shows(const Vec2& p) const {
    return finite(p) &&
           (!clip_ || (p.x >= clip_->low.x && p.x <= clip_->high.x && p.y >= clip_->low.y && p.y <= clip_->high.y));
  }

  void segment(const Vec2& a, const Vec2& b, bool dashed) {
    if (!finite(a) || !finite(b)) return;
    const auto shown = clip_ ? cut(*clip_, a, b) : std::optional(std::pair(a, b));
    if (!shown) return;
    begin("LINE", "AcDbLine", dashed);
    solid_point(10, shown->first);
    solid_point(11, shown->second);
  }

  void write(const Line& line) {
    const std::vector<Vec2>& p = line.points;
    if (line.pen.colour == paper || p.size() < 2 || !std::all_of(p.begin(), p.end(), finite)) return;
    if (p.size() == 2 || !std::all_of(p.begin(), p.end(), [this](const Vec2& each) { return shows(each); })) {
      for (std::size_t i = 0; i + 1 < p.size(); ++i) segment(p[i], p[i + 1], line.pen.dashed);
      if (line.closed && p.size() > 2) segment(p.back(), p.front(), line.pen.dashed);
      return;
    }
    begin("LWPOLYLINE", "AcDbPolyline", line.pen.dashed);
    code(90, std::to_string(p.size()));
    code(70, line.closed ? "1" : "0");
    for (const Vec2& each : p) point(10, each);
  }

  void write(const Area& area) {
    const Strokes pattern = strokes(area);
    for (const auto& [from, to] : pattern.lines) segment(from, to, area.pen.dashed);
    for (const Vec2& dot : pattern.dots) circle(dot, area.pen.width);
    if (area.colour.empty() || area.colour == paper || area.outlines.size() != 1 || area.outlines[0].size() != 3)
      return;
    const Outline& corners = area.outlines[0];
    if (!std::all_of(corners.begin(), corners.end(), [this](const Vec2& each) { return shows(each); })) return;
    begin("SOLID", "AcDbTrace");
    for (std::size_t i = 0; i < 4; ++i) solid_point(10 + static_cast<int>(i), corners[std::min<std::size_t>(i, 2)]);
  }

  void circle(const Vec2& centre, double radius) {
    if (!shows(centre) || !(radius > 0.0) || !std::isfinite(radius)) return;
    begin("CIRCLE", "AcDbCircle");
    solid_point(10, centre);
    code(40, number(radius));
  }

  void write(const Disc& disc) {
    if (disc.pen ? disc.pen->colour != paper : !disc.colour.empty() && disc.colour != paper)
      circle(disc.centre, disc.radius);
  }

  void write(const Text& label) {
    if (!shows(label.at) || !(label.size > 0.0) || !std::isfinite(label.size) || label.text.empty()) return;
    begin("TEXT", "AcDbText");
    solid_point(10, label.at);
    code(40, number(capitals * label.size));
    code(1, letters(label.text));
    if (label.upward) code(50, "90.0");
    if (label.anchor != Anchor::start) {
      code(72, label.anchor == Anchor::middle ? "1" : "2");
      solid_point(11, label.at);
    }
    code(100, "AcDbText");
  }

  double height_;
  std::string layer_ = "SHEET";
  std::optional<Box> clip_;
  unsigned next_ = 0x100;  // of what lies below, each handle is used by the frame of the file
};

/// A table with its entries, each already written with its own handle.
std::string table(const std::string& name, const std::string& handle, std::size_t count, const std::string& entries,
                  const std::string& marker = {}) {
  return "0\nTABLE\n2\n" + name + "\n5\n" + handle + "\n330\n0\n100\nAcDbSymbolTable\n70\n" + std::to_string(count) +
         '\n' + marker + entries + "0\nENDTAB\n";
}

std::string entry(const std::string& kind, const std::string& handle, const std::string& owner,
                  const std::string& marker, const std::string& name, const std::string& rest) {
  return "0\n" + kind + "\n5\n" + handle + "\n330\n" + owner + "\n100\nAcDbSymbolTableRecord\n100\n" + marker +
         "\n2\n" + name + '\n' + rest;
}

std::string linetypes() {
  const auto plain = [](const char* handle, const char* name) {
    return entry("LTYPE", handle, "5", "AcDbLinetypeTableRecord", name, "70\n0\n3\n\n72\n65\n73\n0\n40\n0.0\n");
  };
  const std::string dashed = entry("LTYPE", "17", "5", "AcDbLinetypeTableRecord", "DASHED",
                                   "70\n0\n3\n_ _ _\n72\n65\n73\n2\n40\n3.0\n49\n2.1\n74\n0\n49\n-0.9\n74\n0\n");
  return table("LTYPE", "5", 4, plain("14", "ByBlock") + plain("15", "ByLayer") + plain("16", "CONTINUOUS") + dashed);
}

std::string block(const std::string& begin, const std::string& end, const std::string& owner, const std::string& name,
                  const std::string& space) {
  const auto head = [&](const std::string& handle) {
    return "\n5\n" + handle + "\n330\n" + owner + "\n100\nAcDbEntity\n" + space + "8\n0\n100\n";
  };
  return "0\nBLOCK" + head(begin) + "AcDbBlockBegin\n2\n" + name + "\n70\n0\n10\n0.0\n20\n0.0\n30\n0.0\n3\n" + name +
         "\n1\n\n0\nENDBLK" + head(end) + "AcDbBlockEnd\n";
}

std::string tables(const std::set<std::string>& layers, Writer& writer) {
  std::string drawn;
  for (const std::string& layer : layers)
    drawn += entry("LAYER", writer.handle(), "2", "AcDbLayerTableRecord", layer,
                   "70\n0\n62\n7\n6\nCONTINUOUS\n370\n-3\n390\nF\n");
  const std::string style = entry("STYLE", "11", "3", "AcDbTextStyleTableRecord", "STANDARD",
                                  "70\n0\n40\n0.0\n41\n1.0\n50\n0.0\n71\n0\n42\n2.5\n3\ntxt\n4\n\n");
  const auto record = [](const char* handle, const char* name) {
    return entry("BLOCK_RECORD", handle, "1", "AcDbBlockTableRecord", name, "340\n0\n");
  };
  return "0\nSECTION\n2\nTABLES\n" + table("VPORT", "8", 0, "") + linetypes() +
         table("LAYER", "2", layers.size(), drawn) + table("STYLE", "3", 1, style) + table("VIEW", "6", 0, "") +
         table("UCS", "7", 0, "") +
         table("APPID", "9", 1, entry("APPID", "12", "9", "AcDbRegAppTableRecord", "ACAD", "70\n0\n")) +
         table("DIMSTYLE", "A", 0, "", "100\nAcDbDimStyleTable\n71\n0\n") +
         table("BLOCK_RECORD", "1", 2, record("1F", "*Model_Space") + record("1B", "*Paper_Space")) + "0\nENDSEC\n" +
         "0\nSECTION\n2\nBLOCKS\n" + block("20", "21", "1F", "*Model_Space", "") +
         block("1C", "1D", "1B", "*Paper_Space", "67\n1\n") + "0\nENDSEC\n";
}

constexpr const char* objects =
    "0\nSECTION\n2\nOBJECTS\n0\nDICTIONARY\n5\nC\n330\n0\n100\nAcDbDictionary\n281\n1\n3\nACAD_GROUP\n350\nD\n"
    "3\nACAD_PLOTSTYLENAME\n350\nE\n0\nDICTIONARY\n5\nD\n330\nC\n100\nAcDbDictionary\n281\n1\n"
    "0\nACDBDICTIONARYWDFLT\n5\nE\n330\nC\n100\nAcDbDictionary\n281\n1\n3\nNormal\n350\nF\n"
    "100\nAcDbDictionaryWithDefault\n340\nF\n0\nACDBPLACEHOLDER\n5\nF\n330\nE\n0\nENDSEC\n";

}  // namespace

std::string to_dxf(const Sheet& sheet) {
  Writer writer(sheet.height);
  writer.write(sheet.all);
  const std::string frame = tables(writer.layers, writer);
  const std::string corner = "10\n0.0\n20\n0.0\n30\n0.0\n";
  return "999\n" + letters(sheet.title) + "\n0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1015\n9\n$HANDSEED\n5\n" +
         writer.handle() + "\n9\n$INSUNITS\n70\n4\n9\n$MEASUREMENT\n70\n1\n9\n$EXTMIN\n" + corner + "9\n$EXTMAX\n10\n" +
         number(sheet.width) + "\n20\n" + number(sheet.height) + "\n30\n0.0\n0\nENDSEC\n" + frame +
         "0\nSECTION\n2\nENTITIES\n" + writer.entities + "0\nENDSEC\n" + objects + "0\nEOF\n";
}

}  // namespace baywright::output
