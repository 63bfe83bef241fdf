#include "build/reader.h"
#include "standards/tools.h"

namespace baywright::build {

using parts::Fields;

namespace {

double size_of_tool(Reader& reader, Fields& fields, std::string_view key, const std::string& name) {
  const GivenLength given = fields.length(key, name, {reader.measuring.limit, reader.measuring.source}, some);
  if (given.dimension.open())
    fields.stop(key, '`' + std::string(key) + "` is known on one side only", "measure the tool");
  const auto written = [&reader](double side) { return side != 0.0 && side != reader.measuring.limit; };
  if (written(given.dimension.minus) || written(given.dimension.plus))
    fields.stop(key, "a tool has no limits: it is as it is", "write its greatest measure alone");
  return given.dimension.nominal;
}

/// The lever of the common low ratchet, where none is given.
double common_lever() {
  for (const standards::tools::Driver& each : standards::tools::drivers())
    if (each.lever) return each.lever->nominal;
  return 0.0;
}

Tool tool_of(Reader& reader, Fields& fields) {
  fields.knows({"name", "shaft", "handle", "head"});
  Tool tool;
  tool.name = reader.fresh_name(fields);
  Fields shaft = fields.table("shaft", "`shaft`");
  tool.shaft = size_of_tool(reader, shaft, "diameter", tool.name + " shaft");
  tool.shaft_length = size_of_tool(reader, shaft, "length", tool.name + " shaft length");
  shaft.finish();
  const bool low = fields.has("head");
  if (low && fields.has("handle"))
    fields.stop("head", '`' + tool.name + "` has both `handle` and `head`", "keep one of them");
  if (!low && !fields.has("handle")) {
    fields.finish();
    fields.stop_here('`' + tool.name + "` has neither `handle` nor `head`",
                     "add handle = { diameter = 20, length = 85 }, or for a low ratchet head = { diameter = 22, "
                     "height = 12 }");
  }
  Fields grip = fields.table(low ? "head" : "handle", low ? "`head`" : "`handle`");
  if (low) grip.knows({"diameter", "height", "lever"});
  tool.handle = size_of_tool(reader, grip, "diameter", tool.name + " handle");
  tool.handle_length = size_of_tool(reader, grip, low ? "height" : "length", tool.name + " handle length");
  if (low) tool.lever = grip.has("lever") ? size_of_tool(reader, grip, "lever", tool.name + " lever") : common_lever();
  if (low && !(tool.lever > 0.5 * tool.handle))
    grip.stop("lever", "the lever ends within the head", "`lever` is measured from the middle of the head to its end");
  grip.finish();
  fields.finish();
  return tool;
}

}  // namespace

void read_tools(Reader& reader, Fields& document) {
  for (Fields& fields : document.tables("tool", "[[tool]]")) reader.build.tools.push_back(tool_of(reader, fields));
}

}  // namespace baywright::build
