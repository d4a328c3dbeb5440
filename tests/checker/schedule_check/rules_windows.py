"""windows[]: for each coat still to come, which starts are good, and what closes the others.

At both ends of each window the film that would be started then is followed and its limits are
looked at. What the program names first is not asked, only whether it is so; neither are "order" and
"later", which hang on all other steps.
"""

from __future__ import annotations

from .document import Placed, Window
from .events import Events
from .report import Report
from .rules_limits import ALLOWANCE, is_known, worst

PHYSICAL = tuple(ALLOWANCE)


def film_started(events: Events, wet: str, start: int) -> Placed:
    """A line for a film started then."""
    attended = round(events.schedule.steps[wet].attended)
    return Placed(wet, "planned", start, start + attended, start + attended, None, None, None, None,
                  [], [], [])


def slack_of(events: Events, line: Placed) -> dict[str, float]:
    """What is left of each limit, in terms of what the two programs may differ by."""
    left = {}
    for limit in events.schedule.steps[line.id].limits:
        value = worst(events, line, limit)
        if value is None:
            continue
        slack = value[0] - limit.min if limit.min is not None else limit.max - value[0]
        left[limit.name] = slack / ALLOWANCE[limit.name]
    return left


def _closed_by(events: Events, report: Report, window: Window, line: Placed) -> None:
    at = events.schedule.clock(line.start)
    known = is_known(events, line)
    if window.limit == "weather":
        tack_free = events.when(line, "tack_free")
        nearly = tack_free is not None and abs(
            tack_free - events.schedule.weather.known_until) < 60.0
        report.rule("window", line.id, not known or nearly,
                    lambda: f"{at} is closed by the weather, which is known")
        return
    if not report.rule("window", line.id, known,
                       lambda: f"{at} is {window.ok}, but the weather is not known until tack-free"):
        return
    left = slack_of(events, line)
    if window.ok == "refuse" and window.limit in PHYSICAL:
        report.rule("window", line.id, left.get(window.limit, -1.0) <= 1.0,
                    lambda: f"{at} is closed by {window.limit}, which is kept")
    elif window.ok != "refuse" or window.limit in ("order", "later"):
        worst_name = min(left, key=lambda name: left[name], default=None)
        report.rule("window", line.id, worst_name is None or left[worst_name] >= -1.0,
                    lambda: f"{at} is {window.ok}, but {worst_name} is not kept")


def windows(events: Events, report: Report) -> None:
    schedule = events.schedule
    before: Window | None = None
    for window in schedule.windows:
        if window.wet not in schedule.steps:
            report.rule("window", window.wet, False, lambda: "is no step")
            continue
        if before is not None and before.wet == window.wet:
            report.rule("window", window.wet, before.until == window.start,
                        lambda: f"nothing is said from {schedule.clock(before.until)} until "
                                f"{schedule.clock(window.start)}")
        before = window
        if window.limit == "hours":
            continue
        for start in {window.start, max(window.start, window.until - schedule.grid)}:
            _closed_by(events, report, window, film_started(events, window.wet, start))


def of_timeline(events: Events, report: Report) -> None:
    """A wet that is planned starts where its windows do not refuse it."""
    for line in events.schedule.timeline:
        step = events.schedule.steps.get(line.id)
        if step is not None and step.resin is not None and line.state == "planned":
            report.rule("window", line.id, events.window(line) != "refuse",
                        lambda: "starts where its windows refuse it")
