#!/usr/bin/env python3
"""schema.py SCHEMA FILE...: JSON documents against a schema in which every object names what it requires; and each
document with one required field taken away, at every depth, which the schema must refuse. Exit status 77:
python3-jsonschema is missing."""
import copy
import json
import sys

try:
    import jsonschema
except ImportError:
    sys.exit(77)


def without_one(value):
    """Copies of the value, each with one key of one object taken away."""
    if isinstance(value, dict):
        for key in value:
            yield {name: each for name, each in value.items() if name != key}, key
            for changed, what in without_one(value[key]):
                yield {**value, key: changed}, what
    elif isinstance(value, list):
        for i, each in enumerate(value[:2]):
            for changed, what in without_one(each):
                yield value[:i] + [changed] + value[i + 1:], what


def required(schema):
    """Names that some object of the schema requires."""
    if isinstance(schema, dict):
        yield from schema["required"] if isinstance(schema.get("required"), list) else []
        for each in schema.values():
            yield from required(each)
    elif isinstance(schema, list):
        for each in schema:
            yield from required(each)


def main(schema_file, files):
    schema = json.load(open(schema_file, encoding="utf-8"))
    validator = jsonschema.Draft7Validator(schema)
    names = set(required(schema))
    refused = 0
    for file in files:
        document = json.load(open(file, encoding="utf-8"))
        for error in validator.iter_errors(document):
            sys.exit(f"{file}: {list(error.absolute_path)}: {error.message}")
        for changed, what in without_one(copy.deepcopy(document)):
            if what in names and validator.is_valid(changed):
                sys.exit(f"{file}: passes without `{what}`")
            refused += what in names
    if refused == 0:
        sys.exit("nothing was tried")


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2:])
