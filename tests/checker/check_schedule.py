#!/usr/bin/env python3
"""Checks schedule documents, as `wetout schedule --json` prints them, with nothing but themselves.

    check_schedule.py FILE...        - is standard input; a file may hold one document a line

Prints the broken rules, one a line, or "kept: N rules of M steps". Exit 0: all kept; 1: a rule is
broken; 2: not a schedule document. docs/formats/schedule.md says how it is checked.
"""

import json
import pathlib
import sys

sys.dont_write_bytecode = True
sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent))

from schedule_check.document import Ambiguous, Unreadable, read  # noqa: E402
from schedule_check.rules import check  # noqa: E402


def documents(name: str):
    text = sys.stdin.read() if name == "-" else pathlib.Path(name).read_text(encoding="utf-8")
    lines = [line for line in text.splitlines() if line.strip()]
    if not lines:
        raise Unreadable("empty")
    try:
        return [json.loads(line) for line in lines]
    except json.JSONDecodeError:
        return [json.loads(text)]


def main(names: list[str]) -> int:
    if not names or names[0] in ("-h", "--help"):
        print(__doc__.strip())
        return 0 if names else 2
    status = 0
    for name in names:
        try:
            for document in documents(name):
                try:
                    schedule = read(document)
                except Ambiguous as twice:
                    print(twice)
                    status = max(status, 1)
                    continue
                report = check(schedule)
                for broken in report.broken:
                    print(broken)
                if report.broken:
                    status = max(status, 1)
                else:
                    print(f"kept: {report.rules} rules of {len(schedule.timeline)} steps")
        except (Unreadable, OSError, json.JSONDecodeError, UnicodeDecodeError) as error:
            print(f"{name}: {error}", file=sys.stderr)
            status = 2
    return status


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
