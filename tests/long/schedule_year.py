"""A board of the demo shop, begun each Saturday of a year in real weather: every schedule is checked
by tests/checker, and all are compared with the table docs/models/schedule_year.csv.

    schedule_year.py PROGRAM PLACE=WEATHER... [--update]

PLACE is chicago [nrel-tmy3] or seattle [noaa-normals]; WEATHER its file of a year, hour by hour. --update writes the table.
"""

import csv
import datetime
import json
import os
import pathlib
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parents[2]
TABLE = ROOT / "docs" / "models" / "schedule_year.csv"
CHECKER = ROOT / "tests" / "checker" / "check_schedule.py"
ZONES = {"chicago": "America/Chicago", "seattle": "America/Los_Angeles"}
HEATER = 'kind   = "heated"\nlag    = "2.5 h"\nheater = { kind = "electric", minimum = "19 C" }'
ROOMS = {"heated": HEATER, "unheated": 'kind   = "unheated"\nlag    = "2.5 h"'}
# The demo's evenings do not suffice without a heater, in no week of either place (tried): nights are
# too cold or too damp for a film that is begun at 18:00.
HOURS = {"heated": [], "unheated": ["--hours", "08:00-18:00"]}
# Past weather is what it was: nothing of it is doubted, and the search is never stopped by the clock.
OPTIONS = ["--dry-run", "--json", "--guard", "none", "--time-limit", "200s"]
COLUMNS = ["place", "room", "from", "schedule", "days", "visits", "work_min", "tightest", "closed_by",
           "change"]
WEEKS = 52
# Any year will do: both files are put on its dates.
FIRST_SATURDAY = datetime.date(2027, 1, 2)


def shop_of(folder, place, room):
    text = (ROOT / "data-demo" / "shop.toml").read_text()
    for old, new in (('"Atlantic/Azores"', f'"{ZONES[place]}"'), (HEATER, ROOMS[room]),
                     ('weather    = "forecast.csv"\n', "")):
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    (folder / "shop.toml").write_text(text)
    (folder / "pico.toml").write_text((ROOT / "data-demo" / "pico.toml").read_text())


def hours_between(begin, end):
    return (datetime.datetime.fromisoformat(end)
            - datetime.datetime.fromisoformat(begin)).total_seconds() / 3600


def closed_by(document):
    """The limit of the air that closes most hours of the coats' windows; empty: none does."""
    hours = {}
    for window in document["windows"]:
        if window["ok"] == "refuse" and window["limit"] not in ("hours", "order", "later"):
            hours[window["limit"]] = (hours.get(window["limit"], 0)
                                      + hours_between(window["from"], window["to"]))
    return max(hours, key=hours.get) if hours else ""


def tightest(document):
    """The limit that the smallest turn of the room's air would break; empty: none has one."""
    shifts = [(one["shift_that_breaks_it_c"], one["limit"]) for step in document["timeline"]
              for one in step["slack"] if one["shift_that_breaks_it_c"] is not None]
    return min(shifts)[1] if shifts else ""


def fields(document):
    attended = sum(hours_between(step["start"], step["attended_until"])
                   for step in document["timeline"])
    begin = document["horizon"]["from"]
    return {"schedule": "proved" if document["optimal"] else "not proved",
            "days": f"{hours_between(begin, document['finish']) / 24:.2f}",
            "visits": document["objective"]["visits"], "work_min": round(attended * 60),
            "tightest": tightest(document), "closed_by": closed_by(document)}


def row_of(program, folder, weather, place, room, start):
    now = f"{start} 08:00"
    done = subprocess.run(
        [program, "--now", now, "--log", "none.db", "schedule", "pico.toml", "--weather", weather,
         *OPTIONS, *HOURS[room]], cwd=folder, capture_output=True, text=True, check=False,
        env={"HOME": str(folder), "PATH": os.environ["PATH"],
             "XDG_CACHE_HOME": str(folder / "cache")})
    assert done.returncode in (0, 1), (place, room, now, done.returncode, done.stderr)
    document = json.loads(done.stdout)
    row = {"place": place, "room": room, "from": str(start)}
    if done.returncode == 1:
        assert document["impossible"] and not document["timeline"], (place, room, now)
        return row | {"schedule": "none", "closed_by": closed_by(document),
                      "change": document["impossible"]["change"] or "none"}
    checked = subprocess.run([sys.executable, str(CHECKER), "-"], input=done.stdout, text=True,
                             capture_output=True, check=False)
    assert checked.returncode == 0, (place, room, now, checked.stdout, checked.stderr)
    return row | fields(document)


def rows_of(program, places):
    for place, weather in places:
        for room in ROOMS:
            with tempfile.TemporaryDirectory() as name:
                folder = pathlib.Path(name)
                shop_of(folder, place, room)
                for week in range(WEEKS):
                    start = FIRST_SATURDAY + datetime.timedelta(weeks=week)
                    yield row_of(program, folder, weather, place, room, start)


def main(arguments):
    update = "--update" in arguments
    program, *named = [one for one in arguments if one != "--update"]
    places = [(place, str(pathlib.Path(weather).resolve()))
              for place, weather in (one.split("=", 1) for one in named)]
    rows = [{column: str(row.get(column, "")) for column in COLUMNS}
            for row in rows_of(str(pathlib.Path(program).resolve()), places)]
    found = sum(row["schedule"] != "none" for row in rows)
    print(f"{len(rows)} schedules of one board: {found} found and checked, {len(rows) - found} with "
          "no way through", flush=True)
    if update:
        with TABLE.open("w", newline="") as out:
            table = csv.DictWriter(out, COLUMNS, lineterminator="\n")
            table.writeheader()
            table.writerows(rows)
        return 0
    with TABLE.open(newline="") as kept:
        former = list(csv.DictReader(kept))
    asked = {place for place, _ in places}
    former = [row for row in former if row["place"] in asked]
    differ = [(a, b) for a, b in zip(former, rows) if a != b]
    for a, b in differ[:5]:
        print(f"was {a}\nis  {b}", file=sys.stderr)
    return 1 if differ or len(former) != len(rows) else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
