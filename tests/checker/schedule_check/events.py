"""When the events of placed steps happen: start, end of the attended part, milestones of a wet.

Milestones are the checker's own; the document's are only compared with them. Of what has been done
they are taken as told: somebody may have seen them.
"""

from __future__ import annotations

from typing import Optional

from .document import MILESTONES, Placed, Schedule, Step
from .physics import Physics

# The program's milestones and the checker's differ by so much at most: seconds, share of the time
# since the film began. Measured: 3 s where the clock decides, 13 s for full cure after a week.
MILESTONE_S, MILESTONE_SHARE = 30.0, 5e-4


class Events:
    def __init__(self, schedule: Schedule, physics: Physics):
        self.schedule = schedule
        self.physics = physics
        self.placed: dict[str, Placed] = {}
        for line in schedule.timeline:
            self.placed.setdefault(line.id, line)

    def step(self, id: str) -> Step:
        return self.schedule.steps[id]

    def milestones(self, line: Placed) -> dict[str, float]:
        """Empty for what is no wet."""
        step = self.schedule.steps.get(line.id)
        if step is None or step.resin not in self.schedule.resins:
            return {}
        if line.state == "done":
            return {name: float(time) for name, time, _ in line.milestones}
        return self.physics.milestones(step.resin, line.start, line.attended_until)

    def when(self, line: Placed, event: str) -> Optional[float]:
        """None: not reached, or not an event of this step."""
        if event == "start":
            return line.start
        if event == "end":
            return line.attended_until
        if event in ("gel", "tack_free") and line.state != "done":
            # By the clock alone, so that no path need be followed.
            step = self.schedule.steps.get(line.id)
            if step is None or step.resin not in self.schedule.resins:
                return None
            return self.physics.films(step.resin).by_clock(event, line.attended_until)
        return self.milestones(line).get(event)

    def allowance(self, line: Placed, event: str) -> float:
        """By how much an event may be another one by the program's numerics, seconds."""
        at = self.when(line, event)
        if event not in MILESTONES or at is None:
            return 0.0
        return max(MILESTONE_S, MILESTONE_SHARE * (at - line.start))

    def passed(self) -> set[str]:
        """Steps that nobody recorded, but that are over: something that follows them has been done,
        or was to be done within a time that had ended before the horizon began. They need not stand
        in the timeline."""
        schedule = self.schedule
        over = {line.id for line in schedule.timeline if line.state == "done"}
        ends = {line.id: line.attended_until for line in schedule.timeline if line.state == "done"}
        for step in schedule.steps.values():
            for after in step.after:
                if after.event == "end" and after.most is not None and after.id in ends \
                        and ends[after.id] + after.most < schedule.begin:
                    over.add(step.id)
        waiting = list(over & {line.id for line in schedule.timeline})
        while waiting:
            step = schedule.steps.get(waiting.pop())
            for after in step.after if step is not None else ():
                if after.least is not None and after.id not in over:
                    over.add(after.id)
                    waiting.append(after.id)
        return over

    def window(self, line: Placed) -> Optional[str]:
        """Of a wet's start, as the document has it: good, notice, refuse."""
        return next((w.ok for w in self.schedule.windows
                     if w.wet == line.id and w.start <= line.start < w.until), None)

    def in_notice_band(self, line: Placed) -> bool:
        return line.state != "done" and self.window(line) == "notice"

    def takes_place(self, step: Step) -> bool:
        """By the choices."""
        return self.chosen(step.group, step.option)

    def chosen(self, group: Optional[str], option: Optional[str]) -> bool:
        """Always, where no group is named."""
        if group is None:
            return True
        choice = self.schedule.choices.get(group)
        return choice is not None and choice.chosen == option
