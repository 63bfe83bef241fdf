#pragma once
// The drives of the shortlist side by side, with what each does in the machine.
#include "output/rank_text.h"
#include "viewer/scroll.h"
#include "viewer/session.h"
#include "viewer/ui.h"

#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace baywright::viewer {

class ShortlistPane {
 public:
  void draw(Ui& ui, Session& session, const Rectangle& screen);
  void closed() { *this = {}; }

 private:
  /// Where the columns stand, pixels.
  struct Columns {
    std::vector<float> right;  // of each but the first and the last
    float name = 0.0F;         // x
    float name_room = 0.0F;
    bool name_above = false;  // of its figures: there is no room beside them
    float fit = 0.0F;         // x
    float fit_room = 0.0F;
  };
  void update(const Session& session);
  void take_keys(Ui& ui, Session& session, float row);
  [[nodiscard]] Columns columns_in(const Ui& ui, const Rectangle& at) const;
  static void draw_title(Ui& ui, Session& session, const Rectangle& page, float edge);
  /// Draws it if asked. Returns its height.
  float draw_answer(Ui& ui, const Session& session, const Rectangle& at, bool drawn) const;
  void draw_head(Ui& ui, Session& session, const Columns& columns, const Rectangle& at);
  void draw_rows(Ui& ui, Session& session, const Columns& columns, const Rectangle& at, float row);
  void draw_row(Ui& ui, const Session& session, const Columns& columns, std::size_t offer, const Rectangle& at,
                bool lit) const;
  void draw_details(Ui& ui, const Session& session, const Rectangle& at) const;

  std::shared_ptr<const std::variant<plans::Buying, parts::Fault>> of_;  // what the rest was made of
  std::optional<value::Column> by_;
  std::vector<output::RankColumn> heads_;
  std::vector<std::vector<std::string>> cells_;  // by offer
  std::vector<std::string> answer_;
  std::optional<std::size_t> at_;  // the offer that is pointed at or stood on
  Scroll scroll_;
};

}  // namespace baywright::viewer
