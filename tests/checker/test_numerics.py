"""The checker's own numerics against closed forms. A checker that is wrong finds nothing."""

import math
import sys
import unittest

sys.dont_write_bytecode = True

from schedule_check import humid_air, room  # noqa: E402
from schedule_check.course import Course, Sum  # noqa: E402
from schedule_check.document import Resin, Weather  # noqa: E402
from schedule_check.film import Films, gel_time  # noqa: E402
from schedule_check.weather import minutes, repeated, shift_kelvin  # noqa: E402

DAY, HOUR = 86400, 3600


def weather(**told) -> Weather:
    usual = dict(known_until=10 * DAY, guard="normal", issued=0, room_kind="unheated",
                 lag=2.5 * HOUR, minimum=None, heater=None, humidity_max=None,
                 sanding_room=False, series=[], gaps=[])
    return Weather(**{**usual, **told})


def epoxy(**film) -> Resin:
    usual = dict(k_per_s=3e-5, r=0.1, m=0.6, n=1.5, reference_c=25.0, gel_conversion=0.57735,
                 tg_uncured_c=-50.0, tg_cured_c=60.0, delay_k=1e6, width_k=4.0,
                 trim_below_k=10.0, sandable_above_k=5.0, full_cure_tg_c=None, patience=3.0)
    usual["lambda"] = 0.37
    return Resin(id="r", energy=55e3, milestones={"gel": (25.0, 4.0 * HOUR)}, recoat_longest=None,
                 film={**usual, **film}, gel=[])


def conversion_at(films: Films, begin: float, after: float) -> float:
    before = (begin, 0.0)
    for time, a in films.conversion(begin):
        if time >= begin + after:
            share = (begin + after - before[0]) / (time - before[0]) if time > before[0] else 0.0
            return before[1] + share * (a - before[1])
        before = (time, a)


class Lag(unittest.TestCase):
    def test_step(self):
        x = Course(0, [20.0] * 600)
        y = room.lagged(x, 2.0 * HOUR, 10.0)
        for t in (0, 600, 7200, 30000):
            self.assertAlmostEqual(y.at(t), 20.0 - 10.0 * math.exp(-t / 7200), places=9)

    def test_sine(self):
        lag, w = 2.5 * HOUR, 2.0 * math.pi / DAY
        x = minutes([(60 * i, 20.0 + 5.0 * math.sin(w * 60 * i)) for i in range(5 * 1440)], 0,
                    5 * DAY - 60)
        y = room.lagged(x, lag, room.settled(x, lag, None, 5 * DAY))
        gain, late = 1.0 / math.hypot(1.0, w * lag), math.atan(w * lag)
        for t in range(0, 4 * DAY, 5000):
            self.assertAlmostEqual(y.at(t), 20.0 + 5.0 * gain * math.sin(w * t - late), places=4)

    def test_heater_holds_and_lets_go(self):
        # Cold for two hours, then 30 C: held at 18, then 30 - 12 exp(-t/lag).
        x = minutes([(0, 5.0), (7200, 5.0), (7201, 30.0), (40000, 30.0)], 0, 40000)
        y = room.lagged(x, HOUR, 18.0, 18.0)
        self.assertEqual(y.at(7000), 18.0)
        self.assertAlmostEqual(y.at(7200 + 3600), 30.0 - 12.0 * math.exp(-1.0), delta=0.11)

    def test_day_that_repeats_begins_as_it_ends(self):
        for lag in (0.5 * HOUR, 2.5 * HOUR, 40 * HOUR):
            for least in (None, 21.0):
                day = [20.0 + 5.0 * math.sin(2 * math.pi * i / 1440) for i in range(1441)]
                x = Course(0, day * 2)
                start = room.settled(x, lag, least, 2 * DAY)
                again = room.lagged(Course(0, day), lag, start, least)
                self.assertAlmostEqual(again.values[-1], start, places=5)


class Forecast(unittest.TestCase):
    def test_guard(self):
        self.assertEqual(shift_kelvin("normal", -5.0), 0.5)
        self.assertEqual(shift_kelvin("normal", 2 * DAY), 1.0)
        self.assertEqual(shift_kelvin("normal", 20 * DAY), 2.5)
        self.assertEqual(shift_kelvin("wide", 20 * DAY), 5.0)
        self.assertEqual(shift_kelvin("none", 20 * DAY), 0.0)

    def test_last_day_repeats(self):
        points = [(HOUR * i, float(i)) for i in range(49)]
        more = dict(repeated(points, 48 * HOUR, 100 * HOUR))
        for i in range(49, 100):
            self.assertEqual(more[HOUR * i], more[HOUR * (i - 24)])


