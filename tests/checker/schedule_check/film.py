"""When a film reaches its milestones (docs/models/film.md, docs/models/polyester.md).

Clock of an epoxy      age(t) = integral of exp[E/R (1/Ts - 1/T)] dt, a milestone when the age has
                       grown by the time printed at Ts
Clock of a polyester   integral of dt/t_gel(T), a milestone at its multiple of gel; ln t_gel is
                       straight in 1/T between the lines of its table
Cure of an epoxy       da/dt = k(T) (r + a^m) (1 - a)^n / (1 + exp[(Tg - T - delay)/width])
                       Tg = Tg0 + (Tg1 - Tg0) l a/(1 - (1 - l) a)

gel, tack_free, handle, recoat_from, sandable, full_cure count from the end of the wet; trim_until
and recoat_until from its start.
"""

from __future__ import annotations

import math
from typing import Iterator, Optional

from .course import Course, Sum
from .document import FROM_START, MILESTONES, Resin

GAS = 8.31446261815324  # J/(mol K)
ZERO = 273.15


def _speed_of_epoxy(resin: Resin, at_c: float):
    per_kelvin = resin.energy / GAS
    sheet = 1.0 / (at_c + ZERO)
    return lambda celsius: math.exp(per_kelvin * (sheet - 1.0 / (celsius + ZERO)))


def gel_time(resin: Resin, celsius: float) -> float:
    """Seconds, of a polyester: straight lines of ln t over 1/T, going on beyond the ends."""
    lines = sorted((1.0 / (at + ZERO), math.log(time)) for at, time in resin.gel)
    x = 1.0 / (celsius + ZERO)
    if len(lines) == 1:
        return math.exp(lines[0][1] + resin.energy / GAS * (x - lines[0][0]))
    i = 1
    while i + 1 < len(lines) and x > lines[i][0]:
        i += 1
    (x0, y0), (x1, y1) = lines[i - 1], lines[i]
    return math.exp(y0 + (y1 - y0) * (x - x0) / (x1 - x0))


def _tabulated(function, low: float, high: float):
    """The same by straight lines every 0.02 K (an error below 1e-6), for a look at every minute."""
    step = 0.02
    table = [function(low + step * i) for i in range(int((high - low) / step) + 3)]

    def look(celsius: float) -> float:
        place = (celsius - low) / step
        i = int(place)
        return table[i] + (place - i) * (table[i + 1] - table[i])
    return look


