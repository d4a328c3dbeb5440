"""`wetout plan`, whole process and saved, against `sqlite3 FILE 'select 1'`: ratios of one run.

    whole_process.py PROGRAM DEMO_DIR PLACE
"""

import os
import statistics
import subprocess
import sys
import tempfile
import time

program, demo, place = sys.argv[1:4]
ROUNDS = 40


def timed(command, env):
    begin = time.perf_counter()
    subprocess.run(command, cwd=demo, env=env, check=True, stdout=subprocess.DEVNULL,
                   stderr=subprocess.DEVNULL)
    return time.perf_counter() - begin


with tempfile.TemporaryDirectory(dir=place) as folder:
    env = {"HOME": folder, "PATH": os.environ["PATH"]}
    log = os.path.join(folder, "log.db")
    cups, plan, select = [], [], []
    for n in range(ROUNDS + 3):
        # Another air each time: cups that nobody has followed yet.
        fresh = [program, "--log", log, "plan", "pico.toml", "-q", "--air", f"{20 + n * 0.1:.1f}C"]
        # Another job each time, so that each run saves a revision; its cups are kept.
        kept = [program, "--log", log, "plan", "pico.toml", "-q", "--as", f"pico-{n}"]
        times = [timed(fresh, env), timed(kept, env),
                 timed(["sqlite3", log, "select 1"], env)]
        if n >= 3:  # the first ones warm the machine
            for all_times, one in zip((cups, plan, select), times):
                all_times.append(one)
    base = statistics.median(select)
    for what, times, budget in (("saved, cups kept", plan, "10"),
                                ("saved, cups followed", cups, "10, and 30 ms a batch size")):
        middle = statistics.median(times)
        print(f"plan, {what}, in {place}: median {middle * 1e3:.1f} ms, sqlite3 'select 1' "
              f"{base * 1e3:.1f} ms, ratio {middle / base:.1f} (budget {budget})")
