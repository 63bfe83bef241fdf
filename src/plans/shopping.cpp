#include "plans/shopping.h"

#include "fit/part_screws.h"
#include "plans/washers.h"
#include "standards/fasteners.h"
#include "standards/m2.h"
#include "standards/row.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <numeric>
#include <optional>
#include <span>

namespace baywright::plans {

namespace {

namespace fasteners = standards::fasteners;
namespace m2 = standards::m2;
using build::Bay;
using fasteners::Shape;
using fit::Code;
using fit::Finding;
using fit::Kind;
using fit::Verdict;
using tolerance::Dimension;
using tolerance::Known;

constexpr const char* practice = "common practice, no source";

/// "8", "2.5", "4.76": as shops write it.
std::string plain(double mm) {
  std::array<char, 32> text{};
  const auto [end, fault] = std::to_chars(text.data(), text.data() + text.size(), std::round(mm * 100.0) / 100.0);
  return {text.data(), end};
}

bool inch(std::string_view thread) {
  return !thread.starts_with('M');
}

/// "8"; of inch threads "3/16 in", where it is one of 32nds.
std::string length_of(std::string_view thread, double mm) {
  if (!inch(thread)) return plain(mm);
  const double parts = mm / 25.4 * 32.0;
  const long whole = std::lround(parts);
  if (whole <= 0 || !(std::abs(parts - static_cast<double>(whole)) < 1e-3)) return plain(mm) + " mm";
  const long by = std::gcd(whole, 32L);
  return std::to_string(whole / by) + (by < 32 ? '/' + std::to_string(32 / by) : std::string()) + " in";
}

/// The length that is sold within the limits of what was measured, the nearest one; else that itself.
struct Sold {
  double mm = 0.0;
  bool known = false;
};
Sold sold(std::span<const double> lengths, const Dimension& measured) {
  Sold best{measured.nominal, false};
  for (const double length : lengths) {
    if (!(length >= measured.low() - 1e-9 && length <= measured.high() + 1e-9)) continue;
    if (!best.known || std::abs(length - measured.nominal) < std::abs(best.mm - measured.nominal))
      best = {length, true};
  }
  return best;
}

/// The next shorter and the next longer one, those that there are.
std::vector<double> near_to(std::span<const double> lengths, double mm) {
  std::vector<double> out;
  const auto longer = std::upper_bound(lengths.begin(), lengths.end(), mm);
  if (longer != lengths.begin()) out.push_back(*(longer - 1));
  if (longer != lengths.end()) out.push_back(*longer);
  return out;
}

Size exactly(Use use, const char* name, double mm) {
  return {use, {name, mm, 0.0, 0.0, {}, Known::derived}};
}

/// A screw of another length or thread would do: what is wrong with these, and nothing else.
bool only_screws_wrong(const fit::Seating& seating) {
  if (seating.verdict != Verdict::does_not_fit) return false;
  for (const fit::Question* question :
       {&seating.questions.form_factor, &seating.questions.interface, &seating.questions.bus})
    if (question->answer != fit::Answer::yes) return false;
  bool any = false;
  for (const Finding& finding : seating.findings) {
    if (finding.verdict == Verdict::undecided) return false;
    if (finding.verdict != Verdict::does_not_fit) continue;
    if (finding.kind != Kind::screw) return false;
    if (finding.why.code != Code::thread_differs && !(finding.why.figure("buy") > 0.0)) return false;
    any = true;
  }
  return any;
}

const fasteners::Washer* washer(std::string_view standard, std::string_view thread) {
  const auto rows = fasteners::washers();
  const auto found = std::find_if(rows.begin(), rows.end(),
                                  [&](const auto& w) { return w.standard == standard && w.thread == thread; });
  return found == rows.end() ? nullptr : &*found;
}

class List {
 public:
  List(const build::Build& build, const fit::Seated& seated, const fit::Seating& seating)
      : build_(build), seating_(seating), seated_(seated), count_(static_cast<int>(seated.screws.size())) {
    drive_ = &*std::find_if(build.drives.begin(), build.drives.end(),
                            [&](const build::Drive& each) { return each.name == seating.drive; });
    place_ = &*std::find_if(build.places.begin(), build.places.end(),
                            [&](const build::Place& each) { return each.name == seating.place; });
    bay_ = std::get_if<Bay>(&place_->socket);
  }

