"""`wetout schedule`, whole process: time against the number of boards and against the horizon.

    schedule_bench.py PROGRAM [--save]

Copies of the demo's small board in the demo shop with three stands, in made-up
air. --save writes the figures to docs/models/schedule_speed.csv, for docs/models/schedule_plots.py.
"""

import csv
import json
import math
import os
import pathlib
import resource
import subprocess
import sys
import tempfile
import time

ROOT = pathlib.Path(__file__).resolve().parents[2]
TABLE = ROOT / "docs" / "models" / "schedule_speed.csv"
BOARDS = [1, 2, 3, 5, 10, 20, 40]
DAYS = [3, 7, 14, 30, 60]


def write_shop(folder):
    text = (ROOT / "data-demo" / "shop.toml").read_text()
    text = text.replace('weather    = "forecast.csv"', 'weather    = "air.csv"')
    stands = '[[resource]]\nid = "stand"\ncount = 2'
    assert stands in text
    text = text.replace(stands, '[[resource]]\nid = "stand"\ncount = 3')
    (folder / "shop.toml").write_text(text)
    (folder / "pico.toml").write_text((ROOT / "data-demo" / "pico.toml").read_text())
    lines = ["time [Z],air [C],humidity [%]"]
    for hour in range(24 * 75):
        air = 21 + 4 * math.sin((hour - 9) / 24 * 2 * math.pi) + 2 * math.sin(hour / 24 * 1.1)
        day, of_day = divmod(hour, 24)
        date = time.strftime("%Y-%m-%d", time.gmtime(1781308800 + day * 86400))
        lines.append(f"{date}T{of_day:02}:00:00,{air:.1f},55")
    (folder / "air.csv").write_text("\n".join(lines) + "\n")


def run(program, folder, *arguments):
    env = {"HOME": str(folder), "PATH": os.environ["PATH"]}
    before = resource.getrusage(resource.RUSAGE_CHILDREN).ru_utime
    begin = time.perf_counter()
    done = subprocess.run([program, "--log", "log.db", "--now", "2026-06-13 08:00", *arguments],
                          cwd=folder, env=env, capture_output=True, text=True, check=False)
    wall = time.perf_counter() - begin
    cpu = resource.getrusage(resource.RUSAGE_CHILDREN).ru_utime - before
    assert done.returncode in (0, 1), (arguments, done.stderr)
    return done.stdout, wall, cpu


def schedule(program, folder, names, days, *more):
    until = time.strftime("%Y-%m-%d 00:00", time.gmtime(1781308800 + days * 86400))
    return run(program, folder, "schedule", *names, "--until", until, "--dry-run", "--json", *more)


def main(arguments):
    save = "--save" in arguments
    program = str(pathlib.Path([one for one in arguments if one != "--save"][0]).resolve())
    rows = []

    def add(what, count, days, answer):
        text, wall, cpu = answer
        document = json.loads(text)
        gap = document["gap"]
        state = ("none" if document["impossible"] else "proved" if document["optimal"] else
                 f"gap {gap:.1%}" if gap is not None else "not proved")
        rows.append({"what": what, "boards": count, "days": days, "wall_s": f"{wall:.2f}",
                     "cpu_s": f"{cpu:.2f}", "answer": state})
        print(f"{what:24} {count:3} boards {days:3} days  {wall:6.2f} s  (cpu {cpu:6.2f} s)  {state}",
              flush=True)

    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        write_shop(folder)
        for n in range(max(BOARDS)):
            run(program, folder, "plan", "pico.toml", "--as", f"board-{n}", "-q")
        names = [f"board-{n}" for n in range(max(BOARDS))]
        for days in DAYS:
            add("demo hours", 1, days, schedule(program, folder, names[:1], days))
        for days in DAYS:
            add("every day 8-20 h", 1, days,
                schedule(program, folder, names[:1], days, "--hours", "08:00-20:00"))
        add("with 3 alternatives", 1, 14,
            schedule(program, folder, names[:1], 14, "--alternatives", "3"))
        for count in BOARDS[1:]:
            add("demo hours", count, 60, schedule(program, folder, names[:count], 60))
    if save:
        with TABLE.open("w", newline="") as out:
            table = csv.DictWriter(out, list(rows[0]), lineterminator="\n")
            table.writeheader()
            table.writerows(rows)


main(sys.argv[1:])
