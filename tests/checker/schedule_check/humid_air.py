"""Water vapour in air, over water at all temperatures (docs/models/weather.md, "Humid air").

    es(t) = 610.94 Pa exp[17.625 t/(243.04 + t)],  t in C
"""

import math


def saturation(celsius: float) -> float:
    """Pa."""
    return 610.94 * math.exp(17.625 * celsius / (243.04 + celsius))


def dew_point(celsius: float, humidity: float) -> float:
    """Celsius, of a humidity as a share of 1."""
    g = math.log(humidity * saturation(celsius) / 610.94)
    return 243.04 * g / (17.625 - g)


def humidity(celsius: float, dew: float) -> float:
    """Share of 1, at most 1."""
    return min(1.0, saturation(dew) / saturation(celsius))