  [[nodiscard]] std::vector<Item> run() {
    if (count_ > 0) {
      if (bay_ != nullptr)
        for_bay();
      else
        for_card();
    }
    for (const build::HostPart& part : build_.parts)
      if (part.spacers) raised(part);
    wears();
    add({.kind = ItemKind::drive,
         .name = drive_->name,
         .designation = drive_->title,
         .in_build = true,
         .source = "the build",
         .known = Known::measured});
    return std::move(out_);
  }

 private:
  void add(Item item) { out_.push_back(std::move(item)); }

  [[nodiscard]] const Finding* screw_finding(Code code) const {
    const auto found = std::find_if(seating_.findings.begin(), seating_.findings.end(), [code](const Finding& finding) {
      return finding.kind == Kind::screw && finding.why.code == code;
    });
    return found == seating_.findings.end() ? nullptr : &*found;
  }

  // ---- bays and panels

  void for_bay() {
    const build::Fixing& fixing = *bay_->fixing;
    thread_ = fixing.thread;
    if (const Finding* differs = screw_finding(Code::thread_differs)) thread_ = differs->why.word("drive");
    if (bay_->standoffs) {
      standoffs();
      if (fixing.nut) {
        nuts();
        return;
      }
    }
    Item item = screw();
    std::optional<Item> under = washers(item);
    add(std::move(item));
    if (under) add(std::move(*under));
    if (bay_->spacers) spacers();
  }

  /// The screws, as long as the build says or, where that is wrong, as the finding says.
  [[nodiscard]] Item screw() {
    const build::Fixing& fixing = *bay_->fixing;
    Item item = bare_screw();
    if (thread_ != fixing.thread) item.remarks.push_back(Remark::wrong_thread);
    std::optional<Dimension> length;
    if (fixing.length && thread_ == fixing.thread && !bay_->standoffs) {
      length = fixing.length->dimension;
      const Sold found = sold(fasteners::screw_lengths(thread_), *length);
      if (!found.known) {
        item.remarks.push_back(Remark::length_not_sold);
        item.sold_near = near_to(fasteners::screw_lengths(thread_), found.mm);
      }
      length->nominal = found.mm;
      for (const Code code : {Code::screw_long, Code::screw_short}) {
        const Finding* said = screw_finding(code);
        if (said == nullptr || said->verdict == Verdict::fits || !(said->why.figure("buy") > 0.0)) continue;
        if (std::abs(said->why.figure("buy") - length->nominal) < 0.05) continue;  // it is the sheet that is not known
        item.remarks = {Remark::wrong_length};
        item.named = fixing.length->dimension.nominal;
        length->nominal = said->why.figure("buy");
        longer_ = length->nominal - item.named;
        break;
      }
    }
    if (length && !bay_->standoffs) over_washers(item, *length);
    if (bay_->standoffs && fixing.outside && thread_ == fixing.thread)
      length = exactly(Use::length, "screw length", fixing.outside->length).mm;
    if (!length) {
      item.remarks.push_back(Remark::length_open);
      item.sizes.insert(item.sizes.begin(), {Use::through, fixing.sheet.dimension});
      return item;
    }
    item.designation += " x " + length_of(thread_, length->nominal);
    if (const Finding* said = screw_finding(Code::screw_long); said != nullptr && !bay_->standoffs)
      item.sizes.insert(item.sizes.begin(), exactly(Use::into, "into the drive", said->why.figure("in") + longer_));
    item.sizes.insert(item.sizes.begin(), exactly(Use::length, "screw length", length->nominal));
    for (Exchange& other : item.exchanges)
      if (other.condition == Condition::other_driver || other.condition == Condition::taller_head)
        other.designation += " x " + length_of(thread_, length->nominal);
    return item;
  }

  /// Longer where it has to be to hold with a washer under its head.
  void over_washers(Item& item, Dimension& length) {
    const UnderHeads heads = washers_under_heads(*bay_, thread_, seating_, longer_);
    if (heads.washers != Washers::wanted || !(heads.longer > longer_)) return;
    if (item.remarks != std::vector{Remark::wrong_length}) item.remarks = {Remark::over_washer};
    item.named = bay_->fixing->length->dimension.nominal;
    length.nominal = item.named + heads.longer;
    longer_ = heads.longer;
  }

