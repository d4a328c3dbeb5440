"""The calendars of `wetout schedule --ics` as two libraries of Debian read them (python3-icalendar,
python3-vobject), against the schedule document of the same call.

    test_calendar.py PROGRAM DEMO_FOLDER
"""

import datetime
import json
import pathlib
import shutil
import subprocess
import sys
import tempfile
import unittest
import zoneinfo

import icalendar
import vobject

UTC = datetime.timezone.utc
NOW = "2026-06-13T16:15:00Z"
# Somebody comes at night, so that laps are cut and not ground.
CUT_LAPS = ("--fix", "bottom-lam/trim=2026-06-15 23:30")

program: str
demo: pathlib.Path


def instant(text: str) -> datetime.datetime:
    return datetime.datetime.fromisoformat(text.replace("Z", "+00:00")).astimezone(UTC)


class Shop:
    """A copy of the demo shop with a log of its own."""

    def __init__(self):
        self.place = tempfile.TemporaryDirectory(prefix="wetout-calendar-")
        self.folder = pathlib.Path(self.place.name)
        shutil.copytree(demo, self.folder, dirs_exist_ok=True)

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.place.cleanup()

    def run(self, *arguments: str, now: str = NOW, code: int = 0):
        done = subprocess.run(
            [program, "--log", "log.db", "--json", "--now", now, *arguments], cwd=self.folder,
            env={"HOME": str(self.folder), "PATH": "/usr/bin:/bin"}, capture_output=True, text=True,
            check=False)
        if done.returncode != code:
            raise AssertionError(f"{arguments}: {done.returncode}\n{done.stdout}{done.stderr}")
        return json.loads(done.stdout)

    def schedule(self, *arguments: str, now: str = NOW):
        """The document, and the bytes of the calendar."""
        document = self.run("schedule", *arguments, "--ics", "out.ics", now=now)
        return document, (self.folder / "out.ics").read_bytes()

    def edit(self, name: str, change):
        path = self.folder / name
        path.write_text(change(path.read_text(encoding="utf-8")), encoding="utf-8")


def events(calendar: bytes):
    return icalendar.Calendar.from_ical(calendar).walk("VEVENT")


def by_uid(calendar: bytes):
    return {str(event["UID"]): event for event in events(calendar)}


def merged(known, calendar: bytes):
    """What a client knows after importing: per UID the event of the greatest SEQUENCE."""
    for uid, event in by_uid(calendar).items():
        if uid not in known or int(event["SEQUENCE"]) >= int(known[uid]["SEQUENCE"]):
            known[uid] = event
    return known


def spans(known):
    """Of all that is not cancelled: title, start, end."""
    return sorted((str(event["SUMMARY"]).removeprefix("Done: "), event["DTSTART"].dt,
                   event["DTEND"].dt)
                  for event in known.values() if event["STATUS"] != "CANCELLED")


