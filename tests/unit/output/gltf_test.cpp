// Binary glTF files, held to glTF 2.0 (ISO/IEC 12113:2022), whose sections are named. tests/page holds whole files to
// the Khronos Group's own validator.
#include "output/gltf.h"

#include <cmath>
#include <cstring>
#include <doctest/doctest.h>
#include <limits>
#include <nlohmann/json.hpp>

using namespace baywright;
using nlohmann::json;
using output::Scene3d;
using output::SceneNode;

namespace {

using Point = std::array<float, 3>;

/// A file as a reader sees it. Every accessor is checked as it is read.
class File {
 public:
  explicit File(const std::string& bytes) : bytes_(bytes) {
    // 4.4.2 and 4.4.3: a header of 12 bytes, then chunks, each a multiple of four long.
    REQUIRE(bytes.size() >= 20);
    CHECK(bytes.substr(0, 4) == "glTF");
    CHECK(number(4) == 2);
    CHECK(number(8) == bytes.size());
    const std::size_t length = number(12);
    CHECK(bytes.substr(16, 4) == "JSON");
    CHECK(length % 4 == 0);
    REQUIRE(bytes.size() >= 20 + length);
    tree = json::parse(bytes.substr(20, length));
    if (bytes.size() == 20 + length) return;
    // 4.4.3.3: the second chunk is the first buffer, at most three bytes longer.
    start_ = 28 + length;
    CHECK(number(20 + length) == bytes.size() - start_);
    CHECK(bytes.substr(24 + length, 4) == std::string("BIN\0", 4));
    CHECK((bytes.size() - start_) % 4 == 0);
    const std::size_t buffer = tree["buffers"][0]["byteLength"];
    CHECK(buffer <= bytes.size() - start_);
    CHECK(bytes.size() - start_ - buffer <= 3);
  }

  /// Components of an accessor, one after the other.
  [[nodiscard]] std::vector<double> values(const json& index) const {
    const json& accessor = tree["accessors"][index.get<std::size_t>()];
    const json& view = tree["bufferViews"][accessor["bufferView"].get<std::size_t>()];
    const int component = accessor["componentType"];
    const std::size_t size = component == 5123 ? 2 : 4;  // 3.6.2.2: unsigned short; unsigned int, float
    REQUIRE((component == 5123 || component == 5125 || component == 5126));
    const std::string type = accessor["type"];
    const std::size_t width = type == "SCALAR" ? 1 : type == "VEC3" ? 3 : 4;
    const std::size_t count = accessor["count"];
    const std::size_t offset = view["byteOffset"];
    // 3.6.2.4: at a multiple of the component's size, vertices at multiples of four, and within the view.
    CHECK(offset % 4 == 0);
    CHECK(count * width * size == view["byteLength"]);
    CHECK(offset + count * width * size <= tree["buffers"][0]["byteLength"]);
    std::vector<double> out;
    for (std::size_t i = 0; i < count * width; ++i) {
      const std::size_t at = start_ + offset + i * size;
      if (component == 5126) {
        float value = 0.0F;
        std::memcpy(&value, &bytes_[at], 4);
        CHECK(std::isfinite(value));  // 3.6.2.2
        out.push_back(static_cast<double>(value));
      } else {
        out.push_back(static_cast<double>(size == 4 ? number(at) : number(at) & 0xFFFFU));
      }
    }
    // 3.6.2.5: the bounds are those of what is stored, to the last bit.
    if (accessor.contains("min"))
      for (std::size_t k = 0; k < width; ++k) {
        double low = std::numeric_limits<double>::infinity();
        double high = -low;
        for (std::size_t i = k; i < out.size(); i += width) low = std::min(low, out[i]), high = std::max(high, out[i]);
        CHECK(accessor["min"][k] == low);
        CHECK(accessor["max"][k] == high);
      }
    return out;
  }

  json tree;

 private:
  [[nodiscard]] std::uint32_t number(std::size_t at) const {
    std::uint32_t out = 0;
    for (std::size_t i = 4; i-- > 0;)
      out = out << 8U | (at + i < bytes_.size() ? static_cast<unsigned char>(bytes_[at + i]) : 0U);
    return out;
  }