  /// A pan head screw of the thread, without its length.
  [[nodiscard]] Item bare_screw() const {
    Item item{.kind = ItemKind::screw, .count = count_};
    const fasteners::Head* head = fasteners::head(Shape::pan, thread_);
    if (head == nullptr) {
      item.designation = thread_ + (inch(thread_) ? " UNC pan head" : " pan head");
      item.source = std::string(practice) + "; no head of this thread is in the tables";
    } else {
      item.designation = "ISO 7045 " + thread_;
      item.sizes = {{Use::head_across, head->diameter}, {Use::head_height, head->height}};
      item.source = head->height.source;
      item.known = head->height.known;
      if (thread_ != "M1.6")  // of which there is no ISO 14583
        item.exchanges.push_back({"ISO 14583 " + thread_, Condition::other_driver, 0.0,
                                  "ISO 14583 as the FastenersWB data give it", Known::secondary});
      const fasteners::Head* cap = fasteners::head(Shape::socket_cap, thread_);
      if (cap != nullptr && (bay_ == nullptr || cap->diameter.low() > bay_->fixing->diameter.dimension.high()))
        item.exchanges.push_back(
            {"ISO 4762 " + thread_, Condition::taller_head, cap->height.high(), cap->height.source, cap->height.known});
    }
    // What lies in the same box and looks alike.
    for (const auto& [one, other] : {std::pair("M3", "6-32"), std::pair("6-32", "M3")})
      if (thread_ == one)
        item.exchanges.push_back(
            {other + std::string(inch(other) ? " UNC" : ""), Condition::other_thread,
             std::abs(fasteners::thread(one)->major.nominal - fasteners::thread(other)->major.nominal),
             "the diameters and pitches of the two threads", Known::derived});
    return item;
  }

  /// Where washers.h wants them.
  [[nodiscard]] std::optional<Item> washers(Item& screw) const {
    const Dimension& hole = bay_->fixing->diameter.dimension;
    const Washers wanted = washers_under_heads(*bay_, thread_, seating_, longer_).washers;
    if (wanted == Washers::would_not_hold) screw.remarks.push_back(Remark::no_washer);
    if (wanted != Washers::wanted) return std::nullopt;
    Item item = washers_of(count_, thread_);
    item.remarks.push_back(Remark::wide_holes);
    const fasteners::Washer* smaller = washer("ISO 7092", thread_);
    if (smaller != nullptr && smaller->outside.low() > hole.high())
      item.exchanges.push_back({thread_ + " small plain washer ISO 7092", Condition::smaller_washer,
                                smaller->outside.low(), smaller->outside.source, smaller->outside.known});
    return item;
  }

  void spacers() {
    Item item = spacer(bay_->raised->dimension, thread_);
    item.count = count_;
    if (const Dimension& hole = bay_->fixing->diameter.dimension;
        !thread_.empty() && wants_wide_spacer(thread_, hole.nominal)) {
      item.remarks.push_back(Remark::wide_spacer);
      item.outside = seat_asked(hole.high());
    }
    add(std::move(item));
  }

  /// Without a thread its bore is open.
  [[nodiscard]] static Item spacer(const Dimension& raised, const std::string& thread) {
    const Sold found = sold(fasteners::spacer_lengths(), raised);
    std::string length = plain(found.mm);
    if (length.find('.') == std::string::npos) length += ".0";
    Item item{.kind = ItemKind::spacer,
              .designation = "spacer round, " + length + " long",
              .sizes = {{Use::length, raised}},
              .source = std::string("lengths that are sold: ") + practice,
              .known = Known::practice};
    if (!thread.empty()) {
      const Dimension& bore = fasteners::thread(thread)->hole.fine;
      item.designation += ", bore " + plain(bore.nominal);
      item.sizes.push_back({Use::bore, bore});
      item.source += "; bore: " + bore.source;
    }
    if (!found.known) {
      item.remarks.push_back(Remark::length_not_sold);
      item.sold_near = near_to(fasteners::spacer_lengths(), found.mm);
    }
    const Dimension& limit = fasteners::spacer_length_limit();
    if (raised.minus < limit.minus || raised.plus < limit.plus) item.remarks.push_back(Remark::measure_length);
    return item;
  }

  // ---- parts of the machine that stand over spacers

  /// So many of the washers that washers.h takes for that thread; without one they are known by their thickness only.
  [[nodiscard]] static Item washers_of(int count, const std::string& thread) {
    const fasteners::Washer* row = washer("ISO 7089", thread.empty() ? "M3" : thread);
    Item item{.kind = ItemKind::washer,
              .designation = thread + " plain washer ISO 7089",
              .count = count,
              .sizes = {{Use::bore, row->bore}, {Use::outside, row->outside}, {Use::thickness, row->thickness}},
              .source = row->thickness.source,
              .known = row->thickness.known};
    if (thread.empty()) {
      item.designation = "plain washer for its screws, " + plain(row->thickness.nominal) + " thick";
      item.sizes = {{Use::thickness, row->thickness}};
    }
    return item;
  }

