"""A browser without a screen, driven through ChromeDriver by the W3C's WebDriver, and a shop to make
pages from. Every test of this folder is called as

    test_NAME.py PROGRAM DEMO_DATA CHROMEDRIVER CHROMIUM
"""

import contextlib
import json
import pathlib
import shutil
import subprocess
import sys
import tempfile
import time
import urllib.error
import urllib.request

NOW = "2026-06-13T16:15:00Z"
ELEMENT = "element-6066-11e4-a52e-4f735466cecf"  # the key that the W3C gives an element
ARGUMENTS = ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
             "--disable-background-networking", "--disable-component-update", "--disable-sync"]


class Browser:
    def __init__(self, driver: str, chromium: str, folder: pathlib.Path):
        self.folder = folder
        # The driver picks a free port and says which.
        self.process = subprocess.Popen([driver, "--port=0"], stdout=subprocess.PIPE, text=True)
        for line in self.process.stdout:
            if "started successfully on port" in line:
                self.base = "http://127.0.0.1:" + line.rstrip(".\n").split()[-1]
                break
        options = {"binary": chromium, "args": [*ARGUMENTS, f"--user-data-dir={folder / 'profile'}"],
                   "prefs": {"download.default_directory": str(folder)}}
        session = self.call("POST", "/session", {"capabilities": {"alwaysMatch": {
            "browserName": "chrome", "goog:chromeOptions": options,
            "goog:loggingPrefs": {"browser": "ALL", "performance": "ALL"}}}})
        self.session = "/session/" + session["sessionId"]

    def call(self, method: str, path: str, body=None):
        data = None if body is None else json.dumps(body).encode()
        request = urllib.request.Request(self.base + path, data, {"Content-Type": "application/json"},
                                         method=method)
        try:
            with urllib.request.urlopen(request, timeout=60) as answer:
                return json.load(answer)["value"]
        except urllib.error.HTTPError as error:
            raise AssertionError(f"{path}: {error.read().decode()[:500]}") from error

    def post(self, path: str, **body):
        return self.call("POST", self.session + path, body)

    def run(self, script: str, *arguments):
        return self.post("/execute/sync", script=script, args=list(arguments))

    def cdp(self, command: str, **parameters):
        return self.post("/goog/cdp/execute", cmd=command, params=parameters)

    def open(self, page: pathlib.Path):
        self.post("/url", url=page.resolve().as_uri())

    def size(self, width: int, height: int = 800):
        self.cdp("Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=1,
                 mobile=width < 500)

    def find(self, css: str) -> str:
        return self.post("/element", using="css selector", value=css)[ELEMENT]

    def click(self, css: str):
        self.run("arguments[0].scrollIntoView({block: 'center'})", {ELEMENT: (e := self.find(css))})
        self.post(f"/element/{e}/click")

    def type(self, css: str, text: str):
        self.post(f"/element/{self.find(css)}/value", text=text)

    def text(self, css: str) -> str:
        return self.run("return document.querySelector(arguments[0]).textContent", css)

    def log(self, kind: str):
        return self.post("/se/log", type=kind)

    def close(self):
        with contextlib.suppress(AssertionError, OSError):
            self.call("DELETE", self.session)
        self.process.terminate()
        self.process.wait(timeout=20)


class Shop:
    """The demo shop in a folder of its own, with a log."""

    def __init__(self, program: str, demo: str, folder: pathlib.Path):
        self.program, self.folder = pathlib.Path(program).resolve(), folder
        for file in pathlib.Path(demo).iterdir():
            if file.is_file():
                shutil.copy(file, folder)

    def wetout(self, *words: str, now: str = NOW, fails: bool = False) -> str:
        done = subprocess.run([self.program, "--log", "log.db", "--now", now, *words], cwd=self.folder,
                              capture_output=True, text=True)
        assert (done.returncode != 0) == fails, (words, done.stdout, done.stderr)
        return done.stdout + done.stderr

    def sheet(self, job: str = "pico.toml", name: str = "pico") -> pathlib.Path:
        self.wetout("schedule", job, "-q")
        self.wetout("sheet", name, "--output", "sheet.html")
        return self.folder / "sheet.html"


def until(condition, what: str, seconds: float = 15.0):
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        if found := condition():
            return found
        time.sleep(0.05)
    raise AssertionError("waited in vain: " + what)


def run(*tests):
    """Each test with a browser and a shop of its own kind: test(browser, shop)."""
    program, demo, driver, chromium = sys.argv[1:]
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as name:
        folder = pathlib.Path(name)
        browser = Browser(driver, chromium, folder)
        try:
            for test in tests:
                place = folder / test.__name__
                place.mkdir()
                test(browser, Shop(program, demo, place))
                print(test.__name__, "passed")
        finally:
            browser.close()
