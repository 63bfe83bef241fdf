#pragma once
// The hole table in the column's place: positions to be typed, sizes, what each hole meets, its edge; below it what was
// found of the room round the screws.
#include "viewer/hole_table.h"
#include "viewer/placing.h"
#include "viewer/text_field.h"
#include "viewer/ui.h"

#include <memory>
#include <string>
#include <vector>

namespace baywright::viewer {

class HoleColumn {
 public:
  void draw(Ui& ui, Session& session, Placing& placing, const Rectangle& at);

 private:
  struct Typing {
    std::size_t mark = 0;
    int axis = 0;
    TextField field;
  };
  void update(const Session& session, const Placing& placing);
  float draw_table(Ui& ui, Session& session, Placing& placing, const Rectangle& at);
  void draw_row(Ui& ui, Session& session, Placing& placing, const HoleRow& row, const Rectangle& at, bool two_lines);
  void draw_cell(Ui& ui, Session& session, Placing& placing, const HoleRow& row, int axis, float x, float y,
                 float room);
  void draw_words(Ui& ui, const Placing& placing, const Rectangle& at) const;
  [[nodiscard]] bool types(std::size_t mark, int axis) const {
    return typing_ && typing_->mark == mark && typing_->axis == axis;
  }

  std::shared_ptr<const Shown> of_;
  std::vector<HoleRow> rows_;  // each place, then its holes
  std::vector<HoleWord> words_;
  std::string place_;                    // whose rows were brought into sight
  std::size_t first_ = 0;                // row at the top
  std::optional<std::size_t> followed_;  // the chosen mark that was brought into sight
  std::optional<Typing> typing_;
};

}  // namespace baywright::viewer
