-- A log as schema version 3 left it: that of version 2, with 500 g bought and 200 g used. Never edited.
PRAGMA application_id = 0x5745544F;
PRAGMA user_version = 3;
PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE job(
  id INTEGER PRIMARY KEY CHECK(id > 0),
  slug TEXT NOT NULL UNIQUE CHECK(length(slug) BETWEEN 1 AND 64 AND slug NOT GLOB '*[^a-z0-9-]*'
    AND slug NOT GLOB '-*' AND slug NOT GLOB '*-' AND slug NOT GLOB '*--*'),
  name TEXT NOT NULL CHECK(name <> ''),
  created INTEGER NOT NULL,
  archived INTEGER
) STRICT;
INSERT INTO job VALUES(1,'sandpiper','The sandpiper',1750000060,NULL);
INSERT INTO job VALUES(2,'egret','The egret',1760000420,NULL);
CREATE TABLE document(
  id INTEGER PRIMARY KEY CHECK(id > 0),
  sha256 BLOB NOT NULL UNIQUE CHECK(length(sha256) = 32),
  body BLOB NOT NULL
) STRICT;
INSERT INTO document VALUES(1,X'904fe6a60583838c598309271b10b91a3fa8990a6033276ab2cdb43fbddfbe08',X'726573756c742031207265766973696f6e20310a6c696e65206f6620312c20302031203220332034203520362037203820390a6c696e65206f6620312c20302031203220332034203520362037203820390a');
INSERT INTO document VALUES(2,X'87f1a3c602835c7d1ee6efea19fc8d92b1a4ab11edec6525e2590a0f712bbccf',X'6a6f62206c696e65206f6620312c20302031203220332034203520362037203820390a');
INSERT INTO document VALUES(3,X'10464e647f66061c279ea3169c8743c684e4b092a20bacd48d491979ca5c9d48',X'7468652073686f70207374617973207468652073616d65');
INSERT INTO document VALUES(4,X'a08826ecf1c838454ac3f8008201c300a49f09ecc1f3a88718b87f1133343e5f',X'6169723d31');
INSERT INTO document VALUES(5,X'71b12cbebcb987f85c3fae2cdecddaecbe51c1bbec070b812ea91073abfa8eb3',X'7363686564756c652031206e756d6265722031');
INSERT INTO document VALUES(6,X'ac0d545862d70899242b3b7294445bdfaf48d00f17af489b9a0196ae222a567d',X'74696d652c6169720a312c32300a');
INSERT INTO document VALUES(7,X'3cc7aec74eb9370e35cfcfbe24a76af5d09f66dc843d7d3bc0213466e6486f76',X'726573756c742032207265766973696f6e20320a6c696e65206f6620322c20302031203220332034203520362037203820390a6c696e65206f6620322c20302031203220332034203520362037203820390a');
INSERT INTO document VALUES(8,X'8863079ca466ba36cf3deef5468d220e52fb4a7ffba8846959509e39c18a2860',X'6a6f62206c696e65206f6620322c20302031203220332034203520362037203820390a');
INSERT INTO document VALUES(9,X'75d3709f8fbf2f823a5468a318c8fbbcf93cf223e47c08897b470ef417793381',X'6169723d32');
INSERT INTO document VALUES(10,X'06a6e4512132c05d92d1de73438ed73c2bbc64da22b70a800fc88b29df7a70f9',X'7363686564756c652032206e756d6265722032');
INSERT INTO document VALUES(11,X'9c3cc0eea8d753c66966687fb2d09f3f897b5e1d65a4cec07205a2e2e6b8f68f',X'74696d652c6169720a322c32300a');
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
INSERT INTO "plan" VALUES(1,1,1,1750000060,'wetout test',X'c7da44d5790e78620c69f7dfdf7639c962a6f1fb8c85c299cee0beff069bb5ee','wetout.plan/1',X'904fe6a60583838c598309271b10b91a3fa8990a6033276ab2cdb43fbddfbe08',3);
INSERT INTO "plan" VALUES(2,1,2,1750000120,'wetout test',X'860e6c8017ac75f0e6f608390ef13b898e75e20e4911d202e7d7bcf7afe60634','wetout.plan/1',X'3cc7aec74eb9370e35cfcfbe24a76af5d09f66dc843d7d3bc0213466e6486f76',3);
CREATE TABLE plan_input(
  plan INTEGER NOT NULL REFERENCES plan,
  role TEXT NOT NULL CHECK(role IN ('job', 'shop', 'outline', 'learned', 'options')),
  name TEXT NOT NULL,
  format TEXT NOT NULL CHECK(format <> ''),
  document BLOB NOT NULL REFERENCES document(sha256),
  PRIMARY KEY(plan, role, name)
) STRICT, WITHOUT ROWID;
INSERT INTO plan_input VALUES(1,'job','sandpiper.toml','wetout.job/1',X'87f1a3c602835c7d1ee6efea19fc8d92b1a4ab11edec6525e2590a0f712bbccf');
INSERT INTO plan_input VALUES(1,'options','','wetout.options/1',X'a08826ecf1c838454ac3f8008201c300a49f09ecc1f3a88718b87f1133343e5f');
INSERT INTO plan_input VALUES(1,'shop','shop.toml','wetout.shop/1',X'10464e647f66061c279ea3169c8743c684e4b092a20bacd48d491979ca5c9d48');
INSERT INTO plan_input VALUES(2,'job','sandpiper.toml','wetout.job/1',X'8863079ca466ba36cf3deef5468d220e52fb4a7ffba8846959509e39c18a2860');
INSERT INTO plan_input VALUES(2,'options','','wetout.options/1',X'75d3709f8fbf2f823a5468a318c8fbbcf93cf223e47c08897b470ef417793381');
INSERT INTO plan_input VALUES(2,'shop','shop.toml','wetout.shop/1',X'10464e647f66061c279ea3169c8743c684e4b092a20bacd48d491979ca5c9d48');
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
INSERT INTO schedule VALUES(1,1760000060,'wetout test',X'31d11d46dbd9aff690802ec5ec156c15a1907edd3c20287f73860d655e28bc70','wetout.schedule/1',X'71b12cbebcb987f85c3fae2cdecddaecbe51c1bbec070b812ea91073abfa8eb3',NULL,X'ac0d545862d70899242b3b7294445bdfaf48d00f17af489b9a0196ae222a567d','june.csv','csv',1,2);
INSERT INTO schedule VALUES(2,1760000120,'wetout test',X'0b95ed16b11187d2e8fd94cf72d291e38436bee3d60558153162d3b8630d8f88','wetout.schedule/1',X'06a6e4512132c05d92d1de73438ed73c2bbc64da22b70a800fc88b29df7a70f9',1,X'9c3cc0eea8d753c66966687fb2d09f3f897b5e1d65a4cec07205a2e2e6b8f68f','june.csv','csv',1,2);
CREATE TABLE schedule_job(
  schedule INTEGER NOT NULL REFERENCES schedule,
  job INTEGER NOT NULL,
  revision INTEGER NOT NULL,
  PRIMARY KEY(schedule, job),
  FOREIGN KEY(job, revision) REFERENCES plan(job, revision)
) STRICT, WITHOUT ROWID;
INSERT INTO schedule_job VALUES(1,1,1);
INSERT INTO schedule_job VALUES(2,1,2);
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
INSERT INTO schedule_step VALUES(1,1,'bottom-lam/trim',1760012060,1760012960,'planned');
INSERT INTO schedule_step VALUES(1,1,'bottom-lam/wet',1760000060,1760002460,'fixed');
INSERT INTO schedule_step VALUES(2,1,'bottom-lam/trim',1760012120,1760013020,'planned');
INSERT INTO schedule_step VALUES(2,1,'bottom-lam/wet',1760000120,1760002520,'fixed');
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
INSERT INTO event VALUES(1,'token-sandpiper-1/1',1,'bottom-lam/wet',1760000060,1760000360,'mixed',NULL,300001,200000,100001,NULL,NULL,NULL,NULL);
INSERT INTO event VALUES(2,'token-sandpiper-1/2',1,'bottom-lam/wet',1760000060,1760000360,'left',NULL,1,NULL,NULL,NULL,NULL,'in the cup',NULL);
INSERT INTO event VALUES(3,'token-sandpiper-1/3',1,'bottom-lam/wet',1760000060,1760000360,'done',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO event VALUES(4,'undo-2',1,'bottom-lam/wet',1760000360,1760000360,'undo',NULL,NULL,NULL,NULL,NULL,NULL,'slip',2);
INSERT INTO event VALUES(5,'egret-air',2,NULL,1760000120,1760000420,'conditions',NULL,NULL,NULL,NULL,295150,550000,NULL,NULL);
INSERT INTO event VALUES(6,'egret-gel',2,'bottom-lam/wet',1760000120,1760000420,'milestone','gel',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE currency(
  id INTEGER PRIMARY KEY CHECK(id = 1),
  code TEXT NOT NULL CHECK(length(code) = 3 AND code NOT GLOB '*[^A-Z]*')
) STRICT;
INSERT INTO currency VALUES(1,'EUR');
CREATE TABLE material(
  id INTEGER PRIMARY KEY CHECK(id > 0),
  slug TEXT NOT NULL UNIQUE CHECK(length(slug) BETWEEN 1 AND 64 AND slug NOT GLOB '*[^a-z0-9-]*'
    AND slug NOT GLOB '-*' AND slug NOT GLOB '*-' AND slug NOT GLOB '*--*'),
  name TEXT NOT NULL CHECK(name <> ''),
  unit TEXT NOT NULL CHECK(unit IN ('mg', 'um', 'piece'))
) STRICT;
INSERT INTO material VALUES(1,'slow-a','Slow, part A','mg');
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
INSERT INTO lot VALUES(1,1,'L1',NULL,1760000000,NULL,NULL);
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
INSERT INTO entry VALUES(1,'buy','receive',1760000000,20370,1760000000,NULL,NULL,NULL);
INSERT INTO entry VALUES(2,'use','use',1760000600,20370,1760000600,NULL,NULL,NULL);
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
INSERT INTO movement VALUES(1,1,'supplier','stock',1,NULL,NULL,500000,800);
INSERT INTO movement VALUES(2,1,'stock','board',1,1,'bottom-lam/wet',200000,320);
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
INSERT INTO lot_sum VALUES(1,'stock','board',1,200000,320,2);
INSERT INTO lot_sum VALUES(1,'supplier','stock',1,500000,800,1);
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
CREATE TRIGGER plan_input_late BEFORE INSERT ON plan_input
WHEN (SELECT count(*) FROM plan_input WHERE plan = NEW.plan) >=
     (SELECT inputs FROM plan WHERE id = NEW.plan)
BEGIN SELECT RAISE(ABORT, 'plan is closed'); END;
CREATE INDEX schedule_job_by_job ON schedule_job(job, schedule);
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
CREATE TRIGGER event_undoes BEFORE INSERT ON event
WHEN EXISTS(SELECT 1 FROM event
            WHERE id = NEW.undoes AND (kind = 'undo' OR job <> NEW.job))
BEGIN SELECT RAISE(ABORT, 'cannot be undone'); END;
CREATE INDEX entry_by_event ON entry(event) WHERE event IS NOT NULL;
CREATE INDEX movement_by_lot ON movement(lot) WHERE lot IS NOT NULL;
CREATE INDEX movement_by_job ON movement(job, source, target, lot, quantity, minor)
WHERE job IS NOT NULL;
CREATE TRIGGER currency_no_update BEFORE UPDATE ON currency
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER currency_no_delete BEFORE DELETE ON currency
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER currency_no_replace BEFORE INSERT ON currency
WHEN EXISTS(SELECT 1 FROM currency)
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER material_no_delete BEFORE DELETE ON material
BEGIN SELECT RAISE(ABORT, 'materials are never deleted'); END;
CREATE TRIGGER material_no_replace BEFORE INSERT ON material
WHEN EXISTS(SELECT 1 FROM material WHERE id = NEW.id OR slug = NEW.slug)
BEGIN SELECT RAISE(ABORT, 'material exists'); END;
CREATE TRIGGER material_no_update BEFORE UPDATE ON material
WHEN NEW.id <> OLD.id OR NEW.slug <> OLD.slug OR NEW.unit <> OLD.unit
BEGIN SELECT RAISE(ABORT, 'a material keeps its slug and its unit'); END;
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
CREATE TRIGGER movement_late BEFORE INSERT ON movement
WHEN NEW.entry <> (SELECT max(id) FROM entry)
BEGIN SELECT RAISE(ABORT, 'entry is closed'); END;
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
CREATE TRIGGER lot_sum_no_update BEFORE UPDATE ON lot_sum
WHEN NEW.lot <> OLD.lot OR NEW.source <> OLD.source OR NEW.target <> OLD.target
  OR NEW.lines <> OLD.lines + 1 OR NEW.quantity < OLD.quantity OR NEW.minor < OLD.minor
  OR NEW.first <> OLD.first
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
COMMIT;
