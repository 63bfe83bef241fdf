#include "output/gltf.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdio>
#include <glm/gtc/quaternion.hpp>
#include <limits>
#include <map>
#include <nlohmann/json.hpp>

namespace baywright::output {

using geometry::Vec3;

namespace {

using Json = nlohmann::ordered_json;
using Point = std::array<float, 3>;

// Numbers that the format names.
constexpr int float_component = 5126;
constexpr int short_component = 5123;  // unsigned
constexpr int int_component = 5125;    // unsigned
constexpr int vertex_target = 34962;
constexpr int index_target = 34963;
constexpr int lines_mode = 1;
constexpr int triangles_mode = 4;

void add_bits(std::string& out, std::uint32_t value, int bytes) {
  for (int i = 0; i < bytes; ++i) out += static_cast<char>(value >> (8 * i) & 0xFFU);
}

bool finite(const Point& p) {
  return std::isfinite(p[0]) && std::isfinite(p[1]) && std::isfinite(p[2]);
}

bool finite(const Vec3& p) {
  return std::isfinite(p.x) && std::isfinite(p.y) && std::isfinite(p.z);
}

Vec3 wide(const Point& p) {
  return {static_cast<double>(p[0]), static_cast<double>(p[1]), static_cast<double>(p[2])};
}

Point narrow(const Vec3& p) {
  return {static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(p.z)};
}

bool is_unit(const Point& normal) {
  return std::abs(glm::length(wide(normal)) - 1.0) < 1e-3;
}

Json list(const Vec3& v) {
  return {v.x, v.y, v.z};
}

/// "#RRGGBB" (sRGB) as the factors of light that the format has: IEC 61966-2-1.
Json linear(const std::string& hex, double cover) {
  Json out = Json::array();
  for (const std::size_t at : {1U, 3U, 5U}) {
    unsigned value = 0;
    if (hex.size() == 7 && std::sscanf(hex.c_str() + at, "%2x", &value) != 1) value = 0;
    const double share = value / 255.0;
    out.push_back(share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4));
  }
  out.push_back(cover);
  return out;
}

/// Corners that are alike stand once.
template <std::size_t width>
struct Shared {
  std::vector<std::array<float, width>> values;
  std::vector<std::uint32_t> index;

  std::uint32_t index_of(const std::array<float, width>& value) {
    const auto [found, fresh] = known.emplace(value, static_cast<std::uint32_t>(values.size()));
    if (fresh) values.push_back(value);
    return found->second;
  }

 private:
  std::map<std::array<float, width>, std::uint32_t> known;
};

/// Position and normal of each corner; triangles of which two corners fall together are left out.
Shared<6> triangles_of(const SceneNode& node) {
  Shared<6> out;
  for (std::size_t i = 0; i + 2 < node.at.size(); i += 3) {
    const Point* const at = &node.at[i];
    if (!finite(at[0]) || !finite(at[1]) || !finite(at[2])) continue;
    if (at[0] == at[1] || at[1] == at[2] || at[2] == at[0]) continue;
    std::array<Point, 3> normals{};
    for (std::size_t k = 0; k < 3; ++k)
      if (i + k < node.normal.size()) normals[k] = node.normal[i + k];
    if (!std::all_of(normals.begin(), normals.end(), is_unit)) {
      const Vec3 across = glm::cross(wide(at[1]) - wide(at[0]), wide(at[2]) - wide(at[0]));
      const double area = glm::length(across);
      if (!(area > 0.0)) continue;
      normals.fill(narrow(across / area));
    }
    for (std::size_t k = 0; k < 3; ++k)
      out.index.push_back(out.index_of({at[k][0], at[k][1], at[k][2], normals[k][0], normals[k][1], normals[k][2]}));
  }
  return out;
}

Shared<3> lines_of(const SceneNode& node) {
  Shared<3> out;
  for (std::size_t i = 0; i + 1 < node.edges.size(); i += 2) {
    const Point& from = node.edges[i];
    const Point& to = node.edges[i + 1];
    if (!finite(from) || !finite(to) || from == to) continue;
    for (const Point& end : {from, to}) out.index.push_back(out.index_of(end));
  }
  return out;
}

/// Moments that rise, poses that are finite; fewer than two moments: nothing moves.
bool usable(const std::vector<Keyframe>& keys) {
  double before = -1.0;
  for (const Keyframe& key : keys) {
    const geometry::Pose& pose = key.pose;
    if (!(key.at >= 0.0 && key.at <= 1.0 && static_cast<float>(key.at) > static_cast<float>(before))) return false;
    if (!finite(pose.shift) || !(geometry::skew(pose.turn) < 1e-3)) return false;
    before = key.at;
  }
  return keys.size() >= 2;
}

class Writer {
 public:
  explicit Writer(const Scene3d& scene) : scene_(scene) {}

