"""All rules of one document."""

from __future__ import annotations

from . import (rules_alternatives, rules_limits, rules_order, rules_places, rules_timeline,
               rules_told, rules_windows)
from .document import Schedule
from .events import Events
from .physics import physics_of
from .report import Report

RULES = (rules_timeline.choices, rules_timeline.completeness, rules_timeline.lengths,
         rules_timeline.hours, rules_timeline.films, rules_order.lags, rules_limits.limits,
         rules_places.uses, rules_places.counts, rules_places.people,
         rules_places.room_modes, rules_told.room_course,
         rules_told.at_start, rules_told.slacks, rules_told.objective, rules_windows.windows,
         rules_windows.of_timeline, rules_alternatives.alternatives)


def check(schedule: Schedule) -> Report:
    report = Report()
    events = Events(schedule, physics_of(schedule))
    if not schedule.timeline:
        rules_told.room_course(events, report)
        rules_windows.windows(events, report)
        report.rule("once", "timeline", schedule.objective is None and schedule.finish is None
                    and (schedule.impossible or schedule.stopped),
                    lambda: "is empty, though nothing is impossible and nothing was stopped")
        return report
    for rule in RULES:
        rule(events, report)
    return report
