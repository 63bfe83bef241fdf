#!/usr/bin/env python3
"""Each snippet compiles as it stands, and with -DFAULT it is refused once, at the line that says so, for that reason.

    must_not_compile.py FOLDER COMPILER [FLAGS...]

A snippet marks its faulty line with `// refused: REGEX`; the compiler's message must match. The unmarked branch is the
snippet's own control, so a wrong include or a renamed function can't pass as a refusal.
"""
import os
import pathlib
import re
import subprocess
import sys

MARK = re.compile(r"// refused: (.+)")


def compile_it(command, snippet, *more):
    ended = subprocess.run([*command, *more, "-fsyntax-only", str(snippet)], capture_output=True, text=True,
                           env={**os.environ, "LC_ALL": "C"})
    errors = re.findall(r"^(.+?):(\d+):\d+: (?:fatal )?error: (.+)$", ended.stderr, re.M)
    return ended.returncode, errors, ended.stderr


def faults_of(command, snippet):
    """What is wrong with this snippet, as text; empty if it behaves."""
    marks = [(line, match[1]) for line, text in enumerate(snippet.read_text(encoding="utf-8").splitlines(), 1)
             if (match := MARK.search(text))]
    if len(marks) != 1:
        return f"{len(marks)} lines are marked, want 1"
    status, _, said = compile_it(command, snippet)
    if status != 0:
        return f"does not compile as it stands:\n{said}"
    line, reason = marks[0]
    status, errors, said = compile_it(command, snippet, "-DFAULT")
    if status == 0:
        return f"line {line} compiles, and must not"
    if [int(at) for _, at, _ in errors] != [line] or not re.search(reason, errors[0][2]):
        return f"want one error, at line {line}, that says /{reason}/; got:\n{said}"
    return ""


def main():
    folder, command = pathlib.Path(sys.argv[1]), sys.argv[2:]
    snippets = sorted(folder.glob("*.cpp"))
    found = [f"{snippet}: {fault}" for snippet in snippets if (fault := faults_of(command, snippet))]
    print("\n".join(found) if found else f"{len(snippets)} snippets behave")
    return 1 if found or not snippets else 0


if __name__ == "__main__":
    sys.exit(main())
