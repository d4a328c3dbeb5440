"""The checker's room, core, films and limits against what the program prints for the demo shop:
`wetout weather --json` and `wetout cure --weather --json`.

    test_against_program.py PROGRAM DEMO_FOLDER
"""

import csv
import json
import math
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest

sys.dont_write_bytecode = True

from schedule_check import humid_air, room  # noqa: E402
from schedule_check.course import Course  # noqa: E402
from schedule_check.document import Resin, Weather, seconds  # noqa: E402
from schedule_check.film import Films  # noqa: E402
from schedule_check.weather import minutes, moved, repeated  # noqa: E402

NOW = "2026-06-13T16:15:00Z"
DAY, HOUR = 86400, 3600
ROOMS = {
    "unheated": 'kind = "unheated"\nlag = "2.5 h"',
    "heated": 'kind = "heated"\nlag = "4 h"\nheater = { kind = "electric", minimum = "21 C" }\n'
              'dehumidifier = { rh_max = "55 %" }',
    "outdoors": 'kind = "outdoors"',
}

program: str
demo: pathlib.Path


def asked(folder: pathlib.Path, *arguments: str):
    done = subprocess.run([program, "--json", "--now", NOW, *arguments], cwd=folder,
                          capture_output=True, text=True)
    if done.returncode != 0:
        raise AssertionError(f"{arguments}: {done.stdout}{done.stderr}")
    return json.loads(done.stdout)


def shop_with(folder: str, room_text: str, resins=lambda text: text) -> pathlib.Path:
    """The demo shop with another room; its forecast beside it."""
    at = pathlib.Path(folder)
    text = (demo / "shop.toml").read_text(encoding="utf-8")
    text = re.sub(r"\[room\]\n(?:.+\n)+", f"[room]\n{room_text}\n", text)
    (at / "shop.toml").write_text(resins(text), encoding="utf-8")
    (at / "forecast.csv").write_bytes((demo / "forecast.csv").read_bytes())
    return at


def forecast():
    """(time, air), (time, dew point) of the demo's table, whose hours are UTC in June."""
    lines = (demo / "forecast.csv").read_text(encoding="utf-8").splitlines()
    rows = csv.reader(line for line in lines if line and line[0] in "0123456789")
    air, dew = [], []
    for row in rows:
        time = seconds(row[0].replace(" ", "T") + ":00+00:00")
        air.append((time, float(row[1])))
        if row[2]:
            dew.append((time, float(row[2])))
    return air, dew


def weather_of(document) -> Weather:
    air, _ = forecast()
    told = document["room"]
    percent = told["humidity_max_pct"]
    return Weather(known_until=air[-1][0], guard=document["guard"]["kind"],
                   issued=seconds(document["guard"]["issued"]), room_kind=told["kind"],
                   lag=3600.0 * told["lag_h"], minimum=told["minimum_c"], heater=told["heater"],
                   humidity_max=None if percent is None else percent / 100.0, sanding_room=False,
                   series=[], gaps=[])


class Courses:
    def __init__(self, weather: Weather, core_lag: float):
        points, damp = forecast()
        first, last = points[0][0], points[-1][0]
        outdoors, dew = minutes(points, first, last), minutes(damp, first, last)

        def inside(air: Course, dew: Course):
            inside_air = room.air(air, weather, last - first)
            core = room.lagged(inside_air, core_lag,
                               room.settled(inside_air, core_lag, None, last - first))
            return inside_air, core, room.dew(dew, inside_air, weather)
        self.air, self.core, self.dew = inside(outdoors, dew)
        self.cold, self.cold_core, self.damp = inside(moved(outdoors, weather, -1),
                                                      moved(dew, weather, +1))
        self.warm = room.air(moved(outdoors, weather, +1), weather, last - first)

    def margin(self) -> Course:
        surface = room.lower(self.cold.finer(room.PARTS), self.cold_core.finer(room.PARTS))
        return room.above(surface, self.damp)

    def humidity(self) -> Course:
        return Course(self.air.first, [humid_air.humidity(a, d) for a, d in
                                       zip(self.cold.finer(room.PARTS).values,
                                           self.damp.values)], self.damp.step)


class RoomAndCore(unittest.TestCase):
    def test_every_hour(self):
        for kind, text in ROOMS.items():
            with self.subTest(kind), tempfile.TemporaryDirectory() as folder:
                document = asked(shop_with(folder, text), "weather", "--from", "2026-06-13 00:00")
                own = Courses(weather_of(document), 60.0 * document["core"]["lag_min"])
                self.assertGreater(len(document["series"]), 200)
                for hour in document["series"]:
                    at = seconds(hour["time"])
                    self.assertAlmostEqual(own.air.at(at), hour["room_c"], delta=0.012)
                    self.assertAlmostEqual(own.core.at(at), hour["core_c"], delta=0.015)
                    self.assertAlmostEqual(own.dew.at(at), hour["room_dew_c"], delta=0.012)

    def test_limits_where_they_close(self):
        """Of every run of refused hours the worst start, on the guard's courses."""
        tested = set()
        for kind, text in ROOMS.items():
            with self.subTest(kind), tempfile.TemporaryDirectory() as folder:
                at = shop_with(folder, text)
                for guard in ("none", "normal", "wide"):
                    for resin in ("slow", "quick"):
                        document = asked(at, "weather", "--from", "2026-06-13 00:00", "--guard",
                                         guard, "--resin", resin)
                        own = Courses(weather_of(document), 60.0 * document["core"]["lag_min"])
                        of = {"cold": own.cold, "warm": own.warm, "dew_margin": own.margin(),
                              "humidity": own.humidity()}
                        for window in document["windows"]:
                            for worst in window["worst"]:
                                if window["limit"] not in of:
                                    continue
                                tested.add(window["limit"])
                                course = of[window["limit"]]
                                self.assertAlmostEqual(
                                    course.at(seconds(worst["at"])), worst["guarded"],
                                    delta=0.005 if window["limit"] == "humidity" else 0.02)
        self.assertEqual(tested, {"cold", "warm", "dew_margin", "humidity"})


