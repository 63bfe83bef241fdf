#!/usr/bin/env python3
"""Holds that no row is forgotten in the list of sources: reads src/standards as text, so no compiler is needed.

    rows_complete.py ROOT                  prints each fault; exit status 1 if there is any
    rows_complete.py --expect FILE ROOT    exit status 0 only if the faults are exactly the lines of FILE

A family is a namespace below standards. What its headers offer is searched in the text of its `rows()` and of the
functions that this calls, where those are helpers and not rows themselves:
  - each function that returns a Dimension, or several;
  - each function without parameters that returns a struct with a Dimension in it, or a span of such;
  - each Dimension in a struct, and each such struct in another, as `.name`, as often as structs have one of that name.
"""
import argparse
import difflib
import pathlib
import re
import sys

DIMENSION = r"(?:std::(?:optional|vector)<)?(?:tolerance::)?Dimension>?"
FEWEST_FAMILIES = 7  # a family that drops out of the search would be missed by nobody


def without_comments(text):
    text = re.sub(r'"(?:\\.|[^"\\\n])*"', '""', text)
    return re.sub(r"//[^\n]*|/\*.*?\*/", "", text, flags=re.S)


def family_of(text):
    found = re.search(r"namespace baywright::standards::(\w+) \{", text)
    return found[1] if found else None


def closing(text, at):
    """Where the brace that opens at `at` closes."""
    depth = 0
    for i in range(at, len(text)):
        depth += {"{": 1, "}": -1}.get(text[i], 0)
        if depth == 0:
            return i
    return len(text)


def structs(text):
    for found in re.finditer(r"^struct (\w+) \{", text, re.M):
        yield found[1], text[found.end():closing(text, found.end() - 1)]


def functions(text):
    """(name, body) of each function that starts at the beginning of a line, as the format has them."""
    for found in re.finditer(r"^[A-Za-z][\w:<>,&*\[\] ]*?[\s&*](\w+)\([^;{}]*\)[^;{}]*\{", text, re.M):
        yield found[1], text[found.end():closing(text, found.end() - 1)]


class Family:
    def __init__(self, name):
        self.name, self.headers, self.sources = name, "", ""

    def members(self):
        """(struct, member) of each Dimension in a struct."""
        for struct, body in structs(self.headers):
            for found in re.finditer(rf"(?:^|[\s;]){DIMENSION}\s+([\w ,]+?)\s*(?:=[^;]*|\{{[^;]*)?;", body):
                for member in found[1].split(","):
                    yield struct, member.strip()

    def holders(self):
        """Structs with a Dimension in them, or with such a struct."""
        held = {struct for struct, _ in self.members()}
        while True:
            more = {struct for struct, body in structs(self.headers)
                    if any(re.search(rf"\b{inner}\b[>&]*\s+\w+\s*;", body) for inner in held)} - held
            if not more:
                return held
            held |= more

    def nested(self):
        """(struct, member) of each struct with a Dimension that stands in another."""
        for struct, body in structs(self.headers):
            for holder in self.holders():
                for found in re.finditer(rf"(?:^|[\s;<]){holder}>?\s+(\w+)\s*;", body):
                    yield struct, found[1]

    def offered(self):
        """Functions that have to be called."""
        names = re.findall(rf"\[\[nodiscard\]\]\s+(?:const\s+)?{DIMENSION}&?\s+(\w+)\(", self.headers)
        for holder in self.holders():
            names += re.findall(rf"\[\[nodiscard\]\]\s+(?:std::span<)?const {holder}[>&]+\s+(\w+)\(\)", self.headers)
        return sorted(set(names) - {"rows"})

    def text_of_rows(self):
        """The body of rows() and of the helpers that it calls; None without rows()."""
        bodies = {}
        for name, body in functions(self.sources):
            bodies.setdefault(name, []).append(body)
        if "rows" not in bodies:
            return None
        stop = set(re.findall(r"\[\[nodiscard\]\][^;]*?(\w+)\(", self.headers))
        lists = {name for name in stop if name.endswith("_rows")}  # each file of a family lists its own
        done, todo, text = set(), ["rows"], ""
        while todo:
            name = todo.pop()
            done.add(name)
            for body in bodies[name]:
                text += body
                todo += [called for called in set(re.findall(r"\b(\w+)\(", body))
                         if called in bodies and called not in done and (called not in stop or called in lists)]
        return text

    def faults(self, all_rows):
        members, offered = list(self.members()), self.offered()
        if not members and not offered:
            return
        if f"{self.name}::rows()" not in all_rows:
            yield f"{self.name}: rows() is not in all_rows.cpp"
        text = self.text_of_rows()
        if text is None:
            yield f"{self.name}: has dimensions and no rows()"
            return
        for name in offered:
            if not re.search(rf"(?<![.>\w]){name}\b", text):
                yield f"{self.name}: {name}() is not in rows()"
        members += list(self.nested())
        for member in sorted({member for _, member in members}):
            wanted = [struct for struct, one in members if one == member]
            found = len(re.findall(rf"[.>]{member}\b(?!\()", text))
            if found < len(wanted):
                yield f"{self.name}: {member} of {', '.join(wanted)} is {found} times in rows()"


def read(root):
    families, all_rows = {}, ""
    for path in sorted((root / "src/standards").iterdir()):
        text = without_comments(path.read_text(encoding="utf-8"))
        if path.name == "all_rows.cpp":
            all_rows = text
        name = family_of(text)
        if name is None or path.suffix not in (".h", ".cpp"):
            continue
        family = families.setdefault(name, Family(name))
        if path.suffix == ".h":
            family.headers += text
        else:
            family.sources += text
    return families, all_rows


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--expect", type=pathlib.Path)
    parser.add_argument("root", type=pathlib.Path)
    given = parser.parse_args()
    families, all_rows = read(given.root)
    faults, names, counted = [], 0, 0
    for family in families.values():
        faults += family.faults(all_rows)
        here = len(list(family.members())) + len(list(family.nested())) + len(family.offered())
        names, counted = names + here, counted + (here > 0)
    if given.expect:
        wanted = given.expect.read_text(encoding="utf-8").splitlines()
        difference = list(difflib.unified_diff(wanted, sorted(faults), "expected", "found", lineterm=""))
        print("\n".join(difference) or f"{len(wanted)} faults, each seen")
        return 1 if difference or not wanted else 0
    if counted < FEWEST_FAMILIES:
        faults.append(f"{counted} families with dimensions were found, at least {FEWEST_FAMILIES} wanted")
    print("\n".join(faults) or f"{names} names in {counted} families, none forgotten")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
