#pragma once
// A PNG file as pixels, read by cairo: not by what wrote it.
#include "render/image.h"

#include <cairo.h>
#include <optional>
#include <string>

namespace baywright::test {

inline std::optional<render::Image> read_png(const std::string& file) {
  cairo_surface_t* const surface = cairo_image_surface_create_from_png(file.c_str());
  std::optional<render::Image> out;
  if (cairo_surface_status(surface) == CAIRO_STATUS_SUCCESS) {
    cairo_surface_flush(surface);
    out.emplace();
    out->width = cairo_image_surface_get_width(surface);
    out->height = cairo_image_surface_get_height(surface);
    const int stride = cairo_image_surface_get_stride(surface);
    const unsigned char* const data = cairo_image_surface_get_data(surface);
    for (int y = 0; y < out->height; ++y)
      for (int x = 0; x < out->width; ++x) {
        const unsigned char* const pixel = data + y * stride + 4 * x;  // blue, green, red, alpha on this machine
        out->rgba.insert(out->rgba.end(), {pixel[2], pixel[1], pixel[0], 255});
      }
  }
  cairo_surface_destroy(surface);
  return out;
}

}  // namespace baywright::test
