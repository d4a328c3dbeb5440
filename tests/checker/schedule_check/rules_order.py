"""What must lie between two steps: least and greatest lags, and what a done step has behind it."""

from __future__ import annotations

from .document import After, Placed
from .events import Events
from .report import Report


def lags(events: Events, report: Report) -> None:
    """Each lag that applies under the chosen options and whose two steps take place."""
    for line in events.schedule.timeline:
        step = events.schedule.steps.get(line.id)
        if step is None:
            continue
        for after in step.after:
            before = events.placed.get(after.id)
            report.rule("lag", line.id, after.id in events.schedule.steps,
                        lambda: f"follows {after.id}, which is no step")
            if before is not None and events.chosen(after.group, after.option):
                _lag(events, report, line, after, before)


def _lag(events: Events, report: Report, line: Placed, after: After, before: Placed) -> None:
    schedule = events.schedule
    if line.state == "done":
        # What has been done cannot be moved; what it follows cannot still be planned.
        report.rule("done", line.id, before.state == "done",
                    lambda: f"is done, but {before.id}, which it follows, is {before.state}")
        return
    at = line.start if after.of == "start" else line.attended_until
    if after.good_film:
        report.rule("lag", line.id, not events.in_notice_band(before),
                    lambda: f"{before.id} was in the notice band: washed first, or not at all")
        return
    event = events.when(before, after.event)
    if not report.rule("lag", line.id, event is not None or after.least is None,
                       lambda: f"{before.id} is never {after.event}"):
        return
    if event is None:
        return
    allowed = events.allowance(before, after.event)
    left = f"{after.event} of {before.id} ({schedule.clock(event)})"
    if after.least is not None:
        report.rule("lag", line.id, at - event >= after.least - allowed,
                    lambda: f"its {after.of} {schedule.clock(at)} comes less than "
                            f"{after.least / 60:g} min after {left}")
    if after.most is not None:
        report.rule("lag", line.id, at - event <= after.most + allowed,
                    lambda: f"its {after.of} {schedule.clock(at)} comes more than "
                            f"{after.most / 60:g} min after {left}")
