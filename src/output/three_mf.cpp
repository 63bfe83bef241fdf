#include "output/three_mf.h"

#include <charconv>
#include <map>
#include <memory>
#include <vector>
#include <zip.h>

namespace baywright::output {

namespace {

constexpr const char* types =
    R"(<?xml version="1.0" encoding="UTF-8"?>
<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">
<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>
<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>
</Types>
)";
constexpr const char* relations =
    R"(<?xml version="1.0" encoding="UTF-8"?>
<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">
<Relationship Id="model" Target="/3D/3dmodel.model" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/>
</Relationships>
)";
constexpr const char* head =
    R"(<?xml version="1.0" encoding="UTF-8"?>
<model unit="millimeter" xml:lang="en-US" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">
<resources>
<object id="1" type="model">
<mesh>
)";
constexpr const char* foot =
    R"(</mesh>
</object>
</resources>
<build>
<item objectid="1"/>
</build>
</model>
)";

std::string number(float value) {
  std::array<char, 64> digits{};
  const auto [end, fault] = std::to_chars(digits.data(), digits.data() + digits.size(), value == 0.0F ? 0.0F : value);
  return {digits.data(), end};
}

std::string model_of(Corners corners) {
  std::map<std::array<float, 3>, std::size_t> known;
  std::string vertices;
  std::string triangles;
  for (std::size_t i = 0; i + 2 < corners.size(); i += 3) {
    std::array<std::size_t, 3> index{};
    for (std::size_t k = 0; k < 3; ++k) {
      const std::array<float, 3>& at = corners[i + k];
      const auto [found, fresh] = known.emplace(at, known.size());
      index[k] = found->second;
      if (fresh)
        vertices += "<vertex x=\"" + number(at[0]) + "\" y=\"" + number(at[1]) + "\" z=\"" + number(at[2]) + "\"/>\n";
    }
    if (index[0] == index[1] || index[1] == index[2] || index[2] == index[0]) continue;
    triangles += "<triangle v1=\"" + std::to_string(index[0]) + "\" v2=\"" + std::to_string(index[1]) + "\" v3=\"" +
                 std::to_string(index[2]) + "\"/>\n";
  }
  return std::string(head) + "<vertices>\n" + vertices + "</vertices>\n<triangles>\n" + triangles + "</triangles>\n" +
         foot;
}

struct SourceEnd {
  void operator()(zip_source_t* source) const { zip_source_free(source); }
};
using Source = std::unique_ptr<zip_source_t, SourceEnd>;

/// Not compressed, and without the hour at which it was written.
bool add(zip_t* archive, const char* name, const std::string& text) {
  zip_source_t* source = zip_source_buffer(archive, text.data(), text.size(), 0);
  if (source == nullptr) return false;
  const zip_int64_t index = zip_file_add(archive, name, source, ZIP_FL_ENC_UTF_8);
  if (index < 0) {
    zip_source_free(source);
    return false;
  }
  const auto at = static_cast<zip_uint64_t>(index);
  constexpr zip_uint16_t first_of_1980 = 0x21;  // the earliest date that the format has
  return zip_set_file_compression(archive, at, ZIP_CM_STORE, 0) == 0 &&
         zip_file_set_dostime(archive, at, 0, first_of_1980, 0) == 0;
}

}  // namespace

std::variant<Archived, std::string> to_3mf(Corners corners) {
  const std::string failed = "the 3MF archive could not be made";
  const std::string model = model_of(corners);
  const std::string type_text = types;
  const std::string relation_text = relations;
  const Source memory(zip_source_buffer_create(nullptr, 0, 0, nullptr));
  if (!memory) return failed;
  zip_t* archive = zip_open_from_source(memory.get(), ZIP_CREATE | ZIP_TRUNCATE, nullptr);
  if (archive == nullptr) return failed;
  zip_source_keep(memory.get());  // closing the archive gives up its own hold
  const bool added = add(archive, "[Content_Types].xml", type_text) && add(archive, "_rels/.rels", relation_text) &&
                     add(archive, "3D/3dmodel.model", model);
  if (!added || zip_close(archive) != 0) {
    zip_discard(archive);
    return failed;
  }
  if (zip_source_open(memory.get()) != 0) return failed;
  Archived out;
  std::array<char, 65536> some{};
  zip_int64_t got = 0;
  while ((got = zip_source_read(memory.get(), some.data(), some.size())) > 0)
    out.bytes.append(some.data(), static_cast<std::size_t>(got));
  zip_source_close(memory.get());
  if (got < 0) return failed;
  return out;
}

}  // namespace baywright::output
