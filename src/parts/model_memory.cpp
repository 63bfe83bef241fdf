#include "parts/model_memory.h"

#include <algorithm>
#include <chrono>
#include <deque>
#include <mutex>
#include <system_error>
#include <utility>

namespace baywright::parts {

namespace {

constexpr std::size_t most = 8;             // of a build's models; a large one has tens of MB
constexpr std::chrono::seconds settled{2};  // coarser than any file system keeps time

std::mutex mutex;
std::deque<std::pair<ModelKey, ReadModel>>& memory() {
  static std::deque<std::pair<ModelKey, ReadModel>> kept;
  return kept;
}

}  // namespace

std::optional<ModelKey> model_key(const std::filesystem::path& file, const std::string& unit, const std::string& up) {
  std::error_code failed;
  ModelKey key{std::filesystem::absolute(file, failed), {}, 0, unit, up};
  if (!failed) key.time = std::filesystem::last_write_time(file, failed);
  if (!failed) key.size = std::filesystem::file_size(file, failed);
  if (failed || std::filesystem::file_time_type::clock::now() - key.time < settled) return std::nullopt;
  return key;
}

std::optional<ReadModel> remembered(const ModelKey& key) {
  const std::lock_guard lock(mutex);
  const auto& kept = memory();
  const auto found = std::find_if(kept.begin(), kept.end(), [&](const auto& each) { return each.first == key; });
  if (found == kept.end()) return std::nullopt;
  return found->second;
}

void remember(ModelKey key, ReadModel model) {
  const std::lock_guard lock(mutex);
  auto& kept = memory();
  kept.emplace_front(std::move(key), std::move(model));
  if (kept.size() > most) kept.pop_back();
}

}  // namespace baywright::parts
