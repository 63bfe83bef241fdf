#!/usr/bin/env python3
"""Holds the order of the rooms: reads every include under src/ as text, so every #if branch counts.

    layering.py ROOT...                      prints each fault as path:line: what; exit status 1 if there is any
    layering.py --expect FILE ROOT...        exit status 0 only if the faults are exactly the lines of FILE
"""
import argparse
import difflib
import pathlib
import re
import sys

# From the ground up: a room may include itself and what stands before it.
ROOMS = ["geometry", "tolerance", "standards", "parts", "build", "fit", "value", "thermal", "plans", "output", "render",
         "viewer", "cli"]

# (room, other): the headers of the other room that this one may include, where the order alone would allow all of them.
# build places solids and measures nothing; output draws sections and shows findings, but computes no figure.
ALLOWED = {
    ("tolerance", "geometry"): set(),
    ("standards", "geometry"): set(),
    ("value", "geometry"): set(),
    ("build", "geometry"): {"vectors.h", "solid.h", "limits.h"},
    ("output", "geometry"): {"vectors.h", "solid.h", "limits.h", "section.h", "overlap.h"},
    ("output", "fit"): {"finding.h", "scene.h", "seated.h", "seating.h", "verdict.h"},
}

# The one file of cli that may include viewer.
OPENS_THE_WINDOW = "src/cli/view.cpp"

# Declares each .js and .css file of output, which stand beside the sources that write pages.
EMBEDDED = "output/embedded.h"

# Third-party headers by how their path starts, and the rooms that may include them. An angle include that is neither
# here nor a standard header (those have no slash and no dot) is a fault, so a new dependency has to be entered.
SHAPES = set(ROOMS) - {"tolerance", "standards", "value"}
THIRD_PARTY = [
    ("glm/", SHAPES),
    ("polyclipping/", {"geometry"}),
    ("toml++/", {"parts", "build"}),
    ("tiny_obj_loader.h", {"parts"}),
    ("nlohmann/", {"output", "viewer"}),  # viewer: the user's settings
    ("cairo", {"output"}),
    ("ft2build.h", {"output"}),
    ("zip.h", {"output"}),
    ("CLI/", {"cli"}),
    ("doctest/", set()),
    ("epoxy/", {"render", "viewer"}),
    ("GL/", set()),  # through epoxy only, which loads what is there
    ("EGL/", set()),
    ("GLFW/", {"viewer"}),
    ("imgui", {"viewer"}),
    ("backends/imgui", {"viewer"}),
    ("unistd.h", {"output", "viewer", "cli"}),  # the operating system's: is it a terminal, writing a file whole
    ("fcntl.h", {"output", "cli"}),
    ("sys/", {"output", "cli"}),
]

# A comment, or something that only looks as if it held one. An apostrophe after a digit or letter separates digits.
TOKEN = re.compile(
    r"""//(?:\\\n|[^\n])*            # line comment, continued by a backslash
      | /\*.*?(?:\*/|\Z)             # block comment
      | R"(?P<mark>[^\s()\\]{0,16})\(.*?\)(?P=mark)"   # raw string
      | "(?:\\.|[^"\\\n])*"          # string, also the name of a quoted include
      | (?<![0-9A-Za-z_])'(?:\\.|[^'\\\n])*'           # character
    """, re.S | re.X)
INCLUDE = re.compile(r'^[ \t]*\#[ \t]*include(?:_next)?\b[ \t]*(?:"([^"\n]*)"|<([^>\n]*)>|(.*))', re.M)


def without_comments(text):
    """The text with comments and raw strings blanked, every line still on its line."""
    def blank(match):
        token = match.group()
        return token if token[0] in "\"'" else "\n" * token.count("\n") or " "
    return TOKEN.sub(blank, text)


def line_of(text, at):
    return text.count("\n", 0, at) + 1


def includes(path):
    """(line, quoted name or None, angle name or None) of each include."""
    text = without_comments(path.read_text(encoding="utf-8"))
    return [(line_of(text, match.start()), match[1], match[2]) for match in INCLUDE.finditer(text)]