def without_pot_life(text: str) -> str:
    """The cup then has no say in k1/k2, which is 0.1."""
    return re.sub(r"^pot_life.*\n", "", text, flags=re.M)


def resin_of(document, lines: dict[str, float], gel: float, cured: float) -> Resin:
    """Fitted anew: k from the gel time, the floor of full cure from the sheet's own 25 C
    (docs/models/film.md, "Fit"). `gel`: the middle of its range, seconds."""
    film = dict(k_per_s=1.0, r=0.1, m=0.6, n=1.5, reference_c=25.0, gel_conversion=1 / math.sqrt(3),
                tg_uncured_c=-50.0, tg_cured_c=cured, delay_k=10.0, width_k=4.0,
                trim_below_k=10.0, sandable_above_k=5.0, full_cure_tg_c=None, patience=3.0)
    film["lambda"] = 0.37
    resin = Resin(document["resin"], 1e3 * document["calibration"]["energy_kj_mol"],
                  {name: (25.0, time) for name, time in lines.items()}, 72.0 * HOUR, film, [])
    sheet = Films(resin, Course(0, [25.0] * 20000))

    def first(times, reached):
        before = None
        for now in times:
            if reached(now[1]):
                share = 0.0 if before is None else (reached.goal - before[1]) / (now[1] - before[1])
                return before[0] + share * (now[0] - before[0])
            before = now

    class Over:
        goal = film["gel_conversion"]

        def __call__(self, value):
            return value >= self.goal
    # So early nothing vitrifies, so that time is in proportion to 1/k; twice for the steps' sake.
    film["k_per_s"] = 1e-4
    for _ in range(2):
        film["k_per_s"] *= first(sheet.conversion(0.0), Over()) / gel
    for time, tg in sheet.path(0.0):
        if time >= lines["full_cure"]:
            film["full_cure_tg_c"] = tg - 10.0
            break
    return resin


class FilmsInWeather(unittest.TestCase):
    SHEETS = {
        "slow": (dict(gel=5.0, tack_free=8.0, recoat_from=5.0, recoat_until=16.0, sandable=30.0,
                      full_cure=168.0), 5.0, 64.0),
        "quick": (dict(gel=110 / 60, tack_free=3.5, recoat_from=2.0, recoat_until=9.0,
                       sandable=14.0, full_cure=144.0), 110 / 60, 56.0),
    }

    def test_milestones(self):
        points, _ = forecast()
        first = points[0][0]
        for kind, text in ROOMS.items():
            with self.subTest(kind), tempfile.TemporaryDirectory() as folder:
                at = shop_with(folder, text, without_pot_life)
                weather = weather_of(asked(at, "weather"))
                more = minutes(repeated(points, points[-1][0], points[-1][0] + 30 * DAY), first,
                               points[-1][0] + 30 * DAY)
                air = room.air(more, weather, points[-1][0] - first)
                for name, (sheet, gel, cured) in self.SHEETS.items():
                    for start in ("2026-06-13T18:30:00+00:00", "2026-06-16T06:00:00+00:00",
                                  "2026-06-20T11:00:00+00:00"):
                        document = asked(at, "cure", name, "--weather", "forecast.csv", "--start",
                                         start[:16].replace("T", " "))
                        resin = resin_of(document, {m: h * HOUR for m, h in sheet.items()},
                                         gel * HOUR, cured)
                        begin = seconds(start)
                        own = Films(resin, air).milestones(begin, begin)
                        told = {m["name"]: m["hours"] for m in document["milestones"]
                                if m["reached"]}
                        self.assertEqual(set(own), set(told), (kind, name, start))
                        for milestone, hours in told.items():
                            took = own[milestone] - begin
                            self.assertAlmostEqual(took, HOUR * hours,
                                                   delta=max(5.0, 3e-4 * took),
                                                   msg=f"{kind} {name} {start} {milestone}")
                            worst = abs(took - HOUR * hours)
                            seen = self.seen.setdefault(milestone, [0.0, 0])
                            seen[0] = max(seen[0], worst)
                            seen[1] += 1
        print("largest difference, s:", {m: round(v[0], 1) for m, v in self.seen.items()})

    seen: dict = {}


if __name__ == "__main__":
    program = str(pathlib.Path(sys.argv[1]).resolve())
    demo = pathlib.Path(sys.argv[2]).resolve()
    unittest.main(argv=sys.argv[:1])
