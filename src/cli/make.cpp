#include "cli/commands.h"
#include "cli/session.h"
#include "geometry/mesh.h"
#include "geometry/solid.h"
#include "output/dxf.h"
#include "output/printable_words.h"
#include "output/stl.h"
#include "output/three_mf.h"
#include "plans/printable.h"
#include "plans/printed_mark.h"
#include "render/shape.h"
#include "standards/general_tolerances.h"

#include <iostream>
#include <vector>

namespace baywright::cli {

namespace {

/// Without a gap: what is not would print as nobody asked.
bool watertight(output::Corners corners) {
  std::vector<geometry::Vec3> points;
  std::vector<geometry::Mesh::Triangle> triangles;
  for (const auto& corner : corners) points.emplace_back(corner[0], corner[1], corner[2]);
  for (int i = 0; i + 2 < static_cast<int>(points.size()); i += 3) triangles.push_back({i, i + 1, i + 2});
  const auto mesh = geometry::Mesh::make(std::move(points), std::move(triangles));
  const auto* made = std::get_if<geometry::Mesh>(&mesh);
  return made != nullptr && made->closed();
}

/// The file's bytes; none: it could not be made, and why is printed.
std::optional<std::string> content_of(const plans::Printable& part, const geometry::Solid& solid,
                                      const std::string& path) {
  if (path.ends_with(".dxf")) return output::to_dxf(output::printable_cut(part));
  const render::Shape shape = render::shape_of({solid, {}});
  if (!watertight(shape.mesh->at)) {
    std::cerr << "baywright: " << path << ": " << part.name
              << " has corners closer than single precision tells apart, and would have a gap, so it is not written; a "
                 ".dxf file can be\n";
    return std::nullopt;
  }
  if (!path.ends_with(".3mf")) return output::to_stl(shape.mesh->at);
  auto made = output::to_3mf(shape.mesh->at);
  if (const auto* why = std::get_if<std::string>(&made)) {
    std::cerr << "baywright: " << path << ": " << *why << '\n';
    return std::nullopt;
  }
  return std::get<output::Archived>(std::move(made)).bytes;
}

}  // namespace

int make_command(const Arguments& arguments) {
  const std::string& path = arguments.output;
  const bool cut = path.ends_with(".dxf");
  if (path != "-" && !cut && !path.ends_with(".stl") && !path.ends_with(".3mf")) {
    std::cerr << "baywright: " << path
              << ": the ending says the format, and this one is none; name a file that ends in "
              << ".stl, .3mf or .dxf\n";
    return input_at_fault;
  }
  const auto build = read_build(arguments);
  if (!build) return input_at_fault;
  const auto refused = [&](const std::string& why) {
    std::cerr << arguments.file << ": " << why << '\n';
    return input_at_fault;
  };
  const std::string way = arguments.process.empty() ? "fdm" : arguments.process;
  auto made = plans::printable(*build, arguments.part, *standards::general_tolerances::printing(way));
  if (arguments.mark && std::holds_alternative<plans::Printable>(made))
    made = plans::marked(std::get<plans::Printable>(std::move(made)));
  if (const auto* why = std::get_if<std::string>(&made)) return refused(*why);
  const plans::Printable& part = std::get<plans::Printable>(made);
  if (cut && !part.uncut.empty())
    return refused(part.name + " cannot be cut from sheet: " + part.uncut +
                   "; a file that ends in .stl or .3mf is to print");
  const auto solid = plans::printed(part);
  if (const auto* why = std::get_if<geometry::Refusal>(&solid)) return refused(why->reason);
  const auto content = content_of(part, std::get<geometry::Solid>(solid), path);
  if (!content || !write_whole(path, *content)) return could_not_finish;
  if (path == "-") return all_fit;
  return print(output::printable_text(part, path, cut)) ? all_fit : could_not_finish;
}

}  // namespace baywright::cli
