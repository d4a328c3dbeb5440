"""alternatives[]: each is a schedule of its own, and keeps the same rules. Only starts are told, so
options are those whose steps take place, and whoever is there does the work.
"""

from __future__ import annotations

from dataclasses import replace

from . import rules_limits, rules_order, rules_places, rules_timeline
from .document import Choice, Placed, Schedule
from .events import Events
from .report import Report
from .rules_told import span_of, visits

RULES = (rules_timeline.choices, rules_timeline.completeness, rules_timeline.lengths,
         rules_order.lags, rules_limits.limits, rules_places.counts, rules_places.room_modes)


def _choice(schedule: Schedule, choice: Choice, starts: dict[str, int]) -> Choice:
    """The option whose steps take place; if none has, the one without steps."""
    of: dict[str, list[str]] = {option: [] for option in choice.options}
    for step in schedule.steps.values():
        if step.group == choice.group:
            of.setdefault(step.option, []).append(step.id)
    for option, steps in of.items():
        if any(step in starts for step in steps):
            return replace(choice, chosen=option)
    bare = [option for option, steps in of.items() if not steps]
    return replace(choice, chosen=bare[0] if bare else choice.chosen)


def _line(schedule: Schedule, id: str, start: int) -> Placed:
    now = next((line for line in schedule.timeline if line.id == id), None)
    until = start + round(schedule.steps[id].attended)
    return Placed(id, "planned" if now is None else now.state, start, until, until, None, None,
                  None, None, [], [], [])


def as_schedule(schedule: Schedule, starts: dict[str, int]) -> Schedule:
    """What is done stays as it is."""
    lines = [line for line in schedule.timeline if line.state == "done"]
    lines += [_line(schedule, id, start) for id, start in starts.items() if id in schedule.steps]
    return replace(schedule, timeline=sorted(lines, key=lambda line: line.start),
                   choices={choice.group: _choice(schedule, choice, starts)
                            for choice in schedule.choices.values()})


def alternatives(events: Events, report: Report) -> None:
    for i, alternative in enumerate(events.schedule.alternatives):
        other = as_schedule(events.schedule, alternative.starts)
        told = Report()
        of = Events(other, events.physics)
        for rule in RULES:
            rule(of, told)
        _hours(of, told)
        _objective(other, alternative, told)
        report.rules += told.rules
        for broken in told.broken:
            if broken.rule != "end":  # tack-free is not told of these
                report.broken.append(replace(broken, rule=f"alternative {i + 1}, {broken.rule}"))


def _hours(events: Events, report: Report) -> None:
    schedule = events.schedule
    for line in schedule.timeline:
        if line.state == "planned":
            there = any(start <= line.start and line.attended_until <= until
                        for spans in schedule.calendars.values() for start, until in spans)
            report.rule("hours", line.id, there,
                        lambda: f"nobody works from {schedule.clock(line.start)} until "
                                f"{schedule.clock(line.attended_until)}")


def _objective(schedule: Schedule, alternative, report: Report) -> None:
    last = max((line.attended_until for line in schedule.timeline if line.state != "done"),
               default=schedule.begin)
    report.rule("finish", "all", alternative.finish == last,
                lambda: f"told is {schedule.clock(alternative.finish)}, the last step ends "
                        f"{schedule.clock(last)}")
    told = alternative.objective
    report.rule("objective", "finish", told.finish == span_of(schedule, last),
                lambda: "is not the span of the last end")
    own = sum(visits(schedule, job) for job in schedule.jobs)
    report.rule("objective", "visits", told.visits == own,
                lambda: f"told are {told.visits} visits, there are {own}")
