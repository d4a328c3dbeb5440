"""Outlines that are written for other programs, read by such programs: ezdxf (MIT licence, from Debian)
reads the DXF, and the area inside its arcs is that of the plan to 1e-6; rsvg-convert (librsvg) fills the
SVG. Both are read again as boards of the same areas.

    exported.py PROGRAM DEMO_DATA
"""

import json
import math
import pathlib
import shutil
import subprocess
import sys
import tempfile

import ezdxf
import ezdxf.audit

WITHIN = 1.2e-6  # m2, half a step of the plan's own figure among it


def planned(program, folder, file):
    run = subprocess.run([program, "plan", file, "--json", "--dry-run"], cwd=folder, capture_output=True, text=True)
    assert run.returncode == 0, (run.stderr, run.stdout)
    return json.loads(run.stdout)["board"]


def inside(polyline):
    """By Green's formula: the polygon, and the segment of a circle that each arc adds."""
    points = list(polyline.points())
    total = 0.0
    for a, b, vertex in zip(points, points[1:] + points[:1], polyline.vertices):
        total += 0.5 * (a.x * b.y - b.x * a.y)
        bulge = vertex.dxf.get("bulge", 0.0)
        if bulge:
            chord, turn = math.dist(a, b), 4.0 * math.atan(bulge)
            radius = chord / 2.0 / math.sin(abs(turn) / 2.0)
            total += math.copysign(0.5 * radius**2 * (abs(turn) - math.sin(abs(turn))), turn)
    return abs(total) * 1e-6


def filled(svg, wide):
    """Area that rsvg-convert paints, by the mean darkness of the picture."""
    text = svg.read_text().replace('fill="none" stroke="#000"', 'fill="#000" stroke="none"')
    black = svg.with_suffix(".black.svg")
    black.write_text(text)
    size = [float(text.split(f'{key}="')[1].split("mm")[0]) for key in ("width", "height")]
    png = subprocess.run(["rsvg-convert", "-w", "1500", "-a", "-b", "white", black], check=True, capture_output=True)
    pam = subprocess.run(["pngtopnm"], input=png.stdout, check=True, capture_output=True).stdout
    kind, shape, depth, pixels = pam.split(b"\n", 3)
    count = len(pixels)
    return size[0] * size[1] * 1e-6 * sum(255 - p for p in pixels) / 255.0 / count


def main(program, data):
    folder = pathlib.Path(tempfile.mkdtemp())
    shutil.copytree(data, folder, dirs_exist_ok=True)
    boards = 0
    for file in sorted(folder.glob("*.toml")):
        if not file.read_text().startswith("[board]") and "\n[board]\n" not in file.read_text():
            continue
        board = planned(program, folder, file.name)
        area = board["planform_area_m2"]
        for kind in ("svg", "dxf"):
            out = folder / f"{file.stem}_out.{kind}"
            run = subprocess.run([program, "template", file.name, "outline", "--output", out.name], cwd=folder,
                                 capture_output=True, text=True)
            assert run.returncode == 0, (run.stderr, run.stdout)
        document = ezdxf.readfile(folder / f"{file.stem}_out.dxf")
        assert not document.audit().has_errors
        assert document.units == ezdxf.units.MM, document.units
        (polyline,) = document.modelspace().query("POLYLINE")
        assert polyline.is_closed
        assert abs(inside(polyline) - area) < WITHIN, (file.name, inside(polyline), area)
        painted = filled(folder / f"{file.stem}_out.svg", board)
        assert abs(painted / area - 1.0) < 1e-3, (file.name, painted, area)
        boards += 1
    assert boards >= 3, boards
    print(f"{boards} boards: read by ezdxf within {WITHIN:g} m2")


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2])
