#!/usr/bin/env python3
"""build_schema.py SCHEMA PROGRAM BUILD...: build files against the editors' schema, and slips, which both the schema and
the program must refuse. Exit status 77: python3-jsonschema is missing."""
import copy
import json
import os
import subprocess
import sys
import tempfile
import tomllib

try:
    import jsonschema
except ImportError:
    sys.exit(77)

REMOVE = object()
# Path into the build whose every key is set (everything.build.toml), and the value that is wrong there.
SLIPS = [
    (["title"], REMOVE),
    (["title"], 3),
    (["title"], ""),
    (["title"], "two\nlines"),
    (["clearence"], 0.5),
    (["clearance"], -1),
    (["clearance"], "0.5"),
    (["method"], "sampled"),
    (["measured_with"], "tape"),
    (["part"], REMOVE),
    (["part"], []),
    (["slot"], REMOVE),
    (["drive"], REMOVE),
    (["part", 0, "under"], {"part": "cover", "by": 3}),
    (["part", 1, "name"], REMOVE),
    (["part", 1, "above"], REMOVE),
    (["part", 1, "at"], [0, 0, 0]),
    (["part", 1, "use"], "board/atx"),
    (["part", 1, "solid"], REMOVE),
    (["part", 1, "solid"], {}),
    (["part", 1, "solid", "box"], [1, 2, 3]),
    (["part", 1, "solid", "plate"], [1, 2]),
    (["part", 1, "solid", "plate"], [1, 2, 0]),
    (["part", 1, "solid", "plate"], [1, 2, "?"]),
    (["part", 1, "removable"], "yes"),
    (["part", 1, "turn"], 45),
    (["part", 1, "above", "by"], -1),
    (["part", 1, "above", "by"], True),
    (["part", 1, "above", "by", "lenght"], 3),
    (["part", 1, "above", "by", "known"], "guess"),
    (["part", 1, "above", "side"], "+x"),
    (["part", 2, "under", "at"], [1, 2, 3]),
    (["part", 3, "beside", "side"], "up"),
    (["part", 3, "beside", "side"], REMOVE),
    (["part", 4, "on", "by"], 3),
    (["part", 4, "on", "face"], "front"),
    (["part", 4, "solid", "cylinder", "radius"], 3),
    (["part", 5, "solid", "prism", "outline"], [[0, 0], [1, 1]]),
    (["part", 5, "at"], [1, 2]),
    (["slot", 0, "on", "toward"], "+z"),
    (["slot", 0, "on", "at"], REMOVE),
    (["slot", 0, "socket"], "m2/M/H9"),
    (["slot", 0, "socket"], "sata"),
    (["slot", 0, "lengths"], REMOVE),
    (["slot", 0, "lengths"], []),
    (["slot", 0, "lengths"], [80]),
    (["slot", 0, "bus"], []),
    (["slot", 0, "bus"], "pcie 6 x4"),
    (["slot", 0, "standoff"], "?"),
    (["slot", 1, "lengths"], [2280]),
    (["drive", 0, "bus"], ["pcie 4.0 x4", "sata 6"]),
    (["drive", 0, "use"], "m2/2280"),
    (["drive", 0, "use"], "m2/2281-D2-M"),
    (["drive", 0, "is"], "cache"),
    (["drive", 0, "top"], 0),
    (["drive", 0, "wears", 0, "from"], 3),
    (["drive", 0, "wears", 0, "pad"], 0),
    (["drive", 0, "wears", 0, "compress"], 30),
    (["drive", 0, "wears", 1, "compress"], "30 %"),
    (["drive", 0, "wears", 1, "heatsink", "fins"], 61),
    (["drive", 0, "wears", 1, "heatsink", "base"], REMOVE),
    (["drive", 0, "wears", 1, "heatsink", "fins"], REMOVE),
    (["drive", 2, "top"], 1.3),
    (["apart", 0, "between"], ["fins"]),
    (["apart", 0, "clearance"], REMOVE),
]


def spoilt(build, path, value):
    fresh = copy.deepcopy(build)
    holder = fresh
    for step in path[:-1]:
        holder = holder[step]
    if value is REMOVE:
        del holder[path[-1]]
    else:
        holder[path[-1]] = value
    return fresh


def toml_of(value):
    """A value as TOML, tables inline."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{json.dumps(k)} = {toml_of(v)}" for k, v in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(map(toml_of, value)) + "]"
    return json.dumps(value, ensure_ascii=False)


def checked(program, folder, build):
    name = os.path.join(folder, "x.build.toml")
    with open(name, "w", encoding="utf-8") as file:
        file.writelines(f"{key} = {toml_of(value)}\n" for key, value in build.items())
    return subprocess.run([program, "check", name], capture_output=True, text=True, timeout=20, check=False)


def main():
    schema_name, program, *builds = sys.argv[1:]
    with open(schema_name, encoding="utf-8") as file:
        schema = json.load(file)
    jsonschema.Draft7Validator.check_schema(schema)
    validator = jsonschema.Draft7Validator(schema)
    wrong = []
    everything = None
    with tempfile.TemporaryDirectory() as folder:
        for name in builds:
            with open(name, "rb") as file:
                build = tomllib.load(file)
            wrong += [f"{name}: {list(error.absolute_path)}: {error.message}" for error in validator.iter_errors(build)]
            run = checked(program, folder, build)
            if run.returncode not in (0, 1) or run.stderr:
                wrong.append(f"{name}: the program refuses it: {run.stderr}")
            if os.path.basename(name).startswith("everything"):
                everything = build
        for path, value in SLIPS:
            slip = spoilt(everything, path, value)
            if validator.is_valid(slip):
                wrong.append(f"the schema lets through a slip at {path}")
            run = checked(program, folder, slip)
            if run.returncode != 2:
                wrong.append(f"the program lets through a slip at {path}")
    for line in wrong:
        print(line, file=sys.stderr)
    print(f"{len(builds)} builds and {len(SLIPS)} slips checked")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
