"""Which steps take place, and how each of them lies in the day: choices, states, grid, attended
time, working hours, films as told.
"""

from __future__ import annotations

from collections import Counter
from typing import Optional

from .document import MILESTONES, Placed, Schedule
from .events import Events
from .report import Report

STATES = ("planned", "fixed", "done")


def choices(events: Events, report: Report) -> None:
    """One option of each group; a step of an option takes place if and only if it was chosen."""
    for choice in events.schedule.choices.values():
        report.rule("choice", choice.group, choice.chosen in choice.options,
                    lambda: f"{choice.chosen} is not one of {', '.join(choice.options)}")


def completeness(events: Events, report: Report) -> None:
    """Every step once, optional ones under their option, none that nobody knows."""
    schedule = events.schedule
    times = Counter(line.id for line in schedule.timeline)
    passed = events.passed()
    for id in times:
        report.rule("unknown", id, id in schedule.steps, lambda: "no such step")
    for step in schedule.steps.values():
        if step.optional and not report.rule(
                "choice", step.id,
                step.group in schedule.choices
                and step.option in schedule.choices[step.group].options,
                lambda: f"is optional, but {step.option} is no option of {step.group}"):
            continue
        wanted = 1 if events.takes_place(step) else 0
        under = f" under {step.group} = {step.option}" if step.group else ""
        if step.id in passed and times[step.id] == 0:
            continue
        report.rule("choice" if step.group else "once", step.id, times[step.id] == wanted,
                    lambda: f"stands {times[step.id]} times in the timeline, "
                            f"{wanted} expected{under}")
    before = None
    for line in schedule.timeline:
        if before is not None:
            report.rule("sorted", line.id, before.start <= line.start,
                        lambda: f"stands after {before.id}, which starts later")
        before = line


def lengths(events: Events, report: Report) -> None:
    """Attended time as the step says, its end, and starts on the grid inside the horizon."""
    schedule = events.schedule
    for line in schedule.timeline:
        step = schedule.steps.get(line.id)
        if step is None:
            continue
        report.rule("state", line.id, line.state in STATES, lambda: f"{line.state} is no state")
        report.rule("attended", line.id, line.attended_until >= line.start,
                    lambda: "ends before it starts")
        if line.state != "done":
            took = line.attended_until - line.start
            report.rule("attended", line.id, abs(took - step.attended) < 1.0,
                        lambda: f"takes {took / 60:g} min, {step.attended / 60:g} min expected")
        if line.state == "planned":
            report.rule("grid", line.id, (line.start - schedule.begin) % schedule.grid == 0,
                        lambda: f"starts {schedule.clock(line.start)}, off the grid")
            report.rule("horizon", line.id, schedule.begin <= line.start < schedule.until,
                        lambda: f"starts {schedule.clock(line.start)}, outside the horizon")
        if step.resin is None:
            report.rule("end", line.id, line.end == line.attended_until,
                        lambda: f"ends {schedule.clock(line.end)}, but is attended until "
                                f"{schedule.clock(line.attended_until)}")


def person_of(schedule: Schedule, who: Optional[str]) -> Optional[str]:
    """Whose hours a step is done in. Where only one person works nobody is named."""
    if who is None and len(schedule.calendars) == 1:
        return next(iter(schedule.calendars))
    return who if who in schedule.calendars else None


def hours(events: Events, report: Report) -> None:
    """The attended part inside one span of the person who does it. What is fixed or done has its
    own hours."""
    schedule = events.schedule
    for line in schedule.timeline:
        step = schedule.steps.get(line.id)
        if step is None or line.state != "planned":
            continue
        if line.who is None and step.attended == 0.0:
            continue
        person = person_of(schedule, line.who)
        if not report.rule("who", line.id, person is not None,
                           lambda: f"{line.who} is no person of this shop"):
            continue
        spans = schedule.calendars[person]
        inside = any(start <= line.start and line.attended_until <= until
                     for start, until in spans)
        report.rule("hours", line.id, inside,
                    lambda: f"from {schedule.clock(line.start)} until "
                            f"{schedule.clock(line.attended_until)} is not within the hours of "
                            f"{person}")


def films(events: Events, report: Report) -> None:
    """Milestones of each wet as worked out here, and its end, which is tack-free."""
    schedule = events.schedule
    for line in schedule.timeline:
        step = schedule.steps.get(line.id)
        if step is None:
            continue
        if step.resin is None:
            report.rule("milestone", line.id, not line.milestones,
                        lambda: "has milestones, but no film")
            continue
        if not report.rule("milestone", line.id, step.resin in schedule.resins,
                           lambda: f"no resin {step.resin}"):
            continue
        own = events.milestones(line)
        for name in MILESTONES:
            _milestone(events, report, line, name, own.get(name))
        told = line.milestone("tack_free")
        report.rule("end", line.id, told is not None and told == line.end,
                    lambda: "does not end when it is tack-free")
        names = [name for name, _, _ in line.milestones]
        report.rule("milestone", line.id,
                    len(set(names)) == len(names) and set(names) <= set(MILESTONES),
                    lambda: f"milestones {', '.join(names)}: one twice, or an unknown one")
        times = [time for _, time, _ in line.milestones]
        report.rule("milestone", line.id, times == sorted(times),
                    lambda: "milestones out of order")


def _milestone(events: Events, report: Report, line: Placed, name: str, own) -> None:
    schedule = events.schedule
    told = line.milestone(name)
    if own is None or told is None:
        report.rule("milestone", line.id, own is None and told is None,
                    lambda: f"{name} is " + (f"told for {schedule.clock(told)}, but never reached"
                                             if own is None else
                                             f"not told, but reached {schedule.clock(own)}"))
        return
    report.rule("milestone", line.id, abs(told - own) <= events.allowance(line, name),
                lambda: f"{name} is told for {schedule.clock(told)}, worked out for "
                        f"{schedule.clock(own)}")
    beyond = next(flag for word, _, flag in line.milestones if word == name)
    report.rule("milestone", line.id, beyond == (told > schedule.weather.known_until),
                lambda: f"{name}: beyond the forecast or not, as its time does not say")
