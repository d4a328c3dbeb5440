-- Version 4: which events the shop's own losses, pace and speeds are not to be learned from.
-- Once released this file is never edited: changes are a new numbered file.

-- The last lesson of an event says whether it counts; without one it does. What happened stays
-- recorded either way.
CREATE TABLE lesson(
  id INTEGER PRIMARY KEY CHECK(id > 0),
  event INTEGER NOT NULL REFERENCES event,
  made INTEGER NOT NULL,
  counts INTEGER NOT NULL CHECK(counts IN (0, 1))
) STRICT;
CREATE INDEX lesson_by_event ON lesson(event, id);

CREATE TRIGGER lesson_no_update BEFORE UPDATE ON lesson
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER lesson_no_delete BEFORE DELETE ON lesson
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER lesson_no_replace BEFORE INSERT ON lesson
WHEN EXISTS(SELECT 1 FROM lesson WHERE id = NEW.id)
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER lesson_is_next BEFORE INSERT ON lesson
WHEN NEW.id <> 1 + (SELECT ifnull(max(id), 0) FROM lesson)
BEGIN SELECT RAISE(ABORT, 'lessons count 1, 2, 3'); END;
-- Each one changes what was so before it.
CREATE TRIGGER lesson_changes BEFORE INSERT ON lesson
WHEN NEW.counts = ifnull((SELECT counts FROM lesson WHERE event = NEW.event
                          ORDER BY id DESC LIMIT 1), 1)
BEGIN SELECT RAISE(ABORT, 'nothing is changed'); END;
