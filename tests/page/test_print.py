"""The job sheet on paper: A4 and letter, black and white, a card on half a page and in one piece."""

import base64
import re
import subprocess

from browser import run

PAPERS = {"a4": (21.0, 29.7), "letter": (21.59, 27.94)}
MOST_PAGES = 14


def printed(browser, shop, paper):
    width, height = PAPERS[paper]
    # Margins are those of the page's own style.
    pdf = browser.post("/print", page=dict(width=width, height=height), shrinkToFit=False, background=False,
                       margin=dict(top=1.1, bottom=1.1, left=1.1, right=1.1))
    file = shop.folder / (paper + ".pdf")
    file.write_bytes(base64.b64decode(pdf))
    return file


def text_of(pdf):
    done = subprocess.run(["pdftotext", "-layout", pdf, "-"], check=True, capture_output=True, text=True)
    return done.stdout.split("\f")[:-1]


def fits_on_paper(browser, shop):
    browser.open(shop.sheet())
    titles = browser.run("return [...document.querySelectorAll('.card h4')].map((h) => h.textContent)")
    last = browser.run("return [...document.querySelectorAll('.card .cautions li:last-child')].map((c) => c.textContent)")
    for paper, (width, height) in PAPERS.items():
        pdf = printed(browser, shop, paper)
        info = subprocess.run(["pdfinfo", pdf], check=True, capture_output=True, text=True).stdout
        pages = text_of(pdf)
        assert 3 <= len(pages) <= MOST_PAGES, (paper, len(pages))
        size = [float(n) for n in re.search(r"Page size:\s+([\d.]+) x ([\d.]+)", info).groups()]
        assert all(abs(a - b / 2.54 * 72) < 1.5 for a, b in zip(size, (width, height))), (size, paper)
        for title, end in zip(titles, last):
            words = title.replace("\u00a0", " ")
            (page,) = [p for p in pages if words in p.replace("\u00a0", " ")]
            after = " ".join(page.split(words)[1].split()) if words in page else " ".join(page.split())
            assert end[:30] in after and "mixed at" in after, (paper, title)
        # What only a screen can do is not there.
        assert "Mixed now" not in "".join(pages) and "Download" not in "".join(pages)
        print(paper, len(pages), "pages")


def a_card_is_half_a_page(browser, shop):
    no_higher(browser, shop.sheet(), cups=5, share=0.5)


def a_card_with_two_cups_is_hardly_more(browser, shop):
    text = (shop.folder / "shop.toml").read_text(encoding="utf-8")
    few = re.sub(r"\[\[cup\]\].*?(?=\[\[material\]\])", '[[cup]]\nid = "quart"\nholds = "240 ml"\ndiameter = "70 mm"\n',
                 text, count=1, flags=re.DOTALL)
    assert few.count("[[cup]]") == 1
    (shop.folder / "shop.toml").write_text(few, encoding="utf-8")
    no_higher(browser, shop.sheet(), cups=7, share=0.58)


def no_higher(browser, page, cups, share):
    browser.open(page)
    assert browser.run("return document.querySelectorAll('.cup').length") >= cups
    browser.cdp("Emulation.setEmulatedMedia", media="print")
    # As wide as paper without its margins, at 96 dots an inch.
    for paper, (width, height) in PAPERS.items():
        wide, tall = ((side - 2.2) / 2.54 * 96 for side in (width, height))
        browser.size(round(wide), 1000)
        heights = browser.run("return [...document.querySelectorAll('.card')].map((c) => c.offsetHeight)")
        assert heights and max(heights) <= share * tall, (paper, heights, tall)
        assert browser.run("return document.documentElement.scrollWidth <= document.documentElement.clientWidth")
        assert browser.run("""
          return [...document.querySelectorAll('.card, .step')].every((c) => getComputedStyle(c).breakInside === 'avoid')""")
    browser.cdp("Emulation.setEmulatedMedia", media="")


def is_black_and_white(browser, shop):
    browser.open(shop.sheet())
    pdf = printed(browser, shop, "a4")
    # Every pixel of every page is a grey.
    subprocess.run(["pdftoppm", "-r", "40", pdf, shop.folder / "p"], check=True)
    pages = sorted(shop.folder.glob("p-*.ppm"))
    for page in pages:
        data = page.read_bytes().split(b"255\n", 1)[1]
        assert data[0::3] == data[1::3] == data[2::3], page.name
    assert len(pages) > 2


if __name__ == "__main__":
    run(fits_on_paper, a_card_is_half_a_page, a_card_with_two_cups_is_hardly_more, is_black_and_white)
