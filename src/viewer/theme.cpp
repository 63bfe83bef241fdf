#include "viewer/theme.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <imgui_freetype.h>

namespace baywright::viewer {

namespace {

/// Latin with its extensions, Greek, Cyrillic, punctuation, raised figures, arrows, signs of mathematics: what Inter
/// has.
constexpr std::array<ImWchar, 15> letters = {0x0020, 0x024F, 0x0370, 0x03FF, 0x0400, 0x052F, 0x2010, 0x2044,
                                             0x2070, 0x209F, 0x2190, 0x2199, 0x2200, 0x2265, 0};

ImVec4 part(const char* hex) {
  return ImGui::ColorConvertU32ToFloat4(colour(hex));
}

}  // namespace

ImU32 colour(const char* hex, float cover) {
  const auto rgb = static_cast<unsigned>(std::strtoul(hex + 1, nullptr, 16));
  return IM_COL32((rgb >> 16U) & 255U, (rgb >> 8U) & 255U, rgb & 255U, static_cast<unsigned>(255.0F * cover + 0.5F));
}

std::optional<std::string> make_fonts(float scale, float dense, Fonts& out) {
  ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
  atlas.Clear();
  atlas.FontBuilderIO = ImGuiFreeType::GetBuilderForFreeType();
  atlas.Flags |= ImFontAtlasFlags_NoPowerOfTwoHeight;
  atlas.TexDesiredWidth = 4096;
  const auto add = [&](float size, const char* file) {
    ImFontConfig config;
    config.OversampleH = 1;
    config.PixelSnapH = true;
    return atlas.AddFontFromFileTTF(file, std::max(1.0F, std::round(size * em_height * scale * dense)), &config,
                                    letters.data());
  };
  out.text = add(15.0F, BAYWRIGHT_FONT);  // the first one is what Dear ImGui takes by itself
  out.small = add(13.0F, BAYWRIGHT_FONT);
  out.large = add(18.0F, BAYWRIGHT_FONT);
  out.small_bold = add(13.0F, BAYWRIGHT_BOLD_FONT);
  out.bold = add(15.0F, BAYWRIGHT_BOLD_FONT);
  out.word = add(22.0F, BAYWRIGHT_BOLD_FONT);
  out.calm = add(34.0F, BAYWRIGHT_BOLD_FONT);
  for (ImFont* font : {out.text, out.small, out.large, out.small_bold, out.bold, out.word, out.calm})
    if (font == nullptr) return std::string("the font Inter is not at " BAYWRIGHT_FONT "; install fonts-inter");
  ImGui::GetIO().FontGlobalScale = 1.0F / dense;
  if (!atlas.Build()) return std::string("the font Inter cannot be read from " BAYWRIGHT_FONT);
  return std::nullopt;
}

void set_style(const Palette& palette, float scale) {
  ImGuiStyle style;  // anew: ScaleAllSizes compounds
  style.WindowRounding = 0.0F;
  style.ChildRounding = 0.0F;
  style.FrameRounding = 3.0F;
  style.WindowBorderSize = 0.0F;
  style.FrameBorderSize = 1.0F;
  style.WindowPadding = {0.0F, 0.0F};
  style.FramePadding = {6.0F, 4.0F};
  style.ScrollbarSize = 12.0F;
  style.ScaleAllSizes(scale);
  style.Colors[ImGuiCol_Text] = part(palette.text);
  style.Colors[ImGuiCol_TextDisabled] = part(palette.quiet);
  style.Colors[ImGuiCol_WindowBg] = part(palette.pane);
  style.Colors[ImGuiCol_ChildBg] = {0.0F, 0.0F, 0.0F, 0.0F};
  style.Colors[ImGuiCol_FrameBg] = part(palette.pane);
  style.Colors[ImGuiCol_FrameBgHovered] = part(palette.pane);
  style.Colors[ImGuiCol_FrameBgActive] = part(palette.pane);
  style.Colors[ImGuiCol_Border] = part(palette.bar_line);
  style.Colors[ImGuiCol_TextSelectedBg] = part(palette.other_bar);
  style.Colors[ImGuiCol_ScrollbarBg] = part(palette.pane);
  style.Colors[ImGuiCol_ScrollbarGrab] = part(palette.other_bar);
  style.Colors[ImGuiCol_ScrollbarGrabHovered] = part(palette.bar_line);
  style.Colors[ImGuiCol_ScrollbarGrabActive] = part(palette.bar_line);
  ImGui::GetStyle() = style;
}

}  // namespace baywright::viewer
