"""The schedule document as plain objects: times in seconds since 1970 (UTC), lengths of time in
seconds, temperatures in degrees Celsius, humidity as a share of 1.

Keys and units: docs/formats/schedule.md.
"""

from __future__ import annotations

import datetime
import json
from dataclasses import dataclass, field
from typing import Any, Optional

FORMAT = "wetout.schedule/1"
MILESTONES = ("gel", "trim_until", "recoat_from", "tack_free", "handle", "sandable",
              "recoat_until", "full_cure")
LIMITS = ("cold", "warm", "dew_margin", "humidity", "core_rise")
# Of a wet: these count from its start, when the first batch is mixed; all others from its end.
FROM_START = ("trim_until", "recoat_until")


class Unreadable(Exception):
    """The text is not a schedule document."""


class Ambiguous(Exception):
    """Two things of one name: nothing that refers to it can be checked."""


def seconds(text: str) -> int:
    """RFC 3339 with offset."""
    at = datetime.datetime.fromisoformat(text)
    if at.tzinfo is None:
        raise ValueError(f"{text} has no offset")
    return int(at.timestamp())


@dataclass
class Job:
    id: str
    core_lag: float
    core_at_start: float
    finish: Optional[int]
    ride_from: Optional[int]


@dataclass
class Air:
    """Outdoors, and the room as the program has it. Straight between."""
    time: int
    air: float
    dew: Optional[float]
    room: float
    room_dew: Optional[float]


@dataclass
class Weather:
    known_until: int
    guard: str
    issued: int
    room_kind: str
    lag: float
    minimum: Optional[float]
    heater: Optional[str]
    humidity_max: Optional[float]
    sanding_room: bool
    series: list[Air]
    gaps: list[tuple[int, int, str]]


@dataclass
class Resource:
    id: str
    kind: str
    count: int
    calendar: Optional[str]


@dataclass
class Resin:
    id: str
    energy: Optional[float]  # J/mol
    # name -> (temperature, seconds at it)
    milestones: dict[str, tuple[float, float]]
    recoat_longest: Optional[float]
    film: Optional[dict[str, Any]]
    gel: list[tuple[float, float]]  # temperature, seconds


@dataclass
class Use:
    id: str
    amount: int
    until: str


@dataclass
class After:
    id: str
    event: str
    of: str
    least: Optional[float]
    most: Optional[float]
    group: Optional[str]
    option: Optional[str]
    tight: bool
    good_film: bool


@dataclass
class Limit:
    name: str
    unit: str
    min: Optional[float]
    max: Optional[float]
    start: str
    until: str
    before: float


@dataclass
class Room:
    mode: str
    until: str
    after: float


@dataclass
class Step:
    id: str
    job: str
    coat: Optional[str]
    step: str
    resin: Optional[str]
    attended: float
    optional: bool
    group: Optional[str]
    option: Optional[str]
    resources: list[Use]
    after: list[After]
    limits: list[Limit]
    room: Optional[Room]


@dataclass
class Slack:
    limit: str
    of: str
    value: float
    bound: float
    time: int
    slack: float


@dataclass
class Placed:
    """A line of the timeline."""
    id: str
    state: str
    start: int
    attended_until: int
    end: int
    who: Optional[str]
    room: Optional[float]
    dew_margin: Optional[float]
    core_change: Optional[float]
    uses: list[tuple[str, int, int]]
    milestones: list[tuple[str, int, bool]]
    slack: list[Slack]

    def milestone(self, name: str) -> Optional[int]:
        return next((time for word, time, _ in self.milestones if word == name), None)


@dataclass
class Choice:
    group: str
    options: list[str]
    chosen: Optional[str]


@dataclass
class Window:
    """Starts of a coat's wet from `start` until before `until`."""
    wet: str  # the step
    start: int
    until: int
    ok: str
    limit: Optional[str]


@dataclass
class Objective:
    finish: int
    tight: list[int]
    visits: int


@dataclass
class Alternative:
    starts: dict[str, int]
    finish: int
    objective: Objective


@dataclass
class Schedule:
    jobs: dict[str, Job]
    begin: int
    until: int
    grid: int
    weather: Weather
    calendars: dict[str, list[tuple[int, int]]]
    resources: dict[str, Resource]
    resins: dict[str, Resin]
    steps: dict[str, Step]
    choices: dict[str, Choice]
    timeline: list[Placed]
    finish: Optional[int]
    ride_from: Optional[int]
    objective: Optional[Objective]
    windows: list[Window]
    alternatives: list[Alternative]
    impossible: bool
    stopped: bool
    weather_key: str = field(repr=False, default="")
    offset: datetime.tzinfo = field(repr=False, default=datetime.timezone.utc)

    def clock(self, at: float) -> str:
        """For people, at the document's offset."""
        return datetime.datetime.fromtimestamp(round(at), self.offset).strftime("%a %d %b %H:%M:%S")


def _maybe(value, read):
    return None if value is None else read(value)


def _minutes(value) -> Optional[float]:
    return None if value is None else 60.0 * value


def _percent(value) -> Optional[float]:
    return None if value is None else value / 100.0


def _weather(w) -> Weather:
    guard, room = w["guard"], w["room"]
    return Weather(
        known_until=seconds(w["known_until"]), guard=guard["kind"], issued=seconds(guard["issued"]),
        room_kind=room["kind"], lag=3600.0 * room["lag_h"], minimum=room["minimum_c"],
        heater=room["heater"], humidity_max=_percent(room["humidity_max_pct"]),
        sanding_room=w["sanding_room"],
        series=[Air(seconds(p["time"]), p["air_c"], p["dew_c"], p["room_c"], p["room_dew_c"])
                for p in w["series"]],
        gaps=[(seconds(g["from"]), seconds(g["to"]), g["of"]) for g in w["gaps"]])


