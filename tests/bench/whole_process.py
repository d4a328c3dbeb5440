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
    plan, select = [], []
    for n in range(ROUNDS + 3):
        # Another air each time, so that each run saves a revision.
        command = [program, "--log", log, "plan", "pico.toml", "-q", "--air", f"{20 + n * 0.1:.1f}C"]
        took = timed(command, env)
        base = timed(["sqlite3", log, "select 1"], env)
        if n >= 3:
            plan.append(took)
            select.append(base)
    ratios = [a / b for a, b in zip(plan, select)]
    print(f"plan, saved in {place}: median {statistics.median(plan) * 1e3:.1f} ms, "
          f"sqlite3 'select 1' {statistics.median(select) * 1e3:.1f} ms, "
          f"ratio {statistics.median(ratios):.1f} (budget 10)")
