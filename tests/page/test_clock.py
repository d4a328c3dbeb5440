"""Clocks of cups: what is left is the deadline less now, whatever happened in between."""

import re

from browser import run, until

# Moves the page's clock: seconds ahead of the computer's.
AHEAD = """
  window.trueNow = window.trueNow || Date.now;
  const ahead = 1000 * arguments[0], now = window.trueNow;
  Date.now = () => now() + ahead;"""


def left(browser):
    found = re.fullmatch(r"(?:(\d+):)?(\d+):(\d+) left", browser.text(".rest"))
    assert found, browser.text(".rest")
    hours, minutes, seconds = (int(part or 0) for part in found.groups())
    return hours * 3600 + minutes * 60 + seconds


def fresh(browser, shop):
    browser.open(shop.sheet())
    browser.run("localStorage.clear()")
    browser.open(shop.folder / "sheet.html")
    return int(browser.run("return document.querySelector('.cup').dataset.useS"))


def counts_down_by_the_clock(browser, shop):
    lasts = fresh(browser, shop)
    printed = browser.text(".deadline")
    assert browser.text(".rest") == ""
    browser.click(".start")
    assert lasts - 3 <= left(browser) <= lasts, (left(browser), lasts)
    until(lambda: left(browser) <= lasts - 2, "two seconds less")
    # Ten minutes in which the page was asleep.
    browser.run(AHEAD, 600)
    until(lambda: left(browser) <= lasts - 600, "ten minutes less")
    assert left(browser) > lasts - 620
    # "use before" is the time of mixing and how long it lasts.
    end = browser.run("""
      const t = new Date(Date.now() - 600000 + 1000 * Number(document.querySelector('.cup').dataset.useS));
      const two = (n) => String(n).padStart(2, "0");
      return [t, new Date(t - 15000)].map((d) => two(d.getHours()) + ":" + two(d.getMinutes()));""")
    assert browser.text(".deadline") in end, (browser.text(".deadline"), end)
    assert browser.text(".say") == "use before"
    assert re.fullmatch(r"mixed at \d\d:\d\d", browser.text(".mixed")), browser.text(".mixed")
    browser.click(".stop")
    assert browser.text(".deadline") == printed and browser.text(".rest") == ""


def survives_a_reload(browser, shop):
    lasts = fresh(browser, shop)
    browser.click(".start")
    before, deadline = left(browser), browser.text(".deadline")
    browser.post("/refresh")
    assert before - 10 <= left(browser) <= before
    assert browser.text(".deadline") == deadline
    # A page that was loaded again sounds only after it was touched, and says so.
    assert browser.text(".sound").startswith("No sound yet")
    # Another tab that is closed and opened anew, too.
    browser.post("/url", url="about:blank")
    browser.open(shop.folder / "sheet.html")
    assert before - 20 <= left(browser) <= before <= lasts
    browser.click(".stop")
    browser.post("/refresh")
    assert browser.text(".rest") == ""


def says_when_time_is_up(browser, shop):
    lasts = fresh(browser, shop)
    browser.click(".start")
    assert browser.text(".alarm") == ""
    browser.run(AHEAD, lasts - 100)
    until(lambda: browser.text(".alarm").startswith("Last minutes"), "last minutes")
    browser.run(AHEAD, lasts + 65)
    until(lambda: browser.text(".alarm").startswith("TIME IS UP"), "time is up")
    over = re.fullmatch(r"over since (\d+):(\d+)", browser.text(".rest"))
    assert over and 65 <= int(over[1]) * 60 + int(over[2]) <= 80, browser.text(".rest")
    assert browser.run("return document.querySelector('.cup').classList.contains('over')")
    assert browser.run("return document.querySelector('.alarm').getAttribute('role')") == "alert"


def takes_a_time_that_is_typed(browser, shop):
    lasts = fresh(browser, shop)
    at = browser.run("""
      const t = new Date(Date.now() - 7 * 60000), two = (n) => String(n).padStart(2, "0");
      const field = document.querySelector('.mixed-at');
      field.value = two(t.getHours()) + ":" + two(t.getMinutes());
      field.dispatchEvent(new Event("change"));
      t.setSeconds(0, 0);
      return (Date.now() - t.getTime()) / 1000;""")
    assert abs(left(browser) - (lasts - at)) <= 3, (left(browser), lasts, at)
    # Of a time of day that is still to come: yesterday's.
    browser.run("""
      const t = new Date(Date.now() + 3600000), two = (n) => String(n).padStart(2, "0");
      const field = document.querySelector('.mixed-at');
      field.value = two(t.getHours()) + ":" + two(t.getMinutes());
      field.dispatchEvent(new Event("change"));""")
    assert browser.text(".rest").startswith("over since"), browser.text(".rest")


def each_cup_has_its_own(browser, shop):
    fresh(browser, shop)
    browser.click(".start")
    running = browser.run("return [...document.querySelectorAll('.rest')].filter((e) => e.textContent).length")
    assert running == 1 and browser.run("return document.querySelectorAll('.cup').length") >= 5


def says_where_nothing_is_kept(browser, shop):
    page = shop.sheet()
    browser.open(page)
    assert browser.run("return document.getElementById('not-kept').hidden") is True
    # A browser that keeps nothing: its store refuses.
    script = "Object.defineProperty(window, 'localStorage', {get() { throw new DOMException('no', 'SecurityError'); }})"
    added = browser.cdp("Page.addScriptToEvaluateOnNewDocument", source=script)["identifier"]
    browser.open(page)
    assert browser.run("return document.getElementById('not-kept').hidden") is False
    browser.click(".start")
    assert browser.text(".rest").endswith(" left")  # the clock goes all the same
    browser.cdp("Page.removeScriptToEvaluateOnNewDocument", identifier=added)


if __name__ == "__main__":
    run(counts_down_by_the_clock, survives_a_reload, says_when_time_is_up, takes_a_time_that_is_typed,
        each_cup_has_its_own, says_where_nothing_is_kept)
