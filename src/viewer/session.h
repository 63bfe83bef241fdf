#pragma once
// The open build, what is looked at of it, and what each action does to both. The whole window but its drawing: no
// toolkit, so that it can be tested without a screen.
#include "viewer/actions.h"
#include "viewer/answers.h"
#include "viewer/document.h"
#include "viewer/handles.h"
#include "viewer/looking.h"
#include "viewer/mounting_page.h"
#include "viewer/settings.h"

#include <filesystem>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace baywright::viewer {

/// What lies over the window. `unsaved` asks what becomes of changes, `recovery` of what an earlier run left,
/// `conflict` of a file that changed outside while it was changed here.
enum class Page { none, help, open, grid, findings, steps, shortlist, unsaved, recovery, conflict };

/// What the hand does in the scene: look round, place holes on their plan, measure.
enum class Mode { looking, holes, measure };

class Session {
 public:
  Session(Settings settings, fit::Options options);

  /// Opens a build file in place of the present one; asks first where that is unsaved. A .csv file, or a .toml file
  /// that is no build, is opened as a shortlist beside it. A model file is not opened: the notice says how a build uses
  /// it. A fault leaves what is open as it is.
  void open(const std::filesystem::path& file);
  void open_shortlist(const std::filesystem::path& file, const plans::Wanted& wanted);
  /// Whether the window may close; asks first where something is unsaved.
  bool may_close();
  /// The answer to `Page::unsaved`: save or discard, then what was wanted; neither: nothing.
  enum class Leave { save, discard, stay };
  void answer_unsaved(Leave how);
  void answer_recovery(bool take);
  void answer_conflict(bool take_theirs);
  [[nodiscard]] bool closing() const { return closing_; }

  /// What happens by itself: answers that arrive, a file that changes, motion that ends. Seconds. True: draw anew.
  bool tick(double now);
  [[nodiscard]] bool moving() const;  // draw the next frame too
  [[nodiscard]] bool waiting() const { return background_.busy(); }

  void act(Action action);
  [[nodiscard]] Standing standing() const;

  void choose(const Choice& choice);
  void choose_finding(std::size_t index);          // of the seating shown; the column and the scene turn to it
  void try_plan(std::optional<std::size_t> plan);  // shown, not made; none: back to what is
  void apply_plan(std::size_t plan);
  /// A length that follows the hand. `fresh`: begins a new step.
  void drag(const Handle& handle, double value);
  /// One small step by the keyboard; those that follow soon belong to it.
  void nudge(const Handle& handle, double by);
  /// Any figures that follow the hand (`by_key`: steps by the keyboard, those that follow soon belong to it), and a
  /// change at once. Refused with nothing changed; that is for the caller to say.
  std::optional<parts::Fault> drag(const std::string& label, std::span<const build::Edit> edits, bool by_key);
  std::optional<parts::Fault> change(const std::string& label, std::span<const build::Edit> edits);
  void commit();  // the hand let go
  void cancel();
  /// A length as people type it, "9.6" or "9.6 ±0.2"; the fault says what would be right.
  std::optional<std::string> type(const Handle& handle, const std::string& text);
  void say(std::string notice, bool fault = false);
  /// The shortlist in order by that column.
  void sort_by(value::Column column);
  /// Offer `i` of the shortlist as a drive of the build, one step that can be undone; it is then shown at the place
  /// that suits it best.
  void seat_offer(std::size_t i);