  std::string bytes_;
  std::size_t start_ = 0;
};

/// A right triangle in a plane of that z, with its border.
SceneNode triangle(const std::string& name, float z) {
  SceneNode out;
  out.name = name;
  out.at = {{0, 0, z}, {4, 0, z}, {0, 3, z}};
  out.normal = {{0, 0, 1}, {0, 0, 1}, {0, 0, 1}};
  out.edges = {{0, 0, z}, {4, 0, z}, {4, 0, z}, {0, 3, z}, {0, 3, z}, {0, 0, z}};
  out.paint = {"#FF8000", "#402000"};
  out.edge_paint = {"#15181C", "#E8EBEF"};
  return out;
}

Scene3d scene_of(std::vector<SceneNode> nodes) {
  Scene3d out;
  out.title = "test";
  out.nodes = std::move(nodes);
  return out;
}

constexpr float not_a_number = std::numeric_limits<float>::quiet_NaN();

}  // namespace

TEST_CASE("a node of a GLB is a mesh of triangles and lines, under a root in metres with y up") {
  const File file(output::glb(scene_of({triangle("plate", 7.0F)})));
  CHECK(file.tree["asset"]["version"] == "2.0");  // 3.2
  // 3.4: metres, y up. The root takes a point of z = 1000 mm to y = 1 m: a turn by -90 degrees about x.
  const json& root = file.tree["nodes"][file.tree["scenes"][0]["nodes"][0].get<std::size_t>()];
  CHECK(root["scale"] == json({0.001, 0.001, 0.001}));
  const double half = std::sqrt(0.5);
  CHECK(root["rotation"] == json({-half, 0.0, 0.0, half}));
  REQUIRE(root["children"] == json({1}));

  const json& node = file.tree["nodes"][1];
  CHECK(node["name"] == "plate");
  CHECK(node["translation"] == json({2.0, 1.5, 7.0}));  // its middle
  const json& primitives = file.tree["meshes"][0]["primitives"];
  REQUIRE(primitives.size() == 2);
  CHECK(primitives[0]["mode"] == 4);  // 3.7.2.1: triangles
  CHECK(file.values(primitives[0]["attributes"]["POSITION"]) ==
        std::vector<double>{-2, -1.5, 0, 2, -1.5, 0, -2, 1.5, 0});
  CHECK(file.values(primitives[0]["attributes"]["NORMAL"]) == std::vector<double>{0, 0, 1, 0, 0, 1, 0, 0, 1});
  CHECK(file.values(primitives[0]["indices"]) == std::vector<double>{0, 1, 2});
  CHECK(primitives[1]["mode"] == 1);                                        // lines
  CHECK(file.values(primitives[1]["attributes"]["POSITION"]).size() == 9);  // each corner once
  CHECK(file.values(primitives[1]["indices"]) == std::vector<double>{0, 1, 1, 2, 2, 0});
  // 3.7.2.1: position accessors must have bounds. 3.6.2.4: views say what they are for.
  for (const json& primitive : primitives) {
    const json& accessor = file.tree["accessors"][primitive["attributes"]["POSITION"].get<std::size_t>()];
    CHECK(accessor.contains("min"));
    CHECK(file.tree["bufferViews"][accessor["bufferView"].get<std::size_t>()]["target"] == 34962);
  }
}

