#!/usr/bin/env python3
"""A schedule document made by hand: two boards, two people, an epoxy and a polyester, a step that
was done and one that is fixed. Placed one after the other, each at the first hour that keeps the
checker's rules, so it proves nothing about them; break_schedules.py breaks it.

    make_sample.py > sample.json
"""

import datetime
import json
import math
import pathlib
import sys

sys.dont_write_bytecode = True
sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent))

from schedule_check import rules_limits, rules_order, rules_places, rules_timeline, rules_told  # noqa: E402
from schedule_check.document import read, seconds  # noqa: E402
from schedule_check.events import Events  # noqa: E402
from schedule_check.physics import physics_of  # noqa: E402
from schedule_check.report import Report  # noqa: E402

HOUR = 3600
ZONE = datetime.timezone(datetime.timedelta(hours=2))
BEGIN = seconds("2026-06-13T06:00:00+02:00")
DAYS = 14


def text(at: float) -> str:
    return datetime.datetime.fromtimestamp(int(at), ZONE).isoformat()


def weather() -> dict:
    """Ten days of a sine, then its last day once more; the room and its dew point are filled in
    later."""
    series = []
    for i in range(24 * 11 + 1):
        hour = i if i <= 240 else i - 24
        # Left as it was at the end of day ten, then hours 217 to 240 again.
        day = math.sin(2.0 * math.pi * (hour - 9) / 24.0)
        series.append({"time": text(BEGIN + HOUR * i), "air_c": round(22.0 + 4.0 * day, 4),
                       "dew_c": round(12.0 + 0.8 * math.sin(hour / 20.0), 4), "room_c": 0.0,
                       "room_dew_c": 0.0})
    return {"source": "made.csv", "sha256": "0" * 64, "kind": "csv", "place": "", "placed": False,
            "known_until": text(BEGIN + 240 * HOUR),
            "guard": {"kind": "normal", "issued": text(BEGIN), "from_k": 0.5, "to_k": 2.5},
            "room": {"kind": "heated", "lag_h": 3.0, "minimum_c": 21.0, "heater": "electric",
                     "humidity_max_pct": 65.0},
            "sanding_room": False, "series": series, "gaps": []}


def calendar(id: str, first: int, last: int) -> dict:
    """Every day between two hours of the clock."""
    midnight = seconds("2026-06-13T00:00:00+02:00")
    return {"id": id, "spans": [{"from": text(midnight + HOUR * (24 * d + first)),
                                 "to": text(midnight + HOUR * (24 * d + last))}
                                for d in range(DAYS) if d % 7 != 1]}


def resins() -> list[dict]:
    film = {"k_per_s": 6.2e-5, "r": 0.1, "m": 0.6, "n": 1.5, "reference_c": 25.0,
            "gel_conversion": 0.57735, "tg_uncured_c": -50.0, "tg_cured_c": 64.0, "lambda": 0.37,
            "delay_k": 10.0, "width_k": 4.0, "trim_below_k": 10.0, "sandable_above_k": 5.0,
            "full_cure_tg_c": 44.0, "patience": 3.0}

    def lines(at, **hours):
        return [{"name": name, "at_c": at, "hours": value} for name, value in hours.items()]
    return [
        {"id": "slow", "name": "Slow", "energy_kj_mol": 54.0, "recoat_longest_h": 72.0,
         "milestones": lines(25.0, gel=5.0, recoat_from=5.0, tack_free=7.5, recoat_until=16.0,
                             sandable=30.0, full_cure=168.0), "film": film, "gel": []},
        {"id": "poly", "name": "Poly", "energy_kj_mol": 55.0, "recoat_longest_h": 72.0,
         "milestones": lines(20.0, gel=0.5, recoat_from=0.75, tack_free=2.0, handle=2.0,
                             trim_until=2.0, recoat_until=72.0, sandable=5.0, full_cure=72.0), "film": None,
         "gel": [{"at_c": 15.0, "gel_min": 44.0}, {"at_c": 20.0, "gel_min": 30.0},
                 {"at_c": 30.0, "gel_min": 15.0}]}]


