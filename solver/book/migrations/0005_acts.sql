-- What was done to a client's brief, weeks, blocks and log, act by act, so that each can be taken back and done again.
-- A taking back is a row of its own: it names the act, and the readers leave the rows of that act out.
CREATE TABLE act (
  id INTEGER PRIMARY KEY,
  client INTEGER NOT NULL REFERENCES client ON DELETE CASCADE,
  made TEXT NOT NULL,
  through TEXT NOT NULL DEFAULT '',
  said TEXT NOT NULL DEFAULT '',
  turns INTEGER REFERENCES act ON DELETE CASCADE,
  back INTEGER CHECK (back IN (0, 1)),
  CHECK ((turns IS NULL) = (back IS NULL))
) STRICT;
CREATE INDEX act_by_client ON act (client);
CREATE INDEX act_turned ON act (turns) WHERE turns IS NOT NULL;

CREATE TABLE act_row (
  kind TEXT NOT NULL CHECK (kind IN ('brief', 'week', 'block', 'session')),
  row INTEGER NOT NULL,
  act INTEGER NOT NULL REFERENCES act ON DELETE CASCADE,
  PRIMARY KEY (kind, row)
) STRICT, WITHOUT ROWID;
CREATE INDEX row_by_act ON act_row (act);

-- A session whose correction was taken back can be corrected anew.
DROP INDEX session_replaced_once;
CREATE INDEX session_replaced ON session (replaces) WHERE replaces IS NOT NULL;

-- What was written before this step: each row an act, the sessions of one import one act together.
CREATE TABLE before_acts (id INTEGER PRIMARY KEY, client INTEGER, made TEXT, said TEXT, kind TEXT, row INTEGER, one TEXT);
INSERT INTO before_acts (client, made, said, kind, row, one)
SELECT * FROM (
  SELECT client, made,
    coalesce((SELECT said FROM change c WHERE c.client = b.client AND c.made = b.made ORDER BY c.id LIMIT 1), ''),
    'brief', id, 'brief ' || id
  FROM brief b WHERE version > 1
  UNION ALL SELECT client, made, '', 'week', id, 'week ' || id FROM week
  UNION ALL SELECT client, made, '', 'block', id, 'block ' || id FROM block
  UNION ALL SELECT client, made, '', 'session', id, 'session ' || coalesce(import || ' ' || made, '- ' || id) FROM session
) ORDER BY 2, 4, 5;
CREATE INDEX before_acts_one ON before_acts (one);
INSERT INTO act (id, client, made, said) SELECT min(id), client, made, said FROM before_acts GROUP BY one ORDER BY 1;
INSERT INTO act_row (kind, row, act)
SELECT kind, row, (SELECT min(id) FROM before_acts first WHERE first.one = b.one) FROM before_acts b;
DROP TABLE before_acts;

CREATE TRIGGER act_stays BEFORE UPDATE ON act BEGIN
  SELECT RAISE(ABORT, 'an act is never edited: taking it back is a new row');
END;
CREATE TRIGGER act_row_stays BEFORE UPDATE ON act_row BEGIN
  SELECT RAISE(ABORT, 'what an act wrote is never edited');
END;
CREATE TRIGGER act_kept BEFORE DELETE ON act WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE client = OLD.client) BEGIN
  SELECT RAISE(ABORT, 'an act goes with its client');
END;
CREATE TRIGGER act_row_kept BEFORE DELETE ON act_row WHEN NOT EXISTS (SELECT 1 FROM erasing) BEGIN
  SELECT RAISE(ABORT, 'what an act wrote goes with its client');
END;