class Films:
    """Films of one resin in one room's air."""

    def __init__(self, resin: Resin, air: Course):
        self.resin = resin
        self.air = air
        self._clocks: dict[float, Sum] = {}

    def _clock(self, at_c: float) -> Sum:
        """Counts seconds at `at_c`."""
        if at_c not in self._clocks:
            if self.resin.gel:
                there = gel_time(self.resin, at_c)
                speed = lambda celsius: there / gel_time(self.resin, celsius)
            else:
                speed = _speed_of_epoxy(self.resin, at_c)
            values = self.air.values
            look = _tabulated(speed, min(values), max(values))
            self._clocks[at_c] = Sum(Course(self.air.first, [look(t) for t in values]))
        return self._clocks[at_c]

    def by_clock(self, name: str, begin: float) -> Optional[float]:
        """When a milestone comes by the clock alone, of a film that begins so; None where the
        sheet prints no time for it."""
        line = self.resin.milestones.get(name)
        if line is None:
            return None
        clock = self._clock(line[0])
        return clock.when(clock.at(begin) + line[1])

    def milestones(self, start: float, end: float) -> dict[str, float]:
        """Of a wet from `start` to `end`; what is not reached is left out."""
        late = self._of(start, FROM_START)
        soon = self._of(end, [m for m in MILESTONES if m not in FROM_START])
        return {**soon, **late}

    def _of(self, begin: float, wanted) -> dict[str, float]:
        clock = {m: self.by_clock(m, begin) for m in MILESTONES}
        at = {m: time for m, time in clock.items() if time is not None}
        window = "recoat_from" in at and "recoat_until" in at
        if self.resin.film is not None:
            self._floors(begin, at, wanted if window else (*wanted, "handle"))
        if window:
            longest = self.resin.recoat_longest
            if longest is not None:
                at["recoat_until"] = min(at["recoat_until"], begin + longest)
            at["recoat_until"] = max(at["recoat_until"], at["recoat_from"])
        else:
            # The sheet prints no window: it opens with handling and is never open.
            at.pop("recoat_from", None)
            if "handle" in at:
                at["recoat_from"] = at["handle"]
            at["recoat_until"] = begin
        return {m: at[m] for m in wanted if m in at}

    def _floors(self, begin: float, at: dict[str, float], wanted) -> None:
        """Moves `at` to where Tg allows it, or takes out what is not reached."""
        film = self.resin.film
        patience = film["patience"]
        end = begin + patience * (max(at.values()) - begin)
        # name -> (kelvin above the air, or Tg itself), from, at the latest
        floors = {}
        if "trim_until" not in at:
            floors["trim_until"] = (-film["trim_below_k"], None, begin, end)
        if "handle" not in at:
            floors["handle"] = (0.0, None, begin, end)
        if "sandable" in at:
            by = at["sandable"]
            floors["sandable"] = (film["sandable_above_k"], None, by,
                                  begin + patience * (by - begin))
        if "full_cure" in at and film["full_cure_tg_c"] is not None:
            by = at["full_cure"]
            floors["full_cure"] = (None, film["full_cure_tg_c"], by,
                                   begin + patience * (by - begin))
        asked = set(wanted) | ({"sandable"} if "full_cure" in wanted else set())
        floors = {m: floor for m, floor in floors.items() if m in asked}
        found = self._met(begin, floors)
        for name in floors:
            if name in found:
                at[name] = max(at.get(name, found[name]), found[name])
            else:
                at.pop(name, None)
        if "sandable" in floors and "sandable" not in at:
            at.pop("full_cure", None)
        for later, earlier in (("trim_until", "gel"), ("handle", "tack_free"),
                               ("full_cure", "sandable")):
            if later in at and earlier in at:
                at[later] = max(at[later], at[earlier])

    def _met(self, begin: float, floors) -> dict[str, float]:
        """The first time at which Tg is at or above each floor, from its `from` to its latest."""
        found: dict[str, float] = {}
        open_floors = dict(floors)

        def over(floor, time, tg):
            above, fixed, _, _ = floor
            return tg - fixed if fixed is not None else tg - self.air.at(time) - above

        before = None
        for time, tg in self.path(begin):
            for name, floor in list(open_floors.items()):
                start, latest = floor[2], floor[3]
                if time < start:
                    continue
                if before is None or before[0] < start:
                    # The floor begins inside this step.
                    share = 0.0 if before is None else (start - before[0]) / (time - before[0])
                    first_tg = tg if before is None else before[1] + share * (tg - before[1])
                    a, b = (start, first_tg), (time, tg)
                else:
                    a, b = before, (time, tg)
                at_a, at_b = over(floor, *a), over(floor, *b)
                when = None
                if at_a >= 0.0:
                    when = a[0]
                elif at_b >= 0.0:
                    when = a[0] + (b[0] - a[0]) * at_a / (at_a - at_b)
                if when is not None and when <= latest:
                    found[name] = when
                if when is not None or time > latest:
                    del open_floors[name]
            if not open_floors:
                break
            before = (time, tg)
        return found

    def path(self, begin: float) -> Iterator[tuple[float, float]]:
        """(time, Tg) by Runge and Kutta's steps of fourth order: short where the film begins, where
        a^m is steep, then five minutes. Never ends."""
        for time, conversion in self.conversion(begin):
            yield time, self.tg(conversion)

    def tg(self, conversion: float) -> float:
        film = self.resin.film
        cold, warm, shape = film["tg_uncured_c"], film["tg_cured_c"], film["lambda"]
        return cold + (warm - cold) * shape * conversion / (1.0 - (1.0 - shape) * conversion)

    def conversion(self, begin: float) -> Iterator[tuple[float, float]]:
        film = self.resin.film
        r, m, n = film["r"], film["m"], film["n"]
        k_there, reference = film["k_per_s"], 1.0 / (film["reference_c"] + ZERO)
        per_kelvin = self.resin.energy / GAS
        delay, width = film["delay_k"], film["width_k"]

        def rate(a: float, celsius: float) -> float:
            a = min(max(a, 0.0), 1.0)
            x = min((self.tg(a) - celsius - delay) / width, 600.0)
            k = k_there * math.exp(per_kelvin * (reference - 1.0 / (celsius + ZERO)))
            return k * (r + a ** m) * (1.0 - a) ** n / (1.0 + math.exp(x))

        time, a = float(begin), 0.0
        yield time, a
        while True:
            h = min(300.0, max(5.0, 0.05 * (time - begin)))
            t0, t1, t2 = self.air.at(time), self.air.at(time + 0.5 * h), self.air.at(time + h)
            k1 = rate(a, t0)
            k2 = rate(a + 0.5 * h * k1, t1)
            k3 = rate(a + 0.5 * h * k2, t1)
            k4 = rate(a + h * k3, t2)
            a += h / 6.0 * (k1 + 2.0 * k2 + 2.0 * k3 + k4)
            time += h
            yield time, a
