#include "viewer/handles.h"

#include "build/spans.h"
#include "tolerance/reading.h"
#include "tolerance/stack.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>
#include <set>
#include <utility>

namespace baywright::viewer {

using build::GivenLength;
using build::Node;
using build::Path;

namespace {

constexpr double fine_mm = 0.1;    // what a caliper reads
constexpr double coarse_mm = 0.5;  // positions
constexpr double thin_mm = 0.01;   // no size is dragged below, its lower limit counted
constexpr double much_mm = 20.0;   // how far beyond itself a length may be dragged, or to twice itself

Path join(Path path, std::initializer_list<build::Key> more) {
  path.insert(path.end(), more.begin(), more.end());
  return path;
}

template <typename Named>
std::size_t index_of(const std::vector<Named>& list, const std::string& name) {
  return static_cast<std::size_t>(
      std::find_if(list.begin(), list.end(), [&](const Named& each) { return each.name == name; }) - list.begin());
}

class Gathering {
 public:
  Gathering(std::string_view text, const Node& tree, const Shown& shown) : text_(text), tree_(tree), shown_(shown) {}

  std::vector<Handle> handles() && {
    const build::Build& build = shown_.build;
    const std::size_t at = index_of(build.places, shown_.choice.place);
    std::set<std::string_view> met;
    for (const fit::Finding& finding : shown_.seating.findings)
      met.insert(finding.between.begin(), finding.between.end());
    if (at < build.places.size()) met.insert(build.parts[static_cast<std::size_t>(build.places[at].part)].name);
    for (std::size_t i = 0; i < build.parts.size(); ++i)
      if (met.contains(build.parts[i].name)) part(build.parts[i], static_cast<int>(i));
    if (at < build.places.size()) place(build.places[at]);
    const std::size_t chosen = index_of(build.drives, shown_.choice.drive);
    if (chosen < build.drives.size()) drive(build.drives[chosen], static_cast<int>(chosen));
    order();
    return std::move(out_);
  }

 private:
  /// A length at a path; left out where the file has no figure there.
  void add(const tolerance::Dimension& dimension, Path path, double least) {
    const Node* node = build::node_at(tree_, path);
    if (node != nullptr && node->kind == Node::Kind::inline_table) {
      path.emplace_back("length");
      node = build::node_at(tree_, path);
    }
    if (node == nullptr || node->kind != Node::Kind::scalar || node->text == "?") return;
    Handle out;
    out.label = dimension.name;
    out.path = std::move(path);
    out.nominal = dimension.nominal;
    out.minus = dimension.minus;
    out.plus = dimension.plus;
    out.bare = node->text.empty();
    if (!out.bare) {
      const auto read = tolerance::read_length(node->text);
      const auto* length = std::get_if<tolerance::Length>(&read);
      out.limits_written = length != nullptr && length->limits_given;
    }
    // Limits that the file does not state are at most half of a size.
    const double below = out.limits_written && std::isfinite(out.minus) ? out.minus : 0.0;
    out.least = least > 0.0 ? below + least : 0.0;
    out.most = std::max(2.0 * out.nominal, out.nominal + much_mm);
    out.step = fine_mm;
    note_chains(out);
    out_.push_back(std::move(out));
  }

  void add(const GivenLength& given, double least) {
    if (auto path = build::path_at(tree_, text_, given.line, given.column))
      add(given.dimension, std::move(*path), least);
  }
  void add(const std::optional<GivenLength>& given, double least) {
    if (given) add(*given, least);
  }

  /// Figures that place something: no dimensions, no limits.
  void add_position(const std::string& name, const Path& path, std::size_t index, double nominal) {
    const Path full = join(path, {static_cast<int>(index)});
    const Node* node = build::node_at(tree_, full);
    if (node == nullptr || node->kind != Node::Kind::scalar) return;
    Handle out;
    out.label = name;
    out.path = full;
    out.nominal = nominal;
    out.bare = true;
    out.least = nominal - 10.0 * much_mm;
    out.most = nominal + 10.0 * much_mm;
    out.step = coarse_mm;
    out_.push_back(std::move(out));
  }

  void note_chains(Handle& handle) const {
    const auto& findings = shown_.seating.findings;
    for (std::size_t i = 0; i < findings.size(); ++i)
      for (const fit::ChainLink& link : findings[i].chain)
        if (link.dimension.name == handle.label && link.dimension.nominal == handle.nominal) {
          handle.findings.push_back(i);
          handle.band = handle.label;
          break;
        }
  }

  void part(const build::HostPart& part, int index) {
    static constexpr std::array axes = {"x", "y", "z"};
    const Path path = {"part", index};
    const build::Position& at = part.position;
    if (at.kind == build::Position::Kind::against && !at.seated) add(at.by, 0.0);
    for (const char* way : {"under", "above", "beside", "on"})
      if (at.corner)
        for (std::size_t i = 0, axis = 0; axis < 3; ++axis)
          if (static_cast<int>(axis) != at.axis)
            add_position(part.name + " at, " + axes[axis], join(path, {way, "at"}), i, (*at.corner)[i]), ++i;
    if (at.kind == build::Position::Kind::fixed)
      for (std::size_t i = 0; i < 3; ++i)
        add_position(part.name + " at, " + axes[i], join(path, {"at"}), i, at.at[static_cast<int>(i)]);
    const Path solid = join(path, {"solid"});
    const auto& sizes = part.part.dimensions;
    for (const char* form : {"plate", "box"})
      for (std::size_t i = 0; i < sizes.size() && i < 3; ++i)
        add(sizes[i], join(solid, {form, static_cast<int>(i)}), thin_mm);
    named(sizes, join(solid, {"cylinder"}), {"diameter", "height", "bore"});
    named(sizes, join(solid, {"prism"}), {"height"});
  }

