#include "viewer/placing.h"

#include "tolerance/reading.h"

#include <cmath>

namespace baywright::viewer {

namespace {

constexpr double coarse_mm = 1.0;
constexpr double fine_mm = 0.1;

std::string figure(double mm) {
  return tolerance::in_words(std::round(mm * 1e3) / 1e3);
}

}  // namespace

void Placing::look(Session& session) {
  const bool moving = session.document() && session.document()->dragging();
  if (of_ != session.shown() || moving_ != moving) {
    of_ = session.shown();
    moving_ = moving;
    plan_ = of_ ? hole_plan(*of_, moving) : std::nullopt;
  }
  if (!plan_) return;
  if (of_->choice.place != flown_to_) {
    flown_to_ = of_->choice.place;
    chosen_.reset();
    rests_.reset();
    words_.clear();
    session.fly_to_face = {plan_->pose, plan_->bounds};
  }
}

void Placing::leave() {
  *this = {};
}

std::optional<std::size_t> Placing::chosen() const {
  return plan_ && chosen_ && *chosen_ < plan_->marks.size() ? chosen_ : std::nullopt;
}

void Placing::choose(std::optional<std::size_t> mark) {
  if (mark == chosen_) return;
  chosen_ = mark;
  rests_.reset();
  words_.clear();
}

std::optional<std::string> Placing::move(Session& session, const HoleMark& mark, const Vec2& to, bool by_key,
                                         bool follows) {
  if (!session.document()) return std::nullopt;
  if (!mark.moves()) return mark.held;
  const double half = 0.5 * mark.diameter;
  const bool on_part = to.x >= half && to.y >= half && to.x <= plan_->size.x - half && to.y <= plan_->size.y - half;
  if (mark.kind == HoleMark::Kind::hole && !on_part)
    return "refused: " + mark.name + " would leave " + plan_->part +
           "; a hole that breaks out of an edge holds nothing";
  const auto edits = moved(*session.document()->build(), session.document()->text(), mark, to);
  if (edits.empty()) return mark.name + " does not move by itself";
  const std::string label = mark.name + " to " + figure(to.x) + ", " + figure(to.y);
  const auto fault = follows ? session.drag(label, edits, by_key) : session.change(label, edits);
  if (!fault) return std::nullopt;
  return "refused: " + fault->what + (fault->right.empty() ? "" : "; " + fault->right);
}

void Placing::drag(Session& session, const Vec2& to, bool fine, double reach) {
  const auto at = chosen();
  if (!at) return;
  if (!plan_->marks[*at].moves() && !held_) {
    words_ = plan_->marks[*at].held;
    return;
  }
  if (!held_) {
    session.commit();
    held_ = Held{plan_->marks[*at], snap_targets(*plan_, plan_->marks[*at], *of_), false};
  }
  if (held_->begun && !session.document()->dragging()) return;  // taken back while the hand still holds it
  rests_ = snapped(to, held_->targets, fine ? fine_mm : coarse_mm, fine ? std::min(fine_mm, reach) : reach);
  const auto refused = move(session, held_->mark, rests_->at, false, true);
  words_ = refused ? *refused : rests_->words;
  held_->begun = held_->begun || !refused;
}

void Placing::let_go(Session& session) {
  held_.reset();
  rests_.reset();
  session.commit();
}

void Placing::nudge(Session& session, const Vec2& by) {
  const auto at = chosen();
  if (!at || held_) return;
  if (*at != nudged_) session.commit();  // another one is a change of its own
  nudged_ = *at;
  const HoleMark mark = plan_->marks[*at];
  rests_.reset();
  words_ = move(session, mark, mark.at + by, true, true).value_or("");
}

std::optional<std::string> Placing::type(Session& session, int axis, const std::string& text) {
  const auto at = chosen();
  if (!at) return std::nullopt;
  const auto read = tolerance::read_length(text);
  if (const auto* wrong = std::get_if<tolerance::Misread>(&read)) return wrong->what + "; " + wrong->right;
  const auto& length = std::get<tolerance::Length>(read);
  if (length.limits_given) return "a place has no limits of its own: those of the holes are by `drilled`";
  session.commit();
  Vec2 to = plan_->marks[*at].at;
  to[axis] = length.nominal;
  rests_.reset();
  words_.clear();
  return move(session, plan_->marks[*at], to, false, false);
}

}  // namespace baywright::viewer