def _resin(r) -> Resin:
    return Resin(
        id=r["id"], energy=_maybe(r["energy_kj_mol"], lambda e: 1e3 * e),
        milestones={m["name"]: (m["at_c"], 3600.0 * m["hours"]) for m in r["milestones"]},
        recoat_longest=_maybe(r["recoat_longest_h"], lambda h: 3600.0 * h), film=r["film"],
        gel=[(g["at_c"], 60.0 * g["gel_min"]) for g in r["gel"]])


def _step(s) -> Step:
    return Step(
        id=s["id"], job=s["job"], coat=s["coat"], step=s["step"], resin=s["resin"],
        attended=60.0 * s["attended_min"], optional=s["optional"], group=s["group"],
        option=s["option"],
        resources=[Use(u["id"], u["amount"], u["until"]) for u in s["resources"]],
        after=[After(a["id"], a["event"], a["of"], _minutes(a["min_lag_min"]),
                     _minutes(a["max_lag_min"]), a["group"], a["option"], a["tight"], a.get("good_film", False))
               for a in s["after"]],
        limits=[Limit(x["name"], x["unit"], x["min"], x["max"], x["from"], x["until"],
                      60.0 * x["before_min"]) for x in s["limits"]],
        room=_maybe(s["room"], lambda r: Room(r["mode"], r["until"], 60.0 * r["after_min"])))


def _placed(t) -> Placed:
    return Placed(
        id=t["id"], state=t["state"], start=seconds(t["start"]),
        attended_until=seconds(t["attended_until"]), end=seconds(t["end"]), who=t["who"],
        room=t["room_c"], dew_margin=t["dew_margin_c"], core_change=t["core_change_c"],
        uses=[(u["id"], seconds(u["from"]), seconds(u["to"])) for u in t["uses"]],
        milestones=[(m["name"], seconds(m["time"]), m["beyond_forecast"])
                    for m in t["milestones"]],
        slack=[Slack(s["limit"], s["of"], s["value"], s["bound"], seconds(s["time"]), s["slack"])
               for s in t["slack"]])


def _objective(o) -> Objective:
    return Objective(seconds(o["finish"]), o["slack"], o["visits"])


def _schedule(d) -> Schedule:
    begin = d["horizon"]["from"]
    return Schedule(
        jobs={j["id"]: Job(j["id"], 60.0 * j["core_lag_min"], j["core_at_start_c"],
                           _maybe(j["finish"], seconds), _maybe(j["ride_from"], seconds))
              for j in d["jobs"]},
        begin=seconds(begin), until=seconds(d["horizon"]["until"]),
        grid=round(60 * d["horizon"]["step_min"]), weather=_weather(d["weather"]),
        calendars={c["id"]: [(seconds(s["from"]), seconds(s["to"])) for s in c["spans"]]
                   for c in d["calendars"]},
        resources={r["id"]: Resource(r["id"], r["kind"], r["count"], r["calendar"])
                   for r in d["resources"]},
        resins={r["id"]: _resin(r) for r in d["resins"]},
        steps={s["id"]: _step(s) for s in d["steps"]},
        choices={c["group"]: Choice(c["group"], c["options"], c["chosen"]) for c in d["choices"]},
        timeline=[_placed(t) for t in d["timeline"]], finish=_maybe(d["finish"], seconds),
        ride_from=_maybe(d["ride_from"], seconds),
        objective=_maybe(d["objective"], _objective),
        windows=[Window(f"{w['job']}/{w['coat']}/{w['step']}", seconds(w["from"]),
                        seconds(w["to"]), w["ok"], w["limit"]) for w in d["windows"]],
        alternatives=[Alternative({s["id"]: seconds(s["start"]) for s in a["starts"]},
                                  seconds(a["finish"]), _objective(a["objective"]))
                      for a in d["alternatives"]],
        impossible=d["impossible"] is not None, stopped=d["stopped"] is not None,
        weather_key=json.dumps([d["weather"], d["jobs"], d["resins"], d["horizon"]],
                               sort_keys=True),
        offset=datetime.datetime.fromisoformat(begin).tzinfo)


def _sensible(schedule: Schedule) -> None:
    """What would only make a checker stumble."""
    times = [point.time for point in schedule.weather.series]
    if not times or times != sorted(set(times)):
        raise Unreadable("weather.series is empty, or its times do not rise")
    if schedule.grid <= 0:
        raise Unreadable("horizon.step_min is not more than 0")
    for step in schedule.steps.values():
        if step.job not in schedule.jobs:
            raise Unreadable(f"{step.id} is of {step.job}, which is not among the jobs")
        for limit in step.limits:
            if limit.name not in LIMITS or (limit.min is None) == (limit.max is None):
                raise Unreadable(f"{step.id} has a limit {limit.name} that is unknown, or has not "
                                 f"one bound")


def read(document: Any) -> Schedule:
    """From the parsed JSON. Raises Unreadable with what is missing or wrong, Ambiguous."""
    if not isinstance(document, dict) or document.get("format") != FORMAT:
        raise Unreadable(f"not a document of format {FORMAT}")
    try:
        schedule = _schedule(document)
    except KeyError as missing:
        raise Unreadable(f"the key {missing} is missing") from missing
    except (TypeError, ValueError, AttributeError) as wrong:
        raise Unreadable(f"a value of the wrong kind: {wrong}") from wrong
    _sensible(schedule)
    for what, key in (("steps", "id"), ("resources", "id"), ("choices", "group"), ("resins", "id"),
                      ("jobs", "id"), ("calendars", "id")):
        names = [one[key] for one in document[what]]
        for name in names:
            if names.count(name) > 1:
                raise Ambiguous(f"twice: {name}: stands twice in {what}")
    return schedule
