#include "viewer/text_field.h"

#include <imgui_stdlib.h>

namespace baywright::viewer {

TextField::Outcome TextField::draw(Ui& ui, float x, float y, float room) {
  ImGui::SetCursorScreenPos({x, y});
  ImGui::SetNextItemWidth(room);
  ImGui::PushFont(ui.fonts.small);
  if (fresh_) ImGui::SetKeyboardFocusHere();
  const bool entered = ImGui::InputText(
      "##typed", &text_,
      ImGuiInputTextFlags_EnterReturnsTrue | (text_.size() > 1 ? ImGuiInputTextFlags_AutoSelectAll : 0));
  ImGui::PopFont();
  const bool active = ImGui::IsItemActive();
  ui.typing = true;
  if (entered) {
    ui.took({"Enter"});
    return Outcome::entered;
  }
  if (!fresh_ && !active) {
    ui.took({"Escape"});
    return Outcome::left;
  }
  if (active) fresh_ = false;
  return Outcome::typing;
}

void TextField::refuse(std::string fault) {
  fault_ = std::move(fault);
  fresh_ = true;
}

std::string typed_digit(Ui& ui) {
  for (const char* digit : {"0", "1", "2", "3", "4", "5", "6", "7", "8", "9"})
    if (ui.took({digit})) return digit;
  return {};
}

}  // namespace baywright::viewer
