-- What was done. A correction is a new session that says which it replaces; nothing is ever edited.
CREATE TABLE import (
  id INTEGER PRIMARY KEY,
  client INTEGER NOT NULL REFERENCES client ON DELETE CASCADE,
  made TEXT NOT NULL,
  digest TEXT NOT NULL,
  UNIQUE (client, digest)
) STRICT;

CREATE TABLE session (
  id INTEGER PRIMARY KEY,
  client INTEGER NOT NULL REFERENCES client ON DELETE CASCADE,
  made TEXT NOT NULL,
  import INTEGER REFERENCES import ON DELETE CASCADE,
  replaces INTEGER REFERENCES session ON DELETE CASCADE,
  held_on TEXT NOT NULL CHECK (held_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  week INTEGER CHECK (week >= 1),
  number INTEGER CHECK (number >= 1),
  unit TEXT NOT NULL CHECK (unit IN ('kg', 'lb')),
  started TEXT,
  ended TEXT CHECK (started IS NULL OR ended >= started),
  minutes REAL CHECK (minutes > 0),
  how_hard INTEGER CHECK (how_hard BETWEEN 0 AND 10),
  note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX session_by_client ON session (client, held_on);
CREATE INDEX session_by_import ON session (import);
CREATE UNIQUE INDEX session_replaced_once ON session (replaces) WHERE replaces IS NOT NULL;

CREATE TABLE set_done (
  session INTEGER NOT NULL REFERENCES session ON DELETE CASCADE,
  place INTEGER NOT NULL CHECK (place >= 1),
  exercise TEXT NOT NULL,
  number INTEGER NOT NULL CHECK (number >= 1),
  load REAL CHECK (load >= 0),
  reps INTEGER NOT NULL CHECK (reps >= 0),
  rir INTEGER CHECK (rir >= 0),
  side TEXT CHECK (side IN ('left', 'right')),
  ended TEXT,
  PRIMARY KEY (session, place)
) STRICT, WITHOUT ROWID;

-- What an import did not understand, as it was written.
CREATE TABLE unread (
  import INTEGER NOT NULL REFERENCES import ON DELETE CASCADE,
  place TEXT NOT NULL,
  text TEXT NOT NULL,
  why TEXT NOT NULL
) STRICT;
CREATE INDEX unread_by_import ON unread (import);

CREATE TRIGGER session_stays BEFORE UPDATE ON session BEGIN
  SELECT RAISE(ABORT, 'a session is never edited: a correction is a new row that says what it replaces');
END;
CREATE TRIGGER set_stays BEFORE UPDATE ON set_done BEGIN
  SELECT RAISE(ABORT, 'a set is never edited: a correction is a new session that says what it replaces');
END;
CREATE TRIGGER session_kept BEFORE DELETE ON session
WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE client = OLD.client) BEGIN
  SELECT RAISE(ABORT, 'a session goes with its client');
END;
CREATE TRIGGER set_kept BEFORE DELETE ON set_done
WHEN NOT EXISTS (SELECT 1 FROM erasing) BEGIN
  SELECT RAISE(ABORT, 'a set goes with its client');
END;
