#pragma once
// Inside the build room: what the readers of parts, places and drives share.
#include "build/build.h"
#include "parts/document.h"

#include <filesystem>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace baywright::build {

/// The least length of something that must have one, mm.
inline constexpr double some = 1e-6;

/// A build on its way in. Every function throws parts::Stop on the first fault.
struct Reader {
  std::vector<std::filesystem::path> folders;  // where part files are looked for
  parts::Question question;
  parts::Measuring measuring;
  Build build;
  std::set<std::string> names;  // parts, places and drives share one list, since findings name them side by side

  void note_exact(const tolerance::Dimension& dimension);
  std::string fresh_name(parts::Fields& fields);

  /// A measured length, noted where it was taken as exact.
  [[nodiscard]] GivenLength measured(parts::Fields& fields, std::string_view key, const std::string& name,
                                     double least = some);
  [[nodiscard]] std::optional<GivenLength> maybe_measured(parts::Fields& fields, std::string_view key,
                                                          const std::string& name, double least = some);
};

/// The limits of `measured_with`, which may be missing.
[[nodiscard]] parts::Measuring measuring_of(parts::Fields& document);

void read_parts(Reader& reader, parts::Fields& document);
void read_places(Reader& reader, parts::Fields& document);
void read_drives(Reader& reader, parts::Fields& document);
void read_tools(Reader& reader, parts::Fields& document);

/// One drive with all its keys; its name is entered. `held`: it sits there already, and its bus need not be known.
[[nodiscard]] Drive drive_of(Reader& reader, parts::Fields& fields, bool held);
/// What a drive wears: pads, heatsinks, an adapter. `drive` is read as far as that.
void read_wears(Reader& reader, parts::Fields& fields, Drive& drive);
/// `takes`, `inside`, `fixing` and all else that a bay or panel has; `place` has its name and carrier.
void read_bay(Reader& reader, parts::Fields& fields, Place& place, bool panel);

/// "M3 x 6" under `key`, which must be there: a thread and a length under the head, mm.
[[nodiscard]] Screw screw_of(parts::Fields& fields, std::string_view key);
/// The same of one text, which stands under `key`.
[[nodiscard]] Screw screw_from(const parts::Fields& fields, std::string_view key, const std::string& text);
/// [shelf]: what plans may use.
void read_shelf(Reader& reader, parts::Fields& document);

/// The index of the part called `name`; refuses others at `key`, naming the nearest.
[[nodiscard]] int index_of(const std::map<std::string, int>& by_name, const std::string& name,
                           const parts::Fields& fields, std::string_view key);
/// `face = "top"` or "back" (default top). True for back.
[[nodiscard]] bool read_face(parts::Fields& held, const std::string& what);
/// The links under `key`: a text or a list of them, at least one.
[[nodiscard]] std::vector<standards::links::Link> links_of(parts::Fields& fields, std::string_view key = "bus");
/// One of `known`; refuses others.
[[nodiscard]] std::string one_of(parts::Fields& fields, std::string_view key, const std::vector<std::string>& known,
                                 const std::string& otherwise);
/// `bracket = "full"`, "low" or "none" (default full).
[[nodiscard]] Bracket bracket_of(parts::Fields& fields);
/// `plug`, which must be there.
[[nodiscard]] standards::connectors::Plug plug_of(parts::Fields& fields);
/// A point on the face that carries the place must lie on that part.
void check_on_face(const Reader& reader, parts::Fields& fields, std::string_view key, const Place& place, double across,
                   double along, const std::string& what);

}  // namespace baywright::build
