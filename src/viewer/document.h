#pragma once
// The open build file: its text, the build that it says, what was done to it, and its copy on disk. No toolkit.
#include "build/build.h"
#include "build/edit.h"

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

namespace baywright::viewer {

/// What became of the file on disk since it was read or saved.
enum class Outside {
  same,
  reloaded,  // it changed, nothing was unsaved here: its text is the document's now, as a step that can be undone
  conflict,  // it changed, and so did the document: nothing was touched; `reload` or `save_over` decide
  gone,      // it is not there any more, or cannot be read
};

/// What an earlier run left unsaved.
struct Recovery {
  std::string text;
  bool older = false;  // the build file was written after it
};

class Document {
 public:
  /// Faults: a file that cannot be read, text that is no build.
  [[nodiscard]] static std::variant<Document, parts::Fault> open(const std::filesystem::path& file);

  [[nodiscard]] const std::filesystem::path& path() const { return path_; }
  [[nodiscard]] const std::string& text() const { return text_; }
  /// Of the present text, or of the last one that was a build. Never null; never changed after it was handed out.
  [[nodiscard]] const std::shared_ptr<const build::Build>& build() const { return build_; }
  /// What is wrong with the present text, where it was changed outside: `build` is older then.
  [[nodiscard]] const std::optional<parts::Fault>& fault() const { return fault_; }
  /// Another one for every change of the text.
  [[nodiscard]] std::uint64_t version() const { return version_; }

  /// One step that can be undone. Refused, with nothing changed, where the edits or the text that they make are at
  /// fault. `label`: "tray distance 9.1 to 9.6". Ends a drag. Edits that change nothing are no step.
  std::optional<parts::Fault> edit(const std::string& label, std::span<const build::Edit> edits);

  /// Another text in place of this one, as one step. Refused, with nothing changed, where it is no build.
  std::optional<parts::Fault> replace(const std::string& label, std::string text);

  /// A drag: each call makes its edits in the text as it was when the drag began, and all of them are one step, with
  /// the last label. Refused as in `edit`: then the last good value stays. The first call begins it.
  std::optional<parts::Fault> drag(const std::string& label, std::span<const build::Edit> edits);
  void commit();  // ends a drag; a drag that came back to where it began leaves no step
  void cancel();  // takes a drag back
  [[nodiscard]] bool dragging() const { return before_drag_.has_value(); }

  void undo();  // ends a drag first, as does `redo`
  void redo();
  [[nodiscard]] const std::string* undoes() const;  // its label; null: there is nothing to undo
  [[nodiscard]] const std::string* redoes() const;

  [[nodiscard]] bool unsaved() const { return text_ != disk_; }
  /// What went wrong, in words; none: saved. Refuses to write over a file that changed outside.
  std::optional<std::string> save();
  std::optional<std::string> save_over();  // whatever is there
  std::optional<std::string> save_as(const std::filesystem::path& file);

  /// Looks at the file on disk; cheap where its time and size are as they were.
  Outside look();
  /// Takes the file's text, as a step that can be undone. Faults: it cannot be read.
  std::optional<parts::Fault> reload();

  /// Where the copy of what is unsaved is kept: beside the file.
  [[nodiscard]] std::filesystem::path recovery_file() const;
  /// Writes it where something new is unsaved, removes it where nothing is. Call every few seconds. What went wrong, in
  /// words.
  std::optional<std::string> keep_recovery();
  /// What an earlier run left, if it says something else than the file.
  [[nodiscard]] const std::optional<Recovery>& recovery() const { return recovery_; }
  /// Takes it as a step that can be undone, or throws it away.
  void recover();
  void forget_recovery();
  /// The user closes and wants nothing kept.
  void discard();

 private:
  struct Step {
    std::string label;
    std::string before;
    std::string after;
  };
  struct Stamp {  // of the file on disk, to see quickly whether somebody wrote it
    std::filesystem::file_time_type time{};
    std::uintmax_t size = 0;
    bool operator==(const Stamp&) const = default;
  };

  Document() = default;
  [[nodiscard]] std::optional<Stamp> stamp() const;
  void show(std::string text);  // the text with its build or fault
  void push(const std::string& label, std::string before, std::string after);
  std::optional<std::string> write(const std::filesystem::path& file);
  /// What the edits make of `text`, with its build.
  struct Made {
    std::string text;
    std::shared_ptr<const build::Build> build;
  };
  [[nodiscard]] std::variant<Made, parts::Fault> made(const std::string& text,
                                                      std::span<const build::Edit> edits) const;
  [[nodiscard]] std::variant<Made, parts::Fault> made(std::string text) const;
  void take(Made made);

  std::filesystem::path path_;
  std::string text_;
  std::shared_ptr<const build::Build> build_;
  std::optional<parts::Fault> fault_;
  std::uint64_t version_ = 1;
  std::vector<Step> done_;
  std::vector<Step> undone_;  // the last one is redone first
  std::optional<std::string> before_drag_;
  std::string drag_label_;
  std::string disk_;  // the text as it is on disk, as far as is known
  std::optional<Stamp> stamp_;
  std::optional<Recovery> recovery_;
  std::uint64_t kept_ = 0;  // version in the recovery file; 0: there is none of this run
};

}  // namespace baywright::viewer
