#include "output/more_words.h"
#include "tolerance/reading.h"

#include <cmath>
#include <vector>

namespace baywright::output {

namespace {

using fit::Code;
using fit::Reason;

std::string sizes(const Reason& why, const std::string& before) {
  const auto each = [&](const char* axis) { return in_hundredths(why.figure(before + axis)); };
  return each("x") + " x " + each("y") + " x " + each("z") + " mm";
}

/// Where the user finds it in the program that drew the model: the file's own figures, not rounded away.
std::string place(const Reason& why, const std::string& what) {
  const auto each = [&](const char* axis) {
    return tolerance::in_words(std::round(why.figure(what + ' ' + axis) * 1e4) / 1e4);
  };
  return "near " + each("x") + ", " + each("y") + ", " + each("z") + " in the file";
}

struct Flaw {
  const char* what;
  const char* one;
  const char* many;
};
constexpr Flaw mended[] = {
    {"degenerate", " triangle without area was left out", " triangles without area were left out"},
    {"duplicate", " triangle that was there twice was left out", " triangles that were there twice were left out"},
    {"turned", " triangle that looked the wrong way was turned", " triangles that looked the wrong way were turned"},
    {"inside out", " shell that was inside out was turned", " shells that were inside out were turned"},
};
constexpr Flaw left[] = {
    {"open edge", " open edge", " open edges"},
    {"crowded edge", " edge where more than two triangles meet", " edges where more than two triangles meet"},
    {"one-sided", " surface that has only one side", " surfaces that have only one side"},
    {"crossing", " pair of triangles that run through each other", " pairs of triangles that run through each other"},
};

template <std::size_t n>
std::string flaws(const Reason& why, const Flaw (&known)[n]) {
  std::vector<std::string> said;
  for (const Flaw& flaw : known) {
    const double count = why.figure(flaw.what);
    if (count <= 0.0) continue;
    said.push_back(std::to_string(std::lround(count)) + (count > 1.0 ? flaw.many : flaw.one) +
                   (count > 1.0 ? ", the first " : ", ") + place(why, flaw.what));
  }
  std::string out;
  for (std::size_t i = 0; i < said.size(); ++i) out += (i == 0 ? "" : "; ") + said[i];
  return out;
}

std::string model(const Reason& why) {
  return capital(why.word("part")) + " (" + why.word("file") + ")";
}

std::string say_guesses(const Reason& why) {
  const bool unit = !why.word("unit").empty();
  const bool up = !why.word("up").empty();
  std::string out = model(why) + " states no ";
  out += unit && up ? "unit and no way up: " : unit ? "unit: " : "way up: ";
  if (unit)
    out += "read as " + why.word("unit") + " it is " + sizes(why, "") + "; as " + why.word("other") + " it would be " +
           sizes(why, "other ") + ". ";
  if (up) out += std::string(unit ? "I" : "i") + "ts axis " + why.word("up") + " was taken as up. ";
  return out + "Say it with " + (unit ? "`unit`" : "") + (unit && up ? " and " : "") + (up ? "`up`" : "") + ".";
}

}  // namespace

std::string say_mesh(const fit::Reason& why) {
  switch (why.code) {
    case Code::unit_guessed:
      return say_guesses(why);
    case Code::mesh_mended:
      return model(why) + " was mended: " + flaws(why, mended) + ".";
    case Code::mesh_surface: {
      const std::string what = flaws(why, left);
      return model(why) + " has no inside" + (what.empty() ? "" : ": " + what) +
             ". It counts as a surface: what comes into its box is undecided. Close it in the program that drew it.";
    }
    default:
      return {};
  }
}

}  // namespace baywright::output
