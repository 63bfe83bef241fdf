#include "viewer/open_pane.h"

#include "viewer/openable.h"

#include <algorithm>
#include <system_error>

namespace baywright::viewer {

void OpenPane::enter(const Session& session, const std::filesystem::path& folder) {
  std::error_code error;
  folder_ = std::filesystem::absolute(folder, error).lexically_normal();
  here_ = openable_in(folder_);
  recent_ = still_there(session.settings.recent);
  first_ = 0;
}

void OpenPane::draw(Ui& ui, Session& session, const Rectangle& screen) {
  if (!open_) {
    std::error_code error;
    const std::filesystem::path own = session.document() ? session.document()->path().parent_path() : "";
    enter(session, own.empty() ? std::filesystem::current_path(error) : own);
    open_ = true;
  }
  const Rectangle page = page_begin(ui, screen, ui.px(860.0F), ui.px(520.0F));
  const float edge = ui.px(24.0F);
  const float row = ui.px(28.0F);
  const float wide = 0.5F * (page.width - 3.0F * edge);
  write(ui.fonts.bold, page.x + edge, page.y + ui.px(16.0F), ui.text(), "Open a build or a shortlist");
  if (session.document()) {
    float x = page.x + page.width - edge - width_of(ui.fonts.small, "close") - ui.px(14.0F);
    if (word_button(ui, "close open", x, page.y + ui.px(12.0F), "close", false).chosen) session.page = Page::none;
  }
  const float top = page.y + ui.px(56.0F);
  const float bottom = page.y + page.height - edge - line_of(ui.fonts.small);
  const auto entry = [&](const std::string& id, float x, float y, const std::string& name) {
    const Touch touched = touch(ui, id, {x - ui.px(6.0F), y, wide + ui.px(6.0F), row});
    if (touched.pointed || touched.stood_on)
      ImGui::GetWindowDrawList()->AddRectFilled({x - ui.px(6.0F), y}, {x + wide, y + row}, colour(ui.palette->raised),
                                                ui.px(4.0F));
    write(ui.fonts.text, x, y + ui.px(4.0F), ui.text(), name, wide - ui.px(10.0F));
    return touched.chosen;
  };

  float y = top;
  const float left = page.x + edge;
  write(ui.fonts.small_bold, left, y, ui.quiet(), "Opened before");
  y += row;
  for (const std::string& file : recent_) {
    if (y + row > bottom) break;
    if (entry("recent " + file, left, y, std::filesystem::path(file).filename().string())) {
      session.page = Page::none;
      session.open(file);
      break;
    }
    y += row;
  }
  if (recent_.empty()) write(ui.fonts.text, left, y + ui.px(4.0F), ui.quiet(), "none yet");

  y = top;
  const float right = left + wide + edge;
  write(ui.fonts.small_bold, right, y, ui.quiet(), folder_.string(), wide);
  y += row;
  const auto seen = static_cast<std::size_t>(std::max(1.0F, (bottom - y) / row));
  if (ImGui::GetIO().MouseWheel < 0.0F && first_ + seen < here_.size()) ++first_;
  if (ImGui::GetIO().MouseWheel > 0.0F && first_ > 0) --first_;
  for (std::size_t i = first_; i < std::min(here_.size(), first_ + seen); ++i) {
    const std::string name = here_[i];
    if (entry("file " + name, right, y, name == ".." ? "the folder above" : name)) {
      if (name == ".." || name.ends_with('/')) {
        enter(session, folder_ / name);
      } else {
        session.page = Page::none;
        session.open(folder_ / name);
      }
      break;
    }
    y += row;
  }
  write(ui.fonts.small, left, page.y + page.height - edge - ui.px(2.0F), ui.quiet(),
        here_.size() > seen ? "A file can also be dropped onto the window. The wheel shows more of the list."
                            : "A file can also be dropped onto the window.",
        page.width - 2.0F * edge);
  page_end();
}

}  // namespace baywright::viewer
