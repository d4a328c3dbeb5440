"""Validates one-line JSON documents against a schema of docs/formats.

    validate_schema.py [--mutate] SCHEMA [COMMAND ...]

Documents come from COMMAND's standard output, or from standard input. With --mutate each document
is also spoilt in every way the schema should notice (a key removed, a value of a wrong type) and
extended by a key, which it must allow. Needs the Debian package python3-jsonschema.
"""

import copy
import json
import pathlib
import subprocess
import sys

try:
    from jsonschema import Draft202012Validator
except ImportError:
    sys.exit("validate_schema.py: jsonschema is missing; on Debian: apt install python3-jsonschema")


def bundled(path):
    """The schema with what it takes from its neighbours' $defs copied in."""
    schema = json.loads(path.read_text(encoding="utf-8"))
    definitions = schema.setdefault("$defs", {})
    taken = set()

    def walk(node):
        if isinstance(node, list):
            for each in node:
                walk(each)
        elif isinstance(node, dict):
            reference = node.get("$ref", "#")
            if not reference.startswith("#"):
                name, inside = reference.split("#")
                if name not in taken:
                    taken.add(name)
                    neighbour = bundled(path.with_name(name))["$defs"]
                    both = neighbour.keys() & definitions.keys()
                    # Two neighbours may have taken the same from a third.
                    clash = {key for key in both if neighbour[key] != definitions[key]}
                    assert not clash, f"{path.name} and {name} both define {clash}"
                    definitions.update(neighbour)
                node["$ref"] = "#" + inside
            for each in list(node.values()):
                walk(each)

    walk(schema)
    return schema


def places(node, path=(), seen=None):
    """The path of every key of a document; of keys that repeat in a list one is enough."""
    seen = set() if seen is None else seen
    if isinstance(node, dict):
        for key, value in node.items():
            here = path + (key,)
            name = tuple(step for step in here if isinstance(step, str))
            if name not in seen:
                seen.add(name)
                yield here
            yield from places(value, here, seen)
    elif isinstance(node, list):
        for index, value in enumerate(node):
            yield from places(value, path + (index,), seen)


def mutations(document):
    """(what was done, spoilt document, whether it must still be valid)"""
    for path in list(places(document)):
        name = ".".join(map(str, path))
        for what, allowed in (("without", False), ("wrong type at", False), ("more beside", True)):
            spoilt = copy.deepcopy(document)
            node = spoilt
            for step in path[:-1]:
                node = node[step]
            if what == "without":
                del node[path[-1]]
            elif what == "wrong type at":
                node[path[-1]] = {"": 0} if not isinstance(node[path[-1]], dict) else ""
            else:
                node["a_later_key"] = 1
            yield f"{what} {name}", spoilt, allowed


def main():
    arguments = sys.argv[1:]
    mutate = "--mutate" in arguments
    if mutate:
        arguments.remove("--mutate")
    schema = bundled(pathlib.Path(arguments[0]))
    Draft202012Validator.check_schema(schema)
    validator = Draft202012Validator(schema)
    if len(arguments) > 1:
        text = subprocess.run(arguments[1:], check=True, stdout=subprocess.PIPE).stdout.decode()
    else:
        text = sys.stdin.read()
    lines = text.splitlines()
    if not lines:
        sys.exit("no document")
    failed = False
    tried = 0
    for number, line in enumerate(lines, 1):
        document = json.loads(line)
        for error in validator.iter_errors(document):
            failed = True
            print(f"document {number}: {error.json_path}: {error.message}")
        if not mutate:
            continue
        for what, spoilt, allowed in mutations(document):
            tried += 1
            if validator.is_valid(spoilt) != allowed:
                failed = True
                print(f"{what}: should be {'valid' if allowed else 'refused'}")
    print(f"{len(lines)} documents, {tried} mutations")
    sys.exit(1 if failed else 0)


main()
