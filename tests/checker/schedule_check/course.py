"""A value over time, known at each minute and straight between."""

from __future__ import annotations

import bisect
import math
from array import array

STEP = 60


class Course:
    """values[i] at first + 60 i seconds; both end values hold outside."""

    def __init__(self, first: int, values):
        self.first = first
        self.values = values if isinstance(values, array) else array("d", values)

    @property
    def last(self) -> int:
        return self.first + STEP * (len(self.values) - 1)

    def at(self, time: float) -> float:
        place = (time - self.first) / STEP
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
        low = max(0, math.ceil((start - self.first) / STEP))
        high = min(len(self.values) - 1, math.floor((until - self.first) / STEP))
        if low <= high:
            inside = self.values[low:high + 1]
            value = pick(inside)
            if pick(value, found[0]) == value and value != found[0]:
                found = (value, self.first + STEP * (low + inside.index(value)))
        return found

    def lowest(self, start: float, until: float) -> tuple[float, float]:
        return self._over(min, start, until)

    def highest(self, start: float, until: float) -> tuple[float, float]:
        return self._over(max, start, until)


class Sum:
    """The integral of a positive speed over time, by the trapezoid rule on a course's minutes."""

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
