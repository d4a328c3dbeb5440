"""People, stands, racks, boards, and the room: never more in use than there are, never dust beside
an open film.
"""

from __future__ import annotations

from .document import Placed, Use
from .events import Events
from .report import Report
from .rules_timeline import person_of


def _until(events: Events, line: Placed, until: str) -> tuple[float, float] | None:
    """(time, allowance) of the end of a use: an event of the step itself or the start of another
    one; None where that never comes."""
    if until in events.schedule.steps:
        other = events.placed.get(until)
        return None if other is None else (float(other.start), 0.0)
    at = events.when(line, until)
    return None if at is None else (at, events.allowance(line, until))


def _span(events: Events, line: Placed, use: Use) -> tuple[float, float, float] | None:
    """(from, until, allowance) of a use; None where it holds nothing. From the start of the step;
    a place in a rack from handle, as the board stands on its stand until then."""
    resource = events.schedule.resources.get(use.id)
    start: float | None = line.start
    allowed = 0.0
    if resource is not None and resource.kind == "rack":
        start, allowed = events.when(line, "handle"), events.allowance(line, "handle")
        if use.until in events.schedule.steps and use.until not in events.placed:
            return None
    end = _until(events, line, use.until)
    until, more = (float("inf"), 0.0) if end is None else end
    if start is None or until <= start:
        return None
    return start, until, max(allowed, more)


def uses(events: Events, report: Report) -> None:
    """uses[] of the timeline as resources[] of the step say."""
    schedule = events.schedule
    for line in schedule.timeline:
        step = schedule.steps.get(line.id)
        if step is None:
            continue
        told = {id: (start, until) for id, start, until in line.uses}
        spans = {use.id: (use, span) for use in step.resources
                 if (span := _span(events, line, use)) is not None}
        report.rule("resource", line.id, sorted(id for id, _, _ in line.uses) == sorted(spans),
                    lambda: f"uses {', '.join(sorted(told))}; {', '.join(sorted(spans))} expected")
        for id, (use, (start, until, allowed)) in spans.items():
            report.rule("resource", line.id, id in schedule.resources,
                        lambda: f"there is no {id}")
            if id not in told:
                continue
            report.rule("resource", line.id,
                        abs(told[id][0] - start) <= allowed + 1.0
                        and abs(told[id][1] - until) <= allowed + 1.0,
                        lambda: f"uses {id} from {schedule.clock(told[id][0])} until "
                                f"{schedule.clock(told[id][1])}, which is not until {use.until}")


def _held(events: Events) -> dict[str, list[tuple[float, float, int, str]]]:
    """resource -> (from, until, amount, step), shortened by their allowance."""
    held: dict[str, list[tuple[float, float, int, str]]] = {}
    for line in events.schedule.timeline:
        step = events.schedule.steps.get(line.id)
        for use in step.resources if step is not None else ():
            span = _span(events, line, use)
            if span is not None:
                start, until, allowed = span
                held.setdefault(use.id, []).append((start, until - allowed, use.amount, line.id))
    return held


def _too_many(events: Events, report: Report, id: str, count: int, all_uses,
              once_a_board: bool = False) -> None:
    """`once_a_board`: a board stands once, however many of its films are soft."""
    busy = [use for use in all_uses if use[1] > use[0]]
    for start, _, _, step in busy:
        at_once = [use for use in busy if use[0] <= start < use[1]]
        if all(events.placed[use[3]].state == "done" for use in at_once):
            continue
        wanted = sum(amount for _, _, amount, _ in at_once)
        if once_a_board:
            wanted = len({events.schedule.steps[use[3]].job for use in at_once})
        report.rule("resource", step, wanted <= count,
                    lambda: f"{wanted} of {id} at {events.schedule.clock(start)}, there "
                            f"{'is' if count == 1 else 'are'} {count}: "
                            + ", ".join(sorted(use[3] for use in at_once)))


def counts(events: Events, report: Report) -> None:
    """At every instant; half-open, so that one may take over from another."""
    for id, all_uses in _held(events).items():
        resource = events.schedule.resources.get(id)
        if resource is not None:
            _too_many(events, report, id, resource.count, all_uses, resource.kind == "stand")


def people(events: Events, report: Report) -> None:
    """Nobody does two things at once."""
    busy: dict[str, list[tuple[float, float, int, str]]] = {}
    for line in events.schedule.timeline:
        person = person_of(events.schedule, line.who)
        if person is not None and line.id in events.schedule.steps:
            busy.setdefault(person, []).append((line.start, line.attended_until, 1, line.id))
    for person, all_uses in busy.items():
        _too_many(events, report, person, 1, all_uses)


def room_modes(events: Events, report: Report) -> None:
    """Clean and dusty never overlap, across all boards, unless there is a sanding room."""
    schedule = events.schedule
    if schedule.weather.sanding_room:
        return
    modes = []
    for line in schedule.timeline:
        step = schedule.steps.get(line.id)
        if step is None or step.room is None:
            continue
        end = _until(events, line, step.room.until)
        if report.rule("room", line.id, end is not None,
                       lambda: f"is {step.room.mode} until {step.room.until}, which never comes"):
            modes.append((line.start, end[0] + step.room.after - end[1], step.room.mode, line.id))
    modes.sort()
    for i, (start, until, mode, step) in enumerate(modes):
        for other_start, _, other_mode, other in modes[i + 1:]:
            if other_start >= until:
                break
            if {events.placed[step].state, events.placed[other].state} == {"done"}:
                continue
            report.rule("room", other, mode == other_mode,
                        lambda: f"is {other_mode} from {schedule.clock(other_start)}, while {step} "
                                f"keeps the room {mode} until {schedule.clock(until)}")
