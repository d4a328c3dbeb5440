"""The room behind the outdoor air, its dew point, the core behind the room
(docs/models/weather.md, "Room", "Start", "Core").

    outdoors   T = x
    unheated   lag dT/dt = x - T
    heated     the same, held at its minimum while it would fall below
    dew point  the lowest of that outdoors, T, and that of the dehumidifier's humidity at T
    core       lag dc/dt = T - c

Minute by minute. Within a minute x is straight; a straight input leaves a lag's answer trailing it
by slope * lag, and what is left of the start decays with exp(-t/lag).
"""

from __future__ import annotations

import math
from typing import Optional

from . import humid_air
from .course import STEP, Course
from .document import Weather
from .weather import DAY


def _follow(inputs, start: float, lag: float, least: Optional[float]):
    """The answer at each minute of the input."""
    keep = math.exp(-STEP / lag)
    value, out = start, [start]
    before = inputs[0]
    for now in inputs[1:]:
        trail = (now - before) / STEP * lag
        value = now - trail + (value - before + trail) * keep
        if least is not None and value < least:
            value = least
        out.append(value)
        before = now
    return out


def settled(x: Course, lag: float, least: Optional[float], known_s: float) -> float:
    """Where a lag stands at the first minute when the days before were like the first 24 h without
    their drift: that day is run again and again until it begins as it ends."""
    first = x.values[0] if least is None else max(x.values[0], least)
    a_day = DAY // STEP
    if lag == 0.0 or known_s < DAY:
        return first
    drift = x.values[a_day] - x.values[0]
    day = [x.values[i] - drift * i / a_day for i in range(a_day + 1)]
    value = first
    for _ in range(2000):
        next_value = _follow(day, value, lag, least)[-1]
        if abs(next_value - value) < 1e-7:
            return next_value
        value = next_value
    return value


def lagged(x: Course, lag: float, start: float, least: Optional[float] = None) -> Course:
    """`x` with a first-order lag in seconds, not below `least`."""
    if lag == 0.0:
        return x if least is None else Course(x.first, [max(v, least) for v in x.values])
    return Course(x.first, _follow(x.values, start, lag, least))


def air(outdoors: Course, weather: Weather, known_s: float) -> Course:
    """Of the room; `known_s`: how long the weather is known."""
    if weather.room_kind == "outdoors":
        return outdoors
    least = weather.minimum if weather.room_kind == "heated" else None
    return lagged(outdoors, weather.lag, settled(outdoors, weather.lag, least, known_s), least)


# Where the lower of two courses changes its slope within a minute, that is seen to a quarter of it.
PARTS = 4


def dew(outdoor_dew: Course, room: Course, weather: Weather) -> Course:
    """Of the room's air, in quarters of a minute."""
    most = weather.humidity_max if weather.room_kind != "outdoors" else None
    cap = room
    if most is not None and most < 1.0:
        cap = Course(room.first, [humid_air.dew_point(t, most) for t in room.values])
    return lower(outdoor_dew.finer(PARTS), cap.finer(PARTS))


def lower(a: Course, b: Course) -> Course:
    """Of two courses with the same steps; as long as the shorter one."""
    return Course(a.first, [min(x, y) for x, y in zip(a.values, b.values)], a.step)


def above(a: Course, b: Course) -> Course:
    """By how much one course is above another one of the same steps."""
    return Course(a.first, [x - y for x, y in zip(a.values, b.values)], a.step)
