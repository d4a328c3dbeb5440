"""A value over time, known at each minute, or at parts of it, and straight between."""

from __future__ import annotations

import bisect
import math
from array import array

STEP = 60


class Course:
    """values[i] at first + step i seconds; both end values hold outside."""

    def __init__(self, first: int, values, step: int = STEP):
        self.first = first
        self.step = step
        self.values = values if isinstance(values, array) else array("d", values)

    @property
    def last(self) -> int:
        return self.first + self.step * (len(self.values) - 1)

    def at(self, time: float) -> float:
        place = (time - self.first) / self.step
        if place <= 0.0:
            return self.values[0]
        i = int(place)
        if i + 1 >= len(self.values):
            return self.values[-1]
        share = place - i
        return self.values[i] + share * (self.values[i + 1] - self.values[i])

    def _over(self, pick, start: float, until: float) -> tuple[float, float]:
        """(value, time) of the extreme from `start` to `until`, both included."""
        found = pick(((self.at(start), start), (self.at(until), until)), key=lambda v: v[0])
        low = max(0, math.ceil((start - self.first) / self.step))
        high = min(len(self.values) - 1, math.floor((until - self.first) / self.step))
        if low <= high:
            inside = self.values[low:high + 1]
            value = pick(inside)
            if pick(value, found[0]) == value and value != found[0]:
                found = (value, self.first + self.step * (low + inside.index(value)))
        return found

    def lowest(self, start: float, until: float) -> tuple[float, float]:
        return self._over(min, start, until)

    def highest(self, start: float, until: float) -> tuple[float, float]:
        return self._over(max, start, until)

    def finer(self, parts: int) -> Course:
        """The same straight lines in shorter steps."""
        values = self.values
        out = array("d")
        for before, after in zip(values, values[1:]):
            by = (after - before) / parts
            out.extend([before + by * part for part in range(parts)])
        out.append(values[-1])
        return Course(self.first, out, self.step // parts)


class Sum:
    """The integral of a positive speed over time, by the trapezoid rule on a course's minutes (its
    step is a minute)."""

    def __init__(self, speed: Course):
        self.speed = speed
        total, sums = 0.0, array("d", [0.0])
        values = speed.values
        for i in range(1, len(values)):
            total += 0.5 * STEP * (values[i - 1] + values[i])
            sums.append(total)
        self.sums = sums

    def at(self, time: float) -> float:
        """From the first minute; before and after, at the speed of the end."""
        after = time - self.speed.first
        if after <= 0.0:
            return after * self.speed.values[0]
        i = int(after // STEP)
        if i + 1 >= len(self.sums):
            return self.sums[-1] + (time - self.speed.last) * self.speed.values[-1]
        rest = after - STEP * i
        return self.sums[i] + 0.5 * rest * (self.speed.values[i] + self.speed.at(time))

    def when(self, total: float) -> float:
        """The time at which the integral is `total`."""
        values = self.speed.values
        if total <= 0.0:
            return self.speed.first + total / values[0]
        if total >= self.sums[-1]:
            return self.speed.last + (total - self.sums[-1]) / values[-1]
        i = bisect.bisect_right(self.sums, total) - 1
        share = (total - self.sums[i]) / (self.sums[i + 1] - self.sums[i])
        return self.speed.first + STEP * (i + share)
