// One page for a customer: collects what it shows, and writes it.
#include "cli/report.h"

#include "build/edit.h"
#include "cli/commands.h"
#include "cli/session.h"
#include "cli/shortlist.h"
#include "fit/asked_length.h"
#include "fit/seat.h"
#include "output/base64.h"
#include "output/drawing.h"
#include "output/gltf.h"
#include "output/paint.h"
#include "output/svg.h"
#include "plans/plan_steps.h"
#include "render/exchange.h"
#include "render/offscreen.h"
#include "render/picture.h"

#include <algorithm>
#include <ctime>
#include <iostream>
#include <memory>

namespace baywright::cli {

namespace {

using fit::Verdict;
using output::Moment;

// Enough for half of a page's width, twice over for fine screens; three to two, as the model.
constexpr int picture_width = 1050;
constexpr int picture_height = 700;

/// Prints the fault.
void print_fault(const parts::Fault& fault) {
  std::cerr << fault.text() << '\n';
}

/// A build with one drive of it at one of its places.
struct Stage {
  build::Build build;
  fit::Check check;  // of that seating alone
  fit::Seating seating;
  fit::Host host;
  fit::Seated seated;  // stands on `host`; without elements of its own where the drive cannot be put there
  bool seats = false;
  std::size_t place = 0;
};

template <typename Named>
std::size_t index_of(const std::vector<Named>& list, const std::string& name) {
  return static_cast<std::size_t>(
      std::find_if(list.begin(), list.end(), [&](const Named& each) { return each.name == name; }) - list.begin());
}

/// The text must be that of a build which has both. Prints the fault; null then.
std::unique_ptr<Stage> stage_of(const std::string& text, const std::string& file, const std::string& drive,
                                const std::string& place) {
  auto read = build::read_text(text, file);
  if (const auto* fault = std::get_if<parts::Fault>(&read)) {
    print_fault(*fault);
    return nullptr;
  }
  auto& build = std::get<build::Build>(read);
  fit::Options options;
  options.drive = drive;
  options.place = place;
  fit::Check check = fit::check(build, options);
  fit::Seating seating = check.seatings.front();
  const std::size_t drive_at = index_of(build.drives, drive);
  const std::size_t place_at = index_of(build.places, place);
  const bool seats = fit::seats(build.drives[drive_at], seating.questions);
  if (seats) (void)fit::answer_asked(build, drive_at, place_at, options);
  const build::Drive shown = build.drives[drive_at];  // a copy: the build moves below
  fit::Host host = fit::compile(build);
  auto out = std::make_unique<Stage>(Stage{std::move(build), std::move(check), std::move(seating), std::move(host),
                                           fit::Seated{fit::Scene(nullptr)}, seats, place_at});
  out->seated = seats ? fit::seat(out->host, out->build, shown, static_cast<int>(place_at))
                      : fit::Seated{fit::Scene(&out->host.scene)};
  return out;
}

// ---- which drive at which place

/// The best plan that makes it fit, with this drive if there is one.
std::optional<plans::Plan> plan_for(const std::string& text, const std::string& file, const fit::Seating& seating) {
  plans::Options options;
  options.fit.drive = seating.drive;
  options.fit.place = seating.place;
  auto found = plans::search(text, file, options);
  auto* search = std::get_if<plans::Search>(&found);
  if (search == nullptr) return std::nullopt;
  std::optional<plans::Plan> other;
  for (plans::Plan& plan : search->plans) {
    if (plan.after.verdict != Verdict::fits) continue;
    if (plan.drive == seating.drive) return std::move(plan);
    if (!other) other = std::move(plan);
  }
  return other;
}

/// Of the shortlist: the one that is taken, else the first that a plan helps, else the first that was tried.
std::optional<std::size_t> offer_shown(const plans::Buying& buying) {
  if (buying.choice.taken) return buying.choice.taken;
  const auto first = [&](auto&& wanted) -> std::optional<std::size_t> {
    for (const std::size_t i : buying.order)
      if (buying.tried[i] && wanted(i)) return i;
    return std::nullopt;
  };
  if (const auto helped = first(
          [&](std::size_t i) { return buying.tried[i]->plan.has_value() && value::is_a_drive(buying.offers[i]); }))
    return helped;
  return first([](std::size_t) { return true; });
}

// ---- what is seen of it

/// The picture's words in the page's language: one figure, no limits.
void translate(render::Model& model, const fit::Seating& seating, output::Language language) {
  for (render::Measured& gap : model.gaps) {
    const output::GapWords words = output::gap_words(language, seating.findings[gap.finding]);
    gap.figure = words.figure;
    gap.between = words.between;
    gap.limits.clear();
    gap.asked.clear();
  }
}

std::string data_uri(const char* type, const std::string& bytes) {
  return std::string("data:") + type + ";base64," + output::base64(bytes);
}

/// Empty where letters cannot be drawn.
std::string png_of(render::Canvas& canvas, const render::Model& model, render::Look look) {
  look.scale = 1.9;  // of lines and letters: the page shows it at half the size
  canvas.draw(render::frame_of(model, look), picture_width, picture_height);
  render::Image image = canvas.read();
  const output::Group notes = render::notes_on(model, look, image.width, image.height);
  if (image.rgba.empty() || output::paint_over(image.rgba, image.width, image.height, notes)) return {};
  return output::to_png(image.rgba, image.width, image.height);
}

/// One moment of a stage.
struct Sight {
  Moment moment;
  const Stage* stage;
};

/// What there is to see before and after.
std::vector<Sight> sights(const Stage& now, const Stage* changed) {
  const bool fits = now.seating.verdict == Verdict::fits;
  const bool taken = now.build.places[now.place].holds >= 0;
  std::vector<Sight> out;
  if (fits) {
    out.push_back({taken ? Moment::occupied : Moment::empty, &now});
    out.push_back({Moment::seated, &now});
    return out;
  }
  out.push_back({now.seats ? Moment::misfit : Moment::kept_out, &now});
  if (changed != nullptr) out.push_back({Moment::changed, changed});
  return out;
}

bool place_alone(Moment moment) {
  return moment == Moment::empty || moment == Moment::occupied;
}

render::Model model_of(const Sight& sight, output::Language language) {
  const Stage& stage = *sight.stage;
  if (!place_alone(sight.moment)) {
    render::Model out = render::model_of(stage.build, stage.seated, stage.seating);
    translate(out, stage.seating, language);
    return out;
  }
  fit::Seating nothing = stage.seating;  // nothing is measured of a drive that is not there yet
  nothing.findings.clear();
  nothing.deciding.reset();
  return render::model_of(stage.build, fit::Seated{fit::Scene(&stage.host.scene)}, nothing);
}

/// False: they could not be rendered.
bool render_pictures(const std::vector<Sight>& all, output::Language language, output::ShownDrive& out) {
  auto made = render::Offscreen::make();
  if (!std::holds_alternative<render::Offscreen>(made)) return false;
  render::Canvas& canvas = std::get<render::Offscreen>(made).canvas();
  std::vector<render::Model> models;
  for (const Sight& sight : all) models.push_back(model_of(sight, language));
  // Both from where the last is seen best, so that they can be compared; a place of its own is looked at by itself.
  const double aspect = static_cast<double>(picture_width) / picture_height;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const bool same_place = all[i].stage->seating.place == all.back().stage->seating.place;
    const std::size_t by = same_place ? all.size() - 1 : i;
    output::ReportPicture picture{all[i].moment, {}, {}, picture_width, picture_height};
    for (const bool dark : {false, true}) {
      render::Wish wish;
      wish.dark = dark;
      const render::Look look = render::look_at(models[by], all[by].stage->seating, wish, aspect);
      const std::string png = png_of(canvas, models[i], look);
      if (png.empty()) return false;
      (dark ? picture.dark : picture.light) = data_uri("image/png", png);
    }
    out.pictures.push_back(std::move(picture));
  }
  return true;
}

void draw_instead(const std::vector<Sight>& all, output::ShownDrive& out) {
  out.pictures.clear();
  out.drawings = true;
  for (const Sight& sight : all) {
    if (place_alone(sight.moment)) continue;  // there is no drawing of a place alone
    const Stage& stage = *sight.stage;
    const std::string svg = output::to_svg(output::draw_seating(stage.build, stage.seated, stage.seating));
    constexpr int width = 1188;  // of A4, four pixels a millimetre
    constexpr int height = 840;
    out.pictures.push_back({sight.moment, data_uri("image/svg+xml", svg), {}, width, height});
  }
}

/// Prints the fault; none then.
std::optional<output::ShownDrive> shown_of(const std::string& text, const std::string& file,
                                           const fit::Seating& seating, std::optional<plans::Plan> plan,
                                           output::Report& report) {
  const auto now = stage_of(text, file, seating.drive, seating.place);
  if (!now) return std::nullopt;
  std::unique_ptr<Stage> changed;
  if (plan) {
    const auto edited = build::edited(text, plan->edits, file);
    if (const auto* fault = std::get_if<parts::Fault>(&edited)) {
      print_fault(*fault);
      return std::nullopt;
    }
    changed = stage_of(std::get<std::string>(edited), file, plan->drive, plan->place);
    if (!changed) return std::nullopt;
  }
  const Stage& last = changed ? *changed : *now;
  report.build = now->build.title;
  report.method = now->check.method;
  report.clearance = now->check.clearance;
  output::ShownDrive out;
  out.seating = now->seating;
  out.mounting = plans::mounting(last.build, last.seated, last.seating);
  out.shopping = plans::shopping(last.build, last.seated, last.seating);
  out.drills = now->check.drills;
  if (plan) {
    plans::add_work(*plan, out.mounting);
    plans::add_work(*plan, out.shopping);
    out.cuts = std::any_of(plan->changes.begin(), plan->changes.end(),
                           [](const plans::Change& change) { return change.kind == plans::Kind::opening; });
  }
  out.plan = std::move(plan);
  const std::vector<Sight> all = sights(*now, changed.get());
  if (!render_pictures(all, report.language, out)) draw_instead(all, out);
  const render::Model model = render::model_of(last.build, last.seated, last.seating);
  out.glb = output::glb(render::exchange(model, last.seating, last.seating.drive));
  return out;
}

// ---- both ways to ask

/// The exit status, or `all_fit` where the page can be written.
int from_list(const Arguments& arguments, const std::string& text, output::Report& report,
              std::optional<Ranked>& ranked) {
  ranked = rank_shortlist(arguments, arguments.shortlist, arguments.file);
  if (!ranked) return input_at_fault;
  const plans::Buying& buying = ranked->buying;
  print_unused(buying);
  report.buying = &buying;
  report.build = buying.build;
  report.offer = offer_shown(buying);
  if (!report.offer || !buying.tried[*report.offer]) return all_fit;
  const plans::Tried& tried = *buying.tried[*report.offer];
  const auto with = plans::with_offer({text, arguments.file}, ranked->list, *report.offer);
  if (const auto* fault = std::get_if<parts::Fault>(&with)) {
    print_fault(*fault);
    return input_at_fault;
  }
  report.shown = shown_of(std::get<plans::WithOffer>(with).text, arguments.file, tried.seating, tried.plan, report);
  return report.shown ? all_fit : input_at_fault;
}

int from_build(const Arguments& arguments, const std::string& text, output::Report& report) {
  const auto build = read_build(arguments);
  if (!build) return input_at_fault;
  fit::Options options;
  options.drive = arguments.drive;
  options.place = arguments.place;
  const fit::Check check = fit::check(*build, options);
  // Who asks wants to know where a drive goes, not where it does not.
  for (const std::size_t i : fit::best_places(check)) report.asked.push_back(check.seatings[i]);
  const fit::Seating& seating = check.seatings[fit::worst(check)];
  std::optional<plans::Plan> plan;
  if (seating.verdict != Verdict::fits) plan = plan_for(text, arguments.file, seating);
  report.shown = shown_of(text, arguments.file, seating, std::move(plan), report);
  return report.shown ? all_fit : input_at_fault;
}

std::string today(output::Language language) {
  const std::time_t now = std::time(nullptr);
  std::tm day{};
  if (localtime_r(&now, &day) == nullptr) return {};
  return output::date_words(language, day.tm_year + 1900, day.tm_mon + 1, day.tm_mday);
}

/// Whether the plan leaves no limit to look at that nothing checks.
bool holds_as_checked(const plans::Plan& plan) {
  return std::none_of(plan.cautions.begin(), plan.cautions.end(), plans::unchecked);
}

/// What was written, for who wrote it.
std::string summary(const output::Report& report, const std::string& path) {
  std::string out = "wrote " + path;
  if (report.shown) {
    const fit::Seating& seating = report.shown->seating;
    out += ": " + seating.drive + " in " + seating.place + " (" +
           output::word(output::Language::english, seating.verdict) +
           (!report.shown->plan                     ? ")"
            : holds_as_checked(*report.shown->plan) ? "; fits with the plan on the page)"
                                                    : "; may fit with the plan on the page)");
    if (report.shown->drawings) out += "; with drawings, as there is no OpenGL for pictures";
  }
  return out + '\n';
}

}  // namespace

