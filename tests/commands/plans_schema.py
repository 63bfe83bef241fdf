#!/usr/bin/env python3
"""plans_schema.py SCHEMA OUTPUT...: `plans --json` outputs against the schema, and spoilt copies of them, which it must
refuse. Exit status 77: python3-jsonschema is missing."""
import copy
import json
import sys

try:
    import jsonschema
except ImportError:
    sys.exit(77)

REMOVE = object()


def spoilt(document):
    """(what, copy) with one slip each."""

    def at(path, key, value):
        fresh = copy.deepcopy(document)
        holder = fresh
        for step in path:
            holder = holder[step]
        if value is REMOVE:
            del holder[key]
        else:
            holder[key] = value
        return f"{path} {key}", fresh

    yield at([], "schema", 2)
    yield at([], "whole", "yes")
    yield at([], "plans", REMOVE)
    yield at([], "tried", -1)
    yield at(["before"], "verdict", "maybe")
    yield at(["before"], "room", "wide")
    for i, plan in enumerate(document["plans"]):
        yield at(["plans", i], "number", 0)
        yield at(["plans", i], "changes", [])
        yield at(["plans", i], "edits", REMOVE)
        for j, change in enumerate(plan["changes"]):
            yield at(["plans", i, "changes", j], "kind", "magic")
            yield at(["plans", i, "changes", j], "prices", ["cheap"])
            yield at(["plans", i, "changes", j], "value", None)
            if "cut" in change:
                yield at(["plans", i, "changes", j, "cut"], "low", [0])
        for j, _ in enumerate(plan["edits"]):
            yield at(["plans", i, "edits", j], "what", "replace")
            yield at(["plans", i, "edits", j], "path", [])
    if document["contradiction"] is not None:
        yield at(["contradiction"], "between", ["one"])
        yield at(["contradiction"], "say", "")
    if document["tallest"] is not None:
        yield at(["tallest"], "height", "tall")


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        schema = json.load(file)
    jsonschema.Draft7Validator.check_schema(schema)
    validator = jsonschema.Draft7Validator(schema)
    wrong, refused = [], 0
    kinds, contradictions, tallest = set(), 0, 0
    for name in sys.argv[2:]:
        with open(name, encoding="utf-8") as file:
            document = json.load(file)
        wrong += [f"{name}: {list(error.absolute_path)}: {error.message}" for error in validator.iter_errors(document)]
        for what, copy_of in spoilt(document):
            if validator.is_valid(copy_of):
                wrong.append(f"{name}: lets through a slip at {what}")
            refused += 1
        if not validator.is_valid(dict(document, added_later=1)):
            wrong.append(f"{name}: refuses a field that is added")
        kinds |= {change["kind"] for plan in document["plans"] for change in plan["changes"]}
        contradictions += document["contradiction"] is not None
        tallest += document["tallest"] is not None
    # The outputs have to show what the schema is about, or this proves little.
    for kind in ("spacer", "no heatsink", "other heatsink", "lower heatsink", "other drive", "opening", "other pad",
                 "other place", "turned", "adapter"):
        if kind not in kinds:
            wrong.append(f"no output has a change of kind {kind}")
    if contradictions == 0:
        wrong.append("no output has a contradiction")
    if tallest == 0:
        wrong.append("no output has a tallest heatsink")
    for line in wrong:
        print(line, file=sys.stderr)
    print(f"{len(sys.argv) - 2} outputs and {refused} slips checked")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
