#include "output/paint.h"

#include "output/lettering.h"
#include "output/mark.h"

#include <algorithm>
#include <array>
#include <cairo-ft.h>
#include <cairo-pdf.h>
#include <charconv>
#include <cmath>
#include <memory>
#include <numbers>

namespace baywright::output {

namespace {

constexpr double points_a_mm = 72.0 / 25.4;
constexpr double furthest = 1e6;    // cairo counts in 1/256 of a unit in 32 bits
constexpr int most_pixels = 32767;  // a side: cairo's own limit

struct Freed {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
  void operator()(cairo_t* cairo) const { cairo_destroy(cairo); }
  void operator()(cairo_font_options_t* options) const { cairo_font_options_destroy(options); }
};
using Surface = std::unique_ptr<cairo_surface_t, Freed>;
using Context = std::unique_ptr<cairo_t, Freed>;

/// Both faces, straight from their files: what a system prefers in place of them would look different elsewhere. They
/// live as long as the program, since cairo keeps scaled fonts of them for later.
struct Fonts {
  cairo_font_face_t* regular = nullptr;
  cairo_font_face_t* bold = nullptr;
  std::string fault;

  Fonts() {
    FT_Library library = nullptr;
    if (FT_Init_FreeType(&library) != 0) {
      fault = "no letters can be drawn: FreeType did not start";
      return;
    }
    regular = opened(library, BAYWRIGHT_FONT);
    bold = opened(library, BAYWRIGHT_BOLD_FONT);
  }

 private:
  cairo_font_face_t* opened(FT_Library library, const char* path) {
    FT_Face face = nullptr;
    if (FT_New_Face(library, path, 0, &face) != 0) {
      fault = std::string(path) + ": this font is missing or cannot be read; install the package fonts-inter";
      return nullptr;
    }
    return cairo_ft_font_face_create_for_ft_face(face, FT_LOAD_NO_HINTING);
  }
};

const Fonts& fonts() {
  static const Fonts opened;
  return opened;
}

bool drawable(const Vec2& p) {
  return std::abs(p.x) <= furthest && std::abs(p.y) <= furthest;
}

class Painter {
 public:
  explicit Painter(cairo_t* cairo) : cairo_(cairo) {
    cairo_set_miter_limit(cairo, 4.0);
    // Letters keep their shape and their distances at every size.
    const std::unique_ptr<cairo_font_options_t, Freed> options(cairo_font_options_create());
    cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
    cairo_set_font_options(cairo, options.get());
  }

  void paint(const Group& group) {
    cairo_save(cairo_);
    if (group.clip) {
      cairo_rectangle(cairo_, group.clip->low.x, group.clip->low.y, group.clip->width(), group.clip->height());
      cairo_clip(cairo_);
    }
    for (const Item& item : group.items) std::visit([this](const auto& drawn) { paint(drawn); }, item.drawn);
    cairo_restore(cairo_);
  }

 private:
  void take(const std::string& colour) {
    unsigned value = 0;
    if (colour.size() == 7) std::from_chars(colour.data() + 1, colour.data() + 7, value, 16);
    cairo_set_source_rgb(cairo_, (value >> 16U & 0xFFU) / 255.0, (value >> 8U & 0xFFU) / 255.0,
                         (value & 0xFFU) / 255.0);
  }

  void stroke(const Pen& pen, bool mitred) {
    take(pen.colour);
    cairo_set_line_width(cairo_, pen.width);
    cairo_set_line_join(cairo_, mitred ? CAIRO_LINE_JOIN_MITER : CAIRO_LINE_JOIN_ROUND);
    const Dash dash = dash_of(pen);
    const std::array<double, 2> lengths = {dash.length, dash.space};
    cairo_set_dash(cairo_, lengths.data(), pen.dashed ? 2 : 0, 0.0);
    cairo_stroke(cairo_);
  }

  void trace(const std::vector<Vec2>& points, bool closed) {
    if (points.empty() || !std::all_of(points.begin(), points.end(), drawable)) return;
    cairo_new_sub_path(cairo_);
    for (const Vec2& p : points) cairo_line_to(cairo_, p.x, p.y);
    if (closed) cairo_close_path(cairo_);
  }

