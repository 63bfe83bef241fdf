#!/usr/bin/env python3
"""rank_schema.py SCHEMA OUTPUT...: `rank --json` outputs against the schema, and spoilt copies of them, which it must
refuse. Exit status 77: python3-jsonschema is missing."""
import copy
import json
import sys

try:
    import jsonschema
except ImportError:
    sys.exit(77)

REMOVE = object()


def slips(document):
    """(path, key, wrong value) of one slip each."""
    yield [], "schema", 2
    yield [], "take", 3
    yield [], "now", "tape"
    yield [], "drives", []
    for i, drive in enumerate(document["drives"]):
        here = ["drives", i]
        for key in drive:
            yield here, key, REMOVE
        for key in ("price", "tbw", "read_mb_s", "lost_share"):
            yield here, key, -1
            yield here, key, "1"
        yield here, "lost_share", 1.5
        yield here, "standing", "fine"
        yield here, "dram", "maybe"
        if drive["fit"] is not None:
            yield here + ["fit"], "verdict", "ok"
            yield here + ["fit"], "deciding", REMOVE
        if drive["remarks"]:
            yield here + ["remarks", 0], "kind", "odd"
            yield here + ["remarks", 0], "say", ""


def spoilt(document, path, key, value):
    fresh = copy.deepcopy(document)
    holder = fresh
    for step in path:
        holder = holder[step]
    if value is REMOVE:
        del holder[key]
    else:
        holder[key] = value
    return fresh


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        schema = json.load(file)
    jsonschema.Draft7Validator.check_schema(schema)
    validator = jsonschema.Draft7Validator(schema)
    wrong, refused, fits, kinds, nulls = [], 0, 0, set(), 0
    for name in sys.argv[2:]:
        with open(name, encoding="utf-8") as file:
            document = json.load(file)
        wrong += [f"{name}: {list(error.absolute_path)}: {error.message}" for error in validator.iter_errors(document)]
        for path, key, value in slips(document):
            refused += 1
            if validator.is_valid(spoilt(document, path, key, value)):
                wrong.append(f"{name}: lets through a slip at {path} {key}")
        if not validator.is_valid(dict(document, added_later=1)):
            wrong.append(f"{name}: refuses a field that is added")
        fits += sum(drive["fit"] is not None for drive in document["drives"])
        kinds |= {remark["kind"] for drive in document["drives"] for remark in drive["remarks"]}
        nulls += sum(drive["tbw"] is None for drive in document["drives"])
    # The outputs have to show what the schema is about, or this proves little.
    if not fits or not nulls or len(kinds) < 6:
        wrong.append(f"the outputs show too little: {fits} fits, {nulls} missing figures, remarks {sorted(kinds)}")
    for line in wrong:
        print(line, file=sys.stderr)
    print(f"{len(sys.argv) - 2} outputs and {refused} slips checked")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
