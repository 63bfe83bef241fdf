#pragma once
// Letters and colours of the window at its scale.
#include "viewer/palette.h"

#include <imgui.h>
#include <optional>
#include <string>

namespace baywright::viewer {

/// Height of a line of Inter, from its ascender to its descender, in ems: Dear ImGui counts the former.
inline constexpr float em_height = 1.21F;

/// Sizes in pixels an em at scale 1. Each drawn at its own size, so that nothing is a stretched bitmap. Owned by Dear
/// ImGui.
struct Fonts {
  ImFont* small = nullptr;  // 13 pixels at scale 1: the least that is written
  ImFont* small_bold = nullptr;
  ImFont* text = nullptr;  // 15
  ImFont* bold = nullptr;
  ImFont* large = nullptr;  // 18
  ImFont* word = nullptr;   // 22, bold: the verdict
  ImFont* calm = nullptr;   // 34, bold: the verdict for a customer
};

/// Fills the font atlas anew. `scale`: of the letters in units of the window; `dense`: pixels a unit. What went wrong,
/// in words. No texture is made here.
std::optional<std::string> make_fonts(float scale, float dense, Fonts& out);

/// Colours and sizes of what Dear ImGui draws by itself: the fields in which figures are typed.
void set_style(const Palette& palette, float scale);

[[nodiscard]] ImU32 colour(const char* hex, float cover = 1.0F);

}  // namespace baywright::viewer