class HumidAir(unittest.TestCase):
    def test_printed_dew_points(self):
        # Alduchov and Eskridge's constants; 25 C and 80 %: surface above 24.31 C keeps 3 K
        # (docs/models/limits.md).
        self.assertAlmostEqual(humid_air.dew_point(25.0, 0.80) + 3.0, 24.31, delta=0.005)
        self.assertAlmostEqual(humid_air.humidity(25.0, humid_air.dew_point(25.0, 0.8)), 0.8)

    def test_dehumidifier(self):
        t, d = Course(0, [22.0, 22.0]), Course(0, [21.0, 5.0])
        kept = room.dew(d, t, weather(humidity_max=0.5))
        self.assertAlmostEqual(humid_air.humidity(22.0, kept.values[0]), 0.5)
        self.assertEqual(kept.at(60), 5.0)

    def test_where_two_courses_cross(self):
        # A dew point that falls through the room's air within a minute.
        t, d = Course(0, [20.0, 20.0]), Course(0, [20.2, 19.8])
        crossed = room.dew(d, t, weather())
        self.assertEqual(crossed.at(30), 20.0)
        self.assertAlmostEqual(crossed.at(45), 19.9)


class Clock(unittest.TestCase):
    def test_at_the_sheets_temperature_and_elsewhere(self):
        for celsius in (12.0, 25.0, 33.0):
            films = Films(epoxy(), Course(0, [celsius] * 3000))
            factor = math.exp(55e3 / 8.31446261815324 *
                              (1.0 / (celsius + 273.15) - 1.0 / 298.15))
            self.assertAlmostEqual(films.by_clock("gel", 777.0) - 777.0, 4.0 * HOUR * factor,
                                   delta=0.1)

    def test_sum_is_undone(self):
        speed = Course(0, [1.0 + 0.5 * math.sin(i / 50.0) for i in range(2000)])
        total = Sum(speed)
        for t in (-100.0, 0.0, 12345.6, 150000.0):
            self.assertAlmostEqual(total.when(total.at(t)), t, delta=1.0)

    def test_gel_table(self):
        resin = Resin("p", 55e3, {"gel": (20.0, 1500.0), "sandable": (20.0, 9000.0)}, None, None,
                      [(20.0, 1500.0), (30.0, 700.0)])
        middle = 2.0 / (1.0 / 293.15 + 1.0 / 303.15) - 273.15
        self.assertAlmostEqual(gel_time(resin, middle), math.sqrt(1500.0 * 700.0))
        films = Films(resin, Course(0, [30.0] * 3000))
        self.assertAlmostEqual(films.by_clock("sandable", 0.0), 6 * 700.0, delta=0.1)


class Cure(unittest.TestCase):
    """Without a glass transition the path has closed forms at constant temperature."""

    def test_second_order(self):
        # (r + a^0)(1 - a)^2: 1/(1 - a) = 1 + (1 + r) k t.
        films = Films(epoxy(m=0.0, n=2.0, r=0.1), Course(0, [25.0] * 10000))
        for t in (600.0, 7200.0, 100000.0):
            self.assertAlmostEqual(conversion_at(films, 0.0, t), 1 - 1 / (1 + 1.1 * 3e-5 * t),
                                   delta=2e-4)

    def test_autocatalysis(self):
        # (r + a)(1 - a): a = r (e - 1)/(1 + r e) with e = exp[(1 + r) k t].
        films = Films(epoxy(m=1.0, n=1.0), Course(0, [25.0] * 10000))
        for t in (600.0, 7200.0, 100000.0):
            e = math.exp(1.1 * 3e-5 * t)
            self.assertAlmostEqual(conversion_at(films, 0.0, t), 0.1 * (e - 1) / (1 + 0.1 * e),
                                   delta=2e-5)

    def test_floor_that_is_never_met(self):
        resin = epoxy(k_per_s=8e-5, delay_k=10.0, full_cure_tg_c=51.0)
        resin.milestones = {"gel": (25.0, 4.0 * HOUR), "tack_free": (25.0, 6.0 * HOUR),
                            "sandable": (25.0, 24.0 * HOUR), "full_cure": (25.0, 7.0 * DAY)}
        cold = Films(resin, Course(0, [5.0] * 40000)).milestones(0.0, 0.0)
        self.assertNotIn("full_cure", cold)
        warm = Films(resin, Course(0, [35.0] * 40000)).milestones(0.0, 0.0)
        self.assertIn("full_cure", warm)


if __name__ == "__main__":
    unittest.main()