class Board:
    """Steps of one board in the order of the work."""

    def __init__(self, job: str, resin: str):
        self.job, self.resin = job, resin
        self.steps: list[dict] = []

    def add(self, name: str, minutes: int, after=(), option=None, room=None, limits=(), hold=()):
        parts = name.split("/")
        wet = parts[-1] == "wet"
        group = None if option is None else f"{self.job}/{option[0]}"
        self.steps.append({
            "id": f"{self.job}/{name}", "job": self.job,
            "coat": parts[0] if len(parts) == 2 else None, "step": parts[-1],
            "face": None, "resin": self.resin if wet else None, "title": name, "how": "",
            "attended_min": minutes, "optional": option is not None, "group": group,
            "option": None if option is None else option[1],
            "resources": [{"id": "person", "amount": 1, "until": "end"},
                          {"id": f"board/{self.job}", "amount": 1, "until": "end"}, *hold],
            "after": [self.after(*rule) for rule in after], "limits": list(limits), "room": room})

    def after(self, name, event, least, most=None, option=None, tight=False, of="start"):
        group = None if option is None else f"{self.job}/{option[0]}"
        return {"id": f"{self.job}/{name}", "event": event, "of": of, "min_lag_min": least,
                "max_lag_min": most, "group": group,
                "option": None if option is None else option[1], "tight": tight,
                "good_film": False}

    def wet(self, coat: str, minutes: int, after):
        def limit(name, unit, least, most, start="start", until="tack_free", before=0):
            return {"name": name, "unit": unit, "min": least, "max": most, "from": start,
                    "until": until, "before_min": before}
        self.add(f"{coat}/wet", minutes, after,
                 room={"mode": "clean", "until": "tack_free", "after_min": 0},
                 hold=[{"id": "stand", "amount": 1, "until": "handle"}],
                 limits=[limit("cold", "C", 16.0, None), limit("warm", "C", None, 34.0),
                         limit("dew_margin", "K", 3.0, None),
                         limit("humidity", "share", None, 0.75, before=60),
                         limit("core_rise", "K", None, 1.5, "end", "gel")])


def board(job: str, resin: str) -> Board:
    b = Board(job, resin)
    dusty = {"mode": "dusty", "until": "end", "after_min": 30}
    b.add("acclimatise", 10)
    b.add("bottom-lam/prepare", 15, [("acclimatise", "end", 120)])
    b.wet("bottom-lam", 35, [("bottom-lam/prepare", "end", 0)])
    b.add("bottom-lam/watch-30", 5, [("bottom-lam/wet", "end", 30, 40)])
    b.add("bottom-lam/trim", 15, [("bottom-lam/wet", "gel", 0),
                                  ("bottom-lam/wet", "trim_until", None, 0, None, True, "end")],
          option=("bottom-lam/laps", "cut"))
    b.add("bottom-lam/feather-edge", 25, [("bottom-lam/wet", "sandable", 0)],
          option=("bottom-lam/laps", "ground"), room=dusty)
    b.add("deck-lam/flip", 5, [("bottom-lam/wet", "handle", 0)])
    b.add("deck-lam/prepare", 15, [("deck-lam/flip", "end", 0)])
    b.wet("deck-lam", 40, [("deck-lam/prepare", "end", 0)])
    b.add("deck-lam/watch-30", 5, [("deck-lam/wet", "end", 30, 40)])
    b.add("deck-hot/wash", 10, [("deck-lam/wet", "tack_free", 0)],
          option=("deck-hot/ground", "scuffed"))
    b.add("deck-hot/scuff", 20, [("deck-hot/wash", "end", 0), ("deck-lam/wet", "sandable", 0)],
          option=("deck-hot/ground", "scuffed"), room=dusty)
    window = ("deck-hot/ground", "window")
    b.wet("deck-hot", 20, [("deck-lam/wet", "recoat_from", 0, None, window),
                           ("deck-lam/wet", "recoat_until", None, 0, window, True),
                           ("deck-hot/scuff", "end", 30, None, ("deck-hot/ground", "scuffed"))])
    b.add("deck-hot/sand", 45, [("deck-hot/wet", "sandable", 0),
                                ("bottom-lam/wet", "sandable", 0)], room=dusty)
    b.add("weigh", 5, [("deck-hot/sand", "end", 0)])
    return b


