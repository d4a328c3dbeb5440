"""Draws the plots of film.md and cup.md as SVG, from the numbers the library gives.

    ninja -C build resin_plot_data
    python3 docs/models/plots.py build/tests/unit/resin/resin_plot_data

Needs nothing but Python's standard library.
"""

import json
import math
import pathlib
import subprocess
import sys

HERE = pathlib.Path(__file__).parent
WIDTH, HEIGHT = 720, 400
LEFT, RIGHT, TOP, BOTTOM = 70, 130, 40, 52
INK, FAINT = "#222222", "#dddddd"
# Told apart by people who see colours differently, and by their dashes in print.
STROKES = [("#b5452c", ""), ("#1f5f8b", ""), ("#3f7d3a", ""), ("#7a4e9c", ""), ("#8a6d1d", ""),
           ("#444444", "")]
DASHES = ["", "7 3", "2 3", "9 3 2 3", "12 4", "4 4"]


class Axis:
    def __init__(self, low, high, log, start, length):
        self.low, self.high, self.log, self.start, self.length = low, high, log, start, length

    def at(self, value):
        if self.log:
            share = math.log(value / self.low) / math.log(self.high / self.low)
        else:
            share = (value - self.low) / (self.high - self.low)
        return self.start + share * self.length

    def holds(self, value):
        return self.low * (1 - 1e-9) <= value <= self.high * (1 + 1e-9) or (
            not self.log and self.low <= value <= self.high)


def text(x, y, words, size=13, anchor="middle", colour=INK, extra=""):
    return (f'<text x="{x:.1f}" y="{y:.1f}" font-size="{size}" text-anchor="{anchor}" '
            f'fill="{colour}" {extra}>{words}</text>')


def chart(name, title, series, x, y, ticks_x, ticks_y, lines=()):
    """x, y: (label, low, high, logarithmic). lines: (value of y, words)."""
    across = Axis(x[1], x[2], x[3], LEFT, WIDTH - LEFT - RIGHT)
    up = Axis(y[1], y[2], y[3], HEIGHT - BOTTOM, -(HEIGHT - TOP - BOTTOM))
    out = [f'<svg xmlns="http://www.w3.org/2000/svg" width="{WIDTH}" height="{HEIGHT}" '
           f'viewBox="0 0 {WIDTH} {HEIGHT}" font-family="sans-serif" role="img">',
           f"<title>{title}</title>",
           f'<rect width="{WIDTH}" height="{HEIGHT}" fill="white"/>',
           text(LEFT, 22, title, 15, "start")]
    right, bottom = WIDTH - RIGHT, HEIGHT - BOTTOM
    for value in ticks_x:
        at = across.at(value)
        out.append(f'<line x1="{at:.1f}" y1="{TOP}" x2="{at:.1f}" y2="{bottom}" stroke="{FAINT}"/>')
        out.append(text(at, bottom + 18, f"{value:g}"))
    for value in ticks_y:
        at = up.at(value)
        out.append(f'<line x1="{LEFT}" y1="{at:.1f}" x2="{right}" y2="{at:.1f}" stroke="{FAINT}"/>')
        out.append(text(LEFT - 8, at + 4, f"{value:g}", anchor="end"))
    for value, words in lines:
        at = up.at(value)
        out.append(f'<line x1="{LEFT}" y1="{at:.1f}" x2="{right}" y2="{at:.1f}" stroke="{INK}" '
                   f'stroke-dasharray="1 3"/>')
        out.append(text(LEFT + 6, at - 5, words, 12, "start"))
    labels = []
    for i, one in enumerate(series):
        colour, _ = STROKES[i % len(STROKES)]
        points = [(across.at(a), up.at(b)) for a, b in one["points"]
                  if across.holds(a) and up.holds(b)]
        path = " ".join(f"{a:.1f},{b:.1f}" for a, b in points)
        dash = DASHES[i % len(DASHES)]
        out.append(f'<polyline points="{path}" fill="none" stroke="{colour}" stroke-width="2" '
                   f'stroke-dasharray="{dash}"/>')
        labels.append([points[-1][1], one["name"], colour])
    # Names at the ends of the lines, pushed apart where they would touch.
    labels.sort()
    for i in range(1, len(labels)):
        labels[i][0] = max(labels[i][0], labels[i - 1][0] + 16)
    for at, words, colour in labels:
        out.append(text(right + 8, at + 4, words, 12, "start", colour))
    out.append(f'<rect x="{LEFT}" y="{TOP}" width="{right - LEFT}" height="{bottom - TOP}" '
               f'fill="none" stroke="{INK}"/>')
    out.append(text((LEFT + right) / 2, HEIGHT - 12, x[0]))
    out.append(text(0, 0, y[0], extra=f'transform="translate(18 {(TOP + bottom) / 2:.1f}) rotate(-90)"'))
    out.append("</svg>\n")
    (HERE / f"{name}.svg").write_text("\n".join(out), encoding="utf-8")


def main():
    data = json.loads(subprocess.run([sys.argv[1]], check=True, capture_output=True).stdout)
    hours = ("hours after spreading", 0.1, 200, True)
    ticks = [0.1, 0.3, 1, 3, 10, 30, 100]
    chart("film_conversion", "Film: conversion at constant temperature", data["film_conversion"],
          hours, ("conversion", 0, 1, False), ticks, [0, 0.2, 0.4, 0.6, 0.8, 1], [(0.577, "gel")])
    chart("film_tg", "Film: glass transition", data["film_tg"], hours, ("Tg, °C", -50, 70, False),
          ticks, [-50, -25, 0, 25, 50], [(60, "fully cured")])
    chart("film_times", "Film: milestones by temperature", data["film_times"],
          ("air, °C", 0, 40, False), ("hours", 0.5, 1000, True), [0, 10, 20, 30, 40],
          [1, 3, 10, 30, 100, 300, 1000])
    chart("cup_middle", "Cup: temperature of the middle, mixed at 25 °C in air of 25 °C",
          data["cup_middle"], ("minutes after mixing", 0, 60, False),
          ("°C", 0, 250, False), [0, 10, 20, 30, 40, 50, 60], [0, 50, 100, 150, 200, 250],
          [(200, "runs away"), (45, "no longer usable")])
    chart("cup_use", "Cup as high as wide: use within, resin as warm as the air", data["cup_use"],
          ("mass, g", 20, 2000, True), ("minutes", 10, 300, True), [20, 50, 100, 200, 500, 1000, 2000],
          [10, 20, 50, 100, 200])


main()
