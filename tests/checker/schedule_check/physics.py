"""The courses and films of one document, each worked out once."""

from __future__ import annotations

import functools
from typing import Optional

from . import humid_air, room
from .course import Course
from .document import Schedule
from .film import Films
from .weather import DAY, minutes, moved, repeated

# Films are followed so long beyond the horizon: slow resins take three weeks to cure fully, a cold
# room twice that.
BEYOND = 45 * DAY


def _once(method):
    """Keeps what a method gave, in its object."""
    @functools.wraps(method)
    def kept(self, *arguments):
        key = (method.__name__, *arguments)
        if key not in self.kept:
            self.kept[key] = method(self, *arguments)
        return self.kept[key]
    return kept


class Physics:
    """Courses of the room: as forecast, and with the forecast moved colder and damper, or warmer.
    Dew points are None where the weather has no humidity."""

    def __init__(self, schedule: Schedule):
        self.schedule = schedule
        self.kept: dict = {}
        weather = schedule.weather
        points = [(p.time, p.air) for p in weather.series]
        self.first, self.known_until = points[0][0], weather.known_until
        self.known_s = min(points[-1][0], self.known_until) - self.first
        end = max(schedule.until, self.known_until, points[-1][0]) + BEYOND
        self.outdoors = minutes(repeated(points, self.known_until, end), self.first, end)
        self.air = room.air(self.outdoors, weather, self.known_s)
        # Limits are asked inside the known weather only.
        known = minutes(points, self.first, self.known_until)
        self.cold_air = room.air(moved(known, weather, -1), weather, self.known_s)
        self.warm_air = room.air(moved(known, weather, +1), weather, self.known_s)
        self.known_air = Course(self.first, self.air.values[:len(self.cold_air.values)])
        damp = [(p.time, p.dew) for p in weather.series if p.dew is not None]
        self.dew: Optional[Course] = None
        self.damp_dew: Optional[Course] = None
        if damp:
            outdoors = minutes(damp, self.first, self.known_until)
            self.dew = room.dew(outdoors, self.known_air, weather)
            self.damp_dew = room.dew(moved(outdoors, weather, +1), self.cold_air, weather)

    @_once
    def core(self, job: str) -> Course:
        """Of a board, as forecast."""
        told = self.schedule.jobs[job]
        return room.lagged(self.known_air, told.core_lag, told.core_at_start)

    @_once
    def margin(self, job: str, guarded: bool) -> Optional[Course]:
        """The lower of room air and core, above the dew point."""
        air, dew = (self.cold_air, self.damp_dew) if guarded else (self.known_air, self.dew)
        if dew is None:
            return None
        core = self.core(job)
        if guarded:
            told = self.schedule.jobs[job]
            start = told.core_at_start + air.values[0] - self.air.values[0]
            core = room.lagged(air, told.core_lag, start)
        surface = room.lower(air.finer(room.PARTS), core.finer(room.PARTS))
        return room.above(surface, dew)

    @_once
    def humidity(self, guarded: bool) -> Optional[Course]:
        air, dew = (self.cold_air, self.damp_dew) if guarded else (self.known_air, self.dew)
        if dew is None:
            return None
        return Course(self.first, [humid_air.humidity(a, d) for a, d in
                                   zip(air.finer(room.PARTS).values, dew.values)], dew.step)

    @_once
    def films(self, resin: str) -> Films:
        return Films(self.schedule.resins[resin], self.air)

    @_once
    def milestones(self, resin: str, start: float, end: float) -> dict[str, float]:
        """Of a wet; what is not reached is left out."""
        return self.films(resin).milestones(start, end)


@functools.lru_cache(maxsize=12)
def _kept(weather_key: str) -> list:
    return []


def physics_of(schedule: Schedule) -> Physics:
    """The same object for documents with the same weather, resins and boards."""
    kept = _kept(schedule.weather_key)
    if not kept:
        kept.append(Physics(schedule))
    return kept[0]
