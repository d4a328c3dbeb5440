-- Version 2: schedules that were saved, and what was recorded of the work.
-- Once released this file is never edited: changes are a new numbered file.

-- Schedules count 1, 2, 3 in the whole log: one may hold several boards. `replaces` is the last
-- one before it that holds any of its boards; two later ones may each take over a part of it.
CREATE TABLE schedule(
  id INTEGER PRIMARY KEY CHECK(id > 0),
  made INTEGER NOT NULL,
  program TEXT NOT NULL CHECK(program <> ''),
  input_key BLOB NOT NULL CHECK(length(input_key) = 32),
  format TEXT NOT NULL CHECK(format <> ''),
  result BLOB NOT NULL REFERENCES document(sha256),
  replaces INTEGER REFERENCES schedule CHECK(replaces < id),
  weather BLOB REFERENCES document(sha256),
  weather_name TEXT,
  weather_format TEXT CHECK(weather_format <> ''),
  jobs INTEGER NOT NULL CHECK(jobs > 0),
  steps INTEGER NOT NULL CHECK(steps >= 0),
  CHECK((weather IS NULL) = (weather_name IS NULL)),
  CHECK((weather IS NULL) = (weather_format IS NULL))
) STRICT;

-- The revision of each job's plan that was scheduled.
CREATE TABLE schedule_job(
  schedule INTEGER NOT NULL REFERENCES schedule,
  job INTEGER NOT NULL,
  revision INTEGER NOT NULL,
  PRIMARY KEY(schedule, job),
  FOREIGN KEY(job, revision) REFERENCES plan(job, revision)
) STRICT, WITHOUT ROWID;
CREATE INDEX schedule_job_by_job ON schedule_job(job, schedule);

CREATE TABLE schedule_step(
  schedule INTEGER NOT NULL,
  job INTEGER NOT NULL,
  step TEXT NOT NULL CHECK(step <> ''),
  start INTEGER NOT NULL,
  finish INTEGER NOT NULL CHECK(finish >= start),
  state TEXT NOT NULL CHECK(state IN ('planned', 'fixed', 'done')),
  PRIMARY KEY(schedule, job, step),
  FOREIGN KEY(schedule, job) REFERENCES schedule_job(schedule, job)
) STRICT, WITHOUT ROWID;

-- Events count 1, 2, 3 in the whole log, so that one can be named by its number alone. A token is
-- made by whoever records: the same token a second time is the same event sent again.
CREATE TABLE event(
  id INTEGER PRIMARY KEY CHECK(id > 0),
  token TEXT NOT NULL UNIQUE CHECK(token <> ''),
  job INTEGER NOT NULL REFERENCES job,
  step TEXT CHECK(step <> ''),
  at INTEGER NOT NULL,
  recorded INTEGER NOT NULL,
  kind TEXT NOT NULL CHECK(kind IN ('mixed', 'left', 'spilled', 'started', 'done', 'milestone',
    'conditions', 'note', 'undo')),
  milestone TEXT CHECK(milestone <> ''),
  mass_mg INTEGER CHECK(mass_mg >= 0),
  part_a_mg INTEGER CHECK(part_a_mg >= 0),
  part_b_mg INTEGER CHECK(part_b_mg >= 0),
  air_mk INTEGER CHECK(air_mk > 0),
  rh_ppm INTEGER CHECK(rh_ppm BETWEEN 0 AND 1000000),
  note TEXT CHECK(note <> ''),
  undoes INTEGER UNIQUE REFERENCES event CHECK(undoes < id),
  CHECK(step IS NOT NULL OR kind IN ('conditions', 'note', 'undo')),
  CHECK((kind = 'milestone') = (milestone IS NOT NULL)),
  CHECK((kind IN ('mixed', 'left', 'spilled')) = (mass_mg IS NOT NULL)),
  CHECK(kind <> 'mixed' OR mass_mg > 0),
  -- Both parts or neither; what a mix holds besides them is filler, colour and the like.
  CHECK((part_a_mg IS NULL) = (part_b_mg IS NULL)),
  CHECK(part_a_mg IS NULL OR kind = 'mixed' AND part_a_mg + part_b_mg <= mass_mg),
  CHECK((kind = 'conditions') = (air_mk IS NOT NULL OR rh_ppm IS NOT NULL)),
  CHECK(kind <> 'note' OR note IS NOT NULL),
  CHECK((kind = 'undo') = (undoes IS NOT NULL))
) STRICT;
CREATE INDEX event_by_job ON event(job);

CREATE TRIGGER schedule_no_update BEFORE UPDATE ON schedule
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER schedule_no_delete BEFORE DELETE ON schedule
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER schedule_no_replace BEFORE INSERT ON schedule
WHEN EXISTS(SELECT 1 FROM schedule WHERE id = NEW.id)
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER schedule_is_next BEFORE INSERT ON schedule
WHEN NEW.id <> 1 + (SELECT ifnull(max(id), 0) FROM schedule)
BEGIN SELECT RAISE(ABORT, 'schedules count 1, 2, 3'); END;

CREATE TRIGGER schedule_job_no_update BEFORE UPDATE ON schedule_job
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER schedule_job_no_delete BEFORE DELETE ON schedule_job
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER schedule_job_no_replace BEFORE INSERT ON schedule_job
WHEN EXISTS(SELECT 1 FROM schedule_job WHERE schedule = NEW.schedule AND job = NEW.job)
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
-- A schedule says how many jobs and steps it has; with the last of them it is closed.
CREATE TRIGGER schedule_job_late BEFORE INSERT ON schedule_job
WHEN (SELECT count(*) FROM schedule_job WHERE schedule = NEW.schedule) >=
     (SELECT jobs FROM schedule WHERE id = NEW.schedule)
BEGIN SELECT RAISE(ABORT, 'schedule is closed'); END;

CREATE TRIGGER schedule_step_no_update BEFORE UPDATE ON schedule_step
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER schedule_step_no_delete BEFORE DELETE ON schedule_step
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER schedule_step_no_replace BEFORE INSERT ON schedule_step
WHEN EXISTS(SELECT 1 FROM schedule_step
            WHERE schedule = NEW.schedule AND job = NEW.job AND step = NEW.step)
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER schedule_step_late BEFORE INSERT ON schedule_step
WHEN (SELECT count(*) FROM schedule_step WHERE schedule = NEW.schedule) >=
     (SELECT steps FROM schedule WHERE id = NEW.schedule)
BEGIN SELECT RAISE(ABORT, 'schedule is closed'); END;

CREATE TRIGGER event_no_update BEFORE UPDATE ON event
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER event_no_delete BEFORE DELETE ON event
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER event_no_replace BEFORE INSERT ON event
WHEN EXISTS(SELECT 1 FROM event
            WHERE id = NEW.id OR token = NEW.token OR undoes = NEW.undoes)
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER event_is_next BEFORE INSERT ON event
WHEN NEW.id <> 1 + (SELECT ifnull(max(id), 0) FROM event)
BEGIN SELECT RAISE(ABORT, 'events count 1, 2, 3'); END;
-- An undo takes back what was recorded of the same job, and is not taken back itself.
CREATE TRIGGER event_undoes BEFORE INSERT ON event
WHEN EXISTS(SELECT 1 FROM event
            WHERE id = NEW.undoes AND (kind = 'undo' OR job <> NEW.job))
BEGIN SELECT RAISE(ABORT, 'cannot be undone'); END;
