"""Drawings at full size, printed and measured: pdftoppm (poppler) makes pictures of the pages at 10
pixels a millimetre; squares, station widths and the outline are looked for in them. Where sheets lie is
worked out anew from what docs/commands/template.md says of margins and overlaps.

    full_size.py PROGRAM DEMO_DATA
"""

import pathlib
import re
import subprocess
import sys
import tempfile

import numpy

DPI = 254  # 10 pixels a millimetre
MARGIN, OVERLAP, AROUND = 10.0, 10.0, 5.0
PAPERS = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}
INCH = 25.4
PEN = 2  # pixels that a line of 0.2 mm is wide


def pages(pdf: pathlib.Path):
    folder = pathlib.Path(tempfile.mkdtemp(dir=pdf.parent))
    subprocess.run(["pdftoppm", "-r", str(DPI), "-gray", pdf, folder / "p"], check=True)
    for file in sorted(folder.iterdir()):
        with file.open("rb") as stream:
            assert stream.readline() == b"P5\n"
            width, height = map(int, stream.readline().split())
            assert stream.readline() == b"255\n"
            yield numpy.frombuffer(stream.read(), numpy.uint8).reshape(height, width)
        file.unlink()


def names(pdf: pathlib.Path):
    """Of the sheets after the first page: "2B" for the second row, second column."""
    text = subprocess.run(["pdftotext", "-layout", pdf, "-"], check=True, capture_output=True, text=True)
    for page in text.stdout.split("\f")[1:-1]:
        found = re.findall(r"^\s*(\d+)([A-Z])\s", page, re.MULTILINE)
        yield int(found[-1][0]) - 1, ord(found[-1][1]) - ord("A")


def runs(dark):
    """Lengths of the stretches of True."""
    edges = numpy.flatnonzero(numpy.diff(numpy.concatenate([[0], dark.astype(int), [0]])))
    return (edges[1::2] - edges[::2]).tolist()


def check_squares(page):
    """The upper side of each square is one dark stretch as long as the square."""
    longest = sorted({length for row in page < 128 for length in runs(row) if length > 900})
    assert any(abs(length - PEN - 1000) <= 2 for length in longest), longest
    column = [length for row in (page < 128).T for length in runs(row) if length > 900]
    assert any(abs(length - PEN - 1000) <= 2 for length in column), column


def assembled(pdf, paper, length, half):
    """All sheets as one picture, pixel (0, 0) at the nose on the centre line less AROUND."""
    sheets = list(zip(names(pdf), list(pages(pdf))[1:]))
    upright = PAPERS[paper]
    tall = sheets[0][1].shape[0] > sheets[0][1].shape[1]
    width, height = upright if tall else upright[::-1]
    step = numpy.array([height - 2 * MARGIN - OVERLAP, width - 2 * MARGIN - OVERLAP])
    extent = numpy.array([length + 2 * AROUND, half + 2 * AROUND])
    count = numpy.ceil((extent - OVERLAP) / step - 1e-9)
    begin = -AROUND - (count * step + OVERLAP - extent) / 2
    picture = numpy.full(((extent + 40) * 10).astype(int), 255, numpy.uint8)
    for place, page in sheets:
        top, left = ((begin + numpy.array(place) * step + AROUND) * 10).round().astype(int)
        window = page[int(MARGIN * 10):int((height - MARGIN) * 10), int(MARGIN * 10):int((width - MARGIN) * 10)]
        y, x = max(top, 0), max(left, 0)
        window = window[y - top:, x - left:]
        target = picture[y:y + window.shape[0], x:x + window.shape[1]]
        numpy.minimum(target, window[:target.shape[0], :target.shape[1]], out=target)
    return picture


def is_dark(picture, across, down, within=0.5):
    """A line within so many millimetres of a point, in millimetres from nose and centre line."""
    r = int(within * 10)
    y, x = int(round((down + AROUND) * 10)), int(round((across + AROUND) * 10))
    return (picture[max(y - r, 0):y + r + 1, max(x - r, 0):x + r + 1] < 128).any()


def outline_of(svg: str):
    """Of `plan --svg`, at 1:10 from the nose at y = 24."""
    path = re.search(r'id="outline" d="M([^"]*) Z"', svg).group(1)
    for x, y in (map(float, pair.split(",")) for pair in path.split(" L")):
        yield 10 * x, 10 * (y - 24.0)


def main():
    program, demo = map(pathlib.Path, sys.argv[1:])
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        board = demo.resolve() / "pico.toml"

        def wetout(*words):
            subprocess.run([program.resolve(), "--log", folder / "log.db", "-q", *words], check=True,
                           cwd=folder, stdout=subprocess.DEVNULL)

        wetout("plan", board, "--svg", "board.svg")
        outline = list(outline_of((folder / "board.svg").read_text()))
        length = 64 * INCH  # 5 ft 4 in, as the job file says
        half = max(x for x, _ in outline)
        for paper in PAPERS:
            wetout("template", board, "outline", "--paper", paper, "--output", "board.pdf")
            first = next(iter(pages(folder / "board.pdf")))
            check_squares(first)
            picture = assembled(folder / "board.pdf", paper, length, half)
            # The job file's own widths, at its own measuring points.
            for from_nose, width in ((12, 16.25), (64 - 12, 17.0)):
                assert is_dark(picture, width / 2 * INCH, from_nose * INCH), (paper, from_nose)
                assert not is_dark(picture, width / 2 * INCH + 3.0, from_nose * INCH), "nothing is beside it"
            missing = [(x, y) for x, y in outline if x >= 0 and not is_dark(picture, x, y)]
            assert not missing, (paper, len(missing), len(outline), missing[:5])
            print(paper, "sheets", len(list(names(folder / "board.pdf"))), "outline points met", len(outline))
        wetout("template", board, "outline", "--whole", "--paper", "roll", "--output", "roll.pdf")
        (page,) = pages(folder / "roll.pdf")
        check_squares(page[:1500])
        tall = page.shape[0] / 10
        assert abs(tall - (length + 2 * AROUND + 130 + 2 * MARGIN)) < 0.2, tall


if __name__ == "__main__":
    main()
