"""What air, damp and core keep to while a film is open (docs/models/limits.md), on courses moved
the bad way by the guard; and that the weather is known all that time.
"""

from __future__ import annotations

from typing import Optional

from .course import Course
from .document import Limit, Placed, Schedule
from .events import Events
from .report import Report

# What the program's arithmetic and the document's decimals may differ by from the checker's:
# degrees, kelvin, shares. The program takes humidity as straight between the points of air and dew
# point, which lies above the curve: by 0.7 % where outdoor air changes by 4 K an hour.
ALLOWANCE = {"cold": 0.01, "warm": 0.01, "dew_margin": 0.02, "humidity": 0.01, "core_rise": 0.02}
# So it errs to the safe side, and a limit itself is taken more strictly.
STRICT = {**ALLOWANCE, "humidity": 0.002}
UNITS = {"cold": "C", "warm": "C", "dew_margin": "K", "humidity": "share", "core_rise": "K"}


def _span(events: Events, line: Placed, limit: Limit) -> Optional[tuple[float, float]]:
    start, until = events.when(line, limit.start), events.when(line, limit.until)
    if start is None or until is None:
        return None
    return start - limit.before, until


def _meets_gap(schedule: Schedule, what: str, start: float, until: float) -> bool:
    return any(of == what and start < end and begin < until
               for begin, end, of in schedule.weather.gaps)


def course(events: Events, line: Placed, name: str, guarded: bool) -> Optional[Course]:
    """What a limit looks at; None without humidity. The core's rise is tested on the forecast
    itself: a shift moves both of its ends."""
    physics, job = events.physics, events.schedule.steps[line.id].job
    if name == "cold":
        return physics.cold_air if guarded else physics.air
    if name == "warm":
        return physics.warm_air if guarded else physics.air
    if name == "dew_margin":
        return physics.margin(job, guarded)
    if name == "humidity":
        return physics.humidity(guarded)
    return physics.core(job)


def worst(events: Events, line: Placed, limit: Limit) -> Optional[tuple[float, float]]:
    """(value, time) on the moved course where a limit is nearest; None where it cannot be tested:
    no humidity, or an event that never comes."""
    span = _span(events, line, limit)
    looked_at = course(events, line, limit.name, True)
    if span is None or looked_at is None:
        return None
    if limit.name in ("dew_margin", "humidity"):
        # Both are left out where the humidity of the hour before is not known either.
        hour_before = min(span[0], line.start - 3600.0)
        if _meets_gap(events.schedule, "humidity", hour_before, span[1]):
            return None
    if limit.name == "core_rise":
        value, at = looked_at.highest(*span)
        return value - looked_at.at(span[0]), at
    return looked_at.lowest(*span) if limit.min is not None else looked_at.highest(*span)


def is_known(events: Events, line: Placed) -> bool:
    """The weather from the start until tack-free, without a gap of the air."""
    schedule = events.schedule
    until = events.when(line, "tack_free")
    return (until is not None and schedule.weather.series[0].time <= line.start
            and until <= schedule.weather.known_until + events.allowance(line, "tack_free")
            and not _meets_gap(schedule, "air", line.start, until))


def limits(events: Events, report: Report) -> None:
    """Of planned films; one that is fixed or done was somebody's decision."""
    schedule = events.schedule
    weather = schedule.weather
    for line in schedule.timeline:
        step = schedule.steps.get(line.id)
        if step is None or line.state != "planned":
            continue
        if step.resin is not None:
            report.rule("limit", line.id, is_known(events, line),
                        lambda: "the weather is not known until it is tack-free")
            fouled = weather.room_kind == "heated" and weather.heater == "unvented gas"
            report.rule("limit", line.id, not fouled, lambda: "an unvented heater burns")
        for limit in step.limits:
            if not report.rule("limit", line.id, UNITS.get(limit.name) == limit.unit,
                               lambda: f"{limit.name} in {limit.unit} is unknown here"):
                continue
            _limit(events, report, line, limit)


def _limit(events: Events, report: Report, line: Placed, limit: Limit) -> None:
    schedule = events.schedule
    if not report.rule("limit", line.id, _span(events, line, limit) is not None,
                       lambda: f"{limit.name} is asked of an event that never comes"):
        return
    found = worst(events, line, limit)
    if found is None:
        return
    value, at = found
    allowed = STRICT[limit.name]
    if limit.min is not None:
        report.rule("limit", line.id, value >= limit.min - allowed,
                    lambda: f"{limit.name} down to {value:.4g} {limit.unit} at "
                            f"{schedule.clock(at)}, at least {limit.min:g} {limit.unit}")
    if limit.max is not None:
        report.rule("limit", line.id, value <= limit.max + allowed,
                    lambda: f"{limit.name} up to {value:.4g} {limit.unit} at "
                            f"{schedule.clock(at)}, at most {limit.max:g} {limit.unit}")