TEST_CASE("colours of a GLB are linear light, and what is seen through says so") {
  SceneNode glass = triangle("glass", 1.0F);
  glass.glass = true;
  SceneNode open = triangle("open", 2.0F);
  open.closed = false;
  const File file(output::glb(scene_of({triangle("plate", 0.0F), glass, open, triangle("twin", 3.0F)})));
  const auto material = [&](std::size_t mesh, std::size_t primitive) -> const json& {
    return file.tree["materials"][file.tree["meshes"][mesh]["primitives"][primitive]["material"].get<std::size_t>()];
  };
  // 3.9.2: factors are linear. IEC 61966-2-1: 0x80 of sRGB is 0.21586 of the light.
  const json& factor = material(0, 0)["pbrMetallicRoughness"]["baseColorFactor"];
  CHECK(factor[0] == 1.0);
  CHECK(std::abs(factor[1].get<double>() - 0.21586) < 5e-6);
  CHECK(factor[2] == 0.0);
  CHECK(factor[3] == 1.0);
  CHECK(!material(0, 0).contains("alphaMode"));
  CHECK(material(1, 0)["alphaMode"] == "BLEND");
  CHECK(material(2, 0)["doubleSided"] == true);
  CHECK(material(3, 0) == material(0, 0));
  CHECK(file.tree["materials"].size() == 4);  // plate, its lines, glass, open: none twice
  CHECK(material(0, 1)["extensions"].contains("KHR_materials_unlit"));
  CHECK(file.tree["extensionsUsed"] == json({"KHR_materials_unlit"}));  // 3.12
}

TEST_CASE("animations of a GLB move a node about its middle and hide what is shared at rest only") {
  SceneNode moving = triangle("moving", 0.0F);
  moving.apart = {{0.0, {}}, {1.0, {geometry::Mat3(1.0), {0.0, 0.0, 20.0}}}};
  moving.put_in = {{0.0, {geometry::rotation({0.0, 0.0, 1.0}, 90.0), {10.0, 0.0, 0.0}}}, {1.0, {}}};
  SceneNode clash = triangle("clash", 0.0F);
  clash.clash = true;
  const File file(output::glb(scene_of({moving, clash})));
  REQUIRE(file.tree["animations"].size() == 2);
  const auto output_of = [&](const json& animation, std::size_t node, const std::string& path) -> std::vector<double> {
    for (const json& channel : animation["channels"])
      if (channel["target"]["node"] == node && channel["target"]["path"] == path) {
        const json& sampler = animation["samplers"][channel["sampler"].get<std::size_t>()];
        const json& input = file.tree["accessors"][sampler["input"].get<std::size_t>()];
        CHECK(input.contains("min"));  // 3.11: inputs must have bounds, and rise
        const std::vector<double> moments = file.values(sampler["input"]);
        CHECK(moments.front() < moments.back());
        return file.values(sampler["output"]);
      }
    return {};
  };
  const json& apart = file.tree["animations"][0];
  CHECK(apart["name"] == "apart");
  CHECK(output_of(apart, 1, "translation") == std::vector<double>{2, 1.5, 0, 2, 1.5, 20});
  CHECK(output_of(apart, 1, "rotation").empty());  // it does not turn
  CHECK(output_of(apart, 2, "scale") == std::vector<double>{1, 1, 1, 0, 0, 0});
  const json& put_in = file.tree["animations"][1];
  CHECK(put_in["name"] == "put in");
  // The middle (2, 1.5) turned by 90 degrees is (-1.5, 2), moved by 10 along x.
  CHECK(output_of(put_in, 1, "translation") == std::vector<double>{8.5, 2, 0, 2, 1.5, 0});
  const std::vector<double> turn = output_of(put_in, 1, "rotation");
  REQUIRE(turn.size() == 8);
  CHECK(std::abs(turn[2] - std::sqrt(0.5)) < 1e-7);  // 3.11: x, y, z, w
  CHECK(std::abs(turn[3] - std::sqrt(0.5)) < 1e-7);
  CHECK(turn[7] == 1.0);
  CHECK(output_of(put_in, 2, "scale") == std::vector<double>{0, 0, 0, 1, 1, 1});
}

TEST_CASE("motions that cannot be are left out of a GLB") {
  const geometry::Pose away{geometry::Mat3(1.0), {0.0, 0.0, 20.0}};
  const geometry::Pose nowhere{geometry::Mat3(1.0), {0.0, std::nan(""), 0.0}};
  const geometry::Pose grown{geometry::Mat3(2.0), {0.0, 0.0, 0.0}};
  const std::vector<std::vector<output::Keyframe>> wrong = {
      {{0.0, away}},
      {{0.0, {}}, {0.0, away}},
      {{0.0, {}}, {1.0, nowhere}},
      {{0.0, {}}, {std::nan(""), away}},
      {{0.0, {}}, {1.0, grown}},
      {{0.5, {}}, {0.5 + 1e-12, away}}};  // the last two are one moment as floats
  for (const auto& keys : wrong) {
    SceneNode node = triangle("node", 0.0F);
    node.apart = keys;
    CHECK(!File(output::glb(scene_of({node}))).tree.contains("animations"));
  }
}

