"""An old revision printed by a build whose model was changed on purpose is byte-identical.

    old_revision.py PROGRAM CHANGED_PROGRAM DEMO_DIR
"""

import os
import subprocess
import sys
import tempfile

program, changed, demo = sys.argv[1:4]
now = "2026-06-13T16:15:00Z"


def run(which, *args):
    done = subprocess.run([which, "--log", log, "--now", now, *args], cwd=demo, env=env,
                          stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=False)
    if done.returncode != 0:
        sys.exit(f"{args}: exit {done.returncode}\n{done.stderr.decode()}")
    return done.stdout


with tempfile.TemporaryDirectory() as folder:
    log = os.path.join(folder, "log.db")
    env = {"HOME": folder, "PATH": os.environ["PATH"]}
    fresh = run(program, "plan", "pico.toml")
    views = [["--units", "us"], ["--units", "metric"], ["--json"]]
    before = [run(program, "jobs", "show", "pico", "--revision", "1", *view) for view in views]
    if fresh != before[0]:
        sys.exit("a fresh plan and a look at it afterwards differ")
    new = run(changed, "plan", "pico.toml")
    if new == fresh or b"revision 2" not in new:
        sys.exit("the changed build plans the same: this test would prove nothing")
    after = [run(changed, "jobs", "show", "pico", "--revision", "1", *view) for view in views]
    if before != after:
        sys.exit("an old revision has changed")
    print(f"{sum(map(len, after))} bytes identical in {len(views)} views")
