"""Draws the plot of learning.md as SVG, from learn_shops.csv (tests/long/learn_shops.py --save).

    python3 docs/models/learn_plots.py
"""

import csv
import pathlib

from schedule_plots import FAINT, HEATED, INK, UNHEATED, line, text

HERE = pathlib.Path(__file__).parent
TOP, BOTTOM = 56, 300


def panel(x0, x1, title, top, ticks, rows, series, unit):
    def across(boards):
        return x0 + boards / 10 * (x1 - x0)

    def up(value):
        return BOTTOM - value / top * (BOTTOM - TOP)

    out = [text(x0, TOP - 12, title, 13, "start")]
    for tick in ticks:
        out += [line(x0, up(tick), x1, up(tick), FAINT),
                text(x0 - 6, up(tick) + 4, f"{tick:g}{unit}", 12, "end")]
    for boards in range(0, 11, 2):
        out.append(text(across(boards), BOTTOM + 18, boards, 12))
    for name, key, colour, dash, scale in series:
        points = []
        for boards in range(11):
            values = [float(row[key]) * scale for row in rows if int(row["boards"]) == boards]
            points.append((across(boards), up(min(sum(values) / len(values), top))))
        path = " ".join(f"{a:.1f},{b:.1f}" for a, b in points)
        out.append(f'<polyline points="{path}" fill="none" stroke="{colour}" stroke-width="2" '
                   f'stroke-dasharray="{dash}"/>')
        out.append(text(x1 - 4, points[-1][1] - 8, name, 12, "end", colour))
    out += [f'<rect x="{x0}" y="{TOP}" width="{x1 - x0}" height="{BOTTOM - TOP}" fill="none" '
            f'stroke="{INK}"/>', text((x0 + x1) / 2, BOTTOM + 38, "boards recorded", 12)]
    return out


def main():
    with (HERE / "learn_shops.csv").open(newline="") as table:
        rows = list(csv.DictReader(table))
    out = ['<svg xmlns="http://www.w3.org/2000/svg" width="720" height="350" viewBox="0 0 720 350" '
           'font-family="sans-serif" role="img">', "<title>200 made-up shops</title>",
           '<rect width="720" height="350" fill="white"/>',
           text(56, 22, "200 made-up shops, mean of three seeds", 15, "start")]
    out += panel(56, 350, "coats that run short", 60, [0, 10, 20, 30, 40, 50], rows,
                 [("defaults, 8 % margin", "default_short", UNHEATED, "6 4", 100),
                  ("learned, 24 : 1", "short", HEATED, "", 100)], " %")
    out += panel(418, 700, "left over, g a coat", 200, [0, 50, 100, 150, 200], rows,
                 [("defaults", "default_left_g", UNHEATED, "6 4", 1),
                  ("learned", "left_g", HEATED, "", 1)], "")
    (HERE / "learn_shops.svg").write_text("\n".join(out) + "\n</svg>\n", encoding="utf-8")


main()