def document() -> dict:
    boards = [board("alder", "slow"), board("birch", "poly")]
    choices = []
    for b, laps, ground in zip(boards, ("ground", "cut"), ("scuffed", "window")):
        choices += [{"group": f"{b.job}/bottom-lam/laps", "options": ["cut", "ground"],
                     "chosen": laps, "text": ""},
                    {"group": f"{b.job}/deck-hot/ground", "options": ["window", "scuffed"],
                     "chosen": ground, "text": ""}]
    made = {
        "format": "wetout.schedule/1", "program": "wetout 0.0.0", "made": text(BEGIN),
        "number": None, "saved": False, "prefer": "finish",
        "jobs": [{"id": b.job, "name": b.job, "revision": None, "foam": "eps", "core_lag_min": 6.0,
                  "core_at_start_c": 22.0, "finish": None, "ride_from": None} for b in boards],
        "horizon": {"from": text(BEGIN), "until": text(BEGIN + 24 * HOUR * DAYS), "step_min": 5},
        "weather": weather(),
        "calendars": [calendar("first", 8, 20), calendar("second", 14, 23)],
        "resources": [
            {"id": "person", "kind": "person", "count": 2, "calendar": None},
            {"id": "stand", "kind": "stand", "count": 1, "calendar": None},
            *({"id": f"board/{b.job}", "kind": "board", "count": 1, "calendar": None} for b in boards)],
        "resins": resins(), "steps": [s for b in boards for s in b.steps], "choices": choices,
        "timeline": [], "finish": None, "ride_from": None, "objective": None, "optimal": False,
        "bound": None, "gap": None, "bound_leaves_out": "made by hand", "stopped": None,
        "windows": [], "alternatives": [], "changed": [], "changed_since": None, "impossible": None,
        "assumptions": [], "cautions": [], "notices": []}
    physics = physics_of(read(made))
    for point in made["weather"]["series"]:
        at = seconds(point["time"])
        point["room_c"] = round(physics.air.at(at), 4)
        point["room_dew_c"] = round(physics.dew.at(at), 4)
    states = {"alder/acclimatise": "done", "birch/acclimatise": "fixed"}
    place_all(made, boards, states)
    return made


def place_all(made: dict, boards: list[Board], states: dict[str, str]) -> None:
    """Step by step in turns, a board's steps in their order."""
    chosen = {c["group"]: c["chosen"] for c in made["choices"]}
    queues = [[s for s in b.steps if not s["optional"] or chosen[s["group"]] == s["option"]]
              for b in boards]
    ready = BEGIN
    last = {b.job: ready for b in boards}
    while any(queues):
        queue = min((q for q in queues if q), key=lambda q: last[q[0]["job"]])
        step = queue.pop(0)
        state = states.get(step["id"], "planned")
        start = last[step["job"]]
        if state != "planned":
            start = BEGIN - 7 * HOUR if state == "done" else BEGIN + HOUR + 120
            line = place(made, step, start, "first", state)
        else:
            line = first_that_fits(made, step, start)
        made["timeline"].append(line)
        last[step["job"]] = max(last[step["job"]], seconds(line["attended_until"]))
        last[step["job"]] += -(last[step["job"]] - BEGIN) % 300
    made["timeline"].sort(key=lambda line: seconds(line["start"]))
    tell(made)


def first_that_fits(made: dict, step: dict, start: int) -> dict:
    for at in range(start, BEGIN + 24 * HOUR * DAYS, 300):
        for who in ("first", "second"):
            trial = {**made, "timeline": made["timeline"] + [place(made, step, at, who, "planned",
                                                                  bare=True)]}
            schedule = read(trial)
            events = Events(schedule, physics_of(schedule))
            if all(fits(rule, events) for rule in
                   (rules_timeline.hours, rules_order.lags, rules_limits.limits,
                    rules_places.counts, rules_places.people, rules_places.room_modes)):
                return place(made, step, at, who, "planned")
    raise RuntimeError(f"{step['id']} fits nowhere")


