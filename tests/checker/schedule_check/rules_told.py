"""What the document says of itself: the room's course, slack, finish, what schedules are compared
by.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Optional

from .document import Limit, Placed, Schedule
from .events import Events
from .report import Report
from .rules_limits import ALLOWANCE, course, is_known, worst

# Scales of slack (docs/models/limits.md); a level is a tenth, half a scale and more is not tight.
SCALES = {"cold": 3.0, "warm": 3.0, "dew_margin": 3.0, "humidity": 0.10, "core_rise": 0.5,
          "window": 7200.0}
LEVELS = 5
GAP_S = 1800
# Of the room's air and dew point, as told and as worked out here; of numbers told with 2 decimals.
ROOM_KELVIN = 0.01
TOLD_KELVIN = 0.02


def room_course(events: Events, report: Report) -> None:
    """The room of weather.series; beyond the known weather the last 24 h outdoors."""
    schedule, physics = events.schedule, events.physics
    for point in schedule.weather.series:
        at = schedule.clock(point.time)
        own = physics.outdoors.at(point.time)
        report.rule("weather", at, abs(own - point.air) < 1e-3,
                    lambda: f"outdoor air {point.air:g} C is not {own:g} C as a day before")
        room = physics.air.at(point.time)
        report.rule("weather", at, abs(room - point.room) <= ROOM_KELVIN,
                    lambda: f"the room has {room:.3f} C, told is {point.room:g} C")
        if physics.dew is None or point.room_dew is None:
            continue
        if point.time <= schedule.weather.known_until:
            dew = physics.dew.at(point.time)
            report.rule("weather", at, abs(dew - point.room_dew) <= ROOM_KELVIN,
                        lambda: f"the room's dew point is {dew:.3f} C, told is "
                                f"{point.room_dew:g} C")


def at_start(events: Events, report: Report) -> None:
    """room_c, dew_margin_c at the start, core_change_c until gel."""
    physics, schedule = events.physics, events.schedule
    for line in schedule.timeline:
        step = schedule.steps.get(line.id)
        if step is None:
            continue
        air = physics.air.at(line.start)
        report.rule("told", line.id, line.room is None or abs(air - line.room) <= TOLD_KELVIN,
                    lambda: f"the room is {air:.2f} C at its start, told is {line.room:g} C")
        margin = physics.margin(step.job, False)
        if line.dew_margin is not None and margin is not None:
            own = margin.at(line.start)
            report.rule("told", line.id, abs(own - line.dew_margin) <= TOLD_KELVIN,
                        lambda: f"dew-point margin {own:.2f} K at its start, told is "
                                f"{line.dew_margin:g} K")
        gel = events.when(line, "gel")
        if line.core_change is not None and gel is not None:
            core = physics.core(step.job)
            rise = core.highest(line.attended_until, gel)[0] - core.at(line.attended_until)
            report.rule("told", line.id, abs(rise - line.core_change) <= TOLD_KELVIN,
                        lambda: f"the core rises by {rise:.2f} K, told is {line.core_change:g} K")


@dataclass
class Item:
    """What is left of a limit on the moved course (C, K, share) or of a greatest lag (seconds)."""
    name: str
    of: str  # of a window: the step it follows
    slack: float
    bound: float
    allowed: float
    limit: Optional[Limit]  # None for a window


def items(events: Events, line: Placed) -> list[Item]:
    """Of a step that is planned, or fixed."""
    step = events.schedule.steps.get(line.id)
    found: list[Item] = []
    if step is None or line.state == "done":
        return found
    for limit in step.limits if is_known(events, line) else ():
        value = worst(events, line, limit) if limit.name in SCALES else None
        if value is None:
            continue
        for bound, sign in ((limit.min, 1.0), (limit.max, -1.0)):
            if bound is not None:
                found.append(Item(limit.name, "", sign * (value[0] - bound), bound,
                                  ALLOWANCE[limit.name], limit))
    for after in step.after:
        before = events.placed.get(after.id)
        if not after.tight or after.most is None or before is None:
            continue
        if not events.chosen(after.group, after.option):
            continue
        event = events.when(before, after.event)
        if event is None:
            continue
        at = line.start if after.of == "start" else line.attended_until
        found.append(Item("window", after.id, event + after.most - at, 0.0,
                          events.allowance(before, after.event), None))
    return found


def level(item: Item, grid: int, more: float = 0.0) -> int:
    """floor(10 slack/scale), 0 to 5; what is left of a window counts in whole steps of the grid."""
    slack, scale = item.slack + more, SCALES[item.name]
    if item.name == "window":
        slack = grid * math.floor(slack / grid)
    return min(LEVELS, max(0, math.floor(10.0 * slack / scale + 1e-9)))


def slacks(events: Events, report: Report) -> None:
    """slack[] of the timeline."""
    for line in events.schedule.timeline:
        told = {(s.limit, s.of): s for s in line.slack}
        own = items(events, line)
        report.rule("slack", line.id, set(told) == {(item.name, item.of) for item in own},
                    lambda: f"told for {sorted(told)}, worked out for "
                            f"{sorted((item.name, item.of) for item in own)}")
        for item in own:
            said = told.get((item.name, item.of))
            if said is not None:
                _slack(events, report, line, item, said)


def _slack(events: Events, report: Report, line: Placed, item: Item, said) -> None:
    if item.limit is None:
        left = item.slack / 60.0
        allowed = (item.allowed + events.schedule.grid) / 60.0
        report.rule("slack", line.id, abs(said.slack - left) <= allowed,
                    lambda: f"the window after {item.of} has {left:.1f} min left, told are "
                            f"{said.slack:g} min")
        return
    report.rule("slack", line.id,
                abs(said.slack - item.slack) <= item.allowed
                and abs(said.bound - item.bound) < 1e-6,
                lambda: f"{item.name} has {item.slack:.4g} left to {item.bound:g}, told is "
                        f"{said.slack:.4g} to {said.bound:g}")
    # The forecast's value, and the moved one, at the hour that is told.
    told_at = {False: said.value,
               True: said.bound + (said.slack if item.limit.min is not None else -said.slack)}
    since = line.attended_until if item.name == "core_rise" else None
    for guarded, value in told_at.items():
        looked_at = course(events, line, item.name, guarded)
        own = looked_at.at(said.time) - (looked_at.at(since) if since is not None else 0.0)
        report.rule("slack", line.id, abs(own - value) <= item.allowed,
                    lambda: f"{item.name} is {own:.4g} at {events.schedule.clock(said.time)}"
                            f"{', moved by the guard' if guarded else ''}, told is {value:.4g}")


def span_of(schedule: Schedule, end: int) -> int:
    """The start of the last working span, of whomever, that begins before `end`; the end itself
    where none does. Spans of several people that touch are one."""
    found: int = end
    until: Optional[int] = None
    for start, stop in sorted(span for spans in schedule.calendars.values() for span in spans):
        if start >= end:
            break
        if until is None or start > until:
            found = start
        until = stop if until is None else max(until, stop)
    return found


def visits(schedule: Schedule, job: str) -> int:
    """Of what is still to be done: 1 + the gaps of half an hour or more without attended work."""
    lines = sorted((line.start, line.attended_until) for line in schedule.timeline
                   if line.state != "done" and line.id in schedule.steps
                   and schedule.steps[line.id].job == job)
    count, until = 0, None
    for start, end in lines:
        count += until is None or start - until >= GAP_S
        until = end if until is None else max(until, end)
    return count


def _finish(events: Events, report: Report) -> None:
    schedule = events.schedule
    ends: dict[str, int] = {}
    rides: dict[str, float] = {}
    for line in schedule.timeline:
        step = schedule.steps.get(line.id)
        if step is None:
            continue
        if line.attended_until > line.start:
            ends[step.job] = max(ends.get(step.job, 0), line.attended_until)
        if step.resin is not None:
            cured = events.when(line, "full_cure")
            rides[step.job] = max(rides.get(step.job, 0.0), math.inf if cured is None else cured)

    def finish(of, told, own):
        report.rule("finish", of, told == own,
                    lambda: f"told is {told and schedule.clock(told)}, the last attended step "
                            f"ends {own and schedule.clock(own)}")

    def ride(of, told, own):
        never = math.isinf(own)
        allowed = 60.0 + 5e-4 * 30 * 86400
        report.rule("ride_from", of,
                    told is None if never else told is not None and abs(told - own) <= allowed,
                    lambda: f"told is {told and schedule.clock(told)}, every film is fully cured "
                            + ("never" if never else schedule.clock(own)))
    for job in schedule.jobs.values():
        finish(job.id, job.finish, ends.get(job.id))
        ride(job.id, job.ride_from, rides.get(job.id, math.inf))
    finish("all", schedule.finish, max(ends.values(), default=None))
    ride("all", schedule.ride_from, max(rides.values(), default=math.inf))


def objective(events: Events, report: Report) -> None:
    """finish, ride_from, and the three numbers that schedules are compared by."""
    schedule = events.schedule
    _finish(events, report)
    told = schedule.objective
    if not report.rule("objective", "all", told is not None, lambda: "is missing"):
        return
    last = max((line.attended_until for line in schedule.timeline if line.state != "done"),
               default=schedule.begin)
    span = span_of(schedule, last)
    report.rule("objective", "finish", told.finish == span,
                lambda: f"told is {schedule.clock(told.finish)}, the span of the last end begins "
                        f"{schedule.clock(span)}")
    own = sum(visits(schedule, job) for job in schedule.jobs)
    report.rule("objective", "visits", told.visits == own,
                lambda: f"told are {told.visits} visits, there are {own}")
    _tight(events, report)


def _tight(events: Events, report: Report) -> None:
    """How many limits and windows are at level 0 ... 4. An item within its allowance of two levels
    may be at either."""
    schedule = events.schedule
    least, most = [0] * (LEVELS + 1), [0] * (LEVELS + 1)
    for line in schedule.timeline:
        own = items(events, line)
        if any(item.slack < -item.allowed for item in own if item.limit is not None):
            own = [item for item in own if item.limit is None]  # fixed where limits refuse it
        for item in own:
            low = level(item, schedule.grid, -item.allowed)
            high = level(item, schedule.grid, item.allowed)
            least[low] += low == high
            for one in range(low, high + 1):
                most[one] += 1
    told = schedule.objective.tight
    report.rule("objective", "slack",
                len(told) == LEVELS and all(least[i] <= told[i] <= most[i] for i in range(LEVELS)),
                lambda: f"told are {told} tight limits and windows by level, there are "
                        f"{least[:LEVELS]} to {most[:LEVELS]}")
