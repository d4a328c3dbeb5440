-- Version 3: the ledger. What was bought, used, wasted and counted, and work, with what it costs.
-- Once released this file is never edited: changes are a new numbered file.

-- All money of a log is in one currency; the first entry with money sets it.
CREATE TABLE currency(
  id INTEGER PRIMARY KEY CHECK(id = 1),
  code TEXT NOT NULL CHECK(length(code) = 3 AND code NOT GLOB '*[^A-Z]*')
) STRICT;

CREATE TABLE material(
  id INTEGER PRIMARY KEY CHECK(id > 0),
  slug TEXT NOT NULL UNIQUE CHECK(length(slug) BETWEEN 1 AND 64 AND slug NOT GLOB '*[^a-z0-9-]*'
    AND slug NOT GLOB '-*' AND slug NOT GLOB '*-' AND slug NOT GLOB '*--*'),
  name TEXT NOT NULL CHECK(name <> ''),
  unit TEXT NOT NULL CHECK(unit IN ('mg', 'um', 'piece'))
) STRICT;

-- One container or roll that came in. `expires` counts days from 1970-01-01 and is the last good
-- one; `width_um` is of a roll, whose quantity is its length.
CREATE TABLE lot(
  id INTEGER PRIMARY KEY CHECK(id > 0),
  material INTEGER NOT NULL REFERENCES material,
  label TEXT NOT NULL CHECK(length(label) BETWEEN 1 AND 64),
  batch TEXT CHECK(batch <> ''),
  received INTEGER NOT NULL,
  expires INTEGER,
  width_um INTEGER CHECK(width_um > 0),
  UNIQUE(material, label)
) STRICT;

-- Entries count 1, 2, 3 in the whole log. A token is made by whoever books: the same token a second
-- time is the same entry sent again. `day` is the day of `at` on the shop's calendar, counted from
-- 1970-01-01. An undo carries the day of what it takes back.
CREATE TABLE entry(
  id INTEGER PRIMARY KEY CHECK(id > 0),
  token TEXT NOT NULL UNIQUE CHECK(token <> ''),
  kind TEXT NOT NULL CHECK(kind IN ('receive', 'use', 'waste', 'count', 'labour', 'undo')),
  at INTEGER NOT NULL,
  day INTEGER NOT NULL CHECK(day * 86400 BETWEEN at - 172800 AND at + 86400),
  recorded INTEGER NOT NULL,
  event INTEGER REFERENCES event,
  undoes INTEGER UNIQUE REFERENCES entry CHECK(undoes < id),
  note TEXT CHECK(note <> ''),
  CHECK((kind = 'undo') = (undoes IS NOT NULL))
) STRICT;
CREATE INDEX entry_by_event ON entry(event) WHERE event IS NOT NULL;

-- A line moves goods AND their cost from one account to another: balanced by construction. Goods
-- pass through stock and are of a lot; work goes from labour to a board, in minutes. A line of no
-- goods and no cost says that a count found what the log says.
CREATE TABLE movement(
  entry INTEGER NOT NULL REFERENCES entry,
  line INTEGER NOT NULL CHECK(line > 0),
  source TEXT NOT NULL
    CHECK(source IN ('supplier', 'stock', 'board', 'waste', 'adjustment', 'labour')),
  target TEXT NOT NULL
    CHECK(target IN ('supplier', 'stock', 'board', 'waste', 'adjustment', 'labour')),
  lot INTEGER REFERENCES lot,
  job INTEGER REFERENCES job,
  step TEXT CHECK(step <> ''),
  quantity INTEGER NOT NULL CHECK(quantity BETWEEN 0 AND 1000000000000),
  minor INTEGER NOT NULL CHECK(minor BETWEEN 0 AND 1000000000000),
  CHECK(source <> target),
  CHECK(quantity > 0 OR minor > 0 OR 'adjustment' IN (source, target)),
  CHECK('stock' IN (source, target) OR 'labour' IN (source, target)),
  CHECK('labour' NOT IN (source, target) OR 'board' IN (source, target)),
  CHECK(('labour' IN (source, target)) = (lot IS NULL)),
  CHECK(('board' IN (source, target)) = (job IS NOT NULL)),
  CHECK(step IS NULL OR job IS NOT NULL),
  PRIMARY KEY(entry, line)
) STRICT, WITHOUT ROWID;
CREATE INDEX movement_by_lot ON movement(lot) WHERE lot IS NOT NULL;
CREATE INDEX movement_by_job ON movement(job, source, target, lot, quantity, minor)
WHERE job IS NOT NULL;

