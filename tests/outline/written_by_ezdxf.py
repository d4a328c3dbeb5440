"""Boards whose outlines another program wrote as DXF: ezdxf (MIT licence, from Debian) writes every
entity that is read, in several versions of the format; the planform is compared with the area inside
ezdxf's own flattening of the same file.

    written_by_ezdxf.py PROGRAM DEMO_DATA
"""

import io
import json
import math
import pathlib
import subprocess
import sys
import tempfile

import ezdxf
LENGTH = 2.1336  # metres: 7 ft


def rail(y):
    """Half-width of a board of 2000 by 500 at y."""
    return 250.0 * math.sqrt(max(0.0, 1.0 - ((y - 1000.0) / 1000.0) ** 2))


def lines(space):
    points = [(rail(y), y) for y in [0, 2, 8, 20, 50, *range(100, 2000, 100), 1950, 1980, 1992, 1998, 2000]]
    points += [(-x, y) for x, y in reversed(points[1:-1])]
    for a, b in zip(points, points[1:] + points[:1]):
        space.add_line(a, b)


def polyline(space):
    points = [(rail(y), y) for y in [0, 2, 8, 20, 50, *range(100, 2000, 100), 1950, 1980, 1992, 1998, 2000]]
    space.add_lwpolyline(points + [(-x, y) for x, y in reversed(points[1:-1])], close=True)


def bulges(space):
    space.add_lwpolyline([(0, 0, 0.3), (0, 2000, 0.3)], format="xyb", close=True)


def old_polyline(space):
    space.add_polyline2d([(0, 0, 0.25), (0, 2000, 0.25)], format="xyb", close=True)


def ellipse(space):
    space.add_ellipse((0, 1000), major_axis=(0, 1000), ratio=0.25)


def half_ellipse(space):
    space.add_ellipse((0, 1000), major_axis=(0, 1000), ratio=0.25, start_param=math.pi, end_param=2 * math.pi)


def arcs(space):
    # Two arcs through nose and tail: a lens.
    radius, off = 2200.0, math.sqrt(2200.0**2 - 1000.0**2)
    angle = math.degrees(math.asin(1000.0 / radius))
    space.add_arc((-off, 1000), radius, -angle, angle)
    space.add_arc((off, 1000), radius, 180 - angle, 180 + angle)


def spline(space):
    control = [(0, 0), (120, 0), (260, 350), (250, 1000), (240, 1600), (110, 2000), (0, 2000)]
    space.add_open_spline(control, degree=3)
    space.add_open_spline([(-x, y) for x, y in control], degree=3)


def spline_of_five(space):
    control = [(0, 0), (150, 0), (200, 200), (270, 900), (260, 1300), (160, 2000), (0, 2000)]
    space.add_open_spline(control, degree=5)
    space.add_open_spline([(-x, y) for x, y in reversed(control)], degree=5)


def rational(space):
    control = [(0, 0), (180, 0), (260, 700), (250, 1300), (140, 2000), (0, 2000)]
    weights = [1, 2, 1, 0.7, 1.5, 1]
    space.add_rational_spline(control, weights, degree=3)
    space.add_rational_spline([(-x, y) for x, y in control], weights, degree=3)


def block(space):
    half = space.doc.blocks.new("HALF", base_point=(10, 20))
    half.add_ellipse((10, 1020), major_axis=(0, 1000), ratio=0.25, start_param=math.pi, end_param=2 * math.pi)
    space.add_blockref("HALF", (300, 50))
    space.add_blockref("HALF", (300, 50), dxfattribs={"xscale": -1})


def turned_block(space):
    half = space.doc.blocks.new("RAIL")
    half.add_ellipse((1000, 0), major_axis=(1000, 0), ratio=0.25, end_param=math.pi)
    space.add_blockref("RAIL", (0, 0), dxfattribs={"rotation": 90})
    space.add_blockref("RAIL", (0, 2000), dxfattribs={"rotation": 270})


# Of each: the ends, and versions of the format that have its entities.
EVERY = ["R2000", "R2004", "R2007", "R2010", "R2018"]
CASES = [(lines, "point", ["R12", *EVERY]), (polyline, "point", EVERY), (bulges, "point", EVERY),
         (old_polyline, "point", ["R12", *EVERY]), (ellipse, "round", EVERY), (half_ellipse, "round", EVERY),
         (arcs, "point", ["R12", *EVERY]), (spline, "round", EVERY), (spline_of_five, "round", EVERY),
         (rational, "round", EVERY), (block, "round", EVERY), (turned_block, "round", EVERY)]
UNITS = [4, 1, 0, 6, 5]


def area_of(space):
    """By ezdxf's own flattening, of the whole board and of its length."""
    total, low, high = 0.0, math.inf, -math.inf
    entities = []
    for entity in space:
        composed = entity.dxftype() in ("INSERT", "LWPOLYLINE", "POLYLINE")
        entities += list(entity.virtual_entities()) if composed else [entity]
    halves = []
    for entity in entities:
        if entity.dxftype() == "LINE":
            vertices = [entity.dxf.start, entity.dxf.end]
        else:
            vertices = entity.flattening(1e-4)
        points = [(p.x, p.y) for p in vertices]
        halves.append(points)
        low, high = min([low, *(y for _, y in points)]), max([high, *(y for _, y in points)])
    # Each piece with the centre line: the area between them, whichever way it runs.
    axis = 0.5 * (min(x for h in halves for x, _ in h) + max(x for h in halves for x, _ in h))
    single = len(halves) == 1
    if single and abs(halves[0][0][0] - halves[0][-1][0]) < 1e-6 and abs(halves[0][0][1] - halves[0][-1][1]) > 1:
        axis = halves[0][0][0]
    for points in halves:
        for (x0, y0), (x1, y1) in zip(points, points[1:]):
            total += abs((0.5 * (x0 + x1) - axis) * (y1 - y0))
    if single and axis == halves[0][0][0] and abs(halves[0][0][1] - halves[0][-1][1]) > 1:
        total *= 2
    return total, high - low


def main():
    program, demo = (pathlib.Path(word).resolve() for word in sys.argv[1:])
    job = (demo / "santa_maria.toml").read_text()
    job = job.replace("santa_maria.svg#outline", "drawing.dxf").replace('nose12 = "15 in"\nwide = "21 1/2 in"\n', "")
    worst, count = 0.0, 0
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        (folder / "shop.toml").write_text((demo / "shop.toml").read_text())
        for draw, ends, versions in CASES:
            for version in versions:
                document = ezdxf.new(version)
                document.header["$INSUNITS"] = UNITS[count % len(UNITS)]
                draw(document.modelspace())
                text = io.StringIO()
                document.write(text)
                (folder / "drawing.dxf").write_text(text.getvalue())
                (folder / "board.toml").write_text(job.replace('= "round"', f'= "{ends}"'))
                out = subprocess.run([program, "--log", folder / "log.db", "--json", "-q", "plan", "board.toml",
                                      "--dry-run"], cwd=folder, capture_output=True, text=True)
                assert out.returncode == 0, (draw.__name__, version, out.stderr)
                ours = json.loads(out.stdout)["board"]["planform_area_m2"]
                area, length = area_of(document.modelspace())
                theirs = area * (LENGTH / length) ** 2
                worst = max(worst, abs(ours / theirs - 1.0))
                # The plan prints five decimals.
                assert abs(ours / theirs - 1.0) < 8e-6, (draw.__name__, version, ours, theirs)
                count += 1
    print(f"{count} drawings of ezdxf {ezdxf.__version__}, largest difference of area {worst:.1e}")


if __name__ == "__main__":
    main()