def fits(rule, events: Events) -> bool:
    report = Report()
    rule(events, report)
    return not report.broken


def place(made: dict, step: dict, start: int, who: str, state: str, bare: bool = False) -> dict:
    """A line of the timeline; `bare`: nothing told of it."""
    end = start + round(60 * step["attended_min"])
    line = {"id": step["id"], "state": state, "start": text(start), "attended_until": text(end),
            "end": text(end), "who": who, "room_c": None, "dew_margin_c": None,
            "core_change_c": None, "uses": [], "milestones": [], "slack": []}
    if not bare:
        tell_line(made, step, line, text)
    return line


def tell_line(made: dict, step: dict, line: dict, text) -> None:
    """Its milestones, uses, room as they are for its start."""
    schedule = read({**made, "timeline": [line]})
    events = Events(schedule, physics_of(schedule))
    physics, placed = events.physics, schedule.timeline[0]
    start, end = placed.start, placed.attended_until
    own = events.milestones(placed)
    known = seconds(made["weather"]["known_until"])
    line["milestones"] = [{"name": name, "time": text(at), "beyond_forecast": int(at) > known}
                          for name, at in sorted(own.items(), key=lambda m: m[1])]
    if own:
        line["end"] = text(own["tack_free"])
        core = physics.core(step["job"])
        line["core_change_c"] = round(core.highest(end, own["gel"])[0] - core.at(end), 2)
    line["room_c"] = round(physics.air.at(start), 2)
    margin = physics.margin(step["job"], False)
    line["dew_margin_c"] = None if margin is None else round(margin.at(start), 2)
    until = {"start": start, "end": end, **own}
    others = {use["id"]: use for use in line["uses"]}  # a place in a rack stays as it was told
    line["uses"] = [{"id": use["id"], "from": text(start), "to": text(until[use["until"]])}
                    if use["until"] in until else others[use["id"]]
                    for use in step["resources"] if use["until"] in until or use["id"] in others]


def tell(made: dict) -> None:
    """Slack, finish, objective of what stands in the timeline."""
    schedule = read(made)
    events = Events(schedule, physics_of(schedule))
    tight = [0] * rules_told.LEVELS
    ends, rides = {}, {}
    for line, placed in zip(made["timeline"], schedule.timeline):
        step = schedule.steps[placed.id]
        line["slack"] = []
        if placed.state == "planned":
            for item in rules_told.items(events, placed):
                value, at = item.slack / 60, placed.start
                if item.limit is not None:
                    at = round(rules_limits.worst(events, placed, item.limit)[1])
                    course = rules_limits.course(events, placed, item.name, False)
                    value = course.at(at)
                    if item.name == "core_rise":
                        value -= course.at(placed.attended_until)
                line["slack"].append({
                    "limit": item.name, "of": item.of, "value": value, "bound": item.bound,
                    "unit": "min" if item.limit is None else item.limit.unit, "time": text(at),
                    "slack": item.slack / 60 if item.limit is None else item.slack,
                    "shift_that_breaks_it_c": None})
                level = rules_told.level(item, schedule.grid)
                if level < rules_told.LEVELS:
                    tight[level] += 1
        ends[step.job] = max(ends.get(step.job, 0), placed.attended_until)
        if step.resin:
            cured = events.when(placed, "full_cure")
            rides[step.job] = max(rides.get(step.job, 0.0), cured)
    for job in made["jobs"]:
        job["finish"], job["ride_from"] = text(ends[job["id"]]), text(rides[job["id"]])
    last = max(ends.values())
    made["finish"], made["ride_from"] = text(last), text(max(rides.values()))
    made["objective"] = {
        "finish": text(rules_told.span_of(schedule, last)), "slack": tight,
        "visits": sum(rules_told.visits(schedule, job) for job in schedule.jobs)}


if __name__ == "__main__":
    print(json.dumps(document(), separators=(",", ":")))