  std::string written() {
    file_["asset"] = {{"version", "2.0"}, {"generator", "Baywright"}};
    Json children = Json::array();
    for (std::size_t i = 0; i < scene_.nodes.size(); ++i)
      if (add_node(scene_.nodes[i])) {
        index_of_.push_back(i);
        children.push_back(nodes_.size());  // the root comes before all
      }
    file_["scene"] = 0;
    file_["scenes"] = Json::array({scene_json(!children.empty())});
    if (!children.empty()) {
      // 0.001 makes metres of millimetres, a quarter turn about x makes y of z.
      nodes_.insert(nodes_.begin(), Json{{"rotation", {-std::sqrt(0.5), 0.0, 0.0, std::sqrt(0.5)}},
                                         {"scale", {0.001, 0.001, 0.001}},
                                         {"children", children}});
      add_animation("apart", &SceneNode::apart, true);
      add_animation("put in", &SceneNode::put_in, false);
      file_["extensionsUsed"] = {"KHR_materials_unlit"};
      file_["nodes"] = nodes_;
      file_["meshes"] = meshes_;
      file_["materials"] = materials_;
      if (!animations_.empty()) file_["animations"] = animations_;
      file_["accessors"] = accessors_;
      file_["bufferViews"] = views_;
      file_["buffers"] = Json::array({{{"byteLength", bytes_.size()}}});
    }
    return packed();
  }

 private:
  /// False: nothing of it is left to be seen.
  bool add_node(const SceneNode& node) {
    Shared<6> surface = triangles_of(node);
    Shared<3> edges = lines_of(node);
    if (surface.index.empty() && edges.index.empty()) return false;
    // Its own origin is its middle, so that a turn between two moments swings it least.
    Vec3 low(std::numeric_limits<double>::infinity());
    Vec3 high = -low;
    const auto grow = [&](const Vec3& p) { low = glm::min(low, p), high = glm::max(high, p); };
    for (const auto& each : surface.values) grow({each[0], each[1], each[2]});
    for (const auto& each : edges.values) grow(wide(each));
    const Vec3 middle = 0.5 * (low + high);
    const auto about_middle = [&](const auto& each) { return narrow(Vec3(each[0], each[1], each[2]) - middle); };

    Json primitives = Json::array();
    if (!surface.index.empty()) {
      std::vector<Point> at;
      std::vector<Point> normal;
      for (const auto& each : surface.values) {
        at.push_back(about_middle(each));
        normal.push_back({each[3], each[4], each[5]});
      }
      primitives.push_back(
          {{"attributes", {{"POSITION", add(at, true, vertex_target)}, {"NORMAL", add(normal, false, vertex_target)}}},
           {"indices", add(surface.index, at.size())},
           {"material", material(node.paint, node, false)},
           {"mode", triangles_mode}});
    }
    if (!edges.index.empty()) {
      std::vector<Point> at;
      for (const auto& each : edges.values) at.push_back(about_middle(each));
      primitives.push_back({{"attributes", {{"POSITION", add(at, true, vertex_target)}}},
                            {"indices", add(edges.index, at.size())},
                            {"material", material(node.edge_paint, node, true)},
                            {"mode", lines_mode}});
    }
    nodes_.push_back({{"name", node.name},
                      {"mesh", meshes_.size()},
                      {"translation", list(middle)},
                      {"extras", {{"closed", node.closed}, {"drive", node.drive}, {"clash", node.clash}}}});
    meshes_.push_back({{"name", node.name}, {"primitives", std::move(primitives)}});
    middles_.push_back(middle);
    return true;
  }

