#!/usr/bin/env python3
"""Breaks good schedule documents, each in one way, and asks the checker to find it.

    break_schedules.py [FILE...]     - is standard input; without FILE the sample of make_sample.py

The documents themselves must be kept. Then 200 distinct breaks are drawn over all kinds with a
fixed seed; each must be told, by the rule that was broken, of the step that was concerned. A break
is made so that it cannot be harmless. Exit 0: every one was told.
"""

import collections
import pathlib
import random
import sys

sys.dont_write_bytecode = True
sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent))

from breaks import KINDS, all_breaks  # noqa: E402
from check_schedule import documents  # noqa: E402
from make_sample import document  # noqa: E402
from schedule_check.document import read  # noqa: E402
from schedule_check.rules import check  # noqa: E402
from spoil import Break  # noqa: E402

COUNT = 200
SEED = 20260613


def drawn(breaks: list[Break]) -> list[Break]:
    """As many of each kind as there are, in turns, until there are enough."""
    random.Random(SEED).shuffle(breaks)
    of = {kind: [one for one in breaks if one.kind == kind] for kind in KINDS}
    taken: list[Break] = []
    while len(taken) < COUNT and any(of.values()):
        for kind in KINDS:
            if of[kind] and len(taken) < COUNT:
                taken.append(of[kind].pop())
    return taken


def found(one: Break) -> tuple[bool, list[str]]:
    """Whether the rule was told for the step, and all that was told."""
    told = check(read(one.make())).broken
    good = any(broken.rule in one.rules and any(step == broken.step or step in broken.text
                                                for step in one.steps) for broken in told)
    return good, [str(broken) for broken in told]


def main(names: list[str]) -> int:
    if names and names[0] in ("-h", "--help"):
        print(__doc__.strip())
        return 0
    failed = 0
    possible: list[Break] = []
    for name in names or ["sample"]:
        for made in documents(name) if names else [document()]:
            broken = check(read(made)).broken
            failed += len(broken)
            for one in broken:
                print(f"{name}: was to be kept: {one}")
            if not broken and made["timeline"]:
                possible += all_breaks(made)
    breaks = drawn(possible)
    count: collections.Counter = collections.Counter()
    for one in breaks:
        good, told = found(one)
        count[one.kind] += 1
        if not good:
            failed += 1
            print(f"not found: {one.kind}: {one.what}: told was: "
                  f"{'; '.join(told[:5]) or 'nothing'}")
    print(f"{len(breaks)} breaks of {len(possible)} possible ones: "
          + ", ".join(f"{kind} {count[kind]}" for kind in KINDS))
    if len(breaks) < COUNT or any(count[kind] == 0 for kind in KINDS):
        print(f"{COUNT} breaks over all kinds were to be made")
        failed += 1
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