class Layering:
    def __init__(self, root):
        self.root = root
        self.src = root / "src"
        self.faults = []
        self.within = {}  # file -> {file of the same room that it includes: line}

    def fault(self, path, line, what):
        self.faults.append((str(path), line, what))

    def check(self):
        files = sorted(path for path in self.src.rglob("*") if path.is_file()) if self.src.is_dir() else []
        if not files:
            self.fault("src", 0, "no files found")
        for path in files:
            self.check_file(path.relative_to(self.root), path)
        self.check_cycles()
        self.check_tests()
        return [f"{path}:{line}: {what}" for path, line, what in sorted(self.faults)]

    def check_file(self, name, path):
        if len(name.parts) != 3 or name.parts[1] not in ROOMS:
            self.fault(name, 1, "is not directly in a room")  # deeper would not be compiled either
            return
        if name.parts[1] == "output" and name.suffix in (".js", ".css"):
            self.check_page_file(name, path)
            return
        if name.suffix not in (".h", ".cpp"):
            self.fault(name, 1, "is neither .h nor .cpp")
            return
        found = includes(path)
        own_header = "/".join(name.with_suffix(".h").parts[1:])
        if name.suffix == ".cpp" and (self.src / own_header).is_file() and (not found or found[0][1] != own_header):
            self.fault(name, found[0][0] if found else 1, f'must begin with "{own_header}", so that it compiles alone')
        for line, quoted, angle in found:
            if quoted is not None:
                self.check_own(name, line, quoted)
            elif angle is not None:
                self.check_angle(name, line, angle)
            else:
                self.fault(name, line, "an include must name its file, not a macro")

    def check_page_file(self, name, path):
        """What pages bring along is put into the program, and its text into one <script> or <style>."""
        text = path.read_text(encoding="utf-8")
        for match in re.finditer(r"</(?:script|style)|<!--|https?://|@import|\burl\(", text, re.I):
            self.fault(name, line_of(text, match.start()), f"{match.group()}: a page is whole, and asks for nothing")
        constant = name.name.replace(".", "_")
        header = self.src / EMBEDDED
        if not header.is_file() or not re.search(rf"\b{constant};", without_comments(header.read_text(encoding="utf-8"))):
            self.fault(name, 1, f"is not declared in src/{EMBEDDED} as {constant}")

    def check_own(self, name, line, quoted):
        parts = pathlib.PurePosixPath(quoted).parts
        if ".." in parts or "/".join(parts) != quoted:  # the second also holds for ./ and for absolute paths
            self.fault(name, line, f'"{quoted}": write the path from src, without . and ..')
            return
        if not (self.src / quoted).is_file():
            self.fault(name, line, f'"{quoted}" names no file under src')
            return
        if not quoted.endswith(".h"):
            self.fault(name, line, f'"{quoted}" is not a header')
            return
        own, other = name.parts[1], parts[0]
        if other not in ROOMS:
            return  # the file itself is reported
        header = "/".join(parts[1:])
        if ROOMS.index(other) > ROOMS.index(own) or ALLOWED.get((own, other)) == set():
            self.fault(name, line, f"{own} may not include {other}")
        elif header not in ALLOWED.get((own, other), {header}):
            self.fault(name, line, f"{own} may not include {quoted}")
        elif (own, other) == ("cli", "viewer") and str(name) != OPENS_THE_WINDOW:
            self.fault(name, line, f"only {OPENS_THE_WINDOW} may include viewer")
        elif own == other:
            self.within.setdefault(str(name), {})[f"src/{quoted}"] = line

    def check_angle(self, name, line, angle):
        if (self.src / angle).is_file():
            self.fault(name, line, f'<{angle}>: our own headers stand in quotes')
            return
        if "/" not in angle and "." not in angle:
            return
        rooms = next((rooms for start, rooms in THIRD_PARTY if angle.startswith(start)), None)
        if rooms is None:
            self.fault(name, line, f"<{angle}> is not declared in tests/layering/layering.py")
        elif name.parts[1] not in rooms:
            self.fault(name, line, f"{name.parts[1]} may not include <{angle}>")

    def check_cycles(self):
        """Reports each cycle at the include that closes it, going round from its first file by name."""
        done = set()

        def walk(file, way):
            if file in way:
                cycle = way[way.index(file):] + [file]
                self.fault(way[-1], self.within[way[-1]][file], "cycle: " + " -> ".join(cycle))
                return
            if file in done:
                return
            for other in sorted(self.within.get(file, {})):
                walk(other, way + [file])
            done.add(file)

        for file in sorted(self.within):
            walk(file, [])

    def check_tests(self):
        tests = self.root / "tests"
        files = [path for suffix in ("*.h", "*.cpp") for path in tests.rglob(suffix)
                 if path.relative_to(tests).parts[0] != "layering"]
        if not files:
            self.fault("tests", 0, "no files found")
        for path in files:
            text = without_comments(path.read_text(encoding="utf-8"))
            for match in re.finditer(r"\bApprox\b", text):
                self.fault(path.relative_to(self.root), line_of(text, match.start()),
                           "Approx is relative and lets 1e-3 mm through; use test::check_mm")
            for match in re.finditer(r'\bTEST_CASE\("[^"\n]*;', text):
                self.fault(path.relative_to(self.root), line_of(text, match.start()),
                           "a `;` in a test's name: ctest cuts it in two")


def main():
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--expect", type=pathlib.Path)
    options.add_argument("root", nargs="+", type=pathlib.Path)
    given = options.parse_args()
    found = [line for root in given.root for line in Layering(root).check()]
    if given.expect is None:
        print("\n".join(found) if found else "the layers hold")
        return 1 if found else 0
    wanted = given.expect.read_text(encoding="utf-8").splitlines()
    difference = list(difflib.unified_diff(wanted, found, str(given.expect), "found", lineterm=""))
    print("\n".join(difference) if difference else f"exactly the {len(found)} faults expected")
    return 1 if difference or not found else 0


if __name__ == "__main__":
    sys.exit(main())
