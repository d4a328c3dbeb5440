"""A good schedule document and copies of it to be spoilt.

A break moves whole lines of the timeline: what is told of a line (milestones, uses) is told anew
for its new start, so that the rule in question is what must give it away.
"""

from __future__ import annotations

import copy
import datetime
from dataclasses import dataclass
from typing import Callable

from make_sample import tell_line
from schedule_check.document import Schedule, read, seconds
from schedule_check.events import Events
from schedule_check.physics import physics_of


@dataclass
class Break:
    kind: str
    what: str  # for people, and what makes it distinct
    rules: tuple[str, ...]  # one of these must be told as broken
    steps: tuple[str, ...]  # of one of these
    make: Callable[[], dict]


class Document:
    """A good document, and copies of it to be spoilt."""

    def __init__(self, made: dict):
        self.made = made
        self.schedule: Schedule = read(made)
        self.events = Events(self.schedule, physics_of(self.schedule))
        self.zone = datetime.datetime.fromisoformat(made["horizon"]["from"]).tzinfo
        self.grid = self.schedule.grid

    def text(self, at: float) -> str:
        return datetime.datetime.fromtimestamp(int(at), self.zone).isoformat()

    def copy(self) -> dict:
        return copy.deepcopy(self.made)

    def changed(self, change: Callable[[dict], None]) -> Callable[[], dict]:
        def make() -> dict:
            made = self.copy()
            change(made)
            return made
        return make

    def line(self, made: dict, id: str) -> dict:
        return next(line for line in made["timeline"] if line["id"] == id)

    def move(self, made: dict, id: str, start: float) -> None:
        """To another start, in the timeline's order."""
        line = self.line(made, id)
        took = seconds(line["attended_until"]) - seconds(line["start"])
        line["start"] = self.text(start)
        line["attended_until"] = line["end"] = self.text(start + took)
        step = next(s for s in made["steps"] if s["id"] == id)
        tell_line(made, step, line, self.text)
        made["timeline"].sort(key=lambda one: seconds(one["start"]))

    def moved(self, id: str, start: float) -> Callable[[], dict]:
        return self.changed(lambda made: self.move(made, id, start))

    def planned(self):
        return [line for line in self.schedule.timeline if line.state == "planned"]

    def lags(self):
        """(line, lag, line it follows, instant of the event) of those that apply."""
        for line in self.planned():
            for after in self.schedule.steps[line.id].after:
                before = self.events.placed.get(after.id)
                if before is None or not self.events.chosen(after.group, after.option):
                    continue
                event = self.events.when(before, after.event)
                if event is not None and not after.good_film:
                    yield line, after, before, event
