-- Version 1: jobs, and the plans saved for them with what they were made from.
-- Once released this file is never edited: changes are a new numbered file.

CREATE TABLE job(
  id INTEGER PRIMARY KEY CHECK(id > 0),
  slug TEXT NOT NULL UNIQUE CHECK(length(slug) BETWEEN 1 AND 64 AND slug NOT GLOB '*[^a-z0-9-]*'
    AND slug NOT GLOB '-*' AND slug NOT GLOB '*-' AND slug NOT GLOB '*--*'),
  name TEXT NOT NULL CHECK(name <> ''),
  created INTEGER NOT NULL,
  archived INTEGER
) STRICT;

-- Every text once, named by its digest. What the bytes mean (format) stands where they are used:
-- the same bytes can be read as two formats. Bodies lie in the order they came in; under their
-- digest (WITHOUT ROWID) saving was measured 2.5 times slower.
CREATE TABLE document(
  id INTEGER PRIMARY KEY CHECK(id > 0),
  sha256 BLOB NOT NULL UNIQUE CHECK(length(sha256) = 32),
  body BLOB NOT NULL
) STRICT;

CREATE TABLE plan(
  id INTEGER PRIMARY KEY CHECK(id > 0),
  job INTEGER NOT NULL REFERENCES job,
  revision INTEGER NOT NULL CHECK(revision > 0),
  made INTEGER NOT NULL,
  program TEXT NOT NULL CHECK(program <> ''),
  input_key BLOB NOT NULL CHECK(length(input_key) = 32),
  format TEXT NOT NULL CHECK(format <> ''),
  result BLOB NOT NULL REFERENCES document(sha256),
  inputs INTEGER NOT NULL CHECK(inputs >= 0),
  UNIQUE(job, revision)
) STRICT;

CREATE TABLE plan_input(
  plan INTEGER NOT NULL REFERENCES plan,
  role TEXT NOT NULL CHECK(role IN ('job', 'shop', 'outline', 'learned', 'options')),
  name TEXT NOT NULL,
  format TEXT NOT NULL CHECK(format <> ''),
  document BLOB NOT NULL REFERENCES document(sha256),
  PRIMARY KEY(plan, role, name)
) STRICT, WITHOUT ROWID;

-- A job may be renamed and archived. It is never deleted, and keeps its id and its beginning.
-- INSERT OR REPLACE and UPDATE OR REPLACE delete rows without firing delete triggers (unless
-- recursive_triggers is on), hence a trigger that looks for the row they would take.
-- An id that SQLite is to choose reads as -1 in a BEFORE trigger; no row has it (CHECK above).
CREATE TRIGGER job_no_delete BEFORE DELETE ON job
BEGIN SELECT RAISE(ABORT, 'jobs are never deleted'); END;
CREATE TRIGGER job_no_replace BEFORE INSERT ON job
WHEN EXISTS(SELECT 1 FROM job WHERE id = NEW.id OR slug = NEW.slug)
BEGIN SELECT RAISE(ABORT, 'job exists'); END;
CREATE TRIGGER job_keeps BEFORE UPDATE OF id, created ON job
WHEN NEW.id <> OLD.id OR NEW.created <> OLD.created
BEGIN SELECT RAISE(ABORT, 'a job keeps its id and its beginning'); END;
CREATE TRIGGER job_no_replace_by_update BEFORE UPDATE OF slug ON job
WHEN EXISTS(SELECT 1 FROM job WHERE slug = NEW.slug AND id <> OLD.id)
BEGIN SELECT RAISE(ABORT, 'job exists'); END;

CREATE TRIGGER document_no_update BEFORE UPDATE ON document
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER document_no_delete BEFORE DELETE ON document
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER document_no_replace BEFORE INSERT ON document
WHEN EXISTS(SELECT 1 FROM document WHERE id = NEW.id OR sha256 = NEW.sha256)
BEGIN SELECT RAISE(ABORT, 'append-only'); END;

CREATE TRIGGER plan_no_update BEFORE UPDATE ON plan
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER plan_no_delete BEFORE DELETE ON plan
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER plan_no_replace BEFORE INSERT ON plan
WHEN EXISTS(SELECT 1 FROM plan WHERE id = NEW.id OR (job = NEW.job AND revision = NEW.revision))
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER plan_is_next BEFORE INSERT ON plan
WHEN NEW.revision <> 1 + (SELECT ifnull(max(revision), 0) FROM plan WHERE job = NEW.job)
BEGIN SELECT RAISE(ABORT, 'revisions count 1, 2, 3'); END;

CREATE TRIGGER plan_input_no_update BEFORE UPDATE ON plan_input
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER plan_input_no_delete BEFORE DELETE ON plan_input
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER plan_input_no_replace BEFORE INSERT ON plan_input
WHEN EXISTS(SELECT 1 FROM plan_input
            WHERE plan = NEW.plan AND role = NEW.role AND name = NEW.name)
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
-- A plan says how many inputs it has; with the last of them it is closed.
CREATE TRIGGER plan_input_late BEFORE INSERT ON plan_input
WHEN (SELECT count(*) FROM plan_input WHERE plan = NEW.plan) >=
     (SELECT inputs FROM plan WHERE id = NEW.plan)
BEGIN SELECT RAISE(ABORT, 'plan is closed'); END;
