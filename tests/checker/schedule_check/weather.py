"""Outdoor air and dew point minute by minute: beyond what is known the last 24 h repeat, and a
guard moves a forecast the bad way (docs/models/weather.md, "Guard").
"""

from __future__ import annotations

from .course import STEP, Course
from .document import Weather

DAY = 86400


def minutes(points: list[tuple[int, float]], first: int, until: int) -> Course:
    """Straight between points of rising time; end values hold."""
    values, i = [], 0
    for time in range(first, until + STEP, STEP):
        while i + 1 < len(points) and points[i + 1][0] <= time:
            i += 1
        at, value = points[i]
        if time > at and i + 1 < len(points):
            after, other = points[i + 1]
            value += (other - value) * (time - at) / (after - at)
        values.append(value)
    return Course(first, values)


def repeated(points: list[tuple[int, float]], known_until: int,
             until: int) -> list[tuple[int, float]]:
    """The points as far as they are known, then the last 24 h of them again and again."""
    known = [p for p in points if p[0] <= known_until]
    day = [p for p in known if p[0] > known[-1][0] - DAY]
    out = list(known)
    if known[-1][0] - known[0][0] < DAY:  # no day to repeat
        return out
    shift = DAY
    while out[-1][0] < until:
        out += [(time + shift, value) for time, value in day]
        shift += DAY
    return out


def shift_kelvin(guard: str, lead_s: float) -> float:
    """min(0.5 K + 0.25 K a day, 2.5 K), `wide` twice that; a lead below 0 counts as 0."""
    if guard == "none":
        return 0.0
    usual = min(0.5 + 0.25 * max(0.0, lead_s / DAY), 2.5)
    return 2.0 * usual if guard == "wide" else usual


def moved(course: Course, weather: Weather, sign: int) -> Course:
    """Warmer (+1) or colder (-1) by the guard's shift at each minute."""
    return Course(course.first,
                  [value + sign * shift_kelvin(weather.guard,
                                               course.first + STEP * i - weather.issued)
                   for i, value in enumerate(course.values)])