  [[nodiscard]] const std::optional<Document>& document() const { return document_; }
  [[nodiscard]] const std::shared_ptr<const Shown>& shown() const { return shown_; }  // null: nothing is open
  /// What the screen shows: the plan that is tried, else the build.
  [[nodiscard]] const std::shared_ptr<const Shown>& seen() const { return tried_shown_ ? tried_shown_ : shown_; }
  [[nodiscard]] const std::vector<Handle>& handles() const { return handles_; }
  [[nodiscard]] const Rest& rest() const { return rest_; }
  [[nodiscard]] const plans::Search* search() const;  // null: not ready, or at fault
  [[nodiscard]] std::optional<std::size_t> tried() const { return tried_; }
  [[nodiscard]] const std::shared_ptr<const Shortlist>& shortlist() const { return shortlist_; }  // null: none is open
  /// The open shortlist, in the order asked for; null: not ready, or at fault. While `buying_waits`, the fit is that of
  /// the build before its last change.
  [[nodiscard]] const plans::Buying* buying() const { return buying_ ? &*buying_ : nullptr; }
  [[nodiscard]] bool buying_waits() const { return shortlist_ && !rest_.buying; }
  [[nodiscard]] const parts::Fault* buying_fault() const;
  /// Of what is seen: its steps, and what they take.
  [[nodiscard]] MountingPage mounting() const;
  /// The best plan that fits, ready to be looked at beside what is; null: there is none, or it fits as it is.
  [[nodiscard]] std::shared_ptr<const Shown> remedy();
  [[nodiscard]] const plans::Plan* remedy_plan() const;
  /// The finding whose chain the column shows: the chosen one, else the one that decides; none: no gap decides.
  [[nodiscard]] std::optional<std::size_t> finding() const;
  [[nodiscard]] std::string title() const;   // of the window: the answer, then the file
  [[nodiscard]] std::string answer() const;  // what Ctrl+C copies
  [[nodiscard]] const std::string& notice() const { return notice_; }
  [[nodiscard]] bool notice_is_fault() const { return notice_fault_; }
  [[nodiscard]] std::string take_copy() { return std::exchange(copy_, {}); }

  Settings settings;
  Looking looking;
  Page page = Page::none;
  Mode mode = Mode::looking;
  bool customer = false;
  std::optional<render::Side> fly_to;  // wishes of an action, taken by the scene
  bool refit = false;                  // as one looks, but so that all that moves is seen
  std::optional<std::size_t> fly_to_finding;
  bool fly_to_cut = false;
  std::optional<std::pair<geometry::Pose, geometry::Bounds>> fly_to_face;  // seen from its z axis, y up
  double zoom = 1.0;

 private:
  void take(Document document);
  void refresh(bool ask);
  void ask();
  [[nodiscard]] std::uint64_t version() const { return document_ ? document_->version() : 0; }
  bool take_answers();
  void look_outside();
  void take_finer(std::shared_ptr<const Shown> shown);
  void settle_worst(const Choice& worst);
  [[nodiscard]] std::string fits_elsewhere() const;
  void act_on_part(Action action);
  void copy();
  [[nodiscard]] std::variant<std::shared_ptr<const Shown>, parts::Fault> shown_with(const plans::Plan& plan,
                                                                                    bool moving) const;

  fit::Options options_;
  std::optional<Document> document_;
  Choice choice_;
  std::optional<std::uint64_t> untouched_;  // the version that was opened, until the user chooses or does anything
  std::shared_ptr<const Shown> shown_;
  std::vector<Handle> handles_;
  Rest rest_;
  std::optional<fit::Finding> finding_;  // chosen by the user: found again by what it is about after an edit
  std::optional<std::size_t> tried_;
  std::shared_ptr<const Shown> tried_shown_;
  std::shared_ptr<const Shown> remedy_;
  std::shared_ptr<const std::variant<plans::Search, parts::Fault>> remedy_of_;  // what it was taken from
  std::shared_ptr<const Shortlist> shortlist_;
  std::optional<value::Column> sorted_by_;  // none: as `rank` has it without being asked
  std::optional<plans::Buying> buying_;
  std::string notice_;
  bool notice_fault_ = false;
  double notice_until_ = 0.0;
  std::string copy_;
  std::optional<std::filesystem::path> wanted_;  // opened once the question about changes is answered
  bool wants_to_close_ = false;
  bool closing_ = false;
  double now_ = 0.0;
  double look_at_ = 0.0;
  double keep_at_ = 0.0;
  double commit_at_ = 0.0;  // of a nudge; 0: none
  bool was_moving_ = false;
  bool was_waiting_ = false;
  Background background_;  // last: it stops before what it works for goes
};

}  // namespace baywright::viewer
