"""Fits against SciPy, to 1e-8: the same equations, solved in another way.

    reference.py LEARN_FIT

Least squares: numpy.linalg.lstsq of the records and beliefs stacked. Robust: scipy.optimize.root of
the equations in robust_fit.hpp, from random starts. Quantiles and chances: scipy.stats.t.
"""

import subprocess
import sys

import numpy
import scipy.integrate
import scipy.optimize
import scipy.stats

CLOSE = 1e-8


def problem(random, plain):
    size, count = random.integers(1, 7), random.integers(0, 41)
    mean, width = random.normal(5, 3, size), random.uniform(0.2, 4, size)
    truth = mean + random.normal(0, 1, size) * width * random.choice([1.0, 2.0])
    rows = random.uniform(0, 3, (count, size)) * random.integers(0, 2, (count, size))
    spread = random.uniform(0.1, 2, count)
    value = rows @ truth + random.standard_t(2, count) * spread
    wild = random.random(count) < 0.1
    value[wild] += random.normal(0, 60, wild.sum())
    return {"mean": mean, "width": width, "rows": rows, "value": value, "spread": spread,
            "noise": (1.0, 1e15, 1e9, 1e9) if plain else (random.uniform(0.5, 2),
                                                     random.uniform(0.5, 8),
                                                     random.choice([1.0, 1.345, 2.0]),
                                                          random.choice([4.685, 6.0])),
            "row": random.uniform(0, 3, size), "next": random.uniform(0.1, 2),
            "share": random.uniform(0.02, 0.98), "limit": random.normal(20, 10)}


def as_text(one):
    lines = [f"{len(one['mean'])} {len(one['value'])} 1"] + [repr(float(x)) for x in one["noise"]]
    lines += [f"{float(a)!r} {float(b)!r}" for a, b in zip(one["mean"], one["width"])]
    for row, value, spread in zip(one["rows"], one["value"], one["spread"]):
        lines.append(" ".join(repr(float(x)) for x in [*row, value, spread]))
    lines.append(" ".join(repr(float(x)) for x in [*one["row"], one["next"], one["share"],
                                                   one["limit"]]))
    return "\n".join(lines) + "\n"


def least_squares(one):
    rows = numpy.vstack([one["rows"] / one["spread"][:, None], numpy.diag(1 / one["width"])])
    right = numpy.concatenate([one["value"] / one["spread"], one["mean"] / one["width"]])
    return numpy.linalg.lstsq(rows, right, rcond=None)[0], 1.0


def decided(one, weights, factor):
    rows = one["rows"] / one["spread"][:, None]
    normal = rows.T @ (rows * (weights / factor ** 2)[:, None]) + numpy.diag(one["width"] ** -2.0)
    covariance = numpy.linalg.inv(normal)
    return covariance, numpy.sum(1 - numpy.diag(covariance) / one["width"] ** 2)


def robust(one, start, near):
    factor_0, records, tuning, aside = one["noise"]
    density = scipy.stats.norm
    kappa, _ = scipy.integrate.quad(lambda x: min(x * x, tuning ** 2) * density.pdf(x), -12, 12,
                                    points=[-tuning, tuning], epsabs=1e-13)

    def rest(unknown):
        values, factor = unknown[:-1], numpy.exp(unknown[-1])
        errors = (one["value"] - one["rows"] @ values) / one["spread"]
        cut = numpy.clip(errors, -tuning * factor, tuning * factor)
        weights = numpy.where(errors == 0, 1.0, cut / numpy.where(errors == 0, 1.0, errors))
        pull = (one["rows"] / one["spread"][:, None]).T @ cut / factor ** 2
        _, count = decided(one, weights, factor)
        count = min(max(count, 0.0), len(errors))
        squares = records * factor_0 ** 2 + numpy.sum(cut ** 2)
        return numpy.append(pull * one["width"] - (values - one["mean"]) / one["width"],
                            numpy.log(squares / (records + (len(errors) - count) * kappa))
                            - 2 * numpy.log(factor))

    found = scipy.optimize.root(rest, start, tol=1e-14)
    if numpy.max(numpy.abs(rest(found.x))) > 1e-10:
        return None
    factor = numpy.exp(found.x[-1])

    def second(values):
        errors = (one["value"] - one["rows"] @ values) / one["spread"]
        left = numpy.clip(1 - (errors / (aside * factor)) ** 2, 0, None)
        pull = (one["rows"] / one["spread"][:, None]).T @ (errors * left ** 2) / factor ** 2
        return pull * one["width"] - (values - one["mean"]) / one["width"]

    # Several roots: the one wetout found, from nearby.
    found = scipy.optimize.root(second, near, tol=1e-14)
    if numpy.max(numpy.abs(second(found.x))) > 1e-10:
        return None
    return found.x, factor


def close(what, mine, other, scale=1.0):
    worst = numpy.max(numpy.abs(numpy.asarray(mine) - other) / scale, initial=0.0)
    assert worst < CLOSE, f"{what}: {mine} against {other}, {worst:.2e} apart"


def main(program):
    random = numpy.random.default_rng(7)
    problems = [problem(random, plain=n % 4 == 0) for n in range(400)]
    done = subprocess.run([program], input="".join(as_text(one) for one in problems), text=True,
                          capture_output=True, check=True)
    lines = done.stdout.strip().split("\n")
    assert len(lines) == len(problems)
    unsolved = 0
    for n, (one, line) in enumerate(zip(problems, lines)):
        numbers = numpy.array([float(x) for x in line.split()])
        size, count = len(one["mean"]), len(one["value"])
        values, spreads, weights = numpy.split(numbers[:2 * size + count], [size, 2 * size])
        factor, freedom, value, spread, quantile, chance = numbers[2 * size + count:]
        if n % 4 == 0:
            other = least_squares(one)
        else:
            start = numpy.append(values + random.normal(0, 0.3, size) * spreads,
                                 numpy.log(factor) + random.normal(0, 0.1))
            near = values + random.normal(0, 0.02, size) * spreads
            other = robust(one, start, near)
            if other is None:
                unsolved += 1
                continue
        close(f"values of {n}", values, other[0], one["width"])
        close(f"factor of {n}", factor, other[1], factor)
        covariance, free = decided(one, weights, factor)
        close(f"spreads of {n}", spreads, numpy.sqrt(numpy.diag(covariance)), one["width"])
        close(f"freedom of {n}", freedom, one["noise"][1] + count - free, freedom)
        close(f"value of {n}", value, one["row"] @ other[0], abs(value) + 1)
        close(f"spread of {n}", spread, numpy.sqrt(one["row"] @ covariance @ one["row"]
                                                   + (one["next"] * factor) ** 2), spread)
        student = scipy.stats.t(freedom)
        close(f"quantile of {n}", quantile, value + spread * student.ppf(one["share"]), spread)
        close(f"chance of {n}", chance, student.sf((one["limit"] - value) / spread))
    assert unsolved <= len(problems) // 20, f"SciPy found no solution of {unsolved} problems"
    print(f"{len(problems)} fits equal to {CLOSE:g}; SciPy left {unsolved} unsolved")


if __name__ == "__main__":
    main(sys.argv[1])
