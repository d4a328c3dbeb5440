"""The exported journal, read by two programs that keep accounts in plain text: it must balance, and
come to what wetout says itself, to the last cent and milligram.

    journal.py PROGRAM [SEED...]

PROGRAM is wetout; hledger and ledger must be installed. Each seed makes another ledger: purchases,
kits, counts, waste, records of boards, entries taken back, with notes and labels that mean
something to such programs.
"""

import csv
import decimal
import io
import json
import os
import pathlib
import random
import re
import shutil
import subprocess
import sys
import tempfile

D = decimal.Decimal
ROOT = pathlib.Path(__file__).resolve().parents[2]
NOTES = ["", "plain", "; comment", "a ; b : c", "[2026-13-45]", "{x} @ 5 EUR", "| payee", ":tag:",
         "key: value", "(code) *", "= 5 EUR", "@@ 1", '"quoted"', "two  blanks", "- 5 g", "été 波",
         "\t=1", "!", "* * *", "2026-01-01=2026-02-02", "%x", "alias a=b", "include /etc/passwd",
         "Y2020", "~ monthly"]
PLACES = {"g": 3, "m": 6, "piece": 0}


class Shop:
    def __init__(self, program, seed):
        self.program = program
        self.random = random.Random(seed)
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix="wetout-journal-"))
        for name in ("shop.toml", "pico.toml", "faial.toml", "forecast.csv"):
            shutil.copy(ROOT / "data-demo" / name, self.folder)
        self.day = 0

    def wetout(self, *args, check=True):
        self.day += self.random.random() < 0.3
        now = f"2026-{1 + self.day // 28:02}-{1 + self.day % 28:02}T18:00:00Z"
        env = dict(os.environ, HOME=str(self.folder), LC_ALL="C.UTF-8")
        done = subprocess.run([self.program, "--now", now, *args], cwd=self.folder, env=env,
                              stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=False)
        if check and done.returncode != 0:
            sys.exit(f"wetout {args}: {done.returncode}\n{done.stderr.decode()}")
        return done

    def json(self, *args):
        return json.loads(self.wetout(*args, "--json").stdout)

    def note(self):
        note = self.random.choice(NOTES)
        return ["--note", note] if note else []

    def receive(self):
        material, amount = self.random.choice(
            [("kelp-a", f"{self.random.uniform(50, 5000):.3f} g"),
             ("kelp-slow-b", f"{self.random.uniform(50, 3000):.3f} g"),
             ("kelp-quick-b", f"{self.random.uniform(50, 1000):.0f} g"),
             ("foam-white", "1 pack"), ("e4", f"{self.random.uniform(1, 90):.3f} m"),
             ("e6", "10 yd"), ("side-box", str(self.random.randint(1, 20))),
             ("leash-plug", str(self.random.randint(1, 20)))])
        cost = self.random.choice([f"{self.random.uniform(0, 200):.2f}EUR", "0EUR", "0.01EUR"])
        label = []
        if self.random.random() < 0.4:
            label = [f"--lot={self.random.choice(NOTES[1:])} {self.random.randrange(10**9)}".replace("\t", " ")]
        self.wetout("stock", "receive", material, amount, "--cost", cost, *label, *self.note())

    def count(self):
        items = self.json("stock")["items"]
        if not items:
            return
        item = self.random.choice(items)
        self.wetout("stock", "count", item["material"], self.amount(item, 1.2), *self.note())

    def waste(self):
        items = self.json("stock")["items"]
        if not items:
            return
        item = self.random.choice(items)
        self.wetout("stock", "waste", item["material"], self.amount(item, 0.4), *self.note())

    def amount(self, item, most):
        unit = item["unit"]
        value = max(abs(item["on_hand"]), 1) * self.random.uniform(0.01, most)
        if unit == "piece":
            return str(max(1, round(value)))
        return f"{value:.{PLACES[unit]}f} {unit}"

    def undo(self):
        entries = self.json("ledger")["entries"]
        open_ones = [e["number"] for e in entries
                     if e["number"] and e["kind"] != "undo" and not e["undone_by"]]
        if open_ones:
            self.wetout("ledger", "undo", str(self.random.choice(open_ones)), *self.note())

    def record(self):
        job = self.random.choice(["pico", "faial"])
        coat = self.random.choice(["bottom-lam", "deck-lam", "bottom-hotcoat", "deck-hotcoat"])
        what = self.random.choice([["--mixed", f"{self.random.uniform(5, 300):.1f}g"],
                                   ["--start", "17:05", "--done", "--at", "17:48"],
                                   ["--part-a", "100g", "--part-b", "44.123g", "--left", "3g"]])
        self.wetout("record", job, coat, *what, check=False)

    def fill(self):
        self.wetout("plan", "pico.toml", "-q")
        self.wetout("plan", "faial.toml", "-q")
        for _ in range(8):
            self.receive()
        acts = [self.receive, self.count, self.waste, self.undo, self.record, self.record]
        for _ in range(80):
            self.random.choice(acts)()


def amounts(text):
    """{account: {commodity: amount}} of a flat balance in CSV."""
    out = {}
    for row in csv.reader(io.StringIO(text)):
        if len(row) < 2 or row[0] in ("account", "total", "Total:"):
            continue
        of = out.setdefault(row[0], {})
        for one in re.split(r", |\n", row[1]):
            match = re.fullmatch(r"(-?[0-9.]+)\s*\"?([A-Za-z]*)\"?", one.strip())
            assert match, f"{row[0]}: {one!r}"
            if D(match[1]):
                of[match[2]] = of.get(match[2], D(0)) + D(match[1])
    return {account: of for account, of in out.items() if of}


