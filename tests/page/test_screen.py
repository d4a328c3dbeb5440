"""The job sheet on screens: nothing sideways, everything labelled, names stay names, nothing is loaded."""

import json

from browser import run

WIDER = """
  const wide = document.documentElement.clientWidth;
  return [document.documentElement.scrollWidth - wide,
    [...document.body.querySelectorAll("*")].filter((e) => {
      const box = e.getBoundingClientRect();
      const seen = box.width > 1 && getComputedStyle(e).clipPath === "none";
      return seen && (box.right > wide + 0.5 || box.left < -0.5);
    }).map((e) => e.outerHTML.slice(0, 100))];"""

# WCAG 2.1, relative luminance and contrast ratio.
CONTRAST = """
  const light = (rgb) => rgb.match(/[\\d.]+/g).slice(0, 3).map(Number).map((v) => v / 255)
    .map((v) => v <= 0.03928 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4)
    .reduce((sum, v, i) => sum + v * [0.2126, 0.7152, 0.0722][i], 0);
  const behind = (e) => { for (; e; e = e.parentElement) {
    const c = getComputedStyle(e).backgroundColor; if (c !== "rgba(0, 0, 0, 0)") return c; } return "rgb(255, 255, 255)"; };
  let worst = 99, what = "", texts = 0;
  for (const e of document.querySelectorAll("body *")) {
    if (e.closest("script, svg") || ![...e.childNodes].some((n) => n.nodeType === 3 && n.data.trim())) continue;
    const [a, b] = [light(getComputedStyle(e).color), light(behind(e))].sort((x, y) => y - x);
    const ratio = (a + 0.05) / (b + 0.05);
    ++texts;
    if (ratio < worst) [worst, what] = [ratio, e.outerHTML.slice(0, 120)];
  }
  return [worst, what, texts];"""

EVIL = "<script>document.title='caught'</script> \"O'Dune\" & 🏄 לוח"


def spoilt(shop):
    """A job whose names try to be something else."""
    text = (shop.folder / "pico.toml").read_text(encoding="utf-8")
    text = text.replace('name = "Pico 5-4"', "name = " + json.dumps(EVIL, ensure_ascii=False))
    text = text.replace('name = "bottom lam"', "name = " + json.dumps("b " + EVIL, ensure_ascii=False))
    text = text.replace('name = "tail patch"', 'name = "<img src=x onerror=alert(1)> صفحة"')
    (shop.folder / "evil.toml").write_text(text, encoding="utf-8")


def nothing_goes_sideways(browser, shop):
    page = shop.sheet()
    for width in (320, 360, 768, 1280):
        browser.size(width)
        browser.open(page)
        beyond, elements = browser.run(WIDER)
        assert beyond <= 0 and not elements, (width, beyond, elements)
    # Nor with everything shown that is hidden until a step is done.
    browser.size(320)
    browser.run("for (const box of document.querySelectorAll('.done input')) box.click()")
    beyond, elements = browser.run(WIDER)
    assert beyond <= 0 and not elements, (beyond, elements)


def names_stay_names(browser, shop):
    spoilt(shop)
    shop.wetout("schedule", "evil.toml", "-q")
    job = json.loads(shop.wetout("jobs", "--json"))["jobs"][0]["id"]
    shop.wetout("sheet", job, "--output", "sheet.html")
    for width in (320, 1000):
        browser.size(width)
        browser.open(shop.folder / "sheet.html")
        beyond, elements = browser.run(WIDER)
        assert beyond <= 0 and not elements, (width, beyond, elements)
    assert browser.text("h1") == EVIL, browser.text("h1")
    assert browser.run("return document.title") == EVIL + ": job sheet"
    assert browser.run("return document.querySelectorAll('img, body script').length") == 1  # our own script
    # A name does not turn what stands around it.
    assert browser.run("return [...document.querySelectorAll('bdi')].every((e) => e.dir === 'auto')")
    assert browser.run("return getComputedStyle(document.querySelector('main')).direction") == "ltr"


def a_script_of_somebody_else_does_not_run(browser, shop):
    text = shop.sheet().read_text(encoding="utf-8")
    other = text.replace("</main>", "<script>document.title = 'caught'</script></main>")
    assert other != text
    (shop.folder / "other.html").write_text(other, encoding="utf-8")
    browser.open(shop.folder / "other.html")
    assert browser.run("return document.title") != "caught"
    browser.log("browser")  # says so


def nothing_is_loaded(browser, shop):
    page = shop.sheet()
    browser.log("performance")
    browser.open(page)
    browser.click(".start")
    sent = [json.loads(line["message"])["message"] for line in browser.log("performance")]
    urls = {m["params"]["request"]["url"] for m in sent if m["method"] == "Network.requestWillBeSent"}
    urls = {url for url in urls if not url.startswith("data:")}  # the browser's own signs in its fields
    assert urls == {page.resolve().as_uri()}, urls
    errors = [line for line in browser.log("browser") if "favicon" not in line["message"]]
    assert not errors, errors


def readers_find_their_way(browser, shop):
    browser.size(360)
    browser.open(shop.sheet())
    levels = browser.run("return [...document.querySelectorAll('h1, h2, h3, h4, h5, h6')].map((h) => +h.tagName[1])")
    assert levels[0] == 1 and levels.count(1) == 1
    assert all(b <= a + 1 for a, b in zip(levels, levels[1:])), levels
    assert browser.run("return document.documentElement.lang") == "en"

    def faulty(css, fault):
        assert browser.run("return document.querySelectorAll(arguments[0]).length", css) > 0, css
        return browser.run(f"""
          return [...document.querySelectorAll('{css}')].filter((e) => {fault}).map((e) => e.outerHTML)""")

    assert not faulty("input", "!e.labels.length || !e.labels[0].textContent.trim()")
    assert not faulty("svg", "e.getAttribute('role') !== 'img' || !e.querySelector('title').textContent")
    assert not faulty("table", "![...e.querySelectorAll('th')].every((h) => h.scope)")
    assert not faulty("fieldset", "!e.querySelector('legend').textContent")
    assert not faulty("button", "e.offsetParent && e.offsetHeight < 44")
    worst, what, texts = browser.run(CONTRAST)
    assert texts > 200 and worst >= 7.0, (worst, what)
    # The largest letters of all are those of the deadline.
    sizes = browser.run("""
      return [...document.querySelectorAll('body *')].map((e) => [parseFloat(getComputedStyle(e).fontSize), e.className])""")
    largest = max(size for size, _ in sizes)
    assert {name for size, name in sizes if size == largest} == {"deadline"}
    # By keyboard alone: a clock is started.
    browser.run("document.querySelector('.start').focus()")
    browser.type(".start", "\ue007")
    assert browser.text(".rest").endswith(" left"), browser.text(".rest")


if __name__ == "__main__":
    run(nothing_goes_sideways, names_stay_names, a_script_of_somebody_else_does_not_run, nothing_is_loaded,
        readers_find_their_way)
