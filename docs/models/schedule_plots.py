"""Draws the plots of schedule_year.md as SVG, from the tables beside it.

    python3 docs/models/schedule_plots.py

The tables are made by tests/long/schedule_year.sh and tests/bench/schedule_bench.py. Needs nothing
but Python's standard library.
"""

import csv
import math
import pathlib

HERE = pathlib.Path(__file__).parent
INK, FAINT = "#222222", "#dddddd"
HEATED, UNHEATED = "#b5452c", "#1f5f8b"
WIDTH, LEFT, RIGHT = 720, 64, 20


def read(name):
    with (HERE / name).open(newline="") as table:
        return list(csv.DictReader(table))


def text(x, y, words, size=13, anchor="middle", colour=INK):
    return (f'<text x="{x:.1f}" y="{y:.1f}" font-size="{size}" text-anchor="{anchor}" '
            f'fill="{colour}">{words}</text>')


def line(x1, y1, x2, y2, colour=INK, dash="", width=1):
    return (f'<line x1="{x1:.1f}" y1="{y1:.1f}" x2="{x2:.1f}" y2="{y2:.1f}" stroke="{colour}" '
            f'stroke-width="{width}" stroke-dasharray="{dash}"/>')


def mark(x, y, kind):
    """Told apart by shape, not by colour alone: a dot, a ring."""
    if kind == "heated":
        return f'<circle cx="{x:.1f}" cy="{y:.1f}" r="3.6" fill="{HEATED}"/>'
    return (f'<circle cx="{x:.1f}" cy="{y:.1f}" r="3.6" fill="white" stroke="{UNHEATED}" '
            'stroke-width="1.8"/>')


def cross(x, y, colour):
    return (f'<path d="M{x - 3.5:.1f} {y - 3.5:.1f}l7 7m0-7l-7 7" stroke="{colour}" '
            'stroke-width="1.8"/>')


def save(name, height, title, parts):
    head = (f'<svg xmlns="http://www.w3.org/2000/svg" width="{WIDTH}" height="{height}" '
            f'viewBox="0 0 {WIDTH} {height}" font-family="sans-serif" role="img">\n'
            f"<title>{title}</title>\n"
            f'<rect width="{WIDTH}" height="{height}" fill="white"/>\n')
    (HERE / name).write_text(head + "\n".join(parts) + "\n</svg>\n", encoding="utf-8")


def year(place, title):
    rows = [row for row in read("schedule_year.csv") if row["place"] == place]
    top, bottom, height = 58, 330, 420
    right = WIDTH - RIGHT

    def across(week):
        return LEFT + (week + 0.5) / 52 * (right - LEFT)

    def up(days):
        return bottom - days / 14 * (bottom - top)

    out = [text(LEFT, 22, title, 15, "start"), mark(LEFT + 8, 42, "heated"),
           text(LEFT + 18, 46, "heated to 19 °C, evenings and Saturday", 12, "start"), mark(LEFT + 278, 42, "unheated"),
           text(LEFT + 288, 46, "unheated, every day 8 to 18 h", 12, "start"), cross(LEFT + 486, 42, INK),
           text(LEFT + 496, 46, "no way through in 14 days", 12, "start")]
    for days in range(0, 15, 2):
        out += [line(LEFT, up(days), right, up(days), FAINT), text(LEFT - 8, up(days) + 4, days,
                                                                   anchor="end")]
    months = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split()
    for n, month in enumerate(months):
        x = LEFT + (n + 0.5) / 12 * (right - LEFT)
        out += [text(x, height - 38, month, 12)]
        if n:
            edge = LEFT + n / 12 * (right - LEFT)
            out.append(line(edge, top, edge, height - 54, FAINT))
    rail = {"heated": bottom + 14, "unheated": bottom + 30}
    for room, y in rail.items():
        out.append(text(LEFT - 8, y + 4, room, 11, "end"))
        mine = [row for row in rows if row["room"] == room]
        for week, row in enumerate(mine):
            if row["schedule"] == "none":
                out.append(cross(across(week), y, HEATED if room == "heated" else UNHEATED))
            else:
                out.append(mark(across(week), up(float(row["days"])), room))
    out += [f'<rect x="{LEFT}" y="{top}" width="{right - LEFT}" height="{bottom - top}" '
            f'fill="none" stroke="{INK}"/>',
            text((LEFT + right) / 2, height - 14, "begun in the week of"),
            f'<text transform="translate(16 {(top + bottom) / 2}) rotate(-90)" font-size="13" '
            f'text-anchor="middle" fill="{INK}">days until the last step</text>']
    save(f"schedule_year_{place}.svg", height, title, out)


