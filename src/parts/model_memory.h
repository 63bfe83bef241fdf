#pragma once
// The last few models that were read. A window reads its build anew for each frame of a drag, and a model of 14,000
// triangles takes forty times as long as all the rest of the text (95 ms of 97).
#include "parts/part.h"

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>

namespace baywright::parts {

struct ReadModel {
  Body body;  // its mesh is shared, not copied
  Model model;
};

/// What a model depends on: the file as it is now, and how it is to be read.
struct ModelKey {
  std::filesystem::path file;  // absolute
  std::filesystem::file_time_type time;
  std::uintmax_t size = 0;
  std::string unit;  // as given; empty: not
  std::string up;
  bool operator==(const ModelKey&) const = default;
};

/// None: the file is not there, or was written so recently that it could change once more without its time doing so.
[[nodiscard]] std::optional<ModelKey> model_key(const std::filesystem::path& file, const std::string& unit,
                                                const std::string& up);

/// Any thread.
[[nodiscard]] std::optional<ReadModel> remembered(const ModelKey& key);
void remember(ModelKey key, ReadModel model);

}  // namespace baywright::parts
