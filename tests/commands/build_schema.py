#!/usr/bin/env python3
"""build_schema.py SCHEMA PROGRAM BUILD...: build files against the editors' schema, and slips, which both the schema and
the program must refuse. Exit status 77: python3-jsonschema is missing."""
import copy
import json
import os
import pathlib
import shutil
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
    (["method"], "median"),
    (["measured_with"], "tape"),
    (["part"], REMOVE),
    (["part"], []),
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
    (["part", 1, "removable"], "yes"),
    (["part", 0, "rear_opening"], {"up": 1}),
    (["part", 0, "rear_opening", "up"], -1),
    (["part", 1, "screws"], "M3"),
    (["part", 1, "spacers"], 0),
    (["part", 1, "spacers"], "?"),
    (["part", 5, "bends"], [{"from": [1, 2]}]),
    (["part", 5, "bends", 0, "inside"], -1),
    (["shelf", "spacers"], []),
    (["shelf", "spacers"], [3, 3.0]),
    (["shelf", "screws"], ["M3 x 6", "M3 x 6"]),
    (["shelf", "screws"], ["M7 x 6"]),
    (["shelf", "heatsinks"], []),
    (["shelf", "pads"], [1.0]),
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
    (["part", 5, "solid", "prism", "outline"], "panel.step"),
    (["part", 5, "solid", "prism", "unit"], "mm"),
    (["part", 5, "at"], [1, 2]),
    (["part", 5, "unit"], "mm"),
    (["part", 5, "up"], "+z"),
    (["part", 7, "model"], 3),
    (["part", 7, "model"], REMOVE),
    (["part", 7, "solid"], {"box": [1, 2, 3]}),
    (["part", 7, "unit"], "ft"),
    (["part", 7, "up"], "z"),
    (["slot", 0, "on", "toward"], "+z"),
    (["slot", 0, "on", "at"], REMOVE),
    (["slot", 0, "socket"], "m2/M/H9"),
    (["slot", 0, "socket"], "sata"),
    (["slot", 0, "lengths"], REMOVE),
    (["slot", 0, "lengths"], []),
    (["slot", 0, "lengths"], [80]),
    (["slot", 0, "bus"], []),
    (["slot", 0, "bus"], "pcie 6 x4"),
    (["slot", 0, "cover", "above"], REMOVE),
    (["slot", 0, "cover", "length"], "78 ±1"),
    (["slot", 0, "cover", "width"], 0),
    (["slot", 0, "cover", "height"], 3),
    (["slot", 0, "bracket"], "full"),
    (["slot", 0, "splits"], [4]),
    (["slot", 1, "lengths"], [2280]),
    (["slot", 1, "standoff"], 2.5),
    (["slot", 1, "cover"], {"above": 5, "thickness": 1, "length": 78}),
    (["slot", 2, "bracket"], "half"),
    (["slot", 2, "splits"], [16]),
    (["slot", 2, "splits"], 4),
    (["slot", 2, "shares", 0, "with"], REMOVE),
    (["slot", 2, "shares", 0, "leaves"], ["nothing", "sata 6"]),
    (["slot", 2, "shares", 0, "leaves"], []),
    (["slot", 2, "shares", 0, "keeps"], "sata 6"),
    (["slot", 3, "socket"], "mini card"),
    (["slot", 3, "standoff"], REMOVE),
    (["slot", 3, "soldered"], [2242]),
    (["slot", 3, "holds", "use"], REMOVE),
    (["slot", 3, "holds", "use"], "mini card"),
    (["slot", 3, "holds", "height"], 3),
    (["slot", 3, "holds", "at"], 3),
    (["bay", 0, "takes"], REMOVE),
    (["bay", 0, "takes"], "m2"),
    (["bay", 0, "bus"], REMOVE),
    (["bay", 0, "bus"], "sas 24"),
    (["bay", 0, "on"], REMOVE),
    (["bay", 0, "on", "face"], "left"),
    (["bay", 0, "on", "toward"], "+z"),
    (["bay", 0, "socket"], "sata"),
    (["bay", 1, "on", "toward"], "-x"),
    (["bay", 0, "inside", "raised"], 2),
    (["bay", 0, "inside", "width"], 0),
    (["bay", 0, "raised"], 0),
    (["bay", 0, "spacers"], 5),
    (["bay", 0, "stands"], "upright"),
    (["bay", 0, "stands"], "on edge"),  # screwed through the sides
    (["bay", 0, "plug"], "ide"),
    (["bay", 0, "cable"], -1),
    (["bay", 0, "backplane"], True),  # with a cable
    (["bay", 0, "backplane"], "yes"),
    (["bay", 0, "fixing", "through"], "walls"),
    (["bay", 0, "fixing", "holes"], []),
    (["bay", 0, "fixing", "holes"], [28.5, 6.35]),
    (["bay", 0, "fixing", "holes"], [[28.5, 6.35, 1.0]]),
    (["bay", 0, "fixing", "holes"], [[28.5, "6.35"]]),
    (["bay", 0, "fixing", "holes"], REMOVE),
    (["bay", 0, "fixing", "diameter"], REMOVE),
    (["bay", 0, "fixing", "drilled"], "saw"),  # cuts, and makes no holes
    (["bay", 0, "fixing", "screw"], "M5"),
    (["bay", 0, "fixing", "screw"], REMOVE),  # its length is given
    (["bay", 0, "fixing", "sheet"], REMOVE),
    (["bay", 0, "fixing", "head"], "pan"),
    (["bay", 1, "cable"], 30),
    (["bay", 1, "inside"], {"behind": 30}),
    (["bay", 3, "raised"], 6),
    (["bay", 3, "fixing"], REMOVE),  # under stand-offs
    (["bay", 4, "plug"], "u2"),
    (["bay", 4, "cable"], 30),
    (["bay", 4, "inside"], {"behind": 30}),
    (["bay", 4, "fixing"], {"holes": [[20, 5]], "diameter": 3.4, "sheet": 1}),
    (["bay", 5, "inside"], {"behind": 50}),
    (["panel", 0, "takes"], "5.25in"),
    (["panel", 0, "fixing"], REMOVE),
    (["panel", 0, "fixing", "through"], "sides"),
    (["panel", 0, "inside", "width"], 80),
    (["panel", 0, "standoffs"], 5),
    (["panel", 0, "backplane"], True),  # with room behind
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
    (["drive", 2, "slots"], 2),  # with `top`
    (["drive", 2, "rows"], ["row 1"]),
    (["drive", 2, "bus"], "sata 6"),
    (["drive", 2, "bracket"], "half"),
    (["drive", 2, "wears"], [{"adapter": "adapter/m2-on-x4"}]),
    (["drive", 3, "slots"], 0),
    (["drive", 3, "slots"], 1.3),
    (["drive", 3, "slots"], "2"),
    (["drive", 4, "wears"], []),  # then it has no bracket
    (["drive", 4, "wears", 0, "adapter"], "adapter/2.5in-in-3.5in"),
    (["drive", 4, "wears", 0, "adapter"], "adapter/m2-on-x2"),
    (["drive", 4, "wears", 0, "position"], 5),
    (["drive", 4, "wears", 0, "position"], 1.5),
    (["drive", 4, "wears", 0, "raised"], 2),
    (["drive", 4, "wears", 0, "pad"], 1),
    (["drive", 5, "wears", 0, "position"], 2),
    (["drive", 6, "use"], "msata/2280"),
    (["drive", 6, "height"], 3),
    (["drive", 6, "wears"], [{"pad": 1}]),
    (["drive", 7, "plug"], "sata"),
    (["drive", 8, "use"], "2.5in/8"),
    (["drive", 8, "old"], True),  # with `length`
    (["drive", 8, "rows"], ["row 3"]),
    (["drive", 8, "rows"], 1),
    (["drive", 8, "plug"], "esata"),
    (["drive", 8, "top"], 3),
    (["drive", 8, "bracket"], "low"),
    (["drive", 9, "old"], "yes"),
    (["drive", 10, "wears", 0, "raised"], -1),
    (["drive", 10, "wears", 0, "from"], 3),
    (["drive", 12, "bus"], "pcie 4.0 x4"),
    (["drive", 12, "old"], True),
    (["drive", 12, "use"], "3.5in/25.4"),
    (["drive", 13, "plug"], "sata"),
    (["drive", 13, "use"], "5.25in/41"),
    (["drive", 14, "use"], "e1s"),
    (["drive", 14, "bus"], "sata 6"),
    (["drive", 14, "rows"], ["row 1"]),
    (["drive", 15, "top"], 1.3),
    (["drive", 15, "length"], 20),
    (["apart", 0, "between"], ["fins"]),
    (["apart", 0, "clearance"], REMOVE),
    (["bay", 0, "fixing", "nut"], "yes"),
    (["tool", 0, "name"], REMOVE),
    (["tool", 0, "shaft"], REMOVE),
    (["tool", 0, "shaft", "diameter"], 0),
    (["tool", 0, "shaft", "lenght"], 60),
    (["tool", 0, "handle"], REMOVE),
    (["tool", 0, "handle", "length"], "?"),
    (["tool", 0, "head"], {"diameter": 22, "height": 12}),
    (["tool", 0, "recess"], "PH1"),
    (["tool", 1, "head", "height"], REMOVE),
    (["tool", 1, "head", "lever"], -1),
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
            for part in build["part"]:
                if "model" in part:  # is looked for beside the build
                    shutil.copy(pathlib.Path(name).parent / part["model"], folder)
                outline = part.get("solid", {}).get("prism", {}).get("outline")
                if isinstance(outline, str):
                    shutil.copy(pathlib.Path(name).parent / outline, folder)
            wrong += [f"{name}: {list(error.absolute_path)}: {error.message}" for error in validator.iter_errors(build)]
            run = checked(program, folder, build)
            if run.returncode not in (0, 1) or run.stderr:
                wrong.append(f"{name}: the program refuses it: {run.stderr}")
            if os.path.basename(name).startswith("everything"):
                everything = build
        slips = [(f"{path} = {value}", spoilt(everything, path, value)) for path, value in SLIPS]
        places = ("slot", "bay", "panel")
        slips.append(("no place", {key: value for key, value in everything.items() if key not in places}))
        for what, slip in slips:
            if validator.is_valid(slip):
                wrong.append(f"the schema lets through {what}")
            run = checked(program, folder, slip)
            if run.returncode != 2 or len(run.stderr.splitlines()) != 1:
                wrong.append(f"the program lets through {what}, or says more than a line of it")
    for line in wrong:
        print(line, file=sys.stderr)
    print(f"{len(builds)} builds and {len(slips)} slips checked")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