  void paint(const Line& line) {
    trace(line.points, line.closed);
    stroke(line.pen, line.closed);
  }

  void paint(const Area& area) {
    if (!area.colour.empty()) {
      for (const Outline& outline : area.outlines) trace(outline, true);
      take(area.colour);
      cairo_set_fill_rule(cairo_, CAIRO_FILL_RULE_EVEN_ODD);
      cairo_fill(cairo_);
    }
    const Strokes pattern = strokes(area);
    for (const auto& [from, to] : pattern.lines) trace({from, to}, false);
    stroke(area.pen, true);
    for (const Vec2& dot : pattern.dots) {
      cairo_new_sub_path(cairo_);
      cairo_arc(cairo_, dot.x, dot.y, area.pen.width, 0.0, 2.0 * std::numbers::pi);
    }
    take(area.pen.colour);
    cairo_fill(cairo_);
  }

  void paint(const Disc& disc) {
    if (!drawable(disc.centre) || !(disc.radius > 0.0 && disc.radius <= furthest)) return;
    cairo_new_path(cairo_);
    cairo_arc(cairo_, disc.centre.x, disc.centre.y, disc.radius, 0.0, 2.0 * std::numbers::pi);
    cairo_close_path(cairo_);
    if (!disc.colour.empty()) {
      take(disc.colour);
      cairo_fill_preserve(cairo_);
    }
    if (disc.pen)
      stroke(*disc.pen, true);
    else
      cairo_new_path(cairo_);
  }

  void paint(const Text& label) {
    if (!drawable(label.at) || !(label.size > 0.0 && label.size <= furthest)) return;
    const std::string words = printable(label.text);
    cairo_save(cairo_);
    cairo_translate(cairo_, label.at.x, label.at.y);
    if (label.upward) cairo_rotate(cairo_, -0.5 * std::numbers::pi);
    cairo_set_font_face(cairo_, label.bold ? fonts().bold : fonts().regular);
    cairo_set_font_size(cairo_, label.size);
    cairo_text_extents_t extents;
    cairo_text_extents(cairo_, words.c_str(), &extents);
    const double before = label.anchor == Anchor::start ? 0.0 : label.anchor == Anchor::middle ? 0.5 : 1.0;
    const double start = -before * extents.x_advance;
    if (label.haloed) {
      cairo_move_to(cairo_, start, 0.0);
      cairo_text_path(cairo_, words.c_str());
      stroke({halo_of(label), paper, false}, false);
    }
    cairo_move_to(cairo_, start, 0.0);
    take(label.colour);
    cairo_show_text(cairo_, words.c_str());
    cairo_new_path(cairo_);
    cairo_restore(cairo_);
  }

  cairo_t* cairo_;
};

cairo_status_t append(void* to, const unsigned char* bytes, unsigned length) {
  static_cast<std::string*>(to)->append(bytes, bytes + length);
  return CAIRO_STATUS_SUCCESS;
}

std::string written(cairo_surface_t* picture) {
  std::string png;
  if (cairo_surface_write_to_png_stream(picture, append, &png) != CAIRO_STATUS_SUCCESS) return {};
  return png;
}

Surface blank(int width, int height) {
  Surface surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height));
  if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS) surface.reset();
  return surface;
}

bool is_whole(const std::vector<std::uint8_t>& rgba, int width, int height) {
  return width > 0 && height > 0 && width <= most_pixels && height <= most_pixels &&
         rgba.size() == std::size_t{4} * static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
}

/// Calls `each` with a pixel of the picture (three bytes and the filler) and cairo's word for it.
template <typename Bytes, typename Each>
void pair_pixels(Bytes* rgba, cairo_surface_t* surface, const Each& each) {
  const auto width = static_cast<std::size_t>(cairo_image_surface_get_width(surface));
  const auto height = static_cast<std::size_t>(cairo_image_surface_get_height(surface));
  const auto stride = static_cast<std::size_t>(cairo_image_surface_get_stride(surface)) / sizeof(std::uint32_t);
  // Rows of words in the machine's own order, as cairo documents them.
  auto* words = static_cast<std::uint32_t*>(static_cast<void*>(cairo_image_surface_get_data(surface)));
  for (std::size_t y = 0; y < height; ++y)
    for (std::size_t x = 0; x < width; ++x) each(rgba + 4 * (y * width + x), words[y * stride + x]);
}

