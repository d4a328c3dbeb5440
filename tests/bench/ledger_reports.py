"""Reports of the ledger, whole process, against hledger on the exported journal: ratios of one run.
And one booking, saved, against `sqlite3 FILE 'select 1'`.

    ledger_reports.py PROGRAM [MOVEMENTS]

The log is filled through SQLite: boards that use three materials at a time, tins between them.
"""

import os
import pathlib
import shutil
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import time

ROOT = pathlib.Path(__file__).resolve().parents[2]
MATERIALS, USES_OF_A_BOARD, TIN, DAY = 40, 60, 5_000_000, 18_262


def fill(path, movements):
    db = sqlite3.connect(path)
    db.execute("PRAGMA synchronous = OFF")
    db.execute("INSERT INTO currency VALUES(1, 'EUR')")
    for n in range(1, MATERIALS + 1):
        db.execute("INSERT INTO material VALUES(?, ?, ?, 'mg')", (n, f"material-{n}", f"Material {n}"))
    entries = movements // 3
    first_job = 1 + db.execute("SELECT ifnull(max(id), 0) FROM job").fetchone()[0]
    for n in range(entries // USES_OF_A_BOARD + 1):
        db.execute("INSERT INTO job(id, slug, name, created) VALUES(?, ?, ?, 0)",
                   (first_job + n, f"board-{n}", f"Board {n}"))
    shelf = {n: [] for n in range(1, MATERIALS + 1)}
    for n in range(entries):
        at = DAY * 86400 + n * 300
        bought = n < MATERIALS or n % 50 == 0
        db.execute("INSERT INTO entry(id, token, kind, at, day, recorded) VALUES(?, ?, ?, ?, ?, ?)",
                   (n + 1, f"bench:{n}", "receive" if bought else "use", at, at // 86400, at))
        if bought:
            material = n % MATERIALS + 1 if n < MATERIALS else n // 50 % MATERIALS + 1
            lot = db.execute("INSERT INTO lot(material, label, received) VALUES(?, ?, ?)",
                             (material, f"lot-{n}", at)).lastrowid
            shelf[material].append([lot, TIN])
            db.execute("INSERT INTO movement VALUES(?, 1, 'supplier', 'stock', ?, NULL, NULL, ?, ?)",
                       (n + 1, lot, TIN, 9000 + n % 977))
            continue
        for line in range(3):
            lots = shelf[(n * 7 + line * 13) % MATERIALS + 1]
            amount = 1000 + n * 31 % 25_000
            if lots[0][1] < amount and len(lots) > 1:
                lots.pop(0)
            lots[0][1] -= amount
            db.execute("INSERT INTO movement VALUES(?, ?, 'stock', 'board', ?, ?, 'bottom-lam/wet', ?,"
                       " ?)", (n + 1, line + 1, lots[0][0], first_job + n // USES_OF_A_BOARD, amount,
                               amount * 9000 // TIN))
    db.commit()
    db.close()


def median(command, folder, rounds):
    times = []
    for _ in range(rounds):
        begin = time.perf_counter()
        done = subprocess.run(command, cwd=folder, check=True, stdout=subprocess.DEVNULL,
                              stderr=subprocess.PIPE, env={"HOME": folder, "PATH": os.environ["PATH"]})
        times.append(time.perf_counter() - begin)
    assert not done.stderr or b"error" not in done.stderr.lower(), done.stderr
    return statistics.median(times)


def main(program, movements):
    program = str(pathlib.Path(program).resolve())
    with tempfile.TemporaryDirectory() as folder:
        for name in ("shop.toml", "pico.toml", "forecast.csv"):
            shutil.copy(ROOT / "data-demo" / name, folder)
        log = os.path.join(folder, "log.db")
        wetout = [program, "--log", log]
        subprocess.run([*wetout, "plan", "pico.toml", "-q"], cwd=folder, check=True,
                       stdout=subprocess.DEVNULL)
        fill(log, movements)
        journal = os.path.join(folder, "books.journal")
        with open(journal, "w", encoding="utf-8") as out:
            subprocess.run([*wetout, "ledger", "--export", "journal"], cwd=folder, check=True,
                           stdout=out)
        print(f"{movements} movements, journal {os.path.getsize(journal) / 1e6:.0f} MB")
        pairs = [("stock list", ["stock"], ["balance", "-B", "stock"]),
                 ("totals by material", ["ledger", "--by", "material"], ["balance"]),
                 ("one board", ["ledger", "board-7"], ["balance", "-B", "board:board-7"])]
        for name, ours, theirs in pairs:
            mine = median([*wetout, *ours], folder, 5)
            other = median(["hledger", "-f", journal, *theirs], folder, 1)
            print(f"{name:20} wetout {mine * 1e3:8.1f} ms   hledger {other * 1e3:9.1f} ms   "
                  f"ratio 1 : {other / mine:.0f}")
        counter = iter(range(1000))
        books, select = [], []
        for _ in range(20):
            n = next(counter)
            books.append(median([*wetout, "record", "pico", "bottom-lam", "--mixed", "20g", "--token",
                                 f"t{n}", "-q"], folder, 1))
            select.append(median(["sqlite3", log, "select 1"], folder, 1))
        base = statistics.median(select)
        print(f"record, saved: median {statistics.median(books) * 1e3:.1f} ms, sqlite3 'select 1' "
              f"{base * 1e3:.1f} ms, ratio {statistics.median(books) / base:.1f} (budget 10)")


main(sys.argv[1], int(sys.argv[2]) if len(sys.argv) > 2 else 1_000_000)
