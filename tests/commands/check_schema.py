#!/usr/bin/env python3
"""check_schema.py SCHEMA OUTPUT...: `check --json` outputs against the schema, and spoilt copies of them, which it must
refuse. Exit status 77: python3-jsonschema is missing."""
import copy
import json
import sys

try:
    import jsonschema
except ImportError:
    sys.exit(77)

REMOVE = object()
# What --together adds.
TOGETHER = {
    "all": False,
    "assignment": [{"drive": "disk", "place": "bay"}],
    "left": [{"drive": "card", "why": "its place is taken"}],
    "costs": [{"place": "slot", "with": "bay", "leaves": "nothing"}],
}


def spoilt(document):
    """(what, copy) with one slip each."""

    def slip(what, change):
        fresh = copy.deepcopy(document)
        change(fresh)
        return what, fresh

    def put(holder, key, value):
        if value is REMOVE:
            del holder[key]
        else:
            holder[key] = value

    def at(path, key, value):
        def change(fresh):
            holder = fresh
            for step in path:
                holder = holder[step]
            put(holder, key, value)
        return slip(f"{path} {key}", change)

    yield at([], "schema", 2)
    yield at([], "method", "guess")
    yield at([], "seatings", REMOVE)
    first = ["seatings", 0]
    yield at(first, "verdict", "maybe")
    yield at(first, "verdict", "note")
    yield at(first, "share_that_fits", 1.5)
    yield at(first, "share_that_fits", REMOVE)
    yield at(first + ["questions"], "bus", REMOVE)
    yield at(first + ["questions", "interface"], "answer", "marginal")
    for i, found in enumerate(document["seatings"][0]["findings"]):
        finding = first + ["findings", i]
        yield at(finding, "kind", "collision")
        yield at(finding, "verdict", "ok")
        yield at(finding, "between", ["one"])
        yield at(finding, "say", "")
        yield at(finding, "toward", [0, 1])
        if found["gap"] is not None:
            yield at(finding + ["gap"], "nominal", None)
            yield at(finding + ["gap"], "min", "open")
            yield at(finding + ["gap"], "asked", -1)
        if found["chain"]:
            yield at(finding + ["chain", 0], "known", "guessed")
            yield at(finding + ["chain", 0], "minus", -0.1)
            yield at(finding + ["chain", 0], "source", None)


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        schema = json.load(file)
    jsonschema.Draft7Validator.check_schema(schema)
    validator = jsonschema.Draft7Validator(schema)
    wrong, refused, nulls, together = [], 0, 0, 0
    kinds = set()
    for name in sys.argv[2:]:
        with open(name, encoding="utf-8") as file:
            document = json.load(file)
        wrong += [f"{name}: {list(error.absolute_path)}: {error.message}" for error in validator.iter_errors(document)]
        for what, copy_of in spoilt(document):
            if validator.is_valid(copy_of):
                wrong.append(f"{name}: lets through a slip at {what}")
            refused += 1
        findings = [f for s in document["seatings"] for f in s["findings"]] + document["notes"]
        kinds |= {f["kind"] for f in findings}
        nulls += sum(f["gap"] is not None and None in (f["gap"]["min"], f["gap"]["max"]) for f in findings)
        together += bool(document.get("together", {}).get("assignment"))
        more = dict(document, added_later=1)
        if not validator.is_valid(more):
            wrong.append(f"{name}: refuses a field that is added")
        if not validator.is_valid(dict(document, together=TOGETHER)):
            wrong.append(f"{name}: refuses `together`")
        for key, value in (("all", "yes"), ("assignment", [{"drive": "d"}]), ("left", [{"drive": "d", "why": 3}]),
                           ("costs", [{"place": "p", "with": "q"}])):
            if validator.is_valid(dict(document, together=dict(TOGETHER, **{key: value}))):
                wrong.append(f"{name}: lets through a slip at together {key}")
    # The outputs have to show what the schema is about, or this proves little.
    for kind in ("form factor", "interface", "bus", "length", "height class", "clearance", "link", "compression", "role",
                 "exact", "needs", "seating", "holes", "screw", "connector", "bracket", "occupied", "cover"):
        if kind not in kinds:
            wrong.append(f"no output has a finding of kind {kind}")
    if together == 0:
        wrong.append("no output has drives together")
    if nulls == 0:
        wrong.append("no output has an open limit")
    for line in wrong:
        print(line, file=sys.stderr)
    print(f"{len(sys.argv) - 2} outputs and {refused} slips checked")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