  /// How many screws such a part has no file says: four is common practice, no source.
  void raised(const build::HostPart& part) {
    constexpr int usual_screws = 4;
    const Dimension& length = part.spacers->dimension;
    const std::string thread = part.screws ? part.screws->thread : std::string();
    const int washers = washers_between(length, thread);
    Item under = washers > 0 ? washers_of(washers, thread) : spacer(length, thread);
    under.count *= usual_screws;
    under.part = part.name;
    under.remarks.insert(under.remarks.begin(), Remark::at_each_screw);
    add(std::move(under));
    if (!part.screws) return;
    Item screw{.kind = ItemKind::screw,
               .designation = "ISO 7045 " + thread + " x " + length_of(thread, part.screws->length),
               .count = usual_screws,
               .sizes = {exactly(Use::length, "screw length", part.screws->length)},
               .remarks = {Remark::at_each_screw, Remark::longer_screws},
               .part = part.name,
               .source = std::string("a pan head: ") + practice};
    if (const double least = fit::longer_screw(part); least > 0.0) {
      screw.designation =
          "ISO 7045 " + thread + ", at least " + length_of(thread, std::ceil(least * 100.0 - 1e-6) / 100.0) + " long";
      screw.sizes.clear();  // how long at most its thread says, and no file does
      screw.remarks = {Remark::at_each_screw, Remark::short_screws};
      screw.named = part.screws->length;
    }
    add(std::move(screw));
  }

  void standoffs() {
    const build::Fixing& fixing = *bay_->fixing;
    const Dimension& height = bay_->raised->dimension;
    Item item{.kind = ItemKind::standoff,
              .count = count_,
              .sizes = {{Use::length, height}},
              .source = std::string("sizes that are sold: ") + practice};
    const fasteners::Standoff* row = nullptr;
    for (const fasteners::Standoff& each : fasteners::standoffs()) {
      if (each.thread != thread_ || !each.stud || !sold(each.lengths, height).known) continue;
      if (fixing.length && !sold(std::array{each.stud_length}, fixing.length->dimension).known) continue;
      if (row == nullptr) row = &each;
    }
    const double length = row != nullptr ? sold(row->lengths, height).mm : height.nominal;
    item.designation = "hex stand-off " + thread_ + (inch(thread_) ? " UNC, " : ", ") + plain(length) + " long";
    if (fixing.length) {
      item.designation += ", stud " + plain(fixing.length->dimension.nominal);
      item.sizes.push_back({Use::stud, fixing.length->dimension});
    }
    if (fixing.nut) item.designation += ", studs at both ends";
    if (row == nullptr)
      item.remarks.push_back(Remark::length_not_sold);
    else
      item.sizes.push_back(exactly(Use::across_flats, "across flats", row->across_flats));
    const Dimension& limit = fasteners::standoff_length_limit();
    if (height.minus < limit.minus || height.plus < limit.plus) item.remarks.push_back(Remark::measure_length);
    add(std::move(item));
  }

  void nuts() {
    Item item{.kind = ItemKind::nut, .count = count_};
    const auto rows = fasteners::nuts();
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const auto& nut) { return nut.thread == thread_; });
    if (row != rows.end()) {
      item.designation = thread_ + " hexagon nut ISO 4032";
      item.sizes = {{Use::across_flats, row->across_flats}, {Use::thickness, row->height}};
      item.source = row->height.source;
      item.known = row->height.known;
    } else {
      item.designation = thread_ + (inch(thread_) ? " UNC hexagon nut" : " hexagon nut");
      item.source = std::string(practice) + "; no nut of this thread is in the tables";
    }
    add(std::move(item));
  }

  // ---- cards

  void for_card() {
    const fit::SeatedScrew& seated = seated_.screws.front();
    thread_ = seated.thread;
    const std::string size = thread_ + " x " + plain(seated.length);
    const bool card = std::holds_alternative<build::M2Socket>(place_->socket);
    Item item{.count = count_, .sizes = {exactly(Use::length, "screw length", seated.length)}};
    item.remarks = {Remark::with_the_board};
    if (!card) {
      Item bare = bare_screw();
      bare.designation = "ISO 7045 " + size;
      for (Exchange& other : bare.exchanges) other.designation += " x " + plain(seated.length);
      bare.sizes.insert(bare.sizes.begin(), item.sizes.front());
      bare.remarks = item.remarks;
      bare.source += std::string("; that it is ") + size + ": " + practice;
      bare.known = Known::practice;
      add(std::move(bare));
      return;
    }
    const Dimension& high = m2::screw_head_height();
    item.designation = size + " with a low head, for M.2 cards";
    item.sizes.push_back({Use::head_across, m2::screw_head_diameter()});
    item.sizes.push_back({Use::head_height, high});
    item.source = std::string("thread and length: ") + practice + "; head: " + high.source;
    if (const auto* pan = fasteners::head(Shape::pan, thread_); pan != nullptr && pan->height.low() > high.high())
      item.exchanges.push_back({"ISO 7045 " + size, Condition::head_too_high, pan->height.high() - high.high(),
                                pan->height.source + "; " + high.source, Known::derived});
    add(std::move(item));
    standoff_of_card();
  }