  /// Dimensions that stand under these keys, in this order.
  void named(const std::vector<tolerance::Dimension>& sizes, const Path& path,
             std::initializer_list<const char*> keys) {
    std::size_t i = 0;
    for (const char* key : keys) {
      if (i < sizes.size()) add(sizes[i], join(path, {key}), thin_mm);
      ++i;
    }
  }

  void place(const build::Place& place) {
    static constexpr std::array axes = {"x", "y", "z"};
    const auto path = path_of_place(place);
    if (!path) return;
    for (std::size_t i = 0, axis = 0; axis < 3; ++axis)
      if (static_cast<int>(axis) != place.axis)
        add_position(place.name + " at, " + axes[axis], join(*path, {"on", "at"}), i, place.at[i]), ++i;
    add(place.standoff, thin_mm);
    if (place.cover) {
      add(place.cover->above, thin_mm);
      add(place.cover->thickness, thin_mm);
    }
    const auto* bay = std::get_if<build::Bay>(&place.socket);
    if (bay == nullptr) return;
    for (const auto* length : {&bay->width, &bay->height, &bay->depth, &bay->behind, &bay->raised, &bay->plug})
      add(*length, thin_mm);
    if (!bay->fixing) return;
    add(bay->fixing->length, thin_mm);
    add(bay->fixing->sheet, thin_mm);
    add(bay->fixing->diameter, thin_mm);
  }

  [[nodiscard]] std::optional<Path> path_of_place(const build::Place& place) const {
    for (const char* kind : {"slot", "bay", "panel"})
      if (build::node_at(tree_, {kind, place.name}) != nullptr) return Path{kind, place.name};
    return std::nullopt;
  }

  void drive(const build::Drive& drive, int index) {
    const Path path = {"drive", index};
    add(drive.top, thin_mm);
    add(drive.bottom, thin_mm);
    if (drive.worn) add(drive.worn->raised, 0.0);
    std::size_t entry = 0;
    for (const build::Wear& wear : drive.wears) {
      // adapters are listed among what it wears, but kept apart
      if (drive.worn && static_cast<int>(entry) == drive.worn->entry) ++entry;
      if (const auto* pad = std::get_if<build::Pad>(&wear)) {
        add(pad->free_thickness, thin_mm);
        add(pad->length, thin_mm);
      } else {
        named(std::get<build::Heatsink>(wear).part.dimensions,
              join(path, {"wears", static_cast<int>(entry), "heatsink"}), {"length", "width", "height", "base"});
      }
      ++entry;
    }
  }

  /// What decides comes first, as its chain lists it.
  void order() {
    const fit::Seating& seating = shown_.seating;
    if (!seating.deciding) return;
    const auto& chain = seating.findings[*seating.deciding].chain;
    const auto rank = [&](const Handle& handle) {
      std::size_t i = 0;
      while (i < chain.size() &&
             !(chain[i].dimension.name == handle.label && chain[i].dimension.nominal == handle.nominal))
        ++i;
      return i;
    };
    std::stable_sort(out_.begin(), out_.end(), [&](const Handle& a, const Handle& b) { return rank(a) < rank(b); });
  }

  std::string_view text_;
  const Node& tree_;
  const Shown& shown_;
  std::vector<Handle> out_;
};

double within(const Handle& handle, double value) {
  const double rounded = std::round(value * 1e3) / 1e3;
  if (!std::isfinite(rounded)) return handle.nominal;
  return std::min(std::max(rounded, handle.least), handle.most);
}

/// 9.6 of "9.6": the figure alone.
std::string figure(double mm) {
  const std::string quoted = build::length_text(mm, 0.0, 0.0);
  return quoted.substr(1, quoted.size() - 2);
}

}  // namespace

std::vector<Handle> handles(std::string_view text, const Shown& shown) {
  const auto tree = build::spans(text);
  if (!tree) return {};
  return Gathering(text, *tree, shown).handles();
}

build::Edit drag(const Handle& handle, double value) {
  const double mm = within(handle, value);
  std::string written = build::length_text(mm, 0.0, 0.0);
  if (handle.bare)
    written = figure(mm);
  else if (handle.limits_written && handle.minus == 0.0 && handle.plus == 0.0)
    written = '"' + figure(mm) + " ±0\"";
  else if (handle.limits_written)
    written = build::length_text(mm, handle.minus, handle.plus);
  return {build::Edit::What::set, handle.path, std::move(written)};
}

std::string drag_label(const Handle& handle, double value) {
  return handle.label + ' ' + figure(handle.nominal) + " to " + figure(within(handle, value));
}

}  // namespace baywright::viewer
