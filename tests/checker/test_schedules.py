"""What `wetout schedule --json` prints for the demo boards in several shops keeps every rule, and
what is broken in it is found.

    test_schedules.py PROGRAM DEMO_FOLDER
"""

import contextlib
import io
import json
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest

sys.dont_write_bytecode = True

import break_schedules  # noqa: E402
from schedule_check.document import read  # noqa: E402
from schedule_check.rules import check  # noqa: E402

NOW = "2026-06-13T07:15:00Z"
DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
POLYESTER = """
[[material]]
id = "poly-a"
density = "1.1 g/ml"
styrene = true
[[material]]
id = "catalyst"
density = "1.1 g/ml"
[[resin]]
id = "poly"
chemistry = "polyester"
part_a = "poly-a"
part_b = "catalyst"
lowest_air = "15 C"
catalyst = [ { air = "20 C", dose = "1 %", gel = "40 min" }, { air = "20 C", dose = "2 %", gel = "20 min" },
             { air = "30 C", dose = "1 %", gel = "20 min" }, { air = "30 C", dose = "2 %", gel = "11 min" } ]
dose = { low = "1 %", high = "2 %" }
tack_free = [ { air = "20 C", time = "2 h" } ]
sand = [ { air = "20 C", time = "5 h" } ]
full_cure = [ { air = "20 C", time = "3 days" } ]
"""
PEOPLE = """
[[person]]
id = "ann"
[[person]]
id = "ben"
hours = { mon = ["06:00-14:00"], wed = ["06:00-23:00"] }
[[resource]]
id = "rack"
count = 2
"""

program: str
demo: pathlib.Path


def shop(room: str = 'kind = "heated"\nlag = "3 h"\n'
                     'heater = { kind = "electric", minimum = "20 C" }',
         hours: str = "08:00-20:00", more: str = "", without: tuple[str, ...] = (),
         stands: int = 2) -> str:
    """The demo shop, changed."""
    text = (demo / "shop.toml").read_text(encoding="utf-8")
    every_day = "".join(f'{day} = ["{hours}"]\n' for day in DAYS)
    text = re.sub(r"\[room\]\n(?:.+\n)+", f"[room]\n{room}\n", text)
    text = re.sub(r"\[hours\]\n(?:.+\n)+", f"[hours]\n{every_day}", text)
    text, found = re.subn(r'(id = "stand"\ncount = )\d+', rf"\g<1>{stands}", text)
    if found != 1:
        raise AssertionError("the demo shop has no stands")
    for line in without:
        text, found = re.subn(rf"^{line}\s*=.*\n", "", text, flags=re.M)
        if found == 0:
            raise AssertionError(f"the demo shop has no line {line}")
    return text + more


def of_polyester(job: str) -> str:
    """Without boxes: nothing but polyester."""
    coats = [part for part in job.split("[[coat]]") if 'kind = "install"' not in part]
    return "[[coat]]".join(coats).replace('resin = "slow"', 'resin = "poly"')


# name -> shop, arguments, what is done to a job file
CASES = {
    "as it is": (lambda: (demo / "shop.toml").read_text(encoding="utf-8"), ["pico.toml"], None),
    "heated": (shop, ["faial.toml", "--alternatives", "2"], None),
    "evenings, a wide guard": (lambda: shop(hours="16:00-24:00"), ["faial.toml", "--guard", "wide"],
                               None),
    "unheated, sheets without limits": (
        lambda: shop('kind = "unheated"\nlag = "4 h"', without=("humidity_limit", "lowest_air")),
        ["faial.toml"], None),
    "outdoors": (lambda: shop('kind = "outdoors"'), ["faial.toml", "--guard", "none"], None),
    "dry, a sanding room": (
        lambda: shop('kind = "unheated"\nlag = "2 h"\ndehumidifier = { rh_max = "50 %" }\n'
                     'sanding_room = true'), ["pico.toml", "--prefer", "visits"], None),
    "no recoat window, no Tg": (lambda: shop(without=("recoat", "tg")), ["faial.toml"], None),
    "polyester": (lambda: shop(more=POLYESTER), ["faial.toml", "--prefer", "slack"], of_polyester),
    "fixed": (shop, ["pico.toml", "--fix", "acclimatise=2026-06-13 21:30"], None),
    "two boards, two people": (lambda: shop(more=PEOPLE), ["pico.toml", "faial.toml"], None),
    "ten coats": (shop, ["terceira.toml", "--until", "2026-07-13 00:00"], None),
    "a step of polyester on a fixed day": (lambda: shop(more=POLYESTER),
                                           ["faial.toml", "--fix", "deck-lam/wet=2026-06-17 09:00"],
                                           of_polyester),
    "nothing fits": (lambda: shop(hours="08:00-08:30"), ["pico.toml"], None),
}


def schedule(case: str, folder: str) -> dict:
    text, arguments, edit = CASES[case]
    at = pathlib.Path(folder)
    (at / "shop.toml").write_text(text(), encoding="utf-8")
    (at / "forecast.csv").write_bytes((demo / "forecast.csv").read_bytes())
    for name in ("pico.toml", "faial.toml", "terceira.toml"):
        job = (demo / name).read_text(encoding="utf-8")
        (at / name).write_text(edit(job) if edit else job, encoding="utf-8")
    done = subprocess.run([program, "--json", "--now", NOW, "--log", "log.db", "schedule",
                           *arguments, "--time-limit", "5s"], cwd=at, capture_output=True,
                          text=True)
    made = json.loads(done.stdout)
    if made["format"] != "wetout.schedule/1":
        raise AssertionError(f"{case}: {done.stdout}{done.stderr}")
    return made


class Schedules(unittest.TestCase):
    def test_kept_and_breaks_found(self):
        good = []
        with tempfile.TemporaryDirectory() as folder:
            for i, case in enumerate(CASES):
                with self.subTest(case):
                    at = pathlib.Path(folder) / str(i)
                    at.mkdir()
                    made = schedule(case, str(at))
                    told = check(read(made))
                    self.assertEqual([str(broken) for broken in told.broken], [])
                    found = bool(made["timeline"])
                    print(f"{case}: {told.rules} rules of {len(made['timeline'])} steps")
                    if case == "nothing fits":
                        self.assertFalse(found)
                        self.assertIsNotNone(made["impossible"])
                    else:
                        # A slow machine may find nothing for two boards in the time.
                        self.assertTrue(found or made["stopped"] == "time", case)
                    if found:
                        file = at / "schedule.json"
                        file.write_text(json.dumps(made), encoding="utf-8")
                        good.append(str(file))
            self.assertGreater(len(good), 7)
            out = io.StringIO()
            with contextlib.redirect_stdout(out):
                code = break_schedules.main(good)
            print(out.getvalue(), end="")
            self.assertEqual(code, 0, out.getvalue())


if __name__ == "__main__":
    program = str(pathlib.Path(sys.argv[1]).resolve())
    demo = pathlib.Path(sys.argv[2]).resolve()
    unittest.main(argv=sys.argv[:1])
