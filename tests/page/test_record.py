"""What is filled in goes into the log through `record import`."""

import json

from browser import run, until

LATER = "2026-07-01T12:00:00Z"

PUT = """
  const step = document.querySelector(`fieldset[data-coat="${arguments[0]}"][data-step="${arguments[1]}"]`);
  for (const [fact, value] of Object.entries(arguments[2])) {
    const input = step.querySelector(`[data-fact="${fact}"]`);
    if (input.type === "checkbox") input.checked = value; else input.value = value;
    input.dispatchEvent(new Event("input", {bubbles: true}));
  }"""


def fresh(browser, shop):
    browser.open(shop.sheet())
    browser.run("localStorage.clear()")
    browser.open(shop.folder / "sheet.html")


def download(browser, shop):
    file = shop.folder / "pico-5-4-done.toml"
    file.unlink(missing_ok=True)
    browser.cdp("Browser.setDownloadBehavior", behavior="allow", downloadPath=str(shop.folder))
    browser.click("#download")
    until(file.exists, "the file: " + browser.text("#record-said"))
    return file


def goes_through_record_import(browser, shop):
    fresh(browser, shop)
    note = "drips \"left\" \\ right\u007f, 50 % 🏄 \u05dc"
    browser.run(PUT, "bottom-lam", "wet", dict(done=True, time="18:05", minutes="28", air="72", humidity="55",
                                               mixed="256,5", left="8 g", note=note))
    browser.run(PUT, "bottom-lam", "feather-edge", dict(done=True, date="2026-06-18", minutes="31"))
    browser.run(PUT, "", "weigh", dict(done=True))
    browser.run(PUT, "deck-lam", "wet", dict(mixed="1"))  # not done: not in the file
    file = download(browser, shop)
    assert browser.text("#record-said") == "3 steps in pico-5-4-done.toml."
    shop.wetout("record", "import", file.name, now=LATER)
    events = json.loads(shop.wetout("record", "pico", "--json", now=LATER))["events"]
    told = {(e["step"], e["kind"]): e for e in events}
    assert {step for step, _ in told} == {"bottom-lam/wet", "bottom-lam/feather-edge", "weigh"}, told.keys()
    assert told["bottom-lam/wet", "started"]["at"].startswith("2026-06-15T18:05"), told
    assert told["bottom-lam/wet", "done"]["at"].startswith("2026-06-15T18:33"), told
    mixed = told["bottom-lam/wet", "mixed"]
    assert abs(mixed["mass_g"] - 256.5) < 1e-9, mixed
    assert told["bottom-lam/wet", "left"]["mass_g"] == 8, told
    air = told["bottom-lam/wet", "conditions"]
    assert abs(air["air_c"] - 22.222) < 0.01 and abs(air["rh_pct"] - 55) < 1e-9, air
    assert told["bottom-lam/feather-edge", "done"]["at"].startswith("2026-06-18"), told
    assert told["bottom-lam/wet", "note"]["note"] == note.replace("\u007f", " "), told
    # The same again enters nothing.
    before = len(events)
    shop.wetout("record", "import", download(browser, shop).name, now=LATER)
    assert len(json.loads(shop.wetout("record", "pico", "--json", now=LATER))["events"]) == before


def every_step_is_one_of_the_log(browser, shop):
    fresh(browser, shop)
    browser.run("for (const box of document.querySelectorAll('[data-fact=done]')) box.click()")
    steps = browser.run("return document.querySelectorAll('fieldset[data-step]').length")
    file = download(browser, shop)
    assert file.read_text(encoding="utf-8").count("[[board.coat]]") == steps > 20
    shop.wetout("record", "import", file.name, now=LATER)
    done = [e for e in json.loads(shop.wetout("record", "pico", "--json", now=LATER))["events"] if e["kind"] == "done"]
    assert len(done) == steps, (len(done), steps)
    # Nothing is left to do, and the next page says so.
    assert "every step is done" in shop.wetout("schedule", "pico", "-q", now=LATER)
    shop.wetout("sheet", "pico", "--output", "after.html", now=LATER)
    browser.open(shop.folder / "after.html")
    assert browser.run("return document.querySelectorAll('fieldset').length") == 0
    said = browser.run("return [...document.querySelectorAll('.step, .card')].map((e) => e.textContent.trim())")
    assert len(said) == steps and all(text.endswith("Done.") for text in said), said


def what_is_typed_stays(browser, shop):
    fresh(browser, shop)
    browser.run(PUT, "bottom-lam", "wet", dict(done=True, mixed="256", date=""))
    browser.post("/refresh")
    kept = browser.run("""
      const step = document.querySelector('fieldset[data-coat="bottom-lam"][data-step="wet"]');
      return ["done", "mixed", "date"].map((fact) => step.querySelector(`[data-fact="${fact}"]`))
        .map((input) => input.type === "checkbox" ? input.checked : input.value);""")
    assert kept == [True, "256", ""], kept


def what_is_wrong_is_named(browser, shop):
    fresh(browser, shop)
    browser.click("#download")
    assert browser.text("#record-said") == "Nothing is ticked as done yet."
    browser.run(PUT, "bottom-lam", "wet", dict(done=True, mixed="a lot", date=""))
    browser.click("#download")
    said = browser.text("#record-said")
    assert "Wet out bottom lam: the day is missing" in said, said
    assert 'mixed is "a lot", a number is expected, such as 256' in said, said
    assert browser.run("return document.activeElement.dataset.fact") == "date"
    assert browser.run("return document.querySelectorAll('[aria-invalid=true]').length") == 2
    assert not (shop.folder / "pico-5-4-done.toml").exists()
    browser.run(PUT, "bottom-lam", "wet", dict(mixed="256", date="2026-06-15"))
    download(browser, shop)
    assert browser.run("return document.querySelectorAll('[aria-invalid=true]').length") == 0


if __name__ == "__main__":
    run(goes_through_record_import, every_step_is_one_of_the_log, what_is_typed_stays, what_is_wrong_is_named)
