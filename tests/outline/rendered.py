"""Planforms of boards that were drawn, against the area that librsvg fills when it draws the same file:
another reader of path data, transforms, units and view boxes than ours. Pixels are counted, partly
covered ones by their shade, so an area is good to some 1e-5.

    rendered.py PROGRAM DEMO_DATA
"""

import json
import pathlib
import subprocess
import sys
import tempfile

import numpy

LENGTH = 2.1336  # metres: 7 ft
NS = 'xmlns="http://www.w3.org/2000/svg"'
FILL = 'fill="#000"'
# Name, attributes of the drawing, what is in it. Nose up, symmetrical, round at both ends.
DRAWINGS = [
    ("cubics", 'width="640mm" height="2180mm" viewBox="0 0 640 2180"',
     f'<path {FILL} d="M320 20C445 20 593 430 593 1010C593 1520 455 2153.6 320 2153.6C185 2153.6 47 1520 47 1010C47 430 195 20 320 20Z"/>'),
    ("relative and smooth cubics", 'viewBox="0 0 640 2180" width="320mm" height="1090mm"',
     f'<path {FILL} d="m320 20c125 0 273 410 273 990s-138 1143.6-273 1143.6-273-563.6-273-1143.6 148-990 273-990z"/>'),
    ("quadratics", 'width="25in" height="86in" viewBox="0 0 250 860"',
     f'<path {FILL} d="M125 5Q225 5 225 430T125 855Q25 855 25 430T125 5"/>'),
    ("arcs", 'width="500" height="2000"', f'<path {FILL} d="M250 50a200 900 0 0 1 200 900A200 1000 0 01250 1950 200 1000 0 0150 950a200 900 0 01200-900"/>'),
    ("turned arcs", 'width="500" height="2000"',
     f'<g transform="rotate(90 250 1000)"><path {FILL} d="M-650 1000A900 200 0 1 1 1150 1000 900 200 0 1 1-650 1000z"/></g>'),
    ("ellipse in a skewed group", 'width="600" height="2000"',
     f'<g transform="matrix(2 0 0 4 100 40)"><ellipse {FILL} cx="100" cy="240" rx="80" ry="230"/></g>'),
    ("circle stretched by its view", 'width="50cm" height="200cm" viewBox="0 0 100 100" preserveAspectRatio="none"',
     f'<circle {FILL} cx="50" cy="50" r="48"/>'),
    ("nested view", 'width="600" height="2100"',
     f'<svg x="20" y="10" width="560" height="2080" viewBox="-10 -10 120 480"><ellipse {FILL} cx="50" cy="230" rx="50" ry="230"/></svg>'),
    ("polygon", 'width="600" height="2100"', f'<polygon {FILL} points="300,10 400,100 520,700 530,1200 430,1900 300,2090 170,1900 70,1200 80,700 200,100"/>'),
    ("steps h v", 'width="600" height="2100"', f'<path {FILL} d="M300 10L500 600V1500L300 2090 100 1500V600z"/>'),
    ("rounded box", 'width="600" height="2100"', f'<rect {FILL} x="50" y="20" width="500" height="2060" rx="250" ry="600"/>'),
    ("percent signs of nothing, units in points", 'width="400pt" height="1500pt" viewBox="0 0 400 1500"',
     f'<ellipse {FILL} cx="200" cy="750" rx="150" ry="740"/>'),
]


def filled(svg: pathlib.Path):
    """Area over the square of the height, of what is filled."""
    png = subprocess.run(["rsvg-convert", "-f", "png", "-h", "6000", "-b", "white", svg], check=True, capture_output=True).stdout
    pnm = subprocess.run(["pngtopnm"], input=png, check=True, capture_output=True).stdout
    magic, size, most, data = pnm.split(b"\n", 3)
    width, height = map(int, size.split())
    pixels = numpy.frombuffer(data, numpy.uint8).reshape(height, width, -1)[:, :, 0]
    shade = 1.0 - pixels / 255.0
    # The length by the shade of the column through the middle of what is filled.
    rows = shade.max(axis=1)
    return shade.sum() / rows.sum() ** 2


def main():
    program, demo = (pathlib.Path(word).resolve() for word in sys.argv[1:])
    job = (demo / "santa_maria.toml").read_text()
    job = job.replace("santa_maria.svg#outline", "drawing.svg").replace('nose12 = "15 in"\nwide = "21 1/2 in"\n', "")
    worst = 0.0
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        (folder / "shop.toml").write_text((demo / "shop.toml").read_text())
        for title, attributes, inside in DRAWINGS:
            (folder / "drawing.svg").write_text(f"<svg {NS} {attributes}>{inside}</svg>")
            text = job
            if title in ("polygon", "steps h v"):
                text = text.replace('= "round"', '= "point"')
            (folder / "board.toml").write_text(text)
            out = subprocess.run([program, "--log", folder / "log.db", "--json", "-q", "plan", "board.toml", "--dry-run"],
                                 cwd=folder, check=True, capture_output=True, text=True).stdout
            ours = json.loads(out)["board"]["planform_area_m2"]
            theirs = filled(folder / "drawing.svg") * LENGTH**2
            worst = max(worst, abs(ours / theirs - 1.0))
            print(f"{title:<45}{ours:.5f} m2  {ours / theirs - 1.0:+.1e}")
            assert abs(ours / theirs - 1.0) < 1e-3, title
    print(f"largest difference {worst:.1e}")


if __name__ == "__main__":
    main()
