#include "viewer/grid_pane.h"

#include "viewer/grid_step.h"

#include <algorithm>

namespace baywright::viewer {

namespace {

const Cell* cell_of(const Rest& rest, const Choice& choice) {
  if (!rest.grid) return nullptr;
  const auto found =
      std::find_if(rest.grid->begin(), rest.grid->end(), [&](const Cell& cell) { return cell.choice == choice; });
  return found == rest.grid->end() ? nullptr : &*found;
}

std::string id_of(const GridCell& cell) {
  return "cell " + std::to_string(cell.drive) + ' ' + std::to_string(cell.place);
}

}  // namespace

void draw_grid(Ui& ui, Session& session, const Rectangle& screen) {
  const build::Build& build = session.shown()->build;
  const auto columns = static_cast<float>(build.places.size());
  const auto rows = static_cast<float>(build.drives.size());
  const float name = ui.px(210.0F);
  const float edge = ui.px(22.0F);
  const float top = ui.px(48.0F) + 3.0F * line_of(ui.fonts.small);
  const float cell_height = ui.px(44.0F);
  const float wanted = ui.px(130.0F);
  const Rectangle page = page_begin(ui, screen, 2.0F * edge + name + columns * wanted,
                                    top + rows * cell_height + edge + line_of(ui.fonts.small) + ui.px(12.0F));
  const float wide = std::min(wanted, (page.width - 2.0F * edge - name) / columns);
  const float high = std::min(cell_height, (page.height - top - edge - line_of(ui.fonts.small)) / rows);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  write(ui.fonts.bold, page.x + edge, page.y + ui.px(16.0F), ui.text(), "Drives and places", page.width - 2.0F * edge);
  const float x0 = page.x + edge + name;
  const float y0 = page.y + top;
  for (std::size_t p = 0; p < build.places.size(); ++p)
    write_lines(ui.fonts.small_bold, x0 + static_cast<float>(p) * wide + ui.px(8.0F),
                y0 - 2.0F * line_of(ui.fonts.small) - ui.px(6.0F), ui.text(), build.places[p].name, wide - ui.px(12.0F),
                2);
  for (std::size_t d = 0; d < build.drives.size(); ++d) {
    const float y = y0 + static_cast<float>(d) * high;
    list.AddLine({page.x + edge, y}, {page.x + page.width - edge, y}, colour(ui.palette->line));
    write_lines(ui.fonts.small_bold, page.x + edge, y + ui.px(5.0F), ui.text(), build.drives[d].name,
                name - ui.px(12.0F), high > 2.0F * line_of(ui.fonts.small) ? 2 : 1);
    for (std::size_t p = 0; p < build.places.size(); ++p) {
      const Choice choice{build.drives[d].name, build.places[p].name};
      const Rectangle at{x0 + static_cast<float>(p) * wide, y + 1.0F, wide, high - 1.0F};
      const std::string id = id_of({d, p});
      const Touch touched = touch(ui, id, at);
      const bool here = choice == session.shown()->choice;
      if (here && ui.stops.at().empty()) ui.stops.go(id);  // so that the arrows and Enter work at once
      if (here || touched.pointed || touched.stood_on)
        list.AddRectFilled({at.x, at.y}, {at.x + at.width, at.y + at.height}, colour(ui.palette->raised), ui.px(3.0F));
      const float size = ui.px(16.0F);
      const float mark_y = at.y + 0.5F * (at.height - size);
      if (const Cell* cell = cell_of(session.rest(), choice)) {
        draw_mark(ui, cell->verdict, at.x + ui.px(8.0F), mark_y, size);
        const std::string figure = cell->figure.empty() && cell->verdict != fit::Verdict::fits ? "no" : cell->figure;
        write(ui.fonts.small, at.x + ui.px(32.0F), mark_y - ui.px(1.0F), ui.text(), figure, at.width - ui.px(36.0F));
      } else {
        write(ui.fonts.small, at.x + ui.px(10.0F), mark_y, ui.quiet(), "\u2026");
      }
      if (touched.stood_on)
        for (const char* key : {"Up", "Down", "Left", "Right", "Home", "End"})
          if (ui.took({key})) {
            const GridCell to = grid_step({d, p}, key, build.drives.size(), build.places.size());
            ui.stops.go(id_of(to));
          }
      if (touched.chosen) {
        session.choose(choice);
        page_end();
        return;
      }
    }
  }
  write(ui.fonts.small, page.x + edge, page.y + page.height - edge - ui.px(2.0F), ui.quiet(),
        "The arrows go from one to the next, Enter shows it. Escape goes back.", page.width - 2.0F * edge);
  page_end();
}

}  // namespace baywright::viewer