  std::size_t material(const Paint& paint, const SceneNode& node, bool line) {
    const double cover = line ? 1.0 : node.glass ? 0.12 : node.clash ? 0.6 : 1.0;
    Json out = {{"pbrMetallicRoughness",
                 {{"baseColorFactor", linear(paint.light, cover)}, {"metallicFactor", 0.0}, {"roughnessFactor", 1.0}}}};
    if (cover < 1.0) out["alphaMode"] = "BLEND";
    if (!node.closed && !line) out["doubleSided"] = true;
    if (line) out["extensions"] = {{"KHR_materials_unlit", Json::object()}};
    out["extras"] = {{"light", paint.light}, {"dark", paint.dark}};
    const auto found = std::find(materials_.begin(), materials_.end(), out);
    if (found != materials_.end()) return static_cast<std::size_t>(found - materials_.begin());
    materials_.push_back(std::move(out));
    return materials_.size() - 1;
  }

  void add_animation(const char* name, std::vector<Keyframe> SceneNode::*keys_of, bool begins_at_rest) {
    Json channels = Json::array();
    Json samplers = Json::array();
    const auto add_channel = [&](std::size_t node, const char* path, const char* way, std::size_t in, std::size_t out) {
      channels.push_back({{"sampler", samplers.size()}, {"target", {{"node", node + 1}, {"path", path}}}});
      samplers.push_back({{"input", in}, {"interpolation", way}, {"output", out}});
    };
    for (std::size_t n = 0; n < index_of_.size(); ++n) {
      const std::vector<Keyframe>& keys = scene_.nodes[index_of_[n]].*keys_of;
      if (!usable(keys)) continue;
      std::vector<std::array<float, 1>> moments;
      std::vector<Point> shifts;
      std::vector<std::array<float, 4>> turns;
      glm::dquat before(1.0, 0.0, 0.0, 0.0);
      bool turned = false;
      for (const Keyframe& key : keys) {
        glm::dquat turn = glm::normalize(glm::quat_cast(key.pose.turn));
        if (glm::dot(turn, before) < 0.0) turn = -turn;  // the shorter way round
        turned = turned || std::abs(turn.w) < 1.0;
        moments.push_back({static_cast<float>(key.at)});
        shifts.push_back(narrow(key.pose.point(middles_[n])));
        turns.push_back({static_cast<float>(turn.x), static_cast<float>(turn.y), static_cast<float>(turn.z),
                         static_cast<float>(turn.w)});
        before = turn;
      }
      const std::size_t in = add(moments, true);
      add_channel(n, "translation", "LINEAR", in, add(shifts, false));
      if (turned) add_channel(n, "rotation", "LINEAR", in, add(turns, false));
    }
    if (channels.empty()) return;
    for (std::size_t n = 0; n < index_of_.size(); ++n) {
      if (!scene_.nodes[index_of_[n]].clash) continue;
      // Gone as soon as anything moves: nothing of no size is seen.
      constexpr Point whole{1.0F, 1.0F, 1.0F};
      constexpr Point none{0.0F, 0.0F, 0.0F};
      constexpr float soon = 0.001F;
      const std::size_t in = add<1>({{0.0F}, {begins_at_rest ? soon : 1.0F}}, true);
      const std::size_t out = begins_at_rest ? add<3>({whole, none}, false) : add<3>({none, whole}, false);
      add_channel(n, "scale", "STEP", in, out);
    }
    animations_.push_back({{"name", name}, {"channels", channels}, {"samplers", samplers}});
  }

