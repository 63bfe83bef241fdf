#include "viewer/session.h"

#include "output/answer_words.h"
#include "output/rank_text.h"
#include "output/words.h"
#include "tolerance/reading.h"
#include "viewer/hole_plan.h"

#include <algorithm>
#include <array>

namespace baywright::viewer {

namespace {

constexpr double seconds_between_looks = 1.0;  // at the file on disk
constexpr double seconds_between_copies = 5.0;
constexpr double seconds_of_nudge = 1.0;
constexpr double seconds_of_notice = 6.0;
constexpr double seconds_to_part = 0.6;
constexpr double seconds_to_put_in = 3.0;

bool same(const fit::Finding& a, const fit::Finding& b) {
  return a.kind == b.kind && a.between == b.between && a.bodies == b.bodies && a.why.code == b.why.code;
}

bool is_list(const std::filesystem::path& file) {
  if (file.extension() == ".csv" || file.extension() == ".CSV") return true;
  if (file.extension() != ".toml" || file.filename().string().ends_with(".build.toml")) return false;
  return std::holds_alternative<parts::Fault>(build::read(file)) &&
         std::holds_alternative<value::Shortlist>(value::read_shortlist(file));
}

bool is_model(const std::filesystem::path& file) {
  constexpr std::array models = {".stl", ".obj", ".STL", ".OBJ"};
  return std::find(models.begin(), models.end(), file.extension()) != models.end();
}

}  // namespace

Session::Session(Settings kept, fit::Options options) : settings(std::move(kept)), options_(std::move(options)) {}

void Session::say(std::string notice, bool fault) {
  notice_ = std::move(notice);
  notice_fault_ = fault;
  notice_until_ = now_ + seconds_of_notice;
}

// --- the file ---

void Session::open(const std::filesystem::path& file) {
  if (is_model(file))
    return say(file.filename().string() + " is the model of a part, not a build. A build uses it with a line in a " +
               "[[part]]: solid = { mesh = \"" + file.filename().string() + "\", unit = \"mm\" }");
  if (is_list(file)) {
    plans::Wanted wanted;
    wanted.place = options_.place;
    return open_shortlist(file, wanted);
  }
  if (document_ && document_->unsaved()) {
    wanted_ = file;
    page = Page::unsaved;
    return;
  }
  auto opened = Document::open(file);
  if (const auto* fault = std::get_if<parts::Fault>(&opened)) return say(fault->text(), true);
  take(std::get<Document>(std::move(opened)));
}

void Session::open_shortlist(const std::filesystem::path& file, const plans::Wanted& wanted) {
  auto opened = viewer::open_shortlist(file, wanted);
  if (const auto* fault = std::get_if<parts::Fault>(&opened)) return say(fault->text(), true);
  shortlist_ = std::make_shared<const Shortlist>(std::get<Shortlist>(std::move(opened)));
  remember(settings, file);
  buying_.reset();
  sorted_by_.reset();
  notice_.clear();
  page = Page::shortlist;
  ask();
}

void Session::take(Document document) {
  const bool list_waits = shortlist_ && !document_;  // for the machine that it is for
  document_ = std::move(document);
  remember(settings, document_->path());
  looking = {};
  mode = Mode::looking;
  finding_.reset();
  rest_ = {};
  page = document_->recovery() ? Page::recovery : list_waits ? Page::shortlist : Page::none;
  notice_.clear();
  choice_ = likely_worst(*document_->build(), options_);
  untouched_ = document_->version();
  fly_to = render::Side::whole;
  refresh(true);
}

bool Session::may_close() {
  if (!document_ || !document_->unsaved()) return true;
  wants_to_close_ = true;
  page = Page::unsaved;
  return false;
}

void Session::answer_unsaved(Leave how) {
  const auto wanted = std::exchange(wanted_, std::nullopt);
  const bool closes = std::exchange(wants_to_close_, false);
  page = Page::none;
  if (how == Leave::stay || !document_) return;
  if (how == Leave::save) {
    if (const auto fault = document_->save()) return say(*fault, true);
  } else {
    document_->discard();
  }
  if (closes) closing_ = true;
  if (!wanted) return;
  auto opened = Document::open(*wanted);
  if (const auto* fault = std::get_if<parts::Fault>(&opened)) return say(fault->text(), true);
  take(std::get<Document>(std::move(opened)));
}

void Session::answer_recovery(bool yes) {
  page = Page::none;
  if (!document_) return;
  if (yes)
    document_->recover();
  else
    document_->forget_recovery();
  refresh(true);
}

void Session::answer_conflict(bool take_theirs) {
  page = Page::none;
  if (!document_) return;
  if (take_theirs) {
    if (const auto fault = document_->reload()) say(fault->text(), true);
    return refresh(true);
  }
  if (const auto fault = document_->save_over()) say(*fault, true);
}

void Session::look_outside() {
  if (!document_ || document_->dragging()) return;
  switch (document_->look()) {
    case Outside::same:
      return;
    case Outside::reloaded:
      say("The file was changed outside and has been read again.");
      return refresh(true);
    case Outside::conflict:
      if (page == Page::none) page = Page::conflict;
      return;
    case Outside::gone:
      return say(document_->path().filename().string() + " is no longer on disk. Save writes it anew.", true);
  }
}

// --- what is shown ---

void Session::refresh(bool ask) {
  tried_.reset();
  tried_shown_.reset();
  shown_ = show(*document_->build(), choice_, options_, true);  // where that is rough, the background follows
  choice_ = shown_->choice;
  viewer::handles(document_->text(), *shown_).swap(handles_);
  if (mode == Mode::holes && !has_hole_plan(shown_->build, choice_.place)) mode = Mode::looking;
  if (ask) this->ask();
}

void Session::ask() {
  rest_.buying.reset();  // of the build and the list as they were
  if (document_)
    background_.ask(version(), document_->build(), document_->text(), choice_, options_, shortlist_);
  else
    background_.ask(version(), nullptr, {}, {}, options_, shortlist_);
}

/// Whether there are new ones.
bool Session::take_answers() {
  Rest latest = background_.latest();
  if (latest.version != version() ||
      (latest.version == rest_.version && latest.grid == rest_.grid && latest.tallest == rest_.tallest &&
       latest.plans == rest_.plans && latest.shown == rest_.shown && latest.worst == rest_.worst &&
       latest.buying == rest_.buying))
    return false;
  const bool finer = latest.shown && latest.shown != rest_.shown;
  const bool bought = latest.buying && latest.buying != rest_.buying;
  rest_ = std::move(latest);
  if (finer) take_finer(*rest_.shown);
  if (bought) {
    buying_.reset();
    if (const auto* found = std::get_if<plans::Buying>(rest_.buying.get()))
      buying_ = sorted_by_ ? in_order(*found, *sorted_by_, document_.has_value()) : *found;
  }
  if (rest_.worst && untouched_) settle_worst(*rest_.worst);
  return true;
}

bool Session::tick(double now) {
  now_ = now;
  bool news = false;
  if (now >= look_at_) {
    look_at_ = now + seconds_between_looks;
    const auto before = document_ ? document_->version() : 0;
    const Page page_before = page;
    const std::string notice_before = notice_;
    look_outside();
    news = (document_ && document_->version() != before) || page != page_before || notice_ != notice_before;
  }
  if (commit_at_ > 0.0 && now >= commit_at_) {
    commit();
    news = true;
  }
  if (document_ && now >= keep_at_) {
    keep_at_ = now + seconds_between_copies;
    if (const auto fault = document_->keep_recovery(); fault && *fault != notice_) {
      say(*fault, true);
      news = true;
    }
  }
  if ((document_ || shortlist_) && take_answers()) news = true;
  const bool is_waiting = waiting();
  if (was_waiting_ && !is_waiting) news = true;
  was_waiting_ = is_waiting;
  if (!notice_.empty() && !notice_fault_ && now >= notice_until_) {
    notice_.clear();
    news = true;
  }
  const bool is_moving = moving();
  if (was_moving_ && !is_moving) news = true;
  was_moving_ = is_moving;
  return news || is_moving;
}

void Session::take_finer(std::shared_ptr<const Shown> shown) {
  shown_ = std::move(shown);
  viewer::handles(document_->text(), *shown_).swap(handles_);
}

/// Once after opening, if nothing was chosen or done meanwhile.
void Session::settle_worst(const Choice& worst) {
  const bool still = std::exchange(untouched_, std::nullopt) == document_->version() && page == Page::none;
  if (!still || worst == choice_) return;
  choose(worst);
  say("Of all that was asked about, this most needs looking at: " + worst.drive + " in " + worst.place + '.' +
      fits_elsewhere());
}

/// Where the drive that is shown fits, where it does not as it is shown.
std::string Session::fits_elsewhere() const {
  if (!rest_.grid || shown_->seating.verdict == fit::Verdict::fits) return {};
  for (const Cell& cell : *rest_.grid)
    if (cell.choice.drive == choice_.drive && cell.verdict == fit::Verdict::fits)
      return " It fits in " + cell.choice.place + '.';
  return {};
}

bool Session::moving() const {
  return looking.apart.moving(now_) || looking.put_in.moving(now_);
}

const plans::Search* Session::search() const {
  if (!rest_.plans) return nullptr;
  return std::get_if<plans::Search>(rest_.plans.get());
}

const parts::Fault* Session::buying_fault() const {
  return rest_.buying ? std::get_if<parts::Fault>(rest_.buying.get()) : nullptr;
}

MountingPage Session::mounting() const {
  const plans::Plan* tried = tried_ && search() ? &search()->plans[*tried_] : nullptr;
  return mounting_page(*seen(), tried, search(), rest_.grid.get());
}

std::optional<std::size_t> Session::finding() const {
  if (!seen()) return std::nullopt;
  const fit::Seating& seating = seen()->seating;
  if (finding_)
    for (std::size_t i = 0; i < seating.findings.size(); ++i)
      if (same(*finding_, seating.findings[i])) return i;
  for (const fit::Question* each :
       {&seating.questions.form_factor, &seating.questions.interface, &seating.questions.bus})
    if (each->answer != fit::Answer::yes) return std::nullopt;  // then the answer is no gap
  const fit::Finding* answers = output::answering(seating);
  if (answers != nullptr && answers->gap) return static_cast<std::size_t>(answers - seating.findings.data());
  return seating.deciding;
}

std::string Session::answer() const {
  if (!seen()) return {};
  const output::Answer said = output::answer_of(seen()->seating, seen()->build.method);
  return seen()->choice.drive + " in " + seen()->choice.place + ": " + said.word + ". " + said.sentence;
}

std::string Session::title() const {
  if (!document_) return "baywright";
  const output::Answer said = output::answer_of(shown_->seating, shown_->build.method);
  return said.word + (said.sentence.empty() ? "" : ": " + said.sentence) + " \u2013 " + choice_.drive + " in " +
         choice_.place + " \u2013 " + (document_->unsaved() ? "*" : "") + document_->path().filename().string();
}

Standing Session::standing() const {
  Standing out;
  out.shortlist = shortlist_ != nullptr;
  if (!document_ || !shown_) return out;
  out.file = true;
  out.unsaved = document_->unsaved();
  out.to_undo = document_->undoes() != nullptr;
  out.to_redo = document_->redoes() != nullptr;
  out.part = !looking.chosen_part(seen()->model).empty();
  out.hidden = !looking.as_it_is();
  out.several = document_->build()->drives.size() * document_->build()->places.size() > 1;
  out.finding = !seen()->seating.findings.empty();
  out.plan = search() != nullptr && !search()->plans.empty();
  out.tried = tried_.has_value();
  out.way_in = !seen()->model.way_in.empty();
  out.hole_plan = has_hole_plan(seen()->build, choice_.place);
  return out;
}

// --- what the user does ---

void Session::choose(const Choice& choice) {
  if (!document_) return;
  untouched_.reset();
  commit();
  choice_ = choice;
  finding_.reset();
  looking.chosen.reset();
  looking.put_in.jump(1.0);
  page = Page::none;
  refresh(true);
  fly_to = looking.side.value_or(render::Side::whole);
}

void Session::sort_by(value::Column column) {
  sorted_by_ = column;
  if (buying_) buying_ = in_order(std::move(*buying_), column, document_.has_value());
}

void Session::seat_offer(std::size_t i) {
  if (!shortlist_ || i >= shortlist_->list.offers.size()) return;
  const value::Offer& offer = shortlist_->list.offers[i];
  if (!document_) {
    page = Page::open;
    return say("Open the build of the machine that the drive is for.");
  }
  if (offer.use.empty() || !offer.bus)
    return say(offer.name + " cannot be shown: the list does not say what it is (`use`) and on which bus (`bus`).");
  commit();
  const auto with = plans::with_offer({document_->text(), document_->path()}, shortlist_->list, i);
  if (const auto* fault = std::get_if<parts::Fault>(&with)) return say(fault->text(), true);
  const auto& [text, name] = std::get<plans::WithOffer>(with);
  const bool tried = buying_ && !buying_waits() && buying_->tried[i];
  const Choice wanted{name, tried ? buying_->tried[i]->seating.place : choice_.place};
  if (const auto fault = document_->replace("drive of the shortlist added", text)) return say(fault->text(), true);
  choose(wanted);
  say(name + " of the shortlist is a drive of the build now. Ctrl+Z takes it back.");
}

void Session::choose_finding(std::size_t index) {
  if (!seen() || index >= seen()->seating.findings.size()) return;
  untouched_.reset();
  finding_ = seen()->seating.findings[index];
  fly_to_finding = index;
}

std::variant<std::shared_ptr<const Shown>, parts::Fault> Session::shown_with(const plans::Plan& plan,
                                                                             bool moving) const {
  const auto text = build::edited(document_->text(), plan.edits, document_->path());
  if (const auto* fault = std::get_if<parts::Fault>(&text)) return *fault;
  const auto build = build::read_text(std::get<std::string>(text), document_->path());
  if (const auto* fault = std::get_if<parts::Fault>(&build)) return *fault;
  return show(std::get<build::Build>(build), {plan.drive, plan.place}, options_, moving);
}

const plans::Plan* Session::remedy_plan() const {
  if (!search() || shown_->seating.verdict == fit::Verdict::fits) return nullptr;
  const auto found = std::find_if(search()->plans.begin(), search()->plans.end(),
                                  [](const plans::Plan& plan) { return plan.after.verdict == fit::Verdict::fits; });
  return found == search()->plans.end() ? nullptr : &*found;
}

std::shared_ptr<const Shown> Session::remedy() {
  if (rest_.plans == remedy_of_) return remedy_;
  remedy_of_ = rest_.plans;
  remedy_.reset();
  if (const plans::Plan* plan = remedy_plan()) {
    auto made = shown_with(*plan, false);
    if (auto* shown = std::get_if<std::shared_ptr<const Shown>>(&made)) remedy_ = std::move(*shown);
  }
  return remedy_;
}

void Session::try_plan(std::optional<std::size_t> plan) {
  if (plan == tried_) return;
  untouched_.reset();
  tried_.reset();
  tried_shown_.reset();
  if (!plan || !search() || *plan >= search()->plans.size()) return;
  auto made = shown_with(search()->plans[*plan], true);
  if (const auto* fault = std::get_if<parts::Fault>(&made)) return say(fault->text(), true);
  tried_shown_ = std::get<std::shared_ptr<const Shown>>(std::move(made));
  tried_ = plan;
}

void Session::apply_plan(std::size_t plan) {
  if (!search() || plan >= search()->plans.size()) return;
  const plans::Plan wanted = search()->plans[plan];  // a copy: the answers go when the text changes
  commit();
  std::string label;
  for (const plans::Change& change : wanted.changes)
    label += (label.empty() ? "" : ", ") + std::string(plans::word(change.kind));
  if (!wanted.edits.empty()) {
    if (const auto fault = document_->edit(label, wanted.edits)) return say(fault->text(), true);
    say("Changed: " + label + ". Ctrl+Z takes it back.");
  }
  choice_ = {wanted.drive, wanted.place};
  finding_.reset();
  refresh(true);
}

void Session::drag(const Handle& handle, double value) {
  const std::array edits = {viewer::drag(handle, value)};
  if (const auto fault = document_->drag(drag_label(handle, value), edits)) return say(fault->text(), true);
  refresh(false);
}

std::optional<parts::Fault> Session::drag(const std::string& label, std::span<const build::Edit> edits, bool by_key) {
  if (auto fault = document_->drag(label, edits)) return fault;
  refresh(false);
  if (by_key) commit_at_ = now_ + seconds_of_nudge;
  return std::nullopt;
}

std::optional<parts::Fault> Session::change(const std::string& label, std::span<const build::Edit> edits) {
  if (auto fault = document_->edit(label, edits)) return fault;
  refresh(true);
  return std::nullopt;
}

void Session::nudge(const Handle& handle, double by) {
  drag(handle, handle.nominal + by);
  commit_at_ = now_ + seconds_of_nudge;
}

void Session::commit() {
  commit_at_ = 0.0;
  if (!document_ || !document_->dragging()) return;
  document_->commit();
  refresh(true);
}

void Session::cancel() {
  if (!document_ || !document_->dragging()) return;
  document_->cancel();
  refresh(true);
}

std::optional<std::string> Session::type(const Handle& handle, const std::string& text) {
  const auto read = tolerance::read_length(text);
  if (const auto* wrong = std::get_if<tolerance::Misread>(&read)) return wrong->what + "; " + wrong->right;
  const auto& length = std::get<tolerance::Length>(read);
  if (!(length.nominal >= handle.least && length.nominal <= handle.most))
    return "from " + tolerance::in_words(handle.least) + " to " + tolerance::in_words(handle.most) + " mm";
  const std::array edits = {length.limits_given
                                ? build::Edit{build::Edit::What::set, handle.path,
                                              build::length_text(length.nominal, length.minus, length.plus)}
                                : viewer::drag(handle, length.nominal)};
  if (const auto fault = document_->edit(drag_label(handle, length.nominal), edits)) return fault->text();
  refresh(true);
  return std::nullopt;
}

void Session::act_on_part(Action action) {
  const std::string part = looking.chosen_part(seen()->model);
  switch (action) {
    case Action::hide:
      return looking.hide(part);
    case Action::isolate:
      return looking.isolate(part);
    case Action::glass:
      return looking.glass(part);
    default:
      return looking.colour(part);
  }
}

/// The page that is open, where it is one to be copied; else the answer.
void Session::copy() {
  if (page == Page::steps) {
    copy_ = mounting().text;
    return say("Copied the steps.");
  }
  if (page == Page::shortlist && buying_) {
    copy_ = output::rank_text(*buying_);
    return say("Copied the shortlist.");
  }
  if (!seen()) return;
  copy_ = answer();
  say("Copied the answer.");
}

void Session::act(Action action) {
  if (!enabled(action, standing())) return;
  untouched_.reset();
  if (action != Action::leave) commit();
  const auto toward = [&](render::Side side) {
    looking.side = side;
    fly_to = side;
    if (mode == Mode::holes) mode = Mode::looking;
  };
  const auto toggle = [&](Page wanted) {
    page = page == wanted ? Page::none : wanted;
    if (!notice_fault_) notice_.clear();  // it would lie below
  };
  const double patience = settings.motion ? 1.0 : 0.0;
  switch (action) {
    case Action::open:
      return toggle(Page::open);
    case Action::save:
      if (const auto fault = document_->save()) return say(*fault, true);
      return say("Saved.");
    case Action::undo:
      document_->undo();
      return refresh(true);
    case Action::redo:
      document_->redo();
      return refresh(true);
    case Action::copy_answer:
      return copy();
    case Action::whole:
      return toward(render::Side::whole);
    case Action::front:
      return toward(render::Side::front);
    case Action::side:
      return toward(render::Side::right);
    case Action::top:
      return toward(render::Side::top);
    case Action::cut:
      looking.cut = !looking.cut;
      if (looking.cut) {
        looking.side.reset();
        fly_to_cut = true;
      } else {
        toward(render::Side::whole);
      }
      return;
    case Action::apart:
      looking.apart.go(looking.apart.goal() > 0.5 ? 0.0 : 1.0, now_, patience * seconds_to_part);
      refit = true;
      return;
    case Action::put_in:
      refit = true;
      looking.put_in.jump(settings.motion ? 0.0 : looking.put_in.goal() > 0.5 ? 0.0 : 1.0);
      if (settings.motion) looking.put_in.go(1.0, now_, seconds_to_put_in);
      return;
    case Action::closer:
      zoom *= 1.25;
      return;
    case Action::farther:
      zoom /= 1.25;
      return;
    case Action::hide:
    case Action::isolate:
    case Action::glass:
    case Action::distances:
      return act_on_part(action);
    case Action::show_all:
      return looking.show_all();
    case Action::holes:
      if (mode == Mode::holes) return toward(looking.side.value_or(render::Side::whole));
      try_plan(std::nullopt);
      looking.side.reset();
      mode = Mode::holes;
      return;
    case Action::measure:
      mode = mode == Mode::measure ? Mode::looking : Mode::measure;
      return;
    case Action::grid:
      return toggle(Page::grid);
    case Action::steps:
      return toggle(Page::steps);
    case Action::shortlist:
      return toggle(Page::shortlist);
    case Action::findings:
      return toggle(Page::findings);
    case Action::next_finding:
      return choose_finding((finding().value_or(seen()->seating.findings.size() - 1) + 1) %
                            seen()->seating.findings.size());
    case Action::try_plan: {
      if (mode == Mode::holes) toward(looking.side.value_or(render::Side::whole));
      const std::size_t next = tried_ ? *tried_ + 1 : 0;
      return try_plan(next < search()->plans.size() ? std::optional(next) : std::nullopt);
    }
    case Action::apply_plan:
      return apply_plan(*tried_);
    case Action::customer:
      customer = !customer;
      page = Page::none;
      if (!notice_fault_) notice_.clear();  // not for the customer
      return;
    case Action::help:
      return toggle(Page::help);
    case Action::theme:
      settings.dark = !settings.dark;
      return;
    case Action::motion:
      settings.motion = !settings.motion;
      return say(settings.motion ? "With motion." : "Without motion.");
    case Action::larger:
      settings.scale = next_scale(settings.scale, 1);
      return;
    case Action::smaller:
      settings.scale = next_scale(settings.scale, -1);
      return;
    case Action::usual_size:
      settings.scale = 1.0;
      return;
    case Action::leave:
      if (document_ && document_->dragging()) return cancel();
      if (page == Page::unsaved) return answer_unsaved(Leave::stay);
      if (page != Page::none) {
        page = Page::none;
      } else if (!notice_.empty()) {
        notice_.clear();
      } else if (tried_) {
        try_plan(std::nullopt);
      } else if (mode == Mode::holes) {
        toward(looking.side.value_or(render::Side::whole));
      } else if (mode == Mode::measure) {
        mode = Mode::looking;
      } else if (customer) {
        customer = false;
      } else if (looking.alone) {
        looking.alone.reset();
      } else if (looking.chosen) {
        looking.chosen.reset();
      } else {
        finding_.reset();
      }
      return;
    case Action::quit:
      if (may_close()) closing_ = true;
      return;
    case Action::next_stop:
    case Action::previous_stop:
      return;  // the window's own
  }
}

}  // namespace baywright::viewer