def panel(x0, x1, label, series, ticks_x, logs):
    """series: (name, dash, points of (x, seconds))."""
    top, bottom = 56, 330
    low, high = 0.01, 30

    def across(value):
        a, b = ticks_x[0], ticks_x[-1]
        return x0 + math.log(value / a) / math.log(b / a) * (x1 - x0)

    def up(seconds):
        return bottom - math.log(max(seconds, low) / low) / math.log(high / low) * (bottom - top)

    out = []
    for value in ticks_x:
        out += [line(across(value), top, across(value), bottom, FAINT),
                text(across(value), bottom + 18, f"{value:g}", 12)]
    for seconds in (0.01, 0.1, 1, 10):
        out += [line(x0, up(seconds), x1, up(seconds), FAINT)]
        if logs:
            out.append(text(x0 - 8, up(seconds) + 4, f"{seconds:g}", 12, "end"))
    for n, (name, dash, points) in enumerate(series):
        path = " ".join(f"{across(a):.1f},{up(b):.1f}" for a, b in points)
        colour = (HEATED, UNHEATED)[n % 2]
        out.append(f'<polyline points="{path}" fill="none" stroke="{colour}" stroke-width="2" '
                   f'stroke-dasharray="{dash}"/>')
        out += [f'<circle cx="{across(a):.1f}" cy="{up(b):.1f}" r="3" fill="{colour}"/>'
                for a, b in points]
        x, y = points[-1]
        out.append(text(across(x) - 6, up(y) - 9 - (14 if n == 0 and len(series) > 1 else 0), name, 12, "end", colour))
    out += [f'<rect x="{x0}" y="{top}" width="{x1 - x0}" height="{bottom - top}" fill="none" '
            f'stroke="{INK}"/>', text((x0 + x1) / 2, bottom + 40, label)]
    return out


def speed():
    rows = read("schedule_speed.csv")

    def points(what, key):
        return [(float(row[key]), float(row["cpu_s"])) for row in rows if row["what"] == what]

    one = [row for row in rows if row["boards"] == "1"]
    many = [(float(r["boards"]), float(r["cpu_s"])) for r in rows if r["boards"] != "1"]
    horizon = [("every day 8 to 20 h", "6 4", points("every day 8-20 h", "days")),
               ("evenings and Saturday", "", [(float(r["days"]), float(r["cpu_s"])) for r in one
                                              if r["what"] == "demo hours"])]
    first = [(1.0, value) for days, value in horizon[1][2] if days == 60.0]
    title = "wetout schedule, whole process, seconds of processor time"
    out = [text(LEFT, 22, title, 15, "start")]
    out += panel(LEFT, 350, "days of horizon, one board", horizon, [3, 7, 14, 30, 60], True)
    out += panel(400, 700, "boards, 60 days", [("stopped after 10 s, gap stated", "", first + many)],
                 [1, 2, 5, 10, 20, 40], True)
    save("schedule_speed.svg", 390, title, out)


def by_month():
    """The tables of schedule_year.md."""
    rows = read("schedule_year.csv")
    for place in sorted({row["place"] for row in rows}):
        for room in ("heated", "unheated"):
            mine = [r for r in rows if r["place"] == place and r["room"] == room]
            found = [r for r in mine if r["schedule"] != "none"]
            days = sorted(float(r["days"]) for r in found)
            reasons = {}
            for r in mine:
                if r["schedule"] == "none":
                    key = r["closed_by"] or "hours"
                    reasons[key] = reasons.get(key, 0) + 1
            words = ", ".join(f"{k} {n}" for k, n in sorted(reasons.items(), key=lambda x: -x[1]))
            middle = f"{days[len(days) // 2]:.1f}" if days else "–"
            ends = f"{days[0]:.1f}–{days[-1]:.1f}" if days else "–"
            print(f"| {place} | {room} | {len(found)} of {len(mine)} | {middle} | {ends} | "
                  f"{words or '–'} |")


if __name__ == "__main__":
    year("chicago", "Chicago, typical year: the demo's small board, begun each Saturday")
    year("seattle", "Seattle, hourly normals: the demo's small board, begun each Saturday")
    speed()
    by_month()