  [[nodiscard]] Json scene_json(bool has_root) const {
    Json out = {{"name", scene_.title}};
    if (has_root) out["nodes"] = {0};
    Json& look = out["extras"] = {{"toward", list(scene_.toward)}};
    const auto add_view = [&](const char* name, const Scene3d::View& view) {
      look[name] = {{"target", list(view.target)}, {"height", view.height}};
    };
    add_view("rest", scene_.rest);
    add_view("apart", scene_.apart);
    add_view("put in", scene_.put_in);
    if (scene_.cut) look["cut"] = {{"axis", scene_.cut->axis}, {"at", scene_.cut->at}};
    return out;
  }

  /// Vectors as an accessor with a view of its own; `target`: 0 for what no vertex has.
  template <std::size_t width>
  std::size_t add(const std::vector<std::array<float, width>>& values, bool bounded, int target = 0) {
    begin_view(values.size() * width * 4, target);
    std::array<float, width> low = values.front();
    std::array<float, width> high = low;
    for (const auto& value : values)
      for (std::size_t k = 0; k < width; ++k) {
        add_bits(bytes_, std::bit_cast<std::uint32_t>(value[k]), 4);
        low[k] = std::min(low[k], value[k]);
        high[k] = std::max(high[k], value[k]);
      }
    constexpr const char* type = width == 1 ? "SCALAR" : width == 3 ? "VEC3" : "VEC4";
    Json& out = end_view(float_component, values.size(), type);
    if (bounded) out["min"] = low, out["max"] = high;
    return accessors_.size() - 1;
  }

  /// Indices of `count` vertices. The greatest number of a type is never an index.
  std::size_t add(const std::vector<std::uint32_t>& index, std::size_t count) {
    const bool narrow = count <= 0xFFFF;
    begin_view(index.size() * (narrow ? 2 : 4), index_target);
    for (const std::uint32_t each : index) add_bits(bytes_, each, narrow ? 2 : 4);
    end_view(narrow ? short_component : int_component, index.size(), "SCALAR");
    return accessors_.size() - 1;
  }

  /// Each begins at a multiple of four bytes.
  void begin_view(std::size_t length, int target) {
    views_.push_back({{"buffer", 0}, {"byteOffset", bytes_.size()}, {"byteLength", length}});
    if (target != 0) views_.back()["target"] = target;
  }
  Json& end_view(int component, std::size_t count, const char* type) {
    bytes_.resize((bytes_.size() + 3) / 4 * 4, '\0');
    accessors_.push_back(
        {{"bufferView", views_.size() - 1}, {"componentType", component}, {"count", count}, {"type", type}});
    return accessors_.back();
  }

  /// Header and chunks, each padded to four bytes: JSON with spaces, bytes with zeros.
  [[nodiscard]] std::string packed() const {
    std::string text = file_.dump(-1, ' ', false, Json::error_handler_t::replace);
    text.resize((text.size() + 3) / 4 * 4, ' ');
    std::string chunks;
    const auto add_chunk = [&](std::uint32_t type, const std::string& content) {
      add_bits(chunks, static_cast<std::uint32_t>(content.size()), 4);
      add_bits(chunks, type, 4);
      chunks += content;
    };
    add_chunk(0x4E4F534A, text);                         // "JSON"
    if (!bytes_.empty()) add_chunk(0x004E4942, bytes_);  // "BIN"
    std::string out = "glTF";
    add_bits(out, 2, 4);
    add_bits(out, static_cast<std::uint32_t>(12 + chunks.size()), 4);
    return out + chunks;
  }

  const Scene3d& scene_;
  Json file_;
  Json nodes_ = Json::array();
  Json meshes_ = Json::array();
  Json materials_ = Json::array();
  Json animations_ = Json::array();
  Json accessors_ = Json::array();
  Json views_ = Json::array();
  std::string bytes_;
  std::vector<std::size_t> index_of_;  // of the scene's nodes that are written, in their order
  std::vector<Vec3> middles_;          // of the same
};

}  // namespace

std::string glb(const Scene3d& scene) {
  return Writer(scene).written();
}

}  // namespace baywright::output
