#include "viewer/document.h"

#include "output/file.h"

#include <system_error>
#include <utility>

namespace baywright::viewer {

namespace fs = std::filesystem;
using parts::Fault;

namespace {

/// The file itself where the path is a link to it: it is what gets replaced.
fs::path target_of(const fs::path& path) {
  std::error_code failed;
  fs::path target = fs::weakly_canonical(path, failed);
  return failed ? path : target;
}

void remove_quietly(const fs::path& file) {
  std::error_code failed;
  fs::remove(file, failed);
}

}  // namespace

std::variant<Document, Fault> Document::open(const fs::path& file) {
  Document document;
  document.path_ = file;
  document.stamp_ = document.stamp();
  auto text = build::file_text(file);
  if (auto* fault = std::get_if<Fault>(&text)) return std::move(*fault);
  document.disk_ = std::get<std::string>(std::move(text));
  document.show(document.disk_);
  if (document.fault_) return std::move(*document.fault_);
  auto kept = build::file_text(document.recovery_file());
  if (auto* left = std::get_if<std::string>(&kept); left != nullptr && *left != document.disk_) {
    std::error_code failed;
    const auto time = fs::last_write_time(document.recovery_file(), failed);
    const bool older = !failed && document.stamp_ && time < document.stamp_->time;
    document.recovery_ = Recovery{std::move(*left), older};
  }
  return document;
}

std::optional<Document::Stamp> Document::stamp() const {
  std::error_code failed;
  Stamp out;
  out.time = fs::last_write_time(path_, failed);
  if (!failed) out.size = fs::file_size(path_, failed);
  if (failed) return std::nullopt;
  return out;
}

void Document::show(std::string text) {
  text_ = std::move(text);
  ++version_;
  auto read = build::read_text(text_, path_);
  if (auto* fault = std::get_if<Fault>(&read)) {
    fault_ = std::move(*fault);
    return;
  }
  fault_.reset();
  build_ = std::make_shared<const build::Build>(std::get<build::Build>(std::move(read)));
}

std::variant<Document::Made, Fault> Document::made(const std::string& text, std::span<const build::Edit> edits) const {
  auto after = build::edited(text, edits, path_);
  if (auto* fault = std::get_if<Fault>(&after)) return std::move(*fault);
  return made(std::get<std::string>(std::move(after)));
}

std::variant<Document::Made, Fault> Document::made(std::string text) const {
  Made out{std::move(text), build_};
  if (out.text == text_) return out;
  auto read = build::read_text(out.text, path_);
  if (auto* fault = std::get_if<Fault>(&read)) return std::move(*fault);
  out.build = std::make_shared<const build::Build>(std::get<build::Build>(std::move(read)));
  return out;
}

void Document::take(Made made) {
  if (made.text == text_) return;
  text_ = std::move(made.text);
  build_ = std::move(made.build);
  fault_.reset();
  ++version_;
}

void Document::push(const std::string& label, std::string before, std::string after) {
  if (before == after) return;
  done_.push_back({label, std::move(before), std::move(after)});
  undone_.clear();
}

std::optional<Fault> Document::edit(const std::string& label, std::span<const build::Edit> edits) {
  commit();
  auto after = made(text_, edits);
  if (auto* fault = std::get_if<Fault>(&after)) return std::move(*fault);
  push(label, text_, std::get<Made>(after).text);
  take(std::get<Made>(std::move(after)));
  return std::nullopt;
}

std::optional<Fault> Document::replace(const std::string& label, std::string text) {
  commit();
  auto after = made(std::move(text));
  if (auto* fault = std::get_if<Fault>(&after)) return std::move(*fault);
  push(label, text_, std::get<Made>(after).text);
  take(std::get<Made>(std::move(after)));
  return std::nullopt;
}

std::optional<Fault> Document::drag(const std::string& label, std::span<const build::Edit> edits) {
  if (!before_drag_) before_drag_ = text_;
  auto after = made(*before_drag_, edits);
  if (auto* fault = std::get_if<Fault>(&after)) return std::move(*fault);
  drag_label_ = label;
  take(std::get<Made>(std::move(after)));
  return std::nullopt;
}

void Document::commit() {
  if (!before_drag_) return;
  push(drag_label_, std::move(*before_drag_), text_);
  before_drag_.reset();
}

void Document::cancel() {
  if (!before_drag_) return;
  if (*before_drag_ != text_) show(std::move(*before_drag_));
  before_drag_.reset();
}

void Document::undo() {
  commit();
  if (done_.empty()) return;
  show(done_.back().before);
  undone_.push_back(std::move(done_.back()));
  done_.pop_back();
}

void Document::redo() {
  commit();
  if (undone_.empty()) return;
  show(undone_.back().after);
  done_.push_back(std::move(undone_.back()));
  undone_.pop_back();
}

const std::string* Document::undoes() const {
  if (before_drag_ && *before_drag_ != text_) return &drag_label_;
  return done_.empty() ? nullptr : &done_.back().label;
}

const std::string* Document::redoes() const {
  if (before_drag_ && *before_drag_ != text_) return nullptr;
  return undone_.empty() ? nullptr : &undone_.back().label;
}

std::optional<std::string> Document::write(const fs::path& file) {
  commit();
  const fs::path target = target_of(file);
  std::error_code unknown;
  const fs::file_status before = fs::status(target, unknown);
  if (auto fault = output::write_file(target.string(), text_)) return fault;
  if (fs::exists(before)) fs::permissions(target, before.permissions(), unknown);  // as they were
  if (kept_ != 0) remove_quietly(recovery_file());
  kept_ = 0;
  path_ = file;
  disk_ = text_;
  stamp_ = stamp();
  return std::nullopt;
}

std::optional<std::string> Document::save() {
  const auto now = stamp();
  if (now && now != stamp_) {
    const auto there = build::file_text(path_);
    const auto* text = std::get_if<std::string>(&there);
    if (text == nullptr || *text != disk_)
      return path_.string() + ": the file was changed by something else since it was read; nothing was written";
  }
  return write(path_);
}

std::optional<std::string> Document::save_over() {
  return write(path_);
}

std::optional<std::string> Document::save_as(const fs::path& file) {
  if (auto fault = write(file)) return fault;
  show(text_);  // part files are looked for beside it now
  return std::nullopt;
}

Outside Document::look() {
  if (before_drag_) return Outside::same;
  const auto now = stamp();
  if (!now) return Outside::gone;
  if (now == stamp_) return Outside::same;
  auto there = build::file_text(path_);
  auto* text = std::get_if<std::string>(&there);
  if (text == nullptr) return Outside::gone;
  if (*text == disk_ || *text == text_) {
    disk_ = std::move(*text);
    stamp_ = now;
    return Outside::same;
  }
  if (unsaved()) return Outside::conflict;
  (void)reload();
  return Outside::reloaded;
}

std::optional<Fault> Document::reload() {
  commit();
  const auto now = stamp();  // before the text: what is written in between is seen by the next look
  auto there = build::file_text(path_);
  if (auto* fault = std::get_if<Fault>(&there)) return std::move(*fault);
  disk_ = std::get<std::string>(std::move(there));
  stamp_ = now;
  push("changed outside", text_, disk_);
  if (text_ != disk_) show(disk_);
  return std::nullopt;
}

fs::path Document::recovery_file() const {
  return path_.string() + ".recovery";
}

std::optional<std::string> Document::keep_recovery() {
  if (recovery_) return std::nullopt;  // not before it is known what becomes of that one
  if (!unsaved()) {
    if (kept_ != 0) remove_quietly(recovery_file());
    kept_ = 0;
    return std::nullopt;
  }
  if (kept_ == version_) return std::nullopt;
  if (auto fault = output::write_file(recovery_file().string(), text_)) return fault;
  kept_ = version_;
  return std::nullopt;
}

void Document::recover() {
  if (!recovery_) return;
  commit();
  std::string text = std::move(recovery_->text);
  recovery_.reset();
  kept_ = version_;  // the file is of this run now
  if (text == text_) return;
  push("recovered", text_, text);
  show(std::move(text));
}

void Document::forget_recovery() {
  if (!recovery_) return;
  recovery_.reset();
  remove_quietly(recovery_file());
}

void Document::discard() {
  if (kept_ != 0) remove_quietly(recovery_file());
  kept_ = 0;
}

}  // namespace baywright::viewer