class ReadByOthers(unittest.TestCase):
    def test_every_step_stands_at_its_time(self):
        with Shop() as shop:
            document, calendar = shop.schedule("pico.toml")
        titles = {step["id"]: step["title"] for step in document["steps"]}
        expected = sorted((f"{titles[step['id']]} (Pico 5-4)", instant(step["start"]),
                           instant(step["attended_until"])) for step in document["timeline"])
        self.assertEqual(spans(by_uid(calendar)), expected)
        self.assertGreater(len(expected), 30)
        # The other library agrees, and finds nothing that is not allowed.
        other = vobject.readOne(calendar.decode())
        other.validate(raiseException=True)
        read = sorted((event.summary.value, event.dtstart.value.astimezone(UTC),
                       event.dtend.value.astimezone(UTC)) for event in other.vevent_list)
        self.assertEqual(read, expected)
        self.assertEqual(str(other.version.value), "2.0")

    def test_alarms_come_before_windows_close(self):
        with Shop() as shop:
            document, calendar = shop.schedule("pico.toml", *CUT_LAPS)
        closes = {}
        for step in document["timeline"]:
            for milestone in step["milestones"]:
                closes[step["id"], milestone["name"]] = instant(milestone["time"])
        chosen = {choice["group"]: choice["chosen"] for choice in document["choices"]}
        taken = {step["id"] for step in document["timeline"]}
        expected = set()
        for step in document["steps"]:
            if step["id"] not in taken:
                continue
            for after in step["after"]:
                holds = after["group"] is None or chosen[after["group"]] == after["option"]
                window = after["event"] in ("trim_until", "recoat_until")
                if window and holds and after["max_lag_min"] is not None:
                    closes_at = closes.get((after["id"], after["event"]))
                    if closes_at:
                        expected.add((step["title"], closes_at - datetime.timedelta(hours=1)))
        found = set()
        for event in events(calendar):
            for alarm in event.walk("VALARM"):
                self.assertEqual(alarm["ACTION"], "DISPLAY")
                self.assertTrue(str(alarm["DESCRIPTION"]))
                if isinstance(alarm["TRIGGER"].dt, datetime.datetime):
                    found.add((str(event["SUMMARY"]).removesuffix(" (Pico 5-4)"),
                               alarm["TRIGGER"].dt))
        self.assertEqual(found, expected)
        self.assertTrue(any(title.startswith("Cut the laps") for title, _ in found), found)


    def test_a_new_schedule_moves_and_cancels(self):
        with Shop() as shop:
            first, calendar = shop.schedule("pico.toml", *CUT_LAPS)
            known = merged({}, calendar)
            before = set(known)
            self.assertIn("pico-5-4/bottom-lam/trim", {step["id"] for step in first["timeline"]})
            # The same again: nothing new, the same names.
            _, again = shop.schedule("pico", *CUT_LAPS)
            self.assertEqual(set(by_uid(again)), before)
            # Nobody comes: laps are not cut any more.
            second, calendar = shop.schedule("pico")
            self.assertGreater(second["number"], first["number"])
            self.assertNotIn("pico-5-4/bottom-lam/trim",
                             {step["id"] for step in second["timeline"]})
            known = merged(known, calendar)
            titles = {step["id"]: step["title"] for step in second["steps"]}
            self.assertEqual(spans(known), sorted(
                (f"{titles[step['id']]} (Pico 5-4)", instant(step["start"]),
                 instant(step["attended_until"])) for step in second["timeline"]))
            gone = [str(event["SUMMARY"]) for event in known.values()
                    if event["STATUS"] == "CANCELLED"]
            self.assertIn("No more: Cut the laps of bottom lam (Pico 5-4)", gone)
            # Somebody who kept the first calendar is brought up to date by the third as well.
            shop.run("record", "pico", "bottom-lam", "--start", "2026-06-15 20:00", "--at",
                     "2026-06-15 20:35", "--done", now="2026-06-15T20:40:00Z")
            shop.run("jobs", "rename", "pico-5-4", "Porto Pim")
            third, calendar = shop.schedule("porto-pim", now="2026-06-15T20:45:00Z")
            for start in (known, merged({}, again)):
                now_known = merged(dict(start), calendar)
                moved = [event for event in now_known.values()
                         if str(event["SUMMARY"]).startswith("Done: Wet out bottom lam")]
                self.assertEqual([event["DTSTART"].dt for event in moved],
                                 [datetime.datetime(2026, 6, 15, 20, 0, tzinfo=UTC)])
                coming = {instant(step["start"]) for step in third["timeline"]
                          if step["state"] == "planned"}
                self.assertEqual({event["DTSTART"].dt for event in now_known.values()
                                  if event["STATUS"] != "CANCELLED"
                                  and event["DTSTART"].dt > instant("2026-06-15T20:45:00Z")},
                                 coming)

    def test_summer_time_ends_between_two_steps(self):
        zone = zoneinfo.ZoneInfo("America/New_York")
        with Shop() as shop:
            shop.edit("shop.toml", lambda text: text.replace("Atlantic/Azores",
                                                             "America/New_York"))
            # 2026-11-01 06:00 UTC: clocks go back from 02:00 to 01:00.
            start = datetime.datetime(2026, 10, 28, tzinfo=UTC)
            rows = ["time,air [C],dew point [C]"]
            for hour in range(24 * 20):
                at = start + datetime.timedelta(hours=hour)
                rows.append(f"{at:%Y-%m-%dT%H:%M:%SZ},20,8")
            (shop.folder / "forecast.csv").write_text("\n".join(rows) + "\n", encoding="utf-8")
            document, calendar = shop.schedule("pico.toml", now="2026-10-29T12:00:00Z")
        offsets = set()
        for event in events(calendar):
            begins = event["DTSTART"].dt
            self.assertEqual(begins.utcoffset(), datetime.timedelta(0))
            wall = begins.astimezone(zone)
            offsets.add(wall.utcoffset())
            # What a phone in that zone shows is what the clock in the shop shows.
            self.assertRegex(str(event["DESCRIPTION"]).split("\n")[0],
                             f"^{wall:%a} {wall.day} {wall:%b}, {wall:%H:%M}-")
            # Nobody starts outside the hours of the wall, on either side of the change.
            self.assertTrue(8 <= wall.hour < 22, wall)
        self.assertEqual(offsets, {datetime.timedelta(hours=-4), datetime.timedelta(hours=-5)})
        self.assertEqual(len(document["timeline"]), len(events(calendar)))

    def test_names_come_through_as_they_are(self):
        # Not backslash and n: python3-icalendar 4.0.3 takes its escaped form for a line break.
        name = 'Ilha, "azul"; \\o/ <b>x</b> 😀 עברית ' + "länge " * 20
        with Shop() as shop:
            shop.edit("pico.toml", lambda text: text.replace(
                'name = "Pico 5-4"', f"id = \"odd\"\nname = '''{name}'''", 1))
            document, calendar = shop.schedule("pico.toml")
        self.assertEqual(document["jobs"][0]["name"], name)
        for event in events(calendar):
            self.assertIn(f"({name})", str(event["SUMMARY"]))
        for event in vobject.readOne(calendar.decode()).vevent_list:
            self.assertIn(f"({name})", event.summary.value)
        for line in calendar.split(b"\r\n"):
            self.assertLessEqual(len(line), 75)
            line.decode("utf-8")
            self.assertNotIn(b"\n", line)

    def test_nothing_is_written_that_was_not_asked_for(self):
        with Shop() as shop:
            shop.run("schedule", "pico.toml", "--ics", "dry.ics", "--dry-run")
            self.assertFalse((shop.folder / "dry.ics").exists())
            self.assertFalse((shop.folder / "log.db").exists())
            before = (shop.folder / "pico.toml").read_bytes()
            problems = shop.run("schedule", "pico.toml", "--ics", "pico.toml", code=1)["problems"]
            self.assertEqual(problems[0]["code"], "file.not_ours")
            self.assertEqual(problems[0]["file"], "pico.toml")
            self.assertEqual((shop.folder / "pico.toml").read_bytes(), before)
            self.assertFalse((shop.folder / "log.db").exists())
            shop.run("schedule", "pico.toml", "--until", "2026-06-14 00:00", "--ics", "none.ics",
                     code=1)
            self.assertFalse((shop.folder / "none.ics").exists())


if __name__ == "__main__":
    program = str(pathlib.Path(sys.argv[1]).resolve())
    demo = pathlib.Path(sys.argv[2])
    unittest.main(argv=sys.argv[:1])
