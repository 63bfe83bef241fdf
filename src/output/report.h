#pragma once
// One page for a customer: the answer in two sentences, pictures, the model to turn, the drives side by side, what has
// to be changed and bought, the steps, and behind them the figures. Self-contained: no network, no file beside it.
#include "output/report_words.h"
#include "plans/buying.h"

#include <optional>
#include <string>
#include <vector>

namespace baywright::output {

/// What a picture shows.
enum class Moment {
  empty,     // the place before, with nothing in it
  occupied,  // the place before, with what sits there
  misfit,    // the drive as it is, which does not fit
  kept_out,  // the place alone, since the drive cannot be put there
  seated,    // the drive in its place
  changed,   // the same, with the plan made
};

struct ReportPicture {
  Moment moment = Moment::seated;
  std::string light;  // data URIs; `dark` is empty where there is one picture for both
  std::string dark;
  int width = 0;  // pixels
  int height = 0;
};

/// The drive that the page is about, at its place.
struct ShownDrive {
  fit::Seating seating;                 // as it is
  std::optional<plans::Plan> plan;      // that makes it fit; none: it fits, or none was found
  plans::Mounting mounting;             // with the plan made, where there is one
  std::vector<plans::Item> shopping;    // likewise
  std::vector<ReportPicture> pictures;  // one, or before and after
  bool drawings = false;                // the pictures are drawings with English words
  std::string glb;                      // the model (output/gltf.h); empty: none
  bool drills = false;                  // holes are drilled for it
  bool cuts = false;                    // metal is filed or cut for it
};

struct Report {
  Language language = Language::english;
  std::string date;                       // as the language writes it
  std::string build;                      // title of the machine; empty: none was given
  const plans::Buying* buying = nullptr;  // null: there is no shortlist
  std::optional<std::size_t> offer;       // of the shortlist: the one shown
  std::optional<ShownDrive> shown;        // none: the page is the list alone
  std::vector<fit::Seating> asked;        // without a shortlist: each drive at the place that suits it best
  tolerance::Method method = tolerance::Method::worst;
  double clearance = 0.0;  // mm, asked for
};

/// What a picture says at the gap that decides: one figure, and between what.
struct GapWords {
  std::string figure;
  std::string between;
};
[[nodiscard]] GapWords gap_words(Language language, const fit::Finding& finding);

[[nodiscard]] std::string report_html(const Report& report);

}  // namespace baywright::output