-- What each lot has had from and given to each account: its movements added up as they come, so that
-- nobody has to add up years to see what is on the shelf. `first` is the first entry of them. Only
-- movement_adds_up writes here; `log check` adds up anew.
CREATE TABLE lot_sum(
  lot INTEGER NOT NULL REFERENCES lot,
  source TEXT NOT NULL,
  target TEXT NOT NULL,
  lines INTEGER NOT NULL CHECK(lines >= 0),
  quantity INTEGER NOT NULL CHECK(quantity >= 0),
  minor INTEGER NOT NULL CHECK(minor >= 0),
  first INTEGER NOT NULL REFERENCES entry,
  PRIMARY KEY(lot, source, target)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER currency_no_update BEFORE UPDATE ON currency
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER currency_no_delete BEFORE DELETE ON currency
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER currency_no_replace BEFORE INSERT ON currency
WHEN EXISTS(SELECT 1 FROM currency)
BEGIN SELECT RAISE(ABORT, 'append-only'); END;

-- A material may get another name. It is never deleted, and keeps its slug and its unit.
CREATE TRIGGER material_no_delete BEFORE DELETE ON material
BEGIN SELECT RAISE(ABORT, 'materials are never deleted'); END;
CREATE TRIGGER material_no_replace BEFORE INSERT ON material
WHEN EXISTS(SELECT 1 FROM material WHERE id = NEW.id OR slug = NEW.slug)
BEGIN SELECT RAISE(ABORT, 'material exists'); END;
CREATE TRIGGER material_no_update BEFORE UPDATE ON material
WHEN NEW.id <> OLD.id OR NEW.slug <> OLD.slug OR NEW.unit <> OLD.unit
BEGIN SELECT RAISE(ABORT, 'a material keeps its slug and its unit'); END;

-- What was received as a lot and taken back may come again under its label, described anew.
CREATE TRIGGER lot_no_delete BEFORE DELETE ON lot
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER lot_no_replace BEFORE INSERT ON lot
WHEN EXISTS(SELECT 1 FROM lot
            WHERE id = NEW.id OR (material = NEW.material AND label = NEW.label))
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER lot_no_update BEFORE UPDATE ON lot
WHEN NEW.id <> OLD.id OR NEW.material <> OLD.material OR NEW.label <> OLD.label
  OR (SELECT sum(iif(source = 'supplier', quantity, -quantity)) FROM movement
      WHERE lot = OLD.id AND 'supplier' IN (source, target)) > 0
BEGIN SELECT RAISE(ABORT, 'append-only'); END;

CREATE TRIGGER entry_no_update BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER entry_no_delete BEFORE DELETE ON entry
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER entry_no_replace BEFORE INSERT ON entry
WHEN EXISTS(SELECT 1 FROM entry
            WHERE id = NEW.id OR token = NEW.token OR undoes = NEW.undoes)
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER entry_is_next BEFORE INSERT ON entry
WHEN NEW.id <> 1 + (SELECT ifnull(max(id), 0) FROM entry)
BEGIN SELECT RAISE(ABORT, 'entries count 1, 2, 3'); END;
CREATE TRIGGER entry_undoes BEFORE INSERT ON entry
WHEN EXISTS(SELECT 1 FROM entry WHERE id = NEW.undoes AND kind = 'undo')
BEGIN SELECT RAISE(ABORT, 'cannot be undone'); END;

CREATE TRIGGER movement_no_update BEFORE UPDATE ON movement
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER movement_no_delete BEFORE DELETE ON movement
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER movement_no_replace BEFORE INSERT ON movement
WHEN EXISTS(SELECT 1 FROM movement WHERE entry = NEW.entry AND line = NEW.line)
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
-- An entry is closed as soon as a later one exists (there is one writer at a time, so the entry of
-- a transaction is the last).
CREATE TRIGGER movement_late BEFORE INSERT ON movement
WHEN NEW.entry <> (SELECT max(id) FROM entry)
BEGIN SELECT RAISE(ABORT, 'entry is closed'); END;
-- The line of an undo is the line it takes back, turned round. Where a lot has come to nothing, a
-- line of an undo or a receipt without goods takes the rest of its cost to or from adjustment.
CREATE TRIGGER movement_kind BEFORE INSERT ON movement
WHEN NOT (SELECT CASE kind
    WHEN 'receive' THEN NEW.source = 'supplier'
    WHEN 'use' THEN NEW.source = 'stock' AND NEW.target = 'board'
    WHEN 'waste' THEN NEW.source = 'stock' AND NEW.target = 'waste'
    WHEN 'count' THEN 'adjustment' IN (NEW.source, NEW.target)
    WHEN 'labour' THEN NEW.source = 'labour'
    ELSE EXISTS(SELECT 1 FROM movement WHERE entry = undoes AND line = NEW.line
      AND source = NEW.target AND target = NEW.source AND lot IS NEW.lot AND job IS NEW.job
      AND step IS NEW.step AND quantity = NEW.quantity AND minor = NEW.minor)
    END OR kind IN ('receive', 'undo') AND NEW.quantity = 0
      AND 'adjustment' IN (NEW.source, NEW.target)
  FROM entry WHERE id = NEW.entry)
BEGIN SELECT RAISE(ABORT, 'not a line of this kind of entry'); END;

CREATE TRIGGER movement_adds_up AFTER INSERT ON movement WHEN NEW.lot IS NOT NULL
BEGIN
  INSERT INTO lot_sum SELECT NEW.lot, NEW.source, NEW.target, 0, 0, 0, NEW.entry
  WHERE NOT EXISTS(SELECT 1 FROM lot_sum
                   WHERE lot = NEW.lot AND source = NEW.source AND target = NEW.target);
  UPDATE lot_sum SET lines = lines + 1, quantity = quantity + NEW.quantity, minor = minor + NEW.minor
  WHERE lot = NEW.lot AND source = NEW.source AND target = NEW.target;
END;
CREATE TRIGGER lot_sum_no_delete BEFORE DELETE ON lot_sum
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER lot_sum_no_replace BEFORE INSERT ON lot_sum
WHEN NEW.lines <> 0 OR EXISTS(SELECT 1 FROM lot_sum
    WHERE lot = NEW.lot AND source = NEW.source AND target = NEW.target)
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
-- By one line at a time, and never less.
CREATE TRIGGER lot_sum_no_update BEFORE UPDATE ON lot_sum
WHEN NEW.lot <> OLD.lot OR NEW.source <> OLD.source OR NEW.target <> OLD.target
  OR NEW.lines <> OLD.lines + 1 OR NEW.quantity < OLD.quantity OR NEW.minor < OLD.minor
  OR NEW.first <> OLD.first
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