def run(*args):
    done = subprocess.run(args, stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=False)
    if done.returncode != 0 or done.stderr:
        sys.exit(f"{' '.join(map(str, args))}: {done.returncode}\n{done.stderr.decode()}")
    return done.stdout.decode()


def by_hledger(journal, *options):
    return amounts(run("hledger", "-f", journal, "balance", "--flat", "--empty", "-O", "csv",
                       "--no-total", *options))


def by_ledger(journal, *options):
    form = r'%(quoted(account)),%(quoted(scrub(display_total)))\n%/'
    return amounts(run("ledger", "--init-file", "/dev/null", "-f", journal, "balance", "--flat", "--empty",
                       "--no-total", "--format", form, *options))


def expected(shop):
    """What wetout says: costs, and goods, by account."""
    costs, goods = {}, {}

    def add(account, money=None, amount=None, unit=None):
        if money and D(money["amount"]):
            costs[account] = costs.get(account, D(0)) + D(money["amount"])
        if amount:
            name = "metre" if unit == "m" else unit
            of = goods.setdefault(account, {})
            of[name] = of.get(name, D(0)) + round(D(repr(amount)), 6)

    for one in shop.json("ledger", "--by", "material")["by_material"]:
        unit = one["unit"]
        add("assets:stock:" + one["material"], one["on_hand"]["cost"], one["on_hand"]["amount"], unit)
        add("expenses:waste:" + one["material"], one["wasted"]["cost"], one["wasted"]["amount"], unit)
        found = one["adjusted"]
        add("expenses:adjustment:" + one["material"],
            {"amount": str(-D(found["cost"]["amount"]))}, -found["amount"], unit)
    for board in shop.json("ledger", "--by", "job")["by_job"]:
        told = shop.json("ledger", board["job"])
        assert told["cost"] == board["cost"], board
        for one in told["plan_vs_actual"]:
            add(f"expenses:board:{board['job']}:{one['material']}", one["cost"], one["used"], one["unit"])
        add(f"expenses:board:{board['job']}:labour", board["labour"], board["minutes"], "min")
    return costs, {a: {c: v for c, v in of.items() if v} for a, of in goods.items() if any(of.values())}


def differ(what, found, wanted):
    keys = sorted(k for k in found.keys() | wanted.keys() if found.get(k) != wanted.get(k))
    for key in keys:
        print(f"{what}: {key}: {found.get(key)}, wetout {wanted.get(key)}")
    return len(keys)


def check(program, seed):
    shop = Shop(program, seed)
    shop.fill()
    journal = shop.folder / "shop.journal"
    journal.write_bytes(shop.wetout("ledger", "--export", "journal").stdout)
    costs, goods = expected(shop)
    kinds = [entry["kind"] for entry in shop.json("ledger")["entries"]]
    for kind in ("receive", "use", "waste", "count", "labour", "undo"):
        if kind not in kinds:
            print(f"seed {seed}: no entry of kind {kind}")
    run("hledger", "-f", journal, "check")
    faults = 0
    for name, read, at_cost in (("hledger", by_hledger, "--cost"), ("ledger", by_ledger, "--basis")):
        at_costs = read(journal, at_cost)
        assert all(set(of) == {"EUR"} for of in at_costs.values()), at_costs
        sums = {account: of["EUR"] for account, of in at_costs.items()}
        faults += sum(sums.values()) != 0
        own = {a: v for a, v in sums.items() if not a.startswith("liabilities:")}
        faults += differ(f"seed {seed}, {name}, cost", own, costs)
        counted = {}
        for account, of in read(journal).items():
            rest = {c: v for c, v in of.items() if c != "EUR"}
            if rest and not account.startswith("liabilities:"):
                counted[account] = rest
        faults += differ(f"seed {seed}, {name}, goods", counted, goods)
        boards = {a: v for a, v in sums.items() if a.startswith("expenses:board:")}
        whole = sum(D(b["cost"]["amount"]) for b in shop.json("ledger", "--by", "job")["by_job"])
        faults += sum(boards.values()) != whole
    # A journal of one board holds what concerns it, and balances.
    for job in ("pico", "faial"):
        one = shop.folder / f"{job}.journal"
        one.write_bytes(shop.wetout("ledger", job, "--export", "journal").stdout)
        for read in (by_hledger, by_ledger):
            told = read(one, "--cost" if read is by_hledger else "--basis")
            faults += sum(of.get("EUR", D(0)) for of in told.values()) != 0
    print(f"seed {seed}: {len(kinds)} entries, {len(costs)} accounts, {faults} differ")
    if faults == 0:
        shutil.rmtree(shop.folder)
    else:
        print(f"kept: {shop.folder}")
    return faults, set(kinds)


def main():
    seeds = [int(seed) for seed in sys.argv[2:]] or range(1, 7)
    faults, kinds = 0, set()
    for seed in seeds:
        found, seen = check(str(pathlib.Path(sys.argv[1]).resolve()), seed)
        faults += found
        kinds |= seen
    missing = {"receive", "use", "waste", "count", "labour", "undo"} - kinds
    if missing:
        print(f"never tried: {', '.join(sorted(missing))}")
    return 1 if faults or missing else 0


if __name__ == "__main__":
    sys.exit(main())