TEST_CASE("an empty scene is a GLB without nodes or bytes") {
  const File file(output::glb(scene_of({})));
  CHECK(file.tree["scenes"].size() == 1);
  // 3.3 and 5.17: a list that there is is not empty.
  for (const char* list : {"nodes", "meshes", "materials", "animations", "accessors", "bufferViews", "buffers"})
    CHECK(!file.tree.contains(list));
}

TEST_CASE("triangles and lines of a GLB that are none are left out, and normals that are none are made") {
  SceneNode node = triangle("node", 0.0F);
  node.at.insert(node.at.end(), {{not_a_number, 0, 0},
                                 {1, 0, 0},
                                 {0, 1, 0},  // not a number
                                 {1, 1, 1},
                                 {1, 1, 1},
                                 {2, 2, 2},  // two corners in one point
                                 {0, 0, 0},
                                 {0, 0, 5},
                                 {0, 5, 0},  // a normal of no length: made, toward -x
                                 {0, 0, 0},
                                 {1, 1, 1},
                                 {2, 2, 2},    // the same, without an area
                                 {9, 9, 9}});  // left over
  node.normal.insert(node.normal.end(), {{0, 0, 1}, {0, 0, 1}, {0, 0, 1}, {0, 0, 1}, {0, 0, 1}, {0, 0, 1}, {0, 0, 0}});
  node.edges.insert(node.edges.end(), {{0, not_a_number, 0}, {1, 1, 1}, {2, 2, 2}, {2, 2, 2}, {3, 3, 3}});
  SceneNode nothing;
  nothing.name = "nothing";
  nothing.at = {{not_a_number, 0, 0}, {1, 0, 0}, {0, 1, 0}};
  const File file(output::glb(scene_of({nothing, node})));
  REQUIRE(file.tree["nodes"].size() == 2);  // the root and one
  const json& primitives = file.tree["meshes"][0]["primitives"];
  CHECK(file.values(primitives[0]["indices"]).size() == 6);
  const std::vector<double> normals = file.values(primitives[0]["attributes"]["NORMAL"]);
  REQUIRE(normals.size() == 18);
  CHECK(std::vector<double>(normals.begin() + 9, normals.begin() + 12) == std::vector<double>{-1, 0, 0});
  CHECK(file.values(primitives[1]["indices"]).size() == 6);
}

TEST_CASE("names in a GLB are kept as they are, and bytes that are no text are replaced") {
  const std::string odd = "a \"quoted\" \\ name, \xC3\xA4 \xE2\x80\xAE and \x01\n";
  CHECK(File(output::glb(scene_of({triangle(odd, 0.0F)}))).tree["nodes"][1]["name"] == odd);
  CHECK(File(output::glb(scene_of({triangle("x\xFFy", 0.0F)}))).tree["nodes"][1]["name"] == "x\xEF\xBF\xBDy");
}

TEST_CASE("a mesh of more corners than a short counts has long indices") {
  // 3.7.2.1: the greatest number of a type is no index, so that 65535 corners are the most for two bytes.
  for (const auto& [triangles, type] : {std::pair(21845, 5123), std::pair(21846, 5125)}) {
    SceneNode node;
    for (int i = 0; i < triangles; ++i)
      for (const Point& corner : {Point{0, 0, 0}, Point{1, 0, 0}, Point{0, 1, 0}})
        node.at.push_back({corner[0], corner[1], static_cast<float>(i)});
    const File file(output::glb(scene_of({node})));
    const json& index = file.tree["meshes"][0]["primitives"][0]["indices"];
    CHECK(file.tree["accessors"][index.get<std::size_t>()]["componentType"] == type);
    CHECK(file.tree["accessors"][index.get<std::size_t>()]["count"] == 3 * triangles);
  }
}