  /// Where none is soldered in at the card's length.
  void standoff_of_card() {
    for (const int size : place_->soldered)
      if (build::length_code(size) == static_cast<int>(seated_.length)) return;
    const m2::SocketClass* height_class = std::get<build::M2Socket>(place_->socket).height_class;
    const Dimension& height = place_->standoff ? place_->standoff->dimension : height_class->standoff;
    add({.kind = ItemKind::standoff,
         .designation = "M.2 stand-off " + thread_ + ", " + plain(height.nominal) + " high",
         .count = count_,
         .in_build = true,
         .sizes = {{Use::length, height}, {Use::outside, m2::standoff_flange()}},
         .remarks = {Remark::stands_there},
         .source = std::string("thread: ") + practice +
                   "; height: " + (height.source.empty() ? std::string("the build") : height.source),
         .known = Known::practice});
  }

  // ---- what the drive wears

  void wears() {
    if (drive_->worn)
      add({.kind = ItemKind::adapter,
           .name = drive_->worn->name,
           .designation = std::string(drive_->worn->adapter->title),
           .in_build = true,
           .remarks = {Remark::own_screws},
           .source = std::string("sizes: ") + practice,
           .known = Known::practice});
    for (const build::Wear& wear : drive_->wears) {
      if (const auto* pad = std::get_if<build::Pad>(&wear)) {
        Item item{
            .kind = ItemKind::pad,
            .name = pad->name,
            .designation =
                "thermal pad " + plain(pad->free_thickness.dimension.nominal) + " thick" +
                (pad->compress > 0.0 ? ", soft enough for " + plain(100.0 * pad->compress) + " % of compression" : ""),
            .sizes = {{Use::thickness, pad->free_thickness.dimension}},
            .exchanges = {{"thermal paste", Condition::fills_no_gap, 0.0, practice, Known::practice}},
            .source = pad->free_thickness.dimension.source,
            .known = pad->free_thickness.dimension.known};
        if (pad->length) item.sizes.push_back({Use::length, pad->length->dimension});
        if (item.source.empty()) item.source = "the build";
        add(std::move(item));
      } else {
        const auto& sink = std::get<build::Heatsink>(wear);
        add({.kind = ItemKind::heatsink,
             .name = sink.name,
             .designation = sink.part.title.empty() ? "heatsink" : sink.part.title,
             .in_build = true,
             .source = "the build",
             .known = Known::measured});
      }
    }
  }

  const build::Build& build_;
  const fit::Seating& seating_;
  const fit::Seated& seated_;
  const build::Drive* drive_ = nullptr;
  const build::Place* place_ = nullptr;
  const Bay* bay_ = nullptr;  // null: not a bay
  int count_ = 0;             // of screws
  std::string thread_;
  double longer_ = 0.0;  // mm: the screw to buy, less the build's
  std::vector<Item> out_;
};

}  // namespace

std::string_view word(ItemKind kind) {
  static constexpr std::array<std::string_view, 9> words = {"screw", "washer",   "spacer",  "stand-off", "nut",
                                                            "pad",   "heatsink", "adapter", "drive"};
  return words[static_cast<std::size_t>(kind)];
}

std::string_view word(Use use) {
  static constexpr std::array<std::string_view, 10> words = {
      "length",      "into the drive", "through sheet", "stud",      "head across",
      "head height", "bore",           "outside",       "thickness", "across flats"};
  return words[static_cast<std::size_t>(use)];
}

bool never(Condition condition) {
  return condition == Condition::other_thread || condition == Condition::head_too_high ||
         condition == Condition::fills_no_gap;
}

std::vector<Item> shopping(const build::Build& build, const fit::Seated& seated, const fit::Seating& seating) {
  const bool mounts = seating.verdict == Verdict::fits || seating.verdict == Verdict::marginal;
  if (!mounts && !only_screws_wrong(seating)) return {};
  return List(build, seated, seating).run();
}

}  // namespace baywright::plans