std::string page_fault(const Arguments& arguments) {
  if (arguments.output == "-" || arguments.output.ends_with(".html")) return {};
  return arguments.output + ": the page is written as HTML; name a file that ends in .html";
}

output::Report blank_page(const Arguments& arguments) {
  output::Report out;
  out.language = output::language_called(arguments.language).value_or(output::Language::english);
  out.date = today(out.language);
  return out;
}

int report_command(const Arguments& arguments) {
  if (const std::string fault = page_fault(arguments); !fault.empty()) return at_fault(fault);
  output::Report report = blank_page(arguments);
  if (arguments.shortlist.empty() && arguments.file.ends_with(".csv"))
    return at_fault(arguments.file +
                    ": this looks like a list of drives; give the build file here, and the list behind "
                    "--shortlist");
  const auto text = build::file_text(arguments.file);
  if (const auto* fault = std::get_if<parts::Fault>(&text)) {
    print_fault(*fault);
    return input_at_fault;
  }
  std::optional<Ranked> ranked;
  const int status = arguments.shortlist.empty() ? from_build(arguments, std::get<std::string>(text), report)
                                                 : from_list(arguments, std::get<std::string>(text), report, ranked);
  if (status != all_fit) return status;
  if (!write_whole(arguments.output, output::report_html(report))) return could_not_finish;
  if (arguments.output != "-" && !print(summary(report, arguments.output))) return could_not_finish;
  const bool taken =
      ranked ? ranked->buying.choice.taken.has_value() : report.shown && report.shown->seating.verdict == Verdict::fits;
  return taken || (report.shown && report.shown->plan) ? all_fit : not_all_fit;
}

}  // namespace baywright::cli