Surface surface_of(const std::vector<std::uint8_t>& rgba, int width, int height) {
  Surface surface = blank(width, height);
  if (!surface) return surface;
  cairo_surface_flush(surface.get());
  pair_pixels(rgba.data(), surface.get(), [](const std::uint8_t* pixel, std::uint32_t& word) {
    word = std::uint32_t{pixel[0]} << 16U | std::uint32_t{pixel[1]} << 8U | std::uint32_t{pixel[2]};
  });
  cairo_surface_mark_dirty(surface.get());
  return surface;
}

}  // namespace

std::optional<std::string> font_fault() {
  if (fonts().fault.empty()) return std::nullopt;
  return fonts().fault;
}

std::optional<std::string> paint_over(std::vector<std::uint8_t>& rgba, int width, int height, const Group& group) {
  if (const auto fault = font_fault()) return fault;
  if (!is_whole(rgba, width, height)) return "the picture has another size than its bytes";
  const Surface surface = surface_of(rgba, width, height);
  if (!surface) return "no memory for the picture";
  const Context cairo(cairo_create(surface.get()));
  Painter(cairo.get()).paint(group);
  if (const cairo_status_t status = cairo_status(cairo.get()); status != CAIRO_STATUS_SUCCESS)
    return std::string("drawing over the picture failed: ") + cairo_status_to_string(status);
  cairo_surface_flush(surface.get());
  pair_pixels(rgba.data(), surface.get(), [](std::uint8_t* pixel, std::uint32_t word) {
    pixel[0] = static_cast<std::uint8_t>(word >> 16U & 0xFFU);
    pixel[1] = static_cast<std::uint8_t>(word >> 8U & 0xFFU);
    pixel[2] = static_cast<std::uint8_t>(word & 0xFFU);
  });
  return std::nullopt;
}

std::string to_png(const std::vector<std::uint8_t>& rgba, int width, int height) {
  if (!is_whole(rgba, width, height)) return {};
  const Surface surface = surface_of(rgba, width, height);
  return surface ? written(surface.get()) : std::string();
}

std::string to_png(const Sheet& sheet, double pixels_a_mm) {
  const double width = std::round(sheet.width * pixels_a_mm);
  const double height = std::round(sheet.height * pixels_a_mm);
  if (font_fault() || !(width >= 1.0 && width <= most_pixels && height >= 1.0 && height <= most_pixels)) return {};
  const Surface surface = blank(static_cast<int>(width), static_cast<int>(height));
  if (!surface) return {};
  const Context cairo(cairo_create(surface.get()));
  cairo_set_source_rgb(cairo.get(), 1.0, 1.0, 1.0);
  cairo_paint(cairo.get());
  cairo_scale(cairo.get(), pixels_a_mm, pixels_a_mm);
  Painter(cairo.get()).paint(sheet.all);
  return cairo_status(cairo.get()) == CAIRO_STATUS_SUCCESS ? written(surface.get()) : std::string();
}

std::string to_pdf(const std::vector<Sheet>& sheets) {
  if (sheets.empty() || font_fault()) return {};
  std::string pdf;
  {
    const Surface surface(cairo_pdf_surface_create_for_stream(append, &pdf, sheets.front().width * points_a_mm,
                                                              sheets.front().height * points_a_mm));
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, printable(sheets.front().title).c_str());
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATOR, "Baywright");
    // Always the same: a clock's would make each file another.
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, "2000-01-01T00:00:00Z");
    for (const Sheet& sheet : sheets) {
      cairo_pdf_surface_set_size(surface.get(), sheet.width * points_a_mm, sheet.height * points_a_mm);
      const Context cairo(cairo_create(surface.get()));
      cairo_scale(cairo.get(), points_a_mm, points_a_mm);
      Painter(cairo.get()).paint(sheet.all);
      cairo_show_page(cairo.get());
      if (cairo_status(cairo.get()) != CAIRO_STATUS_SUCCESS) return {};
    }
    cairo_surface_finish(surface.get());
    if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS) return {};
  }
  return pdf;
}

}  // namespace baywright::output
