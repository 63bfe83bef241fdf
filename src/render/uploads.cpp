#include "render/uploads.h"

#include <cmath>

namespace baywright::render {

namespace {

using Point = std::array<float, 3>;

/// Binds a new vertex array and a buffer of so many bytes.
void open(Uploaded& uploaded, std::size_t bytes) {
  uploaded.arrays = generated<VertexArray>(glGenVertexArrays);
  uploaded.buffer = generated<Buffer>(glGenBuffers);
  glBindVertexArray(uploaded.arrays.name());
  glBindBuffer(GL_ARRAY_BUFFER, uploaded.buffer.name());
  glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(bytes), nullptr, GL_STATIC_DRAW);
}

void attribute(GLuint place, GLint figures, std::size_t stride, std::size_t offset) {
  glEnableVertexAttribArray(place);
  glVertexAttribPointer(place, figures, GL_FLOAT, GL_FALSE, static_cast<GLsizei>(stride),
                        reinterpret_cast<const void*>(offset));  // NOLINT: what OpenGL takes an offset as
}

template <typename Each>
void part(GLuint place, GLint figures, const std::vector<Each>& list, std::size_t count, std::size_t& offset) {
  glBufferSubData(GL_ARRAY_BUFFER, static_cast<GLintptr>(offset), static_cast<GLsizeiptr>(count * sizeof(Each)),
                  list.data());
  attribute(place, figures, sizeof(Each), offset);
  offset += count * sizeof(Each);
}

geometry::Vec3 middle_of(const std::vector<Point>& points) {
  geometry::Bounds bounds = geometry::Bounds::empty();
  for (const Point& p : points) bounds.add(geometry::Vec3{p[0], p[1], p[2]});
  return (bounds.low + bounds.high) / 2.0;
}

Uploaded upload(const Mesh& mesh) {
  Uploaded out;
  const std::size_t count = mesh.at.size() / 3 * 3;
  const bool normals = mesh.normal.size() >= count;
  out.coloured = mesh.colour.size() >= count;
  open(out, count * (sizeof(Point) * (normals ? 2 : 1) + (out.coloured ? sizeof(Colour) : 0)));
  std::size_t offset = 0;
  part(0, 3, mesh.at, count, offset);
  if (normals) part(1, 3, mesh.normal, count, offset);
  if (out.coloured) part(2, 4, mesh.colour, count, offset);
  out.count = static_cast<GLsizei>(count);
  out.middle = middle_of(mesh.at);
  return out;
}

Uploaded upload(const Strokes& strokes) {
  struct Line {
    Point from;
    Point to;
    float start;  // mm of the chain before it
    Point face;
    Point other_face;
  };
  std::vector<Line> lines;
  float start = 0.0F;
  for (std::size_t i = 0; i + 1 < strokes.at.size(); i += 2) {
    const Point& from = strokes.at[i];
    const Point& to = strokes.at[i + 1];
    if (lines.empty() || lines.back().to != from) start = 0.0F;
    const bool outline = strokes.faces.size() >= strokes.at.size();
    lines.push_back({from, to, start, outline ? strokes.faces[i] : Point{}, outline ? strokes.faces[i + 1] : Point{}});
    start += std::hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  }
  Uploaded out;
  open(out, lines.size() * sizeof(Line));
  glBufferSubData(GL_ARRAY_BUFFER, 0, static_cast<GLsizeiptr>(lines.size() * sizeof(Line)), lines.data());
  attribute(0, 3, sizeof(Line), offsetof(Line, from));
  attribute(1, 3, sizeof(Line), offsetof(Line, to));
  attribute(2, 1, sizeof(Line), offsetof(Line, start));
  attribute(3, 3, sizeof(Line), offsetof(Line, face));
  attribute(4, 3, sizeof(Line), offsetof(Line, other_face));
  for (const GLuint place : {0U, 1U, 2U, 3U, 4U}) glVertexAttribDivisor(place, 1);
  out.count = static_cast<GLsizei>(lines.size());
  return out;
}

}  // namespace

template <typename Shared>
const Uploaded* Uploads::find(const Shared& source) {
  if (!source || source->at.size() < 2) return nullptr;
  Uploaded& kept = kept_[source.get()];
  if (kept.source.expired()) {  // new, or another one lived at this address
    kept = upload(*source);
    kept.source = source;
    kept.serial = ++serial_;
  }
  return kept.count > 0 ? &kept : nullptr;
}

const Uploaded* Uploads::of(const std::shared_ptr<const Mesh>& mesh) {
  return find(mesh);
}
const Uploaded* Uploads::of(const std::shared_ptr<const Strokes>& strokes) {
  return find(strokes);
}

void Uploads::prune() {
  std::erase_if(kept_, [](const auto& each) { return each.second.source.expired(); });
}

}  // namespace baywright::render
